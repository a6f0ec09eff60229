"""Links, one per line, each with what is done there."""

from collections.abc import Iterator

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import Spot, columns_of
from workbookgen.language.planner import Planner
from workbookgen.language.views import Links


def rows(section: Links, planner: Planner) -> int:
    return 1 + len(section.places)


def spots(section: Links, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    return iter(())


def draw(section: Links, canvas: Canvas, row: int) -> None:
    first, last = columns_of(section)
    canvas.heading(row, first, last, section.title, section.aside)
    for place, (link, what) in enumerate(section.places, start=1):
        canvas.blank_cells(row + place, first, last, look.PLAIN | look.LINE)
        canvas.link(row + place, first, link, look.LINK | look.LINE | {"font_size": look.SIZE})
        canvas.text(row + place, first + 1, what, look.QUIETLY | look.LINE)
