"""The skeins of a lot: mean, spread, the one that stands out, which go together. Witnesses: pandas and scipy."""

import math

import numpy as np
import pandas as pd
import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st
from pytest import approx
from scipy import stats

from workbookgen.reference import statistics
from workbookgen.units import Quantity


def grist(number):
    return Quantity(number, "yard/pound")


@given(st.lists(st.floats(10, 1000), min_size=2, max_size=12))
@example([251.0, 250.5])  # a relative variance of 0.99 millionths: none
@example([251.0, 250.4])  # of 1.43 millionths
def test_sums_over_a_log_give_what_pandas_gives(values):
    log = pd.Series(values)
    mean = statistics.group_mean(Quantity(log.sum(), "g"), log.count())
    squares = sum(statistics.square_of(Quantity(value, "g")) for value in values)
    assert mean.m_as("g") == approx(log.mean())
    spread = (log.std(ddof=0) / log.mean()) ** 2
    assume(abs(spread - 1e-6) > 1e-11)  # where rounding decides whether it is less than a millionth
    wanted = log.std() / log.mean() if spread > 1e-6 else 0
    assert statistics.variation_of_sums(squares, log.count(), mean) == approx(wanted, rel=1e-6)


def test_an_empty_skein_lies_a_whole_mean_below():
    assert statistics.relative_deviation(0.0, 50.0) == -1


def test_limits_lie_around_the_mean():
    mean = Quantity(200.0, "yard")
    assert statistics.limit_low(mean, 0.1, 2).m_as("yard") == approx(160)
    assert statistics.limit_high(mean, 0.1, 2).m_as("yard") == approx(240)
    assert statistics.limit_low(mean, 0.1, 3).m_as("yard") == approx(140)
    assert statistics.limit_high(mean, Quantity(10, "percent"), 1).m_as("yard") == approx(220)
    assert statistics.limit_low(mean, 0.1, 0) == statistics.limit_high(mean, 0.1, 0.0) == mean


@pytest.mark.parametrize(
    "deviation, words",
    [(0.2, "in line"), (-0.2, "in line"), (0.2001, "stands out"), (-0.2001, "stands out"), (0.0, "in line")],
)
def test_a_skein_stands_out_beyond_its_limits(deviation, words):
    assert statistics.stands_out(deviation, 0.1, 2) == words


def test_the_last_digits_do_not_make_a_skein_stand_out():
    assert 0.1 + 0.2 > 0.3
    assert statistics.stands_out(0.1 + 0.2, 0.3, 1) == "in line"


@given(value=st.floats(1, 400), variation=st.floats(0.01, 0.4))
def test_what_stands_out_lies_outside_the_limits(value, variation):
    mean = 100.0
    deviation = statistics.relative_deviation(value, mean)
    low, high = statistics.limit_low(mean, variation, 2.29), statistics.limit_high(mean, variation, 2.29)
    if abs(abs(deviation) - 2.29 * variation) > 1e-9:
        assert (statistics.stands_out(deviation, variation, 2.29) == "in line") == (low <= value <= high)


# Table of critical values for Grubbs' test of LibreTexts, two-sided 0.05 (read); its 2.202 for 7 is a misprint.
@pytest.mark.parametrize(
    ("count", "limit"),
    [
        (3, 1.155),
        (4, 1.481),
        (5, 1.715),
        (6, 1.887),
        (7, 2.020),
        (8, 2.126),
        (9, 2.215),
        (10, 2.290),
        (11, 2.355),
        (12, 2.412),
    ],
)
def test_grubbs_limit_as_printed(count, limit):
    assert statistics.grubbs_limit(count) == approx(limit, abs=0.0012)


@pytest.mark.parametrize(("count", "limit"), statistics.GRUBBS_TABLE)
def test_grubbs_limit_by_its_formula(count, limit):
    t = stats.t.isf(0.05 / (2 * count), count - 2)
    assert limit == approx((count - 1) / math.sqrt(count) * math.sqrt(t**2 / (count - 2 + t**2)), abs=6e-5)
    assert statistics.grubbs_limit(count) == limit < (count - 1) / math.sqrt(count)  # no value can lie farther off
    assert statistics.grubbs_limit(count + 1) >= limit


def test_between_two_lines_of_the_table_the_upper_one_holds():
    lines = (30, 35, 40, 50, 60, 80, 100, 150, 200, 300, 500, 1000)
    for upper, lower in zip(lines, lines[1:], strict=False):
        assert statistics.grubbs_limit(lower - 1) == statistics.grubbs_limit(upper) < statistics.grubbs_limit(lower)


@pytest.mark.parametrize("count", [3, 4, 5, 6, 10, 30])
def test_a_lot_of_twenty_lots_alike_has_a_skein_that_stands_out(count):
    # By mere chance, in invented lots of skeins alike: one lot in twenty.
    lots = np.random.default_rng(count).normal(1000, 80, (4000, count))
    farthest = np.abs(lots - lots.mean(axis=1, keepdims=True)).max(axis=1) / lots.std(axis=1, ddof=1)
    assert (farthest > statistics.grubbs_limit(count)).mean() == approx(0.05, abs=0.012)


