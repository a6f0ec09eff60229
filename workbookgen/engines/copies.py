"""Copies of a workbook with poisoned cached values (`with_poison`) or other inputs (`with_values`).

A library that reads and writes workbooks would put its own idea of the file between a planner and an engine. So only
the cells in question are edited, and the rest of the copy is the same byte for byte.
"""

import re
from collections.abc import Mapping
from functools import partial
from pathlib import Path
from zipfile import BadZipFile

from workbookgen.engines.engine import Area, Rows, Typed, Value, checked, existing, require_sheet, unreadable
from workbookgen.ooxml.editing import Content, Formula, filled, recached, rewritten
from workbookgen.ooxml.listing import NoWorkbook, read_listing
from workbookgen.ooxml.package import Package, ParseError
from workbookgen.ooxml.references import Place

POISON = -987_654_321.0  # an engine that shows this number has not calculated its cell
_ESCAPE_SHAPE = re.compile(r"_x[0-9A-Fa-f]{4}_")


def with_poison(source: Path, target: Path) -> None:
    """A copy in which every formula cell's stored result is POISON."""
    rewritten(source, target, dict.fromkeys(sheet_parts(source).values(), partial(recached, value=POISON)))


def with_values(source: Path, target: Path, values: Mapping[Area, Rows]) -> None:
    """A copy with these cells filled or emptied, each keeping its format; where areas overlap, the later one wins."""
    parts = sheet_parts(source)
    wanted: dict[str, dict[Place, Content]] = {}
    for area, rows in values.items():
        require_sheet(tuple(parts), area.sheet)
        cells = wanted.setdefault(parts[area.sheet], {})
        for row, given in enumerate(checked(area, rows), area.row):
            cells |= {(row, column): _content(value) for column, value in enumerate(given, area.column)}
    rewritten(source, target, {part: partial(filled, cells=cells) for part, cells in wanted.items()})


def sheet_parts(source: Path) -> dict[str, str]:
    """Name of every worksheet, in the order of the tabs -> its part of the package."""
    try:
        with Package(existing(source)) as package:
            return {tab.name: tab.part for tab in read_listing(package).worksheets}
    except (BadZipFile, NoWorkbook, LookupError, ValueError, TypeError, ParseError) as reason:
        raise unreadable(source, "The package editor", reason) from None


def _content(value: Value) -> Content:
    if isinstance(value, Typed):
        return Formula(value.formula.removeprefix("="))
    if isinstance(value, str) and _ESCAPE_SHAPE.search(value):
        # In the format, _x0041_ stands for the letter A; Gnumeric knows neither this nor how to escape it.
        raise ValueError(f"{value!r} holds a code that programs read in different ways.")
    return value
