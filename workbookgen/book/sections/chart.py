"""A chart on a page."""

from collections.abc import Iterator

from workbookgen.book.canvas import Canvas
from workbookgen.book.charts import draw as drawn
from workbookgen.book.plan import ROW, Spot, columns_of
from workbookgen.language.planner import Planner
from workbookgen.language.views import Chart

MOVES_WITH_CELLS = 2  # an object position of XlsxWriter: move with the cells, and keep the size


def rows(section: Chart, planner: Planner) -> int:
    return bool(section.title) + section.rows


def spots(section: Chart, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    return iter(())


def draw(section: Chart, canvas: Canvas, row: int) -> None:
    first, last = columns_of(section)
    if section.title:
        canvas.heading(row, first, last, section.title, section.aside)
    chart = drawn(canvas.formats.book, canvas.layout, section, canvas.width(first, last), section.rows * ROW)
    where = {"description": section.about, "object_position": MOVES_WITH_CELLS}
    canvas.worksheet.insert_chart(row - 1 + bool(section.title), first - 1, chart, where)
