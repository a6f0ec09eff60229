"""Comparing the values of a cell: whether two agree, and the finding to report if they do not."""

import math
import re
from dataclasses import asdict, dataclass, field

AGREEMENT = 1e-9  # the relative tolerance for numbers; texts must be equal
NOTHING = 1e-12  # the absolute tolerance: so small a difference is rounding, whatever the values

_MARK = re.compile(r"(?<=[0-9])[.,\u066b\u00a0](?=[0-9])")  # within a number: a decimal mark, or one between thousands


@dataclass(frozen=True)
class Finding:
    """Something that a check found: a disagreement, or anything else that differs from the generator."""

    reason: str
    cell: str = ""
    key: str = ""
    engine: str = ""
    inputs: dict = field(default_factory=dict)
    expected: float | str | None = None
    got: float | str | None = None

    def as_json(self) -> dict:
        return asdict(self)

    def __str__(self) -> str:
        place = f"{self.cell} ({self.key})" if self.cell and self.key else self.cell or self.key
        if not place:
            return self.reason
        where = place + (f" in {self.engine}" if self.engine else "")
        if self.expected is None and self.got is None:
            return f"{where}: {self.reason}"
        given = ", ".join(f"{word} = {value!r}" for word, value in self.inputs.items())
        told = f"{where}: {self.reason}; expected {self.expected!r}, got {self.got!r}"
        return f"{told}; with {given}" if given else told


def agree(expected: object, got: object) -> bool:
    """Whether an engine's value is the expected one."""
    if _is_number(expected) and _is_number(got):
        return math.isclose(expected, got, rel_tol=AGREEMENT, abs_tol=NOTHING)
    return type(expected) is type(got) and expected == got


def are_same_words(expected, stored) -> bool:
    """Whether two texts are the same but for the marks in their numbers: a program writes "2,5 oz" where people do."""
    are_texts = isinstance(expected, str) and isinstance(stored, str)
    return are_texts and _MARK.sub(",", expected) == _MARK.sub(",", stored)


def relative_difference(expected: object, got: object) -> float:
    """How far two agreeing values differ; 0 for texts and blanks."""
    if not _is_number(expected) or not _is_number(got) or expected == got:
        return 0.0
    if abs(expected - got) <= NOTHING:
        return 0.0
    return abs(expected - got) / max(abs(expected), abs(got))


def _is_number(value: object) -> bool:
    return isinstance(value, float | int) and not isinstance(value, bool)
