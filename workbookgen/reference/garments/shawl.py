"""A piece whose rows grow or shrink evenly, such as a shawl: how far the rest of the yarn goes.

Yarn is proportional to stitches. With the same number added in each row, the stitches of all rows form a trapezoid;
from a point, a triangle, so half the rows take a quarter of the yarn.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, quotient, require
from workbookgen.reference.knitting.ball import enough_in_words
from workbookgen.reference.limits import ABOVE_ZERO, NO_MASS, NOT_NEGATIVE, require_within
from workbookgen.units import Mass, Ratio


@calculation
def yarn_to_work(left: Mass, kept: Mass = NO_MASS) -> Mass:
    """Yarn left to work rows with.

    m = l - k. An edging, or binding off, takes its part.

    Parameters
    ----------
    left : l, mass of all yarn left
    kept : k, mass to keep for an edging and for binding off

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A negative mass, or more kept than is left.

    Notes
    -----
    Valid for an edging of the same yarn.

    References
    ----------
    Definition of a difference.

    Examples
    --------
    >>> print(yarn_to_work(Quantity(60, "g"), Quantity(10, "g")))
    50 gram
    """
    require_within(NOT_NEGATIVE, "A mass", left, kept)
    require(left >= kept, "More is kept than is left.")
    return left - kept


@calculation
def rows_still(left: Mass, used: Mass, rows: Ratio, first: Ratio, now: Ratio) -> Ratio:
    """Rows that the rest of the yarn still makes.

    k = 2 · R / (b + √(b² + 2 · g · R)), where R = m / u · n · (a + b) / 2 and g = (b - a) / n. The rows to come grow at
    the same rate.

    Parameters
    ----------
    left : m, mass of yarn to work with
    used : u, mass of yarn used so far
    rows : n, rows worked so far
    first : a, stitches in the first row; 0 from a point
    now : b, stitches in a row now

    Returns
    -------
    k, a number; where rows shrink, no more than remain until no stitch is left

    Raises
    ------
    ValueError
        A negative mass, or no yarn, rows or stitches so far.

    Notes
    -----
    Valid for rows that grow, shrink or stay, evenly; one stitch pattern.

    References
    ----------
    Geometry of a trapezoid; yarn in proportion to stitches: definition of a mean.

    Examples
    --------
    >>> # half the rows took a quarter of the yarn
    >>> print(rows_still(Quantity(30, "g"), Quantity(10, "g"), rows=50, first=0, now=100))
    50.0
    """
    require_within(NOT_NEGATIVE, "The mass left", left)
    _require_worked(used, rows, first, now)
    rest = (left / used).m_as("") * rows * (first + now) / 2
    growth = (now - first) / rows
    possible = 2 * rest / (now + np.sqrt(np.maximum(now * now + 2 * growth * rest, 0)))
    # Rows that shrink come to an end, however much yarn is left.
    until_none = np.where(first > now, quotient(now * rows, first - now), np.inf)
    fewer = np.minimum(possible, until_none)
    return fewer if np.ndim(fewer) else float(fewer)


@calculation
def yarn_for_rows(wanted: Ratio, used: Mass, rows: Ratio, first: Ratio, now: Ratio) -> Mass:
    """Yarn for the rows still wanted.

    m = u · w · (2 · b + g · w) / (n · (a + b)), where g = (b - a) / n. Late rows of a growing shawl take most of it.

    Parameters
    ----------
    wanted : w, rows still to work
    used : u, mass of yarn used so far
    rows : n, rows worked so far
    first : a, stitches in the first row; 0 from a point
    now : b, stitches in a row now

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A negative number of rows, no yarn, rows or stitches so far, or rows that would shrink below 0.

    Notes
    -----
    Valid for rows that grow, shrink or stay, evenly; one stitch pattern.

    References
    ----------
    Geometry of a trapezoid; yarn in proportion to stitches: definition of a mean.

    Examples
    --------
    >>> print(yarn_for_rows(50, Quantity(10, "g"), rows=50, first=0, now=100))
    30.0 gram
    """
    require_within(NOT_NEGATIVE, "The rows still to work", wanted)
    _require_worked(used, rows, first, now)
    growth = (now - first) / rows
    require(np.round(now + growth * wanted, 6) >= 0, "There are not that many rows left: the stitches run out first.")
    return used * wanted * (2 * now + growth * wanted) / (rows * (first + now))


@calculation
def rest_lasts(left: Mass, needed: Mass) -> str:
    """Whether the yarn that is left makes the rows still wanted, in words.

    it lasts if m ≥ 1.07 · n, and falls short if m < 0.93 · n: scale and hand cannot tell them closer. Rows that cannot
    be worked at all, since their stitches run out first, need no mass, and have no answer.

    Parameters
    ----------
    left : m, mass of yarn left to work with
    needed : n, mass that the rows still wanted take

    Returns
    -------
    "it will last", "it will not last", or that it is too close to tell

    Raises
    ------
    ValueError
        A negative mass.

    Notes
    -----
    Valid for rows that grow, shrink or stay, evenly; one stitch pattern. Compared to nine decimals of a gram.

    References
    ----------
    Definition of enough.

    Examples
    --------
    >>> print(rest_lasts(Quantity(20, "g"), needed=Quantity(24, "g")))
    it will not last
    """
    require_within(NOT_NEGATIVE, "A mass", left, needed)
    return enough_in_words(left.m_as("g"), needed.m_as("g"))


@calculation
def share_worked(used: Mass, to_come: Mass) -> Ratio:
    """Share of the yarn that is used so far.

    x = u / (u + m). From a point, it is the square of the share of the rows.

    Parameters
    ----------
    used : u, mass of yarn used so far
    to_come : m, mass for the rows to come

    Returns
    -------
    x, a share

    Raises
    ------
    ValueError
        No yarn used, or a negative mass to come.

    Notes
    -----
    Valid for one yarn throughout.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(share_worked(Quantity(10, "g"), Quantity(30, "g")))
    0.25
    """
    require_within(ABOVE_ZERO, "Some yarn must have been used.", used)
    require_within(NOT_NEGATIVE, "The mass to come", to_come)
    return (used / (used + to_come)).m_as("")


def _require_worked(used: Mass, rows: Ratio, first: Ratio, now: Ratio) -> None:
    require_within(ABOVE_ZERO, "Some yarn must have been used.", used)
    require_within(ABOVE_ZERO, "Some rows must have been worked.", rows)
    require((first >= 0) & (now > 0), "A row has stitches.")
