"""Lines of lists: the place of a name is found once per record, and kept in a hidden column.

Whatever is looked up by that name is taken from this line, so each list is searched once per record, however much is
taken from it. What a list sums up by name is summed up by line, which every program does several times as fast.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from workbookgen.language.domains import Choice
from workbookgen.language.fields import Automatic, Input, Result
from workbookgen.language.forms import LOOKUP, SUMS


@dataclass(frozen=True)
class Position(Automatic):
    """The line of a list in which a record's name occurs; blank unless it occurs exactly once."""

    names: str = ""  # full key of the list
    name: str = ""  # key of the word whose line this is
    follows: str = ""  # key of the line of another word, which this one repeats where there is one


def positions_needed(own: list[tuple[str, str]], fields: Mapping[str, Input | Result]) -> tuple[Position, ...]:
    """The lines kept for a block's records: one for each list and word.

    `own` are the lists that the block itself is. A word that is looked for in several lists has a line in each. A
    result that only repeats a choice follows that choice's line.
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
    """The list that is searched, and the word whose name is looked for, in each of these forms."""
    return [call.keys[1:] for each in results for call in each.text.calls_to(*forms)]


def position_of(
    lines: tuple[Position, ...], fields: Mapping[str, Input | Result], key: str, names: str
) -> Position | None:
    """The line in which a field's text occurs in a list; that of the input if the field only repeats it."""
    for each in lines:
        if (each.names, each.name) == (names, key):
            return each
    field = fields.get(key)
    is_copy = isinstance(field, Result) and not field.only_if and isinstance(fields.get(field.formula), Input)
    return position_of(lines, fields, field.formula, names) if is_copy else None
