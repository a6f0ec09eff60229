"""Grist, linear density and counts, against the standards' tables and pint's textile context."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.reference import yarn_count
from workbookgen.units import Quantity, ureg

positive = st.floats(1e-3, 1e4)
DIRECT = ["tex", "dtex", "denier", "jute count"]


def test_systems_stand_in_the_order_that_a_person_sees():
    assert list(yarn_count.SYSTEMS) == [
        "yards per pound",
        "meters per 100 grams",
        "tex",
        "dtex",
        "denier",
        "metric count",
        "cotton count",
        "worsted count",
        "woolen run",
        "woolen cut",
        "linen lea",
        "Yorkshire skein",
        "Galashiels cut",
        "Alloa",
        "West of England",
        "French cotton",
        "jute count",
    ]


@pytest.mark.parametrize(
    "system, constant",
    [
        ("cotton count", 590.541),  # ASTM D2260 (read)
        ("worsted count", 885.812),  # ASTM D2260 (read)
        ("woolen run", 310.034),  # ASTM D2260 (read)
        ("woolen cut", 1653.515),  # public articles on counts, 300 yd (read)
        ("linen lea", 1653.515),  # ASTM D2260 (read)
        ("Yorkshire skein", 1937.7134),  # W. Davis, Hosiery Manufacture, 256 yd (read)
        ("Galashiels cut", 2480.2732),  # W. Davis, 200 yd (read)
        ("Alloa", 2066.8943),  # W. Davis, 240 yd (read)
        ("West of England", 1550.1707),  # a public article, 320 yd (read)
        ("French cotton", 500.0),  # C. P. Brooks, 1000 m in 500 g (read)
        ("metric count", 1000.0),  # definition, km per kg
        ("yards per pound", 496054.65),  # NIST SP 811 units (from memory)
        ("meters per 100 grams", 100000.0),  # definition
    ],
)
def test_tex_times_an_indirect_count_is_the_published_constant(system, constant):
    tex = yarn_count.direct_count(yarn_count.grist_of(7.0, system)).m_as("tex")
    assert tex * 7.0 == approx(constant, rel=1e-5)


@pytest.mark.parametrize(
    "system, tex",
    [
        ("tex", 1.0),
        ("dtex", 0.1),  # ISO 1144 (from memory)
        ("denier", 1 / 9),  # ISO 1144 (from memory)
        ("jute count", 34.44824),  # pound in a spyndle of 14,400 yd, pint's registry (read)
    ],
)
def test_a_direct_count_is_so_many_tex(system, tex):
    grist = yarn_count.grist_of(8.0, system)
    assert yarn_count.direct_count(grist).m_as("tex") == approx(8 * tex, rel=1e-6)


@pytest.mark.parametrize(
    "number, system, unit, printed, tolerance",
    [
        (20, "worsted count", "woollen_run", 7.0, 1e-9),  # ASTM D2260, factor 0.35 (read)
        (30, "worsted count", "linen_lea", 56.0, 1e-5),  # ASTM D2260, factor 1.86667 (read)
        (34, "metric count", "number_english", 20.0784, 1e-5),  # ASTM D2260, 0.590541 (read)
        (20, "cotton count", "french_cotton_count", 16.93, 1e-3),  # Brooks (read)
        (12, "Galashiels cut", "yorkshire_skein", 9.4, 4e-3),  # Davis, example 8 (read)
        (20, "cotton count", "yorkshire_skein", 65.6, 1e-3),  # Davis, example 7, 2/40s (read)
    ],
)
def test_from_one_count_to_another(number, system, unit, printed, tolerance):
    count = yarn_count.indirect_count(yarn_count.grist_of(number, system))
    assert count.m_as(unit) == approx(printed, rel=tolerance)


@pytest.mark.parametrize(
    "length, mass, unit, printed, tolerance",
    [
        ((20, "yard"), (10, "grain"), "worsted_count", 25.0, 1e-9),  # Davis, example 1 (read)
        ((20, "yard"), (35, "grain"), "worsted_count", 7.142857, 1e-6),  # Davis, example 2 (read)
        ((20, "yard"), (1.25, "dram"), "galashiels_cut", 20.4, 5e-3),  # Davis, example 6 (read)
        ((120, "yard"), (25, "grain"), "number_english", 40.0, 1e-9),  # Brooks (read)
        ((4000, "yard"), (5, "oz"), "woollen_run", 8.0, 1e-9),  # Calculations IV, 1898 (read)
        ((1536, "yard"), (6, "lb"), "yorkshire_skein", 1.0, 1e-9),  # public page: 256 yd (read)
    ],
)
def test_count_of_a_weighed_length(length, mass, unit, printed, tolerance):
    grist = yarn_count.grist(Quantity(*length), Quantity(*mass))
    assert grist.m_as(unit) == approx(printed, rel=tolerance)


def test_linear_density_of_a_skein():
    # ISO 2060, by definition: 100 m that weigh 24.6 g are 246 tex.
    density = yarn_count.linear_density(Quantity(100, "m"), Quantity(24.6, "g"))
    assert density.m_as("tex") == approx(246)


@pytest.mark.parametrize("tex, meters", [(1, 1000), (20, 50), (0.5, 2000), (250, 4)])
def test_a_linear_density_told_as_grist(tex, meters):
    # ISO 1144, by definition: 1 tex is 1 g in 1,000 m, 2 tex are 2 g.
    assert yarn_count.grist_of_density(Quantity(tex, "tex")).m_as("m/g") == approx(meters)


def test_the_finest_and_the_coarsest_yarn_have_a_grist():
    assert yarn_count.grist_of_density(Quantity(1e-6, "tex")).m_as("m/g") == approx(1e9)
    assert yarn_count.grist_in_use(from_wraps=Quantity(1e-6, "m/g")).m_as("m/g") == approx(1e-6)


@pytest.mark.parametrize("number", [0, -1])
def test_no_yarn_has_no_grist(number):
    with pytest.raises(ValueError, match="linear density must be above zero"):
        yarn_count.grist_of_density(Quantity(number, "tex"))
    with pytest.raises(ValueError, match="grist must be above zero"):
        yarn_count.grist_in_use(wanted=Quantity(number, "m/g"))


def test_mass_and_length_of_a_known_count():
    # American Correspondence School of Textiles, Calculations IV, 1898 (read): 5,250 yd of 3 run.
    mass = yarn_count.mass_of_length(Quantity(5250, "yard"), yarn_count.grist_of(3, "woolen run"))
    assert mass.m_as("oz") == approx(17.5)
    # Davis, example 10 (read): 3 lb of 2/48s worsted, which is 24s.
    length = yarn_count.length_of_mass(Quantity(3, "lb"), yarn_count.grist_of(24, "worsted count"))
    assert length.m_as("yard") == approx(40320)
    # Brooks (read): 9,240 yd of 44s cotton.
    mass = yarn_count.mass_of_length(Quantity(9240, "yard"), yarn_count.grist_of(44, "cotton count"))
    assert mass.m_as("lb") == approx(0.25)


@pytest.mark.parametrize("unit", ["number_english", "number_meter"])
@given(tex=positive)
def test_pint_says_the_same_of_textile_units(unit, tex):
    # Outside witness: pint's `textile` context knows by itself how direct and indirect meet.
    with ureg.context("textile"):
        witness = Quantity(tex, "tex").to(unit).magnitude
    assert yarn_count.grist_of(tex, "tex").m_as(unit) == approx(witness)


@pytest.mark.parametrize("system", yarn_count.SYSTEMS)
@given(number=positive)
def test_a_count_comes_back(system, number):
    grist = yarn_count.grist_of(number, system)
    count = yarn_count.direct_count(grist) if system in DIRECT else yarn_count.indirect_count(grist)
    assert count.m_as(yarn_count.SYSTEMS[system]) == approx(number)


@given(length=positive, mass=positive)
def test_grist_linear_density_mass_and_length_fit_together(length, mass):
    length, mass = Quantity(length, "yard"), Quantity(mass, "g")
    grist = yarn_count.grist(length, mass)
    assert (grist * yarn_count.linear_density(length, mass)).m_as("") == approx(1)
    assert yarn_count.mass_of_length(length, grist).m_as("g") == approx(mass.m_as("g"))
    assert yarn_count.length_of_mass(mass, grist).m_as("yard") == approx(length.m_as("yard"))


def test_one_number_in_many_systems_and_case_of_the_name():
    grists = yarn_count.grist_of(4.0, np.array(["Cotton Count", "TEX"]))
    assert grists.m_as("yard/pound") == approx([3360, 496054.65 / 4], rel=1e-7)


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: yarn_count.grist(Quantity(0, "m"), Quantity(1, "g")), "length"),
        (lambda: yarn_count.grist(Quantity(1, "m"), Quantity(0, "g")), "mass"),
        (lambda: yarn_count.linear_density(Quantity(0, "m"), Quantity(1, "g")), "length"),
        (lambda: yarn_count.linear_density(Quantity(1, "m"), Quantity(0, "g")), "mass"),
        (lambda: yarn_count.indirect_count(Quantity(0, "m/g")), "grist"),
        (lambda: yarn_count.direct_count(Quantity([1, 0], "m/g")), "grist"),
        (lambda: yarn_count.grist_of(0, "tex"), "count must be above zero"),
        (lambda: yarn_count.grist_of(2, "furlongs"), '"furlongs"'),
        (lambda: yarn_count.grist_of(2, ["tex", "furlongs"]), '"furlongs"'),
        (lambda: yarn_count.mass_of_length(Quantity(-1, "m"), Quantity(1, "m/g")), "length"),
        (lambda: yarn_count.mass_of_length(Quantity(1, "m"), Quantity(0, "m/g")), "grist"),
        (lambda: yarn_count.length_of_mass(Quantity(-1, "g"), Quantity(1, "m/g")), "mass"),
        (lambda: yarn_count.length_of_mass(Quantity(1, "g"), Quantity(0, "m/g")), "grist"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
