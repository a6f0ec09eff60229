"""Whole steps and coins of what everyone is due, by largest remainders.

Everyone first gets the whole steps in the exact share; the steps that are left go, one each, to the
largest remainders (Hamilton's method), and of equal ones to the first in the list.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.units import Quantity, Ratio, Some

MILLIONTH = 1_000_000
LINES = 1_000  # more than the list has


@calculation
def whole_steps(amount: Some, step: Some) -> Ratio:
    """How many whole steps there are in an amount.

    n = ⌊a / s⌋. What is less than a step of the scale cannot be weighed out, and what is less than the coin cannot be paid.

    Parameters
    ----------
    amount : a, a mass or money
    step : s, the step of the scale, or the coin

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        A negative amount, or a step that is not above zero.

    Notes
    -----
    Valid for up to a hundred million steps; the quotient is rounded to six decimals first.

    References
    ----------
    Definition of the whole part.
    """
    require_numbers(amount, step)
    require(_plain(step) > 0, "The step must be above zero.")
    require(_plain(amount) >= 0, "The amount cannot be negative.")
    quotient = amount / step
    return np.floor(_six(quotient.m_as("") if isinstance(quotient, Quantity) else quotient))


@calculation
def of_steps(steps: Ratio, step: Some) -> Some:
    """What whole steps come to.

    a = n · s. Steps are counted; the amount is only told.

    Parameters
    ----------
    steps : n, a whole number of them
    step : s, the step of the scale, or the coin

    Returns
    -------
    a, of the kind of the step

    Raises
    ------
    ValueError
        A negative number of steps, or a step that is not above zero.

    Notes
    -----
    Valid for steps that are all alike.

    References
    ----------
    Definition of the step.
    """
    require_numbers(steps, step)
    require(steps >= 0, "The number of steps cannot be negative.")
    require(_plain(step) > 0, "The step must be above zero.")
    return steps * step


@calculation
def undivided(amount: Some, step: Some, steps: Ratio) -> Ratio:
    """What of an amount is less than a step.

    r = a / s - n. It stays undivided.

    Parameters
    ----------
    amount : a, a mass or money
    step : s, the step of the scale, or the coin
    steps : n, the whole steps in it

    Returns
    -------
    r, a share of the step

    Raises
    ------
    ValueError
        A step that is not above zero, or more whole steps than there can be.

    Notes
    -----
    Valid for up to a hundred million steps; it is rounded to six decimals.

    References
    ----------
    Definition of a remainder.
    """
    require_numbers(amount, step, steps)
    require(_plain(step) > 0, "The step must be above zero.")
    quotient = amount / step
    left = _six((quotient.m_as("") if isinstance(quotient, Quantity) else quotient) - steps)
    require(left >= 0, "There cannot be more whole steps than that.")
    return left


@calculation
def exact(steps: Ratio, due: Some, in_all: Some) -> Ratio:
    """Exact share of whole steps.

    q = n · c / C, rounded to six decimals. It is no whole number yet.

    Parameters
    ----------
    steps : n, whole steps to divide
    due : c, what this member is due
    in_all : C, what all are due together

    Returns
    -------
    q, a number of steps

    Raises
    ------
    ValueError
        Negative steps or dues, or nothing that is due.

    Notes
    -----
    Valid for up to a hundred million steps.

    References
    ----------
    Definition of a share.
    """
    require_numbers(steps, due, in_all)
    require(steps >= 0, "The number of steps cannot be negative.")
    require(_plain(due) >= 0, "What is due cannot be negative.")
    require(_plain(in_all) > 0, "Nothing is due to anybody.")
    share = due / in_all
    return _six(steps * (share.m_as("") if isinstance(share, Quantity) else share))


@calculation
def whole(exact: Ratio) -> Ratio:
    """The whole steps in an exact share.

    k = ⌊q⌋. Everyone is sure of these.

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
    """
    require_numbers(exact)
    require(exact >= 0, "A share cannot be negative.")
    return np.floor(exact)


@calculation
def turn(exact: Ratio, whole: Ratio, line: Ratio) -> Ratio:
    """Whose turn it is for a step that is left.

    t = 1000 · millionths of (q - k) + 1000 - l, a whole number. A larger remainder comes first, and of equal ones the upper line.

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
    """
    require_numbers(exact, whole, line)
    remainder = exact - whole
    require((remainder > -1e-7) & (remainder < 1), "The exact share is no less than its whole steps, and less than one step more.")
    require((line >= 1) & (line < LINES), "The lines of a list are counted from 1 to 999.")
    return np.floor(remainder * MILLIONTH + 0.5) * LINES + LINES - line


@calculation
def steps_left(steps: Ratio, amounts: Some) -> Ratio:
    """Steps that are left once everyone has the whole ones.

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
    """
    require_numbers(steps)
    left = steps - float(np.nansum(np.asarray(amounts, dtype=float)))
    require(left >= 0, "There are more whole steps than there can be.")
    return left


@calculation
def last_turn(left: Ratio, amounts: Some) -> Ratio:
    """The turn of the last member who gets one of the steps that are left.

    T = the r-th largest of the turns. Who comes before gets one too.

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
    Valid for turns of which no two are alike.

    References
    ----------
    Largest remainders (Hamilton's method): by definition.
    """
    turns = np.asarray(amounts, dtype=float)
    in_order = np.sort(turns[np.isfinite(turns)])[::-1]
    require(left >= 1, "No step is left.")
    require(left <= len(in_order), "There are more steps left than members.")
    return by_element(lambda place: float(in_order[int(place) - 1]), left) if np.ndim(left) == 0 else in_order[left.astype(int) - 1]


@calculation
def given_out(whole: Ratio, turn: Ratio, last: Ratio | None = None) -> Ratio:
    """Steps that a member gets.

    g = k, and one more if t ≥ T. So they add up to all there are.

    Parameters
    ----------
    whole : k, whole steps in the exact share
    turn : t, whose turn it is
    last : T, the last turn that gets one; none, if nothing is left

    Returns
    -------
    g, a whole number

    Raises
    ------
    ValueError
        A negative number of steps.

    Notes
    -----
    Valid for turns of which no two are alike.

    References
    ----------
    Largest remainders (Hamilton's method): by definition.
    """
    require_numbers(whole, turn, last)
    require(whole >= 0, "The number of steps cannot be negative.")
    return whole + (turn * 0.0 if last is None else np.where(turn >= last, 1.0, 0.0)[()])


@calculation
def handed_out(amounts: Some) -> Some:
    """What all get together.

    A = Σ a, over all who get something. It is what there is, in whole steps.

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
    """
    cells = np.atleast_1d(np.asarray(_plain(amounts), dtype=float))
    require(bool(np.isfinite(cells).any()), "Nobody gets anything.")
    added = float(np.nansum(cells))
    return Quantity(added, amounts.units) if isinstance(amounts, Quantity) else added



def _plain(amount):
    return amount.magnitude if isinstance(amount, Quantity) else np.asarray(amount)


def _six(number):
    """Rounded to six decimals, half a millionth up, as spreadsheets do."""
    return np.floor(np.round(np.multiply(number, MILLIONTH), 3) + 0.5) / MILLIONTH
