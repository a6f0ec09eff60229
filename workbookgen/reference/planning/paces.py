"""Pace, and the length that it applies to: what your own hands make in a given time.

Only your own pace counts, so it is timed on a sample, or stated if you know it.
"""

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, COUNTED, NOT_NEGATIVE, UNDER_ONE, require_within
from workbookgen.units import Grist, Length, Pace, Ratio, Some, Time


@calculation
def pace(length: Length, minutes: Time) -> Pace:
    """Pace of spinning or plying.

    p = L / t. It is your own pace, timed on a sample.

    Parameters
    ----------
    length : L, length made
    minutes : t, time that it took

    Returns
    -------
    p, a length per time

    Raises
    ------
    ValueError
        A length or a time that is not above zero.

    Notes
    -----
    Valid for the same fiber, grist and tool; breaks and joins are part of the time.

    References
    ----------
    Definition of the pace.

    Examples
    --------
    >>> print(pace(Quantity(50, "m"), Quantity(10, "minute")).to("m/hour"))
    300.0 meter / hour
    """
    require_within(ABOVE_ZERO, "The length made", length)
    require_within(ABOVE_ZERO, "The time that it took", minutes)
    return length / minutes


@calculation
def pace_in_use(own: Some = None, sample: Some = None) -> Some:
    """Pace that the planner uses.

    p = own, or else that of the sample. A known pace need not be timed again.

    Parameters
    ----------
    own : your own pace as you state it, a length or a mass per time
    sample : pace timed on a sample, of the same kind

    Returns
    -------
    p, of the same kind

    Raises
    ------
    ValueError
        Neither is known, or the pace in use is not above zero.

    Notes
    -----
    Valid for two figures of the same step of the work.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(pace_in_use(own=Quantity(300, "m/hour")))
    300 meter / hour
    """
    pace = sample if own is None else own
    require(pace is not None, "Give your own pace, or time a sample.")
    require_within(ABOVE_ZERO, "The pace", pace)
    return pace


@calculation
def fine_beside_the_timed(planned: Grist, timed: Grist, own: Pace | None = None) -> Ratio:
    """How many times as fine as the yarn of a timed sample another yarn is.

    q = p / t. Twist takes time: at one angle, a yarn four times as fine has twice the turns in each length, and takes
    about twice as long.

    Parameters
    ----------
    planned : p, grist of the yarn to be made
    timed : t, grist of the sample
    own : your own pace as you state it, which wins over the sample's

    Returns
    -------
    q, a ratio

    Raises
    ------
    ValueError
        A grist that is not above zero, or a pace of your own.

    Notes
    -----
    Valid for yarns of as many strands.

    References
    ----------
    Definition of a ratio. Turns go with the root of the count: see the twist factor.

    Examples
    --------
    >>> print(fine_beside_the_timed(Quantity(8, "m/g"), timed=Quantity(2, "m/g")))
    4.0
    """
    require(own is None, "Your own pace counts, and that may be of any yarn.")
    require_within(ABOVE_ZERO, "A grist", planned, timed)
    return (planned / timed).m_as("")


@calculation
def singles_length(length: Length, strands: Ratio = 2, take_up: Ratio = 0) -> Length:
    """Length of singles to spin for a length of plied yarn.

    ℓ = L · n / (1 - c). Every strand is spun, and is mostly a little longer than the yarn.

    Parameters
    ----------
    length : L, length of plied yarn
    strands : n, number of strands
    take_up : c, lost length over the length before plying, under 1; below zero where the singles grew

    Returns
    -------
    ℓ, a length, all strands together

    Raises
    ------
    ValueError
        A negative length, strands that are not a whole number from 1 up, or a take-up of 1 or more.

    Notes
    -----
    Valid for strands that are fed alike; ends left on the bobbins are extra.

    References
    ----------
    Definition of the take-up.

    Examples
    --------
    >>> print(round(singles_length(Quantity(950, "m"), strands=2, take_up=0.05)))
    2000 meter
    """
    require_within(NOT_NEGATIVE, "The length wanted", length)
    require_within(COUNTED, "The number of strands", strands)
    require_within(UNDER_ONE, "The take-up", take_up)
    return length * strands / (1 - take_up)


@calculation
def take_up_in_use(own: Ratio | None = None, sample: Ratio | None = None, design: Ratio | None = None) -> Ratio:
    """Take-up to plan with.

    c = own, or else the sample's, or else the design's. What is typed takes precedence over what was
    measured, and that over what was planned.

    Parameters
    ----------
    own : take-up as typed
    sample : take-up of a sample
    design : take-up by the feeds of a design

    Returns
    -------
    c, a share

    Raises
    ------
    ValueError
        None is known, or a take-up of 1 or more.

    Notes
    -----
    Valid for yarn plied like the sample.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(take_up_in_use(sample=0.04))
    0.04
    """
    take_up = next((each for each in (own, sample, design) if each is not None), None)
    require(take_up is not None, "Give the take-up, or choose a sample that has one.")
    require_within(UNDER_ONE, "The take-up", take_up)
    return take_up
