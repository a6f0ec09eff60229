"""Filled planners, worked out by a program at its first loading.

A program that loads a full planner with nothing worked out goes through its formulas in an
order of its own. LibreOffice has been seen to take a long way there and back between two
logs for a circle; so planners filled by scenarios are loaded, with poisoned caches, as is.
"""

import shutil
import subprocess

import pytest

from long_run import dealt
from mutation.shared_yarns import shared
from workbookgen.book.write import write
from workbookgen.build import workbook
from workbookgen.checking.check import FileToCheck, check
from workbookgen.checking.scenarios import scenario
from workbookgen.planner_file import read_planner


@pytest.mark.programs
@pytest.mark.parametrize(
    ("name", "filled"),
    dealt([(scenario, 500), (scenario, 501), (shared, 602), (shared, 603)], ["libreoffice", "gnumeric"]),
)
def test_a_full_planner_is_right_at_first_loading(name, filled, layout, tmp_path):
    drawn, seed = filled
    file = tmp_path / "full.xlsx"
    file.write_bytes(write(layout, drawn(layout.planner, seed), {}))
    report = check(FileToCheck(file, layout), [name], scenarios=0)
    assert report.findings == []
    assert report.formula_cells_seen_filled > 4_000


@pytest.mark.programs
def test_gnumeric_shows_no_other_numbers_where_it_keeps_some_that_are_stored(layout, tmp_path):
    """It works out some cells at loading and keeps the others: numbers that are equal differ in their last digits
    then."""
    program = shutil.which("ssconvert") or pytest.skip("Gnumeric is not here")
    (tmp_path / "full.xlsx").write_bytes(workbook(layout, scenario(layout.planner, 6, 24, is_whole=True)))
    subprocess.run(
        [program, tmp_path / "full.xlsx", tmp_path / "saved.xlsx"], check=True, capture_output=True, timeout=120
    )
    saved = read_planner(tmp_path / "saved.xlsx")
    report = check(
        FileToCheck(tmp_path / "saved.xlsx", saved.layout, formulas=saved.formulas, whole=saved.whole), scenarios=0
    )
    assert report.findings == []
