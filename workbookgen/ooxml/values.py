"""The value of a cell, however the file stores it: a number, a text, true or false, or an error.

Dates that a file spells out become days of the 1900 system, as all others are.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from workbookgen.ooxml.strings import unescaped

DAY_NOUGHT = datetime(1899, 12, 30)  # day 0, for days from March 1900 on


@dataclass(frozen=True)
class ErrorValue:
    """What a cell shows if its formula failed, such as "#VALUE!" or "Err:502"."""

    token: str

    def __str__(self) -> str:
        return self.token


Value = float | str | bool | ErrorValue | None


def value_of(kind: str, text: str, strings: Sequence[str]) -> Value:
    """A cell's value from its type and the text of its `v`."""
    match kind:
        case "s":
            return strings[int(text)]
        case "str":
            return unescaped(text)
        case "b":
            return text in ("1", "true")
        case "e":
            return ErrorValue(text)
        case "d":
            return days(text)
    return number(text) if text.strip() else None


def number(text: str) -> float | ErrorValue:
    """A stored number; if it is infinite or not a number, an error, as to every program."""
    value = float(text)
    return value if math.isfinite(value) else ErrorValue(text)


def days(text: str) -> float | str:
    """The day number of a date that is spelled out, such as 2026-12-01T12:00:00; beyond the year 9999, its text."""
    try:
        return (datetime.fromisoformat(text) - DAY_NOUGHT).total_seconds() / 86_400
    except ValueError:
        return text
