"""Which entry of an old planner belongs where in a new one.

Fields are matched by their keys, which are stable across versions. Records keep their lines if there are enough of
them. The lines that a planner starts with, its reels and its guide, are replaced by those of the new planner unless
somebody changed them; changed and added lines come over. So does a reel if the new planner, in other units, has a
different one of that name. An entry that has no cell becomes a leftover.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, timedelta
from math import isclose, isfinite

from workbookgen.carry.conversion import converted, is_conversion
from workbookgen.carry.leftovers import IN_ITS_CELL, LONGEST, ONLY_HERE, Leftover
from workbookgen.engines import ErrorValue
from workbookgen.filled.planner import FilledPlanner, described
from workbookgen.language.domains import Date, Name
from workbookgen.language.entries import Entry, starting_entries
from workbookgen.language.fields import Input
from workbookgen.language.parts import Block, Log
from workbookgen.language.planner import Planner
from workbookgen.language.quantities import LOOP, PERCENT_UNIT
from workbookgen.texts import folded

REELS = "reels"  # the log of what skeins are wound on
NAME = "name"  # of the lines that a planner starts with: they are recognized by it
ALIKE = 1e-9  # relative: figures that count as equal
DAY_NOUGHT = date(1899, 12, 30)

Record = dict[str, Entry]


@dataclass
class Matched:
    """The entries of the new planner, and what happened to those of the old one."""

    entries: dict[str, list[Entry]]
    notes: dict[tuple[str, int], str] = field(default_factory=dict)  # on the cells of the new planner
    leftovers: list[Leftover] = field(default_factory=list)
    rows: dict[str, dict[int, int]] = field(default_factory=dict)  # of each block: old line -> new line
    # Block and old line: these took the new planner's own figures.
    renewed: set[tuple[str, int]] = field(default_factory=set)
    converted: int = 0


def match(old: FilledPlanner, new: Planner) -> Matched:
    """The old planner's entries in the new planner."""
    matched = Matched({key: list(column) for key, column in starting_entries(new).items()})
    for block in old.planner.blocks.values():
        if any(block.full_key(each.key) in old.entries for each in block.inputs):
            _Matching(old, new, block, matched).carry()
    return matched


