"""The entrance to another sheet: a link under a thick rule, a number, what it counts, and more links."""

from collections.abc import Iterator
from dataclasses import replace

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import Spot, columns_of
from workbookgen.language.planner import Planner
from workbookgen.language.views import Entrance

NUMBER_ROW, COUNTS_ROW, LINKS_ROW = 1, 2, 3
TALL, SHORT = 38, 28  # pixels


def rows(section: Entrance, planner: Planner) -> int:
    return 4


def spots(section: Entrance, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    yield section.number, Spot(row + NUMBER_ROW, column, across=2)
    yield section.counts, Spot(row + COUNTS_ROW, column)


def draw(section: Entrance, canvas: Canvas, row: int) -> None:
    first, _ = columns_of(section)
    canvas.blank_cells(row, first, first + 1, look.PLAIN | look.ENTRANCE_RULE)
    link = replace(section.link, words=f"{section.link.words}  →")
    canvas.link(row, first, link, look.LINK_BOLD | look.ENTRANCE_RULE)
    canvas.make_room(row, SHORT)
    canvas.make_room(row + NUMBER_ROW, TALL)
    placement = canvas.placed(section.number)
    canvas.cells(section.number, look.TITLE | look.on_its_own(placement.field, placement.unit))
    canvas.cells(section.counts, look.QUIETLY)
    for place, link in enumerate(section.more_links):
        canvas.link(row + LINKS_ROW, first + place, link, look.LINK)
