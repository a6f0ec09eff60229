"""A planner in which somebody has written is not written over; anything else may be."""

import openpyxl
import pytest

from workbookgen import cli
from workbookgen.build import build
from workbookgen.errors import FileError
from workbookgen.filled.planner import area_of
from workbookgen.filled.replacing import require_no_entries
from workbookgen.settings import Reel, Settings


SETTINGS = Settings(reels=(Reel(name="Clock reel", loop="2 yd"),))


@pytest.fixture(scope="module")
def untouched(tmp_path_factory):
    path = tmp_path_factory.mktemp("replacing") / "planner.xlsx"
    build(SETTINGS, path)
    return path


@pytest.fixture
def changed(untouched, tmp_path):
    """The planner with other values in the first cell of some fields."""

    def changing(**values):
        book = openpyxl.load_workbook(untouched)
        for key, value in values.items():
            area = area_of(book.defined_names[key].attr_text)
            book[area.sheet].cell(area.row, area.column).value = value
        book.save(path := tmp_path / "mine.xlsx")
        return path

    return changing


def told(path) -> str:
    with pytest.raises(FileError) as refused:
        require_no_entries(path)
    return str(refused.value)


def test_a_planner_as_it_was_built(untouched):
    require_no_entries(untouched)


def test_what_is_no_planner(tmp_path):
    path = tmp_path / "planner.xlsx"
    require_no_entries(path)
    path.write_bytes(b"a list of errands")
    require_no_entries(path)
    openpyxl.Workbook().save(path)
    require_no_entries(path)


@pytest.mark.parametrize(("key", "value", "place"), [
    ("skeins_wraps", 100, "Skeins!"),
    ("skeins_wraps", "a hundred", "Skeins!"),  # not taken by the planner, but typed
    ("reels_name", None, "Reels!B8"),
    ("guide_name", "Fog", "Fleece!"),
    ("pace_weekly", 3, "Time!"),
])
def test_one_cell_is_enough(changed, key, value, place):
    assert f"({place}" in told(changed(**{key: value}))


def test_saved_again_by_another_program(changed):
    require_no_entries(changed())


def command(capsys, *words) -> str:
    with pytest.raises(SystemExit) as end:
        cli.main([str(each) for each in words])
    assert end.value.code == 2
    return capsys.readouterr().err


@pytest.mark.parametrize("words", [
    ("build", "-o", "{mine}"),
    ("carry", "{other}", "-o", "{mine}"),
    ("blank", "{other}", "-o", "{mine}"),
    ("gather", "{other}", "-o", "{mine}"),
])
def test_every_command_that_writes(changed, untouched, capsys, words):
    mine = changed(skeins_wraps=100)
    before = mine.read_bytes()
    said = command(capsys, *(word.format(mine=mine, other=untouched) for word in words))
    assert said.startswith(f"{mine}: this planner holds entries, or a guide of its own (Skeins!")
    assert mine.read_bytes() == before
