"""The different fibers of a yarn, the share of each over all strands, and which are named on a label."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require
from workbookgen.reference.content.shares import require_shares
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.texts import folded
from workbookgen.units import Ratio

# What the Wool Products Labeling Act considers wool, 15 U.S.C. 68 (b) and (c), and may be named so by 16 CFR 300.19.
WOOLS = ("wool", "recycled wool", "mohair", "cashmere", "camel", "camel hair", "alpaca", "llama", "vicuna")
LEAST_NAMED = 0.05


@calculation
def next_fiber(
    fiber_1: str | None = None,
    fiber_2: str | None = None,
    fiber_3: str | None = None,
    fiber_4: str | None = None,
    fiber_5: str | None = None,
    fiber_6: str | None = None,
    fiber_7: str | None = None,
    fiber_8: str | None = None,
    fiber_9: str | None = None,
    fiber_10: str | None = None,
    fiber_11: str | None = None,
    fiber_12: str | None = None,
    before_1: str | None = None,
    before_2: str | None = None,
    before_3: str | None = None,
) -> str:
    """The next fiber of a yarn not named yet.

    name = the first in the list that is none of those before. So each fiber is named once.

    Parameters
    ----------
    fiber_1, fiber_2, fiber_3, fiber_4, fiber_5, fiber_6 : generic names of the fibers of all strands
    fiber_7, fiber_8, fiber_9, fiber_10, fiber_11, fiber_12 : the others of them
    before_1, before_2, before_3 : fibers named already

    Returns
    -------
    a name

    Raises
    ------
    ValueError
        No fiber left to name.

    Notes
    -----
    Valid for yarns of up to four strands, of up to three fibers each.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(next_fiber("wool", "wool", "silk", before_1="wool"))
    silk
    """
    fibers = (fiber_1, fiber_2, fiber_3, fiber_4, fiber_5, fiber_6)
    fibers += (fiber_7, fiber_8, fiber_9, fiber_10, fiber_11, fiber_12)
    present = [each for each in fibers if each is not None]
    told = [each for each in (before_1, before_2, before_3) if each is not None]
    require(len(present) > 0, "No fiber is known.")

    def first(*names) -> str:
        done = {folded(str(each)) for each in names[len(present) :]}
        return next((str(each) for each in names[: len(present)] if folded(str(each)) not in done), "")

    found = by_element(first, *present, *told)
    require(by_element(lambda each: each != "", found), "Every fiber has been named.")
    return found


@calculation
def together(
    fiber: str,
    fiber_1: str | None = None,
    share_1: Ratio | None = None,
    fiber_2: str | None = None,
    share_2: Ratio | None = None,
    fiber_3: str | None = None,
    share_3: Ratio | None = None,
    fiber_4: str | None = None,
    share_4: Ratio | None = None,
    fiber_5: str | None = None,
    share_5: Ratio | None = None,
    fiber_6: str | None = None,
    share_6: Ratio | None = None,
    fiber_7: str | None = None,
    share_7: Ratio | None = None,
    fiber_8: str | None = None,
    share_8: Ratio | None = None,
    fiber_9: str | None = None,
    share_9: Ratio | None = None,
    fiber_10: str | None = None,
    share_10: Ratio | None = None,
    fiber_11: str | None = None,
    share_11: Ratio | None = None,
    fiber_12: str | None = None,
    share_12: Ratio | None = None,
) -> Ratio:
    """Share of a fiber in a yarn, over all its strands.

    X = Σ x, over the strands' fibers of this name. Two breeds are both wool.

    Parameters
    ----------
    fiber : generic name
    fiber_1, share_1, fiber_2, share_2, fiber_3, share_3, fiber_4, share_4 : generic names, and x, shares
    fiber_5, share_5, fiber_6, share_6, fiber_7, share_7, fiber_8, share_8 : further ones
    fiber_9, share_9, fiber_10, share_10, fiber_11, share_11, fiber_12, share_12 : and the last

    Returns
    -------
    X, a share

    Raises
    ------
    ValueError
        A share that is negative.

    Notes
    -----
    Valid for yarns of up to four strands, of up to three fibers each.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(together("wool", "wool", 0.5, "silk", 0.25, "wool", 0.25))
    0.75
    """
    pairs = (
        (fiber_1, share_1), (fiber_2, share_2), (fiber_3, share_3), (fiber_4, share_4), (fiber_5, share_5), (fiber_6, share_6),
        (fiber_7, share_7), (fiber_8, share_8), (fiber_9, share_9), (fiber_10, share_10), (fiber_11, share_11), (fiber_12, share_12),
    )  # fmt: skip
    require_shares(*(share for _, share in pairs))
    added = np.zeros(np.shape(fiber))
    for name, share in pairs:
        if name is not None and share is not None:
            added = added + np.asarray(by_element(_if_same, fiber, name, share), dtype=float)
    return added if np.ndim(added) else float(added)


@calculation
def known_in_all(
    whole_1: Ratio, whole_2: Ratio | None = None, whole_3: Ratio | None = None, whole_4: Ratio | None = None
) -> Ratio:
    """Share of the yarn whose fibers are known.

    W = Σ X. Where it is 1, nothing of the yarn is unknown.

    Parameters
    ----------
    whole_1, whole_2, whole_3, whole_4 : X, share of each fiber in the yarn

    Returns
    -------
    W, a share

    Raises
    ------
    ValueError
        A share that is negative.

    Notes
    -----
    Valid for yarns of up to four fibers; the content of one with more is not stated.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(known_in_all(0.75, 0.25))
    1.0
    """
    require_shares(whole_1, whole_2, whole_3, whole_4)
    return sum((each for each in (whole_2, whole_3, whole_4) if each is not None), whole_1)


@calculation
def named_share(fiber: str, share: Ratio) -> Ratio:
    """Share under which a fiber is named on a label.

    y = X from 5 % up, and for wool in any amount; else 0, and the fiber is among the others. A name sells, and a trace
    of silk must not.

    Parameters
    ----------
    fiber : generic name
    share : X, its share in the yarn

    Returns
    -------
    y, a share

    Raises
    ------
    ValueError
        A share that is negative.

    Notes
    -----
    Valid for fibers without a function of their own: the rule allows a little of one that has, such as nylon for wear,
    to be named too.

    References
    ----------
    16 CFR 303.6 (a) and 303.42 (a), and 15 U.S.C. 68 (b), what is wool (read); 303.3, less than 5 % (read as quoted
    elsewhere); 15 U.S.C. 68b (a)(2)(A), wool of any share (from memory).

    Examples
    --------
    >>> print(named_share("silk", 0.03))
    0.0
    """
    require_shares(share)
    named = np.asarray(
        by_element(
            lambda name, x: x if x >= LEAST_NAMED - ROUNDING or folded(str(name)) in WOOLS else 0.0, fiber, share
        ),
        dtype=float,
    )
    return named if np.ndim(named) else float(named)


@calculation
def without_a_name(
    named_1: Ratio, named_2: Ratio | None = None, named_3: Ratio | None = None, named_4: Ratio | None = None
) -> Ratio:
    """How many fibers of a yarn have no name on its label.

    n = the fibers whose named share is 0. One is "other fiber", more are "other fibers".

    Parameters
    ----------
    named_1, named_2, named_3, named_4 : share under which each fiber is named

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        A share that is negative.

    Notes
    -----
    Valid for yarns of up to four fibers.

    References
    ----------
    16 CFR 303.42 (a): "other fiber" or "other fibers" (read).

    Examples
    --------
    >>> print(without_a_name(0.97, 0.0))
    1.0
    """
    require_shares(named_1, named_2, named_3, named_4)
    return sum(
        np.where(np.asarray(each) > 0, 0.0, 1.0) for each in (named_1, named_2, named_3, named_4) if each is not None
    )[()]


def _if_same(fiber, name, share) -> float:
    return float(share) if folded(str(fiber)) == folded(str(name)) else 0.0
