"""Draws the drawings: how a niddy-noddy is measured, the angle of twist, counting wraps on a ruler.

    python -m workbookgen.drawings.draw

writes them beside this file, with twice as many points as they take on the screen. It needs Pillow, which a planner
does not: the files are part of the project. Places are pixels of the screen, from the upper left corner.
"""

import math
from collections.abc import Callable, Sequence
from io import BytesIO
from pathlib import Path

from workbookgen.colors import ACCENT, EDGE, GROUND, INK, QUIET, SOFT, WARNING, WHITE

HERE = Path(__file__).parent
POINTS, SMOOTH = 2, 4  # points of the file for a pixel of the screen; points drawn for one of the file
COLORS = 24  # of the file: of fewer, thin lines turn gray
ROUNDS = 3  # of bringing these nearer to the drawing's
FACES = ("LiberationSans-Regular.ttf", "Arial.ttf", "DejaVuSans.ttf")
LETTERS = 12  # pixels
Place = tuple[float, float]


class Pen:
    """Lines and words on white paper."""

    def __init__(self, width: int, height: int):
        from PIL import Image, ImageDraw

        self.scale, self.size = POINTS * SMOOTH, (width * POINTS, height * POINTS)
        self.paper = Image.new("RGB", (width * self.scale, height * self.scale), WHITE)
        self.pen = ImageDraw.Draw(self.paper)
        self.face = _face(LETTERS * self.scale)

    def line(self, places: Sequence[Place], color: str = INK, width: float = 1.5) -> None:
        """A line with round ends."""
        scaled = [(x * self.scale, y * self.scale) for x, y in places]
        self.pen.line(scaled, fill=color, width=round(width * self.scale), joint="curve")
        half = width * self.scale / 2
        for x, y in (scaled[0], scaled[-1]):
            self.pen.ellipse((x - half, y - half, x + half, y + half), fill=color)

    def area(self, places: Sequence[Place], color: str) -> None:
        self.pen.polygon([(x * self.scale, y * self.scale) for x, y in places], fill=color)

    def word(self, x: float, y: float, text: str, color: str = QUIET, anchor: str = "mm") -> None:
        self.pen.text((x * self.scale, y * self.scale), text, fill=color, font=self.face, anchor=anchor)

    def measure(self, start: Place, end: Place, color: str = QUIET) -> None:
        """A line with a bar across each end, as a length is marked."""
        self.line((start, end), color, 1)
        length = math.dist(start, end)
        across = ((start[1] - end[1]) / length * 4, (end[0] - start[0]) / length * 4)
        for x, y in (start, end):
            self.line(((x - across[0], y - across[1]), (x + across[0], y + across[1])), color, 1)

    def png(self) -> bytes:
        from PIL import Image

        # Median cut, which is usual, spends its colors on large areas: thin red lines were brown, and the file larger.
        small = self.paper.resize(self.size, Image.Resampling.LANCZOS).quantize(
            COLORS, Image.Quantize.MAXCOVERAGE, ROUNDS, dither=Image.Dither.NONE
        )
        held = BytesIO()
        small.save(held, "PNG", optimize=True)
        return held.getvalue()


def _face(size: int):
    from PIL import ImageFont

    for name in FACES:
        try:
            return ImageFont.truetype(name, size)
        except OSError:
            continue
    return ImageFont.load_default(size)


def niddy_noddy(pen: Pen) -> None:
    """Its two arms lie crosswise; a wrap goes from one end of an arm to the next end of the other, four times."""
    middle, top, bottom = 150, 46, 168
    arm = ((middle - 66, top + 7), (middle + 66, top - 7))
    other = ((middle - 30, bottom - 20), (middle + 30, bottom + 20))
    ends = (arm[0], other[0], arm[1], other[1], arm[0])
    for near, far in zip(ends, ends[1:], strict=False):
        pen.line((near, far), SOFT, 3.6)
        _twisted(pen, near, far)
    pen.line(((middle, top), (middle, bottom)), INK, 5)
    for one in (arm, other):
        pen.line(one, INK, 5)
    pen.measure((arm[0][0], 29), (arm[1][0], 15))
    pen.word(middle, 10, "one arm")
    pen.measure((52, top), (52, bottom))
    pen.word(46, (top + bottom) / 2, "height", anchor="rm")
    pen.measure((other[0][0] - 10, other[0][1] + 16), (other[1][0] - 10, other[1][1] + 16))
    pen.word(other[0][0] - 8, bottom + 8, "other arm", anchor="rm")
    pen.word(236, 92, "four legs of yarn", ACCENT, "lm")
    pen.word(236, 108, "are one wrap", ACCENT, "lm")


