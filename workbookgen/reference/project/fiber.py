"""Fiber for a piece of work: how much to have, to prepare, and to put on each bobbin."""

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, COUNTED, NOT_NEGATIVE, require_within
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.units import Mass, Ratio


@calculation
def fiber_for(yarn: Mass, kept: Ratio | None = None, share: Ratio = 1.0, bought: Ratio = 0.0) -> Mass:
    """Mass of fiber to have for a mass of yarn.

    f = y · x / k, and 0 where the strand is bought. Divide by the share kept; adding the loss gives too little.

    Parameters
    ----------
    yarn : y, mass of the yarn
    kept : k, share of the fiber that becomes yarn, above 0 to 1; a bought strand needs none
    share : x, share of the strand in the yarn
    bought : 1 for a bought yarn or thread, 0 for one to be spun

    Returns
    -------
    f, a mass

    Raises
    ------
    ValueError
        A negative mass, a share that is not above zero, or a share kept, of what is spun, that is not
        above 0 and up to 1.

    Notes
    -----
    Valid for fiber in the state for which the share kept was found.

    References
    ----------
    Definition of the share kept.

    Examples
    --------
    >>> print(fiber_for(Quantity(90, "g"), kept=0.75))
    120.0 gram
    """
    require_numbers(yarn, kept, share, bought)
    require_within(NOT_NEGATIVE, "The mass of the yarn", yarn)
    require_within(ABOVE_ZERO, "The share", share)
    is_bought = np.asarray(bought) == 1
    require(
        is_bought if kept is None else is_bought | (kept > 0) & (kept <= 1 + ROUNDING),
        "The share kept must be above 0 and up to 1.",
    )
    of_one = yarn * share
    return (
        of_one * 0.0
        if kept is None
        else of_one / np.where(is_bought, 1.0, kept)[()] * np.where(is_bought, 0.0, 1.0)[()]
    )


@calculation
def to_prepare(fiber: Mass, stage: Ratio | None = None) -> Mass:
    """Mass of fiber still to be carded or combed.

    p = f, and p = 0 from stage 4 on. A lot that was bought prepared is ready to spin.

    Parameters
    ----------
    fiber : f, mass of prepared fiber to have
    stage : stage of its lot: 1 raw, 2 skirted, 3 washed, 4 prepared, 5 yarn

    Returns
    -------
    p, a mass

    Raises
    ------
    ValueError
        A negative mass.

    Notes
    -----
    Valid for a lot that is all in the state in which it was bought.

    References
    ----------
    Definition of a stage.

    Examples
    --------
    >>> print(to_prepare(Quantity(120, "g"), stage=4))
    0.0 gram
    """
    require_numbers(fiber, stage)
    require_within(NOT_NEGATIVE, "The mass of the fiber", fiber)
    return fiber if stage is None else fiber * np.where(np.asarray(stage) >= 4, 0.0, 1.0)[()]


@calculation
def of_all_strands(
    amount_1: Mass,
    amount_2: Mass | None = None,
    share_2: Ratio | None = None,
    amount_3: Mass | None = None,
    share_3: Ratio | None = None,
    amount_4: Mass | None = None,
    share_4: Ratio | None = None,
) -> Mass:
    """Mass for all strands of a yarn together.

    m = Σ m i, over the strands that there are. If one is unknown, so is the whole.

    Parameters
    ----------
    amount_1, amount_2, amount_3, amount_4 : m i, mass for each strand
    share_2, share_3, share_4 : share of each further strand in the yarn, if there is one

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A strand whose mass is not known.

    Notes
    -----
    Valid for masses in the same state, or stated as one weight to buy.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(of_all_strands(Quantity(120, "g"), Quantity(30, "g"), 0.2))
    150 gram
    """
    require_numbers(amount_1, amount_2, share_2, amount_3, share_3, amount_4, share_4)
    together = amount_1
    for amount, share in ((amount_2, share_2), (amount_3, share_3), (amount_4, share_4)):
        require(share is None or amount is not None, "The mass of a strand is not known.")
        if share is not None:
            together = together + amount
    return together


@calculation
def per_bobbin(mass: Mass, bobbins: Ratio) -> Mass:
    """Mass for each bobbin.

    b = m / k. Bobbins filled equally run out together in plying.

    Parameters
    ----------
    mass : m, mass to be shared out
    bobbins : k, number of bobbins

    Returns
    -------
    b, a mass

    Raises
    ------
    ValueError
        A negative mass, or bobbins that are not a whole number from 1 up.

    Notes
    -----
    Valid for singles of one grist, as even as the scale can show.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(per_bobbin(Quantity(120, "g"), 3))
    40.0 gram
    """
    require_within(NOT_NEGATIVE, "The mass to share out", mass)
    require_within(COUNTED, "The number of bobbins", bobbins)
    return mass / bobbins
