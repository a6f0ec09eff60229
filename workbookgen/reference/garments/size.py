"""Garments as flat rectangles and trapezoids: from body, ease and swatch to the yarn."""

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, NO_LENGTH, NOT_NEGATIVE, require_within
from workbookgen.units import Area, Length, Mass, Ratio


@calculation
def finished_around(body: Length, ease: Length = NO_LENGTH) -> Length:
    """Circumference of a garment.

    c = b + e. Ease is its circumference beyond that of the body; with negative ease it stretches.

    Parameters
    ----------
    body : b, circumference of the body at its widest under the garment
    ease : e, total ease, not that of each half

    Returns
    -------
    c, a length

    Raises
    ------
    ValueError
        A body that is not above zero, or an ease that leaves nothing.

    Notes
    -----
    Valid for a garment at rest, laid flat and measured twice across.

    References
    ----------
    Definition of ease.

    Examples
    --------
    >>> print(finished_around(Quantity(90, "cm"), Quantity(10, "cm")))
    100 centimeter
    """
    require_within(ABOVE_ZERO, "The circumference of the body", body)
    around = body + ease
    require(ABOVE_ZERO.hold(around), "The negative ease leaves no circumference: give less of it.")
    return around


@calculation
def panel_width(around: Length) -> Length:
    """Width of the back, or of the front.

    w = c / 2. Laid flat, a garment is half as wide as its circumference.

    Parameters
    ----------
    around : c, circumference of the garment

    Returns
    -------
    w, a length

    Raises
    ------
    ValueError
        A size that is not above zero.

    Notes
    -----
    Valid for a closed front; each half of an open one is half as wide.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(panel_width(Quantity(100, "cm")))
    50.0 centimeter
    """
    require_within(ABOVE_ZERO, "The circumference of the garment", around)
    return around / 2


@calculation
def garment_area(
    around: Length, length: Length, upper_arm: Length, sleeve: Length, more: Ratio, cuff: Length | None = None
) -> Area:
    """Area of a garment.

    A = (c · l + (u + v) · s) · (1 + m). Body and two sleeves; a sleeve laid open is a trapezoid from upper arm to cuff.

    Parameters
    ----------
    around : c, circumference of the garment
    length : l, from the shoulder to the lower edge
    upper_arm : u, circumference of the sleeve at its widest
    sleeve : s, length of a sleeve; 0 for none
    more : m, additional share for collar, bands and seams
    cuff : v, circumference of the sleeve at its narrowest; that at its widest if left out

    Returns
    -------
    A, an area

    Raises
    ------
    ValueError
        A size of the body that is not above zero, a negative one of a sleeve, or a sleeve that measures nothing around.

    Notes
    -----
    Valid for nearly rectangular garments; what shaping takes away is not subtracted.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(garment_area(Quantity(1, "m"), Quantity(0.6, "m"), Quantity(0.4, "m"), Quantity(0.5, "m"), more=0.25))
    1.25 meter ** 2
    """
    require_within(ABOVE_ZERO, "The body of a garment must have a width and a length.", around, length)
    narrowest = upper_arm if cuff is None else cuff
    require_within(NOT_NEGATIVE, "A sleeve's measures", upper_arm, narrowest, sleeve)
    require_within(NOT_NEGATIVE, "The additional share", more)
    require((sleeve == 0) | (upper_arm > 0), "A sleeve must measure something around the upper arm.")
    return (around * length + (upper_arm + narrowest) * sleeve) * (1 + more)


@calculation
def yarn_by_swatch(area: Area, swatch_area: Area, swatch_mass: Mass) -> Mass:
    """Weight of yarn for a piece, from a swatch.

    M = A / a · m. It needs no grist, since the swatch is weighed.

    Parameters
    ----------
    area : A, area of the piece
    swatch_area : a, area of the swatch, in the state of the piece
    swatch_mass : m, its mass

    Returns
    -------
    M, a mass

    Raises
    ------
    ValueError
        A negative area of the piece, or a swatch without area or mass.

    Notes
    -----
    Valid for the stitch, the needles and the yarn of the swatch; add a reserve.

    References
    ----------
    Definition of the proportion.

    Examples
    --------
    >>> print(yarn_by_swatch(Quantity(1.2, "m^2"), Quantity(0.02, "m^2"), Quantity(5, "g")))
    300.0 gram
    """
    require_within(NOT_NEGATIVE, "The area of the piece", area)
    require_within(ABOVE_ZERO, "The swatch must have an area.", swatch_area)
    require_within(ABOVE_ZERO, "The swatch must weigh something.", swatch_mass)
    return area / swatch_area * swatch_mass
