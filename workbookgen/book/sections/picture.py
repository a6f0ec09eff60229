"""A drawing of our own, with a description for those who cannot see it."""

from collections.abc import Iterator
from functools import cache
from importlib.resources import files
from io import BytesIO

from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import ROW, Spot, columns_of
from workbookgen.book.sections.chart import MOVES_WITH_CELLS
from workbookgen.errors import DescriptionError
from workbookgen.language.planner import Planner
from workbookgen.language.views import Picture

SCALE = 0.5  # drawings have twice as many pixels as the screen
OFF = 8  # pixels from the edge
HEIGHT = slice(20, 24)  # the bytes of a PNG file with its height (PNG specification, W3C: the chunk IHDR)


def rows(section: Picture, planner: Planner) -> int:
    return bool(section.title) - -(_height(_drawing(section)) + OFF) // ROW


def spots(section: Picture, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    return iter(())


def draw(section: Picture, canvas: Canvas, row: int) -> None:
    first, last = columns_of(section)
    if section.title:
        canvas.heading(row, first, last, section.title, section.aside)
    drawing = {"image_data": BytesIO(_drawing(section)), "x_scale": SCALE, "y_scale": SCALE}
    where = {"x_offset": OFF, "y_offset": OFF, "description": section.about, "object_position": MOVES_WITH_CELLS}
    canvas.worksheet.insert_image(row - 1 + bool(section.title), first - 1, section.file, drawing | where)


@cache
def _drawing(section: Picture) -> bytes:
    try:
        return (files("workbookgen.drawings") / section.file).read_bytes()
    except FileNotFoundError:
        lacking = "drawings/ has no drawing of this name; draw.py makes those in DRAWINGS."
        raise DescriptionError.at(f"picture {section.file}", lacking) from None


def _height(png: bytes) -> int:
    """The height of a PNG file on the screen, in pixels."""
    return round(int.from_bytes(png[HEIGHT]) * SCALE)
