"""What a shade is mixed from, and what assists the dye: shares of the dye, and of the goods."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require
from workbookgen.reference.dyeing.bath import stock
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, PART, require_within
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.units import Mass, Ratio, Volume


@calculation
def to_weigh(
    dye: Mass | None = None, of_shade: Ratio | None = None, goods: Mass | None = None, of_goods: Ratio | None = None
) -> Mass:
    """Weight of one ingredient of the bath.

    m = d · x for a dye that is a share of the shade, m = g · y for an assistant. Mixed dyes divide one depth among
    them.

    Parameters
    ----------
    dye : d, all dye of the shade
    of_shade : x, the share of this dye in it
    goods : g, mass of the dry goods
    of_goods : y, an assistant as a share of the goods; used where x is not given

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        Neither pair is given, or a negative amount.

    Notes
    -----
    Valid for shares as the product's label or a recipe gives them.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(to_weigh(goods=Quantity(125, "g"), of_goods=0.08))
    10.0 gram
    """
    whole, share = (goods, of_goods) if of_shade is None else (dye, of_shade)
    require(
        whole is not None and share is not None,
        "Give a dye and its share of the shade, or the goods and a share of them.",
    )
    require_within(NOT_NEGATIVE, "A mass", whole)
    require_within(NOT_NEGATIVE, "A share", share)
    return whole * share


@calculation
def stock_of(dye: Mass, of_shade: Ratio, strength: Ratio) -> Volume:
    """Stock of one dye in a mix.

    V = d · x / (s · 1 g/mL). Each dye has a stock of its own, all of one strength.

    Parameters
    ----------
    dye : d, all dye of the shade
    of_shade : x, the share of this dye in it
    strength : s, strength of the stock, a share

    Returns
    -------
    V, a volume

    Raises
    ------
    ValueError
        A negative mass or share, or a strength that is not above zero.

    Notes
    -----
    Valid for stocks that were topped up to their volume, and stirred.

    References
    ----------
    Definition of the strength by weight in volume.

    Examples
    --------
    >>> print(stock_of(Quantity(2.5, "g"), 0.4, 0.01).to("mL"))
    100.0 milliliter
    """
    return stock(to_weigh(dye=dye, of_shade=of_shade), strength)


@calculation
def in_shade(of_shade: Ratio) -> Ratio:
    """A dye's share, as counted in the shade.

    x = x. Only what is a share of a shade is counted among its dyes.

    Parameters
    ----------
    of_shade : x, the share of one dye

    Returns
    -------
    x, a share

    Raises
    ------
    ValueError
        A share outside 0 to 1.

    Notes
    -----
    Valid for dyes of one shade.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(in_shade(0.4))
    0.4
    """
    require_within(PART, "The share", of_shade)
    return of_shade


@calculation
def whole_of(shares: Ratio) -> Ratio:
    """Sum of the shares of a whole.

    S = Σ x i. A recipe that does not add up to 100 percent is another recipe.

    Parameters
    ----------
    shares : x i, shares of one whole; one that is not a number is blank

    Returns
    -------
    S, a share

    Raises
    ------
    ValueError
        Shares that add up to 0.

    Notes
    -----
    Valid for shares of one and the same whole.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(whole_of([0.4, 0.6]))
    1.0
    """
    total = float(np.nansum(np.asarray(shares, dtype=float)))
    require(0 < total < np.inf, "The sum of the shares must be above zero.")
    return total


@calculation
def shade_words(total: Ratio) -> str:
    """Whether mixed dyes make up the whole shade, in words.

    text = whole for S = 1, paler for S < 1, deeper for S > 1. Nothing that was typed is changed silently.

    Parameters
    ----------
    total : S, sum of the shares of the dyes

    Returns
    -------
    a sentence

    Raises
    ------
    ValueError
        A sum that is not above zero.

    Notes
    -----
    Valid for shares of one shade; a billionth off is no difference.

    References
    ----------
    Definition of a whole.

    Examples
    --------
    >>> print(shade_words(0.9))
    The dyes come to less than 100%: weighed so, the shade will be paler than you asked for.
    """
    require_within(ABOVE_ZERO, "The sum of the shares", total)
    return by_element(_shade_words, total)


def _shade_words(total: float) -> str:
    if abs(total - 1) < ROUNDING:
        return "The dyes make up the whole shade."
    if total < 1:
        return "The dyes come to less than 100%: weighed so, the shade will be paler than you asked for."
    return "The dyes come to more than 100%: weighed so, the shade will be deeper than you asked for."
