"""What a piece of work needs, and whether it is there.

A wanted length becomes yarn to spin, yarn becomes fiber to have, and what is in hand is
set against it.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.units import Length, Mass, Quantity, Ratio, Some

NOTHING = Quantity(0.0, "m")
NO_MASS = Quantity(0.0, "g")
ROUNDING = 1e-9  # a share found by dividing two equal masses may miss 1 by a hair


@calculation
def yarn_length(length_wanted: Length, margin: Ratio = 0.1) -> Length:
    """Length of yarn to have for a piece.

    L = Y · (1 + x). The margin stands for gauge that drifts, knots and swatches.

    Parameters
    ----------
    length_wanted : Y, the length that the pattern asks for
    margin : x, what to have beyond it, as a share

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A negative length or a negative margin.

    Notes
    -----
    Valid for a pattern that was worked in a yarn of like thickness.

    References
    ----------
    A reserve of 10 to 15 per cent: common practice, no source.
    """
    require(length_wanted >= NOTHING, "The length wanted cannot be negative.")
    require(margin >= 0, "The margin cannot be negative.")
    return length_wanted * (1 + margin)


@calculation
def fiber_for(yarn: Mass, kept: Ratio | None = None, share: Ratio = 1.0, bought: Ratio = 0.0) -> Mass:
    """Mass of fiber to have for a mass of yarn.

    f = y · x / k, and 0 where the strand is bought. Divide by what is kept; adding what is lost gives too little.

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
        A negative mass, a share that is not above zero, or a share kept outside 0 to 1 of what is spun.

    Notes
    -----
    Valid for fiber in the state for which the share kept was found.

    References
    ----------
    Definition of the share kept.
    """
    require_numbers(yarn, kept, share, bought)
    require(yarn >= NO_MASS, "The mass of the yarn cannot be negative.")
    require(share > 0, "The share must be above zero.")
    is_bought = np.asarray(bought) == 1
    require(is_bought if kept is None else is_bought | (kept > 0) & (kept <= 1 + ROUNDING), "The share kept lies above 0 and up to 1.")
    of_one = yarn * share
    return of_one * 0.0 if kept is None else of_one / np.where(is_bought, 1.0, kept)[()] * np.where(is_bought, 0.0, 1.0)[()]


@calculation
def to_prepare(fiber: Mass, stage: Ratio | None = None) -> Mass:
    """Mass of fiber that one has to card or comb oneself.

    p = f, and p = 0 from stage 4 on. A lot that was bought prepared is ready to spin.

    Parameters
    ----------
    fiber : f, mass of prepared fiber to have
    stage : of its lot: 1 raw, 2 skirted, 3 washed, 4 prepared, 5 yarn

    Returns
    -------
    p, a mass

    Raises
    ------
    ValueError
        A negative mass.

    Notes
    -----
    Valid for a lot all of which is in the state in which it was bought.

    References
    ----------
    Definition of a stage.
    """
    require_numbers(fiber, stage)
    require(fiber >= NO_MASS, "The mass of the fiber cannot be negative.")
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

    m = Σ m i, over the strands that there are. While one is unknown, so is the whole.

    Parameters
    ----------
    amount_1 : mass for the first strand
    amount_2 : mass for the second strand
    share_2 : share of the second strand in the yarn, if there is one
    amount_3 : mass for the third strand
    share_3 : share of the third strand in the yarn, if there is one
    amount_4 : mass for the fourth strand
    share_4 : share of the fourth strand in the yarn, if there is one

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A strand whose mass is not known.

    Notes
    -----
    Valid for masses in like states, or told as one weight to buy.

    References
    ----------
    Definition of a sum.
    """
    require_numbers(amount_1, amount_2, share_2, amount_3, share_3, amount_4, share_4)
    together = amount_1
    for amount, share in ((amount_2, share_2), (amount_3, share_3), (amount_4, share_4)):
        require(share is None or amount is not None, "The mass of a strand is not known.")
        if share is not None:
            together = together + amount
    return together


@calculation
def left_share(length: Length, in_skeins: Length, used: Mass | None = None) -> Ratio:
    """Share of a project's yarn that is still to be made.

    q = max(0, 1 - S / L), and nothing once the piece is finished. Its skeins are made.

    Parameters
    ----------
    length : L, length of its yarn
    in_skeins : S, length in the skeins that belong to it
    used : mass of yarn that the finished piece took

    Returns
    -------
    q, from 0 to 1

    Raises
    ------
    ValueError
        A length that is not above zero, or a negative length or mass.

    Notes
    -----
    Valid for a project whose skeins are in the log.

    References
    ----------
    Definition of a remainder.
    """
    require_numbers(length, in_skeins, used)
    require(length > NOTHING, "The length must be above zero.")
    require(in_skeins >= NOTHING, "The length in skeins cannot be negative.")
    if used is not None:
        require(used >= NO_MASS, "A piece cannot have used less than nothing.")
        return (in_skeins / length).m_as("") * 0.0
    return np.maximum(1 - (in_skeins / length).m_as(""), 0.0)


