"""Dividing a dyed top, by geometry and by what must add up."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.reference import color
from workbookgen.settings import Settings
from workbookgen.units import Quantity

from .quantities import yards

US = described(Settings(units="us"))


def ounces(number):
    return Quantity(number, "ounce")


def test_one_strip_for_each_strand_of_each_skein():
    assert color.strips(2, 3) == 6
    assert color.strips(2, 3, chosen=12) == 12


@given(repeats=st.integers(1, 40), strands=st.integers(1, 12), skeins=st.integers(1, 12))
def test_such_strips_always_hold_the_whole_order(repeats, strands, skeins):
    held = color.repeats_of_strand(repeats, color.strips(strands, skeins), strands, skeins)
    assert held == approx(repeats)
    assert "in the same order" in color.order_words(held, strands * skeins)


def test_fewer_strips_hold_fewer_repeats_each_longer():
    # Four repeats, two strands, one skein: undivided, each strand is one half of the top, two repeats.
    assert color.repeats_of_strand(4, 1, 2, 1) == 2
    assert "in the same order" in color.order_words(2, 2)
    # Five repeats cannot be halved: two and a half.
    assert "Divide into 2 strips" in color.order_words(color.repeats_of_strand(5, 1, 2, 1), 2)


def test_all_strands_weigh_the_top():
    assert color.part(ounces(4), 8).m_as("oz") * 8 == approx(4)


def test_length_is_weight_times_grist_less_the_take_up():
    # 4 oz of singles at 1,600 yd/lb are 400 yd, by definition of the grist; 5% of them go in plying.
    assert color.strand_length(ounces(4), Quantity(1600, "yard/pound")).m_as("yard") == approx(400)
    assert color.strand_length(ounces(4), Quantity(1600, "yard/pound"), 0.05).m_as("yard") == approx(380)


@given(
    shares=st.lists(st.floats(0.01, 1), min_size=1, max_size=8), length=st.floats(1, 5000), repeats=st.integers(1, 40)
)
def test_all_runs_of_all_colors_are_the_yarn(shares, length, repeats):
    parts = np.array(shares) / sum(shares)
    runs = [color.run(yards(length), repeats, min(share, 1.0)).m_as("yard") for share in parts]
    assert sum(runs) * repeats == approx(length)
    assert color.run(yards(length), repeats).m_as("yard") == approx(sum(runs))


def test_strands_that_differ_lose_step():
    ahead = color.out_of_step(yards(200), 0.03)
    assert ahead.m_as("yard") == approx(6)
    assert "no longer meets" in color.meeting_words(ahead, yards(6))
    assert "no longer meets" in color.meeting_words(ahead, yards(5))
    # Of a run of 7.5 yd, 6 yd off, a fifth still meets; of 12 yd, half.
    assert "less than half" in color.meeting_words(ahead, yards(7.5))
    assert "less than half" in color.meeting_words(ahead, yards(11.9))
    assert "to the end" in color.meeting_words(ahead, yards(12))
    assert list(color.meeting_words(yards([3, 6, 9]), yards([12, 8, 9]))) == [
        color.meeting_words(yards(1), yards(run)) for run in (9, 1.5, 1)
    ]
    with pytest.raises(ValueError, match="One strand"):
        color.out_of_step(yards(200), 0.03, 1)


def test_a_color_is_weighed_or_a_share():
    assert color.color_weight(ounces(4), share=0.25).m_as("oz") == approx(1)
    assert color.color_weight(ounces(4), weighed=ounces(1.5)) == ounces(1.5)
    assert color.share_of_top(ounces(1), ounces(4)) == approx(0.25)
    with pytest.raises(ValueError, match="more than the top"):
        color.share_of_top(ounces(5), ounces(4))
    with pytest.raises(ValueError):
        color.color_weight(ounces(4))


def test_the_least_color_and_whether_all_are_there():
    assert color.least_share(np.array([0.5, np.nan, 0.2, 0.3])) == 0.2
    assert color.least_share(np.array([np.nan, 0.4])) == 0.4  # the only one known yet
    assert color.share_of_top(ounces(4), ounces(4)) == 1
    assert color.whole_words(1.0) == "The colors make up the whole top."
    assert "less than" in color.whole_words(0.995) and "more than" in color.whole_words(1.005)


def test_a_color_lasts_for_as_many_rows_as_its_length_gives():
    # 6 yd of one color at 36 in for a row are 6 rows; 6 rows to the inch, one inch.
    rows = color.stripe_rows(yards(6), Quantity(36, "inch"))
    assert rows == approx(6)
    assert color.stripe_width(rows, Quantity(6, "1/inch")).m_as("inch") == approx(1)
    # Of 6 yd as they were plied, a washing that takes a sixth leaves 5: 5 rows.
    assert color.stripe_rows(yards(6), Quantity(36, "inch"), shrinkage=1 / 6) == approx(5)


def test_stripes_of_the_planner_are_of_washed_yarn():
    """By hand: a top of 4 oz for one single of 1,600 yd/lb is 400 yd. A quarter of it in 10 repeats is 10 yd each
    time, 9.5 when washing has taken 5%, and at a yard and an eighth for a row 8.44 rows."""
    from_top = {
        "color_mass": (4.0,),
        "color_repeats": (10.0,),
        "color_strands": (1.0,),
        "color_grist": (1600.0,),
        "color_row": (40.5,),
    }
    entries = with_records(US, starting_entries(US) | from_top, "colors", [{"name": "Rust", "share": 0.25}])
    [values] = expected_of_keys(US, [entries], ["colors_run", "colors_rows"])
    assert values["colors_run"][0] == approx(10) and values["colors_rows"][0] == approx(9.5 * 36 / 40.5)