@dataclass
class _Matching:
    """One block being carried over."""

    old: FilledPlanner
    new: Planner
    block: Block
    matched: Matched

    def carry(self) -> None:
        """Bring every record to its line; what has no place becomes a leftover."""
        lines, target = self._lines(), self.new.blocks.get(self.block.key)
        untouched = {row: line for row, line in lines.items() if self._is_untouched(row, line)}
        if target is None:
            typed = {row: line for row, line in lines.items() if row not in untouched}
            self._list_lines(typed, "the new planner does not have this sheet")
            return
        starting = _starting_lines(target)
        renewed = self._renewed(untouched, target)
        rows = _placed(lines, target.rows) if isinstance(target, Log) else {0: 0}
        if isinstance(target, Log):
            for each in target.inputs:
                self.matched.entries[target.full_key(each.key)] = [None] * target.rows
        for row, line in lines.items():
            if row not in rows:
                self._list_lines({row: line}, f"the new planner has only {target.rows} lines here")
            elif row in renewed:
                self._renew(row, rows[row], line, renewed[row], target)
            else:
                for key, entry in line.items():
                    self._move(row, rows[row], key, entry, target)
                record = {} if row in untouched else starting.get(_known_by(target, line), {})
                self._complete(rows[row], line, record, target)
        self.matched.rows[self.block.key] = rows
        known = {_known_by(target, line) for line in lines.values()} | set(_starting_lines(self.block))
        self._add([record for name, record in starting.items() if name not in known], target)

    def _renewed(self, untouched: dict[int, Record], target: Block) -> dict[int, Mapping[str, Entry]]:
        """Line -> the new planner's own line that takes its place, of the lines that nobody changed."""
        starting = _starting_lines(target)
        own = {row: starting.get(_known_by(target, line)) for row, line in untouched.items()}
        return {
            row: record
            for row, record in own.items()
            if record is not None and not self._is_another_reel(untouched[row], record)
        }

    def _lines(self) -> dict[int, Record]:
        """Line -> its record, of the fields that the file has; a log's blank lines are left out."""
        keys = [each.key for each in self.block.inputs if self.block.full_key(each.key) in self.old.entries]
        columns = [self.old.entries[self.block.full_key(key)] for key in keys]
        lines = {row: dict(zip(keys, values, strict=True)) for row, values in enumerate(zip(*columns, strict=True))}
        if not isinstance(self.block, Log):
            return lines

        def is_begun(row: int, line: Record) -> bool:
            return any(self._is_filled(row, key, entry) for key, entry in line.items())

        return {row: line for row, line in lines.items() if is_begun(row, line)}

    def _is_filled(self, row: int, key: str, entry: Entry) -> bool:
        """Whether a cell has something in it or pinned to it, even if its entry reads as empty, such as an error."""
        cell = self.old.cell(self.block.full_key(key), row)
        has_something = cell is not None and (cell.formula != "" or cell.value is not None)
        return entry is not None or has_something or self._comment(row, key) != ""

    def _is_untouched(self, row: int, line: Record) -> bool:
        record = _starting_lines(self.block).get(_known_by(self.block, line))
        is_same = record is not None and all(_alike(entry, record.get(key)) for key, entry in line.items())
        return is_same and not any(self._comment(row, key) for key in line)

    def _is_another_reel(self, line: Record, record: Mapping[str, Entry]) -> bool:
        """Whether this is a reel, and the new planner, in other units, has a different one of the same name.

        A niddy-noddy of 40 cm is not one of 15 in, and skeins were wound on the old one.
        """
        is_in_other_units = LOOP.unit(self.old.settings.units) != LOOP.unit(self.new.system)
        return self.block.key == REELS and is_in_other_units and bool(self._differing(line, record))

    def _differing(self, line: Record, record: Mapping[str, Entry]) -> list[str]:
        """The fields of an untouched line in which the new planner's own line differs.

        Figures are rounded for each unit system, so the comparison is with the line that the old planner's settings
        give in the new one.
        """
        in_new_units = described(self.old.settings.model_copy(update={"units": self.new.system}))
        own = _starting_lines(in_new_units.blocks[self.block.key])
        before = own.get(_known_by(self.block, line), line)
        return [key for key in line if not _alike(before.get(key), record.get(key))]

    def _renew(self, row: int, place: int, line: Record, record: Mapping[str, Entry], target: Block) -> None:
        """Give an untouched line the new planner's figures; old ones that differ are listed."""
        self.matched.renewed.add((self.block.key, row))
        for each in target.inputs:
            self.matched.entries[target.full_key(each.key)][place] = record.get(each.key)
        for key in self._differing(line, record):
            self._list(row, key, line[key], "nobody had changed this line, so the new planner's own took its place")

    def _complete(self, place: int, line: Record, record: Mapping[str, Entry], target: Block) -> None:
        """Fill the fields that the old planner lacked, in a line that somebody changed, as in the new planner."""
        for each in target.inputs:
            if each.key not in line and each.key in record:
                self.matched.entries[target.full_key(each.key)][place] = record[each.key]

    def _move(self, row: int, place: int, key: str, entry: Entry, target: Block) -> None:
        """Bring one entry to its cell, with the note that is pinned to it."""
        each = target.by_key.get(key)
        comment = self._comment(row, key)
        if not isinstance(each, Input):
            self._list_cell(row, key, entry, "the new planner does not have this field")
            return
        self._list_what_is_lost(row, key)
        full = target.full_key(key)
        if isinstance(entry, str) and len(entry) > LONGEST:
            self._list(row, key, entry, "it is longer than a cell can hold")
            entry = None
        if isinstance(entry, float) and not each.is_text:
            told = comment if is_conversion(comment) else ""
            value = converted(entry, each.unit, self.old.settings.units, self.new.system, told)
            if isfinite(value.value):
                self.matched.converted += value.value != entry
                entry = value.value
                comment = value.note if told or not comment else "\n".join(filter(None, (comment, value.note)))
            else:
                self._list(row, key, entry, "in the new units it is more than a cell can hold")
                entry = None
        self.matched.entries[full][place] = entry
        if comment:
            self.matched.notes[full, place] = comment[:LONGEST]

    def _comment(self, row: int, key: str) -> str:
        sheet, line, column = self.old.position(self.block.full_key(key), row)
        return self.old.book.comments.get(sheet, {}).get((line, column), "")

    def _list_what_is_lost(self, row: int, key: str) -> None:
        """List what the new cell cannot show: arithmetic, errors, truth values."""
        cell = self.old.cell(self.block.full_key(key), row)
        if cell is None:
            return
        if isinstance(cell.value, ErrorValue):
            why = f"it showed the error {cell.value}, so the new cell is empty"
            self._list(row, key, cell.formula or str(cell.value), why)
        elif cell.formula and cell.value is None:
            self._list(row, key, cell.formula, "it showed nothing, so the new cell is empty")
        elif cell.formula:
            self._list(row, key, cell.formula, "its value came over; how it was worked out is only here")
        elif isinstance(cell.value, bool) and self.block.by_key[key].is_text:  # as a number it is refused in any case
            self._list(row, key, str(cell.value).upper(), "it was TRUE or FALSE, and came over as a text", IN_ITS_CELL)

    def _list_lines(self, lines: dict[int, Record], why: str) -> None:
        """List lines that have no place."""
        for row, line in lines.items():
            for key, entry in line.items():
                self._list_cell(row, key, entry, why)

    def _first(self, key: str) -> Entry:
        """The value that a field starts with: on a card, that is not an entry."""
        return None if isinstance(self.block, Log) else self.block.by_key[key].first(self.old.settings.units)

    def _list_cell(self, row: int, key: str, entry: Entry, why: str) -> None:
        """List what one cell holds, unless it is still its first value, with its arithmetic and its note."""
        cell = self.old.cell(self.block.full_key(key), row)
        formula = cell.formula if cell else ""
        if entry is not None and not _alike(entry, self._first(key)):
            self._list(row, key, entry, f"{why}; it was calculated by {formula}" if formula else why)
        elif entry is None and cell and (formula or cell.value is not None):
            self._list(row, key, formula or str(cell.value), f"it showed {cell.value or 'nothing'}; {why}")
        if comment := self._comment(row, key):
            self._list(row, key, comment, f"a note on the cell; {why}")

    def _list(self, row: int, key: str, what: Entry, why: str, now: str = ONLY_HERE) -> None:
        each = self.block.by_key[key]
        sheet, cell = self.old.place(self.block.full_key(key), row)
        what, unit = readable(each, what, self.old.settings.units)
        name = self._record(row) if key != NAME else ""
        whose = f", {name}" if each.label.endswith(" of") else f" of {name}"  # not "Also of of Clover"
        label = each.label + (f" ({unit})" if unit else "") + (whose if name else "")
        self.matched.leftovers.append(Leftover(sheet, cell, label, what, why, now))

    def _record(self, row: int) -> str:
        """The name of a record, which tells its leftovers from those of others."""
        names = self.old.entries.get(self.block.full_key(NAME), ()) if isinstance(self.block, Log) else ()
        return names[row] if row < len(names) and isinstance(names[row], str) else ""

    def _add(self, records: list[Mapping[str, Entry]], target: Block) -> None:
        """Add the lines that the new planner starts with and the old one never had, below what is there."""
        columns = {each.key: self.matched.entries[target.full_key(each.key)] for each in target.inputs}
        filled = [row for column in columns.values() for row, entry in enumerate(column) if entry is not None]
        below = range(max(filled, default=-1) + 1, target.rows)
        for place, record in zip(below, records, strict=False):
            for key, column in columns.items():
                column[place] = record.get(key)


