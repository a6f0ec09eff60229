"""Changing cells inside a package, and leaving every other byte of it alone.

A spreadsheet library would load the workbook and write its own version of it. Here the sheets
are parsed only to find each cell, and new cells are spliced into the text: namespaces, prefixes
and unknown attributes survive because nothing rewrites them. The parser is Expat, since it gives
the byte that it is at.
"""

import re
from bisect import insort
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from xml.parsers import expat
from xml.sax.saxutils import escape, quoteattr
from zipfile import ZIP_DEFLATED, ZipFile

from workbookgen.ooxml import plain
from workbookgen.ooxml.formula_cells import FormulaCell, local_name, scan, tag_end
from workbookgen.ooxml.package import Package
from workbookgen.ooxml.references import Place, cell_name, column_of


@dataclass(frozen=True)
class Formula:
    """A formula to put into a cell, without its "="."""

    text: str


Content = float | str | bool | Formula | None

QUICKLY = 1  # compression level of a copy, which is read once or twice and thrown away
PIECE = 4 * 2**20  # bytes of a sheet that are changed at a time

# A cell with a formula: its reference and style, then its type, the formula, and the stored result.
_FORMULA_CELL = re.compile(
    rb'(<c r="[A-Z]{1,3}[0-9]{1,7}"(?: s="[0-9]+")?)(?: t="[a-z]+")?>'
    rb"(<f(?: [^>']*)?(?:(?<=/)>|>%b</f>))"
    % plain.TEXT
    + rb'(?:<v(?: xml:space="preserve")?>%b</v>|<v/>)?</c>' % plain.TEXT
)
_ROW_ENDS = b"</row>"


def rewritten(source: Path, target: Path, changes: Mapping[str, Callable[[bytes], Iterable[bytes]]]) -> None:
    """Copy a package with changes: part -> a function from its content to the new content, in pieces."""
    with Package(source) as before, ZipFile(target, "w", ZIP_DEFLATED, compresslevel=QUICKLY) as after:
        for entry in before.zip.infolist():
            content = before.zip.read(entry)
            with after.open(entry.filename, "w") as part:
                for piece in changes.get(entry.filename, _whole)(content):
                    part.write(piece)


def _whole(content: bytes) -> Iterable[bytes]:
    return (content,)


def recached(xml: bytes, value: float) -> Sequence[bytes]:
    """A sheet in which every formula cell's stored result is `value`, in pieces."""
    return _recached_plainly(xml, value) or (_recached(xml, value),)


def _recached_plainly(xml: bytes, value: float) -> list[bytes] | None:
    """The same, found by bytes; None if a formula cell is not written as programs usually write."""
    start, end = plain.cells_in(xml)
    if not plain.is_plain(xml, "worksheet"):
        return None
    stored = _number("c", value)

    def put(cell: re.Match[bytes]) -> bytes:  # twice as fast as a template, which is expanded for each cell
        return b"%b>%b%b</c>" % (cell[1], cell[2], stored)

    pieces, left = [xml[:start]], xml.count(b"<f", start, end)
    while start < end:  # some rows at a time, since a large planner has a hundred megabytes of them
        row_ends = xml.find(_ROW_ENDS, start + PIECE, end)
        stop = end if row_ends < 0 else row_ends
        piece, times = _FORMULA_CELL.subn(put, xml[start:stop])
        pieces.append(piece)
        start, left = stop, left - times
    return None if left else [*pieces, xml[end:]]


def _recached(xml: bytes, value: float) -> bytes:
    changed, copied = bytearray(), 0

    def change(cell: FormulaCell) -> None:
        nonlocal copied
        opening = _opening(cell.name, _kept(cell.attributes, cell.reference))
        changed.extend(xml[copied : cell.start] + opening + xml[slice(*cell.formula)] + _number(cell.name, value))
        copied = cell.end

    scan(xml, change)
    return bytes(changed) + xml[copied:]


def filled(xml: bytes, cells: Mapping[Place, Content]) -> Sequence[bytes]:
    """A sheet with these cells filled or emptied, each with its old style."""
    data = _sheet_data(xml)
    present, blank = dict(_places(data)), _blank_cell(data)
    changed = {place: value for place, value in cells.items() if place in present or value is not None}
    written = {place: _written(present.get(place, blank), place, value) for place, value in changed.items()}
    return (_put(xml, data, written),)


# The places of cells in a sheet's text.


@dataclass
class _Element:
    """An element of the sheet's data: its name as written, and where it, its content, and its end are in the bytes."""

    name: str
    attributes: dict[str, str]
    start: int
    inside: int
    end: int = 0
    children: list["_Element"] = field(default_factory=list)

    def child(self, local: str) -> "_Element | None":
        return next((child for child in self.children if local_name(child.name) == local), None)

    def text(self, xml: bytes) -> bytes:
        return xml[self.start : self.end]


