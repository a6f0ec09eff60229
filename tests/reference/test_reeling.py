"""Loops, wraps, washing and tare."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx
from scipy import stats
from uncertainties import ufloat

from workbookgen.checking.expected import expected_values
from workbookgen.language.entries import starting_entries
from workbookgen.reference import reeling
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner
from workbookgen.units import Quantity

from .quantities import cm, inches, yards

positive = st.floats(0.01, 1e4)


@pytest.mark.parametrize(
    "wraps, loop, unit, expected",
    [
        (80, 1.5, "yard", 120),  # C. P. Brooks, Cotton Manufacturing: the cotton lea (read)
        (120, 90 / 36, "yard", 300),  # Kilgour and Woodhouse, The Jute Industry: the cut (read)
        (200, 1, "meter", 200),  # ISO 2060: skein of 200 m on a reel of 1 m (from memory)
        (110, 2, "yard", 220),  # two-yard reel: common practice, no source
    ],
)
def test_length_by_turns(wraps, loop, unit, expected):
    assert reeling.length(wraps, Quantity(loop, unit)).m_as(unit) == approx(expected, rel=1e-12)


def test_length_counts_the_part_wrap_and_the_rest():
    assert reeling.length(10, yards(2), 0.25, inches(18)).m_as("yard") == approx(21)


def test_niddy_noddy_with_arms_of_14_and_15_between():
    # Geometry: four legs, each the diagonal of a box 15 x 7 x 7, so 4 times the root of 323.
    loop = reeling.niddy_noddy_loop(inches(15), inches(14), inches(14))
    assert loop.m_as("inch") == approx(71.88880302244571, rel=1e-12)


def test_niddy_noddy_by_coordinates():
    # Four arm ends in space, walked round: an independent way to the same loop.
    ends = np.array([[6, 0, 10], [0, 4, 0], [-6, 0, 10], [0, -4, 0], [6, 0, 10]], dtype=float)
    walked = np.linalg.norm(np.diff(ends, axis=0), axis=1).sum()
    assert reeling.niddy_noddy_loop(cm(10), cm(12), cm(8)).m_as("cm") == approx(walked)


@given(cord=positive, turns=positive)
def test_turns_of_the_measured_loop_make_the_cord_again(cord, turns):
    loop = reeling.measured_loop(cm(cord), turns)
    assert reeling.length(turns, loop).m_as("cm") == approx(cord)


def test_ranking_of_the_loops():
    rated, measured, from_arms = yards(2.0), inches(71.0), inches(71.9)

    def choose(**known):
        return reeling.loop_in_use(**known), reeling.loop_basis(**known)

    assert choose(rated=rated, measured=measured, from_arms=from_arms) == (measured, "measured with a cord")
    assert choose(rated=rated, from_arms=from_arms) == (from_arms, "from height and arms")
    assert choose(rated=rated) == (rated, "rated")


def test_basis_of_an_array_is_an_array_of_texts():
    basis = reeling.loop_basis(rated=inches([72.0, 54.0]))
    assert basis.dtype == object and list(basis) == ["rated", "rated"]


def test_tolerance_of_a_hundred_wraps_by_propagation():
    # Outside witness: `uncertainties` carries the doubt of one loop through the hundred turns.
    loop = ufloat(72, 0.36)
    length = 100 * loop
    assert reeling.hundred_wraps(inches(72)).m_as("inch") == approx(length.nominal_value)
    assert reeling.hundred_wraps_tolerance(inches(0.36)).m_as("inch") == approx(length.std_dev)
    assert reeling.relative_tolerance(inches(0.36), yards(2)) == approx(length.std_dev / length.nominal_value)


@pytest.mark.filterwarnings("ignore:AffineScalarFunc:FutureWarning")
def test_a_number_may_carry_its_doubt():
    # Of another package: 100 turns of 2 ± 0.01 yd are 200 ± 1 yd.
    length = reeling.length(100, Quantity(ufloat(2.0, 0.01), "yard")).m_as("yard")
    assert (length.nominal_value, length.std_dev) == (approx(200), approx(1))


def test_a_skein_shrinks_as_its_loop_or_its_sample_did():
    assert reeling.finished_length(yards(200), inches(72), inches(68.4)).m_as("yard") == approx(190)
    assert reeling.finished_length(yards(200), inches(72)) == yards(200)
    # Not washed yet: as its sample lost a twentieth, it will be 190, and 210 where that grew. Its own loop says more.
    for shrinkage, washed in ((0.05, 190), (0.0, 200), (-0.05, 210)):
        expected = reeling.finished_length(yards(200), inches(72), shrinkage=shrinkage)
        assert expected.m_as("yard") == approx(washed)
    assert reeling.finished_length(yards(200), inches(72), inches(68.4), 0.2).m_as("yard") == approx(190)
    assert reeling.shrinkage(yards(200), yards(190)) == approx(0.05)
    # Sample of 10 in that measures 8.5 in after washing: 15 per cent, by definition.
    assert reeling.shrinkage(inches(10), inches(8.5)) == approx(0.15)
    assert reeling.shrinkage(yards(100), yards(103)) == approx(-0.03)


@given(length=positive, loop=positive, washed=positive)
def test_shrinkage_of_the_skein_is_that_of_its_loop(length, loop, washed):
    finished = reeling.finished_length(yards(length), cm(loop), cm(washed))
    whole = reeling.shrinkage(yards(length), finished)
    assert 1 - whole == approx(1 - reeling.shrinkage(cm(loop), cm(washed)))


def test_the_bag_is_taken_off_the_weight():
    assert reeling.net_mass(Quantity(4, "oz"), Quantity(28.349523125, "g")).m_as("oz") == approx(3)
    assert reeling.net_mass(Quantity(4, "oz")) == Quantity(4, "oz")


def test_doubt_of_a_loop_is_scipys_spread_of_its_limits():
    # JCGM 100, 4.3.7: limits without a likelier place between them are a rectangle (from memory).
    limits = stats.uniform(72 - 0.5, 2 * 0.5)
    assert reeling.loop_uncertainty(yards(2), inches(0.5)).m_as("inch") == approx(limits.std())
    assert reeling.loop_uncertainty(yards(2), inches(0)) == inches(0)


@pytest.mark.parametrize(
    "turns, share",
    [
        (5, 0),  # whole, as marked on the cord
        (6.25, 0.02),  # an eighth of a turn of 6.25
        (12.5, 0.01),
        (2.75, 1 / 22),
        (6.4, 1 / 128),  # a twentieth of 6.4
        (6.67, 0),  # by the hundredth
    ],
)
def test_turns_of_a_cord_are_known_to_half_of_the_part_that_was_read(turns, share):
    assert reeling.misread_turns(turns, inches(60)) == approx(share)


@pytest.mark.parametrize("misread, within", [(0, 0.005), (0.005, 0.005), (0.02, 0.02)])
def test_a_loop_is_no_surer_than_its_cord_was_read(misread, within):
    assert reeling.loop_uncertainty(inches(100), misread=misread).m_as("inch") == approx(100 * within / 3**0.5)
    assert reeling.loop_uncertainty(inches(100), inches(0.3), misread) == reeling.loop_uncertainty(
        inches(100), inches(0.3)
    )


def test_a_loop_without_a_tolerance_is_surer_if_it_was_measured():
    # Common practice, no source: 1.44 in of 72 in as rated, and 0.36 in by its arms.
    assert reeling.loop_uncertainty(inches(72)).m_as("inch") == approx(1.44 / 3**0.5)
    assert reeling.loop_uncertainty(inches(72), from_arms=inches(72)).m_as("inch") == approx(0.36 / 3**0.5)
    assert reeling.loop_uncertainty(inches(72), inches(0.5), from_arms=inches(72)).m_as("inch") == approx(0.5 / 3**0.5)


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: reeling.length(-1, yards(2)), "wraps cannot be negative"),
        (lambda: reeling.length(1, yards(2), 1.1), "part wrap"),
        (lambda: reeling.length(1, yards(2), -0.1), "part wrap"),
        (lambda: reeling.length(1, yards(0)), "loop must have a length"),
        (lambda: reeling.length(1, yards(2), 0, inches(-1)), "rest"),
        (lambda: reeling.measured_loop(yards(0), 5), "cord must have"),
        (lambda: reeling.measured_loop(yards(1), 0), "part of a turn"),
        (lambda: reeling.niddy_noddy_loop(cm(0), cm(1), cm(1)), "height"),
        (lambda: reeling.niddy_noddy_loop(cm(1), cm(0), cm(1)), "arms"),
        (lambda: reeling.niddy_noddy_loop(cm(1), cm(1), cm(0)), "arms"),
        (lambda: reeling.loop_in_use(), "not known"),
        (lambda: reeling.loop_basis(), "not known"),
        (lambda: reeling.loop_in_use(rated=cm(0)), "must have a length"),
        (lambda: reeling.loop_basis(rated=cm([1.0, 0.0])), "must have a length"),
        (lambda: reeling.relative_tolerance(cm(-1), cm(1)), "tolerance"),
        (lambda: reeling.relative_tolerance(cm(1), cm(0)), "loop"),
        (lambda: reeling.hundred_wraps(cm(0)), "loop"),
        (lambda: reeling.hundred_wraps_tolerance(cm(-1)), "tolerance"),
        (lambda: reeling.finished_length(cm(-1), cm(1)), "length cannot be negative"),
        (lambda: reeling.finished_length(cm(1), cm(0)), "loop"),
        (lambda: reeling.finished_length(cm(1), cm(1), cm(0)), "washed"),
        (lambda: reeling.shrinkage(cm(0), cm(1)), "above zero"),
        (lambda: reeling.shrinkage(cm(1), cm(-1)), "finished"),
        (lambda: reeling.net_mass(Quantity(5, "g"), Quantity(-1, "g")), "tare cannot"),
        (lambda: reeling.net_mass(Quantity(5, "g"), Quantity(5, "g")), "lighter"),
        (lambda: reeling.layers_wound(0, cm(1), cm(1)), "some wraps"),
        (lambda: reeling.layers_wound(1, cm(0), cm(1)), "diameter"),
        (lambda: reeling.layers_wound(1, cm(1), cm(0)), "width"),
        (lambda: reeling.turning(cm(0), cm(1), cm(1)), "height"),
        (lambda: reeling.turning(cm(1), cm(0), cm(1)), "arms"),
        (lambda: reeling.turning(cm(1), cm(1), cm(0)), "arms"),
        (lambda: reeling.mean_loop(cm(0), 6, cm(1), 1), "loop must have a length"),
        (lambda: reeling.mean_loop(cm(1), 0, cm(1), 1), "turn"),
        (lambda: reeling.mean_loop(cm(1), 6, cm(0), 1), "diameter"),
        (lambda: reeling.mean_loop(cm(1), 6, cm(1), 0), "at least one layer"),
        (lambda: reeling.mean_loop(cm(1), 6, cm(1), 2, 1.5), "last layer"),
        (lambda: reeling.last_layer(0, cm(1), cm(1), 1), "some wraps"),
        (lambda: reeling.last_layer(1, cm(0), cm(1), 1), "diameter"),
        (lambda: reeling.last_layer(1, cm(1), cm(0), 1), "width"),
        (lambda: reeling.last_layer(1, cm(1), cm(1), 0), "at least one layer"),
        (lambda: reeling.last_layer(1, cm(1), cm(1), 2), "so many layers"),
        (lambda: reeling.last_layer(1, cm(1), cm(1), 3), "so many layers"),
        (lambda: reeling.last_layer(2000, cm(1), cm(1), 1000), "thousand layers"),
        (lambda: reeling.growth(cm(1), cm(0)), "loop must have a length"),
        (lambda: reeling.growth(cm(1), cm(-1)), "loop must have a length"),
        (lambda: reeling.growth(cm(1), cm(2)), "shorten"),
        (lambda: reeling.loop_uncertainty(cm(0)), "loop must have a length"),
        (lambda: reeling.loop_uncertainty(cm(0), cm(1)), "loop must have a length"),
        (lambda: reeling.loop_uncertainty(cm(1), cm(-1)), "tolerance"),
        (lambda: reeling.loop_uncertainty(cm(1), misread=-0.1), "misread"),
        (lambda: reeling.misread_turns(0, cm(1)), "part of a turn"),
        (lambda: reeling.misread_turns(1, cm(0)), "loop must have a length"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()


@pytest.mark.parametrize("left_out", ["height", "arm_a", "arm_b"])
def test_a_niddy_noddy_that_is_not_known_whole_is_taken_for_a_frame(left_out):
    known = {"height": inches(15), "arm_a": inches(14), "arm_b": inches(14)} | {left_out: None}
    assert reeling.turning(**known).m_as("degree") == approx(360)
    only = {left_out: inches(15)}
    assert reeling.turning(**only).m_as("degree") == approx(360)


def test_a_path_that_hardly_turns_hardly_grows():
    # Half a radian, and three layers of 2 mm: the middle one is half a radian times 2 mm longer than the first.
    loop = reeling.mean_loop(cm(100), 0.5, cm(0.2), 3)
    assert loop.m_as("cm") == approx(100.1, rel=1e-12)


def test_a_layer_is_at_most_full():
    # 25 wraps to a layer: of 110, 50 fill two, and the other 60 are more than one holds.
    assert reeling.last_layer(110, Quantity(2, "mm"), cm(5), layers=3) == 1


def test_turning_of_a_frame_and_of_a_niddy_noddy():
    # Geometry, worked by hand: arms of 14 in, 15 in apart, give 9.37 rad; a plain frame turns once round.
    assert reeling.turning().m_as("radian") == approx(2 * np.pi)
    assert reeling.turning(inches(15)).m_as("degree") == approx(360)
    assert reeling.turning(inches(15), inches(14), inches(14)).m_as("radian") == approx(9.37, abs=0.005)


@given(height=positive, arm_a=positive, arm_b=positive)
def test_a_walk_round_the_arms_turns_as_much(height, arm_a, arm_b):
    # Outside witness: the four legs as vectors in space, and the angles from each to the next.
    ends = np.array([(arm_a / 2, 0, 0), (0, arm_b / 2, height), (-arm_a / 2, 0, 0), (0, -arm_b / 2, height)])
    legs = np.roll(ends, -1, axis=0) - ends
    onward = np.roll(legs, -1, axis=0)
    angles = np.arctan2(np.linalg.norm(np.cross(legs, onward), axis=1), (legs * onward).sum(axis=1))
    found = reeling.turning(cm(height), cm(arm_a), cm(arm_b))
    assert found.m_as("radian") == approx(angles.sum(), abs=1e-6)


@pytest.mark.parametrize("wraps, layers", [(1, 1), (50, 1), (51, 2), (100, 2), (120, 3)])
def test_layers_begun_count(wraps, layers):
    # 50 wraps of a millimeter fill 5 cm.
    assert reeling.layers_wound(wraps, Quantity(1, "mm"), cm(5)) == layers


@given(radius=positive, diameter=st.floats(0.01, 1), layers=st.integers(1, 40))
def test_rings_around_a_drum_have_the_mean_loop(radius, diameter, layers):
    rings = [2 * np.pi * (radius + layer * diameter) for layer in range(layers)]
    loop = reeling.mean_loop(cm(rings[0]), reeling.turning(), cm(diameter), layers)
    assert loop.m_as("cm") == approx(sum(rings) / layers)
    assert float(reeling.growth(loop, cm(rings[0]))) == approx(sum(rings) / layers / rings[0] - 1, abs=1e-12)


@given(radius=positive, diameter=st.floats(0.01, 1), width=st.floats(1, 10), wraps=st.integers(1, 500))
def test_every_wrap_counts_as_long_as_it_is(radius, diameter, width, wraps):
    """Each wrap by itself, spread over the layers that it lies in: the longest layer counts for no more wraps than
    it has."""
    begun = reeling.layers_wound(wraps, cm(diameter), cm(width))
    in_a_layer = width / diameter
    lying = [min(max(wraps - layer * in_a_layer, 0), in_a_layer) for layer in range(int(begun))]
    rings = [2 * np.pi * (radius + layer * diameter) for layer in range(int(begun))]
    last = reeling.last_layer(wraps, cm(diameter), cm(width), begun)
    loop = reeling.mean_loop(cm(rings[0]), reeling.turning(), cm(diameter), begun, last)
    assert loop.m_as("cm") == approx(sum(map(math.prod, zip(lying, rings, strict=True))) / wraps, rel=1e-5)


def test_a_few_wraps_on_top_hardly_lengthen_a_skein():
    """By hand: 50 wraps of 0.2 in fill 10 in, and 5 more lie on top, each 1.2566 in longer: 6.28 in of 55 wraps are
    0.114 in a wrap, not half a layer's 0.628."""
    us = planner(Settings())
    typed = {"loop": 72.0, "wraps": 55.0, "wpi": 5.0, "width": 10.0}
    values = expected_values(us, starting_entries(us) | {f"crowded_{key}": (value,) for key, value in typed.items()})
    assert values["crowded_layers"][0] == 2 and values["crowded_last"][0] == approx(0.1)
    assert values["crowded_mean"][0] == approx(72 + 2 * np.pi * 0.2 * 5 / 55)


