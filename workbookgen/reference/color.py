"""Color: how a dyed top is divided so that its colors keep their order, and how long each becomes.

A top that was dyed in repeats holds each color as often as there are repeats. Divided
lengthwise, each strip holds them all, in their order, at a part of the weight.
"""

import numpy as np

from workbookgen.reference.law import by_element, law, require, require_numbers
from workbookgen.reference.words import said
from workbookgen.units import Grist, Length, Mass, PerLength, Quantity, Ratio

NO_MASS = Quantity(0.0, "g")
NO_LENGTH = Quantity(0.0, "m")


@law
def strips(strands: Ratio, skeins: Ratio, chosen: Ratio | None = None) -> Ratio:
    """Strips into which a top is divided lengthwise.

    L = n · s, if no other number was chosen. One strip for each strand of each skein always holds the order.

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
    """
    _require_counted(strands, skeins, *(() if chosen is None else (chosen,)))
    return strands * skeins if chosen is None else chosen


@law
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
    """
    _require_counted(repeats, strips, strands, skeins)
    return repeats * strips / (strands * skeins)


@law
def order_words(repeats: Ratio, pieces: Ratio) -> str:
    """Whether each strand holds the same order of colors, in words.

    text = the repeats r where r = round(r), else a number of strips that does it. Strands that end within a repeat do not begin alike.

    Parameters
    ----------
    repeats : r, repeats in one strand
    pieces : strands in all, of all skeins: so many strips always do it

    Returns
    -------
    a sentence

    Raises
    ------
    ValueError
        Numbers that are not above zero.

    Notes
    -----
    Valid for numbers that a person counts; a millionth off is no difference.

    References
    ----------
    Definition of a whole number.
    """
    require((repeats > 0) & (pieces > 0), "Repeats and strands must be above zero.")
    return by_element(_order_words, repeats, pieces, said(pieces))


def _order_words(repeats: float, pieces: float, spoken: str) -> str:
    whole = round(float(repeats), 6)
    if whole == int(whole):
        return "Each strand holds the same colors in the same order."
    return f"The strands would not be alike: they end within a repeat. Divide into {spoken} strips instead."


@law
def part(mass: Mass, parts: Ratio) -> Mass:
    """Weight of one of equal parts.

    w = m / p. Strips, strands and skeins are weighed against it.

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
    """
    require_numbers(mass)
    require(mass >= NO_MASS, "The mass cannot be negative.")
    _require_counted(parts)
    return mass / parts


@law
def strand_length(mass: Mass, grist: Grist, take_up: Ratio = 0.0) -> Length:
    """Length of yarn of which one strand has this weight.

    ℓ = m · λ · (1 - c). Each color's length is its weight times the grist, less what plying takes.

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
    Valid for fiber that is spun without loss, at one grist.

    References
    ----------
    Definition of the grist.
    """
    require_numbers(mass, take_up)
    require(mass >= NO_MASS, "The mass cannot be negative.")
    require(grist > Quantity(0.0, "m/g"), "The grist must be above zero.")
    require((take_up >= 0) & (take_up < 1), "The take-up lies from 0 to under 1.")
    return mass * grist * (1 - take_up)


@law
def run(length: Length, repeats: Ratio, share: Ratio = 1.0) -> Length:
    """Length of one run of a color, or of one repeat of them all.

    ρ = ℓ · x / r. In the strand a color comes back with each repeat.

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
    """
    require_numbers(length)
    require(length >= NO_LENGTH, "The length cannot be negative.")
    require(repeats > 0, "The repeats must be above zero.")
    require((share >= 0) & (share <= 1), "The share lies between 0 and 1.")
    return length * share / repeats


@law
def out_of_step(length: Length, difference: Ratio, strands: Ratio = 2) -> Length:
    """How far one strand's colors are ahead of another's at the end of the yarn.

    a = ℓ · δ. A strand that is finer stretches each color over more yarn, and the differences add up.

    Parameters
    ----------
    length : ℓ, length of the yarn
    difference : δ, by how much the grists of the strands differ, a share
    strands : strands that are plied together, two or more

    Returns
    -------
    a, a length

    Raises
    ------
    ValueError
        A negative length or difference, or a single strand.

    Notes
    -----
    Valid for strands that begin with the same color, and differ by small shares.

    References
    ----------
    Geometry of two evenly stretched lengths.
    """
    require_numbers(length, difference)
    require(length >= NO_LENGTH, "The length cannot be negative.")
    require(difference >= 0, "The difference cannot be negative.")
    require(strands > 1, "One strand has no other to be out of step with.")
    return length * difference


@law
def meeting_words(ahead: Length, shortest: Length) -> str:
    """Whether the colors of the plies still meet at the end of the yarn, in words.

    text = meet where a < ρ, apart where a ≥ ρ. A color meets itself as long as its run is longer than the strands are out of step.

    Parameters
    ----------
    ahead : a, how far the strands are out of step at the end
    shortest : ρ, the shortest run of a color

    Returns
    -------
    a sentence

    Raises
    ------
    ValueError
        A negative length.

    Notes
    -----
    Valid for strands that begin with the same color.

    References
    ----------
    Geometry of two runs that overlap.
    """
    require((ahead >= NO_LENGTH) & (shortest >= NO_LENGTH), "A length cannot be negative.")
    return by_element(
        lambda apart: "At the end the plies have lost step: the shortest color no longer meets itself." if apart
        else "The colors of the plies meet to the end of the yarn.",
        (ahead - shortest).m_as("m") > -1e-9,
    )


@law
def color_weight(whole: Mass, share: Ratio | None = None, weighed: Mass | None = None) -> Mass:
    """Weight of one color in the top.

    w = what was weighed, else x · m. A share by eye will do: the sum tells whether it can be right.

    Parameters
    ----------
    whole : m, mass of the top
    share : x, the color's share of it, if that is known
    weighed : mass of the color, if that is known

    Returns
    -------
    w, a mass

    Raises
    ------
    ValueError
        Neither is given, or something negative.

    Notes
    -----
    Valid for colors that are as thick in the top as each other.

    References
    ----------
    Definition of a share.
    """
    require(share is not None or weighed is not None, "Give the color's share, or its weight.")
    require(whole >= NO_MASS, "The mass cannot be negative.")
    if weighed is not None:
        require(weighed >= NO_MASS, "The mass cannot be negative.")
        return weighed
    require(share >= 0, "The share cannot be negative.")
    return whole * share


@law
def share_of_top(weight: Mass, whole: Mass) -> Ratio:
    """A color's share of the top.

    x = w / m. It is the same in each strip and each repeat.

    Parameters
    ----------
    weight : w, mass of the color
    whole : m, mass of the top

    Returns
    -------
    x, a share

    Raises
    ------
    ValueError
        A negative mass, a top that weighs nothing, or a color that weighs more than the top.

    Notes
    -----
    Valid for repeats that are alike.

    References
    ----------
    Definition of a share.
    """
    require(weight >= NO_MASS, "The mass cannot be negative.")
    require(whole > NO_MASS, "The top must weigh something.")
    require(weight <= whole, "A color cannot weigh more than the top.")
    return (weight / whole).m_as("")


@law
def least_share(shares: Ratio) -> Ratio:
    """Share of the color of which there is least.

    x = min x i. Its runs are the shortest.

    Parameters
    ----------
    shares : x i, the colors' shares; one that is not a number is blank

    Returns
    -------
    x, a share

    Raises
    ------
    ValueError
        No shares at all, or a negative one.

    Notes
    -----
    Valid for shares of one top.

    References
    ----------
    Definition of the least.
    """
    known = np.asarray(shares, dtype=float)
    known = known[~np.isnan(known)]
    require(known.size > 0, "Give at least one color.")
    require(known >= 0, "A share cannot be negative.")
    return float(known.min())


@law
def whole_words(total: Ratio) -> str:
    """Whether the colors make up the whole top, in words.

    text = whole for S = 1, less for S < 1, more for S > 1. What is missing is told, and nothing is changed.

    Parameters
    ----------
    total : S, what the colors' shares come to

    Returns
    -------
    a sentence

    Raises
    ------
    ValueError
        A sum that is not above zero.

    Notes
    -----
    Valid for shares of one top; a billionth off is no difference.

    References
    ----------
    Definition of a whole.
    """
    require(total > 0, "The colors must come to something.")
    return by_element(_whole_words, total)


def _whole_words(total: float) -> str:
    if abs(total - 1) < 1e-9:
        return "The colors make up the whole top."
    return f"The colors come to {'less' if total < 1 else 'more'} than the top weighs: look at their shares."


@law
def stripe_rows(length: Length, per_row: Length) -> Ratio:
    """Rows that a run of color makes.

    R = ρ / q. Yarn for one row is measured on a swatch.

    Parameters
    ----------
    length : ρ, length of the run
    per_row : q, yarn for one row

    Returns
    -------
    R, a number

    Raises
    ------
    ValueError
        A negative length, or no yarn for a row.

    Notes
    -----
    Valid for rows of one width.

    References
    ----------
    Definition of a quotient.
    """
    require_numbers(length)
    require(length >= NO_LENGTH, "The length cannot be negative.")
    require(per_row > NO_LENGTH, "A row takes more yarn than nothing.")
    return (length / per_row).m_as("")


@law
def stripe_width(rows: Ratio, row_gauge: PerLength) -> Length:
    """Width of a stripe.

    h = R / g. As high as its rows lie above each other.

    Parameters
    ----------
    rows : R, rows of the stripe
    row_gauge : g, rows per length

    Returns
    -------
    h, a length

    Raises
    ------
    ValueError
        Negative rows, or a gauge that is not above zero.

    Notes
    -----
    Valid for one gauge in the whole piece.

    References
    ----------
    Definition of the gauge.
    """
    require(rows >= 0, "The rows cannot be negative.")
    require(row_gauge > Quantity(0.0, "1/m"), "The gauge must be above zero.")
    return (rows / row_gauge).to("meter")


def _require_counted(*numbers) -> None:
    for number in numbers:
        require(np.asarray(number) >= 1, "Each number must be one or more.")
