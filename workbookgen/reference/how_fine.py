"""The finest yarn that a fiber can make, and the turns that its staple needs.

A yarn holds if enough fibers lie in its cross section, and each winds around it a few times. The first depends
on how thick the fibers are, the second on how long.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require
from workbookgen.reference.diameter.thickness import fiber_linear_density
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.units import Density, Length, LinearDensity, PerLength, Ratio


@calculation
def own_or_published(own: Length | None = None, published: Length | None = None) -> Length:
    """Diameter or staple of the fiber to use.

    x = your own, or else the published one. Measuring the fleece beats knowing its breed.

    Parameters
    ----------
    own : what was measured on your own fiber
    published : what the guide says of its kind

    Returns
    -------
    x, a length

    Raises
    ------
    ValueError
        Neither is known, or a length that is not above zero.

    Notes
    -----
    Valid for two figures of the same kind of fiber; fleeces of one breed differ by a third and more.

    References
    ----------
    Definition of a preference; the guide names its sources.

    Examples
    --------
    >>> print(own_or_published(own=Quantity(24, "µm"), published=Quantity(22, "µm")))
    24 micrometer
    """
    known = published if own is None else own
    require(known is not None, "Measure the fiber, or choose a breed of the guide that has the figure.")
    require_within(ABOVE_ZERO, "A fiber has a length and a diameter above zero.", known)
    return known


@calculation
def finest_yarn(fibers: Ratio, fiber_diameter: Length, fiber_density: Density) -> LinearDensity:
    """The finest yarn that a fiber can make.

    T = n · π / 4 · d² · ρ. That many fibers side by side, and no fewer.

    Parameters
    ----------
    fibers : n, least number of fibers in the cross section
    fiber_diameter : d, mean diameter of the fiber
    fiber_density : ρ, its density

    Returns
    -------
    T, linear density of a single

    Raises
    ------
    ValueError
        A number, a diameter or a density that is not above zero.

    Notes
    -----
    Valid for round fibers that lie along the yarn. About 30 to 60 by hand; mills spin worsted of 35 to 40, combed
    cotton of 33, carded cotton of 75.

    References
    ----------
    Geometry. By hand: common practice, no source. Worsted: handbooks (from memory). Cotton: a handbook of
    short-staple spinning (read).

    Examples
    --------
    >>> print(round(finest_yarn(40, Quantity(20, "µm"), Quantity(1.31, "g/cm^3")), 1))
    16.5 tex
    """
    require_within(ABOVE_ZERO, "The number of fibers", fibers)
    return fibers * fiber_linear_density(fiber_diameter, fiber_density)


@calculation
def turns_round(twist: PerLength, staple: Length) -> Ratio:
    """Times that a fiber winds around the yarn.

    q = T · s. The turns in one staple length.

    Parameters
    ----------
    twist : T, twist of the yarn
    staple : s, length of the fibers

    Returns
    -------
    q, a number

    Raises
    ------
    ValueError
        A negative twist, or a staple that is not above zero.

    Notes
    -----
    Valid for fibers that lie straight; 3 to 5 hold a soft yarn, a warp needs more.

    References
    ----------
    Definition of the twist. How many it takes: common practice, no source.

    Examples
    --------
    >>> print(turns_round(Quantity(2, "1/inch"), Quantity(2, "inch")))
    4
    """
    require_within(NOT_NEGATIVE, "The twist", twist)
    require_within(ABOVE_ZERO, "The staple must have a length.", staple)
    return (twist * staple).m_as("")


@calculation
def fit_words(in_section: Ratio, fibers: Ratio) -> str:
    """Whether a fiber can make as fine a yarn as wanted, in words.

    fine enough if the fibers in it ≥ n. With fewer, the yarn thins out and breaks.

    Parameters
    ----------
    in_section : fibers in the cross section of the yarn wanted
    fibers : n, least number of them

    Returns
    -------
    a text such as "62 fibers: enough, in practiced hands"

    Raises
    ------
    ValueError
        A number of fibers that is not above zero, or is a million or more.

    Notes
    -----
    Valid for a first estimate: a sample says more. The two are compared to six decimals.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(fit_words(62, 40))
    62 fibers: enough, in practiced hands
    """
    require((in_section > 0) & (in_section < 999_999), "The fibers in the yarn are above nothing and under a million.")
    require_within(ABOVE_ZERO, "The number of fibers", fibers)
    return by_element(_fit, in_section, fibers)


def _fit(within: float, least: float) -> str:
    enough = round(float(within) / float(least), 6) >= 1
    # As a person counts them: no more than there are.
    count = int(np.floor(round(float(within), 6)))
    return f"{count} fibers: enough, in practiced hands" if enough else f"{count} fibers: too few to hold"
