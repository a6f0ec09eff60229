"""Which texts are one name: Unicode's simple case folding, and the plain blank."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbookgen.language.domains import Choice, Name
from workbookgen.language.repeated import as_typed
from workbookgen.reference import records
from workbookgen.texts import folded, is_blank, lines_by_name, loosely, repeated_names, unique_names

# Unicode's CaseFolding.txt, statuses C and S (from memory): small letter, the others that fold to it.
ONE_NAME = [
    ("clover", "CLOVER"),
    ("é", "É"),
    ("я", "Я"),
    ("σ", "ς"),
    ("σ", "Σ"),
    ("s", "ſ"),
    ("k", "\u212a"),
    ("ß", "ẞ"),
    ("ǆ", "ǅ"),
    ("ᾳ", "ᾼ"),
]
TWO_NAMES = [
    ("e", "é"),
    ("é", "e\u0301"),
    ("ß", "ss"),
    ("ẞ", "SS"),
    ("ﬁ", "fi"),
    ("i", "ı"),
    ("i", "İ"),
    ("a b", "a\u00a0b"),
    ("a b", "a\tb"),
    ("a b", "a\u3000b"),
    ("a", "a "),
    ("co-op", "coop"),
]


@pytest.mark.parametrize(("one", "other"), ONE_NAME)
def test_capitals_make_no_other_name(one, other):
    assert folded(one) == folded(other)
    assert Choice("reels_listed", "Reels").accepts(other, [one])
    assert records.lookup(other, [one], [2.0]) == 2.0
    assert records.sum_where(other, [one], [2.0]) == 2.0


@pytest.mark.parametrize(("one", "other"), TWO_NAMES)
def test_all_else_does(one, other):
    assert folded(one) != folded(other)
    assert not Choice("reels_listed", "Reels").accepts(other, [one])
    assert records.sum_where(other, [one], [2.0]) == 0.0
    with pytest.raises(ValueError, match="not in the list"):
        records.lookup(other, [one], [2.0])


@given(st.text())
def test_folding_is_letter_by_letter_and_settled(text):
    assert len(folded(text)) == len(text)
    assert folded(folded(text)) == folded(text)


@pytest.mark.parametrize("text", ["\u00a0", "\t", "\n", "\u3000", "\u2003", "\u0085", " \u00a0 "])
def test_only_plain_blanks_are_nothing(text):
    assert Name().accepts(text)
    assert as_typed(text) == text
    assert records.lookup("a", ["a"], [text]) == text
    assert not is_blank(text)


@pytest.mark.parametrize("text", ["", " ", "   "])
def test_plain_blanks_are(text):
    assert is_blank(text)
    assert not Name().accepts(text)
    with pytest.raises(ValueError, match="blank"):
        as_typed(text)


@pytest.mark.parametrize(
    ("one", "other"),
    [("é", "E\u0301"), ("Straße", "STRASSE"), ("ﬁne", "Fine"), ("a b", "A\u00a0b"), (" a\u3000 b", "a b")],
)
def test_what_some_program_takes_for_one_name(one, other):
    assert loosely(one) == loosely(other)


def test_other_letters_are_others_even_so():
    assert loosely("e") != loosely("é")
    assert loosely("coop") != loosely("co-op")


def test_the_lines_of_a_name_are_those_that_spell_it_in_any_case():
    column = ["Clover", None, "clover", "Fern", 3.0]
    assert lines_by_name(column) == {"clover": [0, 2], "fern": [3]}
    assert unique_names(column) == {"fern"} and repeated_names(column) == {"clover"}
