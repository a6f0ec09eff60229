"""Which cells of a file are the planner's own: its fields, where the file's names point, and the texts beside them.

On a sheet of this same version, with its lines where they were written, every cell is compared with what the generator
writes. On others the names show where our fields are, and what is to the right of those, or below, is the user's,
unless it is a sentence that some version writes.
"""

import math
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from functools import cache, cached_property
from pathlib import Path
from typing import Protocol

from workbookgen import __version__
from workbookgen.book.placement import Layout, Placement, ProofColumn
from workbookgen.engines import Area
from workbookgen.filled.as_made import beside_fields, laid_out
from workbookgen.filled.cells import Cell, Position
from workbookgen.filled.made_with import ORIGIN
from workbookgen.filled.planner import FilledPlanner
from workbookgen.language.automatic import MESSAGE
from workbookgen.language.entries import starting_entries
from workbookgen.language.parts import Column
from workbookgen.language.views import COLUMNS
from workbookgen.ooxml.references import MOST_ROWS

WIDE = 0  # in place of a column's number; a name in a hostile file may point to all columns of a sheet
KEPT = "leftovers"  # the table of entries that found no cell in an earlier carrying


class OwnTexts(Protocol):
    """What of a sheet is ours, beside its fields."""

    def has(self, position: Position, cell: Cell) -> bool: ...


@dataclass(frozen=True)
class AllOrNone:
    """A sheet that no name points to: ours if we write one of that name without fields, else the user's own."""

    is_ours: bool

    def has(self, position: Position, cell: Cell) -> bool:
        return self.is_ours


@dataclass(frozen=True)
class AsWritten:
    """A sheet on which all is where this version writes it."""

    written: Mapping[Position, float | str]
    words: Collection[str]

    def has(self, position: Position, cell: Cell) -> bool:
        if position in self.written and _is_same(cell, self.written[position]):
            return True
        row, _ = position
        return row == 1 and cell.value in self.words  # there are more links where there is a sheet of leftovers


@dataclass(frozen=True)
class AroundFields:
    """A sheet of another version, or one in which lines or columns were inserted."""

    bottom: int  # the last row in which something of ours may stand, and the last column
    right: int
    words: Collection[str]  # texts that we write, on any sheet
    numbers: Collection[float] | None  # that we write beside the fields of this sheet; None: any
    rows_above: Collection[int]  # records inserted above the first line of a log, where its names do not reach
    has_unnamed_formulas: bool
    columns: Collection[int]  # those of a log with a sheet of its own, and from which row to which they go
    records: Collection[tuple[int, int]]

    def has(self, position: Position, cell: Cell) -> bool:
        row, column = position
        if not cell.formula and cell.value in self.words:
            return True
        if row > self.bottom or column > self.right or self._is_in_inserted_column(position):
            return False
        if cell.formula:  # in an inserted line it was copied there
            return row in self.rows_above or self.has_unnamed_formulas
        return row not in self.rows_above and (self.numbers is None or cell.value in self.numbers)

    def _is_in_inserted_column(self, position: Position) -> bool:
        """Whether a cell is beside records, where otherwise every column has a name."""
        row, column = position
        is_within = column not in self.columns and column < max(self.columns, default=0)
        return is_within and any(first <= row <= last for first, last in self.records)


