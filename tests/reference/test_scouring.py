"""Baths, detergent, and hot and cold mixed, against print and against each other."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.reference import fiber, scouring
from workbookgen.units import Quantity

from .quantities import grams


def liters(number):
    return Quantity(number, "L")


def celsius(number):
    return Quantity(number, "degC")


def fahrenheit(number):
    return Quantity(number, "degF")


@pytest.mark.parametrize(
    "mass, wanted", [(0, 0), (499, 1), (500, 1), (501, 2), (1500, 3)], ids=lambda number: f"{number}"
)
def test_loads_are_whole(mass, wanted):
    assert scouring.loads(grams(mass), grams(500)) == wanted


def test_the_last_digits_do_not_ask_for_one_more_load():
    assert 0.1 * 3 / 0.1 > 3
    assert scouring.loads(Quantity(0.1 * 3, "kg"), Quantity(0.1, "kg")) == 3


def test_water_of_a_wash():
    # Liquor ratio 1:30, common practice, no source: 500 g take 15 L, four baths 60 L.
    bath = scouring.liquor(grams(500), Quantity(30, "L/kg"))
    assert bath.m_as("L") == approx(15)
    assert scouring.water_in_all(bath, 4).m_as("L") == approx(60)
    assert scouring.bath_time(4, Quantity(20, "minute")).m_as("hour") == approx(80 / 60)


def test_washes_and_rinses_are_baths():
    # Two washes and two rinses, common practice, no source.
    assert scouring.baths_in_all(2, 2) == 4
    assert scouring.baths_in_all(1) == 1


@pytest.mark.parametrize("mass, full", [(300, 300), (500, 500), (1200, 500)])
def test_a_full_load_is_no_more_than_the_fleece(mass, full):
    assert scouring.full_load(grams(mass), grams(500)).m_as("g") == full


@given(mass=st.floats(1, 1e5), load=st.floats(1, 1e5))
def test_full_loads_hold_the_fleece(mass, load):
    number = scouring.loads(grams(mass), grams(load))
    assert number * scouring.full_load(grams(mass), grams(load)).m_as("g") >= mass * (1 - 1e-8)


def test_soap_in_print():
    # F. Beech, The Dyeing of Woollen Fabrics (read): 1 pound in 10 imperial gallons, 4.54609 L each.
    pound = scouring.detergent_by_liquor(Quantity(10, "imperial_gallon"), Quantity(453.59237 / 45.4609, "g/L"))
    assert pound.m_as("pound") == approx(1)


def test_detergent_by_the_mass_of_fleece():
    assert scouring.detergent(Quantity(1.2, "kg"), Quantity(3, "percent")).m_as("g") == approx(36)


def test_liquid_detergent_by_the_spoon():
    # Worked by hand: 2 teaspoons a gallon in 8 gallons are 16 teaspoons, a third of a US cup.
    dose = Quantity(2, "teaspoon / gallon")
    assert scouring.liquid_detergent(Quantity(8, "gallon"), dose).m_as("cup") == approx(1 / 3)
    # Two washes of 2 kg in 30 L a kilogram at 5 mL a liter: 2 * 60 * 5 mL.
    of_fleece = scouring.liquid_of_fleece(Quantity(2, "kg"), Quantity(30, "L/kg"), Quantity(5, "mL/L"), 2)
    assert of_fleece.m_as("mL") == approx(600)


def test_mixed_by_hand():
    # 30 L at 20 and 10 L at 80: (600 + 800) / 40 = 35 degrees; the same told in Fahrenheit.
    assert scouring.mixed_temperature(liters(30), celsius(20), liters(10), celsius(80)).m_as("degC") == approx(35)
    assert scouring.mixed_temperature(liters(30), fahrenheit(68), liters(10), fahrenheit(176)).m_as("degF") == approx(
        95
    )


@given(volume=st.floats(0.5, 200), first=st.floats(0, 95), second=st.floats(0, 95), share=st.floats(0.01, 0.99))
def test_what_is_added_brings_about_the_target(volume, first, second, share):
    assume(abs(first - second) > 0.5)
    target = celsius(first + share * (second - first))
    added = scouring.to_add(liters(volume), celsius(first), celsius(second), target)
    assert scouring.mixed_temperature(liters(volume), celsius(first), added, celsius(second)).m_as("degC") == approx(
        target.m_as("degC")
    )
    part = scouring.part_of_mix(liters(volume), celsius(first), celsius(second), target)
    assert part.m_as("L") == approx(volume * share)
    # Outside witness: the two ways mix in the same proportion.
    assert (added / (added + liters(volume))).m_as("") == approx((part / liters(volume)).m_as(""))


def test_hot_water_in_celsius_and_fahrenheit():
    # Worked by hand: 20 L at 60 from 80 and 15 are 20 * 45 / 65.
    assert scouring.hot_water(liters(20), celsius(60), celsius(80), celsius(15)).m_as("L") == approx(900 / 65)
    # The same baths told in Fahrenheit: 140, 176 and 59.
    in_fahrenheit = scouring.hot_water(liters(20), fahrenheit(140), fahrenheit(176), fahrenheit(59))
    assert in_fahrenheit.m_as("L") == approx(900 / 65)
    in_three_scales = scouring.hot_water(liters(20), Quantity(333.15, "K"), celsius(80), fahrenheit(59))
    assert in_three_scales.m_as("L") == approx(900 / 65)


def test_a_target_at_either_end():
    assert scouring.hot_water(liters(20), celsius(80), celsius(80), celsius(15)).m_as("L") == 20
    assert scouring.hot_water(liters(20), celsius(15), celsius(80), celsius(15)).m_as("L") == 0
    # 140 °F are 60 °C but for the last digits.
    assert scouring.hot_water(liters(20), fahrenheit(140), celsius(60), celsius(15)).m_as("L") == approx(20)
    assert scouring.cold_water(liters(20), liters(20.000000000000004)).m_as("L") == 0


@given(volume=st.floats(0.5, 200), cold=st.floats(0, 40), rise=st.floats(1, 60), share=st.floats(0, 1))
def test_mixing_gives_the_temperature_asked_for(volume, cold, rise, share):
    target = celsius(cold + rise * share)
    hot = scouring.hot_water(liters(volume), target, celsius(cold + rise), celsius(cold))
    cool = scouring.cold_water(liters(volume), hot)
    assert (hot + cool).m_as("L") == approx(volume)
    # Outside witness: the mean weighted by volumes, in Celsius and in Fahrenheit, which has another zero.
    volumes = [hot.m_as("L"), cool.m_as("L")]
    for scale in ("degC", "degF"):
        mixed = np.average([celsius(cold + rise).m_as(scale), celsius(cold).m_as(scale)], weights=volumes)
        assert mixed == approx(target.m_as(scale), abs=1e-9)


@given(mass=st.floats(1, 1e5), scoured_yield=st.floats(0.01, 1))
def test_clean_fiber_and_dirt_make_the_fleece(mass, scoured_yield):
    clean, dirt = scouring.clean_mass(grams(mass), scoured_yield), scouring.removed(grams(mass), scoured_yield)
    assert (clean + dirt).m_as("g") == approx(mass)
    assert clean.m_as("g") == approx(fiber.after_scouring(grams(mass), 1, own=scoured_yield).m_as("g"))


@pytest.mark.parametrize(
    "temperature, words",
    [
        (celsius(20), "too cool"),
        (celsius(44.99), "too cool"),
        (celsius(45), "can scald"),
        (fahrenheit(113), "can scald"),
        # Published tables of burns (read): 120 °F some minutes, 130 °F 30 s, 135 °F 10 s, 140 °F under 5 s.
        # 120 °F are (120 - 32) / 1.8 = 48.89 °C, and the cautions say minutes of them.
        (fahrenheit(120), "scalds in minutes"),
        (celsius(48.7), "can scald"),
        (celsius(52), "scalds in 30 to 120 seconds"),
        (fahrenheit(130), "scalds in 10 to 30 seconds"),
        (fahrenheit(135), "scalds in 5 to 10 seconds"),
        (fahrenheit(139.9), "scalds in 5 to 10 seconds"),
        (fahrenheit(140), "scalds in under 5 seconds"),
        (celsius(95), "scalds in under 5 seconds"),
        (fahrenheit(212), "scalds in under 5 seconds"),
        (celsius(135), "hotter than water boils"),  # 135 °F typed into a planner of degrees Celsius
    ],
)
def test_temperature_words(temperature, words):
    assert scouring.temperature_words(temperature).startswith(words)


@pytest.mark.parametrize(
    "limit, below, from_it_on",
    [
        (48.8, "can scald if it lasts", "scalds in minutes"),
        (52, "scalds in minutes", "scalds in 30 to 120 seconds"),
        (54, "scalds in 30 to 120 seconds", "scalds in 10 to 30 seconds"),
        (57, "scalds in 10 to 30 seconds", "scalds in 5 to 10 seconds"),
        (60, "scalds in 5 to 10 seconds", "scalds in under 5 seconds"),
        (101, "scalds in under 5 seconds", "hotter than water boils"),
    ],
)
def test_a_bath_is_as_dangerous_as_its_words_from_the_very_limit_on(limit, below, from_it_on):
    """The limits are those of published tables of burns (read)."""
    assert scouring.temperature_words(celsius(limit - 0.05)).startswith(below)
    assert scouring.temperature_words(celsius(limit)).startswith(from_it_on)
    assert scouring.added_words(celsius(limit)).startswith(from_it_on)


def test_water_that_is_right_already_needs_none_of_the_other():
    assert scouring.to_add(liters(10), celsius(40), celsius(60), celsius(40)).m_as("L") == 0
    # Nearly as warm as wanted is enough, with much of it: 10 · 20 / 0.5.
    assert scouring.to_add(liters(10), celsius(20), celsius(40.5), celsius(40)).m_as("L") == approx(400)
    parts = [scouring.part_of_mix(liters(10), celsius(40), celsius(60), celsius(each)).m_as("L") for each in (40, 60)]
    assert parts == [0, approx(10)]
    for just_beside in (19.99, 60.01):
        for mix in (scouring.to_add, scouring.part_of_mix):
            with pytest.raises(ValueError, match="target"):
                mix(liters(10), celsius(20), celsius(60), celsius(just_beside))


def test_cold_water_that_is_added_to_cool_a_pot_is_no_bath():
    assert scouring.added_words(celsius(12)) == "cool: look at what it becomes"
    assert scouring.added_words(celsius(44.99)) == "cool: look at what it becomes"
    assert scouring.added_words(fahrenheit(140)) == "scalds in under 5 seconds: gloves, tools"
    assert list(scouring.added_words(Quantity([12.0, 50.0], "degC"))) == [
        "cool: look at what it becomes",
        "scalds in minutes: gloves, tools",
    ]


def test_no_bath_that_melts_grease_is_safe_for_bare_hands():
    for degrees in np.arange(45, 100, 0.5):
        words = scouring.temperature_words(celsius(degrees))
        assert "scald" in words and "gloves" in words and "tools" in words and "by hand" not in words


def test_a_whole_fleece():
    # Worked by hand: 3 kg at 30 L/kg are 90 L a bath, 360 L in four; 2 % of it in each of two washes 120 g; 3 loads of
    # 2 h.
    kilograms = Quantity(3, "kg")
    assert scouring.water_of_fleece(kilograms, Quantity(30, "L/kg"), 4).m_as("L") == approx(360)
    assert scouring.detergent_of_fleece(kilograms, 0.02, 2).m_as("g") == approx(120)
    assert scouring.time_of_fleece(3, Quantity(2, "hour")).m_as("hour") == approx(6)


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: scouring.loads(grams(-1), grams(1)), "mass"),
        (lambda: scouring.loads(grams(1), grams(0)), "load"),
        (lambda: scouring.liquor(grams(-1), Quantity(30, "L/kg")), "mass"),
        (lambda: scouring.liquor(grams(1), Quantity(0, "L/kg")), "liquor ratio"),
        (lambda: scouring.water_in_all(liters(-1), 1), "volume"),
        (lambda: scouring.water_in_all(liters(1), -1), "baths"),
        (lambda: scouring.full_load(grams(0), grams(1)), "mass of the fleece"),
        (lambda: scouring.full_load(grams(1), grams(0)), "load"),
        (lambda: scouring.baths_in_all(0.5, 1), "Wash at least once"),
        (lambda: scouring.baths_in_all(1, -1), "rinses"),
        (lambda: scouring.detergent(grams(-1), 0.1), "mass"),
        (lambda: scouring.detergent(grams(1), 1.1), "share"),
        (lambda: scouring.detergent(grams(1), -0.1), "share"),
        (lambda: scouring.detergent(grams(1), 0.02, by_water=0.001), "water"),
        (lambda: scouring.detergent_of_fleece(grams(1), 0.02, 2, by_water=0.001), "water"),
        (lambda: scouring.liquid_detergent(liters(1), 0), "dose"),
        (lambda: scouring.liquid_of_fleece(grams(1), Quantity(30, "L/kg"), 0.001, 0), "wash"),
        (lambda: scouring.mixed_temperature(liters(0), celsius(20), liters(1), celsius(50)), "volumes"),
        (lambda: scouring.to_add(liters(0), celsius(20), celsius(80), celsius(50)), "pot"),
        (lambda: scouring.to_add(liters(1), celsius(20), celsius(50), celsius(60)), "target"),
        (lambda: scouring.to_add(liters(1), celsius(20), celsius(50), celsius(50)), "target"),
        (lambda: scouring.part_of_mix(liters(0), celsius(20), celsius(80), celsius(50)), "wanted"),
        (lambda: scouring.part_of_mix(liters(1), celsius(20), celsius(20), celsius(20)), "differ"),
        (lambda: scouring.part_of_mix(liters(1), celsius(20), celsius(50), celsius(60)), "target"),
        (lambda: scouring.detergent_by_liquor(liters(-1), Quantity(1, "g/L")), "volume"),
        (lambda: scouring.detergent_by_liquor(liters(1), Quantity(-1, "g/L")), "dose"),
        (lambda: scouring.hot_water(liters(-1), celsius(50), celsius(80), celsius(15)), "volume"),
        (lambda: scouring.hot_water(liters(1), celsius(50), celsius(15), celsius(15)), "warmer"),
        (lambda: scouring.hot_water(liters(1), celsius(50), celsius(15), celsius(80)), "warmer"),
        (lambda: scouring.hot_water(liters(1), celsius(81), celsius(80), celsius(15)), "between"),
        (lambda: scouring.hot_water(liters(1), celsius(14), celsius(80), celsius(15)), "between"),
        (lambda: scouring.cold_water(liters(1), liters(1.01)), "less than its hot water"),
        (lambda: scouring.cold_water(liters(1), liters(-1)), "volume"),
        (lambda: scouring.clean_mass(grams(-1), 0.5), "mass"),
        (lambda: scouring.clean_mass(grams(1), 0), "yield"),
        (lambda: scouring.removed(grams(1), 1.1), "yield"),
        (lambda: scouring.bath_time(-1, Quantity(1, "minute")), "baths"),
        (lambda: scouring.bath_time(1, Quantity(-1, "minute")), "time"),
        (lambda: scouring.temperature_words(celsius(np.inf)), "number"),
        (lambda: scouring.water_of_fleece(Quantity(1, "kg"), Quantity(30, "L/kg"), 0), "at least one bath"),
        (lambda: scouring.detergent_of_fleece(Quantity(-1, "kg"), 0.1, 1), "fleece"),
        (lambda: scouring.detergent_of_fleece(Quantity(1, "kg"), -0.1, 1), "share"),
        (lambda: scouring.detergent_of_fleece(Quantity(1, "kg"), 0.1, 0), "at least one wash"),
        (lambda: scouring.time_of_fleece(-1, Quantity(1, "hour")), "loads"),
        (lambda: scouring.time_of_fleece(1, Quantity(-1, "hour")), "time"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