def test_a_skein_twice_as_thick_stands_out_among_five():
    values = [1000.0, 1020.0, 985.0, 1010.0, 500.0]
    mean, spread = statistics.mean(*values), statistics.deviation(*values)
    share, limit = statistics.variation(spread, mean), statistics.grubbs_limit(5)
    words = [statistics.stands_out(statistics.relative_deviation(each, mean), share, limit) for each in values]
    assert words == ["in line"] * 4 + ["stands out"]


@pytest.mark.parametrize(
    "second, words",
    [
        # 1,000 against 950 to 1,050 and so on; common practice, no source
        (1000, "go together"),
        (1050, "go together"),
        (1150, "alternate rows"),
        (850, "alternate rows"),
        (1250, "keep apart"),
        (800, "keep apart"),
    ],
)
def test_skeins_share_a_piece_by_how_alike_their_grist_is(second, words):
    assert statistics.may_share(grist(1000), grist(second)) == words


@pytest.mark.parametrize("first, second, words", [(1900, 2100, "go together"), (1800, 2200, "alternate rows")])
def test_border_cases_of_sharing_belong_to_the_better_word(first, second, words):
    assert statistics.may_share(grist(first), grist(second)) == words
    # The same border, carried through another unit.
    assert statistics.may_share(grist(first).to("m/hectogram"), grist(second)) == words


@given(first=st.floats(100, 1e4), second=st.floats(100, 1e4))
def test_the_difference_is_the_same_in_direct_and_indirect_counts(first, second):
    # In tex, which is the inverse: |1/a - 1/b| by the mean of both.
    in_tex = abs(1 / first - 1 / second) / ((1 / first + 1 / second) / 2)
    assert statistics.difference(grist(first), grist(second)) == approx(in_tex, rel=1e-6, abs=1e-12)
    assert statistics.difference(grist(second), grist(first)) == statistics.difference(grist(first), grist(second))


LOTS = st.lists(st.lists(st.floats(100, 5000), min_size=1, max_size=8), min_size=1, max_size=3)


@given(LOTS)
@example([[2027.0, 2026.0]])
def test_skeins_of_several_lots_are_one_heap(lots):
    # Outside witness: pandas on all skeins pooled. Only sums leave a lot.
    pooled = pd.Series([value for lot in lots for value in lot])
    if len(pooled) > 1:
        squares = sum(statistics.square_of(grist(np.array(lot))).sum() for lot in lots)
        mean = statistics.group_mean(sum(grist(np.array(lot)).sum() for lot in lots), len(pooled))
        share = statistics.variation_of_sums(squares, len(pooled), mean)
        # A relative variance under a millionth counts as none; at that edge the rounding of the sums decides.
        variance = pooled.var(ddof=0) / pooled.mean() ** 2
        if abs(variance - 1e-6) > 1e-9:
            assert share == (0 if variance < 1e-6 else approx(pooled.std() / pooled.mean(), rel=1e-6))


def test_lots_that_differ_spread_more_together_than_alone():
    # Worked by hand: the first four lie 100 off their mean of 1,000, which makes 40,000. All six have a mean of
    # 1,166.67; off it lie twice 266.67, twice 66.67, 233.33 and 433.33, which makes 393,333.33.
    first, second = [900.0, 900.0, 1100.0, 1100.0], [1400.0, 1600.0]
    sums = [sum(statistics.square_of(value) for value in lot) for lot in (first, second)]
    assert statistics.variation_of_sums(sums[0], 4, 1000) == approx((40_000 / 3) ** 0.5 / 1000)
    assert statistics.variation_of_sums(sum(sums), 6, 7000 / 6) == approx((393_333.33 / 5) ** 0.5 / (7000 / 6))


def test_skeins_all_alike_do_not_vary_by_a_hair():
    # 1,234.567 seven times: in binary the sum of the squares is not seven times the square of the mean.
    alike = [1234.567] * 7
    squares = sum(statistics.square_of(value) for value in alike)
    assert statistics.variation_of_sums(squares, 7, sum(alike) / 7) == 0
    # One in a thousand is no more than what programs lose of such sums; five are no hair.
    assert statistics.variation_of_sums(1.0**2 + 1.001**2, 2, 1.0005) == 0
    assert statistics.variation_of_sums(1.0**2 + 1.005**2, 2, 1.0025) == approx(0.005 / 2**0.5 / 1.0025, rel=1e-6)


