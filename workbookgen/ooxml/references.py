"""Cells and ranges as texts name them: `'Made with'!$A$1:$A$9`, `A7:A18 C7`.

Places are row and column, from 1.
"""

import re
from dataclasses import dataclass
from functools import cache

from openpyxl.utils import column_index_from_string, get_column_letter

MOST_ROWS, MOST_COLUMNS = 1_048_576, 16_384

_CELL = r"\$?([A-Z]{1,3})\$?(\d{1,7})"
_RANGE = re.compile(rf"(?:(?:'((?:[^']|'')+)'|([^'!:\[\]]+))!)?{_CELL}(?::{_CELL})?", re.IGNORECASE)
_QUOTED = re.compile(r"'([A-Za-z_][A-Za-z0-9_.]*)'!")

Place = tuple[int, int]


@dataclass(frozen=True, order=True)
class Range:
    """A rectangle of cells."""

    sheet: str  # empty where the text names none
    top: int
    left: int
    bottom: int
    right: int

    def __str__(self) -> str:
        first, last = cell_name((self.top, self.left)), cell_name((self.bottom, self.right))
        return (f"{self.sheet}!" if self.sheet else "") + (first if first == last else f"{first}:{last}")

    def rows_within(self, other: "Range") -> range:
        """The rows that this one has in common with another of one column."""
        if not self.left <= other.left <= self.right:
            return range(0)
        return range(max(self.top, other.top), min(self.bottom, other.bottom) + 1)


def range_of(text: str) -> Range | None:
    """The one rectangle that a text names, or None for anything else."""
    found = _RANGE.fullmatch(text.strip().removeprefix("="))
    if not found:
        return None
    quoted, plain, left, top, right, bottom = found.groups()
    rows = sorted((int(top), int(bottom or top)))
    columns = sorted((column_number(left), column_number(right or left)))
    return Range(quoted.replace("''", "'") if quoted else plain or "", rows[0], columns[0], rows[1], columns[1])


def ranges_of(text: str) -> tuple[Range, ...]:
    """The rectangles of a list with blanks between, as validations and conditional formats have it."""
    return tuple(each for each in map(range_of, text.split()) if each)


def place_of(text: str) -> Place:
    """`AB12` as row and column."""
    letters = text.rstrip("0123456789")
    return int(text[len(letters) :]), column_number(letters)


def cell_name(place: Place) -> str:
    return f"{get_column_letter(place[1])}{place[0]}"


def plainly_named(formula: str) -> str:
    """A formula whose simple sheet names stand without quotation marks, which programs set as they please."""
    return _QUOTED.sub(r"\1!", formula)


@cache
def column_number(letters: str) -> int:
    return column_index_from_string(letters.upper())
