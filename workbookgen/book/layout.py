"""The layout: from the description of a planner to placements with bound formulas.

The plan of a sheet has a spot for each field; here each becomes a placement, and its formula is bound to the cells of
its words.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

from xlsxwriter.utility import xl_col_to_name

from workbookgen.book.binding import bind
from workbookgen.book.copied import ROW, CopiedDown
from workbookgen.book.messages import automatic_formula, automatic_words
from workbookgen.book.operands import ByLine, Columns, Operand
from workbookgen.book.page_plan import plan_of
from workbookgen.book.placement import Layout, Placement, ProofColumn
from workbookgen.book.plan import Plan
from workbookgen.errors import DescriptionError
from workbookgen.language.domains import Choice
from workbookgen.language.fields import LINE, Automatic, Input, Repeat, Result
from workbookgen.language.forms import SUMS
from workbookgen.language.formula import formula
from workbookgen.language.parts import Block, Card, Column, Log, unit_of
from workbookgen.language.planner import Meaning, Planner
from workbookgen.language.positions import Position
from workbookgen.language.profile import bound_objections
from workbookgen.language.proofs import Proof, ProofTable, Trial
from workbookgen.language.quantities import NUMBER_UNIT, unit_named
from workbookgen.language.sentences import AN_ERROR, NO_ERROR
from workbookgen.language.tokens import Call

SUMMED_AT_ONCE = 30  # arguments of one SUM: the limit of the file format's oldest readers
NOTHING = "nothing_cell"  # a cell that stays blank, to which absent words refer


def place(planner: Planner) -> Layout:
    """Lay out a planner and bind all its formulas."""
    plans = {sheet.name: plan_of(sheet, planner) for sheet in planner.sheets}
    unbound = {each.key: each for plan in plans.values() for each in _placements(planner, plan)}
    binder = _Binder(planner, unbound)
    return Layout(planner, plans, {key: binder.bind(each) for key, each in unbound.items()})


def _placements(planner: Planner, plan: Plan) -> Iterator[Placement]:
    """The placements of a sheet, without formulas."""
    for holder in plan.sheet.holders:
        fields = [*holder.by_key.values(), *getattr(holder, "automatic", ())]
        if isinstance(holder, ProofTable):
            fields.insert(0, Column("computed", "Computed here", ()))
        for field in fields:
            key = f"{holder.key}_{field.key}"
            if key not in plan.spots:
                raise DescriptionError.at(f"sheet {plan.sheet.name}", f"{key} has no place on it.")
            spot = plan.spots[key]
            unit = None if isinstance(holder, ProofTable) else unit_of(field, planner.system)
            yield Placement(key, holder, field, plan.sheet.name, spot.row, spot.column, spot.rows, unit)


@dataclass(frozen=True)
class _Binder:
    """Binds the formulas of a planner to the cells of its fields."""

    planner: Planner
    placements: dict[str, Placement]

    def bind(self, placement: Placement) -> Placement:
        """The placement with the formulas of its cells."""
        match placement.holder, placement.field:
            case Log() as log, Repeat() as repeat:
                formulas = (self._of_repeat(log, repeat),)
            case Block() as block, Result() | Automatic():
                formulas = self._of_block(block, placement)
            case ProofTable() as table, Column():
                proofs = (self._of_proof(proof, placement.row + index) for index, proof in enumerate(table.proofs))
                formulas = (*proofs, *map(self._of_trial, table.trials))
            case ProofTable() as table, Result():
                formulas = CopiedDown(self._of_verdict(table), placement.row, table.rows)
            case _:
                formulas = ()
        # The formulas of a log differ only in their row, so the last is the longest.
        for text in formulas[-1:] if isinstance(formulas, CopiedDown) else formulas:
            if faults := bound_objections(text):
                raise DescriptionError.at(f"field {placement.key}", "; ".join(faults) + ".")
        return replace(placement, formulas=formulas)

    def _of_block(self, block: Block, placement: Placement) -> Sequence[str]:
        field, folded = placement.field, self.planner.folded.get(block.key, ())
        if field == LINE:
            return tuple(f"={number}" for number in range(1, placement.rows + 1))
        words = automatic_words(field, block, folded) if isinstance(field, Automatic) else set(field.words)
        sums = () if isinstance(field, Automatic) else (*field.text.calls_to(*SUMS), *field.condition.calls_to(*SUMS))
        by_position = not isinstance(field, Position)
        columns = self._columns(block, words, placement.sheet, placement.rows, by_position=by_position, sums=sums)
        if isinstance(field, Automatic):
            text = automatic_formula(
                field, block, columns, system=self.planner.system, folded=folded, own_line=placement.line
            )
        else:
            text = bind(field, columns, placement.unit)
        return CopiedDown(text, placement.row, placement.rows)

    def _of_repeat(self, log: Log, repeat: Repeat) -> str:
        """A reference to the record's own cell, which is on the same sheet."""
        repeated = self.placements[f"{log.key}_{repeat.of}"]
        return f"=${repeated.letter}${repeated.row + repeat.record}"

    def _of_proof(self, proof: Proof, row: int) -> str:
        """The result's own formula, with its words bound to the given values in the proof's row."""
        block, result = self.planner.by_key[proof.result]
        operands = dict(self._columns(block, set(result.words), "").operands)
        for index, (word, (_, unit)) in enumerate(proof.given.items()):
            meaning = self.planner.meaning(block, word)
            ref = f"${xl_col_to_name(ProofColumn.VALUES + index - 1)}{row}"
            operands[word] = Operand(meaning, ref, unit_named(unit) if unit else NUMBER_UNIT)
        unit = unit_named(proof.unit) if proof.unit else None
        return bind(result, Columns(operands, self._lines), unit, guarded=False)

    def _of_trial(self, trial: Trial) -> str:
        """A formula of constants; or the sum of all cells of some blocks, which is an error if any cell is one."""
        if trial.formula:
            text = formula(trial.formula)
            return "=" + self._columns(None, set(text.words), "").written(text.nodes)
        blocks = {id(self.planner.blocks[key]) for key in trial.blocks}
        columns: dict[tuple[int, str, str], list[Placement]] = {}
        for each in self.placements.values():
            if id(each.holder) in blocks and isinstance(each.field, Result | Automatic):
                columns.setdefault((id(each.holder), each.sheet, each.letter), []).append(each)
        ranges = list(map(_spanned, columns.values()))
        some = [ranges[start : start + SUMMED_AT_ONCE] for start in range(0, len(ranges), SUMMED_AT_ONCE)]
        total = "+".join(f"SUM({','.join(each)})" for each in some)
        return f'=IF(ISNUMBER({total}),"{NO_ERROR}","{AN_ERROR}")'

    def _of_verdict(self, table: ProofTable) -> str:
        """The formula that compares the computed answer with the printed one, for each row."""

        def operand(word: str, column: ProofColumn) -> Operand:
            meaning = Meaning(word, table, Column(word, word, (0.0,)), is_column=False)
            return Operand(meaning, f"${xl_col_to_name(column - 1)}{ROW}")

        names = {"computed": ProofColumn.COMPUTED, "printed": ProofColumn.PRINTED, "tolerance": ProofColumn.WITHIN}
        operands = {word: operand(word, column) for word, column in names.items()}
        return bind(table.verdict, Columns(operands, self._lines), None, guarded=False)

    def _columns(
        self,
        block: Block | None,
        words: set[str],
        sheet: str,
        rows: int = 1,
        *,
        by_position: bool = False,
        sums: tuple[Call, ...] = (),
    ) -> Columns:
        """The words of a formula as operands for a cell of `sheet`, and the lists that its inputs choose from.

        A formula copied down a column refers to other sheets by defined names, since a shared formula may not contain
        an address on another sheet. Other formulas contain addresses, since IronCalc does not take the name of a
        single cell, such as a log of one line, for a range. With `by_position`, lookups use the positions kept beside
        each record.
        """
        meanings = {word: self.planner.meaning(block, word) for word in sorted(words)}
        inputs = [each.field for each in meanings.values() if isinstance(each.field, Input)]
        lists = {each.domain.of for each in inputs if isinstance(each.domain, Choice)}
        meanings |= {word: self.planner.meaning(block, word) for word in sorted(lists)}
        elsewhere = [each for each in meanings.values() if self._target(each).sheet != sheet]
        is_named = rows > 1 and not any(each.is_column and self._target(each).rows == 1 for each in elsewhere)
        operands = {word: self._operand(each, sheet, is_named=is_named) for word, each in meanings.items()}

        def ref(word: str, of: Block | None = None) -> str:
            return self._operand(self.planner.meaning(of, word), sheet, is_named=is_named).ref

        positions = {
            (each.names, operands[each.name].ref): ref(each.key, block)
            for each in (block.positions if by_position else ())
            if each.name in operands
        }
        listing = () if by_position or block is None else self._listing(block, words)
        lines_of = {names: ref(f"{holder.key}_{position.key}") for names, holder, position in listing}
        by_line = {
            (names, name): by
            for _, names, name in (call.keys for call in sums)
            if (by := self._by_line(block, names, name, ref))
        }
        return Columns(operands, lambda log: ref(log.lines_column), positions, lines_of, by_line)

    def _listing(self, block: Block, words: set[str]) -> Iterator[tuple[str, Log, Position]]:
        """The logs' lists among these words, which keep the position of each of their own names."""
        for word in words:
            holder, field = self.planner.by_key.get(word, (None, None))
            if isinstance(holder, Log) and holder is not block and (position := holder.position_of(field.key, word)):
                yield word, holder, position

    def _by_line(self, block: Block, names: str, name: str, ref: Callable[..., str]) -> ByLine | None:
        """How a sum finds the records with a name by position, if both sides keep positions in the same list.

        `ref` gives the cells of a full key, or of a word in the records of a block.
        """
        holder, field = self.planner.by_key.get(names, (None, None))
        if not isinstance(holder, Log) or name not in block.by_key:
            return None
        is_own = isinstance(own := block.by_key[name], Input) and block.names_its_records(own)
        if is_own and (theirs := holder.position_of(field.key, block.names_column)):
            line = self.placements[block.names_column].line
            return ByLine(ref(f"{holder.key}_{theirs.key}"), line, is_own=True)
        for ours in (each for each in block.positions if each.name == name):
            if ours.names == names and any(map(holder.names_its_records, holder.inputs)):
                return ByLine("", ref(ours.key, block), is_own=False)
            if theirs := holder.position_of(field.key, ours.names):
                return ByLine(ref(f"{holder.key}_{theirs.key}"), ref(ours.key, block), is_own=False)
        return None

    def _lines(self, log: Log) -> str:
        return self.placements[log.lines_column].range

    def _target(self, meaning: Meaning) -> Placement:
        return self.placements[NOTHING if meaning.key in self.planner.absent else meaning.key]

    def _operand(self, meaning: Meaning, sheet: str, *, is_named: bool) -> Operand:
        is_absent, target = meaning.key in self.planner.absent, self._target(meaning)
        is_single = is_absent or isinstance(meaning.holder, Card) or getattr(meaning.field, "is_one", False)
        if target.sheet != sheet:
            ref = target.key if is_named else target.range
        elif meaning.is_column or is_single:
            ref = target.area
        else:
            ref = f"${target.letter}{ROW}"
        return Operand(meaning, ref, unit_of(meaning.field, self.planner.system) or NUMBER_UNIT, is_absent)


def _spanned(cells: Sequence[Placement]) -> str:
    """The range from the first to the last of these cells, which are in one column."""
    first = min(cells, key=lambda each: each.row)
    last = max(each.row + each.rows for each in cells)
    return replace(first, rows=last - first.row).range
