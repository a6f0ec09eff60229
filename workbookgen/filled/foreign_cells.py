"""What people put into a planner besides its inputs: notes in the margin, sheets, changed formulas.

`own_cells.py` says which cells are the planner's; each search here looks at the others, or at its own for what is not
as it was written there.
"""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from workbookgen.book.copied import CopiedDown
from workbookgen.checking.formula_spelling import spelled
from workbookgen.engines import Area
from workbookgen.errors import FileError
from workbookgen.filled.book import Book
from workbookgen.filled.cells import Cell, Cells, Position
from workbookgen.filled.gate import STRAY_CELLS
from workbookgen.filled.own_cells import OwnCells, is_fact
from workbookgen.filled.planner import FilledPlanner
from workbookgen.language.fields import Input
from workbookgen.ooxml.formulas import Copied
from workbookgen.ooxml.references import cell_name

KEPT_ON = "Leftovers"  # the sheet of what an earlier carrying found no place for, to which every sheet links
OUTSIDE = "it was typed beside the planner's own cells"
OVERWRITTEN = "it was typed over a worked-out cell, which is as it should be here"
CHANGED = "a worked-out cell had this in place of its own formula, which it has again here"
A_COPY = "what is not as on {0} is listed too; if it is right, type it on {0}, since nothing reads a copy"
NO_SUCH_FIELD = "the new planner does not have this field"
A_NOTE = "a note on a cell in which nobody types"


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
    own = OwnCells(old)
    cells = sum(len(each) for each in old.book.sheets.values())
    most = sum(placement.rows for placement in own.layout.placements.values()) + STRAY_CELLS
    if cells > most:
        raise FileError.at(
            str(old.path),
            f"this file has {cells:,} filled cells, where this planner has at most {most:,}; it is not carried over. "
            "Delete what was put beside the planner.",
        )
    return [*_in_unknown_fields(own, known), *_in_results(own), *_beside_fields(own), *_comments(own)]


def _in_unknown_fields(own: OwnCells, known: Collection[tuple[str, Position]]) -> Iterator[ForeignCell]:
    """What was typed into fields that today's planner does not have."""
    book = own.old.book
    for name, area in own.areas.items():
        if name in own.layout.placements:
            continue
        for position, cell in _filled(book, area):
            if not cell.formula and (area.sheet, position) not in known:
                yield _foreign(area.sheet, position, cell, NO_SUCH_FIELD, _label(book, area))


def _in_results(own: OwnCells) -> Iterator[ForeignCell]:
    """Values that replaced our formulas, and changed formulas. Those that inserted lines changed do not count."""
    for key, placed in own.layout.placements.items():
        if key not in own.areas or isinstance(placed.field, Input) or is_fact(placed):
            continue
        area, label = own.areas[key], placed.field.label
        copied = Copied(placed.formulas.text) if isinstance(placed.formulas, CopiedDown) else None
        for position, cell in _filled(own.old.book, area, copied if own.is_all_as_written else None):
            if not cell.formula:
                yield _foreign(area.sheet, position, cell, OVERWRITTEN, label)
            elif own.is_all_as_written and not _reads_alike(cell.formula, placed.formulas[position[0] - placed.row]):
                yield ForeignCell(area.sheet, cell_name(position), label, cell.formula, CHANGED)


def _beside_fields(own: OwnCells) -> Iterator[ForeignCell]:
    """The content of cells that belong to no field."""
    for sheet, cells in own.old.book.sheets.items():
        ours = own.beside_fields(sheet)
        original, copied = _copied_from(own, sheet)
        if original:
            yield ForeignCell(sheet, "", "", f"a copy of the sheet {original}", A_COPY.format(original))
        for position in cells:
            if own.is_in_a_field(sheet, position):
                continue
            cell = cells[position]
            if cell.value != KEPT_ON and not ours.has(position, cell) and not _is_alike(cell, copied.get(position)):
                yield _foreign(sheet, position, cell, OUTSIDE)


def _copied_from(own: OwnCells, sheet: str) -> tuple[str, Mapping[Position, Cell]]:
    """The sheet of ours that most cells of a user's own sheet repeat, with its cells; nothing for another sheet."""
    sheets = own.old.book.sheets
    ours = {area.sheet for area in own.areas.values()}
    is_known = sheet in ours or any(area.sheet == sheet for area in own.leftovers)
    for original in () if is_known else sorted(ours):
        copied = sheets.get(original, {})
        alike = sum(_is_alike(cell, copied.get(position)) for position, cell in sheets[sheet].items())
        if 2 * alike > len(sheets[sheet]):
            return original, copied
    return "", {}


def _comments(own: OwnCells) -> Iterator[ForeignCell]:
    """Notes pinned to cells that are not inputs; those of inputs go along with their cells."""
    pinned = own.old.book.comments
    inputs: dict[str, set[Position]] = {}
    for each in own.layout.inputs:
        if area := own.old.ranges.get(each.key):
            inputs.setdefault(area.sheet, set()).update(_positions(area, pinned.get(area.sheet, {})))
    for sheet, comments in pinned.items():
        for position, text in comments.items():
            if position not in inputs.get(sheet, ()):
                yield ForeignCell(sheet, cell_name(position), "", text, A_NOTE)


def _filled(book: Book, area: Area, copied: Copied | None = None) -> Iterator[tuple[Position, Cell]]:
    """The filled cells of an area, without those that have a `copied` formula."""
    cells = book.sheets.get(area.sheet, Cells())
    return ((position, cells[position]) for position in _positions(area, cells) if not cells.has(position, copied))


def _positions(area: Area, among: Collection[Position]) -> Iterator[Position]:
    """The positions of an area that are `among` these; in a hostile file the area may be a whole sheet."""
    rows, columns = range(area.row, area.last_row + 1), range(area.column, area.last_column + 1)
    if len(rows) * len(columns) > len(among):
        return (position for position in among if position[0] in rows and position[1] in columns)
    return (position for row in rows for column in columns if (position := (row, column)) in among)


def _label(book: Book, area: Area) -> str:
    """What the old planner calls a field: the text above the unit of a column, or before the value of a card."""
    cells = book.sheets.get(area.sheet, {})
    place = area.row, 1
    if area.rows > 1:
        # Otherwise there is a line between the headings and the records that is blank but for hidden sums.
        has_unit_above = any(row == area.row - 1 and not cell.formula for (row, _), cell in cells.items())
        place = area.row - (2 if has_unit_above else 3), area.column
    label = cells.get(place)
    return label.value if label and isinstance(label.value, str) else ""


def _foreign(sheet: str, position: Position, cell: Cell, why: str, label: str = "") -> ForeignCell:
    if isinstance(cell.value, float):
        what = cell.value
    else:
        what = cell.formula if cell.value in (None, "") else str(cell.value)
    formula = f", as the formula {cell.formula}" if cell.formula and what != cell.formula else ""
    return ForeignCell(sheet, cell_name(position), label, what, why + formula)


def _is_alike(cell: Cell, other: Cell | None) -> bool:
    """Whether two cells have the same formula, or else the same value."""
    return other is not None and cell.formula == other.formula and (bool(cell.formula) or cell.value == other.value)


def _reads_alike(found: str, written: str) -> bool:
    """Whether two formulas are the same but for spelling, in which programs differ."""
    return found == written or spelled(found) == spelled(written)
