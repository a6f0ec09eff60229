"""Do the names of an old planner point to the right cells? Entries are found by them, and by nothing else.

Two swapped names would silently carry weights into the column for empty reels. The label above a column, or beside a
card's cell, is a second witness: it is there in planners of every version, wherever lines were inserted.
"""

from collections.abc import Iterator

from workbookgen import __version__
from workbookgen.checking.names import names_out_of_place
from workbookgen.engines import Area
from workbookgen.errors import Fault
from workbookgen.filled.as_made import laid_out
from workbookgen.filled.planner import FilledPlanner, described
from workbookgen.language.parts import Block, Log

ROWS_OF_HEADINGS = 4  # above the first record: a column's label and unit, and the heading of its group
COLUMNS_OF_LABELS = 3  # to the left of a card's value
LOOK = "Look at these entries in the new planner, and put them right."


def misplaced(old: FilledPlanner) -> Iterator[Fault]:
    """The names that point to cells of another field, with the consequence."""
    planner = described(old.made_with)
    reported: set[str] = set()
    for block in planner.blocks.values():
        for key, label, other in _by_their_labels(old, block, old.book.areas):
            reported.add(key)
            carried = f'this name points to the cells of "{other}", so what is there was carried over as "{label}".'
            yield Fault(key, f"{carried} {LOOK}")
    if old.version == __version__:
        for finding in names_out_of_place(laid_out(old.made_with), old.book.areas):
            if finding.key not in reported:
                carried = f"{finding.reason}, and what is there was carried over under this name."
                yield Fault(finding.key, f"{carried} {LOOK}")


def _by_their_labels(old: FilledPlanner, block: Block, areas: dict[str, Area]) -> Iterator[tuple[str, str, str]]:
    """The key and label of each input at which the sheet shows the label of another, and that label.

    A text that is no label of today, such as an older one, proves nothing.
    """
    labels = {each.label for each in (*block.inputs, *block.results)}
    for each in block.inputs:
        key = block.full_key(each.key)
        said = _texts_at(old, areas[key], is_column=isinstance(block, Log)) if key in areas else []
        if each.label not in said:
            others = [text for text in said if text in labels]
            if others:
                yield key, each.label, others[0]


def _texts_at(old: FilledPlanner, area: Area, *, is_column: bool) -> list[str]:
    """The texts above a column, or to the left of a cell, the nearest first."""
    cells = old.book.sheets.get(area.sheet, {})
    above = [(area.row - step, area.column) for step in range(1, ROWS_OF_HEADINGS + 1)]
    beside = [(area.row, area.column - step) for step in range(1, COLUMNS_OF_LABELS + 1)]
    found = (cells.get(position) for position in (above if is_column else beside))
    return [cell.value for cell in found if cell and isinstance(cell.value, str)]
