"""Doubts and chances: worked by hand, and with `uncertainties`, scipy and a million draws as outside witnesses."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx
from scipy import stats
from uncertainties import ufloat

from workbookgen.reference import fiber, project, uncertainty
from workbookgen.units import Quantity

from .quantities import grams, meters, yards

DRAWS = 1_000_000  # as many trials as JCGM 101, 7.2.2 asks for (from memory)
doubts = st.floats(0.001, 1e3)


def test_rectangular_is_scipys_spread_of_a_rectangle():
    assert uncertainty.rectangular(0.1) == approx(stats.uniform(-0.1, 0.2).std())
    assert uncertainty.rectangular(Quantity(0.5, "g")).m_as("g") == approx(stats.uniform(0, 1).std())


@given(half=doubts)
def test_two_ways_to_tell_the_same_rectangle(half):
    by_ends = fiber.rectangular_uncertainty(-half, half)
    assert uncertainty.rectangular(half) == approx(by_ends)


def test_doubts_of_a_gauge_block():
    # JCGM 100, H.1 (from memory): 25, 9.7, 2.9 and 16.6 nm give 32 nm.
    parts = [Quantity(size, "nm") for size in (25.0, 9.7, 2.9, 16.6)]
    assert uncertainty.combined(*parts).m_as("nm") == approx(32, abs=0.5)


def test_doubts_of_different_units_and_gaps():
    assert uncertainty.combined(Quantity(30.0, "mm"), None, Quantity(4.0, "cm")).m_as("mm") == approx(50)
    assert uncertainty.combined(Quantity(5.0, "g")).m_as("g") == approx(5)
    assert uncertainty.product_relative(Quantity(3, "percent"), 0.04) == approx(0.05)


@given(doubts, doubts, doubts, doubts)
def test_the_package_uncertainties_adds_alike(first, second, third, fourth):
    together = sum(ufloat(10, each) for each in (first, second, third, fourth))
    assert uncertainty.combined(first, second, third, fourth) == approx(together.std_dev)
    assert uncertainty.surplus_uncertainty(first, second) == approx((ufloat(9, first) - ufloat(7, second)).std_dev)


@given(st.tuples(*[st.floats(1, 1e3)] * 3), st.tuples(*[st.floats(0.001, 0.05)] * 3))
def test_the_package_uncertainties_multiplies_alike(values, shares):
    first, second, third = (ufloat(value, value * share) for value, share in zip(values, shares, strict=True))
    quotient = first * second / third
    assert uncertainty.product_relative(*shares) == approx(quotient.std_dev / quotient.nominal_value)
    pair = first / third
    assert uncertainty.product_relative(shares[0], shares[2]) == approx(pair.std_dev / pair.nominal_value)


@pytest.mark.parametrize("have, need", [(420, 400), (400, 410), (405, 400), (460, 400)])
def test_a_million_draws_are_enough_as_often_as_the_chance_says(have, need):
    chance = np.random.default_rng(2)
    left_over = yards(chance.normal(have, 12, DRAWS)) - yards(chance.normal(need, 16, DRAWS))
    doubt = uncertainty.surplus_uncertainty(yards(12.0), yards(16.0))
    told = uncertainty.chance_enough(project.surplus(yards(float(have)), yards(float(need))), doubt)
    assert doubt.m_as("yard") == approx(left_over.m_as("yard").std(), rel=0.005)
    assert told == approx((left_over.magnitude >= 0).mean(), abs=0.002)


@pytest.mark.parametrize(
    "surplus, told", [(0.0, 0.5), (20.0, 0.8413447461), (-20.0, 0.1586552539), (40.0, 0.9772498681)]
)
def test_chance_from_the_table_of_the_normal_distribution(surplus, told):
    # Table of the normal distribution at 0, 1 and 2 (from memory).
    assert uncertainty.chance_enough(yards(surplus), Quantity(18.288, "m")) == approx(told, rel=1e-9)


@given(surplus=st.floats(-1e3, 1e3), doubt=st.floats(30, 1e3))
def test_scipy_finds_the_same_chance_even_in_the_tails(surplus, doubt):
    assert uncertainty.chance_enough(surplus, doubt) == approx(stats.norm.cdf(surplus / doubt), rel=1e-11)


def test_without_doubt_the_chance_is_all_or_nothing():
    sure = uncertainty.chance_enough(yards(np.array([1.0, 0.0, -1.0, 20.0])), yards(np.array([0.0, 0.0, 0.0, 20.0])))
    assert sure == approx(np.array([1, 1, 0, 0.8413447461]))


@pytest.mark.parametrize("certainty, z", [(0.5, 0), (0.8413447461, 1), (0.95, 1.645), (0.975, 1.960), (0.99, 2.326)])
def test_coverage_from_the_table_of_the_normal_distribution(certainty, z):
    # Table of the normal distribution (from memory), three decimals.
    assert uncertainty.coverage(certainty) == approx(z, abs=0.0005)


@given(st.floats(0.5, 0.9999))
def test_coverage_undoes_the_chance(certainty):
    z = uncertainty.coverage(certainty)
    assert z == approx(stats.norm.ppf(certainty), rel=1e-9, abs=1e-12)
    assert uncertainty.chance_enough(z, 1.0) == approx(certainty)


amounts = {
    "need": st.floats(1, 1e4),
    "u_share": st.floats(0, 0.3),
    "relative": st.floats(0, 0.25),
    "certainty": st.floats(0.5, 0.999),
}


def test_square_keeps_the_kind_squared():
    assert uncertainty.square(yards(3)).m_as("ft^2") == approx(81)
    assert uncertainty.square(0.5) == 0.25


@given(doubts, doubts)
def test_squares_in_a_column_are_doubts_combined(first, second):
    column = uncertainty.square(yards(first)) + uncertainty.square(yards(second))
    assert np.sqrt(column).m_as("yard") == approx(uncertainty.combined(yards(first), yards(second)).m_as("yard"))


SPUN_OR_BOUGHT = {"share": 0.5, "planned": Quantity(2, "m/g"), "hold": meters(100), "u_batch": 0.03}


@pytest.mark.parametrize("pool, between_skeins, between_balls", [(400, 0.24, 0.16), (10, 0.06, 0.04)])
def test_many_skeins_average_out_and_less_than_one_is_one(pool, between_skeins, between_balls):
    """400 g are half of 1600 m, 16 skeins: √(0.1² · 0.64 + (0.24 / 4)²) if spun, √(0.03² + (0.16 / 4)²) if bought."""
    hand = uncertainty.hand_uncertainty(weight=0.36, u_plan=0.1, ahead=0.0)
    doubts = {"variation": between_skeins, "u_ball": between_balls, "u_hand": hand}
    told = [uncertainty.grist_uncertainty(grams(pool), bought=each, **SPUN_OR_BOUGHT, **doubts) for each in (0, 1)]
    assert told == approx([0.1, 0.05])
    column = uncertainty.grist_uncertainty(grams(pool), bought=np.array([0, 1]), **SPUN_OR_BOUGHT, **doubts)
    assert column == approx(np.array([0.1, 0.05]))


@pytest.mark.parametrize("needs, left, doubt", [(40, 5, 13), (0.5, 5, 13), (0, 60, 13), (0, 5, 5), (0, 0, 0)])
def test_who_needs_no_more_of_it_cannot_have_less_than_nothing(needs, left, doubt):
    """√(9 + 16 + (100 · 0.12)²) = 13."""
    squares = Quantity(9, "g^2"), Quantity(16, "g^2")
    assert uncertainty.coming_uncertainty(*squares, grams(100), 0.12, grams(needs), grams(left)).m_as("g") == doubt
    part, by_hand = (Quantity(9, "g^2"), Quantity(7, "g^2")), {"others_hand": Quantity(9, "g^2")}
    assert uncertainty.coming_uncertainty(*part, grams(100), 0.12, grams(needs), grams(left), **by_hand).m_as(
        "g"
    ) == approx(doubt)
    column = uncertainty.coming_uncertainty(*squares, grams(100), 0.12, grams([needs, 40.0]), grams([left, 5.0]))
    assert column.m_as("g") == approx(np.array([doubt, 13]))


def test_of_lots_that_give_nothing_the_others_take_nothing():
    """Of an empty lot nothing is left, whatever others would take: without the 16 of theirs, √0 = 0."""
    empty = [Quantity(0, "g^2"), Quantity(16, "g^2")]
    told = uncertainty.coming_uncertainty(*empty, grams([0.0, 1e-6]), 0.12, grams(40), grams(0))
    assert told.m_as("g") == approx(np.array([0, 4]))


@pytest.mark.parametrize("more, doubt", [(0, 13), (8, 5), (20, 5)])
def test_lots_that_cannot_give_less_than_nothing_are_less_uncertain(more, doubt):
    """√(144 - 8 · (10 + 8) + 16 + (10 · 0.3)²) = 5 of 169; no square is less than nothing."""
    squares = Quantity(144, "g^2"), Quantity(16, "g^2")
    told = uncertainty.coming_uncertainty(*squares, grams(10), 0.3, grams(40), grams(18), more=grams(more))
    assert told.m_as("g") == approx(doubt)


@pytest.mark.parametrize(
    "in_skeins, weight, to_come, u_to_come, doubt",
    [
        (100, 0.5, 200, 8, 26),  # 3 m of the skeins, twice as much with what is learned from them; 24 m of the scale
        (0.5, 0.5, 1, 8, 10.00072),  # √(36 + 64 + 0.12²)
        (0, 0, 200, 4, 48.2597),  # √(9 + 16 + 48²): no skein has told anything
        (100, 0.5, -200, 4, 5),  # others need more than there is
        (100, 0.5, None, None, 3),
    ],
)
def test_what_is_wrong_about_the_skeins_is_wrong_about_what_is_learned_from_them(
    in_skeins, weight, to_come, u_to_come, doubt
):
    coming = {} if to_come is None else {"to_come": meters(to_come), "u_to_come": meters(u_to_come)}
    told = uncertainty.in_hand_uncertainty(meters(3), meters(in_skeins), weight, u_scale=0.24, **coming)
    assert told.m_as("m") == approx(doubt, rel=1e-6)


def test_one_skein_is_as_uncertain_as_its_wraps_its_tape_its_reel_and_how_slack_it_lay():
    """Of 300 m in 200 wraps of 1.5 m: half a wrap, 4 mm of each loop, 6 mm of the reel's, and 1 percent."""
    skein, loop = meters(300), Quantity(150, "cm")
    assert uncertainty.counted(skein, 200, 0.5).m_as("m") == approx(0.75)
    assert uncertainty.taped(skein, loop, Quantity(4, "mm")).m_as("m") == approx(0.8)
    assert uncertainty.by_reel(skein, loop, Quantity(6, "mm")).m_as("m") == approx(1.2)
    assert uncertainty.by_slack(skein, 0.01, loop).m_as("m") == approx(3)


