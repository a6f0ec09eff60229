"""A workbook as it is in a file: what is in its cells, and where its names point.

Planners come back from many programs, as .xlsx or .ods, and each program writes the same thing in its own way. Here
everything gets one form: numbers, texts, truth values, errors, dates as days of the 1900 system, and formulas as in
.xlsx. Nothing is calculated here, and nothing is known about planners. The formats are read part by part (`ooxml`),
since the available libraries are too slow for a thousand planners, or leave out formulas and errors.
"""

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from pathlib import Path
from types import ModuleType

from workbookgen.engines import Area
from workbookgen.errors import FileError
from workbookgen.filled import ods, xlsx
from workbookgen.filled.cells import Cell, Cells, Choice, Contents, Position, TooMany, UnknownForm
from workbookgen.filled.gate import AS_XLSX, admitted
from workbookgen.ooxml.package import Package
from workbookgen.ooxml.references import range_of
from workbookgen.ooxml.values import ErrorValue

__all__ = ["Book", "Cell", "ErrorValue", "Position", "open_book"]


Wanted = Callable[[dict[str, str]], dict[str, set[int] | None]]


@dataclass(frozen=True)
class Book:
    """A workbook on disk. Only cells that hold something are listed, by row and column from 1."""

    path: Path
    sheets: dict[str, Cells]  # of the sheets that were asked for
    names: dict[str, str]  # defined name -> where it points
    comments: dict[str, dict[Position, str]] = field(default_factory=dict)  # notes pinned to cells
    sheet_names: tuple[str, ...] = ()  # of all sheets
    protected: frozenset[str] = frozenset()  # sheets in which only unlocked cells can be typed into
    counts_from_1904: bool = False  # then its days are 1,462 fewer than ours

    @cached_property
    def areas(self) -> Mapping[str, Area]:
        """The cells that each of its names points to, of those that point to one rectangle."""
        return areas_of(self.names)


@lru_cache(maxsize=16_384)  # the planners of a guild have the same names at the same places
def area_of(text: str) -> Area | None:
    """Where a name points: one rectangle of cells on one sheet, or None for anything else."""
    found = range_of(text)
    if not found or not found.sheet:
        return None
    return Area(found.sheet, found.top, found.left, found.bottom - found.top + 1, found.right - found.left + 1)


def areas_of(names: Mapping[str, str]) -> dict[str, Area]:
    """The cells that each of these names points to, of those that point to one rectangle."""
    return {name: area for name, text in names.items() if (area := area_of(text))}


def open_book(path: Path, sheets: Collection[str] | Wanted | None = None) -> Book:
    """Read a workbook, or only these sheets of it. Raises FileError, with a sentence, if it cannot be read.

    `sheets` may also be a function from the defined names to the sheets and the columns of each.
    """
    with admitted(path) as (about, package):
        contents = _contents(path, {"xlsx": xlsx, "ods": ods}[about.kind], package, _choice(sheets))
    return Book(
        path,
        sheets=contents.sheets,
        names=contents.names,
        comments=contents.comments,
        sheet_names=contents.sheet_names,
        protected=frozenset(contents.protected),
        counts_from_1904=contents.counts_from_1904,
    )


def _contents(path: Path, reader: ModuleType, package: Package, choice: Choice) -> Contents:
    try:
        return reader.read(package, choice)
    except TooMany as problem:
        too_many = f"this file has more than {problem} filled cells, far more than a planner; it is not read."
        raise FileError.at(str(path), too_many) from None
    except UnknownForm as problem:
        raise FileError.at(str(path), f"this file cannot be read as a workbook ({problem}). {AS_XLSX}") from None
    except Exception as problem:  # whatever makes the parser fail on a broken part
        broken = f"this file cannot be read as a workbook ({type(problem).__name__}: {problem}). {AS_XLSX}"
        raise FileError.at(str(path), broken) from None


def _choice(sheets) -> Choice:
    if callable(sheets):
        return lambda sheet_names, names: sheets(names)
    return lambda sheet_names, names: dict.fromkeys(sheet_names if sheets is None else sheets)
