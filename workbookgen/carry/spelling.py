"""Names that are the same to one program and different to another.

Programs agree on case, letter by letter, and differ beyond that (see `texts`): ß and ss, a combining accent, a
no-break space. Such names are carried as they are; this is reported, since in another program other lines may belong
together.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from workbookgen.errors import Fault
from workbookgen.language.domains import Choice
from workbookgen.language.entries import Entries
from workbookgen.language.parts import Column
from workbookgen.language.planner import Planner
from workbookgen.texts import folded, loosely, strictly

WRITE_IT_ONE_WAY = "Write the name in one way in all its places."


def told_apart(planner: Planner, entries: Entries) -> list[Fault]:
    """Names of one list that are not the same, or not different, to every program."""
    return [
        Fault("", f"{first} and {other} are one name to some programs and two to others. {WRITE_IT_ONE_WAY}")
        for names in _spellings(planner, entries)
        for first, other in _pairs(names)
    ]


def beyond_a_to_z(planner: Planner, entries: Entries) -> bool:
    """Whether a name has other capitals in some place; of those the embedded engine knows A to Z alone."""
    return any(
        len({strictly(each.text) for each in names if folded(each.text) == folded(name.text)}) > 1
        for names in _spellings(planner, entries)
        for name in names
    )


@dataclass(frozen=True)
class _Spelled:
    """A name as it is written somewhere, and where first."""

    text: str
    place: str

    def __str__(self) -> str:
        return f'"{self.text}" ({self.place})'


def _pairs(names: list[_Spelled]) -> Iterator[tuple[_Spelled, _Spelled]]:
    """The first of each way to write a name, with each other way."""
    ways = {folded(each.text): each for each in reversed(names)}
    first, *others = sorted(ways.values(), key=names.index)
    yield from ((first, other) for other in others)


def _spellings(planner: Planner, entries: Entries) -> Iterator[list[_Spelled]]:
    """Of each list of names, all ways to write what the most lenient program takes for one name."""
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
            column = dict.fromkeys(entries[f"{block.key}_{each.key}"])
            lists.setdefault(listed, []).extend(_Spelled(text, place) for text in column if isinstance(text, str))
    for listed, names in lists.items():
        holder, each = planner.by_key.get(listed, (None, None))
        known = each.values if isinstance(each, Column) else ()
        groups: dict[str, list[_Spelled]] = {}
        for name in [*(_Spelled(text, "the list") for text in known if isinstance(text, str)), *names]:
            groups.setdefault(loosely(name.text), []).append(name)
        yield from (group for group in groups.values() if len({each.text for each in group}) > 1)
