"""Yarn for a knitted piece, from its size.

A swatch that is measured and weighed is the most reliable, since it needs no theory. An existing piece can be weighed
as well; without either, stitches in an area times the yarn in a stitch will do.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require
from workbookgen.reference.knitting.stitch import require_stitch_density, require_stitch_length
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.reference.records import sum_where
from workbookgen.units import Area, Grist, Length, Mass, PerArea, Quantity, Ratio

SHAPES = ("rectangle", "triangle", "trapezoid", "circle", "ring")


@calculation
def area(
    shape: str, width: Length, height: Length | None = None, second: Length | None = None, pieces: Ratio = 1
) -> Area:
    """Area of the parts of a piece.

    A = n · w · h for a rectangle, n · w · h / 2 for a triangle, n · (w + v) / 2 · h for a
    trapezoid, n · π · w² / 4 for a circle, n · π · (w² - v²) / 4 for a ring. Most garments are made up of these.

    Parameters
    ----------
    shape : rectangle, triangle, trapezoid, circle or ring; case does not matter
    width : w, width or base; of a circle and a ring the outer diameter
    height : h, height over the base; a circle and a ring have none
    second : v, the other parallel side of a trapezoid, or the inner diameter of a ring
    pieces : n, number of such parts

    Returns
    -------
    A, an area

    Raises
    ------
    ValueError
        An unknown shape, a size that the shape needs and that is missing or not above zero,
        a ring whose hole is no smaller than itself, or pieces that are not above zero.

    Notes
    -----
    Valid for flat parts; sizes that a shape does not need are ignored.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(area("triangle", Quantity(2, "m"), Quantity(1, "m")))
    1.0 meter ** 2
    """
    require_within(ABOVE_ZERO, "The width", width)
    require_within(ABOVE_ZERO, "The number of pieces", pieces)
    sizes = (np.nan if size is None else size.m_as("meter") for size in (width, height, second))
    one = by_element(_square_meters, shape, *sizes)
    return Quantity(pieces * (one.astype(float) if np.ndim(one) else one), "m^2")


@calculation
def area_in_all(project: str, projects: Sequence[str], areas: Area) -> Area:
    """Area of all parts of a project.

    A = Σ area i, over all i where project i is the project. A piece is the sum of its parts.

    Parameters
    ----------
    project : the project looked for
    projects : the project of each part, a blank one where a row is empty
    areas : the areas beside them

    Returns
    -------
    A, an area

    Raises
    ------
    ValueError
        No part of that project has an area.

    Notes
    -----
    Valid for parts that do not overlap.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(area_in_all("Vest", ["Vest", "Hat", "Vest"], Quantity([0.5, 0.1, 0.25], "m^2")))
    0.75 meter ** 2
    """
    together = sum_where(project, projects, areas)
    require(ABOVE_ZERO.hold(together), "A project has no parts yet: give at least one its size.")
    return together


def _square_meters(shape, width, height, second) -> float:
    match str(shape).casefold():
        case "rectangle":
            return width * _needed(height, "height")
        case "triangle":
            return width * _needed(height, "height") / 2
        case "trapezoid":
            return (width + _needed(second, "second side")) / 2 * _needed(height, "height")
        case "circle":
            return np.pi * width**2 / 4
        case "ring":
            inner = _needed(second, "inner diameter")
            require(inner < width, "The inner diameter of a ring must be below the outer one.")
            return np.pi * (width**2 - inner**2) / 4
    raise ValueError(f'"{shape}" is not a known shape: choose one of {", ".join(SHAPES)}.')


def _needed(size, name) -> float:
    require_within(ABOVE_ZERO, f"This shape needs a {name} above zero: give it.", size)
    return size


@calculation
def swatch_area(width: Length, height: Length) -> Area:
    """Area of a swatch.

    a = w · h. Measure inside the edges, where the stitches lie undisturbed.

    Parameters
    ----------
    width : w, width of the swatch
    height : h, its height

    Returns
    -------
    a, an area

    Raises
    ------
    ValueError
        A width or a height that is not above zero.

    Notes
    -----
    Valid for a rectangular swatch, washed and dry; weigh only what was measured.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(swatch_area(Quantity(10, "cm"), Quantity(12, "cm")))
    120 centimeter ** 2
    """
    require_within(ABOVE_ZERO, "The swatch must have a width and a height.", width, height)
    return width * height


@calculation
def from_swatch(area: Area, swatch_area: Area, swatch_mass: Mass, grist: Grist) -> Length:
    """Length of yarn for a piece, from a swatch.

    L = A / a · m · g. The piece takes as many swatches as fit into its area.

    Parameters
    ----------
    area : A, area of the piece
    swatch_area : a, area of the swatch, washed and dry
    swatch_mass : m, its mass
    grist : g, grist of its yarn

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A negative area of the piece, or another figure that is not above zero.

    Notes
    -----
    Valid for the stitch, the needles and the yarn of the swatch; add a reserve.

    References
    ----------
    Definition of the proportion. A reserve of 10 to 15 percent: common practice, no source.

    Examples
    --------
    >>> print(from_swatch(Quantity(1, "m^2"), Quantity(0.02, "m^2"), Quantity(5, "g"), Quantity(4, "m/g")))
    1000.0 meter
    """
    _require_area(area)
    require_within(ABOVE_ZERO, "The swatch must have an area.", swatch_area)
    require_within(ABOVE_ZERO, "The swatch must weigh something.", swatch_mass)
    require_within(ABOVE_ZERO, "The grist", grist)
    return (area / swatch_area * swatch_mass * grist).to("meter")


@calculation
def from_piece(mass: Mass, grist: Grist) -> Length:
    """Length of yarn in an existing piece.

    L = m · g. Weigh a piece similar to the one wanted.

    Parameters
    ----------
    mass : m, mass of the piece, without buttons and lining
    grist : g, grist of its yarn

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A mass or a grist that is not above zero.

    Notes
    -----
    Valid for a piece in one yarn, of the size, stitch and thickness wanted.

    References
    ----------
    Definition of the grist.

    Examples
    --------
    >>> print(from_piece(Quantity(250, "g"), Quantity(4, "m/g")))
    1000 meter
    """
    require_within(ABOVE_ZERO, "The piece must weigh something.", mass)
    require_within(ABOVE_ZERO, "The grist", grist)
    return (mass * grist).to("meter")


@calculation
def from_gauge(area: Area, stitch_density: PerArea, stitch_length: Length) -> Length:
    """Length of yarn for a piece, from its gauge.

    L = A · S · ℓ. The number of stitches, times the yarn in each.

    Parameters
    ----------
    area : A, area of the piece
    stitch_density : S, stitches in an area
    stitch_length : ℓ, yarn in one stitch

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A negative area, or a stitch density or stitch length that is not above zero.

    Notes
    -----
    Valid for one stitch pattern throughout; seams and ends are extra.

    References
    ----------
    Definition of the stitch density and of the stitch length.

    Examples
    --------
    >>> print(from_gauge(Quantity(1.25, "m^2"), Quantity(40000, "1/m^2"), Quantity(0.02, "m")))
    1000.0 meter
    """
    _require_area(area)
    require_stitch_density(stitch_density)
    require_stitch_length(stitch_length)
    return (area * stitch_density * stitch_length).to("meter")


def _require_area(area: Area) -> None:
    require_within(NOT_NEGATIVE, "The area of the piece", area)
