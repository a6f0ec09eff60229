"""How fine a blend is: a gram of a fine fiber holds more fibers, so fine ones count for more than their weight."""

import numpy as np

from workbookgen.reference.blends.shares import require_all_known
from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.units import Area, Density, Length, LinearDensity, Mass, Quantity, Ratio

WOOL = Quantity(1.31, "g/cm^3")  # Morton and Hearle, Physical Properties of Textile Fibres, Table 5.1 (read)


@calculation
def fineness(
    own: LinearDensity | None = None, fiber_diameter: Length | None = None, fiber_density: Density | None = None
) -> LinearDensity:
    """Linear density of a fiber in a blend.

    t = as stated, or else π / 4 · d² · ρ. Mills state the first, breeders the second.

    Parameters
    ----------
    own : linear density as stated
    fiber_diameter : d, diameter of the fiber
    fiber_density : ρ, density of its substance; that of wool where none is given

    Returns
    -------
    t, a linear density

    Raises
    ------
    ValueError
        Neither is known, or one that is not above zero.

    Notes
    -----
    Valid for round and solid fibers.

    References
    ----------
    Geometry. Density of wool: Morton and Hearle, Table 5.1 (read).

    Examples
    --------
    >>> print(round(fineness(fiber_diameter=Quantity(20, "µm")).to("decitex"), 2))
    4.12 decitex
    """
    if own is not None:
        require_within(ABOVE_ZERO, "The linear density", own)
        return own
    require(fiber_diameter is not None, "Give the diameter of the fiber, or its linear density.")
    density = WOOL if fiber_density is None else fiber_density
    require_within(ABOVE_ZERO, "Diameter and density", fiber_diameter, density)
    return (np.pi / 4 * fiber_diameter**2 * density).to("tex")


@calculation
def thickness(
    linear_density: LinearDensity, fiber_diameter: Length | None = None, fiber_density: Density | None = None
) -> Length:
    """Diameter of a fiber in a blend.

    d = as stated, or else √(4 · t / (π · ρ)). So diameters can be averaged even where one fiber is stated in dtex.

    Parameters
    ----------
    linear_density : t, linear density of the fiber
    fiber_diameter : d, as stated
    fiber_density : ρ, density of its substance; that of wool where none is given

    Returns
    -------
    d, a length

    Raises
    ------
    ValueError
        A diameter, a linear density or a density that is not above zero.

    Notes
    -----
    Valid for round and solid fibers.

    References
    ----------
    Geometry. Density of wool: Morton and Hearle, Table 5.1 (read).

    Examples
    --------
    >>> print(round(thickness(Quantity(4.12, "decitex")), 1))
    20.0 micrometer
    """
    require_within(ABOVE_ZERO, "The linear density", linear_density)
    density = WOOL if fiber_density is None else fiber_density
    require_within(ABOVE_ZERO, "The density", density)
    found = np.sqrt(4 * linear_density / (np.pi * density)).to("µm") if fiber_diameter is None else fiber_diameter
    require_within(ABOVE_ZERO, "The diameter", found)
    return found


@calculation
def fiber_length(mass: Mass, linear_density: LinearDensity) -> Length:
    """Length of all fibers of a kind, laid end to end.

    ℓ = m / t. It is a measure of their number, where all are cut alike.

    Parameters
    ----------
    mass : m, mass of the fiber
    linear_density : t, its linear density

    Returns
    -------
    ℓ, a length

    Raises
    ------
    ValueError
        A negative mass, or a linear density that is not above zero.

    Notes
    -----
    Valid for any fiber.

    References
    ----------
    Definition of the linear density.

    Examples
    --------
    >>> print(fiber_length(Quantity(1, "g"), Quantity(4, "decitex")))
    2500.0 meter
    """
    require_within(NOT_NEGATIVE, "A mass", mass)
    require_within(ABOVE_ZERO, "The linear density", linear_density)
    return (mass / linear_density).to("m")


@calculation
def fiber_side(length: Length, fiber_diameter: Length) -> Area:
    """Length of fiber times its diameter.

    a = ℓ · d. The mean diameter follows from its sum.

    Parameters
    ----------
    length : ℓ, length of all fibers of a kind
    fiber_diameter : d, their diameter

    Returns
    -------
    a, an area

    Raises
    ------
    ValueError
        A negative length, or a diameter that is not above zero.

    Notes
    -----
    Valid for any fiber.

    References
    ----------
    Definition of a weighted mean.

    Examples
    --------
    >>> print(round(fiber_side(Quantity(2500, "m"), Quantity(20, "µm")).to("m^2"), 6))
    0.05 meter ** 2
    """
    require_within(NOT_NEGATIVE, "A length", length)
    require_within(ABOVE_ZERO, "The diameter", fiber_diameter)
    return length * fiber_diameter


@calculation
def mean_fineness(total: Mass, length: Length, known: Ratio = 1, of: Ratio = 1) -> LinearDensity:
    """Linear density of the average fiber of a blend.

    t = M / Σ ℓ, which is 1/t = Σ x / t. Finer fibers count for more.

    Parameters
    ----------
    total : M, mass of all fibers
    length : Σ ℓ, length of all fibers
    known : number of fibers for which this is known
    of : number of fibers in the blend

    Returns
    -------
    t, a linear density

    Raises
    ------
    ValueError
        A mass or a length that is not above zero, or a fiber for which it is not known.

    Notes
    -----
    Valid for a blend in which the fineness of every fiber is known.

    References
    ----------
    A public examination item on blends, reproduced in the tests (read).

    Examples
    --------
    >>> print(mean_fineness(Quantity(3, "g"), Quantity(6000, "m"), known=2, of=2).to("decitex"))
    5.0 decitex
    """
    require_all_known(known, of)
    require_within(ABOVE_ZERO, "A blend must have a mass and fibers.", total, length)
    return (total / length).to("tex")


@calculation
def mean_diameter(side: Area, length: Length, known: Ratio = 1, of: Ratio = 1) -> Length:
    """Mean diameter of the fibers of a blend, by number.

    d = Σ (ℓ · d) / Σ ℓ. The number of fibers of a kind goes with x / (ρ · d²).

    Parameters
    ----------
    side : Σ (ℓ · d), lengths times diameters
    length : Σ ℓ, length of all fibers
    known : number of fibers for which this is known
    of : number of fibers in the blend

    Returns
    -------
    d, a length

    Raises
    ------
    ValueError
        An area or a length that is not above zero, or a fiber for which it is not known.

    Notes
    -----
    Valid for fibers cut alike.

    References
    ----------
    Definition of a weighted mean.

    Examples
    --------
    >>> print(mean_diameter(Quantity(0.11, "m^2"), Quantity(5000, "m"), known=2, of=2))
    22.0 micrometer
    """
    require_all_known(known, of)
    require_within(ABOVE_ZERO, "The fibers of a blend must have a length and a diameter.", side, length)
    return (side / length).to("µm")
