"""Which entry of an old planner belongs where in a new one.

Fields are matched by their keys, which are stable across versions; records keep their lines where there are enough.
Lines with which a planner starts, its reels and its guide, give way to those of the new planner as long as nobody
touched them; what was changed or added comes over, and so does a reel of which a planner in other units has another.
An entry that has no cell becomes a leftover.
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
NAME = "name"  # by which the lines with which a planner starts are recognized
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
    renewed: set[tuple[str, int]] = field(
        default_factory=set
    )  # block and old line: they took the new planner's figures
    converted: int = 0


def match(old: FilledPlanner, new: Planner) -> Matched:
    """The old planner's entries in the new planner."""
    matched = Matched({key: list(column) for key, column in starting_entries(new).items()})
    for block in old.planner.blocks.values():
        if any(f"{block.key}_{each.key}" in old.entries for each in block.inputs):
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
        """Every record to its line; what has no place becomes a leftover."""
        lines = self._lines()
        target = self.new.blocks.get(self.block.key)
        untouched = {row: line for row, line in lines.items() if self._is_untouched(row, line)}
        if target is None:
            typed = {row: line for row, line in lines.items() if row not in untouched}
            self._strand(typed, "the new planner does not have this sheet")
            return
        starting = _brought(target)
        known_by = {row: _known_by(target, line) for row, line in untouched.items()}
        of_its_name = {row: starting[known] for row, known in known_by.items() if known in starting}
        others = {row for row, record in of_its_name.items() if self._is_another(lines[row], record)}
        renewed = {row: record for row, record in of_its_name.items() if row not in others}
        rows = _placed(lines, target.rows) if isinstance(target, Log) else {0: 0}
        if isinstance(target, Log):
            for each in target.inputs:
                self.matched.entries[f"{target.key}_{each.key}"] = [None] * target.rows
        for row, line in lines.items():
            if row not in rows:
                self._strand({row: line}, f"the new planner has only {target.rows} lines here")
            elif row in renewed:
                self._renew(row, rows[row], line, renewed[row], target)
            else:
                for key, entry in line.items():
                    self._move(row, rows[row], key, entry, target)
                record = {} if row in others else starting.get(_known_by(target, line), {})
                self._complete(rows[row], line, record, target)
        self.matched.rows[self.block.key] = rows
        known = {_known_by(target, line) for line in lines.values()} | set(_brought(self.block))
        self._add([record for name, record in starting.items() if name not in known], target)

    def _lines(self) -> dict[int, Record]:
        """The records by their line, of the fields that the file has; a log's blank lines are left out."""
        keys = [each.key for each in self.block.inputs if self._full(each.key) in self.old.entries]
        columns = [self.old.entries[self._full(key)] for key in keys]
        lines = {row: dict(zip(keys, values, strict=True)) for row, values in enumerate(zip(*columns, strict=True))}
        if not isinstance(self.block, Log):
            return lines

        def is_begun(row: int, line: Record) -> bool:
            return any(self._stands(row, key, entry) for key, entry in line.items())

        return {row: line for row, line in lines.items() if is_begun(row, line)}

    def _stands(self, row: int, key: str, entry: Entry) -> bool:
        """Whether a cell has something in it or pinned to it; one with an error, or not calculated, reads as empty."""
        cell = self.old.cell(self._full(key), row)
        has_something = cell is not None and (cell.formula != "" or cell.value is not None)
        return entry is not None or has_something or self._comment(row, key) != ""

    def _full(self, key: str) -> str:
        return f"{self.block.key}_{key}"

    def _is_untouched(self, row: int, line: Record) -> bool:
        record = _brought(self.block).get(_known_by(self.block, line))
        is_same = record is not None and all(_alike(entry, record.get(key)) for key, entry in line.items())
        return is_same and not any(self._comment(row, key) for key in line)

    def _is_another(self, line: Record, record: Mapping[str, Entry]) -> bool:
        """Whether the new planner, in other units, means another reel by this name.

        A niddy-noddy of 40 cm is none of 15 in, and skeins were wound on the old one.
        """
        is_in_other_units = LOOP.unit(self.old.settings.units) != LOOP.unit(self.new.system)
        return self.block.key == REELS and is_in_other_units and bool(self._unlike(line, record))

    def _unlike(self, line: Record, record: Mapping[str, Entry]) -> list[str]:
        """The fields of a line that nobody touched in which the new planner's own has other figures.

        Figures are rounded for each unit system, so they are compared with those that the old planner's settings give
        in the new one.
        """
        in_new_units = described(self.old.settings.model_copy(update={"units": self.new.system}))
        own = _brought(in_new_units.blocks[self.block.key])
        before = own.get(_known_by(self.block, line), line)
        return [key for key in line if not _alike(before.get(key), record.get(key))]

    def _renew(self, row: int, place: int, line: Record, record: Mapping[str, Entry], target: Block) -> None:
        """A line that nobody touched takes the new planner's figures; where they differ, the old ones are reported."""
        self.matched.renewed.add((self.block.key, row))
        for each in target.inputs:
            self.matched.entries[f"{target.key}_{each.key}"][place] = record.get(each.key)
        for key in self._unlike(line, record):
            self._leave(row, key, line[key], "the new planner's own line took its place")

    def _complete(self, place: int, line: Record, record: Mapping[str, Entry], target: Block) -> None:
        """Fields that the old planner lacked, in a line that somebody changed: as in the new planner."""
        for each in target.inputs:
            if each.key not in line and each.key in record:
                self.matched.entries[f"{target.key}_{each.key}"][place] = record[each.key]

    def _move(self, row: int, place: int, key: str, entry: Entry, target: Block) -> None:
        """One entry to its cell, with what was pinned to it."""
        each = target.by_key.get(key)
        comment = self._comment(row, key)
        if not isinstance(each, Input):
            self._strand_one(row, key, entry, "the new planner does not have this field", self._first(key))
            return
        self._tell(row, key)
        full = f"{target.key}_{key}"
        if isinstance(entry, str) and len(entry) > LONGEST:
            self._leave(row, key, entry, "it is longer than a cell can hold")
            entry = None
        if isinstance(entry, float) and not each.is_text:
            told = comment if is_conversion(comment) else ""
            value = converted(entry, each.unit, self.old.settings.units, self.new.system, told)
            if isfinite(value.value):
                self.matched.converted += value.value != entry
                entry = value.value
                comment = value.note if told or not comment else "\n".join(filter(None, (comment, value.note)))
            else:
                self._leave(row, key, entry, "in the new units it is more than a cell can hold")
                entry = None
        self.matched.entries[full][place] = entry
        if comment:
            self.matched.notes[full, place] = comment[:LONGEST]

    def _comment(self, row: int, key: str) -> str:
        sheet, line, column = self.old.position(self._full(key), row)
        return self.old.book.comments.get(sheet, {}).get((line, column), "")

    def _tell(self, row: int, key: str) -> None:
        """What the new cell cannot show: arithmetic, errors, truth values."""
        cell = self.old.cell(self._full(key), row)
        if cell is None:
            return
        if isinstance(cell.value, ErrorValue):
            why = f"it showed the error {cell.value}, so the new cell is empty"
            self._leave(row, key, cell.formula or str(cell.value), why)
        elif cell.formula and cell.value is None:
            self._leave(row, key, cell.formula, "it shows nothing, so the new cell is empty")
        elif cell.formula:
            self._leave(row, key, cell.formula, "its value came over; the arithmetic is told here only")
        elif isinstance(cell.value, bool) and self.block.by_key[key].is_text:  # as a number it is refused in any case
            self._leave(row, key, str(cell.value).upper(), "it was a truth value, and came over as a text", IN_ITS_CELL)

    def _strand(self, lines: dict[int, Record], why: str) -> None:
        """Lines without a place."""
        for row, line in lines.items():
            for key, entry in line.items():
                self._strand_one(row, key, entry, why, self._first(key))

    def _first(self, key: str) -> Entry:
        """What a field holds that nobody touched: the first value of a card is not an entry."""
        return None if isinstance(self.block, Log) else self.block.by_key[key].first(self.old.settings.units)

    def _strand_one(self, row: int, key: str, entry: Entry, why: str, first: Entry = None) -> None:
        """What one cell holds that is not as it was at `first`, the arithmetic behind it, and what was pinned to it."""
        cell = self.old.cell(self._full(key), row)
        formula = cell.formula if cell else ""
        if entry is not None and not _alike(entry, first):
            self._leave(row, key, entry, f"{why}; it was worked out by {formula}" if formula else why)
        elif entry is None and cell and (formula or cell.value is not None):
            self._leave(row, key, formula or str(cell.value), f"it shows {cell.value or 'nothing'}; {why}")
        if comment := self._comment(row, key):
            self._leave(row, key, comment, f"a note on the cell; {why}")

    def _leave(self, row: int, key: str, what: Entry, why: str, now: str = ONLY_HERE) -> None:
        each = self.block.by_key[key]
        sheet, cell = self.old.place(self._full(key), row)
        what, unit = readable(each, what, self.old.settings.units)
        name = self._record(row) if key != NAME else ""
        whose = f", {name}" if each.label.endswith(" of") else f" of {name}"  # not "Also of of Clover"
        label = each.label + (f" ({unit})" if unit else "") + (whose if name else "")
        self.matched.leftovers.append(Leftover(sheet, cell, label, what, why, now))

    def _record(self, row: int) -> str:
        """What the user calls a record, so its leftovers can be distinguished."""
        names = self.old.entries.get(self._full(NAME), ()) if isinstance(self.block, Log) else ()
        return names[row] if row < len(names) and isinstance(names[row], str) else ""

    def _add(self, records: list[Mapping[str, Entry]], target: Block) -> None:
        """Lines with which the new planner starts and that the old one never had, below what is there."""
        columns = {each.key: self.matched.entries[f"{target.key}_{each.key}"] for each in target.inputs}
        filled = [row for column in columns.values() for row, entry in enumerate(column) if entry is not None]
        below = range(max(filled, default=-1) + 1, target.rows)
        for place, record in zip(below, records, strict=False):
            for key, column in columns.items():
                column[place] = record.get(key)


