"""The rest of a lot that is nearly spun: no less than nothing can be left of it."""

import math

import numpy as np

from workbookgen.reference.calculation import calculation, require_numbers
from workbookgen.reference.limits import NO_MASS, NOT_NEGATIVE, require_within
from workbookgen.units import Mass, MassSquared, Quantity, Ratio

TO_LOOK_FOR = 0.05  # of what a strand still needs: less than the need is known to; common practice, no source
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


@calculation
def on_the_last(
    more_1: Mass,
    needs_1: Mass,
    more_2: Mass | None = None,
    needs_2: Mass | None = None,
    more_3: Mass | None = None,
    needs_3: Mass | None = None,
    more_4: Mass | None = None,
    needs_4: Mass | None = None,
) -> Ratio:
    """How many strands count on more of their lots than is reckoned.

    n = number of those with e > N / 20, N > 0. The basket tells whether it is there.

    Parameters
    ----------
    more_1, more_2, more_3, more_4 : e, how much more the lots of each strand give on average, if it is known
    needs_1, needs_2, needs_3, needs_4 : N, what is still needed of each

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        A negative mass.

    Notes
    -----
    Valid for lots that are not spun to the end.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(on_the_last(Quantity(8, "g"), Quantity(100, "g"), Quantity(2, "g"), Quantity(100, "g")))
    1.0
    """
    strands = ((more_1, needs_1), (more_2, needs_2), (more_3, needs_3), (more_4, needs_4))
    known = [(more, needs) for more, needs in strands if more is not None and needs is not None]
    require_numbers(*(each for strand in known for each in strand))
    for strand in known:
        require_within(NOT_NEGATIVE, "A mass", *strand)
    counts = [np.where((needs > NO_MASS) & (more > TO_LOOK_FOR * needs), 1.0, 0.0)[()] for more, needs in known]
    return sum(counts, start=0.0)