def test_a_single_layer_grows_nothing():
    loop = reeling.mean_loop(yards(2), Quantity(360, "degree"), Quantity(2, "mm"), 1)
    assert loop == yards(2)
    assert reeling.growth(loop, yards(2)) == 0


def test_borders_are_still_inside():
    assert reeling.length(0, yards(2)) == yards(0)
    assert reeling.length(0, yards(2), 1) == yards(2)
    assert reeling.shrinkage(yards(1), yards(0)) == 1


def test_a_niddy_noddy_almost_flat_keeps_its_digits():
    # Geometry: at an end of the long arm two legs meet that lie almost on each other; at one of the short arm they make
    # almost a line.
    long, short, height = 79.0, 1e-6, 0.59
    at_ends = 2 * np.arctan(short / np.hypot(2 * height, long)) + 2 * np.arctan(long / np.hypot(2 * height, short))
    turning = reeling.turning(*(Quantity(each, "inch") for each in (height, long, short)))
    assert turning.m_as("radian") == pytest.approx(4 * np.pi - 2 * at_ends, rel=1e-12)


@pytest.mark.parametrize("sample, share", [(None, 0.05), (0.08, 0.08), (0, 0), (-0.02, -0.02)])
def test_a_washed_sample_says_more_than_what_is_usual(sample, share):
    assert reeling.expected_shrinkage(0.05, sample) == share


