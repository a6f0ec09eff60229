"""How much of a top each color is, and how wide its stripes become."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, SHRINKAGE, require_within
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.units import Length, Mass, PerLength, Ratio


@calculation
def color_weight(whole: Mass, share: Ratio | None = None, weighed: Mass | None = None) -> Mass:
    """Weight of one color in the top.

    w = what was weighed, else x · m. A share judged by eye will do: the sum shows whether it can be right.

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
    Valid for colors that are equally thick in the top.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(color_weight(Quantity(120, "g"), share=0.25))
    30.0 gram
    """
    require(share is not None or weighed is not None, "Give the color's share, or its weight.")
    require_within(NOT_NEGATIVE, "The mass", whole)
    if weighed is not None:
        require_within(NOT_NEGATIVE, "The mass", weighed)
        return weighed
    require_within(NOT_NEGATIVE, "The share", share)
    return whole * share


@calculation
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

    Examples
    --------
    >>> print(share_of_top(Quantity(30, "g"), Quantity(120, "g")))
    0.25
    """
    require_within(NOT_NEGATIVE, "The mass", weight)
    require_within(ABOVE_ZERO, "The top must weigh something.", whole)
    require(weight <= whole, "A color cannot weigh more than the top.")
    return (weight / whole).m_as("")


@calculation
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
        No share, or a negative one.

    Notes
    -----
    Valid for shares of one top.

    References
    ----------
    Definition of the least.

    Examples
    --------
    >>> print(least_share([0.2, 0.5, 0.3]))
    0.2
    """
    known = np.asarray(shares, dtype=float)
    known = known[~np.isnan(known)]
    require(known.size > 0, "Give at least one color.")
    require_within(NOT_NEGATIVE, "A share", known)
    return float(known.min())


@calculation
def whole_words(total: Ratio) -> str:
    """Whether the colors make up the whole top, in words.

    text = whole for S = 1, less for S < 1, more for S > 1. A discrepancy is reported, and nothing is changed.

    Parameters
    ----------
    total : S, sum of the colors' shares

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

    Examples
    --------
    >>> print(whole_words(1.0))
    The colors make up the whole top.
    """
    require_within(ABOVE_ZERO, "The sum of the colors", total)
    return by_element(_whole_words, total)


@calculation
def stripe_rows(length: Length, per_row: Length, shrinkage: Ratio = 0.0) -> Ratio:
    """Rows that a run of color makes.

    R = ρ · (1 - s) / q. Yarn for one row is measured on a washed swatch, and a run of color is shorter once it is
    washed.

    Parameters
    ----------
    length : ρ, length of the run
    per_row : q, yarn for one row
    shrinkage : s, share of the run's length that washing takes, none if it was measured washed

    Returns
    -------
    R, a number

    Raises
    ------
    ValueError
        A negative length, no yarn for a row, or a shrinkage of 0.9 or more.

    Notes
    -----
    Valid for rows of one width.

    References
    ----------
    Definition of a quotient.

    Examples
    --------
    >>> print(stripe_rows(Quantity(12, "m"), Quantity(1.5, "m")))
    8.0
    """
    require_numbers(length)
    require_within(NOT_NEGATIVE, "The length", length)
    require_within(ABOVE_ZERO, "The yarn for a row", per_row)
    require_within(SHRINKAGE, "The shrinkage", shrinkage)
    return (length / per_row).m_as("") * (1 - shrinkage)


@calculation
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

    Examples
    --------
    >>> print(stripe_width(8, Quantity(40, "1/m")))
    0.2 meter
    """
    require_within(NOT_NEGATIVE, "The rows", rows)
    require_within(ABOVE_ZERO, "The gauge", row_gauge)
    return (rows / row_gauge).to("meter")


def _whole_words(total: float) -> str:
    if abs(total - 1) < ROUNDING:
        return "The colors make up the whole top."
    return f"The colors come to {'less' if total < 1 else 'more'} than the top weighs: look at their shares."
