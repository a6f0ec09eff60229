"""Formualizer: the embedded engine, and the default.

It runs inside this process, so a scenario takes milliseconds. It adds a sheet when asked for an unknown one, so the
adapter checks the name first. Values are read by range, which is several times as fast as cell by cell.
"""

from pathlib import Path
from types import ModuleType

from workbookgen.engines.engine import (
    Area,
    CellValue,
    ErrorValue,
    PackageEngine,
    Reading,
    Rows,
    Session,
    Typed,
    checked,
    loading,
    plain,
    require_sheet,
    typed,
)
from workbookgen.errors import FileError

# Files come here through the gate (`filled/gate.py`), which admits planners larger than this package does by itself: a
# log of 20,000 lines unpacks to more than 128 MiB.
_LIMITS = dict.fromkeys(("max_input_bytes", "max_part_bytes", "max_expanded_bytes"), 2**31)
_TOKENS = {
    "Div": "#DIV/0!",
    "Na": "#N/A",
    "Name": "#NAME?",
    "Null": "#NULL!",
    "Num": "#NUM!",
    "Ref": "#REF!",
    "Value": "#VALUE!",
}


class Formualizer(PackageEngine):
    name = "formualizer"

    def session(self, package: ModuleType, path: Path) -> "FormualizerSession":
        return FormualizerSession(package, path)


class FormualizerSession(Session):
    def __init__(self, package: ModuleType, path: Path):
        self._package, self._path = package, path
        with loading(path, "formualizer", OSError, ValueError):
            self._workbook = package.Workbook.from_path(str(path), load_limits=_LIMITS)
        self._sheets = {name: self._workbook.sheet(name) for name in self._workbook.sheet_names}
        self._workbook.set_temporal_egress("serial")
        self._workbook.set_changelog_enabled(False)  # there is nothing to undo, and it halves the speed

    def set(self, area: Area, values: Rows) -> None:
        rows = checked(area, values)
        require_sheet(tuple(self._sheets), area.sheet)
        plain = [[None if isinstance(value, Typed) else value for value in row] for row in rows]
        self._workbook.set_values_batch(area.sheet, area.row, area.column, plain)
        for row, column, formula in typed(area, rows):
            self._workbook.set_formula(area.sheet, row, column, formula)

    def evaluate(self) -> None:
        try:
            self._workbook.evaluate_all()
        except self._package.ExcelEvaluationError as reason:  # it gives up on some workbooks that others compute
            sentence = f"formualizer cannot work out this workbook ({reason}). Try another engine."
            raise FileError.at(str(self._path), sentence) from None

    def read(self, area: Area) -> Reading:
        require_sheet(tuple(self._sheets), area.sheet)
        block = self._package.RangeAddress(area.sheet, area.row, area.column, area.last_row, area.last_column)
        rows = self._sheets[area.sheet].get_values(block)
        # Most cells of a planner are blank or numbers, which need no conversion.
        return [[value if value is None or type(value) is float else _value(value) for value in row] for row in rows]

    def close(self) -> None:
        self._workbook = None
        self._sheets = {}


def _value(value: object) -> CellValue:
    if isinstance(value, dict):
        kind = value["kind"]
        return ErrorValue(_TOKENS.get(kind, f"#{kind.upper()}!"))
    return plain(value)
