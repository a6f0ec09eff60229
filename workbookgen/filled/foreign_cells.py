"""What people put into a planner besides its inputs: notes in the margin, sheets, changed formulas.

A sheet of this same version, with its lines where they were written, is compared with what the generator writes. In
other sheets the names in the file show which cells are ours; what is to the right of those, or below, is the user's.
"""

import math
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from functools import cache, cached_property
from pathlib import Path

from workbookgen import __version__
from workbookgen.book.copied import CopiedDown
from workbookgen.book.placement import Layout, Placement, ProofColumn
from workbookgen.checking.formula_spelling import spelled
from workbookgen.engines import Area
from workbookgen.errors import FileError
from workbookgen.filled.as_made import beside_fields, laid_out
from workbookgen.filled.cells import Cell, Cells, Position
from workbookgen.filled.gate import STRAY_CELLS
from workbookgen.filled.made_with import ORIGIN
from workbookgen.filled.planner import FilledPlanner
from workbookgen.language.automatic import MESSAGE
from workbookgen.language.entries import starting_entries
from workbookgen.language.fields import Input
from workbookgen.language.parts import Column
from workbookgen.language.views import COLUMNS
from workbookgen.ooxml.formulas import Copied
from workbookgen.ooxml.references import MOST_ROWS, cell_name

# The table of entries that found no cell in an earlier carrying, and its sheet, which every sheet links to.
KEPT = "leftovers"
KEPT_ON = "Leftovers"
OUTSIDE = "it was typed beside the planner's own cells"
OVERWRITTEN = "it was typed over a worked-out cell, which is as it should be here"
CHANGED = "a worked-out cell had this in place of its own formula, which it has again here"
A_COPY = "what is not as on {0} is listed too; if it is right, type it on {0}, since nothing reads a copy"
NO_SUCH_FIELD = "the new planner does not have this field"


@dataclass(frozen=True)
class ForeignCell:
    """Something foreign: where it was, what it was, and why it is listed."""

    sheet: str
    cell: str
    label: str
    what: float | str
    why: str

    def __str__(self) -> str:
        what = f'"{self.what}"' if isinstance(self.what, str) else repr(self.what).removesuffix(".0")
        where = ", ".join(filter(None, (f"{self.sheet}!{self.cell}" if self.cell else self.sheet, self.label)))
        return f"{where}: {what} ({self.why})"


def foreign_cells(old: FilledPlanner, known: Collection[tuple[str, Position]] = ()) -> list[ForeignCell]:
    """Everything put in besides entries, except cells that are `known` to have been carried over.

    Raises FileError if that is too much.
    """
    search = _Search(old)
    cells = sum(len(each) for each in old.book.sheets.values())
    most = sum(placement.rows for placement in search.layout.placements.values()) + STRAY_CELLS
    if cells > most:
        raise FileError.at(
            str(old.path),
            f"this file has {cells:,} filled cells, where this planner has at most {most:,}; it is not carried over. "
            "Delete what was put beside the planner.",
        )
    return [*search.unknown_fields(known), *search.results(), *search.outside(), *search.comments()]


