"""Inputs and results side by side: a label, and under each head an input or a calculated cell."""

from collections.abc import Iterator

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import Spot, columns_of
from workbookgen.book.sections.entries import LABEL_COLUMNS
from workbookgen.language.fields import Input
from workbookgen.language.planner import Planner
from workbookgen.language.side_by_side import SideBySide

TO_THE_RIGHT = {"align": "right", "indent": 1}
DOT = look.LITTLE | look.LINE | look.AXIS


def rows(section: SideBySide, planner: Planner) -> int:
    return 1 + len(section.rows)


def spots(section: SideBySide, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    for place, (_, keys) in enumerate(section.rows, start=1):
        for (first, wide), key in zip(_columns(section, column), keys, strict=True):
            if key:
                yield key, Spot(row + place, first, across=wide)


def draw(section: SideBySide, canvas: Canvas, row: int) -> None:
    first, last = columns_of(section)
    canvas.heading(row, first, last, section.title, section.aside)
    for place, ((start, wide), head) in enumerate(zip(_columns(section, first), section.heads, strict=True)):
        if head:
            shown = [canvas.placed(keys[place]) for _, keys in section.rows if keys[place]]
            at_the_edge = any(look.stands_at_the_edge(each.field, each.unit) for each in shown)
            canvas.text(row, start + wide - 1, head, look.HEAD_ASIDE | ({} if at_the_edge else {"indent": 1}))
    for place, (label, keys) in enumerate(section.rows, start=1):
        loud = {"bold": True} if set(keys) & set(section.loud) else {}
        canvas.blank_cells(row + place, first, last, look.PLAIN | look.LINE)
        canvas.text(row + place, first, _label(label, keys, canvas), look.PLAIN | look.LINE | loud)
        for key in filter(None, keys):
            canvas.cells(key, DOT if key in section.dots else _looks(key, canvas) | loud)


def _label(label: str, keys: tuple[str, ...], canvas: Canvas) -> str:
    """The label of a row, with the unit of its numbers."""
    placement = canvas.placed(next(key for key in keys if key))
    symbol = placement.unit.beside if placement.unit else ""
    return ", ".join(filter(None, (label or placement.field.label, symbol)))


def _looks(key: str, canvas: Canvas) -> dict:
    placement = canvas.placed(key)
    looks = (look.entry if isinstance(placement.field, Input) else look.result)(placement.field, placement.unit)
    return looks | ({"shrink": True} | TO_THE_RIGHT if placement.field.is_text else {})


def _columns(section: SideBySide, column: int) -> Iterator[tuple[int, int]]:
    """The first column under each head, and the number of columns."""
    start = column + LABEL_COLUMNS
    for wide in section.wide or (1,) * len(section.heads):
        yield start, wide
        start += wide
