"""Records typed below the last line of a log: no formula of the planner counts them, and so no table does."""

from collections.abc import Iterator

from workbookgen.errors import counted
from workbookgen.filled.planner import FilledPlanner
from workbookgen.gather.columns import TABLES

BELOW = (
    "typed below the last line of the log (line {} of the sheet); nothing there is counted. "
    "Carry the planner over to one with more rows."
)


def typed_below(filled: FilledPlanner) -> Iterator[str]:
    """A sentence for each log with records below its end.

    A line with a name and something more is a record; a lone text may be a remark, or a sentence of the planner.
    """
    for table in TABLES:
        keys = [key for key in filled.ranges if key in filled.entries and key.startswith(f"{table.block}_")]
        if not keys:
            continue
        areas = [filled.ranges[key] for key in keys]
        first, last = areas[0], max(area.last_row for area in areas)
        columns = {area.column for area in areas}
        name = filled.ranges.get(table.full_key("name"), first).column
        cells = filled.book.sheets.get(first.sheet, {}).items()
        below = [place for place, cell in cells if place[0] > last and cell.value not in (None, "")]
        more = {row for row, column in below if column in columns and column != name}
        if lines := sum(column == name and row in more for row, column in below):
            yield f"{table.name}: {counted(lines, 'line')} {BELOW.format(last)}"
