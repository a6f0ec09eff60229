"""Several projects on one lot: what each takes, and what it leaves to the others.

A lot is often promised twice before it is spun once. Yarn is shared out by mass, since two
projects may spin one lot to different grists; and a project that draws on several lots is
taken to draw on each by what that lot gives, so that every lot is asked for the same share.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.law import law, require
from workbookgen.reference.stock import total
from workbookgen.units import Grist, Length, Mass, Quantity, Ratio, Some

NOTHING = Quantity(0.0, "m")
NO_MASS = Quantity(0.0, "g")
NO_GRIST = Quantity(0.0, "m/g")
HAIR = 1e-6  # of what a project takes itself; less than that is rounding


@law
def lot_gives(spun: Mass, to_come: Mass) -> Mass:
    """Yarn that a lot gives in all.

    g = s + r. What is spun already, and what is still to spin.

    Parameters
    ----------
    spun : s, mass of yarn already spun of it
    to_come : r, mass of yarn that it can still give

    Returns
    -------
    g, a mass

    Raises
    ------
    ValueError
        A negative mass.

    Notes
    -----
    Valid for a lot of which every skein spun is in the log, those used up too.

    References
    ----------
    Definition of a sum.
    """
    require(spun >= NO_MASS, "The yarn spun cannot be negative.")
    require(to_come >= NO_MASS, "The yarn to come cannot be negative.")
    return spun + to_come


@law
def takes(needed: Mass | None = None, used: Mass | None = None) -> Mass:
    """Yarn that a project takes from its lots.

    t = used, or else needed. What a finished piece weighs is known; until then it is planned.

    Parameters
    ----------
    needed : mass of yarn that the project plans with, its margin included
    used : mass of yarn that the finished piece took

    Returns
    -------
    t, a mass

    Raises
    ------
    ValueError
        Neither is known, or a negative mass.

    Notes
    -----
    Valid for a project that is spun from its lots alone.

    References
    ----------
    Common practice, no source.
    """
    mass = needed if used is None else used
    require(mass is not None, "Give what the project needs, or what it took.")
    require(mass >= NO_MASS, "A project cannot take less than nothing.")
    return mass


@law
def claim(takes: Mass, gives: Mass) -> Ratio:
    """Share of its lots that a project takes.

    c = t / g. Above 1 the lots are not enough for this project alone.

    Parameters
    ----------
    takes : t, mass of yarn that the project takes
    gives : g, mass of yarn that its lots give in all

    Returns
    -------
    c, a share

    Raises
    ------
    ValueError
        A negative mass, or lots that give nothing.

    Notes
    -----
    Valid for a project that draws on each of its lots by what that lot gives.

    References
    ----------
    Definition of a share.
    """
    require(takes >= NO_MASS, "A project cannot take less than nothing.")
    require(gives > NO_MASS, "The lots must give something.")
    return takes / gives


@law
def promised(
    names: Sequence[str],
    amounts: Some,
    claims: Sequence[float],
    first_lots: Sequence[str],
    second_lots: Sequence[str],
    third_lots: Sequence[str],
    lot_1: str | None = None,
    lot_2: str | None = None,
    lot_3: str | None = None,
) -> Some:
    """Yarn that all projects together take from up to three lots.

    p = Σ g · (Σ c of the projects that chose the lot), over the lots given. The project that
    asks is one of them.

    Parameters
    ----------
    names : the names in the list of lots, a blank one where a row is empty
    amounts : g, what each lot gives, quantities or numbers
    claims : c, the share of its lots that each project takes; one that is not a number is blank
    first_lots : the first lot of each project
    second_lots : the second lot of each project
    third_lots : the third lot of each project
    lot_1 : name of a lot
    lot_2 : name of a second lot
    lot_3 : name of a third lot

    Returns
    -------
    p, of the kind of the amounts

    Raises
    ------
    ValueError
        No lot is given, or columns that do not stand beside each other.

    Notes
    -----
    Valid for projects that draw on each of their lots by what that lot gives.

    References
    ----------
    Definition of a sum.
    """
    lots = [lot for lot in (lot_1, lot_2, lot_3) if lot is not None]
    require(len(lots) > 0, "Name at least one lot.")
    places = (first_lots, second_lots, third_lots)
    first, *others = (total(lot, names, amounts) * sum(total(lot, place, claims) for place in places) for lot in lots)
    return sum(others, start=first)


@law
def others_take(promised: Mass, takes: Mass) -> Mass:
    """Yarn that the other projects take from the same lots.

    o = p - t, but not below zero. The project's own part is set aside.

    Parameters
    ----------
    promised : p, mass of yarn that all projects take from these lots
    takes : t, mass of yarn that this project takes

    Returns
    -------
    o, a mass

    Raises
    ------
    ValueError
        A negative mass.

    Notes
    -----
    Valid for a project whose own part is among what is promised; less than a millionth of it is rounding.

    References
    ----------
    Definition of a remainder.
    """
    require(promised >= NO_MASS, "What is promised cannot be negative.")
    require(takes >= NO_MASS, "A project cannot take less than nothing.")
    rest = promised - takes
    return rest * np.where(rest > takes * HAIR, 1.0, 0.0)[()]


@law
def left_by_others(have: Length, others: Mass, grist: Grist) -> Length:
    """Length that the other projects leave.

    L = H - o · g, but not below zero. What the others take would have been so long.

    Parameters
    ----------
    have : H, length that the lots give in all
    others : o, mass that other projects take from them
    grist : g, grist of this project's yarn

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A negative length or mass, or a grist that is not above zero.

    Notes
    -----
    Valid for projects that all are to be made.

    References
    ----------
    Definition of a remainder.
    """
    _require_amounts(have, others, grist)
    return np.maximum((have - others * grist).to("meter"), NOTHING)


@law
def surplus_with_others(have: Length, need: Length, others: Mass, grist: Grist) -> Length:
    """What is left over when this project and the others have what they need.

    s = H - o · g - N. Below zero it is what is lacking for all of them.

    Parameters
    ----------
    have : H, length that the lots give in all
    need : N, length that this project needs
    others : o, mass that other projects take from the same lots
    grist : g, grist of this project's yarn

    Returns
    -------
    s, a length

    Raises
    ------
    ValueError
        A negative length or mass, or a grist that is not above zero.

    Notes
    -----
    Valid for projects that all are to be made.

    References
    ----------
    Definition of the surplus.
    """
    _require_amounts(have, others, grist)
    require(need >= NOTHING, "What is needed cannot be negative.")
    return (have - others * grist - need).to("meter")


@law
def share_promised(name: str, claims: Sequence[float], first_lots: Sequence[str], second_lots: Sequence[str], third_lots: Sequence[str]) -> Ratio:
    """Share of a lot that all projects take.

    q = Σ c of the projects that chose the lot. Above 1 it is promised more than once.

    Parameters
    ----------
    name : the lot
    claims : c, the share of its lots that each project takes; one that is not a number is blank
    first_lots : the first lot of each project
    second_lots : the second lot of each project
    third_lots : the third lot of each project

    Returns
    -------
    q, a share

    Raises
    ------
    ValueError
        A blank name, or columns that do not stand beside each other.

    Notes
    -----
    Valid for projects that draw on each of their lots by what that lot gives.

    References
    ----------
    Definition of a sum.
    """
    return sum(total(name, place, claims) for place in (first_lots, second_lots, third_lots))


def _require_amounts(have, others, grist) -> None:
    require(have >= NOTHING, "What there is cannot be negative.")
    require(others >= NO_MASS, "What the others take cannot be negative.")
    require(grist > NO_GRIST, "The grist must be above zero.")
