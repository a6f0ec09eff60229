"""IronCalc: a second engine inside this process, written by other people.

It is the witness beside the embedded default. It counts sheets from 0 and cells from 1, and is used through its raw
calls, which take a text as a text; the calls meant for user input would read "12,5" or "5/6/2026" as a number or a
date.
"""

from importlib import metadata
from pathlib import Path

from ..errors import MissingEngine
from .engine import CellByCell, ErrorValue, Typed, Value, existing, unreadable


class IronCalc:
    name = "ironcalc"

    def version(self) -> str:
        _package()
        return metadata.version("ironcalc")

    def open(self, path: Path) -> "IronCalcSession":
        return IronCalcSession(_package(), existing(path))


class IronCalcSession(CellByCell):
    def __init__(self, package, path: Path):
        self._error = package.CellType.ErrorValue
        try:
            self._model = package.load_from_xlsx(str(path), "en", "UTC")
        except package.WorkbookError as reason:
            raise unreadable(path, "IronCalc", reason) from None
        except BaseException as reason:
            # What its Rust code did not foresee (as in files that Gnumeric saved) is no Exception.
            if type(reason).__name__ != "PanicException":
                raise
            raise unreadable(path, "IronCalc", reason) from None
        properties = self._model.get_worksheets_properties()
        self.sheets = {sheet["name"]: index for index, sheet in enumerate(properties)}
        self.evaluate()

    def evaluate(self) -> None:
        self._model.evaluate()

    def close(self) -> None:
        self._model = None

    def set_cell(self, sheet: int, row: int, column: int, value: Value) -> None:
        if value is None:
            self._model.clear_cell_contents(sheet, row, column)
        elif isinstance(value, bool):
            self._model.update_cell_with_bool(sheet, row, column, value)
        elif isinstance(value, Typed):
            self._model.set_user_input(sheet, row, column, value.formula)
        elif isinstance(value, str):
            self._model.update_cell_with_text(sheet, row, column, value)
        else:
            self._model.update_cell_with_number(sheet, row, column, value)

    def read_cell(self, sheet: int, row: int, column: int) -> float | str | bool | None | ErrorValue:
        value = self._model.get_cell_value(sheet, row, column)
        if isinstance(value, str):
            # An error and a text that only looks like one come back alike but for the type.
            if self._model.get_cell_type(sheet, row, column) == self._error:
                return ErrorValue(value)
            return value or None
        return value if value is None or isinstance(value, bool) else float(value)


def _package():
    try:
        import ironcalc
    except ImportError:
        raise MissingEngine.at(
            "ironcalc", "This engine is not installed. Get it with: pip install ironcalc"
        ) from None
    return ironcalc
