"""The outcome of carrying a planner over, in plain words."""

from collections.abc import Iterator
from pathlib import Path

from workbookgen import __version__
from workbookgen.carry.carry import Carried
from workbookgen.carry.leftovers import SHEET
from workbookgen.errors import counted

MOST = 20  # of a list; the sheet Leftovers has them all


def sentences(carried: Carried, old: Path, new: Path) -> Iterator[str]:
    """One line after another."""
    yield f"{new} is ready, with the entries of {old} (made with workbookgen {carried.version})."
    for sheet, lines in carried.lines.items():
        yield f"  {sheet}: {counted(lines, 'line')}"
    if carried.converted:
        values = counted(carried.converted, "value")
        yield f"  {values} converted to the new units; where a cell rounds one, a note on it tells what it was."
    if carried.renewed:
        lines = counted(carried.renewed, "line")
        yield f"  {lines} that a planner brings along, untouched, as the new planner has them."
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
            "Whether its results are those of before cannot be said: entries came over under other names. "
            "See to these first."
        )
    else:
        yield "Every result is the same as before."
    if carried.unproven:
        yield (
            f"In {counted(len(carried.unproven), 'place')} the engine that proves planners says something else "
            "than the reference library, whose values stand there now. "
            "Your spreadsheet program works them out anew when you open the planner; look there first:"
        )
        yield from _first(carried.unproven)


def _of_leftovers(carried: Carried) -> str:
    """How many things found no home, and how many stand where the planner does not take them."""
    kept, parts = len(carried.leftovers) - carried.homeless, []
    if carried.homeless:
        parts.append(f"{counted(carried.homeless, 'thing')} found no home")
    if kept:
        stand, them = ("stands", "it") if kept == 1 else ("stand", "them")
        parts.append(f"{counted(kept, 'thing')} {stand} in place, though the planner does not take {them}")
    return "; ".join(parts)


def _of_differences(carried: Carried) -> str:
    """How many results differ, and whether another version may be the reason."""
    number = len(carried.differences)
    told = f"{counted(number, 'result')} differ{'s' if number == 1 else ''} from what the old planner shows"
    if carried.version == __version__:
        return told
    return f"{told}, made with version {carried.version}; this is {__version__}, which works some out otherwise"


def _first(items: tuple) -> Iterator[str]:
    for each in items[:MOST]:
        yield f"  {each}"
    if len(items) > MOST:
        yield f"  ... and {len(items) - MOST:,} more."
