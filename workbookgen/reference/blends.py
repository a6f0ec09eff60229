"""Blends: what a mixture of fibers costs, how fine it is, and what it takes up of the air's moisture.

Shares are by weight. Fine fibers count for more than their weight where it is fibers that are
counted: a gram of a fine one is more of them.
"""

import numpy as np

from workbookgen.reference.law import by_element, law, require, require_numbers
from workbookgen.texts import is_blank
from workbookgen.units import Area, Density, Length, LinearDensity, Mass, PerMass, Quantity, Ratio

NO_LENGTH = Quantity(0.0, "m")
NO_MASS = Quantity(0.0, "g")
NO_LINEAR_DENSITY = Quantity(0.0, "tex")
WOOL = Quantity(1.31, "g/cm^3")  # Morton and Hearle, Physical Properties of Textile Fibres, Table 5.1 (read)


@law
def weighed(mass: Mass, name: str) -> Mass:
    """Mass of a fiber that a blend counts.

    m = m. A line without a name is not finished, and is no part of the blend.

    Parameters
    ----------
    mass : m, mass of the fiber
    name : what it is called

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A mass that is not above zero, or a blank name.

    Notes
    -----
    Valid for fibers weighed in the same air.

    References
    ----------
    Definition of a list.
    """
    require(mass > NO_MASS, "A fiber in a blend weighs something.")
    require(by_element(lambda each: not is_blank(str(each)), name), "The name is blank: give one.")
    return mass


@law
def share_of_blend(mass: Mass, total: Mass) -> Ratio:
    """Share of a fiber in a blend.

    x = m / M. The shares add up to 1.

    Parameters
    ----------
    mass : m, mass of the fiber
    total : M, mass of all fibers

    Returns
    -------
    x, a share by mass

    Raises
    ------
    ValueError
        A mass that is not above zero, or a fiber that weighs more than the whole.

    Notes
    -----
    Valid for fibers weighed in the same air.

    References
    ----------
    Definition of a share.
    """
    require((mass > NO_MASS) & (total > NO_MASS), "A fiber in a blend weighs something.")
    require(mass <= total * (1 + 1e-9), "A fiber cannot weigh more than the blend.")
    return (mass / total).m_as("")


@law
def to_lay_out(share: Ratio, wanted: Mass) -> Mass:
    """Mass of a fiber for a wanted mass of the blend.

    m = x · M. For a batt, or for a whole lot.

    Parameters
    ----------
    share : x, share of the fiber by mass
    wanted : M, mass of blend wanted

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A share outside 0 to 1, or a negative mass.

    Notes
    -----
    Valid for fibers weighed in the same air.

    References
    ----------
    Definition of a share.
    """
    require((share >= 0) & (share <= 1 + 1e-9), "A share lies between 0 and 1.")
    require(wanted >= NO_MASS, "A mass cannot be negative.")
    return share * wanted


@law
def cost_of(mass: Mass, price: PerMass) -> Ratio:
    """What a fiber in a blend costs.

    k = m · p. Money is a plain number here.

    Parameters
    ----------
    mass : m, mass of the fiber
    price : p, money for a mass of it

    Returns
    -------
    k, an amount of money

    Raises
    ------
    ValueError
        A negative mass or price.

    Notes
    -----
    Valid for prices of fiber as it is weighed.

    References
    ----------
    Definition of a price.
    """
    require(mass >= NO_MASS, "A mass cannot be negative.")
    require(price >= Quantity(0.0, "1/g"), "A price cannot be negative.")
    return (mass * price).m_as("")


@law
def blend_price(cost: Ratio, total: Mass, known: Ratio = 1, of: Ratio = 1) -> PerMass:
    """Price of a blend.

    p = Σ k / M, which is Σ x · p. The dear fiber by its share.

    Parameters
    ----------
    cost : Σ k, what all fibers cost
    total : M, their mass
    known : fibers of which this is known
    of : fibers in the blend

    Returns
    -------
    p, money for a mass

    Raises
    ------
    ValueError
        A negative cost, or a mass that is not above zero, or a fiber of which it is not known.

    Notes
    -----
    Valid for a blend of whose every fiber the price is known.

    References
    ----------
    Definition of the mean.
    """
    _require_all_known(known, of)
    require(cost >= 0, "A cost cannot be negative.")
    require(total > NO_MASS, "A blend weighs something.")
    return cost / total


@law
def fineness(own: LinearDensity | None = None, fiber_diameter: Length | None = None, fiber_density: Density | None = None) -> LinearDensity:
    """Linear density of a fiber in a blend.

    t = as told, or else π / 4 · d² · ρ. Mills tell the first, breeders the second.

    Parameters
    ----------
    own : linear density as told
    fiber_diameter : d, diameter of the fiber
    fiber_density : ρ, density of its substance; wool's where it is not told

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
    """
    if own is not None:
        require(own > NO_LINEAR_DENSITY, "The linear density must be above zero.")
        return own
    require(fiber_diameter is not None, "Give the diameter of the fiber, or its linear density.")
    density = WOOL if fiber_density is None else fiber_density
    require((fiber_diameter > NO_LENGTH) & (density > Quantity(0.0, "g/m^3")), "Diameter and density must be above zero.")
    return (np.pi / 4 * fiber_diameter**2 * density).to("tex")


