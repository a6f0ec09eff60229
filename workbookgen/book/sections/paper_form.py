"""A form to fill in by hand: a title, headings, and lines high enough to write on."""

from collections.abc import Iterator

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import Spot, columns_of
from workbookgen.colors import INK
from workbookgen.language.planner import Planner
from workbookgen.language.views import PaperForm

TITLE_HIGH, HIGH = 40, 33  # pixels
PENCIL = "#B9B5A9"  # lines on which pencil is visible
LINE = look.PLAIN | {"bottom": 1, "bottom_color": PENCIL}
HEADS = look.LABEL | {"top": 2, "top_color": INK, "valign": "vcenter", "text_wrap": False}


def rows(section: PaperForm, planner: Planner) -> int:
    return 2 + section.lines


def papers(section: PaperForm, planner: Planner, row: int) -> list[int]:
    return [row]


def spots(section: PaperForm, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    return iter(())


def draw(section: PaperForm, canvas: Canvas, row: int) -> None:
    first, last = columns_of(section)
    canvas.make_room(row, TITLE_HIGH)
    canvas.text(row, first, section.title, look.TITLE)
    canvas.text(row, last, section.aside, look.ABOUT)
    canvas.blank_cells(row + 1, first, last, HEADS)
    column = first
    for head, columns in section.heads:
        canvas.text(row + 1, column, head, HEADS)
        for line in range(row + 2, row + 2 + section.lines):
            canvas.blank_cells(line, column, column + columns - 1, LINE)
            if column > first:
                canvas.text(line, column, "", LINE | {"left": 4, "left_color": PENCIL})
        column += columns
    for line in range(row + 2, row + 2 + section.lines):
        canvas.make_room(line, HIGH)
