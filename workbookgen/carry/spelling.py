"""Names that are the same to one program and different to another.

Programs treat capitals and small letters alike, letter by letter, but they differ about ß and ss, combining accents,
and no-break spaces (see `texts`). Such names are carried as they are and reported, since another program may match
other lines.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from workbookgen.errors import Fault
from workbookgen.language.domains import Choice
from workbookgen.language.entries import Entries
from workbookgen.language.parts import Column
from workbookgen.language.planner import Planner
from workbookgen.texts import folded, loosely, strictly

SPELL_IT_ALIKE = "Write the name the same way everywhere."


def ambiguous_names(planner: Planner, entries: Entries) -> list[Fault]:
    """Pairs of names on one list that are the same to some programs only."""
    return [
        Fault("", f"{first} and {other} are the same name to some programs and two names to others. {SPELL_IT_ALIKE}")
        for names in _spellings(planner, entries)
        for first, other in _pairs(names)
    ]


def has_capitals_beyond_a_to_z(planner: Planner, entries: Entries) -> bool:
    """Whether two spellings of a name differ in case beyond A to Z, so that the embedded engine sees two names."""
    return any(
        len({strictly(each.text) for each in names if folded(each.text) == folded(name.text)}) > 1
        for names in _spellings(planner, entries)
        for name in names
    )


@dataclass(frozen=True)
class _Spelled:
    """A name as it is written somewhere, and the place."""

    text: str
    place: str

    def __str__(self) -> str:
        return f'"{self.text}" ({self.place})'


def _pairs(names: list[_Spelled]) -> Iterator[tuple[_Spelled, _Spelled]]:
    """The first spelling of a name, with each of the others."""
    ways = {folded(each.text): each for each in reversed(names)}
    first, *others = sorted(ways.values(), key=names.index)
    yield from ((first, other) for other in others)


def _spellings(planner: Planner, entries: Entries) -> Iterator[list[_Spelled]]:
    """Groups of spellings that the most lenient program takes for one name, list by list."""
    lists: dict[str, list[_Spelled]] = {}
    for block in planner.blocks.values():
        for each in block.inputs:
            if isinstance(each.domain, Choice):
                listed = each.domain.of
            elif block.names_its_records(each):
                listed = block.names_column
            else:
                continue
            place = f"{block.title or block.key.capitalize()}, {each.label}"
            column = dict.fromkeys(entries[block.full_key(each.key)])
            lists.setdefault(listed, []).extend(_Spelled(text, place) for text in column if isinstance(text, str))
    for listed, names in lists.items():
        holder, each = planner.by_key.get(listed, (None, None))
        known = each.values if isinstance(each, Column) else ()
        groups: dict[str, list[_Spelled]] = {}
        for name in [*(_Spelled(text, "the list") for text in known if isinstance(text, str)), *names]:
            groups.setdefault(loosely(name.text), []).append(name)
        yield from (group for group in groups.values() if len({each.text for each in group}) > 1)
