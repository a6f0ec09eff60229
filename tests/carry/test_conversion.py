"""Between unit systems: in full, with a note where the cell would hide what was typed."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbookgen.carry.conversion import Converted, converted, is_conversion
from workbookgen.language.quantities import GAUGE, GRIST, LENGTH, LOOP, MASS, SHARE, TEMPERATURE, Kind

KINDS = st.sampled_from((LENGTH, LOOP, MASS, GRIST, GAUGE))
SYSTEMS = st.sampled_from(("us", "us-grams", "metric"))


@pytest.mark.parametrize(
    ("kind", "typed", "new", "value"),
    [
        (LOOP, 72.0, "metric", 182.88),  # an inch is 2.54 cm exactly (NIST Handbook 44, from memory)
        (LENGTH, 100.0, "metric", 91.44),  # a yard is 0.9144 m exactly (the same)
        (TEMPERATURE, 140.0, "metric", 60.0),
        (MASS, 16.0, "us-grams", 453.59237),  # a pound is 453.59237 g exactly (the same)
    ],
)
def test_exact_units(kind, typed, new, value):
    assert converted(typed, kind, "us", new).value == pytest.approx(value, rel=1e-15)


def test_a_note_tells_what_rounding_would_hide():
    there = converted(6.5, MASS, "us", "metric")
    assert there.value == pytest.approx(6.5 * 28.349523125, rel=1e-15)
    assert there.note == "Was 6.5 oz in the old planner."
    assert converted(16.0, MASS, "us", "metric").note == "Was 16 oz in the old planner."  # 453.5924 would be shown
    assert converted(72.0, LOOP, "us", "metric") == Converted(182.88)


def test_no_unit_and_the_same_unit_leave_everything_as_it_is():
    assert converted(0.1 + 0.2, SHARE, "us", "metric", "mine") == Converted(0.1 + 0.2, "mine")
    assert converted(3.0, None, "us", "metric") == Converted(3.0)
    assert converted(72.0, LOOP, "us", "us-grams") == Converted(72.0)


@given(st.floats(1e-6, 1e7), KINDS, SYSTEMS, SYSTEMS)
def test_there_and_back_is_the_same(value, kind: Kind, old, new):
    there = converted(value, kind, old, new)
    back = converted(there.value, kind, new, old, there.note)
    assert math.isclose(back.value, value, rel_tol=1e-12)
    if there.note:
        assert back == Converted(value), "the note gives the very number back"


def test_an_outdated_note_is_not_believed():
    there = converted(6.5, MASS, "us", "metric")
    assert converted(200.0, MASS, "metric", "us", there.note).value == pytest.approx(200 / 28.349523125, rel=1e-15)


def test_the_first_typed_number_is_told_over_two_carryings():
    first = converted(6.5, MASS, "us", "us-grams")
    again = converted(first.value, MASS, "us-grams", "metric", first.note)
    assert again == first  # grams both times: nothing to convert


def test_whose_note_it_is():
    assert is_conversion("Was 6.5 oz in the old planner.")
    assert not is_conversion("Was 6.5 oz in the old planner. Or was it?")
    assert not is_conversion("kept in the shed")
