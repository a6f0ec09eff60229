"""Twist: factors of the count systems, screws walked in space, and balance."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx
from scipy.integrate import quad

from workbookgen.reference import twist
from workbookgen.reference.yarn_count import direct_count, grist_of
from workbookgen.units import Quantity

from .quantities import inches, per_inch, per_meter, tex

positive = st.floats(1e-2, 1e3)
strands = st.integers(2, 12)


def millimeters(number):
    return Quantity(number, "mm")


def degrees(number):
    return Quantity(number, "degree")


def cotton(count):
    return direct_count(grist_of(count, "cotton count"))


def test_systems_stand_in_the_order_that_a_person_sees():
    assert list(twist.SYSTEMS) == ["cotton", "worsted", "woolen run", "metric", "tex"]


@pytest.mark.parametrize(
    "system, of_tex",
    [
        ("cotton", 9.5673),  # N. Balasubramanian, conversion factors: 9.57, and to more places here (read)
        ("worsted", 11.7176),  # exact units: 560 yd/lb and turns in an inch (derived)
        ("woolen run", 6.9322),  # exact units: 1,600 yd/lb (derived)
        ("metric", 0.316228),  # exact units: km/kg and turns in a meter (derived)
        ("tex", 1.0),  # definition
    ],
)
@given(linear_density=st.floats(5, 2000))
def test_factor_one_of_each_system_in_tex(system, of_tex, linear_density):
    turns = twist.turns(1, tex(linear_density), system)
    assert twist.factor(turns, tex(linear_density), "tex") == approx(of_tex, rel=1e-5)


def test_turns_and_factors_of_print():
    # Public exam paper GATE TF 2014, Q19 (read).
    assert twist.turns(30, tex(25), "tex").m_as("1/cm") == approx(6)
    # Public exam paper GATE TF 2006, Q31: 17.90 turns per inch in 30s cotton (read).
    assert twist.factor(per_inch(17.90), cotton(30), "cotton") == approx(3.27, rel=1e-3)
    # T = M √N of a public page on yarn twist (read): factor 4 in 16s.
    assert twist.turns(4, cotton(16), "cotton").m_as("1/inch") == approx(16)
    # W. Klein, Technology of Short-staple Spinning: twist goes with the root of the count (read).
    found = twist.turns(twist.factor(per_inch(8), cotton(20), "cotton"), cotton(30), "cotton")
    assert found.m_as("1/inch") == approx(8 * 1.5**0.5)


@pytest.mark.parametrize("system", twist.SYSTEMS)
@given(turns=positive, linear_density=positive)
def test_a_factor_gives_its_twist_back(system, turns, linear_density):
    factor = twist.factor(per_meter(turns), tex(linear_density), system)
    assert twist.turns(factor, tex(linear_density), system).m_as("1/m") == approx(turns)


def test_one_yarn_in_many_systems_and_case_of_the_name():
    factors = twist.factor(per_inch(9), tex(200), np.array(["Cotton", "TEX"]))
    assert factors[1] / factors[0] == approx(9.5673, rel=1e-5)


@given(turns=positive, linear_density=positive)
def test_the_factors_side_by_side_are_those_of_the_systems(turns, linear_density):
    yarn = per_meter(turns), tex(linear_density)
    side_by_side = {
        "cotton": twist.cotton_factor,
        "worsted": twist.worsted_factor,
        "woolen run": twist.run_factor,
        "tex": twist.tex_factor,
    }
    for system, calculation in side_by_side.items():
        assert calculation(*yarn) == approx(twist.factor(*yarn, system))


def test_turns_counted():
    # ISO 2061, by definition: 85 turns in 250 mm.
    assert twist.turns_counted(85, millimeters(250)).m_as("1/m") == approx(340)


def test_surface_angle_of_a_thread_of_one_millimeter():
    # Geometry, worked by hand: tan β = π · 1 mm · 200/m = 0.628319.
    assert twist.surface_angle(millimeters(1), per_meter(200)).m_as("degree") == approx(32.14190763534206, rel=1e-12)
    assert twist.surface_angle(millimeters(1), per_meter(0)).m_as("degree") == 0


def test_yarns_of_equal_factor_have_equal_angles():
    # A handbook of short-staple spinning (read): same fiber, same packing, same factor, same angle.
    coarse, fine = tex(400), tex(100)
    angles = [
        twist.surface_angle(millimeters(diameter), twist.turns(30, density, "tex")).m_as("degree")
        for diameter, density in ((1.0, coarse), (0.5, fine))  # thickness goes with the root of the tex
    ]
    assert angles[0] == approx(angles[1])


def test_retraction_of_a_single():
    # Hearle, Grosberg and Backer (from memory): mean path (1 + sec 20°)/2 = 1.03209, so c = 1 - 1/1.03209.
    assert twist.retraction(degrees(20)) == approx(0.031092, rel=1e-4)
    assert twist.retraction(0.0) == 0


@given(angle=st.floats(0.01, 59.9))
def test_retraction_by_half_the_angle(angle):
    # The same calculation in its other shape, tan²(β/2): trigonometry.
    assert twist.retraction(degrees(angle)) == approx(np.tan(np.radians(angle) / 2) ** 2)


@given(angle=st.floats(0.01, 40))
def test_retraction_of_fibers_averaged_over_the_section(angle):
    # Outside witness: the mean path by quadrature. The calculation rounds it off, by under 0.6 per cent to 40 degrees.
    tangent = np.tan(np.radians(angle))
    path, _ = quad(lambda radius: 2 * radius * np.sqrt(1 + (radius * tangent) ** 2), 0, 1)
    assert 1 / (1 - twist.retraction(degrees(angle))) == approx(path, rel=6e-3)


@pytest.mark.parametrize("number, path", [(2, 1.0), (3, 1.1547), (4, 1.4142), (6, 2.0)])  # geometry
def test_path_of_the_strands(number, path):
    assert twist.ply_path(millimeters(1), number).m_as("mm") == approx(path, rel=1e-4)


@given(number=strands, diameter=positive)
def test_neighbors_on_the_path_touch(number, diameter):
    radius = twist.ply_path(millimeters(diameter), number).m_as("mm") / 2
    angle = 2 * np.pi / number
    apart = np.hypot(radius - radius * np.cos(angle), radius * np.sin(angle))
    assert apart == approx(diameter)


def test_length_of_strand_in_a_ply():
    # Geometry, worked by hand for 1 mm and 200 turns in a meter.
    ratio = twist.ply_ratio(millimeters(1), per_meter(200))
    assert ratio == approx(1.1810098120013968, rel=1e-12)
    assert twist.take_up(ratio) == approx(1 - 1 / 1.1810098120013968)
    assert twist.take_up(1) == 0


@given(path=st.floats(0.1, 3), turns=st.floats(1, 400))
def test_a_strand_walked_in_space(path, turns):
    # One turn of the screw in small steps: an independent way to its length.
    around = np.linspace(0, 2 * np.pi, 20_001)
    rise = 1000 / turns
    steps = np.diff([path / 2 * np.cos(around), path / 2 * np.sin(around), rise * around / (2 * np.pi)])
    walked = np.linalg.norm(steps, axis=0).sum()
    assert twist.ply_ratio(millimeters(path), per_meter(turns)) == approx(walked / rise, rel=1e-6)


@given(path=st.floats(0.1, 3), turns=st.floats(0, 400))
def test_take_up_is_told_by_the_angle_too(path, turns):
    angle = twist.surface_angle(millimeters(path), per_meter(turns)).m_as("radian")
    ratio = twist.ply_ratio(millimeters(path), per_meter(turns))
    assert twist.take_up(ratio) == approx(1 - np.cos(angle), abs=1e-12)


def test_twist_of_a_ply():
    # Two thirds of the singles' twist: common practice, no source.
    assert twist.ply_twist(per_inch(9)).m_as("1/inch") == approx(6)
    assert twist.ply_twist(per_inch(9), 0.5).m_as("1/inch") == approx(4.5)
    # Equal factor in a single and its two-ply: 9/√2, worked by hand.
    assert twist.equal_factor_ply_twist(per_inch(9), 2).m_as("1/inch") == approx(6.36396, rel=1e-5)


@given(turns=positive, number=strands, linear_density=positive, system=st.sampled_from(list(twist.SYSTEMS)))
def test_the_equal_factor_is_equal(turns, number, linear_density, system):
    single = twist.factor(per_meter(turns), tex(linear_density), system)
    ply = twist.equal_factor_ply_twist(per_meter(turns), number)
    assert twist.factor(ply, number * tex(linear_density), system) == approx(single)


@given(turns=positive, share=st.floats(0.3, 1))
def test_the_wanted_ply_twist_is_balanced(turns, share):
    plied = twist.ply_twist(per_inch(turns), share)
    assert twist.balance(per_inch(turns), plied.to("1/m"), share) == approx(0, abs=1e-12)


def test_balance_is_how_far_the_ply_is_off_two_thirds():
    assert twist.balance(per_inch(9), per_inch(9)) == approx(0.5)
    assert twist.balance(per_inch(9), per_inch(3)) == approx(-0.5)
    assert twist.balance(per_inch(9), per_inch(0)) == -1


@pytest.mark.parametrize(
    "balance, words",
    [
        (0.0, "balanced"),
        (0.75 / (2 / 3) - 1, "balanced"),  # 0.6 to 0.75 of the singles' twist is usual (common practice, no source)
        (0.6 / (2 / 3) - 1, "balanced"),
        (-0.125, "balanced"),
        (0.125000001, "more ply twist than balance"),
        (-0.125000001, "less ply twist than balance"),
        (0.5, "more ply twist than balance"),
        (-1, "less ply twist than balance"),
    ],
)
def test_words_of_balance(balance, words):
    assert twist.balance_words(balance) == words


def test_a_ply_is_twisted_the_other_way():
    assert [twist.opposite(letter) for letter in "ZSzs"] == ["S", "Z", "S", "Z"]
    assert list(twist.opposite(twist.opposite(["Z", "S"]))) == ["Z", "S"]


@given(diameter=st.floats(0.05, 5), turns=st.floats(1, 300))
def test_the_twist_of_an_angle_is_the_angle_of_a_twist(diameter, turns):
    angle = twist.surface_angle(millimeters(diameter), per_meter(turns))
    if angle.m_as("degree") < 60:
        assert twist.turns_for_angle(angle, millimeters(diameter)).m_as("1/m") == approx(turns)


def test_a_turn_of_the_ply_takes_a_turn_out_of_the_singles():
    # Worked by hand: 9 less 6 are 3; a sample plied with 10 has turned them the other way by 1.
    assert twist.twist_left(per_inch(9), per_inch(6)).m_as("1/inch") == approx(3)
    assert twist.twist_left(per_inch(9), per_inch(6), per_inch(10)).m_as("1/inch") == approx(-1)


def test_a_sample_beats_the_geometry_of_the_take_up():
    assert twist.take_up_in_use(0.02, 0.05) == 0.05
    assert twist.take_up_in_use(0.02) == 0.02


def _take_up(strands, yards_in_a_pound, turns, share):
    """Take-up of a ply of singles of that grist and twist, by geometry alone: wool of packing 0.6."""
    across = Quantity(np.sqrt(4 / (yards_in_a_pound * 0.9144 / 453.59237) / (np.pi * 1.31e6 * 0.6)), "m")
    plied = per_inch(turns * share)
    ratio = twist.ply_ratio(twist.ply_path(across, strands), plied)
    return twist.ply_take_up(
        twist.retraction_by_twist(across, per_inch(turns)), twist.retraction_left(across, per_inch(turns), plied), ratio
    )


def test_take_up_of_a_ply_by_the_lengths_of_its_fiber():
    # Followed from the fibers: 100 of untwisted single become 100 (1 - k), in the ply 100 (1 - k') along the strand.
    before, left, ratio = 0.06, 0.01, 1.08
    single, strand = 100 * (1 - before), 100 * (1 - left)
    assert twist.ply_take_up(before, left, ratio) == approx(1 - strand / ratio / single)
    assert twist.ply_take_up(0, 0, ratio) == approx(twist.take_up(ratio))
    assert twist.retraction_left(millimeters(0.5), per_inch(8), per_inch(8)) == approx(0)
    assert twist.feed(0.2) == approx(1.25)


@pytest.mark.parametrize(
    ("strands", "grist", "turns"), [(2, 1600, 8), (2, 1600, 12), (2, 3000, 14), (3, 1600, 8), (3, 2400, 12)]
)
def test_an_ordinary_ply_takes_up_a_few_percent_and_not_eleven(strands, grist, turns):
    # 1 to 6 per cent is what spinners measure (common practice); of the way round alone it would be far more.
    assert -0.005 < _take_up(strands, grist, turns, 2 / 3) < 0.07


def test_harder_plying_takes_up_more():
    found = [_take_up(2, 1600, 10, share) for share in (0.5, 0.6, 0.7, 0.8, 0.95)]
    assert found == sorted(found) and found[-1] > 0.02


def test_least_twist_for_a_staple():
    # Three to five wraps: common practice, no source.
    assert twist.least_twist(inches(4)).m_as("1/inch") == approx(1)
    assert twist.least_twist(inches(2), 5).m_as("1/inch") == approx(2.5)
    assert twist.staple_words(per_inch(1), twist.least_twist(inches(4))) == "enough for the staple"
    assert twist.staple_words(per_inch(0.9), per_inch(1)) == "too little for the staple: fibers may slip"


@given(staple=positive, wraps=st.floats(1, 8))
def test_the_least_twist_is_enough_in_any_unit(staple, wraps):
    least = twist.least_twist(inches(staple), wraps)
    assert twist.staple_words(least.to("1/m"), least) == "enough for the staple"
    assert twist.staple_words(least * 0.999, least).startswith("too little")


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: twist.turns_counted(-1, millimeters(1)), "turns cannot be negative"),
        (lambda: twist.turns_counted(1, millimeters(0)), "length"),
        (lambda: twist.factor(per_inch(-1), tex(1), "tex"), "twist cannot be negative"),
        (lambda: twist.factor(per_inch(1), tex(0), "tex"), "linear density"),
        (lambda: twist.factor(per_inch(1), tex(1), "furlongs"), '"furlongs"'),
        (lambda: twist.turns(-1, tex(1), "tex"), "factor cannot be negative"),
        (lambda: twist.turns(1, tex(0), "tex"), "linear density"),
        (lambda: twist.turns(1, tex(1), ["tex", "furlongs"]), '"furlongs"'),
        (lambda: twist.least_twist(inches(0)), "staple"),
        (lambda: twist.least_twist(inches(1), 0), "wraps"),
        (lambda: twist.staple_words(per_inch(-1), per_inch(1)), "twist cannot be negative"),
        (lambda: twist.staple_words(per_inch(1), per_inch(0)), "least twist"),
        (lambda: twist.surface_angle(millimeters(0), per_inch(1)), "diameter"),
        (lambda: twist.surface_angle(millimeters(1), per_inch(-1)), "twist"),
        (lambda: twist.retraction(degrees(60.001)), "under 60 degrees"),
        (lambda: twist.retraction(degrees(-1)), "under 60 degrees"),
        (lambda: twist.ply_path(millimeters(0), 2), "diameter"),
        (lambda: twist.ply_path(millimeters(1), 1), "from 2 to 12"),
        (lambda: twist.ply_path(millimeters(1), 13), "from 2 to 12"),
        (lambda: twist.ply_path(millimeters(1), [2, 2.5]), "whole number"),
        (lambda: twist.ply_ratio(millimeters(0), per_inch(1)), "path"),
        (lambda: twist.ply_ratio(millimeters(1), per_inch(-1)), "twist"),
        (lambda: twist.take_up(0.99), "1 or more"),
        (lambda: twist.ply_twist(per_inch(-1)), "singles"),
        (lambda: twist.ply_twist(per_inch(1), 0), "share"),
        (lambda: twist.equal_factor_ply_twist(per_inch(-1), 2), "singles"),
        (lambda: twist.equal_factor_ply_twist(per_inch(1), 1), "from 2 to 12"),
        (lambda: twist.balance(per_inch(0), per_inch(1)), "singles"),
        (lambda: twist.balance(per_inch(1), per_inch(-1)), "ply"),
        (lambda: twist.balance(per_inch(1), per_inch(1), 0), "share"),
        (lambda: twist.balance_words(-1.1), "below -1"),
        (lambda: twist.opposite("X"), '"X"'),
        (lambda: twist.opposite(["Z", ""]), "give Z or S"),
        (lambda: twist.turns_for_angle(degrees(60), millimeters(1)), "under 60"),
        (lambda: twist.turns_for_angle(degrees(20), millimeters(0)), "diameter"),
        (lambda: twist.twist_left(per_inch(1), per_inch(-1)), "negative"),
        (lambda: twist.take_up_in_use(), "sample"),
        (lambda: twist.take_up_in_use(1), "under 1"),
        (lambda: twist.twist_left(per_inch(1)), "Give the twist"),
        (lambda: twist.retraction_left(millimeters(1), per_inch(-1), per_inch(1)), "negative"),
        (lambda: twist.ply_take_up(1, 0, 1), "under 1"),
        (lambda: twist.ply_take_up(0, 0, 0.9), "1 or more"),
        (lambda: twist.feed(1), "under 1"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
