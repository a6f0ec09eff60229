"""Bobbins: by geometry, by hand, and as the planner says it."""

from math import pi

import numpy as np
import pytest
from pytest import approx

from entries import entries_with
from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import described
from workbookgen.reference import plying
from workbookgen.settings import Settings
from workbookgen.units import Quantity

from .quantities import cm, meters

US = described(Settings(units="us"))


def density(number):
    return Quantity(number, "g/cm^3")


def test_a_bobbin_holds_a_ring_of_yarn():
    # Geometry: 10 cm and 2 cm across, 10 cm long: 240 π cm³; at 0.5 g/cm³ 120 π g, half full 60 π g.
    assert plying.bobbin_mass(cm(10), cm(2), cm(10), density(0.5), 1).m_as("g") == approx(120 * pi)
    assert plying.bobbin_mass(cm(10), cm(2), cm(10), density(0.5), 0.5).m_as("g") == approx(60 * pi)


@pytest.mark.parametrize(("outer", "inner", "fullness"), [(2, 2, 1), (10, 0, 1), (10, 2, 0), (10, 2, 1.1)])
def test_what_is_no_bobbin_is_refused(outer, inner, fullness):
    with pytest.raises(ValueError):
        plying.bobbin_mass(cm(outer), cm(inner), cm(10), density(0.4), fullness)


def test_a_full_one_that_was_weighed_wins():
    assert plying.bobbin_holds(Quantity(110, "g"), Quantity(90, "g")).m_as("g") == 110
    with pytest.raises(ValueError, match="measures"):
        plying.bobbin_holds()


def test_what_is_typed_goes_before_the_project():
    assert plying.still_to_ply(meters(300), meters(1000), 0.5) == meters(300)
    assert plying.still_to_ply(None, meters(1000), 0.25) == meters(250)
    for half in (dict(project=meters(1000)), dict(left=0.25)):
        with pytest.raises(ValueError, match="Give the length"):
            plying.still_to_ply(**half)
    assert plying.strands_to_ply(None, 3) == 3 and plying.strands_to_ply(2, 3) == 2 and plying.strands_to_ply() == 2
    assert (
        plying.take_up_to_ply(None, 0.05, 0.04) == 0.05
        and plying.take_up_to_ply(None, None, 0.04) == 0.04
        and plying.take_up_to_ply(sample=-0.02) == -0.02
        and plying.take_up_to_ply() == 0
    )


def test_singles_of_a_planned_yarn_are_finer_by_what_is_lost():
    # By hand: 10 m/g in two strands, a tenth lost in plying and a fifth in washing: 10 · 2 / (0.9 · 0.8).
    assert plying.singles_grist(None, Quantity(10, "m/g"), 2, 0.1, 0.2).m_as("m/g") == approx(27.777777778)
    # Singles that grow by a quarter in plying may be thicker: 10 · 2 / 1.25.
    assert plying.singles_grist(None, Quantity(10, "m/g"), 2, -0.25, 0.0).m_as("m/g") == approx(16)
    # A single beside a thread that is a fifth of the weight: 2 / (0.8 · 0.8); of one alone, 2 / 0.8.
    assert plying.singles_grist(None, Quantity(2, "m/g"), 1, 0, 0.2, bought=0.2).m_as("m/g") == approx(3.125)
    assert plying.singles_grist(plied=Quantity(2, "m/g"), shrinkage=0.2).m_as("m/g") == approx(2.5)
    with pytest.raises(ValueError, match="Give the grist"):
        plying.singles_grist(None, Quantity(10, "m/g"), 2, 0.1)  # how it shrinks is not known
    with pytest.raises(ValueError, match="no singles to spin"):
        plying.singles_grist(None, Quantity(10, "m/g"), 2, 0.1, 0.0, bought=1.0)


def test_each_strand_fills_bobbins_of_its_own():
    assert plying.bobbins_to_fill(meters(250), meters(250), 2) == 2
    assert plying.bobbins_to_fill(meters(251), meters(250), 2) == 4
    assert plying.bobbins_to_fill(meters(600), meters(250), 3) == 9
    # Three bobbins of each strand hold 750 m.
    assert plying.filled_to(meters(600), meters(250), 3, 9) == approx(0.8)


def test_whether_the_ply_fits():
    grams = [Quantity(each, "g") for each in (100, 201, 50)]
    assert (
        plying.plying_bobbins(grams[0], grams[0]) == 1
        and plying.plying_bobbins(grams[1], grams[0]) == 3
        and plying.plying_bobbins(grams[1], grams[0], grams[2]) == 5
    )
    # 68 g, a fifth of the yarn's weight besides as bought thread: 85 g of the 100 that one holds, or of 50.
    assert plying.of_one_bobbin(grams[0] * 0.68, grams[0], bought=0.2) == approx(0.85)
    assert plying.of_one_bobbin(grams[0] * 0.68, grams[0], grams[2], bought=0.2) == approx(1.7)
    with pytest.raises(ValueError, match="all bought"):
        plying.of_one_bobbin(grams[0], grams[0], bought=1.0)


@pytest.mark.parametrize(
    "bobbins, fills, words",
    [
        (1, 0.5, "It all fits on one plying bobbin."),
        (1, 0.85, "It all fits on one plying bobbin."),
        (1, 0.86, "It may not all fit on one plying bobbin."),
        (1, 1, "It may not all fit on one plying bobbin."),
        (3, 2.4, "It fills 3 plying bobbins of 400 yd each."),
        (2, 1.7, "It fills 2 plying bobbins of 400 yd each."),
        (2, 1.71, "It fills 2 plying bobbins of 400 yd each, and may need one more."),
        (6, 5.2, "It fills 6 plying bobbins of 400 yd each, and may need one more."),
    ],
)
def test_what_fills_all_of_a_bobbin_is_not_promised_to_fit(bobbins, fills, words):
    assert plying.plying_words(bobbins, Quantity(400, "yard"), fills) == words


