"""A field that is described wrongly is refused where it is written."""

import pytest

from workbookgen.errors import DescriptionError
from workbookgen.language.domains import Choice, Name, Note, Number
from workbookgen.language.fields import Input, Result
from workbookgen.language.quantities import LENGTH, MASS_PACE, NUMBER, SHARE, TEMPERATURE
from workbookgen.language.rules import Rule
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner
from workbookgen.unit_systems import UNIT_SYSTEMS, UnitSystem
from workbookgen.units import Quantity


def sum_of(first, second):
    return first + second


def test_the_words_of_formula_and_condition_count_alike():
    result = Result("both", "Both", "first + second", sum_of, only_if="AND(given(third), first > 0)")
    assert result.words == ("first", "second", "third")
    assert result.optional == {"third"}


def test_uses_renames_a_parameter():
    result = Result("both", "Both", "first + weight", sum_of, uses={"second": "weight"})
    assert result.arguments == {"first": "first", "second": "weight"}


def test_a_parameter_that_the_reference_lacks():
    with pytest.raises(DescriptionError, match="field both: its reference has no parameter third"):
        Result("both", "Both", "first + second", sum_of, uses={"third": "weight"})


@pytest.mark.parametrize(
    "how", [{"formula": "XLOOKUP(first, second)"}, {"formula": "first + second", "only_if": "first ^ 2 > 0"}]
)
def test_what_is_outside_the_profile(how):
    with pytest.raises(DescriptionError, match="field both: .*(XLOOKUP|\\^)"):
        Result("both", "Both", reference=sum_of, **how)


def test_a_condition_looks_nothing_up():
    with pytest.raises(DescriptionError, match="field both: its condition looks something up"):
        Result("both", "Both", "first + second", sum_of, only_if="lookup(a, b, first) > 0")


def test_a_rule_is_looked_through_as_well():
    with pytest.raises(DescriptionError, match="the rule 'First: too much.': the function XLOOKUP"):
        Rule("XLOOKUP(first, second) > 1", lambda record: False, "First: too much.")


def test_all_faults_are_told_at_once():
    with pytest.raises(DescriptionError) as caught:
        Result("both", "Both", "NOW() + (first", sum_of, uses={"third": "weight"})
    assert all(each in str(caught.value) for each in ("NOW", "brackets", "third"))
    assert caught.value.exit_code == 2


@pytest.mark.parametrize(
    ("how", "sentence"),
    [
        ({"domain": Note(), "unit": LENGTH}, "its domain Note is for texts, which have no unit"),
        ({"unit": LENGTH, "starts_as": Quantity(3, "gram")}, "it starts as 3 gram, which no yd can be"),
        ({"starts_as": Quantity(3, "gram")}, "it starts as 3 gram, which no plain number can be"),
        ({"label": " "}, "its label says nothing"),
        ({"blank_means": -1}, "its blank_means -1 is outside its domain"),
        (
            {"blank_means": 1, "needed": True},
            "it is needed, so a blank cell means nothing: leave needed or blank_means out",
        ),
    ],
)
def test_what_does_not_go_together_in_an_input(how, sentence):
    with pytest.raises(DescriptionError) as caught:
        Input("x_y", **{"label": "X", "domain": Number(least=0, most=5)} | how)
    assert str(caught.value) == f"field x_y: {sentence}."


def test_a_rule_says_something():
    with pytest.raises(DescriptionError, match="the rule '': it says nothing"):
        Rule("first > 1", lambda record: False, "")


def test_a_field_without_a_unit_is_a_text():
    assert not Result("both", "Both", "first + second", sum_of, unit=LENGTH).is_text
    assert Result("both", "Both", "first & second", sum_of, unit=None).is_text
    assert not Input("a_b", "A", Number(least=0, most=1)).is_text
    assert all(Input("a_b", "A", domain).is_text for domain in (Name(), Note(), Choice("reels_listed", "Reels")))


def test_what_a_result_does_without():
    result = Result("both", "Both", "IF(given(first), first, second)", sum_of)
    needed = Input("x_y", "X", Number(least=0, most=1))
    spare = Input("x_y", "X", Number(least=0, most=1), blank_means=0)
    assert result.may_miss("first", needed)  # it asks
    assert result.may_miss("second", spare)  # a blank cell means zero
    assert not result.may_miss("second", needed)


def test_the_reference_is_named_by_its_path():
    from workbookgen.reference import reeling

    result = Result("both", "Both", "cord / turns", reeling.measured_loop, LENGTH)
    module, _, function = result.reference_path.rpartition(".")
    assert module.startswith("workbookgen.reference.reeling") and function == "measured_loop"


@pytest.mark.parametrize(
    ("field", "us", "us_grams", "metric"),
    [
        ("pace_preparing", 2, 57, 57),  # an ounce is 28.35 g (NIST SP 811, from memory)
        ("pace_finishing", 400, 400, 370),  # 365.76 m
        ("scouring_hot", 140, 140, 60),
        ("scouring_cold", 55, 55, 13),  # 12.8 °C
        ("scouring_target", 135, 135, 57),  # 57.2 °C
        ("scouring_ratio", 30, 30, 30),
        ("thickness_fiber_density", 1.31, 1.31, 1.31),
    ],
)
def test_a_card_starts_with_the_same_quantity_in_every_unit_system(field, us, us_grams, metric):
    for system, wanted in (("us", us), ("us-grams", us_grams), ("metric", metric)):
        _, each = planner(Settings(units=system)).by_key[field]
        assert each.first(system) == wanted


def test_a_unit_system_of_meters_and_ounces_is_one_line(monkeypatch):
    monkeypatch.setitem(UNIT_SYSTEMS, "meters-ounces", UnitSystem("meters", "ounces"))
    mixed = ((MASS_PACE, 2, "ounce / hour"), (TEMPERATURE, 140, "degree_Fahrenheit"))
    first = [
        Input("x_y", "X", Number(least=0, most=500), kind, starts_as=Quantity(value, unit)).first("meters-ounces")
        for kind, value, unit in mixed
    ]
    assert first == [2, 60]
    settings = Settings().model_copy(update={"units": "meters-ounces"})
    shown = planner(settings)
    assert {shown.by_key[key][1].unit.unit("meters-ounces").symbol for key in ("fiber_weight", "skeins_gross")} == {
        "oz"
    }
    assert {shown.by_key[key][1].unit.unit("meters-ounces").symbol for key in ("projects_wanted", "skeins_rest")} <= {
        "m",
        "cm",
    }


def test_a_bare_number_to_start_with_is_refused_where_it_needs_a_unit():
    with pytest.raises(DescriptionError, match="field x_y: .*bare number"):
        Input("x_y", "X", Number(least=0, most=1000), LENGTH, starts_as=400.0)
    with pytest.raises(DescriptionError, match="field x_y: .*nothing but 0"):
        Input("x_y", "X", Number(least=0, most=1000), LENGTH, blank_means=400)
    assert Input("x_y", "X", Number(least=0, most=1), SHARE, starts_as=0.5).first("metric") == 0.5
    assert Input("x_y", "X", Number(least=0, most=9), NUMBER, blank_means=4).blank_means == 4
