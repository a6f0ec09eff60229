"""A whole workbook as its file has it."""

import zipfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from lxml import etree

from workbookgen.ooxml.package import SAFELY, Package, attribute, is_on
from workbookgen.ooxml.references import Range
from workbookgen.ooxml.sheets import FileSheet, read_sheet, text_of
from workbookgen.ooxml.styles import PLAIN, Style, read_styles

_BROKEN = (zipfile.BadZipFile, etree.XMLSyntaxError, KeyError, IndexError, ValueError, TypeError, AttributeError)


class Unreadable(Exception):
    """The file is no workbook, or a broken one."""


@dataclass(frozen=True)
class Calculating:
    """How a program is to work the workbook out."""

    is_manual: bool = False
    rounds_to_what_is_shown: bool = False
    goes_in_circles: bool = False
    counts_from_1904: bool = False


@dataclass(frozen=True)
class WholeFile:
    """What a file says, sheet by sheet and as a whole."""

    program: str  # that saved it, as far as it says so
    names: dict[str, str]  # of the whole workbook -> what they stand for
    names_of_sheets: dict[tuple[str, str], str]  # sheet, name -> what it stands for on that sheet only
    calculating: Calculating
    sheets: dict[str, FileSheet]
    styles: list[Style]

    def style(self, number: int) -> Style:
        return self.styles[number] if number < len(self.styles) else PLAIN

    def formulas_beside_cells(self) -> Iterator[tuple[str, str]]:
        """Formulas that stand in no cell, and where they do: in names, validations, conditional formats."""
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
    book = package.targets("", "officeDocument")[0]
    root, relations = package.root(book), package.relations(book)
    listed = [(each.get("name"), each.get("state", "visible"), relations.get(attribute(each, "id"))) for each in root.iterfind("{*}sheets/{*}sheet")]
    names: dict[str, str] = {}
    of_sheets: dict[tuple[str, str], str] = {}
    for each in root.iterfind("{*}definedNames/{*}definedName"):
        at = each.get("localSheetId")
        if at is None:
            names[each.get("name")] = each.text or ""
        elif int(at) < len(listed):
            of_sheets[listed[int(at)][0], each.get("name")] = each.text or ""
    strings = _strings(package, book)
    sheets = {
        name: read_sheet(package, relation.target, name, state, strings)
        for name, state, relation in listed
        if relation and relation.kind == "worksheet" and relation.target in package.parts
    }
    return WholeFile(_program(package), names, of_sheets, _calculating(root), sheets, read_styles(package, book))


def _calculating(root) -> Calculating:
    calculation, settings = root.find("{*}calcPr"), root.find("{*}workbookPr")
    return Calculating(
        calculation is not None and calculation.get("calcMode") == "manual",
        calculation is not None and not is_on(calculation.get("fullPrecision"), True),
        calculation is not None and is_on(calculation.get("iterate")),
        settings is not None and is_on(settings.get("date1904")),
    )


def _program(package: Package) -> str:
    parts = package.targets("", "extended-properties")
    return (package.root(parts[0]).findtext("{*}Application") or "") if parts else ""


def _strings(package: Package, book: str) -> list[str]:
    parts = package.targets(book, "sharedStrings")
    if not parts:
        return []
    with package.zip.open(parts[0]) as stream:
        found = []
        for _, element in etree.iterparse(stream, tag="{*}si", **SAFELY):
            found.append(text_of(element))
            element.clear()
    return found
