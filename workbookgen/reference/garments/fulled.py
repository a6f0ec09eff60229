"""Fulling: how large to make what hot water and rubbing will shrink."""

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, require_within
from workbookgen.units import Length, PerLength, Ratio

TOO_MUCH = 0.99  # of a size: with less than a hundredth left, the last digits would decide


@calculation
def lost_in_fulling(before: Length, after: Length) -> Ratio:
    """Share of a size that is lost in fulling.

    s = 1 - a / b. Each direction has its own; length often loses more than width.

    Parameters
    ----------
    before : b, size of the swatch before fulling
    after : a, its size after fulling, dry

    Returns
    -------
    s, a share of the size before; below zero it has grown

    Raises
    ------
    ValueError
        A size that is not above zero.

    Notes
    -----
    Valid for a swatch fulled as the piece will be.

    References
    ----------
    Definition of a share lost.

    Examples
    --------
    >>> print(lost_in_fulling(Quantity(20, "cm"), Quantity(15, "cm")))
    0.25
    """
    require_within(ABOVE_ZERO, "The swatch must have a size before and after.", before, after)
    return 1 - (after / before).m_as("")


@calculation
def size_to_make(wanted: Length, lost: Ratio) -> Length:
    """Size to make, so that fulling leaves the wanted size.

    b = a / (1 - s). What is lost is a share of the size before, so one divides.

    Parameters
    ----------
    wanted : a, size wanted after fulling
    lost : s, share that fulling takes

    Returns
    -------
    b, a length

    Raises
    ------
    ValueError
        A size that is not above zero, or a share of 0.99 or more.

    Notes
    -----
    Valid for a piece fulled as its swatch was. With only a hundredth left, the last digits would decide.

    References
    ----------
    Definition of a share lost.

    Examples
    --------
    >>> print(size_to_make(Quantity(30, "cm"), 0.25))
    40.0 centimeter
    """
    require_within(ABOVE_ZERO, "The size wanted", wanted)
    require(lost < TOO_MUCH, "Fulling cannot take nearly all of it.")
    return wanted / (1 - lost)


@calculation
def counted_over(size: Length, gauge: PerLength) -> Ratio:
    """Stitches or rows over a size.

    n = b · g. Use the gauge before fulling, since that is how it is worked.

    Parameters
    ----------
    size : b, size to make
    gauge : g, stitches or rows in a length

    Returns
    -------
    n, a number

    Raises
    ------
    ValueError
        A size or a gauge that is not above zero.

    Notes
    -----
    Valid for one gauge throughout.

    References
    ----------
    Definition of the gauge.

    Examples
    --------
    >>> print(counted_over(Quantity(40, "cm"), Quantity(2, "1/cm")))
    80
    """
    require_within(ABOVE_ZERO, "The size", size)
    require_within(ABOVE_ZERO, "The gauge", gauge)
    return (size * gauge).m_as("")
