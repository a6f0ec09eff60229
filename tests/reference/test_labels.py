"""Words on a ticket, with whole-number arithmetic as the outside witness of rounding."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbookgen.reference import labels
from workbookgen.units import Quantity


@pytest.mark.parametrize(
    "number, unit, words",
    [
        (200, "yard", "200 yd (183 m)"),  # 182.88 m, 1 yd = 0.9144 m exactly
        (100, "m", "109 yd (100 m)"),  # 109.36 yd
        (0, "m", "0 yd (0 m)"),
        (2.5, "yard", "3 yd (2 m)"),
        (0.49, "yard", "0 yd (0 m)"),
        (12345, "yard", "12,345 yd (11,288 m)"),
    ],
)
def test_a_label_says_lengths_in_both_systems(number, unit, words):
    assert labels.length_words(Quantity(number, unit)) == words


@pytest.mark.parametrize(
    "number, unit, words",
    [
        (3.5, "oz", "3.5 oz (99 g)"),  # 99.22 g, 1 oz = 28.349523125 g exactly
        (4, "oz", "4 oz (113 g)"),
        (100, "g", "3.5 oz (100 g)"),  # 3.527 oz
        (10, "oz", "10 oz (283 g)"),
        (3.95, "oz", "4 oz (112 g)"),
        (3.25, "oz", "3.3 oz (92 g)"),
        (0.5, "g", "0.02 oz (0.5 g)"),  # 0.0176 oz
        (1, "g", "0.04 oz (1 g)"),  # 0.0353 oz
        (2.55, "g", "0.09 oz (2.6 g)"),
        (9.96, "g", "0.35 oz (10 g)"),
        (10, "g", "0.4 oz (10 g)"),
        (3, "pound", "48 oz (1,361 g)"),
    ],
)
def test_a_label_says_weights_in_both_systems(number, unit, words):
    assert labels.mass_words(Quantity(number, unit)) == words


@pytest.mark.parametrize(
    "number, unit, words",
    [
        (900, "yard/pound", "900 yd/lb (181 m/100 g)"),  # times 0.2015907
        (1000, "yard/pound", "1,000 yd/lb (202 m/100 g)"),
        (10, "m/g", "4,961 yd/lb (1,000 m/100 g)"),  # 4960.5
        (2, "m/g", "992 yd/lb (200 m/100 g)"),  # 992.11 yd/lb
        (500, "tex", "992 yd/lb (200 m/100 g)"),
    ],
)
def test_a_label_says_grist_in_both_systems(number, unit, words):
    yarn = Quantity(number, unit)
    assert labels.grist_words(1 / yarn if unit == "tex" else yarn) == words


@pytest.mark.parametrize(
    "number, unit, words",
    [
        (10.5, "1/inch", "10.5 wraps per inch"),
        (12, "1/inch", "12 wraps per inch"),
        (5, "1/cm", "12.7 wraps per inch"),  # 1 in = 2.54 cm exactly
        (10.25, "1/inch", "10.3 wraps per inch"),
    ],
)
def test_a_label_says_wraps_per_inch(number, unit, words):
    wraps = Quantity(number, unit)
    assert labels.wraps_words(wraps, counted=wraps) == words


@pytest.mark.parametrize("wraps, words", [(10.4, "about 10"), (10.5, "about 11"), (12, "about 12")])
def test_wraps_that_nobody_counted(wraps, words):
    assert labels.wraps_words(Quantity(wraps, "1/inch")) == f"{words} wraps per inch"


@pytest.mark.parametrize(
    "basis, about",
    [
        (None, ""),
        ("measured", ""),
        ("as bought", ""),
        ("usual shrinkage", "about "),
        ("shrinks as its sample", "about "),
    ],
)
def test_a_length_that_was_not_measured_washed(basis, about):
    assert labels.length_words(Quantity(200, "yard"), basis) == f"{about}200 yd (183 m)"


def test_what_a_skein_is_made_of():
    assert labels.made_of("Gray wool") == "Gray wool"
    assert labels.made_of("Gray wool", "Silk thread") == "Gray wool and Silk thread"
    with pytest.raises(ValueError, match="no name"):
        labels.made_of("", "Silk thread")


def test_the_largest_amounts_that_a_ticket_tells():
    # The docstrings' limits: under 900 km, 28 kg and 2 km to the gram.
    assert labels.length_words(Quantity(899_999.9, "m")) == "984,252 yd (900,000 m)"
    assert labels.mass_words(Quantity(27_999.9, "g")) == "987.7 oz (28,000 g)"
    assert labels.grist_words(Quantity(1_999.99, "m/g")) == "992,104 yd/lb (199,999 m/100 g)"
    for words, amount in (
        (labels.length_words, Quantity(900_000, "m")),
        (labels.mass_words, Quantity(28_000, "g")),
        (labels.grist_words, Quantity(2_000, "m/g")),
    ):
        for more in (amount, amount * 1.5):
            with pytest.raises(ValueError, match="more than a ticket can state"):
                words(more)


@given(quarters=st.integers(0, 400_000))
def test_halves_round_up(quarters):
    whole = (quarters + 2) // 4
    assert labels.length_words(Quantity(quarters / 4, "yard")).startswith(f"{whole:,} yd ")
    assert labels.length_words(Quantity(quarters / 4, "m")).endswith(f" ({whole:,} m)")
    assert not 40 <= quarters < 112_000 or labels.mass_words(Quantity(quarters / 4, "g")).endswith(f" ({whole:,} g)")


@given(hundredths=st.integers(36, 98_000))  # from 10 g on
def test_tenths_of_an_ounce_are_written_as_a_person_writes_them(hundredths):
    ounces, tenths = divmod((hundredths + 5) // 10, 10)
    written = f"{ounces}.{tenths}" if tenths else f"{ounces}"
    words = labels.mass_words(Quantity(hundredths / 100, "oz"))
    assert re.fullmatch(rf"{re.escape(written)} oz \([\d,]+ g\)", words)


def test_a_conversion_does_not_decide_a_half():
    # 1.5 and 2.5 yd, there and back through feet and meters.
    for yards in (1.5, 2.5):
        words = labels.length_words(Quantity(yards, "yard"))
        assert labels.length_words(Quantity(yards * 3, "ft").to("m")) == words


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: labels.length_words(Quantity(-1, "m")), "length cannot be negative"),
        (lambda: labels.length_words(Quantity(10_000, "km")), "length is more than a ticket"),
        (lambda: labels.mass_words(Quantity(-1, "g")), "mass cannot be negative"),
        (lambda: labels.mass_words(Quantity(10_000, "kg")), "mass is more than a ticket"),
        (lambda: labels.grist_words(Quantity(0, "m/g")), "above zero"),
        (lambda: labels.wraps_words(Quantity(0, "1/inch")), "above zero"),
        (lambda: labels.wraps_words(Quantity(39_000, "1/m")), "wraps is more than a ticket"),
        (lambda: labels.grist_words(Quantity(100, "km/g")), "grist is more than a ticket"),
        (lambda: labels.grist_words(Quantity(float("inf"), "m/g")), "finite"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
