"""Several readings of one thing: mean, spread, how many more to take. Witnesses: the standard library and scipy."""

import statistics as standard

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx
from scipy import stats

from workbookgen.reference import statistics
from workbookgen.units import Quantity

from .quantities import per_inch

WRAPS = [12.0, 13.0, 11.0, 12.0, 14.0]
some_readings = st.lists(st.floats(0.1, 1e4), min_size=2, max_size=5)


def test_five_readings_of_wraps():
    # Worked by hand: mean 12.4, squared deviations 5.2 in all, t of 4 degrees 2.776 (NIST/SEMATECH, read).
    readings = [per_inch(number) for number in WRAPS]
    spread = statistics.deviation(*readings)
    assert statistics.mean(*readings).m_as("1/inch") == approx(12.4)
    assert statistics.count(*readings) == 5
    assert spread.m_as("1/inch") == approx((5.2 / 4) ** 0.5)
    assert statistics.variation(spread, statistics.mean(*readings)) == approx(1.3**0.5 / 12.4)
    assert statistics.half_width(spread, 5).m_as("1/inch") == approx(2.776 * (1.3 / 5) ** 0.5)
    assert statistics.standard_error(spread, 5).m_as("1/inch") == approx(0.26**0.5)


def test_readings_that_were_rounded_alike():
    # By hand: 1.2 by their spread, and half a step of 1: √(1.44 + 0.25) = 1.3.
    assert statistics.within(per_inch(1.2), per_inch(1.0)).m_as("1/inch") == approx(1.3)
    assert statistics.within(per_inch(0.0), per_inch(1.0)).m_as("1/inch") == approx(0.5)
    for typed, step in (
        ((14, 14, 14), 1),
        ((14, 14.5), 0.5),
        ((31 / 3, 11), 0),
        ((14.2,), 0),
        ((0.1 + 0.2 + 0.2,), 0.5),
    ):
        assert statistics.read_to(*map(per_inch, typed)).m_as("1/inch") == step
    assert statistics.read_to(Quantity(14 / 2.54, "1/cm")).m_as("1/inch") == 1
    with pytest.raises(ValueError, match="There must be a reading"):
        statistics.read_to()


def test_gaps_between_readings_do_not_matter():
    assert statistics.mean(3.0, None, 5.0) == 4
    assert statistics.mean(reading_4=3.0) == 3
    assert statistics.count(None, 3.0, None, None, 5.0) == 2
    assert statistics.deviation(None, 3.0, None, 5.0) == approx(2**0.5)


def test_readings_in_different_units():
    inches, centimeters = Quantity(1.0, "inch"), Quantity(5.08, "cm")
    assert statistics.mean(inches, centimeters).m_as("inch") == approx(1.5)
    assert statistics.deviation(inches, centimeters).m_as("inch") == approx(0.5**0.5)
    assert statistics.mean(Quantity(50.0, "percent"), 0.3) == approx(0.4)


def test_readings_all_alike_spread_by_nothing_at_all():
    # 0.1 three times is not 3 * 0.1 in binary; a spread of 1e-17 would be told as one.
    assert statistics.deviation(0.1, 0.1, 0.1) == 0
    assert statistics.half_width(statistics.deviation(0.7, 0.7), 2) == 0


@given(some_readings)
def test_the_standard_library_finds_the_same(readings):
    assert statistics.mean(*readings) == approx(standard.fmean(readings))
    assert statistics.deviation(*readings) == approx(standard.stdev(readings), rel=1e-9, abs=1e-9)


@given(some_readings)
def test_scipy_finds_the_same_coefficient_of_variation(readings):
    share = statistics.variation(statistics.deviation(*readings), statistics.mean(*readings))
    assert share == approx(stats.variation(readings, ddof=1), rel=1e-9, abs=1e-9)


@given(some_readings, st.floats(0.01, 100))
def test_the_variation_does_not_hang_on_the_unit(readings, factor):
    shares = [
        statistics.variation(statistics.deviation(*each), statistics.mean(*each))
        for each in (readings, [reading * factor for reading in readings])
    ]
    assert shares[0] == approx(shares[1], rel=1e-6, abs=1e-9)


@pytest.mark.parametrize("degrees, t", [entry for entry in statistics.T_TABLE if entry[0] <= 120])
def test_the_table_is_scipys_to_three_decimals(degrees, t):
    assert t == approx(stats.t.ppf(0.975, degrees), abs=0.0005001)
    assert statistics.t_quantile(degrees) == t


