"""Steps left over go to the largest remainders (Hamilton's method), and of equal ones to the first listed."""

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.limits import AT_LEAST_ONE, NOT_NEGATIVE, require_within
from workbookgen.reference.split.steps import magnitude_of
from workbookgen.units import Quantity, Ratio, Some

MILLIONTH = 1_000_000
LINES = 1_000  # more than the list has


@calculation
def whole(exact: Ratio) -> Ratio:
    """The whole steps in an exact share.

    k = ⌊q⌋. Everyone is certain to get these.

    Parameters
    ----------
    exact : q, exact share, in steps

    Returns
    -------
    k, a whole number

    Raises
    ------
    ValueError
        A negative share.

    Notes
    -----
    Valid for shares rounded to six decimals.

    References
    ----------
    Largest remainders (Hamilton's method): by definition.

    Examples
    --------
    >>> print(whole(33.333333))
    33.0
    """
    require_numbers(exact)
    require_within(NOT_NEGATIVE, "A share", exact)
    return np.floor(exact)


@calculation
def turn(exact: Ratio, whole: Ratio, line: Ratio) -> Ratio:
    """The turn of a member for a step that is left.

    t = 1000 · millionths of (q - k) + 1000 - l, a whole number. A larger remainder comes first, and among equal ones
    the upper line.

    Parameters
    ----------
    exact : q, exact share, in steps
    whole : k, the whole steps in it
    line : l, place in the list, from 1

    Returns
    -------
    t, a whole number, no two alike

    Raises
    ------
    ValueError
        Whole steps that are not those of the exact share, or a line that is not from 1 to 999.

    Notes
    -----
    Valid for fewer than a thousand members.

    References
    ----------
    Largest remainders (Hamilton's method): by definition. The order of equal ones: common practice, no source.

    Examples
    --------
    >>> print(turn(33.333333, 33, line=2))
    333333998.0
    """
    require_numbers(exact, whole, line)
    remainder = exact - whole
    require(
        (remainder > -1e-7) & (remainder < 1),
        "The exact share must be at least its whole steps, and less than one step more.",
    )
    require((line >= 1) & (line < LINES), "The lines of a list are counted from 1 to 999.")
    return np.floor(remainder * MILLIONTH + 0.5) * LINES + LINES - line


@calculation
def steps_left(steps: Ratio, amounts: Some) -> Ratio:
    """Steps left once everyone has the whole ones.

    r = n - Σ k. Each goes to one member.

    Parameters
    ----------
    steps : n, whole steps to divide
    amounts : k, whole steps of each; one that is not a number is blank

    Returns
    -------
    r, a whole number

    Raises
    ------
    ValueError
        More whole steps than there are.

    Notes
    -----
    Valid for members whose shares are all known.

    References
    ----------
    Largest remainders (Hamilton's method): by definition.

    Examples
    --------
    >>> print(steps_left(100, [33, 33, 33]))
    1.0
    """
    require_numbers(steps)
    left = steps - float(np.nansum(np.asarray(amounts, dtype=float)))
    require(NOT_NEGATIVE.hold(left), "There are more whole steps than there are to divide.")
    return left


@calculation
def last_turn(left: Ratio, amounts: Some) -> Ratio:
    """The turn of the last member who gets one of the steps left.

    T = the r-th largest of the turns. Everyone before that gets one too.

    Parameters
    ----------
    left : r, steps that are left
    amounts : t, the turns; one that is not a number is blank

    Returns
    -------
    T, a whole number

    Raises
    ------
    ValueError
        No step is left, or more of them than members.

    Notes
    -----
    Valid for turns that are all different.

    References
    ----------
    Largest remainders (Hamilton's method): by definition.

    Examples
    --------
    >>> print(last_turn(1, [333333999, 333333998, 333333997]))
    333333999.0
    """
    turns = np.asarray(amounts, dtype=float)
    in_order = np.sort(turns[np.isfinite(turns)])[::-1]
    require(AT_LEAST_ONE.hold(left), "No step is left.")
    require(left <= len(in_order), "There are more steps left than members.")
    return in_order[np.asarray(left, dtype=int) - 1]


@calculation
def given_out(whole: Ratio, turn: Ratio, last: Ratio | None = None) -> Ratio:
    """Steps that a member gets.

    g = k, and one more if t ≥ T. So they add up to all the steps.

    Parameters
    ----------
    whole : k, whole steps in the exact share
    turn : t, whose turn it is
    last : T, the last turn that gets one; none if nothing is left

    Returns
    -------
    g, a whole number

    Raises
    ------
    ValueError
        A negative number of steps.

    Notes
    -----
    Valid for turns that are all different.

    References
    ----------
    Largest remainders (Hamilton's method): by definition.

    Examples
    --------
    >>> print(given_out(33, turn=333333999, last=333333999))
    34.0
    """
    require_numbers(whole, turn, last)
    require_within(NOT_NEGATIVE, "The number of steps", whole)
    return whole if last is None else whole + np.where(turn >= last, 1.0, 0.0)[()]


@calculation
def handed_out(amounts: Some) -> Some:
    """What everyone gets together.

    A = Σ a, over everyone who gets something. It is what there is, in whole steps.

    Parameters
    ----------
    amounts : a, what each gets; one that is not a number is blank

    Returns
    -------
    A, of the kind of the amounts

    Raises
    ------
    ValueError
        Nobody gets anything.

    Notes
    -----
    Valid for amounts of one kind.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(handed_out(Quantity([170, 165, 165], "g")))
    500.0 gram
    """
    cells = np.atleast_1d(np.asarray(magnitude_of(amounts), dtype=float))
    require(bool(np.isfinite(cells).any()), "Nobody gets anything.")
    added = float(np.nansum(cells))
    return Quantity(added, amounts.units) if isinstance(amounts, Quantity) else added
