"""Changes cells inside an .xlsx file and leaves every other byte of it alone.

A spreadsheet library would load the workbook and write its own idea of it. A check must
not do that: the copy that an engine gets is to be the workbook itself, with other cached
values (`with_cached`) or other inputs (`with_values`). So the sheets are parsed only to
learn where each cell stands, and new cells are spliced into the text: name spaces,
prefixes and unknown attributes survive because nobody rewrites them.
"""

import re
from bisect import insort
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from posixpath import join, normpath, split
from xml.etree import ElementTree
from xml.parsers import expat
from xml.sax.saxutils import escape, quoteattr
from zipfile import BadZipFile, ZipFile

from .engine import Area, Rows, Typed, Value, checked, existing, require_sheet, unreadable
from .formula_cells import FormulaCell, local_name, scan, tag_end

_ESCAPE_SHAPE = re.compile(r"_x[0-9A-Fa-f]{4}_")
_REFERENCE = re.compile(r"([A-Z]+)([0-9]+)")

Place = tuple[int, int]  # row and column, counted from 1


def with_cached(source: Path, target: Path, value: float) -> None:
    """A copy in which every formula cell's stored result is `value`, right or wrong."""

    def cached(xml: bytes) -> bytes:
        changed, copied = bytearray(), 0

        def change(cell: FormulaCell) -> None:
            nonlocal copied
            opening = _opening(cell.name, _kept(cell.attributes, cell.reference))
            changed.extend(xml[copied : cell.start] + opening + xml[slice(*cell.formula)] + _number(cell.name, value))
            copied = cell.end

        scan(xml, change)
        return bytes(changed) + xml[copied:]

    _copy(source, target, dict.fromkeys(sheet_parts(source).values(), cached))


def with_values(source: Path, target: Path, values: Mapping[Area, Rows]) -> None:
    """A copy with these cells filled or emptied, each keeping its looks; a later area wins."""
    parts = sheet_parts(source)
    wanted: dict[str, dict[Place, Value]] = {}
    for area, rows in values.items():
        require_sheet(tuple(parts), area.sheet)
        cells = wanted.setdefault(parts[area.sheet], {})
        for row, given in enumerate(checked(area, rows), area.row):
            cells |= {(row, column): value for column, value in enumerate(given, area.column)}

    def filled(cells: dict[Place, Value]) -> Callable[[bytes], bytes]:
        def change(xml: bytes) -> bytes:
            data = _sheet_data(xml)
            present = dict(_places(data))
            blank = _blank_cell(data)
            return _put(xml, data, {
                place: _valued(present.get(place, blank), place, value)
                for place, value in cells.items()
                if place in present or value is not None
            })
        return change

    _copy(source, target, {part: filled(cells) for part, cells in wanted.items()})


# The package: which part holds which sheet, and the copy.

_OFFICE = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}"
_SHEETS = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}sheets"


def sheet_parts(source: Path) -> dict[str, str]:
    """The part of every worksheet by the name on its tab, in the order of the tabs."""
    try:
        with ZipFile(existing(source)) as package:
            root = _targets(package, "", "_rels/.rels")
            book = next(part for kind, part in root.values() if kind.endswith("/officeDocument"))
            folder, name = split(book)
            related = _targets(package, folder, join(folder, "_rels", f"{name}.rels"))
            sheets = ElementTree.fromstring(package.read(book)).find(_SHEETS)
            pairs = [(sheet.get("name"), related[sheet.get(f"{_OFFICE}id")]) for sheet in sheets]
            return {name: part for name, (kind, part) in pairs if kind.endswith("/worksheet")}
    except (BadZipFile, KeyError, StopIteration, TypeError, ElementTree.ParseError) as reason:
        raise unreadable(source, "The package editor", reason) from None


def _targets(package: ZipFile, folder: str, part: str) -> dict[str, tuple[str, str]]:
    """Kind and full part name of every relationship in a .rels part."""
    return {
        relation.get("Id"): (
            relation.get("Type"),
            normpath(join("/", folder, relation.get("Target"))).lstrip("/"),
        )
        for relation in ElementTree.fromstring(package.read(part))
    }


def _copy(source: Path, target: Path, changes: Mapping[str, Callable[[bytes], bytes]]) -> None:
    with ZipFile(source) as before, ZipFile(target, "w") as after:
        for entry in before.infolist():
            content = before.read(entry)
            if entry.filename in changes:
                content = changes[entry.filename](content)
            after.writestr(entry, content)


# Where the cells stand in a sheet's text.


