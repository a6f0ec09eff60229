"""To which project a skein belongs, and whether it is free, set aside or gone.

A skein serves the project that it belongs to, whatever else is spun from its lot, also once it is used: then it is in
the piece. What was given away, sold or lost serves no project any more, though it took its weight of its lot. What is
set aside is still there, but not free for others.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import (
    by_element,
    calculation,
    require,
    require_applicable,
    require_name,
    require_numbers,
)
from workbookgen.reference.fates import is_gone, serves_its_project
from workbookgen.reference.limits import NOT_NEGATIVE, require_within
from workbookgen.reference.records import sum_where
from workbookgen.units import Mass, Ratio, Some


@calculation
def belongs(name: str, gone: str | None = None) -> str:
    """The project that a skein serves, as yarn still there or in the piece.

    name = name. What was given away, sold or lost to moths serves no project any more; what was used for it is part of
    what it takes.

    Parameters
    ----------
    name : the project that it was made for
    gone : where it went, if it is gone

    Returns
    -------
    the name

    Raises
    ------
    ValueError
        A blank name, or a skein that was given away, sold or lost.

    Notes
    -----
    Valid for a skein that belongs to one project.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(belongs("Vest"))
    Vest
    """
    require(
        gone is None or by_element(lambda each: serves_its_project(str(each)), gone),
        "The skein was given away, sold or lost.",
    )
    require_name(name)
    return name


@calculation
def without_length(served: Mass, measured: Mass) -> Mass:
    """Weight of a project's skeins whose length is not known.

    w = M - m, or none. They took their weight of the fiber, and count for nothing until their wraps are typed.

    Parameters
    ----------
    served : M, weight of all skeins that serve the project
    measured : m, weight of those whose length is known, too

    Returns
    -------
    w, a mass

    Raises
    ------
    ValueError
        A weight below zero.

    Notes
    -----
    Valid for skeins of one project.

    References
    ----------
    Definition of a difference.

    Examples
    --------
    >>> print(without_length(Quantity(300, "g"), Quantity(220, "g")))
    80.0 gram
    """
    require_within(NOT_NEGATIVE, "The weight", served)
    require_within(NOT_NEGATIVE, "The weight with a length", measured)
    return np.maximum(0.0 * served, served - measured.to(served.units))


@calculation
def how_many_aside(fates: Sequence[str]) -> Ratio:
    """How many skeins are set aside.

    n = number of those whose fate is "set aside". They are still there.

    Parameters
    ----------
    fates : what was chosen for each, blank where it is free or belongs to a project

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        No list of fates.

    Notes
    -----
    Valid for lists of any length, from one on.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(how_many_aside(["used", "", "set aside", "set aside"]))
    2.0
    """
    require(len(fates) > 0, "There must be a list.")
    return float(sum(isinstance(each, str) and not is_gone(each) for each in fates))


@calculation
def how_many_went(lines: Some, aside: Ratio) -> Ratio:
    """How many skeins are gone.

    n = those with a fate, less those set aside. Skeins given away, sold, used or lost are gone.

    Parameters
    ----------
    lines : one number per skein for which a fate was chosen; one that is not a number is blank
    aside : how many are set aside

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        A negative number set aside.

    Notes
    -----
    Valid for skeins that left whole.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(how_many_went([1, np.nan, 1, 1], aside=1))
    2.0
    """
    require_within(NOT_NEGATIVE, "The number that is set aside", aside)
    return float(np.sum(~np.isnan(np.asarray(lines, dtype=float)))) - aside


@calculation
def set_aside(rest: Mass, fate: str) -> Mass:
    """What is set aside of the rest of a lot.

    a = r, where its fate is "set aside". It still counts as stock.

    Parameters
    ----------
    rest : r, what the lot can still give
    fate : what was chosen for it

    Returns
    -------
    a, a mass

    Raises
    ------
    ValueError
        Another fate, or a negative mass.

    Notes
    -----
    Valid for all that is left of a lot.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(set_aside(Quantity(50, "g"), "set aside"))
    50 gram
    """
    require(by_element(lambda each: not is_gone(str(each)), fate), "It is not set aside.")
    require_within(NOT_NEGATIVE, "What is left", rest)
    return rest


@calculation
def is_free(
    name: str, project: str | None = None, gone: str | None = None, other: str | None = None, took: Mass | None = None
) -> str:
    """The yarn of a skein that is free for a project.

    name = name. A skein that belongs to a project still open, or is gone, is not free. What is left of a finished one,
    or of one given up, is there for others; to keep it, set it aside.

    Parameters
    ----------
    name : its yarn, a design or a lot
    project : the project that it belongs to, if it does
    gone : where it went, if it is gone
    other : a design, where the name is a lot: then the design is its yarn
    took : the yarn that its project took, which is known once that is finished

    Returns
    -------
    the name

    Raises
    ------
    ValueError
        A blank name, or a skein that is not free or is of another yarn.

    Notes
    -----
    Valid for a skein of one yarn.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(is_free("Gray 2-ply"))
    Gray 2-ply
    """
    require_numbers(took)
    require_applicable((project is None or took is not None) and gone is None, "The skein is not free.")
    require_applicable(other is None, "The skein is of a design.")
    require_name(name)
    return name


@calculation
def free_skeins(
    designs: Sequence[str],
    of_designs: Some,
    lots: Sequence[str],
    of_lots: Some,
    design: str | None = None,
    lot_1: str | None = None,
    lot_2: str | None = None,
    lot_3: str | None = None,
) -> Some:
    """What free skeins there are of a yarn.

    F = what there is of the design + Σ what there is of each lot. No open project uses these skeins yet.

    Parameters
    ----------
    designs : the names of the designs, a blank one where a row is empty
    of_designs : what there is of each in free skeins, quantities or numbers
    lots : the names of the lots
    of_lots : what there is of each in free skeins of this lot alone
    design : the design of the yarn
    lot_1, lot_2, lot_3 : its lots

    Returns
    -------
    F, of their kind

    Raises
    ------
    ValueError
        Neither a design nor a lot is given, or amounts that are not one per name.

    Notes
    -----
    Valid for a yarn of a design, or of lots that differ.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(free_skeins(["Gray 2-ply"], Quantity([100], "yd"), ["Aster", "Birch"], Quantity([80, 60], "yd"),
    ...     lot_1="Aster", lot_2="Birch"))
    140.0 yard
    """
    named = [lot for lot in (lot_1, lot_2, lot_3) if lot is not None]
    require(design is not None or len(named) > 0, "Name the yarn.")
    sums = [sum_where(lot, lots, of_lots) for lot in named]
    if design is not None:
        sums.append(sum_where(design, designs, of_designs))
    return sum(sums[1:], start=sums[0])


@calculation
def free_of_strands(
    lots: Sequence[str],
    of_lots: Some,
    lot_1: str | None = None,
    lot_2: str | None = None,
    lot_3: str | None = None,
    lot_4: str | None = None,
    design: str | None = None,
) -> Some:
    """What free skeins there are of the lots of a design's strands.

    F = Σ what there is of each strand's first lot. Skeins of the design that were logged with a lot are among them.

    Parameters
    ----------
    lots : the names of the lots, a blank one where a row is empty
    of_lots : what there is of each in free skeins of this lot alone, quantities or numbers
    lot_1, lot_2, lot_3, lot_4 : the first lot of each strand, if it has one
    design : the design of the yarn

    Returns
    -------
    F, of their kind

    Raises
    ------
    ValueError
        No design or lot is given, or amounts that are not one per name.

    Notes
    -----
    Valid for a yarn of a design. A lot of two strands counts twice.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(free_of_strands(["Aster", "Birch"], Quantity([80, 60], "yd"), lot_1="Birch", design="Gray 2-ply"))
    60.0 yard
    """
    require(design is not None, "Name the design.")
    named = [lot for lot in (lot_1, lot_2, lot_3, lot_4) if lot is not None]
    require(len(named) > 0, "Name a lot of the yarn.")
    sums = [sum_where(lot, lots, of_lots) for lot in named]
    return sum(sums[1:], start=sums[0])