@pytest.mark.parametrize(
    "shrinkage, sampled, share",
    [(0.2, None, 0.05), (0.2, 0.2, 0.025), (0, 0, 0.02), (-0.25, None, 0.032), (0.2, 0, 0.025)],
)
def test_a_sample_that_was_washed_says_more_than_what_is_usual_even_if_it_lost_nothing(shrinkage, sampled, share):
    doubts = {"u_usual": 0.04, "u_sampled": 0.02, "sampled": sampled}
    assert uncertainty.by_washing(shrinkage, **doubts) == approx(share)
    assert uncertainty.by_shrinkage(meters(1000), shrinkage, **doubts).m_as("m") == approx(1000 * share)


def test_what_a_skein_has_to_itself_is_its_wraps_and_its_tape():
    assert uncertainty.own_square(meters(3), meters(4)).m_as("m^2") == 25
    assert uncertainty.own_square(meters(3)).m_as("m^2") == 9


def test_skeins_of_one_reel_are_all_off_together():
    """(2 + 3)², where two skeins that are off by themselves would make 2² + 3²."""
    parts = [uncertainty.with_its_reel(meters(part), meters(5)).m_as("m^2") for part in (2, 3)]
    assert sum(parts) == 25


@pytest.mark.parametrize(
    "parts, square",
    [
        ({}, 1),
        ({"reel_part": meters(2)}, 5),
        ({"slack_part": meters(3)}, 10),
        ({"shrink_part": meters(4)}, 17),
        ({"reel_part": meters(2), "slack_part": meters(3), "shrink_part": meters(4)}, 30),
    ],
)
def test_what_a_skein_shares_with_others_counts_as_well(parts, square):
    assert uncertainty.skein_uncertainty(Quantity(1, "m^2"), **parts).m_as("m") == approx(square**0.5)


