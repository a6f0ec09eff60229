"""Need, what is in hand, and the verdict in yards and meters."""

import re
from decimal import ROUND_HALF_UP, Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.reference import fiber, project, reeling
from workbookgen.units import Quantity


def yards(number):
    return Quantity(number, "yard")


def grams(number):
    return Quantity(number, "g")


def test_yarn_length_with_and_without_a_margin():
    assert project.yarn_length(yards(400)).m_as("yard") == approx(440)
    assert project.yarn_length(yards(400), Quantity(15, "percent")).m_as("yard") == approx(460)
    assert project.yarn_length(yards(400), 0) == yards(400)


def test_fiber_is_divided_by_what_is_kept():
    # 10 per cent lost: 111.1 g for 100 g. Adding the loss would give 110 g, too little.
    assert project.fiber_for(grams(100), 0.9).m_as("g") == approx(1000 / 9)


@given(start=st.floats(1, 1e5), kept=st.floats(0.01, 1))
def test_fiber_for_undoes_the_share_kept(start, kept):
    yarn = grams(start * kept)
    assert project.fiber_for(yarn, fiber.share_kept(grams(start), yarn)).m_as("g") == approx(start)


def test_length_in_hand():
    # 4 oz at 1,600 yd/lb are 400 yd.
    found = project.length_in_hand(yards(250), Quantity(4, "oz"), Quantity(1600, "yard/pound"))
    assert found.m_as("yard") == approx(650)


def test_surplus_of_lengths_masses_and_numbers():
    assert project.surplus(Quantity(100, "m"), yards(100)).m_as("m") == approx(8.56)
    assert project.surplus(grams(100), Quantity(1, "kg")).m_as("g") == approx(-900)
    assert project.surplus(3, 1) == 2


@pytest.mark.parametrize(
    "surplus, words",
    [
        (yards(120), "enough, 120 yd (110 m) to spare"),
        (yards(-80), "short by 80 yd (73 m)"),
        (yards(0), "enough, 0 yd (0 m) to spare"),
        (yards(-0.2), "short by 0 yd (0 m)"),
        (yards(0.5), "enough, 1 yd (0 m) to spare"),
        (yards(2.5), "enough, 3 yd (2 m) to spare"),
        (yards(-2.5), "short by 3 yd (2 m)"),
        (Quantity(2.5, "m"), "enough, 3 yd (3 m) to spare"),
        (yards(12345), "enough, 12345 yd (11288 m) to spare"),
    ],
)
def test_verdict(surplus, words):
    assert project.verdict(surplus) == words


def test_verdict_beside_other_projects():
    assert project.verdict(yards(-80), alone=yards(40)) == "enough alone, together short by 80 yd (73 m)"
    assert project.verdict(yards(-80), alone=yards(-10)) == "short by 80 yd (73 m)"
    assert project.verdict(yards(-80), alone=yards(0)) == "enough alone, together short by 80 yd (73 m)"
    assert project.verdict(yards(-80), alone=yards(0.4)) == "enough alone, together short by 80 yd (73 m)"
    assert project.verdict(yards(30), alone=yards(90)) == "enough, 30 yd (27 m) to spare"


def test_a_finished_project_is_neither_enough_nor_short():
    assert project.verdict(yards(-80), alone=yards(40), used=Quantity(9, "oz")) == "finished"
    assert project.verdict(used=Quantity(9, "oz")) == "finished", "whatever its lots were"
    assert list(project.verdict(yards([-80, 30]), used=Quantity([9, 8], "oz"))) == ["finished", "finished"]


@given(quarters=st.integers(-40_000, 40_000))
def test_whole_yards_as_decimal_rounds_them(quarters):
    # Outside witness: decimal's ROUND_HALF_UP, which is away from zero.
    whole = abs((Decimal(quarters) / 4).quantize(Decimal(1), ROUND_HALF_UP))
    words = project.verdict(yards(quarters / 4))
    assert re.search(r"(\d+) yd", words).group(1) == str(whole)
    assert words.startswith("enough" if quarters >= 0 else "short")


def test_what_the_pattern_states_beats_an_estimate():
    assert project.wanted_in_use(yards(400), yards(500)) == yards(400)
    assert project.wanted_in_use(estimated=yards(500)) == yards(500)
    assert project.wanted_in_use(yards(400), yards(0)) == yards(400)


def test_what_is_planned_beats_a_sample():
    own, sample = Quantity(900, "yard/pound"), Quantity(2, "m/g")
    assert project.planned_grist(own, sample) == own
    assert project.planned_grist(sample=sample) == sample
    assert project.planned_grist(own, Quantity(0, "m/g")) == own