@pytest.mark.parametrize("known, share", [((0.08, 0.12), 0.08), ((0, 0.12), 0), ((None, 0.12), 0.12), ((0.08,), 0.08)])
def test_the_chosen_sample_goes_before_the_design(known, share):
    assert reeling.known_shrinkage(*known) == share


@pytest.mark.parametrize(
    "known, bought", [((5,), 1), ((4,), 0), ((5, 0.08), 0), ((5, None, 0.12), 0), ((4, None, 0.12), 0)]
)
def test_a_bought_yarn_is_finished_unless_a_sample_tells_otherwise(known, bought):
    assert reeling.as_bought(*known) == bought
    assert bought == 0 or reeling.known_shrinkage(bought=1.0) == 0


@pytest.mark.parametrize(
    "known, words",
    [
        ({}, "usual shrinkage"),
        ({"sample": 0}, "shrinks as its sample"),
        ({"sample": 0, "bought": 1.0}, "as bought"),
        ({"washed_loop": Quantity(1.4, "m"), "sample": 0, "bought": 1.0}, "measured"),
        ({"washed_loop": Quantity(1.4, "m"), "sample": 0.08}, "measured"),
    ],
)
def test_it_is_told_how_the_length_is_known(known, words):
    assert reeling.length_basis(Quantity(150, "m"), **known) == words


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: reeling.expected_shrinkage(0.9), "shrinkage"),
        (lambda: reeling.expected_shrinkage(0.05, 0.9), "shrinkage"),
        (lambda: reeling.known_shrinkage(), "Give the shrinkage"),
        (lambda: reeling.length_basis(Quantity(-1, "m")), "length"),
    ],
)
def test_what_is_no_shrinkage_is_refused(wrong, words):
    with pytest.raises(ValueError, match=words):
        wrong()
