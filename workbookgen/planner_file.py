"""Reading a planner file: which settings it was built from, and the formulas that it holds.

A planner carries its settings on the sheet "Made with", so that it can be checked and
renewed by whoever has nothing but the file. What is read is never trusted to be a planner,
or even a workbook.
"""

import zipfile
from dataclasses import dataclass
from pathlib import Path

import openpyxl

from workbookgen import settings as settings_module
from workbookgen.book.layout import Layout
from workbookgen.build import layout_of
from workbookgen.errors import FileError
from workbookgen.settings import Settings
from workbookgen.sheets import origin

LARGEST = 500 * 2**20  # bytes of all parts unpacked; a planner of 10,000 skeins has a fifth of it
MOST_LINES = 2_000  # of settings


@dataclass(frozen=True)
class PlannerFile:
    """A planner as found on disk."""

    path: Path
    settings: Settings
    layout: Layout  # what the generator writes for these settings
    formulas: dict[tuple[str, str], str]  # sheet and cell -> formula, as the file has them
    ranges: dict[str, str]  # full key -> where the file's own defined name points


def read_planner(path: Path) -> PlannerFile:
    """Open a planner. Raises FileError, with a sentence, for anything that is not one."""
    _require_package(path)
    try:
        book = openpyxl.load_workbook(path)
    except Exception as problem:  # openpyxl raises whatever a broken part makes it stumble over
        raise FileError.at(str(path), f"this file cannot be read as an .xlsx workbook ({problem}).") from None
    settings = settings_module.parse(_settings_text(path, book), f"{path}, sheet {origin.SHEET}")
    return PlannerFile(path, settings, layout_of(settings), _formulas(book), _ranges(book))


def _require_package(path: Path) -> None:
    if not path.is_file():
        raise FileError.at(str(path), "there is no such file.")
    try:
        with zipfile.ZipFile(path) as package:
            size = sum(entry.file_size for entry in package.infolist())
    except (zipfile.BadZipFile, OSError):
        raise FileError.at(
            str(path), "this is not an .xlsx workbook. Save it as .xlsx in your spreadsheet program and try again."
        ) from None
    if size > LARGEST:
        raise FileError.at(str(path), f"this file unpacks to {size / 2**20:,.0f} MB, far more than a planner has; it is not read.")


def _settings_text(path: Path, book) -> str:
    if origin.SHEET not in book.sheetnames:
        raise FileError.at(str(path), f"this is not one of our planners: it has no sheet {origin.SHEET}.")
    column = book[origin.SHEET].iter_rows(max_col=1, max_row=MOST_LINES, values_only=True)
    lines = ["" if value is None else str(value) for (value,) in column]
    start = next((index for index, line in enumerate(lines) if line.startswith("# workbookgen")), None)
    if start is None:
        raise FileError.at(str(path), f"the settings on the sheet {origin.SHEET} were overwritten, so the planner cannot be read.")
    return "\n" * start + "\n".join(lines[start:])  # so that a fault's line is a row of the sheet


def _formulas(book) -> dict[tuple[str, str], str]:
    return {
        (sheet.title, cell.coordinate): getattr(cell.value, "text", cell.value)
        for sheet in book.worksheets
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "f"
    }


def _ranges(book) -> dict[str, str]:
    return {name: defined.attr_text for name, defined in book.defined_names.items()}
