"""`workbookgen carry`: what it says, what it writes, how it ends."""

import openpyxl
import pytest

from workbookgen import __version__

from .conftest import first_cell


@pytest.fixture
def filled(altered):
    return altered(skeins_name="First", skeins_reel="Clock reel", skeins_wraps="about a hundred")


def test_it_says_what_came_over_and_what_is_left_over(filled, run, tmp_path):
    new = tmp_path / "new.xlsx"
    outcome = run("carry", filled, "-o", new)
    assert outcome.code == 0
    assert outcome.err == ""
    lines = outcome.out.splitlines()
    assert lines[0] == f"{new} is ready, with the entries of {filled} (made with workbookgen {__version__})."
    assert "  Skeins: 1 line" in lines
    assert "1 thing is in its cell, though the planner does not accept it: see the sheet Leftovers." in lines
    assert any(line.startswith('  Skeins!D9, Wraps: "about a hundred"') for line in lines)
    assert lines[-1] == "Every result is the same as before."
    book = openpyxl.load_workbook(new)
    assert first_cell(book, "skeins_wraps").value == "about a hundred"
    assert run("check", new, "--scenarios", 0).code == 0


def test_other_settings_and_converted_values(altered, run, tmp_path):
    old = altered(reels_cord=600)
    settings = tmp_path / "metric.toml"
    settings.write_text('units = "metric"\nfibers = ""\n', encoding="utf-8")
    outcome = run("carry", old, "-o", tmp_path / "new.xlsx", "--settings", settings)
    assert outcome.code == 0
    assert "values converted to the new units" in outcome.out
    book = openpyxl.load_workbook(tmp_path / "new.xlsx")
    assert (first_cell(book, "reels_rated").value, first_cell(book, "reels_cord").value) == (182.88, 1524)


def test_nothing_is_written_where_it_cannot_be_done(planner, run, tmp_path):
    for source, target, said in (
        (planner, planner, "this is the file that is read"),
        (tmp_path / "none.xlsx", tmp_path / "new.xlsx", "there is no such file"),
        (planner, tmp_path / "nowhere" / "new.xlsx", "nowhere"),
    ):
        before = planner.read_bytes()
        outcome = run("carry", source, "-o", target)
        assert outcome.code == 2
        assert said in outcome.err and outcome.err.count("\n") == 1
        assert outcome.out == ""
        assert planner.read_bytes() == before
    assert list(tmp_path.iterdir()) == []


def test_another_workbook_is_no_planner(run, tmp_path):
    openpyxl.Workbook().save(tmp_path / "other.xlsx")
    outcome = run("carry", tmp_path / "other.xlsx", "-o", tmp_path / "new.xlsx")
    assert outcome.code == 2
    assert "this is not one of our planners" in outcome.err
    assert not (tmp_path / "new.xlsx").exists()