def test_what_skeins_share_is_added_before_it_is_squared():
    told = uncertainty.skeins_uncertainty(Quantity(1, "m^2"), Quantity(4, "m^2"), meters(3), meters(4))
    assert told.m_as("m") == approx(30**0.5)


@pytest.mark.parametrize(
    "known, share",
    [
        ({}, 0.003),
        ({"u_washing": 0.004}, 0.005),
        ({"u_washing": 0.004, "own": Quantity(2, "m/g")}, 0.003),
        ({"u_washing": 0.004, "sample": Quantity(2, "m/g")}, 0.003),
    ],
)
def test_washing_adds_its_doubt_only_where_a_design_says_the_grist(known, share):
    assert uncertainty.common_to_all("Vest", 0.003, **known) == approx(share)


@pytest.mark.parametrize(
    "known, share",
    [
        ({}, 0.003),
        ({"u_washing": 0.004}, 0.003),  # which is counted of all of the yarn
        ({"own": Quantity(2, "m/g")}, 0.003),  # bought ready, and not washed
        ({"u_washing": 0.004, "own": Quantity(2, "m/g")}, 0.005),
        ({"u_washing": 0.004, "sample": Quantity(2, "m/g")}, 0.005),
    ],
)
def test_a_thread_is_washed_also_where_the_grist_is_that_of_washed_yarn(known, share):
    assert uncertainty.bought_together("Vest", 0.003, **known) == approx(share)