@dataclass
class _Element:
    """An element of the sheet's data: its name as written, and where its text lies."""

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


def _rows(data: _Element):
    """Every row with its number, which a writer may leave out when it follows the last."""
    number = 0
    for row in data.children:
        number = int(row.attributes.get("r", number + 1))
        yield number, row


def _cells(number: int, row: _Element):
    column = 0
    for cell in row.children:
        reference = cell.attributes.get("r")
        column = _place(reference)[1] if reference else column + 1
        yield (number, column), cell


def _places(data: _Element):
    for number, row in _rows(data):
        yield from _cells(number, row)


def _place(reference: str) -> Place:
    letters, row = _REFERENCE.fullmatch(reference).groups()
    column = 0
    for letter in letters:
        column = column * 26 + ord(letter) - ord("A") + 1
    return int(row), column


def _reference(place: Place) -> str:
    row, column = place
    letters = ""
    while column:
        column, letter = divmod(column - 1, 26)
        letters = chr(ord("A") + letter) + letters
    return f"{letters}{row}"


# New text for cells, and the splice.


def _sibling(name: str, local: str) -> str:
    """A name in the same name space, under the prefix that this sheet uses."""
    return name[: -len(local_name(name))] + local


def _blank_cell(data: _Element) -> _Element:
    return _Element(_sibling(data.name, "c"), {}, 0, 0)


def _number(cell: str, value: float) -> bytes:
    tag = _sibling(cell, "v")
    return f"<{tag}>{value!r}</{tag}>".encode()


def _kept(attributes: Mapping[str, str], reference: str, kind: str = "") -> dict[str, str]:
    """A cell's attributes with other content: what described the old result (t, cm, vm) is gone."""
    kept = {key: value for key, value in attributes.items() if key not in ("t", "cm", "vm")}
    return kept | {"r": reference} | ({"t": kind} if kind else {})


def _cell(cell: _Element, place: Place, content: bytes, kind: str = "") -> bytes:
    return _tag(cell.name, _kept(cell.attributes, _reference(place), kind), content)


def _opening(name: str, attributes: Mapping[str, str]) -> bytes:
    return f"<{name}{''.join(f' {key}={quoteattr(value)}' for key, value in attributes.items())}>".encode()


def _tag(name: str, attributes: Mapping[str, str], content: bytes) -> bytes:
    return _opening(name, attributes) + content + f"</{name}>".encode()


def _valued(cell: _Element, place: Place, value: Value) -> bytes:
    if value is None:
        return _cell(cell, place, b"")
    if isinstance(value, bool):
        return _cell(cell, place, _number(cell.name, int(value)), "b")
    if isinstance(value, Typed):
        return _cell(cell, place, _tag(_sibling(cell.name, "f"), {}, escape(value.formula.removeprefix("=")).encode()))
    if isinstance(value, float):
        return _cell(cell, place, _number(cell.name, value))
    if _ESCAPE_SHAPE.search(value):
        # The format takes _x0041_ for the letter A; Gnumeric does not, nor its escape.
        raise ValueError(f"{value!r} holds a code that programs read in different ways.")
    inner = _tag(_sibling(cell.name, "t"), {"xml:space": "preserve"}, escape(value).encode())
    return _cell(cell, place, _tag(_sibling(cell.name, "is"), {}, inner), "inlineStr")


def _put(xml: bytes, data: _Element, cells: Mapping[Place, bytes]) -> bytes:
    """The sheet with these cells in place; rows without any of them keep their bytes."""
    new: dict[int, dict[int, bytes]] = {}
    for (row, column), content in cells.items():
        new.setdefault(row, {})[column] = content
    written = [
        (number, _row(xml, row, number, new.pop(number)) if number in new else row.text(xml))
        for number, row in _rows(data)
    ]
    missing = _Element(_sibling(data.name, "row"), {}, 0, 0)
    for number, columns in new.items():
        insort(written, (number, _row(xml, missing, number, columns)))
    inside = b"".join(content for _, content in written)
    return xml[: data.start] + _tag(data.name, data.attributes, inside) + xml[data.end :]


def _row(xml: bytes, row: _Element, number: int, new: Mapping[int, bytes]) -> bytes:
    present = {column: cell.text(xml) for (_, column), cell in _cells(number, row)}
    cells = present | dict(new)
    kept = {key: value for key, value in row.attributes.items() if key != "spans"}
    return _tag(
        row.name, kept | {"r": str(number)}, b"".join(cells[column] for column in sorted(cells))
    )
