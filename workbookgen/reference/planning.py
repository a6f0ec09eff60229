"""How long it takes: hours from one's own pace, and the day on which they are done.

Nobody's pace but one's own tells anything, so it is measured on a sample. Hours become
weeks at the hours that a week has to spare, and weeks become a day in the calendar.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.law import law, require
from workbookgen.reference.stock import total
from workbookgen.reference.plying.amounts import component_length
from workbookgen.reference.plying.design import require_loss
from workbookgen.units import Grist, Length, Mass, Pace, Quantity, Ratio, Time

NO_TIME = Quantity(0.0, "hour")
NO_LENGTH = Quantity(0.0, "m")
NO_MASS = Quantity(0.0, "g")
NO_GRIST = Quantity(0.0, "m/g")
STANDSTILL = Quantity(0.0, "m/hour")
DAYS_PER_WEEK = 7


@law
def pace(length: Length, minutes: Time) -> Pace:
    """Pace of spinning or plying.

    p = L / t. One's own pace, timed on a sample.

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
    Valid for the same fiber, grist and tool; breaks and joins belong into the time.

    References
    ----------
    Definition of the pace.
    """
    require(length > NO_LENGTH, "The length made must be above zero.")
    require(minutes > NO_TIME, "The time that it took must be above zero.")
    return length / minutes


@law
def pace_in_use(own=None, sample=None):
    """Pace that the planner reckons with.

    p = own, or else that of the sample. A pace that is known need not be timed again.

    Parameters
    ----------
    own : one's own pace, as one states it, a length or a mass worked in a time
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
    """
    pace = sample if own is None else own
    require(pace is not None, "Give your own pace, or time a sample.")
    require(pace > 0, "The pace must be above zero.")
    return pace


@law
def singles_length(length: Length, strands: Ratio = 2, take_up: Ratio = 0) -> Length:
    """Length of singles to spin for a length of plied yarn.

    ℓ = L · n / (1 - c). Every strand is spun, and is a little longer than the yarn it makes.

    Parameters
    ----------
    length : L, length of plied yarn
    strands : n, number of strands
    take_up : c, lost length over the length before plying, from 0 to under 1

    Returns
    -------
    ℓ, a length, all strands together

    Raises
    ------
    ValueError
        A negative length, strands that are no whole number from 1 up, or a take-up outside 0
        to under 1.

    Notes
    -----
    Valid for strands that are fed alike; ends left on the bobbins come on top.

    References
    ----------
    Definition of the take-up.
    """
    require_loss(take_up, "take-up")
    return component_length(length, strands, 1 / (1 - take_up))


@law
def hours(amount, pace) -> Time:
    """Hours that an amount takes.

    t = A / p. Long or heavy work takes its time in proportion.

    Parameters
    ----------
    amount : A, a length or a mass to be worked
    pace : p, length or mass worked in a time

    Returns
    -------
    t, a time

    Raises
    ------
    ValueError
        A negative amount, or a pace that is not above zero.
    DimensionalityError
        An amount and a pace that do not make a time.

    Notes
    -----
    Valid for a pace that is kept up; a tired hand is slower.

    References
    ----------
    Definition of the pace.
    """
    require(pace > 0, "The pace must be above zero.")
    time = Quantity(amount / pace).to("hour")
    require(amount >= 0, "The amount cannot be negative.")
    return time


@law
def hours_in_all(
    hours_1: Time | None = None,
    hours_2: Time | None = None,
    hours_3: Time | None = None,
    hours_4: Time | None = None,
    hours_5: Time | None = None,
    hours_6: Time | None = None,
) -> Time:
    """Hours of all the steps.

    t = Σ t i, over the steps given. A step that is not known yet is left out, not guessed.

    Parameters
    ----------
    hours_1 : hours of a step
    hours_2 : hours of a second step
    hours_3 : hours of a third
    hours_4 : hours of a fourth
    hours_5 : hours of a fifth
    hours_6 : hours of a sixth

    Returns
    -------
    t, a time

    Raises
    ------
    ValueError
        No step is given, or a time is negative.

    Notes
    -----
    Valid for steps that follow each other, done by one pair of hands.

    References
    ----------
    Definition of a sum.
    """
    steps = [each for each in (hours_1, hours_2, hours_3, hours_4, hours_5, hours_6) if each is not None]
    require(len(steps) > 0, "Give the hours of at least one step.")
    for step in steps:
        _require_hours(step)
    return sum(steps[1:], start=steps[0])


@law
def weeks(hours: Time, hours_per_week: Time) -> Ratio:
    """Weeks that some hours take.

    w = t / h. What fits into a week is a matter of the person, not of the yarn.

    Parameters
    ----------
    hours : t, hours of work
    hours_per_week : h, hours that a week has for it

    Returns
    -------
    w, parts of a week included

    Raises
    ------
    ValueError
        Negative hours, or a week that has no hours for it.

    Notes
    -----
    Valid for weeks that are all alike.

    References
    ----------
    Definition of a share.
    """
    _require_hours(hours)
    require(hours_per_week > NO_TIME, "A week must have some hours for it.")
    return (hours / hours_per_week).m_as("")


@law
def finish_day(start: Ratio, hours: Time, hours_per_week: Time) -> Ratio:
    """Day on which some hours of work are done.

    D = D₀ + 7 · t / h, the days rounded up. Work that ends within a day ends on that day.

    Parameters
    ----------
    start : D₀, number of the day on which the work starts
    hours : t, hours of work
    hours_per_week : h, hours that a week has for it

    Returns
    -------
    D, number of the day, counted like the start

    Raises
    ------
    ValueError
        A start before day 0, negative hours, or a week that has no hours for it.

    Notes
    -----
    Valid for work spread evenly over all seven days of a week.

    References
    ----------
    Definition of a calendar of numbered days.
    """
    require(start >= 0, "The day of the start cannot lie before day 0.")
    days = weeks(hours, hours_per_week) * DAYS_PER_WEEK
    return start + np.ceil(np.round(days, 9))  # the last digits must not cost a day


@law
def stock_hours(mass: Mass, grist: Grist, pace: Pace) -> Time:
    """Hours of spinning in the stock.

    t = m · g / p. A shelf of fiber is so many evenings to come.

    Parameters
    ----------
    mass : m, mass of the yarn that the stock will give
    grist : g, grist to which it will be spun
    pace : p, length spun in a time

    Returns
    -------
    t, a time

    Raises
    ------
    ValueError
        A negative mass, or a grist or a pace that is not above zero.

    Notes
    -----
    Valid for the grist and the pace of the single; plying comes on top.

    References
    ----------
    Definitions of the grist and of the pace.
    """
    require(mass >= NO_MASS, "The mass cannot be negative.")
    require(grist > NO_GRIST, "The grist must be above zero.")
    require(pace > STANDSTILL, "The pace must be above zero.")
    return (mass * grist / pace).to("hour")


@law
def evenings(hours: Time, evening: Time) -> Ratio:
    """Evenings that some hours take.

    e = t / v. Hours sound like much, evenings like something to look forward to.

    Parameters
    ----------
    hours : t, hours of work
    evening : v, what one evening has for it

    Returns
    -------
    e, parts of an evening included

    Raises
    ------
    ValueError
        Negative hours, or an evening that has no time for it.

    Notes
    -----
    Valid for evenings that are all alike.

    References
    ----------
    Definition of a share.
    """
    _require_hours(hours)
    require(evening > NO_TIME, "An evening must have some time for it.")
    return (hours / evening).m_as("")


@law
def hours_in_use(own: Time | None = None, planned: Time | None = None) -> Time:
    """Hours to reckon with.

    H = own, or else planned. Hours that were counted beat hours that were planned.

    Parameters
    ----------
    own : hours as counted
    planned : hours as planned

    Returns
    -------
    H, a time

    Raises
    ------
    ValueError
        Neither is known, or the hours in use are negative.

    Notes
    -----
    Valid for hours of the same work.

    References
    ----------
    Common practice, no source.
    """
    chosen = planned if own is None else own
    require(chosen is not None, "Give the hours, or plan them.")
    require(chosen >= NO_TIME, "Hours cannot be negative.")
    return chosen


@law
def hours_ahead(hours: Time, done: Time = NO_TIME) -> Time:
    """Hours still ahead.

    A = H - d, but not below zero. Work that took longer than planned has none left.

    Parameters
    ----------
    hours : H, hours of the whole work
    done : d, hours already done

    Returns
    -------
    A, a time

    Raises
    ------
    ValueError
        Negative hours.

    Notes
    -----
    Valid for a plan that still holds.

    References
    ----------
    Definition of a remainder.
    """
    require(hours >= NO_TIME, "Hours cannot be negative.")
    require(done >= NO_TIME, "Hours cannot be negative.")
    return np.maximum(hours - done, NO_TIME)


@law
def hours_planned(project: str, projects: Sequence[str], hours: Time) -> Time:
    """Hours planned for a project.

    H = Σ hours i, over all i where project i is the project. A project may be planned in several lines.

    Parameters
    ----------
    project : the project looked for
    projects : the project of each line, a blank one where a row is empty
    hours : the hours beside them

    Returns
    -------
    H, a time

    Raises
    ------
    ValueError
        No line of that project has hours.

    Notes
    -----
    Valid for lines that do not count the same work twice.

    References
    ----------
    Definition of a sum.
    """
    together = total(project, projects, hours)
    require(together > NO_TIME, f'"{project}" has no hours planned yet.')
    return together


def _require_hours(hours):
    require(hours >= NO_TIME, "Hours cannot be negative.")
