"""Areas of cells, and references to cells, joined into fewer and larger ones."""

import re
from collections.abc import Iterable

from xlsxwriter.utility import xl_cell_to_rowcol

_CELL = re.compile(r"\$([A-Z]+)\$?(\{row\}|\d+)")  # $B$7, or $B{row} in a formula that is copied down

Area = tuple[int, int, int, int]  # first row, first column, last row, last column


def joined(areas: Iterable[Area]) -> list[Area]:
    """The same cells in fewer rectangles: neighbors side by side are joined first, then those one below another."""
    return [_turned(each) for each in _side_by_side(map(_turned, _side_by_side(areas)))]


def _side_by_side(areas: Iterable[Area]) -> list[Area]:
    found: list[Area] = []
    for top, left, bottom, right in sorted(areas, key=lambda area: (area[0], area[2], area[1])):
        if found and (found[-1][0], found[-1][2], found[-1][3] + 1) == (top, bottom, left):
            found[-1] = (top, found[-1][1], bottom, right)
        else:
            found.append((top, left, bottom, right))
    return found


def _turned(area: Area) -> Area:
    """The area with rows and columns exchanged."""
    top, left, bottom, right = area
    return left, top, right, bottom


def ranges(refs: list[str]) -> list[str]:
    """These cells of one sheet, adjacent ones as one range."""
    runs: list[list[tuple[int, str, str]]] = []
    for ref in refs:
        letters, row = _CELL.fullmatch(ref).groups()
        cell = (xl_cell_to_rowcol(f"{letters}1")[1], row, ref)
        if runs and _follows(cell, runs[-1]):
            runs[-1].append(cell)
        else:
            runs.append([cell])
    return [run[0][2] if len(run) == 1 else f"{run[0][2]}:{run[-1][2]}" for run in runs]


def filled(refs: list[str]) -> str:
    """Formula text of how many of these cells of one sheet are not blank; one with an empty text is."""
    return "-".join([str(len(refs)), *(f"COUNTBLANK({each})" for each in ranges(refs))])


def _follows(cell: tuple[int, str, str], run: list[tuple[int, str, str]]) -> bool:
    """Whether a cell continues a run of adjacent cells, in the direction of the run."""
    (column, row, _), (last_column, last_row, _) = cell, run[-1]
    beside = row == last_row and column == last_column + 1
    below = column == last_column and row.isdigit() and last_row.isdigit() and int(row) == int(last_row) + 1
    if len(run) == 1:
        return beside or below
    return beside if run[0][1] == last_row else below
