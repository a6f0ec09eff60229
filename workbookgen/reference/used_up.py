"""What is marked as used, a skein or the rest of a lot, and whether the skeins tell the same."""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.fates import USED
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.reference.records import sum_where
from workbookgen.texts import folded
from workbookgen.units import Mass, Ratio, Some

MUCH = 0.25  # of a lot's yarn; common practice, no source: more than its losses are usually off by


@calculation
def in_no_skein(yarn: Mass, spun: Mass, fate: str) -> Ratio:
    """The share of a lot's yarn that nothing shows, once its rest is used.

    p = max(0, 1 - m / Y). What is on bobbins is used, but it is yarn only once it is reeled and logged.

    Parameters
    ----------
    yarn : Y, mass of all the yarn of the lot
    spun : m, of it in skeins and in finished pieces
    fate : where its rest went

    Returns
    -------
    p, a share

    Raises
    ------
    ValueError
        A rest that is not used, no yarn, or a negative mass.

    Notes
    -----
    Valid for a lot that was spun to its end.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(in_no_skein(Quantity(200, "g"), Quantity(50, "g"), "used"))
    0.75
    """
    require_numbers(yarn, spun)
    require(by_element(lambda each: folded(str(each)) == USED, fate), "Its rest is not used.")
    require_within(ABOVE_ZERO, "The yarn", yarn)
    require_within(NOT_NEGATIVE, "A mass", spun)
    return np.maximum(0.0, 1 - (spun / yarn).m_as(""))


@calculation
def off_its_marks(served: Mass, still_there: Mass, used: Mass) -> Ratio:
    """How far the skeins of a finished piece are from what it took, beside their own weight.

    q = |t - max(0, S - u)| / S. What is not used is still there, and what is used is marked so.

    Parameters
    ----------
    served : S, mass of its skeins, those that are there or used for it
    still_there : t, mass of those that are there
    used : u, mass of yarn that the finished piece took

    Returns
    -------
    q, a share

    Raises
    ------
    ValueError
        No skeins, or a negative mass.

    Notes
    -----
    Valid for skeins that were weighed.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(off_its_marks(Quantity(200, "g"), Quantity(100, "g"), Quantity(150, "g")))
    0.25
    """
    require_numbers(served, still_there, used)
    require_within(ABOVE_ZERO, "The mass of its skeins", served)
    require_within(NOT_NEGATIVE, "A mass", still_there, used)
    left = np.maximum(0.0, (served - used).m_as("g"))
    return np.abs(still_there.m_as("g") - left) / served.m_as("g")


@calculation
def unseen_of_strands(
    wanting: Ratio,
    lots: Sequence[str],
    of_lots: Some,
    lot_1: str | None = None,
    lot_2: str | None = None,
    lot_3: str | None = None,
    lot_4: str | None = None,
) -> Ratio:
    """How many strands are of a lot that is used, much of whose yarn is in no skein, while their project lacks yarn.

    n = number of those with p > 1/4, or 0 for a project that has enough. Such yarn may be on bobbins.

    Parameters
    ----------
    wanting : 1 for a project that is still to get yarn, else 0
    lots : the names of the lots, a blank one where a row is empty
    of_lots : p, share of each lot's yarn that is in no skein, of those that are used; no number is a blank
    lot_1, lot_2, lot_3, lot_4 : the first lot of each strand, if it has one

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        Shares that are not one per name.

    Notes
    -----
    Valid for lots that lost about as much as was expected: a fleece can give a fifth less.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(unseen_of_strands(1, ["Aster", "Birch"], [0.1, 0.6], lot_1="Birch"))
    1.0
    """
    require_numbers(wanting)
    named = [lot for lot in (lot_1, lot_2, lot_3, lot_4) if lot is not None]
    counts = [np.where(np.asarray(sum_where(lot, lots, of_lots)) > MUCH, 1.0, 0.0)[()] for lot in named]
    return np.where(np.asarray(wanting) > 0.5, sum(counts, start=0.0), 0.0)[()]
