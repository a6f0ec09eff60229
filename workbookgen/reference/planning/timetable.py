"""The weeks of a project: its steps one after another, a fixed number of hours in each week."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require_numbers
from workbookgen.reference.limits import AT_LEAST_ONE, NOT_NEGATIVE, Limits, require_within
from workbookgen.units import Quantity, Ratio, Time

HOUR = Quantity(1.0, "hour")
STEPS = ("Preparing", "Spinning", "Plying", "Finishing")
PLACE = Limits(least=1, most=len(STEPS), whole=True)


@calculation
def step_in_words(place: Ratio) -> str:
    """A step of the work, in words.

    word = the n-th of preparing, spinning, plying and finishing, n = 1 to 4. The steps follow one another.

    Parameters
    ----------
    place : n, from 1 to 4

    Returns
    -------
    the word

    Raises
    ------
    ValueError
        A place that is not one of the four.

    Notes
    -----
    Valid for whole places.

    References
    ----------
    The order of the work: common practice, no source.

    Examples
    --------
    >>> print(step_in_words(2))
    Spinning
    """
    require_within(PLACE, "A step", place)
    return by_element(lambda each: STEPS[int(each) - 1], place)


@calculation
def hours_of_step(
    place: Ratio, preparing: Time, spinning: Time, plying: Time, finishing: Time, left: Ratio = 1.0
) -> Time:
    """Hours of a step.

    h = q · the hours of the n-th step, n = 1 to 4. A table of weeks has a line for each step.

    Parameters
    ----------
    place : n, 1 preparing, 2 spinning, 3 plying, 4 finishing
    preparing : hours of preparing
    spinning : hours of spinning
    plying : hours of plying
    finishing : hours of winding and washing
    left : q, share of each that is still ahead

    Returns
    -------
    h, a time

    Raises
    ------
    ValueError
        A place that is not one of the four.

    Notes
    -----
    Valid for whole places.

    References
    ----------
    Definition.

    Examples
    --------
    >>> print(hours_of_step(2, Quantity(4, "hour"), Quantity(20, "hour"), Quantity(5, "hour"), Quantity(1, "hour")))
    20.0 hour
    """
    require_numbers(place, preparing, spinning, plying, finishing, left)
    require_within(PLACE, "A step", place)
    hours = (preparing, spinning, plying, finishing)
    return sum(each * (np.asarray(place) == number) for number, each in enumerate(hours, start=1)) * left


@calculation
def hours_before_step(
    place: Ratio, preparing: Time, spinning: Time, plying: Time, finishing: Time, left: Ratio = 1.0
) -> Time:
    """Hours of the steps before a step.

    b = q · Σ of the hours of the steps i < n. A step begins when those before it are done.

    Parameters
    ----------
    place : n, 1 preparing, 2 spinning, 3 plying, 4 finishing
    preparing : hours of preparing
    spinning : hours of spinning
    plying : hours of plying
    finishing : hours of winding and washing
    left : q, share of each that is still ahead

    Returns
    -------
    b, a time

    Raises
    ------
    ValueError
        A place that is not one of the four.

    Notes
    -----
    Valid for steps done one after another.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(hours_before_step(3, Quantity(4, "hour"), Quantity(20, "hour"), Quantity(5, "hour"), Quantity(1, "hour")))
    24.0 hour
    """
    require_numbers(place, preparing, spinning, plying, finishing, left)
    require_within(PLACE, "A step", place)
    hours = (preparing, spinning, plying, finishing)
    return sum(each * (np.asarray(place) > number) for number, each in enumerate(hours, start=1)) * left


@calculation
def hours_in_week(before: Time, hours: Time, weekly: Time, week: Ratio) -> Time:
    """Hours that a step takes of a week.

    t = max(0, min(b + h, k · w) - max(b, (k - 1) · w)). It is the part of the step that falls in the k-th week.

    Parameters
    ----------
    before : b, hours of the steps before it
    hours : h, hours of the step
    weekly : w, hours of work in a week
    week : k, 1 for the first week

    Returns
    -------
    t, a time

    Raises
    ------
    ValueError
        A week before the first, or negative hours.

    Notes
    -----
    Valid for the same number of hours in every week.

    References
    ----------
    Geometry of two overlapping intervals.

    Examples
    --------
    >>> print(hours_in_week(before=Quantity(4, "hour"), hours=Quantity(20, "hour"), weekly=Quantity(8, "hour"), week=1))
    4.0 hour
    """
    require_numbers(before, hours, weekly, week)
    require_within(AT_LEAST_ONE, "The first week is week 1.", week)
    b, h, w = (each.m_as("hour") for each in (before, hours, weekly))
    require_within(NOT_NEGATIVE, "Hours", b, h)
    end, begin = np.minimum(b + h, week * w), np.maximum(b, (week - 1) * w)
    return np.maximum(0.0, end - begin) * HOUR
