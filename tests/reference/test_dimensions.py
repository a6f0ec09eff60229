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
    reeling,
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
    for refusing, known in (
        (project.while_open, "used"),
        (plying.expected_weight, "net"),
        (planning.fine_beside_the_timed, "own"),
    )
    if calculation is refusing
]
UNITS = {"washed_loop": "m", "used": "oz", "net": "oz", "own": "m/hour"}


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
    with pytest.raises(
        ValueError, match="loop of the washed skein is measured|The piece is finished|It was weighed|own pace"
    ):
        calculation(**single((calculation, arguments), 0), **{name: Quantity(1.5, UNITS[name])})


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


OF_OTHERS = pint.UnitRegistry()  # whoever calls the library from a program of their own has one
OF_OTHERS.define("porch = 2.5 yard")


def test_a_quantity_of_another_registry_is_taken():
    # 100 wraps of 2 yd are 200 yd; of 2.5 yd, which only the other registry calls a porch, 250 yd or 228.6 m.
    assert reeling.length(wraps=100, loop=OF_OTHERS.Quantity(2.0, "yard")) == Quantity(200.0, "yard")
    assert reeling.length(wraps=100, loop=pint.Quantity(2.0, "yard")) == Quantity(200.0, "yard")
    by_a_porch = reeling.length(wraps=OF_OTHERS.Quantity(100.0, ""), loop=OF_OTHERS.Quantity([1.0, 2.0], "porch"))
    assert by_a_porch.m_as("m") == pytest.approx([228.6, 457.2], rel=1e-14)
    # Half and half of 60 °C and 10 °C is 35 °C; a temperature has a zero of its own.
    warm, hot, cold = (OF_OTHERS.Quantity(each, "degC") for each in (35.0, 60.0, 10.0))
    assert scouring.hot_water(OF_OTHERS.Quantity(8.0, "L"), warm, hot, cold).m_as("L") == pytest.approx(4.0)
    # The mean of 3 m and 5 m is 4 m, of whatever kind they are.
    assert statistics.mean(*(OF_OTHERS.Quantity(each, "m") for each in (3.0, 5.0))) == Quantity(4.0, "m")


def test_another_registry_makes_no_other_dimension():
    with pytest.raises(pint.DimensionalityError):
        reeling.length(wraps=100, loop=OF_OTHERS.Quantity(2.0, "gram"))


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
