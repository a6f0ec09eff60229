"""The filled cells of a worksheet: their values and formulas.

Three ways give the same. Plain cells are found by their bytes; a cell that is not plain is parsed
by itself; and a sheet that is not written as programs usually write is streamed through the
parser, a row at a time, so that it is never in memory as a whole.
"""

import re
from collections.abc import Callable, Collection, Sequence
from functools import cache
from typing import IO
from xml.parsers import expat

from lxml import etree
from openpyxl.utils import column_index_from_string, get_column_letter

from workbookgen.ooxml import plain
from workbookgen.ooxml.formulas import SharedFormula
from workbookgen.ooxml.package import SAFELY, Package, is_on, release, streamed
from workbookgen.ooxml.references import MOST_COLUMNS, Place, cell_name, column_of, place_of
from workbookgen.ooxml.strings import text_of
from workbookgen.ooxml.values import Value, value_of

Put = Callable[[Place, Value, str], None]  # the place, the value, and the formula, empty if the value was typed

# A filled cell: its column and row, then its type, formula and stored value if it is written as programs usually write,
# otherwise its attributes and its whole content.
_FORMULA = rb"<f((?: [^>']*)?)(?:(?<=/)>|>(" + plain.TEXT + rb")</f>)"
_STORED = rb"<v>(" + plain.TEXT + rb")</v>"
_CELL = (
    rb'<c r="(%b)([0-9]{1,7})"(?:(?: s="[0-9]+")?(?: t="([a-z]+)")?>'
    rb"(?:" + _FORMULA + rb")?" + _STORED + rb"</c>|([^>]*)(?<!/)>(.*?)</c>)"
)
_OTHER_CELL = re.compile(rb'<c(?! r=")')
_NUMBER_OF = re.compile(rb'\ssi="([^"]*)"')
_PROTECTION = re.compile(rb"<sheetProtection\b[^>]*/>")


def read_cells(package: Package, part: str, strings: Sequence[str], columns: Collection[int] | None, put: Put) -> bool:
    """Put every filled cell of a sheet, or of some columns of it. Returns whether the sheet is protected.

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

    def by_bytes(self, content: bytes) -> bool:
        """Put the cells of a plain sheet. Returns whether it is protected."""
        opening, put, strings = plain.opening_tag(content, "worksheet"), self.put, self.strings
        columns: dict[bytes, int] = {}
        cells = _cell_pattern(None if self.columns is None else frozenset(self.columns))
        for found in cells.finditer(content, *plain.cells_in(content)):
            letters, row, kind, described, formula, stored, attributes, inside = found.groups()
            if attributes is not None:
                if inside:
                    cell = b'<c r="%b%b"%b>%b</c>' % (letters, row, attributes, inside)
                    self._parsed(b"%b<row>%b</row></worksheet>" % (opening, cell))
                continue
            if letters not in columns:
                columns[letters] = column_index_from_string(letters.decode())
            place, text = (int(row), columns[letters]), ""
            if kind == b"s":
                value = strings[int(stored)]
            else:
                value = value_of(kind.decode() if kind else "n", plain.text(stored), strings)
            if described is not None:
                text = self._formula(plain.text(formula or b""), *_shared_as(described), place)
            if text or value not in (None, ""):
                put(place, value, text)
        protection = _PROTECTION.search(content)
        return protection is not None and is_on(etree.fromstring(protection[0]).get("sheet"))

    def by_parser(self, stream: IO[bytes]) -> bool:
        """Put the cells of any sheet. Returns whether it is protected."""
        row, is_protected = 0, False
        last = MOST_COLUMNS if self.columns is None else max(self.columns, default=0)
        for line in streamed(stream, "row", "sheetProtection"):
            if line.tag.endswith("}sheetProtection"):
                is_protected = is_on(line.get("sheet"))
                continue
            # A row or a cell without a number follows the one before.
            row = int(line.get("r", row + 1))
            column = 0
            for element in line:
                reference = element.get("r")
                column = column_of(reference) if reference else column + 1
                if column > last:
                    break
                if len(element) and (self.columns is None or column in self.columns):
                    self._element(element, (row, column))
            release(line)
        return is_protected

    def _parsed(self, sheet: bytes) -> None:
        """Put a cell that is not plain, from a sheet that holds nothing else."""
        for element in etree.fromstring(sheet, etree.XMLParser(**SAFELY)).iter("{*}c"):
            self._element(element, place_of(element.get("r")))

    def _element(self, element, place: Place) -> None:
        value, formula = None, ""
        for part in element:
            tag = part.tag
            if tag.endswith("}v"):
                value = value_of(element.get("t", "n"), part.text or "", self.strings)
            elif tag.endswith("}f"):
                formula = self._formula(part.text or "", part.get("t") == "shared", part.get("si"), place)
            elif tag.endswith("}is"):
                value = text_of(part)
        if formula or value not in (None, ""):
            self.put(place, value, formula)

    def _formula(self, text: str, is_shared: bool, number: str | None, place: Place) -> str:
        """A formula with its "=". A shared one is stored in its first cell only, and moved to the others."""
        if not is_shared:
            return f"={text}" if text else ""
        if text:
            self.shared[number] = SharedFormula(f"={text}", cell_name(place))
            return f"={text}"
        first = self.shared.get(number)
        return first.moved_to(cell_name(place)) if first else "="


def _shared_as(described: bytes) -> tuple[bool, str | None]:
    """Whether a formula with these attributes is shared, and its number among the shared ones."""
    number = _NUMBER_OF.search(described)
    return b' t="shared"' in described, number[1].decode() if number else None


@cache
def _cell_pattern(columns: frozenset[int] | None) -> re.Pattern[bytes]:
    """The pattern of a filled cell in one of these columns."""
    letters = b"[A-Z]{1,3}" if columns is None else "|".join(map(get_column_letter, sorted(columns))).encode()
    return re.compile(_CELL % letters, re.DOTALL)
