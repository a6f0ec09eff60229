"""What a piece of work needs, and whether it is there.

A wanted length becomes yarn to spin, yarn becomes fiber to have, and what is in hand is
set against it. The verdict is a sentence in yards and meters, since that is the question
a person asks.
"""

import numpy as np

from workbookgen.reference.law import by_element, law, require
from workbookgen.units import Grist, Length, Mass, Quantity, Ratio, Some

NOTHING = Quantity(0.0, "m")
NO_MASS = Quantity(0.0, "g")
NO_GRIST = Quantity(0.0, "m/g")
TOO_MUCH = Quantity(1e8, "m")  # beyond it a whole number has more figures than programs agree on
ROUNDING = 1e-9  # a share found by dividing two equal masses may miss 1 by a hair


@law
def wanted_in_use(stated: Length | None = None, estimated: Length | None = None) -> Length:
    """Length of yarn that a piece takes, as the planner reckons with it.

    Y = stated, or else estimated. A pattern that was knitted or woven before knows best.

    Parameters
    ----------
    stated : length that the pattern or one's own record states
    estimated : length estimated from the size of the piece

    Returns
    -------
    Y, a length

    Raises
    ------
    ValueError
        Neither is known, or the length in use is not above zero.

    Notes
    -----
    Valid for two figures of the same piece, both without a margin.

    References
    ----------
    Common practice, no source.
    """
    length = estimated if stated is None else stated
    require(length is not None, "Give the length that the pattern states, or estimate it.")
    require(length > NOTHING, "The length wanted must be above zero.")
    return length


@law
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


@law
def fiber_for(yarn: Mass, kept: Ratio) -> Mass:
    """Mass of fiber to have for a mass of yarn.

    f = y / k. Divide by what is kept; adding what is lost gives too little.

    Parameters
    ----------
    yarn : y, mass of the yarn
    kept : k, share of the fiber that becomes yarn, above 0 to 1

    Returns
    -------
    f, a mass

    Raises
    ------
    ValueError
        A negative mass, or a share kept outside 0 to 1.

    Notes
    -----
    Valid for fiber in the state for which the share kept was found.

    References
    ----------
    Definition of the share kept.
    """
    require(yarn >= NO_MASS, "The mass of the yarn cannot be negative.")
    require((kept > 0) & (kept <= 1 + ROUNDING), "The share kept lies above 0 and up to 1.")
    return yarn / kept


@law
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


@law
def length_in_hand(spun_length: Length, to_come: Mass, grist: Grist) -> Length:
    """Length of yarn that is there or is still to come from the fiber.

    H = S + m · g. Yarn on the shelf counts as measured, fiber counts at the planned grist.

    Parameters
    ----------
    spun_length : S, length already spun
    to_come : m, mass of the yarn that the remaining fiber will give
    grist : g, grist to which it will be spun

    Returns
    -------
    H, a length

    Raises
    ------
    ValueError
        A negative length or mass, or a grist that is not above zero.

    Notes
    -----
    Valid for fiber that is spun to the planned grist.

    References
    ----------
    Definition of the grist.
    """
    require(spun_length >= NOTHING, "The length spun cannot be negative.")
    require(to_come >= NO_MASS, "The mass still to come cannot be negative.")
    require(grist > NO_GRIST, "The grist must be above zero.")
    return spun_length + (to_come * grist).to("meter")


@law
def surplus(have: Some, need: Some) -> Some:
    """What is left over when the need is met.

    s = H - N. Below zero it is what is lacking.

    Parameters
    ----------
    have : H, what there is, any quantity
    need : N, what is needed, of the same kind

    Returns
    -------
    s, of the same kind

    Raises
    ------
    ValueError
        A negative amount.
    DimensionalityError
        Two amounts of different kinds.

    Notes
    -----
    Valid for amounts of the same thing, lengths or masses.

    References
    ----------
    Definition of the surplus.
    """
    difference = have - need
    require(have >= 0, "What there is cannot be negative.")
    require(need >= 0, "What is needed cannot be negative.")
    return difference


