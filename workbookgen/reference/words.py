"""Amounts in sentences: rounded as people say them, with thousands separators, in the unit they are given in.

A planner's sentences use the planner's own units. The quantity itself carries them: yards are stated in yards, grams
in grams.
"""

from decimal import ROUND_HALF_UP, Decimal

from workbookgen.reference.calculation import by_element, require
from workbookgen.reference.limits import NOT_NEGATIVE, require_within
from workbookgen.units import Quantity

# Unit of the registry -> its symbol, and the decimals that a person would say.
SPOKEN = {
    "yard": ("yd", 0),
    "meter": ("m", 0),
    "inch": ("in", 1),
    "centimeter": ("cm", 1),
    "ounce": ("oz", 1),
    "gram": ("g", 0),
    "pound": ("lb", 1),
    "kilogram": ("kg", 1),
    "yard / pound": ("yd/lb", 0),
    "meter / hectogram": ("m/100 g", 0),
    "hour": ("h", 0),
}
MOST = 1_000_000  # no sentence states a number as large as this
MOST_IN_ALL = 100_000_000  # or a total as large as this, which would be half a million skeins


def said(amount):
    """A quantity or a plain number (scalar or array) in words: "2,300 yd", "3.4 oz", "12".

    Valid from 0 to a million of its unit; halves round away from zero. Raises ValueError beyond, and KeyError for a
    unit that no sentence uses.
    """
    return _said(amount, MOST, 9, "An amount in words must be from 0 to below a million.")


def said_in_all(total):
    """A total in words, the same up to a hundred million; the seventh decimal of such a sum is noise."""
    return _said(total, MOST_IN_ALL, 6, "A total in words must be from 0 to below a hundred million.")


def _said(amount, most: int, known: int, sentence: str):
    symbol, digits = SPOKEN[str(amount.units)] if isinstance(amount, Quantity) else ("", 0)
    number = amount.magnitude if isinstance(amount, Quantity) else amount
    require((number >= 0) & (number < most - 1), sentence)
    return by_element(lambda each: f"{rounded(round(float(each), known), digits)} {symbol}".strip(), number)


def percent(share):
    """A share (scalar or array) in whole percent: "12%". Valid for shares that are not negative."""
    require_within(NOT_NEGATIVE, "A share in words", share)
    return by_element(lambda each: f"{_exact(each * 100, 0):f}%", share)


def rounded(number: float, digits: int) -> str:
    """A number as people write it: thousands separated by a comma, and no trailing zero."""
    return (
        f"{_exact(number, digits):,f}".removesuffix(".0")
        if digits == 0
        else f"{_exact(number, digits):f}".removesuffix(".0")
    )


def _exact(number: float, digits: int) -> Decimal:
    # Decimals round halves as people and spreadsheets do; nine digits first, so
    # that the last ones of a conversion do not decide a half.
    return Decimal(repr(round(float(number), 9))).quantize(Decimal(1).scaleb(-digits), ROUND_HALF_UP)
