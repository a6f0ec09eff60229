"""Reading an .xlsx package: Office Open XML, ISO/IEC 29500.

Only what a person could have entered is taken: values, formulas, notes and the names of
ranges. Each sheet is streamed, so that one is never in memory as a whole. Tags are matched
without their namespace, since the strict and the usual form of the format differ in it.
"""

import io
import posixpath
import re
import zipfile
from datetime import datetime
from functools import cache

from lxml import etree
from openpyxl.utils import column_index_from_string, coordinate_to_tuple, get_column_letter
from openpyxl.utils.escape import unescape

from workbookgen.engines import ErrorValue
from workbookgen.engines.formulas import SharedFormula
from workbookgen.filled.cells import Cell, Choice, Contents, Position, UnknownForm, Value, number

SAFELY = {"resolve_entities": False, "no_network": True, "load_dtd": False}
MOST_COLUMNS = 16_384
# Of a sheet as programs write it: where it begins, a cell that first says where it is, any cell, and what no program writes there.
_ROOT = re.compile(rb"<worksheet\b[^>]*>")
_PLAIN_CELL, _ANY_CELL = b'<c r="', re.compile(rb"<c[\s/>]")
_PROTECTION = re.compile(rb"<sheetProtection\b[^>]*/>")
_UNUSUAL = re.compile(rb"<!|<\?(?!xml\s)")
DAY_NOUGHT = datetime(1899, 12, 30)  # serial number 0, as days are counted since March 1900


def read(package: zipfile.ZipFile, choice: Choice) -> Contents:
    """The contents of a workbook; cells of the chosen sheets and columns only."""
    main = _target(package, "", "officeDocument")
    if main is None:
        raise UnknownForm("it has no workbook in it")
    workbook = _parsed(package, main)
    paths = _related(package, main)
    sheets = {each.get("name"): paths.get(_attribute(each, "id")) for each in workbook.iterfind("{*}sheets/{*}sheet")}
    settings = workbook.find("{*}workbookPr")
    contents = Contents(
        tuple(sheets),
        {
            each.get("name"): each.text or ""
            for each in workbook.iterfind("{*}definedNames/{*}definedName")
            if each.get("localSheetId") is None
        },
        counts_from_1904=settings is not None and settings.get("date1904") in ("1", "true"),
    )
    strings = _strings(package, main)
    members, chosen = set(package.namelist()), choice(contents.sheet_names, contents.names)
    for name, path in sheets.items():
        if path in members and name in chosen:
            contents.sheets[name] = {}
            with package.open(path) as stream:
                _sheet(contents, name, stream if chosen[name] is None else _cut_out(stream, chosen[name]), strings, chosen[name])
            if chosen[name] is None:
                contents.comments[name] = _comments(package, path)
    return contents


def _cut_out(stream, columns: set[int]):
    """What a sheet holds in some columns, as a sheet that holds nothing else, or the whole where it is written in an unusual way.

    Most cells of a planner are formulas, and to find a cell's bytes takes a tenth of the time that it takes to parse them.
    """
    text = stream.read()
    root = _ROOT.search(text)
    if not root or _UNUSUAL.search(text) or text.count(_PLAIN_CELL) != len(_ANY_CELL.findall(text)):
        return io.BytesIO(text)
    rows: dict[bytes, list[bytes]] = {}
    for cell in _cells_of(frozenset(columns)).finditer(text):
        rows.setdefault(cell[1], []).append(cell[0])
    protection = _PROTECTION.search(text)
    inside = b"".join(b'<row r="%b">%b</row>' % (row, b"".join(cut)) for row, cut in rows.items())
    return io.BytesIO(b"%b%b%b</worksheet>" % (text[: root.end()], inside, protection[0] if protection else b""))


@cache
def _cells_of(columns: frozenset[int]) -> re.Pattern[bytes]:
    """The bytes of a cell in one of these columns, and its row."""
    letters = "|".join(map(get_column_letter, sorted(columns))).encode()
    return re.compile(rb'<c r="(?:%b)([0-9]{1,7})"[^>]*(?:(?<=/)>|>.*?</c>)' % letters, re.DOTALL)


