"""The line through the grists of skeins: published values, a witness (scipy), and cases by hand."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from pytest import approx
from scipy import stats

from workbookgen.reference import statistics
from workbookgen.units import Quantity

# NIST Statistical Reference Datasets, Norris.dat (calibration of ozone monitors), with its certified values. Read.
# fmt: off
NORRIS_X = (
    0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6,
    556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
)
NORRIS_Y = (
    0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8,
    557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
)
# fmt: on
SLOPE, OF_SLOPE, OF_RESIDUALS = 1.00211681802045, 0.429796848199937e-03, 0.884796396144373


def fitted(places, grists, usual=1e-9):
    """The mean grist, the spread of the places, the change by place, and how far beyond chance it is."""
    places, grists, count = np.array(places, float), Quantity(np.array(grists, float), "m/g"), len(places)
    mean = statistics.group_mean(grists.sum(), count)
    variation = statistics.variation_of_sums((grists**2).sum(), count, mean)
    spread = statistics.spread_of_places((places**2).sum(), places.sum(), count)
    products = sum(statistics.weighted_by_place(x, y) for x, y in zip(places, grists, strict=True))
    change = statistics.change_by_place(products, places.sum(), grists.sum(), count, spread, mean)
    return mean.m_as("m/g"), spread, change, statistics.beyond_chance(change, spread, variation, count, usual)


def test_certified_values():
    mean, spread, change, beyond = fitted(NORRIS_X, NORRIS_Y)
    assert change * mean == approx(SLOPE, rel=1e-12)
    assert beyond == approx(SLOPE / OF_SLOPE, rel=1e-8)
    assert change * np.sqrt(spread) / beyond * mean == approx(OF_RESIDUALS, rel=1e-8)


@given(
    st.lists(
        st.tuples(st.integers(1, 1000), st.floats(1, 100)), min_size=3, max_size=30, unique_by=lambda each: each[0]
    )
)
def test_scipy_finds_the_same_line(points):
    places, grists = zip(*points, strict=True)
    mean, _, change, beyond = fitted(places, grists)
    theirs = stats.linregress(places, grists)
    assert change * mean == approx(theirs.slope, rel=1e-7, abs=1e-9)
    assume(np.std(grists) / mean > 0.01 and abs(theirs.rvalue) < 0.999)
    assert beyond == approx(theirs.slope / theirs.stderr, rel=1e-6, abs=1e-6)


def test_a_fitted_line_worked_by_hand():
    # Of 220, 210, 200, 190 and 180 m/g in lines 3 to 7: 10 less from line to line, 40 less in all, of a mean of 200.
    mean, spread, change, beyond = fitted(range(3, 8), (220, 210, 200, 190, 180), usual=0.1)
    assert (mean, spread, change) == (approx(200), approx(10), approx(-0.05))
    assert statistics.from_first_to_last(change, spread, 5) == approx(-0.2)
    assert beyond == approx(-0.05 * np.sqrt(10) / 0.1)


def test_an_uneven_hand_needs_more_to_make_a_trend():
    # Of six skeins the line leaves √((0.11² · 5 - 0.05² · 16) / 4) = 0.07, or of 0.25 · 0.25 · 5 = 0.3125, 0.2610.
    even, uneven = (statistics.beyond_chance(0.05, 16.0, each, 6.0, 0.1) for each in (0.11, 0.25))
    assert (even, uneven) == (approx(2), approx(0.2 / 0.2610, rel=1e-3))


def test_a_line_through_all_of_them_leaves_nothing():
    # A sum of squares may be less than what the line explains, by its rounding.
    assert statistics.beyond_chance(0.1 * (1 + 1e-12), 2.0, 0.1, 3.0, 0.1) == approx(np.sqrt(2))


@pytest.mark.parametrize("squares", [12.0, 11.9])
def test_places_that_are_all_the_same_are_none(squares):
    with pytest.raises(ValueError, match="Different places have larger squares"):
        statistics.spread_of_places(squares, 6.0, 3)


def test_four_skeins_tell_nothing_of_a_hand():
    for few in (3.0, 4.0):
        with pytest.raises(ValueError, match="number of skeins is a whole number, 5 or more"):
            statistics.from_first_to_last(-0.05, spread=5.0, count=few)


def test_the_nearest_places_are_half_apart():
    # Two lines below each other are half a line from their middle: 0.25 + 0.25.
    assert statistics.spread_of_places(7.0**2 + 8.0**2, 15.0, 2) == 0.5


def test_two_skeins_make_no_trend():
    with pytest.raises(ValueError, match="A line goes through any two skeins"):
        statistics.beyond_chance(0.0, spread=2.0, variation=0.1, count=2.0, usual=0.1)


@pytest.mark.parametrize(
    "drift, beyond, to_spin, ahead",
    [
        (-0.2, -3.0, 300.0, -0.2),  # from skein to skein 0.05; of 5 and 3, the middles are 4 apart
        (0.2, 3.0, 500.0, 0.25),
        (-0.2, -2.2, 300.0, 0.0),  # may be chance
        (-0.2, -1.5, 300.0, 0.0),
        (-0.2, 1.5, 300.0, 0.0),
        (-0.2, -3.0, 50.0, -0.1375),  # 5 and half a skein: 2.75 apart
        (-0.2, -2.3, 0.0, 0.0),  # nothing is to be spun
        (-0.9, -9.0, 900.0, -1.0),  # a grist of nothing, or less
        (0.9, 9.0, 900.0, 1.0),
        (None, -9.0, 900.0, 0.0),
        (-0.2, None, 900.0, 0.0),
    ],
)
def test_what_is_ahead_by_hand(drift, beyond, to_spin, ahead):
    meters = Quantity(to_spin, "m")
    assert statistics.change_ahead(5.0, meters, Quantity(100, "m"), drift, beyond) == approx(ahead)
    assert statistics.change_ahead(5.0, meters, drift=drift, beyond=beyond) == 0
    assert statistics.change_ahead(5.0, hold=meters + Quantity(1, "m"), drift=drift, beyond=beyond) == 0


def test_a_bought_thread_does_not_change():
    """Of a yarn that is half thread and comes out a tenth coarser, the spun half does by a fifth."""
    lengths = Quantity(300, "m"), Quantity(100, "m")
    assert statistics.change_ahead(5.0, *lengths, -0.1, -3.0, bought_share=0.0) == approx(-0.1)
    assert statistics.change_ahead(5.0, *lengths, -0.1, -3.0, bought_share=0.5) == approx(-0.2)
    for all_of_it in (1.0, 1.0 - 1e-9, 1.0 + 1e-9):  # as shares of a weight add up
        assert statistics.change_ahead(5.0, *lengths, -0.1, -3.0, bought_share=all_of_it) == 0
