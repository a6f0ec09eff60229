"""Several projects on one lot: what each takes, and what it leaves to the others.

A lot is often promised twice before it is spun once. Yarn is shared out by mass, since two
projects may spin one lot to different grists. Lots of one component may replace each other, and
it draws on each by what that lot still gives.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.stock import sum_where
from workbookgen.units import Grist, Length, Mass, MassSquared, Quantity, Ratio, Some

NOTHING = Quantity(0.0, "m")
NO_MASS = Quantity(0.0, "g")
NO_GRIST = Quantity(0.0, "m/g")
SPECK = Quantity(1e-15, "g^2")  # no scale tells it from nothing, and some programs do not either
HAIR = 1e-6  # of what a project takes itself; less than that is rounding


@calculation
def pool(
    share: Ratio,
    names: Sequence[str],
    amounts: Some,
    lot_1: str | None = None,
    lot_2: str | None = None,
    lot_3: str | None = None,
) -> Some:
    """What the lots of one component give together.

    P = Σ over the lots given. Lots of one component may replace each other, so they add up; a
    component without a lot has nothing.

    Parameters
    ----------
    share : x, share of the component in the yarn; there is a component where there is a share
    names : the names in the list of lots, a blank one where a row is empty
    amounts : what each lot gives, quantities or numbers
    lot_1 : name of a lot
    lot_2 : name of a second lot
    lot_3 : name of a third lot

    Returns
    -------
    P, of the kind of the amounts

    Raises
    ------
    ValueError
        A share that is not above zero, or amounts that do not stand beside the names.

    Notes
    -----
    Valid for lots that differ: one named twice counts twice.

    References
    ----------
    Definition of a sum.
    """
    require_numbers(share)
    require(share > 0, "The share must be above zero.")
    sums = [sum_where(lot, names, amounts) for lot in (lot_1, lot_2, lot_3) if lot is not None]
    return sum(sums, start=Quantity(0.0, amounts.units) * share if isinstance(amounts, Quantity) else 0.0 * share)


@calculation
def claim(needs: Mass, pool: Mass) -> Ratio:
    """Share of its lots that a component of a project takes.

    c = m / P. Above 1 the lots are not enough for this project alone.

    Parameters
    ----------
    needs : m, mass that is still needed of them
    pool : P, mass that they still give

    Returns
    -------
    c, a share

    Raises
    ------
    ValueError
        A negative mass, or lots that give nothing.

    Notes
    -----
    Valid for a component that draws on each of its lots by what that lot gives.

    References
    ----------
    Definition of a share.
    """
    require_numbers(needs, pool)
    require(needs >= NO_MASS, "A project cannot take less than nothing.")
    require(pool > NO_MASS, "The lots must give something.")
    return needs / pool


def _claimed(lot, claims, places):
    return sum(sum_where(lot, names, claims[component]) for component, names in places)


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
) -> Mass:
    """What the other projects leave of a component's lots.

    M = P - (Σ g · q - m), the sum over the component's lots. What all projects take of them, less what
    this one takes, is what the others do.

    Parameters
    ----------
    pool : P, mass that the lots still give together
    needs : m, mass that this component of this project takes of them
    names : the names in the list of lots, a blank one where a row is empty
    amounts : g, what each lot still gives
    promised : q, the share of it that all projects take; no number is a blank
    lot_1 : name of a lot of this component
    lot_2 : name of a second lot
    lot_3 : name of a third lot

    Returns
    -------
    M, a mass, below zero where the others need more than there is

    Raises
    ------
    ValueError
        A negative mass, or columns that do not stand beside each other.

    Notes
    -----
    Valid for projects that all are to be made; less than a millionth of what this one takes is rounding.

    References
    ----------
    Definition of a remainder.
    """
    require_numbers(pool, needs)
    require((pool >= NO_MASS) & (needs >= NO_MASS), "A mass cannot be negative.")
    own = [lot for lot in (lot_1, lot_2, lot_3) if lot is not None]
    rest = sum((sum_where(lot, names, amounts) * sum_where(lot, names, promised) for lot in own), start=pool * 0.0) - needs
    return pool - rest * np.where(rest > needs * HAIR, 1.0, 0.0)[()]


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
    """What finished pieces took of a lot with no skein to show for it.

    T = Σ taken i, over all pieces and all their components that were spun of the lot. A piece that was
    weighed tells what its lot has lost.

    Parameters
    ----------
    name : the lot
    taken_1 : what each piece took of its first component's lot; no number is a blank
    taken_2 : that of the second components
    taken_3 : that of the third components
    taken_4 : that of the fourth components
    lots_1 : the lot of each piece's first component
    lots_2 : the lot of the second
    lots_3 : the lot of the third
    lots_4 : the lot of the fourth

    Returns
    -------
    T, a mass

    Raises
    ------
    ValueError
        A blank name, or columns that do not stand beside each other.

    Notes
    -----
    Valid for pieces that were weighed when they were finished.

    References
    ----------
    Definition of a sum.
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
) -> Ratio:
    """Share of what a lot still gives that all projects take.

    q = Σ c, over the components of all projects that chose the lot. Above 1 it is promised more
    than once.

    Parameters
    ----------
    name : the lot
    claims_1 : c, the share of its lots that each project's first component takes; no number is a blank
    claims_2 : that of the second components
    claims_3 : that of the third components
    claims_4 : that of the fourth components
    lots_1_a : a lot of each project's first component
    lots_1_b : another lot of it
    lots_1_c : a third lot of it
    lots_2_a : a lot of the second component
    lots_2_b : another lot of it
    lots_3_a : a lot of the third component
    lots_3_b : another lot of it
    lots_4_a : a lot of the fourth component
    lots_4_b : another lot of it

    Returns
    -------
    q, a share

    Raises
    ------
    ValueError
        A blank name, or columns that do not stand beside each other.

    Notes
    -----
    Valid for components that draw on each of their lots by what that lot gives.

    References
    ----------
    Definition of a sum.
    """
    claims = {1: claims_1, 2: claims_2, 3: claims_3, 4: claims_4}
    places = (
        (1, lots_1_a), (1, lots_1_b), (1, lots_1_c), (2, lots_2_a), (2, lots_2_b),
        (3, lots_3_a), (3, lots_3_b), (4, lots_4_a), (4, lots_4_b),
    )
    return _claimed(name, claims, places)


