"""A pattern worked at another gauge: its numbers for the same size, and its yarn."""

import numpy as np

from workbookgen.reference.calculation import calculation
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.units import Length, PerLength, Ratio


@calculation
def same_size(count: Ratio, pattern: PerLength, own: PerLength) -> Ratio:
    """Stitches or rows for the size of the pattern.

    n = k · o / p. The same size, at another gauge.

    Parameters
    ----------
    count : k, stitches or rows in the pattern
    pattern : p, the gauge that it gives
    own : o, the gauge of your swatch

    Returns
    -------
    n, a number; take the nearest whole one that fits the repeat

    Raises
    ------
    ValueError
        A negative number, or a gauge that is not above zero.

    Notes
    -----
    Valid for one gauge throughout; both over washed swatches.

    References
    ----------
    Definition of the gauge.

    Examples
    --------
    >>> print(same_size(100, pattern=Quantity(2, "1/cm"), own=Quantity(2.5, "1/cm")))
    125.0
    """
    require_within(NOT_NEGATIVE, "The stitches or rows of the pattern", count)
    _require_gauges(pattern, own)
    return count * (own / pattern).m_as("")


@calculation
def size_of_its_numbers(pattern: PerLength, own: PerLength) -> Ratio:
    """Change of size if the pattern's numbers are kept.

    x = p / o - 1. Closer stitches make it smaller.

    Parameters
    ----------
    pattern : p, the gauge that the pattern gives
    own : o, the gauge of your swatch

    Returns
    -------
    x, a share of the size of the pattern; below zero it is smaller

    Raises
    ------
    ValueError
        A gauge that is not above zero.

    Notes
    -----
    Valid for one gauge throughout.

    References
    ----------
    Definition of the gauge.

    Examples
    --------
    >>> print(size_of_its_numbers(pattern=Quantity(3, "1/cm"), own=Quantity(4, "1/cm")))
    -0.25
    """
    _require_gauges(pattern, own)
    return (pattern / own).m_as("") - 1


@calculation
def stitches_for_one(
    pattern: PerLength, own: PerLength, pattern_rows: PerLength | None = None, own_rows: PerLength | None = None
) -> Ratio:
    """Your stitches in the area of one pattern stitch.

    q = o / p · r / c. Both gauges count; where the row gauges are not known, rows are taken to change as stitches do.

    Parameters
    ----------
    pattern : p, stitch gauge of the pattern
    own : o, stitch gauge of your swatch
    pattern_rows : c, row gauge of the pattern
    own_rows : r, row gauge of your swatch

    Returns
    -------
    q, a number

    Raises
    ------
    ValueError
        A gauge that is not above zero.

    Notes
    -----
    Valid for the same stitch pattern in both.

    References
    ----------
    Definition of the stitch density.

    Examples
    --------
    >>> print(stitches_for_one(pattern=Quantity(2, "1/cm"), own=Quantity(3, "1/cm")))
    2.25
    """
    _require_gauges(pattern, own)
    across = (own / pattern).m_as("")
    if pattern_rows is None or own_rows is None:
        return across * across
    _require_gauges(pattern_rows, own_rows)
    return across * (own_rows / pattern_rows).m_as("")


@calculation
def yarn_in_gauge(yarn: Length, stitches_for_one: Ratio) -> Length:
    """Yarn for the size of a pattern, at another gauge.

    L = Y · √q. There are more of the smaller stitches, and each takes less: its yarn goes with 1 / √q, since relaxed
    stitches keep their shape.

    Parameters
    ----------
    yarn : Y, length that the pattern asks for
    stitches_for_one : q, your stitches in the area of one pattern stitch

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A length or a number that is not above zero.

    Notes
    -----
    Valid for one stitch pattern, worked equally firmly for each yarn, within 10 to 15 percent; a swatch says more.

    References
    ----------
    Munden, 1959: stitches in an area = k / ℓ² (from memory).

    Examples
    --------
    >>> print(yarn_in_gauge(Quantity(1000, "m"), 2.25))
    1500.0 meter
    """
    require_within(ABOVE_ZERO, "The pattern must ask for some yarn.", yarn)
    require_within(ABOVE_ZERO, "The stitches", stitches_for_one)
    return yarn * np.sqrt(stitches_for_one)


def _require_gauges(pattern: PerLength, own: PerLength) -> None:
    require_within(ABOVE_ZERO, "A gauge", pattern, own)
