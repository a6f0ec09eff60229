"""What a whole fleece takes, in however many loads it is washed."""

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import AT_LEAST_ONE, NOT_NEGATIVE, require_within
from workbookgen.reference.scouring.baths import liquor
from workbookgen.reference.scouring.detergents import liquid_detergent
from workbookgen.units import Mass, Ratio, Time, Volume, VolumePerMass


@calculation
def water_of_fleece(mass: Mass, liquor_ratio: VolumePerMass, baths: Ratio) -> Volume:
    """Water for a whole fleece.

    V = m · r · b. A smaller last load takes less water, so the number of loads does not matter.

    Parameters
    ----------
    mass : m, grease weight of the fleece
    liquor_ratio : r, water to wool
    baths : b, baths per load

    Returns
    -------
    V, a volume

    Raises
    ------
    ValueError
        A negative mass, a ratio that is not above zero, or fewer than one bath.

    Notes
    -----
    Valid for fresh water in every bath.

    References
    ----------
    Definition of the liquor ratio.

    Examples
    --------
    >>> print(water_of_fleece(Quantity(2, "kg"), Quantity(30, "L/kg"), baths=4))
    240 liter
    """
    require_within(AT_LEAST_ONE, "There is at least one bath.", baths)
    return liquor(mass, liquor_ratio) * baths


@calculation
def detergent_of_fleece(mass: Mass, share: Ratio, washes: Ratio, by_water: Ratio = 0.0) -> Mass:
    """Detergent for a whole fleece.

    D = m · x · w. It is what to have on hand before starting.

    Parameters
    ----------
    mass : m, grease weight of the fleece
    share : x, detergent for one wash, as a share of the grease weight
    washes : w, washes per load
    by_water : dose of a liquid by the water, 0 for none; it then counts instead

    Returns
    -------
    D, a mass

    Raises
    ------
    ValueError
        A negative mass or share, fewer than one wash, or an additional dose by the water.

    Notes
    -----
    Valid for the same dose in every wash; the label of the product comes first.

    References
    ----------
    Definition of the dose.

    Examples
    --------
    >>> print(detergent_of_fleece(Quantity(2, "kg"), 0.04, washes=2))
    0.16 kilogram
    """
    require_within(NOT_NEGATIVE, "The mass of the fleece", mass)
    require_within(NOT_NEGATIVE, "The share of detergent", share)
    require_within(AT_LEAST_ONE, "There is at least one wash.", washes)
    require(by_water == 0, "The detergent is measured by the water.")
    return mass * share * washes


@calculation
def liquid_of_fleece(mass: Mass, liquor_ratio: VolumePerMass, dose: Ratio, washes: Ratio) -> Volume:
    """Liquid detergent for a whole fleece.

    D = m · r · d · w. Rinses take none.

    Parameters
    ----------
    mass : m, grease weight of the fleece
    liquor_ratio : r, water to wool
    dose : d, volume of detergent in a volume of water
    washes : w, washes per load

    Returns
    -------
    D, a volume

    Raises
    ------
    ValueError
        A negative mass, a ratio or a dose that is not above zero, or fewer than one wash.

    Notes
    -----
    Valid for the same dose in every wash; the label of the product comes first.

    References
    ----------
    Definition of the dose.

    Examples
    --------
    >>> print(liquid_of_fleece(Quantity(2, "kg"), Quantity(30, "L/kg"), 0.002, washes=2))
    240.0 milliliter
    """
    require_within(AT_LEAST_ONE, "There is at least one wash.", washes)
    return liquid_detergent(liquor(mass, liquor_ratio), dose) * washes


@calculation
def time_of_fleece(loads: Ratio, time_each: Time) -> Time:
    """Time in the water for a whole fleece.

    t = n · t₁. Even a small load takes as long as a full one.

    Parameters
    ----------
    loads : n, number of loads
    time_each : t₁, time of one load

    Returns
    -------
    t, a time

    Raises
    ------
    ValueError
        Negative loads, or a negative time.

    Notes
    -----
    Valid for loads washed one after another.

    References
    ----------
    Definition of the total.

    Examples
    --------
    >>> print(time_of_fleece(4, Quantity(1.5, "hour")))
    6.0 hour
    """
    require_within(NOT_NEGATIVE, "The number of loads", loads)
    require_within(NOT_NEGATIVE, "The time", time_each)
    return loads * time_each
