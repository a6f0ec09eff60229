"""Doubts and chances, with `uncertainties`, scipy and a million draws as outside witnesses."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx
from scipy import stats
from uncertainties import ufloat

from workbookgen.reference import fiber, project, uncertainty
from workbookgen.units import Quantity

DRAWS = 1_000_000  # as many trials as JCGM 101, 7.2.2 asks for (from memory)
doubts = st.floats(0.001, 1e3)


def yards(number):
    return Quantity(number, "yard")


def test_rectangular_is_scipys_spread_of_a_rectangle():
    assert uncertainty.rectangular(0.1) == approx(stats.uniform(-0.1, 0.2).std())
    assert uncertainty.rectangular(Quantity(0.5, "g")).m_as("g") == approx(stats.uniform(0, 1).std())


@given(half=doubts)
def test_two_ways_to_tell_the_same_rectangle(half):
    by_ends = fiber.rectangular_uncertainty(-half, half)
    assert uncertainty.rectangular(half) == approx(by_ends)


def test_doubts_of_a_gauge_block():
    # JCGM 100, H.1 (from memory): 25, 9.7, 2.9 and 16.6 nm give 32 nm.
    parts = [Quantity(size, "nm") for size in (25.0, 9.7, 2.9, 16.6)]
    assert uncertainty.combined(*parts).m_as("nm") == approx(32, abs=0.5)


def test_doubts_of_different_units_and_gaps():
    assert uncertainty.combined(Quantity(30.0, "mm"), None, Quantity(4.0, "cm")).m_as("mm") == approx(50)
    assert uncertainty.combined(Quantity(5.0, "g")).m_as("g") == approx(5)
    assert uncertainty.product_relative(Quantity(3, "percent"), 0.04) == approx(0.05)


@given(doubts, doubts, doubts, doubts)
def test_the_package_uncertainties_adds_alike(first, second, third, fourth):
    together = sum(ufloat(10, each) for each in (first, second, third, fourth))
    assert uncertainty.combined(first, second, third, fourth) == approx(together.std_dev)
    assert uncertainty.surplus_uncertainty(first, second) == approx((ufloat(9, first) - ufloat(7, second)).std_dev)


@given(st.tuples(*[st.floats(1, 1e3)] * 3), st.tuples(*[st.floats(0.001, 0.05)] * 3))
def test_the_package_uncertainties_multiplies_alike(values, shares):
    first, second, third = (ufloat(value, value * share) for value, share in zip(values, shares, strict=True))
    quotient = first * second / third
    assert uncertainty.product_relative(*shares) == approx(quotient.std_dev / quotient.nominal_value)
    pair = first / third
    assert uncertainty.product_relative(shares[0], shares[2]) == approx(pair.std_dev / pair.nominal_value)


@pytest.mark.parametrize("have, need", [(420, 400), (400, 410), (405, 400), (460, 400)])
def test_a_million_draws_are_enough_as_often_as_the_chance_says(have, need):
    chance = np.random.default_rng(2)
    left_over = yards(chance.normal(have, 12, DRAWS)) - yards(chance.normal(need, 16, DRAWS))
    doubt = uncertainty.surplus_uncertainty(yards(12.0), yards(16.0))
    told = uncertainty.chance_enough(project.surplus(yards(float(have)), yards(float(need))), doubt)
    assert doubt.m_as("yard") == approx(left_over.m_as("yard").std(), rel=0.005)
    assert told == approx((left_over.magnitude >= 0).mean(), abs=0.002)


@pytest.mark.parametrize(
    "surplus, told", [(0.0, 0.5), (20.0, 0.8413447461), (-20.0, 0.1586552539), (40.0, 0.9772498681)]
)
def test_chance_from_the_table_of_the_normal_distribution(surplus, told):
    # Table of the normal distribution at 0, 1 and 2 (from memory).
    assert uncertainty.chance_enough(yards(surplus), Quantity(18.288, "m")) == approx(told, rel=1e-9)


@given(surplus=st.floats(-1e3, 1e3), doubt=st.floats(30, 1e3))
def test_scipy_finds_the_same_chance_even_in_the_tails(surplus, doubt):
    assert uncertainty.chance_enough(surplus, doubt) == approx(stats.norm.cdf(surplus / doubt), rel=1e-11)


def test_without_doubt_the_chance_is_all_or_nothing():
    sure = uncertainty.chance_enough(yards(np.array([1.0, 0.0, -1.0, 20.0])), yards(np.array([0.0, 0.0, 0.0, 20.0])))
    assert sure == approx(np.array([1, 1, 0, 0.8413447461]))


@pytest.mark.parametrize("certainty, z", [(0.5, 0), (0.8413447461, 1), (0.95, 1.645), (0.975, 1.960), (0.99, 2.326)])
def test_coverage_from_the_table_of_the_normal_distribution(certainty, z):
    # Table of the normal distribution (from memory), three decimals.
    assert uncertainty.coverage(certainty) == approx(z, abs=0.0005)


@given(st.floats(0.5, 0.9999))
def test_coverage_undoes_the_chance(certainty):
    z = uncertainty.coverage(certainty)
    assert z == approx(stats.norm.ppf(certainty), rel=1e-9, abs=1e-12)
    assert uncertainty.chance_enough(z, 1.0) == approx(certainty)


amounts = {
    "need": st.floats(1, 1e4),
    "u_share": st.floats(0, 0.3),
    "relative": st.floats(0, 0.25),
    "certainty": st.floats(0.5, 0.999),
}


def test_square_keeps_the_kind_squared():
    assert uncertainty.square(yards(3)).m_as("ft^2") == approx(81)
    assert uncertainty.square(0.5) == 0.25


@given(doubts, doubts)
def test_squares_in_a_column_are_doubts_combined(first, second):
    column = uncertainty.square(yards(first)) + uncertainty.square(yards(second))
    assert np.sqrt(column).m_as("yard") == approx(uncertainty.combined(yards(first), yards(second)).m_as("yard"))


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: uncertainty.rectangular(-1.0), "half width"),
        (lambda: uncertainty.combined(1.0, -1.0), "uncertainty"),
        (lambda: uncertainty.product_relative(0.1, 0.1, -0.1), "uncertainty"),
        (lambda: uncertainty.length_relative(0, 1, yards(1), yards(0)), "wrap"),
        (lambda: uncertainty.length_relative(1, 1, yards(0), yards(0)), "loop"),
        (lambda: uncertainty.length_relative(1, -1, yards(1), yards(0)), "uncertainty"),
        (lambda: uncertainty.length_relative(1, 1, yards(1), yards(-1)), "uncertainty"),
        (lambda: uncertainty.surplus_uncertainty(yards(-1), yards(1)), "uncertainty"),
        (lambda: uncertainty.chance_enough(float("inf"), 1.0), "surplus"),
        (lambda: uncertainty.chance_enough(1.0, -1.0), "uncertainty"),
        (lambda: uncertainty.coverage(0.49), "certainty"),
        (lambda: uncertainty.coverage(1), "certainty"),
        (lambda: uncertainty.square(-1), "uncertainty"),
    ],
)
def test_refusals(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
