"""What all engines share: values, areas, sessions.

An engine is a program that evaluates a workbook. Engines differ in how they represent an error, a boolean, a date or an
empty text. Here these get one representation, so that a comparison of two engines is about what they computed.
"""

import math
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from importlib import import_module, metadata
from pathlib import Path
from types import ModuleType, NoneType
from typing import Protocol

from workbookgen.errors import FileError, MissingEngine
from workbookgen.ooxml.values import ErrorValue


@dataclass(frozen=True)
class Typed:
    """A formula typed into a cell, such as "=6.5*16"; it is read back as its result."""

    formula: str


# A number (dates are serial numbers), a text, a boolean, or None for blank. A formula that gives an empty text is blank
# too, since it looks so and engines store it in different ways. LibreOffice gives booleans back as 1 and 0.
Value = float | str | bool | Typed | None
Rows = Sequence[Sequence[Value]]
CellValue = float | str | bool | None | ErrorValue
Reading = list[list[CellValue]]


@dataclass(frozen=True)
class Area:
    """A rectangle of cells; rows and columns count from 1."""

    sheet: str
    row: int
    column: int
    rows: int = 1
    columns: int = 1

    def __post_init__(self):
        if min(self.row, self.column, self.rows, self.columns) < 1:
            raise ValueError(f"{self} is no block of cells: rows and columns count from 1.")

    @property
    def last_row(self) -> int:
        return self.row + self.rows - 1

    @property
    def last_column(self) -> int:
        return self.column + self.columns - 1


class Session(Protocol):
    """One workbook, open in one engine. Closing it never touches the file."""

    def set(self, area: Area, values: Rows) -> None:
        """Fill an area. None empties a cell, and a text stays a text whatever it looks like."""

    def evaluate(self) -> None:
        """Calculate everything that depends on what was set."""

    def read(self, area: Area) -> Reading:
        """What the last `evaluate` calculated."""

    def close(self) -> None:
        """Release the workbook and all its resources."""

    def __enter__(self) -> "Session":
        return self

    def __exit__(self, *_) -> None:
        self.close()


@dataclass
class CellByCell(Session):
    """A session with an engine that sets and reads one cell at a time, made of the engine's own functions.

    `sheets` maps a sheet's name to whatever the engine calls it, and `first` is the number of its first row and column.
    `calls` has for each type of value the function that sets a cell (see `setting`); its arguments are sheet, row,
    column and, except for a blank, the value. `read_cell` takes the same three.
    """

    sheets: Mapping[str, object]
    calls: Mapping[type, Callable]
    read_cell: Callable[[object, int, int], CellValue] | None
    calculate: Callable[[], object] | None
    release: Callable[[], object] | None = None
    first: int = 1

    def set(self, area: Area, values: Rows) -> None:
        sheet, rows, columns = self._places(area)
        for row, line in zip(rows, checked(area, values), strict=True):
            for column, value in zip(columns, line, strict=True):
                given = () if value is None else (value.formula if isinstance(value, Typed) else value,)
                self.calls[type(value)](sheet, row, column, *given)

    def evaluate(self) -> None:
        self.calculate()

    def read(self, area: Area) -> Reading:
        sheet, rows, columns = self._places(area)
        return [[self.read_cell(sheet, row, column) for column in columns] for row in rows]

    def close(self) -> None:
        if self.release:
            self.release()
        self.calls, self.read_cell, self.calculate, self.release = {}, None, None, None  # each holds the workbook

    def _places(self, area: Area) -> tuple[object, range, range]:
        require_sheet(tuple(self.sheets), area.sheet)
        row, column = area.row - 1 + self.first, area.column - 1 + self.first
        return self.sheets[area.sheet], range(row, row + area.rows), range(column, column + area.columns)


def setting(
    blank: Callable, truth: Callable, number: Callable, text: Callable, formula: Callable
) -> Mapping[type, Callable]:
    """An engine's functions that set a cell, by the type of the value."""
    return {NoneType: blank, bool: truth, float: number, str: text, Typed: formula}


class Engine(Protocol):
    """A program that evaluates workbooks. If it is not installed, its methods raise MissingEngine."""

    name: str

    def version(self) -> str:
        """The program's own version number."""

    def open(self, path: Path) -> Session:
        """Load a workbook and calculate every formula, whatever results the file stores."""


class PackageEngine(Engine):
    """An engine that is a Python package of the same name; `session` opens a workbook with it."""

    def session(self, package: ModuleType, path: Path) -> Session:
        raise NotImplementedError

    def version(self) -> str:
        self._package()
        return metadata.version(self.name)

    def open(self, path: Path) -> Session:
        session = self.session(self._package(), existing(path))
        session.evaluate()
        return session

    def _package(self) -> ModuleType:
        try:
            return import_module(self.name)
        except ImportError:
            how = f"This engine is not installed. Get it with: pip install {self.name}"
            raise MissingEngine.at(self.name, how) from None


# XML has no room for these characters, and a lone carriage return does not survive it either.
_UNWRITABLE = re.compile(r"[\x00-\x08\x0b-\x1f\ud800-\udfff\ufffe\uffff]")


def checked(area: Area, values: Rows) -> list[list[Value]]:
    """The rows with values as all engines take them. Raises ValueError for what some engine would change."""
    rows = [[_checked(value) for value in row] for row in values]
    if len(rows) != area.rows or any(len(row) != area.columns for row in rows):
        raise ValueError(f"{area} was given rows of lengths {[len(row) for row in rows]}.")
    return rows


def _checked(value: object) -> Value:
    if value is None or value == "":
        return None
    if isinstance(value, str):
        if _UNWRITABLE.search(value):
            raise ValueError(f"{value!r} holds a character that a workbook cannot store.")
        return str(value)
    if isinstance(value, bool | Typed):
        return value
    if not math.isfinite(value):
        raise ValueError(f"{value!r} is no value of a cell: give a finite number, a text or None.")
    return float(value)


def plain(value: object) -> float | str | bool | None:
    """The value of a cell that shows no error, in the common representation."""
    if value is None or isinstance(value, str):
        return value or None
    return value if isinstance(value, bool) else float(value)


def typed(area: Area, rows: Rows) -> Iterator[tuple[int, int, str]]:
    """Row, column and text of every formula among the values."""
    for row, values in enumerate(rows, area.row):
        for column, value in enumerate(values, area.column):
            if isinstance(value, Typed):
                yield row, column, value.formula


def existing(path: Path) -> Path:
    """The full path of a workbook. Raises FileError if there is none."""
    if not path.is_file():
        raise FileError.at(str(path), "There is no such workbook. Check the name and the folder.")
    return path.resolve()


def require_sheet(sheets: Sequence[str], sheet: str) -> None:
    """Refuse a sheet that the workbook lacks, since some engines would silently add it."""
    if sheet not in sheets:
        raise FileError.at(sheet, f"The workbook has no such sheet. Its sheets are {', '.join(sheets)}.")


@contextmanager
def loading(path: Path, program: str, *refusals: type[Exception]) -> Iterator[None]:
    """While a program loads a file: what it refuses becomes a sentence about the file."""
    try:
        yield
    except refusals as reason:
        raise unreadable(path, program, reason) from None


def unreadable(path: Path, program: str, reason: object) -> FileError:
    """The error for a file that a program could not load."""
    instead = "Save it once more as .xlsx in your spreadsheet program, or try another engine."
    return FileError.at(str(path), f"{program} cannot read this file as an .xlsx workbook ({reason}). {instead}")
