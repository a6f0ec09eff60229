"""Readings of wraps, "95% within ±", how many are enough, and the skein that stands out of its lot.

A yarn has a true mean and is uneven; a person counts at a few places, to whole wraps, to half ones, or finer.
"""

import numpy as np
import pytest

from workbookgen.reference import statistics
from workbookgen.units import Quantity

from .answers import give_or_take, said

YARNS, NINETEEN_IN_TWENTY = 4_000, 0.95
PLACES = 5


def counted(readings: int, uneven: float, step: float, mean: float = 14.0, is_skewed: bool = False):
    """True means of many yarns, none of which is a whole number by intent, and what was read of each."""
    draw = np.random.default_rng(6)
    true = mean + draw.uniform(-0.5, 0.5, size=(YARNS, 1))
    own = draw.gamma(1.0, size=(YARNS, readings)) - 1 if is_skewed else draw.normal(size=(YARNS, readings))
    read = true + mean * uneven * own
    return true[:, 0], np.round(read / step) * step if step else read


def within(read) -> np.ndarray:
    """Half the interval that the sheet Samples states for each yarn."""
    wraps = [Quantity(column, "1/inch") for column in read.T]
    by_spread = statistics.half_width(statistics.deviation(*wraps), float(len(wraps)))
    return statistics.within(by_spread, statistics.read_to(*wraps)).m_as("1/inch")


def came_true(read, true) -> float:
    return float(np.mean(np.abs(read.mean(axis=1) - true) <= within(read) + 1e-9))


@pytest.mark.parametrize("uneven", [0.005, 0.02, 0.05, 0.1])
@pytest.mark.parametrize("readings", [3, 5])
@pytest.mark.parametrize("step", [0.0, 0.5, 1.0], ids=["read finely", "half wraps", "whole wraps"])
def test_the_mean_lies_as_near_as_stated(readings, uneven, step):
    """Half a step is taken whole, so that even yarn is covered more often than was said."""
    true, read = counted(readings, uneven, step)
    right = came_true(read, true)
    assert right >= NINETEEN_IN_TWENTY - 0.005 - give_or_take(NINETEEN_IN_TWENTY, YARNS), f"{right:.1%}"
    if not step:
        assert right <= NINETEEN_IN_TWENTY + 0.005 + give_or_take(NINETEEN_IN_TWENTY, YARNS)


@pytest.mark.parametrize(
    "readings, uneven, step, is_skewed, drift",
    [
        pytest.param(2, 0.05, 1.0, False, 0.10, id="two whole readings, which may agree by chance"),
        pytest.param(2, 0.10, 0.5, False, 0.04, id="two half readings"),
        pytest.param(3, 0.05, 0.0, True, 0.09, id="thick places here and there, three readings"),
        pytest.param(5, 0.10, 0.5, True, 0.09, id="thick places here and there, five readings"),
    ],
)
def test_how_far_it_drifts_where_readings_are_few_or_skewed(readings, uneven, step, is_skewed, drift):
    true, read = counted(readings, uneven, step, is_skewed=is_skewed)
    right = came_true(read, true)
    assert right >= max(0.8, NINETEEN_IN_TWENTY - drift - give_or_take(NINETEEN_IN_TWENTY, YARNS)), f"{right:.1%}"


def test_the_test_would_notice_that_wraps_were_counted_whole():
    """As it was: of an even yarn, three readings of 14 said "95% within ± 0"."""
    true, read = counted(3, 0.02, 1.0)
    wraps = [Quantity(column, "1/inch") for column in read.T]
    by_spread = statistics.half_width(statistics.deviation(*wraps), 3.0).m_as("1/inch")
    assert np.mean(np.abs(read.mean(axis=1) - true) <= by_spread + 1e-9) < 0.5


