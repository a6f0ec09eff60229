"""The skeins of a lot side by side: their mean, their evenness, and the one that stands out.

A log keeps one line per skein, so the mean and the variation of a lot come from sums over lines. What counts as alike
enough for one piece is a rule of thumb, and is stated in words.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, quotient, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.units import Grist, Mass, MassSquared, Quantity, Ratio, Some

OUT, IN = "stands out", "in line"
# From how many values on, and Grubbs' limit of so many.
# fmt: off
GRUBBS_TABLE = (
    (3, 1.1543), (4, 1.4813), (5, 1.7150), (6, 1.8871), (7, 2.0200), (8, 2.1266), (9, 2.2150), (10, 2.2900),
    (11, 2.3547), (12, 2.4116), (13, 2.4620), (14, 2.5073), (15, 2.5483), (16, 2.5857), (17, 2.6200), (18, 2.6516),
    (19, 2.6809), (20, 2.7082), (21, 2.7338), (22, 2.7577), (23, 2.7803), (24, 2.8016), (25, 2.8217), (26, 2.8408),
    (27, 2.8589), (28, 2.8762), (29, 2.8927), (30, 2.9085), (35, 2.9782), (40, 3.0361), (50, 3.1282), (60, 3.1997),
    (80, 3.3061), (100, 3.3841), (150, 3.5170), (200, 3.6055), (300, 3.7236), (500, 3.8631), (1000, 4.0400),
)
# fmt: on

TOGETHER, ALTERNATE, APART = "go together", "alternate rows", "keep apart"
TOGETHER_UP_TO, ALTERNATE_UP_TO = 0.10, 0.20


@calculation
def group_mean(total: Some, count: Ratio) -> Some:
    """Mean over a group.

    x̄ = S / n. What the skeins of a lot are like on average.

    Parameters
    ----------
    total : S, sum of the values, any quantity
    count : n, number of the values

    Returns
    -------
    x̄, of the kind of the sum

    Raises
    ------
    ValueError
        A sum that is not a number, no values, or a fraction of a value.

    Notes
    -----
    Valid for values that count equally, whatever the size of each skein.

    References
    ----------
    Definition of the mean.

    Examples
    --------
    >>> print(group_mean(Quantity(600, "m"), 3))
    200.0 meter
    """
    require(np.isfinite(total), "The sum must be a number.")
    _require_count(count, 1)
    return total / count


@calculation
def as_good_as_alike(total: Mass, squares: MassSquared) -> Ratio:
    """How many skeins of equal weight would tell as much as these.

    n = S² / Q. Four skeins of 100 g count as four; three of them and one of 5 g hardly count for more than three.

    Parameters
    ----------
    total : S, sum of their weights
    squares : Q, sum of the squares of their weights

    Returns
    -------
    n, a number; 0 of none

    Raises
    ------
    ValueError
        A negative sum.

    Notes
    -----
    Valid for a mean in which each counts by its weight.

    References
    ----------
    L. Kish, Survey Sampling, 1965: effective number of a weighted sample (from memory).

    Examples
    --------
    >>> print(as_good_as_alike(Quantity(200, "g"), Quantity(20000, "g**2")))
    2.0
    """
    require_numbers(total, squares)
    require_within(NOT_NEGATIVE, "A sum of weights", total)
    require_within(NOT_NEGATIVE, "A sum of squares", squares)
    return quotient(np.square(total.m_as("g")), squares.m_as("g**2"))


def _require_count(count: Ratio, least: int) -> None:
    require((count >= least) & (count % 1 == 0), f"Values are counted in whole numbers, from {least}.")


@calculation
def relative_deviation(value: Some, mean: Some) -> Ratio:
    """Deviation of a value from the mean, as a share of the mean.

    δ = x / x̄ - 1. It is positive above the mean, negative below it.

    Parameters
    ----------
    value : x, any quantity
    mean : x̄, the mean, of the same kind

    Returns
    -------
    δ, a share

    Raises
    ------
    ValueError
        A negative value, or a mean that is not above zero.
    DimensionalityError
        A value and a mean of different kinds.

    Notes
    -----
    Valid for quantities with a true zero: lengths, masses, counts, not temperatures.

    References
    ----------
    Definition of the relative deviation.

    Examples
    --------
    >>> print(relative_deviation(Quantity(250, "m"), Quantity(200, "m")))
    0.25
    """
    require_within(NOT_NEGATIVE, "The value", value)
    require_within(ABOVE_ZERO, "The mean", mean)
    return Quantity(value / mean).m_as("") - 1


@calculation
def grubbs_limit(count: Ratio) -> Ratio:
    """Standard deviations from the mean at which a skein stands out.

    G = (n - 1) / √n · √(t² / (n - 2 + t²)), t of n - 2 degrees of freedom at 0.05 / (2 n). The skein farthest from
    the mean exceeds it by chance alone in one lot out of twenty.

    Parameters
    ----------
    count : n, number of values in the group

    Returns
    -------
    G, two-sided, at 5 percent; the entry of the highest number in the table that is not above n

    Raises
    ------
    ValueError
        Fewer than three values, or a fraction of one.

    Notes
    -----
    Valid for normally distributed values, except for one. No value can deviate by more than (n - 1) / √n standard
    deviations, so two are never exceeded in a group of five. Between entries the limit is a little low.

    References
    ----------
    Grubbs' test, two-sided; 3 to 12 values agree with a table of LibreTexts (read), whose 2.202 for 7 values is
    a misprint of 2.020. The others by the formula (from memory).

    Examples
    --------
    >>> print(grubbs_limit(7))
    2.02
    """
    _require_count(count, 3)
    starts, limits = np.array(GRUBBS_TABLE).T
    return limits[np.searchsorted(starts, count, side="right") - 1]


@calculation
def limit_low(mean: Some, variation: Ratio, times: Ratio) -> Some:
    """Value below which a skein stands out.

    l = x̄ · (1 - G · CV). With G from Grubbs' test, a skein lies beyond one of the limits by chance alone in one lot
    out of twenty.

    Parameters
    ----------
    mean : x̄, mean of the group, any quantity
    variation : CV, coefficient of variation of the group
    times : G, number of standard deviations still in line

    Returns
    -------
    l, of the kind of the mean

    Raises
    ------
    ValueError
        A mean that is not above zero, or a negative variation or number of deviations.

    Notes
    -----
    Valid for normally distributed values; in an uneven group it may be below zero.

    References
    ----------
    Grubbs' test, table of LibreTexts (read).

    Examples
    --------
    >>> print(limit_low(Quantity(200, "m"), 0.1, times=2))
    160.0 meter
    """
    _require_limits(mean, variation, times)
    return mean * (1 - times * variation)


@calculation
def limit_high(mean: Some, variation: Ratio, times: Ratio) -> Some:
    """Value above which a skein stands out.

    h = x̄ · (1 + G · CV). With G from Grubbs' test, a skein lies beyond one of the limits by chance alone in one lot
    out of twenty.

    Parameters
    ----------
    mean : x̄, mean of the group, any quantity
    variation : CV, coefficient of variation of the group
    times : G, number of standard deviations still in line

    Returns
    -------
    h, of the kind of the mean

    Raises
    ------
    ValueError
        A mean that is not above zero, or a negative variation or number of deviations.

    Notes
    -----
    Valid for normally distributed values.

    References
    ----------
    Grubbs' test, table of LibreTexts (read).

    Examples
    --------
    >>> print(limit_high(Quantity(200, "m"), 0.1, times=2))
    240.0 meter
    """
    _require_limits(mean, variation, times)
    return mean * (1 + times * variation)


def _require_limits(mean: Some, variation: Ratio, times: Ratio) -> None:
    require_within(ABOVE_ZERO, "The mean", mean)
    _require_spread(variation, times)


def _require_spread(variation: Ratio, times: Ratio) -> None:
    require_within(NOT_NEGATIVE, "The coefficient of variation", variation)
    require_within(NOT_NEGATIVE, "The number of standard deviations", times)


@calculation
def stands_out(deviation: Ratio, variation: Ratio, times: Ratio) -> str:
    """Whether a skein stands out from its group.

    in line if |δ| ≤ G · CV. A skein that stands out is worth measuring again.

    Parameters
    ----------
    deviation : δ, relative deviation of the skein from the mean of the group
    variation : CV, coefficient of variation of the group
    times : G, number of standard deviations still in line

    Returns
    -------
    "stands out" or "in line"

    Raises
    ------
    ValueError
        A deviation that is not a number, or a negative variation or number of deviations.

    Notes
    -----
    Valid for groups of three and more, with Grubbs' limit for so many; of three, only one far from two that agree.

    References
    ----------
    Grubbs' test, table of LibreTexts (read).

    Examples
    --------
    >>> print(stands_out(0.25, variation=0.1, times=2))
    stands out
    """
    require(np.isfinite(deviation), "The deviation must be a number.")
    _require_spread(variation, times)
    # Compared without the last digits, which differ between programs.
    out = np.round(np.abs(deviation), 12) > np.round(times * variation, 12)
    return by_element(lambda is_out: OUT if is_out else IN, out)


@calculation
def difference(first: Grist, second: Grist) -> Ratio:
    """How much two yarns differ in grist.

    Δ = |a - b| / ((a + b) / 2). It is the same in any count, direct or indirect.

    Parameters
    ----------
    first : a, grist of one yarn
    second : b, grist of the other

    Returns
    -------
    Δ, a share of the mean of the two

    Raises
    ------
    ValueError
        A grist that is not above zero.

    Notes
    -----
    Valid for grists found in the same state of moisture.

    References
    ----------
    Definition of the relative difference.

    Examples
    --------
    >>> print(difference(Quantity(1100, "yd/lb"), Quantity(900, "yd/lb")))
    0.2
    """
    require_within(ABOVE_ZERO, "Both grists", first, second)
    return (np.abs(first - second) / ((first + second) / 2)).m_as("")


@calculation
def may_share(first: Grist, second: Grist) -> str:
    """Whether two skeins may share a piece.

    go together if Δ ≤ 0.10, alternate rows if Δ ≤ 0.20, else keep apart. Alternating rows of two skeins hides a small
    difference; a large one shows anyway.

    Parameters
    ----------
    first : grist of one skein
    second : grist of the other; Δ is their relative difference

    Returns
    -------
    "go together", "alternate rows" or "keep apart"

    Raises
    ------
    ValueError
        A grist that is not above zero.

    Notes
    -----
    Valid for skeins of similar fiber, ply and twist; color is another matter.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(may_share(Quantity(1100, "yd/lb"), Quantity(900, "yd/lb")))
    alternate rows
    """
    return by_element(_companions, difference(first, second))


def _companions(share) -> str:
    # The last digits of a conversion must not decide a borderline case.
    rounded = round(float(share), 9)
    if rounded <= TOGETHER_UP_TO:
        return TOGETHER
    return ALTERNATE if rounded <= ALTERNATE_UP_TO else APART
