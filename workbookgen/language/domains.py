"""What may be typed into a cell.

A domain is declared once, beside its input, and used twice: `wanted` puts it into words for validation and messages,
and `accepts` tests a value in Python for the check. The formula that guards a cell is written in `book.guard`,
independently of `accepts`.
"""

from collections.abc import Collection, Iterable
from dataclasses import dataclass

from workbookgen.errors import DescriptionError
from workbookgen.language.type_checks import require_types
from workbookgen.texts import folded, is_blank, unique_names

# Where numbers from 0 on are accepted, the smallest one above 0. Nobody measures so little, and the square or the
# reciprocal of a much smaller number overflows in some programs.
SMALLEST_AMOUNT = 1e-6


@dataclass(frozen=True)
class Number:
    """A number between limits, in the unit of its field: from `least` or `above`, up to `most` or `below`."""

    least: float | None = None
    above: float | None = None
    most: float | None = None
    below: float | None = None
    whole: bool = False

    def __post_init__(self):
        place = "a number's domain"
        require_types(place, self)
        if (self.least is None) == (self.above is None) or (self.most is None) == (self.below is None):
            wanted = "it needs one lower limit (least or above) and one upper limit (most or below)."
            raise DescriptionError.at(place, wanted)
        if self.low > self.high:
            raise DescriptionError.at(place, f"its lower limit {self.low:g} is above its upper limit {self.high:g}.")

    @property
    def low(self) -> float:
        """The lower limit, whether or not it may be typed itself."""
        return self.above if self.least is None else self.least

    @property
    def high(self) -> float:
        """The upper limit, whether or not it may be typed itself."""
        return self.below if self.most is None else self.most

    @property
    def begins_at_zero(self) -> bool:
        return 0 in (self.least, self.above)

    def accepts(self, value: object) -> bool:
        return (
            isinstance(value, float | int)
            and not isinstance(value, bool)
            and (self.least is None or value >= self.least)
            and (self.above is None or value > self.above)
            and (not self.begins_at_zero or value == 0 or value >= SMALLEST_AMOUNT)
            and (self.most is None or value <= self.most)
            and (self.below is None or value < self.below)
            and (not self.whole or value == round(value))
        )

    def wanted(self, symbol: str) -> str:
        """The words after "type", such as "a number above 0 up to 500 g"."""
        limits = (("from", self.least), ("above", self.above), ("up to", self.most), ("below", self.below))
        said = [f"{word} {_plain(limit, symbol)}" for word, limit in limits if limit is not None]
        noun = "a percentage" if symbol == "%" else "a whole number" if self.whole else "a number"
        unit = f" {symbol}" if symbol not in ("", "%") else ""
        return " ".join([noun, *said]) + unit


@dataclass(frozen=True)
class Date:
    """A day, as its serial number: every spreadsheet program counts days from the end of 1899."""

    least: float = 36_526.0  # 2000-01-01
    most: float = 73_050.0  # 2099-12-31

    def accepts(self, value: object) -> bool:
        return Number(least=self.least, most=self.most).accepts(value)

    def wanted(self, symbol: str) -> str:
        return "a date between the years 2000 and 2099"


@dataclass(frozen=True)
class Name:
    """A name by which other sheets find this record. If `unique`, no two records may share it."""

    longest: int = 40
    unique: bool = True

    def accepts(self, value: object) -> bool:
        return isinstance(value, str) and not is_blank(value) and len(value) <= self.longest

    def wanted(self, symbol: str) -> str:
        return f"a name of up to {self.longest} letters"


@dataclass(frozen=True)
class Note:
    """Free text. Nothing is calculated from it."""

    longest: int = 200

    def accepts(self, value: object) -> bool:
        return isinstance(value, str) and 0 < len(value) <= self.longest

    def wanted(self, symbol: str) -> str:
        return f"words, up to {self.longest} letters"


@dataclass(frozen=True)
class Choice:
    """One of the names in a column.

    `of` is the column's full key and `sheet` the sheet it is on; `names` lists them all if they are few and fixed.
    `or_none` says so where a name is no longer there, and another would be wrong. `is_here`: the names are on the very
    sheet where one chooses.
    """

    of: str
    sheet: str
    names: tuple[str, ...] = ()
    or_none: bool = False
    is_here: bool = False

    def accepts(self, value: object, names: Iterable) -> bool:
        return self.is_among(value, unique_names(names))

    def is_among(self, value: object, once: Collection[str]) -> bool:
        """The same for many values of one column, whose unique names are worked out once."""
        return isinstance(value, str) and bool(value) and folded(value) in once

    def wanted(self, symbol: str) -> str:
        where = "this sheet" if self.is_here else f"the sheet {self.sheet}"
        listed = f"one of {', '.join(self.names)}" if self.names else f"one of the names on {where}"
        return listed + (", or empty it" if self.or_none else "")


Domain = Number | Date | Name | Note | Choice


def _plain(limit: float, symbol: str) -> str:
    return f"{limit * 100:g}%" if symbol == "%" else f"{limit:,.10g}"
