"""Doubts of skeins and of what is to come: worked by hand, against scipy, and against draws."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx
from scipy import optimize, stats

from workbookgen.reference import advice, answer, balls, fiber, project, sharing, strands, uncertainty
from workbookgen.units import Quantity

from .quantities import grams, meters

lengths, doubts = st.floats(10, 1000), st.floats(1, 100)


@pytest.mark.parametrize(
    "first, u_first, second, u_second", [(100, 10, 100, 10), (100, 10, 110, 20), (100, 5, 300, 5), (300, 30, 100, 1)]
)
def test_draws_bear_out_the_lesser_of_two(first, u_first, second, u_second):
    draw = np.random.default_rng(1)
    least = np.minimum(draw.normal(first, u_first, 1_000_000), draw.normal(second, u_second, 1_000_000))
    told = [
        calculation(*map(meters, map(float, (first, u_first, second, u_second)))).m_as("m")
        for calculation in (uncertainty.lesser, uncertainty.lesser_uncertainty)
    ]
    assert told == [approx(least.mean(), abs=0.05), approx(least.std(), abs=0.05)]


def test_the_lesser_of_two_alike_is_less_by_what_the_tables_say():
    # The mean of the least of two standard normal values is -1/√π, its variance 1 - 1/π (order statistics, textbooks;
    # from memory).
    assert uncertainty.lesser(meters(0.0), meters(1.0), meters(0.0), meters(1.0)).m_as("m") == approx(-(np.pi**-0.5))
    assert uncertainty.lesser_uncertainty(meters(0.0), meters(1.0), meters(0.0), meters(1.0)).m_as("m") == approx(
        (1 - 1 / np.pi) ** 0.5
    )


@given(lengths, doubts, lengths, doubts)
def test_which_strand_is_called_first_does_not_matter(first, u_first, second, u_second):
    for calculation in (uncertainty.lesser, uncertainty.lesser_uncertainty):
        one = calculation(*map(meters, (first, u_first, second, u_second)))
        other = calculation(*map(meters, (second, u_second, first, u_first)))
        assert one.m_as("m") == approx(other.m_as("m"), rel=1e-9)


def test_without_doubt_the_lesser_is_the_smaller():
    assert uncertainty.lesser(meters(3.0), meters(0.0), meters(2.0), meters(0.0)) == meters(2.0)
    assert uncertainty.lesser(meters(3.0), meters(0.0), meters(3.0), meters(0.0)) == meters(3.0)
    assert uncertainty.lesser(meters(3.0), meters(1.0)) == uncertainty.lesser(meters(3.0), meters(1.0), meters(2.0))


def test_a_strand_known_well_counts_as_a_twentieth_as_uncertain_as_the_other():
    """Two of 100 m, ± 20 and ± 0: (20² + 1²) / 2 - 20² / (2 π) of the lesser, which is 20 / √(2 π) below them."""
    alike = (meters(100.0), meters(20.0), meters(100.0), meters(0.0))
    assert uncertainty.lesser_uncertainty(*alike).m_as("m") == approx((200.5 - 200 / np.pi) ** 0.5)
    assert uncertainty.lesser(*alike).m_as("m") == approx(100 - 20 / (2 * np.pi) ** 0.5)


def test_one_skein_weighs_as_much_as_the_plan_where_both_doubt_alike():
    assert uncertainty.learned_weight(0.08, 0.08, 1) == approx(0.5)
    assert uncertainty.learned_weight(0.08, 0.08, 3) == approx(0.75)
    assert uncertainty.learned_weight(0.08, 0.08, 0) == 0


def test_a_bought_thread_keeps_what_it_weighs_and_the_single_takes_all_the_difference():
    # Planned 2 m/g, a quarter of it thread: 0.5 g/m, of which 0.125 thread. Seen 0.6 g/m: the single went from 0.375 to
    # 0.475.
    finer = uncertainty.finer_than_planned(1.0, 0.25, Quantity(2.0, "m/g"), Quantity(1 / 0.6, "m/g"))
    assert finer == approx(0.375 / 0.475)


@given(st.floats(-500, 500), doubts, st.floats(0, 30), st.floats(0, 0.3), st.floats(0.5, 0.99))
def test_what_is_added_makes_it_as_sure_as_was_asked(spare, doubt, common, relative, certainty):
    z = uncertainty.coverage(certainty)
    more = uncertainty.more_for(meters(spare), meters(doubt), z, meters(common), relative**2).m_as("m")

    def over_all(added):
        return np.sqrt(doubt**2 + 2 * common * added + (added * relative) ** 2)

    if spare >= z * doubt:
        assert more == 0
    else:
        assert stats.norm.cdf((spare + more) / over_all(more)) == approx(certainty, abs=1e-6)
        root = optimize.brentq(lambda added: spare + added - z * over_all(added), 0, 1e6)
        assert more == approx(root, rel=1e-6, abs=1e-6)


def test_more_of_the_same_by_hand():
    # 8 % plan, half of it known from skeins: 0.0064 / 2 = 0.0032; of a raw fleece another 9 % squared, 0.0081.
    spun = dict(u_hand=uncertainty.hand_uncertainty(weight=0.5, u_plan=0.08, ahead=0.0), u_batch=0.03)
    assert uncertainty.strand_added_square(bought=0.0, **spun) == approx(0.0032)
    assert uncertainty.strand_added_square(bought=0.0, u_kept=0.09, **spun) == approx(0.0113)
    assert uncertainty.strand_added_square(bought=1.0, u_kept=0.09, **spun) == approx(0.0009)
    # 300 g at 2 m/g, half of the yarn's weight, a quarter finer: 300 · 2 / 0.5 · 1.25 = 1,500 m. 0.0032 · 1,500 + 0.01
    # · 200 / 2 = 4.8 + 1.
    pool = dict(
        pool=grams(300.0),
        share=0.5,
        planned=Quantity(2.0, "m/g"),
        hold=meters(200.0),
        variation=0.1,
        u_ball=0.02,
        finer=1.25,
    )
    assert uncertainty.strand_added_with(bought=0.0, **spun, **pool).m_as("m") == approx(5.8)
    # A label is as it is: 0.0009 · 1,200 + 0.0004 · 200 / 2 = 1.08 + 0.04.
    assert uncertainty.strand_added_with(bought=1.0, **spun, **pool).m_as("m") == approx(1.12)
    # The larger of two strands; skeins of 500 ± 10 m teach half: (0.5 / 500 · 10)² = 0.0001; a scale of 2 %: (0.5 ·
    # 0.02)² = 0.0001.
    skeins = dict(weight=0.5, u_scale=0.02, in_skeins=meters(500.0), skeins_doubt=meters(10.0))
    assert uncertainty.added_square(square_1=0.0032, square_2=0.0113, **skeins) == approx(0.0115)
    # 100 · (1 + 0.001 · 1,500) · 0.001 = 0.25 and 1,500 · 0.0001 = 0.15.
    assert uncertainty.added_with(with_1=meters(5.8), with_2=meters(1.12), to_come=meters(1500.0), **skeins).m_as(
        "m"
    ) == approx(6.2)
    assert uncertainty.added_with(
        with_1=meters(5.8), to_come=meters(-20.0), **skeins | {"in_skeins": meters(0.0)}
    ).m_as("m") == approx(5.8)
    # Of four strands, the largest, wherever it stands.
    for largest in (1, 2, 3, 4):
        squares = {f"square_{place}": 0.0113 if place == largest else 0.0032 for place in (1, 2, 3, 4)}
        lengths = {f"with_{place}": meters(5.8 if place == largest else 1.12) for place in (1, 2, 3, 4)}
        assert uncertainty.added_square(**squares, **skeins) == approx(0.0115)
        assert uncertainty.added_with(**lengths, to_come=meters(1500.0), **skeins).m_as("m") == approx(6.2)
    # Nothing over, ± 60 m, z = 1, K = 8 m, Q = 0.36: E² · 0.64 - 16 · E - 3,600 = 0, E = (8 + √(64 + 2,304)) / 0.64 =
    # 88.535 m; with no K, 75 m.
    assert uncertainty.more_for(meters(0.0), meters(60.0), 1.0, meters(8.0), 0.36).m_as("m") == approx(
        (8 + 2368**0.5) / 0.64
    )
    assert uncertainty.more_for(meters(0.0), meters(60.0), 1.0, meters(0.0), 0.36).m_as("m") == approx(75)
    for square in (1.0, 1.44):
        with pytest.raises(ValueError, match="No amount is that certain"):
            uncertainty.more_for(meters(0.0), meters(60.0), 1.0, meters(0.0), square)
    for one in (dict(with_more=meters(8.0)), dict(square_more=0.36)):
        with pytest.raises(ValueError, match="goes with its uncertainty"):
            uncertainty.more_for(meters(0.0), meters(60.0), 1.0, **one)


def test_what_more_of_a_lot_keeps_was_not_weighed():
    # By hand: √(7² + 12² + 2.5² + 1.2²) % = √200.69 %; as prepared fiber 1.2 %, and once more combed √(1.2² + 8²) %.
    figures = dict(u_skirting=0.07, u_yield=0.12, u_preparation=0.025, u_spinning=0.012, u_own=0.03)
    assert fiber.kept_uncertainty(1, **figures) == approx(200.69**0.5 / 100)
    assert fiber.kept_uncertainty(1, own_yield=0.5, **figures) == approx((49 + 9 + 6.25 + 1.44) ** 0.5 / 100)
    assert fiber.kept_uncertainty(4, **figures) == approx(0.012)
    assert fiber.kept_uncertainty(4, **figures, u_second=0.08) == approx((1.44 + 64) ** 0.5 / 100)
    assert fiber.kept_uncertainty(5, **figures, u_second=0.08) == 0


def test_doubts_of_a_fleece_go_stage_by_stage():
    # By hand: 7 and 2.5 and 1.2 %, and a yield of 50 ± 6 % of the weight, which is 12 % of what is kept.
    figures = dict(u_skirting=0.07, u_yield=0.12, u_preparation=0.025, u_spinning=0.012, u_own=0.03)
    whole = fiber.yarn_uncertainty(grams(1000.0), 1, **figures).m_as("g")
    assert whole == approx(1000 * (0.07**2 + 0.12**2 + 0.025**2 + 0.012**2) ** 0.5)
    assert fiber.yarn_uncertainty(grams(1000.0), 1, **figures, scoured=grams(1.0)).m_as("g") == approx(
        1000 * (0.025**2 + 0.012**2) ** 0.5
    )
    assert fiber.yarn_uncertainty(grams(1000.0), 2, **figures, own_yield=0.5).m_as("g") == approx(
        1000 * (0.03**2 + 0.025**2 + 0.012**2) ** 0.5
    )
    assert fiber.yarn_uncertainty(grams(1000.0), 1, **figures, whole=grams(1000.0)).m_as("g") == 0
    assert fiber.yarn_uncertainty(grams(1000.0), 5, **figures).m_as("g") == 0


def test_what_the_others_need_is_taken_off_the_pool():
    claims = {f"claims_{part}": [0.6, 0.4] if part == 1 else [np.nan, np.nan] for part in (1, 2, 3, 4)}
    lots = {
        f"lots_{place}": ["Moss", "Moss"] if place == "1_a" else ["", ""]
        for place in ("1_a", "1_b", "1_c", "2_a", "2_b", "3_a", "3_b", "4_a", "4_b")
    }
    promised = sharing.share_promised("MOSS", **claims, **lots, left=Quantity(4, "oz"))
    assert promised == approx(1.0)
    left = sharing.left_by_others(
        grams(500.0), grams(300.0), ["Moss", ""], grams(np.array([500.0, np.nan])), [promised, np.nan], lot_1="moss"
    )
    assert left.m_as("g") == approx(300)  # the other takes 200


def test_a_scarce_strand_is_bought_and_the_other_is_not():
    bought = [
        strands.to_buy(meters(120.0), meters(come), 0.5, Quantity(2.0, "m/g"), 1.0, 0, kept).m_as("g")
        for come, kept in ((100.0, 0.5), (110.0, 1.0), (130.0, 1.0))
    ]
    assert bought == [approx(10), approx(2.5), 0]


def test_strands_that_should_last_equally_long_should_each_last_longer():
    """Of 2, 3, 4 normal values of doubt 1 the least lies 0.5642, 0.8463, 1.0294 below their mean (tables of order
    statistics)."""

    def square(doubt):
        return meters(doubt) * meters(doubt)

    for count, below in ((1, 0), (2, 0.5642), (3, 0.8463), (4, 1.0294)):
        near = {f"near_{each}": square(6.0 if each <= count else 0.0) for each in (1, 2, 3, 4)}
        assert strands.length_to_last(meters(100.0), meters(100.0), meters(20.0), **near).m_as("m") == approx(
            120 + 6 * below, abs=1e-3
        )
    # What the yarn is already shorter by than its scarcest strand need not be made up for again; and nothing more is
    # nothing more.
    both = {"near_1": square(6.0), "near_2": square(8.0)}
    assert strands.length_to_last(meters(100.0), meters(98.0), meters(20.0), **both).m_as("m") == approx(
        120 + 10 * 0.398942 - 2, abs=1e-4
    )
    assert strands.length_to_last(meters(100.0), meters(90.0), meters(20.0), **both).m_as("m") == approx(120)
    assert strands.length_to_last(meters(100.0), meters(100.0), meters(0.0), **both).m_as("m") == approx(100)
    near = [
        strands.may_run_out(meters(come), meters(6.0), meters(100.0), meters(20.0)).m_as("m^2")
        for come in (90.0, 126.0, 126.1)
    ]
    assert near == [approx(36), approx(36), 0]


@pytest.mark.parametrize(
    "chance, words",
    [
        (0.0, "under 2%"),
        (0.019, "under 2%"),
        (0.02, "2%"),
        (0.845, "85%"),
        (0.98, "98%"),
        (0.981, "over 98%"),
        (1.0, "over 98%"),
    ],
)
def test_nobody_is_told_of_certainty(chance, words):
    assert answer.chance_words(chance) == words


@pytest.mark.parametrize(
    "chance, certainty, more, words",
    [
        (0.8964, 0.9, 2.0, "89%"),  # rounded up, it would be as sure as one asks, beside the advice to get more
        (0.8951, 0.9, 0.5, "89%"),
        (0.8964, 0.9, 0.4, "90%"),  # nothing to get: it is said to be sure enough
        (0.8964, 0.9, 0.0, "90%"),
        (0.9, 0.9, 0.0, "90%"),
        (0.893, 0.9, 5.0, "89%"),
        (0.884, 0.9, 5.0, "88%"),
        (0.896, 0.895, 3.0, "90%"),
        (0.8949, 0.8945, 0.0, "89%"),
        (0.8936, 0.894, 3.0, "89%"),
        (0.8965, 0.899, 3.0, "89%"),
        (0.982, 0.99, 3.0, "over 98%"),
    ],
)
def test_a_chance_is_not_rounded_up_to_what_one_asks_for_while_more_is_to_get(chance, certainty, more, words):
    assert answer.chance_words(chance, certainty, meters(more)) == words
    assert answer.chance_words(chance, certainty) == answer.chance_words(chance)


def yards(number):
    return Quantity(float(number), "yard")


def test_the_sentence_says_what_its_number_says_in_the_unit_in_which_it_is_given():
    told = answer.answer(
        yards(2317), yards(2100), yards(217), yards(217), yards(0), yards(2020), yards(2614), "84%", yards(240)
    )
    assert told == (
        "There is 2,317 yd, very likely 2,020 yd to 2,614 yd; it takes 2,100 yd: 217 yd over. Chance that it is enough: 84%. "
        "Another 240 yd lie in skeins of its yarn that belong to no open project."
    )
    assert (
        answer.answer(meters(380.0), meters(400.0), meters(-20.0), meters(0.0), meters(20.0))
        == "There is 380 m; it takes 400 m: 20 m short."
    )
    nothing = answer.answer(yards(0), yards(400), yards(-400), yards(0), yards(400), yards(0), yards(0))
    assert nothing == "There is 0 yd; it takes 400 yd: 400 yd short."  # of nothing there is no range
    assert (
        answer.answer(yards(0), yards(400), yards(-400), yards(0), yards(400), used=Quantity(8.5, "oz"))
        == "It took 8.5 oz of yarn."
    )
    assert (
        answer.verdict(0.9, 0.95) == "enough"
        and answer.verdict(0.9, 0.7) == "likely enough"
        and answer.verdict(0.9, 0.4) == "short"
    )


def test_a_toss_of_a_coin_is_not_called_likely():
    # "Likely" from 66% on: guidance of the Intergovernmental Panel on Climate Change for its authors, 2010 (from
    # memory).
    assert [answer.verdict(0.9, chance) for chance in (0.5, 0.61, 0.66, 0.67)] == [
        "in doubt",
        "in doubt",
        "in doubt",
        "likely enough",
    ]
    assert answer.verdict(0.55, 0.6) == "enough"  # whoever asks for less gets it
    assert answer.in_short("in doubt", yards(15), yards(0)) == "In doubt: 15 yd over"


def test_each_word_begins_at_its_very_chance():
    words = {0.9: "enough", 0.8999: "likely enough", 2 / 3: "likely enough", 0.6666: "in doubt", 0.5: "in doubt"}
    assert {chance: answer.verdict(0.9, chance) for chance in words} == words
    assert answer.verdict(0.9, 0.4999) == "short"


def test_a_finished_piece_needs_no_more_than_what_it_took():
    took = Quantity(200, "g")
    assert answer.verdict(0.9, used=took) == "finished"
    assert answer.answer(used=took) == "It took 200 g of yarn."
    assert answer.in_short("finished") == "Finished"
    for unknown in (lambda: answer.verdict(0.9), answer.answer, lambda: answer.in_short("short")):
        with pytest.raises(ValueError):
            unknown()


def test_a_project_without_yarn_is_not_called_short():
    assert [project.without_yarn(yards(length)) for length in (0, 1)] == [1, 0]
    assert project.without_yarn(yards(0), lot_3="Top") == project.without_yarn(yards(0), design="Duo") == 0
    assert answer.verdict(0.9, 0.0, yarnless=1.0) == "no yarn yet"
    assert answer.verdict(0.9, 0.0, used=Quantity(85, "g"), yarnless=1.0) == "finished"
    assert answer.in_short("no yarn yet", yards(-120), yards(120)) == "No yarn yet"
    told = answer.answer(yards(0), yards(120), yards(-120), yards(0), yards(120), yarnless=1.0)
    assert told == "It takes 120 yd, and no yarn for it is known yet."
    with pytest.raises(ValueError, match="no yarn yet"):
        answer.chance_words(0.01, yarnless=1.0)


def test_a_lot_that_is_not_known_is_not_an_empty_one():
    assert sharing.unknown_lots(yards(200), "Aster", grams(100.0), "Birch") == 1
    assert sharing.unknown_lots(yards(200), "Aster", grams(0.0)) == 0  # nothing is left of it, which is known
    assert sharing.unknown_lots(yards(0), "Aster") == 0  # all is in skeins
    assert sharing.unknown_in_all(yards(200), 0, 0, 0, 0) == 0  # a project of skeins alone
    assert sharing.unknown_in_all(yards(200), 0, 0, 0, 0, lot_1="Aster") == 1  # without a grist
    assert sharing.unknown_in_all(yards(200), 1, 0, 1, 0, lasts=yards(90), lot_1="Aster") == 2
    with pytest.raises(ValueError, match="not known"):
        project.all_there_is(yards(0), unknown=1)


def test_what_projects_lack_together_is_got_once():
    assert sharing.shared_components(grams(500.0), grams(350.0), grams(90.0), grams(90.0)) == 1
    lacking = dict(buy_1=grams(60.0), name_1="Blue", form_1="raw fleece")
    assert advice.advice(meters(90.0), 0.9, **lacking, shared=1) == (
        "To be 90% sure, get 90 m more: 60 g of Blue (raw fleece). Get it once: other projects draw on the same lots."
    )
    assert (
        advice.advice(meters(90.0), 0.9, **lacking, shared=0)
        == "To be 90% sure, get 90 m more: 60 g of Blue (raw fleece)."
    )
    assert advice.advice(meters(0.0), 0.9, shared=1) == "That is as sure as you ask."


def test_advice_names_what_to_get_in_the_form_in_which_it_is_bought():
    told = advice.advice(
        yards(100),
        0.9,
        buy_1=Quantity(4.2, "oz"),
        name_1="Clover",
        form_1="raw fleece",
        buy_2=Quantity(0.0, "oz"),
        name_2="Silk",
    )
    assert told == "To be 90% sure, get 100 yd more: 4.2 oz of Clover (raw fleece)."
    assert advice.advice(meters(0.0), 0.9) == "That is as sure as you ask."
    both = dict(
        buy_1=grams(0.0),
        name_1="Wool",
        buy_2=grams(30.0),
        name_2="Silk",
        form_2="yarn or thread",
        buy_3=grams(12.0),
        name_3="Linen",
    )
    assert (
        advice.advice(meters(90.0), 0.925, design="Both", **both, balls_2=1)
        == "To be 92.5% sure, get 90 m more: 1 spool of Silk; 12 g of Linen."
    )
    assert (
        advice.advice(meters(90.0), 0.9, buy_1=grams(60.0), name_1="Blue", balls_1=2)
        == "To be 90% sure, get 90 m more: 2 balls of Blue."
    )


def test_where_there_is_no_more_of_it_another_way_is_told():
    """A fleece is one: "get 90 m more" alone asks for what nobody can do."""
    smaller = "If there is no more of it: make the piece smaller, or work part of it in another yarn."
    assert advice.instead(meters(0.5), 0.66) == advice.instead(meters(90.0), 0.0) == smaller
    # Likely enough is a chance of two thirds; whoever has that need not make it smaller.
    assert advice.instead(meters(0.5), 2 / 3) == "If there is no more of it: it is likely enough as it is."
    for lacking in (dict(more=meters(0.49)), dict(more=meters(90.0), yarnless=1.0)):
        with pytest.raises(ValueError):
            advice.instead(chance=0.5, **lacking)
    # Of a yarn of which there is none, there is nothing to be had more.
    assert advice.advice(meters(90.0), 0.9, yarnless=1.0) == "To be 90% sure, get 90 m."


def test_nobody_is_sent_to_buy_before_the_skeins_of_no_project_are_asked_for():
    asked = "Are the skeins of no open project for it? Choose it beside them, at For project. Otherwise, to be 90% sure, get 90 m more."
    assert advice.advice(meters(90.0), 0.9, free=meters(190.0)) == asked
    assert advice.advice(meters(90.0), 0.9, free=meters(0.5)) == "To be 90% sure, get 90 m more."
    assert advice.advice(meters(0.0), 0.9, free=meters(190.0)) == "That is as sure as you ask."


def test_a_ball_weighs_what_its_length_weighs_and_a_part_of_one_is_a_whole_one():
    assert balls.ball_weighs(Quantity(2.0, "m/g"), package=meters(100.0)).m_as("g") == approx(50)
    assert balls.ball_weighs(Quantity(2.0, "m/g"), spool=grams(20.0), design="Both").m_as("g") == 20
    assert balls.balls_to_buy(grams(101.0), grams(50.0), 1, lot="Blue") == 3
    with pytest.raises(ValueError, match="spun"):
        balls.balls_to_buy(grams(101.0), grams(50.0), 0, lot="Fleece")
    # Of a design it is each strand's own spool that is bought; a package is of the plain yarn.
    for unknown in (dict(package=meters(100.0), design="Both"), {}):
        with pytest.raises(ValueError, match="what a ball holds"):
            balls.ball_weighs(Quantity(2.0, "m/g"), **unknown)


def test_who_has_less_than_nothing_is_the_scarcest():
    # The others have promised more than the lot gives: its length is below zero, and it limits the yarn all the same.
    assert strands.scarcest(meters(-5.0), meters(-5.0), "Moss", meters(3.0), "Fern") == "Moss"
    assert strands.scarcest(meters(-5.0), meters(3.0), "Moss", meters(-5.0), "Fern", meters(0.0), "Rush") == "Fern"


@pytest.mark.parametrize("others, counted", [(1e-18, 0.0), (1e-12, 1e-12)])
def test_a_doubt_that_no_scale_tells_from_nothing_is_nothing(others, counted):
    squares = {
        f"squares_{part}": Quantity(np.array([np.nan, others if part == 2 else np.nan]), "g^2") for part in (1, 2, 3, 4)
    }
    lots = {f"lots_{part}_a": ["", "Moss"] for part in (1, 2, 3, 4)}
    of_all = sharing.squares_on_lot("Moss", **squares, **lots)
    assert of_all.m_as("g^2") == approx(others, rel=1e-12)
    assert (
        sharing.others_square(
            Quantity(0.0, "g^2"), ["Moss"], Quantity(np.array([of_all.m_as("g^2")]), "g^2"), lot="Moss"
        ).m_as("g^2")
        == counted
    )


@pytest.mark.parametrize("amount, told", [(-20, 0), (0, 0), (20, 20)])
def test_nobody_has_less_than_nothing(amount, told):
    assert answer.not_below_nothing(meters(float(amount))).m_as("m") == told


def test_strands_of_one_hand_err_together_by_half():
    """Two strands of 100 m, each 8% in doubt by the hand alone, have half of 64 m² in common: their difference is 8 m
    in doubt, not 11.3, and the lesser lies 8 / √(2 π) below them."""
    alike = meters(100.0), meters(8.0), meters(100.0), meters(8.0)
    shared = uncertainty.hand_in_common(meters(100.0), meters(100.0), 0.08, 0, 0)
    assert shared.m_as("m^2") == approx(32)
    assert uncertainty.lesser(*alike, shared).m_as("m") == approx(100 - 8 / (2 * np.pi) ** 0.5)
    assert uncertainty.lesser_uncertainty(*alike, shared).m_as("m") == approx((64 - 64 / (2 * np.pi)) ** 0.5)
    all_in_common = 2 * shared
    assert uncertainty.lesser(*alike, all_in_common).m_as("m") == approx(100)
    assert uncertainty.lesser_uncertainty(*alike, all_in_common).m_as("m") == approx(8)
    for bought in ((1, 0), (0, 1)):
        assert uncertainty.hand_in_common(meters(100.0), meters(100.0), 0.08, *bought).m_as("m^2") == 0
    assert uncertainty.hand_in_common(meters(-1.0), meters(100.0), 0.08, 0, 0).m_as("m^2") == 0
    with pytest.raises(ValueError, match="negative"):
        uncertainty.hand_in_common(meters(1.0), meters(1.0), -0.08, 0, 0)


def test_skeins_do_not_tell_the_strands_of_a_yarn_apart():
    """Two strands by a hand of 8%: half of 64, of 10,000, is each strand's own, and of that the mean is half. Skeins
    that tell all of the mean leave a variance of 16 to each, and a covariance of -16: their difference is as unsure as
    before, 2 · 16 + 2 · 16 = 64. By three, each has 32 · (1 - 1/3)."""
    assert uncertainty.apart_in_common(0.08, 1.0, 2) == approx(0.0016)
    assert 2 * uncertainty.apart_in_common(0.08, 1.0, 3) == approx(0.0032 * 2 / 3)
    assert uncertainty.apart_in_common(0.08, 1.0, 1) == 0 == uncertainty.apart_in_common(0.08, 0.0, 2)
    # 50 g are left, and 100 m took 50 g, half of a yarn of 1 m/g: 4% of 100 g, for a strand that is spun.
    of_strand = (0.0016, 2, Quantity(50.0, "g"), meters(100.0), 0.5, Quantity(1.0, "m/g"), 1.0)
    assert uncertainty.apart_square(*of_strand, 0).m_as("g^2") == approx(16)
    assert uncertainty.apart_square(*of_strand, 1).m_as("g^2") == 0
    # Both were to last 100 m and have 100 m in skeins: what is known of the hand is common by half, and the rest apart.
    shared = uncertainty.hand_in_common(meters(100.0), meters(100.0), 0.02, 0, 0, apart=0.0016, in_skeins=meters(100.0))
    assert shared.m_as("m^2") == approx(2 - 0.0016 * 200**2)
    for what in ({"u_plan": -0.1}, {"weight": 1.1}, {"count": -1}):
        with pytest.raises(ValueError, match=r"negative|weight|number"):
            uncertainty.apart_in_common(**dict(u_plan=0.08, weight=1.0, count=2) | what)


def test_strands_of_one_lot_are_not_apart_nor_is_a_bought_one():
    assert [uncertainty.strands_apart(*bought) for bought in ((0,), (0, 0), (0, 1), (1, 1), (0, 0, 0, 0))] == [
        1,
        2,
        1,
        0,
        4,
    ]
    assert uncertainty.strands_apart(0, 0, 0, before_2=1, before_3=0) == 2


def test_what_all_strands_have_in_common_makes_none_of_them_run_out_first():
    """A hand that is 20% in doubt: half of 0.04 is common to strands that it spins, and nothing to a bought one."""
    assert uncertainty.shared_by_all(0.2, 0, 0, 0, 0) == approx(0.02)
    assert uncertainty.shared_by_all(0.2, 0, 0, 1) == 0 == uncertainty.shared_by_all(0.2, 1)
    # 20 m of 100 m, of which 0.01 · (100 m)² is common; but no more than half is.
    near = meters(100.0), meters(20.0), meters(100.0), meters(20.0)
    assert strands.may_run_out(*near, 0.01).m_as("m^2") == approx(300)
    assert strands.may_run_out(*near, 0.03).m_as("m^2") == approx(200)
    assert strands.may_run_out(meters(-100.0), *near[1:], 0.01).m_as("m^2") == approx(400)
    with pytest.raises(ValueError, match="negative"):
        strands.may_run_out(*near, -0.01)
    with pytest.raises(ValueError, match="negative"):
        uncertainty.shared_by_all(-0.2, 0)
