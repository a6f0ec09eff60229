"""What the old planner shows is held against what the new one does; no engine keeps a person from a new planner."""

import openpyxl
import pytest

from planners import laid_out
from workbookgen.book.write import write
from workbookgen.build import computed
from workbookgen.carry import carry as carrying
from workbookgen.carry.report import sentences
from workbookgen.errors import FileError
from workbookgen.settings import Reel

from .conftest import cell, filled, small, written

REELS = [{"name": "Élan", "rated": 72.0}, {"name": "Spare", "rated": 54.0}]
SKEINS = [{"name": "First", "reel": "élan", "wraps": 100.0, "gross": 4.0}]


@pytest.fixture(scope="module")
def accented(tmp_path_factory):
    """A right planner: to spreadsheet programs É and é are one name."""
    settings = small(reels=())
    return written(
        tmp_path_factory.mktemp("accented") / "old.xlsx",
        settings,
        filled(settings, {"reels": REELS, "skeins": SKEINS}, {}),
    )


def test_a_planner_that_only_the_embedded_engine_reads_otherwise_is_carried(accented, carried, tmp_path):
    outcome = carried(accented)
    assert outcome.new.entries["skeins_reel"][0] == "élan"
    assert outcome.carried.unproven[0].sentence.startswith(
        "it takes É and é, and so every letter beyond A to Z, for different letters"
    )
    assert outcome.new.cell("skeins_loop", 0).value == 72.0, "the value of the library stands there"
    said = list(sentences(outcome.carried, accented, tmp_path / "new.xlsx"))
    assert any(each.startswith("In ") and "disagrees with the reference library" in each for each in said)


def test_an_engine_that_cannot_work_a_planner_out_stops_nobody(old_file, carried, monkeypatch):
    def failing(layout, content):
        raise FileError.at("planner.xlsx", "it cannot be worked out.")

    monkeypatch.setattr(carrying, "computed", failing)
    outcome = carried(old_file)
    assert [str(each) for each in outcome.carried.unproven] == ["formualizer: it cannot be worked out."]
    assert outcome.new.entries["skeins_name"][:3] == ("First", "Second", "Third")


def test_a_planner_on_which_all_agree_is_proven(old_file, carried):
    assert carried(old_file).carried.unproven == ()


def test_what_the_old_file_showed_is_told_where_it_is_another(tmp_path, carried):
    """Its formula, or the version that it is of, worked something else out."""
    layout, entries = laid_out(small()), filled(small())
    shown = computed(layout, write(layout, entries, {}))
    was, *others = shown["skeins_loop"]
    path = tmp_path / "old.xlsx"
    path.write_bytes(write(layout, entries, shown | {"skeins_loop": (was + 1, *others)}))
    [difference] = carried(path).carried.differences
    assert (difference.key, difference.row, difference.before, difference.after) == ("skeins_loop", 0, was + 1, was)


@pytest.mark.parametrize(
    ("one", "other"), [("Straße", "STRASSE"), ("Élan", "E\u0301lan"), ("Big wheel", "Big\u00a0wheel")]
)
def test_names_that_are_one_to_some_programs_only_are_told(one, other, tmp_path, carried):
    settings = small(reels=())
    records = {"reels": [{"name": one, "rated": 72.0}], "skeins": [{"name": "First", "reel": other, "wraps": 100.0}]}
    outcome = carried(written(tmp_path / "old.xlsx", settings, filled(settings, records, {})))
    [note] = outcome.carried.notes
    assert (
        f'"{one}" (' in note.sentence
        and f'"{other}" (' in note.sentence
        and "the same name to some programs" in note.sentence
    )
    assert outcome.new.entries["skeins_reel"][0] == other, "it stands as it was typed"


def test_a_difference_is_told_by_its_sheet_and_once(tmp_path, carried):
    """A reel is another one in the new planner, and two skeins are longer; nothing worked out twice is told twice."""
    skeins = [{"name": name, "reel": "Clock reel", "wraps": 100.0} for name in ("First", "Second")]
    old = written(tmp_path / "old.xlsx", small(), filled(small(), {"skeins": skeins}, {}))
    told = list(map(str, carried(old, small(reels=(Reel(name="Clock reel", loop="80 in"),))).carried.differences))
    assert "Desk, Yarn in skeins: 380 before, 422.2222222 now" in told
    assert [each for each in told if "Finished" in each and "(" not in each and "lot" not in each] == [
        *(f"Skeins, Finished, line {line}: 190 before, 211.1111111 now" for line in (1, 2)),
        *(f"Skeins, Finished, line {line}: 173.736 before, 193.04 now" for line in (1, 2)),
    ]


def test_what_has_no_label_is_told_by_its_name(tmp_path, carried):
    """The lines of the desk that say what needs a look: here the reel that the new planner calls otherwise."""
    skeins = [{"name": "First", "reel": "Spare", "wraps": 100.0}]
    old = written(tmp_path / "old.xlsx", small(), filled(small(), {"skeins": skeins}, {}))
    book = openpyxl.load_workbook(old)
    book[cell("skeins_reel").partition("!")[0]][cell("skeins_reel").partition("!")[2]] = "Attic reel"
    book[cell("look_skeins").partition("!")[0]][cell("look_skeins").partition("!")[2]] = "nothing"
    book.save(tmp_path / "edited.xlsx")
    told = list(map(str, carried(tmp_path / "edited.xlsx").carried.differences))
    [desk] = [each for each in told if each.startswith("Desk, look, skeins: ")]
    assert desk.endswith("now") and "First: Reel: choose one of the names on the sheet Reels." in desk
