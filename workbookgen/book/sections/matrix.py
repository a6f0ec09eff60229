"""Results in rows and columns, under heads; the unit of a row stands beside its label."""

from collections.abc import Iterator

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import Spot, first_value
from workbookgen.language.parts import Planner
from workbookgen.language.quantities import PERCENT_UNIT
from workbookgen.language.views import Matrix


def rows(section: Matrix, planner: Planner) -> int:
    return 1 + len(section.rows)


def spots(section: Matrix, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    for place, (_, keys) in enumerate(section.rows, start=1):
        for column, key in enumerate(keys, start=first_value(section)):
            if key:
                yield key, Spot(row + place, column)


def draw(section: Matrix, canvas: Canvas, row: int) -> None:
    first, last = (1 + place for place in section.across)
    canvas.heading(row, first, last, section.title, section.aside)
    rule = {name: value for name, value in look.HEAD.items() if name.startswith("top")}
    for column, head in enumerate(section.heads, start=first_value(section)):
        if head:
            canvas.text(row, column, head, look.LABEL | rule | {"align": "right", "indent": 1, "valign": "vcenter"})
    for place, (label, keys) in enumerate(section.rows, start=1):
        canvas.across(row + place, first, last, look.PLAIN | look.LINE)
        units = {unit.symbol for key in keys if key and (unit := canvas.placed(key).unit)} - {"", PERCENT_UNIT.symbol}
        canvas.text(row + place, first, f"{label}, {units.pop()}" if len(units) == 1 else label, (look.PLAIN if place == 1 else look.QUIETLY) | look.LINE)
        for key in filter(None, keys):
            placement = canvas.placed(key)
            canvas.cells(key, look.result(placement.field, placement.unit) | ({"bold": True} if place == 1 and len(keys) > 1 else {}))

