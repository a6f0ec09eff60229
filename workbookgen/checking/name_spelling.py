"""Names for an engine that takes É and é for different letters, unlike spreadsheet programs (see `texts`).

It would not find the lot "École" for a skein of "école", and a sound planner would look broken. So such an engine is
given each name in one spelling, that of its first occurrence, and is compared on that.
"""

from workbookgen.engines import EMBEDDED
from workbookgen.language.domains import Choice
from workbookgen.language.entries import Entries
from workbookgen.language.parts import Column
from workbookgen.language.planner import Planner
from workbookgen.texts import folded, strictly

A_TO_Z_ALONE = (EMBEDDED,)  # the engines that fold the case of these letters only


def in_one_spelling(planner: Planner, entries: Entries) -> Entries:
    """The entries, with names that differ only in the case of letters beyond A to Z spelled as they first occur."""
    lists: dict[str, dict[str, str]] = {}
    for names, key in _names(planner):
        known = lists.setdefault(names, {folded(text): text for text in _fixed(planner, names)})
        for value in entries[key]:
            if isinstance(value, str):
                known.setdefault(folded(value), value)
    spelled = {
        key: tuple(_spelled(value, lists[names]) if isinstance(value, str) else value for value in entries[key])
        for names, key in _names(planner)
    }
    return {**entries, **spelled}


def _spelled(name: str, known: dict[str, str]) -> str:
    """A name as it first occurs, if the two differ in letters beyond A to Z."""
    first = known[folded(name)]
    return name if strictly(name) == strictly(first) else first


def _names(planner: Planner) -> list[tuple[str, str]]:
    """Every list of names with the full keys of the inputs that fill it, then of those that choose from it."""
    writers, choosers = [], []
    for block in planner.blocks.values():
        for each in block.inputs:
            key = block.full_key(each.key)
            if block.names_its_records(each):
                writers.append((block.names_column, key))
            if isinstance(each.domain, Choice):
                choosers.append((each.domain.of, key))
    return writers + choosers


def _fixed(planner: Planner, names: str) -> tuple:
    """The names of a list, if they are fixed facts."""
    _, each = planner.by_key.get(names, (None, None))
    return each.values if isinstance(each, Column) else ()
