"""Diameter of a yarn, the fiber that fills it, and the number of fibers in its cross section."""

import numpy as np

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, SOME_PART, require_within
from workbookgen.units import Density, Length, LinearDensity, Quantity, Ratio


@calculation
def yarn_diameter(linear_density: LinearDensity, fiber_density: Density, packing: Ratio) -> Length:
    """Diameter of a yarn.

    d = √(4 · T / (π · ρ · φ)). A round thread of that mass, part fiber and part air.

    Parameters
    ----------
    linear_density : T, linear density of the yarn
    fiber_density : ρ, density of the fiber itself
    packing : φ, share of the cross section that is fiber, above 0 to 1

    Returns
    -------
    d, a length

    Raises
    ------
    ValueError
        A linear density or a density that is not above zero, or a packing that is not above 0 and up to 1.

    Notes
    -----
    Valid for a round yarn that nothing presses; φ is about 0.35 lofty to 0.65 hard twisted.

    References
    ----------
    Geometry. With ρ · φ = 909 kg/m³ it is Peirce's cotton rule, d = 1 in / (28 · √Ne) (read).
    Densities of fibers: Morton and Hearle, table 5.1 (read).

    Examples
    --------
    >>> # 28 · √25
    >>> print(round((1 / yarn_diameter(1 / Quantity(25, "number_english"), Quantity(909, "kg/m^3"),
    ...     packing=1)).to("1/inch")))
    140 / inch
    """
    require_within(ABOVE_ZERO, "The linear density", linear_density)
    require_within(ABOVE_ZERO, "The density of the fiber", fiber_density)
    require_within(SOME_PART, "The packing", packing)
    return np.sqrt(4 * linear_density / (np.pi * fiber_density * packing)).to("millimeter")


@calculation
def diameter_in_use(measured: Length | None = None, expected: Length | None = None) -> Length:
    """Diameter of a yarn to use.

    d = measured, or else expected. Measuring the yarn beats a rule.

    Parameters
    ----------
    measured : diameter as measured
    expected : diameter by the grist

    Returns
    -------
    d, a length

    Raises
    ------
    ValueError
        Neither is known, or a diameter that is not above zero.

    Notes
    -----
    Valid for a yarn measured under no more pressure than in the ply.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(diameter_in_use(measured=Quantity(0.9, "mm"), expected=Quantity(0.8, "mm")))
    0.9 millimeter
    """
    across = expected if measured is None else measured
    require(across is not None, "Measure the yarn, or give its grist.")
    require_within(ABOVE_ZERO, "The diameter", across)
    return across


@calculation
def packing(k: Ratio, fiber_density: Density) -> Ratio:
    """Share of a yarn's cross section that is fiber, from the threads that lie side by side.

    φ = 4 · T · D² / (π · ρ), D = K · √g. K and packing are one fact in two forms: a yarn 1 / D across holds this much
    fiber, whatever its grist.

    Parameters
    ----------
    k : K, as in the rule for threads side by side
    fiber_density : ρ, density of the fiber itself

    Returns
    -------
    φ, a share

    Raises
    ------
    ValueError
        A K or a density that is not above zero, or a K at which more than the whole section would be fiber.

    Notes
    -----
    Valid for round yarns. For wool, K 0.9 means 0.61 fiber; K 0.35, wrapped by hand, means 0.09: the rest is air
    within the yarn and between the wraps.

    References
    ----------
    Geometry; Ashenhurst's rule, quoted in a study of weaving (read).

    Examples
    --------
    >>> print(round(packing(0.9, Quantity(1.31, "g/cm^3")), 2))
    0.61
    """
    require_within(ABOVE_ZERO, "The factor K", k)
    require_within(ABOVE_ZERO, "The density of the fiber", fiber_density)
    share = (4 * Quantity(k * k, "1/inch^2 * pound/yard") / (np.pi * fiber_density)).m_as("")
    require(share <= 1, "That many threads would be more than solid fiber: K is too large for this density.")
    return share


@calculation
def fiber_linear_density(fiber_diameter: Length, fiber_density: Density) -> LinearDensity:
    """Linear density of a single fiber.

    t = π / 4 · d² · ρ. The mass of a round and solid rod.

    Parameters
    ----------
    fiber_diameter : d, mean diameter of the fiber
    fiber_density : ρ, its density

    Returns
    -------
    t, a mass per length

    Raises
    ------
    ValueError
        A diameter or a density that is not above zero.

    Notes
    -----
    Valid for round, solid fibers; the spread of diameters makes the true mean a little higher.

    References
    ----------
    Geometry. Densities of fibers: Morton and Hearle, table 5.1 (read).

    Examples
    --------
    >>> print(round(fiber_linear_density(Quantity(20, "µm"), Quantity(1.31, "g/cm^3")).to("decitex"), 2))
    4.12 decitex
    """
    require_within(ABOVE_ZERO, "The diameter of the fiber", fiber_diameter)
    require_within(ABOVE_ZERO, "The density of the fiber", fiber_density)
    return (np.pi / 4 * fiber_diameter**2 * fiber_density).to("tex")


@calculation
def fibers_in_section(linear_density: LinearDensity, fiber_diameter: Length, fiber_density: Density) -> Ratio:
    """Number of fibers in the cross section of a yarn.

    n = T / t. With too few of them a yarn drifts apart, however well it is twisted.

    Parameters
    ----------
    linear_density : T, linear density of the yarn
    fiber_diameter : d, mean diameter of the fiber, which gives t
    fiber_density : ρ, its density

    Returns
    -------
    n, a mean number

    Raises
    ------
    ValueError
        A linear density, a diameter or a density that is not above zero.

    Notes
    -----
    Valid for round fibers that lie along the yarn.

    References
    ----------
    Definition of the mean number of fibers; geometry.

    Examples
    --------
    >>> print(round(fibers_in_section(Quantity(41.2, "tex"), Quantity(20, "µm"), Quantity(1.31, "g/cm^3"))))
    100
    """
    require_within(ABOVE_ZERO, "The linear density", linear_density)
    return (linear_density / fiber_linear_density(fiber_diameter, fiber_density)).m_as("")
