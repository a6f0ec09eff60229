"""While knitting: whether the rest of the ball will last.

The scale knows before the needles do. Weighing a ball before and after some rows shows what a row takes, and so how
many more rows are in what is left.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.units import Mass, Ratio

LASTS, TOO_CLOSE, FALLS_SHORT = "it will last", "too close to tell: weigh again later", "it will not last"
# Weighed to a gram, or to a tenth of an ounce, and worked by hand, rows are not known better (simulated worlds).
CLOSE = 0.07


@calculation
def rows_possible(left: Mass, before: Mass, after: Mass, rows: Ratio) -> Ratio:
    """Rows that the rest of the ball will make.

    k = m / ((b - a) / r). Weigh the ball before and after some rows.

    Parameters
    ----------
    left : m, mass of yarn left
    before : b, mass of the ball before the rows
    after : a, mass of the ball after them
    rows : r, number of those rows

    Returns
    -------
    k, a number, parts of a row included

    Raises
    ------
    ValueError
        A negative mass, a ball that has not become lighter, or no rows.

    Notes
    -----
    Valid for rows as long as those weighed; weigh enough rows for the scale to show a difference.

    References
    ----------
    Definition of the mass of a row.

    Examples
    --------
    >>> print(rows_possible(Quantity(40, "g"), Quantity(60, "g"), Quantity(50, "g"), rows=5))
    20.0
    """
    require_within(NOT_NEGATIVE, "The mass left", left)
    require_within(NOT_NEGATIVE, "The mass after the rows", after)
    require(before > after, "The ball must be lighter after the rows than before.")
    require_within(ABOVE_ZERO, "The number of rows", rows)
    return (left / (before - after)).m_as("") * rows


@calculation
def lasts(possible: Ratio, wanted: Ratio) -> str:
    """Whether the rest of the ball will last, in words.

    it lasts if k ≥ 1.07 · w, and falls short if k < 0.93 · w. Better known before the last row than on it, but scale
    and hand do not tell it nearer.

    Parameters
    ----------
    possible : k, rows that the rest will make
    wanted : w, rows still to knit

    Returns
    -------
    "it will last", "it will not last", or that it is too close to tell

    Raises
    ------
    ValueError
        A negative number of rows.

    Notes
    -----
    Valid for rows of one length; leave some yarn to bind off. Compared to nine decimals.

    References
    ----------
    Definition of enough. That rows are known to 7 percent: common practice, no source.

    Examples
    --------
    >>> print(lasts(20, wanted=24))
    it will not last
    """
    require_within(NOT_NEGATIVE, "The rows that are possible", possible)
    require_within(NOT_NEGATIVE, "The rows still to knit", wanted)
    return enough_in_words(possible, wanted)


def enough_in_words(there, needed) -> str:
    """Whether an amount lasts. The last digits of a quotient must not decide a borderline case."""
    lasts = np.round(there - needed * (1 + CLOSE), 9) >= 0
    may_last = np.round(there - needed * (1 - CLOSE), 9) >= 0
    return by_element(lambda sure, likely: LASTS if sure else TOO_CLOSE if likely else FALLS_SHORT, lasts, may_last)
