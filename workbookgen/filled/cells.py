"""What every reader of a file format returns: cells, names and notes, in one form."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import NamedTuple

from workbookgen.ooxml.values import Value

MOST_CELLS = 3_200_000  # filled ones; the largest planner has 3 million

Position = tuple[int, int]  # row and column, from 1
# From the names of the sheets and the defined names: which sheets to read, and which of their columns (None: all).
Choice = Callable[[tuple[str, ...], dict[str, str]], dict[str, set[int] | None]]


class TooMany(Exception):
    """More filled cells than any planner has."""


class UnknownForm(Exception):
    """The file is a package of another kind."""


class Cell(NamedTuple):
    """The content of a cell. `formula` is empty if a value was typed."""

    value: Value
    formula: str = ""


@dataclass
class Contents:
    """A workbook while it is read."""

    sheet_names: tuple[str, ...]
    names: dict[str, str]
    counts_from_1904: bool = False
    sheets: dict[str, dict[Position, Cell]] = field(default_factory=dict)
    comments: dict[str, dict[Position, str]] = field(default_factory=dict)
    protected: set[str] = field(default_factory=set)  # sheets in which only unlocked cells can be typed into
    filled: int = 0

    def put(self, sheet: str, position: Position, cell: Cell) -> None:
        self.filled += 1
        if self.filled > MOST_CELLS:
            raise TooMany(f"{MOST_CELLS:,}")
        self.sheets[sheet][position] = cell
