"""Arithmetic typed into an input, such as =6.5*16, for which the file has no value.

Spreadsheet programs store the result of a formula; programs that only edit files do not. Then the embedded engine
calculates it, so that an entry is not taken for an empty cell.
"""

from collections.abc import Iterator
from dataclasses import replace
from math import isfinite

from workbookgen.engines import EMBEDDED, Area, ErrorValue, engine
from workbookgen.errors import PlannerError
from workbookgen.filled.cells import Cell
from workbookgen.filled.planner import MOST_LINES, FilledPlanner, as_entry


def with_arithmetic_done(old: FilledPlanner) -> FilledPlanner:
    """The planner with the values of such cells. They stay empty if the engine cannot read the file, or not quickly."""
    pending = list(_without_value(old))
    if not pending or _has_a_huge_name(old):
        return old
    try:
        with engine(EMBEDDED).open(old.path) as session:
            values = {(key, row): session.read(Area(*old.position(key, row)))[0][0] for key, row in pending}
    except PlannerError:
        return old
    entries = dict(old.entries)
    for (key, row), value in values.items():
        if isinstance(value, float) and not isfinite(value):
            value = ErrorValue("#NUM!")
        sheet, line, column = old.position(key, row)
        cells = old.book.sheets[sheet]
        cells.put(range(line, line + 1), {column: Cell(value, cells[line, column].formula)})
        _, each = old.planner.by_key[key]
        entries[key] = (*entries[key][:row], as_entry(value, each, old.book), *entries[key][row + 1 :])
    return replace(old, entries=entries)


def _without_value(old: FilledPlanner) -> Iterator[tuple[str, int]]:
    """The full key and record of each input with a formula whose result is not in the file."""
    for key, entries in old.entries.items():
        for row, entry in enumerate(entries):
            cell = old.cell(key, row) if entry is None else None
            if cell and cell.formula and cell.value is None:
                yield key, row


def _has_a_huge_name(old: FilledPlanner) -> bool:
    """Whether the name of an input covers more lines than a log can have, all of which every sum would go through."""
    areas = (old.book.areas.get(key) for key in old.entries)
    return any(area.rows > MOST_LINES for area in areas if area)
