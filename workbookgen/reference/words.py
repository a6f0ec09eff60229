"""Amounts in sentences: rounded as people say them, with thousands separators, in the unit they are given in.

A planner's sentences use the planner's own units. The quantity itself carries them: yards are stated in yards, grams
in grams.
"""

from decimal import ROUND_HALF_UP, Decimal

from workbookgen.reference.calculation import by_element, require
from workbookgen.reference.limits import NOT_NEGATIVE, require_within
from workbookgen.units import Quantity

# Unit of the registry -> its symbol, the decimals that a person would say, and below what one more is said: with a
# single figure, 0.36 and 0.44 oz would both be 0.4.
SPOKEN = {
    "yard": ("yd", 0, 0),
    "meter": ("m", 0, 0),
    "inch": ("in", 1, 1),
    "centimeter": ("cm", 1, 1),
    "ounce": ("oz", 1, 1),
    "gram": ("g", 0, 10),
    "pound": ("lb", 1, 1),
    "kilogram": ("kg", 1, 1),
    "yard / pound": ("yd/lb", 0, 0),
    "meter / hectogram": ("m/100 g", 0, 0),
    "hour": ("h", 0, 0),
}
MOST = 1_000_000  # no sentence states a number as large as this
MOST_IN_ALL = 100_000_000  # or a total as large as this, which would be half a million skeins


def said(amount):
    """A quantity or a plain number (scalar or array) in words: "2,300 yd", "3.4 oz", "0.36 oz", "12".

    From a thousand on, whole ones are said: "1,234 oz". Valid from 0 to a million of its unit; halves round away from
    zero. Raises ValueError beyond, and KeyError for a unit that no sentence uses.
    """
    return _said(amount, MOST, 9, "An amount in words must be from 0 to below a million.")


def said_in_all(total):
    """A total in words, the same up to a hundred million; the seventh decimal of such a sum is noise."""
    return _said(total, MOST_IN_ALL, 6, "A total in words must be from 0 to below a hundred million.")


def _said(amount, most: int, known: int, sentence: str):
    symbol, digits, little = SPOKEN[str(amount.units)] if isinstance(amount, Quantity) else ("", 0, 0)
    number = amount.magnitude if isinstance(amount, Quantity) else amount
    require((number >= 0) & (number < most - 1), sentence)
    return by_element(lambda each: f"{_told(round(float(each), known), digits, little)} {symbol}".strip(), number)


def _told(number: float, digits: int, little: int) -> str:
    """A number with as many decimals as its size makes useful."""
    if number < little:
        return rounded(number, digits + 1)
    return rounded(number, digits if _exact(number, digits) < 1000 else 0)


def percent(share):
    """A share (scalar or array) in whole percent: "12%". Valid for shares that are not negative."""
    require_within(NOT_NEGATIVE, "A share in words", share)
    return by_element(lambda each: f"{_exact(each * 100, 0):f}%", share)


def rounded(number: float, digits: int) -> str:
    """A number as people write it: thousands separated by a comma, and no trailing zero."""
    text = f"{_exact(number, digits):,f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _exact(number: float, digits: int) -> Decimal:
    # Decimals round halves as people and spreadsheets do; nine digits first, so
    # that the last ones of a conversion do not decide a half.
    return Decimal(repr(round(float(number), 9))).quantize(Decimal(1).scaleb(-digits), ROUND_HALF_UP)
