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
