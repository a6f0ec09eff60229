"""How long the shortest strand of a ply lasts, and what strands of one hand have in common.

Strands of a ply cannot replace each other, so what counts is the least of them, which is expected to be less than any
one of them alone; the less so, the more they have in common.
"""

import math

import numpy as np

from workbookgen.reference.calculation import calculation, require_numbers
from workbookgen.reference.limits import NO_LENGTH, NOT_NEGATIVE, require_within
from workbookgen.units import Area, Length, Quantity, Ratio

FAR = 6  # combined uncertainties apart, the higher one turns out the lesser once in a billion cases
KNOWN_WELL = 20  # times less uncertain than the other
SHARP = 12  # decimals of the combined uncertainty
HAND_IN_COMMON = 0.5  # of the variance by which one hand errs: of all strands that it spins


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
    apart: Ratio = 0.0,
    in_skeins: Length = NO_LENGTH,
) -> Area:
    """What the lengths of two strands of one hand have in common.

    c = h² · L₁ · L₂ / 2 - q · (L₁ + S) · (L₂ + S), and 0 where one of the strands so far is bought. A hand that spins
    finer than planned makes both of them longer; but fibers draft differently, so that half of it is each strand's own.
    Skeins tell of all strands together: where one was thicker, another was finer.

    Parameters
    ----------
    first : L₁, length for which the shortest of the strands so far lasts
    second : L₂, that of the next one
    u_hand : h, relative uncertainty of the grist of all that is still to be spun
    bought_1, bought_2, bought_3, bought_4 : 1 for each strand so far that is bought, else 0
    apart : q, by how much one strand is thicker where another is finer, squared
    in_skeins : S, length of all skeins of its design, whichever piece they are for

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
    require_numbers(first, second, u_hand, bought_1, bought_2, bought_3, bought_4, apart, in_skeins)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_hand)
    require_within(NOT_NEGATIVE, "What is apart", apart)
    require_within(NOT_NEGATIVE, "A length", in_skeins)
    are_spun = np.all(
        [np.asarray(each) == 0 for each in np.broadcast_arrays(bought_1, bought_2, bought_3, bought_4)], axis=0
    )
    one, other, made = np.maximum(first.m_as("m"), 0.0), np.maximum(second.m_as("m"), 0.0), in_skeins.m_as("m")
    shared = HAND_IN_COMMON * np.square(u_hand) * one * other - apart * (one + made) * (other + made)
    return Quantity((shared * are_spun)[()], "m^2")


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
