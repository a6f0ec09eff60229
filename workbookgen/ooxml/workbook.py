"""A whole workbook, as it is in its file."""

import zipfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from workbookgen.ooxml.listing import Listing, NoWorkbook, read_listing
from workbookgen.ooxml.package import Package, ParseError, is_on
from workbookgen.ooxml.references import Range
from workbookgen.ooxml.sheets import FileSheet, read_sheet
from workbookgen.ooxml.strings import read_strings
from workbookgen.ooxml.styles import PLAIN, Style, read_styles

_BROKEN = (NoWorkbook, zipfile.BadZipFile, ParseError, KeyError, IndexError, ValueError, TypeError, AttributeError)


class Unreadable(Exception):
    """The file is not a workbook, or a broken one."""


@dataclass(frozen=True)
class CalculationSettings:
    """How a program is to calculate the workbook."""

    is_manual: bool = False
    rounds_as_shown: bool = False
    repeats_circles: bool = False
    counts_from_1904: bool = False


@dataclass(frozen=True)
class WholeFile:
    """The content of a file, sheet by sheet and as a whole."""

    program: str  # that saved it, if the file names it
    names: dict[str, str]  # name of the whole workbook -> what it stands for
    names_of_sheets: dict[tuple[str, str], str]  # sheet, name -> what it stands for on that sheet only
    calculation: CalculationSettings
    sheets: dict[str, FileSheet]
    styles: list[Style]

    def style(self, number: int) -> Style:
        return self.styles[number] if number < len(self.styles) else PLAIN

    def formulas_beside_cells(self) -> Iterator[tuple[str, str]]:
        """Formulas outside of cells, in names, validations and conditional formats, each after where it is."""
        for name, text in self.names.items():
            yield f"the name {name}", text
        for (sheet, name), text in self.names_of_sheets.items():
            yield f"the name {name} of the sheet {sheet}", text
        for sheet in self.sheets.values():
            for ranges, validation in sheet.validations:
                for text in validation.formulas:
                    yield f"what may be typed into {_cells(sheet, ranges)}", text
            for rule in sheet.rules:
                for text in rule.formulas:
                    yield f"the conditional format of {_cells(sheet, rule.ranges)}", text


def _cells(sheet: FileSheet, ranges: tuple[Range, ...]) -> str:
    return f"{sheet.name}, {' '.join(map(str, ranges))}"


def read_whole(source: Path | bytes) -> WholeFile:
    """Read a workbook. Raises Unreadable."""
    try:
        with Package(source) as package:
            return _read(package)
    except _BROKEN as problem:
        raise Unreadable(f"{type(problem).__name__}: {problem}") from None


def _read(package: Package) -> WholeFile:
    listing = read_listing(package)
    strings = read_strings(package, listing.part)
    sheets = {each.name: read_sheet(package, each.part, each.name, each.state, strings) for each in listing.worksheets}
    return WholeFile(
        _program(package),
        listing.names,
        listing.names_of_sheets,
        _calculation(package.root(listing.part), listing),
        sheets,
        read_styles(package, listing.part),
    )


def _calculation(root, listing: Listing) -> CalculationSettings:
    calculation = root.find("{*}calcPr")
    return CalculationSettings(
        calculation is not None and calculation.get("calcMode") == "manual",
        calculation is not None and not is_on(calculation.get("fullPrecision"), True),
        calculation is not None and is_on(calculation.get("iterate")),
        listing.counts_from_1904,
    )


def _program(package: Package) -> str:
    parts = package.targets("", "extended-properties")
    return (package.root(parts[0]).findtext("{*}Application") or "") if parts else ""
