"""Inputs to fill in, one per line: label, cell, and unit with a help text."""

import re
from collections.abc import Iterator

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.placement import Placement
from workbookgen.book.plan import ROW, Spot, columns_of
from workbookgen.book.wrapping import LETTER, lines_taken
from workbookgen.language.fields import Input, Result
from workbookgen.language.planner import Planner
from workbookgen.language.quantities import Unit
from workbookgen.language.views import Entries

LABEL_COLUMNS, NUMBER_COLUMNS, TEXT_COLUMNS = 2, 1, 2
HELP_LINE = 14  # pixels of a line of help
MOST_LINES = 2
_CLAUSE_END = re.compile(r"(?<=[.;:])\s(?![^(]*\))")  # white space after a clause, but not within parentheses


def rows(section: Entries, planner: Planner) -> int:
    return 1 + len(section.fields)


def spots(section: Entries, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    for place, key in enumerate(section.fields, start=1):
        _, each = planner.by_key[key]
        yield key, Spot(row + place, column + LABEL_COLUMNS, across=_columns(each, section))


def draw(section: Entries, canvas: Canvas, row: int) -> None:
    first, last = columns_of(section)
    canvas.heading(row, first, last, section.title, section.aside)
    for place, key in enumerate(section.fields, start=1):
        placement = canvas.placed(key)
        canvas.blank_cells(row + place, first, last, look.PLAIN | look.LINE)
        canvas.text(row + place, first, placement.field.label, look.PLAIN | look.LINE)
        canvas.cells(key, look.entry(placement.field, placement.unit))
        beside = first + LABEL_COLUMNS + _columns(placement.field, section)
        if beside <= last:
            draw_help(canvas, placement, row + place, beside, last)


def draw_help(canvas: Canvas, placement: Placement, row: int, first: int, last: int) -> None:
    """Write the unit, and as much of the help text as fits on two lines; a selected cell shows all of it."""
    looks = look.LITTLE | look.LINE | {"indent": 1, "text_wrap": True}
    room = canvas.width(first, last) / LETTER
    said = help_of(placement.field, placement.unit, room)
    if first < last and said:
        canvas.worksheet.merge_range(row - 1, first - 1, row - 1, last - 1, "", canvas.formats(looks))
    canvas.text(row, first, said, looks)  # always as text, even if a currency symbol looks like a formula
    canvas.make_room(row, max(ROW, HELP_LINE * _lines(said, room) + 4))


def help_of(field: Input | Result, unit: Unit | None, room: float) -> str:
    """The unit, and as many of the first clauses of the help text as fit.

    A clause that ends in a colon is only shown together with what it introduces.
    """
    said = getattr(field, "help", "") or getattr(field, "note", "")
    symbol = ""
    if unit:
        symbol = unit.symbol if isinstance(field, Input) else unit.beside  # an empty input does not show its %
    clauses = _CLAUSE_END.split(said) if said else []
    for count in range(len(clauses), 0, -1):
        if 1 < count < len(clauses) and clauses[count - 1].endswith(":"):
            continue
        some = " ".join(clauses[:count]).rstrip(".;:,")
        text = f"{symbol}; {some[:1].lower() + some[1:] if some[1:2].islower() else some}" if symbol else some
        if _lines(text, room) <= MOST_LINES:
            return text
    return symbol


def _lines(text: str, room: float) -> int:
    return lines_taken(text, room, look.SMALL, indented=True)


def _columns(field: Input, section: Entries) -> int:
    """The number of columns of an input: a text needs more room than a number."""
    room = section.across[1] - section.across[0] + 1 - LABEL_COLUMNS
    return min(room, TEXT_COLUMNS if field.is_text else NUMBER_COLUMNS)
