"""When two values of one cell agree."""

import pytest

from workbookgen.checking.compare import Finding, agree, are_same_words, relative_difference
from workbookgen.engines import ErrorValue

THIRD = 1 / 3


@pytest.mark.parametrize(
    ("expected", "got", "agreed"),
    [
        (1.0, 1.0, True),
        (1.0, 1, True),
        (1.0, 1 + 0.9e-9, True),
        (1.0, 1 + 1.1e-9, False),
        (-1e12, -1e12 + 900, True),
        (-1e12, -1e12 + 1100, False),
        (THIRD, 0.33333333, False),  # a rounded value is not the value
        (0.0, 1e-13, True),  # rounding
        (0.0, 1e-11, False),
        (1.0, -1.0, False),
        (0.0, None, False),  # a zero is not a blank
        (None, 0.0, False),
        (None, None, True),
        (None, "", False),
        ("fine", "fine", True),
        ("fine", "Fine", False),
        ("fine", "fine ", False),
        ("5", 5.0, False),
        (5.0, "5", False),
        (5.0, ErrorValue("#VALUE!"), False),
        (None, ErrorValue("#N/A"), False),
        ("#N/A", ErrorValue("#N/A"), False),
        (float("nan"), float("nan"), False),
        (1.0, float("inf"), False),
    ],
)
def test_only_a_value_of_the_same_kind_and_size_agrees(expected, got, agreed):
    assert agree(expected, got) is agreed


@pytest.mark.parametrize(
    ("expected", "stored", "same"),
    [
        ("1,350 yd, 3.4 oz", "1,350 yd, 3.4 oz", True),
        ("1,350 yd, 3.4 oz", "1\u00a0350 yd, 3,4 oz", True),  # as a program writes it where 3.4 is 3,4
        ("1,350 yd, 3.4 oz", "1\u00a0350 yd, 3\u066b4 oz", True),  # or 3٫4
        ("1,350 yd, 3.4 oz", "1,350 yd, 3,4 oz", True),  # as planners before 0.4.10 had it there
        ("1,350 yd", "1,351 yd", False),
        ("1,350 yd", "1350 yd", False),
        ("3.4 oz", "34 oz", False),
        ("Clover, 4 skeins", "Clover. 4 skeins", False),  # a mark between words is no part of a number
        ("4 skeins, 3 oz", "4 skeins. 3 oz", False),
        ("yes", "no", False),
        (1.5, "1.5", False),
        (None, None, False),  # no words at all
    ],
)
def test_words_with_the_marks_of_another_country(expected, stored, same):
    assert are_same_words(expected, stored) is same


@pytest.mark.parametrize(
    ("expected", "got", "difference"),
    [(100.0, 101.0, 1 / 101), (-2.0, -1.0, 0.5), (3.0, 3.0, 0.0), (0.0, 1e-13, 0.0), ("a", "b", 0.0), (None, 5.0, 0.0)],
)
def test_how_far_apart(expected, got, difference):
    assert relative_difference(expected, got) == pytest.approx(difference, abs=0)


def test_a_finding_in_words():
    whole = Finding(
        "the reference library disagrees",
        "Skeins!M8",
        "skeins_loop",
        "ironcalc",
        {"wraps": 5.0, "reel": None},
        1.5,
        None,
    )
    assert str(whole) == (
        "Skeins!M8 (skeins_loop) in ironcalc: the reference library disagrees; expected 1.5, got None; with wraps = 5.0, reel = None"
    )
    assert str(Finding("the formula is gone", "A1", "key")) == "A1 (key): the formula is gone"
    assert str(Finding("something general")) == "something general"
    assert whole.as_json()["inputs"] == {"wraps": 5.0, "reel": None}
