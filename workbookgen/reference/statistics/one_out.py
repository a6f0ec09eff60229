"""One skein beside the others that were made alike: how far off it is, and whether chance takes a skein that far."""

import numpy as np

from workbookgen.reference.calculation import calculation, quotient, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, COUNTED_FROM_THREE, COUNTED_FROM_TWO, NOT_NEGATIVE, require_within
from workbookgen.reference.tolerances import ROUNDING_OF_SQUARES
from workbookgen.units import Quantity, Ratio, Some, SomeSquared

SO_FAR = 100.0  # and farther: what is left of the sums without such a one has lost its digits
NO_OTHERS = "The others have nothing together."


@calculation
def off_the_others(value: Some, total: Some, count: Ratio) -> Ratio:
    """Deviation of one of a group from the mean of all the others.

    δ = x · (n - 1) / (S - x) - 1, of a hundred and more 100. A skein that was counted wrong draws the mean of all its
    way, and not that of the others.

    Parameters
    ----------
    value : x, any quantity
    total : S, sum of the group, x included
    count : n, members of the group

    Returns
    -------
    δ, a share of that mean

    Raises
    ------
    ValueError
        A negative value, fewer than two members, or others that are nothing together.
    DimensionalityError
        A value and a total of different kinds.

    Notes
    -----
    Valid for quantities with a true zero.

    References
    ----------
    Definition of the relative deviation.

    Examples
    --------
    >>> print(off_the_others(Quantity(900, "m"), Quantity(2100, "m"), 3))  # beside two of 600 m
    0.5
    """
    require_within(NOT_NEGATIVE, "The value", value)
    require_within(COUNTED_FROM_TWO, "One member has no others: count at least two.", count)
    others = Quantity(total - value)
    require(others.magnitude > 0, NO_OTHERS)
    times = (count - 1) * quotient(Quantity(value).m_as(others.units), others.magnitude)
    return np.minimum(times - 1, SO_FAR)


@calculation
def beyond_the_others(off: Ratio, value: Some, total: Some, squares: SomeSquared, count: Ratio, usual: Ratio) -> Ratio:
    """How much farther one of a group is off the others than such things differ.

    z = abs δ / (max(s, c) · √(n / (n - 1))), s² = ((Q - x²) · (n - 1) / (S - x)² - 1) · (n - 1) / (n - 2), the
    coefficient of variation of the others. Of skeins that differ by 8%, one in 200 is beyond 2.8 by chance.

    Parameters
    ----------
    off : δ, deviation from the mean of the others, below 1
    value : x, any quantity
    total, squares : S and Q, sums of the group and of its squares, x included
    count : n, members of the group
    usual : c, coefficient of variation that is usual

    Returns
    -------
    z, a number

    Raises
    ------
    ValueError
        A deviation of 1 or more, which is beyond chance, fewer than three members, a usual variation or a sum of the
        others that is not above zero, or squares too small for that sum.
    DimensionalityError
        Sums of different kinds.

    Notes
    -----
    Valid for a group of one kind. The larger of the two variations counts, so that neither an uneven hand is asked
    about each of its skeins, nor a few that chance made alike put the next one out.

    References
    ----------
    Standard uncertainty of the difference between a value and a mean (from memory).

    Examples
    --------
    >>> print(round(beyond_the_others(0.5, 9, 9 + 6 + 6, 81 + 36 + 36, 3, usual=0.1), 6))  # 0.5 / (0.1 · √1.5)
    4.082483
    """
    require_within(COUNTED_FROM_THREE, "One other shows no variation. The number of members", count)
    require_within(ABOVE_ZERO, "The usual variation", usual)
    others = Quantity(total - value)
    require(others.magnitude > 0, NO_OTHERS)
    require_numbers(off)
    require(np.round(off, 9) < 1, "So far off, it is not by chance.")
    theirs = Quantity(squares - value**2).m_as(others.units**2)
    spread = (count - 1) * quotient(theirs, others.magnitude**2) - 1
    require(spread >= -ROUNDING_OF_SQUARES, "Such squares cannot belong to that sum.")
    own = np.sqrt(np.maximum(spread, 0.0) * quotient(count - 1, count - 2))
    return quotient(np.abs(off), np.maximum(own, usual) * np.sqrt(quotient(count, count - 1)))
