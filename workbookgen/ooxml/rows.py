"""Rows of a sheet that are alike: the same byte for byte, except for the row number in their references.

Most lines of a log are. Then only some thousands of a million cells need to be parsed, since all such rows have what
the first of them has.
"""

import re
from dataclasses import dataclass

from workbookgen.ooxml import plain

_ROW = re.compile(rb'<row r="([0-9]+)"[^>]*>')
_NUMBER = re.compile(rb'(<row r="|<c r="[A-Z]{1,3})([0-9]+)(?=")')
_ANY_ROW = re.compile(rb"<row[\s/>]")


@dataclass(frozen=True)
class Alike:
    """A group of consecutive rows that are alike, perhaps of one row, and its position in the sheet's XML."""

    first: int
    last: int
    xml: bytes  # of the first
    start: int
    end: int


def as_sheet_data(row: bytes) -> bytes:
    """A row in an element of its own, so that it can be parsed without its sheet."""
    return b"<sheetData>%b</sheetData>" % row


def alike(xml: bytes) -> list[Alike] | None:
    """All rows of a sheet in groups; None if it is not written as programs usually write."""
    if not plain.is_plain(xml, "worksheet"):
        return None
    found, at = [], 0
    while row := _ROW.search(xml, at):
        start, number = row.start(), int(row[1])
        end = row.end() if row[0].endswith(b"/>") else xml.find(b"</row>", row.end()) + len(b"</row>")
        if end < row.end():
            return None  # the file ends within a row
        first, last, parts = xml[start:end], number, _parts(xml[start:end], number)
        while parts and xml.startswith(following := _joined(parts, last + 1), end):
            last += 1
            end += len(following)
        found.append(Alike(number, last, first, start, end))
        at = end
    is_whole = sum(each.last - each.first + 1 for each in found) == len(_ANY_ROW.findall(xml))
    return found if is_whole else None


def _parts(row: bytes, number: int) -> list[bytes] | None:
    """The bytes between the row's numbers; None if a cell has the number of another row."""
    pieces = _NUMBER.split(row)
    if set(pieces[2::3]) != {b"%d" % number}:
        return None
    return [*(before + opening for before, opening in zip(pieces[::3], pieces[1::3], strict=False)), pieces[-1]]


def _joined(parts: list[bytes], number: int) -> bytes:
    return (b"%d" % number).join(parts)