def _twisted(pen: Pen, start: Place, end: Place) -> None:
    """Short strokes along a leg, as plied yarn has them."""
    length = math.dist(start, end)
    along = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
    for place in range(3, int(length) - 2, 5):
        x, y = start[0] + along[0] * place, start[1] + along[1] * place
        lean = (along[0] * 1.7 - along[1] * 1.2, along[1] * 1.7 + along[0] * 1.2)
        pen.line(((x - lean[0], y - lean[1]), (x + lean[0], y + lean[1])), ACCENT, 1)


def angle_of_twist(pen: Pen) -> None:
    """A yarn from the side.

    A fiber at its surface is a screw line: seen so, a cosine, steepest where it crosses the axis.
    """
    left, right, axis, half, turn = 8, 250, 44, 30, 150  # pixels; `turn` is half of one turn along the yarn
    edge = tuple((x, axis + side) for side in (-half, half) for x in ((left, right) if side < 0 else (right, left)))
    pen.area(edge, GROUND)
    marked = left + 46
    for fiber in range(-6, 10):
        start = marked + fiber * 25
        course = [(start + turn * step / 80, axis + half * math.cos(math.pi * step / 80)) for step in range(81)]
        course = [place for place in course if left <= place[0] <= right]
        if len(course) > 2:
            pen.line(course, ACCENT if fiber == 0 else SOFT, 2.8 if fiber == 0 else 1.3)
    for side in (-half, half):
        pen.line(((left, axis + side), (right, axis + side)), INK, 2)
    for x in range(left, right - 4, 12):
        pen.line(((x, axis), (x + 6, axis)), INK, 1)
    crossing, slant, far = marked + turn / 2, math.atan(math.pi * half / turn), 62
    pen.line(((crossing, axis), (crossing + 68 * math.cos(slant), axis - 68 * math.sin(slant))), WARNING, 1)
    angles = [slant * step / 24 for step in range(25)]
    arc = [(crossing + far * math.cos(angle), axis - far * math.sin(angle)) for angle in angles]
    pen.line(arc, WARNING, 2)
    pen.word(crossing + far + 10, axis - 15, "angle", WARNING, "lm")
    pen.word(left, 92, "how the fibers at the surface lie", ACCENT, "lm")
    pen.word(left, 108, "against the length of the yarn", QUIET, "lm")


def counting_wraps(pen: Pen) -> None:
    """Yarn wound on a ruler, side by side, and the wraps within one inch of it."""
    left, right, top, low = 8, 272, 44, 96
    pen.area(((left, top), (right, top), (right, low), (left, low)), GROUND)
    pen.line(((left, top), (right, top), (right, low), (left, low), (left, top)), EDGE, 1.2)
    start, inch, wraps = 64, 132, 11
    for sixteenth in range(-6, 25):
        x = start + sixteenth * inch / 16
        tall = 18 if sixteenth % 16 == 0 else 11 if sixteenth % 4 == 0 else 6
        pen.line(((x, low), (x, low - tall)), QUIET, 1)
    thick = inch / wraps
    for wrap in range(-1, wraps + 1):
        x, is_inside = start + (wrap + 0.5) * thick, 0 <= wrap < wraps
        lean = thick / 2
        pen.line(((x - lean / 2, low + 5), (x + lean / 2, top - 5)), ACCENT if is_inside else SOFT, thick - 2.2)
    pen.measure((start, 26), (start + inch, 26), INK)
    pen.word(start + inch / 2, 11, "wraps in one inch: 11", INK)
    pen.word(left, 116, "side by side, not pushed together, not pulled", QUIET, "lm")


Drawing = Callable[[Pen], None]
DRAWINGS: dict[str, tuple[int, int, Drawing]] = {  # file -> pixels of the screen across and down, and who draws it
    "niddy-noddy.png": (340, 212, niddy_noddy),
    "angle-of-twist.png": (268, 120, angle_of_twist),
    "counting-wraps.png": (280, 126, counting_wraps),
}


def drawn(file: str) -> bytes:
    """A drawing as it is now."""
    width, height, draw = DRAWINGS[file]
    pen = Pen(width, height)
    draw(pen)
    return pen.png()


if __name__ == "__main__":
    for file in DRAWINGS:
        (HERE / file).write_bytes(drawn(file))
