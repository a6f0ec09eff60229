"""Cells that a person seldom means: numbers beyond all bounds, truth values, notes on empty lines, arithmetic
without a place."""

import openpyxl
import pytest
from openpyxl.comments import Comment

from workbookgen.carry.conversion import converted
from workbookgen.language.quantities import LOOP

from .conftest import cell, filled, small, written


def typed(path, old_file, edits, notes=()):
    book = openpyxl.load_workbook(old_file)
    for place, value in edits.items():
        sheet, _, address = place.partition("!")
        book[sheet][address] = value
    for place in notes:
        sheet, _, address = place.partition("!")
        book[sheet][address].comment = Comment("ask Fern", "")
    book.save(path)
    return path


def test_a_number_beyond_all_bounds_is_one_bad_cell(tmp_path, carried):
    entries = filled(small())
    entries["fiber_weight"] = (1e307, *entries["fiber_weight"][1:])
    outcome = carried(written(tmp_path / "old.xlsx", small(), entries), small("metric"))
    assert outcome.leftovers[cell("fiber_weight")][0] == 1e307
    assert outcome.new.entries["fiber_weight"][0] is None and outcome.new.entries["skeins_name"][0] == "First"


@pytest.mark.parametrize(("formula", "entry"), [("=1E400", None), ("=TRUE", "TRUE")])
def test_arithmetic_that_gives_no_number(formula, entry, old_file, tmp_path, carried):
    outcome = carried(typed(tmp_path / "old.xlsx", old_file, {cell("skeins_wraps"): formula}))
    assert outcome.new.entries["skeins_wraps"][0] == entry
    assert any(each.what == formula for each in outcome.carried.leftovers)


def test_a_note_on_an_empty_line_goes_along(old_file, tmp_path, carried):
    outcome = carried(typed(tmp_path / "old.xlsx", old_file, {}, [cell("skeins_wraps", 3)]))
    assert list(outcome.new.book.comments["Skeins"].values()) == ["ask Fern"]


def test_a_stranded_line_keeps_its_arithmetic(old_file, tmp_path, carried):
    outcome = carried(typed(tmp_path / "old.xlsx", old_file, {cell("skeins_wraps", 2): "=6.5*16"}), small(lines=2))
    [told] = [each for each in outcome.carried.leftovers if f"{each.sheet}!{each.cell}" == cell("skeins_wraps", 2)]
    assert told.what == 104.0 and told.why.endswith("it was calculated by =6.5*16")


def test_every_digit_comes_back():
    number = 72.00000000000001
    there = converted(number, LOOP, "us", "metric")
    assert converted(there.value, LOOP, "metric", "us", there.note).value == number