def test_the_sheet_states_what_these_functions_do():
    """The planner's own columns, for a hundred of the yarns."""
    true, read = counted(3, 0.05, 0.5)
    records = [
        {"name": f"Sample {number}"} | {f"wpi_{place}": wraps for place, wraps in enumerate(row, start=1)}
        for number, row in enumerate(read[:100])
    ]
    [stated] = said({"samples": records}, "samples_within")
    # A planner in meters shows wraps in an inch all the same.
    assert np.allclose(stated, within(read)[:100])


@pytest.mark.parametrize("mean", [7.0, 14.0])
@pytest.mark.parametrize("step", [0.25, 0.5, 1.0])
def test_enough_readings_are_enough(mean, step):
    """Who is told "enough for ±5%" has a mean within 5%, 19 times in 20.

    Five at most are counted, and as many as the first three ask for.
    """
    draw = np.random.default_rng(8)
    true = mean + draw.uniform(-0.5, 0.5, size=(YARNS, 1))
    read = np.round(true * (1 + 0.025 * draw.normal(size=(YARNS, PLACES))) / step) * step
    right = []
    for number in range(400):
        for count in range(3, PLACES + 1):
            wraps = [Quantity(each, "1/inch") for each in read[number, :count]]
            average, spread = statistics.mean(*wraps), statistics.deviation(*wraps)
            cv = statistics.variation(spread, average)
            near = statistics.within(statistics.half_width(spread, float(count)), statistics.read_to(*wraps))
            words = (
                statistics.more_readings(
                    float(count),
                    0.05,
                    statistics.readings_in_all(cv, 0.05),
                    statistics.inches_each(cv, 0.05),
                    near,
                    average,
                )
                if cv < 0.2
                else ""
            )
            if words.startswith("enough"):
                right.append(abs(average.m_as("1/inch") / true[number, 0] - 1) <= 0.05)
                break
    assert len(right) >= 60 or (mean == 7.0 and step == 1.0 and not right)  # half a wrap of 7 is 7%: never enough
    if right:
        # The spread of three says little, and those whose three agree by chance stop first: an optional stop that costs
        # some points.
        assert np.mean(right) >= NINETEEN_IN_TWENTY - 0.03 - give_or_take(NINETEEN_IN_TWENTY, len(right))


SEASONS = 4_000


def share_of_lots_with_one_out(skeins: int, grists) -> float:
    lots = np.array(grists)
    off = lots / lots.mean(axis=1, keepdims=True) - 1
    variation = lots.std(axis=1, ddof=1, keepdims=True) / lots.mean(axis=1, keepdims=True)
    words = statistics.stands_out(off, variation, statistics.grubbs_limit(float(skeins)))
    return float(np.mean((words == statistics.groups.OUT).any(axis=1)))


@pytest.mark.parametrize("skeins", [3, 4, 5, 8, 12, 20])
def test_a_skein_stands_out_by_chance_in_one_lot_of_twenty(skeins):
    grists = 200 * (1 + 0.08 * np.random.default_rng(9).normal(size=(SEASONS, skeins)))
    assert abs(share_of_lots_with_one_out(skeins, grists) - 0.05) <= 0.005 + give_or_take(0.05, SEASONS)


@pytest.mark.parametrize("skeins, most", [(4, 0.07), (8, 0.12), (12, 0.15)])
def test_skewed_lots_have_one_that_stands_out_more_often(skeins, most):
    """Who is careless now and then, and never the other way, is told so more often than the one lot of twenty."""
    grists = 200 * (1 + 0.04 * (np.random.default_rng(9).gamma(4.0, size=(SEASONS, skeins)) - 4))
    assert share_of_lots_with_one_out(skeins, grists) <= most


@pytest.mark.parametrize("skeins", [5, 8, 12])
def test_a_skein_counted_a_third_too_short_stands_out(skeins):
    """One skein of a lot that varies by 5%: found in nine of ten lots from eight skeins on, of five in more than
    half."""
    grists = 200 * (1 + 0.05 * np.random.default_rng(10).normal(size=(SEASONS, skeins)))
    grists[:, 0] *= 2 / 3
    assert share_of_lots_with_one_out(skeins, grists) >= (0.9 if skeins >= 8 else 0.55)
