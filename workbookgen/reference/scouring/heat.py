"""Hot and cold water mixed to a temperature, and what that temperature means for your hands.

Wool grease comes off only while it is melted, and water that melts it well can scald. Temperatures are absolute
readings on any scale; a difference of temperatures is not one, and pint refuses it.
"""

from functools import partial

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, first_reached, require
from workbookgen.reference.limits import ABOVE_ZERO, NO_VOLUME, require_within
from workbookgen.reference.scouring.baths import require_volume
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.units import Quantity, Temperature, Volume

SAME_HEAT = 1e-6  # degrees that make no difference

# Lower limits in degrees Celsius. The time given is the shortest within the limits: a bath is never more dangerous than
# its words.
TEMPERATURE_WORDS = (
    (101.0, "hotter than water boils: °F or °C?"),
    (60.0, "scalds in under 5 seconds: gloves, tools"),
    (57.0, "scalds in 5 to 10 seconds: gloves, tools"),
    (54.0, "scalds in 10 to 30 seconds: gloves, tools"),
    (52.0, "scalds in 30 to 120 seconds: gloves, tools"),
    (48.8, "scalds in minutes: gloves, tools"),  # 120 °F, which tables round to 49 °C
    (45.0, "can scald if it lasts: gloves, tools"),
    (-np.inf, "too cool: wool grease sets"),
)


@calculation
def hot_water(volume: Volume, target: Temperature, hot: Temperature, cold: Temperature) -> Volume:
    """Hot water for a bath of a wanted temperature.

    V_h = V · (T - T_c) / (T_h - T_c). The hot water gives off what the cold takes up.

    Parameters
    ----------
    volume : V, water of the bath
    target : T, temperature wanted
    hot : T_h, temperature of the hot water
    cold : T_c, temperature of the cold water

    Returns
    -------
    V_h, a volume

    Raises
    ------
    ValueError
        A negative volume, hot water no warmer than the cold, or a target not between the two.

    Notes
    -----
    Valid for a bath that loses no heat; pots and wool cool it a little, so check with a thermometer.

    References
    ----------
    Heat balance, the heat capacity of water taken as constant (from memory).

    Examples
    --------
    >>> print(hot_water(Quantity(10, "L"), target=Quantity(45, "degC"), hot=Quantity(60, "degC"),
    ...     cold=Quantity(10, "degC")))
    7.0 liter
    """
    require_volume(volume)
    wanted, warm, cool = (each.m_as("degC") for each in (target, hot, cold))
    require(warm > cool, "The hot water must be warmer than the cold.")
    share = (wanted - cool) / (warm - cool)
    # Converting one scale to another may carry a target past its limits by rounding.
    require(np.abs(share - 0.5) <= 0.5 + ROUNDING, "The target must be between the cold and the hot water.")
    return volume * np.clip(share, 0, 1)


@calculation
def cold_water(volume: Volume, hot_water: Volume) -> Volume:
    """Cold water that fills up a bath.

    V_c = V - V_h. What is not hot is cold.

    Parameters
    ----------
    volume : V, water of the bath
    hot_water : V_h, hot water in it

    Returns
    -------
    V_c, a volume

    Raises
    ------
    ValueError
        A negative volume, or more hot water than the bath holds.

    Notes
    -----
    Valid for a bath of hot and cold water alone.

    References
    ----------
    Definition of a remainder.

    Examples
    --------
    >>> print(cold_water(Quantity(10, "L"), Quantity(7, "L")))
    3.0 liter
    """
    require_volume(volume)
    require_volume(hot_water)
    require(hot_water <= volume * (1 + ROUNDING), "The bath holds less than its hot water.")
    return np.maximum(volume - hot_water, NO_VOLUME)


@calculation
def mixed_temperature(
    volume: Volume, temperature: Temperature, added: Volume, added_temperature: Temperature
) -> Temperature:
    """Temperature of two volumes of water poured together.

    T = (V₁ · T₁ + V₂ · T₂) / (V₁ + V₂). The warmer gives off what the cooler takes up.

    Parameters
    ----------
    volume : V₁, water in the pot
    temperature : T₁, its temperature
    added : V₂, water added
    added_temperature : T₂, its temperature

    Returns
    -------
    T, a temperature

    Raises
    ------
    ValueError
        A volume that is not above zero, or a temperature that is not a number.

    Notes
    -----
    Valid for water that loses no heat; pot and wool take some, so measure.

    References
    ----------
    Heat balance, the heat capacity of water taken as constant (from memory).

    Examples
    --------
    >>> print(mixed_temperature(Quantity(10, "L"), Quantity(20, "degC"), Quantity(5, "L"), Quantity(50, "degC")))
    30.0 degree_Celsius
    """
    first, second = volume.m_as("L"), added.m_as("L")
    require_within(ABOVE_ZERO, "Both volumes", first, second)
    warm, cool = temperature.m_as("degC"), added_temperature.m_as("degC")
    require(np.isfinite(warm) & np.isfinite(cool), "The temperature must be a number.")
    return Quantity((first * warm + second * cool) / (first + second), "degC")


