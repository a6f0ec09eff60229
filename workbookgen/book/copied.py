"""A formula copied down a column, which a file holds once.

The records of a log have the same formulas, each referring to its own row. The format lets such cells share one
(`<f t="shared">`), as spreadsheet programs do when they save: the planner is then less than half as large, and
programs read it several times as fast. The engines and openpyxl read it back as the very same formulas; tests hold
that. The oldest form of it in the format has no room for an address on another sheet ([MS-XLS] 2.5.198.118), so what
is elsewhere is referred to by its defined name.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from workbookgen.language.tokens import is_text, tokenize

ROW = "{row}"  # in a formula, stands for the number of its own row


@dataclass(frozen=True)
class CopiedDown(Sequence):
    """The formulas of cells one below another, from row `first` on: one text, and no two formulas alike."""

    text: str
    first: int
    rows: int

    def __len__(self) -> int:
        return self.rows

    @property
    def can_be_shared(self) -> bool:
        """Whether the cells may share it: several of them, and it holds no address on another sheet."""
        if self.rows < 2 or "!" not in self.text:
            return self.rows > 1
        return not any("!" in each for each in tokenize(self.text) if not is_text(each))

    def __getitem__(self, index: int | slice) -> str | tuple[str, ...]:
        rows = range(self.first, self.first + self.rows)[index]
        return tuple(map(self._in_row, rows)) if isinstance(rows, range) else self._in_row(rows)

    def first_lines(self, rows: int) -> "CopiedDown":
        """The first of them."""
        return replace(self, rows=min(rows, self.rows))

    def _in_row(self, row: int) -> str:
        return self.text.replace(ROW, str(row))
