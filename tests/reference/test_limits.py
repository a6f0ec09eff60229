"""The sentences with which calculations refuse values are true at the very edge of what they say.

"The slip must be from 0 to under 1" takes 0, and refuses 1 and what is a little below 0. Every
number of every calculation is set to values that may be refused, and each sentence that comes back
is held to its word.
"""

import re
from dataclasses import dataclass

import pytest

from workbookgen.reference.calculation import OutOfValidity
from workbookgen.units import Quantity

from .examples import label, single
from .test_examples import NUMBERS

TRIED = (-2.5, 0.0, 0.5, 1.0, 1.5, 1e6)
A_LITTLE = 1e-6
OF_ANOTHER = {("kept_in_spinning", "sample_loss")}  # what is kept is what is not lost


@dataclass(frozen=True)
class Limits:
    """What a sentence says of a number: the last value that is in, or the first that is out, on either side."""

    lowest: float | None = None
    above: float | None = None
    highest: float | None = None
    below: float | None = None
    whole: bool = False

    def refused(self) -> list[float]:
        edges = [self.lowest - A_LITTLE] if self.lowest is not None else [self.above, self.above - 1] if self.above is not None else []
        edges += [self.highest + A_LITTLE] if self.highest is not None else [self.below, self.below + 1] if self.below is not None else []
        return edges + ([self.lowest - 1, max(self.lowest, 2) + 0.5, max(self.lowest, 2) + A_LITTLE] if self.whole else [])

    def taken(self) -> list[float]:
        step = 1 if self.whole else A_LITTLE
        edges = [self.lowest] if self.lowest is not None else [self.above + step] if self.above is not None else []
        return edges + ([self.highest] if self.highest is not None else [self.below - step] if self.below is not None else [])


NUMBER = r"(-?\d+(?:\.\d+)?|one)"
SAYINGS = [
    (rf"whole number from {NUMBER} to {NUMBER}", lambda low, high: Limits(lowest=low, highest=high, whole=True)),
    (r"(?:take|count) at least two", lambda: Limits(lowest=2, whole=True)),
    (rf"(?:whole number, |whole numbers, from ){NUMBER}", lambda low: Limits(lowest=low, whole=True)),
    (rf"must be from {NUMBER} to (?:under|below) {NUMBER}", lambda low, high: Limits(lowest=low, below=high)),
    (rf"must be above {NUMBER} and up to {NUMBER}", lambda low, high: Limits(above=low, highest=high)),
    (rf"must be between {NUMBER} and {NUMBER}", lambda low, high: Limits(lowest=low, highest=high)),
    (rf"must be under {NUMBER}", lambda high: Limits(below=high)),
    (r"(?:cannot be|cannot be a) negative|a negative amount|before day 0", lambda: Limits(lowest=0)),
    (r"above zero|must have (?:a|an|some) |must hold something|must weigh something|must turn|must be some |some (?:hours|time) for it", lambda: Limits(above=0)),
]


def limits(sentence: str) -> Limits | None:
    """What a sentence says of one number; None where it compares several, or asks for something."""
    for pattern, meaning in SAYINGS:
        if found := re.search(pattern, sentence):
            return meaning(*(1.0 if word == "one" else float(word) for word in found.groups()))
    return None


def of_kind(number: float, example, sentence: str):
    """The number in the unit of the example, or in the one that the sentence names."""
    if "percent" in sentence:
        number /= 100
    if "degrees" in sentence:
        return Quantity(number, "degree")
    return Quantity(number, example.units) if isinstance(example, Quantity) else number


def refusal(calculation, arguments, name, number, sentence="") -> str | None:
    """The sentence with which a calculation refuses a number, if it does."""
    try:
        calculation(**{**arguments, name: of_kind(number, arguments[name], sentence)})
    except OutOfValidity as error:
        return str(error)
    return None


def said():
    """Every sentence about one number that a calculation answers with, and the number it is about."""
    found = {}
    for calculation, arguments, name in NUMBERS:
        right = single(arguments, 0)
        for number in TRIED:
            sentence = refusal(calculation, right, name, number)
            if sentence and limits(sentence) and (calculation.__name__, name) not in OF_ANOTHER and (calculation, name, sentence) not in found:
                found[calculation, name, sentence] = right
    return [(calculation, right, name, sentence) for (calculation, name, sentence), right in found.items()]


SAID = said()


@pytest.mark.parametrize("calculation, arguments, name, sentence", SAID, ids=[f"{label((calculation, given))}:{name}:{words}" for calculation, given, name, words in SAID])
def test_a_refusal_is_true_at_its_edges(calculation, arguments, name, sentence):
    told = limits(sentence)
    for number in told.refused():
        assert refusal(calculation, arguments, name, number, sentence) is not None, f"{number} is taken"
    for number in told.taken():
        assert refusal(calculation, arguments, name, number, sentence) != sentence, f"{number} is refused"


def test_most_numbers_have_a_limit():
    assert len({(calculation, name) for calculation, _, name, _ in SAID}) > 0.7 * len({(calculation, name) for calculation, _, name in NUMBERS})
