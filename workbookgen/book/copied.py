"""A formula copied down a column, which the file stores once.

The records of a log have the same formulas, each referring to its own row. The format lets such cells share one
(`<f t="shared">`), as spreadsheet programs do when they save: the planner is then less than half as large, and
programs read it several times as fast. Tests make sure that the engines and openpyxl read back the very same formulas.
The format's ancestor has no room for an address on another sheet in a shared formula ([MS-XLS] 2.5.198.118), so other
sheets are referred to by defined names.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from workbookgen.language.tokens import is_text, tokenize

ROW = "{row}"  # the placeholder for a formula's own row number


@dataclass(frozen=True)
class CopiedDown(Sequence):
    """The formulas of a column of cells from row `first` down: one text, in which only the row number differs."""

    text: str
    first: int
    rows: int

    def __len__(self) -> int:
        return self.rows

    @property
    def can_be_shared(self) -> bool:
        """Whether the file may store it once: for several cells, and without an address on another sheet."""
        if self.rows < 2 or "!" not in self.text:
            return self.rows > 1
        return not any("!" in each for each in tokenize(self.text) if not is_text(each))

    def __getitem__(self, index: int | slice) -> str | tuple[str, ...]:
        rows = range(self.first, self.first + self.rows)[index]
        return tuple(map(self._in_row, rows)) if isinstance(rows, range) else self._in_row(rows)

    def first_lines(self, rows: int) -> "CopiedDown":
        """The same for only the first rows."""
        return replace(self, rows=min(rows, self.rows))

    def _in_row(self, row: int) -> str:
        return self.text.replace(ROW, str(row))
