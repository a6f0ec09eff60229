"""Garments, another gauge, growing rows and fulling: geometry and definitions, worked by hand."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.reference import garments, knitting
from workbookgen.units import Quantity

from .quantities import cm, grams


def per_10_cm(number):
    return Quantity(number, "1/decimeter")


def test_a_pullover_laid_flat():
    # Geometry: 100 cm around and 60 cm long are 6000 cm²; a sleeve of (35 + 25)/2 by 45 cm is 1350 cm², two are 2700.
    around = garments.finished_around(cm(90), cm(10))
    assert around.m_as("cm") == approx(100)
    assert garments.panel_width(around).m_as("cm") == approx(50)
    assert garments.garment_area(around, cm(60), cm(35), cm(45), 0, cm(25)).m_as("cm^2") == approx(8700)
    assert garments.garment_area(around, cm(60), cm(35), cm(45), 0).m_as("cm^2") == approx(6000 + 70 * 45)
    assert garments.garment_area(around, cm(60), cm(0), cm(0), 0.1).m_as("cm^2") == approx(6600)


def test_it_has_the_area_of_its_parts():
    parts = knitting.area("rectangle", cm(50), cm(60), pieces=2) + knitting.area("trapezoid", cm(35), cm(45), cm(25), 2)
    assert garments.garment_area(cm(100), cm(60), cm(35), cm(45), 0, cm(25)).m_as("cm^2") == approx(parts.m_as("cm^2"))


def test_yarn_by_swatch_is_what_the_length_by_swatch_weighs():
    grist = Quantity(2.5, "m/g")
    mass = garments.yarn_by_swatch(Quantity(8700, "cm^2"), Quantity(100, "cm^2"), grams(4))
    assert mass.m_as("g") == approx(348)
    length = knitting.from_swatch(Quantity(8700, "cm^2"), Quantity(100, "cm^2"), grams(4), grist)
    assert (mass * grist).m_as("m") == approx(length.m_as("m"))


def test_a_pattern_in_a_closer_gauge():
    assert garments.same_size(100, per_10_cm(20), per_10_cm(24)) == approx(120)
    assert garments.size_of_its_numbers(per_10_cm(20), per_10_cm(24)) == approx(-1 / 6)
    assert garments.stitches_for_one(per_10_cm(20), per_10_cm(24)) == approx(1.44)
    assert garments.stitches_for_one(per_10_cm(20), per_10_cm(24), per_10_cm(28), per_10_cm(35)) == approx(1.5)
    assert garments.stitches_for_one(per_10_cm(20), per_10_cm(24), per_10_cm(28)) == approx(1.44)


@given(pattern=st.floats(10, 40), own=st.floats(10, 40), constant=st.sampled_from(sorted(knitting.MUNDEN.values())))
def test_yarn_in_another_gauge_is_munden_twice(pattern, own, constant):
    # The same area by Munden's relation in either gauge, rows one and a half as many as stitches.
    area = Quantity(1, "m^2")
    lengths = []
    for gauge in (pattern, own):
        density = knitting.stitch_density(per_10_cm(gauge), per_10_cm(1.5 * gauge))
        lengths.append(knitting.from_gauge(area, density, knitting.munden_stitch_length(density, constant)))
    scaled = garments.yarn_in_gauge(lengths[0], garments.stitches_for_one(per_10_cm(pattern), per_10_cm(own)))
    assert scaled.m_as("m") == approx(lengths[1].m_as("m"))


def test_a_shawl_from_a_point_takes_the_square_of_its_rows():
    assert garments.rows_still(grams(75), grams(25), 50, 0, 100) == approx(50)
    assert garments.yarn_for_rows(50, grams(25), 50, 0, 100).m_as("g") == approx(75)
    assert garments.share_worked(grams(25), grams(75)) == approx(0.25)


def test_rows_from_a_side_are_all_alike():
    assert garments.rows_still(grams(75), grams(25), 50, 100, 100) == approx(150)
    assert garments.yarn_for_rows(150, grams(25), 50, 100, 100).m_as("g") == approx(75)


def test_rows_that_shrink_end_where_no_stitches_are_left():
    # From 200 to 100 stitches in 50 rows: 7500 stitches; 50 rows more to none are 2500, a third of the yarn used.
    assert garments.rows_still(grams(10), grams(30), 50, 200, 100) == approx(50)
    assert garments.rows_still(grams(99), grams(30), 50, 200, 100) == approx(50)
    assert garments.yarn_for_rows(50, grams(30), 50, 200, 100).m_as("g") == approx(10)


@pytest.mark.parametrize(
    "left, needed, words",
    [
        (30, 10, "it will last"),
        (10.7, 10, "it will last"),
        (10.6, 10, "too close to tell: weigh again later"),
        (9.3, 10, "too close to tell: weigh again later"),
        (9.2, 10, "it will not last"),
        (0, 1, "it will not last"),
        (0, 0, "it will last"),
    ],
)
def test_the_rest_lasts_if_it_weighs_as_much_as_its_rows_take(left, needed, words):
    assert garments.rest_lasts(grams(left), grams(needed)) == words


@given(first=st.integers(0, 300), more=st.integers(0, 8), rows=st.integers(4, 200), wanted=st.integers(0, 300))
def test_rows_counted_one_by_one(first, more, rows, wanted):
    """Stitch by stitch: row k has first + more · (k - 1/2) stitches, the middle of its growth."""
    stitches = [first + more * (row + 0.5) for row in range(rows + wanted)]
    now = first + more * rows
    if now == 0:
        return
    needed = grams(sum(stitches[rows:]) / sum(stitches[:rows]) * 40)
    assert garments.yarn_for_rows(wanted, grams(40), rows, first, now).m_as("g") == approx(needed.m_as("g"))
    assert garments.rows_still(needed, grams(40), rows, first, now) == approx(wanted)


def test_what_is_kept_is_not_worked_with():
    assert garments.yarn_to_work(grams(80), grams(12)).m_as("g") == approx(68)
    assert garments.yarn_to_work(grams(12), grams(12)).m_as("g") == 0


def test_a_shawl_ends_where_its_stitches_do():
    # From 200 stitches, 50 rows leave 100, and 50 more none: those are a third of what there was, 10 g for 30.
    assert garments.yarn_for_rows(50, grams(30), 50, 200, 100).m_as("g") == approx(10)


def test_fulling_divides_by_what_is_kept():
    # A swatch of 10 cm that becomes 8 cm has lost a fifth; 60 cm after it are 75 cm before it, 300 stitches at 40 in 10
    # cm.
    lost = garments.lost_in_fulling(cm(10), cm(8))
    assert lost == approx(0.2)
    make = garments.size_to_make(cm(60), lost)
    assert make.m_as("cm") == approx(75)
    assert garments.counted_over(make, per_10_cm(40)) == approx(300)
    assert garments.lost_in_fulling(cm(10), cm(11)) == approx(-0.1)


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: garments.finished_around(cm(0)), "body"),
        (lambda: garments.finished_around(cm(90), cm(-90)), "ease"),
        (lambda: garments.panel_width(cm(0)), "circumference"),
        (lambda: garments.garment_area(cm(0), cm(1), cm(0), cm(0), 0), "width and a length"),
        (lambda: garments.garment_area(cm(1), cm(1), cm(-1), cm(1), 0), "sleeve"),
        (lambda: garments.garment_area(cm(1), cm(1), cm(0), cm(0), -0.1), "additional share"),
        (lambda: garments.garment_area(cm(1), cm(1), cm(0), cm(1), 0), "around the upper arm"),
        (lambda: garments.yarn_by_swatch(Quantity(-1, "cm^2"), Quantity(1, "cm^2"), grams(1)), "negative"),
        (lambda: garments.yarn_by_swatch(Quantity(1, "cm^2"), Quantity(0, "cm^2"), grams(1)), "an area"),
        (lambda: garments.yarn_by_swatch(Quantity(1, "cm^2"), Quantity(1, "cm^2"), grams(0)), "weigh"),
        (lambda: garments.same_size(-1, per_10_cm(1), per_10_cm(1)), "negative"),
        (lambda: garments.same_size(1, per_10_cm(0), per_10_cm(1)), "gauge"),
        (lambda: garments.size_of_its_numbers(per_10_cm(1), per_10_cm(0)), "gauge"),
        (lambda: garments.stitches_for_one(per_10_cm(1), per_10_cm(1), per_10_cm(0), per_10_cm(1)), "gauge"),
        (lambda: garments.yarn_in_gauge(cm(0), 1), "some yarn"),
        (lambda: garments.yarn_in_gauge(cm(1), 0), "above zero"),
        (lambda: garments.yarn_to_work(grams(1), grams(2)), "More is kept"),
        (lambda: garments.yarn_to_work(grams(1), grams(-1)), "negative"),
        (lambda: garments.rows_still(grams(-1), grams(1), 1, 1, 1), "left"),
        (lambda: garments.rows_still(grams(1), grams(0), 1, 1, 1), "used"),
        (lambda: garments.rows_still(grams(1), grams(1), 0, 1, 1), "rows"),
        (lambda: garments.rows_still(grams(1), grams(1), 1, 1, 0), "stitches"),
        (lambda: garments.yarn_for_rows(-1, grams(1), 1, 1, 1), "still to work"),
        (lambda: garments.rows_still(grams(1), grams(1), 1, -1, 1), "stitches"),
        (lambda: garments.yarn_for_rows(50.2, grams(30), 50, 200, 100), "run out"),
        (lambda: garments.yarn_for_rows(51, grams(30), 50, 200, 100), "run out"),
        (lambda: garments.share_worked(grams(0), grams(1)), "used"),
        (lambda: garments.share_worked(grams(1), grams(-1)), "to come"),
        (lambda: garments.lost_in_fulling(cm(0), cm(1)), "before and after"),
        (lambda: garments.size_to_make(cm(0), 0.1), "wanted"),
        (lambda: garments.size_to_make(cm(1), 1), "all of it"),
        (lambda: garments.size_to_make(cm(1), 0.99), "all of it"),
        (lambda: garments.counted_over(cm(0), per_10_cm(1)), "size"),
        (lambda: garments.counted_over(cm(1), per_10_cm(0)), "gauge"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()


def test_arrays_of_shawls():
    rows = garments.rows_still(
        grams(np.array([75.0, 75.0, 99.0])), grams(np.array([25.0, 25.0, 30.0])), 50, np.array([0.0, 100.0, 200.0]), 100
    )
    assert list(rows) == approx([50, 150, 50])
