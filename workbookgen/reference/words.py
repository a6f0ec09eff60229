"""Amounts in sentences: rounded as a person says them, with thousands parted, in the unit in which they are given.

A sentence of a planner speaks in the planner's own units. Which these are is told by the
quantity itself: yards are said in yards, grams in grams.
"""

from decimal import ROUND_HALF_UP, Decimal

from workbookgen.reference.calculation import by_element, require
from workbookgen.units import Quantity

# Unit of the registry -> how it is written, and how many decimals a person would say.
SPOKEN = {
    "yard": ("yd", 0), "meter": ("m", 0), "inch": ("in", 1), "centimeter": ("cm", 1), "ounce": ("oz", 1), "gram": ("g", 0),
    "pound": ("lb", 1), "kilogram": ("kg", 1), "yard / pound": ("yd/lb", 0), "meter / hectogram": ("m/100 g", 0), "hour": ("h", 0),
}
MOST = 1_000_000  # beyond, nobody says a number in figures


def said(amount):
    """A quantity or a plain number (scalar or array) in words: "2,300 yd", "3.4 oz", "12".

    Valid from nothing up to a million of its unit; halves round away from zero. Raises
    ValueError beyond, and KeyError for a unit in which nothing is said.
    """
    symbol, digits = SPOKEN[str(amount.units)] if isinstance(amount, Quantity) else ("", 0)
    number = amount.magnitude if isinstance(amount, Quantity) else amount
    require((number >= 0) & (number < MOST - 1), "An amount in words is between nothing and a million.")
    return by_element(lambda each: f"{rounded(each, digits)} {symbol}".strip(), number)


def percent(share):
    """A share (scalar or array) in whole percent: "12%". Valid for shares not below nothing."""
    require(share >= 0, "A share in words is not below nothing.")
    return by_element(lambda each: f"{_exact(each * 100, 0):f}%", share)


def rounded(number: float, digits: int) -> str:
    """A number as a person writes it: thousands parted by a comma, and no decimals that are nothing."""
    return f"{_exact(number, digits):,f}".removesuffix(".0") if digits == 0 else f"{_exact(number, digits):f}".removesuffix(".0")


def _exact(number: float, digits: int) -> Decimal:
    # Decimals round halves as a person does, and as spreadsheets do; nine digits first, so
    # that the last ones of a conversion do not decide a half.
    return Decimal(repr(round(float(number), 9))).quantize(Decimal(1).scaleb(-digits), ROUND_HALF_UP)
