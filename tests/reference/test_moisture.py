"""Regain and moisture content, which print itself mixes up."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.reference import moisture
from workbookgen.units import Quantity

from .quantities import grams


def percent(number):
    return Quantity(number, "percent")


@pytest.mark.parametrize(
    "content, regain, tolerance",
    [
        (12.0, 13.636, 1e-4),  # ASTM D2118: scoured wool (read)
        (13.04, 15.0, 1e-3),  # ASTM D2118: dry-spun worsted yarn (read)
        (9.34, 10.3, 1e-3),  # a public page of worked problems (read)
    ],
)
def test_published_pairs(content, regain, tolerance):
    assert moisture.regain_of(percent(content)) == approx(regain / 100, rel=tolerance)
    assert moisture.moisture_content_of(percent(regain)) == approx(content / 100, rel=tolerance)


def test_mass_at_the_commercial_regain_of_wool():
    # ASTM D1907, option 3, with D1909-13 wool 13.6 per cent (read): 21.00 g dry in 100 m.
    assert moisture.mass_at_regain(grams(21), percent(13.6)).m_as("g") == approx(23.856)


def test_correct_mass():
    # A public page of worked problems (read): 20,000 kg at 4 per cent, regain 2.02 per cent.
    found = moisture.correct_mass(Quantity(20000, "kg"), percent(4), percent(2.02))
    assert found.m_as("kg") == approx(19587.84, rel=1e-9)


def test_correct_mass_where_print_is_wrong():
    # Public examination, 2010 (read): 99.10 is printed, moisture taken as regain; 98.95 is right.
    found = moisture.correct_mass(grams(100), percent(4), percent(3.073)).m_as("g")
    assert found == approx(98.95, rel=1e-4)
    assert found != approx(99.10, rel=1e-4)


@given(content=st.floats(0, 0.95), mass=st.floats(0.1, 1e4))
def test_there_and_back(content, mass):
    regain = moisture.regain_of(content)
    assert moisture.moisture_content_of(regain) == approx(content)
    dry = moisture.dry_mass(grams(mass), content)
    assert moisture.mass_at_regain(dry, regain).m_as("g") == approx(mass)
    assert moisture.correct_mass(grams(mass), content, regain).m_as("g") == approx(mass)


@given(content=st.floats(0.001, 0.95))
def test_regain_is_above_moisture_content(content):
    assert moisture.regain_of(content) > content


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: moisture.mass_at_regain(grams(-1), 0.1), "mass"),
        (lambda: moisture.mass_at_regain(grams(1), -0.1), "regain"),
        (lambda: moisture.dry_mass(grams(-1), 0.1), "mass"),
        (lambda: moisture.dry_mass(grams(1), 1), "moisture content"),
        (lambda: moisture.dry_mass(grams(1), -0.1), "moisture content"),
        (lambda: moisture.regain_of(1.0), "moisture content"),
        (lambda: moisture.regain_of(-0.1), "moisture content"),
        (lambda: moisture.moisture_content_of(-0.1), "regain"),
        (lambda: moisture.correct_mass(grams(-1), 0.1, 0.1), "mass"),
        (lambda: moisture.correct_mass(grams(1), 1, 0.1), "moisture content"),
        (lambda: moisture.correct_mass(grams(1), 0.1, -0.1), "regain"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
