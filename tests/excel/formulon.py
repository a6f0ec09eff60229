"""formulon: a witness that is checked against Excel's own answers by its authors, for the tests alone.

The engine is a package of Python that brings its own compiled calculator along. It reads
the file, names and shared formulas included, and computes anew when it is told to.
"""

from importlib.metadata import version
from pathlib import Path

import formulon
from formulon import FormulonError, ValueKind, Workbook

from workbookgen.engines import ErrorValue, Typed, Value
from workbookgen.engines.engine import CellByCell, existing, unreadable


class Formulon:
    name = "formulon"

    def __init__(self, profile: str = "win-365-en_US"):
        self.profile = profile  # which Excel it answers like: the system, the version, the country

    def version(self) -> str:
        return version("formulon")

    def open(self, path: Path) -> "FormulonSession":
        return FormulonSession(existing(path), self.profile)


class FormulonSession(CellByCell):
    def __init__(self, path: Path, profile: str):
        try:
            self._book = Workbook.load(path.read_bytes())
            self._book.set_excel_profile_id(profile)
        except FormulonError as reason:
            raise unreadable(path, "formulon", reason) from None
        count = self._book.sheet_count
        self.sheets = {self._book.sheet_name(number): number for number in range(count() if callable(count) else count)}
        self.evaluate()

    def set_cell(self, sheet: int, row: int, column: int, value: Value) -> None:
        cell = sheet, row - 1, column - 1
        match value:
            case None:
                self._book.set_blank(*cell)
            case bool():
                self._book.set_bool(*cell, value)
            case str():
                self._book.set_text(*cell, value)
            case Typed():
                self._book.set_formula(*cell, value.formula)
            case _:
                self._book.set_number(*cell, value)

    def evaluate(self) -> None:
        self._book.recalc()

    def read_cell(self, sheet: int, row: int, column: int) -> float | str | bool | None | ErrorValue:
        return _value(self._book.get_value(sheet, row - 1, column - 1))

    def close(self) -> None:
        self._book.close()


def _value(value) -> float | str | bool | None | ErrorValue:
    match value.kind:
        case ValueKind.NUMBER:
            return float(value.number)
        case ValueKind.BOOL:
            return value.boolean
        case ValueKind.TEXT:
            return value.text or None
        case ValueKind.BLANK:
            return None
    return ErrorValue(formulon.error_display_name(value.error_code) if value.kind == ValueKind.ERROR else f"#{value.kind.name}!")
