"""The entrance to a page: a link under a thick rule, one number, what it counts, and further links."""

from collections.abc import Iterator

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import Spot
from workbookgen.language.planner import Planner
from workbookgen.language.views import Door, Way

NUMBER_ROW, COUNTS_ROW, WAYS_ROW = 1, 2, 3
TALL, SHORT = 38, 28  # pixels


def rows(section: Door, planner: Planner) -> int:
    return 4


def spots(section: Door, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    yield section.number, Spot(row + NUMBER_ROW, column, across=2)
    yield section.counts, Spot(row + COUNTS_ROW, column)


def draw(section: Door, canvas: Canvas, row: int) -> None:
    first = 1 + section.across[0]
    canvas.across(row, first, first + 1, look.PLAIN | look.DOOR_RULE)
    canvas.link(
        row,
        first,
        Way(section.way.sheet, f"{section.way.words}  →", section.way.field),
        look.LINK_BOLD | look.DOOR_RULE,
    )
    canvas.high(row, SHORT)
    canvas.high(row + NUMBER_ROW, TALL)
    placement = canvas.placed(section.number)
    canvas.cells(
        section.number, look.TITLE | {"num_format": look.sum_format(placement.field, placement.unit), "align": "left"}
    )
    canvas.cells(section.counts, look.QUIETLY)
    for place, way in enumerate(section.further):
        canvas.link(row + WAYS_ROW, first + place, way, look.LINK)