@law
def verdict(surplus: Length | None = None, alone: Length | None = None, used: Mass | None = None) -> str:
    """Whether it is enough, in a sentence.

    finished once it is known what was used; enough while s ≥ 0; enough alone while a ≥ 0; else
    short. The amount is told in whole yards and whole meters.

    Parameters
    ----------
    surplus : s, length that is left over when other projects on the same lots have theirs, below zero when some is lacking
    alone : a, length that would be left over without them
    used : mass of yarn that the finished piece took

    Returns
    -------
    a text such as "enough, 120 yd (110 m) to spare" or "short by 80 yd (73 m)"

    Raises
    ------
    ValueError
        Neither a surplus nor what was used; a surplus that is not a number, or too great to
        tell; a negative mass.

    Notes
    -----
    Valid for less than 100,000 km either way; halves round away from zero.

    References
    ----------
    Definition of the surplus.
    """
    if used is not None:
        require(used >= NO_MASS, "A piece cannot have used less than nothing.")
        require(surplus is None or surplus == surplus, "The surplus must be a number.")
        return by_element(lambda _: "finished", used.m_as("gram"))
    require(surplus is not None, "Give what is left over, or what the finished piece used.")
    require(abs(surplus) < TOO_MUCH, "The surplus is more than words can tell.")
    alone = surplus if alone is None else alone
    require(np.isfinite(alone), "The surplus without the others must be a number.")
    return by_element(_sentence, surplus.m_as("yard"), surplus.m_as("meter"), alone.m_as("meter"))


@law
def planned_grist(own: Grist | None = None, sample: Grist | None = None) -> Grist:
    """Grist that a project plans with.

    g = own, or else the sample's. What is typed wins over what was measured.

    Parameters
    ----------
    own : grist as typed
    sample : grist of a sample

    Returns
    -------
    g, length in a mass

    Raises
    ------
    ValueError
        Neither is known, or the grist in use is not above zero.

    Notes
    -----
    Valid for yarn spun like the sample.

    References
    ----------
    Common practice, no source.
    """
    grist = sample if own is None else own
    require(grist is not None, "Give the grist, or a sample that has one.")
    require(grist > NO_GRIST, "The grist must be above zero.")
    return grist


@law
def kept_in_spinning(sample_loss: Ratio | None = None, lot: Ratio | None = None) -> Ratio:
    """Share of the prepared fiber that becomes yarn.

    k = 1 - l of the sample, or else the lot's. A weighed sample beats what is expected.

    Parameters
    ----------
    sample_loss : l, share lost in spinning the sample
    lot : share kept that the lot expects

    Returns
    -------
    k, a share

    Raises
    ------
    ValueError
        Neither is known, or the share in use lies outside 0 to 1.

    Notes
    -----
    Valid for fiber prepared like the sample's.

    References
    ----------
    Common practice, no source.
    """
    kept = lot if sample_loss is None else 1 - sample_loss
    require(kept is not None, "Choose a lot, or a sample that was weighed.")
    require((kept > 0) & (kept <= 1 + ROUNDING), "The share kept lies above 0 and up to 1.")
    return kept


@law
def unwashed_length(length: Length, shrinkage: Ratio) -> Length:
    """Length to spin before washing.

    U = L / (1 - s). Divide by what is left; adding what is lost gives too little.

    Parameters
    ----------
    length : L, finished length
    shrinkage : s, share of the length lost in washing; negative where yarn grows

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
    return length / (1 - shrinkage)


def _sentence(yards, meters, alone) -> str:
    amount = f"{_whole(yards)} yd ({_whole(meters)} m)"
    if yards >= 0:
        return f"enough, {amount} to spare"
    return f"enough alone, together short by {amount}" if alone >= 0 else f"short by {amount}"


def _whole(amount) -> int:
    # Python rounds halves to even; a person rounds them up. The last digits of a
    # conversion must not decide a half.
    return int(np.floor(round(abs(float(amount)), 9) + 0.5))