@calculation
def per_bobbin(mass: Mass, bobbins: Ratio) -> Mass:
    """Mass for each bobbin.

    b = m / k. Bobbins filled alike run out together when they are plied.

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
        A negative mass, or bobbins that are no whole number from 1 up.

    Notes
    -----
    Valid for singles of one grist, as even as the scale can tell.

    References
    ----------
    Definition of a share.
    """
    require(mass >= NO_MASS, "The mass to share out cannot be negative.")
    require((bobbins >= 1) & (bobbins % 1 == 0), "The number of bobbins is a whole number, 1 or more.")
    return mass / bobbins


@calculation
def surplus(have: Some, need: Some) -> Some:
    """What is left over when the need is met.

    s = H - N. Below zero it is what is lacking.

    Parameters
    ----------
    have : H, what there is, any quantity; below zero where others need more than there is
    need : N, what is needed, of the same kind

    Returns
    -------
    s, of the same kind

    Raises
    ------
    ValueError
        A negative need, or what there is not being a number.
    DimensionalityError
        Two amounts of different kinds.

    Notes
    -----
    Valid for amounts of the same thing, lengths or masses.

    References
    ----------
    Definition of the surplus.
    """
    require_numbers(have, need)
    difference = have - need
    require(np.isfinite(have.magnitude if isinstance(have, Quantity) else have), "What there is must be a number.")
    require(need >= 0, "What is needed cannot be negative.")
    return difference


@calculation
def all_there_is(in_skeins: Length, to_come: Length | None = None) -> Length:
    """Length that there is and will be.

    H = S + M. Yarn in skeins counts as measured, the rest as far as the scarcest strand lasts.

    Parameters
    ----------
    in_skeins : S, length in the skeins that belong to the project
    to_come : M, length that its lots still give, if it has a yarn; below zero where others need more than there is

    Returns
    -------
    H, a length

    Raises
    ------
    ValueError
        A negative length in skeins.

    Notes
    -----
    Valid for a project whose skeins are in the log.

    References
    ----------
    Definition of a sum.
    """
    require_numbers(in_skeins, to_come)
    require(in_skeins >= NOTHING, "The length in skeins cannot be negative.")
    return in_skeins if to_come is None else in_skeins + to_come


@calculation
def skein_holds(skeins: Ratio, in_skeins: Length, usual: Length, package: Length | None = None) -> Length:
    """Length that a skein or a ball is taken to hold.

    ℓ = the ball's, or S / n of the skeins spun, or what is usual. It tells how many are still to come.

    Parameters
    ----------
    skeins : n, skeins of the project that were weighed
    in_skeins : S, length in its skeins
    usual : what is usual
    package : length of a ball, if the yarn is bought

    Returns
    -------
    ℓ, a length

    Raises
    ------
    ValueError
        A negative number or length, or skeins of no length.

    Notes
    -----
    Valid for skeins of about one length.

    References
    ----------
    Common practice, no source.
    """
    require_numbers(skeins, in_skeins, usual, package)
    require(skeins >= 0, "The number of skeins cannot be negative.")
    require(usual > NOTHING, "A skein must hold something.")
    require((in_skeins > NOTHING) | (skeins == 0) | (package is not None), "Skeins must have a length.")
    if package is not None:
        require(package > NOTHING, "A ball must hold something.")
        return package + in_skeins * 0.0
    return np.where(skeins > 0, in_skeins / np.maximum(skeins, 1), usual)[()]


@calculation
def unwashed_length(length: Length, shrinkage: Ratio, bought_share: Ratio | None = None) -> Length:
    """Length to spin before washing.

    U = L / (1 - s), and 0 of a yarn that is bought. Divide by what is left; adding what is lost gives too little.

    Parameters
    ----------
    length : L, finished length
    shrinkage : s, share of the length lost in washing; negative where yarn grows
    bought_share : share of the yarn that is bought, if it is known

    Returns
    -------
    U, a length

    Raises
    ------
    ValueError
        A negative length, or a shrinkage of 0.9 or more.

    Notes
    -----
    Valid for yarn washed like the sample, which keeps over a tenth of its length: as the
    shrinkage nears the whole, the length to spin hangs on its last digits.

    References
    ----------
    Definition of the shrinkage.
    """
    require(length >= NOTHING, "The length cannot be negative.")
    require(shrinkage < 0.9, "The shrinkage lies under 0.9.")
    require_numbers(length, shrinkage, bought_share)
    spun = 1.0 if bought_share is None else np.where(np.asarray(bought_share) > 0.999999, 0.0, 1.0)[()]
    return length / (1 - shrinkage) * spun
