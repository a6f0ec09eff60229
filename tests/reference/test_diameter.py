"""Thickness: Ashenhurst's and Peirce's rules, fibers in a section, weight classes."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.reference import diameter
from workbookgen.reference.yarn_count import direct_count, grist_of
from workbookgen.units import Quantity

from .quantities import micrometers, per_inch, tex

WOOL, COTTON = Quantity(1.31, "g/cm^3"), Quantity(1.52, "g/cm^3")  # Morton and Hearle 5.1 (read)


@pytest.mark.parametrize(
    "cotton_count, printed",
    [(26, 140.5), (32, 156.0), (200, 390.0)],  # J. T. Taylor, less 5 per cent, p. 453 (read)
)
def test_taylors_table_of_cotton(cotton_count, printed):
    threads = diameter.threads_side_by_side(grist_of(cotton_count, "cotton count"), 0.95)
    assert threads.m_as("1/inch") == approx(printed, rel=4e-3)


@pytest.mark.parametrize(
    "k, printed",
    [(0.96, 57.6), (0.93, 55.8), (0.84, 50.4)],  # E. A. Posselt, 1896, 3,600 yd/lb (from memory)
)
def test_posselts_deductions(k, printed):
    threads = diameter.threads_side_by_side(Quantity(3600, "yard/pound"), k)
    assert threads.m_as("1/inch") == approx(printed, rel=1e-12)


@given(grist=st.floats(50, 1e5), k=st.floats(0.4, 1.2))
def test_the_fitted_factor_comes_back(grist, k):
    grist = Quantity(grist, "yard/pound")
    wraps = diameter.threads_side_by_side(grist, k).to("1/cm")
    assert diameter.fitted_k(wraps, grist) == approx(k)


@pytest.mark.parametrize(
    "wraps, unit, millimeters", [(10, "1/cm", 1), (25.4, "1/inch", 1), (20, "1/inch", 1.27), (0.5, "1/inch", 50.8)]
)
def test_threads_side_by_side_share_the_length(wraps, unit, millimeters):
    assert diameter.wrap_width(Quantity(wraps, unit)).m_as("mm") == approx(millimeters)


def test_diameter_with_the_density_of_cotton_yarn():
    # An examination item (read): 10s cotton, yarn density 0.91 g/cm3, 0.011316 in.
    density = direct_count(grist_of(10, "cotton count"))
    found = diameter.yarn_diameter(density, Quantity(0.91, "g/cm^3"), 1)
    assert found.m_as("inch") == approx(0.011316, rel=1e-4)


def test_peirces_rule_from_his_specific_volume():
    # Peirce (read in textbooks): 1.1 cm3/g gives 27.93, which he rounds to 28.
    density = direct_count(grist_of(36, "cotton count"))
    found = diameter.yarn_diameter(density, Quantity(1 / 1.1, "g/cm^3"), 1)
    assert 1 / found.m_as("inch") / 6 == approx(27.929, rel=1e-4)


def test_packing_implied_by_two_published_rules():
    # Public examination, 2008 (read): d in cm = 4.44e-3 times the root of tex/density.
    assert diameter.yarn_diameter(tex(30), Quantity(1.54, "g/cm^3"), 0.6458).m_as("cm") == approx(0.0196, rel=1e-3)
    # K = 0.90 with wool means a packing of 0.6053: worked out from both rules (derived).
    grist = Quantity(3600, "yard/pound")
    found = diameter.yarn_diameter(direct_count(grist), WOOL, 0.60532)
    assert 1 / found.m_as("inch") == approx(54.0, rel=1e-4)


@given(linear_density=st.floats(1, 5000), fiber=st.floats(1000, 2000), packing=st.floats(0.05, 1))
def test_the_cylinder_has_the_mass_of_the_yarn(linear_density, fiber, packing):
    found = diameter.yarn_diameter(tex(linear_density), Quantity(fiber, "kg/m^3"), packing)
    kilometer_of_fiber = np.pi * (found / 2) ** 2 * Quantity(1, "km") * packing
    mass = (kilometer_of_fiber * Quantity(fiber, "kg/m^3")).m_as("g")
    assert mass == approx(linear_density)


def test_wool_fibers():
    # 25 um: 0.643 tex; fibers in a section = 971.9 tex/um2 for wool of 1.31 (derived, geometry).
    assert diameter.fiber_linear_density(micrometers(25), WOOL).m_as("tex") == approx(0.64305, rel=1e-4)
    assert diameter.fibers_in_section(tex(100), micrometers(25), WOOL) == approx(971.9 * 100 / 625, rel=1e-4)


def test_counted_wraps_beat_expected_ones():
    assert diameter.wraps_in_use(per_inch(10), per_inch(12)) == per_inch(10)
    assert diameter.wraps_in_use(expected=per_inch(12)) == per_inch(12)


def test_density_matters():
    assert diameter.fibers_in_section(tex(30), micrometers(15), COTTON) < diameter.fibers_in_section(
        tex(30), micrometers(15), WOOL
    )


@pytest.mark.parametrize(
    "wraps, words",
    [  # Standard Yarn Weight System, as reproduced (read): 1-4, 5-6, 6-9, 9-12, 11-15, 12-18, 14-30, 30-40 and more
        (40, "0 lace"),
        (30.5, "0 lace"),
        (30, "1 super fine to 0 lace"),
        (29.5, "1 super fine"),
        (18.5, "1 super fine"),
        (18, "2 fine to 1 super fine"),
        (16, "2 fine to 1 super fine"),
        (14.5, "3 light to 1 super fine"),
        (13, "3 light to 2 fine"),
        (12, "4 medium to 2 fine"),
        (11.5, "4 medium to 3 light"),
        (10, "4 medium"),
        (9, "5 bulky to 4 medium"),
        (7, "5 bulky"),
        (6, "6 super bulky to 5 bulky"),
        (5.5, "6 super bulky"),
        (3, "7 jumbo"),
        (0.01, "7 jumbo"),
    ],
)
def test_weight_classes(wraps, words):
    assert diameter.yarn_weight_class(per_inch(wraps)) == words


def test_the_last_digits_of_a_conversion_do_not_decide():
    assert diameter.yarn_weight_class(per_inch(9).to("1/cm")) == "5 bulky to 4 medium"
    assert diameter.yarn_weight_class(per_inch(9.01)) == "4 medium"


@given(wraps=st.floats(0.1, 100))
def test_every_yarn_has_a_class(wraps):
    numbers = [int(words[0]) for words in diameter.yarn_weight_class(per_inch(wraps)).split(" to ")]
    assert numbers == sorted(numbers, reverse=True) and 0 <= numbers[-1] <= numbers[0] <= 7


def test_k_and_packing_are_one_fact():
    # As thick by its packing as by the threads that lie side by side, whatever the grist.
    for k, share in ((0.9, 0.60532), (0.84, 0.5273), (0.35, 0.09155)):
        assert diameter.packing(k, WOOL) == approx(share, rel=1e-4)
        for grist in (Quantity(600, "yard/pound"), Quantity(5000, "yard/pound")):
            across = diameter.yarn_diameter(1 / grist, WOOL, diameter.packing(k, WOOL))
            assert (1 / across).m_as("1/inch") == approx(diameter.threads_side_by_side(grist, k).m_as("1/inch"))


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: diameter.threads_side_by_side(Quantity(0, "m/g"), 0.9), "grist"),
        (lambda: diameter.threads_side_by_side(Quantity(1, "m/g"), 0), "factor"),
        (lambda: diameter.fitted_k(per_inch(0), Quantity(1, "m/g")), "wraps"),
        (lambda: diameter.fitted_k(per_inch(1), Quantity(0, "m/g")), "grist"),
        (lambda: diameter.yarn_diameter(tex(0), WOOL, 0.5), "linear density"),
        (lambda: diameter.yarn_diameter(tex(1), WOOL * 0, 0.5), "density of the fiber"),
        (lambda: diameter.yarn_diameter(tex(1), WOOL, 0), "packing"),
        (lambda: diameter.yarn_diameter(tex(1), WOOL, 1.01), "packing"),
        (lambda: diameter.packing(0, WOOL), "factor"),
        (lambda: diameter.packing(0.9, WOOL * 0), "density"),
        (lambda: diameter.packing(1.2, WOOL), "too large"),
        (lambda: diameter.fiber_linear_density(micrometers(0), WOOL), "diameter"),
        (lambda: diameter.fiber_linear_density(micrometers(20), WOOL * 0), "density"),
        (lambda: diameter.fibers_in_section(tex(0), micrometers(20), WOOL), "linear density"),
        (lambda: diameter.fibers_in_section(tex(1), micrometers(0), WOOL), "diameter"),
        (lambda: diameter.fibers_in_section(tex(1), micrometers(20), WOOL * 0), "density"),
        (lambda: diameter.wraps_in_use(), "Count the wraps"),
        (lambda: diameter.wraps_in_use(counted=per_inch(0)), "above zero"),
        (lambda: diameter.yarn_weight_class(per_inch(0)), "wraps"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()


@pytest.mark.parametrize("known, millimeters", [((0.9, 0.8), 0.9), ((0.9, None), 0.9), ((None, 0.8), 0.8)])
def test_a_yarn_that_was_measured_is_as_thick_as_it_is(known, millimeters):
    across = (None if each is None else Quantity(each, "mm") for each in known)
    assert diameter.diameter_in_use(*across).m_as("mm") == millimeters


@pytest.mark.parametrize("known, words", [((), "Measure the yarn"), ((Quantity(0, "mm"),), "diameter")])
def test_no_yarn_is_without_a_thickness(known, words):
    with pytest.raises(ValueError, match=words):
        diameter.diameter_in_use(*known)


@pytest.mark.parametrize("k, wraps", [({}, 14), ({"k": 0.5}, 20)])
def test_wraps_to_expect_are_k_times_the_root_of_the_grist(k, wraps):
    """√1600 = 40."""
    assert diameter.wraps_expected(Quantity(1600, "yd/lb"), **k).m_as("1/inch") == approx(wraps)


def test_a_yarn_whose_threads_touch_has_no_air_between_them():
    # √1600 = 40; 0.9 · 40 = 36 threads in an inch.
    assert diameter.touching_width(Quantity(1600, "yd/lb")).m_as("inch") == approx(1 / 36)
    assert diameter.touching_width(Quantity(1600, "yd/lb"), 0.35) == 1 / diameter.wraps_expected(
        Quantity(1600, "yd/lb")
    )
