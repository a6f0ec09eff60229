"""How certain the yarn is that is still to come from lots, strand by strand.

What is still to be spun may deviate from the plan, until skeins show how it comes out (`learned`); what was bought
deviates as its label does. Components of a ply cannot replace each other, so what counts is the least of them, which is
expected to be less than any one of them alone.
"""

import math

import numpy as np

from workbookgen.reference.calculation import calculation, quotient, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NO_MASS, NOT_NEGATIVE, PART, require_within
from workbookgen.units import Area, Grist, Length, Mass, MassSquared, Quantity, Ratio

FAR = 6  # combined uncertainties apart, the higher one turns out the lesser once in a billion cases
KNOWN_WELL = 20  # times less uncertain than the other
SHARP = 12  # decimals of the combined uncertainty
HAND_IN_COMMON = 0.5  # of the variance by which one hand errs: of all strands that it spins


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
) -> Mass:
    """Standard uncertainty of what a component still gives, as a mass.

    u = √(max(0, p - e · (m + e)) + o + b + (m · r)²), without o and b where m = 0. The lots may give more or less, but
    no less than nothing, the others may need more or less, and all of it may be spun finer or thicker: what others
    leave is as uncertain as the whole. Of lots that give nothing, the others take nothing. A project that needs no more
    of it cannot have less than nothing from it: u is then at most what is left.

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
    by_hand = others_square * 0.0 if others_hand is None else others_hand
    require_numbers(pool_square, others_square, pool, relative, needs, left, more, by_hand)
    require_within(NOT_NEGATIVE, "A squared uncertainty", pool_square, others_square, by_hand)
    require_within(NOT_NEGATIVE, "A standard uncertainty", relative)
    require_within(NOT_NEGATIVE, "What the lots give more", more)
    of_lots = np.maximum(0.0, (pool_square - more * (pool + more)).m_as("g^2"))
    of_others = np.where(pool.m_as("g") > 0, (others_square + by_hand).m_as("g^2"), 0.0)
    whole = np.sqrt(of_lots + of_others + np.square((pool * relative).m_as("g")))
    return Quantity(np.where(needs.m_as("g") > 0, whole, np.minimum(whole, left.m_as("g")))[()], "g")


@calculation
def lesser(
    first: Length,
    u_first: Length,
    second: Length | None = None,
    u_second: Length | None = None,
    shared: Area | None = None,
) -> Length:
    """Expected value of the lesser of two lengths.

    L = L₁ · Φ(-a) + L₂ · Φ(a) - t · φ(a), t = √(u₁² + u₂² - 2c), a = (L₁ - L₂) / t. Two strands expected to last
    equally long will hardly both do so, and the shorter one ends the ply.

    Parameters
    ----------
    first : L₁, one length
    u_first : u₁, its standard uncertainty
    second : L₂, the other length, if there is one
    u_second : u₂, its standard uncertainty
    shared : c, the covariance of the two

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A negative uncertainty.

    Notes
    -----
    Valid for two normally distributed lengths. If they are 6 t apart or more, it is the lesser itself. How
    far it lies below that is taken to twelve decimals of t: far apart, what is left of Φ and φ is noise of the program.

    References
    ----------
    C. E. Clark, The greatest of a finite set of random variables, 1961 (from memory).

    Examples
    --------
    >>> # 100 - 5 / √(2 π)
    >>> print(round(lesser(Quantity(100, "m"), Quantity(3, "m"), Quantity(100, "m"), Quantity(4, "m")), 2))
    98.01 meter
    """
    require_numbers(first, u_first, second, u_second, shared)
    mean, _ = _lesser_of_two(first, u_first, second, u_second, shared)
    return mean


@calculation
def lesser_uncertainty(
    first: Length,
    u_first: Length,
    second: Length | None = None,
    u_second: Length | None = None,
    shared: Area | None = None,
) -> Length:
    """Standard uncertainty of the lesser of two lengths.

    u² = (L₁² + u₁²) · Φ(-a) + (L₂² + u₂²) · Φ(a) - (L₁ + L₂) · t · φ(a) - L², t = √(u₁² + u₂² - 2c). It is no larger
    than that of the more uncertain of the two.

    Parameters
    ----------
    first : L₁, one length
    u_first : u₁, its standard uncertainty
    second : L₂, the other length, if there is one
    u_second : u₂, its standard uncertainty
    shared : c, the covariance of the two

    Returns
    -------
    u, a length

    Raises
    ------
    ValueError
        A negative uncertainty.

    Notes
    -----
    Valid for two normally distributed lengths. Each uncertainty counts as at least a twentieth of the
    other, and if the two are 6 t apart or more, it is the lesser's own: beyond that, programs run out of digits.

    References
    ----------
    C. E. Clark, The greatest of a finite set of random variables, 1961 (from memory).

    Examples
    --------
    >>> print(lesser_uncertainty(Quantity(100, "m"), Quantity(3, "m"), Quantity(300, "m"), Quantity(4, "m")))
    3.0 meter
    """
    require_numbers(first, u_first, second, u_second, shared)
    _, doubt = _lesser_of_two(first, u_first, second, u_second, shared)
    return doubt


@calculation
def hand_in_common(
    first: Length,
    second: Length,
    u_hand: Ratio,
    bought_1: Ratio,
    bought_2: Ratio,
    bought_3: Ratio = 0.0,
    bought_4: Ratio = 0.0,
) -> Area:
    """What the lengths of two strands of one hand have in common.

    c = h² · L₁ · L₂ / 2, and 0 where one of the strands so far is bought, or lasts for nothing. A hand that spins finer
    than planned makes both of them longer; but fibers draft differently, so that half of it is each strand's own.

    Parameters
    ----------
    first : L₁, length for which the shortest of the strands so far lasts
    second : L₂, that of the next one
    u_hand : h, relative uncertainty of the grist of all that is still to be spun
    bought_1, bought_2, bought_3, bought_4 : 1 for each strand so far that is bought, else 0

    Returns
    -------
    c, a covariance

    Raises
    ------
    ValueError
        A negative uncertainty.

    Notes
    -----
    Valid for strands that one hand spins. Of a thread among them, what the others have in common is left out, so that
    they count as independent.

    References
    ----------
    JCGM 100, F.1.2.3, covariance of quantities that depend on the same one (from memory). That half of what a hand errs
    by is common to all that it spins: common practice, no source.

    Examples
    --------
    >>> print(hand_in_common(Quantity(100, "m"), Quantity(200, "m"), 0.5, 0, 0))
    2500.0 meter ** 2
    """
    require_numbers(first, second, u_hand, bought_1, bought_2, bought_3, bought_4)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_hand)
    are_spun = np.all(
        [np.asarray(each) == 0 for each in np.broadcast_arrays(bought_1, bought_2, bought_3, bought_4)], axis=0
    )
    both = np.maximum(first.m_as("m"), 0.0) * np.maximum(second.m_as("m"), 0.0)
    return Quantity((HAND_IN_COMMON * np.square(u_hand) * both * are_spun)[()], "m^2")


@calculation
def shared_by_all(
    u_hand: Ratio,
    bought_1: Ratio,
    bought_2: Ratio | None = None,
    bought_3: Ratio | None = None,
    bought_4: Ratio | None = None,
) -> Ratio:
    """Relative variance that all strands of a yarn have in common.

    r = h² / 2, and 0 where any strand is bought. It makes the strands longer or shorter together, so that none of them
    runs out earlier by it.

    Parameters
    ----------
    u_hand : h, relative uncertainty of the grist of all that is still to be spun
    bought_1, bought_2, bought_3, bought_4 : 1 for each strand that is bought, else 0; none for one that is not there

    Returns
    -------
    r, a squared share

    Raises
    ------
    ValueError
        A negative uncertainty.

    Notes
    -----
    Valid for strands that one hand spins.

    References
    ----------
    That half of what a hand errs by is common to all that it spins: common practice, no source.

    Examples
    --------
    >>> print(shared_by_all(0.5, 0, 0))
    0.125
    """
    require_numbers(u_hand, bought_1, bought_2, bought_3, bought_4)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_hand)
    bought = [np.asarray(each) for each in (bought_1, bought_2, bought_3, bought_4) if each is not None]
    are_spun = np.all([each == 0 for each in np.broadcast_arrays(*bought)], axis=0)
    return (HAND_IN_COMMON * np.square(u_hand) * are_spun)[()]


def _lesser_of_two(first, u_first, second, u_second, shared):
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_first)
    if second is None or u_second is None:
        return first, u_first
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_second)
    numbers = (each.m_as("m") for each in (first, u_first, second, u_second))
    covariance = 0.0 if shared is None else shared.m_as("m^2")
    mean, doubt = np.vectorize(_clark, otypes=[float, float])(*numbers, covariance)
    return Quantity(mean[()], "m"), Quantity(doubt[()], "m")


def _clark(first: float, u_first: float, second: float, u_second: float, covariance: float) -> tuple[float, float]:
    """Clark's two moments, relative to the length expected to be less: that keeps the digits."""
    (low, u_low), (high, u_high) = sorted(((first, u_first), (second, u_second)), key=lambda each: each[0])
    apart, together = high - low, math.sqrt(max(0.0, u_low**2 + u_high**2 - 2 * covariance))
    if apart >= FAR * together:
        return low, u_low
    a = apart / together
    after = 0.5 * math.erfc(a / math.sqrt(2))  # chance that the higher one turns out the lesser
    bell = math.exp(-(a**2) / 2) / math.sqrt(2 * math.pi)
    below = apart * after - together * bell
    u_low, u_high = max(u_low, u_high / KNOWN_WELL), max(u_high, u_low / KNOWN_WELL)
    variance = u_low**2 * (1 - after) + (apart**2 + u_high**2) * after - apart * together * bell - below**2
    return low - together * round(bell - a * after, SHARP), math.sqrt(max(variance, 0.0))


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
