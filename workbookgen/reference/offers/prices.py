"""What offered fleeces and fibers really cost: per weight left by washing, and per weight of the yarn that they become.

A price by the weight on the tag compares grease with wool. What counts is what is paid, shipping included, over the
weight that is kept; and since that weight is only expected, each such price has an uncertainty. Money is a plain
number, in whatever currency the spinner uses.
"""

from workbookgen.reference.calculation import calculation, require_name, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.units import Mass, PerMass, Ratio


@calculation
def paid(price: Ratio, name: str, shipping: Ratio = 0.0) -> Ratio:
    """Total cost of an offer.

    C = p + s. Shipping is paid for grease and straw too.

    Parameters
    ----------
    price : p, price of the whole, in money
    name : what the offer is called
    shipping : s, cost of shipping

    Returns
    -------
    C, money

    Raises
    ------
    ValueError
        A blank name, a price that is not above zero, or a negative cost of shipping.

    Notes
    -----
    Valid for costs in one currency.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(paid(80, "Gray fleece", shipping=12))
    92
    """
    require_name(name)
    require_numbers(price, shipping)
    require_within(NOT_NEGATIVE, "The price", price)
    require_within(NOT_NEGATIVE, "The cost of shipping", shipping)
    return price + shipping


@calculation
def per_mass(money: Ratio, mass: Mass) -> PerMass:
    """Price by the weight that is kept.

    P = C / m. It is per weight kept, not per weight bought.

    Parameters
    ----------
    money : C, all that is paid
    mass : m, weight of clean fiber, or of yarn, that comes of it

    Returns
    -------
    P, money per mass

    Raises
    ------
    ValueError
        Negative money, or a mass that is not above zero.

    Notes
    -----
    Valid for weights in the same state of moisture.

    References
    ----------
    Definition of the unit price.

    Examples
    --------
    >>> print(per_mass(90, Quantity(2, "lb")))
    45.0 / pound
    """
    require_numbers(money, mass)
    require_within(NOT_NEGATIVE, "An amount of money", money)
    require_within(ABOVE_ZERO, "The mass", mass)
    return money / mass


@calculation
def price_uncertainty(price: PerMass, mass: Mass, doubt: Mass) -> PerMass:
    """Standard uncertainty of a price by the weight kept.

    u(P) = P · u(m) / m. The payment is known; the weight that it yields is not.

    Parameters
    ----------
    price : P, price by the weight kept
    mass : m, that weight
    doubt : u(m), its standard uncertainty

    Returns
    -------
    u(P), money per mass

    Raises
    ------
    ValueError
        A negative price or uncertainty, or a mass that is not above zero.

    Notes
    -----
    Valid for an uncertainty that is small beside the weight: a first-order approximation.

    References
    ----------
    JCGM 100, 5.1.6, the relative form for a quotient (from memory).

    Examples
    --------
    >>> print(price_uncertainty(Quantity(45, "1/lb"), Quantity(2, "lb"), Quantity(0.2, "lb")))
    4.5 / pound
    """
    require_numbers(price, mass, doubt)
    require_within(NOT_NEGATIVE, "A price", price)
    require_within(ABOVE_ZERO, "The mass", mass)
    require_within(NOT_NEGATIVE, "A standard uncertainty", doubt)
    return price * (doubt / mass).m_as("")
