"""Whole steps and coins of what everyone is due.

Everyone first gets the whole steps in the exact share; `remainders` hands out those that are left.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.limits import NOT_NEGATIVE, require_within
from workbookgen.units import Quantity, Ratio, Some

MILLIONTH = 1_000_000
MOST_STEPS = 10_000_000


@calculation
def whole_steps(amount: Some, step: Some) -> Ratio:
    """Whole steps in an amount.

    n = ⌊a / s⌋. Less than a step of the scale cannot be weighed out, and less than the smallest coin cannot be paid.

    Parameters
    ----------
    amount : a, a mass or money
    step : s, the step of the scale, or the smallest coin

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        A negative amount, a step that is not above zero, or more than ten million steps.

    Notes
    -----
    Valid for up to ten million steps; the quotient is rounded to six decimals first.

    References
    ----------
    Definition of the whole part.

    Examples
    --------
    >>> print(whole_steps(Quantity(503, "g"), Quantity(5, "g")))
    100.0
    """
    require_numbers(amount, step)
    require(magnitude_of(step) > 0, "The step must be above zero.")
    require(magnitude_of(amount) >= 0, "The amount cannot be negative.")
    quotient = amount / step
    number = quotient.m_as("") if isinstance(quotient, Quantity) else quotient
    require(number <= MOST_STEPS, "So many steps cannot be told apart: take a coarser one.")
    return np.floor(to_six_decimals(number))


@calculation
def of_steps(steps: Ratio, step: Some) -> Some:
    """Amount in whole steps.

    a = n · s. Steps are counted; the amount follows.

    Parameters
    ----------
    steps : n, a whole number of them
    step : s, the step of the scale, or the smallest coin

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

    Examples
    --------
    >>> print(of_steps(100, Quantity(5, "g")))
    500 gram
    """
    require_numbers(steps, step)
    require_within(NOT_NEGATIVE, "The number of steps", steps)
    require(magnitude_of(step) > 0, "The step must be above zero.")
    return steps * step


@calculation
def undivided(amount: Some, step: Some, steps: Ratio) -> Ratio:
    """Part of an amount that is less than a step.

    r = a / s - n. It stays undivided.

    Parameters
    ----------
    amount : a, a mass or money
    step : s, the step of the scale, or the smallest coin
    steps : n, the whole steps in it

    Returns
    -------
    r, a share of the step

    Raises
    ------
    ValueError
        A step that is not above zero, or more whole steps than the amount holds.

    Notes
    -----
    Valid for up to a hundred million steps; it is rounded to six decimals.

    References
    ----------
    Definition of a remainder.

    Examples
    --------
    >>> print(undivided(Quantity(503, "g"), Quantity(5, "g"), 100))
    0.6
    """
    require_numbers(amount, step, steps)
    require(magnitude_of(step) > 0, "The step must be above zero.")
    quotient = amount / step
    left = to_six_decimals((quotient.m_as("") if isinstance(quotient, Quantity) else quotient) - steps)
    require(NOT_NEGATIVE.hold(left), "There cannot be more whole steps than the amount holds.")
    return left


@calculation
def exact(steps: Ratio, due: Some, in_all: Some) -> Ratio:
    """Exact share of whole steps.

    q = n · c / C, rounded to six decimals. It is not a whole number yet.

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

    Examples
    --------
    >>> print(exact(100, Quantity(500, "g"), Quantity(1500, "g")))
    33.333333
    """
    require_numbers(steps, due, in_all)
    require_within(NOT_NEGATIVE, "The number of steps", steps)
    require(magnitude_of(due) >= 0, "What is due cannot be negative.")
    require(magnitude_of(in_all) > 0, "Nothing is due to anyone.")
    share = due / in_all
    return to_six_decimals(steps * (share.m_as("") if isinstance(share, Quantity) else share))


def magnitude_of(amount):
    """The number in a mass, or in an amount of money, which is a plain one."""
    return amount.magnitude if isinstance(amount, Quantity) else np.asarray(amount)


def to_six_decimals(number):
    """Rounded to six decimals, half a millionth up, as spreadsheets do."""
    return np.floor(np.round(np.multiply(number, MILLIONTH), 3) + 0.5) / MILLIONTH
