"""Wrong planners, made on purpose: one formula of a good one is changed in one way.

The changes are made in the bound text of formulas, by kind, wherever a kind applies; the
file is edited cell by cell in its XML, so that nothing else of it differs.
"""

import re
import zipfile
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from xml.sax.saxutils import escape

from mutation.changes import with_addresses
from workbookgen.book.layout import Layout, Placement

Places = Mapping[tuple[str, str], str | None]


def _sub(pattern: str, new: str | Callable) -> Callable[[str], str]:
    return lambda text: re.sub(pattern, new, text, count=1)


def _next_column(found: re.Match) -> str:
    letters = found[1]
    return found[0].replace(letters, letters[:-1] + ("A" if letters[-1] == "Z" else chr(ord(letters[-1]) + 1)))


def _columns_later(found: re.Match) -> str:
    return re.sub(r"\$([A-Z]+)\$", _next_column, found[0])


def _unguarded(text: str) -> str:
    """The value that stands inside the outermost IF, without its test."""
    found = re.fullmatch(r'=IF\((.*),""\)', text)
    if not found:
        return text
    depth, inside = 0, re.sub(r'"[^"]*"', lambda each: "~" * len(each[0]), found[1])
    for index, sign in enumerate(inside):
        depth += (sign == "(") - (sign == ")")
        if sign == "," and not depth:
            return "=" + found[1][index + 1 :]
    return text


# What a slip of the pen, or a program's repair, does to a formula. An operator that stands before a
# reference or a bracket was described; before a digit it belongs to a unit's factor.
KINDS: dict[str, Callable[[str], str]] = {
    "a factor of another unit": _sub(r"0\.9144(?!\d)", "0.3048"),
    "inches for centimeters": _sub(r"0\.0254", "0.01"),
    "a rounded constant": _sub(r"453\.59237", "453.6"),
    "an ounce of another sort": _sub(r"28\.349523125", "31.1034768"),
    "a changed whole number": _sub(r"(?<=[(,])100\*", "10*"),
    "times for over": _sub(r"/(?=[$(])", "*"),
    "over for times": _sub(r"\*(?=[$(])", "/"),
    "plus for minus": _sub(r"-(?=[$(])", "+"),
    "minus for plus": _sub(r"\+(?=[$(A-Z])", "-"),
    "the cell of the next row": _sub(
        r"(\$[A-Z]+)(\d+)(?!.*\$[A-Z]+\2\b.*\$[A-Z]+\2\b.*\$[A-Z]+\2\b)", lambda m: f"{m[1]}{int(m[2]) + 1}"
    ),
    "the cell of the next column": _sub(r"(?<=\()\$([A-Z]+)(?=\d+\*)", _next_column),
    "a range one row short": _sub(r"(\$[A-Z]+\$\d+:\$[A-Z]+\$)(\d+)(?==)", lambda m: f"{m[1]}{int(m[2]) - 1}"),
    "a sum of the column beside it": _sub(
        r"(?<=\)\*1,)(?:'[^']*'!|\w+!)?\$([A-Z]+)\$\d+:\$[A-Z]+\$\d+", _columns_later
    ),
    "the looked-up column beside it": lambda text: re.sub(
        r"(?<=INDEX\()(?:'[^']*'!|\w+!)?\$([A-Z]+)\$\d+:\$[A-Z]+\$\d+", _columns_later, text
    ),
    "no guard against blanks": _unguarded,
    "no test of the domain": lambda text: re.sub(
        r'^(=IF\([^,]*?,)IF\((AND\((?:[^()]|\((?:[^()]|\([^()]*\))*\))*\)),(.*),""\),""\)$', r'\1\3,"")', text
    ),
    "an open upper limit": _sub(r"<=(?=1(?:00)*000\b)", ">="),
    "nothing refused": _sub(r"(?<=OR\()SIGN\(([^()]*)\)=0", r"SIGN(\1)>0"),
    "nothing let through": _sub(r"(?<!=0,)(\$[A-Z]+\d+)>=0\.000001", r"\1>=0"),
    "a doubled name let through": _sub(r"\)=1(?=[,)])", ")>=1"),
    "a zero for a blank": lambda text: re.sub(r',""\)$', ",0)", text),
    "and for or": _sub(r"\bOR\(", "AND("),
    "or for and": _sub(r"\bAND\(", "OR("),
    "count for sum": _sub(r"\bSUMPRODUCT\(", "COUNT("),
    "the smaller for the larger": _sub(r"\bMAX\(", "MIN("),
    "down for up": _sub(r"\bROUNDUP\(", "ROUNDDOWN("),
    "a root left out": _sub(r"\bSQRT\(", "ABS("),
    "another word in a text": _sub(r'"(enough|agrees|measured|rated)', r'"un\1'),
    "another sentence in a message": _sub(r'"Still to fill in: ', '"Missing: '),
    "coarser rounding": _sub(r",9\)", ",0)"),
    "a number for the formula": lambda text: "=1" if '""' in text else text,
}


@dataclass(frozen=True)
class Mutant:
    """One column or cell whose formulas are all changed in the same way."""

    kind: str
    placement: Placement
    formulas: tuple[str, ...]

    @property
    def places(self) -> Places:
        return {
            (self.placement.sheet, self.placement.cell(row)): text
            for row, text in enumerate(self.formulas)
            if text != self.placement.formulas[row]
        }

    def __str__(self) -> str:
        return f"{self.kind}: {self.placement.key}"


@cache
def mutants_of(layout: Layout, kind: str) -> list[Mutant]:
    """Every formula that this kind of change touches."""
    made = [
        Mutant(kind, each, tuple(_changed(layout, KINDS[kind], text) for text in each.formulas))
        for each in layout.formulas
    ]
    return [each for each in made if each.places]


def _changed(layout: Layout, change: Callable[[str], str], text: str) -> str:
    plain = with_addresses(layout, text)
    return text if change(plain) == plain else change(plain)


def edited(source: Path, target: Path, layout: Layout, places: Places) -> None:
    """A copy of a planner with other formulas in some cells; None takes a formula away and leaves its value.

    Cells that share a formula with one of these get their own, as when a program saves it.
    """
    shared = [
        each for each in layout.formulas if any((each.sheet, each.cell(row)) in places for row in range(each.rows))
    ]
    places = {(each.sheet, each.cell(row)): text for each in shared for row, text in enumerate(each.formulas)} | dict(
        places
    )
    parts = {
        sheet.name: f"xl/worksheets/sheet{number}.xml" for number, sheet in enumerate(layout.planner.sheets, start=1)
    }
    with zipfile.ZipFile(source) as before, zipfile.ZipFile(target, "w") as after:
        for entry in before.infolist():
            content = before.read(entry)
            for (sheet, cell), formula in places.items():
                if entry.filename == parts[sheet]:
                    content = _with_formula(content, cell, formula)
            after.writestr(entry, content)


def _with_formula(xml: bytes, cell: str, formula: str | None) -> bytes:
    new = b"" if formula is None else f"<f>{escape(formula.removeprefix('='))}</f>".encode()
    held = re.compile(rb'(<c r="%s"[^>]*>)<f(?:[^>]*/>|[^>]*>[^<]*</f>)' % cell.encode())
    if held.search(xml):
        return held.sub(lambda found: found[1] + new, xml)
    empty = re.compile(rb'<c r="%s"([^>]*)/>' % cell.encode())
    assert len(empty.findall(xml)) == 1, f"{cell} holds neither a formula nor nothing"
    return empty.sub(lambda found: b'<c r="%s"%s>' % (cell.encode(), found[1]) + new + b"<v>0</v></c>", xml)
