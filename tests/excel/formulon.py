"""formulon: a witness that is checked against Excel's own answers by its authors, for the tests alone.

The engine is a package of Python that brings its own compiled calculator along. It reads
the file, names and shared formulas included, and computes anew when it is told to.
"""

from pathlib import Path
from types import ModuleType

from workbookgen.engines import ErrorValue
from workbookgen.engines.engine import CellByCell, CellValue, PackageEngine, loading, plain, setting


class Formulon(PackageEngine):
    name = "formulon"

    def __init__(self, profile: str = "win-365-en_US"):
        self.profile = profile  # which Excel it answers like: the system, the version, the country

    def session(self, package: ModuleType, path: Path) -> CellByCell:
        with loading(path, "formulon", package.FormulonError):
            book = package.Workbook.load(path.read_bytes())
            book.set_excel_profile_id(self.profile)

        def read_cell(sheet: int, row: int, column: int) -> CellValue:
            value = book.get_value(sheet, row, column)
            kind = value.kind.name
            if kind in ("NUMBER", "BOOL", "TEXT", "BLANK"):
                return plain({"NUMBER": value.number, "BOOL": value.boolean, "TEXT": value.text, "BLANK": None}[kind])
            return ErrorValue(package.error_display_name(value.error_code) if kind == "ERROR" else f"#{kind}!")

        sheets = {book.sheet_name(number): number for number in range(book.sheet_count())}
        calls = setting(book.set_blank, book.set_bool, book.set_number, book.set_text, book.set_formula)
        return CellByCell(sheets, calls, read_cell, book.recalc, book.close, first=0)