@law
def thickness(linear_density: LinearDensity, fiber_diameter: Length | None = None, fiber_density: Density | None = None) -> Length:
    """Diameter of a fiber in a blend.

    d = as told, or else √(4 · t / (π · ρ)). So that diameters can be averaged where one was told in dtex.

    Parameters
    ----------
    linear_density : t, linear density of the fiber
    fiber_diameter : d, as told
    fiber_density : ρ, density of its substance; wool's where it is not told

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
    """
    require(linear_density > NO_LINEAR_DENSITY, "The linear density must be above zero.")
    density = WOOL if fiber_density is None else fiber_density
    require(density > Quantity(0.0, "g/m^3"), "The density must be above zero.")
    found = np.sqrt(4 * linear_density / (np.pi * density)).to("µm") if fiber_diameter is None else fiber_diameter
    require(found > NO_LENGTH, "The diameter must be above zero.")
    return found


@law
def fiber_length(mass: Mass, linear_density: LinearDensity) -> Length:
    """Length of all fibers of a kind, laid end to end.

    ℓ = m / t. It says how many there are, where all are cut alike.

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
    """
    require(mass >= NO_MASS, "A mass cannot be negative.")
    require(linear_density > NO_LINEAR_DENSITY, "The linear density must be above zero.")
    return (mass / linear_density).to("m")


@law
def fiber_side(length: Length, fiber_diameter: Length) -> Area:
    """Length of fiber times its diameter.

    a = ℓ · d. Summed up, it gives the mean diameter.

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
    """
    require(length >= NO_LENGTH, "A length cannot be negative.")
    require(fiber_diameter > NO_LENGTH, "The diameter must be above zero.")
    return length * fiber_diameter


@law
def mean_fineness(total: Mass, length: Length, known: Ratio = 1, of: Ratio = 1) -> LinearDensity:
    """Linear density of the average fiber of a blend.

    t = M / Σ ℓ, which is 1/t = Σ x / t. The finer fiber counts for more.

    Parameters
    ----------
    total : M, mass of all fibers
    length : Σ ℓ, length of all fibers
    known : fibers of which this is known
    of : fibers in the blend

    Returns
    -------
    t, a linear density

    Raises
    ------
    ValueError
        A mass or a length that is not above zero, or a fiber of which it is not known.

    Notes
    -----
    Valid for a blend of whose every fiber the fineness is known.

    References
    ----------
    A public examination item on blends, reproduced in the tests (read).
    """
    _require_all_known(known, of)
    require((total > NO_MASS) & (length > NO_LENGTH), "A blend weighs something, and has fibers.")
    return (total / length).to("tex")


@law
def mean_diameter(side: Area, length: Length, known: Ratio = 1, of: Ratio = 1) -> Length:
    """Mean diameter of the fibers of a blend, by number.

    d = Σ (ℓ · d) / Σ ℓ. Fibers of a kind are as many as x / (ρ · d²).

    Parameters
    ----------
    side : Σ (ℓ · d), lengths times diameters
    length : Σ ℓ, length of all fibers
    known : fibers of which this is known
    of : fibers in the blend

    Returns
    -------
    d, a length

    Raises
    ------
    ValueError
        An area or a length that is not above zero, or a fiber of which it is not known.

    Notes
    -----
    Valid for fibers cut alike.

    References
    ----------
    Definition of a weighted mean.
    """
    _require_all_known(known, of)
    require((side > Quantity(0.0, "m^2")) & (length > NO_LENGTH), "A blend has fibers of some diameter.")
    return (side / length).to("µm")


@law
def dry_at_regain(mass: Mass, regain: Ratio) -> Mass:
    """Dry mass of a fiber that was weighed at its regain.

    D = m / (1 + R). The rest is water.

    Parameters
    ----------
    mass : m, mass as weighed
    regain : R, water over dry mass

    Returns
    -------
    D, a mass

    Raises
    ------
    ValueError
        A negative mass or regain.

    Notes
    -----
    Valid for fiber that has lain in the air to which its regain belongs.

    References
    ----------
    Definition of the regain.
    """
    require(mass >= NO_MASS, "A mass cannot be negative.")
    require(regain >= 0, "The regain cannot be negative.")
    return mass / (1 + regain)


@law
def blend_regain(total: Mass, dry: Mass, known: Ratio = 1, of: Ratio = 1) -> Ratio:
    """Regain of a blend.

    R = M / Σ D - 1, which is Σ x · R by shares of the dry mass. All its water over all its dry fiber.

    Parameters
    ----------
    total : M, mass of all fibers as weighed
    dry : Σ D, their dry mass
    known : fibers of which this is known
    of : fibers in the blend

    Returns
    -------
    R, a share of the dry mass

    Raises
    ------
    ValueError
        A dry mass that is not above zero, or more than the whole, or a fiber of which it is not known.

    Notes
    -----
    Valid for a blend of whose every fiber the regain is known.

    References
    ----------
    A public examination item on blends, reproduced in the tests (read).
    """
    _require_all_known(known, of)
    require_numbers(total, dry)
    require((dry > NO_MASS) & (dry <= total * (1 + 1e-9)), "Dry fiber weighs something, and no more than the whole.")
    return (total / dry).m_as("") - 1


def _require_all_known(known, of) -> None:
    require((known >= 1) & (known == of), "A mean is told where it is known of every fiber.")
