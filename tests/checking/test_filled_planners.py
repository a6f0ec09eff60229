"""Filled planners, worked out by a program at its first loading.

A program that loads a full planner with nothing worked out goes through its formulas in an
order of its own. LibreOffice has been seen to take a long way there and back between two
logs for a circle; so planners filled by scenarios are loaded, with poisoned caches, as is.
"""

import pytest

from workbookgen.build import layout_of, workbook
from workbookgen.checking.check import check
from workbookgen.checking.scenarios import scenario
from workbookgen.settings import Settings


@pytest.mark.programs
@pytest.mark.parametrize("seed", [500, 501, 502])
@pytest.mark.parametrize("name", ["libreoffice", "gnumeric"])
def test_a_full_planner_is_right_at_first_loading(seed, name, tmp_path):
    layout = layout_of(Settings())
    file = tmp_path / "full.xlsx"
    file.write_bytes(workbook(layout, scenario(layout.planner, seed)))
    report = check(file, layout, [name], scenarios=0)
    assert report.findings == []
    assert report.formula_cells_seen_filled > 4_500
