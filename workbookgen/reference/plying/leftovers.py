"""Singles left on the bobbins when the shortest runs out, and what can be made of them."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.limits import (
    ABOVE_ZERO,
    AT_LEAST_ONE,
    AT_LEAST_TWO,
    NOT_NEGATIVE,
    require_loss,
    require_within,
)
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.reference.words import said
from workbookgen.units import Grist, Length, Ratio

ALONE = "A ply takes two bobbins, a line each. As a chain, one gives a third of its length, less the take-up."
TOGETHER = 0.01  # of all singles: less than this share left over is not worth mentioning


@calculation
def left_over(has: Length, shortest: Length) -> Length:
    """What remains on a bobbin when the shortest runs out.

    r = ℓ - ℓ₁. Equal strands are drawn off equally.

    Parameters
    ----------
    has : ℓ, length on the bobbin
    shortest : ℓ₁, length on the shortest

    Returns
    -------
    r, a length

    Raises
    ------
    ValueError
        A bobbin that is shorter than the shortest.

    Notes
    -----
    Valid for strands plied alike, none of them as a core.

    References
    ----------
    Definition of the difference.

    Examples
    --------
    >>> print(left_over(Quantity(200, "m"), Quantity(180, "m")))
    20 meter
    """
    require_numbers(has, shortest)
    over = has - shortest
    require(over >= -ROUNDING * shortest, "No bobbin is shorter than the shortest.")
    return np.maximum(over, 0 * over)


@calculation
def left_in_all(total: Length, strands: Ratio, shortest: Length) -> Length:
    """What remains on all bobbins when the shortest runs out.

    r = Σℓ - n · ℓ₁. Each strand gives as much as the shortest has.

    Parameters
    ----------
    total : Σℓ, length on all bobbins
    strands : n, number of bobbins, one per strand
    shortest : ℓ₁, length on the shortest

    Returns
    -------
    r, a length

    Raises
    ------
    ValueError
        Fewer than two strands, or less in all than the shortest has on each.

    Notes
    -----
    Valid for one bobbin per strand.

    References
    ----------
    Definition of the difference.

    Examples
    --------
    >>> print(left_in_all(Quantity(380, "m"), strands=2, shortest=Quantity(180, "m")))
    20 meter
    """
    require_within(AT_LEAST_TWO, "A ply has at least two strands.", strands)
    require_numbers(total, strands, shortest)
    over = total - strands * shortest
    require(over >= -ROUNDING * total, "All bobbins hold at least what the shortest has.")
    return np.maximum(over, 0 * over)


@calculation
def plied_to_the_end(shortest: Length, strands: Ratio, take_up: Ratio = 0.0) -> Length:
    """Length of ply when the shortest bobbin runs out.

    L = ℓ₁ · (1 - c). All strands give the length of the shortest, however many there are.

    Parameters
    ----------
    shortest : ℓ₁, length on the shortest bobbin
    strands : n, number of bobbins, one per strand
    take_up : c, share of the singles' length lost in plying

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A negative length, fewer than two strands, or a take-up outside 0 to under 1.

    Notes
    -----
    Valid for equal strands, before washing.

    References
    ----------
    Definition of the take-up.

    Examples
    --------
    >>> print(plied_to_the_end(Quantity(180, "m"), 2, take_up=0.05))
    171.0 meter
    """
    require_within(NOT_NEGATIVE, "A length", shortest)
    require_within(AT_LEAST_TWO, "A ply has at least two strands.", strands)
    require_loss(take_up, "take-up")
    return shortest * (1 - take_up)


@calculation
def shared_evenly(total: Length, strands: Ratio) -> Length:
    """Length on each bobbin if everything were shared out evenly.

    ℓ = Σℓ / n. Rewound before plying, all bobbins run out together.

    Parameters
    ----------
    total : Σℓ, length on all bobbins
    strands : n, number of bobbins, one per strand

    Returns
    -------
    ℓ, a length

    Raises
    ------
    ValueError
        A negative length, or fewer than two strands.

    Notes
    -----
    Valid for singles that are alike.

    References
    ----------
    Definition of the mean.

    Examples
    --------
    >>> print(shared_evenly(Quantity(380, "m"), 2))
    190.0 meter
    """
    require_within(NOT_NEGATIVE, "A length", total)
    require_within(AT_LEAST_TWO, "A ply has at least two strands.", strands)
    return total / strands


@calculation
def plied_from(length: Length, take_up: Ratio = 0.0, strands: Ratio = 1) -> Length:
    """Length of ply from a length of singles.

    L = ℓ · (1 - c) / n. The reverse of what a ply takes.

    Parameters
    ----------
    length : ℓ, length of all singles together
    take_up : c, share of the singles' length lost in plying
    strands : n, strands that lie side by side

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A negative length, a take-up outside 0 to under 1, or fewer than one strand.

    Notes
    -----
    Valid for equal strands, before washing.

    References
    ----------
    Definition of the take-up.

    Examples
    --------
    >>> print(plied_from(Quantity(400, "m"), take_up=0.05, strands=2))
    190.0 meter
    """
    require_within(NOT_NEGATIVE, "A length", length)
    require_loss(take_up, "take-up")
    require_within(AT_LEAST_ONE, "There must be at least one strand.", strands)
    return length * (1 - take_up) / strands


@calculation
def leftover_words(
    strands: Ratio, total: Length, rest: Length | None = None, take_up: Ratio | None = None, grist: Grist | None = None
) -> str:
    """What to do with singles that are left when the shortest bobbin runs out, in words.

    words = n-ply, and nothing to do if r < Σℓ / 100. Of bobbins that were weighed, that is so only if all have the
    grist by which their lengths are known, as singles of one hand seldom have. Else two strands are plied from both
    ends of a ball, three as a chain, more are rewound. A single bobbin waits for another, or becomes a chain.

    Parameters
    ----------
    strands : n, number of bobbins, one per strand
    total : Σℓ, length on all bobbins
    rest : r, what remains on them when the shortest runs out; of a single bobbin nothing is plied
    take_up : share of the singles' length lost in plying; the ply comes out shorter than told if none is stated
    grist : of the singles, where their lengths are known by weight

    Returns
    -------
    a sentence or two

    Raises
    ------
    ValueError
        Several strands without a remainder, nothing on the bobbins, a negative remainder, a take-up outside 0 to under
        1, or a grist that is not above zero.

    Notes
    -----
    Valid for singles that are alike; less than one in a hundred counts as nothing.

    References
    ----------
    Ball, chain and rewinding: common practice, no source.

    Examples
    --------
    >>> print(leftover_words(3, Quantity(380, "m"), Quantity(20, "m"), take_up=0.05))
    3-ply: chain-ply the rest.
    """
    require_numbers(strands, total, rest)
    require_within(ABOVE_ZERO, "There must be something on the bobbins.", total)
    if take_up is not None:
        require_loss(take_up, "take-up")
    if grist is not None:
        require_within(ABOVE_ZERO, "The grist", grist)
    if rest is None:
        require(np.asarray(strands) < AT_LEAST_TWO.least, "Of several bobbins, state what remains on them.")
        return by_element(lambda _: ALONE, strands)
    require_within(AT_LEAST_TWO, "A ply has at least two strands.", strands)
    require_within(NOT_NEGATIVE, "A length", rest)
    reckoned = "" if take_up is not None else ", no take-up reckoned"
    return by_element(
        lambda plied, number, over: f"{plied}-ply{reckoned}: {_what_to_do(number, over, grist is not None)}",
        said(strands),
        strands,
        (rest / total).m_as(""),
    )


def _what_to_do(strands, over, are_weighed: bool) -> str:
    if over < TOGETHER:
        return "of one grist, the bobbins would run out together." if are_weighed else "the bobbins run out together."
    return {2: "wind the rest into a ball, and ply it from both ends.", 3: "chain-ply the rest."}.get(
        int(strands), "wind the rest over evenly, and ply on."
    )
