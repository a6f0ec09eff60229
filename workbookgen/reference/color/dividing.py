"""How a dyed top is divided lengthwise, so that each strip holds its colors in their order."""

from workbookgen.reference.calculation import by_element, calculation, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, AT_LEAST_ONE, LESS_THAN_ALL, NOT_NEGATIVE, PART, require_within
from workbookgen.reference.words import said
from workbookgen.units import Grist, Length, Mass, Ratio


@calculation
def strips(strands: Ratio, skeins: Ratio, chosen: Ratio | None = None) -> Ratio:
    """Strips into which a top is divided lengthwise.

    L = n · s, if no other number was chosen. One strip for each strand of each skein always keeps the order.

    Parameters
    ----------
    strands : n, strands that are plied together
    skeins : s, skeins that are to be alike
    chosen : another number of strips, if one is wanted

    Returns
    -------
    L, a whole number

    Raises
    ------
    ValueError
        A number below one.

    Notes
    -----
    Valid for strips of the whole length of the top and of one weight.

    References
    ----------
    Definition of a product.

    Examples
    --------
    >>> print(strips(2, 3))
    6
    """
    _require_counted(strands, skeins, *(() if chosen is None else (chosen,)))
    return strands * skeins if chosen is None else chosen


@calculation
def repeats_of_strand(repeats: Ratio, strips: Ratio, strands: Ratio, skeins: Ratio) -> Ratio:
    """Repeats of the order of colors in one strand of one skein.

    r = k · L / (n · s). Only where r is whole does each strand begin and end with the same color.

    Parameters
    ----------
    repeats : k, repeats along the top
    strips : L, strips into which it is divided lengthwise
    strands : n, strands that are plied together
    skeins : s, skeins that are to be alike

    Returns
    -------
    r, a number

    Raises
    ------
    ValueError
        A number below one.

    Notes
    -----
    Valid for strips that are joined end to end in one direction, and broken between repeats.

    References
    ----------
    Definition of an equal share.

    Examples
    --------
    >>> print(repeats_of_strand(4, strips=3, strands=2, skeins=2))
    3.0
    """
    _require_counted(repeats, strips, strands, skeins)
    return repeats * strips / (strands * skeins)


@calculation
def order_words(repeats: Ratio, pieces: Ratio) -> str:
    """Whether each strand holds the same order of colors, in words.

    text = the repeats r where r = round(r), else a number of strips that does it. Strands that end within a repeat do
    not begin with the same color.

    Parameters
    ----------
    repeats : r, repeats in one strand
    pieces : strands of all skeins together: that many strips always work

    Returns
    -------
    a sentence

    Raises
    ------
    ValueError
        Numbers that are not above zero.

    Notes
    -----
    Valid for counted numbers; a millionth off is no difference.

    References
    ----------
    Definition of a whole number.

    Examples
    --------
    >>> print(order_words(3, pieces=4))
    Each strand holds the same colors in the same order.
    """
    require_within(ABOVE_ZERO, "Repeats and strands", repeats, pieces)
    return by_element(_order_words, repeats, said(pieces))


@calculation
def part(mass: Mass, parts: Ratio) -> Mass:
    """Weight of one of equal parts.

    w = m / p. Strips, strands and skeins are weighed to match it.

    Parameters
    ----------
    mass : m, mass of the top
    parts : p, number of equal parts

    Returns
    -------
    w, a mass

    Raises
    ------
    ValueError
        A negative mass, or fewer parts than one.

    Notes
    -----
    Valid for parts of one weight.

    References
    ----------
    Definition of an equal share.

    Examples
    --------
    >>> print(part(Quantity(120, "g"), 6))
    20.0 gram
    """
    require_numbers(mass)
    require_within(NOT_NEGATIVE, "The mass", mass)
    _require_counted(parts)
    return mass / parts


@calculation
def strand_length(mass: Mass, grist: Grist, take_up: Ratio = 0.0) -> Length:
    """Length of yarn in which one strand has this weight.

    ℓ = m · λ · (1 - c). Each color's length is its weight times the grist, less the take-up of plying.

    Parameters
    ----------
    mass : m, mass of the fiber in one strand
    grist : λ, grist of the single
    take_up : c, share of the singles' length lost in plying

    Returns
    -------
    ℓ, a length

    Raises
    ------
    ValueError
        A negative mass, a grist that is not above zero, or a take-up that is not from 0 to under 1.

    Notes
    -----
    Valid for fiber spun without loss, at one grist.

    References
    ----------
    Definition of the grist.

    Examples
    --------
    >>> print(strand_length(Quantity(50, "g"), Quantity(4, "m/g"), take_up=0.05))
    190.0 meter
    """
    require_numbers(mass, take_up)
    require_within(NOT_NEGATIVE, "The mass", mass)
    require_within(ABOVE_ZERO, "The grist", grist)
    require_within(LESS_THAN_ALL, "The take-up", take_up)
    return mass * grist * (1 - take_up)


@calculation
def run(length: Length, repeats: Ratio, share: Ratio = 1.0) -> Length:
    """Length of one run of a color, or of one repeat of them all.

    ρ = ℓ · x / r. In the strand, a color comes back with each repeat.

    Parameters
    ----------
    length : ℓ, length of the yarn
    repeats : r, repeats of the order in it
    share : x, the color's share of a repeat; 1 for the whole repeat

    Returns
    -------
    ρ, a length

    Raises
    ------
    ValueError
        A negative length, repeats that are not above zero, or a share outside 0 to 1.

    Notes
    -----
    Valid for repeats that are alike, and yarn of one grist.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(run(Quantity(180, "m"), repeats=3, share=0.25))
    15.0 meter
    """
    require_numbers(length)
    require_within(NOT_NEGATIVE, "The length", length)
    require_within(ABOVE_ZERO, "The repeats", repeats)
    require_within(PART, "The share", share)
    return length * share / repeats


def _order_words(repeats: float, spoken: str) -> str:
    whole = round(float(repeats), 6)
    if whole == int(whole):
        return "Each strand holds the same colors in the same order."
    return f"The strands would not be alike: they end within a repeat. Divide into {spoken} strips instead."


def _require_counted(*numbers) -> None:
    for number in numbers:
        require_within(AT_LEAST_ONE, "Each number must be one or more.", number)
