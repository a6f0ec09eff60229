"""The layout: from the description of a planner to placements with bound formulas.

The plan of a sheet has a spot for each field; here each becomes a placement, and its formula is bound to the cells of
its words.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from xlsxwriter.utility import quote_sheetname, xl_col_to_name, xl_range_abs

from workbookgen.book.areas import Area, joined
from workbookgen.book.automatic import automatic_formula, automatic_words
from workbookgen.book.binding import bind
from workbookgen.book.copied import ROW, CopiedDown
from workbookgen.book.log_plan import plan_of_log
from workbookgen.book.operands import Columns, Operand
from workbookgen.book.page_plan import plan_of_page
from workbookgen.book.placement import Layout, Placement, ProofColumn
from workbookgen.book.plan import Plan
from workbookgen.book.references import References, references
from workbookgen.errors import DescriptionError
from workbookgen.language.automatic import LINE, Automatic, Repeat
from workbookgen.language.fields import Result
from workbookgen.language.forms import SUMS
from workbookgen.language.formula import formula
from workbookgen.language.parts import Block, Card, Column, Log, Sheet, unit_of
from workbookgen.language.planner import Meaning, Planner
from workbookgen.language.positions import Position
from workbookgen.language.profile import bound_objections
from workbookgen.language.proofs import Proof, ProofTable, Trial
from workbookgen.language.quantities import NUMBER_UNIT, unit_named
from workbookgen.language.sentences import AN_ERROR, NO_ERROR

SUMMED_AT_ONCE = 30  # arguments of one SUM: the limit of the file format's oldest readers


def place(planner: Planner) -> Layout:
    """Lay out a planner and bind all its formulas."""
    plans = {sheet.name: _plan_of(sheet, planner) for sheet in planner.sheets}
    unbound = {each.key: each for plan in plans.values() for each in _placements(planner, plan)}
    binder = _Binder(planner, unbound)
    return Layout(planner, plans, {key: binder.bind(each) for key, each in unbound.items()})


def _plan_of(sheet: Sheet, planner: Planner) -> Plan:
    """The plan of a sheet: a log's own, or a page."""
    if sheet.log_view:
        [log], cards = sheet.logs, [holder for holder in sheet.holders if isinstance(holder, Card)]
        return plan_of_log(sheet, log, sheet.log_view, cards)
    return plan_of_page(sheet, planner)


def _placements(planner: Planner, plan: Plan) -> Iterator[Placement]:
    """The placements of a sheet, without formulas."""
    for holder in plan.sheet.holders:
        fields = [*holder.by_key.values(), *getattr(holder, "automatic", ())]
        if isinstance(holder, ProofTable):
            fields.insert(0, Column("computed", "Computed here", ()))
        for field in fields:
            key = holder.full_key(field.key)
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
        found = self._references(block, words, placement.sheet, placement.rows)
        if isinstance(field, Automatic):
            columns = found.columns_of_lists() if isinstance(field, Position) else found.columns_by_position()
            text = automatic_formula(
                field, block, columns, system=self.planner.system, folded=folded, own_line=placement.line
            )
        else:
            sums = (*field.text.calls_to(*SUMS), *field.condition.calls_to(*SUMS))
            text = bind(field, found.columns_by_position(sums), placement.unit)
        return CopiedDown(text, placement.row, placement.rows)

    def _of_repeat(self, log: Log, repeat: Repeat) -> str:
        """A reference to the record's own cell, which is on the same sheet."""
        repeated = self.placements[log.full_key(repeat.of)]
        return f"=${repeated.letter}${repeated.row + repeat.record}"

    def _of_proof(self, proof: Proof, row: int) -> str:
        """The result's own formula, with its words bound to the given values in the proof's row."""
        block, result = self.planner.by_key[proof.result]
        operands = dict(self._references(block, set(result.words), "").operands)
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
            return "=" + self._references(None, set(text.words), "").columns().written(text.nodes)
        blocks = {id(self.planner.blocks[key]) for key in trial.blocks}
        columns: dict[tuple[int, str, int], list[Placement]] = {}
        for each in self.placements.values():
            if id(each.holder) in blocks and isinstance(each.field, Result | Automatic):
                columns.setdefault((id(each.holder), each.sheet, each.column), []).append(each)
        areas: dict[tuple[int, str], list[Area]] = {}
        for (holder, sheet, _), cells in columns.items():
            areas.setdefault((holder, sheet), []).append(_spanned(cells))
        ranges = [
            f"{quote_sheetname(sheet)}!{xl_range_abs(*area)}"
            for (_, sheet), spanned in areas.items()
            for area in joined(spanned)
        ]
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

    def _references(self, block: Block | None, words: set[str], sheet: str, rows: int = 1) -> References:
        return references(self.planner, self.placements, block, words, sheet, rows)

    def _lines(self, log: Log) -> str:
        return self.placements[log.lines_column].range


def _spanned(cells: Sequence[Placement]) -> Area:
    """The area from the first to the last of these cells, which are in one column; counted from 0."""
    first, last = min(each.row for each in cells), max(each.row + each.rows for each in cells) - 1
    column = cells[0].column - 1
    return first - 1, column, last - 1, column
