"""The expected values of automatic fields: the Python twins of the formulas in `book.automatic` and `book.messages`."""

from collections.abc import Callable, Mapping, Sequence, Set
from dataclasses import dataclass
from functools import cached_property

from workbookgen.errors import DescriptionError
from workbookgen.language.automatic import (
    FAULT,
    FILLED,
    FIRST,
    LINE,
    MARK,
    MESSAGE,
    OPEN,
    OWN_LINE,
    QUESTIONS,
    SPOILED,
    UNFINISHED,
)
from workbookgen.language.entries import Entry
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import Block
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, MISSING, UNKNOWN, doubled, missing, refusal, unit_of, unusual
from workbookgen.texts import folded, repeated_names

WRONG, LACKS, ASKED = "!", "…", "?"


@dataclass(frozen=True)
class Records:
    """The records of a block in a planner."""

    block: Block
    columns: Mapping[str, Sequence]  # the inputs as typed, and the results that questions read
    listed: Sequence  # the names by which other sheets find these records
    distinct: Mapping[str, Sequence]  # the results that no two records may share
    accepts: Callable[[Input, object], bool]  # whether an input accepts a value

    def record(self, row: int) -> dict:
        return {key: column[row] for key, column in self.columns.items()}

    @cached_property
    def doubled_names(self) -> Set[str]:
        return repeated_names(self.listed)

    @cached_property
    def doubled_texts(self) -> dict[str, Set[str]]:
        return {key: repeated_names(column) for key, column in self.distinct.items()}


def automatic(records: Records, folded_away: Sequence[str], system: str) -> dict[str, tuple]:
    """The values of a block's automatic fields, by key; None where there is nothing to say.

    `folded_away` are the keys of the inputs that the log's view folds.
    """
    block, columns = records.block, records.columns
    lines = tuple(float(row) for row in range(1, block.rows + 1))
    if not block.inputs:
        return {LINE.key: lines, OWN_LINE.key: lines} if block.automatic else {}
    typed = [any(columns[each.key][row] is not None for each in block.inputs) for row in range(block.rows)]
    begun = [_is_begun(block, records.record(row), system) for row in range(block.rows)]
    faults = [_fault(records, row, system) if begun[row] else None for row in range(block.rows)]
    said = [faults[row] or (_question(records, row, system) if begun[row] else None) for row in range(block.rows)]
    marks = [None if each is None else _mark(each) for each in said]
    filled = [float(sum(columns[key][row] is not None for key in folded_away)) or None for row in range(block.rows)]
    first = _at_the_head(said, marks, records.listed)
    answers = {
        MESSAGE.key: said,
        FAULT.key: faults,
        MARK.key: marks,
        FILLED.key: filled,
        OWN_LINE.key: [line if is_typed else 0.0 for line, is_typed in zip(lines, typed, strict=True)],
        FIRST.key: [first],
        OPEN.key: [float(marks.count(WRONG))],
        QUESTIONS.key: [float(marks.count(ASKED))],
        UNFINISHED.key: [float(marks.count(LACKS))],
        SPOILED.key: [0.0],
    }
    return {each.key: tuple(answers[each.key]) for each in block.automatic if each.key in answers}


def _at_the_head(said: Sequence[str | None], marks: Sequence[str | None], listed: Sequence) -> str | None:
    """What the head of a log says: the first message about something wrong, or else the last message."""
    wrong = [row for row, mark in enumerate(marks) if mark == WRONG]
    told = wrong[:1] or [row for row, mark in enumerate(marks) if mark][-1:]
    return f"{_called(listed, told[0])}: {said[told[0]]}" if told else None


def _mark(sentence: str) -> str:
    if sentence.startswith((MISSING, UNKNOWN)):
        return LACKS
    return ASKED if sentence.startswith(ASKING) else WRONG


def _called(listed: Sequence, row: int) -> str:
    """What a record is called: its name, or its line where it has none."""
    return (listed[row] if len(listed) else None) or f"Line {row + 1}"


def _is_begun(block: Block, record: Mapping, system: str) -> bool:
    """Whether a record is neither blank nor a card still as in a new planner."""
    is_blank = all(record[each.key] is None for each in block.inputs)
    return not is_blank and not all(_is_as_new(each.first(system), record[each.key]) for each in block.inputs)


def _fault(records: Records, row: int, system: str) -> str | None:
    """What is wrong in a record, or else what is missing; None if nothing is."""
    block, record = records.block, records.record(row)
    for each in block.inputs:
        if record[each.key] is not None and not records.accepts(each, record[each.key]):
            return refusal(each, system)
    for each in block.inputs:
        name = record[each.key]
        if block.names_its_records(each) and isinstance(name, str) and folded(name) in records.doubled_names:
            return doubled(each)
    for each in block.distinct:
        text = records.distinct[each.key][row]
        if isinstance(text, str) and folded(text) in records.doubled_texts[each.key]:
            return each.sentence
    for rule in block.rules:
        if not rule.asks and is_broken(rule, block, record):
            return rule.sentence
    return next((missing(each) for each in block.inputs if each.needed and record[each.key] is None), None)


def _question(records: Records, row: int, system: str) -> str | None:
    """The first question about a record; None if there is none."""
    block, record = records.block, records.record(row)
    for rule in block.rules:
        if rule.asks and is_broken(rule, block, record):
            return rule.sentence
    return next((unusual(each, system) for each in block.ranged if _is_unusual(each, record[each.key], system)), None)


def _is_unusual(field: Input | Result, value: Entry, system: str) -> bool:
    """Whether there is a number, and it lies outside of the usual range of its field."""
    return value is not None and field.usual.is_left_by(value, unit_of(field, system))


def is_broken(rule: Rule, block: Block, record: dict) -> bool:
    """Whether a rule is broken: the numbers it needs are there, and its condition holds."""
    numbers = [word for word in rule.text.words if not block.by_key[word].is_text]
    try:
        return all(record[word] is not None for word in numbers if word not in rule.text.optional) and rule.broken(
            record
        )
    except (TypeError, LookupError) as slip:
        fails = f"its `broken` fails with {type(slip).__name__}: {slip}"
        raise DescriptionError.at(
            f"block {block.key}", f"the rule {rule.sentence!r} cannot be tried: {fails}."
        ) from slip


def _is_as_new(first: Entry, value: Entry) -> bool:
    """Whether an input still holds what a new planner starts with; case does not matter in a spreadsheet."""
    if isinstance(value, str) and isinstance(first, str):
        return folded(value) == folded(first)
    return value == first and not isinstance(value, bool)
