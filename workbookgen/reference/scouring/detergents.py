"""Detergent by the mass of the fleece, or by the water."""

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, PART, require_within
from workbookgen.reference.scouring.baths import require_volume
from workbookgen.units import Density, Mass, Ratio, Volume


@calculation
def detergent(mass: Mass, share: Ratio, by_water: Ratio = 0.0) -> Mass:
    """Detergent for a mass of fleece.

    d = m · s. The grease and dirt to be held come with the fleece, not with the water.

    Parameters
    ----------
    mass : m, mass of the raw fleece
    share : s, detergent as a share of that mass
    by_water : dose of a liquid by the water, 0 for none; it then counts instead

    Returns
    -------
    d, a mass

    Raises
    ------
    ValueError
        A negative mass, a share outside 0 to 1, or an additional dose by the water.

    Notes
    -----
    Valid for the product whose label gives the share; 2 to 6 percent is usual.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(detergent(Quantity(500, "g"), 0.04))
    20.0 gram
    """
    require_within(NOT_NEGATIVE, "The mass", mass)
    require_within(PART, "The share", share)
    require(by_water == 0, "The detergent is measured by the water: an additional share of the fleece would double it.")
    return mass * share


@calculation
def liquid_detergent(liquor: Volume, dose: Ratio) -> Volume:
    """Liquid detergent for a bath.

    d = V · D. Labels of liquid detergents give milliliters per liter, or teaspoons per gallon.

    Parameters
    ----------
    liquor : V, water of the bath
    dose : D, volume of detergent in a volume of water

    Returns
    -------
    d, a volume

    Raises
    ------
    ValueError
        A negative volume, or a dose that is not above zero.

    Notes
    -----
    Valid for the product whose label gives the dose.

    References
    ----------
    Definition of the dose. A US teaspoon is 1/768 of a gallon (NIST Handbook 44, appendix C, from memory).

    Examples
    --------
    >>> print(liquid_detergent(Quantity(15, "L"), 0.002))
    30.0 milliliter
    """
    require_volume(liquor)
    require_within(ABOVE_ZERO, "The dose", dose)
    return (liquor * dose).to("milliliter")


@calculation
def detergent_by_liquor(liquor: Volume, dose: Density) -> Mass:
    """Detergent for a volume of water.

    d = V · D. Labels and old recipes give a dose per volume of water.

    Parameters
    ----------
    liquor : V, water of the bath
    dose : D, mass of detergent in a volume of water

    Returns
    -------
    d, a mass

    Raises
    ------
    ValueError
        A negative volume or dose.

    Notes
    -----
    Valid for the product whose label gives the dose.

    References
    ----------
    F. Beech, The Dyeing of Woollen Fabrics, gives 1 to 2 pounds of soap in 10 gallons (read).

    Examples
    --------
    >>> print(detergent_by_liquor(Quantity(15, "L"), Quantity(2, "g/L")))
    30 gram
    """
    require_volume(liquor)
    require_within(NOT_NEGATIVE, "The dose", dose)
    return (liquor * dose).to("gram")
