"""Dye, stock and water for a bath, all by the weight of the dry goods."""

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.units import Mass, Quantity, Ratio, Volume

FULL_STRENGTH = Quantity(1.0, "g/mL")  # of a stock of 100%


@calculation
def goods(weighed: Mass | None = None, skein: Mass | None = None, lot: Mass | None = None) -> Mass:
    """Weight of the goods to be dyed.

    g = what was weighed, else the skein, else the lot. A dry weight taken just before dyeing is the most accurate.

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

    Examples
    --------
    >>> print(goods(skein=Quantity(125, "g")))
    125 gram
    """
    mass = next((each for each in (weighed, skein, lot) if each is not None), None)
    require(mass is not None, "Give the goods, a skein or a lot.")
    require_within(ABOVE_ZERO, "The mass of the goods", mass)
    return mass


@calculation
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

    Examples
    --------
    >>> print(dye(Quantity(125, "g"), 0.02))
    2.5 gram
    """
    _require_goods(goods)
    require_within(NOT_NEGATIVE, "The depth", depth)
    return goods * depth


@calculation
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
    Valid for stock that was topped up to its volume, and stirred.

    References
    ----------
    Definition of the strength by weight in volume.

    Examples
    --------
    >>> print(stock(Quantity(2.5, "g"), 0.01).to("mL"))
    250.0 milliliter
    """
    require_within(NOT_NEGATIVE, "The dye", dye)
    _require_strength(strength)
    return (dye / (strength * FULL_STRENGTH)).to("liter")


@calculation
def powder(volume: Volume, strength: Ratio) -> Mass:
    """Dye powder in a volume of stock.

    p = V · s · 1 g/mL. It is dissolved first, then topped up to the volume.

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
    Valid for dyes that dissolve completely at that strength.

    References
    ----------
    Definition of the strength by weight in volume.

    Examples
    --------
    >>> print(powder(Quantity(250, "mL"), 0.01))
    2.5 gram
    """
    _require_volume(volume)
    _require_strength(strength)
    return (volume * strength * FULL_STRENGTH).to("gram")


@calculation
def dyes(powder: Mass, depth: Ratio) -> Mass:
    """Goods that a mass of dye colors to a depth.

    g = p / D. The depth of shade, solved for the goods.

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

    Examples
    --------
    >>> print(dyes(Quantity(2.5, "g"), 0.02))
    125.0 gram
    """
    require_within(NOT_NEGATIVE, "The dye", powder)
    require_within(ABOVE_ZERO, "The depth", depth)
    return powder / depth


@calculation
def water(bath: Volume, stock: Volume) -> Volume:
    """Water to add to the stock.

    W = V - v. The stock is mostly water itself.

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
    Valid for volumes that add, as those of dilute solutions nearly do.

    References
    ----------
    Definition of a difference.

    Examples
    --------
    >>> print(water(Quantity(4, "L"), Quantity(0.25, "L")))
    3.75 liter
    """
    _require_volume(stock)
    require(stock <= bath, "There cannot be more stock than bath.")
    return bath - stock


def _require_goods(goods: Mass) -> None:
    require_numbers(goods)
    require_within(NOT_NEGATIVE, "The mass of the goods", goods)


def _require_strength(strength: Ratio) -> None:
    require_within(ABOVE_ZERO, "The strength of the stock", strength)


def _require_volume(volume: Volume) -> None:
    require_within(NOT_NEGATIVE, "A volume", volume)
