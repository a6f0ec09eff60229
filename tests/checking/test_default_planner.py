"""The default planner, whole, in every engine: drawn sets of inputs, good and bad, and not one finding.

At each push every engine gets as many sets as its pace allows (Gnumeric starts anew for each),
in a long run 200. The table of what was compared is printed at the end of the tests.
"""

import pytest

from long_run import LONG, drawn
from workbookgen.checking.check import FileToCheck, check
from workbookgen.planner_file import read_planner

ALL = 200
AT_A_PUSH = {"formualizer": 24, "ironcalc": 10, "libreoffice": 6, "gnumeric": 3}
PROGRAMS = ("libreoffice", "gnumeric")


@pytest.mark.parametrize(
    "engine", [pytest.param(name, marks=pytest.mark.programs) if name in PROGRAMS else name for name in AT_A_PUSH]
)
def test_every_formula_agrees_in_every_scenario(blank, layout, engine, record_property):
    report = check(
        FileToCheck(blank, layout, formulas=read_planner(blank).formulas),
        [engine],
        scenarios=drawn(AT_A_PUSH[engine], ALL),
    )
    for each in report.engines:
        found = sum(finding.engine == each.name for finding in report.findings)
        record_property(
            "compared",
            [each.name, each.version, report.scenarios, each.comparisons, found, each.worst_relative_difference],
        )
    assert [str(each) for each in report.findings[:10]] == []
    assert report.formula_cells == report.formula_cells_checked
    if LONG:
        # A cell that was blank throughout was compared with nothing.
        assert report.formula_cells_seen_filled > 0.99 * report.formula_cells
