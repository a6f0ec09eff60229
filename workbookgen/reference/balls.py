"""Bought yarn and thread, which shops sell by the whole ball or spool."""

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, require_within
from workbookgen.reference.plying.amounts import packages
from workbookgen.units import Grist, Length, Mass, Ratio


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
def balls_to_buy(buy: Mass, ball: Mass, bought: Ratio, lot: str | None = None, design: str | None = None) -> Ratio:
    """Balls or spools to get of a strand that is bought.

    k = ⌈f / b⌉. Part of a ball means buying a whole one.

    Parameters
    ----------
    buy : f, what to get of it
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
    Valid for balls of one size; a plain yarn without a lot is taken for one to buy. f / b is rounded to six decimals
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
