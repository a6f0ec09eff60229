"""The report of what carrying a planner over did."""

from collections.abc import Iterator
from pathlib import Path

from workbookgen import __version__
from workbookgen.carry.carry import Carried
from workbookgen.carry.leftovers import SHEET
from workbookgen.errors import counted

MOST = 20  # lines of a list; the sheet Leftovers has all of them


def sentences(carried: Carried, old: Path, new: Path) -> Iterator[str]:
    """The lines of the report."""
    yield f"{new} is ready, with the entries of {old} (made with workbookgen {carried.version})."
    for sheet, lines in carried.lines.items():
        yield f"  {sheet}: {counted(lines, 'line')}"
    if carried.converted:
        values = counted(carried.converted, "value")
        yield f"  {values} converted to the new units; where a cell rounds one, a note on it says what it was."
    if carried.renewed:
        lines = counted(carried.renewed, "line")
        yield f"  {lines} that nobody had changed, now as the new planner has them."
    yield from _first((*carried.misplaced, *carried.notes))
    if carried.leftovers:
        yield f"{_of_leftovers(carried)}: see the sheet {SHEET}."
        yield from _first(carried.leftovers)
    else:
        yield "Everything found its place."
    if carried.differences:
        yield f"{_of_differences(carried)}:"
        yield from _first(carried.differences)
    elif carried.misplaced:
        yield (
            "Whether the results are the same as before cannot be said, since entries came over under other names. "
            "See to those first."
        )
    else:
        yield "Every result is the same as before."
    if carried.unproven:
        yield (
            f"In {counted(len(carried.unproven), 'place')} the engine that proves planners disagrees "
            "with the reference library, whose values are there now. "
            "Your spreadsheet program recalculates them when you open the planner; look there first:"
        )
        yield from _first(carried.unproven)


def _of_leftovers(carried: Carried) -> str:
    """How many things found no place, and how many are in their cells though the planner does not accept them."""
    kept, parts = len(carried.leftovers) - carried.without_place, []
    if carried.without_place:
        parts.append(f"{counted(carried.without_place, 'thing')} found no place")
    if kept:
        are, them = ("is in its cell", "it") if kept == 1 else ("are in their cells", "them")
        parts.append(f"{counted(kept, 'thing')} {are}, though the planner does not accept {them}")
    return "; ".join(parts)


def _of_differences(carried: Carried) -> str:
    """How many results differ, and whether another version may be the reason."""
    number = len(carried.differences)
    told = f"{counted(number, 'result')} differ{'s' if number == 1 else ''} from what the old planner shows"
    if carried.version == __version__:
        return told
    newer = f"this is {__version__}, which calculates some differently"
    return f"{told}. It was made with version {carried.version}; {newer}"


def _first(items: tuple) -> Iterator[str]:
    for each in items[:MOST]:
        yield f"  {each}"
    if len(items) > MOST:
        yield f"  ... and {len(items) - MOST:,} more."
