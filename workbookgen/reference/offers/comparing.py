"""Which of several offers is the cheapest, how much more the others cost, and whether one of them may cost less."""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.texts import folded
from workbookgen.units import PerMass, Quantity, Ratio, Some, SomePerMass

TIMES = 2.0  # standard uncertainties within which two prices are not distinguished


@calculation
def cheapest(names: Sequence[str], amounts: Some) -> str:
    """Name of the offer that costs least.

    name i, where P i = min P. Of two equal ones, it is the first.

    Parameters
    ----------
    names : the names of the offers, a blank one where a line is empty
    amounts : the prices beside them; one that is not a number is blank

    Returns
    -------
    a name

    Raises
    ------
    ValueError
        No price at all, or prices that are not one per name.

    Notes
    -----
    Valid for prices by the same weight.

    References
    ----------
    Definition of the least.

    Examples
    --------
    >>> print(cheapest(["gray", "brown"], Quantity([45, 40], "1/lb")))
    brown
    """
    prices = _numbers(amounts)
    require(len(prices) == len(names), "Each name needs one price beside it.")
    require(bool(np.isfinite(prices).any()), "No offer has a price.")
    return str(names[int(np.nanargmin(prices))])


@calculation
def of_others(price: PerMass, name: str, best: str) -> PerMass:
    """Price of an offer that is not the cheapest.

    P = P, if name ≠ best. The least of these is the next one.

    Parameters
    ----------
    price : P, price by the weight kept
    name : name of the offer
    best : name of the cheapest one

    Returns
    -------
    P, money per mass

    Raises
    ------
    ValueError
        The cheapest offer itself, or a negative price.

    Notes
    -----
    Valid for offers that each have a name of their own.

    References
    ----------
    Definition of the others.

    Examples
    --------
    >>> print(of_others(Quantity(45, "1/lb"), "gray", best="brown"))
    45.0 / pound
    """
    require_numbers(price)
    require_within(NOT_NEGATIVE, "A price", price)
    require(
        by_element(lambda one, other: folded(str(one)) != folded(str(other)), name, best), "It is the cheapest itself."
    )
    return price * 1.0


@calculation
def costs_more(price: PerMass, least: PerMass) -> Ratio:
    """How much higher one price is than another.

    x = P / Q - 1. As a share of the lower price.

    Parameters
    ----------
    price : P, the higher price
    least : Q, the lower one

    Returns
    -------
    x, a share

    Raises
    ------
    ValueError
        A lower price that is not above zero, or one that is higher than the other.

    Notes
    -----
    Valid for prices by the same weight.

    References
    ----------
    Definition of the relative difference.

    Examples
    --------
    >>> print(costs_more(Quantity(45, "1/lb"), Quantity(36, "1/lb")))
    0.25
    """
    require_numbers(price, least)
    require_within(ABOVE_ZERO, "The lower price", least)
    require(price >= least, "The higher price cannot be lower.")
    return (price / least).m_as("") - 1


@calculation
def told_apart(price: PerMass, least: PerMass, u_price: PerMass, u_least: PerMass) -> Ratio:
    """Whether two expected prices can be told apart.

    t = 1 if P - Q > 2 · √(u² + v²), else 0. Within two standard uncertainties they may differ by chance.

    Parameters
    ----------
    price : P, the higher price
    least : Q, the lower one
    u_price : u, standard uncertainty of the higher price
    u_least : v, standard uncertainty of the lower one

    Returns
    -------
    t, 1 or 0

    Raises
    ------
    ValueError
        A negative uncertainty, or a lower price that is higher than the other.

    Notes
    -----
    Valid for two fleeces of independent yields. Losses in the same hands are not independent, and their difference is
    then less uncertain than this.

    References
    ----------
    JCGM 100, 5.1.2 and 6.2.1, a difference, and two standard uncertainties for about 95% (from memory).

    Examples
    --------
    >>> print(told_apart(Quantity(45, "1/lb"), Quantity(36, "1/lb"), Quantity(3, "1/lb"), Quantity(4, "1/lb")))
    0.0
    """
    require_numbers(price, least, u_price, u_least)
    require(price >= least, "The higher price cannot be lower.")
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_price, u_least)
    u = np.sqrt(np.square(u_price.m_as("1/g")) + np.square(u_least.m_as("1/g")))
    return np.where((price - least).m_as("1/g") > TIMES * u, 1.0, 0.0)[()]


@calculation
def may_cost_less(price: PerMass, least: PerMass, u_price: PerMass, u_least: PerMass) -> Ratio:
    """Whether an offer may cost less than the cheapest after all.

    n = 1 if P - Q ≤ 2 · √(u² + v²), else 0. A dearer offer that is known less well may be cheaper than the next one is.

    Parameters
    ----------
    price : P, its price
    least : Q, the price of the cheapest
    u_price : u, standard uncertainty of its price
    u_least : v, standard uncertainty of the cheapest one's

    Returns
    -------
    n, 1 or 0

    Raises
    ------
    ValueError
        A negative uncertainty, or a price lower than the cheapest.

    Notes
    -----
    Valid for two fleeces of independent yields.

    References
    ----------
    JCGM 100, 5.1.2 and 6.2.1, a difference, and two standard uncertainties for about 95% (from memory).

    Examples
    --------
    >>> print(may_cost_less(Quantity(45, "1/lb"), Quantity(36, "1/lb"), Quantity(3, "1/lb"), Quantity(4, "1/lb")))
    1.0
    """
    return 1.0 - told_apart(price, least, u_price, u_least)


@calculation
def first_that_may(names: Sequence[str], values: Some) -> str:
    """Name of the first offer that may cost less than the cheapest.

    name i, for the least i with n i = 1. There may be others.

    Parameters
    ----------
    names : the names of the offers
    values : n, 1 or 0 beside each; one that is not a number is blank

    Returns
    -------
    a name

    Raises
    ------
    ValueError
        No offer may, or values that are not one per name.

    Notes
    -----
    Valid for any number of offers.

    References
    ----------
    Definition of the first.

    Examples
    --------
    >>> print(first_that_may(["gray", "brown", "black"], [0, float("nan"), 1]))
    black
    """
    those = np.flatnonzero(_numbers(values) == 1)
    require(np.size(values) == len(names), "Each name needs one value beside it.")
    require(those.size > 0, "No offer may cost less than the cheapest.")
    return str(names[int(those[0])])


@calculation
def unpriced(amounts: Some, values: SomePerMass) -> Ratio:
    """How many offers have no price by the weight kept.

    k = n - m. They cannot be compared.

    Parameters
    ----------
    amounts : what is paid for each, n of them numbers
    values : the prices by what is kept, m of them numbers

    Returns
    -------
    k, a whole number

    Raises
    ------
    ValueError
        More prices than offers.

    Notes
    -----
    Valid for columns of the same offers.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(unpriced([90, 80, 70], Quantity([45, 40, np.nan], "1/lb")))
    1.0
    """
    left = np.isfinite(_numbers(amounts)).sum() - np.isfinite(_numbers(values)).sum()
    require(NOT_NEGATIVE.hold(left), "There cannot be more prices than offers.")
    return float(left)


def _numbers(values) -> np.ndarray:
    return np.atleast_1d(np.asarray(values.magnitude if isinstance(values, Quantity) else values, dtype=float))
