"""What to lay out for a blend, and what it costs: shares are by weight."""

from workbookgen.reference.calculation import calculation, require, require_name
from workbookgen.reference.limits import ABOVE_ZERO, FOUND_PART, NOT_NEGATIVE, require_within
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.units import Mass, PerMass, Ratio


@calculation
def weighed(mass: Mass, name: str) -> Mass:
    """Mass of a fiber that a blend counts.

    m = m. A line without a name is unfinished, and not part of the blend.

    Parameters
    ----------
    mass : m, mass of the fiber
    name : what it is called

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A mass that is not above zero, or a blank name.

    Notes
    -----
    Valid for fibers weighed in the same state of moisture.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(weighed(Quantity(60, "g"), "wool"))
    60 gram
    """
    require_within(ABOVE_ZERO, "A fiber in a blend must have a mass.", mass)
    require_name(name)
    return mass


@calculation
def share_of_blend(mass: Mass, total: Mass) -> Ratio:
    """Share of a fiber in a blend.

    x = m / M. The shares add up to 1.

    Parameters
    ----------
    mass : m, mass of the fiber
    total : M, mass of all fibers

    Returns
    -------
    x, a share by mass

    Raises
    ------
    ValueError
        A mass that is not above zero, or a fiber that weighs more than the whole.

    Notes
    -----
    Valid for fibers weighed in the same state of moisture.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(share_of_blend(Quantity(60, "g"), Quantity(80, "g")))
    0.75
    """
    require_within(ABOVE_ZERO, "A fiber in a blend must have a mass.", mass, total)
    require(mass <= total * (1 + ROUNDING), "A fiber cannot weigh more than the blend.")
    return (mass / total).m_as("")


@calculation
def to_lay_out(share: Ratio, wanted: Mass) -> Mass:
    """Mass of a fiber for a wanted mass of the blend.

    m = x · M. For a batt, or for a whole lot.

    Parameters
    ----------
    share : x, share of the fiber by mass
    wanted : M, mass of blend wanted

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A share outside 0 to 1, or a negative mass.

    Notes
    -----
    Valid for fibers weighed in the same state of moisture.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(to_lay_out(0.75, Quantity(200, "g")))
    150.0 gram
    """
    require_within(FOUND_PART, "A share", share)
    require_within(NOT_NEGATIVE, "A mass", wanted)
    return share * wanted


@calculation
def cost_of(mass: Mass, price: PerMass) -> Ratio:
    """What a fiber in a blend costs.

    k = m · p. Money is a plain number.

    Parameters
    ----------
    mass : m, mass of the fiber
    price : p, money for a mass of it

    Returns
    -------
    k, money

    Raises
    ------
    ValueError
        A negative mass or price.

    Notes
    -----
    Valid for prices of fiber as it is weighed.

    References
    ----------
    Definition of a price.

    Examples
    --------
    >>> print(cost_of(Quantity(60, "g"), Quantity(0.05, "1/g")))
    3.0
    """
    require_within(NOT_NEGATIVE, "A mass", mass)
    require_within(NOT_NEGATIVE, "A price", price)
    return (mass * price).m_as("")


@calculation
def blend_price(cost: Ratio, total: Mass, known: Ratio = 1, of: Ratio = 1) -> PerMass:
    """Price of a blend.

    p = Σ k / M, which is Σ x · p. The expensive fiber counts by its share.

    Parameters
    ----------
    cost : Σ k, what all fibers cost
    total : M, their mass
    known : number of fibers for which this is known
    of : number of fibers in the blend

    Returns
    -------
    p, money for a mass

    Raises
    ------
    ValueError
        A negative cost, or a mass that is not above zero, or a fiber for which it is not known.

    Notes
    -----
    Valid for a blend in which the price of every fiber is known.

    References
    ----------
    Definition of the mean.

    Examples
    --------
    >>> print(blend_price(12, Quantity(80, "g"), known=2, of=2))
    0.15 / gram
    """
    require_all_known(known, of)
    require_within(NOT_NEGATIVE, "A cost", cost)
    require_within(ABOVE_ZERO, "A blend must have a mass.", total)
    return cost / total


def require_all_known(known: Ratio, of: Ratio) -> None:
    """Refuse a mean over fibers of which the figure of some is not known."""
    require((known >= 1) & (known == of), "A mean needs the figure for every fiber.")
