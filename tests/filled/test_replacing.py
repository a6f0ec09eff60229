"""A planner in which somebody has written, or that nobody can read, is not written over; anything else may be."""

import openpyxl
import pytest

from chapters import all_but
from planners import laid_out, rows_of
from workbookgen import cli
from workbookgen.build import build
from workbookgen.carry.carry import carry
from workbookgen.errors import FileError
from workbookgen.filled.book import area_of
from workbookgen.filled.replacing import require_no_entries
from workbookgen.settings import Reel, Settings, templates

SETTINGS = Settings(
    rows=rows_of(4, guide=60),
    reels=(Reel(name="Clock reel", loop="2 yd"),),
    leave_out=all_but("Guide", "Time", "Figures"),
)


@pytest.fixture(scope="module")
def untouched(tmp_path_factory):
    path = tmp_path_factory.mktemp("replacing") / "planner.xlsx"
    build(SETTINGS, path)
    return path


@pytest.fixture
def changed(untouched, tmp_path):
    """The planner with other values in the first cell of some fields."""

    def changing(beside=None, note=None, **values):
        book = openpyxl.load_workbook(untouched)
        if beside:
            book["Skeins"][beside].value = "ask about the wheel"
        if note:
            book["Skeins"][note].comment = openpyxl.comments.Comment("ask Fern", "")
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


def test_a_file_that_nobody_named_is_not_replaced_unless_it_is_an_untouched_planner(untouched, tmp_path, monkeypatch):
    """The name planner.xlsx is ours if no other is given, and somebody's own workbook may have it."""
    path = tmp_path / "planner.xlsx"
    openpyxl.Workbook().save(path)
    monkeypatch.chdir(tmp_path)
    before = path.read_bytes()
    with pytest.raises(SystemExit) as end:
        cli.main(["build", "--size", "small"])
    assert end.value.code == 2 and path.read_bytes() == before
    with pytest.raises(FileError, match="not one of our planners. Choose another name after -o, or this one"):
        require_no_entries(path, is_named=False)
    path.write_bytes(untouched.read_bytes())
    require_no_entries(path, is_named=False)
    require_no_entries(tmp_path / "none.xlsx", is_named=False)


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("skeins_wraps", 100),
        ("skeins_wraps", "a hundred"),  # not taken by the planner, but typed
        ("reels_name", None),
        ("guide_name", "Fog"),
        ("pace_weekly", 3),
    ],
)
def test_one_cell_is_enough(changed, key, value):
    """That cell is told: here the first of its field."""
    at = laid_out(SETTINGS).placements[key]
    assert f"({at.sheet}!{at.cell(0)})" in told(changed(**{key: value}))


@pytest.mark.parametrize(
    ("beside", "words"),
    [
        ({"beside": "CZ40"}, "more than its formulas (Skeins!CZ40)"),
        ({"note": "C9"}, "notes (Skeins)"),  # pinned to an empty cell in which one types
        ({"note": "CZ40"}, "notes (Skeins)"),
    ],
)
def test_what_stands_in_the_margin_alone(changed, beside, words):
    assert words in told(changed(**beside))


def test_what_an_earlier_carrying_left_over(changed, tmp_path):
    carry(changed(beside="CZ40"), tmp_path / "new.xlsx")
    assert "leftovers of an older planner" in told(tmp_path / "new.xlsx")


@pytest.mark.parametrize(
    "damaged",
    [
        lambda planner: planner[: len(planner) // 2],
        lambda planner: b"\0" * 64 + planner[64:],
        lambda planner: b"\xd0\xcf\x11\xe0" + bytes(508) + "EncryptedPackage".encode("utf-16-le"),
    ],
    ids=["cut off", "begun with nothing", "with a password"],
)
def test_what_cannot_be_read_may_be_somebodys_planner(untouched, tmp_path, damaged):
    path = tmp_path / "mine.xlsx"
    path.write_bytes(damaged(untouched.read_bytes()))
    assert "What somebody may have typed into it would be lost" in told(path)


def test_one_that_lost_what_it_was_made_with(untouched, tmp_path):
    book = openpyxl.load_workbook(untouched)
    area = area_of(book.defined_names["origin_line"].attr_text)
    book[area.sheet].cell(area.row, area.column).value = "mine"
    book.save(tmp_path / "mine.xlsx")
    assert "would be lost" in told(tmp_path / "mine.xlsx")


def test_a_second_build_with_a_fiber_table_of_ones_own(tmp_path):
    header, *fibers = (templates() / "fibers.csv").read_text(encoding="utf-8").splitlines()
    (tmp_path / "mine.csv").write_text("\n".join([header, *fibers[:3]]), encoding="utf-8")
    settings = SETTINGS.model_copy(update={"fibers": str(tmp_path / "mine.csv")})
    build(settings, tmp_path / "planner.xlsx")
    require_no_entries(tmp_path / "planner.xlsx", settings)
    assert "a guide of its own" in told(tmp_path / "planner.xlsx"), "by other settings its guide would be lost"


def test_saved_again_by_another_program(changed):
    require_no_entries(changed())


def command(capsys, *words) -> str:
    with pytest.raises(SystemExit) as end:
        cli.main([str(each) for each in words])
    assert end.value.code == 2
    return capsys.readouterr().err


@pytest.mark.parametrize(
    "words",
    [
        ("build", "-o", "{mine}"),
        ("carry", "{other}", "-o", "{mine}"),
        ("blank", "{other}", "-o", "{mine}"),
        ("gather", "{other}", "-o", "{mine}"),
    ],
)
def test_every_command_that_writes(changed, untouched, capsys, words):
    mine = changed(skeins_wraps=100)
    before = mine.read_bytes()
    said = command(capsys, *(word.format(mine=mine, other=untouched) for word in words))
    assert said.startswith(f"{mine}: this planner holds entries, or a guide of its own (Skeins!")
    assert mine.read_bytes() == before
