"""Inputs to fill in, a line each: label, the cell, and its unit with what helps."""

from collections.abc import Iterator

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.lines import lines_taken
from workbookgen.book.plan import ROW, Spot
from workbookgen.language.fields import Input
from workbookgen.language.parts import Planner
from workbookgen.language.views import Entries

LABEL_COLUMNS, NUMBER_COLUMNS, TEXT_COLUMNS = 2, 1, 2
HELP_LINE = 13  # pixels of a line of help


def rows(section: Entries, planner: Planner) -> int:
    return 1 + len(section.fields)


def spots(section: Entries, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    for place, key in enumerate(section.fields, start=1):
        _, each = planner.by_key[key]
        yield key, Spot(row + place, column + LABEL_COLUMNS, across=_columns(each, section))


def draw(section: Entries, canvas: Canvas, row: int) -> None:
    first, last = (1 + place for place in section.across)
    canvas.heading(row, first, last, section.title, section.aside)
    for place, key in enumerate(section.fields, start=1):
        placement = canvas.placed(key)
        canvas.across(row + place, first, last, look.PLAIN | look.LINE)
        canvas.text(row + place, first, placement.field.label, look.PLAIN | look.LINE)
        canvas.cells(key, look.entry(placement.field, placement.unit))
        beside = first + LABEL_COLUMNS + _columns(placement.field, section)
        if beside <= last:
            said, room = help_of(placement.field, placement.unit), canvas.width(beside, last)
            canvas.text(row + place, beside, said, look.LITTLE | look.LINE | {"indent": 1, "text_wrap": True})
            if beside < last and said:
                canvas.to.merge_range(row + place - 1, beside - 1, row + place - 1, last - 1, said, canvas.formats(look.LITTLE | look.LINE | {"indent": 1, "text_wrap": True}))
            canvas.high(row + place, max(ROW, HELP_LINE * lines_taken(said, room / 7, look.SMALL, indented=True) + 4))


def help_of(field, unit) -> str:
    """The unit, and what helps."""
    said = getattr(field, "help", "") or getattr(field, "note", "")
    symbol = unit.symbol if unit else ""
    return f"{symbol}; {said[:1].lower()}{said[1:]}".removesuffix(".") if symbol and said else symbol or said.removesuffix(".")


def _columns(field: Input, section: Entries) -> int:
    """A name needs more room than a number."""
    room = section.across[1] - section.across[0] + 1 - LABEL_COLUMNS
    return min(room, TEXT_COLUMNS if field.is_text else NUMBER_COLUMNS)
