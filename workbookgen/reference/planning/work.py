"""Hours: what a length or a weight of work takes at your own pace.

They add up step by step; what is already done is subtracted.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, NO_TIME, NOT_NEGATIVE, require_within
from workbookgen.reference.records import sum_where
from workbookgen.reference.tolerances import NEARLY_ALL_HOURS
from workbookgen.units import Length, Mass, Quantity, Ratio, Some, SomePerTime, Time


@calculation
def hours(amount: Some, pace: SomePerTime) -> Time:
    """Hours that an amount takes.

    t = A / p. The time is proportional to the work.

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
    Valid for a sustained pace; tired hands are slower.

    References
    ----------
    Definition of the pace.

    Examples
    --------
    >>> print(hours(Quantity(900, "m"), Quantity(300, "m/hour")))
    3.0 hour
    """
    require_within(ABOVE_ZERO, "The pace", pace)
    time = Quantity(amount / pace).to("hour")
    require_within(NOT_NEGATIVE, "The amount", amount)
    return time


@calculation
def hours_in_all(
    hours_1: Time | None = None,
    hours_2: Time | None = None,
    hours_3: Time | None = None,
    hours_4: Time | None = None,
    hours_5: Time | None = None,
    hours_6: Time | None = None,
) -> Time:
    """Hours of all the steps.

    t = Σ t i, over the steps given. A step not known yet is left out, not guessed.

    Parameters
    ----------
    hours_1, hours_2, hours_3, hours_4, hours_5, hours_6 : hours of each step

    Returns
    -------
    t, a time

    Raises
    ------
    ValueError
        No step is given, or a time is negative.

    Notes
    -----
    Valid for steps done one after another by one pair of hands.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(hours_in_all(Quantity(4, "hour"), Quantity(20, "hour"), Quantity(5, "hour")))
    29 hour
    """
    steps = [each for each in (hours_1, hours_2, hours_3, hours_4, hours_5, hours_6) if each is not None]
    require(len(steps) > 0, "Give the hours of at least one step.")
    for step in steps:
        require_hours(step)
    return sum(steps[1:], start=steps[0])


@calculation
def hours_in_use(own: Time | None = None, planned: Time | None = None) -> Time:
    """Hours to plan with.

    H = own, or else planned. Counted hours beat planned hours.

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

    Examples
    --------
    >>> print(hours_in_use(own=Quantity(30, "hour"), planned=Quantity(29, "hour")))
    30 hour
    """
    chosen = planned if own is None else own
    require(chosen is not None, "Give the hours, or plan them.")
    require_hours(chosen)
    return chosen


@calculation
def hours_ahead(hours: Time, left: Ratio = 1.0, done: Time = NO_TIME, used: Mass | None = None) -> Time:
    """Hours still ahead.

    A = min(H - d, H · q), and H · q where d ≥ H. What is in skeins is made, and the rest takes its time even when the
    planned hours are used up. With nothing in skeins it is not known then; once the piece is finished there are none.

    Parameters
    ----------
    hours : H, hours of the whole work
    left : q, share of the yarn that is still to be made
    done : d, hours already done
    used : yarn that the piece took, known once it is finished

    Returns
    -------
    A, a time

    Raises
    ------
    ValueError
        Negative hours, a negative share or mass, or hours used up with nothing in skeins.

    Notes
    -----
    Valid for a plan that still holds; the last digits do not decide whether its hours are used up.

    References
    ----------
    Definition of a remainder.

    Examples
    --------
    >>> print(hours_ahead(Quantity(30, "hour"), left=0.5, done=Quantity(10, "hour")))
    15.0 hour
    """
    require_hours(hours)
    require_within(NOT_NEGATIVE, "A share", left)
    require_hours(done)
    if used is not None:
        require_within(NOT_NEGATIVE, "A piece cannot have used a negative amount of yarn.", used)
        return hours * 0
    used_up = done >= hours * NEARLY_ALL_HOURS
    told_by_skeins = (np.asarray(left) < 1) | (hours <= NO_TIME)
    require(told_by_skeins | ~np.asarray(used_up), "The hours are used up, and nothing shows how far the work is.")
    by_skeins = (hours * left).m_as("hour")
    rest = np.minimum((hours - done).m_as("hour"), by_skeins)
    return Quantity(np.where(used_up, by_skeins, rest)[()], "hour")


@calculation
def hours_with_spinning(hours: Time, spinning: Time, plying: Time) -> Time:
    """Hours of the whole work, where spinning and plying are among them.

    H = H, where both are known. Without them the rest is an afternoon, and would promise a sweater for the weekend.

    Parameters
    ----------
    hours : H, hours of the steps whose pace is known
    spinning : hours of spinning
    plying : hours of plying, 0 for a single

    Returns
    -------
    H, a time

    Raises
    ------
    ValueError
        Negative hours.

    Notes
    -----
    Valid for a pace of one's own; another step that is not known is told beside the hours.

    References
    ----------
    Common practice, no source: spinning and plying take most of the time.

    Examples
    --------
    >>> print(hours_with_spinning(Quantity(30, "hour"), spinning=Quantity(20, "hour"), plying=Quantity(8, "hour")))
    30 hour
    """
    for each in (hours, spinning, plying):
        require_hours(each)
    return hours


@calculation
def length_ahead(amount: Length, left: Ratio) -> Length:
    """Length that is still to be made.

    a = A · q. What is in skeins is made.

    Parameters
    ----------
    amount : A, the whole length
    left : q, share that is still to be made

    Returns
    -------
    a, a length

    Raises
    ------
    ValueError
        A negative length or share.

    Notes
    -----
    Valid for work that is done evenly.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(length_ahead(Quantity(1000, "m"), 0.25))
    250.0 meter
    """
    require_within(NOT_NEGATIVE, "The length", amount)
    require_within(NOT_NEGATIVE, "A share", left)
    return amount * left


@calculation
def ahead_share(ahead: Time, hours: Time) -> Ratio:
    """Share of the hours that is still ahead.

    q = A / H. Each step is assumed to be as far along as the whole.

    Parameters
    ----------
    ahead : A, hours still ahead
    hours : H, hours of the whole work

    Returns
    -------
    q, a share

    Raises
    ------
    ValueError
        No hours at all, or a negative time.

    Notes
    -----
    Valid for steps that alternate, skein by skein.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(ahead_share(Quantity(15, "hour"), Quantity(30, "hour")))
    0.5
    """
    require_hours(ahead)
    require_within(ABOVE_ZERO, "The hours of the whole work", hours)
    return (ahead / hours).m_as("")


@calculation
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

    Examples
    --------
    >>> print(hours_planned("Vest", ["Vest", "Hat", "Vest"], Quantity([20, 3, 9], "hour")))
    29.0 hour
    """
    together = sum_where(project, projects, hours)
    require(ABOVE_ZERO.hold(together), "A project has no hours planned yet: plan them, or give your own.")
    return together


def require_hours(hours: Time) -> None:
    """Refuse negative hours."""
    require_within(NOT_NEGATIVE, "Hours", hours)


@calculation
def still_to_spin(length: Length, stage: Ratio) -> Length:
    """The part of a lot's remaining yarn that has to be spun.

    L = ℓ, for fiber. Bought yarn and thread (stage 5) are spun already, so they are not counted here.

    Parameters
    ----------
    length : ℓ, length of yarn that the lot can still give
    stage : how far the lot was processed when bought, 1 raw fleece to 4 prepared fiber

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A negative length, or a stage that is not 1 to 4.

    Notes
    -----
    Valid for lots that have a wanted grist.

    References
    ----------
    Definition of what is left to do.

    Examples
    --------
    >>> print(still_to_spin(Quantity(800, "m"), stage=3))
    800 meter
    """
    require_within(NOT_NEGATIVE, "The yarn to come", length)
    require((stage >= 1) & (stage < 5) & (stage % 1 == 0), "Only raw, skirted, washed or prepared fiber is spun.")
    return length * 1
