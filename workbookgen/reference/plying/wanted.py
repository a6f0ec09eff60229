"""Backwards from a yarn that is wanted: the component that is missing, the singles to spin, the grist for so many
wraps."""

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, COUNTED_FROM_TWO, SHRINKAGE, require_loss, require_within
from workbookgen.reference.plying.design import require_strands
from workbookgen.units import Grist, LinearDensity, PerLength, Quantity, Ratio


@calculation
def missing_component(resultant: LinearDensity, known: LinearDensity) -> LinearDensity:
    """What the one missing component must add to a wanted yarn.

    r = R - Σ known. For counts that are lengths per mass, N = A · R / (A - R).

    Parameters
    ----------
    resultant : R, linear density of the yarn wanted
    known : what all the other components add together

    Returns
    -------
    r, a mass per length

    Raises
    ------
    ValueError
        Known components that weigh nothing, or already as much as the yarn wanted.

    Notes
    -----
    Valid for one missing component; divide by its strands and its feed for the single to spin.

    References
    ----------
    W. Davis, Hosiery Manufacture, examples 39 to 43 (read).

    Examples
    --------
    >>> print(missing_component(Quantity(240, "tex"), Quantity(210, "tex")))
    30 tex
    """
    require_within(ABOVE_ZERO, "The known components must weigh something.", known)
    require(resultant > known, "The known components already weigh as much as the yarn wanted: make them finer.")
    return resultant - known


@calculation
def each_other_strand(rest: LinearDensity, strands: Ratio) -> LinearDensity:
    """Linear density of each strand beside the one that is there.

    t = r / (n - 1). What that one leaves is shared by the others.

    Parameters
    ----------
    rest : r, linear density that the one strand leaves for all others
    strands : n, number of strands, that one among them

    Returns
    -------
    t, a mass per length

    Raises
    ------
    ValueError
        Nothing left, or strands that are not a whole number from 2 up.

    Notes
    -----
    Valid for others that are alike.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(each_other_strand(Quantity(200, "tex"), strands=3))
    100.0 tex
    """
    require_within(ABOVE_ZERO, "The rest", rest)
    require_within(COUNTED_FROM_TWO, "The number of strands", strands)
    return rest / (strands - 1)


@calculation
def all_strands(plied: LinearDensity, take_up: Ratio = 0.0, shrinkage: Ratio = 0.0) -> LinearDensity:
    """Linear density of all strands together, before they are plied.

    Σt = R · (1 - s) · (1 - c). The strands are longer than the ply, and longer still before washing, so a unit length
    of them weighs less.

    Parameters
    ----------
    plied : R, linear density of the plied yarn
    take_up : c, share of the strands' length lost in plying
    shrinkage : s, share of the yarn's length lost in washing; negative where yarn grows

    Returns
    -------
    Σt, a linear density

    Raises
    ------
    ValueError
        A linear density that is not above zero, a take-up outside 0 to under 1, or a shrinkage of 0.9 or more.

    Notes
    -----
    Valid for strands that all lose the same share of their length.

    References
    ----------
    Folded yarn in direct systems: textbooks of the trade (read); take-up on original length.

    Examples
    --------
    >>> print(all_strands(Quantity(250, "tex"), take_up=0.04))
    240.0 tex
    """
    require_within(ABOVE_ZERO, "The linear density", plied)
    require_loss(take_up, "take-up")
    require_within(SHRINKAGE, "The shrinkage", shrinkage)
    return plied * (1 - shrinkage) * (1 - take_up)


@calculation
def singles_for(plied: LinearDensity, strands: Ratio, take_up: Ratio = 0.0, shrinkage: Ratio = 0.0) -> LinearDensity:
    """Linear density of the singles to spin for a plied yarn.

    t = R · (1 - s) · (1 - c) / n. Take-up and washing make the ply heavier per length, so the singles are spun finer.

    Parameters
    ----------
    plied : R, linear density of the plied yarn wanted
    strands : n, number of equal strands
    take_up : c, lost length over the length before plying, from 0 to under 1
    shrinkage : s, share of the yarn's length lost in washing; negative where yarn grows

    Returns
    -------
    t, a mass per length

    Raises
    ------
    ValueError
        A linear density that is not above zero, strands that are not a whole number from 1 up,
        a take-up outside 0 to under 1, or a shrinkage of 0.9 or more.

    Notes
    -----
    Valid for equal strands; some books state take-up as a share of the plied length.

    References
    ----------
    Definition of the take-up.

    Examples
    --------
    >>> print(singles_for(Quantity(250, "tex"), 2, take_up=0.04))
    120.0 tex
    """
    require_within(ABOVE_ZERO, "The linear density", plied)
    require_strands(strands)
    require_loss(take_up, "take-up")
    require_within(SHRINKAGE, "The shrinkage", shrinkage)
    return plied * (1 - shrinkage) * (1 - take_up) / strands


@calculation
def grist_for_wraps(wraps: PerLength, k: Ratio) -> Grist:
    """Grist of a yarn for a wanted number of wraps in an inch.

    g = (w / K)², g in yards per pound, w in an inch. It expresses a wanted thickness as a mass.

    Parameters
    ----------
    wraps : w, wraps wanted in a length
    k : K, factor for the fiber and the way of wrapping, best fitted to your own samples

    Returns
    -------
    g, a length per mass

    Raises
    ------
    ValueError
        Wraps or a K that are not above zero.

    Notes
    -----
    Valid for round yarns of one kind, wrapped the same way.

    References
    ----------
    Ashenhurst's rule, quoted in a study of weaving (read), solved for the grist.

    Examples
    --------
    >>> print(round(grist_for_wraps(Quantity(12, "1/inch"), 0.4)))
    900 yard / pound
    """
    require_within(ABOVE_ZERO, "The number of wraps", wraps)
    require_within(ABOVE_ZERO, "The factor K", k)
    return Quantity((wraps.m_as("1/inch") / k) ** 2, "yard/pound")
