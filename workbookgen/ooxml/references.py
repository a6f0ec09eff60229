"""References to cells and ranges in texts, such as `'Made with'!$A$1:$A$9` and `A7:A18 C7`.

A place is a row and a column, from 1. Columns and cells are parsed by `openpyxl.utils`.
"""

import re
from dataclasses import dataclass
from functools import lru_cache

from openpyxl.utils import column_index_from_string, get_column_letter, range_boundaries

MOST_ROWS, MOST_COLUMNS = 1_048_576, 16_384

_SHEET = re.compile(r"\$?(?:'((?:[^']|'')+)'|([^'!:\[\]]+))!")
_SHEET_AGAIN = re.compile(r":[^:]*!")  # some programs repeat the sheet before the last cell
_QUOTED = re.compile(r"'([A-Za-z_][A-Za-z0-9_.]*)'!")

Place = tuple[int, int]


@dataclass(frozen=True, order=True)
class Range:
    """A rectangle of cells."""

    sheet: str  # empty if the text names none
    top: int
    left: int
    bottom: int
    right: int

    def __str__(self) -> str:
        first, last = cell_name((self.top, self.left)), cell_name((self.bottom, self.right))
        return (f"{self.sheet}!" if self.sheet else "") + (first if first == last else f"{first}:{last}")

    def rows_within(self, other: "Range") -> range:
        """The rows that this range shares with another, which has one column."""
        if not self.left <= other.left <= self.right:
            return range(0)
        return range(max(self.top, other.top), min(self.bottom, other.bottom) + 1)


@lru_cache(maxsize=16_384)  # since the planners of a guild have the same names at the same places
def range_of(text: str) -> Range | None:
    """The rectangle that a text refers to, or None for anything else."""
    text = text.strip().removeprefix("=")
    found = _SHEET.match(text)
    cells = _SHEET_AGAIN.sub(":", text[found.end() :]) if found else text
    try:
        bounds = range_boundaries(cells)
    except ValueError:
        return None
    if not all(bounds):  # whole rows or columns, or a row 0
        return None
    (left, right), (top, bottom) = sorted(bounds[::2]), sorted(bounds[1::2])
    quoted, plain = found.groups() if found else (None, None)
    return Range(quoted.replace("''", "'") if quoted else plain or "", top, left, bottom, right)


def ranges_of(text: str) -> tuple[Range, ...]:
    """The rectangles of a list that is separated by spaces, as in validations and conditional formats."""
    return tuple(each for each in map(range_of, text.split()) if each)


def place_of(text: str) -> Place:
    """`AB12` as row and column. It is faster than openpyxl's own, and a file has a million of them."""
    letters = text.rstrip("0123456789")
    return int(text[len(letters) :]), column_index_from_string(letters)


def column_letters(text: str) -> str:
    """The `AB` of `AB12`."""
    return text.rstrip("0123456789")


def column_of(text: str) -> int:
    """The column of `AB12`."""
    return column_index_from_string(text.rstrip("0123456789"))


def cell_name(place: Place) -> str:
    return f"{get_column_letter(place[1])}{place[0]}"


def without_sheet_quotes(formula: str) -> str:
    """A formula without the quotation marks around simple sheet names, which some programs write and others do not."""
    return _QUOTED.sub(r"\1!", formula)
