"""What holds for every law: arrays, refusals of what is no number, and no law forgotten."""

import inspect
import pkgutil

import numpy as np
import pytest

from workbookgen import reference
from workbookgen.units import Quantity

from .examples import ANY_KIND, EXAMPLES, label, length_of, public_laws, single


def test_every_module_is_named_in_the_package():
    found = {module.name for module in pkgutil.iter_modules(reference.__path__)}
    assert found - {"law", "words", "fates"} == set(reference.__all__)


def test_every_public_function_is_a_law_and_has_an_example():
    laws = {function for _, function in public_laws()}
    assert all(hasattr(law, "dimensions") for law in laws)
    assert laws == {law for law, _ in EXAMPLES}


@pytest.mark.parametrize("example", EXAMPLES, ids=label)
def test_arrays_give_what_single_values_give(example):
    law, arguments = example
    whole = law(**arguments)
    for index in range(length_of(arguments)):
        one = law(**single(arguments, index))
        if isinstance(whole, Quantity):
            assert np.ndim(one.magnitude) == 0
            assert whole[index].m_as(one.units) == pytest.approx(one.magnitude, rel=1e-14)
        elif whole.dtype == object:
            assert type(one) is str
            assert whole[index] == one
        else:
            assert np.ndim(one) == 0
            assert whole[index] == pytest.approx(one, rel=1e-14)


# What an argument is when nobody gives it: nothing is lost, taken off or added, and there is one of it.
NEUTRAL = {
    "each": 0.0, "shipping": 0.0, "draw_in": 0.0, "feed": 1, "part_wrap": 0.0, "pieces": 1, "rinses": 0.0, "second_share": 0.0,
    "shrinkage": 0.0, "slip": 0.0, "take_up": 0.0, "hems": Quantity(0.0, "m"), "loom_waste": Quantity(0.0, "m"), "rest": Quantity(0.0, "m"),
    "samples": Quantity(0.0, "m"), "done": Quantity(0.0, "hour"), "tare": Quantity(0.0, "g"),
}
LEFT_OUT = [
    (law, arguments, name)
    for law, arguments in EXAMPLES
    for name in NEUTRAL
    if inspect.signature(law).parameters.get(name, inspect.Parameter.empty) is not inspect.Parameter.empty
    and inspect.signature(law).parameters[name].default not in (None, inspect.Parameter.empty)
]


@pytest.mark.parametrize("law, arguments, name", LEFT_OUT, ids=[f"{label((law, given))}:{name}" for law, given, name in LEFT_OUT])
def test_what_is_left_out_changes_nothing(law, arguments, name):
    given = {word: value for word, value in single(arguments, 0).items() if word != name}
    assert law(**given) == law(**given, **{name: NEUTRAL[name]})


NUMBERS = [
    (law, arguments, name)
    for law, arguments in EXAMPLES
    for name in arguments
    if name in law.dimensions or law in ANY_KIND
]


@pytest.mark.parametrize(
    "law, arguments, name", NUMBERS, ids=[f"{label((law, given))}:{name}" for law, given, name in NUMBERS]
)
def test_what_is_not_a_number_is_refused(law, arguments, name):
    right = single(arguments, 0)
    with pytest.raises(ValueError):
        law(**{**right, name: without_number(right[name])})


def without_number(value):
    # A temperature cannot be multiplied, so the number is exchanged and the unit kept.
    return Quantity(np.nan, value.units) if isinstance(value, Quantity) else np.nan
