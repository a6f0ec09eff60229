"""What every reader of a file format returns: cells, names and notes, in one form."""

from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass, field
from functools import lru_cache

from workbookgen.ooxml.cells import Cell, Row
from workbookgen.ooxml.formulas import ROW, Copied

MOST_CELLS = 3_600_000  # filled ones; the largest planner has 3.2 million with its texts

Position = tuple[int, int]  # row and column, from 1
# From the names of the sheets and the defined names: which sheets to read, and which of their columns (None: all).
Choice = Callable[[tuple[str, ...], dict[str, str]], dict[str, set[int] | None]]


class TooMany(Exception):
    """More filled cells than any planner has."""


class UnknownForm(Exception):
    """The file is a package of another kind."""


class Cells(Mapping[Position, Cell]):
    """The filled cells of a sheet.

    There may be three million, most of which have the formula of the cell above, for their own row. So formulas are
    kept with ROW for the number of their row, one text for all cells in which it reads alike; and rows that are alike
    are kept once. No row is changed in place, since others may share it.
    """

    def __init__(self):
        self._rows: dict[int, Row] = {}
        self._texts: dict[str, str] = {}

    def put(self, rows: range, cells: Row) -> None:
        """Put cells into each of these rows, beside or in place of what is there."""
        if len(rows) == 1:
            cells = {
                column: Cell(cell.value, self._kept(cell.formula, rows[0])) if cell.formula else cell
                for column, cell in cells.items()
            }
        for row in rows:
            self._rows[row] = self._rows[row] | cells if row in self._rows else cells

    def _kept(self, formula: str, row: int) -> str:
        """The text that stands for this formula, and for others."""
        if isinstance(formula, Copied) or ROW in formula:
            return formula
        text = formula.replace(str(row), ROW)
        return self._texts.setdefault(text, formula if text == formula else Copied(text))

    def __getitem__(self, position: Position) -> Cell:
        row, column = position
        cell = self._rows[row][column]
        formula = cell.formula
        return Cell(cell.value, formula.in_row(row)) if isinstance(formula, Copied) else cell

    def has(self, position: Position, copied: Copied | None) -> bool:
        """Whether a cell has this formula, for its own row. One that only happens to be kept otherwise has not."""
        row, column = position
        formula = self._rows[row][column].formula
        return isinstance(formula, Copied) and formula == copied

    def get(self, position: Position, default=None):
        return self[position] if position in self else default  # most cells of an archive are blank

    def __contains__(self, position: object) -> bool:
        row, column = position
        return column in self._rows.get(row, ())

    def __iter__(self) -> Iterator[Position]:
        return ((row, column) for row, cells in self._rows.items() for column in cells)

    def __len__(self) -> int:
        return sum(map(len, self._rows.values()))

    def rewritten(self, columns: Collection[int] | None, rewrite: Callable[[str], str]) -> "Cells":
        """The cells of these columns, or all, with formulas in another syntax that leaves numbers of rows alone."""

        @lru_cache(maxsize=None, typed=True)
        def other(formula: str) -> str:
            return type(formula)(rewrite(formula))

        found = Cells()
        for row, cells in self._rows.items():
            found._rows[row] = {
                column: Cell(cell.value, other(cell.formula)) if cell.formula else cell
                for column, cell in cells.items()
                if columns is None or column in columns
            }
        return found


@dataclass
class Contents:
    """A workbook while it is read."""

    sheet_names: tuple[str, ...]
    names: dict[str, str]
    counts_from_1904: bool = False
    sheets: dict[str, Cells] = field(default_factory=dict)
    comments: dict[str, dict[Position, str]] = field(default_factory=dict)
    protected: set[str] = field(default_factory=set)  # sheets in which only unlocked cells can be typed into
    filled: int = 0

    def require_room(self, cells: int) -> None:
        """Refuse to take so many more."""
        if self.filled + cells > MOST_CELLS:
            raise TooMany(f"{MOST_CELLS:,}")

    def put(self, sheet: str, rows: range, cells: Row) -> None:
        """Put cells into each of these rows of a sheet."""
        self.require_room(len(rows) * len(cells))
        self.filled += len(rows) * len(cells)
        self.sheets[sheet].put(rows, cells)
