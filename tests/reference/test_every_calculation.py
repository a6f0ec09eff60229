"""What holds for every calculation: arrays, refusals of what is no number, and no calculation forgotten."""

import inspect
import pkgutil

import numpy as np
import pytest

from workbookgen import reference
from workbookgen.reference import reeling
from workbookgen.reference.calculation import OutOfValidity
from workbookgen.units import Quantity

from .examples import ANY_KIND, EXAMPLES, label, length_of, public_calculations, single


def test_every_module_is_named_in_the_package():
    found = {module.name for module in pkgutil.iter_modules(reference.__path__)}
    assert found - {"calculation", "limits", "tolerances", "words", "fates"} == set(reference.__all__)


def test_every_public_function_is_a_law():
    assert all(hasattr(calculation, "dimensions") for _, calculation in public_calculations())


@pytest.mark.parametrize("example", EXAMPLES, ids=label)
def test_arrays_give_what_single_values_give(example):
    calculation, arguments = example
    whole = calculation(**arguments)
    for index in range(length_of(example)):
        one = calculation(**single(example, index))
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
    "each": 0.0,
    "shipping": 0.0,
    "draw_in": 0.0,
    "feed": 1,
    "part": 1.0,
    "part_wrap": 0.0,
    "pieces": 1,
    "rinses": 0.0,
    "second_share": 0.0,
    "shrinkage": 0.0,
    "slip": 0.0,
    "take_up": 0.0,
    "hems": Quantity(0.0, "m"),
    "loom_waste": Quantity(0.0, "m"),
    "rest": Quantity(0.0, "m"),
    "samples": Quantity(0.0, "m"),
    "done": Quantity(0.0, "hour"),
    "tare": Quantity(0.0, "g"),
}
LEFT_OUT = [
    (calculation, arguments, name)
    for calculation, arguments in EXAMPLES
    for name in NEUTRAL
    if inspect.signature(calculation).parameters.get(name, inspect.Parameter.empty) is not inspect.Parameter.empty
    and inspect.signature(calculation).parameters[name].default not in (None, inspect.Parameter.empty)
]


@pytest.mark.parametrize(
    "calculation, arguments, name",
    LEFT_OUT,
    ids=[f"{label((calculation, given))}:{name}" for calculation, given, name in LEFT_OUT],
)
def test_what_is_left_out_changes_nothing(calculation, arguments, name):
    given = {word: value for word, value in single((calculation, arguments), 0).items() if word != name}
    assert calculation(**given) == calculation(**given, **{name: NEUTRAL[name]})


def numbers_of(example) -> list[str]:
    """The arguments that are numbers, of one call."""
    calculation, arguments = example
    return [name for name in arguments if name in calculation.dimensions or calculation in ANY_KIND]


@pytest.mark.parametrize("example", EXAMPLES, ids=label)
def test_what_is_no_number_or_has_no_end_is_refused(example):
    calculation, right = example[0], single(example, 0)
    tried = [(name, number) for name in numbers_of(example) for number in (np.nan, np.inf, -np.inf)]
    assert [each for each in tried if not refuses(calculation, right, *each)] == []


def test_of_an_array_only_the_elements_without_an_end_are_refused():
    with pytest.raises(OutOfValidity, match="Every number must be finite") as refused:
        reeling.length(wraps=np.array([100.0, np.inf, 50.0]), loop=Quantity(2.0, "yard"))
    assert refused.value.holds.tolist() == [True, False, True]


def refuses(calculation, right, name, number) -> bool:
    """Whether a calculation refuses a right call in which one argument is this number."""
    try:
        calculation(**{**right, name: of_number(right[name], number)})
    except ValueError:
        return True
    return False


def of_number(value, number):
    # A temperature cannot be multiplied, so the number is exchanged and the unit kept.
    return Quantity(number, value.units) if isinstance(value, Quantity) else number
