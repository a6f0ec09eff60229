"""What needs a look: calculated sentences, each beside a link to where it is put right."""

from collections.abc import Iterator

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import Spot, columns_of
from workbookgen.language.planner import Planner
from workbookgen.language.views import Alerts


def rows(section: Alerts, planner: Planner) -> int:
    return 1 + len(section.places)


def spots(section: Alerts, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    for place, (key, _) in enumerate(section.places, start=1):
        yield key, Spot(row + place, column + 1)


def draw(section: Alerts, canvas: Canvas, row: int) -> None:
    first, last = columns_of(section)
    canvas.heading(row, first, last, section.title, section.aside, look.CAUTION_HEAD)
    for place, (key, link) in enumerate(section.places, start=1):
        canvas.blank_cells(row + place, first, last, look.PLAIN | look.LINE)
        canvas.link(row + place, first, link, look.LINK | look.LINE | {"font_size": look.SIZE})
        canvas.cells(key, look.LITTLE | look.LINE)
