"""How a yarn is built: by geometry and by hand, and that nothing is lost on the way there and back."""

from math import pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries
from workbookgen.reference import plying, twist
from workbookgen.settings import Settings
from workbookgen.units import Quantity

from .quantities import meters

METRIC = described(Settings(units="metric", fibers=""))

LOSSES = st.floats(0, 0.9)
KINDS = st.sampled_from(["several strands", "a chain of three", "a ball on itself", "a cable"])


@pytest.mark.parametrize(
    ("structure", "strands", "plies", "ends"),
    [
        ("several strands", 4, 2, 4),
        ("a chain of three", 4, 2, 3),
        ("A ball on itself", 4, 2, 2),
        ("a cable", 2, 2, 4),
        ("a cable", 3, 2, 6),
    ],
)
def test_ends_side_by_side(structure, strands, plies, ends):
    assert plying.ends_in(structure, strands, plies) == ends


def test_only_a_cable_is_twisted_twice():
    # By hand: a tenth lost, then a fifth of what is left: 0.9 · 0.8.
    assert plying.kept_in("a cable", 0.1, 0.2) == approx(0.72)
    for once in ("a chain of three", "a ball on itself", "several strands"):
        assert plying.kept_in(once, 0.1, 0.2) == approx(0.9), once
    # What nobody states takes nothing more off, and a ply is of two.
    assert plying.kept_in("a cable", 0.1) == approx(0.9)
    assert (plying.ends_in("several strands"), plying.ends_in("a cable")) == (2, 4)


def test_a_chain_takes_three_lengths_and_a_ball_two():
    # By hand: 300 m with a tenth lost: 270 m of strand, in three 90 m, in two 135 m.
    assert plying.built_length(meters(300), plying.ends_in("a chain of three"), 0.9).m_as("m") == approx(90)
    assert plying.built_length(meters(300), plying.ends_in("a ball on itself"), 0.9).m_as("m") == approx(135)


def test_equal_ends_divide_the_count():
    # W. Davis, Hosiery Manufacture: 2/40s is 20s; C. P. Brooks, Cotton Manufacturing: 3/300s is 100s (both read).
    for count, ends, printed in ((40, 2, 20), (300, 3, 100)):
        assert plying.built_grist(Quantity(count, "number_english"), ends, 1).m_as("number_english") == approx(printed)


@given(kind=KINDS, take_up=LOSSES, cabling=LOSSES, strands=st.integers(1, 6), plies=st.integers(1, 4))
def test_weight_stays_and_the_way_back_is_the_way_there(kind, take_up, cabling, strands, plies):
    built = dict(ends=plying.ends_in(kind, strands, plies), kept=plying.kept_in(kind, take_up, cabling))
    length, grist = plying.built_length(meters(500), **built), plying.built_grist(Quantity(8, "m/g"), **built)
    assert (length / grist).m_as("g") == approx(500 / 8)
    assert plying.single_for_length(length, **built).m_as("m") == approx(500)
    assert plying.single_for_grist(grist, **built).m_as("m/g") == approx(8)


def test_a_wrapper_goes_around_both_diameters():
    # Geometry: a slope of one where the way around equals the way along, so √2 of wrapper.
    d = Quantity(1 / (2 * pi), "cm")
    assert plying.wrapper_feed(d, d, Quantity(1, "1/cm")) == approx(sqrt(2))
    assert plying.wrapper_feed(d, d, Quantity(1, "1/cm"), 0.5) == approx(1.5 * sqrt(2))
    assert plying.wrapper_feed(d, d, Quantity(0, "1/cm")) == 1
    # Two equal yarns that go around each other lie on a circle of half that width: the ply's own calculation.
    alike = plying.wrapper_feed(d / 2, d / 2, Quantity(1, "1/cm"))
    assert alike == approx(twist.ply_ratio(d, Quantity(1, "1/cm")))


def test_a_binder_lies_over_the_wrapper_and_takes_turns_out_of_it():
    # Geometry: π (1 + 2 · 0.5 + 0.5) mm · T = 1 at T = 1 / (2.5 π mm), so √2 of binder; 8 turns less 3 are 5.
    mm = [Quantity(each, "mm") for each in (1, 0.5, 0.5)]
    assert plying.binder_feed(*mm, Quantity(1 / (2.5 * pi), "1/mm")) == approx(sqrt(2))
    assert plying.binder_feed(*mm, Quantity(0, "1/mm")) == 1
    turns = [Quantity(each, "1/inch") for each in (8, 3)]
    assert plying.turns_left(*turns).m_as("1/inch") == approx(5) and plying.turns_left(*turns[::-1]).m_as("1/inch") == 0


def test_a_binder_on_the_sheet():
    # By hand: 100 tex of core, 100 tex of wrapper without a turn, 20 tex of binder without a turn: 220 tex, and 300 m
    # of each for 300 m.
    typed = {
        "core": 1000.0,
        "wrapper": 1000.0,
        "core_wraps": 10.0,
        "wrapper_wraps": 20.0,
        "turns": 0.0,
        "wanted": 300.0,
    }
    whole = wrapped(**typed, binder=5000.0, binder_wraps=40.0, binder_turns=0.0)
    assert whole["tex"] == approx(220) and whole["binder_length"] == approx(300) and whole["binder_mass"] == approx(6)
    assert wrapped(**typed)["tex"] == approx(200) and wrapped(**typed)["binder_length"] is None
    half = wrapped(**typed, binder=5000.0)
    assert half["tex"] is None and half["message"].startswith("Still to fill in: of the binder")


def wrapped(**typed):
    values = expected_values(
        METRIC, starting_entries(METRIC) | {f"wrapped_{key}": (value,) for key, value in typed.items()}
    )
    return {key: values[f"wrapped_{key}"][0] for key in ("tex", "binder_length", "binder_mass", "message")}


def test_what_the_wrapper_brings():
    # By hand: 100 tex of core, 50 tex of wrapper fed 1.6 to 1.
    assert plying.wrapped_density(Quantity(100, "tex"), Quantity(50, "tex"), 1.6).m_as("tex") == approx(180)
    with pytest.raises(ValueError):
        plying.wrapped_density(Quantity(100, "tex"), Quantity(50, "tex"), 0.9)


def test_a_binder_adds_what_it_weighs():
    tex = [Quantity(each, "tex") for each in (400, 20, 18)]
    assert plying.bound_density(*tex).m_as("tex") == 420 and plying.bound_density(tex[0]).m_as("tex") == 400


@pytest.mark.parametrize(
    "known, words",
    [
        ((400, None, 18), "not known what the binder"),
        ((0,), "above zero"),
        ((400, 0, 18), "above zero"),
        ((400, 20, 0), "above zero"),
    ],
)
def test_a_binder_of_which_nothing_is_known_is_refused(known, words):
    with pytest.raises(ValueError, match=words):
        plying.bound_density(*(None if each is None else Quantity(each, "tex") for each in known))