def readable(each: Input, what: Entry, system: str) -> tuple[Entry, str]:
    """A value as one would type it again, and its unit: percentages with their sign, dates as dates."""
    if not isinstance(what, float):
        return what, ""
    if isinstance(each.domain, Date):
        return ((DAY_NOUGHT + timedelta(days=what)).isoformat() if each.domain.accepts(what) else what), ""
    symbol = each.unit.unit(system).symbol if each.unit else ""
    return (_percentage(what), "") if symbol == PERCENT_UNIT.symbol else (what, symbol)


def _percentage(share: float) -> str:
    """With as few digits as reproduce the exact number when typed."""
    written = [f"{share * 100:.{digits}g}" for digits in (15, 16, 17)]
    return next((each for each in written if float(each) / 100 == share), written[-1]) + "%"


def _placed(lines: dict[int, Record], rows: int) -> dict[int, int]:
    """Old line -> new line: the same, or if there are too few, one after another as far as they go."""
    if all(row < rows for row in lines):
        return {row: row for row in lines}
    return dict(zip(sorted(lines), range(rows), strict=False))


def _brought(block: Block) -> dict[tuple[str, ...], Mapping[str, Entry]]:
    """The lines with which a log starts."""
    records = block.starts_with if isinstance(block, Log) else ()
    return {_known_by(block, record): record for record in records if NAME in record}


def _known_by(block: Block, record: Mapping[str, Entry]) -> tuple[str, ...]:
    """The name of a record, and where several may share one, all its words: a hat for a child, one for a grown-up."""
    name = block.by_key.get(NAME)
    is_shared = isinstance(name, Input) and isinstance(name.domain, Name) and not name.domain.unique
    words = [each.key for each in block.inputs if each.is_text] if is_shared else [NAME]
    return tuple(folded(str(record.get(key) or "")) for key in words)


def _alike(one: Entry, other: Entry) -> bool:
    if isinstance(one, float) and isinstance(other, float):
        return isclose(one, other, rel_tol=ALIKE, abs_tol=ALIKE)
    return one == other
