"""The filled cells of a worksheet: their values and formulas.

Three ways give the same. Plain cells are found by their bytes, and of rows that are alike only the
first two are looked at; a cell that is not plain is parsed by itself; and a sheet that is not written
as programs usually write is streamed through the parser, a row at a time, so that it is never in
memory as a whole.
"""

import re
from collections.abc import Callable, Collection, Iterator, Sequence
from functools import cache
from itertools import chain, groupby
from operator import itemgetter
from typing import IO, NamedTuple
from xml.parsers import expat

from lxml import etree
from openpyxl.utils import column_index_from_string, get_column_letter

from workbookgen.ooxml import plain
from workbookgen.ooxml.formulas import SharedFormula
from workbookgen.ooxml.package import SAFELY, Package, is_on, release, streamed
from workbookgen.ooxml.references import MOST_COLUMNS, Place, cell_name, column_of, place_of
from workbookgen.ooxml.rows import alike
from workbookgen.ooxml.strings import text_of
from workbookgen.ooxml.values import Value, value_of


class Cell(NamedTuple):
    """The content of a cell. `formula` is empty if a value was typed."""

    value: Value
    formula: str = ""


Row = dict[int, Cell]  # column -> what is in it; a formula that is Copied is meant for any row
Put = Callable[[range, Row], None]  # takes rows that are alike, and what each of them has

# A filled cell: its column and row, then its type, formula and stored value if it is written as programs usually write,
# otherwise its attributes and its whole content.
_FORMULA = rb"<f((?: [^>']*)?)(?:(?<=/)>|>(" + plain.TEXT + rb")</f>)"
_STORED = rb'<v(?: xml:space="preserve")?>(' + plain.TEXT + rb")</v>"
_CELL = (
    rb'<c r="(%b)([0-9]{1,7})"(?:(?: s="[0-9]+")?(?: t="([a-z]+)")?>'
    rb"(?:" + _FORMULA + rb")?" + _STORED + rb"</c>|([^>]*)(?<!/)>(.*?)</c>)"
)
_OTHER_CELL = re.compile(rb'<c(?! r=")')
_NUMBER_OF = re.compile(rb'\ssi="([^"]*)"')
_PROTECTION = re.compile(rb"<sheetProtection\b[^>]*/>")


def read_cells(package: Package, part: str, strings: Sequence[str], columns: Collection[int] | None, put: Put) -> bool:
    """Put every filled row of a sheet, or some columns of it. Returns whether the sheet is protected.

    If only some columns are wanted, broken XML in the others may go unnoticed.
    """
    reading = _Reading(strings, columns, put)
    if package.size(part) <= plain.MOST_BYTES:
        content = package.read(part)
        if _is_plain(content):
            if columns is None:
                expat.ParserCreate().Parse(content, True)  # raises if it is broken
            return reading.by_bytes(content)
    with package.open(part) as stream:
        return reading.by_parser(stream)


def _is_plain(content: bytes) -> bool:
    """Whether a sheet is plain, and every cell begins with its reference."""
    return plain.is_plain(content, "worksheet") and not _OTHER_CELL.search(content, *plain.cells_in(content))


