"""Calculations refuse numbers outside their limits, and take them at the very edge.

Every number of every calculation is set to values that may be refused. A refusal carries the
limits that were passed; what lies a little beyond them must be refused, and what lies at them
must not be refused for that. What a sentence says of its limits in words of its own is held to
their numbers.
"""

import inspect

import numpy as np
import pytest

from workbookgen.reference import limits as known
from workbookgen.reference.calculation import OutOfValidity
from workbookgen.reference.limits import Limits, require_within
from workbookgen.units import Quantity

from .examples import EXAMPLES, label, single
from .test_every_calculation import numbers_of

TRIED = (-2.5, 0.0, 0.5, 1.0, 1.5, 1e6)
A_LITTLE = 1e-6
OF_ANOTHER = {("kept_in_spinning", "sample_loss")}  # what is kept is what is not lost
IN_WORDS = {1: ("1", "one", "once", "must be a "), 2: ("2", "two"), 0.5: ("0.5", "50"), np.pi / 3: ("60 degrees",)}


def refused(limits: Limits) -> list[float]:
    """The nearest numbers outside."""
    low = (
        [limits.least - A_LITTLE]
        if limits.least is not None
        else [limits.above, limits.above - 1]
        if limits.above is not None
        else []
    )
    high = (
        [limits.most + A_LITTLE]
        if limits.most is not None
        else [limits.below, limits.below + 1]
        if limits.below is not None
        else []
    )
    between = [limits.least - 1, limits.least + 0.5, limits.least + A_LITTLE] if limits.whole else []
    return low + high + between


def taken(limits: Limits) -> list[float]:
    """The last numbers inside."""
    low = [limits.least] if limits.least is not None else [limits.above + A_LITTLE] if limits.above is not None else []
    return low + (
        [limits.most] if limits.most is not None else [limits.below - A_LITTLE] if limits.below is not None else []
    )


def of_kind(number: float, example):
    """A number in the unit of an example; a share or an angle is one by itself."""
    if not isinstance(example, Quantity):
        return number
    return Quantity(number, "").to(example.units) if example.check("[]") else Quantity(number, example.units)


def refusal(calculation, arguments, name, number) -> OutOfValidity | None:
    """How a calculation refuses a number, if it does."""
    try:
        with np.errstate(over="ignore"):  # a million where a share belongs may be more than a float holds
            calculation(**{**arguments, name: of_kind(number, arguments[name])})
    except OutOfValidity as error:
        return error
    return None


def found():
    """Every refusal of a number for its limits: the calculation, right arguments, the number's name, limits, the
    sentence."""
    seen = {}
    for example, name in ((each, name) for each in EXAMPLES for name in numbers_of(each)):
        calculation, right = example[0], single(example, 0)
        for number in TRIED:
            error = refusal(calculation, right, name, number)
            if error and error.limits and (calculation.__name__, name) not in OF_ANOTHER:
                seen.setdefault((calculation, name, error.limits, str(error)), right)
    return [
        (calculation, right, name, limits, sentence) for (calculation, name, limits, sentence), right in seen.items()
    ]


FOUND = found()
IDS = [f"{label((calculation, right))}:{name}:{sentence}" for calculation, right, name, _, sentence in FOUND]


@pytest.mark.parametrize("calculation, arguments, name, limits, sentence", FOUND, ids=IDS)
def test_a_refusal_is_true_at_its_edges(calculation, arguments, name, limits, sentence):
    for number in refused(limits):
        assert refusal(calculation, arguments, name, number) is not None, f"{number} is taken"
    for number in taken(limits):
        assert str(refusal(calculation, arguments, name, number)) != sentence, f"{number} is refused"


def test_most_numbers_have_a_limit():
    assert len({(calculation, name) for calculation, _, name, _, _ in FOUND}) > 0.7 * len(
        {(example[0], name) for example in EXAMPLES for name in numbers_of(example)}
    )


def test_a_sentence_of_its_own_words_names_every_limit_but_nothing():
    for _, _, _, limits, sentence in FOUND:
        for limit in (limits.least, limits.above, limits.most, limits.below):
            if limit and limits.words not in sentence:
                assert any(word in sentence for word in IN_WORDS.get(limit, (f"{limit:g}",))), sentence


def test_a_page_tells_that_a_share_of_nothing_is_refused():
    """That of a range which begins above 0; "outside 0 to 1" would take 0."""
    found = [
        (calculation, name)
        for calculation, _, name, limits, _ in FOUND
        if limits.above == 0 and (limits.most or limits.below)
    ]
    assert found
    for calculation, name in found:
        raises = inspect.getdoc(calculation).partition("Raises\n")[2].partition("\nNotes")[0]
        assert "above 0" in raises, f"{calculation.__name__}({name})"


@pytest.mark.parametrize(
    ("limits", "words"),
    [
        (Limits(least=0), "cannot be negative"),
        (Limits(above=0), "must be above zero"),
        (Limits(least=2), "is 2 or more"),
        (Limits(below=0.9), "must be under 0.9"),
        (Limits(least=0, most=1), "must be between 0 and 1"),
        (Limits(least=0, below=1), "must be from 0 to under 1"),
        (Limits(above=0, most=1), "must be above 0 and up to 1"),
        (Limits(above=0, below=60), "must be above 0 and under 60"),
        (Limits(least=1, whole=True), "is a whole number, 1 or more"),
        (Limits(least=1, most=12, whole=True), "is a whole number from 1 to 12"),
    ],
)
def test_what_limits_want_in_words(limits, words):
    assert limits.words == words


@pytest.mark.parametrize(
    "limits", [each for each in vars(known).values() if isinstance(each, Limits)], ids=lambda each: each.words
)
def test_limits_hold_for_what_lies_within(limits):
    assert all(limits.hold(number) for number in taken(limits))
    assert not any(limits.hold(number) for number in (*refused(limits), float("nan")))
    edges = np.array([*taken(limits), *refused(limits), np.nan])
    assert limits.hold(edges).tolist() == [True] * len(taken(limits)) + [False] * (len(refused(limits)) + 1)


def test_nothing_is_nothing_in_every_unit():
    assert Limits(above=0).hold(Quantity(1e-9, "inch")) and not Limits(above=0).hold(Quantity(0.0, "yard / pound"))
    assert Limits(least=0, most=1).hold(Quantity(99, "percent")) and not Limits(least=0, most=1).hold(
        Quantity(101, "percent")
    )


def test_each_of_several_values_is_held():
    with pytest.raises(OutOfValidity, match="Length and width must be above zero.") as caught:
        require_within(Limits(above=0), "Length and width", np.array([1.0, 0.0, 2.0]), np.array([1.0, 1.0, -1.0]))
    assert caught.value.holds.tolist() == [True, False, False]
    assert caught.value.limits == Limits(above=0)
    with pytest.raises(OutOfValidity, match="^Nothing is there.$"):
        require_within(Limits(above=0), "Nothing is there.", 0.0)
    require_within(Limits(above=0), "Length and width", 1.0, Quantity(2, "m"))


def test_what_is_no_subject_is_told_as_such():
    """Else NumPy would complain of comparing a text with a number."""
    with pytest.raises(TypeError, match="takes limits, a subject in words, then values; 3.0 is no words"):
        require_within(Limits(above=0), 3.0, "Length")
