"""A quantity of the wrong dimension is never taken, in whatever argument it stands."""

import numpy as np
import pint
import pytest

from workbookgen.reference import (
    agreement,
    fiber,
    planning,
    plying,
    project,
    records,
    scouring,
    statistics,
    uncertainty,
)
from workbookgen.units import Quantity

from .examples import EXAMPLES, label, public_calculations, single

# What a calculation takes only to refuse it: there is no right call with it.
REFUSED = [
    (calculation, arguments, "washed_loop")
    for calculation, arguments in EXAMPLES
    if calculation in (uncertainty.by_reel, uncertainty.by_shrinkage)
]
REFUSED += [
    (calculation, arguments, known)
    for calculation, arguments in EXAMPLES
    for refusing, known in ((project.while_open, "used"), (plying.expected_weight, "net"))
    if calculation is refusing
]


def of_a_dimension(example) -> list[str]:
    """The arguments whose dimension is stated, of one call."""
    calculation, arguments = example
    refused = [name for refusing, given, name in REFUSED if refusing is calculation and given is arguments]
    return [name for name in arguments if name in calculation.dimensions] + refused


def test_every_stated_dimension_is_tried():
    tried = {(example[0], name) for example in EXAMPLES for name in of_a_dimension(example)}
    stated = {(calculation, name) for _, calculation in public_calculations() for name in calculation.dimensions}
    untried = [f"{calculation.__name__}({name}=…)" for calculation, name in stated - tried]
    assert not untried, f"Neither the example on its page nor one in tests/reference/examples calls: {untried}"


@pytest.mark.parametrize("calculation, arguments, name", REFUSED)
def test_what_is_known_leaves_nothing_to_expect_or_to_ask(calculation, arguments, name):
    with pytest.raises(ValueError, match="loop of the washed skein is measured|The piece is finished|It was weighed"):
        calculation(
            **single((calculation, arguments), 0), **{name: Quantity(1.5, "m" if name == "washed_loop" else "oz")}
        )


@pytest.mark.parametrize("example", EXAMPLES, ids=label)
def test_an_electric_current_is_refused(example):
    assert [name for name in of_a_dimension(example) if not refuses(example, name, Quantity(1.0, "ampere"))] == []


@pytest.mark.parametrize("example", EXAMPLES, ids=label)
def test_a_plain_number_is_taken_only_where_no_dimension_is_meant(example):
    calculation, right = example[0], single(example, 0)
    for name in of_a_dimension(example):
        if calculation.dimensions[name] == "[]":
            percent = Quantity(np.multiply(right[name], 100), "percent")
            assert calculation(**{**right, name: percent}) == calculation(**right), name
        else:
            assert refuses(example, name, 1.0), name


def refuses(example, name, value) -> bool:
    """Whether a calculation takes the value of this argument for one of another dimension."""
    try:
        example[0](**{**single(example, 0), name: value})
    except pint.DimensionalityError:
        return True
    return False


LENGTH, MASS = Quantity(1.0, "m"), Quantity(2.0, "g")


@pytest.mark.parametrize(
    "call",
    [
        lambda: fiber.midpoint(LENGTH, MASS),
        lambda: fiber.midpoint(1.0, LENGTH),
        lambda: fiber.rectangular_uncertainty(LENGTH, MASS),
        lambda: project.surplus(LENGTH, MASS),
        lambda: agreement.agrees(LENGTH, MASS, 0.1),
        lambda: records.spun("a", ["a"], Quantity([1.0], "g"), ["a"], Quantity([1.0], "m")),
        lambda: planning.hours(LENGTH, Quantity(2.0, "g/hour")),
        lambda: planning.hours(1.0, 2.0),
        lambda: statistics.mean(LENGTH, MASS),
        lambda: statistics.count(LENGTH, 1.0),
        lambda: statistics.deviation(LENGTH, MASS),
        lambda: statistics.variation(LENGTH, MASS),
        lambda: statistics.relative_deviation(LENGTH, MASS),
        lambda: statistics.variation_of_sums(LENGTH**2, 2, MASS),
        lambda: statistics.variation_of_sums(LENGTH, 2, LENGTH),
        lambda: statistics.variation_of_sums(9.0, 2, LENGTH),
        lambda: uncertainty.combined(LENGTH, MASS),
        lambda: uncertainty.combined(1.0, LENGTH),
        lambda: uncertainty.surplus_uncertainty(LENGTH, MASS),
        lambda: uncertainty.chance_enough(LENGTH, MASS),
        lambda: uncertainty.more_for(LENGTH, LENGTH, 1.3, MASS, 0.1),
    ],
)
def test_two_quantities_must_be_of_one_kind(call):
    with pytest.raises(pint.DimensionalityError):
        call()


def test_a_difference_of_temperatures_is_no_temperature():
    with pytest.raises(pint.DimensionalityError):
        scouring.temperature_words(Quantity(60.0, "delta_degC"))
