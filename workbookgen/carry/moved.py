"""Fields that are in another log now: their entries go to the record with the same name.

In an older planner, one log could name the records of another to say more about them, as the sheet Time once named
each project again. What was said there now belongs to the record itself.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from workbookgen.carry.matching import Matched
from workbookgen.filled.cells import Cell, Position
from workbookgen.filled.planner import FilledPlanner, as_entry
from workbookgen.language.entries import Entry
from workbookgen.language.planner import Planner
from workbookgen.texts import folded, lines_by_name


@dataclass(frozen=True)
class Move:
    """The key by which a log named the records of another, the key of their names, and each field's old and new key.

    None of these fields depends on the unit system.
    """

    named_in: str
    names: str
    fields: tuple[tuple[str, str], ...]


MOVES = (
    Move(
        "times_project",
        "projects_name",
        (("times_strands", "projects_strands"), ("times_take_up", "projects_take_up"), ("times_done", "projects_done")),
    ),
)


def move(old: FilledPlanner, new: Planner, matched: Matched) -> set[tuple[str, Position]]:
    """Bring over what has moved; returns the old cells about which nothing is left to report.

    A line comes over whole or not at all. It is left to be listed if its name fits no record or several, if another
    line took the place, or if a cell has a formula or a text.
    """
    return {cell for each in MOVES for cell in _moved(old, new, matched, each)}


def _moved(old: FilledPlanner, new: Planner, matched: Matched, a_move: Move) -> Iterator[tuple[str, Position]]:
    column = old.ranges.get(a_move.named_in)
    if column is None or a_move.names not in matched.entries:
        return
    lines = lines_by_name(matched.entries[a_move.names])
    keys = [key for key in (a_move.named_in, *(was for was, _ in a_move.fields)) if key in old.ranges]
    for row in range(column.rows):
        filled = {key: cell for key in keys if (cell := old.cell(key, row))}
        said = {
            now: as_entry(filled[was].value, new.by_key[now][1], old.book)
            for was, now in a_move.fields
            if was in filled and now in matched.entries
        }
        name = filled.get(a_move.named_in)
        found = lines.get(folded(name.value), []) if name and isinstance(name.value, str) else []
        if len(found) != 1 or not _is_whole(filled, said):
            continue
        [line] = found
        if all(matched.entries[key][line] is None for key in said):
            for key, entry in said.items():
                matched.entries[key][line] = entry
            for key in filled:
                sheet, *position = old.position(key, row)
                yield sheet, tuple(position)


def _is_whole(filled: Mapping[str, Cell], said: Mapping[str, Entry]) -> bool:
    """Whether all of a line was typed, and all beside its name is a number that has a field."""
    is_all_said = len(said) == len(filled) - 1 and all(isinstance(entry, float) for entry in said.values())
    return is_all_said and not any(cell.formula for cell in filled.values())
