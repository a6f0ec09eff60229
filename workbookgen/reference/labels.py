"""What stands on the ticket of a skein: its length, mass and grist in words.

A ticket is read by people of both habits, so every amount is told twice: yards with meters,
ounces with grams. It is rounded as far as a person reads it, halves away from zero.
"""

from decimal import ROUND_HALF_UP, Decimal

from workbookgen.reference.law import by_element, law, require
from workbookgen.units import Grist, Length, Mass, Quantity

NOTHING = Quantity(0.0, "m")
NO_MASS = Quantity(0.0, "g")
NO_GRIST = Quantity(0.0, "m/g")
# Beyond these a whole number has more figures than a program computes with.
LONGEST, HEAVIEST, FINEST = Quantity(1e7, "m"), Quantity(1e7, "g"), Quantity(1e5, "m/g")
WHOLE, TENTH = Decimal("1"), Decimal("0.1")


@law
def length_words(length: Length) -> str:
    """Length on a ticket.

    words = L in whole yards, then L in whole meters. Each is rounded by itself, so neither
    carries the rounding of the other.

    Parameters
    ----------
    length : L, length of the skein

    Returns
    -------
    a text such as "200 yd (183 m)"

    Raises
    ------
    ValueError
        A negative length, or one that is too long to tell.

    Notes
    -----
    Valid for lengths under ten thousand kilometers; halves round away from zero.

    References
    ----------
    Definition of rounding. Both units on one ticket: common practice, no source.
    """
    _require_amount(length, NOTHING, LONGEST, "length")
    return by_element(
        lambda yards, meters: f"{_rounded(yards)} yd ({_rounded(meters)} m)",
        length.m_as("yard"),
        length.m_as("meter"),
    )


@law
def mass_words(mass: Mass) -> str:
    """Mass on a ticket.

    words = m in ounces to a tenth, then m in whole grams. A tenth of an ounce is about what a
    kitchen scale tells.

    Parameters
    ----------
    mass : m, mass of the skein

    Returns
    -------
    a text such as "3.5 oz (99 g)" or "4 oz (113 g)"

    Raises
    ------
    ValueError
        A negative mass, or one that is too great to tell.

    Notes
    -----
    Valid for masses under ten tonnes; halves round away from zero.

    References
    ----------
    Definition of rounding. Both units on one ticket: common practice, no source.
    """
    _require_amount(mass, NO_MASS, HEAVIEST, "mass")
    return by_element(
        lambda ounces, grams: f"{_rounded(ounces, TENTH)} oz ({_rounded(grams)} g)",
        mass.m_as("ounce"),
        mass.m_as("gram"),
    )


@law
def grist_words(grist: Grist) -> str:
    """Grist on a ticket.

    words = g in whole yards per pound, then g in whole meters per 100 grams. It tells which
    pattern the skein will do for.

    Parameters
    ----------
    grist : g, grist of the yarn

    Returns
    -------
    a text such as "900 yd/lb (181 m/100 g)"

    Raises
    ------
    ValueError
        A grist that is not above zero, or too fine to tell.

    Notes
    -----
    Valid for grists under 100 km to the gram; halves round away from zero.

    References
    ----------
    Definition of rounding. Both units on one ticket: common practice, no source.
    """
    require(grist > NO_GRIST, "The grist must be above zero.")
    _require_amount(grist, NO_GRIST, FINEST, "grist")
    return by_element(
        lambda yards, meters: f"{_rounded(yards)} yd/lb ({_rounded(meters)} m/100 g)",
        grist.m_as("yard/pound"),
        grist.m_as("meter/hectogram"),
    )


def _require_amount(amount, nothing, most, name) -> None:
    require(amount >= nothing, f"The {name} cannot be negative.")
    require(amount < most, f"The {name} is more than a ticket can tell.")


def _rounded(amount, step=WHOLE) -> str:
    # Decimals round halves as a person does, and as spreadsheets do; nine digits first, so
    # that the last ones of a conversion do not decide a half.
    exact = Decimal(repr(round(float(amount), 9)))
    return f"{exact.quantize(step, ROUND_HALF_UP):f}".removesuffix(".0")
