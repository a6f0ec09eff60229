"""Whoever asks for a planner that will be slow is told so, and nobody else."""

import re

import pytest

from workbookgen import cli
from workbookgen.build import layout_of
from workbookgen.language.fields import Result
from workbookgen.settings import Rows, Settings
from workbookgen.settings.waiting import LOT_SUMS, PROJECT_SUMS, long_wait, seconds_an_entry
from workbookgen.sheets.planner import planner
from workbookgen.sheets.skeins import FEW


@pytest.mark.parametrize("rows", [{}, {"skeins": 20_000}, {"skeins": 2_000, "fiber": 100, "projects": 50}])
def test_a_planner_that_is_quick_enough_says_nothing(rows):
    assert long_wait(Settings(rows=Rows(**rows))) == ""


def test_an_archive_says_what_it_takes():
    # Measured when it was written down: 33 to 53 s. A quarter of each is a sixteenth of it.
    assert seconds_an_entry(Settings(rows=Rows(skeins=5_000, fiber=250, projects=125))) == pytest.approx(2.625)
    archive = Rows(skeins=20_000, fiber=1_000, projects=500)
    assert long_wait(Settings(rows=archive)) == (
        "Once its lines are full, a spreadsheet program may need 42 seconds or more to add 20,000 skeins up for 1,000 lots and 500 projects: "
        "LibreOffice when you come to the desk, others perhaps after each skein you type. Fewer lines under [rows] in the settings make it quicker."
    )


def test_as_many_sums_are_reckoned_with_as_there_are():
    described = planner(Settings(rows=Rows(skeins=FEW + 1)))
    adding = {
        key: sum(
            len(re.findall(r"_where\(skeins_", field.formula))
            for field in described.blocks[key].fields
            if isinstance(field, Result)
        )
        for key in ("fiber", "projects")
    }
    assert adding == {"fiber": LOT_SUMS, "projects": PROJECT_SUMS}


def test_projects_that_are_left_out_cost_nothing():
    left_out = Settings(
        rows=Rows(skeins=20_000, fiber=1_000, projects=500),
        leave_out=("Projects", "Project", "Knitting", "Pieces", "Weaving", "Time", "Cost"),
    )
    assert "17 seconds" in long_wait(left_out) and "project" not in long_wait(left_out)


@pytest.mark.parametrize(("warning", "told"), [("It will be slow.", "It will be slow.\n"), ("", "")])
def test_the_command_says_it_once_the_file_is_there(warning, told, tmp_path, monkeypatch, capsys):
    monkeypatch.setattr("workbookgen.settings.waiting.long_wait", lambda settings: warning)
    monkeypatch.setattr("workbookgen.build.build", lambda settings, target, step: layout_of(settings))
    with pytest.raises(SystemExit):
        cli.cli(["build", "-o", str(tmp_path / "planner.xlsx")])
    said = capsys.readouterr()
    assert "is ready" in said.out and said.err.removeprefix("\n") == told