def _sheet(contents: Contents, name: str, stream, strings: list[str], columns: set[int] | None) -> None:
    """Takes over the cells of a sheet, a row at a time."""
    shared: dict[str, SharedFormula] = {}
    row, last = 0, max(columns) if columns else MOST_COLUMNS
    for _, line in etree.iterparse(stream, tag=("{*}row", "{*}sheetProtection"), **SAFELY):
        if line.tag.endswith("}sheetProtection"):
            if line.get("sheet") in ("1", "true"):
                contents.protected.add(name)
            continue
        row, column = int(line.get("r", row + 1)), 0  # a row or a cell may leave out where it is: then it follows the last one
        for element in line:
            place = element.get("r")
            column = _column(place) if place else column + 1
            if column > last:
                break
            if len(element) and (columns is None or column in columns):
                cell = _cell(element, strings, shared, row, column)
                if cell.formula or cell.value not in (None, ""):
                    contents.put(name, (row, column), cell)
        line.clear()
        while line.getprevious() is not None:
            del line.getparent()[0]


def _cell(element, strings: list[str], shared: dict[str, SharedFormula], row: int, column: int) -> Cell:
    value: Value = None
    formula = ""
    for part in element:
        tag = part.tag
        if tag.endswith("}v"):
            value = _value(element.get("t", "n"), part.text or "", strings)
        elif tag.endswith("}f"):
            formula = _formula(part, shared, row, column)
        elif tag.endswith("}is"):
            value = _text(part)
    return Cell(value, formula)


def _value(kind: str, text: str, strings: list[str]) -> Value:
    match kind:
        case "s":
            return strings[int(text)]
        case "str":
            return _unescaped(text)
        case "b":
            return text in ("1", "true")
        case "e":
            return ErrorValue(text)
        case "d":
            return (datetime.fromisoformat(text) - DAY_NOUGHT).total_seconds() / 86_400
    return number(text) if text else None


def _formula(part, shared: dict[str, SharedFormula], row: int, column: int) -> str:
    """A formula's text. One that is shared stands in its first cell only, and moves along to the others."""
    text = part.text or ""
    if part.get("t") != "shared":
        return f"={text}" if text else ""
    here = f"{get_column_letter(column)}{row}"
    if text:
        shared[part.get("si")] = SharedFormula(f"={text}", here)
        return f"={text}"
    first = shared.get(part.get("si"))
    return first.moved_to(here) if first else "="


def _strings(package: zipfile.ZipFile, main: str) -> list[str]:
    path = _target(package, main, "sharedStrings")
    if path is None:
        return []
    with package.open(path) as stream:
        found = []
        for _, element in etree.iterparse(stream, tag="{*}si", **SAFELY):
            only = element[0] if len(element) == 1 else None  # most strings are one run without a look of its own
            found.append(_unescaped(only.text or "") if only is not None and only.tag.endswith("}t") else _text(element))
            element.clear()
    return found


def _text(element) -> str:
    """The text of a string, its runs joined; how it is to be pronounced is no part of it."""
    said = (each.text or "" for each in element.iter("{*}t") if not each.getparent().tag.endswith("}rPh"))
    return _unescaped("".join(said))


def _unescaped(text: str) -> str:
    """A text with its escapes read. Half of a letter that takes two of them is none, and could be written to no file."""
    return unescape(text).encode("utf-16", "surrogatepass").decode("utf-16", "replace") if "_x" in text else text


def _comments(package: zipfile.ZipFile, sheet: str) -> dict[Position, str]:
    path = _target(package, sheet, "comments")
    if path is None:
        return {}
    return {coordinate_to_tuple(each.get("ref")): _text(each) for each in _parsed(package, path).iter("{*}comment")}


def _related(package: zipfile.ZipFile, part: str, kind: str = "") -> dict[str, str]:
    """The parts that a part refers to, by the name it has for each of them; only those of a kind, where it is told."""
    folder, name = posixpath.split(part)
    links = posixpath.join(folder, "_rels", f"{name}.rels")
    try:
        relations = _parsed(package, links)
    except KeyError:
        return {}
    return {
        each.get("Id"): posixpath.normpath(posixpath.join("/", folder, each.get("Target", ""))).lstrip("/")
        for each in relations
        if each.get("Type", "").endswith(f"/{kind}" if kind else "") and each.get("TargetMode") != "External"
    }


def _target(package: zipfile.ZipFile, part: str, kind: str) -> str | None:
    members = set(package.namelist())
    return next((path for path in _related(package, part, kind).values() if path in members), None)


def _parsed(package: zipfile.ZipFile, path: str):
    return etree.fromstring(package.read(path), etree.XMLParser(**SAFELY))


def _attribute(element, local: str) -> str | None:
    """An attribute that has a namespace, which differs between the forms of the format."""
    return next((value for key, value in element.attrib.items() if key.endswith(f"}}{local}")), None)


@cache
def _number(letters: str) -> int:
    return column_index_from_string(letters)


def _column(place: str) -> int:
    return _number(place.rstrip("0123456789"))
