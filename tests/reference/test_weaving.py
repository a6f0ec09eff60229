"""Setts, warps and wefts: the books on cotton weaving, and the loom walked backwards."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.reference import reeling, twist, weaving, yarn_count
from workbookgen.reference.diameter.wraps import threads_side_by_side
from workbookgen.settings import Settings
from workbookgen.sheets.lists import WEAVES
from workbookgen.units import Quantity

from .quantities import inches, meters, per_centimeter, per_inch, tex, yards

positive = st.floats(0.1, 1e3)
losses = st.floats(0, 0.6)


def cotton(count):
    return yarn_count.grist_of(count, "cotton count")


SHARES = {  # J. T. Taylor, Cotton Weaving and Designing; Ashenhurst (read)
    "plain": 1 / 2,
    "2/1 twill": 3 / 5,
    "2/2 twill": 2 / 3,
    "5-end satin": 5 / 7,
    "8-end satin": 4 / 5,
}


def test_the_planners_weaves_have_the_published_shares_in_the_order_that_a_person_sees():
    rows = zip(*(column.values for column in WEAVES.columns), strict=True)
    shown = [(name, weaving.closest_sett(per_inch(60), *repeat).m_as("1/inch")) for name, *repeat in rows]
    assert shown == [(name, approx(60 * share)) for name, share in SHARES.items()]


@pytest.mark.parametrize(
    "repeat, printed, tolerance",
    [
        ((2, 2), 26.0, 5e-3),  # Ashenhurst, quoted in a study of weaving: cotton count 4, K 0.90 (read)
        ((4, 2), 34.78, 1e-3),  # the same; 34 is printed, cut off (read)
    ],
)
def test_closest_sett_of_ashenhurst(repeat, printed, tolerance):
    threads = threads_side_by_side(Quantity(3360, "yard/pound"), 0.90)
    assert weaving.closest_sett(threads, *repeat).m_as("1/inch") == approx(printed, rel=tolerance)


@pytest.mark.parametrize(
    "sett, before, after, printed, tolerance",
    [
        (103, (4, 4), (4, 2), 137.3333, 1e-6),  # J. T. Taylor, p. 464: plain to 2/2 twill (read)
        (137, (40, 20), (40, 16), 146.786, 1e-5),  # the same page, to a longer twill: worked by hand
    ],
)
def test_equal_firmness_in_another_weave(sett, before, after, printed, tolerance):
    ends, intersections = before
    threads = per_inch(sett) * (ends + intersections) / ends
    assert weaving.closest_sett(threads, *before).m_as("1/inch") == approx(sett)
    assert weaving.closest_sett(threads, *after).m_as("1/inch") == approx(printed, rel=tolerance)


def test_working_sett():
    # Three quarters of the closest: common practice, no source.
    assert weaving.working_sett(per_inch(20)).m_as("1/inch") == approx(15)
    assert weaving.working_sett(per_inch(20), 0.6).m_as("1/inch") == approx(12)


@pytest.mark.parametrize(
    "sett, width, count",
    [
        (per_inch(60), inches(38), 2280),  # C. P. Brooks, Cotton Manufacturing, weight of a piece (read)
        (per_inch(10), inches(7.05), 71),
        (per_centimeter(1.5), meters(0.1), 15),  # 15.000000000000002 by its last digits
        (per_inch(0.1), inches(30), 3),
    ],
)
def test_ends_are_whole_and_fill_the_width(sett, width, count):
    assert weaving.ends(sett, width) == count


@given(sett=st.floats(1, 100), width=st.floats(1, 100))
def test_ends_fill_the_reed_and_one_less_does_not(sett, width):
    count = weaving.ends(per_inch(sett), inches(width))
    assert count == int(count)
    assert count >= sett * width - 1e-6 and count - 1 < sett * width


def test_width_in_the_reed():
    # C. P. Brooks, weight of a piece (read): 6 per cent on top of 36 in; he takes 38.
    contracted = twist.take_up(1.06)
    assert weaving.width_in_reed(inches(36), contracted).m_as("inch") == approx(38, rel=5e-3)
    # A tenth lost on the loom, then a tenth of the rest in the wash: 50/0.81, worked by hand.
    assert weaving.width_in_reed(inches(50), 0.1, 0.1).m_as("inch") == approx(61.728395)


@given(width=positive, draw_in=losses, shrinkage=losses)
def test_the_cloth_comes_off_as_wide_as_wanted(width, draw_in, shrinkage):
    # Woven and washed forwards: the outside witness.
    on_loom = weaving.width_in_reed(inches(width), draw_in, shrinkage) * (1 - draw_in)
    assert reeling.shrinkage(on_loom, inches(width)) == approx(shrinkage, abs=1e-9)


def test_warp_of_print_and_of_practice():
    # J. T. Taylor, p. 427 (read): 94 yd of cloth and 4 per cent on top, roughly 98 yd.
    assert weaving.warp_length(yards(94), twist.take_up(1.04)).m_as("yard") == approx(98, rel=3e-3)
    # J. T. Taylor, p. 245 (read): 95 yd of warp for 90 yd of cloth.
    assert weaving.warp_length(yards(90), 1 - 90 / 95).m_as("yard") == approx(95)
    # 2/(0.9 · 0.92) + 0.6, worked by hand.
    found = weaving.warp_length(meters(2), 0.08, 0.10, loom_waste=meters(0.6))
    assert found.m_as("m") == approx(3.015458937, rel=1e-9)


def test_warp_of_several_pieces():
    # Worked by hand: (3 · 1.1 + 0.2)/0.875/0.8 + 0.5 = 5.5 m; woven 3.5/0.875 = 4 m.
    cloth = dict(pieces=3, hems=meters(0.1), samples=meters(0.2), shrinkage=0.125)
    assert weaving.woven_length(meters(1), **cloth).m_as("m") == approx(4)
    assert weaving.warp_length(meters(1), 0.2, loom_waste=meters(0.5), **cloth).m_as("m") == approx(5.5)


@given(
    finished=positive,
    take_up=losses,
    shrinkage=losses,
    pieces=st.integers(1, 10),
    hems=st.floats(0, 1),
    waste=st.floats(0, 2),
)
def test_the_warp_woven_and_washed_gives_the_pieces(finished, take_up, shrinkage, pieces, hems, waste):
    warp = weaving.warp_length(meters(finished), take_up, shrinkage, pieces, meters(hems), loom_waste=meters(waste))
    woven = (warp.m_as("m") - waste) * (1 - take_up)
    assert woven * (1 - shrinkage) == approx(pieces * (finished + hems))


def test_yarn_of_a_piece():
    # C. P. Brooks, weight of a piece (read): 2,280 ends of 38 yd are 103 1/7 hanks of 840 yd.
    assert weaving.warp_yarn(2280, yards(38)).m_as("yard") / 840 == approx(103.1428571, rel=1e-9)
    # The same book (read): 64 picks, 37.5 in, 36 yd of 36s weft are 2 lb 13 3/4 oz.
    weft = weaving.weft_yarn(per_inch(64), yards(36), inches(37.5))
    mass = yarn_count.mass_of_length(weft, cotton(36))
    assert mass.m_as("oz") == approx(2 * 16 + 13.75, rel=1e-3)


@given(picks=st.integers(1, 60), length=st.integers(1, 200), width=positive, take_up=st.floats(0, 0.5))
def test_weft_is_pick_after_pick(picks, length, width, take_up):
    # Every pick laid in by itself: the outside witness.
    laid = math.fsum([width / (1 - take_up)] * (picks * length))
    found = weaving.weft_yarn(per_inch(picks), inches(length), inches(width), take_up)
    assert found.m_as("inch") == approx(laid)


def square_meter(warp, sett, warp_crimp, weft, picks, weft_crimp):
    """Mass of one square meter of cloth, crimp told of the cloth."""
    ends = weaving.ends(per_centimeter(sett), meters(1))
    warp_yarn = weaving.warp_yarn(ends, weaving.warp_length(meters(1), twist.take_up(1 + warp_crimp)))
    weft_yarn = weaving.weft_yarn(per_centimeter(picks), meters(1), meters(1), twist.take_up(1 + weft_crimp))
    return weaving.weight_of_cloth(warp_yarn, weft_yarn, 1 / warp, 1 / weft).m_as("g")


def test_mass_of_a_square_meter():
    # Public exam paper GATE TF 2009, Q37 (read).
    assert square_meter(tex(30), 40, 0.10, tex(20), 30, 0.10) == approx(198)
    # Public exam paper GATE TF 2003, Q74 (read): the printed 112 took 20 picks in place of 30.
    found = square_meter(1 / cotton(30), 35, 0.065, 1 / cotton(35), 30, 0.13)
    assert found == approx(130.6, rel=2e-3)
    assert found != approx(112, rel=0.1)


ONE = meters(1)


def test_own_sett_beats_the_rule():
    assert weaving.sett_in_use(per_inch(12), per_inch(15)) == per_inch(12)
    assert weaving.sett_in_use(working=per_inch(15)) == per_inch(15)


def test_one_yarn_for_warp_and_weft():
    # 500 yd are 457.2 m.
    assert weaving.yarn_of_the_warp(yards(500), meters(42.8)).m_as("m") == approx(500)
    assert weaving.yarn_of_the_warp(yards(0), yards(0)) == yards(0)


def test_a_weft_of_another_yarn_is_not_counted_with_the_warp():
    other = 1 / tex(50)
    assert weaving.yarn_of_the_warp(yards(500), meters(42.8), other).m_as("yard") == approx(500)
    assert weaving.yarn_of_the_warp(yards(500), meters(42.8), weft_project="Weft").m_as("yard") == approx(500)
    assert weaving.weft_apart(meters(42.8), other).m_as("m") == approx(42.8)


@given(warp=positive, weft=positive, density=positive)
def test_the_weight_of_one_yarn_is_that_of_all_of_it(warp, weft, density):
    grist = 1 / tex(density)
    weight = weaving.weight_of_cloth(meters(warp), meters(weft), grist)
    assert (weaving.yarn_of_the_warp(meters(warp), meters(weft)) / grist).m_as("g") == approx(weight.m_as("g"))
    assert weight.m_as("g") == approx(weaving.weight_of_cloth(meters(warp), meters(weft), grist, grist).m_as("g"))


def test_warp_and_weft_of_two_yarns_weigh_each_by_its_grist():
    # 1 km of 100 tex and 2 km of 30 tex, by hand: 100 g and 60 g.
    assert weaving.weight_of_cloth(meters(1000), meters(2000), 1 / tex(100), 1 / tex(30)).m_as("g") == approx(160)


@given(touching=positive, crossing=positive, repeat=st.sampled_from([(2, 2), (4, 2), (3, 2), (5, 2)]))
def test_a_finer_weft_lets_the_warp_stand_closer(touching, crossing, repeat):
    """Room for the ends and for the crossings, each of its own thickness, fills the repeat."""
    sett = weaving.closest_sett(per_inch(touching), *repeat, per_inch(crossing)).m_as("1/inch")
    assert repeat[0] / sett == approx(repeat[0] / touching + repeat[1] / crossing)
    alike = weaving.closest_sett(per_inch(touching), *repeat).m_as("1/inch")
    assert (sett > alike) == (crossing > touching) or sett == approx(alike)


@pytest.mark.parametrize(
    "sett, dents, per_dent",
    [(20, 10, 2), (15, 10, 1.5), (14, 10, 1.5), (12.5, 10, 1.5), (12.4, 10, 1), (4, 10, 0.5), (1, 10, 0.5), (24, 8, 3)],
)
def test_ends_in_a_dent_come_nearest_by_halves(sett, dents, per_dent):
    assert weaving.ends_in_a_dent(per_inch(sett), per_inch(dents)) == per_dent
    assert weaving.sett_of_reed(per_dent, per_inch(dents)).m_as("1/inch") == approx(per_dent * dents)


def test_the_reed_decides_the_sett_on_the_loom():
    assert weaving.sett_on_the_loom(per_inch(14)) == per_inch(14)
    assert weaving.sett_on_the_loom(per_inch(14), per_inch(15)) == per_inch(15)


def test_picks_are_as_the_sett_unless_told_otherwise_or_of_another_yarn():
    assert weaving.picks_in_use(sett=per_inch(12)) == per_inch(12)
    assert weaving.picks_in_use(closest=per_inch(24), share=0.8, sett=per_inch(12)).m_as("1/inch") == approx(19.2)
    # Three quarters of the closest, where nothing else is said: common practice.
    assert weaving.picks_in_use(closest=per_inch(24), sett=per_inch(12)).m_as("1/inch") == approx(18)
    assert weaving.picks_in_use(per_inch(10), per_inch(24), 0.75, per_inch(12)) == per_inch(10)


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: weaving.closest_sett(per_inch(0), 2, 2), "side by side"),
        (lambda: weaving.closest_sett(per_inch(1), 0, 2), "ends of a repeat"),
        (lambda: weaving.closest_sett(per_inch(1), 2, 0), "intersections"),
        (lambda: weaving.working_sett(per_inch(0)), "closest sett"),
        (lambda: weaving.working_sett(per_inch(1), 0), "share"),
        (lambda: weaving.working_sett(per_inch(1), 1.1), "share"),
        (lambda: weaving.width_in_reed(meters(0)), "width"),
        (lambda: weaving.width_in_reed(ONE, 1), "draw-in"),
        (lambda: weaving.width_in_reed(ONE, 0, -0.1), "shrinkage"),
        (lambda: weaving.ends(per_inch(0), ONE), "sett"),
        (lambda: weaving.ends(per_inch(1), meters(0)), "width"),
        (lambda: weaving.woven_length(meters(0)), "finished length"),
        (lambda: weaving.woven_length(ONE, 1), "shrinkage"),
        (lambda: weaving.woven_length(ONE, 0, 0), "pieces"),
        (lambda: weaving.woven_length(ONE, hems=meters(-1)), "hems"),
        (lambda: weaving.woven_length(ONE, samples=meters(-1)), "samples"),
        (lambda: weaving.warp_length(meters(0)), "finished length"),
        (lambda: weaving.warp_length(ONE, 1), "take-up"),
        (lambda: weaving.warp_length(ONE, 0, 1), "shrinkage"),
        (lambda: weaving.warp_length(ONE, loom_waste=meters(-1)), "waste"),
        (lambda: weaving.warp_yarn(0, ONE), "ends"),
        (lambda: weaving.warp_yarn(1, meters(0)), "warp"),
        (lambda: weaving.weft_yarn(per_inch(0), ONE, ONE), "picks"),
        (lambda: weaving.weft_yarn(per_inch(1), meters(0), ONE), "to weave"),
        (lambda: weaving.weft_yarn(per_inch(1), ONE, meters(0)), "width"),
        (lambda: weaving.weft_yarn(per_inch(1), ONE, ONE, -0.1), "take-up"),
        (lambda: weaving.weight_of_cloth(meters(-1), ONE, 1 / tex(1)), "warp yarn"),
        (lambda: weaving.weight_of_cloth(ONE, meters(-1), 1 / tex(1)), "weft yarn"),
        (lambda: weaving.weight_of_cloth(ONE, ONE, 0 / tex(1)), "of the warp"),
        (lambda: weaving.weight_of_cloth(ONE, ONE, 1 / tex(1), 0 / tex(1)), "of the weft"),
        (lambda: weaving.weft_apart(meters(-1), 1 / tex(1)), "weft yarn"),
        (lambda: weaving.weft_apart(ONE, 0 / tex(1)), "of the weft"),
        (lambda: weaving.closest_sett(per_inch(1), 2, 2, per_inch(0)), "crossing"),
        (lambda: weaving.ends_in_a_dent(per_inch(0), per_inch(1)), "sett"),
        (lambda: weaving.ends_in_a_dent(per_inch(1), per_inch(0)), "dents"),
        (lambda: weaving.sett_of_reed(0, per_inch(1)), "ends per dent"),
        (lambda: weaving.sett_of_reed(1, per_inch(0)), "dents"),
        (lambda: weaving.sett_on_the_loom(per_inch(1), per_inch(0)), "sett"),
        (lambda: weaving.picks_in_use(), "own picks"),
        (lambda: weaving.picks_in_use(per_inch(0)), "picks must"),
        (lambda: weaving.sett_in_use(), "own sett"),
        (lambda: weaving.sett_in_use(per_inch(0), per_inch(1)), "sett must be above zero"),
        (lambda: weaving.yarn_of_the_warp(yards(-1), yards(1)), "warp yarn"),
        (lambda: weaving.yarn_of_the_warp(yards(1), yards(-1)), "weft yarn"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()


def test_a_pick_taken_out_of_the_cloth_says_how_much_weft_there_is():
    """By hand: 40 in in the reed draw in to 36 in of cloth, and a pick pulled out of it measures 42 in straightened. 10
    picks in an inch of a yard are 360, and they are 420 yd. Measured against the cloth, 1 - 36/42, the draw-in counts
    twice, and 466.7 yd are spun. So what is asked for says against what.
    """
    us = described(Settings(units="us"))
    cloth = {
        "project": "Towel",
        "weave": "plain",
        "grist": 2000.0,
        "width": 36.0,
        "length": 36.0,
        "draw_in": 0.1,
        "own_picks": 10.0,
        "weft_lost": 1 - 40 / 42,
    }
    [values] = expected_of_keys(
        us, [entries_with(us, {"weavings": [cloth]})], ["weavings_weft_yarn", "weavings_reed_width"]
    )
    assert values["weavings_reed_width"][0] == approx(40) and values["weavings_weft_yarn"][0] == approx(420)
    asked = {each.key: each.help for each in us.blocks["weavings"].inputs}
    assert "beyond the width in the reed" in asked["weft_lost"]
    assert approx(42) == weaving.weft_yarn(
        per_inch(1), inches(1), inches(40), 1 - (1 - (1 - 36 / 42)) / (1 - 0.1)
    ).m_as("inch")
