"""A formula copied down a column, and the worksheet that stores it once.

The records of a log have the same formulas, each referring to its own row. The format lets such cells share one (`<f
t="shared">`), as spreadsheet programs do when they save: the planner is then less than half as large, and programs
read it several times as fast. The engines and openpyxl read it back as the very same formulas; tests hold that. The
oldest form of it in the format has no room for an address on another sheet ([MS-XLS] 2.5.198.118), so what is
elsewhere is referred to by its defined name.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from xml.sax.saxutils import escape

from xlsxwriter.utility import xl_rowcol_to_cell, xl_rowcol_to_cell_fast
from xlsxwriter.worksheet import Worksheet

from workbookgen.language.tokens import is_text, tokens

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
        return self.rows > 1 and not any("!" in each for each in tokens(self.text) if not is_text(each))

    def __getitem__(self, index: int | slice) -> str | tuple[str, ...]:
        rows = range(self.first, self.first + self.rows)[index]
        return tuple(map(self._in_row, rows)) if isinstance(rows, range) else self._in_row(rows)

    def _in_row(self, row: int) -> str:
        return self.text.replace(ROW, str(row))


class PlainWorksheet(Worksheet):
    """A worksheet that writes formulas as they are, and shares those that are copied down.

    XlsxWriter searches each formula for functions newer than 2010, with some thirty searches; that takes nine tenths
    of the time of writing a planner. The portable profile has no such function, so there is nothing to find. A number
    it writes with sixteen digits, where some need seventeen to come back as they were typed. Tests compare the
    outcome with that of the stock worksheet.
    """

    def __init__(self):
        super().__init__()
        self.shared = 0

    def write_copied_down(self, row: int, column: int, formulas: CopiedDown, cell_format, values: Sequence) -> None:
        """Write them into the cells from (row, column) on, counted from 0, with the value that each shows."""
        area = f"{xl_rowcol_to_cell(row, column)}:{xl_rowcol_to_cell(row + len(formulas) - 1, column)}"
        text = escape(formulas[0].removeprefix("="))
        follower = _Element(f'<f t="shared" si="{self.shared}"/>')
        element = _Element(f'<f t="shared" ref="{area}" si="{self.shared}">{text}</f>')
        self.shared += 1
        self.write_formula(row, column, element, cell_format, values[0])
        empty = None  # most cells of a new planner show nothing, and one record of XlsxWriter's serves them all
        for place, value in enumerate(values[1:], start=row + 1):
            if value == "" and empty:
                self.table[place][column] = empty
                continue
            self.write_formula(place, column, follower, cell_format, value)
            empty = self.table[place][column] if value == "" else empty
        self._check_dimensions(row + len(values) - 1, column)

    def _prepare_formula(self, formula: str, expand_future_functions: bool = False) -> str:
        return formula if isinstance(formula, _Element) else formula.removeprefix("=")

    def _xml_number_element(self, number: float, attributes=()) -> None:
        described = "".join(f' {key}="{value}"' for key, value in attributes)
        self.fh.write(f"<c{described}><v>{repr(float(number)).removesuffix('.0').upper()}</v></c>")

    def _write_cell(self, row: int, col: int, cell) -> None:
        """Formulas by a short way of their own, since there may be a million: each has its looks, and shows a number, a text or nothing."""
        if type(cell).__name__ != "Formula":
            super()._write_cell(row, col, cell)
            return
        element = cell.formula if isinstance(cell.formula, _Element) else f"<f>{escape(cell.formula)}</f>"
        kind, shown = (' t="str"', escape(cell.value)) if isinstance(cell.value, str) and cell.value else ("", cell.value)
        self.fh.write(f'<c r="{xl_rowcol_to_cell_fast(row, col)}" s="{cell.format._get_xf_index()}"{kind}>{element}<v>{shown}</v></c>')


class _Element(str):
    """A formula that is XML already."""