def _sheet_data(xml: bytes) -> _Element:
    """The sheetData element with its rows and cells."""
    document = _Element("", {}, 0, 0)
    opened = [document]
    parser = expat.ParserCreate()

    def start(name: str, attributes: dict[str, str]) -> None:
        if len(opened) > 1 or local_name(name) == "sheetData":
            at = parser.CurrentByteIndex
            element = _Element(name, attributes, at, tag_end(xml, at))
            opened[-1].children.append(element)
            opened.append(element)

    def end(name: str) -> None:
        if len(opened) > 1:
            element = opened.pop()
            if xml[element.inside - 2 : element.inside] == b"/>":
                element.end = element.inside
            else:
                element.end = xml.index(b">", parser.CurrentByteIndex) + 1

    parser.StartElementHandler, parser.EndElementHandler = start, end
    parser.Parse(xml, True)
    return document.children[0]


def _numbered(data: _Element):
    """Every row with its number, which may be left out if it is the next one."""
    number = 0
    for row in data.children:
        number = int(row.attributes.get("r", number + 1))
        yield number, row


def _cells(number: int, row: _Element):
    column = 0
    for cell in row.children:
        reference = cell.attributes.get("r")
        column = column_of(reference) if reference else column + 1
        yield (number, column), cell


def _places(data: _Element):
    for number, row in _numbered(data):
        yield from _cells(number, row)


# New text for cells, and the splice.


def _sibling(name: str, local: str) -> str:
    """A name in the same namespace, with the prefix that this sheet uses."""
    return name[: -len(local_name(name))] + local


def _blank_cell(data: _Element) -> _Element:
    return _Element(_sibling(data.name, "c"), {}, 0, 0)


def _number(cell: str, value: float) -> bytes:
    tag = _sibling(cell, "v")
    return f"<{tag}>{value!r}</{tag}>".encode()


def _kept(attributes: Mapping[str, str], reference: str, kind: str = "") -> dict[str, str]:
    """A cell's attributes for new content, without those that describe the old (t, cm, vm)."""
    kept = {key: value for key, value in attributes.items() if key not in ("t", "cm", "vm")}
    return kept | {"r": reference} | ({"t": kind} if kind else {})


def _cell(cell: _Element, place: Place, content: bytes, kind: str = "") -> bytes:
    return _tag(cell.name, _kept(cell.attributes, cell_name(place), kind), content)


def _opening(name: str, attributes: Mapping[str, str]) -> bytes:
    return f"<{name}{''.join(f' {key}={quoteattr(value)}' for key, value in attributes.items())}>".encode()


def _tag(name: str, attributes: Mapping[str, str], content: bytes) -> bytes:
    return _opening(name, attributes) + content + f"</{name}>".encode()


def _written(cell: _Element, place: Place, value: Content) -> bytes:
    match value:
        case None:
            return _cell(cell, place, b"")
        case bool():
            return _cell(cell, place, _number(cell.name, int(value)), "b")
        case Formula(text):
            return _cell(cell, place, _tag(_sibling(cell.name, "f"), {}, escape(text).encode()))
        case float():
            return _cell(cell, place, _number(cell.name, value))
    inner = _tag(_sibling(cell.name, "t"), {"xml:space": "preserve"}, escape(value).encode())
    return _cell(cell, place, _tag(_sibling(cell.name, "is"), {}, inner), "inlineStr")


def _put(xml: bytes, data: _Element, cells: Mapping[Place, bytes]) -> bytes:
    """The sheet with these cells in place; rows without any of them keep their bytes."""
    new: dict[int, dict[int, bytes]] = {}
    for (row, column), content in cells.items():
        new.setdefault(row, {})[column] = content
    written = []
    for number, row in _numbered(data):
        content = _row(xml, row, number, new.pop(number)) if number in new else row.text(xml)
        written.append((number, content))
    missing = _Element(_sibling(data.name, "row"), {}, 0, 0)
    for number, columns in new.items():
        insort(written, (number, _row(xml, missing, number, columns)))
    inside = b"".join(content for _, content in written)
    return xml[: data.start] + _tag(data.name, data.attributes, inside) + xml[data.end :]


def _row(xml: bytes, row: _Element, number: int, new: Mapping[int, bytes]) -> bytes:
    present = {column: cell.text(xml) for (_, column), cell in _cells(number, row)}
    cells = present | dict(new)
    kept = {key: value for key, value in row.attributes.items() if key != "spans"}
    return _tag(row.name, kept | {"r": str(number)}, b"".join(cells[column] for column in sorted(cells)))
