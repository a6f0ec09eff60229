"""Sentences to read under a heading, broken into lines that fit."""

from collections.abc import Iterator

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import Spot, columns_of
from workbookgen.book.wrapping import LETTER, broken
from workbookgen.language.planner import Planner
from workbookgen.language.views import COLUMN, Prose

LETTERS_A_COLUMN = COLUMN / LETTER  # the width of a grid column, in digits


def rows(section: Prose, planner: Planner) -> int:
    return bool(section.title) + len(_lines(section))


def spots(section: Prose, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    return iter(())


def draw(section: Prose, canvas: Canvas, row: int) -> None:
    first, last = columns_of(section)
    if section.title:
        looks = look.CAUTION_HEAD if section.is_caution else look.HEAD
        canvas.heading(row, first, last, section.title, section.aside, looks)
    for place, line in enumerate(_lines(section), start=bool(section.title)):
        canvas.text(row + place, first, line, look.LITTLE if section.is_small else look.PLAIN)


def _lines(section: Prose) -> list[str]:
    room = (section.across[1] - section.across[0] + 1) * LETTERS_A_COLUMN
    size = look.SMALL if section.is_small else look.SIZE
    return [line for each in section.sentences for line in broken(each, room, size)]
