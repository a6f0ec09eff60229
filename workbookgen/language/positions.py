"""Positions: the line of a list in which a record's name occurs, kept in a hidden column.

Everything that is looked up by that name is taken from this line, so a list is searched once per record, however many
lookups there are. Sums by name become sums by line, which every program does several times as fast.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from workbookgen.language.automatic import Automatic
from workbookgen.language.domains import Choice
from workbookgen.language.fields import Input, Result
from workbookgen.language.forms import LOOKUP, SUMS


@dataclass(frozen=True)
class Position(Automatic):
    """The line of a list in which a record's name occurs; blank unless it occurs exactly once."""

    names: str = ""  # full key of the list
    name: str = ""  # key of the word that holds the name
    follows: str = ""  # key of another word's position that this one repeats


def positions_needed(own: list[tuple[str, str]], fields: Mapping[str, Input | Result]) -> tuple[Position, ...]:
    """The positions that a block keeps for its records: one for each pair of a list and a word.

    `own` are the lists of the block's own records. A word that is looked for in several lists has a position in each.
    A result that only repeats a choice follows the position of that choice.
    """
    results = [each for each in fields.values() if isinstance(each, Result)]
    inputs = [each for each in fields.values() if isinstance(each, Input)]
    chosen = {each.key: each.domain.of for each in inputs if isinstance(each.domain, Choice)}
    repeated = {each.key: each.formula for each in results if each.formula in chosen}
    looked_up = [pair for pair in _names_and_name(results, LOOKUP) if pair[1] in fields]
    summed = [pair for pair in _names_and_name(results, *SUMS) if pair[0] in chosen.values() and pair[1] in fields]
    apart = [(chosen[word], key) for key, word in repeated.items() if fields[key].only_if]
    lines: dict[tuple[str, str], Position] = {}
    for names, name in (*own, *((names, key) for key, names in chosen.items()), *looked_up, *summed, *apart):
        if (names, name) in lines:
            continue
        before = sum(word == name for _, word in lines)
        key = f"line_of_{name}_{before + 1}" if before else f"line_of_{name}"
        other = lines.get((names, repeated.get(name, "")))
        follows = other.key if other else ""
        lines[names, name] = Position(key, "", is_text=False, names=names, name=name, follows=follows)
    return tuple(lines.values())


def _names_and_name(results: Iterable[Result], *forms: str) -> list[tuple[str, str]]:
    """The list that is searched, and the word with the name, in every call of these forms."""
    return [call.keys[1:] for each in results for call in each.text.calls_to(*forms)]


def position_of(
    lines: tuple[Position, ...], fields: Mapping[str, Input | Result], key: str, names: str
) -> Position | None:
    """The position of a field's text in a list; that of the input if the field only repeats one."""
    for each in lines:
        if (each.names, each.name) == (names, key):
            return each
    field = fields.get(key)
    is_copy = isinstance(field, Result) and not field.only_if and isinstance(fields.get(field.formula), Input)
    return position_of(lines, fields, field.formula, names) if is_copy else None
