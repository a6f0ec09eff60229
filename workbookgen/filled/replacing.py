"""Whether a file may be replaced: not if someone has typed into it, nor if that cannot be determined."""

import math
from pathlib import Path

from workbookgen.errors import FileError
from workbookgen.filled.book import open_book
from workbookgen.filled.foreign_cells import foreign_cells
from workbookgen.filled.made_with import ORIGIN
from workbookgen.filled.own_cells import KEPT
from workbookgen.filled.planner import FilledPlanner, described, read_filled
from workbookgen.language.entries import Entries, Entry, starting_entries
from workbookgen.settings import Settings
from workbookgen.sheets import origin

WORKBOOKS = (b"PK", b"\xd0\xcf\x11\xe0")  # how a workbook begins, and how one with a password does
ELSEWHERE = "Choose another name after -o, or move this file elsewhere."
NOT_OURS = (
    "there is such a file already, and it is not one of our planners. "
    "Choose another name after -o, or this one to replace it."
)


def require_no_entries(target: Path, intended: Settings | None = None, *, is_named: bool = True) -> None:
    """Refuse to overwrite a planner that holds anyone's entries. Raises FileError.

    A planner as it was built may be replaced, also with the guide that the `intended` settings give it. So may a file
    that is not one of our planners if it `is_named`, on purpose, and not only called as a planner is when no name is
    given; but not one that cannot be read and may be a planner.
    """
    if not target.is_file():
        return
    try:
        old = read_filled(target)
        written = first_entry(old, intended) or first_foreign_cell(old)
    except FileError as problem:
        if _may_be_a_planner(target):
            why = problem.faults[0].sentence.partition(". ")[0].rstrip(".")
            lost = "What somebody may have typed into it would be lost, so it was not replaced."
            raise FileError.at(str(target), f"{why}. {lost} {ELSEWHERE}") from None
        if not is_named:
            raise FileError.at(str(target), NOT_OURS) from None
        return
    if written:
        lost = f"this planner holds {written}, which would be lost."
        instead = "The command carry brings what is in it into a newer planner."
        raise FileError.at(str(target), f"{lost} {ELSEWHERE} {instead}")


def first_entry(old: FilledPlanner, intended: Settings | None = None) -> str:
    """The first input that is not as it was built, in words, or nothing.

    A guide that was built from a user's own fiber table counts as changed, unless it is that of the intended settings:
    a planner does not show which table it was built from.
    """
    built = _as_built(old.made_with, intended)
    for key, column in old.entries.items():
        before = built.get(key, ())
        for row, entry in enumerate(column):
            if not _same(entry, before[row] if row < len(before) else None):
                sheet, cell = old.place(key, row)
                return f"entries, or a guide of its own ({sheet}!{cell})"
    return ""


def first_foreign_cell(old: FilledPlanner) -> str:
    """The first thing that someone put beside the inputs, in words, or nothing."""
    for sheet, comments in old.book.comments.items():
        if comments:
            return f"notes ({sheet})"
    if any(name.startswith(f"{KEPT}_") for name in old.book.names):
        return "leftovers of an older planner"
    return next((f"more than its formulas ({each.sheet}!{each.cell})" for each in foreign_cells(old)), "")


def _as_built(made_with: Settings, intended: Settings | None) -> Entries:
    is_the_same = intended is not None and intended.model_copy(update={"fibers": made_with.fibers}) == made_with
    return starting_entries(described(intended if is_the_same else made_with))


def _may_be_a_planner(path: Path) -> bool:
    """Whether a file that could not be read may still be a planner: protected, damaged, or without its settings."""
    try:
        with path.open("rb") as file:
            head = file.read(4096)
    except OSError:
        return True
    if not head.startswith(WORKBOOKS) and not (b"\0" in head and path.suffix.lower() in (".xlsx", ".ods")):
        return False
    try:
        book = open_book(path, ())
    except FileError:
        return True
    return ORIGIN in book.names or origin.SHEET in book.sheet_names


def _same(entry: Entry, before: Entry) -> bool:
    if isinstance(entry, float | int) and isinstance(before, float | int):
        return math.isclose(entry, before, rel_tol=1e-12)
    return entry == before
