"""A worksheet: its cells, what may be typed into them, what is hidden, and what is locked.

Rows are streamed, and of rows that are alike only the first is read, since most lines of a log are alike.
"""

import io
from bisect import bisect
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import IO, NamedTuple

from workbookgen.ooxml.charts import Chart, read_charts
from workbookgen.ooxml.package import Package, attribute, is_on, local, release, streamed
from workbookgen.ooxml.references import Place, Range, place_of, ranges_of
from workbookgen.ooxml.rows import alike
from workbookgen.ooxml.strings import text_of, unescaped
from workbookgen.ooxml.values import Value, value_of

MOST_BYTES = 256 * 2**20  # a larger sheet is not read into memory to find rows that are alike
_PARTS = (
    "row",
    "cols",
    "sheetProtection",
    "hyperlink",
    "dataValidation",
    "conditionalFormatting",
    "drawing",
    "mergeCell",
)


class FileCell(NamedTuple):
    """A stored cell: its value or stored result, its style, and whether it holds a formula."""

    value: Value
    style: int
    has_formula: bool


@dataclass(frozen=True)
class Validation:
    """What may be typed into some cells, and what a program says about that."""

    kind: str = "none"
    operator: str = ""
    formulas: tuple[str, ...] = ()
    title: str = ""  # of the text that is shown while the cell is selected
    said: str = ""
    refusal: str = ""  # shown if an entry does not fit; empty for nothing
    strictness: str = "stop"


NO_VALIDATION = Validation()


@dataclass(frozen=True)
class Rule:
    """A conditional format: its cells, its kind, and its formulas, which are written for the first of the cells."""

    ranges: tuple[Range, ...]
    kind: str
    operator: str
    formulas: tuple[str, ...]


@dataclass
class FileSheet:
    """A worksheet."""

    name: str
    state: str = "visible"  # or "hidden", or "veryHidden"
    cells: dict[Place, FileCell] = field(default_factory=dict)  # of rows that are alike, only the first
    alike: list[tuple[int, int]] = field(default_factory=list)  # first and last row of each group, from top to bottom
    twice: list[Place] = field(default_factory=list)  # cells that occur more than once, or within another row
    hidden_rows: set[int] = field(default_factory=set)
    hidden_columns: set[int] = field(default_factory=set)
    folded_rows: set[int] = field(default_factory=set)  # in an outline, which people may fold and unfold
    folded_columns: set[int] = field(default_factory=set)
    row_styles: dict[int, int] = field(default_factory=dict)
    column_styles: dict[int, int] = field(default_factory=dict)
    validations: list[tuple[tuple[Range, ...], Validation]] = field(default_factory=list)
    rules: list[Rule] = field(default_factory=list)
    links: dict[Place, str] = field(default_factory=dict)
    merged: list[Range] = field(default_factory=list)
    charts: list[Chart] = field(default_factory=list)

    def cell(self, place: Place) -> FileCell | None:
        return self.cells.get((self.first_alike(place[0]), place[1]))

    def first_alike(self, row: int) -> int:
        """The first of the rows that are alike to this one."""
        above = bisect(self.alike, row, key=lambda each: each[0]) - 1
        return self.alike[above][0] if above >= 0 and row <= self.alike[above][1] else row

    def end_of(self, row: int) -> int:
        """The first row below this one that is not alike to it."""
        above = bisect(self.alike, row, key=lambda each: each[0]) - 1
        return self.alike[above][1] + 1 if above >= 0 and row <= self.alike[above][1] else row + 1

    def style(self, place: Place) -> int:
        """The style of a cell; that of a blank one may be stored with its row or column only."""
        cell = self.cell(place)
        return cell.style if cell else self.row_styles.get(place[0], self.column_styles.get(place[1], 0))


def read_sheet(package: Package, part: str, name: str, state: str, strings: Sequence[str]) -> FileSheet:
    """A worksheet and what belongs to it."""
    sheet = FileSheet(name, state)
    relations, is_drawn_on = package.relations(part), False
    with _shortened(package, part, sheet) as stream:
        for element in streamed(stream, *_PARTS):
            kind = local(element)
            if kind == "row":
                _row(sheet, element, strings)
                release(element)
            elif kind == "cols":
                _columns(sheet, element)
            elif kind == "hyperlink":
                outside, place = relations.get(attribute(element, "id") or ""), element.get("location")
                target = (outside.target if outside else "") + (f"#{place}" if place else "")
                sheet.links |= {(each.top, each.left): target for each in ranges_of(element.get("ref", ""))}
            elif kind == "dataValidation":
                sheet.validations.append((_cells_of(element), _validation(element)))
            elif kind == "conditionalFormatting":
                sheet.rules += _rules(element)
            elif kind == "mergeCell":
                sheet.merged += ranges_of(element.get("ref", ""))
            elif kind == "drawing":
                is_drawn_on = True
    _apply_to_alike(sheet)
    sheet.charts = list(read_charts(package, part)) if is_drawn_on else []
    return sheet


