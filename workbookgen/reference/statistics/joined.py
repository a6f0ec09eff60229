"""The variation of a group known by its sums: the skeins of a lot, or of several lots together.

Sums of values and of their squares add up over groups, so the variation of each, and of all together, follows without
going through the members again.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, COUNTED_FROM_TWO, NOT_NEGATIVE, require_within
from workbookgen.reference.tolerances import NO_VARIANCE, ROUNDING_OF_SQUARES
from workbookgen.units import Ratio, Some, SomeSquared


@calculation
def square_of(value: Some) -> SomeSquared:
    """Square of a value.

    q = x². The variation follows from sums of squares.

    Parameters
    ----------
    value : x, any quantity that is not negative

    Returns
    -------
    q, of the kind of the value squared

    Raises
    ------
    ValueError
        A negative value, or one that is not a number.

    Notes
    -----
    Valid for any quantity.

    References
    ----------
    Definition of the square.

    Examples
    --------
    >>> print(square_of(Quantity(3, "m")))
    9 meter ** 2
    """
    require_within(NOT_NEGATIVE, "The value", value)
    return value**2


@calculation
def variation_of_sums(squares: SomeSquared, count: Ratio, mean: Some) -> Ratio:
    """Coefficient of variation of a group, from its sums.

    CV = √((Q / (N x̄²) - 1) · N / (N - 1)). A relative variance under 10⁻⁶ is mostly the rounding of the sums and
    counts as none.

    Parameters
    ----------
    squares : Q, sum of the squared values
    count : N, members of the group
    mean : x̄, mean of the group

    Returns
    -------
    CV, a share

    Raises
    ------
    ValueError
        Fewer than two members, a number of them that is not whole, a mean that is not above zero, or squares too small
        for that mean.
    DimensionalityError
        Squares that are not of the kind of the mean squared.

    Notes
    -----
    Valid for groups whose members all count equally.

    References
    ----------
    Steiner's theorem: sums of squares about means (from memory).

    Examples
    --------
    >>> print(round(variation_of_sums(Quantity(30200, "m^2"), 3, Quantity(100, "m")), 6))  # of 90, 100 and 110 m
    0.1
    """
    require_within(COUNTED_FROM_TWO, "One member has no variation: count at least two.", count)
    require_within(ABOVE_ZERO, "The mean", mean)
    ratio = squares / (count * mean**2)
    spread = (ratio.m_as("") if hasattr(ratio, "m_as") else ratio) - 1
    require(spread >= -ROUNDING_OF_SQUARES, "Such squares cannot belong to that mean.")
    return np.sqrt(np.where(spread < NO_VARIANCE, 0.0, spread) * count / (count - 1))


@calculation
def pooled_variation(variations: Ratio, counts: Ratio) -> Ratio:
    """Coefficient of variation within a group, over several groups.

    CV = √(Σ (n i - 1) · CV i² / Σ (n i - 1)). It is how even the members of one group usually are; differences between
    groups do not count.

    Parameters
    ----------
    variations : CV i, coefficient of variation of each group
    counts : n i, members of each group, in the same order

    Returns
    -------
    CV, a share

    Raises
    ------
    ValueError
        No group, a negative variation, fewer than two members in a group, or columns of unequal length.

    Notes
    -----
    Valid for groups that vary alike, such as lots of one breed; a group is weighted by its members less one.

    References
    ----------
    Pooled variance, NIST/SEMATECH e-Handbook of Statistical Methods (from memory), of relative deviations.

    Examples
    --------
    >>> print(round(pooled_variation([0.02, 0.14], [2, 2]), 6))  # √((0.0004 + 0.0196) / 2)
    0.1
    """
    variations, counts = np.atleast_1d(variations), np.atleast_1d(counts)
    require(len(variations) > 0, "There must be at least one group.")
    require(len(variations) == len(counts), "Each group needs its variation and its number of members.")
    require_within(NOT_NEGATIVE, "The coefficient of variation", variations)
    require_within(COUNTED_FROM_TWO, "One member has no variation: count at least two.", counts)
    return np.sqrt(np.sum((counts - 1) * variations**2) / np.sum(counts - 1))


@calculation
def beside_the_usual(variation: Ratio, usual: Ratio) -> Ratio:
    """How many times the usual variation a group varies.

    t = CV / c. If a hand is less even than it says, all that is still to come looks surer than it is.

    Parameters
    ----------
    variation : CV, coefficient of variation of the group
    usual : c, the usual one

    Returns
    -------
    t, a number

    Raises
    ------
    ValueError
        A negative variation, or a usual one that is not above zero.

    Notes
    -----
    Valid for groups of five or more; fewer may be alike, or not, by chance.

    References
    ----------
    Definition of a ratio.

    Examples
    --------
    >>> print(beside_the_usual(0.125, usual=0.0625))
    2.0
    """
    require_within(NOT_NEGATIVE, "The variation", variation)
    require_within(ABOVE_ZERO, "The usual variation", usual)
    return variation / usual
