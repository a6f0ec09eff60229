"""Calculated texts, one per line; the first may be large."""

from collections.abc import Iterator

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import Spot, columns_of
from workbookgen.language.planner import Planner
from workbookgen.language.views import Sentences

LARGE = 36  # pixels


def rows(section: Sentences, planner: Planner) -> int:
    return bool(section.title) + len(section.fields)


def spots(section: Sentences, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    for place, key in enumerate(section.fields):
        yield key, Spot(row + bool(section.title) + place, column)


def draw(section: Sentences, canvas: Canvas, row: int) -> None:
    first, last = columns_of(section)
    if section.title:
        canvas.heading(row, first, last, section.title, section.aside)
    for place, key in enumerate(section.fields):
        is_large = section.is_large and place == 0
        canvas.cells(key, look.ANSWER if is_large else look.PLAIN)
        if is_large:
            canvas.make_room(row + bool(section.title) + place, LARGE)
