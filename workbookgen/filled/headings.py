"""The labels above the columns of a log, which find entries that no name points to.

A line that is inserted above the first record belongs to no name, and a program may drop a name on saving. The labels
show where both are: in planners of every version, the units are below the labels, and the records below those.
"""

from collections.abc import Collection, Mapping
from dataclasses import replace

from workbookgen.engines import Area
from workbookgen.filled.book import Book
from workbookgen.language.parts import Block

HIGHEST = 500  # lines above the first record that are searched for the labels
Areas = Mapping[str, Area]  # key of an input within its block -> its cells


def with_lines_above(book: Book, block: Block, areas: Areas) -> dict[str, Area]:
    """The columns of a log, with the lines that were inserted above the first record and filled."""
    first = min(area.row for area in areas.values())
    top = _first_begun(book, block, areas, first)

    def from_there(area: Area) -> Area:
        return replace(area, row=top, rows=area.last_row - top + 1) if area.row == first else area

    return {key: from_there(area) for key, area in areas.items()}


def _first_begun(book: Book, block: Block, areas: Areas, first: int) -> int:
    """The first line below the labels in which something was typed, or the `first` of the records."""
    labels = _labels(book, block, areas)
    for row in range(labels + 1, first) if labels is not None else ():
        # Units are texts. If a log has none, a number shows that the line below its labels is a record.
        if any(row > labels + 1 or isinstance(value, float) for value in _typed(book, areas, row)):
            return row
    return first


def by_its_label(book: Book, block: Block, areas: Areas, key: str, taken: Collection[tuple[str, int]]) -> Area | None:
    """The column of an input whose name is gone: the only column with its label that no other name points to.

    `taken` are the sheets and columns that names point to.
    """
    labels = _labels(book, block, areas) if areas else None
    if labels is None:
        return None
    beside = next(iter(areas.values()))
    cells = book.sheets.get(beside.sheet, {})
    label = block.by_key[key].label
    labeled = [column for (row, column), cell in cells.items() if row == labels and cell.value == label]
    found = [column for column in labeled if (beside.sheet, column) not in taken]
    return replace(beside, column=found[0]) if len(found) == 1 else None


def _labels(book: Book, block: Block, areas: Areas) -> int | None:
    """The line with the labels of a log's columns: the nearest above the records that has at least half of them."""
    first = min(area.row for area in areas.values())

    def matches(row: int) -> int:
        return sum(_value(book, area, row) == block.by_key[key].label for key, area in areas.items())

    above = range(first - 1, max(0, first - 1 - HIGHEST), -1)
    return next((row for row in above if 2 * matches(row) >= len(areas)), None)


def _typed(book: Book, areas: Areas, row: int) -> list:
    """What is typed in a line of these columns."""
    return [value for area in areas.values() if (value := _value(book, area, row)) not in (None, "")]


def _value(book: Book, area: Area, row: int):
    """What a cell of this column holds, unless it is a formula."""
    cell = book.sheets.get(area.sheet, {}).get((row, area.column))
    return None if cell is None or cell.formula else cell.value
