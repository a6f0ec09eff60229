"""How twist is put in: a wheel that turns, the nearest of its whorls, and a spindle."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.reference import twist
from workbookgen.units import Quantity

from .quantities import inches, per_inch, per_meter

positive = st.floats(1e-2, 1e3)


def test_a_wheel():
    # Worked by hand: 20 in over 2 in is 10, a tenth of it slips; 9 · 4 turns in 6 in are 6 per inch.
    assert twist.geared(inches(20), inches(2)) == approx(10)
    assert twist.drive_ratio(twist.geared(inches(20), Quantity(5.08, "cm")), slip=0.1) == approx(9)
    assert twist.drive_ratio(geared=11, stamped=10, slip=0.1) == approx(9)
    assert twist.inserted(9, 4, inches(6)).m_as("1/inch") == approx(6)
    assert twist.treadles_for(per_inch(6), inches(6), 9) == approx(4)
    assert twist.draft_for(per_inch(6), 4, 9).m_as("inch") == approx(6)
    assert twist.whorl_for(inches(20), 10).m_as("inch") == approx(2)
    assert twist.whorl_for(inches(20), 9, slip=0.1).m_as("inch") == approx(2)


def test_the_band_bends_along_its_middle():
    # Geometry, by the ways that the middle of an eighth of an inch of band goes round: π · (20 + 1/8) and π · (2 +
    # 1/8).
    assert twist.geared(inches(20), inches(2), inches(0.125)) == approx(np.pi * 20.125 / (np.pi * 2.125))
    assert twist.whorl_for(inches(20), 20.125 / 2.125, inches(0.125)).m_as("inch") == approx(2)


@given(wheel=st.floats(5, 40), ratio=st.floats(1.5, 20), band=st.floats(0, 0.2))
def test_the_whorl_gives_the_ratio(wheel, ratio, band):
    whorl = twist.whorl_for(inches(wheel), ratio, inches(band))
    assert twist.geared(inches(wheel), whorl, inches(band)) == approx(ratio)


def test_a_counted_ratio_wins_and_has_its_slip_already():
    # Definition: 79 turns of the flyer in ten of the wheel are 7.9 to 1.
    assert twist.counted_ratio(79) == approx(7.9)
    assert twist.counted_ratio(79, 5) == approx(15.8)
    assert twist.drive_ratio(geared=11, stamped=10, slip=0.1, counted=7.9) == approx(7.9)


@given(treadles=st.floats(0, 20))
def test_no_other_number_of_treadles_is_nearer(treadles):
    nearest = twist.nearest_treadles(treadles)
    assert nearest in range(1, 9)
    assert abs(nearest - treadles) <= min(abs(each - treadles) for each in range(1, 9)) + 1e-6


def test_of_two_as_near_the_fewer_treadles_are_taken_and_never_more_than_can_be_counted():
    assert [twist.nearest_treadles(each) for each in (1.5, 2.5, 5, 6.9, 7.49, 7.51)] == [1, 2, 5, 7, 7, 8]
    assert list(twist.nearest_treadles(np.array([0.2, 30]))) == [1, 8]


def test_the_nearest_whorl_is_named():
    # Worked by hand: 5 per inch wanted; a whorl of 6 with 8 treadles over 10 in gives 4.8, one of 9 with 6 gives 5.4.
    offs = twist.off_the_wanted(per_inch(np.array([4.8, 5.4])), per_inch(5))
    assert offs.m_as("1/inch") == approx([0.2, 0.4], abs=1e-6)
    assert twist.place_of_least(offs) == 1
    assert twist.place_of_least(per_inch(np.array([np.nan, 0.5, 0.25, 0.25]))) == 3
    assert (
        twist.nearest_words("Slow", 8, per_inch(4.8), 8.5)
        == "Nearest to the twist wanted: Slow, 8 treadles to a draft: 4.8 turns per inch (189 per meter)"
    )
    assert (
        twist.nearest_words("Big", 1, per_inch(40), 0.9)
        == "Nearest to the twist wanted: Big, 1 treadle to a draft: 40 turns per inch (1575 per meter)"
    )


def test_the_nearest_whorl_may_be_far():
    # Worked by hand: 8 treadles give 2 per inch, so 6 per inch take 24; of 10 treadles 8 are a fifth too few, and still
    # called near.
    assert twist.nearest_words("Slow", 8, per_inch(2), 24).endswith(
        "2 turns per inch (79 per meter). That is not near: the twist wanted takes 24 treadles"
    )
    assert twist.nearest_words("Slow", 1, per_inch(2), 0.25).endswith(
        "That is not near: the twist wanted takes 0.3 treadles"
    )
    assert "not near" not in twist.nearest_words("Slow", 8, per_inch(2), 10)
    with pytest.raises(ValueError, match="treadles"):
        twist.nearest_words("Slow", 8, per_inch(2), 0)
    assert "999.5 turns per inch" in twist.nearest_words("Slow", 8, per_inch(999.5), 8)
    for too_many in (1000, 2000):
        with pytest.raises(ValueError, match="too many turns"):
            twist.nearest_words("Slow", 8, per_inch(too_many), 8)


def test_equal_ways_to_a_twist_are_equal():
    # 0.1 + 0.2 is not 0.3 to a computer; to a spinner it is, and the first whorl of the list is named.
    offs = twist.off_the_wanted(per_meter(np.array([0.1 + 0.2, 0.3])), per_meter(0.0))
    assert len(set(offs.m_as("1/m"))) == 1


def test_a_spindle():
    # Geometry: a shaft of 1 cm rolls π cm in a turn, so 2 rolls of 10π cm are 20 turns; 30 turns in 3 s are 100 in 10
    # s.
    assert twist.turns_by_roll(Quantity(10 * np.pi, "cm"), Quantity(1, "cm"), 2) == approx(20)
    assert twist.turns_by_time(30, Quantity(3, "second"), Quantity(10, "second")) == approx(100)
    assert twist.spindle_turns(20, 100) == 100
    assert twist.spindle_turns(20) == 20
    assert twist.draft_of_turns(100, per_inch(5)).m_as("inch") == approx(20)
    assert twist.rolls_for(per_inch(2), inches(10), Quantity(10 * np.pi, "cm"), Quantity(1, "cm")) == approx(2)
    assert twist.seconds_for(per_inch(5), inches(20), 30, Quantity(3, "second")).m_as("second") == approx(10)


@given(ratio=positive, treadles=positive, draft=positive)
def test_treadles_and_draft_come_back(ratio, treadles, draft):
    turns = twist.inserted(ratio, treadles, inches(draft))
    assert twist.treadles_for(turns, inches(draft), ratio) == approx(treadles)
    assert twist.draft_for(turns, treadles, ratio).m_as("inch") == approx(draft)


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: twist.geared(inches(0), inches(1)), "wheel"),
        (lambda: twist.geared(inches(1), inches(0)), "whorl"),
        (lambda: twist.geared(inches(1), inches(1), inches(-1)), "band"),
        (lambda: twist.drive_ratio(), "Give the diameters"),
        (lambda: twist.drive_ratio(0), "ratio"),
        (lambda: twist.drive_ratio(1, slip=1), "slip"),
        (lambda: twist.drive_ratio(1, slip=-0.1), "slip"),
        (lambda: twist.counted_ratio(0), "flyer"),
        (lambda: twist.counted_ratio(9, 0), "wheel"),
        (lambda: twist.drive_ratio(counted=0), "ratio"),
        (lambda: twist.nearest_treadles(-1), "negative"),
        (lambda: twist.off_the_wanted(per_inch(-1), per_inch(1)), "negative"),
        (lambda: twist.place_of_least(per_inch(np.array([np.nan]))), "at least one whorl"),
        (lambda: twist.nearest_words(" ", 1, per_inch(1), 1), "blank"),
        (lambda: twist.nearest_words("A", 0, per_inch(1), 1), "one treadle"),
        (lambda: twist.nearest_words("A", 1, per_inch(-1), 1), "negative"),
        (lambda: twist.nearest_words("A", 1, per_inch(1000), 1), "too many turns"),
        (lambda: twist.turns_by_roll(inches(0), inches(1)), "roll"),
        (lambda: twist.turns_by_roll(inches(1), inches(0)), "shaft"),
        (lambda: twist.turns_by_roll(inches(1), inches(1), -1), "rolls"),
        (lambda: twist.turns_by_time(-1, Quantity(1, "s"), Quantity(1, "s")), "turns"),
        (lambda: twist.turns_by_time(1, Quantity(0, "s"), Quantity(1, "s")), "time"),
        (lambda: twist.turns_by_time(1, Quantity(1, "s"), Quantity(0, "s")), "time"),
        (lambda: twist.spindle_turns(), "shaft and roll"),
        (lambda: twist.spindle_turns(-1), "negative"),
        (lambda: twist.draft_of_turns(-1, per_inch(1)), "turns"),
        (lambda: twist.draft_of_turns(1, per_inch(0)), "twist"),
        (lambda: twist.rolls_for(per_inch(-1), inches(1), inches(1), inches(1)), "twist"),
        (lambda: twist.rolls_for(per_inch(1), inches(0), inches(1), inches(1)), "draft"),
        (lambda: twist.seconds_for(per_inch(1), inches(1), 0, Quantity(1, "s")), "turns"),
        (lambda: twist.seconds_for(per_inch(1), inches(1), 1, Quantity(0, "s")), "time"),
        (lambda: twist.whorl_for(inches(20), 200, inches(1)), "too thick"),
        (lambda: twist.whorl_for(inches(0), 1), "wheel"),
        (lambda: twist.whorl_for(inches(1), 0), "ratio"),
        (lambda: twist.inserted(0, 1, inches(1)), "ratio"),
        (lambda: twist.inserted(1, -1, inches(1)), "treadles"),
        (lambda: twist.inserted(1, 1, inches(0)), "draft"),
        (lambda: twist.treadles_for(per_inch(-1), inches(1), 1), "twist"),
        (lambda: twist.treadles_for(per_inch(1), inches(0), 1), "draft"),
        (lambda: twist.treadles_for(per_inch(1), inches(1), 0), "ratio"),
        (lambda: twist.draft_for(per_inch(0), 1, 1), "twist"),
        (lambda: twist.draft_for(per_inch(1), -1, 1), "treadles"),
        (lambda: twist.draft_for(per_inch(1), 1, 0), "ratio"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
