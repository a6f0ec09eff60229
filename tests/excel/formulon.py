"""formulon: a witness that is checked against Excel's own answers by its authors, for the tests alone.

The engine is a package of Python that brings its own compiled calculator along. It reads
the file, names and shared formulas included, and computes anew when it is told to.
"""

from pathlib import Path
from types import ModuleType

from workbookgen.engines import ErrorValue
from workbookgen.engines.engine import CellByCell, CellValue, PackageEngine, plain, setting, unreadable


class Formulon(PackageEngine):
    name = "formulon"

    def __init__(self, profile: str = "win-365-en_US"):
        self.profile = profile  # which Excel it answers like: the system, the version, the country

    def session(self, package: ModuleType, path: Path) -> "FormulonSession":
        return FormulonSession(package, path, self.profile)


class FormulonSession(CellByCell):
    first = 0

    def __init__(self, package: ModuleType, path: Path, profile: str):
        try:
            self._book = book = package.Workbook.load(path.read_bytes())
            book.set_excel_profile_id(profile)
        except package.FormulonError as reason:
            raise unreadable(path, "formulon", reason) from None
        self.sheets = {book.sheet_name(number): number for number in range(book.sheet_count())}
        self.calls = setting(book.set_blank, book.set_bool, book.set_number, book.set_text, book.set_formula)
        self._error = package.error_display_name
        self.evaluate()

    def evaluate(self) -> None:
        self._book.recalc()

    def close(self) -> None:
        self._book.close()

    def read_cell(self, sheet: int, row: int, column: int) -> CellValue:
        value = self._book.get_value(sheet, row, column)
        kind = value.kind.name
        if kind in ("NUMBER", "BOOL", "TEXT", "BLANK"):
            return plain({"NUMBER": value.number, "BOOL": value.boolean, "TEXT": value.text, "BLANK": None}[kind])
        return ErrorValue(self._error(value.error_code) if kind == "ERROR" else f"#{kind}!")
