"""What yarn costs, and a fair price for it.

Money is a plain number, in whatever currency the spinner uses, the same for every amount. A
price by the length of yarn is a number per length.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, COUNTED, LESS_THAN_ALL, NO_TIME, NOT_NEGATIVE, require_within
from workbookgen.units import Length, Mass, PerLength, Quantity, Ratio, Time


@calculation
def material_cost(
    fiber: Ratio | None = None, thread: Ratio | None = None, dye: Ratio | None = None, tools: Ratio | None = None
) -> Ratio:
    """Cost of the materials.

    C = fiber + thread + dye + tools. All that was paid for, time not counted.

    Parameters
    ----------
    fiber : cost of the fiber, in money
    thread : cost of bought thread
    dye : cost of dye and washing
    tools : share of the tools

    Returns
    -------
    C, money

    Raises
    ------
    ValueError
        No cost is given, or a negative one.

    Notes
    -----
    Valid for costs in one currency; one that is not given counts as zero.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(material_cost(fiber=40, dye=5))
    45
    """
    given = [cost for cost in (fiber, thread, dye, tools) if cost is not None]
    require(len(given) > 0, "Give at least one cost.")
    for cost in given:
        _require_money(cost)
    return sum(given[1:], start=given[0])


@calculation
def hours_to_pay(
    planned: Time | None = None, ahead: Time = NO_TIME, done: Time | None = None, used: Mass | None = None
) -> Time:
    """Hours that a price has to pay for.

    H = max(P, d + A), and H = d of a finished piece whose hours were counted. Work that took longer than its plan is
    paid in full.

    Parameters
    ----------
    planned : P, hours of the whole work by its plan
    ahead : A, hours still ahead
    done : d, hours already done
    used : yarn that the piece took, known once it is finished

    Returns
    -------
    H, a time

    Raises
    ------
    ValueError
        Neither a plan nor the hours of a finished piece, or negative hours, or a negative mass.

    Notes
    -----
    Valid for hours done that are kept up to date. Where less than the plan is done and ahead, the plan stands: some
    of the hours done may not have been written down.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(hours_to_pay(planned=Quantity(24, "hour"), ahead=Quantity(12, "hour"), done=Quantity(20, "hour")))
    32 hour
    """
    done = NO_TIME if done is None else done
    for each in (ahead, done):
        require_within(NOT_NEGATIVE, "Hours", each)
    if used is not None:
        require_within(NOT_NEGATIVE, "A piece cannot have used a negative amount of yarn.", used)
    is_counted = (done > NO_TIME) & (used is not None)
    if planned is None:
        require(is_counted, "The hours are not known: plan them, or count those of a finished piece.")
        return done
    require_within(NOT_NEGATIVE, "Hours", planned)
    by_plan = np.maximum(planned.m_as("hour"), (done + ahead).m_as("hour"))
    return Quantity(np.where(is_counted, done.m_as("hour"), by_plan)[()], "hour")


@calculation
def labor(hours: Time, rate: Ratio) -> Ratio:
    """Worth of the time spent.

    l = t · w. A price without it covers the wool and gives the work away.

    Parameters
    ----------
    hours : t, time spent
    rate : w, money for one hour

    Returns
    -------
    l, money

    Raises
    ------
    ValueError
        Negative hours or a negative rate.

    Notes
    -----
    Valid for a rate that the spinner chooses.

    References
    ----------
    Definition of the hourly rate.

    Examples
    --------
    >>> print(labor(Quantity(10, "hour"), 12))
    120
    """
    require_within(NOT_NEGATIVE, "Hours", hours)
    _require_money(rate)
    return hours.m_as("hour") * rate


@calculation
def price(cost: Ratio | None = None, labor: Ratio | None = None, margin: Ratio = 0, fees: Ratio = 0) -> Ratio:
    """Fair price.

    P = (C + l) · (1 + x) / (1 - f). What a market keeps is a share of the price, so one divides; the margin, for
    skeins that do not sell, is a share of the cost.

    Parameters
    ----------
    cost : C, cost of the materials, in money
    labor : l, worth of the time
    margin : x, what comes on top, as a share of both
    fees : f, what the market or shop keeps, as a share of the price, from 0 to under 1

    Returns
    -------
    P, money

    Raises
    ------
    ValueError
        Neither cost nor worth is given, a negative cost, worth or margin, or fees outside 0 to under 1.

    Notes
    -----
    Valid for a margin on the cost and fees on the price; taxes are not in it.

    References
    ----------
    The margin: common practice, no source. The fees by definition of a share of the price.

    Examples
    --------
    >>> print(price(cost=45, labor=105, margin=0.2, fees=0.1))
    200.0
    """
    given = [part for part in (cost, labor) if part is not None]
    require(len(given) > 0, "Give the cost of the materials, or the worth of the time.")
    for part in given:
        _require_money(part)
    require_within(NOT_NEGATIVE, "The margin", margin)
    require_within(LESS_THAN_ALL, "The fees lie from 0 to under 1 of the price.", fees)
    return sum(given[1:], start=given[0]) * (1 + margin) / (1 - fees)


@calculation
def paid_for(cost: Ratio | None = None, labor: Ratio | None = None) -> str:
    """What a price pays for.

    words = what is known of material and work. A price of the material alone gives the work away, so that is stated.

    Parameters
    ----------
    cost : cost of the materials, in money
    labor : worth of the time

    Returns
    -------
    "both", "material only" or "work only"

    Raises
    ------
    ValueError
        Neither is given, or one is negative.

    Notes
    -----
    Valid for the price of one piece.

    References
    ----------
    By definition.

    Examples
    --------
    >>> print(paid_for(cost=69))
    material only
    """
    given = {name: each for name, each in (("material", cost), ("work", labor)) if each is not None}
    require(len(given) > 0, "Give the cost of the materials, or the worth of the time.")
    for each in given.values():
        _require_money(each)
    words = "both" if len(given) > 1 else f"{next(iter(given))} only"
    shape = np.broadcast_shapes(*(np.shape(each) for each in given.values()))
    return np.full(shape, words, dtype=object) if shape else words


@calculation
def per_length(money: Ratio, length: Length) -> PerLength:
    """Cost or price of yarn by its length.

    p = M / L. A piece takes a length of yarn, so its cost follows from this.

    Parameters
    ----------
    money : M, cost or price of the yarn
    length : L, its length

    Returns
    -------
    p, money per length

    Raises
    ------
    ValueError
        Negative money, or a length that is not above zero.

    Notes
    -----
    Valid for the length after washing, which is the one that is worked.

    References
    ----------
    Definition of the unit price.

    Examples
    --------
    >>> print(per_length(30, Quantity(200, "m")))
    0.15 / meter
    """
    _require_money(money)
    require_within(ABOVE_ZERO, "The length", length)
    return money / length


@calculation
def per_skein(money: Ratio, skeins: Ratio) -> Ratio:
    """Cost or price of one skein.

    p = M / n. What goes on the ticket when a lot is sold skein by skein.

    Parameters
    ----------
    money : M, cost or price of all the skeins
    skeins : n, number of skeins

    Returns
    -------
    p, money

    Raises
    ------
    ValueError
        Negative money, or skeins that are not a whole number from 1 up.

    Notes
    -----
    Valid for skeins that are alike; else share by length.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(per_skein(90, 6))
    15.0
    """
    _require_money(money)
    require_within(COUNTED, "The number of skeins", skeins)
    return money / skeins


@calculation
def in_all(count: Ratio, each: Ratio = 0.0) -> Ratio:
    """Cost of several alike items.

    K = n · k. Each costs the same.

    Parameters
    ----------
    count : n, how many
    each : k, cost of one

    Returns
    -------
    K, money

    Raises
    ------
    ValueError
        A negative count or cost.

    Notes
    -----
    Valid for costs without a discount for quantity.

    References
    ----------
    Definition of the total.

    Examples
    --------
    >>> print(in_all(3, each=4))
    12
    """
    require_within(NOT_NEGATIVE, "The count", count)
    require_within(NOT_NEGATIVE, "An amount of money", each)
    return count * each


def _require_money(amount: Ratio) -> None:
    require_within(NOT_NEGATIVE, "An amount of money", amount)
