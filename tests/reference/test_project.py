"""Need, what is in hand, and the verdict in yards and meters."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.reference import fiber, project, reeling
from workbookgen.units import Quantity

from .quantities import grams, yards


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


def test_what_the_pattern_states_beats_an_estimate():
    assert project.wanted_in_use(yards(400), yards(500)) == yards(400)
    assert project.wanted_in_use(estimated=yards(500)) == yards(500)
    assert project.wanted_in_use(yards(400), yards(0)) == yards(400)


def test_what_is_planned_beats_a_sample():
    own, sample = Quantity(900, "yard/pound"), Quantity(2, "m/g")
    assert project.planned_grist(own, sample) == own
    assert project.planned_grist(sample=sample) == sample
    assert project.planned_grist(own, Quantity(0, "m/g")) == own


def test_a_hand_that_spins_finer_than_planned_is_expected_to_go_on():
    assert project.grist_expected(Quantity(2, "m/g"), 1.5).m_as("m/g") == approx(3)


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
    "skeins, have, there, least, most",
    [
        (290, -20, 290, 280, 300),  # others lack 20 yd: its own 290 ± 5 stay, and nobody has less for that
        (290, 300, 300, 280, 380),
        (290, 400, 400, 320, 480),
        (4, 5, 5, 0, 85),
        (290, 215, 290, 280, 300),
    ],
)
def test_what_others_lack_takes_nothing_of_its_own_skeins(skeins, have, there, least, most):
    doubtful = yards(float(skeins)), yards(5.0), yards(float(have)), yards(40.0)
    assert project.there_is(yards(skeins), yards(have)).m_as("yard") == there
    assert project.least_there(*doubtful).m_as("yard") == least
    assert project.most_there(*doubtful).m_as("yard") == most


@pytest.mark.parametrize(
    "skeins, length, ball, holds",
    [(4, 800, None, 200), (1, 150, None, 150), (0, 0, None, 180), (0, 90, None, 180), (4, 800, 50, 50), (2, 0, 50, 50)],
)
def test_a_skein_holds_as_much_as_those_before_it_or_the_ball_or_what_is_usual(skeins, length, ball, holds):
    package = None if ball is None else yards(ball)
    assert project.skein_holds(skeins, yards(length), yards(180), package).m_as("yard") == approx(holds)


@pytest.mark.parametrize("have, need, over", [(1000, 900, 100), (900, 1000, -100), (-20, 30, -50)])
def test_what_is_over_is_what_there_is_less_what_it_takes(have, need, over):
    assert project.surplus(yards(have), yards(need)).m_as("yard") == over
    assert project.surplus(have, need) == over


@pytest.mark.parametrize(
    "of, yards_there", [({}, 250), ({"to_come": yards(800)}, 1050), ({"to_come": yards(-50), "unknown": 0}, 200)]
)
def test_what_there_will_be_is_in_skeins_or_still_to_come(of, yards_there):
    assert project.all_there_is(yards(250), **of).m_as("yard") == yards_there


def test_a_piece_that_took_half_of_its_need_is_half_done():
    """50 g of 4 m/g are 200 m."""
    assert project.used_of_need(grams(50), Quantity(4, "m/g"), Quantity(0.4, "km")) == approx(0.5)
    assert project.while_open(yards(250)) == yards(250)


@pytest.mark.parametrize(
    "of, length",
    [({}, 500), ({"bought_share": 0.5}, 500), ({"bought_share": 1, "design": "Marl"}, 500), ({"bought_share": 1}, 0)],
)
def test_only_a_bought_yarn_that_nobody_plies_is_not_made(of, length):
    assert project.unwashed_length(yards(400), 0.2, **of).m_as("yard") == approx(length)


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: project.yarn_length(yards(-1)), "length wanted"),
        (lambda: project.yarn_length(yards(1), -0.1), "margin"),
        (lambda: project.fiber_for(grams(-1), 0.5), "mass"),
        (lambda: project.fiber_for(grams(1), 0), "share kept"),
        (lambda: project.fiber_for(grams(1), 1.1), "share kept"),
        (lambda: project.wanted_in_use(), "pattern"),
        (lambda: project.wanted_in_use(yards(0), yards(1)), "above zero"),
        (lambda: project.planned_grist(), "Give the grist"),
        (lambda: project.planned_grist(Quantity(0, "m/g"), Quantity(2, "m/g")), "above zero"),
        (lambda: project.planned_grist(sample=Quantity(-1, "m/g")), "above zero"),
        (lambda: project.grist_expected(Quantity(0, "m/g"), 1.5), "above zero"),
        (lambda: project.grist_expected(Quantity(2, "m/g"), 0), "above zero"),
        (lambda: project.kept_in_spinning(), "Choose a lot"),
        (lambda: project.kept_in_spinning(1, 0.8), "share kept"),
        (lambda: project.kept_in_spinning(-0.1), "share kept"),
        (lambda: project.kept_in_spinning(lot=0), "share kept"),
        (lambda: project.unwashed_length(yards(-1), 0.1), "negative"),
        (lambda: project.unwashed_length(yards(1), 0.9), "under 0.9"),
        (lambda: project.per_bobbin(grams(-1), 2), "mass"),
        (lambda: project.per_bobbin(grams(1), 0), "bobbins"),
        (lambda: project.per_bobbin(grams(1), 1.5), "bobbins"),
        (lambda: project.surplus(yards(1), yards(-1)), "needed"),
        (lambda: project.surplus(yards(float("inf")), yards(1)), "number"),
        (lambda: project.all_there_is(yards(-1)), "skeins"),
        (lambda: project.all_there_is(yards(1), yards(1), 1), "not known"),
        (lambda: project.while_open(yards(1), grams(0)), "finished"),
        (lambda: project.used_of_need(grams(-1), Quantity(1, "m/g"), yards(1)), "negative amount"),
        (lambda: project.used_of_need(grams(1), Quantity(0, "m/g"), yards(1)), "grist"),
        (lambda: project.used_of_need(grams(1), Quantity(1, "m/g"), yards(0)), "needed"),
        (lambda: project.left_share(yards(0), yards(1)), "length"),
        (lambda: project.left_share(yards(1), yards(-1)), "skeins"),
        (lambda: project.left_share(yards(1), yards(1), grams(-1)), "negative amount"),
        (lambda: project.there_is(yards(-1), yards(1)), "skeins"),
        (lambda: project.least_there(yards(-1), yards(1), yards(1), yards(1)), "skeins"),
        (lambda: project.least_there(yards(1), yards(-1), yards(1), yards(1)), "uncertainty"),
        (lambda: project.most_there(yards(1), yards(1), yards(1), yards(-1)), "uncertainty"),
        (lambda: project.skein_holds(-1, yards(1), yards(1)), "number of skeins"),
        (lambda: project.skein_holds(1, yards(0), yards(1)), "have a length"),
        (lambda: project.skein_holds(0, yards(-1), yards(1)), "length in skeins"),
        (lambda: project.skein_holds(0, yards(0), yards(0)), "hold something"),
        (lambda: project.skein_holds(0, yards(0), yards(1), yards(0)), "ball"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()


def test_a_bought_strand_takes_no_fiber_and_a_prepared_lot_no_preparing():
    assert project.fiber_for(grams(100), 0.8, 0.5).m_as("g") == approx(62.5)
    assert [project.fiber_for(grams(100), kept, 0.5, 1).m_as("g") for kept in (None, 0.8)] == [0, 0]
    assert [project.to_prepare(grams(100), stage).m_as("g") for stage in (None, 1, 3, 4, 5)] == [100, 100, 100, 0, 0]
    assert project.of_all_strands(grams(62.5), grams(20), 0.5).m_as("g") == approx(82.5)
    with pytest.raises(ValueError, match="not known"):
        project.of_all_strands(grams(62.5), share_2=0.5)


def test_what_is_in_skeins_is_made_and_what_is_finished_too():
    assert project.left_share(yards(400), yards(100)) == approx(0.75)
    assert project.left_share(yards(400), yards(500)) == 0 and project.left_share(yards(400), yards(0), grams(90)) == 0
    assert project.left_share(yards(400), yards(100), grams(90)) == 0
    assert project.unwashed_length(yards(400), 0.2, 1.0).m_as("m") == 0