def test_beyond_the_table_it_is_the_normal_distribution():
    assert [statistics.t_quantile(degrees) for degrees in (120, 121)] == [1.980, 1.960]
    assert statistics.t_quantile(1000) == 1.960 == approx(stats.norm.ppf(0.975), abs=0.0005)


def test_a_printed_line_holds_from_its_own_degrees_on():
    # The usual printed table has lines for 40, 60 and 120 degrees: 2.021, 2.000, 1.980 (from memory).
    assert [statistics.t_quantile(degrees) for degrees in (39, 40, 59, 60, 119, 120)] == [
        2.042,
        2.021,
        2.021,
        2.000,
        2.000,
        1.980,
    ]


@given(st.integers(1, 120))
def test_between_two_entries_the_table_errs_on_the_safe_side(degrees):
    assert statistics.t_quantile(degrees) >= stats.t.ppf(0.975, degrees) - 0.0005


@given(st.integers(121, 10_000))
def test_beyond_the_table_it_is_one_per_cent_low_at_worst(degrees):
    assert statistics.t_quantile(degrees) >= stats.t.ppf(0.975, degrees) * 0.99


@given(st.integers(1, 400), st.integers(1, 400))
def test_more_readings_never_make_t_larger(few, more):
    low, high = sorted([few, more])
    assert statistics.t_quantile(low) >= statistics.t_quantile(high)


def test_the_interval_holds_the_true_mean_nineteen_times_in_twenty():
    # Witness by trial, with a fixed seed: a million batches of three readings.
    draws = np.random.default_rng(7).normal(100, 8, (3, 1_000_000))
    spread = statistics.deviation(*draws)
    within = np.abs(statistics.mean(*draws) - 100) <= statistics.half_width(spread, 3)
    assert within.mean() == approx(0.95, abs=0.001)


@given(spread=st.floats(0.001, 1e4), count=st.integers(1, 1000))
def test_four_times_the_readings_halve_the_doubt(spread, count):
    assert statistics.standard_error(spread, 4 * count) == approx(statistics.standard_error(spread, count) / 2)


@pytest.mark.parametrize(
    "variation, error, t, wanted",
    [
        (0.1, 0.05, 1.96, 16),  # public exam paper GATE TF 2004, Q51: 15.37 (read)
        (0.1, 0.1, 1, 1),
        (0.1 + 0.2, 0.1, 1, 9),  # in binary a hair above 9: it must not ask for a tenth
        (0, 0.1, 1.96, 0),
    ],
)
def test_how_many_specimens_an_error_takes(variation, error, t, wanted):
    assert statistics.specimens(variation, error, t) == wanted


@pytest.mark.parametrize(
    "variation, error, wanted",
    [
        # By hand, t of NIST/SEMATECH (read for these): 2.571 · 4.76 / √6 = 5.00, and 2.776 · 4.76 / √5 = 5.91.
        (0.0476, 0.05, 6),
        (0.1, 0.1, 7),  # 2.447 / √7 = 0.92, 2.571 / √6 = 1.05
        (0.1, 0.2, 4),  # 3.182 / √4 = 1.59, 4.303 / √3 = 2.48
        (0.0, 0.05, 3),  # readings that happen to agree are no proof
        (0.1, 0.0306, 61),  # t of 40 is 2.021 and of 60 is 2.000: 43 are worked out, and the table goes on at 61
    ],
)
def test_readings_in_all(variation, error, wanted):
    assert statistics.readings_in_all(variation, error) == wanted


@given(variation=st.floats(0.001, 0.2), error=st.floats(0.05, 0.5))
def test_so_many_readings_are_enough_and_one_less_is_not(variation, error):
    number = int(statistics.readings_in_all(variation, error))
    assert statistics.half_width(variation, number) <= error * (1 + 1e-8)
    assert number in (3, 41, 61, 121) or statistics.half_width(variation, number - 1) > error * (1 - 1e-8)


def test_who_takes_the_readings_asked_for_is_as_near_as_promised():
    # The promise, tried on drawn yarn: take three, then as many more as are asked for, until they are enough.
    draw = np.random.default_rng(20)
    near = []
    for _ in range(500):
        readings = [*(1 + 0.07 * draw.standard_normal(3))]
        while (wanted := int(statistics.readings_in_all(np.std(readings, ddof=1) / np.mean(readings), 0.05))) > len(
            readings
        ):
            readings += [*(1 + 0.07 * draw.standard_normal(wanted - len(readings)))]
        near.append(abs(np.mean(readings) - 1) <= 0.05)
    assert 0.92 <= np.mean(near) <= 0.99