def readable(each: Input, what: Entry, system: str) -> tuple[Entry, str]:
    """A value as a person would type it, and its unit: percentages with their sign, dates as dates."""
    if not isinstance(what, float):
        return what, ""
    if isinstance(each.domain, Date):
        return ((DAY_NOUGHT + timedelta(days=what)).isoformat() if each.domain.accepts(what) else what), ""
    symbol = each.unit.unit(system).symbol if each.unit else ""
    return (_percentage(what), "") if symbol == PERCENT_UNIT.symbol else (what, symbol)


def _percentage(share: float) -> str:
    """A percentage with the fewest digits that give the exact number when typed."""
    written = [f"{share * 100:.{digits}g}" for digits in (15, 16, 17)]
    return next((each for each in written if float(each) / 100 == share), written[-1]) + "%"


def _placed(lines: dict[int, Record], rows: int) -> dict[int, int]:
    """Old line -> new line: the same, or if there are too few, one after another until they run out."""
    if all(row < rows for row in lines):
        return {row: row for row in lines}
    return dict(zip(sorted(lines), range(rows), strict=False))


def _starting_lines(block: Block) -> dict[tuple[str, ...], Mapping[str, Entry]]:
    """The lines that a log starts with, by what they are known by."""
    records = block.starts_with if isinstance(block, Log) else ()
    return {_known_by(block, record): record for record in records if NAME in record}


def _known_by(block: Block, record: Mapping[str, Entry]) -> tuple[str, ...]:
    """The name of a record; if names may repeat, all its texts: a hat for a child, and one for a grown-up."""
    name = block.by_key.get(NAME)
    is_shared = isinstance(name, Input) and isinstance(name.domain, Name) and not name.domain.unique
    words = [each.key for each in block.inputs if each.is_text] if is_shared else [NAME]
    return tuple(folded(str(record.get(key) or "")) for key in words)


def _alike(one: Entry, other: Entry) -> bool:
    if isinstance(one, float) and isinstance(other, float):
        return isclose(one, other, rel_tol=ALIKE, abs_tol=ALIKE)
    return one == other