def test_a_weighed_sample_beats_what_the_lot_expects():
    assert project.kept_in_spinning(0.1, 0.8) == approx(0.9)
    assert project.kept_in_spinning(0, 0.8) == 1
    assert project.kept_in_spinning(Quantity(5, "percent")) == approx(0.95)
    assert project.kept_in_spinning(lot=0.8) == 0.8


@given(start=st.floats(1, 1e5), kept=st.floats(0.01, 1))
def test_a_sample_keeps_what_it_did_not_lose(start, kept):
    # The other route: the share kept straight from the two weights.
    before, after = grams(start), grams(start * kept)
    found = project.kept_in_spinning(fiber.share_lost(before, after))
    assert found == approx(fiber.share_kept(before, after))
    assert project.fiber_for(after, found).m_as("g") == approx(start)


def test_length_before_washing_is_divided_by_what_is_left():
    # 20 per cent lost: 500 yd leave 400. Adding the loss would give 480 yd, too little. Yarn that grows needs less.
    assert project.unwashed_length(yards(400), 0.2).m_as("yard") == approx(500)
    assert project.unwashed_length(yards(400), Quantity(-25, "percent")).m_as("yard") == approx(320)
    assert project.unwashed_length(yards(400), 0) == yards(400)


@given(finished=st.floats(1, 1e5), share=st.floats(-0.5, 0.89))
def test_washing_takes_back_what_was_added(finished, share):
    unwashed = project.unwashed_length(yards(finished), share)
    assert reeling.shrinkage(unwashed, yards(finished)) == approx(share, abs=1e-9)


@given(mass=st.floats(0, 1e5), bobbins=st.integers(1, 100))
def test_the_bobbins_hold_it_all(mass, bobbins):
    assert bobbins * project.per_bobbin(grams(mass), bobbins).m_as("g") == approx(mass)


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: project.yarn_length(yards(-1)), "length wanted"),
        (lambda: project.yarn_length(yards(1), -0.1), "margin"),
        (lambda: project.fiber_for(grams(-1), 0.5), "mass"),
        (lambda: project.fiber_for(grams(1), 0), "share kept"),
        (lambda: project.fiber_for(grams(1), 1.1), "share kept"),
        (lambda: project.length_in_hand(yards(-1), grams(1), Quantity(1, "m/g")), "length spun"),
        (lambda: project.length_in_hand(yards(1), grams(-1), Quantity(1, "m/g")), "still to come"),
        (lambda: project.length_in_hand(yards(1), grams(1), Quantity(0, "m/g")), "grist"),
        (lambda: project.surplus(yards(-1), yards(1)), "there is"),
        (lambda: project.surplus(yards(1), yards(-1)), "needed"),
        (lambda: project.verdict(), "what the finished piece used"),
        (lambda: project.verdict(Quantity(100_000, "km")), "more than words"),
        (lambda: project.verdict(Quantity(-100_000, "km")), "more than words"),
        (lambda: project.verdict(yards(float("inf"))), "more than words"),
        (lambda: project.wanted_in_use(), "pattern"),
        (lambda: project.wanted_in_use(yards(0), yards(1)), "above zero"),
        (lambda: project.planned_grist(), "Give the grist"),
        (lambda: project.planned_grist(Quantity(0, "m/g"), Quantity(2, "m/g")), "above zero"),
        (lambda: project.planned_grist(sample=Quantity(-1, "m/g")), "above zero"),
        (lambda: project.kept_in_spinning(), "Choose a lot"),
        (lambda: project.kept_in_spinning(1, 0.8), "share kept"),
        (lambda: project.kept_in_spinning(-0.1), "share kept"),
        (lambda: project.kept_in_spinning(lot=0), "share kept"),
        (lambda: project.unwashed_length(yards(-1), 0.1), "negative"),
        (lambda: project.unwashed_length(yards(1), 0.9), "under 0.9"),
        (lambda: project.per_bobbin(grams(-1), 2), "mass"),
        (lambda: project.per_bobbin(grams(1), 0), "bobbins"),
        (lambda: project.per_bobbin(grams(1), 1.5), "bobbins"),
    ],
)
def test_refusals(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()


def test_borders_are_still_inside():
    assert project.fiber_for(grams(100), 1) == grams(100)
    assert project.surplus(yards(0), yards(0)) == yards(0)
    assert project.verdict(yards(0.4999)) == "enough, 0 yd (0 m) to spare"
