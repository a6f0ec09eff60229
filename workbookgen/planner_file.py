"""Reading a planner file for the check: the settings it was built from, and the formulas in it.

A planner has its settings on its last sheet, under "Made with", so that anyone who has nothing but the file can check
and renew it. The file is not trusted to be a planner, or even a workbook. Since engines are to calculate its formulas,
one that reaches for another file, an address or a program is refused.
"""

import re
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from workbookgen import __version__
from workbookgen.book.placement import Layout
from workbookgen.checking.formulas import changed_formulas
from workbookgen.checking.whole_file import as_found
from workbookgen.errors import FileError, PlannerError
from workbookgen.filled.as_made import laid_out
from workbookgen.filled.book import Book, open_book
from workbookgen.filled.gate import AS_XLSX, STRAY_CELLS, inspected
from workbookgen.filled.made_with import made_with, origin_sheet
from workbookgen.ooxml.formulas import Formulas, formulas
from workbookgen.ooxml.workbook import WholeFile
from workbookgen.settings import Settings, parse

MOST_LINES = 2_000  # of settings
# Of a sheet, unpacked: the embedded engine takes no more formula text, and a planner as we write it has half of that.
MOST_BYTES = 256 * 2**20

# Texts and quoted sheet names are taken out of a formula before it is searched for functions that start or fetch
# something, external references [...], DDE links (a bar) and addresses.
_TEXT = re.compile(r'"(?:[^"]|"")*"')
_QUOTED_SHEET = re.compile(r"'(?:[^']|'')*'!")
_REACHES_OUT = re.compile(
    r"\b(?:WEBSERVICE|DDE|RTD|CALL|REGISTER|REGISTER\.ID|EXEC|IMAGE|SQL\.REQUEST)\s*\(|\[|\||://", re.IGNORECASE
)


@dataclass(frozen=True)
class PlannerFile:
    """A planner as found on disk."""

    path: Path
    settings: Settings
    layout: Layout  # what the generator writes for these settings
    formulas: Formulas  # sheet and cell -> formula, as the file has them
    ranges: dict[str, str]  # full key -> where the file's own defined name points
    sheets: tuple[str, ...]  # their names in the file

    def require_its_sheets(self) -> None:
        """Refuse a planner that lacks a sheet or has it under another name, since engines find cells by sheet name."""
        if gone := [name for name in self.layout.plans if name not in self.sheets]:
            raise FileError.at(
                str(self.path),
                f"it has no sheet {gone[0]}; its sheets are {', '.join(self.sheets)}. "
                "If it was renamed, give it its name again and save; "
                f"or carry the planner over, and use the new one: {_carrying(self.path)}",
            )

    @cached_property
    def whole(self) -> WholeFile:
        """Everything in the file. Raises FileError if it is broken, or if a name or rule reaches out of it."""
        whole = as_found(self.path)
        for place, text in whole.formulas_beside_cells():
            _require_no_reach(self.path, place, text)
        return whole


def read_planner(path: Path) -> PlannerFile:
    """Open a planner. Raises FileError for anything else."""
    package = inspected(path)
    if package.kind != "xlsx":
        raise FileError.at(str(path), f"this is an .ods workbook, and this command reads .xlsx ones only. {AS_XLSX}")
    if package.links:
        raise FileError.at(
            str(path),
            f"it draws on {package.links[0]}, and a planner stands alone: nothing outside of it is ever fetched. "
            "Take that link off in your spreadsheet program, save it and try again.",
        )
    book = open_book(path, origin_sheet)
    settings = _settings(path, book)
    layout = laid_out(settings)
    most = sum(placement.rows for placement in layout.placements.values()) + STRAY_CELLS
    if package.cells > most:
        raise FileError.at(
            str(path),
            f"this file has about {package.cells:,} filled cells, where this planner has at most {most:,}; "
            "it is not read. Delete what was put beside the planner.",
        )
    if package.largest_part > MOST_BYTES:
        raise FileError.at(
            str(path),
            f"it has a sheet of {package.largest_part / 2**20:,.0f} MB, since the program that saved it wrote every "
            f"formula out; that is too much to check. Carry it over, and check the new one: {_carrying(path)}",
        )
    in_file = _formulas(path)
    _require_inside(path, layout, in_file)
    return PlannerFile(path, settings, layout, formulas=in_file, ranges=book.names, sheets=book.sheet_names)


def _settings(path: Path, book: Book) -> Settings:
    """The settings in a planner of this version."""
    made = made_with(path, book)
    if made.version != __version__:
        raise FileError.at(
            str(path),
            f"it was made with workbookgen {made.version}, and this is {__version__}, whose formulas are not all the same. "
            f"Carry it over, and use the new one: {_carrying(path)}",
        )
    # The lines above are left empty, so that the line of a fault is a row of the sheet.
    last = min(max(made.lines), min(made.lines) + MOST_LINES - 1)
    lines = [str(made.lines.get(row, "")) for row in range(1, last + 1)]
    settings = parse("\n".join(lines), f"{path}, sheet {made.sheet}")
    # The guide is in the planner, and a file that came by mail must not choose what is read from this computer.
    return settings.model_copy(update={"fibers": ""}) if settings.fibers else settings


def _formulas(path: Path) -> Formulas:
    try:
        return formulas(path)
    except PlannerError:
        raise
    except Exception as problem:  # a broken part may cause any
        broken = f"this file cannot be read as an .xlsx workbook ({problem})."
        raise FileError.at(str(path), f"{broken} {AS_XLSX}") from None


def _require_inside(path: Path, layout: Layout, in_file: Formulas) -> None:
    """Refuse formulas that would fetch or start something when calculated. The generator's own never do."""
    for sheet, cell, text in changed_formulas(layout, in_file):
        _require_no_reach(path, f"{sheet}!{cell}", text)


def _require_no_reach(path: Path, place: str, text: str) -> None:
    bare = _QUOTED_SHEET.sub(lambda name: "[" if "[" in name[0] else "", _TEXT.sub("", text))
    if _REACHES_OUT.search(bare):
        reaches = f"this formula reaches out of the planner ({text[:60]}); it is not worked out."
        instead = "Type its value instead." if "!" in place else "Delete it."
        raise FileError.at(f"{path}, {place}", f"{reaches} {instead}")


def _carrying(path: Path) -> str:
    """The command that carries a planner over, ready to type; a path with blanks is in quotation marks."""
    named = f'"{path}"' if " " in str(path) else str(path)
    return f"workbookgen carry {named} -o newer.xlsx"
