"""formulon: a witness that is checked against Excel's own answers by its authors, for the tests alone.

The engine is a package of Python that brings its own compiled calculator along. It reads
the file, names and shared formulas included, and computes anew when it is told to.
"""

from importlib.metadata import version
from pathlib import Path

import formulon
from formulon import FormulonError, ValueKind, Workbook

from workbookgen.engines import Area, ErrorValue, Reading, Rows, Session, Typed, Value
from workbookgen.engines.engine import checked, existing, require_sheet, unreadable


class Formulon:
    name = "formulon"

    def __init__(self, profile: str = "win-365-en_US"):
        self.profile = profile  # which Excel it answers like: the system, the version, the country

    def version(self) -> str:
        return version("formulon")

    def open(self, path: Path) -> "FormulonSession":
        return FormulonSession(existing(path), self.profile)


class FormulonSession(Session):
    def __init__(self, path: Path, profile: str):
        try:
            self._book = Workbook.load(path.read_bytes())
            self._book.set_excel_profile_id(profile)
        except FormulonError as reason:
            raise unreadable(path, "formulon", reason) from None
        count = self._book.sheet_count
        self._sheets = {self._book.sheet_name(number): number for number in range(count() if callable(count) else count)}
        self.evaluate()

    def set(self, area: Area, values: Rows) -> None:
        sheet = self._sheet(area)
        for row, line in enumerate(checked(area, values), area.row - 1):
            for column, value in enumerate(line, area.column - 1):
                self._put(sheet, row, column, value)

    def _put(self, sheet: int, row: int, column: int, value: Value) -> None:
        match value:
            case None:
                self._book.set_blank(sheet, row, column)
            case bool():
                self._book.set_bool(sheet, row, column, value)
            case str():
                self._book.set_text(sheet, row, column, value)
            case Typed():
                self._book.set_formula(sheet, row, column, value.formula)
            case _:
                self._book.set_number(sheet, row, column, value)

    def evaluate(self) -> None:
        self._book.recalc()

    def read(self, area: Area) -> Reading:
        sheet = self._sheet(area)
        rows, columns = range(area.row - 1, area.last_row), range(area.column - 1, area.last_column)
        return [[_value(self._book.get_value(sheet, row, column)) for column in columns] for row in rows]

    def close(self) -> None:
        self._book.close()

    def _sheet(self, area: Area) -> int:
        require_sheet(tuple(self._sheets), area.sheet)
        return self._sheets[area.sheet]


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
