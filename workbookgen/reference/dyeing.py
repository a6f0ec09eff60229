"""Dyeing by weight: how much dye, how much stock, how much water, and what helps the dye along.

All of it follows from the weight of the dry goods. Dyers weigh powder once, into a stock
solution, and then measure the stock: a 1% stock holds one gram in a hundred milliliters.
"""

import numpy as np

from workbookgen.reference.law import by_element, law, require, require_numbers
from workbookgen.units import Mass, Quantity, Ratio, Volume, VolumePerMass

NO_MASS = Quantity(0.0, "g")
NO_VOLUME = Quantity(0.0, "L")
FULL_STRENGTH = Quantity(1.0, "g/mL")  # of a stock of 100%


@law
def goods(weighed: Mass | None = None, skein: Mass | None = None, lot: Mass | None = None) -> Mass:
    """Weight of the goods to be dyed.

    g = what was weighed, else the skein, else the lot. What was weighed dry just before dyeing is the truest.

    Parameters
    ----------
    weighed : mass of the dry goods, if it was weighed for this bath
    skein : mass of a chosen skein, if there is one
    lot : mass of a chosen lot of washed fiber, if there is one

    Returns
    -------
    g, a mass

    Raises
    ------
    ValueError
        Nothing is given, or a mass that is not above zero.

    Notes
    -----
    Valid for dry, clean goods: wet ones weigh far more.

    References
    ----------
    Definition of an order of preference.
    """
    mass = next((each for each in (weighed, skein, lot) if each is not None), None)
    require(mass is not None, "Give the goods, a skein or a lot.")
    require(mass > NO_MASS, "The goods must weigh more than nothing.")
    return mass


@law
def dye(goods: Mass, depth: Ratio) -> Mass:
    """Dye for a depth of shade.

    d = g · D. The depth is the dye as a share of the dry goods.

    Parameters
    ----------
    goods : g, mass of the dry goods
    depth : D, depth of shade, a share

    Returns
    -------
    d, mass of dye powder

    Raises
    ------
    ValueError
        A negative mass or depth.

    Notes
    -----
    Valid for dyes whose maker gives shades as a share of the goods.

    References
    ----------
    A public dye table: 125 g to 2% take 2.5 g, 300 g to 3% take 9 g (read).
    """
    _require_goods(goods)
    require(depth >= 0, "The depth cannot be negative.")
    return goods * depth


@law
def stock(dye: Mass, strength: Ratio) -> Volume:
    """Stock solution that holds a mass of dye.

    V = d / (s · 1 g/mL). The strength is grams in a milliliter: 1 g in 100 mL is 1%.

    Parameters
    ----------
    dye : d, mass of dye
    strength : s, strength of the stock, a share

    Returns
    -------
    V, a volume

    Raises
    ------
    ValueError
        A negative mass, or a strength that is not above zero.

    Notes
    -----
    Valid for stock that was filled up to its volume, and stirred.

    References
    ----------
    Definition of the strength by weight in volume.
    """
    require(dye >= NO_MASS, "The dye cannot be negative.")
    _require_strength(strength)
    return (dye / (strength * FULL_STRENGTH)).to("liter")


@law
def powder(volume: Volume, strength: Ratio) -> Mass:
    """Dye powder in a volume of stock.

    p = V · s · 1 g/mL. It is dissolved first, and then filled up to the volume.

    Parameters
    ----------
    volume : V, volume of stock to make
    strength : s, its strength, a share

    Returns
    -------
    p, a mass

    Raises
    ------
    ValueError
        A negative volume, or a strength that is not above zero.

    Notes
    -----
    Valid for dyes that dissolve wholly at that strength.

    References
    ----------
    Definition of the strength by weight in volume.
    """
    _require_volume(volume)
    _require_strength(strength)
    return (volume * strength * FULL_STRENGTH).to("gram")


@law
def dyes(powder: Mass, depth: Ratio) -> Mass:
    """Goods that a mass of dye colors to a depth.

    g = p / D. It is the depth of shade, turned round.

    Parameters
    ----------
    powder : p, mass of dye
    depth : D, depth of shade, a share

    Returns
    -------
    g, mass of dry goods

    Raises
    ------
    ValueError
        A negative mass, or a depth that is not above zero.

    Notes
    -----
    Valid for dyes whose maker gives shades as a share of the goods.

    References
    ----------
    Definition of the depth of shade.
    """
    require(powder >= NO_MASS, "The dye cannot be negative.")
    require(depth > 0, "The depth must be above zero.")
    return powder / depth


