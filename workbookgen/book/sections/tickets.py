"""Tickets to print and cut out, so many across and down a page, and the choices that fill them beside it."""

from collections.abc import Iterator

from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import Spot
from workbookgen.language.parts import Planner
from workbookgen.language.views import Tickets


def rows(section: Tickets, planner: Planner) -> int:
    raise NotImplementedError


def spots(section: Tickets, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    raise NotImplementedError


def draw(section: Tickets, canvas: Canvas, row: int) -> None:
    raise NotImplementedError
