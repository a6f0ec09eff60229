"""Stock that is kept: what of it is still there, what that is worth, and when it may leave the freezer.

Of a lot, what it will still give is there too.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_name, require_numbers
from workbookgen.reference.fates import is_gone, share_still_there
from workbookgen.reference.limits import ABOVE_ZERO, COUNTED, NOT_NEGATIVE, require_within
from workbookgen.reference.tolerances import SPECK
from workbookgen.reference.words import said_in_all
from workbookgen.units import Length, Mass, Quantity, Ratio, Some

FREEZING = 7.0  # days
THERE = "there"


@calculation
def still_there(amount: Some, gone: str | None = None) -> Some:
    """What a skein counts for in the stock: its length, or its price.

    v = amount. What was given away, sold, used or lost is no longer stock.

    Parameters
    ----------
    amount : its length, or what it cost or would sell for, in money
    gone : where it went, if it is gone

    Returns
    -------
    v, of the same kind

    Raises
    ------
    ValueError
        A negative amount, or a skein that is gone.

    Notes
    -----
    Valid for skeins that left whole; for prices of one kind: all at cost, or all at selling price.

    References
    ----------
    Definition of a stock.

    Examples
    --------
    >>> print(still_there(Quantity(200, "yd")))
    200 yard
    """
    require_numbers(amount)
    require(gone is None or by_element(lambda each: not is_gone(str(each)), gone), "The skein is gone.")
    require_within(NOT_NEGATIVE, "An amount", amount)
    return amount


@calculation
def left_of(name: str, mass: Mass, gone: str | None = None) -> str:
    """The project of a skein that is still there.

    name = name. What is used, given away, sold or lost is not left of it; what is set aside is.

    Parameters
    ----------
    name : the project that it was made for
    mass : what the skein weighs
    gone : where it went, if it is gone

    Returns
    -------
    the name

    Raises
    ------
    ValueError
        A blank name, a skein that was not weighed, or one that is gone.

    Notes
    -----
    Valid for a skein that belongs to one project.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(left_of("Vest", Quantity(100, "g")))
    Vest
    """
    require_name(name)
    require_within(ABOVE_ZERO, "The mass", mass)
    require(gone is None or by_element(lambda each: not is_gone(str(each)), gone), "The skein is gone.")
    return name


@calculation
def in_stock(length: Length, gone: str | None = None) -> str:
    """Whether a skein is in the stock.

    words = "there", where its length is known. What was given away, sold, used or lost is no longer stock.

    Parameters
    ----------
    length : its length
    gone : where it went, if it is gone

    Returns
    -------
    the text "there"

    Raises
    ------
    ValueError
        A negative length, or a skein that is gone.

    Notes
    -----
    Valid for skeins that left whole.

    References
    ----------
    Definition of a stock.

    Examples
    --------
    >>> print(in_stock(Quantity(200, "yd")))
    there
    """
    still_there(length, gone)
    return by_element(lambda _: THERE, length.magnitude)


@calculation
def worth_of_rest(cost: Ratio, to_come: Mass, yarn: Mass) -> Ratio:
    """What the rest of a lot is worth, at cost.

    v = c · r / y. What was spun from it is counted with the skeins.

    Parameters
    ----------
    cost : c, what the whole lot cost, in money
    to_come : r, yarn that it will still give
    yarn : y, yarn that the whole lot is to give

    Returns
    -------
    v, money

    Raises
    ------
    ValueError
        A negative cost or mass, or a lot that gives no yarn.

    Notes
    -----
    Valid for a lot that is alike throughout.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(worth_of_rest(60, Quantity(200, "g"), Quantity(800, "g")))
    15.0
    """
    require_numbers(cost, to_come, yarn)
    require_within(NOT_NEGATIVE, "An amount of money", cost)
    require_within(NOT_NEGATIVE, "The yarn to come", to_come)
    require_within(ABOVE_ZERO, "The yarn of the lot", yarn)
    return cost * (to_come / yarn).m_as("")


@calculation
def worth_in_words(worth: Ratio, currency: str = "") -> str:
    """What a stock is worth, in words.

    words = v in whole money, with its sign before it. Only stock with a price is counted.

    Parameters
    ----------
    worth : v, money
    currency : sign of the money

    Returns
    -------
    a text such as "worth $1,240"

    Raises
    ------
    ValueError
        Nothing of any worth, or more than figures state here.

    Notes
    -----
    Valid for amounts below a hundred million.

    References
    ----------
    Definition of rounding.

    Examples
    --------
    >>> print(worth_in_words(1240, "$"))
    worth $1,240
    """
    require_within(ABOVE_ZERO, "Nothing here has a price.", worth)
    return by_element(lambda number: f"worth {currency}{number}", said_in_all(worth))


@calculation
def out_of_freezer(frozen: Ratio) -> Ratio:
    """Day from which wool may leave the freezer.

    d = f + 7. A week at -20 °C kills moths and beetles at every stage of life.

    Parameters
    ----------
    frozen : f, day on which it went in, counted as spreadsheets do

    Returns
    -------
    d, a day

    Raises
    ------
    ValueError
        A day that is not a whole number above zero.

    Notes
    -----
    Valid for a freezer that holds -20 °C to the core of the bag; a milder one needs longer.

    References
    ----------
    Advice of a national institute of conservation and of a museum: sealed in a bag, a week at -20 °C, thawed before it
    is opened, and once more (read as reproduced).

    Examples
    --------
    >>> print(out_of_freezer(46000))
    46007.0
    """
    require_numbers(frozen)
    require_within(COUNTED, "A day is counted in whole numbers, from 1.", frozen)
    return frozen + FREEZING


@calculation
def still_to_come(yarn: Mass, spun: Mass, gone: str | None = None) -> Mass:
    """Yarn that a lot will still give.

    r = y - s, but not below zero, and 0 once the rest is gone, or where less than a millionth of a gram is left. A lot
    that gave more than expected has nothing left.

    Parameters
    ----------
    yarn : y, mass of yarn that the whole lot is to give
    spun : s, mass of yarn already spun from it
    gone : where the rest of it went, if it was given away, sold, used or lost

    Returns
    -------
    r, a mass

    Raises
    ------
    ValueError
        A negative mass.

    Notes
    -----
    Valid for a lot whose every skein spun is in the log.

    References
    ----------
    Definition of a remainder.

    Examples
    --------
    >>> print(still_to_come(Quantity(800, "g"), Quantity(300, "g")))
    500.0 gram
    """
    require_within(NOT_NEGATIVE, "The yarn to come", yarn)
    require_within(NOT_NEGATIVE, "The yarn spun", spun)
    rest = (yarn - spun).m_as("g")
    return Quantity(np.where(np.asarray(rest) > SPECK, rest, 0.0)[()], "g") * share_still_there(gone)


@calculation
def not_weighed(count: Ratio, weighed: Ratio) -> Ratio:
    """How many of the skeins that are there were not weighed.

    k = n - w. What they weigh is in no sum.

    Parameters
    ----------
    count : n, number of skeins that are there
    weighed : w, how many of them were weighed

    Returns
    -------
    k, a number

    Raises
    ------
    ValueError
        A negative number, or more weighed than there are.

    Notes
    -----
    Valid for skeins that are counted once.

    References
    ----------
    Definition of a difference.

    Examples
    --------
    >>> print(not_weighed(12, weighed=9))
    3
    """
    require_within(NOT_NEGATIVE, "The number of skeins", count, weighed)
    require(weighed <= count, "More skeins are weighed than there are.")
    return count - weighed
