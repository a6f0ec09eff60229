"""What a domain accepts, and what it says it wants: the two must be one."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbookgen.errors import DescriptionError
from workbookgen.language.domains import Choice, Date, Name, Note, Number


@pytest.mark.parametrize(
    ("domain", "inside", "outside"),
    [
        (Number(least=0, most=10), (0, 0.0, 1e-6, 5, 10), (-1e-12, 1e-300, 9e-7, 10.0001)),
        (Number(above=0, below=1), (1e-6, 0.5, 0.999), (0, 1e-300, 9e-7, 1, -0.5, 2)),
        (Number(least=-3, below=0), (-3, -0.1, -1e-300), (-3.1, 0)),
        (Number(least=1, most=9, whole=True), (1, 5.0, 9), (0, 1.5, 8.999999, 10)),
        # Day numbers of spreadsheet programs: 36,526 is 1 January 2000 and 73,050 the last day of 2099 (from memory).
        (Date(), (36_526, 46_000.0, 73_050), (36_525, 73_051, 0)),
    ],
)
def test_a_number_is_accepted_within_its_limits_alone(domain, inside, outside):
    assert [domain.accepts(value) for value in inside] == [True] * len(inside)
    assert [domain.accepts(value) for value in outside] == [False] * len(outside)


@pytest.mark.parametrize("value", [True, False, "5", "", None, float("nan"), [5], 5j])
def test_what_is_no_number(value):
    assert not Number(least=0, most=10).accepts(value)
    assert not Number(least=0, most=10, whole=True).accepts(value)
    assert not Date().accepts(value)


@pytest.mark.parametrize("limits", [{}, {"above": 2}, {"most": 2}, {"least": 0, "above": 0, "most": 1}])
def test_a_number_without_one_limit_at_each_end_is_refused(limits):
    with pytest.raises(DescriptionError, match="one lower limit .* and one upper limit"):
        Number(**limits)


@given(st.floats(allow_nan=False), st.floats(-100, 0, exclude_max=True), st.floats(0, 100))
def test_a_number_is_inside_when_it_breaks_no_limit(value, low, high):
    assert Number(least=low, most=high).accepts(value) == (low <= value <= high)
    assert Number(above=low, below=high).accepts(value) == (low < value < high)


@pytest.mark.parametrize(
    ("domain", "symbol", "words"),
    [
        (Number(above=0, most=500), "g", "a number above 0 up to 500 g"),
        (Number(least=0, below=1), "%", "a percentage from 0% below 100%"),
        (Number(least=0, most=1_000_000), "", "a number from 0 up to 1,000,000"),
        (Number(above=0, most=0.5), "in", "a number above 0 up to 0.5 in"),
        (Number(least=1, most=9, whole=True), "", "a whole number from 1 up to 9"),
        (Date(), "date", "a date between the years 2000 and 2099"),
        (Name(), "", "a name of up to 40 letters"),
        (Name(longest=9), "", "a name of up to 9 letters"),
        (Note(longest=20), "", "words, up to 20 letters"),
        (Choice("reels_listed", "Reels"), "", "one of the names on the sheet Reels"),
        (Choice("ways_name", "Reference", ("carding", "combing")), "", "one of carding, combing"),
        (
            Choice("projects_listed", "Projects", or_none=True),
            "",
            "one of the names on the sheet Projects, or empty it",
        ),
    ],
)
def test_what_is_wanted_is_said_in_words(domain, symbol, words):
    assert domain.wanted(symbol) == words


@pytest.mark.parametrize(
    ("domain", "inside", "outside"),
    [
        (Name(longest=3), ("a", "abc", " a"), ("", " ", "   ", "abcd", None, 3.0, True)),
        (Note(longest=3), ("a", " ", "abc"), ("", "abcd", None, 3.0)),
    ],
)
def test_a_text_is_accepted_up_to_its_length_and_not_blank(domain, inside, outside):
    assert all(domain.accepts(value) for value in inside)
    assert not any(domain.accepts(value) for value in outside)


@pytest.mark.parametrize(
    ("value", "accepted"),
    [
        ("Clock", True),
        ("cLOCK", True),  # a spreadsheet's = does not tell case apart
        ("Niddy", False),  # it is there twice, so it finds no record
        ("Cloc", False),
        ("*", False),
        ("C*", False),  # no wildcard, though a spreadsheet's lookups know them
        (" Clock", False),
        ("", False),
        (None, False),
        (7.0, False),
    ],
)
def test_a_choice_is_one_name_that_stands_once(value, accepted):
    names = ["Clock", "Niddy", "niddy", None, 7.0, ""]
    assert Choice("reels_listed", "Reels").accepts(value, names) is accepted


@pytest.mark.parametrize(
    ("limits", "sentence"),
    [
        ({"above": 0, "most": -10}, "its lower limit 0 is above its upper limit -10"),
        ({"above": 0, "most": "10"}, "its most must be a number or None, and '10' is not"),
    ],
)
def test_limits_that_let_nothing_through(limits, sentence):
    with pytest.raises(DescriptionError) as caught:
        Number(**limits)
    assert str(caught.value) == f"a number's domain: {sentence}."
