"""Stored results: what a program shows if it does not calculate, or before it does.

A file stores the last result of every formula. If that is not what the inputs give, a preview, a phone or a program
that trusts the file shows a wrong number.
"""

import math
from collections.abc import Iterator, Mapping

from workbookgen.book.placement import Layout, Placement
from workbookgen.checking.compare import AGREEMENT, NOTHING, Finding, are_same_words
from workbookgen.language.entries import Entries, Entry
from workbookgen.ooxml.sheets import stretches
from workbookgen.ooxml.values import ErrorValue, Value
from workbookgen.ooxml.workbook import WholeFile

NEAR = 1e-7  # relative: some programs store fewer digits than they calculate with, and nobody sees the eighth
STALE = (
    "the stored result is not what the inputs give: a program that does not calculate shows it. "
    "Open the file in your spreadsheet program, have it calculate everything, and save it"
)


def stale_results(layout: Layout, theirs: WholeFile, expected: Mapping[str, tuple[Entry, ...]]) -> Iterator[Finding]:
    """Stored results that the inputs do not give. A file without any is calculated by whatever program opens it."""
    if not any(_shown(value) is not None for _, _, value in _stored(layout, theirs)):
        return
    for placement, rows, value in _stored(layout, theirs):
        shown = _shown(value)
        for row in rows:
            wanted = expected[placement.key][row]
            if wanted is shown or _agree(wanted, shown):
                continue
            yield Finding(
                STALE,
                placement.address(row),
                placement.key,
                expected="nothing" if wanted is None else wanted,
                got="nothing" if shown is None else shown,
            )


def as_stored(layout: Layout, theirs: WholeFile, typed: Entries) -> Entries:
    """The entries with their texts as in the file, since an engine may drop a leading or trailing blank."""

    def as_in_file(placement: Placement, index: int, entry: Entry) -> Entry:
        if not isinstance(entry, str):
            return entry
        cell = theirs.sheets[placement.sheet].cell((placement.row + index, placement.column))
        return cell.value if cell and isinstance(cell.value, str) else entry

    def column(placement: Placement) -> tuple[Entry, ...]:
        return tuple(as_in_file(placement, index, entry) for index, entry in enumerate(typed[placement.key]))

    return {each.key: column(each) for each in layout.inputs}


def _stored(layout: Layout, theirs: WholeFile) -> Iterator[tuple[Placement, range, Value]]:
    """The results that a file stores: a field, some of its cells, and the value that these have in common."""
    for placement in layout.formulas:
        sheet = theirs.sheets.get(placement.sheet)
        for rows in stretches(range(placement.row, placement.row + placement.rows), sheet) if sheet else ():
            cell = sheet.cell((rows.start, placement.column))
            if cell and cell.has_formula:
                yield placement, range(rows.start - placement.row, rows.stop - placement.row), cell.value


def _shown(value: Value) -> Entry:
    if isinstance(value, ErrorValue):
        return value.token
    return None if value == "" else value


def _agree(wanted: Entry, shown: Entry) -> bool:
    if isinstance(wanted, float | int) and isinstance(shown, float | int) and not isinstance(shown, bool):
        return math.isclose(wanted, shown, rel_tol=max(NEAR, AGREEMENT), abs_tol=NOTHING)
    # To Python, TRUE is the number 1; to a person who reads the cell it is not.
    return wanted == shown and not isinstance(shown, bool) or are_same_words(wanted, shown)
