"""A yarn that exists, spun again: by hand, and that its turns and its weight come out."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.checking.expected import expected_values
from workbookgen.language.entries import starting_entries
from workbookgen.reference import plying
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner
from workbookgen.units import Quantity

from .quantities import meters

LOSSES = st.floats(0, 0.5)


def turns(number):
    return Quantity(number, "1/m")


def test_what_is_lost_must_be_spun():
    # By hand: 72 m, a tenth lost in washing and a fifth in plying: 72 / (0.9 · 0.8) = 100 m of each strand.
    assert plying.strand_to_spin(meters(72), 0.2, 0.1).m_as("m") == approx(100)


@given(spun=st.floats(0, 500), plied=st.floats(0, 300), take_up=LOSSES, shrinkage=LOSSES)
def test_turns_are_neither_made_nor_lost(spun, plied, take_up, shrinkage):
    """A strand of 1 m with so many turns, plied against them, washed and taken apart again, says how it was spun."""
    in_the_ply = plied * (1 - take_up)  # turns of the whole piece, which is shorter than the strand
    in_the_strand = spun - in_the_ply  # each of them took one out of it; below zero it turns the other way
    counted_ply = turns(in_the_ply / ((1 - take_up) * (1 - shrinkage)))
    # Whoever turns the end until the strands lie side by side turns the strands with it.
    undone = in_the_strand + in_the_ply
    counted = turns(undone / (1 - shrinkage))  # the strand alone is as long as it was, less what washing took
    assert plying.twist_to_insert(counted_ply, shrinkage).m_as("1/m") == approx(plied)
    assert plying.twist_to_insert(counted, shrinkage).m_as("1/m") == approx(spun, abs=1e-9)


def test_a_strand_taken_out_of_the_yarn_has_the_turns_with_which_it_was_spun():
    """By hand: 20 turns undo the ply of 5 in; one of its strands, 5.2 in long, then takes 31.2 to lie open: 6 in an
    inch. Washing took a twentieth, so spin it with 5.7 and ply it with 3.8 of the 4. Nine and more, as with the turns
    of the ply added once more, make a cord of it.
    """
    us = planner(Settings())
    typed = {"length": 230.0, "mass": 3.5, "take_up": 0.04, "shrinkage": 0.05, "ply": 20 / 5, "left": 31.2 / 5.2}
    values = expected_values(us, starting_entries(us) | {f"match_{key}": (value,) for key, value in typed.items()})
    assert values["match_twist"][0] == approx(5.7) and values["match_ply_twist"][0] == approx(3.8)


def test_a_label_on_the_sheet():
    """By hand: 200 m of 100 g is 500 tex; a tenth lost twice and two strands: 500 · 0.81 / 2 = 202.5 tex, 493.827
    m/100 g."""
    metric = planner(Settings(units="metric"))
    entries = starting_entries(metric) | {
        "match_length": (200.0,),
        "match_mass": (100.0,),
        "match_take_up": (0.1,),
        "match_shrinkage": (0.1,),
        "match_wanted": (400.0,),
    }
    values = expected_values(metric, entries)
    assert values["match_singles_tex"][0] == approx(202.5) and values["match_singles_m"][0] == approx(493.827, abs=1e-3)
    assert values["match_weight"][0] == approx(200)  # as much as the yarn itself


def test_what_is_no_twist_is_refused():
    with pytest.raises(ValueError):
        plying.twist_to_insert(turns(-1))


@pytest.mark.parametrize("strands, grams", [(1, 80), (3, 240)])
def test_strands_weigh_as_much_as_their_length_of_singles(strands, grams):
    """1000 m of 80 tex are 80 g."""
    mass = plying.strands_mass(Quantity(1, "km"), strands, Quantity(80, "tex"))
    assert mass.units == Quantity(1, "g").units and mass.magnitude == approx(grams)


@pytest.mark.parametrize(
    "length, strands, tex, words",
    [(-1, 2, 80, "length"), (1, 0, 80, "strands"), (1, 1.5, 80, "strands"), (1, 2, 0, "density")],
)
def test_strands_that_are_none_weigh_nothing_anyone_knows(length, strands, tex, words):
    with pytest.raises(ValueError, match=words):
        plying.strands_mass(Quantity(length, "m"), strands, Quantity(tex, "tex"))
