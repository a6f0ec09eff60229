"""The report of a check counts what was compared, and tells of what was not."""

from workbookgen.checking.report import EngineReport, Report
from workbookgen.checking.trial import Outcome


def test_each_formula_that_no_engine_compared_is_told_with_its_sheet(little_layout):
    cells = little_layout.formula_cells
    report = Report(1, cells, engines=[EngineReport("none", "0", cells)])
    report.conclude(little_layout, [Outcome()])
    first = little_layout.formulas[0]
    assert str(report.findings[0]) == f"{first.sheet}!{first.cell(0)} ({first.key}): nothing checks this formula"
    assert (len(report.findings), report.formula_cells_checked) == (cells, 0)
