"""How projects share lots.

A lot is often promised twice before it is spun once. Yarn is shared out by mass, since two
projects may spin one lot to different grists. The lots of a component may replace each other,
and the component draws on each in proportion to what that lot still gives.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import calculation, require_applicable, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NO_MASS, NOT_NEGATIVE, require_within
from workbookgen.reference.records import sum_where
from workbookgen.reference.tolerances import HAIR
from workbookgen.units import Mass, MassSquared, Quantity, Ratio, Some


@calculation
def pool(
    share: Ratio,
    names: Sequence[str],
    amounts: Some,
    lot_1: str | None = None,
    lot_2: str | None = None,
    lot_3: str | None = None,
    part: Ratio = 1.0,
) -> Some:
    """What the lots of one component give it.

    P = f · Σ amount i, over the lots given. Lots of one component may replace each other, so they add up; what several
    components of a yarn draw on is divided between them; a component without a lot has none.

    Parameters
    ----------
    share : x, share of the component in the yarn; there is a component where there is a share
    names : the names in the list of lots, a blank one where a row is empty
    amounts : what each lot gives
    lot_1, lot_2, lot_3 : names of the lots
    part : f, its part of them, where other components of the yarn have the same lots

    Returns
    -------
    P, of the kind of the amounts

    Raises
    ------
    ValueError
        A share or a part that is not above zero, or amounts that are not one per name.

    Notes
    -----
    Valid for lots that differ: one named twice counts twice.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(pool(1, ["Aster", "Birch"], Quantity([300, 200], "g"), "Aster", "Birch"))
    500.0 gram
    """
    require_numbers(share)
    require_numbers(part)
    require_within(ABOVE_ZERO, "The share and the part", share, part)
    sums = [sum_where(lot, names, amounts) for lot in (lot_1, lot_2, lot_3) if lot is not None]
    return sum(sums, start=share * Quantity(0.0, amounts.units)) * part


@calculation
def pool_square(
    share: Ratio,
    names: Sequence[str],
    squares: MassSquared,
    lot_1: str | None = None,
    lot_2: str | None = None,
    lot_3: str | None = None,
    part: Ratio = 1.0,
) -> MassSquared:
    """Squared uncertainty of what the lots of one component give it.

    p = f² · Σ u² i, over the lots given. A part of an uncertain amount is as uncertain, in proportion.

    Parameters
    ----------
    share : x, share of the component in the yarn; there is a component where there is a share
    names : the names in the list of lots, a blank one where a row is empty
    squares : u², the squared uncertainty of what each lot gives
    lot_1, lot_2, lot_3 : names of the lots
    part : f, its part of them, where other components of the yarn have the same lots

    Returns
    -------
    p, a mass squared

    Raises
    ------
    ValueError
        A share or a part that is not above zero, or squares that are not one per name.

    Notes
    -----
    Valid for independent lots.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).

    Examples
    --------
    >>> print(pool_square(1, ["Aster", "Birch"], Quantity([36, 64], "g^2"), "Aster", "Birch", part=0.5))
    25.0 gram ** 2
    """
    return pool(share, names, squares, lot_1, lot_2, lot_3, part) * part


@calculation
def claim(needs: Mass, pool: Mass, part: Ratio = 1.0) -> Ratio:
    """Share of its lots that a component of a project takes.

    c = m · f / P. Above 1, the lots are not enough for this project alone.

    Parameters
    ----------
    needs : m, mass that is still needed of them
    pool : P, mass that they still give this component
    part : f, its part of them

    Returns
    -------
    c, a share

    Raises
    ------
    ValueError
        A negative mass, lots that give nothing, or a part that is not above zero.

    Notes
    -----
    Valid for a component that draws on each of its lots in proportion to what that lot gives.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(claim(Quantity(150, "g"), Quantity(500, "g")))
    0.3
    """
    require_numbers(needs, pool, part)
    require_within(NOT_NEGATIVE, "A project cannot take a negative amount.", needs)
    require_within(ABOVE_ZERO, "The lots must give something.", pool)
    require_within(ABOVE_ZERO, "The part", part)
    return (needs / pool).m_as("") * part


@calculation
def left_by_others(
    pool: Mass,
    needs: Mass,
    names: Sequence[str],
    amounts: Mass,
    promised: Sequence[float],
    lot_1: str | None = None,
    lot_2: str | None = None,
    lot_3: str | None = None,
    part: Ratio = 1.0,
    more: Mass = NO_MASS,
) -> Mass:
    """What other projects leave of a component's lots.

    M = P + e - (f · Σ g · q - m), the sum over the component's lots. What all projects take, less what this one takes,
    is what the others take; of lots that it shares with others of its yarn, each bears its part of that. What the
    others lack concerns only those that need more of the lots: for m = 0, M is nothing at least.

    Parameters
    ----------
    pool : P, mass that the lots still give this component
    needs : m, mass that this component of this project takes of them
    names : the names in the list of lots, a blank one where a row is empty
    amounts : g, what each lot still gives
    promised : q, the share of it that all projects take; no number is a blank
    lot_1, lot_2, lot_3 : names of this component's lots
    part : f, its part of them
    more : e, by how much they give more on average, since they cannot give less than nothing

    Returns
    -------
    M, a mass, below zero where the others need more than there is, and this one more of it too

    Raises
    ------
    ValueError
        A negative mass, a part that is not above zero, or columns of unequal length.

    Notes
    -----
    Valid for projects that are all to be made; less than a millionth of what this one takes is rounding.

    References
    ----------
    Definition of a remainder.

    Examples
    --------
    >>> print(left_by_others(Quantity(500, "g"), Quantity(150, "g"), ["Aster"], Quantity([500], "g"), [0.5], "Aster"))
    400.0 gram
    """
    require_numbers(pool, needs, part, more)
    require_within(NOT_NEGATIVE, "A mass", pool, needs, more)
    require_within(ABOVE_ZERO, "The part", part)
    own = [lot for lot in (lot_1, lot_2, lot_3) if lot is not None]
    taken = sum((sum_where(lot, names, amounts) * sum_where(lot, names, promised) for lot in own), start=pool * 0.0)
    rest = taken * part - needs
    left = (pool + more - rest * np.where(rest > needs * HAIR, 1.0, 0.0)[()]).to("g")
    return Quantity(np.where(needs.m_as("g") > 0, left.m, np.maximum(0, left.m))[()], "g")


@calculation
def taken_by_pieces(
    name: str,
    taken_1: Mass,
    taken_2: Mass,
    taken_3: Mass,
    taken_4: Mass,
    lots_1: Sequence[str],
    lots_2: Sequence[str],
    lots_3: Sequence[str],
    lots_4: Sequence[str],
) -> Mass:
    """What finished pieces took of a lot without a skein to account for it.

    T = Σ taken i, over all pieces and their components spun from the lot. Weighing a piece shows what its lot has
    lost.

    Parameters
    ----------
    name : the lot
    taken_1, taken_2, taken_3, taken_4 : what each piece took of its components' lots; no number is a blank
    lots_1, lots_2, lots_3, lots_4 : these lots

    Returns
    -------
    T, a mass

    Raises
    ------
    ValueError
        A blank name, or columns of unequal length.

    Notes
    -----
    Valid for pieces that were weighed when they were finished.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> none, nowhere = Quantity([0, 0], "g"), ["", ""]
    >>> print(taken_by_pieces("Aster", Quantity([40, 30], "g"), none, none, none, ["Aster", "Birch"], nowhere,
    ...     nowhere, nowhere))
    40.0 gram
    """
    first, *others = ((lots_1, taken_1), (lots_2, taken_2), (lots_3, taken_3), (lots_4, taken_4))
    return sum((sum_where(name, *each) for each in others), start=sum_where(name, *first))


@calculation
def share_promised(
    name: str,
    claims_1: Sequence[float],
    claims_2: Sequence[float],
    claims_3: Sequence[float],
    claims_4: Sequence[float],
    lots_1_a: Sequence[str],
    lots_1_b: Sequence[str],
    lots_1_c: Sequence[str],
    lots_2_a: Sequence[str],
    lots_2_b: Sequence[str],
    lots_3_a: Sequence[str],
    lots_3_b: Sequence[str],
    lots_4_a: Sequence[str],
    lots_4_b: Sequence[str],
    left: Mass | None = None,
) -> Ratio:
    """Share of a lot's remaining yarn that all projects take.

    q = Σ c, over the components of all projects that chose the lot. Above 1, it is promised more than once. Where it is
    not known what a lot gives, its share is not known either, rather than none.

    Parameters
    ----------
    name : the lot
    claims_1, claims_2, claims_3, claims_4 : c, share of its lots that each project's component takes; blank is none
    lots_1_a, lots_1_b, lots_1_c : the lots of each project's first component
    lots_2_a, lots_2_b : those of the second
    lots_3_a, lots_3_b : those of the third
    lots_4_a, lots_4_b : those of the fourth
    left : what the lot can still give

    Returns
    -------
    q, a share

    Raises
    ------
    ValueError
        A blank name, columns of unequal length, or a lot of which it is not known what it gives.

    Notes
    -----
    Valid for components that draw on each of their lots in proportion to what that lot gives.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> none, nowhere = [0.0], [""]
    >>> print(share_promised("Aster", [0.5], [0.25], none, none, ["Aster"], nowhere, nowhere, ["Aster"],
    ...     *[nowhere] * 5, left=Quantity(4, "oz")))
    0.75
    """
    require_applicable(left is not None, "It is not known what the lot gives.")
    require_numbers(left)
    components = (
        (claims_1, (lots_1_a, lots_1_b, lots_1_c)),
        (claims_2, (lots_2_a, lots_2_b)),
        (claims_3, (lots_3_a, lots_3_b)),
        (claims_4, (lots_4_a, lots_4_b)),
    )
    return sum(sum_where(name, lots, claims) for claims, chosen in components for lots in chosen)
