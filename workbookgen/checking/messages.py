"""What every record should say of itself: the twin in Python of the message formula in `book`."""

from collections import Counter
from collections.abc import Callable, Mapping, Sequence

from workbookgen.language.fields import Input
from workbookgen.language.parts import Block
from workbookgen.language.sentences import doubled, missing, refusal
from workbookgen.texts import folded


def messages(
    block: Block,
    columns: Mapping[str, Sequence],
    accepts: Callable[[Input, object], bool],
    listed: Sequence,
    system: str,
) -> list[str | None]:
    """One message a record, None where there is nothing to say.

    `columns` are the block's inputs as typed, `accepts` says whether an input takes a value,
    `listed` are the names by which other sheets find this block's records.
    """
    times = Counter(folded(name) for name in listed if isinstance(name, str))
    return [
        _message(block, {key: column[row] for key, column in columns.items()}, accepts, times, system)
        for row in range(block.rows)
    ]


def _message(block: Block, record: dict, accepts, times: Counter, system: str) -> str | None:
    if all(value is None for value in record.values()) or all(_is_as_new(each.first(system), record[each.key]) for each in block.inputs):
        return None
    for each in block.inputs:
        if record[each.key] is not None and not accepts(each, record[each.key]):
            return refusal(each, system)
    for each in block.inputs:
        name = record[each.key]
        if block.names_its_records(each) and isinstance(name, str) and times[folded(name)] > 1:
            return doubled(each)
    for rule in block.rules:
        numbers = [word for word in rule.text.words if not block.by_key[word].is_text]
        if all(record[word] is not None for word in numbers if word not in rule.text.asked) and rule.broken(record):
            return rule.sentence
    for each in block.inputs:
        if each.needed and record[each.key] is None:
            return missing(each)
    return None


def _is_as_new(first, value) -> bool:
    """Whether an input still holds what a new planner brings along; a spreadsheet takes capitals for small letters."""
    if isinstance(value, str) and isinstance(first, str):
        return folded(value) == folded(first)
    return value == first and not isinstance(value, bool)