@dataclass
class OwnCells:
    """Where the planner's own cells are in one file."""

    old: FilledPlanner

    @cached_property
    def layout(self) -> Layout:
        """What this version writes for the settings in the file."""
        return laid_out(self.old.made_with)

    @property
    def is_of_this_version(self) -> bool:
        return self.old.version == __version__

    @cached_property
    def areas(self) -> dict[str, Area]:
        """The cells that each name of ours points to in the file."""
        areas = self.old.book.areas
        ours = [name for name in areas if name in self.layout.placements or self._is_of_a_block(name)]
        return {name: areas[name] for name in ours}

    @cached_property
    def leftovers(self) -> list[Area]:
        """The cells with what an earlier carrying found no place for."""
        return [area for name, area in self.old.book.areas.items() if name.startswith(f"{KEPT}_")]

    @cached_property
    def as_written(self) -> set[str]:
        """The sheets on which every field is where this version writes it."""
        if not self.is_of_this_version:
            return set()
        placements = self.layout.placements
        written = {key: Area(each.sheet, each.row, each.column, each.rows) for key, each in placements.items()}
        moved = {area.sheet for key, area in written.items() if self.areas.get(key) != area}
        moved |= {area.sheet for name, area in self.areas.items() if name not in placements}
        return set(self.layout.plans) - moved

    @cached_property
    def is_all_as_written(self) -> bool:
        return self.as_written == set(self.layout.plans)

    def is_in_a_field(self, sheet: str, position: Position) -> bool:
        """Whether names of ours point to a cell; not if it is a fact, which can be compared with what was written."""
        row, column = position
        return any(
            area.row <= row <= area.last_row and area.column <= column <= area.last_column
            for narrow_or_wide in (column, WIDE)
            for area in self._fields.get((sheet, narrow_or_wide), ())
        )

    def beside_fields(self, sheet: str) -> OwnTexts:
        """What is ours on a sheet beside its fields."""
        if sheet in self.as_written:
            return AsWritten(self._written_beside_fields[sheet], self._words)
        areas = [area for area in self.areas.values() if area.sheet == sheet]
        kept = [area for area in self.leftovers if area.sheet == sheet]
        return self._around([*areas, *kept]) if areas or kept else AllOrNone(sheet in self.layout.plans)

    def _is_of_a_block(self, name: str) -> bool:
        """Whether a name belongs to a block of fields, known today or not: one in which somebody types has a message.

        Another version may have more fields in a block in which nobody types.
        """
        parts = name.split("_")
        blocks = ["_".join(parts[:length]) for length in range(1, len(parts))]
        known = () if self.is_of_this_version else self.layout.planner.blocks
        return any(f"{block}_{MESSAGE.key}" in self.old.book.names or block in known for block in blocks)

    @cached_property
    def _fields(self) -> dict[tuple[str, int], set[Area]]:
        """Sheet and column -> the areas that names of ours point to; those of several columns are under WIDE."""
        facts = {key for key, each in self.layout.placements.items() if is_fact(each) and each.sheet in self.as_written}
        named = [area for name, area in self.areas.items() if name not in facts - {ORIGIN}]
        # With lines that were inserted above the first record.
        inputs = [self.old.ranges[each.key] for each in self.layout.inputs if each.key in self.old.ranges]
        found: dict[tuple[str, int], set[Area]] = {}
        for area in (*named, *inputs, *self.leftovers):
            found.setdefault((area.sheet, area.column if area.columns == 1 else WIDE), set()).add(area)
        return found

    @cached_property
    def _written_beside_fields(self) -> dict[str, dict[Position, float | str]]:
        return beside_fields(self.old.made_with)

    @cached_property
    def _words(self) -> set[str]:
        """Every text that the generator writes, with starting values, and what earlier versions wrote below fields."""
        columns = (
            *(cells.values() for cells in self._written_beside_fields.values()),
            *starting_entries(self.layout.planner).values(),
        )
        return {value for column in columns for value in column if isinstance(value, str)} | _earlier_sentences()

    def _around(self, named: list[Area]) -> AroundFields:
        """What is ours on the sheet of these areas, which are all that names of ours point to there."""
        sheet = named[0].sheet
        bottom, right = self._corner(sheet, named)
        columns = self._columns_of_records(sheet)
        is_first = sheet == next(iter(self.old.book.sheets))
        return AroundFields(
            bottom,
            right,
            self._words,
            self._numbers(sheet),
            self._inserted_above(sheet),
            # Every formula of ours has a name, but for some that the first sheet had until version 0.4.1.
            has_unnamed_formulas=not self.is_of_this_version and is_first,
            columns={area.column for area in columns},
            # The columns of a log end in the same few rows, which in a foreign file can be a million each.
            records={(area.row, area.last_row) for area in columns},
        )

    def _corner(self, sheet: str, named: Iterable[Area]) -> Position:
        """The last row and column of a sheet in which something of ours may stand; `named` are its areas."""
        # Below its fields, a sheet may have texts of ours; while it is protected, nobody can add others.
        bottom = MOST_ROWS if sheet in self.old.book.protected else max(area.last_row for area in named)
        verdicts = (
            (part, self.areas.get(part.full_key("verdict"))) for part in self.layout.planner.proof_tables.values()
        )
        given = [part.most_given for part, area in verdicts if area and area.sheet == sheet]
        columns = (area.last_column for area in named)
        return bottom, max(1 + COLUMNS, *columns, *(ProofColumn.VALUES + most - 1 for most in given))

    def _numbers(self, sheet: str) -> set[float] | None:
        """Every number that this version writes beside the fields of a sheet; None if it does not write the sheet."""
        placed = [self.layout.placements.get(name) for name, area in self.areas.items() if area.sheet == sheet]
        pages = {each.sheet for each in placed if each}
        if not self.is_of_this_version or not pages:
            return None
        written = self._written_beside_fields
        return {value for page in pages for value in written[page].values() if isinstance(value, float)}

    def _inserted_above(self, sheet: str) -> set[int]:
        """The rows with records that were inserted above the first line of a log."""
        inputs = [(area, self.old.ranges[name]) for name, area in self.areas.items() if name in self.old.ranges]
        return {row for area, whole in inputs if area.sheet == sheet for row in range(whole.row, area.row)}

    def _columns_of_records(self, sheet: str) -> list[Area]:
        """The columns of a log that has a sheet of its own."""
        logs = {f"{log.key}_" for each in self.layout.planner.sheets if each.log_view for log in each.logs}
        areas = (area for name, area in self.areas.items() if area.sheet == sheet and name.startswith(tuple(logs)))
        return [area for area in areas if area.rows > 1]


def is_fact(placed: Placement) -> bool:
    """Whether these are the planner's own texts or numbers: no formulas, and nobody types there."""
    return isinstance(placed.field, Column) and not placed.formulas


@cache
def _earlier_sentences() -> frozenset[str]:
    """Sentences that earlier versions had below the fields of a sheet, and this one does not."""
    return frozenset(Path(__file__).with_name("earlier_sentences.txt").read_text(encoding="utf-8").splitlines())


def _is_same(cell: Cell, written: float | str) -> bool:
    if isinstance(cell.value, float) and isinstance(written, float):
        return math.isclose(cell.value, written, rel_tol=1e-12)
    return cell.value == written and not cell.formula
