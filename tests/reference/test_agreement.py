"""Verdicts on the published examples, and the sentence they make."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbookgen.reference import agreement
from workbookgen.units import Quantity


def test_agrees_within_the_tolerance_of_the_printed_value():
    assert agreement.agrees(140.39, 140.5, 0.004) == "agrees"
    assert agreement.agrees(99.10, 98.95, 1e-4) == "differs"
    assert agreement.agrees(-101, -100, 0.02) == "agrees"
    assert agreement.agrees(1.0, 1.0, 0) == "agrees"


@pytest.mark.parametrize(
    "computed, printed, word",
    [("balanced", "balanced", "agrees"), ("a", "b", "differs"), ("b", "a", "differs"), ("A", "a", "differs")],
)
def test_texts_agree_when_they_are_the_same(computed, printed, word):
    assert agreement.agrees(computed, printed, 0) == word


def test_the_tolerance_counts_on_the_printed_value():
    # 10 per cent of 100 reaches 110; 10 per cent of 110 reaches down to 99 only.
    assert agreement.agrees(112, 100, 0.11) == "differs"
    assert agreement.agrees(100, 112, 0.11) == "agrees"


def test_a_printed_zero_is_met_by_zero_only():
    assert agreement.agrees(0.0, 0.0, 0.1) == "agrees"
    assert agreement.agrees(1e-12, 0.0, 0.1) == "differs"


def test_quantities_are_compared_whatever_their_units():
    assert agreement.agrees(Quantity(36, "inch"), Quantity(1, "yard"), 1e-12) == "agrees"
    found = agreement.agrees(Quantity([36, 37], "inch"), Quantity(1, "yard"), 1e-12)
    assert found.dtype == object and list(found) == ["agrees", "differs"]


@given(printed=st.floats(-1e6, 1e6), factor=st.floats(0.9, 1.1), tolerance=st.sampled_from([1e-9, 1e-4, 0.01, 0.2]))
def test_math_isclose_says_the_same(printed, factor, tolerance):
    # Outside witness. isclose counts on the larger value, so only clear cases are comparable.
    computed = printed * factor
    if abs(abs(factor - 1) - tolerance) < 0.25 * tolerance or abs(printed) < 1e-300:
        return
    close = math.isclose(computed, printed, rel_tol=tolerance)
    assert agreement.agrees(computed, printed, tolerance) == ("agrees" if close else "differs")


def test_how_many_agree():
    assert agreement.how_many_agree(["agrees", "differs", "", "agrees"]) == 2
    assert agreement.how_many_agree(np.array(["differs"])) == 0
    assert agreement.how_many_agree("agrees") == 1


def test_how_many_counts_what_could_not_be_computed_too():
    assert agreement.how_many(["agrees", "differs", "", "agrees"]) == 4


def test_the_desk_says_how_many_checks_fail():
    assert agreement.trust(24, 24) == "This program computes the planner correctly."
    assert agreement.trust(21.0, 24.0) == ("Do not rely on the numbers here: 3 of 24 checks fail in this program.")
    assert agreement.trust(0, 1).startswith("Do not rely on the numbers here: 1 of 1 ")


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: agreement.agrees(float("nan"), 1.0, 0.1), "numbers"),
        (lambda: agreement.agrees(1.0, float("nan"), 0.1), "numbers"),
        (lambda: agreement.agrees(1.0, 1.0, -0.1), "tolerance"),
        (lambda: agreement.how_many_agree([]), "no verdicts"),
        (lambda: agreement.how_many([]), "no verdicts"),
        (lambda: agreement.trust(0, 0), "at least one"),
        (lambda: agreement.trust(3, 2), "From none to all"),
        (lambda: agreement.trust(-1, 2), "From none to all"),
        (lambda: agreement.trust(1.5, 2), "whole numbers"),
        (lambda: agreement.trust(1, 2.5), "whole numbers"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
