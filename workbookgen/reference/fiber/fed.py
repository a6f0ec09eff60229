"""What is fed to cards or comb comes out again: fiber to spin, noil, and waste, which nobody weighs."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.fiber.stages import only_damp
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.texts import folded
from workbookgen.units import Mass, Ratio

STAGE_OF_PREPARING = 3
MORE_OUT = "No more can come out than was fed, but for a little water."


@calculation
def share_of_fed(part: Mass, fed: Mass, stage: Ratio = 1) -> Ratio:
    """Share of the fed fiber that comes out as top, or as noil.

    x = m / F, at most 1. Top, noil and waste add up to all that was fed.

    Parameters
    ----------
    part : m, mass of the top or of the noil
    fed : F, mass of fiber fed
    stage : stage at which the lot was bought, 1 to 5; up to 3, you prepare it yourself

    Returns
    -------
    x, a share of the fed fiber

    Raises
    ------
    ValueError
        A mass that is not above zero, over 5% more than was fed, or fiber that was bought prepared.

    Notes
    -----
    Valid for weights in the same state of moisture. Combing holds back 20 to 40 % of wool (common practice, no source).

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(share_of_fed(Quantity(75, "g"), Quantity(100, "g")))
    0.75
    """
    require_within(ABOVE_ZERO, "Every weight", part, fed)
    require(only_damp(part, fed), MORE_OUT)
    require(stage <= STAGE_OF_PREPARING, "This fiber was bought prepared.")
    return np.minimum(1.0, (part / fed).m_as(""))[()]


@calculation
def waste_of_fed(fed: Mass, prepared: Mass, noil: Mass | None = None, stage: Ratio = 1, way: str | None = None) -> Mass:
    """What is lost of the fed fiber, apart from the noil.

    w = F - p - n, and 0 below a thousand-millionth of F or where damp air made them more. Dust, chaff, and fly; cards
    leave no noil.

    Parameters
    ----------
    fed : F, mass of fiber fed
    prepared : p, mass of the top, or of the carded fiber
    noil : n, mass of the noil, if it was weighed
    stage : stage at which the lot was bought, 1 to 5; up to 3, you prepare it yourself
    way : "carding", which is also assumed where none is given, or "combing"

    Returns
    -------
    w, a mass

    Raises
    ------
    ValueError
        A mass that is not above zero, over 5% more than was fed, combed fiber whose noil was not weighed, or fiber that
        was bought prepared.

    Notes
    -----
    Valid for weights in the same state of moisture: in damper air the fiber seems to gain.

    References
    ----------
    Definition of the difference.

    Examples
    --------
    >>> print(waste_of_fed(Quantity(100, "g"), Quantity(75, "g"), noil=Quantity(20, "g"), way="combing"))
    5.0 gram
    """
    require_numbers(fed, prepared, noil)
    require_within(ABOVE_ZERO, "Every weight", fed, prepared)
    if noil is None:
        require(
            way is None or by_element(lambda each: folded(str(each)) != "combing", way), "The noil was not weighed."
        )
        noil = 0 * fed
    else:
        require_within(ABOVE_ZERO, "Every weight", noil)
    require(only_damp(prepared + noil, fed), MORE_OUT)
    require(stage <= STAGE_OF_PREPARING, "This fiber was bought prepared.")
    wasted = fed - prepared - noil
    return np.maximum(wasted, 0 * fed) * np.where(wasted < ROUNDING * fed, 0.0, 1.0)[()]


@calculation
def waste_share(waste: Mass, fed: Mass) -> Ratio:
    """Share of the fed fiber that is waste.

    x = w / F. Top, noil and waste make up the whole.

    Parameters
    ----------
    waste : w, mass of the waste, 0 if there is none
    fed : F, mass of fiber fed

    Returns
    -------
    x, a share of the fed fiber

    Raises
    ------
    ValueError
        A negative mass of waste, or nothing fed.

    Notes
    -----
    Valid for weights in the same state of moisture.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(waste_share(Quantity(5, "g"), Quantity(100, "g")))
    0.05
    """
    require_within(NOT_NEGATIVE, "The waste", waste)
    require_within(ABOVE_ZERO, "The fiber that was fed", fed)
    return (waste / fed).m_as("")
