"""A field that is described wrongly is refused where it is written."""

import pytest

from workbookgen.errors import DescriptionError
from workbookgen.language.domains import Choice, Name, Note, Number
from workbookgen.language.fields import Input, Result, Rule, check_keys
from workbookgen.language.quantities import LENGTH


def sum_of(first, second):
    return first + second


def test_the_words_of_formula_and_condition_count_alike():
    result = Result("both", "Both", "first + second", sum_of, only_if="AND(given(third), first > 0)")
    assert result.words == ("first", "second", "third")
    assert result.asked == {"third"}


def test_uses_renames_a_parameter():
    result = Result("both", "Both", "first + weight", sum_of, uses={"second": "weight"})
    assert result.arguments == {"first": "first", "second": "weight"}


def test_a_parameter_that_the_reference_lacks():
    with pytest.raises(DescriptionError, match="field both: its reference has no parameter third"):
        Result("both", "Both", "first + second", sum_of, uses={"third": "weight"})


@pytest.mark.parametrize("how", [{"formula": "XLOOKUP(first, second)"}, {"formula": "first + second", "only_if": "first ^ 2 > 0"}])
def test_what_is_outside_the_profile(how):
    with pytest.raises(DescriptionError, match="field both: .*(XLOOKUP|\\^)"):
        Result("both", "Both", reference=sum_of, **how)


def test_a_rule_is_looked_through_as_well():
    with pytest.raises(DescriptionError, match="the rule 'First: too much.': the function XLOOKUP"):
        Rule("XLOOKUP(first, second) > 1", lambda record: False, "First: too much.")


def test_all_faults_are_told_at_once():
    with pytest.raises(DescriptionError) as caught:
        Result("both", "Both", "NOW() + (first", sum_of, uses={"third": "weight"})
    assert all(each in str(caught.value) for each in ("NOW", "brackets", "third"))
    assert caught.value.exit_code == 2


def test_text_or_number():
    assert not Result("both", "Both", "first + second", sum_of, unit=LENGTH).is_text
    assert Result("both", "Both", "first & second", sum_of, unit=None).is_text
    assert not Input("a_b", "A", Number(least=0, most=1)).is_text
    assert all(Input("a_b", "A", domain).is_text for domain in (Name(), Note(), Choice("reels_listed", "Reels")))


def test_what_a_result_does_without():
    result = Result("both", "Both", "IF(given(first), first, second)", sum_of)
    needed, spare = Input("x_y", "X", Number(least=0, most=1)), Input("x_y", "X", Number(least=0, most=1), blank_means=0)
    assert result.may_miss("first", needed)  # it asks
    assert result.may_miss("second", spare)  # a blank cell means zero
    assert not result.may_miss("second", needed)


def test_the_reference_is_named_by_its_path():
    from workbookgen.reference import reeling

    result = Result("both", "Both", "cord / turns", reeling.measured_loop, LENGTH)
    module, _, function = result.reference_path.rpartition(".")
    assert module.startswith("workbookgen.reference.reeling") and function == "measured_loop"


def test_keys_that_cannot_be_borne_are_all_told():
    fields = tuple(Input(key, "Label", Note()) for key in ("tex1", "Loop", "wraps", "wraps"))
    with pytest.raises(DescriptionError) as caught:
        check_keys("block skeins", fields)
    said = str(caught.value)
    assert said.startswith("block skeins: ")
    assert "tex1: this key is also a cell address" in said
    assert "Loop: a key is written in lower case" in said
    assert "wraps is used twice" in said


def test_keys_that_can_be_borne():
    assert check_keys("block skeins", (Input("wraps", "W", Note()), Input("rest", "R", Note()))) is None
