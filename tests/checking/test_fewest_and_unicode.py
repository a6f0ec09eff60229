"""Planners of the fewest lines, and of names in many scripts, in every engine."""

import pytest

from entries import entries_with
from long_run import drawn
from planners import rows_of
from workbookgen.build import layout_of, workbook
from workbookgen.checking.check import FileToCheck, check
from workbookgen.planner_file import read_planner
from workbookgen.settings import Reel, Settings

FEWEST = Settings(fibers="", rows=rows_of(2), reels=(Reel(name="Катушка 🧶", loop="72 in"),))
ENGINES = (
    "formualizer",
    "ironcalc",
    *(pytest.param(name, marks=pytest.mark.programs) for name in ("libreoffice", "gnumeric")),
)
# Written alike wherever they are named: on what else is one name, programs differ (tests/engines/test_engine_texts.py).
RECORDS = {
    "fiber": [
        {"name": "繭 まゆ", "state": "top or roving", "weight": 8.0},
        {"name": "صوف", "state": "top or roving", "weight": 4.0},
    ],
    "skeins": [
        {"name": "Пряжа 1", "reel": "Катушка 🧶", "wraps": 100.0, "gross": 4.0, "lot": "繭 まゆ"},
        {"name": "Élan ü", "reel": "Катушка 🧶", "wraps": 80.0, "gross": 3.0, "lot": "صوف"},
    ],
}


@pytest.fixture(scope="module")
def planner(tmp_path_factory):
    layout = layout_of(FEWEST)
    entries = entries_with(layout.planner, RECORDS)
    path = tmp_path_factory.mktemp("fewest") / "planner.xlsx"
    path.write_bytes(workbook(layout, entries))
    return read_planner(path)


@pytest.mark.parametrize("engine", ENGINES)
def test_every_formula_agrees(planner, engine):
    report = check(
        FileToCheck(planner.path, planner.layout, formulas=planner.formulas),
        [engine],
        scenarios=drawn(3 if engine in ("formualizer", "ironcalc") else 1, 40),
    )
    assert [str(each) for each in report.findings[:10]] == []
    assert report.formula_cells == report.formula_cells_checked
