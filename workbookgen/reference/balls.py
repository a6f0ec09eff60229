"""Bought yarn and thread, which shops sell by the whole ball or spool."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.reference.plying.amounts import packages
from workbookgen.reference.tolerances import NEARLY_ALL
from workbookgen.units import Grist, Length, Mass, Ratio

SOME = 0.5  # of what is counted: more is one at least


@calculation
def ball_weighs(
    planned: Grist, spool: Mass | None = None, package: Length | None = None, design: str | None = None
) -> Mass:
    """Mass of one ball or spool of a yarn's first strand.

    b = that of the design's spool, or p / g of a plain yarn. Shops sell whole balls and spools only.

    Parameters
    ----------
    planned : g, planned grist of the yarn
    spool : mass of a spool of the design's component
    package : p, length of one ball
    design : the design, if the yarn has one

    Returns
    -------
    b, a mass

    Raises
    ------
    ValueError
        Neither a spool nor a ball of a plain yarn is known, or a grist that is not above zero.

    Notes
    -----
    Valid for balls of one size.

    References
    ----------
    Definition of the grist.

    Examples
    --------
    >>> print(ball_weighs(Quantity(4, "m/g"), package=Quantity(200, "m")))
    50.0 gram
    """
    require_numbers(planned, spool, package)
    require_within(ABOVE_ZERO, "The grist", planned)
    if spool is not None:
        return spool
    require(package is not None and design is None, "Say what a ball holds.")
    return (package / planned).to("gram")


@calculation
def to_get(buy: Mass, bought: Ratio, part: Ratio = 1.0, before: Ratio = 0.0) -> Mass:
    """What to get of a strand, with those of its yarn that are of the same bought thread.

    G = f / q for the first of them, and 0 for the others, which have it too; f where the strand is spun, or has its
    thread to itself. Two strands from one cone take whole cones together: 1.2 and 1.2 are 3, not 4.

    Parameters
    ----------
    buy : f, what to get of the strand alone
    bought : 1 for a bought yarn or thread, 0 for one to be spun
    part : q, part that the strand has of its lots
    before : how many earlier strands have the same lots

    Returns
    -------
    G, a mass

    Raises
    ------
    ValueError
        A negative mass, or a part that is not above zero.

    Notes
    -----
    Valid for strands that run out together, each by its share of the yarn.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(to_get(Quantity(60, "g"), bought=1, part=0.5))
    120.0 gram
    """
    require_numbers(bought, before)
    require_within(NOT_NEGATIVE, "What to get", buy)
    require_within(ABOVE_ZERO, "The part", part)
    together = (np.asarray(bought) == 1) & (np.asarray(part) < NEARLY_ALL)
    return buy * np.where(together, np.where(np.asarray(before) > SOME, 0.0, 1 / np.asarray(part)), 1.0)[()]


@calculation
def got_as(name: str, bought: Ratio, part: Ratio = 1.0, lot: str | None = None) -> str:
    """The name by which to ask for what a strand takes.

    words = the name, or the lot where other strands are of the same bought thread. One cone for two strands is asked
    for by the name of the cone.

    Parameters
    ----------
    name : what the strand is called
    bought : 1 for a bought yarn or thread, 0 for one to be spun
    part : part that the strand has of its lots
    lot : its first lot, if it has one

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        A part that is not a number.

    Notes
    -----
    Valid for strands of a design.

    References
    ----------
    Definition.

    Examples
    --------
    >>> print(got_as("core", bought=1, part=0.5, lot="Gold cone"))
    Gold cone
    """
    require_numbers(bought, part)
    if lot is None:
        return by_element(lambda own, *_: own, name, bought, part)
    return by_element(lambda own, of, q, cone: cone if of == 1 and q < NEARLY_ALL else own, name, bought, part, lot)


@calculation
def balls_to_buy(buy: Mass, ball: Mass, bought: Ratio, lot: str | None = None, design: str | None = None) -> Ratio:
    """Balls or spools to get of a strand that is bought.

    k = ⌈G / b⌉. Part of a ball means buying a whole one.

    Parameters
    ----------
    buy : G, what to get of it
    ball : b, mass of one
    bought : 1 for a bought yarn or thread, 0 for one to be spun
    lot : the lot that it is spun from, if there is one
    design : the design, if the yarn has one

    Returns
    -------
    k, a whole number

    Raises
    ------
    ValueError
        A strand that is spun, a negative mass, or a ball that weighs nothing.

    Notes
    -----
    Valid for balls of one size; a plain yarn without a lot is taken for one to buy. G / b is rounded to six decimals
    first.

    References
    ----------
    Definition of the quotient.

    Examples
    --------
    >>> print(balls_to_buy(Quantity(230, "g"), Quantity(50, "g"), bought=1))
    5.0
    """
    require_numbers(buy, ball, bought)
    if lot is not None or design is not None:
        require(np.asarray(bought) == 1, "The strand is spun.")
    return packages(buy, ball)
