"""Fibers of lots and strands: up to three fibers in a lot, up to four strands in a yarn."""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_name
from workbookgen.reference.content.shares import require_shares
from workbookgen.reference.limits import ABOVE_ZERO
from workbookgen.reference.records import lookup
from workbookgen.texts import folded
from workbookgen.units import Ratio


@calculation
def main_share(
    kind: str,
    also_kind: str | None = None,
    also: Ratio | None = None,
    third_kind: str | None = None,
    third: Ratio | None = None,
) -> Ratio:
    """Share of a lot's main fiber.

    x = 1 - a - b. All of the weight that is not another fiber.

    Parameters
    ----------
    kind : the main fiber
    also_kind : a second fiber, if the lot is a mixture
    also : a, its share of the weight
    third_kind : a third fiber
    third : b, its share of the weight

    Returns
    -------
    x, a share

    Raises
    ------
    ValueError
        A blank name, a share that is negative, a fiber without its share or the reverse, or other fibers that add up to
        all of it or more.

    Notes
    -----
    Valid for fibers weighed in the same state of moisture.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(main_share("wool", "silk", 0.25))
    0.75
    """
    require_name(kind)
    require_shares(also, third)
    for name, share in ((also_kind, also), (third_kind, third)):
        require((name is None) == (share is None), "A fiber and its share belong together.")
    main = 1.0 - sum(share for share in (also, third) if share is not None)
    require(ABOVE_ZERO.hold(main), "The other fibers add up to all of it: check their shares.")
    return main * np.asarray(by_element(lambda _: 1.0, kind), dtype=float)[()]


@calculation
def mixture(
    fiber_1: str,
    share_1: Ratio,
    fiber_2: str | None = None,
    share_2: Ratio | None = None,
    fiber_3: str | None = None,
    share_3: Ratio | None = None,
) -> str:
    """A lot's fibers in one text, by which two lots are compared.

    text = the names, each after its thousandths of the weight. Two lots with the same text are the same on a label.

    Parameters
    ----------
    fiber_1, fiber_2, fiber_3 : generic names of the fibers, the main one first
    share_1, share_2, share_3 : their shares

    Returns
    -------
    a text such as "700 wool 300 silk"

    Raises
    ------
    ValueError
        A blank name, or a share that is negative.

    Notes
    -----
    Valid for shares to a thousandth.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(mixture("wool", 0.7, "silk", 0.3))
    700 wool 300 silk
    """
    require_name(fiber_1)
    require_shares(share_1, share_2, share_3)
    text = _thousandths(share_1, fiber_1)
    for share, fiber in ((share_2, fiber_2), (share_3, fiber_3)):
        if fiber is not None and share is not None:
            text = by_element(lambda before, more: f"{before} {more}", text, _thousandths(share, fiber))
    return text


@calculation
def lot_of_strand(lot: str, mixed: str, other: str | None = None, other_mixed: str | None = None) -> str:
    """The lot that stands for the fibers of a strand.

    lot = the first one, if a second has the same fibers. If the two differ, nobody knows which is in the skein.

    Parameters
    ----------
    lot : the strand's lot
    mixed : its fibers, in one text
    other : a lot that may replace it
    other_mixed : the fibers of that one

    Returns
    -------
    a name

    Raises
    ------
    ValueError
        A blank name, or a second lot of other fibers.

    Notes
    -----
    Valid for a strand of one or two lots.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(lot_of_strand("Aster", "1000 wool", "Birch", "1000 wool"))
    Aster
    """
    require_name(lot)
    if other is not None:
        require(other_mixed is not None, "The fibers of the second lot are not known.")
        require(
            by_element(lambda one, two: folded(str(one)) == folded(str(two)), mixed, other_mixed),
            "The two lots are of other fibers.",
        )
    return by_element(lambda name, _: str(name), lot, mixed)


@calculation
def untold(design: str, share: Ratio | None = None, lot: str | None = None) -> Ratio:
    """Whether the fibers of a strand are unknown.

    u = 0 where its share and its lot are known, else 1. The content of a yarn is stated only if every strand is known.

    Parameters
    ----------
    design : the design of the strand
    share : its share in the yarn
    lot : its lot, of known fibers

    Returns
    -------
    u, 0 or 1

    Raises
    ------
    ValueError
        A blank name of the design, or a share that is negative.

    Notes
    -----
    Valid for any strand in the list.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(untold("Gray 2-ply", share=0.5, lot="Aster"))
    0.0
    """
    require_name(design)
    require_shares(share)
    is_open = 1.0 if share is None or lot is None else 0.0
    return np.asarray(by_element(lambda _: is_open, design), dtype=float)[()]


@calculation
def strand_share(lot: str, found: Ratio | None = None) -> Ratio:
    """Share of a skein's first strand.

    x = its design's, or 1 where it is all from one lot. The strands' shares add up to 1.

    Parameters
    ----------
    lot : the lot of the strand
    found : its share in the design

    Returns
    -------
    x, a share

    Raises
    ------
    ValueError
        A blank name of the lot, or a share that is negative.

    Notes
    -----
    Valid for a skein of a design, or of one lot.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(strand_share("Aster"))
    1.0
    """
    require_name(lot)
    require_shares(found)
    return np.asarray(by_element(lambda _: 1.0, lot), dtype=float)[()] if found is None else found


@calculation
def share_in_yarn(fiber: str, strand: Ratio, lot: str, lots: Sequence[str], shares: Ratio) -> Ratio:
    """Share of a strand's fiber in the whole yarn.

    x = s · f. Half of a strand that is half of the yarn is a quarter of the yarn.

    Parameters
    ----------
    fiber : name of the fiber
    strand : s, share of the strand in the yarn
    lot : the strand's lot
    lots : the lots listed, a blank one where a row is empty
    shares : f, share of the fiber in each of them

    Returns
    -------
    x, a share

    Raises
    ------
    ValueError
        A share that is negative, a lot that is not in the list, or a fiber without a name.

    Notes
    -----
    Valid for shares by weight.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(share_in_yarn("WOOL", 0.5, "Aster", ["Aster", "Birch"], [0.5, 1.0]))
    0.25
    """
    require_name(fiber)
    require_shares(strand)
    return strand * lookup(lot, lots, shares)


def _thousandths(share, fiber) -> str:
    return by_element(lambda x, name: f"{int(np.floor(round(float(x) * 1000, 9) + 0.5))} {name}", share, fiber)
