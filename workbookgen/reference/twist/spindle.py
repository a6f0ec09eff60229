"""How a spindle inserts twist: turns by a roll of the shaft, or by time.

A roll along the thigh turns the shaft as a wheel turns on a road: once per circumference. A spindle that keeps
spinning after a flick or roll makes many more turns, and only counting shows how many: a few seconds filmed in slow
motion, with a mark on the whorl, will do.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.units import Length, PerLength, Ratio, Time


@calculation
def turns_by_roll(rolled: Length, shaft: Length, rolls: Ratio = 1.0) -> Ratio:
    """Turns of a spindle whose shaft is rolled along the thigh.

    n = r · L / (π · d). The shaft turns once per circumference.

    Parameters
    ----------
    rolled : L, way of the shaft itself, half that of the hand that rolls it
    shaft : d, its diameter there
    rolls : r, rolls per draft

    Returns
    -------
    n, a number

    Raises
    ------
    ValueError
        A length or a diameter that is not above zero, or negative rolls.

    Notes
    -----
    Valid for a shaft that rolls without slipping and stops with the roll, as a supported spindle does; one that keeps
    spinning makes more turns.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(round(turns_by_roll(Quantity(31.4, "cm"), Quantity(1, "cm")), 1))
    10.0
    """
    _require_roll(rolled, shaft)
    require_within(NOT_NEGATIVE, "The number of rolls", rolls)
    return rolls * (rolled / (np.pi * shaft)).m_as("")


@calculation
def turns_by_time(counted: Ratio, seconds: Time, lasting: Time) -> Ratio:
    """Turns of a spindle in the time that it spins.

    n = c / t · s. It is the speed, times how long it lasts.

    Parameters
    ----------
    counted : c, turns counted
    seconds : t, time in which they were counted
    lasting : s, time that it spins for one draft

    Returns
    -------
    n, a number

    Raises
    ------
    ValueError
        Negative turns, or a time that is not above zero.

    Notes
    -----
    Valid for a spindle that keeps its speed: if it slows, count over the whole time that it spins.

    References
    ----------
    Definition of a speed.

    Examples
    --------
    >>> print(turns_by_time(20, Quantity(4, "second"), Quantity(12, "second")))
    60.0
    """
    require_within(NOT_NEGATIVE, "The number of turns", counted)
    require_within(ABOVE_ZERO, "The time", seconds, lasting)
    return counted * (lasting / seconds).m_as("")


@calculation
def spindle_turns(by_roll: Ratio | None = None, by_time: Ratio | None = None) -> Ratio:
    """Turns of a spindle for one draft.

    n = counted by time, or else by the roll. Counting includes all turns.

    Parameters
    ----------
    by_roll : turns by the length of the roll
    by_time : turns by counting and time

    Returns
    -------
    n, a number

    Raises
    ------
    ValueError
        Neither is known, or negative turns.

    Notes
    -----
    Valid for drafts all made the same way.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(spindle_turns(by_roll=10, by_time=60))
    60
    """
    turns = by_roll if by_time is None else by_time
    require(turns is not None, "Give shaft and roll, or the turns counted and the time.")
    require_within(NOT_NEGATIVE, "The number of turns", turns)
    return turns


@calculation
def draft_of_turns(turns: Ratio, twist: PerLength) -> Length:
    """Length to draft for a wanted twist, from a number of turns.

    ℓ = n / T. The turns of one flick or roll are spread over it.

    Parameters
    ----------
    turns : n, turns for one draft
    twist : T, twist wanted

    Returns
    -------
    ℓ, a length

    Raises
    ------
    ValueError
        Negative turns, or a twist that is not above zero.

    Notes
    -----
    Valid for turns that all stay in the length drafted.

    References
    ----------
    Definition of the twist.

    Examples
    --------
    >>> print(draft_of_turns(60, Quantity(4, "1/inch")))
    15.0 inch
    """
    require_within(NOT_NEGATIVE, "The number of turns", turns)
    require_within(ABOVE_ZERO, "The twist", twist)
    return turns / twist


@calculation
def rolls_for(twist: PerLength, draft: Length, rolled: Length, shaft: Length) -> Ratio:
    """Rolls per draft for a wanted twist.

    r = T · ℓ · π · d / L. It is a count to keep while spinning.

    Parameters
    ----------
    twist : T, twist wanted
    draft : ℓ, length drafted
    rolled : L, length of one roll
    shaft : d, diameter of the shaft

    Returns
    -------
    r, a number, parts of a roll included

    Raises
    ------
    ValueError
        A negative twist, or a length or diameter that is not above zero.

    Notes
    -----
    Valid for a shaft that rolls without slipping and stops with the roll.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(round(rolls_for(Quantity(1, "1/cm"), Quantity(30, "cm"), Quantity(31.4, "cm"), Quantity(1, "cm")), 1))
    3.0
    """
    _require_draft(twist, draft)
    _require_roll(rolled, shaft)
    return (twist * draft).m_as("") / turns_by_roll(rolled, shaft)


@calculation
def seconds_for(twist: PerLength, draft: Length, counted: Ratio, seconds: Time) -> Time:
    """Spinning time for a wanted twist.

    s = T · ℓ · t / c. It is how long to let the spindle run before winding on.

    Parameters
    ----------
    twist : T, twist wanted
    draft : ℓ, length drafted
    counted : c, turns counted
    seconds : t, time in which they were counted

    Returns
    -------
    s, a time

    Raises
    ------
    ValueError
        A negative twist, or a length, turns or a time that is not above zero.

    Notes
    -----
    Valid for a spindle that keeps its speed.

    References
    ----------
    Definition of a speed.

    Examples
    --------
    >>> print(seconds_for(Quantity(4, "1/inch"), Quantity(15, "inch"), 20, Quantity(4, "second")))
    12.0 second
    """
    _require_draft(twist, draft)
    require_within(ABOVE_ZERO, "The turns counted", counted)
    require_within(ABOVE_ZERO, "The time", seconds)
    return (twist * draft).m_as("") / counted * seconds


def _require_roll(rolled: Length, shaft: Length) -> None:
    require_within(ABOVE_ZERO, "The roll must have a length.", rolled)
    require_within(ABOVE_ZERO, "The shaft must have a diameter.", shaft)


def _require_draft(twist: PerLength, draft: Length) -> None:
    require_within(NOT_NEGATIVE, "The twist", twist)
    require_within(ABOVE_ZERO, "The draft must have a length.", draft)