@dataclass
class _Search:
    """One file, searched for what is not the planner's."""

    old: FilledPlanner

    @cached_property
    def layout(self) -> Layout:
        return laid_out(self.old.made_with)

    @cached_property
    def areas(self) -> dict[str, Area]:
        """The cells that each name of ours points to in the file."""
        areas = self.old.book.areas
        ours = [name for name in areas if name in self.layout.placements or self._is_of_a_block(name)]
        return {name: areas[name] for name in ours}

    @cached_property
    def taken(self) -> dict[tuple[str, int], list[range]]:
        """Sheet and column -> the rows that names of ours point to, without facts compared with what was written."""
        facts = [
            key for key, each in self.layout.placements.items() if _is_fact(each) and each.sheet in self.as_written
        ]
        compared = {*facts} - {ORIGIN}
        named = [area for name, area in self.areas.items() if name not in compared]
        # With lines that were inserted above the first record.
        inputs = [self.old.ranges[each.key] for each in self.layout.inputs if each.key in self.old.ranges]
        taken: dict[tuple[str, int], list[range]] = {}
        for area in (*named, *inputs, *self._own_leftovers):
            for column in range(area.column, area.last_column + 1):
                taken.setdefault((area.sheet, column), []).append(range(area.row, area.last_row + 1))
        return taken

    def _is_taken(self, sheet: str, position: Position) -> bool:
        row, column = position
        return any(row in rows for rows in self.taken.get((sheet, column), ()))

    @property
    def _own_leftovers(self) -> list[Area]:
        return [area for name, area in self.old.book.areas.items() if name.startswith(f"{KEPT}_")]

    @cached_property
    def as_written(self) -> set[str]:
        """The sheets on which every cell of ours is where this version writes it."""
        if self.old.version != __version__:
            return set()
        placements = self.layout.placements
        written = {key: Area(each.sheet, each.row, each.column, each.rows) for key, each in placements.items()}
        moved = {area.sheet for key, area in written.items() if self.areas.get(key) != area}
        moved |= {area.sheet for name, area in self.areas.items() if name not in placements}
        return set(self.layout.plans) - moved

    def _is_of_a_block(self, name: str) -> bool:
        """Whether a name belongs to a block of fields, known today or not: one in which somebody types has a message.

        Another version may have more fields in a block in which nobody types.
        """
        parts = name.split("_")
        blocks = ["_".join(parts[:length]) for length in range(1, len(parts))]
        known = self.layout.planner.blocks if self.old.version != __version__ else ()
        return any(f"{block}_{MESSAGE.key}" in self.old.book.names or block in known for block in blocks)

    def _cells(self, area: Area, copied: Copied | None = None) -> Iterator[tuple[Position, Cell]]:
        """The filled cells of an area, without those that have a `copied` formula."""
        cells = self.old.book.sheets.get(area.sheet, Cells())
        return ((position, cells[position]) for position in _positions(area, cells) if not cells.has(position, copied))

    def unknown_fields(self, known: Collection[tuple[str, Position]]) -> Iterator[ForeignCell]:
        """What was typed into fields that today's planner does not have."""
        for name, area in self.areas.items():
            if name in self.layout.placements:
                continue
            for position, cell in self._cells(area):
                if not cell.formula and (area.sheet, position) not in known:
                    yield self._foreign(area.sheet, position, cell, NO_SUCH_FIELD, self._label(area))

    def results(self) -> Iterator[ForeignCell]:
        """Values that replaced our formulas, and changed formulas. Those that inserted lines changed do not count."""
        is_whole = self.as_written == set(self.layout.plans)
        for key, placed in self.layout.placements.items():
            if key not in self.areas or isinstance(placed.field, Input) or _is_fact(placed):
                continue
            area, label = self.areas[key], placed.field.label
            copied = Copied(placed.formulas.text) if isinstance(placed.formulas, CopiedDown) else None
            for position, cell in self._cells(area, copied if is_whole else None):
                if not cell.formula:
                    yield self._foreign(area.sheet, position, cell, OVERWRITTEN, label)
                elif is_whole and not _is_formula(cell.formula, placed.formulas[position[0] - placed.row]):
                    yield ForeignCell(area.sheet, cell_name(position), label, cell.formula, CHANGED)

    def outside(self) -> Iterator[ForeignCell]:
        """The content of cells that belong to no field."""
        for sheet, cells in self.old.book.sheets.items():
            is_ours = self._fits(self._beside_fields[sheet]) if sheet in self.as_written else self._is_inside(sheet)
            original, copied = self._copied_from(sheet)
            if original:
                yield ForeignCell(sheet, "", "", f"a copy of the sheet {original}", A_COPY.format(original))
            for position in cells:
                if self._is_taken(sheet, position):
                    continue
                cell = cells[position]
                if cell.value != KEPT_ON and not is_ours(position, cell) and not _is_alike(cell, copied.get(position)):
                    yield self._foreign(sheet, position, cell, OUTSIDE)

    def _copied_from(self, sheet: str) -> tuple[str, dict[Position, Cell]]:
        """The sheet of ours that most cells of a user's own sheet repeat, with its cells; nothing for another sheet."""
        ours = {area.sheet for area in self.areas.values()}
        is_known = sheet in ours or any(area.sheet == sheet for area in self._own_leftovers)
        cells = self.old.book.sheets[sheet]
        for original in () if is_known else sorted(ours):
            copied = self.old.book.sheets.get(original, {})
            if 2 * sum(_is_alike(cell, copied.get(position)) for position, cell in cells.items()) > len(cells):
                return original, copied
        return "", {}

    def comments(self) -> Iterator[ForeignCell]:
        """Notes pinned to cells that are not inputs; those of inputs go along with their cells."""
        inputs: dict[str, set[Position]] = {}
        for each in self.layout.inputs:
            if area := self.old.ranges.get(each.key):
                pinned = self.old.book.comments.get(area.sheet, {})
                inputs.setdefault(area.sheet, set()).update(_positions(area, pinned))
        for sheet, comments in self.old.book.comments.items():
            for position, text in comments.items():
                if position not in inputs.get(sheet, ()):
                    yield ForeignCell(sheet, cell_name(position), "", text, "a note on a cell in which nobody types")

    @cached_property
    def _beside_fields(self) -> dict[str, dict[Position, float | str]]:
        """Every text and number that the generator writes beside the fields, for the old planner's settings."""
        return beside_fields(self.old.made_with)

    @cached_property
    def _words(self) -> set[str]:
        """Every text that the generator writes, with starting values, and what earlier versions wrote below fields."""
        columns = (
            *(cells.values() for cells in self._beside_fields.values()),
            *starting_entries(self.layout.planner).values(),
        )
        return {value for column in columns for value in column if isinstance(value, str)} | _earlier_sentences()

    def _numbers(self, sheet: str) -> set[float] | None:
        """Every number that this version writes beside the fields of a sheet; None if it does not write the sheet."""
        placed = [self.layout.placements.get(name) for name, area in self.areas.items() if area.sheet == sheet]
        pages = {each.sheet for each in placed if each}
        if self.old.version != __version__ or not pages:
            return None
        return {value for page in pages for value in self._beside_fields[page].values() if isinstance(value, float)}

    def _fits(self, written: dict[Position, float | str]):
        """A test whether a cell is as it was written. The row of links differs if there is a sheet of leftovers."""

        def is_ours(position: Position, cell: Cell) -> bool:
            is_as_written = position in written and _same(cell, written[position])
            return is_as_written or position[0] == 1 and cell.value in self._words

        return is_ours

    def _is_inside(self, sheet: str):
        """A test whether a cell is within the area of our names. A sheet that no name points to is the user's own."""
        named = [area for area in [*self.areas.values(), *self._own_leftovers] if area.sheet == sheet]
        if not named:
            known = sheet in self.layout.plans
            return lambda position, cell: known
        bottom, right = self._corner(sheet, named)
        above = self._inserted_above(sheet)
        beside = self._beside_records(sheet)
        numbers = self._numbers(sheet)
        # Every formula of ours has a name, but for some that the first sheet had until version 0.4.1.
        has_unnamed = self.old.version != __version__ and sheet == next(iter(self.old.book.sheets))

        def is_ours(position: Position, cell: Cell) -> bool:
            row, column = position
            # A formula in an inserted line was copied there. Texts of ours are recognized by their words.
            is_inside = column <= right and row <= bottom and (row not in above or cell.formula != "")
            if not cell.formula and cell.value in self._words:
                return True
            is_known = row in above or has_unnamed if cell.formula else numbers is None or cell.value in numbers
            return is_inside and is_known and not beside(position)

        return is_ours

    def _corner(self, sheet: str, named: list[Area]) -> Position:
        """The last row and column of a sheet in which something of ours may stand; `named` are its areas."""
        # Below its fields, a sheet may have texts of ours; while it is protected, nobody can add others.
        bottom = MOST_ROWS if sheet in self.old.book.protected else max(area.last_row for area in named)
        verdicts = (
            (part, self.areas.get(part.full_key("verdict"))) for part in self.layout.planner.proof_tables.values()
        )
        given = [part.most_given for part, area in verdicts if area and area.sheet == sheet]
        columns = (area.last_column for area in named)
        return bottom, max(1 + COLUMNS, *columns, *(ProofColumn.VALUES + most - 1 for most in given))

    def _inserted_above(self, sheet: str) -> set[int]:
        """The rows with records that were inserted above the first line of a log, where its names do not reach."""
        inputs = [(area, self.old.ranges[name]) for name, area in self.areas.items() if name in self.old.ranges]
        return {row for area, whole in inputs if area.sheet == sheet for row in range(whole.row, area.row)}

    def _beside_records(self, sheet: str):
        """A test whether a cell is beside the records of a log with a sheet of its own, where names cover each column.

        Such a cell is in a column that was inserted.
        """
        logs = {f"{log.key}_" for each in self.layout.planner.sheets if each.log_view for log in each.logs}
        of_log = [area for name, area in self.areas.items() if area.sheet == sheet and name.startswith(tuple(logs))]
        columns = {area.column for area in of_log if area.rows > 1}
        # The columns of a log end in the same few rows, which in a foreign file can be a million each.
        spans = {(area.row, area.last_row) for area in of_log if area.rows > 1}

        def is_beside(position: Position) -> bool:
            row, column = position
            is_within = column not in columns and column < max(columns, default=0)
            return is_within and any(first <= row <= last for first, last in spans)

        return is_beside

    def _label(self, area: Area) -> str:
        """What the old planner calls a field: the text above the unit of a column, or before the value of a card."""
        cells = self.old.book.sheets.get(area.sheet, {})
        place = area.row, 1
        if area.rows > 1:
            # Otherwise there is a line between the headings and the records that is blank but for hidden sums.
            has_unit_above = any(row == area.row - 1 and not cell.formula for (row, _), cell in cells.items())
            place = area.row - (2 if has_unit_above else 3), area.column
        label = cells.get(place)
        return label.value if label and isinstance(label.value, str) else ""

    def _foreign(self, sheet: str, position: Position, cell: Cell, why: str, label: str = "") -> ForeignCell:
        if isinstance(cell.value, float):
            what = cell.value
        else:
            what = cell.formula if cell.value in (None, "") else str(cell.value)
        formula = f", as the formula {cell.formula}" if cell.formula and what != cell.formula else ""
        return ForeignCell(sheet, cell_name(position), label, what, why + formula)


