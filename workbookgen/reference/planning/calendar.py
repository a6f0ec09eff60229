"""Weeks and days: hours of work in a life with other things in it.

Hours become weeks at the number of hours that a week has to spare, and weeks become a day in the calendar.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require, whole_for
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.reference.planning.work import require_hours
from workbookgen.units import Ratio, Some, Time

DAYS_PER_WEEK = 7
LAST_DAY = 2_958_465  # December 31, 9999, counted from December 30, 1899


@calculation
def weeks(hours: Time, hours_per_week: Time) -> Ratio:
    """Weeks that some hours take.

    w = t / h. What fits into a week depends on the spinner, not on the yarn.

    Parameters
    ----------
    hours : t, hours of work
    hours_per_week : h, hours available in a week

    Returns
    -------
    w, parts of a week included

    Raises
    ------
    ValueError
        Negative hours, or a week without any hours for it.

    Notes
    -----
    Valid for weeks that are all alike.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(weeks(Quantity(20, "hour"), Quantity(8, "hour")))
    2.5
    """
    require_hours(hours)
    require_within(ABOVE_ZERO, "A week must have some hours for it.", hours_per_week)
    return (hours / hours_per_week).m_as("")


@calculation
def counted_from(start: Ratio, days: Some, bought_days: Some = ()) -> Ratio:
    """Day from which the work still ahead is counted.

    D = the latest of the first day and of those on which a skein was finished or a lot was bought. What is still ahead
    cannot be worked before that.

    Parameters
    ----------
    start : number of the first day of work
    days : those on which skeins were finished, blank where it is not known
    bought_days : those on which lots were bought, blank where it is not known

    Returns
    -------
    D, number of the day

    Raises
    ------
    ValueError
        A day before day 0.

    Notes
    -----
    Valid for skeins and lots that are dated as they come. After a time in which none did, the first day must be typed
    anew.

    References
    ----------
    Definition of a calendar of numbered days.

    Examples
    --------
    >>> print(counted_from(46000, [45990, np.nan], [46012]))
    46012.0
    """
    known = np.concatenate([np.asarray(each, dtype=float) for each in (days, bought_days)])
    known = known[~np.isnan(known)]
    for days_given in (start, known):  # one at a time: with no day known, the first day must still be tested
        require_within(NOT_NEGATIVE, "A day cannot lie before day 0.", days_given)
    return np.maximum(start, known.max(initial=0.0))


@calculation
def finish_day(start: Ratio, hours: Time, hours_per_week: Time) -> Ratio:
    """Day on which some hours of work are done.

    D = D₀ - 1 + 7 · t / h, the days rounded up. The first day of work is day one: a week of work that starts on a
    Monday ends on the Sunday.

    Parameters
    ----------
    start : D₀, number of the day from which they are counted, which is one of work
    hours : t, hours of work
    hours_per_week : h, hours available in a week

    Returns
    -------
    D, number of the day, counted like the start

    Raises
    ------
    ValueError
        A start before day 0, no hours to work, a week without any hours for it, or a day after the year 9999.

    Notes
    -----
    Valid for work spread evenly over all seven days of a week, up to the last day that spreadsheets have.

    References
    ----------
    Definition of a calendar of numbered days. Last day: IronCalc documentation, "Serial Numbers" (read); ECMA-376, Part
    1, 18.17.4 (from memory).

    Examples
    --------
    >>> print(finish_day(46000, Quantity(16, "hour"), Quantity(8, "hour")))
    46013.0
    """
    require_within(NOT_NEGATIVE, "The day of the start cannot lie before day 0.", start)
    require_within(ABOVE_ZERO, "Hours: without any, there is no day on which they are done.", hours)
    days = weeks(hours, hours_per_week) * DAYS_PER_WEEK
    finish = start - 1 + whole_for(days)  # rounding must not cost a day
    require(finish <= LAST_DAY, "No spreadsheet has a day after the year 9999.")
    return finish
