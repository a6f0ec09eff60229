"""What the ticket of a skein says: its length, mass, grist and wraps in words, and what it is made of.

A ticket is read by people of both habits, so amounts are given twice: yards with meters, ounces with grams. They are
rounded as far as people read them, halves away from zero, with thousands separated by a comma.
"""

from decimal import ROUND_HALF_UP, Decimal

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.units import Grist, Length, Mass, PerLength, Quantity

# No yarn has more. So no number on a ticket has millions to be parted, and its ounces and wraps have no thousands.
LONGEST, HEAVIEST, FINEST = Quantity(900_000, "m"), Quantity(28_000, "g"), Quantity(2_000, "m/g")
MOST_WRAPS = Quantity(39_000, "1/m")
WHOLE, TENTH, HUNDREDTH = Decimal("1"), Decimal("0.1"), Decimal("0.01")
EXPECTED = ("usual shrinkage", "shrinks as its sample")  # of a length that was not measured once it was washed
LITTLE = 10  # grams; below this, one more decimal is stated


@calculation
def length_words(length: Length, basis: str | None = None) -> str:
    """Length on a ticket.

    words = L in whole yards, then L in whole meters, with "about" where what washing takes was not measured. Each is
    rounded on its own, so neither carries the rounding of the other.

    Parameters
    ----------
    length : L, length of the skein
    basis : how its length after washing is known, as by length_basis; measured if not given

    Returns
    -------
    a text such as "200 yd (183 m)" or "about 1,200 yd (1,097 m)"

    Raises
    ------
    ValueError
        A negative length, or one too long to state.

    Notes
    -----
    Valid for lengths under 900 kilometers; halves round away from zero.

    References
    ----------
    Definition of rounding. Both units on one ticket: common practice, no source.

    Examples
    --------
    >>> print(length_words(Quantity(200, "yd")))
    200 yd (183 m)
    """
    _require_amount(length, LONGEST, "length")
    known = "" if basis is None else basis
    return by_element(_length_words, length.m_as("yard"), length.m_as("meter"), known)


def _length_words(yards, meters, basis) -> str:
    return f"{'about ' if basis in EXPECTED else ''}{_rounded(yards)} yd ({_rounded(meters)} m)"


@calculation
def mass_words(mass: Mass) -> str:
    """Mass on a ticket.

    words = m in ounces to a tenth, then m in whole grams; under 10 g each with one decimal more. A tenth of an ounce is
    about what a kitchen scale resolves.

    Parameters
    ----------
    mass : m, mass of the skein

    Returns
    -------
    a text such as "3.5 oz (99 g)" or "4 oz (113 g)"

    Raises
    ------
    ValueError
        A negative mass, or one too large to state.

    Notes
    -----
    Valid for masses under 28 kilograms; halves round away from zero.

    References
    ----------
    Definition of rounding. Both units on one ticket: common practice, no source.

    Examples
    --------
    >>> print(mass_words(Quantity(3.5, "oz")))
    3.5 oz (99 g)
    """
    _require_amount(mass, HEAVIEST, "mass")
    return by_element(_mass_words, mass.m_as("ounce"), mass.m_as("gram"))


def _mass_words(ounces, grams) -> str:
    of_ounces, of_grams = (TENTH, WHOLE) if round(float(grams), 9) >= LITTLE else (HUNDREDTH, TENTH)
    return f"{_rounded(ounces, of_ounces)} oz ({_rounded(grams, of_grams)} g)"


@calculation
def grist_words(grist: Grist) -> str:
    """Grist on a ticket.

    words = g in whole yards per pound, then g in whole meters per 100 grams. It shows which patterns the skein suits.

    Parameters
    ----------
    grist : g, grist of the yarn

    Returns
    -------
    a text such as "900 yd/lb (181 m/100 g)"

    Raises
    ------
    ValueError
        A grist that is not above zero, or too fine to state.

    Notes
    -----
    Valid for grists under 2 km/g; halves round away from zero.

    References
    ----------
    Definition of rounding. Both units on one ticket: common practice, no source.

    Examples
    --------
    >>> print(grist_words(Quantity(900, "yd/lb")))
    900 yd/lb (181 m/100 g)
    """
    require_within(ABOVE_ZERO, "The grist", grist)
    _require_amount(grist, FINEST, "grist")
    return by_element(
        lambda yards, meters: f"{_rounded(yards)} yd/lb ({_rounded(meters)} m/100 g)",
        grist.m_as("yard/pound"),
        grist.m_as("meter/hectogram"),
    )


@calculation
def wraps_words(wraps: PerLength, counted: PerLength | None = None) -> str:
    """Wraps on a ticket.

    words = w per inch, to a tenth, or "about" so many whole ones if none were counted. Wraps are counted to one half at
    best, and what a grist suggests is rougher still.

    Parameters
    ----------
    wraps : w, strands side by side, per length
    counted : the same as counted; if not given, they are expected from the grist

    Returns
    -------
    a text such as "10.5 wraps per inch" or "about 11 wraps per inch"

    Raises
    ------
    ValueError
        Wraps that are not above zero, or too many to state.

    Notes
    -----
    Valid for fewer than 39,000 wraps in a meter, 990 in an inch; halves round away from zero.

    References
    ----------
    Definition of rounding. Per inch on every ticket: common practice, no source.

    Examples
    --------
    >>> print(wraps_words(Quantity(10.7, "1/inch")))
    about 11 wraps per inch
    """
    require_numbers(counted)
    require_within(ABOVE_ZERO, "The wraps", wraps)
    _require_amount(wraps, MOST_WRAPS, "number of wraps")
    about, step = ("about ", WHOLE) if counted is None else ("", TENTH)
    return by_element(lambda number: f"{about}{_rounded(number, step)} wraps per inch", wraps.m_as("1/inch"))


@calculation
def made_of(first: str, second: str | None = None) -> str:
    """What a skein was spun from, on its ticket.

    words = the lot, or the lot "and" the second one. A thread that was plied in is named too.

    Parameters
    ----------
    first : name of the fiber lot
    second : name of what was plied with it; none if all is from one lot

    Returns
    -------
    a text such as "Gray wool and Silk thread"

    Raises
    ------
    ValueError
        A blank name of the first lot.

    Notes
    -----
    Valid for any names that are not blank; what a seller must state about fibers is set by local law.

    References
    ----------
    Definition of a list of two. Lots, not shares of fibers: common practice, no source.

    Examples
    --------
    >>> print(made_of("Gray wool", "Silk thread"))
    Gray wool and Silk thread
    """
    require(np.all(np.asarray(first, dtype=object) != ""), "The lot has no name.")
    return first if second is None else by_element(lambda one, other: f"{one} and {other}", first, second)


def _require_amount(amount: Quantity, most: Quantity, name: str) -> None:
    require_within(NOT_NEGATIVE, f"The {name}", amount)
    require(amount < most, f"The {name} is more than a ticket can state.")


def _rounded(amount, step=WHOLE) -> str:
    # Decimals round halves as people and spreadsheets do; nine digits first, so
    # that the last ones of a conversion do not decide a half.
    exact = Decimal(repr(round(float(amount), 9)))
    text = f"{exact.quantize(step, ROUND_HALF_UP):,f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
