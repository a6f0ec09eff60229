"""A table of fixed facts: one row for each, as high as its longest text needs."""

from collections.abc import Iterator

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import ROW, Spot, columns_of
from workbookgen.book.wrapping import LETTER, lines_taken
from workbookgen.language.planner import Planner
from workbookgen.language.views import Facts

LINE, PAD = 13, 5  # pixels
HEADS = 2  # rows of labels and units, below the heading and what the table is about


def rows(section: Facts, planner: Planner) -> int:
    table = planner.tables[section.table]
    return 1 + bool(table.about) + HEADS + table.rows


def spots(section: Facts, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    table = planner.tables[section.table]
    top = row + 1 + bool(table.about) + HEADS
    for place, each in enumerate(table.columns):
        yield table.full_key(each.key), Spot(top, column + place, table.rows)


def draw(section: Facts, canvas: Canvas, row: int) -> None:
    table = canvas.layout.planner.tables[section.table]
    first, end = columns_of(section)
    last = first + len(table.columns) - 1
    end = max(end, last)
    canvas.heading(row, first, end, section.title or table.title, section.aside)
    if table.about:
        canvas.text(row + 1, first, table.about, look.LITTLE)
    top = row + 1 + bool(table.about)
    for column, each in enumerate(table.columns, start=first):
        align = {"align": "left"} if each.is_text else {"align": "right"}
        canvas.text(top, column, each.label, look.LABEL | align)
        canvas.text(top + 1, column, each.unit.symbol if each.unit else "", look.UNIT | align | look.LINE)
    running = frozenset(column for column, each in enumerate(table.columns, start=first) if each.runs_on)
    for place in range(table.rows):
        shown = dict(enumerate((each.values[place] for each in table.columns), start=first))
        facts(canvas, top + HEADS + place, shown, running)
        if last in running:  # the hairline goes as far as the text may
            canvas.blank_cells(top + HEADS + place, last + 1, end, look.LINE)


def facts(canvas: Canvas, row: int, shown: dict[int, float | str], running: frozenset[int] = frozenset()) -> None:
    """Write a row of facts. A text in a `running` column stays on one line, over free cells to its right."""
    lines = 1
    for column, fact in shown.items():
        looks = look.FACT | {"text_wrap": column not in running, "align": "left" if isinstance(fact, str) else "right"}
        if isinstance(fact, str):
            canvas.text(row, column, fact, looks)
            if column not in running:
                lines = max(lines, lines_taken(fact, canvas.width(column, column) / LETTER, look.SMALL))
        else:
            canvas.number(row, column, fact, looks)
    canvas.make_room(row, max(ROW, LINE * lines + PAD))
