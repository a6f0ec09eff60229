"""The formulas of a workbook file, cell by cell.

A shared formula is written in the first of its cells. For the others it is moved, if need be by
openpyxl, which knows how a formula changes when it moves.
"""

import re
from bisect import bisect
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from itertools import pairwise
from pathlib import Path

from openpyxl.formula.translate import Translator

from workbookgen.ooxml.formula_cells import FormulaCell, scan
from workbookgen.ooxml.listing import read_listing
from workbookgen.ooxml.package import Package
from workbookgen.ooxml.references import column_letters
from workbookgen.ooxml.rows import alike, as_sheet_data

FAR = 999_983  # a row that no formula refers to
ROW = "{row}"  # in a formula, the number of its own row

# A part of a formula that may be a reference, perhaps to another sheet, or that is a text or a function.
_PIECE = re.compile(r"""("(?:[^"]|"")*"|(?:'(?:[^']|'')*'!)?[\w$.:\\!?\[\]]+\(?|['"])""")
_MOVES = re.compile(r"\$?[A-Z]{1,3}([0-9]+)(?::\$?[A-Z]{1,3}([0-9]+))?")
_STAYS = re.compile(
    r'".*"'  # a text
    r"|[A-Z][A-Z0-9.]*\("  # a function
    r"|[0-9.]+(?:E[0-9]*)?"  # a number
    r"|(?:'(?:[^']|'')*'!|[A-Za-z_]+!)?\$?[A-Z]{1,3}\$[0-9]+(?::\$?[A-Z]{1,3}\$[0-9]+)?"  # cells of fixed rows
    r"|[a-z_][a-z]*_\w*|TRUE|FALSE",  # a name that cannot be a cell's
    re.DOTALL,
)


def formulas(path: Path) -> "Formulas":
    """The formulas of a whole workbook."""
    found: list[FormulaRun] = []
    with Package(path) as package:
        for tab in read_listing(package).worksheets:
            found += _formulas(package.read(tab.part), tab.name)
    return Formulas(found)


def _formulas(xml: bytes, sheet: str) -> list["FormulaRun"]:
    found: list[FormulaRun] = []
    shared: dict[str | None, SharedFormula] = {}

    def keep(cell: FormulaCell, rows: int = 1) -> None:
        text, letters = f"={cell.text}", column_letters(cell.reference)
        row, moved = int(cell.reference[len(letters) :]), None
        if cell.kind.get("t") == "shared":
            number = cell.kind.get("si")
            if cell.text or number not in shared:
                shared[number] = SharedFormula(text, cell.reference)
            moved = shared[number]
        found.append(FormulaRun(sheet, letters, row, row + rows - 1, text, moved))

    groups = alike(xml)
    if groups is None:
        scan(xml, keep)
    for each in groups or ():
        scan(as_sheet_data(each.xml), lambda cell, rows=each.last - each.first + 1: keep(cell, rows))
    return found


@dataclass(frozen=True, slots=True)
class FormulaRun:
    """The formula of cells one below another, in rows that are alike: the same text, or one that moves with the row."""

    sheet: str
    letters: str  # of the column
    first: int
    last: int
    text: str
    shared: "SharedFormula | None" = None

    @property
    def copied(self) -> str:
        """The text that they share, with ROW for the row's number, or nothing if there is none."""
        return self.shared.down if self.shared and self.letters == self.shared.column else ""

    @property
    def rows(self) -> range:
        return range(self.first, self.last + 1)

    def in_row(self, row: int) -> str:
        return self.shared.moved_to(f"{self.letters}{row}") if self.shared else self.text


