"""Garments as flat rectangles and trapezoids: from the body, the ease and a swatch to the yarn."""

from workbookgen.reference.calculation import calculation, require
from workbookgen.units import Area, Length, Mass, Quantity, Ratio

NO_LENGTH = Quantity(0.0, "m")
NO_AREA = Quantity(0.0, "m^2")
NO_MASS = Quantity(0.0, "g")


@calculation
def finished_around(body: Length, ease: Length = NO_LENGTH) -> Length:
    """Size of a garment around.

    c = b + e. Ease is what it measures around beyond the body; below zero it stretches.

    Parameters
    ----------
    body : b, the body around, at its widest where the garment lies
    ease : e, ease in all, not of each half

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
    require(body > NO_LENGTH, "The body must measure something around.")
    around = body + ease
    require(around > NO_LENGTH, "The ease takes away all there is around: give less of it.")
    return around



@calculation
def panel_width(around: Length) -> Length:
    """Width of the back, or of the front.

    w = c / 2. Seen flat, a garment is as wide as half of what it measures around.

    Parameters
    ----------
    around : c, the garment around

    Returns
    -------
    w, a length

    Raises
    ------
    ValueError
        A size that is not above zero.

    Notes
    -----
    Valid for a front in one part; each half of an open one is half as wide.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(panel_width(Quantity(100, "cm")))
    50.0 centimeter
    """
    require(around > NO_LENGTH, "The garment must measure something around.")
    return around / 2



@calculation
def garment_area(
    around: Length,
    length: Length,
    upper_arm: Length,
    sleeve: Length,
    more: Ratio,
    cuff: Length | None = None,
) -> Area:
    """Area of a garment.

    A = (c · l + (u + v) · s) · (1 + m). Body and two sleeves; a sleeve laid open is a trapezoid, from the upper arm to the cuff.

    Parameters
    ----------
    around : c, the garment around
    length : l, from the shoulder to the lower edge
    upper_arm : u, the sleeve around where it is widest
    sleeve : s, length of a sleeve; 0 for none
    more : m, share on top for collar, bands and seams
    cuff : v, the sleeve around where it is narrowest; as wide as above if left out

    Returns
    -------
    A, an area

    Raises
    ------
    ValueError
        A size of the body that is not above zero, or a negative one of a sleeve.

    Notes
    -----
    Valid for garments near to rectangles; what shaping takes away is left in.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(garment_area(Quantity(1, "m"), Quantity(0.6, "m"), Quantity(0.4, "m"), Quantity(0.5, "m"), more=0.25))
    1.25 meter ** 2
    """
    require((around > NO_LENGTH) & (length > NO_LENGTH), "The body of a garment must have a width and a length.")
    narrowest = upper_arm if cuff is None else cuff
    require((upper_arm >= NO_LENGTH) & (narrowest >= NO_LENGTH) & (sleeve >= NO_LENGTH), "A sleeve cannot measure less than nothing.")
    require(more >= 0, "The share on top cannot be negative.")
    return (around * length + (upper_arm + narrowest) * sleeve) * (1 + more)



@calculation
def yarn_by_swatch(area: Area, swatch_area: Area, swatch_mass: Mass) -> Mass:
    """Weight of yarn for a piece, from a swatch.

    M = A / a · m. Both are weighed, so the grist need not be known.

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
    Valid for the stitch, the needles and the yarn of the swatch; add a margin.

    References
    ----------
    Definition of the proportion.

    Examples
    --------
    >>> print(yarn_by_swatch(Quantity(1.2, "m^2"), Quantity(0.02, "m^2"), Quantity(5, "g")))
    300.0 gram
    """
    require(area >= NO_AREA, "The area of the piece cannot be negative.")
    require(swatch_area > NO_AREA, "The swatch must have an area.")
    require(swatch_mass > NO_MASS, "The swatch must weigh something.")
    return area / swatch_area * swatch_mass
