"""Water in the fiber: regain, moisture content, and the mass that the trade agrees on.

Fiber takes up water from the air and weighs more for it. Regain is water over dry fiber, moisture content is water
over moist fiber; the two are confused even in print, so each has its own function and name here.
"""

from workbookgen.reference.calculation import calculation
from workbookgen.reference.limits import LESS_THAN_ALL, NOT_NEGATIVE, require_within
from workbookgen.units import Mass, Ratio


@calculation
def mass_at_regain(dry_mass: Mass, regain: Ratio) -> Mass:
    """Mass of fiber at a stated regain.

    m = D · (1 + R). The dry fiber and the water that belongs to it.

    Parameters
    ----------
    dry_mass : D, oven-dry mass
    regain : R, water as a share of the dry mass

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A negative mass or a negative regain.

    Notes
    -----
    Valid for any fiber; a commercial regain does not say how moist a skein is.

    References
    ----------
    Definition of regain; commercial regains in ASTM D1909-13, wool 13.6 percent (read).

    Examples
    --------
    >>> print(round(mass_at_regain(Quantity(100, "g"), 0.136), 1))
    113.6 gram
    """
    _require_mass(dry_mass)
    _require_regain(regain)
    return dry_mass * (1 + regain)


@calculation
def dry_mass(mass: Mass, moisture_content: Ratio) -> Mass:
    """Mass of the fiber without its water.

    D = m · (1 - M). The moisture content is the share that is water.

    Parameters
    ----------
    mass : m, mass as weighed
    moisture_content : M, water as a share of the mass as weighed

    Returns
    -------
    D, a mass

    Raises
    ------
    ValueError
        A negative mass, or a moisture content outside 0 to under 1.

    Notes
    -----
    Valid for mass and moisture content taken at the same time.

    References
    ----------
    Definition of moisture content.

    Examples
    --------
    >>> print(dry_mass(Quantity(120, "g"), 0.125))
    105.0 gram
    """
    _require_mass(mass)
    _require_content(moisture_content)
    return mass * (1 - moisture_content)


@calculation
def regain_of(moisture_content: Ratio) -> Ratio:
    """Regain from moisture content.

    R = M / (1 - M). The same water, as a share of the dry fiber.

    Parameters
    ----------
    moisture_content : M, water as a share of the moist mass

    Returns
    -------
    R, a share of the dry mass

    Raises
    ------
    ValueError
        A moisture content outside 0 to under 1.

    Notes
    -----
    Valid for any fiber.

    References
    ----------
    Definitions; ASTM D2118 gives 12.0 percent moisture content for scoured wool (read).

    Examples
    --------
    >>> print(round(regain_of(0.12), 3))
    0.136
    """
    _require_content(moisture_content)
    return moisture_content / (1 - moisture_content)


@calculation
def moisture_content_of(regain: Ratio) -> Ratio:
    """Moisture content from regain.

    M = R / (1 + R). The same water, as a share of the moist fiber.

    Parameters
    ----------
    regain : R, water as a share of the dry mass

    Returns
    -------
    M, a share of the moist mass

    Raises
    ------
    ValueError
        A negative regain.

    Notes
    -----
    Valid for any fiber.

    References
    ----------
    Definitions of regain and moisture content.

    Examples
    --------
    >>> print(moisture_content_of(0.25))
    0.2
    """
    _require_regain(regain)
    return regain / (1 + regain)


@calculation
def correct_mass(mass: Mass, moisture_content: Ratio, regain: Ratio) -> Mass:
    """Mass that a lot would have at the agreed regain.

    m_c = m · (1 - M) · (1 + R). Water is not sold for the price of fiber.

    Parameters
    ----------
    mass : m, mass as weighed
    moisture_content : M, water as a share of the mass as weighed
    regain : R, agreed water as a share of the dry mass

    Returns
    -------
    m_c, a mass

    Raises
    ------
    ValueError
        A negative mass or regain, or a moisture content outside 0 to under 1.

    Notes
    -----
    Valid for mass and moisture content taken at the same time.

    References
    ----------
    Correct invoice weight of the textile trade, a public page of worked problems (read).

    Examples
    --------
    >>> print(correct_mass(Quantity(100, "g"), 0.2, 0.125))
    90.0 gram
    """
    return mass_at_regain(dry_mass(mass, moisture_content), regain)


def _require_mass(mass: Mass) -> None:
    require_within(NOT_NEGATIVE, "The mass", mass)


def _require_regain(regain: Ratio) -> None:
    require_within(NOT_NEGATIVE, "The regain", regain)


def _require_content(moisture_content: Ratio) -> None:
    require_within(
        LESS_THAN_ALL,
        "The moisture content must be from 0 to below 1: it is a share of the moist mass.",
        moisture_content,
    )
