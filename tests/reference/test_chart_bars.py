"""What charts draw of weights: worked by hand."""

import numpy as np
import pytest
from pytest import approx

from workbookgen.reference import chart_bars
from workbookgen.units import Quantity

from .quantities import grams


@pytest.mark.parametrize(
    "has, bar, off", [(150, 1.5, 0.25), (199, 1.99, 0.25), (200, 2, 0), (500, 2, 0), (-50, -0.5, 0.25)]
)
def test_a_bar_is_cut_off_at_twice_what_is_needed_and_its_doubt_with_it(has, bar, off):
    """12.5 g of 100 g, twice."""
    assert chart_bars.has_of_needs(grams(has), grams(100)) == approx(bar)
    assert chart_bars.whisker(grams(has), Quantity(0.1, "kg"), grams(12.5)) == approx(off)
    assert chart_bars.has_of_needs(grams([has, 100.0]), grams(100)) == approx(np.array([bar, 1]))


def test_give_or_take_is_twice_the_standard_uncertainty_as_in_the_chart_beside_it():
    assert chart_bars.give_or_take(grams(12.5)) == grams(25)
    assert chart_bars.give_or_take(grams(12.5)).m_as("g") == approx(
        100 * chart_bars.whisker(grams(150), grams(100), grams(12.5))
    )
    with pytest.raises(ValueError, match="negative"):
        chart_bars.give_or_take(grams(-1))


@pytest.mark.parametrize(
    "after, before, weighed, known, expected, lost",
    [
        (80, 100, None, 0, 80, 20),
        (80, 100, 80, 80, 0, 20),
        (100, 100, None, 100, 0, 0),  # bought so: there was no such step
        (120, 100, None, 120, 0, 0),
    ],
)
def test_what_was_weighed_is_drawn_as_known_and_what_is_only_expected_paler(
    after, before, weighed, known, expected, lost
):
    scale = None if weighed is None else grams(weighed)
    of_stage = grams(float(after)), grams(float(before))
    assert chart_bars.known_part(*of_stage, scale).m_as("g") == known
    assert chart_bars.expected_part(*of_stage, scale).m_as("g") == expected
    assert chart_bars.lost_part(*of_stage).m_as("g") == lost


def test_a_stage_that_takes_a_last_digit_off_takes_nothing_off():
    after, before = grams(0.3 - 0.2), grams(0.1)
    assert after < before
    assert chart_bars.known_part(after, before) == after and chart_bars.expected_part(after, before) == grams(0)


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: chart_bars.has_of_needs(grams(1), grams(0)), "needed"),
        (lambda: chart_bars.whisker(grams(1), grams(0), grams(1)), "needed"),
        *(
            (lambda calculation=calculation, masses=masses: calculation(*masses), "mass")
            for calculation in (chart_bars.known_part, chart_bars.expected_part, chart_bars.lost_part)
            for masses in ((grams(-1), grams(1)), (grams(1), grams(-1)))
        ),
    ],
)
def test_what_no_chart_can_draw_is_refused(wrong, words):
    with pytest.raises(ValueError, match=words):
        wrong()
