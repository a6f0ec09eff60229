"""Shares of a yarn in whole percentages that add up to 100."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.content.shares import require_shares
from workbookgen.reference.tolerances import HAIR, ROUNDING
from workbookgen.units import Ratio

FULL = 1e-5  # of a percentage: five figures of six decimals may miss 100 by as much


@calculation
def in_percent(share: Ratio) -> Ratio:
    """A share in percent, before it is rounded.

    r = 100 z, but at least 1 where z > 0. What is in a yarn is not stated as 0 %.

    Parameters
    ----------
    share : z, a share of the yarn

    Returns
    -------
    r, percentage points

    Raises
    ------
    ValueError
        A share that is negative.

    Notes
    -----
    Valid for shares from 0 up, to six decimals.

    References
    ----------
    Arithmetic. At least one percent for what is there: common practice, no source.

    Examples
    --------
    >>> print(in_percent(0.333))
    33.3
    """
    require_shares(share)
    raised = np.where(np.asarray(share) > HAIR, np.maximum(1.0, 100 * np.asarray(share, dtype=float)), 0.0)
    return np.round(raised, 6)[()]


@calculation
def others_percent(told_1: Ratio, told_2: Ratio, told_3: Ratio, told_4: Ratio) -> Ratio:
    """The unnamed fibers, in percent.

    r = 100 (1 - Σ z), but at least 1 where there are any. They come last.

    Parameters
    ----------
    told_1, told_2, told_3, told_4 : z, the named shares, the largest first, 0 where there is none

    Returns
    -------
    r, percentage points

    Raises
    ------
    ValueError
        A share that is negative.

    Notes
    -----
    Valid for shares that add up to 1 at most.

    References
    ----------
    16 CFR 303.42 (a): other fibers follow (read).

    Examples
    --------
    >>> print(others_percent(0.75, 0.2, 0, 0))
    5.0
    """
    require_shares(told_1, told_2, told_3, told_4)
    return in_percent(np.maximum(0.0, 1.0 - np.asarray(told_1 + told_2 + told_3 + told_4, dtype=float)))


@calculation
def rest_percent(next_2: Ratio, next_3: Ratio, next_4: Ratio, others: Ratio) -> Ratio:
    """The largest fiber in percent: what the others leave.

    r = 100 - Σ r', over all the others. So nothing is counted twice or left out.

    Parameters
    ----------
    next_2, next_3, next_4 : r', percentage points of the second, third and fourth fiber
    others : of those that are not named

    Returns
    -------
    r, percentage points

    Raises
    ------
    ValueError
        Points that are negative.

    Notes
    -----
    Valid for the largest of the fibers.

    References
    ----------
    Definition of a percentage.

    Examples
    --------
    >>> print(rest_percent(25, 0, 0, 5))
    70.0
    """
    require_shares(next_2, next_3, next_4, others)
    return np.round(100.0 - (next_2 + next_3 + next_4 + others), 6)


@calculation
def whole_percent(
    points_1: Ratio, points_2: Ratio, points_3: Ratio, points_4: Ratio, others: Ratio, place: Ratio
) -> Ratio:
    """A fiber's percentage, whole, so that all add up to 100.

    p = the whole points, and one more for those with the largest remainders until 100 is reached. Each is within one of
    the exact figure, and none passes a heavier one.

    Parameters
    ----------
    points_1, points_2, points_3, points_4 : percentage points of each fiber, the largest first
    others : of those that are not named
    place : which is wanted: 1 to 4, and 5 for the others

    Returns
    -------
    p, a whole number

    Raises
    ------
    ValueError
        Points that are negative or do not add up to 100, or a place that is none of these.

    Notes
    -----
    Valid for points that add up to 100; of equal remainders the earlier ones get more.

    References
    ----------
    Largest remainders (Hamilton's method): common practice, no source. The rule leaves a tolerance of 3 % of the yarn,
    16 CFR 303.43 (from memory).

    Examples
    --------
    >>> print(whole_percent(33.4, 33.3, 33.3, 0, 0, place=1))
    34.0
    """
    require_numbers(points_1)
    require_shares(points_2, points_3, points_4, others)
    require(
        np.abs(np.asarray(points_1 + points_2 + points_3 + points_4 + others) - 100) <= FULL,
        "The points must add up to 100.",
    )
    require(by_element(lambda each: each in range(1, 6), place), "A place is a whole number from 1 to 5.")

    def percent(wanted, *points) -> float:
        return float(_apportioned(points)[int(wanted) - 1])

    found = by_element(percent, place, points_1, points_2, points_3, points_4, others)
    return np.asarray(found, dtype=float)[()]


def _apportioned(points) -> list[int]:
    """Whole points of each, in order, that add up to 100."""
    whole = [int(each + ROUNDING) for each in points]
    rests = [round(each - base, 6) for each, base in zip(points, whole, strict=True)]
    more = sorted(range(len(points)), key=lambda place: (-rests[place], place))[: 100 - sum(whole)]
    return [base + (place in more) for place, base in enumerate(whole)]
