"""What washing a fleece takes: loads, water and time, and what comes out clean.

All of it follows from the mass of raw fleece. The figures are worked out before the first bath is
filled, since water is heavy and a crowded bath does not get wool clean.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, whole_for
from workbookgen.reference.limits import ABOVE_ZERO, AT_LEAST_ONE, NOT_NEGATIVE, SOME_PART, require_within
from workbookgen.units import Mass, Ratio, Time, Volume, VolumePerMass


@calculation
def loads(mass: Mass, load: Mass) -> Ratio:
    """Loads in which to wash a fleece.

    n = m / w, rounded up. A crowded bath does not get wool clean.

    Parameters
    ----------
    mass : m, mass of the raw fleece
    load : w, mass that one bath takes

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        A negative mass, or a load that is not above zero.

    Notes
    -----
    Valid for baths of one size.

    References
    ----------
    Definition of a share, rounded up.

    Examples
    --------
    >>> print(loads(Quantity(1.8, "kg"), Quantity(0.5, "kg")))
    4.0
    """
    require_within(NOT_NEGATIVE, "The mass", mass)
    require_within(ABOVE_ZERO, "The load of a bath", load)
    return whole_for((mass / load).m_as(""))  # rounding must not ask for one more


@calculation
def liquor(mass: Mass, liquor_ratio: VolumePerMass) -> Volume:
    """Water of one bath.

    V = m · λ. Wool needs room to open up, to release dirt, and to take dye evenly.

    Parameters
    ----------
    mass : m, mass of the goods in the bath: raw fleece to wash, dry goods to dye
    liquor_ratio : λ, water per mass of goods

    Returns
    -------
    V, a volume

    Raises
    ------
    ValueError
        A negative mass, or a liquor ratio that is not above zero.

    Notes
    -----
    Valid for any bath; by hand 20 to 40 liters for a kilogram is usual.

    References
    ----------
    Definition of the liquor ratio; 20 to 40 L/kg: common practice, no source.

    Examples
    --------
    >>> print(liquor(Quantity(0.5, "kg"), Quantity(30, "L/kg")))
    15.0 liter
    """
    require_within(NOT_NEGATIVE, "The mass", mass)
    require_within(ABOVE_ZERO, "The liquor ratio", liquor_ratio)
    return (mass * liquor_ratio).to("liter")


@calculation
def water_in_all(liquor: Volume, baths: Ratio) -> Volume:
    """Water of all the baths.

    W = V · b. Soaks, washes and rinses each take fresh water.

    Parameters
    ----------
    liquor : V, water of one bath
    baths : b, number of baths

    Returns
    -------
    W, a volume

    Raises
    ------
    ValueError
        A negative volume or number of baths.

    Notes
    -----
    Valid for baths of one size.

    References
    ----------
    Definition of a product.

    Examples
    --------
    >>> print(water_in_all(Quantity(15, "L"), 4))
    60 liter
    """
    require_volume(liquor)
    _require_baths(baths)
    return liquor * baths


@calculation
def clean_mass(mass: Mass, scoured_yield: Ratio) -> Mass:
    """Clean fiber that a fleece gives.

    c = m · y. The yield is what remains when grease, suint and dirt are gone.

    Parameters
    ----------
    mass : m, mass of the raw fleece
    scoured_yield : y, scoured yield, a share

    Returns
    -------
    c, a mass

    Raises
    ------
    ValueError
        A negative mass, or a yield not above 0 and up to 1.

    Notes
    -----
    Valid for a yield found at the same regain.

    References
    ----------
    Definition of the scoured yield.

    Examples
    --------
    >>> print(clean_mass(Quantity(2, "kg"), 0.6))
    1.2 kilogram
    """
    require_within(NOT_NEGATIVE, "The mass", mass)
    require_within(SOME_PART, "A yield", scoured_yield)
    return mass * scoured_yield


@calculation
def removed(mass: Mass, scoured_yield: Ratio) -> Mass:
    """Grease, suint and dirt that washing takes out of a fleece.

    r = m · (1 - y). It all ends up in the water, and in the drain if it is not strained.

    Parameters
    ----------
    mass : m, mass of the raw fleece
    scoured_yield : y, scoured yield, a share

    Returns
    -------
    r, a mass

    Raises
    ------
    ValueError
        A negative mass, or a yield not above 0 and up to 1.

    Notes
    -----
    Valid for a yield found at the same regain.

    References
    ----------
    Definition of the scoured yield.

    Examples
    --------
    >>> print(removed(Quantity(2, "kg"), 0.75))
    0.5 kilogram
    """
    clean_mass(mass, scoured_yield)  # it refuses invalid values
    return mass * (1 - scoured_yield)


@calculation
def bath_time(baths: Ratio, minutes_each: Time) -> Time:
    """Time that the baths take.

    t = b · t₁. Water cools meanwhile: grease that resolidifies is worse than a short bath.

    Parameters
    ----------
    baths : b, number of baths
    minutes_each : t₁, time in each of them

    Returns
    -------
    t, a time

    Raises
    ------
    ValueError
        A negative number of baths or time.

    Notes
    -----
    Valid for one load; filling and lifting are extra.

    References
    ----------
    Two baths of half an hour: F. Beech, The Dyeing of Woollen Fabrics (read).

    Examples
    --------
    >>> print(bath_time(4, Quantity(20, "minute")))
    80 minute
    """
    _require_baths(baths)
    require_within(NOT_NEGATIVE, "The time in a bath", minutes_each)
    return baths * minutes_each


@calculation
def full_load(mass: Mass, load: Mass) -> Mass:
    """Mass of a full load.

    f = min(m, l). A fleece smaller than the pot is one load.

    Parameters
    ----------
    mass : m, mass of fleece to wash
    load : l, what the pot holds

    Returns
    -------
    f, a mass

    Raises
    ------
    ValueError
        A mass or a load that is not above zero.

    Notes
    -----
    Valid for loads that are all alike except the last.

    References
    ----------
    Definition of a load.

    Examples
    --------
    >>> print(full_load(Quantity(1.8, "kg"), Quantity(0.5, "kg")))
    0.5 kilogram
    """
    require_within(ABOVE_ZERO, "The mass of the fleece", mass)
    require_within(ABOVE_ZERO, "A load must hold something.", load)
    return np.minimum(mass, load)


@calculation
def baths_in_all(washes: Ratio, rinses: Ratio = 0.0) -> Ratio:
    """Number of baths for a load.

    b = w + r. A rinse takes as much water as a wash.

    Parameters
    ----------
    washes : w, baths with detergent
    rinses : r, baths without detergent

    Returns
    -------
    b, a number

    Raises
    ------
    ValueError
        No wash, or a negative number of rinses.

    Notes
    -----
    Valid for baths of the same volume.

    References
    ----------
    Definition of a bath.

    Examples
    --------
    >>> print(baths_in_all(2, rinses=2))
    4
    """
    require_within(AT_LEAST_ONE, "Wash at least once.", washes)
    require_within(NOT_NEGATIVE, "The number of rinses", rinses)
    return washes + rinses


def require_volume(volume: Volume) -> None:
    """Refuse a volume below zero."""
    require_within(NOT_NEGATIVE, "A volume of water", volume)


def _require_baths(baths: Ratio) -> None:
    require_within(NOT_NEGATIVE, "The number of baths", baths)