def stretches(rows: range, *sheets: FileSheet) -> Iterator[range]:
    """Rows in stretches within which they are alike on each of these sheets."""
    row = rows.start
    while row < rows.stop:
        end = min(rows.stop, *(each.end_of(row) for each in sheets))
        yield range(row, end)
        row = end


def _shortened(package: Package, part: str, sheet: FileSheet) -> IO[bytes]:
    """The XML of a sheet without rows that are alike to the one before; these are noted in `sheet`."""
    groups = alike(content := package.read(part)) if package.size(part) <= MOST_BYTES else None
    if groups is None:
        return package.open(part)
    short, copied = [], 0
    for each in groups:
        if each.last > each.first:
            sheet.alike.append((each.first, each.last))
            short += content[copied : each.start], each.xml
            copied = each.end
    return io.BytesIO(b"".join([*short, content[copied:]]))


def _apply_to_alike(sheet: FileSheet) -> None:
    """Note for all rows that are alike what was read of the first."""
    for first, last in sheet.alike:
        for rows in (sheet.hidden_rows, sheet.folded_rows):
            if first in rows:
                rows.update(range(first, last + 1))
        if first in sheet.row_styles:
            sheet.row_styles |= dict.fromkeys(range(first, last + 1), sheet.row_styles[first])
        doubled = [column for row, column in sheet.twice if row == first]
        sheet.twice += [(row, column) for column in doubled for row in range(first + 1, last + 1)]


def _row(sheet: FileSheet, element, strings: Sequence[str]) -> None:
    """Read a row's cells, and whether it is hidden, folded, or has a style of its own."""
    row = int(element.get("r", 0)) or max((place[0] for place in sheet.cells), default=0) + 1
    if is_on(element.get("hidden")) or element.get("ht") == "0":
        sheet.hidden_rows.add(row)
    if element.get("outlineLevel", "0") != "0":
        sheet.folded_rows.add(row)
    if is_on(element.get("customFormat")):
        sheet.row_styles[row] = int(element.get("s", 0))
    column = 0
    for each in element:
        reference = each.get("r")
        place = (row, column + 1) if reference is None else place_of(reference)
        column = place[1]
        if place in sheet.cells or place[0] != row:
            sheet.twice.append(place)
        sheet.cells[place] = _cell(each, strings)


def _cell(element, strings: Sequence[str]) -> FileCell:
    kind, value, has_formula = element.get("t", "n"), None, False
    for part in element:
        tag = part.tag
        if tag.endswith("}v"):
            value = value_of(kind, part.text or "", strings)
        elif tag.endswith("}f"):
            has_formula = True
        elif tag.endswith("}is"):
            value = text_of(part)
    return FileCell(value, int(element.get("s", 0)), has_formula)


def _columns(sheet: FileSheet, element) -> None:
    for each in element:
        first, last = int(each.get("min", 1)), min(int(each.get("max", 1)), 2_000)  # beyond all that planners have
        columns = range(first, last + 1)
        if is_on(each.get("hidden")) or each.get("width") == "0":
            sheet.hidden_columns.update(columns)
        if each.get("outlineLevel", "0") != "0":
            sheet.folded_columns.update(columns)
        sheet.column_styles.update(dict.fromkeys(columns, int(each.get("style", 0))))


def _cells_of(element) -> tuple[Range, ...]:
    """The cells that a rule is for: in an attribute, or in newer files in an element."""
    inside = next((each.text for each in element if local(each) == "sqref"), "")
    return ranges_of(element.get("sqref") or inside or "")


def _validation(element) -> Validation:
    kind = element.get("type", "none")
    formulas = tuple("".join(each.itertext()).strip() for each in element if local(each) in ("formula1", "formula2"))
    operator = element.get("operator", "between") if kind in ("whole", "decimal", "date", "time", "textLength") else ""
    if operator not in ("between", "notBetween"):
        formulas = formulas[:1]
    speaks, refuses = is_on(element.get("showInputMessage")), is_on(element.get("showErrorMessage"))
    return Validation(
        kind,
        operator,
        () if kind == "none" else formulas,
        unescaped(element.get("promptTitle", "")) if speaks else "",
        unescaped(element.get("prompt", "")) if speaks else "",
        unescaped(element.get("error", "")) if refuses else "",
        element.get("errorStyle", "stop") if refuses else "none",
    )


def _rules(element) -> Iterator[Rule]:
    ranges = _cells_of(element)
    for each in element:
        if local(each) == "cfRule":
            formulas = tuple("".join(part.itertext()).strip() for part in each if local(part) in ("formula", "f"))
            yield Rule(ranges, each.get("type", ""), each.get("operator", ""), formulas)
