"""Reading an .ods package: OpenDocument, ISO/IEC 26300, as LibreOffice saves it.

Each cell states whether it is a number, a date or a text. Cells and rows that repeat are stored once, with a count.
Formulas are in OpenFormula, and are written as in .xlsx here, so that later code need not know the format.
"""

import re
from dataclasses import replace

from lxml import etree

from workbookgen.filled.cells import Cell, Cells, Choice, Contents, UnknownForm
from workbookgen.ooxml.package import SAFELY, Package
from workbookgen.ooxml.values import ErrorValue, Value, days, number
from workbookgen.texts import is_blank

WHOLE = SAFELY | {"huge_tree": True}  # one part holds all sheets

TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
CALCEXT = "{urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0}"
CELLS = {f"{TABLE}table-cell", f"{TABLE}covered-table-cell"}

_DURATION = re.compile(r"(-?)P(?:(\d+)D)?T(?:(\d+)H)?(?:(\d+)M)?(?:([\d.]+)S)?")
_PIECES = re.compile(r'"(?:[^"]|"")*"|\[[^\]]*\]|;')
_ERRORS = re.compile(r"#[A-Z/0]+[!?]?|#N/A|Err:\d+")


def read(package: Package, choice: Choice) -> Contents:
    """The contents of a workbook, with the cells of the chosen sheets; all are read, since the names come last."""
    contents = Contents((), {})
    sheet, row = None, 0
    with package.open("content.xml") as stream:
        ends = f"{TABLE}table", f"{TABLE}table-row", f"{TABLE}named-range", f"{OFFICE}spreadsheet"
        for event, element in etree.iterparse(stream, events=("start", "end"), tag=ends, **WHOLE):
            if event == "start":
                if element.tag == f"{TABLE}table" and sheet is None:
                    sheet, row = element.get(f"{TABLE}name"), 0
                    contents.sheet_names += (sheet,)
                    contents.sheets[sheet], contents.comments[sheet] = Cells(), {}
                    if element.get(f"{TABLE}protected") == "true":
                        contents.protected.add(sheet)
            elif element.tag == f"{TABLE}table-row":
                row = _row(contents, sheet, row, element)
                element.clear()
            elif element.tag == f"{TABLE}named-range":
                if sheet is None:  # a name local to one sheet is not ours
                    cells = _formula(f"[{element.get(f'{TABLE}cell-range-address', '')}]")
                    contents.names.setdefault(element.get(f"{TABLE}name"), cells)
            elif element.tag == f"{TABLE}table":
                sheet = None
                element.clear()
    if not contents.sheet_names:
        raise UnknownForm("it has no sheets in it")
    return _chosen(contents, choice(contents.sheet_names, contents.names))


def _chosen(contents: Contents, choice: dict[str, set[int] | None]) -> Contents:
    """The chosen part, with formulas as in .xlsx; they are converted last, since that is most of the work."""
    sheets = {
        name: cells.rewritten(choice[name], _formula) for name, cells in contents.sheets.items() if name in choice
    }
    return replace(contents, sheets=sheets, comments={name: contents.comments[name] for name in sheets})


def _row(contents: Contents, sheet: str, before: int, line) -> int:
    """Put a row's cells into all rows that it stands for; returns the number of the last one."""
    last = before + int(line.get(f"{TABLE}number-rows-repeated", 1))
    column, cells = 0, {}
    for element in line:
        if element.tag not in CELLS:
            continue
        columns = int(element.get(f"{TABLE}number-columns-repeated", 1))
        if len(element) or element.get(f"{OFFICE}value-type") or element.get(f"{TABLE}formula"):
            cell = Cell(_value(element), element.get(f"{TABLE}formula", ""))
            note = element.find(f"{OFFICE}annotation")
            if note is not None:
                contents.comments[sheet][before + 1, column + 1] = _text(note)
            if cell.value not in (None, "") or cell.formula:
                contents.require_room(columns)
                cells |= dict.fromkeys(range(column + 1, column + columns + 1), cell)
        column += columns
    if cells:
        contents.put(sheet, range(before + 1, last + 1), cells)
    return last


def _value(element) -> Value:
    if element.get(f"{CALCEXT}value-type") == "error":
        return ErrorValue(_text(element))
    match element.get(f"{OFFICE}value-type"):
        case None:
            # A result of nothing has no kind, though its number format may show spaces.
            return None if is_blank(shown := _text(element)) else shown
        case "float" | "percentage" | "currency":
            # A cell that shows an error may call itself a number, but has none.
            shown = _text(element)
            return ErrorValue(shown) if _ERRORS.fullmatch(shown) else number(element.get(f"{OFFICE}value"))
        case "date":
            return days(element.get(f"{OFFICE}date-value"))
        case "time":
            return _part_of_days(element.get(f"{OFFICE}time-value"))
        case "boolean":
            return element.get(f"{OFFICE}boolean-value") == "true"
    stored = element.get(f"{OFFICE}string-value")
    return _text(element) if stored is None else stored


def _part_of_days(duration: str) -> float:
    sign, days, hours, minutes, seconds = _DURATION.fullmatch(duration).groups()
    total = float(days or 0) * 86_400 + float(hours or 0) * 3_600 + float(minutes or 0) * 60 + float(seconds or 0)
    return (-1 if sign else 1) * total / 86_400


def _text(element) -> str:
    """The paragraphs of a cell or a note, one line each; a note pinned to a cell is not part of its text."""
    return "\n".join(_words(each) for each in element if each.tag == f"{TEXT}p")


def _words(element) -> str:
    said = [element.text or ""]
    for each in element:
        match each.tag:
            case _ if each.tag == f"{TEXT}s":
                said.append(" " * int(each.get(f"{TEXT}c", 1)))
            case _ if each.tag == f"{TEXT}tab":
                said.append("\t")
            case _ if each.tag == f"{TEXT}line-break":
                said.append("\n")
            case _:
                said.append(_words(each))
        said.append(each.tail or "")
    return "".join(said)


def _formula(text: str) -> str:
    """OpenFormula as .xlsx writes it: `of:=[.A1]*[$Reels.$B$2:.$B$9]` is `=A1*Reels!$B$2:$B$9`."""
    return _PIECES.sub(_piece, text.partition(":")[2] if re.match(r"\w+:=", text) else text)


def _piece(found: re.Match) -> str:
    piece = found[0]
    if piece == ";":
        return ","
    if piece.startswith('"'):
        return piece
    first, _, last = piece[1:-1].partition(":")
    sheet, _, cell = first.rpartition(".")
    prefix = f"{sheet.lstrip('$')}!" if sheet else ""
    return prefix + cell + (f":{last.rpartition('.')[2]}" if last else "")
