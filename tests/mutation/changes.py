"""Every way in which one formula of a planner can be a little wrong.

A formula is cut into its pieces (texts, numbers, references, functions, signs), and each
piece is changed in each way that applies to it, one at a time: what a slip of the pen, a
row inserted in the wrong place, or a program's repair would do to it. Changes that could
not make a difference are not made: over 1 for times 1, or five digits for six.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from xlsxwriter.utility import xl_cell_to_rowcol, xl_col_to_name

from workbookgen.book.layout import Layout

PIECE = re.compile(
    r'(?P<text>"[^"]*")'
    r"|(?P<truth>1=[01])(?=[,)])"
    r"|(?P<digits>(?<=,)[69](?=\)))"
    r"|(?P<same>[*/]1(?![\d.]))"
    r"|(?P<range>(?:'[^']*'!|\w+!)?\$[A-Z]+\$\d+:\$[A-Z]+\$\d+)"
    r"|(?P<cells>\$[A-Z]+\d+:\$[A-Z]+\d+)"
    r"|(?P<cell>(?:'[^']*'!|\w+!)?\$[A-Z]+\$?\d+)"
    r"|(?P<function>[A-Z][A-Z0-9]*)(?=\()"
    r"|(?P<number>\d+\.?\d*(?:E[+-]?\d+)?)"
    r"|(?P<sign><=|>=|<>|[-+*/=<>&(),])"
)
NAME = re.compile(r'"[^"]*"|\b[a-z][a-z0-9]*_[a-z0-9_]+\b')
OTHER_SIGNS = {"+": "-", "-": "+", "*": "/", "/": "*", "<=": "<", "<": "<=", ">=": ">", ">": ">=", "=": "<>", "<>": "="}
TURNED = {"<=": ">=", ">=": "<=", "<": ">", ">": "<"}
OTHER_FUNCTIONS = {
    "AND": "OR",
    "OR": "AND",
    "MAX": "MIN",
    "MIN": "MAX",
    "SUM": "COUNT",
    "SUMPRODUCT": "SUM",
    "ROUNDUP": "ROUNDDOWN",
    "ROUNDDOWN": "ROUNDUP",
    "ROUND": "ROUNDUP",
    "SQRT": "ABS",
    "ABS": "SQRT",
    "STDEV": "AVERAGE",
    "AVERAGE": "MAX",
    "COUNT": "COUNTA",
    "COUNTA": "COUNT",
    "ISNUMBER": "ISTEXT",
    "ISTEXT": "ISNUMBER",
    "COUNTBLANK": "COUNTA",
    "NOT": "AND",
    "LEN": "COUNT",
    "EXP": "LN",
    "LN": "EXP",
    "SIN": "COS",
    "COS": "SIN",
    "TAN": "ATAN",
    "ATAN": "TAN",
    "NORMSDIST": "NORMSINV",
    "NORMSINV": "NORMSDIST",
    "LEFT": "RIGHT",
    "MEDIAN": "AVERAGE",
    "POWER": "MAX",
    "UPPER": "LOWER",
    "LOWER": "UPPER",
}
OTHER_UNITS = {
    "0.9144": "0.3048",
    "0.0254": "0.01",
    "28.349523125": "31.1034768",
    "453.59237": "500",
    "0.001": "0.1",
    "86400": "3600",
    "3600": "86400",
    "60": "3600",
}


@dataclass(frozen=True)
class Change:
    """One changed formula: what was done to it, and what it is now."""

    kind: str
    what: str
    formula: str


@dataclass(frozen=True)
class _Piece:
    kind: str
    text: str
    start: int
    end: int


def with_addresses(layout: Layout, formula: str) -> str:
    """A formula with cells of other sheets by their addresses, which can be a row or a column off, as names cannot."""
    return NAME.sub(lambda found: layout.names.get(found[0], found[0]), formula)


def changes(formula: str) -> Iterator[Change]:
    """Every change of a formula, each once."""
    pieces = [_Piece(found.lastgroup, found[0], found.start(), found.end()) for found in PIECE.finditer(formula, 1)]
    seen = {formula}
    for index, piece in enumerate(pieces):
        for kind, new in _others(piece):
            changed = formula[: piece.start] + new + formula[piece.end :]
            if changed not in seen:
                seen.add(changed)
                yield Change(kind, f"{piece.text[:40]} -> {new[:40]} at {piece.start}", changed)
        if piece.kind == "function" and piece.text in ("IF", "AND", "OR"):
            for kind, changed in _without(formula, pieces, index):
                if changed not in seen:
                    seen.add(changed)
                    yield Change(kind, f"{piece.text} at {piece.start}", changed)


def _others(piece: _Piece) -> Iterator[tuple[str, str]]:
    """What a piece could be by mistake."""
    match piece.kind:
        case "text":
            yield "another text", '"~"' if piece.text == '""' else f'{piece.text[:-1]}~"'
            if piece.text == '""':
                yield "a zero for a blank", "0"
        case "truth":
            yield "another truth", "1=1" if piece.text == "1=0" else "1=0"
        case "digits":
            yield "coarser rounding", "0"
        case "number":
            if piece.text in OTHER_UNITS:
                yield "another unit", OTHER_UNITS[piece.text]
            if "." in piece.text or "E" in piece.text or len(piece.text) > 2:
                yield "another constant", f"{float(piece.text) * 1.01:.12g}"
            else:
                yield "another constant", str(int(piece.text) + 1)
                if int(piece.text):
                    yield "another constant", str(int(piece.text) - 1)
        case "sign":
            if piece.text in OTHER_SIGNS:
                yield "another sign", OTHER_SIGNS[piece.text]
            if piece.text in TURNED:
                yield "a sign turned round", TURNED[piece.text]
        case "function":
            if piece.text in OTHER_FUNCTIONS:
                yield "another function", OTHER_FUNCTIONS[piece.text]
        case "cell":
            yield "a cell one row off", _moved(piece.text, 1, 0)
            yield "a cell one column off", _moved(piece.text, 0, 1)
        case "range":
            sheet, _, area = piece.text.rpartition("!")
            prefix = sheet + "!" if sheet else ""
            first, last = area.split(":")
            if first != last:
                yield "a range one row short", f"{prefix}{first}:{_moved(last, -1, 0)}"
                yield "a range that begins a row late", f"{prefix}{_moved(first, 1, 0)}:{last}"
            yield "the column beside it", f"{prefix}{_moved(first, 0, 1)}:{_moved(last, 0, 1)}"
        case "cells":
            first, last = piece.text.split(":")
            yield "cells one row off", f"{_moved(first, 1, 0)}:{_moved(last, 1, 0)}"
            if first != last:
                yield "cells one column short", f"{first}:{_moved(last, 0, -1)}"


def _moved(cell: str, rows: int, columns: int) -> str:
    """A reference so many rows and columns further."""
    sheet, _, address = cell.rpartition("!")
    row, column = xl_cell_to_rowcol(address)
    fixed = "$" if address.count("$") == 2 else ""
    return (
        sheet + "!" if sheet else ""
    ) + f"${xl_col_to_name(max(column + columns, 0))}{fixed}{max(row + rows, 0) + 1}"


def _without(formula: str, pieces: list[_Piece], index: int) -> Iterator[tuple[str, str]]:
    """A guard left out: an IF that always takes its second argument, an AND or OR without one of its conditions."""
    arguments = _arguments(pieces, index)
    start, end = pieces[index].start, arguments[-1][1] + 1
    texts = [formula[first:last] for first, last in arguments]
    if pieces[index].text == "IF":
        yield "a missing guard", formula[:start] + f"({texts[1]})" + formula[end:]
    elif len(texts) > 1:
        for left_out in range(len(texts)):
            kept = ",".join(text for place, text in enumerate(texts) if place != left_out)
            yield "a missing condition", formula[:start] + f"{pieces[index].text}({kept})" + formula[end:]


def _arguments(pieces: list[_Piece], index: int) -> list[tuple[int, int]]:
    """Where the arguments of the function at this piece begin and end."""
    found, depth, start = [], 0, pieces[index + 1].end
    for piece in pieces[index + 1 :]:
        if piece.kind != "sign":
            continue
        depth += (piece.text == "(") - (piece.text == ")")
        if (piece.text == "," and depth == 1) or depth == 0:
            found.append((start, piece.start))
            start = piece.end
        if depth == 0:
            return found
    raise ValueError("brackets do not match")