@calculation
def need_square(share: Ratio, doubt_need: Length, planned: Grist, used: Mass | None = None) -> MassSquared:
    """Squared doubt that a project's need brings to the lots of a component.

    o = (x · u_N / g)². Who shares a lot shares the doubt of what the other will take; a finished
    piece takes no more.

    Parameters
    ----------
    share : x, share of the component in the yarn's weight
    doubt_need : u_N, standard uncertainty of what the piece takes
    planned : g, planned grist of the yarn
    used : mass of yarn that the finished piece took, once it is finished

    Returns
    -------
    o, a mass squared

    Raises
    ------
    ValueError
        A negative uncertainty or mass, or a share or a grist that is not above zero.

    Notes
    -----
    Valid for projects whose needs are independent.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).
    """
    require_numbers(share, doubt_need, planned, used)
    require(share > 0, "The share must be above zero.")
    require(doubt_need >= NOTHING, "A standard uncertainty cannot be negative.")
    require(planned > NO_GRIST, "The grist must be above zero.")
    if used is not None:
        require(used >= NO_MASS, "A piece cannot have used less than nothing.")
    return (share * doubt_need / planned * (1.0 if used is None else 0.0)) ** 2


@calculation
def squares_on_lot(
    name: str,
    squares_1: MassSquared,
    squares_2: MassSquared,
    squares_3: MassSquared,
    squares_4: MassSquared,
    lots_1_a: Sequence[str],
    lots_2_a: Sequence[str],
    lots_3_a: Sequence[str],
    lots_4_a: Sequence[str],
) -> MassSquared:
    """Squared doubt that the needs of all projects bring to a lot.

    Q = Σ o, over the components of all projects whose first lot it is. Who shares a lot shares
    the doubt of what the others will take.

    Parameters
    ----------
    name : the lot
    squares_1 : o, that of each project's first component; no number is a blank
    squares_2 : that of the second components
    squares_3 : that of the third components
    squares_4 : that of the fourth components
    lots_1_a : the first lot of each project's first component
    lots_2_a : that of the second
    lots_3_a : that of the third
    lots_4_a : that of the fourth

    Returns
    -------
    Q, a mass squared

    Raises
    ------
    ValueError
        A blank name, or columns that do not stand beside each other.

    Notes
    -----
    Valid for independent needs.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).
    """
    first, *others = ((lots_1_a, squares_1), (lots_2_a, squares_2), (lots_3_a, squares_3), (lots_4_a, squares_4))
    return sum((sum_where(name, *each) for each in others), start=sum_where(name, *first))


@calculation
def others_square(own: MassSquared, names: Sequence[str], squares: MassSquared, lot: str | None = None) -> MassSquared:
    """Squared doubt that the other projects' needs bring to a component.

    O = Q - o, that of all projects on its first lot less its own; 0 without a lot. What another will
    take is not sure either.

    Parameters
    ----------
    own : o, that of this component itself
    names : the names in the list of lots, a blank one where a row is empty
    squares : Q, what all projects bring to each lot; no number is a blank
    lot : the first lot of this component

    Returns
    -------
    O, a mass squared

    Raises
    ------
    ValueError
        A negative square, or columns that do not stand beside each other.

    Notes
    -----
    Valid for independent needs; what is less than a speck, or no more than rounding of the sum, counts as nothing.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).
    """
    require_numbers(own)
    require(own >= Quantity(0.0, "g^2"), "A squared uncertainty cannot be negative.")
    if lot is None:
        return own * 0.0
    rest = sum_where(lot, names, squares) - own
    nothing = np.maximum((own * HAIR).m_as("g^2"), SPECK.m_as("g^2"))
    return rest * np.where(rest.m_as("g^2") > nothing, 1.0, 0.0)[()]
