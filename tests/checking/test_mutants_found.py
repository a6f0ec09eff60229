"""The check finds a planner with one wrong formula: by its text, and by its values alone."""

import pytest

from chapters import all_but
from workbookgen.build import layout_of, workbook
from workbookgen.checking.check import FileToCheck, check
from workbookgen.checking.formulas import foreign_formulas
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.planner_file import read_planner

from .mutants import KINDS, edited, mutants_of

pytestmark = pytest.mark.usefixtures("worked_out_once")

# For every kind of change a field in which it changes a value, and not only how the value is come by.
BY_VALUE = {
    "a factor of another unit": "skeins_length_yd",
    "inches for centimeters": "reels_measured",
    "a rounded constant": "skeins_expected_wpi",
    "an ounce of another sort": "skeins_tex",
    "a changed whole number": "reels_hundred",
    "times for over": "reels_measured",
    "over for times": "skeins_length_yd",
    "plus for minus": "skeins_shrinkage",
    "minus for plus": "projects_length",
    "the cell of the next row": "reels_hundred",
    "the cell of the next column": "reels_measured",
    "a range one row short": "skeins_reel_sum",
    "a sum of the column beside it": "skeins_reel_sum",
    "the looked-up column beside it": "skeins_loop",
    "no guard against blanks": "skeins_length_yd",
    "no test of the domain": "reels_listed",
    "an open upper limit": "reels_measured",
    "nothing refused": "skeins_length_yd",
    "nothing let through": "fiber_length",
    "a doubled name let through": "reels_line_of_listed",
    "a zero for a blank": "skeins_net",
    "and for or": "reels_loop",
    "or for and": "skeins_length_yd",
    "count for sum": "skeins_reel_sum",
    "the smaller for the larger": "measure_least",
    "down for up": "buying_fleeces",
    "a root left out": "reels_from_arms",
    "another word in a text": "reels_basis",
    "another sentence in a message": "skeins_fault",
    "coarser rounding": "guide_grade",
    "a number for the formula": "skeins_tex",
}


@pytest.fixture(scope="module")
def few(small):
    """The layout of a planner with the chapters of these fields."""
    return layout_of(small.model_copy(update={"leave_out": all_but("Guide", "Buying", "Counts")}))


@pytest.fixture(scope="module")
def edges(few, tmp_path_factory):
    """A planner in which stands what seldom is drawn: doubled names, zeros, a limit missed by a hair."""
    entries = starting_entries(few.planner)
    for block, records in {
        "reels": [
            {"name": "Twice", "rated": 72.0, "cord": 144.0, "turns": 2.0},
            {"name": "twice", "rated": 60.0},
            {"name": "x" * 41, "rated": 50.0},
            {"name": "Once", "height": 15.0, "arm_a": 14.0, "arm_b": 12.0},  # in the last line that there is
        ],
        "guide": [
            {
                "name": "Fine wool",
                "diameter_low": 17.6,
                "diameter_high": 17.6,
                "fleece_low": 5.0,
                "fleece_high": 7.0,
                "yield_low": 0.5,
                "yield_high": 0.7,
                "skirting": 0.1,
                "preparation": 0.05,
                "spinning": 0.05,
            }
        ],
        "fiber": [
            {"name": "Thread", "state": "yarn or thread", "weight": 10.0, "grist": 0.0},
            {"name": "Wool", "state": "prepared fiber", "weight": 4.0, "kind": "Fine wool", "grist": 900.0},
        ],
        "skeins": [
            {"name": "Doubled", "reel": "Twice", "wraps": 10.0, "gross": 2.0, "washed_loop": 70.0},
            {"name": "No wraps", "reel": "Once", "wraps": 0.0, "part_wrap": 0.0, "rest": 0.0, "gross": 2.0},
            {"reel": "Once", "wraps": 90.0, "gross": 2.0, "lot": "Wool", "washed_loop": 60.0},
        ],
        "buying": [{"kind": "Fine wool", "state": "raw fleece", "length": 1000.0, "grist": 900.0}],
        "measure": [{"loop": 72.0, "wraps": 100.0, "gross": 3.0, "washed_loop": 70.0}],
    }.items():
        entries = with_records(few.planner, entries, block, records)
    path = tmp_path_factory.mktemp("edges") / "planner.xlsx"
    path.write_bytes(workbook(few, entries))
    return path


def test_every_kind_of_change_is_tried():
    assert set(BY_VALUE) == set(KINDS)


@pytest.mark.parametrize("kind", KINDS)
def test_a_changed_formula_is_told_apart_by_its_text(small_layout, kind):
    ours = {
        (each.sheet, each.cell(row)): text for each in small_layout.formulas for row, text in enumerate(each.formulas)
    }
    mutants = mutants_of(small_layout, kind)
    assert mutants
    for mutant in (mutants[0], mutants[-1]):
        findings = foreign_formulas(small_layout, ours | dict(mutant.places))
        assert {(each.cell, each.reason) for each in findings} == {
            (f"{sheet}!{cell}", "the formula was changed") for sheet, cell in mutant.places
        }


@pytest.mark.parametrize("kind", BY_VALUE)
def test_a_changed_formula_is_found_by_its_values_alone(few, edges, tmp_path, kind):
    [mutant] = [each for each in mutants_of(few, kind) if each.placement.key == BY_VALUE[kind]]
    path = tmp_path / "mutant.xlsx"
    edited(edges, path, few, mutant.places)
    report = check(FileToCheck(path, few), scenarios=4)
    found = [each for each in report.findings if each.key == mutant.placement.key]
    assert found, str(mutant)
    assert {each.reason for each in found} <= {"the reference library disagrees", "the cell shows an error"}
    assert report.engines[0].refused > 0 and report.engines[0].agreed < report.engines[0].declared


@pytest.mark.parametrize(
    "kind", ["a factor of another unit", "a number for the formula", "another sentence in a message"]
)
def test_a_changed_file_is_found_by_both(few, edges, tmp_path, kind):
    [mutant] = [each for each in mutants_of(few, kind) if each.placement.key == BY_VALUE[kind]]
    path = tmp_path / "mutant.xlsx"
    edited(edges, path, few, mutant.places)
    report = check(FileToCheck(path, few, formulas=read_planner(path).formulas), scenarios=3)
    reasons = {each.reason for each in report.findings if each.key == mutant.placement.key}
    assert reasons == {"the formula was changed", "the reference library disagrees"}


def test_one_cell_of_many_is_found(few, edges, tmp_path):
    placement = few.placements["skeins_length_yd"]
    path = tmp_path / "mutant.xlsx"
    edited(edges, path, few, {(placement.sheet, placement.cell(4)): placement.formulas[3]})
    report = check(FileToCheck(path, few), scenarios=4)
    assert f"{placement.sheet}!{placement.cell(4)}" in {each.cell for each in report.findings}