@pytest.mark.parametrize("relative, doubt", [({}, 50), ({"relative": 0.1}, 100), ({"relative": 0}, 0)])
def test_a_pattern_is_off_by_its_share_of_the_yardage(relative, doubt):
    assert uncertainty.need_uncertainty(meters(1000), **relative).m_as("m") == approx(doubt)


@pytest.mark.parametrize(
    "own, stated, by_rule, relative",
    [
        (None, None, None, 0.05),
        (None, None, 0, 0.05),
        (None, None, 1, 0.08),
        (None, 900, 1, 0.05),
        (0.03, None, 1, 0.03),
    ],
)
def test_a_stitch_that_is_known_by_rule_alone_leaves_the_need_less_certain(own, stated, by_rule, relative):
    wanted = None if stated is None else meters(stated)
    assert uncertainty.need_relative(meters(900), own, wanted, by_rule) == relative


@pytest.mark.parametrize(
    "own, stated, weft, relative",
    [
        (None, None, 0, 0.05),
        (None, None, 900, 0.08),
        (None, None, 300, 0.08),  # and the rest a warp: some of it is less certain, and none of it more
        (None, 900, 900, 0.05),
        (0.03, None, 900, 0.03),
    ],
)
def test_a_weft_apart_leaves_the_need_less_certain(own, stated, weft, relative):
    wanted = None if stated is None else meters(stated)
    assert uncertainty.need_relative(meters(900), own, wanted, weft=meters(weft)) == relative


@pytest.mark.parametrize(
    "weight, bought, seen, finer",
    [
        (1, 0, 2.5, 1.25),
        (0.5, 0, 2.5, 1.125),
        (1, 0.5, 2.5, 5 / 3),  # of 0.8 of the weight, 0.5 is the thread's: 0.3 for 0.5 planned
        (1, 0.5, 1.6, 2 / 3),
        (1, 1, 2.5, 1),  # all bought: what is seen says nothing of spinning
        (1, 1, 1.6, 1),
        (1, 0.5, 4, 1),  # less than the thread alone weighs
        (1, 0, None, 1),
    ],
)
def test_all_that_is_finer_lies_in_what_was_spun(weight, bought, seen, finer):
    grists = Quantity(2, "m/g"), None if seen is None else Quantity(seen, "m/g")
    assert uncertainty.finer_than_planned(weight, bought, *grists) == approx(finer)


