"""Twist of a plied yarn, beside that of its singles.

Plying goes in the opposite direction and takes twist out of the singles. At the right share of their twist, the yarn
hangs without twisting; no book settles how large that share is, so it is an argument here, and a fresh sample that
plies back on itself beats it.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.reference.twist.ply_path import require_strands
from workbookgen.units import PerLength, Ratio

USUAL_SHARE = 2 / 3
STILL_BALANCED = 0.125  # 0.75 of the singles' twist, the most that is usual, against two thirds

BALANCED = "balanced"
MORE, LESS = "more ply twist than balance", "less ply twist than balance"


@calculation
def ply_twist(singles_twist: PerLength, share: Ratio = USUAL_SHARE) -> PerLength:
    """Twist of the ply, as a share of that of the singles.

    P = q · T. A first estimate, to be tried on a sample.

    Parameters
    ----------
    singles_twist : T, twist of the singles
    share : q, two thirds if not given

    Returns
    -------
    P, a number per length of ply

    Raises
    ------
    ValueError
        A negative twist, or a share that is not above zero.

    Notes
    -----
    Valid for singles of equal twist, plied in the opposite direction; shares of 0.5 to 0.75 are in use.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(ply_twist(Quantity(300, "1/m")))
    200.0 / meter
    """
    require_within(NOT_NEGATIVE, "The twist of the singles", singles_twist)
    _require_share(share)
    return share * singles_twist


@calculation
def equal_factor_ply_twist(singles_twist: PerLength, strands: Ratio) -> PerLength:
    """Twist of a ply with the twist factor of its singles.

    P = T / √n. The ply is n times as heavy, so the same factor means fewer turns.

    Parameters
    ----------
    singles_twist : T, twist of the singles
    strands : n, number of strands, 2 to 12

    Returns
    -------
    P, a number per length of ply

    Raises
    ------
    ValueError
        A negative twist, or strands that are not a whole number from 2 to 12.

    Notes
    -----
    Valid for equal strands, without take-up.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(equal_factor_ply_twist(Quantity(300, "1/m"), 4))
    150.0 / meter
    """
    require_within(NOT_NEGATIVE, "The twist of the singles", singles_twist)
    require_strands(strands)
    return singles_twist / np.sqrt(strands)


@calculation
def twist_left(
    singles_twist: PerLength, ply_twist: PerLength | None = None, plied: PerLength | None = None
) -> PerLength:
    """Twist left in the singles after plying.

    R = T - P. Plying against the singles takes about a turn out of them for each turn of the ply; below zero, they
    are twisted in the opposite direction.

    Parameters
    ----------
    singles_twist : T, twist of the singles before plying
    ply_twist : P, twist of the ply as planned
    plied : P as counted on a sample, which replaces the plan

    Returns
    -------
    R, a number per length

    Raises
    ------
    ValueError
        No twist of the ply, or a negative twist.

    Notes
    -----
    Valid for singles and ply of opposite directions, apart from the few percent of the take-up.

    References
    ----------
    Geometry; that a turn of the ply removes a turn: common practice, no source.

    Examples
    --------
    >>> print(twist_left(Quantity(300, "1/m"), Quantity(200, "1/m")))
    100 / meter
    """
    ply = ply_twist if plied is None else plied
    require(ply is not None, "Give the twist of the ply, planned or counted.")
    require_within(NOT_NEGATIVE, "The twist", singles_twist, ply)
    return singles_twist - ply


@calculation
def balance(singles_twist: PerLength, plied_twist: PerLength, share: Ratio = USUAL_SHARE) -> Ratio:
    """How far the twist of a ply is from balance.

    b = P / (q · T) - 1. It is 0 at balance, and above zero with more ply twist.

    Parameters
    ----------
    singles_twist : T, twist of the singles before plying
    plied_twist : P, twist of the ply
    share : q, share of the singles' twist at which the yarn is balanced

    Returns
    -------
    b, a share

    Raises
    ------
    ValueError
        A singles' twist or a share that is not above zero, or a negative twist of the ply.

    Notes
    -----
    Valid for singles of equal twist, plied in the opposite direction, both counted before washing or both after it; a
    hanging loop decides.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(balance(Quantity(300, "1/m"), Quantity(250, "1/m")))
    0.25
    """
    require_within(ABOVE_ZERO, "The singles must have some twist.", singles_twist)
    require_within(NOT_NEGATIVE, "The twist of the ply", plied_twist)
    _require_share(share)
    return (plied_twist / (share * singles_twist)).m_as("") - 1


@calculation
def balance_words(balance: Ratio) -> str:
    """Whether a ply is balanced, in words.

    balanced if |b| ≤ 1/8, else more or less ply twist than that. Of two thirds, that is 0.58 to 0.75 of the singles'
    twist, which is what is usual.

    Parameters
    ----------
    balance : b, how far the twist of the ply is from balance, from -1 up

    Returns
    -------
    "balanced", "more ply twist than balance" or "less ply twist than balance"

    Raises
    ------
    ValueError
        A balance below -1, which is impossible.

    Notes
    -----
    Valid for a first estimate; b is taken to nine decimals.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(balance_words(0.25))
    more ply twist than balance
    """
    require(balance >= -1, "The balance cannot be below -1: that is a ply without any twist.")
    return by_element(_words, balance)


def _words(balance) -> str:
    # The last digits of a quotient must not decide a borderline case.
    rounded = round(float(balance), 9)
    if abs(rounded) <= STILL_BALANCED:
        return BALANCED
    return MORE if rounded > 0 else LESS


@calculation
def opposite(direction: str) -> str:
    """The opposite direction of twist.

    direction of the ply = S for Z, Z for S. Plies are twisted opposite to their singles.

    Parameters
    ----------
    direction : "Z" or "S"; case does not matter

    Returns
    -------
    "S" or "Z"

    Raises
    ------
    ValueError
        A direction that is neither Z nor S.

    Notes
    -----
    Valid for plies of singles that all have one direction.

    References
    ----------
    Definition of Z and S by the slant of the letters, ISO 2 (from memory).

    Examples
    --------
    >>> print(opposite("Z"))
    S
    """
    return by_element(_opposite, direction)


def _opposite(direction) -> str:
    letter = str(direction).upper()
    require(letter in ("Z", "S"), f'"{direction}" is not a direction of twist: give Z or S.')
    return "S" if letter == "Z" else "Z"


def _require_share(share: Ratio) -> None:
    require_within(ABOVE_ZERO, "The share of the singles' twist", share)
