"""Strands of one yarn that draw on the same lots: which they are, and what part of the lots each has.

They are plied together and run out together, so they share the lots in proportion to their weight in the yarn. Two
strands have the same lots if these are given in the same order.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require_name, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, require_within
from workbookgen.reference.records import count_where, sum_where
from workbookgen.texts import folded
from workbookgen.units import Ratio, Some


@calculation
def strand_lots(design: str, lot: str, other_lot: str | None = None) -> str:
    """The lots of a component, under its design.

    lots = design / lot, and / other where there is one. Components of which these are alike share their lots.

    Parameters
    ----------
    design : the design of the component
    lot : the lot that it is spun from
    other_lot : the lot that may replace it

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        A blank name.

    Notes
    -----
    Valid for names without " / " in them: with it, two could read alike.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(strand_lots("Tweed", "Aster", "Birch"))
    Tweed / Aster / Birch
    """
    names = [each for each in (design, lot, other_lot) if each is not None]
    for name in names:
        require_name(name)
    return by_element(lambda *each: " / ".join(each), *names)


@calculation
def part_of_lots(share: Ratio, lots: Sequence[str], shares: Sequence[float], own: str | None = None) -> Ratio:
    """Part that a strand has of the lots that it shares with others of its yarn.

    f = x / Σ x, over the components of the design with the same lots, itself among them, and 1 without a lot. All of
    them then last equally long.

    Parameters
    ----------
    share : x, share of the component in the yarn's weight
    lots : the lots of each component, under its design, blank where one has none
    shares : x of each; no number is a blank
    own : those of this one

    Returns
    -------
    f, a share, 1 for a strand that has its lots to itself

    Raises
    ------
    ValueError
        A share that is not above zero, or columns of unequal length.

    Notes
    -----
    Valid for strands that all run the whole length of the yarn.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(part_of_lots(0.2, ["Marl / Aster", "Marl / Aster", "Marl / Fern"], [0.2, 0.6, 0.2], "Marl / Aster"))
    0.25
    """
    require_numbers(share)
    require_within(ABOVE_ZERO, "The share", share)
    if own is None:
        return share * 0.0 + 1.0
    together = sum_where(own, lots, shares)
    require_within(ABOVE_ZERO, "The shares together", together)
    return share / together


@calculation
def strands_that_overlap(
    own: str,
    first: str,
    lots: Sequence[str],
    firsts: Sequence[str],
    spares: Sequence[str],
    amounts: Some,
    spare: str | None = None,
) -> Ratio:
    """How often components of a yarn draw on a lot of this one, and not on the same lots.

    n = Σ (number of those on a lot - number of those on the same lots), over its lots. A lot that is shared in part
    cannot be divided by the shares.

    Parameters
    ----------
    own : the lots of the component, under its design
    first : the first of them, under its design
    lots : the lots of each component
    firsts : the first lot of each
    spares : the other lot of each, blank where there is none
    amounts : one number for each that is known; no number is a blank
    spare : the other of its lots, under its design

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        A blank name, or columns of unequal length.

    Notes
    -----
    Valid for components whose two lots differ.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(strands_that_overlap("T / A", "T / A", ["T / A", "T / A / B"], ["T / A", "T / A"], ["", "T / B"], [1, 1]))
    1.0
    """
    each_of_them = [lot for lot in (first, spare) if lot is not None]
    on_them = sum(count_where(lot, names, amounts) for lot in each_of_them for names in (firsts, spares))
    return on_them - len(each_of_them) * count_where(own, lots, amounts)


@calculation
def counted_before(
    lot: str,
    lot_1: str | None = None,
    lot_2: str | None = None,
    lot_3: str | None = None,
    other: str | None = None,
    other_1: str | None = None,
    other_2: str | None = None,
    other_3: str | None = None,
) -> Ratio:
    """How many strands before this one draw on the same lots.

    k = the number of earlier strands whose lots are the same. What the lots leave in doubt is one doubt, and counts
    with the first of them.

    Parameters
    ----------
    lot : the first lot of this strand
    lot_1, lot_2, lot_3 : those of the strands before it
    other : its other lot
    other_1, other_2, other_3 : those of the strands before it

    Returns
    -------
    k, a whole number

    Raises
    ------
    ValueError
        A blank name.

    Notes
    -----
    Valid for the strands of one yarn.

    References
    ----------
    JCGM 100, 5.2, on correlated terms (from memory).

    Examples
    --------
    >>> print(counted_before("Aster", "Aster", "Birch"))
    1.0
    """
    require_name(lot)
    own = _same(lot, other)
    earlier = ((lot_1, other_1), (lot_2, other_2), (lot_3, other_3))
    return sum((np.where(own == _same(*each), 1.0, 0.0)[()] for each in earlier if each[0] is not None), start=0.0)


def _same(lot, other) -> object:
    """A text that is equal for equal lots, however they are spelled."""
    return by_element(lambda first, second: f"{folded(first)}\n{folded(second)}", lot, "" if other is None else other)
