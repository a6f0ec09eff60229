"""Leftovers: what was in the old planner and has no cell of its own in the new one.

They are on a sheet of the new planner, as texts and numbers from which nothing is calculated. Entries that are in
their cell although the planner does not accept them are listed too. The next carrying finds those again; the others it
takes from the sheet.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from workbookgen.book.wrapping import LETTER
from workbookgen.filled.foreign_cells import KEPT_ON as SHEET
from workbookgen.filled.foreign_cells import ForeignCell
from workbookgen.filled.own_cells import KEPT as KEY
from workbookgen.filled.planner import FilledPlanner
from workbookgen.language.parts import Chapter, Column, Sheet, Table
from workbookgen.language.planner import Planner
from workbookgen.language.views import Facts, Grid, Prose, band

# How the reason begins if a line of an old sheet Leftovers is listed again: that reason may no longer be true.
BEFORE = "from the old sheet Leftovers, which says: "
TITLE = "Leftovers of the old planner"
WHAT_TO_DO = (
    "What your old planner held, and this one could not take over as it was.",
    'Where it says "only here", this planner has no cell for it, and nothing is worked out from it. '
    "What you still need, type where it belongs.",
    "No later carrying puts it there, even in a planner that has the cell again.",
    'Where it says "in its cell", it came over, but cannot be used or may not be what you meant. '
    "Read why, and correct it there.",
    "When you have seen to every line, delete this sheet: nothing else needs it.",
)
ONLY_HERE, IN_ITS_CELL = "only here", "in its cell"
LONGEST = 32_767  # letters that a cell can hold


@dataclass(frozen=True)
class Leftover(ForeignCell):
    """Something left over: where it was, what it was, why it is listed, and where it is now."""

    now: str = ONLY_HERE


COLUMNS = (
    # of Leftover, the label on the sheet, its width
    ("sheet", "Old sheet", 14),
    ("cell", "Old cell", 10),
    ("label", "Field", 32),
    ("what", "What stood there", 34),
    ("why", "Why it is listed", 54),
    ("now", "Where it is now", 14),
)


def with_leftovers(planner: Planner, leftovers: Iterable[Leftover]) -> Planner:
    """The planner with the sheet Leftovers after its first sheet, if there are any."""
    lines = [line for each in leftovers for line in _lines(each)]
    if not lines:
        return planner
    table = Table(KEY, "", tuple(_column(lines, *each) for each in COLUMNS))
    chapter = Chapter(SHEET, (table,), (band(Prose(sentences=WHAT_TO_DO)), band(Facts(table=KEY))))
    widths = tuple(LETTER * width for _, _, width in COLUMNS)
    grid = Grid(widths + Grid().widths[len(widths) :])
    first, *others = planner.sheets
    sheet = Sheet(SHEET, TITLE, "", (chapter,), grid=grid, is_added=True)
    return replace(planner, sheets=(first, sheet, *others))


def _column(lines: list[Leftover], name: str, label: str, width: int) -> Column:
    return Column(name, label, tuple(getattr(line, name) for line in lines), width=width)


def kept_from_before(old: FilledPlanner) -> list[Leftover]:
    """The lines of an old planner's own sheet Leftovers, except those that will be found again."""
    areas = [old.ranges.get(f"{KEY}_{name}") for name, _, _ in COLUMNS]
    if None in areas:
        return []
    cells = old.book.sheets.get(areas[0].sheet, {})
    lines = []
    for row in range(areas[0].row, areas[0].last_row + 1):
        values = [cells[row, area.column].value if (row, area.column) in cells else "" for area in areas]
        sheet, cell, label, what, why, now = values
        if what in (None, "") or now == IN_ITS_CELL:
            continue
        what, why = what if isinstance(what, float | str) else str(what), str(why)
        why = why if why.startswith(BEFORE) else BEFORE + why
        lines.append(Leftover(str(sheet), str(cell), str(label), what, why))
    return lines


def _lines(leftover: Leftover) -> list[Leftover]:
    """A leftover as lines of the table: several if its text is too long for a cell."""
    if isinstance(leftover.what, float) or len(leftover.what) <= LONGEST:
        return [leftover]
    pieces = [leftover.what[start : start + LONGEST] for start in range(0, len(leftover.what), LONGEST)]
    return [
        replace(leftover, what=piece, label=f"{leftover.label}, part {number}")
        for number, piece in enumerate(pieces, start=1)
    ]
