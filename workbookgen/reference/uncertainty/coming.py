"""How certain the yarn is that is still to come from lots, strand by strand.

What is still to be spun may deviate from the plan, until skeins show how it comes out (`learned`); what was bought
deviates as its label does. Strands of a ply cannot replace each other: `shortest` has the least of them.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, quotient, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NO_MASS, NOT_NEGATIVE, PART, require_within
from workbookgen.units import Grist, Length, Mass, MassSquared, Quantity, Ratio


@calculation
def grist_uncertainty(
    pool: Mass,
    share: Ratio,
    planned: Grist,
    hold: Length,
    bought: Ratio,
    u_hand: Ratio,
    variation: Ratio,
    u_batch: Ratio,
    u_ball: Ratio,
) -> Ratio:
    """Relative uncertainty of the grist of what is still to come.

    r = √(h² + c² / k) of what is spun, r = √(h_b² + c_b² / k) of what is bought. Many skeins average out;
    an error common to all of them does not.

    Parameters
    ----------
    pool : M, mass of the component that is to come, for all projects together
    share : x, share of the component in the yarn's weight
    planned : g, planned grist of the yarn
    hold : ℓ, length in one skein or ball; k = M · g / x / ℓ, but at least 1
    bought : 1 for a bought yarn or thread, 0 for one to be spun
    u_hand : h, relative uncertainty of the grist of all that is spun
    variation : c, coefficient of variation between skeins
    u_batch : h_b, relative uncertainty of a label, for the whole batch
    u_ball : c_b, relative uncertainty of one ball against the others

    Returns
    -------
    r, a share

    Raises
    ------
    ValueError
        A negative uncertainty, or a share or a skein that is not above zero.

    Notes
    -----
    Valid for skeins of about equal length.

    References
    ----------
    JCGM 100, 4.2.3 and 5.1.2 (from memory).

    Examples
    --------
    >>> print(grist_uncertainty(Quantity(400, "g"), 1, Quantity(2, "m/g"), Quantity(200, "m"), bought=0,
    ...     u_hand=0.08, variation=0.12, u_batch=0, u_ball=0))
    0.1
    """
    require_numbers(pool, share, planned, hold, bought, u_hand, variation, u_batch, u_ball)
    require_within(ABOVE_ZERO, "A skein must hold something.", hold)
    for doubt in (u_hand, variation, u_batch, u_ball):
        require_within(NOT_NEGATIVE, "A standard uncertainty", doubt)
    require_within(ABOVE_ZERO, "The share", share)
    skeins = np.maximum((pool * planned / share / hold).m_as(""), 1.0)
    spun = np.hypot(u_hand, variation / np.sqrt(skeins))
    return np.where(np.asarray(bought) == 1, np.hypot(u_batch, u_ball / np.sqrt(skeins)), spun)[()]


@calculation
def coming_uncertainty(
    pool_square: MassSquared,
    others_square: MassSquared,
    pool: Mass,
    relative: Ratio,
    needs: Mass,
    left: Mass,
    more: Mass = NO_MASS,
    others_hand: MassSquared | None = None,
    apart: MassSquared | None = None,
) -> Mass:
    """Standard uncertainty of what a component still gives, as a mass.

    u = √(max(0, p - e · (m + e)) + o + b + s + (m · r)²), without o, b and s where m = 0. The lots may give more or
    less, but no less than nothing, the others may need more or less, and all of it may be spun finer or thicker: what
    others leave is as uncertain as the whole. Of lots that give nothing, the others take nothing. A project that needs
    no more of it cannot have less than nothing from it: u is then at most what is left.

    Parameters
    ----------
    pool_square : p, squared uncertainty of the lots
    others_square : o, squared uncertainty of what other projects need of them
    pool : m, mass that the lots still give, for all projects together
    relative : r, relative uncertainty of its grist
    needs : mass that the project still needs of it
    left : mass that the others leave
    more : e, by how much lots that cannot give less than nothing give more on average
    others_hand : b, squared uncertainty of the hand that spins for the others, as far as this project knows its own
    apart : s, squared uncertainty by what skeins of several strands do not tell of one

    Returns
    -------
    u, a mass

    Raises
    ------
    ValueError
        A negative mass or uncertainty.

    Notes
    -----
    Valid for independent uncertainties.

    References
    ----------
    JCGM 100, 5.1.2 (from memory); variance of a normal distribution cut off at zero: textbooks of statistics (from
    memory).

    Examples
    --------
    >>> print(coming_uncertainty(Quantity(9, "g^2"), Quantity(16, "g^2"), Quantity(100, "g"), 0, Quantity(40, "g"),
    ...     Quantity(60, "g")))
    5.0 gram
    """
    by_hand, by_strand = (others_square * 0.0 if each is None else each for each in (others_hand, apart))
    require_numbers(pool_square, others_square, pool, relative, needs, left, more, by_hand, by_strand)
    require_within(NOT_NEGATIVE, "A squared uncertainty", pool_square, others_square, by_hand, by_strand)
    require_within(NOT_NEGATIVE, "A standard uncertainty", relative)
    require_within(NOT_NEGATIVE, "What the lots give more", more)
    of_lots = np.maximum(0.0, (pool_square - more * (pool + more)).m_as("g^2"))
    of_others = np.where(pool.m_as("g") > 0, (others_square + by_hand + by_strand).m_as("g^2"), 0.0)
    whole = np.sqrt(of_lots + of_others + np.square((pool * relative).m_as("g")))
    return Quantity(np.where(needs.m_as("g") > 0, whole, np.minimum(whole, left.m_as("g")))[()], "g")


@calculation
def in_hand_uncertainty(
    skeins_doubt: Length,
    in_skeins: Length,
    weight: Ratio,
    u_scale: Ratio,
    to_come: Length | None = None,
    u_to_come: Length | None = None,
) -> Length:
    """Standard uncertainty of all that there is and will be.

    u = √((u_S · (1 + w · M / S))² + u_M² + (M · (1 - w) · r)²), or u_S where nothing is to come. An error in the skeins
    is an error in the grist learned from them as well, in the same direction.

    Parameters
    ----------
    skeins_doubt : u_S, standard uncertainty of the skeins together
    in_skeins : S, length in skeins
    weight : w, weight of the skeins against the plan
    u_scale : r, relative uncertainty of the scale; skeins weighed on it cancel it in proportion to their weight w
    to_come : M, length that is still to come, if there is a lot to spin it from
    u_to_come : u_M, its standard uncertainty

    Returns
    -------
    u, a length

    Raises
    ------
    ValueError
        A negative uncertainty or length, a weight outside 0 to 1, or a length to come without its uncertainty.

    Notes
    -----
    Valid for lots and skeins weighed on the same scale.

    References
    ----------
    JCGM 100, 5.2 and F.1.2, on correlated terms (from memory).

    Examples
    --------
    >>> print(in_hand_uncertainty(Quantity(3, "m"), Quantity(100, "m"), 0, 0, to_come=Quantity(200, "m"),
    ...     u_to_come=Quantity(4, "m")))
    5.0 meter
    """
    require_numbers(skeins_doubt, in_skeins, to_come, u_to_come, weight, u_scale)
    require_within(
        NOT_NEGATIVE, "A standard uncertainty", *(each for each in (skeins_doubt, u_to_come) if each is not None)
    )
    require_within(NOT_NEGATIVE, "The length in skeins", in_skeins)
    require_within(PART, "The weight", weight)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_scale)
    if to_come is None:
        return skeins_doubt
    require(u_to_come is not None, "What is to come is as uncertain as nobody says.")
    coming = np.maximum(to_come.m_as("m"), 0.0)
    together = 1 + weight * quotient(coming, in_skeins.m_as("m"))
    squares = np.square(skeins_doubt.m_as("m") * together) + np.square(u_to_come.m_as("m"))
    return Quantity(np.sqrt(squares + np.square(coming * (1 - weight) * u_scale))[()], "m")
