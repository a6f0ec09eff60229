"""The worksheet that a planner is written to: XlsxWriter's, made fast for the million cells of logs.

The lines of a log differ only in their row number. So their cells are kept as columns, and a row that shows the same
as the one above it, which is mostly nothing, reuses its XML.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from xml.sax.saxutils import escape

from xlsxwriter.format import Format
from xlsxwriter.utility import xl_col_to_name, xl_rowcol_to_cell
from xlsxwriter.worksheet import Worksheet

from workbookgen.book.copied import ROW, CopiedDown

NUMBER = "\0"  # in XML, where it can stand for nothing else: the row's number


@dataclass(frozen=True)
class _Cells:
    """Cells with one format, one below another. Rows and columns count from 0."""

    column: int
    row: int
    rows: int
    form: Format
    formula: str = ""  # the <f> element, with ROW for the row's number; "" for blank cells
    leading: str = ""  # the first cell's <f> element, if the others share it
    values: Sequence = ()  # the values that the first cells show

    @property
    def end(self) -> int:
        return self.row + self.rows

    @property
    def is_silent(self) -> bool:
        return all(value == "" for value in self.values)

    def value(self, row: int) -> float | str:
        place = row - self.row
        return self.values[place] if place < len(self.values) else ""

    def in_row(self, row: int) -> str:
        """The XML of the cell in a row, with NUMBER for the row's number."""
        opening = f'<c r="{xl_col_to_name(self.column)}{NUMBER}" s="{self.form._get_xf_index()}"'
        if not self.formula:
            return f"{opening}/>"
        formula, value = self.leading if self.leading and row == self.row else self.formula, self.value(row)
        kind = ' t="str"' if isinstance(value, str) and value else ""
        return f"{opening}{kind}>{formula.replace(ROW, NUMBER)}{_stored(value)}</c>"


def _stored(value: float | str) -> str:
    """The element of a formula's stored result. Without being told, LibreOffice drops spaces at the ends of a text, so
    that a name that ends with one is no longer the one chosen from it."""
    if not isinstance(value, str):
        return f"<v>{value}</v>"
    kept = ' xml:space="preserve"' if value != value.strip() else ""
    return f"<v{kept}>{escape(value)}</v>"


class PlainWorksheet(Worksheet):
    """A worksheet that writes formulas unchanged, shares copied ones, and keeps the cells of logs as columns.

    XlsxWriter searches each formula for functions newer than 2010. That would take nine tenths of the time of writing
    a planner, and the portable profile has no such function. XlsxWriter also writes numbers with sixteen digits, where
    some need seventeen to be read back unchanged. Tests compare the outcome with that of the stock worksheet.
    """

    def __init__(self):
        super().__init__()
        self.columns: list[_Cells] = []

    def write_blank_column(self, row: int, column: int, rows: int, cell_format: Format) -> None:
        """Write blank cells from (row, column) down, counted from 0."""
        self._keep(_Cells(column, row, rows, cell_format))

    def write_copied_down(
        self, row: int, column: int, formulas: CopiedDown, cell_format: Format, values: Sequence
    ) -> None:
        """Write formulas from (row, column) down, counted from 0, with their cached values."""
        leading, text = "", escape(formulas.text.removeprefix("="))
        formula = f"<f>{text}</f>"
        if formulas.can_be_shared:
            number = sum(bool(each.leading) for each in self.columns)
            area = f"{xl_rowcol_to_cell(row, column)}:{xl_rowcol_to_cell(row + len(formulas) - 1, column)}"
            leading, formula = f'<f t="shared" ref="{area}" si="{number}">{text}</f>', f'<f t="shared" si="{number}"/>'
        self._keep(_Cells(column, row, len(formulas), cell_format, formula, leading, values))

    def single_cells(self) -> dict[tuple[int, int], float | str]:
        """The texts and numbers in its single cells, without formulas, by row and column from 1."""
        texts = list(self.str_table.string_table)
        return {
            (row + 1, column + 1): float(cell.number) if type(cell).__name__ == "Number" else texts[cell.string]
            for row, cells in self.table.items()
            for column, cell in cells.items()
            if type(cell).__name__ in ("Number", "String")
        }

    def _keep(self, cells: _Cells) -> None:
        """Keep a column of cells. As with single cells, what is written later replaces what was there."""
        for row in range(cells.row, cells.end):
            if row in self.table:
                self.table[row].pop(cells.column, None)
        self.columns.append(cells)
        self._check_dimensions(cells.row, cells.column)
        self._check_dimensions(cells.end - 1, cells.column)

    def _calculate_spans(self) -> None:
        """Omit the optional `spans` of rows."""

    def _write_rows(self) -> None:
        edges = {self.dim_rowmin, self.dim_rowmax + 1}
        edges |= {edge for each in self.columns for edge in (each.row, each.end)}
        for first, end in pairwise(sorted(edges)):
            columns = {each.column: each for each in self.columns if each.row <= first < each.end}
            self._write_band(range(first, end), columns)

    def _write_band(self, band: range, columns: dict[int, _Cells]) -> None:
        """Write rows that consist of the same columns. One that shows the same as the row above reuses its XML."""
        leading = {each.row for each in columns.values() if each.leading}
        telling = [each for each in columns.values() if not each.is_silent]
        above, parts = None, []
        for row in band:
            cells = columns | self.table.get(row, {})
            if not cells:
                if row in self.row_info or row in self.comments:
                    self._write_row(row, None, self.row_info.get(row), empty_row=True)
                continue
            self._write_row(row, None, self.row_info.get(row))
            if self.table.get(row):
                for column in sorted(cells):
                    self._write_cell(row, column, cells[column])
            else:
                shown = row in leading, [each.value(row) for each in telling]
                if shown != above:
                    above = shown
                    parts = "".join(columns[column].in_row(row) for column in sorted(columns)).split(NUMBER)
                self.fh.write(str(row + 1).join(parts))
            self._xml_end_tag("row")

    def _write_cell(self, row: int, col: int, cell) -> None:
        if isinstance(cell, _Cells):
            self.fh.write(cell.in_row(row).replace(NUMBER, str(row + 1)))
        else:
            super()._write_cell(row, col, cell)

    def _get_range_data(self, row_start: int, col_start: int, row_end: int, col_end: int) -> list:
        """The values that a chart caches of the cells that it draws."""
        rows, columns = range(row_start, row_end + 1), range(col_start, col_end + 1)
        return [self._drawn(row, column) for row in rows for column in columns]

    def _drawn(self, row: int, column: int) -> float | str | None:
        [single] = super()._get_range_data(row, column, row, column)
        kept = [each.value(row) for each in self.columns if each.column == column and each.row <= row < each.end]
        return kept[-1] if single is None and kept else single

    def _prepare_formula(self, formula: str, expand_future_functions: bool = False) -> str:
        return formula.removeprefix("=")

    def _xml_formula_element(self, formula: str, result: float | str, attributes=()) -> None:
        described = "".join(f' {key}="{value}"' for key, value in attributes)
        self.fh.write(f"<c{described}><f>{escape(formula)}</f>{_stored(result)}</c>")

    def _xml_number_element(self, number: float, attributes=()) -> None:
        described = "".join(f' {key}="{value}"' for key, value in attributes)
        self.fh.write(f"<c{described}><v>{repr(float(number)).removesuffix('.0').upper()}</v></c>")
