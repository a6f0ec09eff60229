"""Amounts as people say them: by hand, one of each unit."""

import pytest

from workbookgen.reference import words
from workbookgen.units import Quantity


def test_each_unit_is_told_as_finely_as_people_say_it():
    told = {
        "yard": "234 yd",
        "meter": "234 m",
        "inch": "234.4 in",
        "centimeter": "234.4 cm",
        "ounce": "234.4 oz",
        "gram": "234 g",
        "pound": "234.4 lb",
        "kilogram": "234.4 kg",
        "yard / pound": "234 yd/lb",
        "meter / hectogram": "234 m/100 g",
        "hour": "234 h",
    }
    assert {unit: words.said(Quantity(234.44, unit)) for unit in words.SPOKEN} == told
    assert words.said(Quantity(2.0, "kilogram")) == "2 kg" and words.said(1234.4) == "1,234"


def test_what_would_round_to_a_million_is_not_told():
    assert words.said(Quantity(999_998.9, "m")) == "999,999 m"
    for too_much in (999_999.0, 1_000_000.0, 2_000_000.0):
        with pytest.raises(ValueError, match="below a million"):
            words.said(Quantity(too_much, "m"))
    assert words.said_in_all(Quantity(99_999_998.9, "m")) == "99,999,999 m"
    with pytest.raises(ValueError, match="hundred million"):
        words.said_in_all(Quantity(99_999_999.0, "m"))


def test_little_is_told_more_finely_and_much_in_whole_units():
    """As it was, yarn from 0.36 oz with a tenth lost was "0.3 oz of 0.4 oz", and a large lot "1234.4 oz"."""
    told = {
        "ounce": [
            "0 oz",
            "0.04 oz",
            "0.36 oz",
            "0.3 oz",
            "1 oz",
            "1 oz",
            "9.6 oz",
            "1,000 oz",
            "1,234 oz",
            "12,345 oz",
        ],
        "gram": ["0 g", "0 g", "0.4 g", "0.3 g", "1 g", "1 g", "9.6 g", "1,000 g", "1,234 g", "12,345 g"],
        "centimeter": [
            "0 cm",
            "0.04 cm",
            "0.36 cm",
            "0.3 cm",
            "1 cm",
            "1 cm",
            "9.6 cm",
            "1,000 cm",
            "1,234 cm",
            "12,345 cm",
        ],
        "yard": ["0 yd", "0 yd", "0 yd", "0 yd", "1 yd", "1 yd", "10 yd", "1,000 yd", "1,234 yd", "12,345 yd"],
    }
    amounts = [0.0, 0.0449, 0.36, 0.3, 0.996, 1.04, 9.6, 999.96, 1234.4, 12_344.6]
    for unit, words_of_them in told.items():
        assert list(words.said(Quantity(amounts, unit))) == words_of_them
        assert list(words.said_in_all(Quantity(amounts, unit))) == words_of_them
    assert words.said(Quantity(9.96, "gram")) == "10 g" and words.said(Quantity(10.4, "gram")) == "10 g"
    assert words.said(Quantity(999.94, "ounce")) == "999.9 oz"
