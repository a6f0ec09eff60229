"""The drawings are what their script draws, small, and in the planner with words for those who do not see them."""

from io import BytesIO

import pytest

Image = pytest.importorskip("PIL.Image")
ImageChops = pytest.importorskip("PIL.ImageChops")

from workbookgen.book.plan import ROW  # noqa: E402
from workbookgen.book.sections import picture  # noqa: E402
from workbookgen.drawings import draw  # noqa: E402
from workbookgen.errors import DescriptionError  # noqa: E402
from workbookgen.filled.planner import described  # noqa: E402
from workbookgen.language.views import Picture  # noqa: E402
from workbookgen.settings import Settings  # noqa: E402

MOST_BYTES = 30_000
ALIKE = 0.02  # of black to white, on the mean of all points: another machine's typeface may differ by that much
PICTURES = [each for sheet in described(Settings()).sheets for each in sheet.sections if isinstance(each, Picture)]


def difference(one: bytes, other: bytes) -> float:
    """How far two drawings are apart, on the mean of all points, from 0 to 1."""
    first, second = (Image.open(BytesIO(each)).convert("L") for each in (one, other))
    assert first.size == second.size
    points = ImageChops.difference(first, second).tobytes()
    return sum(points) / len(points) / 255


@pytest.mark.parametrize("file", draw.DRAWINGS)
def test_a_drawing_is_what_the_script_draws(file):
    kept = (draw.HERE / file).read_bytes()
    assert difference(kept, draw.drawn(file)) <= ALIKE
    width, height, _ = draw.DRAWINGS[file]
    assert difference(kept, draw.Pen(width, height).png()) > ALIKE  # so that a drawing without lines would be told


@pytest.mark.parametrize("file", draw.DRAWINGS)
def test_a_drawing_is_small(file):
    assert len((draw.HERE / file).read_bytes()) < MOST_BYTES


def test_every_drawing_of_the_folder_is_drawn_by_the_script():
    assert {each.name for each in draw.HERE.glob("*.png")} == set(draw.DRAWINGS)


def test_the_planner_shows_every_drawing():
    assert {each.file for each in PICTURES} == set(draw.DRAWINGS)


@pytest.mark.parametrize("file", draw.DRAWINGS)
def test_a_file_has_the_size_that_its_line_says(file):
    width, height, _ = draw.DRAWINGS[file]
    assert Image.open(draw.HERE / file).size == (width * draw.POINTS, height * draw.POINTS)


def test_a_drawing_that_is_not_there_is_refused_by_its_name():
    with pytest.raises(DescriptionError, match="picture wheel.png: drawings/ has no drawing of this name"):
        picture.rows(Picture(file="wheel.png", about="A wheel."), described(Settings()))


@pytest.mark.parametrize("file", draw.DRAWINGS)
def test_a_picture_takes_the_rows_of_its_drawing(file):
    rows = picture.rows(Picture(file=file, about="A drawing."), described(Settings()))
    assert (rows - 1) * ROW < draw.DRAWINGS[file][1] + picture.OFF <= rows * ROW


@pytest.mark.parametrize("picture", PICTURES, ids=lambda each: each.file)
def test_a_drawing_has_words_for_those_who_do_not_see_it(picture):
    assert len(picture.about.split()) >= 12
