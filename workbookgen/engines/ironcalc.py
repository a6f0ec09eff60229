"""IronCalc: a second engine inside this process, written by other people than the default.

It counts sheets from 0 and cells from 1. Values are set through its raw calls, which keep a text a text; the calls for
user input would read "12,5" or "5/6/2026" as a number or a date.
"""

from pathlib import Path
from types import ModuleType

from workbookgen.engines.engine import CellByCell, CellValue, ErrorValue, PackageEngine, plain, setting, unreadable


class IronCalc(PackageEngine):
    name = "ironcalc"

    def session(self, package: ModuleType, path: Path) -> CellByCell:
        model = _loaded(package, path)

        def read_cell(sheet: int, row: int, column: int) -> CellValue:
            value = model.get_cell_value(sheet, row, column)
            # Only the cell's type tells an error from a text that looks like one.
            is_error = isinstance(value, str) and model.get_cell_type(sheet, row, column) == package.CellType.ErrorValue
            return ErrorValue(value) if is_error else plain(value)

        calls = setting(
            model.clear_cell_contents,
            model.update_cell_with_bool,
            model.update_cell_with_number,
            model.update_cell_with_text,
            model.set_user_input,
        )
        sheets = {sheet["name"]: index for index, sheet in enumerate(model.get_worksheets_properties())}
        return CellByCell(sheets, calls, read_cell, model.evaluate)


def _loaded(package: ModuleType, path: Path) -> object:
    try:
        return package.load_from_xlsx(str(path), "en", "UTC")
    except package.WorkbookError as reason:
        raise unreadable(path, "IronCalc", reason) from None
    except BaseException as reason:
        # A panic of its Rust code, as with some files that Gnumeric saved, is not an Exception.
        if type(reason).__name__ != "PanicException":
            raise
        raise unreadable(path, "IronCalc", reason) from None
