"""How sure hours are: between what they very likely lie, and what to allow for before a day is promised.

A pace is off by a factor: whoever may be half again as fast may be half again as slow. So hours reach further up than
down. What is unsure of the yarn needed is hours more or less; what is unsure of the hours in a week stretches the
calendar, not the work.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, quotient, require, whole_for
from workbookgen.reference.limits import ABOVE_ZERO, COUNTED_FROM_TWO, NO_TIME, NOT_NEGATIVE, require_within
from workbookgen.reference.planning.work import require_hours
from workbookgen.reference.tolerances import NEARLY_ALL_HOURS
from workbookgen.units import Length, Pace, Quantity, Ratio, Time

WORTH = 4  # timed paces that the usual figure counts for
READABLE = 1_000_000  # hours


@calculation
def pace_variation(paces: Pace) -> Ratio:
    """How much your timed paces differ, as a share of their mean.

    v = s / m. Each sample is timed once, so samples beside each other show how steady a pace is.

    Parameters
    ----------
    paces : pace of each timed sample

    Returns
    -------
    v, a share

    Raises
    ------
    ValueError
        Fewer than two paces, or one that is not above zero.

    Notes
    -----
    Valid for paces of one pair of hands; yarns that are very unlike each other make it larger than it is for one of
    them.

    References
    ----------
    Definition of the coefficient of variation; standard deviation with n - 1: JCGM 100, 4.2.2 (from memory).

    Examples
    --------
    >>> print(round(pace_variation(Quantity([90, 100, 110], "m/hour")), 9))
    0.1
    """
    known = np.atleast_1d(paces.m_as("m/hour"))
    known = known[~np.isnan(known)]
    require(known.size >= 2, "One pace does not show how much paces differ: time two samples at least.")
    require_within(ABOVE_ZERO, "A pace", known)
    return float(np.std(known, ddof=1) / np.mean(known))


@calculation
def pace_uncertainty(u_usual: Ratio, variation: Ratio | None = None, count: Ratio = 0) -> Ratio:
    """How far the pace of a whole project may be off the pace that you plan with.

    p = √((4 · h² + (n - 1) · 2 · v²) / (n + 3)), or h without timed paces. The usual figure counts for four of your
    own; a project and its sample are two paces, each of which varies.

    Parameters
    ----------
    u_usual : h, usual relative standard uncertainty
    variation : v, coefficient of variation of the paces timed
    count : n, paces timed

    Returns
    -------
    p, a share

    Raises
    ------
    ValueError
        A negative uncertainty, or a variation of fewer than two paces.

    Notes
    -----
    Valid for a pace that one sample was timed at, or that you state from habit.

    References
    ----------
    Pooled variance: textbooks of statistics (from memory). That the usual figure counts for four is common practice, no
    source.

    Examples
    --------
    >>> print(round(pace_uncertainty(0.2, variation=0.1, count=5), 9))  # √((4 · 0.04 + 4 · 2 · 0.01) / 8)
    0.173205081
    """
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_usual)
    if variation is None:
        return u_usual
    require_within(NOT_NEGATIVE, "The coefficient of variation", variation)
    require_within(COUNTED_FROM_TWO, "One pace has no variation: count at least two.", count)
    return np.sqrt((WORTH * np.square(u_usual) + (count - 1) * 2 * np.square(variation)) / (WORTH + count - 1))


@calculation
def hours_by_need(hours: Time, u_need: Length, length: Length) -> Time:
    """Hours by which the work may differ, since nobody knows quite how much yarn it takes.

    d = H · u / L. The doubt in the yarn is spun at the same pace as the yarn.

    Parameters
    ----------
    hours : H, hours of the whole work
    u_need : u, standard uncertainty of the yarn needed
    length : L, the yarn to make, reserve in

    Returns
    -------
    d, a time

    Raises
    ------
    ValueError
        Negative hours or a negative uncertainty, or no yarn.

    Notes
    -----
    Valid for yarn that is all alike.

    References
    ----------
    Definition of the pace.

    Examples
    --------
    >>> print(hours_by_need(Quantity(40, "hour"), Quantity(50, "m"), Quantity(1000, "m")))
    2.0 hour
    """
    require_hours(hours)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_need)
    require_within(ABOVE_ZERO, "The yarn to make", length)
    return Quantity((hours * u_need / length).to("hour"))


@calculation
def least_hours(ahead: Time, hours: Time, left: Ratio, u_pace: Ratio, by_need: Time, done: Time = NO_TIME) -> Time:
    """The fewest hours that are very likely still ahead.

    t = A - √(f² + (2 d)²), but not below zero, with f = H · q · (1 - e^(-2 p)), or A + D - H · e^(-2 p) if that is more
    and D < H. Two standard uncertainties of a pace are a factor; a fast hand has already done much of it when as much
    is spun as the hours say, be it in skeins or on bobbins.

    Parameters
    ----------
    ahead : A, hours still ahead
    hours : H, hours of the whole work
    left : q, share of the yarn that is still to be made
    u_pace : p, relative standard uncertainty of the pace
    by_need : d, hours by which the yarn needed may differ
    done : D, hours already done

    Returns
    -------
    t, a time

    Raises
    ------
    ValueError
        No hours ahead, negative hours, a negative share, or a negative uncertainty.

    Notes
    -----
    Valid for one pace that is off in all steps alike.

    References
    ----------
    JCGM 100, 5.1.2 and 6.2.1 (from memory); a factor as the natural logarithm of a normal quantity: textbooks of
    statistics (from memory).

    Examples
    --------
    >>> print(least_hours(Quantity(40, "hour"), Quantity(40, "hour"), left=1, u_pace=0, by_need=Quantity(2, "hour")))
    36.0 hour
    """
    by_pace = _by_pace(ahead, hours, left, u_pace, by_need, done) * (1 - np.exp(-2 * u_pace))
    fast = (ahead + done).m_as("hour") - hours.m_as("hour") * np.exp(-2 * u_pace)
    by_pace = np.where(done >= hours * NEARLY_ALL_HOURS, by_pace, np.maximum(by_pace, fast))
    return Quantity(np.maximum(ahead.m_as("hour") - np.hypot(by_pace, 2 * by_need.m_as("hour")), 0.0)[()], "hour")


@calculation
def most_hours(ahead: Time, hours: Time, left: Ratio, u_pace: Ratio, by_need: Time, done: Time = NO_TIME) -> Time:
    """The most hours that are very likely still ahead.

    t = A + √(m² + (2 d)²), with m = H · q · (e^(2 p) - 1), or the lesser of H · e^(2 p) - D and D · q / (1 - q), less
    A, if that is more. Two standard uncertainties of a pace are a factor; a hand that took longer for its skeins than
    planned may be slow, as far as the hours are not in singles on bobbins.

    Parameters
    ----------
    ahead : A, hours still ahead
    hours : H, hours of the whole work
    left : q, share of the yarn that is still to be made
    u_pace : p, relative standard uncertainty of the pace
    by_need : d, hours by which the yarn needed may differ
    done : D, hours already done

    Returns
    -------
    t, a time

    Raises
    ------
    ValueError
        No hours ahead, negative hours, a negative share, or a negative uncertainty.

    Notes
    -----
    Valid for one pace that is off in all steps alike.

    References
    ----------
    JCGM 100, 5.1.2 and 6.2.1 (from memory); a factor as the natural logarithm of a normal quantity: textbooks of
    statistics (from memory).

    Examples
    --------
    >>> print(most_hours(Quantity(40, "hour"), Quantity(40, "hour"), left=1, u_pace=0, by_need=Quantity(2, "hour")))
    44.0 hour
    """
    by_pace = _by_pace(ahead, hours, left, u_pace, by_need, done) * (np.exp(2 * u_pace) - 1)
    by_pace = np.maximum(by_pace, _if_slow(ahead, hours, left, done, np.exp(2 * u_pace), 1.0))
    return Quantity((ahead.m_as("hour") + np.hypot(by_pace, 2 * by_need.m_as("hour")))[()], "hour")


@calculation
def hours_to_allow(
    ahead: Time, hours: Time, left: Ratio, u_pace: Ratio, u_weekly: Ratio, by_need: Time, done: Time = NO_TIME
) -> Time:
    """Hours to allow for before you promise a day.

    t = A + √(m² + (2 d)²), with m = H · q · (e^(2 √(p² + w²)) - 1), or the lesser of H · e^(2 √(p² + w²)) - D and
    D · q / (1 - q) · e^(2 w), less A, if that is more. Weeks with fewer hours than planned are counted as if the work
    took longer.

    Parameters
    ----------
    ahead : A, hours still ahead
    hours : H, hours of the whole work
    left : q, share of the yarn that is still to be made
    u_pace : p, relative standard uncertainty of the pace
    u_weekly : w, relative standard uncertainty of the hours a week
    by_need : d, hours by which the yarn needed may differ
    done : D, hours already done

    Returns
    -------
    t, a time, at the hours a week that are planned

    Raises
    ------
    ValueError
        No hours ahead, negative hours, a negative share, or a negative uncertainty.

    Notes
    -----
    Valid for independent uncertainties: 19 times in 20 it is enough, and more often where speeds err up and down by
    like factors. An illness or a broken wheel is not among them.

    References
    ----------
    JCGM 100, 5.1.2 and 6.2.1 (from memory); factors that multiply add their squared logarithms: textbooks of statistics
    (from memory).

    Examples
    --------
    >>> print(hours_to_allow(Quantity(40, "hour"), Quantity(40, "hour"), left=1, u_pace=0, u_weekly=0,
    ...     by_need=Quantity(2, "hour")))
    44.0 hour
    """
    by_pace = _by_pace(ahead, hours, left, u_pace, by_need, done)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_weekly)
    stretched = np.exp(2 * np.hypot(u_pace, u_weekly))
    by_pace = np.maximum(
        by_pace * (stretched - 1), _if_slow(ahead, hours, left, done, stretched, np.exp(2 * np.asarray(u_weekly)))
    )
    return Quantity((ahead.m_as("hour") + np.hypot(by_pace, 2 * by_need.m_as("hour")))[()], "hour")


def _if_slow(ahead, hours, left, done, stretched, weeks):
    """How many hours more are ahead of a hand as slow as can be: as the hours say if all of them are in skeins."""
    share, worked, whole = np.asarray(left, dtype=float), done.m_as("hour"), hours.m_as("hour")
    by_skeins = quotient(worked * share, 1 - share)
    with np.errstate(invalid="ignore"):  # weeks of no hours at all, of nothing
        more = np.minimum(whole * stretched - worked, by_skeins * weeks) - ahead.m_as("hour")
    return np.where((share < 1) & (worked > whole * (1 - share)), more, 0.0)


def _by_pace(ahead, hours, left, u_pace, by_need, done):
    """The hours that depend on the pace: those of all yarn not in skeins yet, since hours done were counted."""
    require_within(ABOVE_ZERO, "The hours ahead", ahead)
    for each in (hours, by_need, done):
        require_hours(each)
    require_within(NOT_NEGATIVE, "A share", left)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_pace)
    return hours.m_as("hour") * np.asarray(left)


@calculation
def likely_hours(least: Time, most: Time) -> str:
    """Between how many hours the work very likely takes, in words.

    words = t₁ to t₂, in whole hours, the first rounded down, the second up. A tenth of an hour would pretend to more.

    Parameters
    ----------
    least : t₁, the lower end
    most : t₂, the upper end

    Returns
    -------
    a text such as "41 to 92"

    Raises
    ------
    ValueError
        Negative hours, or a million of them or more.

    Notes
    -----
    Valid for fewer than a million hours.

    References
    ----------
    Definition of rounding; the two ends: JCGM 100, 6.2.1 (from memory).

    Examples
    --------
    >>> print(likely_hours(Quantity(41.6, "hour"), Quantity(91.2, "hour")))
    41 to 92
    """
    require_hours(least)
    require_hours(most)
    require(most.m_as("hour") < READABLE, "So many hours are no plan.")
    return by_element(
        lambda low, high: f"{int(np.floor(round(low, 6)))} to {int(whole_for(high))}",
        least.m_as("hour"),
        most.m_as("hour"),
    )
