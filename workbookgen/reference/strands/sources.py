"""What a project's yarn is made of: its strands, their shares, their lots, and which strands are bought.

A design states it for each component; a plain yarn is one strand, from the lots that the project itself names.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_name, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, require_within
from workbookgen.units import Grist, Ratio

BOUGHT = 5  # the stage of yarn and thread


@calculation
def component_share(
    yarn: Grist,
    found: Ratio | None = None,
    design: str | None = None,
    stage: Ratio | None = None,
    thread: Ratio = 1,
    singles: Ratio = 1,
) -> Ratio:
    """Share of a strand in its yarn.

    x = the design's, or 1 without a design; times f for a thread, or h for singles, if the yarn is planned with another
    grist than the design's. A plain yarn is all one component.

    Parameters
    ----------
    yarn : planned grist of the yarn
    found : share of the component in its design
    design : the design, if the yarn has one
    stage : stage at which its first lot was bought, 1 to 5
    thread, singles : f and h, how many times the design's share a thread has, and each of the singles

    Returns
    -------
    x, a share

    Raises
    ------
    ValueError
        A grist that is not above zero, or a design without such a component.

    Notes
    -----
    Valid for a yarn of one kind, or of a design.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(component_share(Quantity(900, "yd/lb"), found=0.5, design="Marl", stage=5, thread=1.25, singles=0.75))
    0.625
    """
    require_numbers(yarn, found, stage, thread, singles)
    require_within(ABOVE_ZERO, "The grist", yarn)
    if found is not None:
        times = singles if stage is None else np.where(np.asarray(stage) == BOUGHT, thread, singles)
        return (found * times)[()] if isinstance(times, np.ndarray) else found * times
    require(design is None, "The design has no such component.")
    return yarn.magnitude * 0.0 + 1.0


@calculation
def part_in_use(share: Ratio, found: Ratio | None = None) -> Ratio:
    """Part that a yarn's first strand has of its lots.

    f = the design's, or 1. A plain yarn has its lots to itself.

    Parameters
    ----------
    share : share of the strand in the yarn; there is one where there is a share
    found : its part by the design, where other components have the same lots

    Returns
    -------
    f, a share

    Raises
    ------
    ValueError
        A share that is not above zero.

    Notes
    -----
    Valid for a yarn of a design or of lots.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(part_in_use(0.75, found=0.6))
    0.6
    """
    require_numbers(share, found)
    require_within(ABOVE_ZERO, "The share", share)
    return share * 0.0 + 1.0 if found is None else found


@calculation
def lot_in_use(picked: str | None = None, own: str | None = None, design: str | None = None) -> str:
    """A lot of a yarn's first strand.

    lot = that of the design's component, or the project's own where there is no design. It is stated in one place.

    Parameters
    ----------
    picked : lot of the design's first component
    own : lot that the project names itself
    design : the design, if the yarn has one

    Returns
    -------
    a name

    Raises
    ------
    ValueError
        No lot, or a design whose component has none.

    Notes
    -----
    Valid for a yarn of a design or of lots, not both.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(lot_in_use(own="Aster"))
    Aster
    """
    if picked is not None:
        require_name(picked)
        return picked
    require(own is not None and design is None, "There is no lot.")
    require_name(own)
    return own


@calculation
def strand_name(share: Ratio, label: str | None = None, lot: str | None = None) -> str:
    """What a yarn's first strand is called.

    name = the component's, or its lot's, or "the yarn". The most specific name says most.

    Parameters
    ----------
    share : share of the strand in the yarn; there is one where there is a share
    label : what the design calls the component
    lot : the lot that it draws on

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        A share that is not above zero.

    Notes
    -----
    Valid for any yarn.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(strand_name(1, lot="Aster"))
    Aster
    """
    require_numbers(share)
    require_within(ABOVE_ZERO, "The share", share)
    name = label if label is not None else lot
    if name is None:
        return by_element(lambda _: "the yarn", share)
    return by_element(lambda each, _: str(each), name, share)


@calculation
def is_bought(share: Ratio, stage: Ratio | None = None) -> Ratio:
    """Whether a strand is bought as yarn or thread.

    b = 1 at stage 5, else 0. What is bought as yarn needs no spinning.

    Parameters
    ----------
    share : share of the strand in the yarn; there is one where there is a share
    stage : stage at which its first lot was bought, 1 to 5

    Returns
    -------
    b, 1 or 0

    Raises
    ------
    ValueError
        A share that is not above zero.

    Notes
    -----
    Valid for a strand whose lots are all bought alike.

    References
    ----------
    Definition of the stage.

    Examples
    --------
    >>> print(is_bought(0.25, stage=5))
    1.0
    """
    require_numbers(share, stage)
    require_within(ABOVE_ZERO, "The share", share)
    return np.where(np.asarray(stage) == 5, 1.0, 0.0 * share)[()]


@calculation
def bought_share(
    bought_1: Ratio,
    share_1: Ratio,
    bought_2: Ratio | None = None,
    share_2: Ratio | None = None,
    bought_3: Ratio | None = None,
    share_3: Ratio | None = None,
    bought_4: Ratio | None = None,
    share_4: Ratio | None = None,
) -> Ratio:
    """Share of bought thread in a yarn.

    b = Σ x, over the bought strands. It stays the same, however the others are spun.

    Parameters
    ----------
    bought_1, bought_2, bought_3, bought_4 : 1 for a strand that is bought, 0 for one that is spun
    share_1, share_2, share_3, share_4 : x, share of each strand in the weight

    Returns
    -------
    b, a share

    Raises
    ------
    ValueError
        A share that is not above zero.

    Notes
    -----
    Valid for the strands of one yarn.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(bought_share(0, 0.75, 1, 0.25))
    0.25
    """
    require_numbers(bought_1, share_1, bought_2, share_2, bought_3, share_3, bought_4, share_4)
    require_within(ABOVE_ZERO, "The share", share_1)
    pairs = ((bought_1, share_1), (bought_2, share_2), (bought_3, share_3), (bought_4, share_4))
    return sum(bought * share for bought, share in pairs if bought is not None and share is not None)


@calculation
def unlike_lots(
    bought: Ratio, stage_2: Ratio | None = None, stage_3: Ratio | None = None, lot: str | None = None
) -> Ratio:
    """How many of the other lots of a plain yarn are bought yarn where the first is fiber, or fiber where it is not.

    n = number of them. Such lots do not replace each other; plied together, the one that runs out first ends the yarn.

    Parameters
    ----------
    bought : 1 where the first lot was bought as yarn or thread, else 0
    stage_2, stage_3 : stage at which the second and the third lot were bought, 1 to 5, of those that are chosen
    lot : the first lot

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        No first lot.

    Notes
    -----
    Valid for lots of one yarn.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(unlike_lots(0, stage_2=5, lot="Aster"))
    1.0
    """
    require(lot is not None, "Name the first lot.")
    require_numbers(bought, stage_2, stage_3)
    is_bought, others = np.asarray(bought) > 0.5, [stage for stage in (stage_2, stage_3) if stage is not None]
    counts = [np.where(is_bought != (np.asarray(stage) > 4.5), 1.0, 0.0)[()] for stage in others]
    return sum(counts, start=0.0 * bought)


@calculation
def without_a_lot(
    wanting: Ratio,
    design: str | None = None,
    share_2: Ratio | None = None,
    share_3: Ratio | None = None,
    share_4: Ratio | None = None,
    lot_1: str | None = None,
    lot_2: str | None = None,
    lot_3: str | None = None,
    lot_4: str | None = None,
) -> Ratio:
    """How many components of a design have no lot, while their project lacks yarn.

    n = number of them, or 0 for a project that has enough. Of such a component nothing counts as there.

    Parameters
    ----------
    wanting : 1 for a project that is still to get yarn, else 0
    design : the design of the yarn
    share_2, share_3, share_4 : shares of the further components in the yarn's weight, of those that there are
    lot_1, lot_2, lot_3, lot_4 : the first lot of each component, if it has one

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        No design.

    Notes
    -----
    Valid for a yarn of a design, which always has a first component.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(without_a_lot(1, design="Gray 2-ply", share_2=0.5, lot_1="Aster"))
    1.0
    """
    require(design is not None, "Name the design.")
    require_numbers(wanting, share_2, share_3, share_4)
    further = ((share_2, lot_2), (share_3, lot_3), (share_4, lot_4))
    lacking = (lot_1 is None) + sum(share is not None and lot is None for share, lot in further)
    return np.where(np.asarray(wanting) > 0.5, float(lacking), 0.0)[()]
