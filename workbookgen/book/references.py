"""What the words of a formula refer to, as it sees the planner from its block and its sheet.

A formula copied down a column refers to other sheets by defined names, since a shared formula may not contain an
address on another sheet. Other formulas contain addresses, since IronCalc does not take the name of a single cell,
such as a log of one line, for a range.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from workbookgen.book.copied import ROW
from workbookgen.book.operands import ByLine, Columns, Operand
from workbookgen.book.placement import Placement
from workbookgen.language.domains import Choice
from workbookgen.language.fields import Input
from workbookgen.language.parts import Block, Card, Log, unit_of
from workbookgen.language.planner import Meaning, Planner
from workbookgen.language.positions import Position
from workbookgen.language.quantities import NUMBER_UNIT
from workbookgen.language.tokens import Call

NOTHING = "nothing_cell"  # a cell that stays blank, to which absent words refer


def references(
    planner: Planner, placements: Mapping[str, Placement], block: Block | None, words: set[str], sheet: str, rows: int
) -> "References":
    """The references of a formula of a block, copied down so many rows of a sheet: of its words, and of the lists that
    its inputs choose from."""
    meanings = {word: planner.meaning(block, word) for word in sorted(words)}
    inputs = [each.field for each in meanings.values() if isinstance(each.field, Input)]
    lists = {each.domain.of for each in inputs if isinstance(each.domain, Choice)}
    meanings |= {word: planner.meaning(block, word) for word in sorted(lists)}
    addressed = References(planner, placements, block, sheet, meanings, is_named=False)
    elsewhere = [(each, addressed.target(each)) for each in meanings.values()]
    elsewhere = [(each, target) for each, target in elsewhere if target.sheet != sheet]
    is_named = rows > 1 and not any(each.is_column and target.rows == 1 for each, target in elsewhere)
    return References(planner, placements, block, sheet, meanings, is_named)


@dataclass(frozen=True)
class References:
    """The words of a formula, what each means, and the cells that it stands for."""

    planner: Planner
    placements: Mapping[str, Placement]
    block: Block | None
    sheet: str
    meanings: Mapping[str, Meaning]
    is_named: bool

    @cached_property
    def operands(self) -> dict[str, Operand]:
        return {word: self.operand(each) for word, each in self.meanings.items()}

    def columns(self) -> Columns:
        """For a formula whose lookups compare texts."""
        return Columns(self.operands, self._lines)

    def columns_of_lists(self) -> Columns:
        """For a position, which is found in a list once, by the positions that the list keeps of its own names."""
        of_lists = {names: self._ref(log.full_key(each.key)) for names, log, each in self._listing()}
        return Columns(self.operands, self._lines, lines_of=of_lists)

    def columns_by_position(self, sums: Iterable[Call] = ()) -> Columns:
        """For all other formulas: their lookups and sums use the positions kept beside each record."""
        positions = {
            (each.names, self.operands[each.name].ref): self._own_ref(each.key)
            for each in self.block.positions
            if each.name in self.operands
        }
        by_line = {
            (names, name): by for _, names, name in (call.keys for call in sums) if (by := self._by_line(names, name))
        }
        return Columns(self.operands, self._lines, positions, by_line=by_line)

    def target(self, meaning: Meaning) -> Placement:
        return self.placements[NOTHING if meaning.key in self.planner.absent else meaning.key]

    def operand(self, meaning: Meaning) -> Operand:
        is_absent, target = meaning.key in self.planner.absent, self.target(meaning)
        is_single = is_absent or isinstance(meaning.holder, Card) or getattr(meaning.field, "is_one", False)
        if target.sheet != self.sheet:
            ref = target.key if self.is_named else target.range
        elif meaning.is_column or is_single:
            ref = target.area
        else:
            ref = f"${target.letter}{ROW}"
        return Operand(meaning, ref, unit_of(meaning.field, self.planner.system) or NUMBER_UNIT, is_absent)

    def _ref(self, key: str) -> str:
        """The cells of a field, by its full key."""
        return self.operand(self.planner.meaning(None, key)).ref

    def _own_ref(self, key: str) -> str:
        """The cell of a field of the same record."""
        return self.operand(self.planner.meaning(self.block, key)).ref

    def _lines(self, log: Log) -> str:
        return self._ref(log.lines_column)

    def _listing(self) -> Iterator[tuple[str, Log, Position]]:
        """The lists among its words that keep the position of each of their own names."""
        for word in self.meanings:
            holder, field = self.planner.by_key.get(word, (None, None))
            if isinstance(holder, Log) and holder is not self.block and (found := holder.position_of(field.key, word)):
                yield word, holder, found

    def _by_line(self, names: str, name: str) -> ByLine | None:
        """How a sum finds the records with a name by position, if both sides keep positions in the same list."""
        holder, field = self.planner.by_key.get(names, (None, None))
        if not isinstance(holder, Log) or name not in self.block.by_key:
            return None
        is_own = isinstance(own := self.block.by_key[name], Input) and self.block.names_its_records(own)
        if is_own and (theirs := holder.position_of(field.key, self.block.names_column)):
            line = self.placements[self.block.names_column].line
            return ByLine(self._ref(holder.full_key(theirs.key)), line, is_own=True)
        for ours in (each for each in self.block.positions if each.name == name):
            if ours.names == names and any(map(holder.names_its_records, holder.inputs)):
                return ByLine("", self._own_ref(ours.key), is_own=False)
            if theirs := holder.position_of(field.key, ours.names):
                return ByLine(self._ref(holder.full_key(theirs.key)), self._own_ref(ours.key), is_own=False)
        return None