def test_evenness_within_lots_does_not_see_that_lots_differ():
    # Worked by hand: 3 × 0.1² and 2 × 0.2² make 0.11 for 5 degrees of freedom, so 0.022 on the mean, whose root is
    # 0.148324.
    assert statistics.pooled_variation([0.1, 0.2], [4, 3]) == approx(0.148324, rel=1e-5)
    # Two lots alike within themselves are even, however far they lie apart.
    assert statistics.pooled_variation([0.0, 0.0], [5, 9]) == 0
    assert statistics.pooled_variation(0.07, 6) == approx(0.07)


@pytest.mark.parametrize(
    "variations, counts, sentence",
    [
        ([0.1, 0.2], [2.5, 3], "at least two"),
        ([0.1, 0.2], [2.000001, 3], "at least two"),
        ([-0.5, 0.1], [3, 3], "negative"),
        ([0.1], [3, 4], "Each group"),
        ([0.1, 0.2], [3], "Each group"),
        ([], [], "at least one group"),
    ],
)
def test_groups_that_cannot_be_pooled(variations, counts, sentence):
    with pytest.raises(ValueError, match=sentence):
        statistics.pooled_variation(variations, counts)


@given(logs=st.lists(st.lists(st.floats(500, 2000), min_size=2, max_size=9), min_size=1, max_size=5))
def test_pooled_evenness_is_that_of_pandas(logs):
    # Relative deviations from each lot's own mean, over the degrees of freedom of them all.
    relative = pd.concat([pd.Series(log) / np.mean(log) - 1 for log in logs])
    degrees = sum(len(log) - 1 for log in logs)
    shares = [pd.Series(log).std() / np.mean(log) for log in logs]
    assert statistics.pooled_variation(shares, [len(log) for log in logs]) == approx(
        (relative.pow(2).sum() / degrees) ** 0.5, rel=1e-9
    )


@given(weight=st.floats(0.1, 1e4), skeins=st.integers(1, 50))
def test_equal_skeins_count_one_by_one(weight, skeins):
    total = Quantity(weight * skeins, "g")
    assert statistics.as_good_as_alike(total, Quantity(weight**2 * skeins, "g^2")) == approx(skeins)


def test_a_small_skein_hardly_counts():
    # (100 + 100 + 100 + 5)² / (3 x 10,000 + 25) = 93,025 / 30,025
    assert statistics.as_good_as_alike(Quantity(305, "g"), Quantity(30_025, "g^2")) == approx(3.0983, abs=1e-4)
    assert statistics.as_good_as_alike(Quantity(0, "g"), Quantity(0, "g^2")) == 0


@given(value=st.floats(0, 1e6))
def test_squares_are_numpys(value):
    assert statistics.square_of(Quantity(value, "oz")).m_as("oz^2") == approx(np.square(value))


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: statistics.group_mean(1.0, 0), "from 1"),
        (lambda: statistics.as_good_as_alike(Quantity(-1, "g"), Quantity(1, "g^2")), "sum of weights"),
        (lambda: statistics.as_good_as_alike(Quantity(1, "g"), Quantity(-1, "g^2")), "sum of squares"),
        (lambda: statistics.grubbs_limit(2), "from 3"),
        (lambda: statistics.grubbs_limit(4.5), "whole numbers"),
        (lambda: statistics.group_mean(float("nan"), 1), "sum"),
        (lambda: statistics.relative_deviation(-1.0, 1.0), "value"),
        (lambda: statistics.relative_deviation(1.0, 0.0), "mean"),
        (lambda: statistics.limit_low(-1.0, 0.1, 2), "mean"),
        (lambda: statistics.limit_high(0.0, 0.1, 2), "mean"),
        (lambda: statistics.limit_low(1.0, -0.1, 2), "variation"),
        (lambda: statistics.limit_high(1.0, 0.1, -1), "deviations"),
        (lambda: statistics.stands_out(float("nan"), 0.1, 2), "deviation"),
        (lambda: statistics.stands_out(0.1, -0.1, 2), "variation"),
        (lambda: statistics.difference(grist(0), grist(1)), "grists"),
        (lambda: statistics.may_share(grist(1), grist(0)), "grists"),
        (lambda: statistics.square_of(grist(-1)), "negative"),
        (lambda: statistics.variation_of_sums(1, 1, 1), "at least two"),
        (lambda: statistics.variation_of_sums(9, 2.5, 1), "at least two"),
        (lambda: statistics.pooled_variation([0.1, 0.2], [4, 1]), "at least two"),
        (lambda: statistics.pooled_variation([], []), "at least one group"),
        (lambda: statistics.pooled_variation([0.1], [4, 3]), "Each group"),
        (lambda: statistics.variation_of_sums(9, 2, 0), "mean"),
        (lambda: statistics.variation_of_sums(7.9, 2, 2), "cannot belong"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()


def test_a_hand_is_held_beside_the_usual():
    assert statistics.beside_the_usual(0.14, 0.08) == approx(1.75)
    with pytest.raises(ValueError, match="above zero"):
        statistics.beside_the_usual(0.14, 0)
    with pytest.raises(ValueError, match="negative"):
        statistics.beside_the_usual(-0.1, 0.08)
