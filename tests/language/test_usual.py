"""What people usually type: the range is declared once, shown in the unit of the cell, and its ends are still usual."""

import pytest

from workbookgen.errors import DescriptionError
from workbookgen.language.domains import Name, Number
from workbookgen.language.fields import Input, Result
from workbookgen.language.quantities import LOOP, NUMBER, SHARE, TEMPERATURE
from workbookgen.language.sentences import unit_of, unusual
from workbookgen.language.usual import Usual
from workbookgen.reference.reeling import shrinkage
from workbookgen.units import Quantity

ANY = Number(least=-1000, most=1000)
WATER = Usual(Quantity(32, "degree_Fahrenheit"), Quantity(212, "degree_Fahrenheit"))


def field(usual, unit):
    return Input("one", "This one", ANY, unit, usual=usual)


@pytest.mark.parametrize(
    ("usual", "unit", "system", "inside", "outside"),
    [
        (Usual(most=0.3), SHARE, "us", (-1.0, 0.0, 0.3), (0.300001, 30.0)),
        (Usual(least=2.0), NUMBER, "us", (2.0, 900.0), (1.9999, -3.0)),
        (Usual(most=Quantity(40, "centimeter")), LOOP, "metric", (0.0, 40.0), (40.1,)),
        (Usual(most=Quantity(40, "centimeter")), LOOP, "us", (16.0,), (16.1, 40.0)),
        (WATER, TEMPERATURE, "us", (32.0, 55.0, 212.0), (12.0, 31.9, 213.0)),
        (WATER, TEMPERATURE, "metric", (0.0, 12.0, 100.0), (-0.1, 130.0)),
    ],
)
def test_what_lies_outside_is_unusual(usual, unit, system, inside, outside):
    shown = unit_of(field(usual, unit), system)
    assert [value for value in inside if usual.is_left_by(value, shown)] == []
    assert [value for value in outside if not usual.is_left_by(value, shown)] == []


def test_the_last_digits_do_not_decide():
    assert not Usual(most=0.3).is_left_by(0.1 + 0.2, unit_of(field(None, SHARE), "us"))


@pytest.mark.parametrize(
    ("usual", "unit", "system", "said"),
    [
        (Usual(most=0.3), SHARE, "us", "usually up to 30%. Look at its digits."),
        (Usual(-0.1, 0.3), SHARE, "us", "usually −10% to 30%. Look at its digits."),
        (Usual(least=0.25), SHARE, "us", "usually 25% or more. Look at its digits."),
        (Usual(most=8.0), NUMBER, "us", "usually up to 8. Look at its digits."),
        (WATER, TEMPERATURE, "us", "usually 32 to 212 °F. Look at its digits and its unit."),
        (WATER, TEMPERATURE, "metric", "usually 0 to 100 °C. Look at its digits and its unit."),
    ],
)
def test_the_question_says_what_is_usual(usual, unit, system, said):
    assert unusual(field(usual, unit), system) == f"Is it right? This one: {said}"


def test_a_result_may_have_a_usual_range_too():
    lost = Result(
        "lost",
        "Lost",
        "1 - finished / length",
        shrinkage,
        SHARE,
        usual=Usual(most=0.3, hint="Look at both."),
        uses={"finished": "finished"},
    )
    assert unusual(lost, "us") == "Is it right? Lost: usually up to 30%. Look at both."


@pytest.mark.parametrize(
    ("declared", "said"),
    [
        (lambda: Usual(), "it has no end"),
        (lambda: Input("one", "One", Name(), usual=Usual(most=1.0)), "no plain numbers"),
        (
            lambda: Result("lost", "Lost", "1 - finished / length", shrinkage, SHARE, usual=Usual(most=0.3)),
            "where to look",
        ),
        (lambda: field(Usual(most=1.0), LOOP), "its usual range ends at 1.0, which no in can be"),
        (lambda: field(Usual(most=Quantity(1, "gram")), LOOP), "its usual range ends at 1 gram"),
        (lambda: field(Usual(most=Quantity(1, "gram")), NUMBER), "no plain number can be"),
        (lambda: field(Usual(-1000.0, 5.0), NUMBER), "its domain has nothing below what is usual, -1000"),
        (lambda: field(Usual(most=1000.0), NUMBER), "its domain has nothing above what is usual, 1000"),
        (lambda: field(Usual(most=Quantity(2000, "centimeter")), LOOP), "nothing above what is usual, 2000"),
    ],
)
def test_a_range_of_another_kind_is_refused(declared, said):
    with pytest.raises(DescriptionError, match=said):
        declared()
