"""What everyone is due from a purchase: the weights wanted first, then parts of the rest, all in proportion to what
there is."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, AT_LEAST_ONE, NO_MASS, NOT_NEGATIVE, require_within
from workbookgen.units import Mass, Ratio


@calculation
def asked(line: Ratio, wanted: Mass) -> Mass:
    """Weight that a member asks for.

    w = w. Only members in the list count.

    Parameters
    ----------
    line : place in the list, from 1
    wanted : w, weight wanted

    Returns
    -------
    w, a mass

    Raises
    ------
    ValueError
        A mass that is not above zero, or no place in the list.

    Notes
    -----
    Valid for members of the list.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(asked(1, Quantity(500, "g")))
    500.0 gram
    """
    require_numbers(line, wanted)
    require_within(AT_LEAST_ONE, "The lines of a list are counted from 1.", line)
    require_within(ABOVE_ZERO, "The weight wanted", wanted)
    return wanted * 1.0


@calculation
def part(line: Ratio, parts: Ratio, wanted: Mass | None = None) -> Ratio:
    """Parts that a member has in what is not wanted by weight.

    x = the parts, or 0 where a weight is wanted. A member who names neither takes one part.

    Parameters
    ----------
    line : place in the list, from 1
    parts : the parts; one, if none are named
    wanted : weight wanted, if one is

    Returns
    -------
    x, a number

    Raises
    ------
    ValueError
        Parts that are not above zero, or no place in the list.

    Notes
    -----
    Valid for members of the list.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(part(2, parts=3))
    3
    """
    require_numbers(line, parts, wanted)
    require_within(AT_LEAST_ONE, "The lines of a list are counted from 1.", line)
    require_within(ABOVE_ZERO, "The parts", parts)
    return parts if wanted is None else parts * 0.0


@calculation
def for_parts(mass: Mass, wanted: Mass) -> Mass:
    """What is left for those who asked for parts.

    r = m - w, but not below zero. Wanted weights come first.

    Parameters
    ----------
    mass : m, all there is
    wanted : w, sum of the weights wanted

    Returns
    -------
    r, a mass

    Raises
    ------
    ValueError
        A negative mass.

    Notes
    -----
    Valid for a purchase in which some ask for weights and others for parts of the rest.

    References
    ----------
    Definition of a remainder.

    Examples
    --------
    >>> print(for_parts(Quantity(2000, "g"), Quantity(500, "g")))
    1500.0 gram
    """
    require_numbers(mass, wanted)
    require_within(NOT_NEGATIVE, "The mass", mass)
    require_within(NOT_NEGATIVE, "The weight wanted", wanted)
    return np.maximum(mass - wanted, NO_MASS)


@calculation
def claim(part: Ratio, rest: Mass, parts: Ratio, wanted: Mass | None = None) -> Mass:
    """What a member is due before everything is made to fit.

    c = w, or r · x / X. If the claims add up to more, or less, than there is, everyone gets less or more in the same
    proportion.

    Parameters
    ----------
    part : x, parts of this member
    rest : r, what is left for parts
    parts : X, sum of all parts
    wanted : w, weight wanted, if one is

    Returns
    -------
    c, a mass

    Raises
    ------
    ValueError
        A negative mass or number, or a part of no parts.

    Notes
    -----
    Valid for a purchase in which everyone pays the same per weight.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(claim(1, Quantity(1500, "g"), parts=3))
    500.0 gram
    """
    require_numbers(part, rest, parts, wanted)
    require_within(NOT_NEGATIVE, "The mass", rest)
    require_within(NOT_NEGATIVE, "Parts", part, parts)
    if wanted is not None:
        require_within(ABOVE_ZERO, "The weight wanted", wanted)
        return wanted
    require_within(ABOVE_ZERO, "There are no parts.", parts)
    return rest * (part / parts)


@calculation
def of_the_wanted(mass: Mass, wanted: Mass) -> Ratio:
    """Share of the wanted weights that there is.

    x = m / w. Above 1, there is more than is wanted.

    Parameters
    ----------
    mass : m, all there is
    wanted : w, sum of the weights wanted

    Returns
    -------
    x, a share

    Raises
    ------
    ValueError
        A mass that is not above zero.

    Notes
    -----
    Valid for weights in the same state of moisture.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(of_the_wanted(Quantity(2000, "g"), Quantity(1600, "g")))
    1.25
    """
    require_numbers(mass, wanted)
    require_within(ABOVE_ZERO, "The mass", mass)
    require_within(ABOVE_ZERO, "The weight wanted", wanted)
    return (mass / wanted).m_as("")


@calculation
def split_in_words(
    in_all: Mass, parts: Ratio, mass_left: Ratio, money_left: Ratio | None = None, fit: Ratio | None = None
) -> str:
    """How a purchase is divided, in words.

    text by x > 1, x = 1 or x < 1, the share of the wanted weights that there is. Whoever gets more or less than was
    wanted should know before paying.

    Parameters
    ----------
    in_all : what all are due together; there is something to say once somebody is due something
    parts : sum of all parts
    mass_left : what of the weight is less than a step of the scale, in steps
    money_left : what of the money is less than the coin, in coins
    fit : x, share of the wanted weights that there is, if any are wanted

    Returns
    -------
    a sentence or two

    Raises
    ------
    ValueError
        Nothing due, or a negative number.

    Notes
    -----
    Valid for a purchase in which everyone pays the same per weight.

    References
    ----------
    All in proportion: common practice, no source.

    Examples
    --------
    >>> print(split_in_words(Quantity(2000, "g"), parts=0, mass_left=0, fit=1))
    Each gets the weight wanted.
    """
    require_numbers(in_all, parts, mass_left, money_left, fit)
    require_within(ABOVE_ZERO, "Nothing is due to anyone.", in_all)
    require_within(NOT_NEGATIVE, "A number", parts, mass_left)
    money_left = mass_left * 0.0 if money_left is None else money_left
    if fit is None:
        return by_element(
            lambda mass, money: _with_rest("All of it is divided by parts.", mass, money), mass_left, money_left
        )
    return by_element(_split_in_words, fit, parts, mass_left, money_left)


def _split_in_words(fit: float, parts: float, mass_left: float, money_left: float) -> str:
    fit = round(float(fit), 9)
    if fit < 1:
        text = "They want more than there is: each gets less than wanted, all in proportion" + (
            ", and nothing is left for the others." if parts > 0 else "."
        )
    elif parts > 0:
        text = (
            "Each gets the weight wanted, and the others divide the rest."
            if fit > 1
            else "Each gets the weight wanted, and nothing is left for the others."
        )
    elif fit > 1:
        text = "They want less than there is: each gets more than wanted, all in proportion. To keep the rest apart, give it a line without a weight."
    else:
        text = "Each gets the weight wanted."
    return _with_rest(text, mass_left, money_left)


def _with_rest(text: str, mass_left: float, money_left: float) -> str:
    rests = ["a step of the scale"] * bool(mass_left > 0) + ["a coin"] * bool(money_left > 0)
    return f"{text} What is less than {' and '.join(rests)} stays undivided." if rests else text
