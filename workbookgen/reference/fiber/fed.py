"""What is fed to cards or comb comes out again: the fiber to spin, the noil, and the waste that nobody weighs."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.texts import folded
from workbookgen.units import Mass, Quantity, Ratio

NO_MASS = Quantity(0.0, "g")
STAGE_OF_PREPARING = 3
ROUNDING = 1e-6  # two weights that make up the whole may miss it by their last digits


@calculation
def share_of_fed(part: Mass, fed: Mass, stage: Ratio = 1) -> Ratio:
    """Share of the fed fiber that comes out as top, or as noil.

    x = m / F. Top, noil and waste add up to all that was fed.

    Parameters
    ----------
    part : m, mass of the top or of the noil
    fed : F, mass of fiber fed
    stage : stage in which the lot was bought, 1 to 5; it is prepared by oneself up to 3

    Returns
    -------
    x, a share of the fed fiber

    Raises
    ------
    ValueError
        A mass that is not above zero, more than was fed, or fiber that was bought prepared.

    Notes
    -----
    Valid for weights in the same air. Of combed wool 20 to 40 % stay behind (common practice, no source).

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(share_of_fed(Quantity(75, "g"), Quantity(100, "g")))
    0.75
    """
    require((part > NO_MASS) & (fed > NO_MASS), "Every weight must be above zero.")
    require(part <= fed * (1 + ROUNDING), "No more comes out than was fed.")
    require(stage <= STAGE_OF_PREPARING, "This fiber was bought prepared.")
    return (part / fed).m_as("")


@calculation
def waste_of_fed(fed: Mass, prepared: Mass, noil: Mass | None = None, stage: Ratio = 1, way: str | None = None) -> Mass:
    """What is lost of the fed fiber besides the noil.

    w = F - p - n. Dust, chaff, and what flies; cards leave no noil.

    Parameters
    ----------
    fed : F, mass of fiber fed
    prepared : p, mass of the top or of what the cards gave
    noil : n, mass of the noil, if it was weighed
    stage : stage in which the lot was bought, 1 to 5; it is prepared by oneself up to 3
    way : "carding", or nothing for it, or "combing"

    Returns
    -------
    w, a mass

    Raises
    ------
    ValueError
        A mass that is not above zero, more than was fed, combed fiber whose noil was not weighed, or fiber that was bought prepared.

    Notes
    -----
    Valid for weights in the same air: in damper air the fiber seems to gain.

    References
    ----------
    Definition of the difference.

    Examples
    --------
    >>> print(waste_of_fed(Quantity(100, "g"), Quantity(75, "g"), noil=Quantity(20, "g"), way="combing"))
    5 gram
    """
    require_numbers(fed, prepared, noil)
    require((fed > NO_MASS) & (prepared > NO_MASS), "Every weight must be above zero.")
    if noil is None:
        require(way is None or by_element(lambda each: folded(str(each)) != "combing", way), "The noil was not weighed.")
        noil = 0 * fed
    else:
        require(noil > NO_MASS, "Every weight must be above zero.")
    require(prepared + noil <= fed * (1 + ROUNDING), "No more comes out than was fed.")
    require(stage <= STAGE_OF_PREPARING, "This fiber was bought prepared.")
    return np.maximum(fed - prepared - noil, 0 * fed)


@calculation
def waste_share(waste: Mass, fed: Mass) -> Ratio:
    """Share of the fed fiber that is waste.

    x = w / F. With top and noil it makes up the whole.

    Parameters
    ----------
    waste : w, mass of the waste, 0 if nothing is lost
    fed : F, mass of fiber fed

    Returns
    -------
    x, a share of the fed fiber

    Raises
    ------
    ValueError
        A negative mass of waste, or none that was fed.

    Notes
    -----
    Valid for weights in the same air.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(waste_share(Quantity(5, "g"), Quantity(100, "g")))
    0.05
    """
    require(waste >= NO_MASS, "The waste cannot be negative.")
    require(fed > NO_MASS, "The fiber that was fed must be above zero.")
    return (waste / fed).m_as("")
