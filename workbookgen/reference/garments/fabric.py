"""How much fabric a yarn gives: by a weighed swatch, or by its gauge."""

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.units import Area, Grist, Length, Mass, PerArea

OF_SWATCH, OF_GAUGE = "a weighed swatch", "the gauge"


@calculation
def area_by_swatch(length: Length, grist: Grist, swatch_area: Area, swatch_mass: Mass) -> Area:
    """Area of fabric that a yarn gives, from a swatch.

    A = L / g / m · a. The yarn makes as many swatches as its weight allows.

    Parameters
    ----------
    length : L, length of yarn
    grist : g, its grist
    swatch_area : a, area of the swatch
    swatch_mass : m, its mass

    Returns
    -------
    A, an area

    Raises
    ------
    ValueError
        A negative length, or a grist, a swatch or a mass that is not above zero.

    Notes
    -----
    Valid for fabric worked like the swatch, in the same yarn; edges and seams take a little more.

    References
    ----------
    Definition of a proportion.

    Examples
    --------
    >>> print(area_by_swatch(Quantity(1000, "m"), Quantity(4, "m/g"), Quantity(0.02, "m^2"), Quantity(5, "g")))
    1.0 meter ** 2
    """
    require_within(NOT_NEGATIVE, "The length", length)
    require_within(ABOVE_ZERO, "The grist", grist)
    require_within(ABOVE_ZERO, "The swatch", swatch_area)
    require_within(ABOVE_ZERO, "The mass", swatch_mass)
    return (length / grist / swatch_mass * swatch_area).to("m^2")


@calculation
def area_by_gauge(length: Length, stitch_density: PerArea, stitch_length: Length) -> Area:
    """Area of fabric that a yarn gives, from its gauge.

    A = L / (S · ℓ). The yarn makes as many stitches as its length allows.

    Parameters
    ----------
    length : L, length of yarn
    stitch_density : S, stitches in an area
    stitch_length : ℓ, length of yarn in one stitch

    Returns
    -------
    A, an area

    Raises
    ------
    ValueError
        A negative length, or stitches that are not above zero.

    Notes
    -----
    Valid for fabric of uniform stitches. With a stitch by Munden's relation, plain wool knitting, within 10 to 15 %.

    References
    ----------
    Definition of the stitch density; D. L. Munden, 1959, for the stitch length where no stitches were unraveled (from
    memory).

    Examples
    --------
    >>> print(area_by_gauge(Quantity(1000, "m"), Quantity(40000, "1/m^2"), Quantity(0.02, "m")))
    1.25 meter ** 2
    """
    require_within(NOT_NEGATIVE, "The length", length)
    require_within(ABOVE_ZERO, "The stitches", stitch_density)
    require_within(ABOVE_ZERO, "The stitch", stitch_length)
    return (length / (stitch_density * stitch_length)).to("m^2")


@calculation
def area_in_use(swatch: Area | None = None, gauge: Area | None = None) -> Area:
    """Area of fabric to use.

    A = that of the swatch, or else that of the gauge. Weighing is more reliable than counting.

    Parameters
    ----------
    swatch : area by a weighed swatch
    gauge : area by the gauge

    Returns
    -------
    A, an area

    Raises
    ------
    ValueError
        Neither of them, or a negative area.

    Notes
    -----
    Valid for one yarn, worked one way.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(area_in_use(swatch=Quantity(1, "m^2"), gauge=Quantity(1.25, "m^2")))
    1 meter ** 2
    """
    require_numbers(swatch, gauge)
    area = swatch if swatch is not None else gauge
    require(area is not None, "Neither a swatch nor a gauge is known.")
    require_within(NOT_NEGATIVE, "An area", area)
    return area


@calculation
def area_basis(swatch: Area | None = None, gauge: Area | None = None) -> str:
    """What the area of fabric is based on.

    words = the first known of swatch and gauge. How far to trust it depends on that.

    Parameters
    ----------
    swatch : area by a weighed swatch
    gauge : area by the gauge

    Returns
    -------
    "a weighed swatch" or "the gauge"

    Raises
    ------
    ValueError
        Neither of them, or a negative area.

    Notes
    -----
    Valid for one yarn, worked one way.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(area_basis(gauge=Quantity(1.25, "m^2")))
    the gauge
    """
    area = area_in_use(swatch, gauge)
    basis = OF_GAUGE if swatch is None else OF_SWATCH
    return by_element(lambda _: basis, area.magnitude)


@calculation
def far_at_width(area: Area, width: Length) -> Length:
    """How long a strip of fabric becomes.

    l = A / w. A scarf twice as wide is half as long.

    Parameters
    ----------
    area : A, area of the fabric
    width : w, width of the strip

    Returns
    -------
    l, a length

    Raises
    ------
    ValueError
        A negative area, or a width that is not above zero.

    Notes
    -----
    Valid for a rectangle, without fringes.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(far_at_width(Quantity(1, "m^2"), Quantity(0.5, "m")))
    2.0 meter
    """
    require_within(NOT_NEGATIVE, "An area", area)
    require_within(ABOVE_ZERO, "The width", width)
    return (area / width).to("m")
