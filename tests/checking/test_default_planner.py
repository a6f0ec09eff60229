"""The default planner, whole, in every engine: at least 200 sets of inputs, and not one finding.

Gnumeric starts anew for each set, and takes some minutes. The table of what was compared is
printed at the end of the tests.
"""

import pytest

from workbookgen.checking.check import check
from workbookgen.planner_file import read_planner

SCENARIOS = 200


@pytest.mark.parametrize(
    "engines",
    [("formualizer", "ironcalc"), pytest.param(("libreoffice",), marks=pytest.mark.programs), pytest.param(("gnumeric",), marks=pytest.mark.programs)],
    ids=", ".join,
)
def test_every_formula_agrees_in_every_scenario(blank, layout, engines, record_property):
    report = check(blank, layout, engines, scenarios=SCENARIOS, formulas_in_file=read_planner(blank).formulas)
    for each in report.engines:
        found = sum(finding.engine == each.name for finding in report.findings)
        record_property("compared", [each.name, each.version, report.scenarios, each.comparisons, found, each.worst_relative_difference])
    assert [str(each) for each in report.findings[:10]] == []
    assert report.formula_cells == report.formula_cells_checked
    assert report.formula_cells_seen_filled > 0.99 * report.formula_cells  # a cell that was blank throughout was compared with nothing
