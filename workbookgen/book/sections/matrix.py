"""Results in rows and columns, under heads; the unit of a row is beside its label."""

from collections.abc import Iterator

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import Spot, first_value
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
    first, last = (1 + place for place in section.across)
    canvas.heading(row, first, last, section.title, section.aside)
    rule = {name: value for name, value in look.HEAD.items() if name.startswith("top")}
    for place, head in enumerate(section.heads):
        if head:
            canvas.text(
                row,
                first_value(section) + place,
                _head(section, canvas, place),
                look.head_of(_first_of(section, canvas, place))[not _is_plain(section)] | rule | {"valign": "vcenter"},
            )
    for place, (label, keys) in enumerate(section.rows, start=1):
        canvas.across(row + place, first, last, look.PLAIN | look.LINE)
        if label:
            canvas.text(
                row + place,
                first,
                _with_unit(label, keys, canvas),
                (look.PLAIN if place == 1 else look.QUIETLY) | look.LINE,
            )
        for key in filter(None, keys):
            placement = canvas.placed(key)
            canvas.cells(
                key,
                look.result(placement.field, placement.unit)
                | ({"bold": True} if place == 1 and label and len(keys) > 1 else {}),
            )


def _is_plain(section: Matrix) -> bool:
    """Rows with labels of their own have one unit each; without, each column has."""
    return any(label for label, _ in section.rows)


def _head(section: Matrix, canvas: Canvas, place: int) -> str:
    head = section.heads[place]
    return head if _is_plain(section) else _with_unit(head, [keys[place] for _, keys in section.rows], canvas)


def _first_of(section: Matrix, canvas: Canvas, place: int):
    """The first field of a column, which decides how its head is aligned."""
    return next(canvas.placed(keys[place]).field for _, keys in section.rows if keys[place])


def _with_unit(words: str, keys, canvas: Canvas) -> str:
    """A label or a head, and the unit if all have the same."""
    units = {unit.beside for key in keys if key and (unit := canvas.placed(key).unit)} - {""}
    return f"{words}, {units.pop()}" if len(units) == 1 else words
