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

LOSSES = st.floats(0, 0.5)


def meters(number):
    return Quantity(number, "m")


def turns(number):
    return Quantity(number, "1/m")


def test_what_is_lost_must_be_spun():
    # By hand: 72 m, a tenth lost in washing and a fifth in plying: 72 / (0.9 · 0.8) = 100 m of each strand.
    assert plying.strand_to_spin(meters(72), 0.2, 0.1).m_as("m") == approx(100)


@given(spun=st.floats(0, 500), plied=st.floats(0, 300), take_up=LOSSES, shrinkage=LOSSES)
def test_turns_are_neither_made_nor_lost(spun, plied, take_up, shrinkage):
    """A strand of 1 m with so many turns, plied and washed and taken apart again, says how it was spun."""
    plied_length = (1 - take_up) * (1 - shrinkage)  # of the finished yarn
    inserted = plied * (1 - take_up)  # turns of the ply, which is shorter than the strand
    left = max(spun - inserted, 0.0)
    counted_left = turns(left / (1 - shrinkage))  # the strand alone is as long as it was, less what washing took
    counted_ply = turns(inserted / plied_length)
    assert plying.ply_to_insert(counted_ply, shrinkage).m_as("1/m") == approx(plied)
    assert plying.singles_to_insert(counted_left, counted_ply, take_up, shrinkage).m_as("1/m") == approx(max(spun, inserted))


def test_a_label_on_the_sheet():
    """By hand: 200 m of 100 g is 500 tex; a tenth lost twice and two strands: 500 · 0.81 / 2 = 202.5 tex, 493.827 m/100 g."""
    metric = planner(Settings(units="metric"))
    entries = starting_entries(metric) | {"match_length": (200.0,), "match_mass": (100.0,), "match_take_up": (0.1,), "match_shrinkage": (0.1,), "match_wanted": (400.0,)}
    values = expected_values(metric, entries)
    assert values["match_singles_tex"][0] == approx(202.5) and values["match_singles_m"][0] == approx(493.827, abs=1e-3)
    assert values["match_weight"][0] == approx(200)  # as much as the yarn itself


def test_what_is_no_twist_is_refused():
    with pytest.raises(ValueError):
        plying.singles_to_insert(turns(-1), turns(1))
