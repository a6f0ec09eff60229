"""The one decorator: what it takes, what it turns into plain numbers, what it refuses."""

import warnings

import numpy as np
import pint
import pytest

from workbookgen.reference.calculation import (
    NotApplicable,
    OutOfValidity,
    by_element,
    calculation,
    dimension_of,
    quotient,
    require,
    require_applicable,
    whole_for,
)
from workbookgen.reference.uncertainty import by_reel
from workbookgen.units import Length, Quantity, Ratio


@calculation
def scaled(share: Ratio, length: Length | None = None, name: str = "x"):
    return share, length, name


def test_dimensions_are_read_from_the_annotations():
    assert scaled.dimensions == {"share": "[]", "length": "[length]"}
    assert dimension_of(str) is None


def test_shares_arrive_as_plain_numbers():
    assert scaled(Quantity(12.5, "percent"))[0] == 0.125
    assert scaled(Quantity(1.0, "m/km"))[0] == pytest.approx(0.001)
    assert isinstance(scaled([1, 2])[0], np.ndarray)


def test_none_passes_where_an_argument_is_optional():
    assert scaled(1.0, None)[1] is None


def test_wrong_dimension_and_plain_number_are_refused():
    with pytest.raises(pint.DimensionalityError):
        scaled(Quantity(1.0, "m"))
    with pytest.raises(pint.DimensionalityError):
        scaled(1.0, 2.0)


def test_a_refusal_names_the_kind_that_is_wanted():
    with pytest.raises(pint.DimensionalityError, match=r"\(\[mass\]\) to 'a quantity of' \(dimensionless\)"):
        scaled(Quantity(1.0, "g"))
    with pytest.raises(pint.DimensionalityError, match=r"\(dimensionless\) to 'a quantity of' \(\[length\]\)"):
        scaled(1.0, 2.0)


def test_whole_numbers_in_columns_are_numbers():
    assert scaled(np.array([1, 2]))[0].tolist() == [1.0, 2.0]
    assert scaled([True, 2])[0].dtype == float


def test_require_refuses_what_is_not_a_number():
    require(np.array([1.0, 2.0]) > 0, "never seen")
    with pytest.raises(ValueError, match="above zero"):
        require(np.array([1.0, np.nan]) > 0, "It must be above zero.")


def test_a_refusal_tells_which_values_are_all_right():
    with pytest.raises(OutOfValidity, match="above zero") as refusal:
        require(np.array([1.0, 0.0, np.nan, 2.0]) > 0, "It must be above zero.")
    assert refusal.value.holds.tolist() == [True, False, False, True]


def test_a_refusal_of_a_single_value_has_one_answer():
    with pytest.raises(OutOfValidity) as refusal:
        require(Quantity(-1.0, "m") > Quantity(0.0, "m"), "It must be above zero.")
    assert refusal.value.holds.shape == ()
    assert not refusal.value.holds


def test_a_refusal_of_what_is_given_is_one_of_all_values():
    require_applicable(True, "never seen")
    with pytest.raises(NotApplicable, match="is measured") as refusal:
        by_reel(
            Quantity([200.0, 210.0], "m"),
            Quantity([2.0, 2.0], "m"),
            Quantity([0.01, 0.01], "m"),
            washed_loop=Quantity([1.9, 1.9], "m"),
        )
    assert refusal.value.is_of_all and not OutOfValidity("It must be above zero.", [False, True]).is_of_all


def test_by_element_gives_a_text_or_an_object_array_of_texts():
    assert by_element(str.upper, "a") == "A"
    many = by_element(str.upper, ["a", "bc"])
    assert many.dtype == object and list(many) == ["A", "BC"]


def test_what_arithmetic_leaves_in_the_processor_is_no_fault_of_a_function():
    """Comparing with a number that is none raises a flag, which NumPy 2.5 reports and those before it do not."""
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        assert list(by_element(lambda each: each < 1.0, np.array([np.nan, 0.5, 2.0]))) == [False, True, False]
    assert list(by_element(lambda each: np.geterr()["invalid"], [1.0])) == ["ignore"]


def test_what_a_function_refuses_it_refuses_by_element():
    with pytest.raises(ZeroDivisionError):
        by_element(lambda each: 1 / each, [1, 0])


@pytest.mark.parametrize(
    "share, whole",
    [
        (0.0, 0),
        (1.0, 1),
        (2.1, 3),
        (2.0000000000000004, 2),
        (2.0000001, 2),
        (2.000001, 3),
        (5e-7, 1),
        (4.9e-7, 0),
        (0.1 * 3 * 10, 3),
        (166_700_000.00000003, 166_700_000),
    ],
)
def test_a_part_takes_a_whole_one_and_noise_takes_none(share, whole):
    assert whole_for(share) == whole
    assert whole_for(np.array([share, 1.0])).tolist() == [whole, 1.0]


def test_a_quotient_is_nothing_where_nothing_is_below():
    assert [quotient(6, 4), quotient(6.0, 0), quotient(0, 0.0), quotient(1, 0.5)] == [1.5, 0, 0, 2]
    assert quotient(6, np.array([3.0, 0.0, 0.5])).tolist() == [2, 0, 12]
    assert quotient(np.array([[1.0], [2.0]]), np.array([0.0, 4.0])).tolist() == [[0, 0.25], [0, 0.5]]
