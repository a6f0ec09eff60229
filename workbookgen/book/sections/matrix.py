"""Results in rows and columns under heads, with units beside the labels."""

from collections.abc import Iterable, Iterator

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import Spot, columns_of, first_value
from workbookgen.language.planner import Planner
from workbookgen.language.views import Matrix


def rows(section: Matrix, planner: Planner) -> int:
    return 1 + len(section.rows)


def spots(section: Matrix, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    for place, (_, keys) in enumerate(section.rows, start=1):
        for column, key in enumerate(keys, start=first_value(section)):
            if key:
                yield key, Spot(row + place, column)


def draw(section: Matrix, canvas: Canvas, row: int) -> None:
    first, last = columns_of(section)
    canvas.heading(row, first, last, section.title, section.aside)
    for place, head in enumerate(section.heads):
        if head:
            _head(section, canvas, row, place)
    for place, (label, keys) in enumerate(section.rows, start=1):
        canvas.blank_cells(row + place, first, last, look.PLAIN | look.LINE)
        if label:
            looks = look.PLAIN if place == 1 else look.QUIETLY
            canvas.text(row + place, first, _with_unit(label, keys, canvas), looks | look.LINE)
        loud = {"bold": True} if place == 1 and label and len(keys) > 1 else {}
        for key in filter(None, keys):
            placement = canvas.placed(key)
            canvas.cells(key, look.result(placement.field, placement.unit) | loud)


def _head(section: Matrix, canvas: Canvas, row: int, place: int) -> None:
    """Write the head of a column, aligned like its first field; it includes the unit if the rows have no labels."""
    head, keys = section.heads[place], [keys[place] for _, keys in section.rows]
    label, unit = look.head_of(canvas.placed(next(filter(None, keys))).field)
    if any(own for own, _ in section.rows):
        said, looks = head, label
    else:
        said, looks = _with_unit(head, keys, canvas), unit
    canvas.text(row, first_value(section) + place, said, looks | look.RULE | {"valign": "vcenter"})


def _with_unit(words: str, keys: Iterable[str], canvas: Canvas) -> str:
    """A label or a head, with the unit if all its fields have the same."""
    units = {unit.beside for key in keys if key and (unit := canvas.placed(key).unit)} - {""}
    return f"{words}, {units.pop()}" if len(units) == 1 else words
