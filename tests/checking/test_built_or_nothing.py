"""Building: a planner that agrees with the library is put in its place whole, any other leaves no trace."""

import functools
import os
import stat
import tempfile

import pytest

from workbookgen import build as building
from workbookgen.build import build, layout_of, workbook
from workbookgen.checking.driving import read
from workbookgen.engines import engine
from workbookgen.errors import Disagreement, FileError
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.reference import reeling
from workbookgen.saving import save


@pytest.fixture
def scratch(tmp_path, monkeypatch):
    """A folder for the planner, and one for whatever is put down in between; both start empty."""
    drafts, folder = tmp_path / "drafts", tmp_path / "planners"
    drafts.mkdir()
    folder.mkdir()
    monkeypatch.setattr(tempfile, "tempdir", str(drafts))
    return folder, drafts


@pytest.fixture
def wrong_reference(monkeypatch):
    """The library says one percent too much for a hundred wraps."""
    right = reeling.hundred_wraps

    @functools.wraps(right)
    def wrong(*given, **named):
        return right(*given, **named) * 1.01

    monkeypatch.setattr(reeling, "hundred_wraps", wrong)


def test_a_planner_is_built_and_nothing_else_is_left(small, scratch):
    folder, drafts = scratch
    layout = build(small, folder / "planner.xlsx")
    assert [each.name for each in folder.iterdir()] == ["planner.xlsx"] and not list(drafts.iterdir())
    assert (folder / "planner.xlsx").read_bytes() == workbook(layout)
    assert stat.S_IMODE(os.stat(folder / "planner.xlsx").st_mode) == 0o644


def test_a_planner_that_disagrees_is_not_built(small, scratch, wrong_reference):
    folder, drafts = scratch
    with pytest.raises(Disagreement) as caught:
        build(small, folder / "planner.xlsx")
    assert caught.value.exit_code == 1
    cell = layout_of(small).placements["reels_hundred"].cell(0)
    # A hundred turns of 72 in are 200 yd; the wrong library says 202.
    assert any(f"Reels!{cell}: expected 202.0" in str(fault) and "computes 200" in str(fault) for fault in caught.value.faults)
    assert not list(folder.iterdir()) and not list(drafts.iterdir())


def test_an_older_file_stays_as_it_was(small, scratch, wrong_reference):
    folder, drafts = scratch
    (folder / "planner.xlsx").write_bytes(b"older")
    with pytest.raises(Disagreement):
        build(small, folder / "planner.xlsx")
    assert (folder / "planner.xlsx").read_bytes() == b"older"
    assert [each.name for each in folder.iterdir()] == ["planner.xlsx"] and not list(drafts.iterdir())


def test_an_older_file_is_replaced(small, scratch):
    folder, _ = scratch
    (folder / "planner.xlsx").write_bytes(b"older")
    layout = build(small, folder / "planner.xlsx")
    assert (folder / "planner.xlsx").read_bytes() == workbook(layout)


def test_a_crash_while_building_leaves_nothing(small, scratch, monkeypatch):
    folder, drafts = scratch

    def crash(*_):
        raise RuntimeError("out of power")

    monkeypatch.setattr(building, "expected_values", crash)
    with pytest.raises(RuntimeError):
        build(small, folder / "planner.xlsx")
    assert not list(folder.iterdir()) and not list(drafts.iterdir())


def test_a_crash_while_saving_leaves_the_older_file(tmp_path, monkeypatch):
    target = tmp_path / "planner.xlsx"
    target.write_bytes(b"older")

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(FileError, match="planner.xlsx: this file cannot be written: No space left on device"):
        save(target, b"newer")
    assert target.read_bytes() == b"older" and [each.name for each in tmp_path.iterdir()] == ["planner.xlsx"]


@pytest.mark.parametrize("where", ["missing/planner.xlsx", "taken"])
def test_a_place_that_cannot_be_written_to(tmp_path, where):
    (tmp_path / "taken").mkdir()
    with pytest.raises(FileError, match="this file cannot be written: ") as caught:
        save(tmp_path / where, b"newer")
    assert caught.value.exit_code == 2
    assert [each.name for each in tmp_path.iterdir()] == ["taken"] and not list((tmp_path / "taken").iterdir())


def test_at_most_twenty_disagreements_are_told(small, monkeypatch):
    right = building.expected_values
    monkeypatch.setattr(
        building, "expected_values", lambda planner, entries: {key: ("wrong",) * len(each) for key, each in right(planner, entries).items()}
    )
    with pytest.raises(Disagreement) as caught:
        workbook(layout_of(small))
    assert len(caught.value.faults) == 20


def test_a_planner_with_entries_shows_their_results(small_layout, tmp_path):
    entries = with_records(
        small_layout.planner, starting_entries(small_layout.planner), "skeins",
        [{"name": "First", "reel": "Clock reel", "wraps": 100.0, "gross": 4.0}],
    )
    path = tmp_path / "planner.xlsx"
    path.write_bytes(workbook(small_layout, entries))
    with engine("formualizer").open(path) as session:
        shown = read(session, small_layout, small_layout.formulas)
    # 100 turns of 72 in are 200 yd; 200 yd in 4 oz are 800 yd/lb.
    assert shown["skeins_length_yd"][0] == pytest.approx(200.0)
    assert shown["skeins_grist_yd_lb"][0] == pytest.approx(800.0)
