"""The finest yarn of a fiber: fibers side by side, and turns in a staple."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.reference import diameter, how_fine
from workbookgen.units import Quantity

from .quantities import micrometers

WOOL = Quantity(1.31, "g/cm^3")  # Morton and Hearle, table 5.1 (read)


def test_forty_fibers_of_25_micrometers():
    # Geometry: π/4 · (25 µm)² · 1.31 g/cm³ is 0.643 tex a fiber; 40 of them are 25.7 tex, some 19,300 yards in a pound.
    tex = how_fine.finest_yarn(40, micrometers(25), WOOL)
    assert tex.m_as("tex") == approx(25.72, abs=0.01)
    assert (1 / tex).m_as("yard/pound") == approx(19_286, abs=5)


@given(fibers=st.floats(1, 500), across=st.floats(8, 60))
def test_the_finest_yarn_has_just_so_many_fibers(fibers, across):
    tex = how_fine.finest_yarn(fibers, micrometers(across), WOOL)
    assert diameter.fibers_in_section(tex, micrometers(across), WOOL) == approx(fibers)


def test_ones_own_fiber_goes_before_the_guide():
    assert how_fine.own_or_published(micrometers(21), micrometers(25)) == micrometers(21)
    assert how_fine.own_or_published(published=micrometers(25)) == micrometers(25)


def test_turns_in_a_staple():
    # Definition: 5 turns per inch stand 15 times in 3 inches.
    assert how_fine.turns_round(Quantity(5, "1/inch"), Quantity(3, "inch")) == approx(15)


def test_fit_in_words():
    assert how_fine.fit_words(40, 40) == "40 fibers: enough, in practiced hands"
    assert how_fine.fit_words(39.9, 40) == "39 fibers: too few to hold"
    assert how_fine.fit_words(0.6, 40) == "0 fibers: too few to hold"
    assert list(how_fine.fit_words([62.5, 12.0], [40.0, 30.0])) == [
        "62 fibers: enough, in practiced hands",
        "12 fibers: too few to hold",
    ]


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: how_fine.finest_yarn(0, micrometers(25), WOOL), "fibers"),
        (lambda: how_fine.finest_yarn(40, micrometers(0), WOOL), "diameter"),
        (lambda: how_fine.own_or_published(), "Measure"),
        (lambda: how_fine.own_or_published(micrometers(0)), "above zero"),
        (lambda: how_fine.turns_round(Quantity(-1, "1/inch"), Quantity(3, "inch")), "negative"),
        (lambda: how_fine.turns_round(Quantity(1, "1/inch"), Quantity(0, "inch")), "staple"),
        (lambda: how_fine.fit_words(0, 40), "above nothing"),
        (lambda: how_fine.fit_words(-40, 40), "above nothing"),
        (lambda: how_fine.fit_words(999_999, 40), "million"),
        (lambda: how_fine.fit_words(2_000_000, 40), "million"),
        (lambda: how_fine.fit_words(40, 0), "number of fibers"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