@pytest.mark.parametrize("skeins, weight", [(0, 0), (1, 0.5), (3, 0.75)])
def test_skeins_weigh_against_the_plan_by_their_number(skeins, weight):
    assert uncertainty.learned_weight(0.1, 0.1, skeins) == approx(weight)
    assert uncertainty.learned_weight(0, 0.1, skeins) == 0  # a plan that is sure learns nothing
    assert uncertainty.learned_weight(0.1, 0, max(skeins, 1)) == 1


def test_a_hand_that_changes_is_half_expected_to_go_on():
    # A tenth coarser ahead: 0.95 of what it was, give or take half of the tenth; of a plan known to 4%, half learned
    # to √(0.0016 / 2 + 0.0025).
    assert uncertainty.finer_to_come(1.2, ahead=-0.1) == approx(1.14)
    assert uncertainty.hand_uncertainty(0.5, 0.04, ahead=-0.1) == approx(0.0574456)
    assert uncertainty.hand_uncertainty(0.5, 0.04, ahead=0.1) == approx(0.0574456)
    assert (uncertainty.finer_to_come(1.2, ahead=0.0), uncertainty.hand_uncertainty(0, 0.04, ahead=0.0)) == (1.2, 0.04)


def of_skeins(**changed):
    usual = {"share": 1, "u_hand": 0.1, "variation": 0.1, "u_ball": 0.1, "bought": 0}
    return uncertainty.grist_uncertainty(grams(100), **SPUN_OR_BOUGHT | usual | changed)


