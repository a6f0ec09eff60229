"""formulon as a further witness: its authors hold it against Excel, and here it is held against the reference
library."""

import pytest

from checking.mutants import edited, mutants_of
from long_run import LONG, drawn
from workbookgen.checking.check import FileToCheck, check
from workbookgen.checking.compare import are_same_words
from workbookgen.engines import Area
from workbookgen.engines.copies import with_poison
from workbookgen.errors import FileError
from workbookgen.planner_file import read_planner

from .formulon import Formulon

SCENARIOS = 5


@pytest.mark.skipif(
    not LONG,
    reason="in a long run: it takes more than a minute to read the file; the small planner below has the same formulas in fewer lines",
)
def test_the_default_planner(blank, layout, record_property):
    report = check(FileToCheck(blank, layout, formulas=read_planner(blank).formulas), [Formulon()], scenarios=SCENARIOS)
    [each] = report.engines
    record_property(
        "compared",
        [
            each.name,
            each.version,
            report.scenarios,
            each.comparisons,
            len(report.findings),
            each.worst_relative_difference,
        ],
    )
    assert [str(finding) for finding in report.findings[:10]] == []
    assert report.formula_cells == report.formula_cells_checked


def test_a_small_planner(small_file, small_layout):
    found = check(
        FileToCheck(small_file, small_layout), [Formulon("win-365-en_US")], scenarios=drawn(2, SCENARIOS)
    ).findings
    assert [str(each) for each in found] == []


def test_in_another_country(request):
    """A number within a text has its country's signs, as in Excel itself; nothing else may differ."""
    size = "small" if LONG else "little"
    file, layout = (request.getfixturevalue(f"{size}_{what}") for what in ("file", "layout"))
    found = check(FileToCheck(file, layout), [Formulon("win-365-de_DE")], scenarios=drawn(3, SCENARIOS)).findings
    assert found and [str(each) for each in found if not are_same_words(each.expected, each.got)] == []


def test_it_works_out_what_is_poisoned(little_file, little_layout, tmp_path):
    with_poison(little_file, tmp_path / "poisoned.xlsx")
    at = little_layout.placements["reels_hundred"]
    with Formulon().open(tmp_path / "poisoned.xlsx") as session:
        assert session.read(Area(at.sheet, at.row, at.column)) == [[pytest.approx(200.0)]]


def test_a_changed_formula_is_found(little_file, little_layout, tmp_path):
    [mutant] = [
        each for each in mutants_of(little_layout, "over for times") if each.placement.key == "skeins_length_yd"
    ]
    edited(little_file, tmp_path / "mutant.xlsx", little_layout, mutant.places)
    assert [
        each
        for each in check(FileToCheck(tmp_path / "mutant.xlsx", little_layout), [Formulon()], scenarios=3).findings
        if each.key == "skeins_length_yd"
    ]


def test_what_is_no_workbook(tmp_path):
    (tmp_path / "none.xlsx").write_bytes(b"PK and nothing")
    with pytest.raises(FileError, match="formulon cannot read this file"):
        Formulon().open(tmp_path / "none.xlsx")
