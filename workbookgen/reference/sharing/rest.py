"""The rest of a lot that is nearly spun: no less than nothing can be left of it."""

import math

import numpy as np

from workbookgen.reference.calculation import calculation, require_numbers
from workbookgen.reference.limits import NOT_NEGATIVE, require_within
from workbookgen.units import Mass, MassSquared, Quantity

FAR_FROM_NOTHING = 4  # uncertainties above nothing, a rest of less than that is left out in one case of 30,000


@calculation
def more_than_reckoned(pool: Mass, square: MassSquared) -> Mass:
    """How much more lots give on average than is reckoned, since they cannot give less than nothing.

    e = u · φ(P / u) / Φ(P / u), u = √p. Of a fleece that may give a seventh more or less, some is left where all that
    was expected is spun; those that gave less ended before.

    Parameters
    ----------
    pool : P, mass that the lots still give, as it is reckoned
    square : p, squared uncertainty of it

    Returns
    -------
    e, a mass; 0 where P is 4 u or more

    Raises
    ------
    ValueError
        A negative mass or uncertainty.

    Notes
    -----
    Valid for lots that are not spun to the end: of one that is, all its yarn is weighed, and nothing is uncertain.

    References
    ----------
    Mean of a normal distribution cut off at zero: textbooks of statistics (from memory).

    Examples
    --------
    >>> print(round(more_than_reckoned(Quantity(0, "g"), Quantity(100, "g^2")), 3))  # 10 · √(2 / π)
    7.979 gram
    """
    require_numbers(pool, square)
    require_within(NOT_NEGATIVE, "A mass", pool)
    require_within(NOT_NEGATIVE, "A squared uncertainty", square)
    more = np.vectorize(_of_normal, otypes=[float])(pool.m_as("g"), square.m_as("g^2"))
    return Quantity(more[()], "g")


def _of_normal(mean: float, square: float) -> float:
    if mean * mean >= FAR_FROM_NOTHING**2 * square:
        return 0.0
    doubt = math.sqrt(square)
    a = mean / doubt
    likely = 0.5 * math.erfc(-a / math.sqrt(2))
    return doubt * math.exp(-a * a / 2) / math.sqrt(2 * math.pi) / likely
