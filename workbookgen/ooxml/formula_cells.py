"""The formula cells of a sheet, found in one pass over its XML.

A planner may hold a million of them, so nothing is kept in memory: each is handed over as
it is found, with its position in the bytes, which only Expat gives.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from xml.parsers import expat

from workbookgen.ooxml.references import cell_name, column_of

_TAG = re.compile(rb"""<(?:[^>"']|"[^"]*"|'[^']*')*>""")


@dataclass
class FormulaCell:
    """A cell that holds a formula.

    `start`, `formula` and `end` are byte positions: of its start tag, of the formula, of its end tag.
    """

    name: str
    attributes: dict[str, str]
    reference: str
    start: int
    formula: tuple[int, int] = (0, 0)
    end: int = 0
    kind: dict[str, str] | None = None  # the attributes of the formula
    text: str = ""


def scan(xml: bytes, found: Callable[[FormulaCell], None]) -> None:
    """Hand over every formula cell of a sheet, in the order of the file."""
    _Scanner(xml, found).run()


class _Scanner:
    def __init__(self, xml: bytes, found: Callable[[FormulaCell], None]):
        self.xml, self.found = xml, found
        self.parser = expat.ParserCreate()
        self.parser.StartElementHandler, self.parser.EndElementHandler = self.start, self.end
        self.in_data = False
        self.row = self.column = 0  # a number may be left out if it is the next one
        self.cell: FormulaCell | None = None

    def run(self) -> None:
        self.parser.Parse(self.xml, True)

    def start(self, name: str, attributes: dict[str, str]) -> None:
        local = local_name(name)
        if local == "sheetData":
            self.in_data = True
        elif not self.in_data:
            return
        elif local == "row":
            self.row, self.column = int(attributes.get("r", self.row + 1)), 0
        elif local == "c":
            reference = attributes.get("r") or cell_name((self.row, self.column + 1))
            self.column = column_of(reference)
            self.cell = FormulaCell(name, attributes, reference, self.parser.CurrentByteIndex)
        elif local == "f" and self.cell:
            at = self.parser.CurrentByteIndex
            self.cell.kind, self.cell.formula = attributes, (at, tag_end(self.xml, at))
            self.parser.CharacterDataHandler = self.read

    def read(self, text: str) -> None:
        self.cell.text += text

    def end(self, name: str) -> None:
        local = local_name(name)
        if local == "sheetData":
            self.in_data = False
        elif self.cell is None:
            return
        elif local == "f":
            self.parser.CharacterDataHandler = None
            start, inside = self.cell.formula
            if self.xml[inside - 2 : inside] != b"/>":
                self.cell.formula = start, tag_end(self.xml, self.parser.CurrentByteIndex)
        elif local == "c":
            if self.cell.kind is not None:
                self.cell.end = self.parser.CurrentByteIndex
                self.found(self.cell)
            self.cell = None


@lru_cache(64)
def local_name(name: str) -> str:
    """A name without its prefix."""
    return name.rpartition(":")[2]


def tag_end(xml: bytes, start: int) -> int:
    """The position after the tag that starts here."""
    return _TAG.match(xml, start).end()