def test_all_that_is_spun_is_plied_or_left():
    # By hand: 100, 80 and 90 m. At the end 80 m of each are used, 30 m are left; with a tenth lost, 72 m of ply, and 9
    # m more of the rest.
    has = Quantity(np.array([100.0, np.nan, 80.0, 90.0]), "m")
    shortest = plying.shortest_of(has)
    assert shortest == meters(80)
    rest = plying.left_in_all(meters(270), 3, shortest)
    assert rest.m_as("m") == approx(30) and rest.m_as("m") == approx(
        sum(plying.left_over(meters(each), shortest).m_as("m") for each in (100, 80, 90))
    )
    assert plying.plied_to_the_end(shortest, 3, 0.1).m_as("m") == approx(72)
    assert plying.plied_from(rest, 0.1, 3).m_as("m") == approx(9)
    # Shared out evenly, all of it becomes ply at once: as much as both together.
    assert plying.plied_to_the_end(plying.shared_evenly(meters(270), 3), 3, 0.1).m_as("m") == approx(72 + 9)


@pytest.mark.parametrize(
    ("strands", "rest", "words"),
    [
        (2, 2, "2-ply: the bobbins run out together."),
        (2, 30, "2-ply: wind the rest into a ball, and ply it from both ends."),
        (3, 30, "3-ply: chain-ply the rest."),
        (4, 30, "4-ply: wind the rest over evenly, and ply on."),
    ],
)
def test_what_to_do_with_the_rest(strands, rest, words):
    assert plying.leftover_words(strands, Quantity(240, "yard"), Quantity(rest, "yard"), take_up=0.0) == words


def test_a_project_fills_bobbins_on_the_sheet():
    """By hand: 900 yd of 2-ply, no reserve, no loss, singles of 2,000 yd/lb; a bobbin of 4 oz holds 500 yd: 2 for
    each strand."""
    project = {"name": "Vest", "wanted": 900.0, "margin": 0.0, "grist": 1000.0, "strands": 2.0, "take_up": 0.0}
    entries = entries_with(US, {"projects": [project]})
    entries |= {"bobbin_weighed": (4.0,), "bobbin_project": ("Vest",), "doubts_shrinkage": (0.0,)}
    values = expected_values(US, entries)
    assert values["bobbin_length"][0] == approx(500) and values["bobbin_bobbins"][0] == 4
    assert (
        values["bobbin_mass"][0] == approx(14.4)
        and values["bobbin_words"][0] == "It fills 4 plying bobbins of 225 yd each, and may need one more."
    )
    assert (
        expected_values(US, entries | {"bobbin_strands": (3.0,), "bobbin_grist": (3000.0,)})["bobbin_bobbins"][0] == 6
    )


def test_weights_and_lengths_on_the_rack_are_one():
    """Half an ounce of 1,600 yd/lb is 50 yd."""
    entries = entries_with(US, {"rack": [{"mass": 0.5}, {"length": 80.0}]})
    values = expected_values(US, entries | {"ending_grist": (1600.0,)})
    assert (
        values["rack_over"][:2] == approx((0, 30))
        and values["ending_plied"][0] == approx(50)
        and values["ending_more"][0] == approx(15)
    )


def test_the_shortest_bobbin_is_the_shortest():
    # One that differs from it in the last digits of a sum has nothing left.
    assert plying.left_over(meters(180 * (1 - 1e-12)), meters(180)).m_as("m") == 0
    assert plying.left_in_all(meters(360 * (1 - 1e-12)), 2, meters(180)).m_as("m") == 0
    with pytest.raises(ValueError, match="No bobbin is shorter"):
        plying.left_over(meters(170), meters(180))
    with pytest.raises(ValueError, match="All bobbins hold at least"):
        plying.left_in_all(meters(350), 2, meters(180))
    assert plying.plied_from(meters(400), 0.05).m_as("m") == approx(380)  # of one strand, if nobody says


def test_a_single_bobbin_is_no_ply():
    for alone in (1, 0):
        assert plying.leftover_words(alone, meters(200)).startswith("A ply takes two bobbins")
    for several in (2, 3):
        with pytest.raises(ValueError, match="Of several bobbins"):
            plying.leftover_words(several, meters(200))


def test_plying_bobbins_are_filled_alike():
    assert plying.bobbin_gets(Quantity(900, "m"), 3).m_as("m") == 300
    assert plying.bobbin_gets(Quantity(900, "m"), 1).m_as("m") == 900


@pytest.mark.parametrize("length, bobbins, words", [(-1, 1, "length"), (1, 0, "at least one bobbin")])
def test_no_bobbin_gets_nothing(length, bobbins, words):
    with pytest.raises(ValueError, match=words):
        plying.bobbin_gets(Quantity(length, "m"), bobbins)


def test_bobbins_of_one_weight_run_out_together_only_if_they_are_of_one_grist():
    of_weight = {"take_up": 0.0, "grist": Quantity(2000, "yard/pound")}
    assert plying.leftover_words(2, meters(200), meters(0), **of_weight) == (
        "2-ply: of one grist, the bobbins would run out together."
    )
    assert plying.leftover_words(3, meters(200), meters(20), **of_weight) == "3-ply: chain-ply the rest."
    with pytest.raises(ValueError, match="grist"):
        plying.leftover_words(2, meters(200), meters(0), grist=Quantity(0, "yard/pound"))
