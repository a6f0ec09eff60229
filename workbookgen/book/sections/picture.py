"""A drawing of our own, with a description for those who cannot see it."""

from collections.abc import Iterator
from importlib.resources import files
from io import BytesIO

from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import ROW, Spot
from workbookgen.language.parts import Planner
from workbookgen.language.views import Picture

SCALE = 0.5  # drawings have twice as many pixels as the screen
OFF = 8  # pixels from the edge


def rows(section: Picture, planner: Planner) -> int:
    return bool(section.title) - -(section.height + OFF) // ROW


def spots(section: Picture, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    return iter(())


def draw(section: Picture, canvas: Canvas, row: int) -> None:
    first, last = (1 + place for place in section.across)
    if section.title:
        canvas.heading(row, first, last, section.title, section.aside)
    drawing = (files("workbookgen.drawings") / section.file).read_bytes()
    canvas.to.insert_image(row - 1 + bool(section.title), first - 1, section.file, {
        "image_data": BytesIO(drawing), "x_scale": SCALE, "y_scale": SCALE, "x_offset": OFF, "y_offset": OFF,
        "object_position": 2, "description": section.about,
    })
