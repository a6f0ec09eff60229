"""Names that a program could take for patterns, or for others: they are found letter by letter, in every engine.

MATCH takes a star for any letters, a question mark for one, and a tilde before them for its own
sign (OpenFormula 1.2, 4.11.8: HOST-USE-WILDCARDS, from memory). What it finds is held against the name.
"""

import pytest

from entries import entries_with
from planners import rows_of
from workbookgen.build import layout_of, workbook
from workbookgen.checking.check import FileToCheck, check
from workbookgen.checking.expected import expected_of_blocks
from workbookgen.planner_file import read_planner
from workbookgen.settings import Reel, Settings

ENGINES = (
    "formualizer",
    "ironcalc",
    *(pytest.param(name, marks=pytest.mark.programs) for name in ("libreoffice", "gnumeric")),
)
LOTS = ("wool 1", "wool*", "w?ol 1", "~*", "*", "wool 1*", ">1", "=1", "5", "Twice", "twice")
SETTINGS = Settings(fibers="", rows=rows_of(2, fiber=12, skeins=12), reels=(Reel(name="Reel", loop="72 in"),))


@pytest.fixture(scope="module")
def planner(tmp_path_factory):
    layout = layout_of(SETTINGS)
    lots = [{"name": name, "state": "top or roving", "weight": 20.0 + place} for place, name in enumerate(LOTS)]
    skeins = [
        {"name": f"of {name}", "reel": "Reel", "wraps": 100.0, "gross": 1.0 + place, "lot": name.upper()}
        for place, name in enumerate(LOTS)
    ]
    entries = entries_with(layout.planner, {"fiber": lots, "skeins": skeins})
    path = tmp_path_factory.mktemp("patterns") / "planner.xlsx"
    path.write_bytes(workbook(layout, entries))
    return read_planner(path), expected_of_blocks(layout.planner, entries)


@pytest.mark.parametrize("engine", ENGINES)
def test_each_is_found_by_itself_alone(planner, engine):
    read, _ = planner
    report = check(FileToCheck(read.path, read.layout), [engine], scenarios=0)
    assert [str(each) for each in report.findings[:10]] == []


def test_each_lot_has_its_own_skein(planner):
    _, expected = planner
    ounces = [1.0 + place for place in range(len(LOTS))]
    assert expected["fiber_spun"][: len(LOTS) - 2] == pytest.approx(ounces[:-2])
    assert expected["skeins_line_of_lot"][: len(LOTS)] == (*map(float, range(1, len(LOTS) - 1)), None, None)
