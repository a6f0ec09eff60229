"""The steps from fiber to yarn, and which of them a piece of work has.

A sum of hours that lacks a step looks too good, so the missing steps are named; and a single needs no plying, so none
is counted.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_applicable, require_numbers
from workbookgen.reference.limits import (
    ABOVE_ZERO,
    AT_LEAST_ONE,
    COUNTED_FROM_ZERO,
    NO_TIME,
    NOT_NEGATIVE,
    require_within,
)
from workbookgen.reference.planning.work import require_hours
from workbookgen.reference.tolerances import HAIR, NEARLY_ALL
from workbookgen.units import Length, Pace, Quantity, Ratio, Time


@calculation
def steps_known(
    preparing: Time | None = None,
    spinning: Time | None = None,
    plying: Time | None = None,
    finishing: Time | None = None,
) -> str:
    """Which steps the total hours are missing.

    words = the steps with unknown hours. A sum that lacks a step looks too good.

    Parameters
    ----------
    preparing : hours of preparing the fiber
    spinning : hours of spinning
    plying : hours of plying
    finishing : hours of winding and washing

    Returns
    -------
    a text such as "all steps" or "without spinning, plying"

    Raises
    ------
    ValueError
        No step is known, or a time is negative.

    Notes
    -----
    Valid for the steps of this planner.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(steps_known(preparing=Quantity(4, "hour"), spinning=Quantity(20, "hour")))
    without plying, finishing
    """
    steps = {"preparing": preparing, "spinning": spinning, "plying": plying, "finishing": finishing}
    known = {name: hours for name, hours in steps.items() if hours is not None}
    require(len(known) > 0, "Give the hours of at least one step.")
    for each in known.values():
        require_hours(each)
    missing = [name for name in steps if name not in known]
    return by_element(
        lambda _: f"without {', '.join(missing)}" if missing else "all steps", next(iter(known.values())).m_as("hour")
    )


@calculation
def strands_in_use(project: str, own: Ratio | None = None) -> Ratio:
    """Strands to plan with.

    n = those that are known, or else 2. Most plied yarns have two.

    Parameters
    ----------
    project : name of the project; a line without one has no strands
    own : singles in the ply, as you or its design state them

    Returns
    -------
    n, a number

    Raises
    ------
    ValueError
        No project, or strands below zero.

    Notes
    -----
    Valid for singles that lie side by side; 0 of a yarn that is plied of bought threads alone.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(strands_in_use("Vest"))
    2.0
    """
    require(project != "", "Name the project.")
    if own is None:
        return np.full(np.shape(project), 2.0)[()]
    require_within(NOT_NEGATIVE, "The number of strands", own)
    return own


@calculation
def singles_in_skein(counted: Ratio) -> Ratio:
    """Singles that a skein was plied of.

    n = counted. It is 1 for singles. Of a skein beside which it does not stand, it is not known.

    Parameters
    ----------
    counted : n, as it was counted

    Returns
    -------
    n, a number

    Raises
    ------
    ValueError
        Less than one.

    Notes
    -----
    Valid for singles that lie side by side.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(singles_in_skein(2))
    2
    """
    require_numbers(counted)
    require_within(AT_LEAST_ONE, "There must be at least one single.", counted)
    return counted


@calculation
def usual_ply(total: Ratio, count: Ratio) -> Ratio:
    """Singles in most skeins.

    n = Σ / k, rounded to a whole number. The skeins of a piece are plied alike, and one that is not counts for little.

    Parameters
    ----------
    total : Σ, the singles of all skeins, added up
    count : k, how many skeins these are

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        No skeins, or a sum that is negative.

    Notes
    -----
    Valid for skeins of one yarn; halves round up.

    References
    ----------
    Definition of the mean.

    Examples
    --------
    >>> print(usual_ply(7, 3))
    2.0
    """
    require_numbers(total, count)
    require_within(NOT_NEGATIVE, "The number of singles", total)
    require_within(ABOVE_ZERO, "The number of skeins", count)
    return np.floor(np.round(np.asarray(total, dtype=float) / count, 9) + 0.5)[()]


@calculation
def singles_in_ply(
    own: Ratio | None = None, design: Ratio | None = None, bought: Ratio | None = None, skeins: Ratio | None = None
) -> Ratio:
    """Singles to spin for a ply.

    n = those of its design, or else own, or else those of its skeins. A thread that is bought is not spun.

    Parameters
    ----------
    own : singles in the ply, as you state them; a design whose components are known replaces it
    design : strands of its design that are not bought
    bought : share of its yarn that is bought, if it is known; a design of bought yarn alone has none to spin
    skeins : singles in the skeins that were made for it already

    Returns
    -------
    n, a number

    Raises
    ------
    ValueError
        None of them, or none of a yarn that is not all bought.

    Notes
    -----
    Valid for singles that lie side by side. Of a single plied with a bought thread, the single alone is spun.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(singles_in_ply(design=3))
    3
    """
    require_numbers(own, design, bought, skeins)
    own = skeins if own is None else own
    require_applicable(own is not None or design is not None, "Neither the singles nor a design is known.")
    if own is not None:
        require_within(AT_LEAST_ONE, "There must be at least one single.", own)
    if design is None:
        return own
    require_within(NOT_NEGATIVE, "The number of singles", design)
    is_known = (np.asarray(design) >= 1) | (False if bought is None else np.asarray(bought) > NEARLY_ALL)
    if own is not None:
        return np.where(is_known, design, own)[()]
    require(is_known, "The design has no singles yet.")
    return design


@calculation
def spinning_hours(strands: Ratio, singles: Length | None = None, pace: Pace | None = None) -> Time:
    """Hours of spinning.

    t = ℓ / v, and t = 0 without a single in it. A yarn that is plied of bought threads alone is not spun.

    Parameters
    ----------
    strands : n, singles in the yarn
    singles : ℓ, length of all of them
    pace : v, length of single in a time

    Returns
    -------
    t, a time

    Raises
    ------
    ValueError
        Strands that are not a whole number, or singles without a length and a pace above zero.

    Notes
    -----
    Valid for a sustained pace; tired hands are slower.

    References
    ----------
    Definition of the pace.

    Examples
    --------
    >>> print(spinning_hours(2, Quantity(900, "m"), Quantity(300, "m/hour")))
    3.0 hour
    """
    require_within(COUNTED_FROM_ZERO, "The number of strands", strands)
    if singles is None or pace is None:
        require(np.asarray(strands) == 0, "Give the length of the singles and the pace of spinning.")
        return strands * NO_TIME
    require_within(ABOVE_ZERO, "The pace", pace)
    require_within(NOT_NEGATIVE, "The length", singles)
    return (singles / pace).to("hour") * np.where(np.asarray(strands) > 0, 1.0, 0.0)[()]


@calculation
def plying_hours(length: Length, strands: Ratio, pace: Pace | None = None, bought: Ratio | None = None) -> Time:
    """Hours of plying.

    t = L / v, and t = 0 for a single. A yarn of one strand is not plied, unless a bought thread goes with it.

    Parameters
    ----------
    length : L, length of the finished yarn
    strands : n, singles in it, 0 of bought threads alone
    pace : v, length of ply in a time
    bought : share of the yarn that is bought thread, if it is known

    Returns
    -------
    t, a time

    Raises
    ------
    ValueError
        A negative length, strands that are not a whole number, or a ply without a pace above zero.

    Notes
    -----
    Valid for yarn plied once.

    References
    ----------
    Definition of the pace.

    Examples
    --------
    >>> print(plying_hours(Quantity(900, "m"), strands=2, pace=Quantity(300, "m/hour")))
    3.0 hour
    """
    require_numbers(bought)
    require_within(NOT_NEGATIVE, "The length", length)
    require_within(COUNTED_FROM_ZERO, "The number of strands", strands)
    is_plied = (np.asarray(strands) > 1) | (np.asarray(0.0 if bought is None else bought) > HAIR)
    if pace is None:
        require((strands == 1) & ~is_plied, "Give the pace of plying.")
        return length / Quantity(1.0, "m/hour") * 0
    require_within(ABOVE_ZERO, "The pace", pace)
    return (length / pace).to("hour") * np.where(is_plied, 1.0, 0.0)[()]