@cache
def _earlier_sentences() -> frozenset[str]:
    """Sentences that earlier versions had below the fields of a sheet, and this one does not."""
    return frozenset(Path(__file__).with_name("earlier_sentences.txt").read_text(encoding="utf-8").splitlines())


def _is_alike(cell: Cell, other: Cell | None) -> bool:
    """Whether two cells have the same formula, or else the same value."""
    return other is not None and cell.formula == other.formula and (bool(cell.formula) or cell.value == other.value)


def _is_formula(found: str, written: str) -> bool:
    return found == written or spelled(found) == spelled(written)


def _is_fact(placed: Placement) -> bool:
    return isinstance(placed.field, Column) and not placed.formulas


def _positions(area: Area, among: Collection[Position]) -> Iterator[Position]:
    """The positions of an area that are `among` these; in a hostile file the area may be a whole sheet."""
    rows, columns = range(area.row, area.last_row + 1), range(area.column, area.last_column + 1)
    if len(rows) * len(columns) > len(among):
        return (position for position in among if position[0] in rows and position[1] in columns)
    return (position for row in rows for column in columns if (position := (row, column)) in among)


def _same(cell: Cell, written: float | str) -> bool:
    if isinstance(cell.value, float) and isinstance(written, float):
        return math.isclose(cell.value, written, rel_tol=1e-12)
    return cell.value == written and not cell.formula