def in_hand(**changed):
    usual = {"skeins_doubt": meters(3), "in_skeins": meters(9), "weight": 0, "u_scale": 0, "to_come": meters(9)}
    return uncertainty.in_hand_uncertainty(**usual | {"u_to_come": meters(1)} | changed)


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: uncertainty.rectangular(-1.0), "half width"),
        (lambda: uncertainty.combined(1.0, -1.0), "uncertainty"),
        (lambda: uncertainty.product_relative(0.1, 0.1, -0.1), "uncertainty"),
        (lambda: uncertainty.surplus_uncertainty(yards(-1), yards(1)), "uncertainty"),
        (lambda: uncertainty.chance_enough(float("nan"), 1.0), "surplus"),
        (lambda: uncertainty.chance_enough(1.0, -1.0), "uncertainty"),
        (lambda: uncertainty.coverage(0.49), "certainty"),
        (lambda: uncertainty.coverage(1), "certainty"),
        (lambda: uncertainty.square(-1), "uncertainty"),
        (lambda: of_skeins(hold=meters(0)), "hold something"),
        (lambda: of_skeins(share=0), "share"),
        (lambda: uncertainty.finer_than_planned(1.1, 0, Quantity(2, "m/g")), "weight"),
        (lambda: uncertainty.finer_than_planned(1, 1.01, Quantity(2, "m/g")), "bought share"),
        (lambda: uncertainty.finer_than_planned(1, -0.1, Quantity(2, "m/g")), "bought share"),
        (lambda: uncertainty.finer_than_planned(1, 0, Quantity(0, "m/g")), "grist"),
        (lambda: uncertainty.finer_than_planned(1, 0, Quantity(2, "m/g"), Quantity(0, "m/g")), "grist"),
        (lambda: uncertainty.learned_weight(-0.1, 0.1, 1), "uncertainty"),
        (lambda: uncertainty.learned_weight(0.1, -0.1, 1), "uncertainty"),
        (lambda: uncertainty.learned_weight(0.1, 0.1, -1), "skeins"),
        (lambda: uncertainty.hand_uncertainty(1.01, 0.1, 0.0), "weight"),
        (lambda: of_skeins(u_hand=-0.1), "uncertainty"),
        (lambda: uncertainty.hand_uncertainty(0.5, -0.1, 0.0), "uncertainty"),
        (lambda: uncertainty.hand_uncertainty(0.5, 0.1, 1.1), "change"),
        (lambda: uncertainty.finer_to_come(0.0, 0.5), "ratio"),
        (lambda: uncertainty.finer_to_come(1.0, -1.1), "change"),
        (lambda: of_skeins(variation=-0.1), "uncertainty"),
        (lambda: of_skeins(u_batch=-0.1), "uncertainty"),
        (lambda: of_skeins(u_ball=-0.1), "uncertainty"),
        (lambda: in_hand(u_to_come=None), "nobody says"),
        (lambda: in_hand(u_to_come=meters(-1)), "uncertainty"),
        (lambda: in_hand(skeins_doubt=meters(-1)), "uncertainty"),
        (lambda: in_hand(in_skeins=meters(-1)), "length in skeins"),
        (lambda: in_hand(weight=1.01), "weight"),
        (lambda: in_hand(u_scale=-0.01), "uncertainty"),
        (lambda: uncertainty.taped(meters(9), meters(0), meters(0.1)), "must have a length"),
        (lambda: uncertainty.taped(meters(9), meters(1), meters(-0.1)), "uncertainty"),
        (lambda: uncertainty.counted(meters(9), 0, 0.5), "part of a wrap"),
        (lambda: uncertainty.counted(meters(9), 9, -0.5), "uncertainty"),
        (lambda: uncertainty.counted(meters(-9), 9, 0.5), "negative"),
        (lambda: uncertainty.by_reel(meters(9), meters(1), meters(0.1), meters(1)), "reel cancels"),
        (lambda: uncertainty.by_reel(meters(9), meters(0), meters(0.1)), "loop"),
        (lambda: uncertainty.by_reel(meters(9), meters(1), meters(-0.1)), "uncertainty"),
        (lambda: uncertainty.by_shrinkage(meters(9), 0.9, 0.1, 0.1), "shrinkage"),
        (lambda: uncertainty.by_shrinkage(meters(9), 0.1, 0.1, -0.1), "uncertainty"),
        (lambda: uncertainty.by_shrinkage(meters(9), 0.1, 0.1, 0.1, 0.1, meters(1)), "no shrinkage is assumed"),
        (lambda: uncertainty.by_slack(meters(9), 0.1, meters(0)), "must have a length"),
        (lambda: uncertainty.by_slack(meters(9), -0.1, meters(1)), "uncertainty"),
        (lambda: uncertainty.by_washing(0.9, 0.1, 0.1), "shrinkage"),
        (lambda: uncertainty.by_washing(0.1, -0.1, 0.1), "uncertainty"),
        (lambda: uncertainty.by_washing(0.1, 0.1, -0.1), "uncertainty"),
        (lambda: uncertainty.own_square(meters(-1), meters(1)), "negative"),
        (lambda: uncertainty.own_square(meters(1), meters(-1)), "negative"),
        (lambda: uncertainty.skein_uncertainty(Quantity(-1, "m^2")), "squared"),
        (lambda: uncertainty.skein_uncertainty(Quantity(1, "m^2"), shrink_part=meters(-1)), "negative"),
        (lambda: uncertainty.common_to_all(" ", 0.1), "blank"),
        (lambda: uncertainty.common_to_all("Vest", -0.1), "uncertainty"),
        (lambda: uncertainty.common_to_all("Vest", 0.1, u_washing=-0.1), "uncertainty"),
        (lambda: uncertainty.bought_together(" ", 0.1), "blank"),
        (lambda: uncertainty.bought_together("Vest", -0.1), "uncertainty"),
        (lambda: uncertainty.bought_together("Vest", 0.1, u_washing=-0.1, own=Quantity(2, "m/g")), "uncertainty"),
        (lambda: uncertainty.need_uncertainty(meters(-1)), "needed"),
        (lambda: uncertainty.need_uncertainty(meters(1), -0.1), "uncertainty"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