class Formulas(Mapping[tuple[str, str], str]):
    """Sheet and cell -> formula, with "=". Those of a log, perhaps a million, are made on request."""

    def __init__(self, runs: Sequence[FormulaRun]):
        self.columns: dict[tuple[str, str], list[FormulaRun]] = {}  # sheet and letters -> from top to bottom
        for each in runs:
            self.columns.setdefault((each.sheet, each.letters), []).append(each)
        for column, found in self.columns.items():
            found.sort(key=lambda each: each.first)
            if any(above.last >= below.first for above, below in pairwise(found)):  # a cell occurs twice
                self.columns[column] = _one_by_one(each for each in runs if (each.sheet, each.letters) == column)

    @property
    def runs(self) -> Iterator[FormulaRun]:
        for found in self.columns.values():
            yield from found

    def __getitem__(self, place: tuple[str, str]) -> str:
        sheet, cell = place
        letters = column_letters(cell)
        row, found = int(cell[len(letters) :]), self.columns.get((sheet, letters), [])
        above = bisect(found, row, key=lambda each: each.first) - 1
        if above < 0 or row > found[above].last:
            raise KeyError(place)
        return found[above].in_row(row)

    def within(self, sheet: str, letters: str, first: int, last: int) -> Iterator[FormulaRun]:
        """The formulas in some cells of a column, as runs that are cut to these cells."""
        for each in self.columns.get((sheet, letters), ()):
            if each.first <= last and first <= each.last:
                yield replace(each, first=max(first, each.first), last=min(last, each.last))

    def __iter__(self) -> Iterator[tuple[str, str]]:
        return ((each.sheet, f"{each.letters}{row}") for each in self.runs for row in each.rows)

    def __len__(self) -> int:
        return sum(len(each.rows) for each in self.runs)


def _one_by_one(runs: Iterable[FormulaRun]) -> list[FormulaRun]:
    """A run for each cell; if a cell occurs twice, the later counts."""
    single = {row: replace(each, first=row, last=row) for each in runs for row in each.rows}
    return [single[row] for row in sorted(single)]


class Copied(str):
    """A formula that is copied down its column: ROW stands for the number of the row."""

    __slots__ = ()

    def in_row(self, row: int) -> str:
        return self.replace(ROW, str(row))


class SharedFormula:
    """A formula that several cells share. Down its own column, usually only the row's number changes."""

    def __init__(self, text: str, origin: str):
        self.text, self.origin, self.column = text, origin, column_letters(origin)
        self.down = Copied(_down(text, origin))

    def in_cell(self, place: str) -> str:
        """The formula in one of the cells, Copied if it can be."""
        if self.down and column_letters(place) == self.column:
            return self.down
        return self._translator.translate_formula(place)

    def moved_to(self, place: str) -> str:
        """The formula in one of the cells, as it reads there."""
        formula = self.in_cell(place)
        return formula.in_row(place[len(self.column) :]) if isinstance(formula, Copied) else formula

    @cached_property
    def _translator(self) -> Translator:
        return Translator(self.text, self.origin)


@lru_cache(maxsize=4096)
def _down(text: str, origin: str) -> str:
    """The formula with ROW for its row's number, or nothing if more than that changes.

    It is cached, since planners have the same formulas again and again.
    """
    return _down_plainly(text, origin) or _down_as_translated(text, origin)


def _down_plainly(text: str, origin: str) -> str:
    """The same if only cells of the formula's own row move, otherwise nothing. It is six times as fast as openpyxl."""
    row, pieces = origin[len(column_letters(origin)) :], _PIECE.split(text)
    if "{" in text:
        return ""
    for place in range(1, len(pieces), 2):  # what is between the pieces never moves
        found = _MOVES.fullmatch(pieces[place])
        if found and {found[1], found[2] or row} == {row}:
            pieces[place] = pieces[place].replace(row, ROW)
        elif not _STAYS.fullmatch(pieces[place]):
            return ""
    return "".join(pieces)


def _down_as_translated(text: str, origin: str) -> str:
    column = column_letters(origin)
    down = Translator(text, origin).translate_formula(f"{column}{FAR}").replace(str(FAR), ROW)
    return down if down.replace(ROW, origin[len(column) :]) == text else ""