@pytest.mark.parametrize(
    "count, in_all, inches, words",
    [
        (1, None, None, "2 more to see how they vary"),
        (2, 3, 1, "1 more to see how they vary"),
        (3, 5, 1, "2 more for ±5%"),
        (5, 5, 1, "enough for ±5%"),
        (5, 3, 1, "enough for ±5%"),
        (3, 6, 2, "5 over 2 inches each for ±5%"),
        (5, 31, 10, "5 over 10 inches each for ±5%"),
        (4, None, 11, "too uneven for ±5%"),
    ],
)
def test_readings_that_are_still_to_take_are_told(count, in_all, inches, words):
    assert statistics.more_readings(count, 0.05, in_all, inches) == words
    assert statistics.more_readings(3, 0.025, 4, 1) == "1 more for ±2.5%"
    assert statistics.more_readings(3, 0.1, 4, 1) == "1 more for ±10%"
    # How near the mean lies says nothing without the mean itself.
    assert statistics.more_readings(3, 0.05, 3, 1, within=per_inch(2)) == "enough for ±5%"
    assert statistics.more_readings(3, 0.05, 3, 1, mean=per_inch(8)) == "enough for ±5%"


@pytest.mark.parametrize(
    "mean, words", [(8, "read parts of a wrap for ±5%"), (10, "enough for ±5%"), (14, "enough for ±5%")]
)
def test_whole_wraps_are_too_coarse_for_a_bulky_yarn(mean, words):
    # Half a wrap of 8 is 6.25%, of 10 is 5%.
    assert statistics.more_readings(3, 0.05, 3, 1, within=per_inch(0.5), mean=per_inch(mean)) == words
    assert statistics.more_readings(3, 0.05, 4, 1, within=per_inch(0.5), mean=per_inch(mean)) == "1 more for ±5%"


def test_inches_at_a_time():
    # By hand: 2.776 · 7 / 5 is 3.886, its square 15.1, a fifth of it 3.02.
    assert statistics.inches_each(0.07, 0.05) == 4


@given(variation=st.floats(0.01, 0.5), error=st.floats(0.01, 0.5))
def test_five_readings_over_so_many_inches_are_enough(variation, error):
    inches = statistics.inches_each(variation, error)
    assert statistics.half_width(variation / inches**0.5, 5) <= error * (1 + 1e-6)
    assert inches == 1 or statistics.half_width(variation / (inches - 1) ** 0.5, 5) > error * (1 - 1e-6)


@given(variation=st.floats(0.01, 0.5), error=st.floats(0.01, 0.5))
def test_so_many_specimens_are_enough_and_one_less_is_not(variation, error):
    number = statistics.specimens(variation, error)
    assert 1.96 * statistics.standard_error(variation, number) <= error * (1 + 1e-8)
    assert number == 1 or 1.96 * statistics.standard_error(variation, number - 1) > error * (1 - 1e-8)


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: statistics.mean(), "at least one reading"),
        (lambda: statistics.count(None, None), "at least one reading"),
        (lambda: statistics.deviation(1.0), "at least two"),
        (lambda: statistics.mean(1.0, float("nan")), "must be a number"),
        (lambda: statistics.variation(-1.0, 1.0), "deviation"),
        (lambda: statistics.variation(1.0, 0.0), "mean"),
        (lambda: statistics.t_quantile(0), "degree of freedom"),
        (lambda: statistics.half_width(1.0, 1), "at least two"),
        (lambda: statistics.half_width(-1.0, 2), "deviation"),
        (lambda: statistics.standard_error(1.0, 0), "whole numbers"),
        (lambda: statistics.standard_error(1.0, 2.5), "whole numbers"),
        (lambda: statistics.readings_in_all(-0.1, 0.1), "variation"),
        (lambda: statistics.readings_in_all(0.1, 0), "error"),
        (lambda: statistics.readings_in_all(1.0, 0.01), "121"),
        (lambda: statistics.inches_each(-0.1, 0.1), "variation"),
        (lambda: statistics.inches_each(0.1, 0), "error"),
        (lambda: statistics.more_readings(0, 0.1), "reading"),
        (lambda: statistics.more_readings(3, 0), "error"),
        (lambda: statistics.specimens(-0.1, 0.1), "variation"),
        (lambda: statistics.specimens(0.1, 0), "error"),
        (lambda: statistics.specimens(0.1, 0.1, 0), "uncertainties"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
