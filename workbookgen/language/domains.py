"""What may be typed into a cell.

A domain is declared once, beside its input, and serves everyone: it names what is wanted in words (validation,
messages, methods), and says whether a value is accepted (the check). The formula that guards a cell is written in
`book`, independently of `accepts`.
"""

from collections import Counter
from collections.abc import Collection, Iterable
from dataclasses import dataclass

from workbookgen.errors import DescriptionError
from workbookgen.language.type_checks import require_types
from workbookgen.texts import folded, is_blank

# No amount is so little, and the square of a much smaller one, or what is divided by it, is beyond what programs
# compute with. Where numbers from 0 or above 0 are wanted, this is the first after it.
SMALLEST_AMOUNT = 1e-6


@dataclass(frozen=True)
class Number:
    """A number between limits, in the unit of its field. `share` limits read as percent."""

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
        low, high = (limit for limit in (self.least, self.above, self.most, self.below) if limit is not None)
        if low > high:
            raise DescriptionError.at(place, f"its lower limit {low:g} is above its upper limit {high:g}.")

    @property
    def begins_at_nothing(self) -> bool:
        return 0 in (self.least, self.above)

    def accepts(self, value) -> bool:
        return (
            isinstance(value, float | int)
            and not isinstance(value, bool)
            and (self.least is None or value >= self.least)
            and (self.above is None or value > self.above)
            and (not self.begins_at_nothing or value == 0 or value >= SMALLEST_AMOUNT)
            and (self.most is None or value <= self.most)
            and (self.below is None or value < self.below)
            and (not self.whole or value == round(value))
        )

    def wanted(self, symbol: str) -> str:
        """The words after "type": a number above 0 and up to 500 g."""
        limits = (("from", self.least), ("above", self.above), ("up to", self.most), ("below", self.below))
        said = [f"{word} {_plain(limit, symbol)}" for word, limit in limits if limit is not None]
        noun = "a percentage" if symbol == "%" else "a whole number" if self.whole else "a number"
        unit = f" {symbol}" if symbol not in ("", "%") else ""
        return " ".join([noun, *said]) + unit


@dataclass(frozen=True)
class Date:
    """A day, which every spreadsheet program counts from the end of 1899."""

    least: float = 36_526.0  # 2000-01-01
    most: float = 73_050.0  # 2099-12-31

    def accepts(self, value) -> bool:
        return Number(least=self.least, most=self.most).accepts(value)

    def wanted(self, symbol: str) -> str:
        return "a date between the years 2000 and 2099"


@dataclass(frozen=True)
class Name:
    """A name by which other sheets find this record; no two records may share a unique one."""

    longest: int = 40
    unique: bool = True

    def accepts(self, value) -> bool:
        return isinstance(value, str) and not is_blank(value) and len(value) <= self.longest

    def wanted(self, symbol: str) -> str:
        return f"a name of up to {self.longest} letters"


@dataclass(frozen=True)
class Note:
    """Free text. Nothing is calculated from it."""

    longest: int = 200

    def accepts(self, value) -> bool:
        return isinstance(value, str) and 0 < len(value) <= self.longest

    def wanted(self, symbol: str) -> str:
        return f"words, up to {self.longest} letters"


def unique_names(names: Iterable) -> frozenset[str]:
    """The names of a column, folded, without those that stand in it more than once, which could mean either record."""
    times = Counter(folded(name) for name in names if isinstance(name, str))
    return frozenset(name for name, count in times.items() if count == 1)


@dataclass(frozen=True)
class Choice:
    """One of the names in a column, or of a few fixed ones.

    `of` is the column's full key, `sheet` where it stands; `names` are all of them, if they are few and fixed.
    """

    of: str
    sheet: str
    names: tuple[str, ...] = ()

    def accepts(self, value, names) -> bool:
        return self.is_among(value, unique_names(names))

    def is_among(self, value, once: Collection[str]) -> bool:
        """The same, where many are asked about one column: `once` is what stands once in it."""
        return isinstance(value, str) and bool(value) and folded(value) in once

    def wanted(self, symbol: str) -> str:
        return f"one of {', '.join(self.names)}" if self.names else f"one of the names on the sheet {self.sheet}"


Domain = Number | Date | Name | Note | Choice


def _plain(limit: float, symbol: str) -> str:
    return f"{limit * 100:g}%" if symbol == "%" else f"{limit:,.10g}"
