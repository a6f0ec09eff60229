"""Whether a file may be replaced: not where it is a planner in which somebody has written."""

import math
from pathlib import Path

from workbookgen.errors import FileError
from workbookgen.filled.planner import FilledPlanner, described, read_filled
from workbookgen.language.entries import Entry, starting_entries


def require_no_entries(target: Path) -> None:
    """Refuse to write over a planner with entries. Raises FileError.

    A planner as it was built may be replaced, and any file that is no planner of ours: who
    names it means it.
    """
    if not target.is_file():
        return
    try:
        old = read_filled(target)
    except FileError:
        return
    place = first_entry(old)
    if place:
        raise FileError.at(
            str(target), f"this planner holds entries, or a guide of its own ({place}), which would be lost. Choose another name after -o, "
            "or move this file elsewhere. The command carry brings what is in it into a newer planner.",
        )


def first_entry(old: FilledPlanner) -> str:
    """Sheet and cell of the first input that is not as it was built; nothing where all are.

    A guide that was built from a fiber table of one's own counts as changed: a planner does not tell which it was.
    """
    began = starting_entries(described(old.made_with))
    for key, column in old.entries.items():
        before = began.get(key, ())
        for row, entry in enumerate(column):
            if not _same(entry, before[row] if row < len(before) else None):
                sheet, cell = old.place(key, row)
                return f"{sheet}!{cell}"
    return ""


def _same(entry: Entry, before: Entry) -> bool:
    if isinstance(entry, float | int) and isinstance(before, float | int):
        return math.isclose(entry, before, rel_tol=1e-12)
    return entry == before
