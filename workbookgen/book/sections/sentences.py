"""Calculated texts, one per line; the first may be large, and the last be broken into two lines."""

from collections.abc import Iterator

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import Spot, columns_of
from workbookgen.language.planner import Planner
from workbookgen.language.views import Sentences

LARGE, TWO_LINES = 36, 38  # pixels


def rows(section: Sentences, planner: Planner) -> int:
    return bool(section.title) + len(section.fields)


def spots(section: Sentences, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    for place, key in enumerate(section.fields):
        is_broken = section.is_long and key == section.fields[-1]
        yield (
            key,
            Spot(
                row + bool(section.title) + place,
                column,
                across=section.across[1] - section.across[0] + 1 if is_broken else 1,
            ),
        )


def draw(section: Sentences, canvas: Canvas, row: int) -> None:
    first, last = columns_of(section)
    if section.title:
        canvas.heading(row, first, last, section.title, section.aside)
    for place, key in enumerate(section.fields):
        line = row + bool(section.title) + place
        if section.is_large and place == 0:
            canvas.cells(key, look.ANSWER)
            canvas.make_room(line, LARGE)
        elif section.is_long and key == section.fields[-1]:
            canvas.cells(key, look.PLAIN_BROKEN)
            canvas.make_room(line, TWO_LINES)
        else:
            canvas.cells(key, look.PLAIN)