@law
def bath(goods: Mass, liquor_ratio: VolumePerMass) -> Volume:
    """Liquid of a dye bath.

    V = g · λ. Stock and dissolved assistants are part of it.

    Parameters
    ----------
    goods : g, mass of the dry goods
    liquor_ratio : λ, liquid for a mass of goods

    Returns
    -------
    V, a volume

    Raises
    ------
    ValueError
        A negative mass, or a liquor ratio that is not above zero.

    Notes
    -----
    Valid for any bath; by hand 20 to 40 liters for a kilogram is usual.

    References
    ----------
    Definition of the liquor ratio; 20 to 40 L/kg: common practice, no source.
    """
    _require_goods(goods)
    require(liquor_ratio > Quantity(0.0, "L/kg"), "The liquor ratio must be above zero.")
    return (goods * liquor_ratio).to("liter")


@law
def water(bath: Volume, stock: Volume) -> Volume:
    """Water to fill in besides the stock.

    W = V - v. The stock brings its own water along.

    Parameters
    ----------
    bath : V, liquid of the whole bath
    stock : v, stock that goes into it

    Returns
    -------
    W, a volume

    Raises
    ------
    ValueError
        A negative volume, or more stock than bath.

    Notes
    -----
    Valid for volumes that add, as thin solutions do nearly.

    References
    ----------
    Definition of a difference.
    """
    _require_volume(stock)
    require(stock <= bath, "There cannot be more stock than bath.")
    return bath - stock


@law
def to_weigh(dye: Mass | None = None, of_shade: Ratio | None = None, goods: Mass | None = None, of_goods: Ratio | None = None) -> Mass:
    """Weight of one thing that goes into the bath.

    m = d · x for a dye that is a share of the shade, m = g · y for an assistant. Dyes that are mixed share one depth between them.

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
    """
    whole, share = (goods, of_goods) if of_shade is None else (dye, of_shade)
    require(whole is not None and share is not None, "Give a dye and its share of the shade, or the goods and a share of them.")
    require(whole >= NO_MASS, "A mass cannot be negative.")
    require(share >= 0, "A share cannot be negative.")
    return whole * share


@law
def stock_of(dye: Mass, of_shade: Ratio, strength: Ratio) -> Volume:
    """Stock of one dye among those that are mixed.

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
    Valid for stocks that were filled up to their volume, and stirred.

    References
    ----------
    Definition of the strength by weight in volume.
    """
    return stock(to_weigh(dye=dye, of_shade=of_shade), strength)


@law
def in_shade(of_shade: Ratio) -> Ratio:
    """A dye's share, as it counts in the shade.

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
    """
    require((of_shade >= 0) & (of_shade <= 1), "The share lies between 0 and 1.")
    return of_shade


@law
def whole_of(shares: Ratio) -> Ratio:
    """What the shares of a whole come to.

    S = Σ x i. A recipe that does not come to one hundred per cent is another recipe.

    Parameters
    ----------
    shares : x i, shares of one whole; one that is not a number is blank

    Returns
    -------
    S, a share

    Raises
    ------
    ValueError
        Shares that come to nothing.

    Notes
    -----
    Valid for shares of one and the same whole.

    References
    ----------
    Definition of a sum.
    """
    total = float(np.nansum(np.asarray(shares, dtype=float)))
    require(0 < total < np.inf, "The shares must come to something.")
    return total


@law
def shade_words(total: Ratio) -> str:
    """Whether mixed dyes come to the whole shade, in words.

    text = whole for S = 1, paler for S < 1, deeper for S > 1. Nothing that was typed is changed in silence.

    Parameters
    ----------
    total : S, what the shares of the dyes come to

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
    """
    require(total > 0, "The shares must come to something.")
    return by_element(_shade_words, total)


def _shade_words(total: float) -> str:
    if abs(total - 1) < 1e-9:
        return "The dyes make up the whole shade."
    if total < 1:
        return "The dyes come to less than 100%: weighed so, the shade will be paler than you asked for."
    return "The dyes come to more than 100%: weighed so, the shade will be deeper than you asked for."


def _require_goods(goods) -> None:
    require_numbers(goods)
    require(goods >= NO_MASS, "The goods cannot weigh less than nothing.")


def _require_strength(strength) -> None:
    require(strength > 0, "The strength of the stock must be above zero.")


def _require_volume(volume) -> None:
    require(volume >= NO_VOLUME, "A volume cannot be negative.")
