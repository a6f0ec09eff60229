"""The yarn for which bobbins are to be filled: its length, its strands, its take-up, and the grist of its singles."""

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.limits import (
    ABOVE_ZERO,
    AT_LEAST_ONE,
    COUNTED,
    NOT_NEGATIVE,
    PART,
    SHRINKAGE,
    UNDER_ONE,
    require_within,
)
from workbookgen.reference.tolerances import NEARLY_ALL
from workbookgen.units import Grist, Length, Ratio


@calculation
def still_to_ply(own: Length | None = None, project: Length | None = None, left: Ratio | None = None) -> Length:
    """Length of plied yarn for which bobbins are to be filled.

    L = own, or else the project's length · what of it is still to make. What is typed takes precedence over what
    is planned.

    Parameters
    ----------
    own : length as typed, before washing
    project : length of the project's yarn, before washing
    left : share of the project's yarn that is not in skeins yet

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        Neither length is known, a negative length, or a share outside 0 to 1.

    Notes
    -----
    Valid for lengths before washing.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(still_to_ply(project=Quantity(1000, "m"), left=0.25))
    250.0 meter
    """
    length = own
    if own is None:
        require(project is not None and left is not None, "Give the length of yarn, or choose a project.")
        require_within(PART, "The share left to make must be from 0 to 1.", left)
        length = project * left
    require_within(NOT_NEGATIVE, "A length", length)
    return length


@calculation
def strands_to_ply(own: Ratio | None = None, project: Ratio | None = None, usual: Ratio = 2) -> Ratio:
    """Strands of the yarn for which bobbins are to be filled.

    n = own, or else the project's, or else two. Most handspun yarn has two plies.

    Parameters
    ----------
    own : strands as typed
    project : strands of the project
    usual : strands where none are given

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        Strands that are not a whole number from 1 up.

    Notes
    -----
    Valid for equal strands.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(strands_to_ply(project=3))
    3
    """
    strands = next((each for each in (own, project) if each is not None), usual)
    require_within(COUNTED, "The number of strands", strands)
    return strands


@calculation
def take_up_to_ply(
    own: Ratio | None = None, project: Ratio | None = None, sample: Ratio | None = None, design: Ratio | None = None
) -> Ratio:
    """Take-up of the yarn for which bobbins are to be filled.

    c = own, or else the project's, or else its sample's, or else its design's, or else 0. Without a known one, none is
    counted.

    Parameters
    ----------
    own : take-up as typed
    project : take-up of the project
    sample : take-up of the project's sample
    design : take-up by the feeds of the project's design

    Returns
    -------
    c, a share of the length before plying; below zero where the singles grew

    Raises
    ------
    ValueError
        A take-up of 1 or more.

    Notes
    -----
    Valid for one yarn, plied as it was before.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(take_up_to_ply(sample=0.04))
    0.04
    """
    share = next((each for each in (own, project, sample, design) if each is not None), 0.0)
    require_within(UNDER_ONE, "The take-up", share)
    return share


@calculation
def singles_grist(
    own: Grist | None = None,
    plied: Grist | None = None,
    strands: Ratio = 1,
    take_up: Ratio = 0,
    shrinkage: Ratio | None = None,
    bought: Ratio | None = None,
) -> Grist:
    """Grist of the singles on the bobbins.

    g = own, or else G · n / ((1 - s) · (1 - c) · (1 - b)). The second gives the singles of a planned yarn, of which a
    bought thread is a part.

    Parameters
    ----------
    own : grist of the singles as typed
    plied : G, grist planned for the finished yarn
    strands : n, its strands
    take_up : c, share of the singles' length lost in plying; below zero where they grew
    shrinkage : s, share of the yarn's length lost in washing
    bought : b, share of the yarn's weight that is a bought thread, none if not given

    Returns
    -------
    g, a grist

    Raises
    ------
    ValueError
        Neither the grist nor the plan that it follows from is known, or it is not above zero, fewer than one strand, a
        take-up outside 0 to under 1, a shrinkage of 0.9 or more, or a yarn all bought.

    Notes
    -----
    Valid for equal strands, before washing.

    References
    ----------
    Definition of the take-up.

    Examples
    --------
    >>> print(singles_grist(plied=Quantity(2, "m/g"), strands=2, shrinkage=0.2))
    5.0 meter / gram
    """
    require_numbers(strands, take_up, shrinkage, bought)
    spun = 1.0 if bought is None else 1 - bought
    if own is None:
        require(plied is not None and shrinkage is not None, "Give the grist of the singles, or choose a project.")
        require_within(UNDER_ONE, "The take-up", take_up)
        require_within(SHRINKAGE, "The shrinkage", shrinkage)
        require_within(AT_LEAST_ONE, "There must be at least one strand.", strands)
        require(bought is None or bought < NEARLY_ALL, "A yarn that is all bought has no singles to spin.")
    grist = plied / (1 - shrinkage) * strands / (spun * (1 - take_up)) if own is None else own
    require_within(ABOVE_ZERO, "The grist", grist)
    return grist