@calculation
def to_add(volume: Volume, temperature: Temperature, added_temperature: Temperature, target: Temperature) -> Volume:
    """Water to add for a wanted temperature.

    V₂ = V₁ · (T - T₁) / (T₂ - T). What is in the pot stays there, so the bath grows.

    Parameters
    ----------
    volume : V₁, water in the pot
    temperature : T₁, its temperature
    added_temperature : T₂, temperature of the water to add, hotter or colder
    target : T, temperature wanted

    Returns
    -------
    V₂, a volume

    Raises
    ------
    ValueError
        A volume that is not above zero, or a target that this water cannot reach.

    Notes
    -----
    Valid for water that loses no heat; pot and wool take some, so measure.

    References
    ----------
    Heat balance, the heat capacity of water taken as constant (from memory).

    Examples
    --------
    >>> print(to_add(Quantity(10, "L"), Quantity(20, "degC"), Quantity(60, "degC"), target=Quantity(40, "degC")))
    10.0 liter
    """
    require_within(ABOVE_ZERO, "The volume in the pot", volume)
    rise, above = _apart(target, temperature), _apart(added_temperature, target)
    require(
        (rise * above >= 0) & (np.abs(above) > SAME_HEAT),
        "The target must be between the two waters, and not that of the water to add.",
    )
    return volume * (rise / above)


@calculation
def part_of_mix(
    volume: Volume, temperature: Temperature, added_temperature: Temperature, target: Temperature
) -> Volume:
    """Volume of the second water in a mix.

    V₂ = V · (T - T₁) / (T₂ - T₁). Either of the two may be the hotter one.

    Parameters
    ----------
    volume : V, water wanted in all
    temperature : T₁, temperature of the first water
    added_temperature : T₂, temperature of the second
    target : T, temperature wanted

    Returns
    -------
    V₂, a volume

    Raises
    ------
    ValueError
        A volume that is not above zero, waters of one temperature, or a target not between the two.

    Notes
    -----
    Valid for water that loses no heat; the pot takes some, so measure.

    References
    ----------
    Heat balance, the heat capacity of water taken as constant (from memory).

    Examples
    --------
    >>> print(part_of_mix(Quantity(10, "L"), Quantity(10, "degC"), Quantity(60, "degC"), target=Quantity(45, "degC")))
    7.0 liter
    """
    require_within(ABOVE_ZERO, "The volume wanted", volume)
    rise, between = _apart(target, temperature), _apart(added_temperature, temperature)
    require(np.abs(between) > SAME_HEAT, "The two waters must differ in temperature.")
    require(rise * (between - rise) >= 0, "The target must be between the two waters.")
    return volume * (rise / between)


@calculation
def temperature_words(temperature: Temperature) -> str:
    """What a temperature means for the wool, and for the washer's skin.

    too cool if T < 45 °C = 113 °F. Warmer water keeps the grease melted, and burns: the words say how soon. From 101 °C
    on, Fahrenheit was typed for Celsius.

    Parameters
    ----------
    temperature : T, temperature of the water

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        A temperature that is not a number.

    Notes
    -----
    Valid for healthy adult skin; children and older people burn sooner. No bath fit for scouring is safe for bare
    hands.

    References
    ----------
    Published tables of burns (read): 120 °F, which is 48.9 °C, some minutes, 52 °C 1.5 to 2 minutes, 54 °C 30
    seconds, 57 °C 10 seconds, 60 °C under 5. Grease melts near 40 °C, at 38 to 42 °C (from memory).

    Examples
    --------
    >>> print(temperature_words(Quantity(50, "degC")))
    scalds in minutes: gloves, tools
    """
    celsius = temperature.m_as("degC")
    require(np.isfinite(celsius), "The temperature must be a number.")
    return by_element(partial(first_reached, TEMPERATURE_WORDS), celsius)


@calculation
def added_words(temperature: Temperature) -> str:
    """What water that is added means for the washer's skin.

    cool if T < 45 °C = 113 °F: it may be added to cool a pot, and only what that becomes can harm the wool. Warmer
    water burns, and the words say how soon.

    Parameters
    ----------
    temperature : T, temperature of the water

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        A temperature that is not a number.

    Notes
    -----
    Valid for healthy adult skin; children and older people burn sooner.

    References
    ----------
    Published tables of burns (read), as for a bath.

    Examples
    --------
    >>> print(added_words(Quantity(12, "degC")))
    cool: look at what it becomes
    """
    words = temperature_words(temperature)
    return by_element(lambda each: "cool: look at what it becomes" if each == TEMPERATURE_WORDS[-1][1] else each, words)


def _apart(temperature, other):
    """How many degrees Celsius a temperature is above another."""
    return temperature.m_as("degC") - other.m_as("degC")
