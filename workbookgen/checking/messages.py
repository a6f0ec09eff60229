"""What a planner should say about records by itself: the Python twins of the formulas in `book.messages`."""

from collections import Counter
from collections.abc import Callable, Mapping, Sequence

from workbookgen.errors import DescriptionError
from workbookgen.language.fields import FILLED, FIRST, LINE, MARK, MESSAGE, OPEN, SPOILED, Input
from workbookgen.language.parts import Block
from workbookgen.language.sentences import ASKING, MISSING, UNKNOWN, doubled, missing, refusal
from workbookgen.texts import folded

WRONG, UNFINISHED, ASKED = "!", "…", "?"


def automatic(
    block: Block,
    columns: Mapping[str, Sequence],
    accepts: Callable[[Input, object], bool],
    listed: Sequence,
    system: str,
    rare: Sequence[str],
    apart: Mapping[str, Sequence] = {},
) -> dict[str, tuple]:
    """The values of a block's automatic fields, by their keys; None where there is nothing to say.

    `columns` are the block's inputs as typed, and the results at which its questions look; `accepts` says whether an
    input takes a value, `listed` are the names by which other sheets find this block's records, `rare` the inputs that
    are folded away, `apart` the results that no two records may share.
    """
    if not block.inputs:
        return {LINE.key: tuple(float(row) for row in range(1, block.rows + 1))} if block.automatic else {}
    said = messages(block, columns, accepts, listed, system, apart)
    marks = [None if each is None else _mark(each) for each in said]
    filled = [float(sum(columns[key][row] is not None for key in rare)) or None for row in range(block.rows)]
    wrong = [row for row, mark in enumerate(marks) if mark == WRONG]
    first = _at_the_head(said, marks, listed)
    answers = {
        MESSAGE.key: said,
        MARK.key: marks,
        FILLED.key: filled,
        FIRST.key: [first],
        OPEN.key: [float(len(wrong))],
        SPOILED.key: [0.0],
    }
    return {each.key: tuple(answers[each.key]) for each in block.automatic if each.key in answers}


def _at_the_head(said: Sequence[str | None], marks: Sequence[str | None], listed: Sequence) -> str | None:
    """What the head of a log says: the first thing wrong, or else the last question or thing unfinished."""
    wrong = [row for row, mark in enumerate(marks) if mark == WRONG]
    told = wrong[:1] or [row for row, mark in enumerate(marks) if mark][-1:]
    return f"{_called(listed, told[0])}: {said[told[0]]}" if told else None


def _mark(sentence: str) -> str:
    return UNFINISHED if sentence.startswith((MISSING, UNKNOWN)) else ASKED if sentence.startswith(ASKING) else WRONG


def _called(listed: Sequence, row: int) -> str:
    """What a record is called: its name, or its line where it has none."""
    return (listed[row] if len(listed) else None) or f"Line {row + 1}"


def messages(
    block: Block,
    columns: Mapping[str, Sequence],
    accepts: Callable[[Input, object], bool],
    listed: Sequence,
    system: str,
    apart: Mapping[str, Sequence] = {},
) -> list[str | None]:
    """One message per record, None where there is nothing to say."""
    times = _times(listed)
    shared = {key: [name for name, number in _times(column).items() if number > 1] for key, column in apart.items()}
    return [
        _message(
            block,
            {key: column[row] for key, column in columns.items()},
            accepts,
            times,
            system,
            [
                each.sentence
                for each in block.apart
                if isinstance(text := apart[each.key][row], str) and folded(text) in shared[each.key]
            ],
        )
        for row in range(block.rows)
    ]


def _times(names: Sequence) -> Counter:
    """How often each name occurs; case does not matter."""
    return Counter(folded(name) for name in names if isinstance(name, str))


def _message(block: Block, record: dict, accepts, times: Counter, system: str, shared: Sequence[str]) -> str | None:
    if all(record[each.key] is None for each in block.inputs) or all(
        _is_as_new(each.first(system), record[each.key]) for each in block.inputs
    ):
        return None
    for each in block.inputs:
        if record[each.key] is not None and not accepts(each, record[each.key]):
            return refusal(each, system)
    for each in block.inputs:
        name = record[each.key]
        if block.names_its_records(each) and isinstance(name, str) and times[folded(name)] > 1:
            return doubled(each)
    if shared:
        return shared[0]
    broken = [rule for rule in block.rules if bites(rule, block, record)]
    if faults := [rule.sentence for rule in broken if not rule.asks]:
        return faults[0]
    for each in block.inputs:
        if each.needed and record[each.key] is None:
            return missing(each)
    return next((rule.sentence for rule in broken), None)  # only questions are left


def bites(rule, block: Block, record: dict) -> bool:
    """Whether a rule is broken: all its numbers that are not asked for are there, and its condition holds."""
    numbers = [word for word in rule.text.words if not block.by_key[word].is_text]
    try:
        return all(record[word] is not None for word in numbers if word not in rule.text.asked) and rule.broken(record)
    except (TypeError, LookupError) as slip:
        raise DescriptionError.at(
            f"block {block.key}",
            f"the rule {rule.sentence!r} cannot be tried: its `broken` fails with {type(slip).__name__}: {slip}.",
        ) from slip


def _is_as_new(first, value) -> bool:
    """Whether an input still holds what a new planner starts with; case does not matter in a spreadsheet."""
    if isinstance(value, str) and isinstance(first, str):
        return folded(value) == folded(first)
    return value == first and not isinstance(value, bool)
