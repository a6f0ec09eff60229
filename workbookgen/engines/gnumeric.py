"""Gnumeric: driven through its converter, one file per scenario.

`ssconvert` has no session. What was set is written into a copy of the workbook, the copy is converted with a forced
recalculation, and the result is read back. This is slow, but the program itself loads and calculates the file, as on
a user's desktop.
"""

import os
import shutil
import subprocess
import warnings
from pathlib import Path
from tempfile import TemporaryDirectory

import openpyxl

from workbookgen.engines.copies import with_values
from workbookgen.engines.engine import (
    Area,
    ErrorValue,
    Reading,
    Rows,
    Session,
    checked,
    existing,
    require_sheet,
    unreadable,
)
from workbookgen.errors import FileError, MissingEngine

# Its own words, whatever language the machine speaks: elsewhere it writes 3.5 into a text as "3,5", and its version in
# other quotation marks.
_IN_ENGLISH = {"LC_ALL": "C.UTF-8", "LANGUAGE": "en"}

TIME_LIMIT = 600  # seconds; a usual planner takes 1, the largest one on a slow machine a few minutes


class Gnumeric:
    name = "gnumeric"

    def version(self) -> str:
        # "ssconvert version '1.12.55'", then lines about folders.
        return _run("--version").stdout.split("'")[1]

    def open(self, path: Path) -> "GnumericSession":
        _program()
        return GnumericSession(existing(path))


class GnumericSession(Session):
    def __init__(self, path: Path):
        self._path = path
        self._given: dict[Area, Rows] = {}
        self._sheets: dict[str, dict] = {}
        self._book = None
        self._folder = TemporaryDirectory(prefix="gnumeric-")
        try:
            self.evaluate()
        except BaseException:
            self.close()
            raise

    def set(self, area: Area, values: Rows) -> None:
        rows = checked(area, values)
        require_sheet(self._book.sheetnames, area.sheet)
        self._given.pop(area, None)  # so that it moves to the end: what is set last counts
        self._given[area] = rows

    def evaluate(self) -> None:
        filled = Path(self._folder.name, "filled.xlsx")
        result = Path(self._folder.name, "result.xlsx")
        result.unlink(missing_ok=True)
        with_values(self._path, filled, self._given)
        report = _run("--recalc", filled, result).stderr
        if not result.is_file():  # it may fail and still report success
            raise unreadable(self._path, "Gnumeric", report.strip() or "it wrote no result")
        self._forget()
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # about the default style, which Gnumeric leaves out and nobody reads
            self._book = openpyxl.load_workbook(result, read_only=True, data_only=True)
        # Dates are read as numbers; openpyxl would round a time of day.
        self._book._date_formats = self._book._timedelta_formats = frozenset()

    def read(self, area: Area) -> Reading:
        require_sheet(self._book.sheetnames, area.sheet)
        if area.sheet not in self._sheets:
            self._sheets[area.sheet] = _values(self._book[area.sheet])
        cells = self._sheets[area.sheet]
        columns = range(area.column, area.last_column + 1)
        return [[cells.get((row, column)) for column in columns] for row in range(area.row, area.last_row + 1)]

    def close(self) -> None:
        self._forget()
        self._folder.cleanup()

    def _forget(self) -> None:
        self._sheets = {}
        if self._book is not None:
            self._book.close()


def _values(sheet) -> dict[tuple[int, int], float | str | bool | ErrorValue]:
    cells = (cell for row in sheet.iter_rows() for cell in row if cell.value not in (None, ""))
    return {(cell.row, cell.column): _value(cell) for cell in cells}


def _value(cell) -> float | str | bool | ErrorValue:
    if cell.data_type == "e":
        return ErrorValue(cell.value)
    return cell.value if isinstance(cell.value, str | bool) else float(cell.value)


def _program() -> str:
    program = shutil.which("ssconvert")
    if program is None:
        how = "It comes with Gnumeric: install the Debian package gnumeric."
        raise MissingEngine.at("gnumeric", f"The program ssconvert is not on this machine. {how}")
    return program


def _run(*arguments: str | Path) -> subprocess.CompletedProcess:
    command = [_program(), *map(str, arguments)]
    spoken = {"env": os.environ | _IN_ENGLISH, "encoding": "utf-8", "errors": "replace"}
    try:
        return subprocess.run(command, capture_output=True, timeout=TIME_LIMIT, **spoken)
    except subprocess.TimeoutExpired:
        stopped = f"Gnumeric did not finish within {TIME_LIMIT} seconds and was stopped."
        raise FileError.at(str(arguments[-1]), stopped) from None