class _Reading:
    """One sheet while it is read."""

    def __init__(self, strings: Sequence[str], columns: Collection[int] | None, put: Put):
        self.strings, self.columns, self.put = strings, columns, put
        self.shared: dict[str | None, SharedFormula] = {}
        self.letters: dict[bytes, int] = {}  # of the columns found so far

    def by_bytes(self, content: bytes) -> bool:
        """Put the rows of a plain sheet. Returns whether it is protected."""
        groups = alike(content) if self.columns is None else None
        if groups is None:
            for row, cells in self._rows(content, *plain.cells_in(content)):
                self.put(range(row, row + 1), cells)
        for group in groups or ():
            rows = self._rows(content, group.start, group.end)
            first, second = next(rows, None), next(rows, None)
            if first and second and first[1] == second[1]:  # and so are the others
                self.put(range(group.first, group.last + 1), first[1])
                continue
            for row, cells in chain(filter(None, (first, second)), rows):
                self.put(range(row, row + 1), cells)
        protection = _PROTECTION.search(content)
        return protection is not None and is_on(etree.fromstring(protection[0]).get("sheet"))

    def _rows(self, content: bytes, start: int, end: int) -> Iterator[tuple[int, Row]]:
        """The filled rows in a part of a plain sheet, with their numbers."""
        for row, found in groupby(self._cells(content, start, end), key=itemgetter(0)):
            yield row, {column: cell for _, column, cell in found}

    def _cells(self, content: bytes, start: int, end: int) -> Iterator[tuple[int, int, Cell]]:
        """The filled cells in a part of a plain sheet, with their rows and columns."""
        opening, columns = plain.opening_tag(content, "worksheet"), self.letters
        pattern = _cell_pattern(None if self.columns is None else frozenset(self.columns))
        for found in pattern.finditer(content, start, end):
            letters, number, kind, described, formula, stored, attributes, inside = found.groups()
            if letters not in columns:
                columns[letters] = column_index_from_string(letters.decode())
            row, column = int(number), columns[letters]
            if attributes is None:
                cell = self._plain_cell(kind, described, formula, stored, (row, column))
            elif inside:
                written = b'<c r="%b%b"%b>%b</c>' % (letters, number, attributes, inside)
                cell = self._parsed(b"%b<row>%b</row></worksheet>" % (opening, written))
            else:
                continue
            if _is_filled(cell):
                yield row, column, cell

    def _plain_cell(self, kind: bytes, described: bytes | None, formula: bytes, stored: bytes, place: Place) -> Cell:
        if kind == b"s":
            value = self.strings[int(stored)]
        else:
            value = value_of(kind.decode() if kind else "n", plain.text(stored), self.strings)
        if described is None:
            return Cell(value)
        return Cell(value, self._formula(plain.text(formula or b""), *_shared_as(described), place))

    def by_parser(self, stream: IO[bytes]) -> bool:
        """Put the rows of any sheet. Returns whether it is protected."""
        row, is_protected = 0, False
        last = MOST_COLUMNS if self.columns is None else max(self.columns, default=0)
        for line in streamed(stream, "row", "sheetProtection"):
            if line.tag.endswith("}sheetProtection"):
                is_protected = is_on(line.get("sheet"))
                continue
            # A row or a cell without a number follows the one before.
            row = int(line.get("r", row + 1))
            column, cells = 0, {}
            for element in line:
                reference = element.get("r")
                column = column_of(reference) if reference else column + 1
                if column > last:
                    break
                if len(element) and (self.columns is None or column in self.columns):
                    cell = self._element(element, (row, column))
                    if _is_filled(cell):
                        cells[column] = cell
            release(line)
            if cells:
                self.put(range(row, row + 1), cells)
        return is_protected

    def _parsed(self, sheet: bytes) -> Cell:
        """A cell that is not plain, from a sheet that holds nothing else."""
        [element] = etree.fromstring(sheet, etree.XMLParser(**SAFELY)).iter("{*}c")
        return self._element(element, place_of(element.get("r")))

    def _element(self, element, place: Place) -> Cell:
        """A cell that was parsed."""
        value, formula = None, ""
        for part in element:
            tag = part.tag
            if tag.endswith("}v"):
                value = value_of(element.get("t", "n"), part.text or "", self.strings)
            elif tag.endswith("}f"):
                formula = self._formula(part.text or "", part.get("t") == "shared", part.get("si"), place)
            elif tag.endswith("}is"):
                value = text_of(part)
        return Cell(value, formula)

    def _formula(self, text: str, is_shared: bool, number: str | None, place: Place) -> str:
        """A formula with its "=". A shared one is stored in its first cell only, and copied or moved to the others."""
        if not is_shared:
            return f"={text}" if text else ""
        if text:
            self.shared[number] = SharedFormula(f"={text}", cell_name(place))
            return f"={text}"
        first = self.shared.get(number)
        return first.in_cell(cell_name(place)) if first else "="


def _is_filled(cell: Cell) -> bool:
    return cell.formula != "" or cell.value not in (None, "")


def _shared_as(described: bytes) -> tuple[bool, str | None]:
    """Whether a formula with these attributes is shared, and its number among the shared ones."""
    number = _NUMBER_OF.search(described)
    return b' t="shared"' in described, number[1].decode() if number else None


@cache
def _cell_pattern(columns: frozenset[int] | None) -> re.Pattern[bytes]:
    """The pattern of a filled cell in one of these columns."""
    letters = b"[A-Z]{1,3}" if columns is None else "|".join(map(get_column_letter, sorted(columns))).encode()
    return re.compile(_CELL % letters, re.DOTALL)
