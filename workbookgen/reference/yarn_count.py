"""How fine a yarn is: grist, linear density, and the counts of the trade.

All of them state one relation, length to mass, in two ways. An indirect count is a
length per mass (the higher, the finer), so it is a grist in its own unit; a direct one is
a mass per length (the higher, the coarser). Grist is the common measure: every count is converted to it, and pint
converts it to every other.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.units import Grist, Length, LinearDensity, Mass, Quantity, Ratio, ureg

# What the spinner chooses from, and its unit; a hectogram is 100 g.
SYSTEMS = {
    "yards per pound": "yard / pound",
    "meters per 100 grams": "meter / hectogram",
    "tex": "tex",
    "dtex": "decitex",
    "denier": "denier",
    "metric count": "number_meter",
    "cotton count": "number_english",
    "worsted count": "worsted_count",
    "woolen run": "woollen_run",
    "woolen cut": "woollen_cut",
    "linen lea": "linen_lea",
    "Yorkshire skein": "yorkshire_skein",
    "Galashiels cut": "galashiels_cut",
    "Alloa": "alloa_count",
    "West of England": "west_of_england_count",
    "French cotton": "french_cotton_count",
    "jute count": "jute",
}


@calculation
def grist(length: Length, mass: Mass) -> Grist:
    """Grist of a yarn.

    g = L / m. The length in a given mass of yarn, as handspinners state fineness.

    Parameters
    ----------
    length : L, length of the yarn
    mass : m, its mass

    Returns
    -------
    g, a length per mass

    Raises
    ------
    ValueError
        A length or a mass that is not above zero.

    Notes
    -----
    Valid for length and mass of the same yarn in the same state of moisture.

    References
    ----------
    Definition of the indirect yarn number, ASTM D861 (from memory).

    Examples
    --------
    >>> print(grist(Quantity(200, "yd"), Quantity(4, "oz")).to("yd/lb"))
    800.0 yard / pound
    """
    _require_yarn(length, mass)
    return length / mass


@calculation
def linear_density(length: Length, mass: Mass) -> LinearDensity:
    """Linear density of a yarn.

    T = m / L. The mass of a given length of yarn, as the standards state fineness.

    Parameters
    ----------
    length : L, length of the yarn
    mass : m, its mass

    Returns
    -------
    T, a mass per length

    Raises
    ------
    ValueError
        A length or a mass that is not above zero.

    Notes
    -----
    Valid for length and mass of the same yarn in the same state of moisture.

    References
    ----------
    Skein method of ISO 2060 and ASTM D1907 (from memory).

    Examples
    --------
    >>> print(linear_density(Quantity(1000, "m"), Quantity(100, "g")).to("tex"))
    100.0 tex
    """
    _require_yarn(length, mass)
    return mass / length


def _require_yarn(length: Length, mass: Mass) -> None:
    require_within(ABOVE_ZERO, "The length of the yarn", length)
    require_within(ABOVE_ZERO, "The mass of the yarn", mass)


@calculation
def indirect_count(grist: Grist) -> Grist:
    """Indirect count of a yarn: cotton, worsted, run, lea, metric and the like.

    N = g. An indirect count is the grist itself, in hanks per pound or per kilogram.

    Parameters
    ----------
    grist : g, grist of the yarn

    Returns
    -------
    N, a length per mass, to be read in the unit of the count

    Raises
    ------
    ValueError
        A grist that is not above zero.

    Notes
    -----
    Valid for any yarn; a count belongs to the state of moisture in which it was weighed.

    References
    ----------
    Lengths of the hanks: ASTM D2260 and W. Davis, Hosiery Manufacture (read).

    Examples
    --------
    >>> print(indirect_count(Quantity(1680, "yd/lb")).to("worsted_count"))
    3.0 worsted_count
    """
    require_within(ABOVE_ZERO, "The grist", grist)
    return grist


@calculation
def direct_count(grist: Grist) -> LinearDensity:
    """Direct count of a yarn: tex, decitex, denier, jute.

    T = 1 / g. A direct count weighs a set length, so it is the inverse of the grist.

    Parameters
    ----------
    grist : g, grist of the yarn

    Returns
    -------
    T, a mass per length, to be read in the unit of the count

    Raises
    ------
    ValueError
        A grist that is not above zero.

    Notes
    -----
    Valid for any yarn; a count belongs to the state of moisture in which it was weighed.

    References
    ----------
    ISO 1144, ASTM D861 (from memory): tex is grams in 1,000 m, denier grams in 9,000 m.

    Examples
    --------
    >>> print(direct_count(Quantity(10, "m/g")).to("tex"))
    100.0 tex
    """
    require_within(ABOVE_ZERO, "The grist", grist)
    return 1 / grist


@calculation
def grist_of_density(linear_density: LinearDensity) -> Grist:
    """Grist of a yarn of known linear density.

    g = 1 / Tt. Length per mass is the inverse of mass per length.

    Parameters
    ----------
    linear_density : Tt, mass in a length

    Returns
    -------
    g, length in a mass

    Raises
    ------
    ValueError
        A linear density that is not above zero.

    Notes
    -----
    Valid for any yarn in the same state of moisture.

    References
    ----------
    ISO 1144, ASTM D861 (from memory).

    Examples
    --------
    >>> print(grist_of_density(Quantity(100, "tex")).to("m/g"))
    10.0 meter / gram
    """
    require_within(ABOVE_ZERO, "The linear density", linear_density)
    return 1 / linear_density


@calculation
def grist_in_use(wanted: Grist | None = None, from_wraps: Grist | None = None) -> Grist:
    """Grist to make.

    g = wanted, or else from the wraps. A stated grist beats an estimated one.

    Parameters
    ----------
    wanted : grist that is asked for
    from_wraps : grist to expect from the wanted wraps

    Returns
    -------
    g, length in a mass

    Raises
    ------
    ValueError
        Neither is known, or the grist in use is not above zero.

    Notes
    -----
    Valid for a yarn that wraps like the one that K was fitted to.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(grist_in_use(wanted=Quantity(900, "yd/lb"), from_wraps=Quantity(950, "yd/lb")))
    900 yard / pound
    """
    grist = from_wraps if wanted is None else wanted
    require(grist is not None, "Give the grist, or the wraps.")
    require_within(ABOVE_ZERO, "The grist", grist)
    return grist


@calculation
def grist_of(number: Ratio, system: str) -> Grist:
    """Grist of a yarn whose count is known.

    g = N · u in an indirect system, 1 / (N · u) in a direct one. It brings yarns numbered in different systems to one
    measure.

    Parameters
    ----------
    number : N, the count
    system : the system of u, such as worsted count; case does not matter

    Returns
    -------
    g, a length per mass

    Raises
    ------
    ValueError
        A count that is not above zero, or a system that is not known.

    Notes
    -----
    Valid for the resultant count of the yarn itself, not for that of its strands.

    References
    ----------
    Lengths of the hanks: ASTM D2260, W. Davis, Hosiery Manufacture, and C. P. Brooks,
    Cotton Manufacturing (read); 320 yd for West of England, a public article (read);
    tex and denier, ISO 1144 (from memory).

    Examples
    --------
    >>> print(grist_of(3, "worsted count"))
    1680.0 yard / pound
    """
    require_within(ABOVE_ZERO, "The count", number)
    if np.ndim(system) == 0:
        one, power = _of_number_one(system)
    else:
        ones_and_powers = [_of_number_one(name) for name in np.ravel(system)]
        one, power = np.array(ones_and_powers).T.reshape(2, *np.shape(system))
    return Quantity(one * number**power, "yard/pound")


def _of_number_one(system) -> tuple[float, float]:
    """Grist of number one in yards per pound, and the power of the number in the grist."""
    units = {name.casefold(): unit for name, unit in SYSTEMS.items()}
    unit = units.get(str(system).casefold())
    require(unit is not None, f'"{system}" is not a known count system: choose one from the list.')
    one = ureg(unit)
    if one.check("[length]/[mass]"):
        return one.m_as("yard/pound"), 1.0
    return (1 / one).m_as("yard/pound"), -1.0


@calculation
def mass_of_length(length: Length, grist: Grist) -> Mass:
    """Mass of a length of yarn.

    m = L / g. What a wanted length weighs.

    Parameters
    ----------
    length : L, length of the yarn
    grist : g, its grist

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A negative length, or a grist that is not above zero.

    Notes
    -----
    Valid for a yarn whose grist is even from end to end.

    References
    ----------
    Definition of the grist.

    Examples
    --------
    >>> print(mass_of_length(Quantity(500, "m"), Quantity(4, "m/g")))
    125.0 gram
    """
    require_within(NOT_NEGATIVE, "The length", length)
    require_within(ABOVE_ZERO, "The grist", grist)
    return (length / grist).to("gram")


@calculation
def length_of_mass(mass: Mass, grist: Grist) -> Length:
    """Length of a mass of yarn.

    L = m · g. The length in a skein that was weighed but not reeled.

    Parameters
    ----------
    mass : m, mass of the yarn
    grist : g, its grist

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A negative mass, or a grist that is not above zero.

    Notes
    -----
    Valid for a yarn whose grist is even from end to end.

    References
    ----------
    Definition of the grist.

    Examples
    --------
    >>> print(length_of_mass(Quantity(125, "g"), Quantity(4, "m/g")))
    500 meter
    """
    require_within(NOT_NEGATIVE, "The mass", mass)
    require_within(ABOVE_ZERO, "The grist", grist)
    return (mass * grist).to("meter")
