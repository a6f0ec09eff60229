"""Areas, swatches, stitches and the rest of the ball."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx
from scipy.integrate import quad

from workbookgen.reference import knitting, yarn_count
from workbookgen.reference.calculation import OutOfValidity
from workbookgen.units import Quantity

from .quantities import cm, grams, per_centimeter

positive = st.floats(0.1, 1e3)


def square_centimeters(number):
    return Quantity(number, "cm^2")


def per_square_centimeter(number):
    return Quantity(number, "1/cm^2")


def test_shapes_stand_in_the_order_that_a_person_sees():
    assert knitting.SHAPES == ("rectangle", "triangle", "trapezoid", "circle", "ring")


@pytest.mark.parametrize(
    "shape, sizes, expected",  # geometry, worked by hand
    [
        ("rectangle", (50, 60), 3000),
        ("Triangle", (50, 60), 1500),
        ("trapezoid", (50, 60, 30), 2400),
        ("circle", (20,), 314.159265),
        ("ring", (20, None, 10), 235.619449),
    ],
)
def test_the_area_of_each_shape(shape, sizes, expected):
    sizes = [None if size is None else cm(size) for size in sizes]
    assert knitting.area(shape, *sizes).m_as("cm^2") == approx(expected, rel=1e-8)
    assert knitting.area(shape, *sizes, pieces=3).m_as("cm^2") == approx(3 * expected, rel=1e-8)


@given(width=positive, height=positive, second=positive)
def test_a_trapezoid_is_two_triangles(width, height, second):
    width, height, second = map(cm, (width, height, second))
    parts = knitting.area("triangle", width, height) + knitting.area("triangle", second, height)
    assert knitting.area("trapezoid", width, height, second).m_as("m^2") == approx(parts.m_as("m^2"))


@given(outer=positive, share=st.floats(0.01, 0.99))
def test_a_ring_is_what_a_circle_leaves(outer, share):
    whole, hole = (knitting.area("circle", cm(width)) for width in (outer, share * outer))
    ring = knitting.area("ring", cm(outer), second=cm(share * outer))
    assert (ring + hole).m_as("m^2") == approx(whole.m_as("m^2"))


@pytest.mark.parametrize("shape", ["triangle", "trapezoid", "circle"])
def test_area_by_adding_up_narrow_strips(shape):
    # Outside witness: quadrature of the width over the height.
    widths = {
        "triangle": (lambda y: 30 * (1 - y / 40), 40),
        "trapezoid": (lambda y: 30 + (18 - 30) * y / 40, 40),
        "circle": (lambda y: 2 * np.sqrt(max(0, 15**2 - (y - 15) ** 2)), 30),
    }
    width, height = widths[shape]
    strips, _ = quad(width, 0, height)
    found = knitting.area(shape, cm(30), cm(40), cm(18))
    assert found.m_as("cm^2") == approx(strips, rel=1e-6)


def test_many_shapes_at_once_and_sizes_that_a_shape_does_not_need():
    areas = knitting.area(np.array(["circle", "rectangle"], dtype=object), cm([20, 50]), cm([np.nan, 60]))
    assert areas.m_as("cm^2") == approx([314.159265, 3000])


def test_yarn_by_swatch():
    # A proportion, worked by hand: 15 x 15 cm that weigh 9 g, and 0.85 m2 of cloth, are 340 g; at 2 m/g 680 m.
    swatch = knitting.area("rectangle", cm(15), cm(15))
    found = knitting.from_swatch(Quantity(0.85, "m^2"), swatch, grams(9), Quantity(2, "m/g"))
    assert found.m_as("m") == approx(680)


@given(mass=positive, grist=st.floats(50, 1e4), share=st.floats(0.01, 1))
def test_a_swatch_cut_from_a_piece_tells_the_piece(mass, grist, share):
    grist = Quantity(grist, "yard/pound")
    whole = knitting.from_piece(grams(mass), grist)
    found = knitting.from_swatch(square_centimeters(100), square_centimeters(100 * share), grams(mass * share), grist)
    assert found.m_as("m") == approx(whole.m_as("m"))
    assert whole.m_as("m") == approx(yarn_count.length_of_mass(grams(mass), grist).m_as("m"))


@pytest.mark.parametrize(
    "state, courses, wales",
    [
        ("dry relaxed", 5.0, 3.8),  # Munden, 1959 (from memory)
        ("wet relaxed", 5.3, 4.1),  # Munden, 1959 (from memory): quoted 21.6, the product is 21.73
        ("fully relaxed", 5.5, 4.2),  # public exam paper GATE TF 2015, Q54 (read)
    ],
)
def test_constants_of_munden_are_those_of_courses_and_wales(state, courses, wales):
    assert knitting.MUNDEN[state] == approx(courses * wales, rel=6e-3)


def test_stitch_length_by_munden():
    # Public exam paper GATE TF 2015, Q54 (read): 92.4 loops in a square centimeter at 0.5 cm.
    found = knitting.munden_stitch_length(per_square_centimeter(92.4), 23.1)
    assert found.m_as("cm") == approx(0.5)


@given(density=positive, constant=st.floats(15, 25))
def test_munden_the_other_way(density, constant):
    length = knitting.munden_stitch_length(Quantity(density, "1/inch^2"), constant)
    assert constant / length.m_as("inch") ** 2 == approx(density)


def test_yarn_in_an_area():
    # Worked by hand: √(21.6 · 12) cm in each square centimeter.
    density = knitting.stitch_density(per_centimeter(3), per_centimeter(4))
    length = knitting.munden_stitch_length(density, knitting.MUNDEN["wet relaxed"])
    found = knitting.from_gauge(square_centimeters(1), density, length)
    assert found.m_as("cm") == approx(16.09968943799849, rel=1e-12)


@given(stitches=st.integers(1, 500), rows=st.integers(1, 500), length=st.floats(5, 30))
def test_gauge_counts_every_stitch(stitches, rows, length):
    # The stitches of a swatch of 10 by 10 cm, counted: the outside witness.
    density = knitting.stitch_density(per_centimeter(stitches / 10), per_centimeter(rows / 10))
    found = knitting.from_gauge(square_centimeters(100), density, Quantity(length, "mm"))
    assert found.m_as("mm") == approx(stitches * rows * length)


def test_a_stitch_is_measured_by_unraveling():
    # Worked by hand: 100 stitches give 1.5 m.
    assert knitting.stitch_length(Quantity(1.5, "m"), 100).m_as("mm") == approx(15)


def test_weight_of_knitted_cloth_by_its_courses():
    # W. Davis, Hosiery Manufacture, example 14 (read): 28 courses in an inch, 48 in wide, 200 yd long, a course
    # takes 1.75 times the width of 20s worsted: 42 lb. The wales in an inch cancel out; five are as good as any.
    wales, courses = Quantity(5, "1/inch"), Quantity(28, "1/inch")
    area = knitting.area("rectangle", Quantity(48, "inch"), Quantity(200, "yard"))
    stitch = knitting.stitch_length(Quantity(1.75, "inch"), 5)
    yarn = knitting.from_gauge(area, knitting.stitch_density(wales, courses), stitch)
    mass = yarn_count.mass_of_length(yarn, yarn_count.grist_of(20, "worsted count"))
    assert mass.m_as("lb") == approx(42, rel=1e-9)


def test_tightness_of_plain_knitting_as_in_print():
    # √tex over millimeters, 1.3 to 1.5 for plain knitting: lecture notes on knitting science (read).
    assert knitting.tightness(Quantity(225, "tex"), cm(1)) == approx(1.5)
    assert knitting.tightness(Quantity(200, "tex"), Quantity(10.1015, "mm")) == approx(1.4, rel=1e-5)


def test_rows_possible():
    # Worked by hand: 4 rows took 6 g, so 30 g make 20.
    assert knitting.rows_possible(grams(30), grams(56), grams(50), 4) == approx(20)
    assert knitting.rows_possible(grams(0), grams(56), grams(50), 4) == 0
    # The rest weighed in ounces: 10 rows took one ounce of 28.349523125 g, and one is left.
    assert knitting.rows_possible(Quantity(1, "oz"), grams(100), grams(100 - 28.349523125), 10) == approx(10)


@given(rows=st.integers(1, 40), each=st.floats(0.5, 20), more=st.integers(0, 100))
def test_the_ball_knitted_down(rows, each, more):
    # Knit on, row by row: the ball itself is the outside witness.
    after = each * more
    possible = knitting.rows_possible(grams(after), grams(after + each * rows), grams(after), rows)
    assert possible == approx(more, abs=1e-9)


CLOSE = "too close to tell: weigh again later"


@pytest.mark.parametrize(
    "possible, wanted, words",
    [
        (150, 100, "it will last"),
        (107, 100, "it will last"),
        (10.7 * 1.1, 11, "it will last"),  # 11.77, as far as digits tell
        (106.9, 100, CLOSE),
        (100, 100, CLOSE),
        (93, 100, CLOSE),
        (9.3 * 1.1, 11, CLOSE),
        (92.9, 100, "it will not last"),
        (0, 1, "it will not last"),
        (0, 0, "it will last"),
    ],
)
def test_yarn_lasts_may_last_or_does_not(possible, wanted, words):
    assert knitting.lasts(possible, wanted) == words


ONE = cm(1)


def test_a_swatch_in_two_units():
    # 4 by 5 inches of 2.54 cm each.
    assert knitting.swatch_area(Quantity(4, "inch"), cm(12.7)).m_as("cm^2") == approx(10.16 * 12.7)
    assert knitting.swatch_area(cm(10), cm(8)) == knitting.area("rectangle", cm(10), cm(8))


def test_the_parts_of_a_project_make_its_area():
    # By hand: 50 by 60 cm, and two sleeves of 900 cm² each that stand in one line as 1,800.
    areas = square_centimeters([3000.0, 640.0, 1800.0])
    assert knitting.area_in_all("Jacket", ["jacket", "hat", "JACKET"], areas).m_as("cm^2") == approx(4800)
    both = knitting.area_in_all(["hat", "jacket"], ["jacket", "hat", "jacket"], areas)
    assert both.m_as("cm^2").tolist() == approx([640, 4800])


def test_an_unraveled_stitch_beats_the_rule():
    counted, munden = Quantity(14, "mm"), Quantity(15, "mm")
    assert knitting.stitch_length_in_use(counted, munden) == counted
    assert knitting.stitch_length_in_use(munden=munden) == munden
    assert knitting.stitch_length_in_use(counted, Quantity(0, "mm")) == counted


def test_ranking_of_the_estimates():
    ways = {"swatch": Quantity(900, "m"), "gauge": Quantity(950, "m"), "piece": Quantity(1000, "m")}
    for basis in ("swatch", "gauge", "existing piece"):
        assert knitting.estimate_in_use(**ways) == next(iter(ways.values()))
        assert knitting.estimate_basis(**ways) == basis
        ways.pop(next(iter(ways)))


def test_an_estimate_may_be_nothing_and_one_that_is_not_used_anything():
    assert knitting.estimate_in_use(gauge=Quantity(0, "m"), piece=Quantity(-1, "m")) == Quantity(0, "m")
    assert list(knitting.estimate_basis(piece=Quantity([5.0, 6.0], "m"))) == ["existing piece"] * 2


def test_estimates_that_reckon_with_the_parts():
    assert knitting.estimated_by_parts("Cap", swatch=Quantity(0, "m")) == "Cap"
    assert knitting.estimated_by_parts("Cap", gauge=Quantity(64, "yard")) == "Cap"


@pytest.mark.parametrize(
    "basis, counted, alone", [("gauge", None, 1), ("gauge", cm(1), 0), ("swatch", None, 0), ("existing piece", None, 0)]
)
def test_a_stitch_is_known_by_rule_alone_where_nothing_was_unraveled(basis, counted, alone):
    assert knitting.by_rule_alone(basis, counted) == alone


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: knitting.area("heart", ONE), '"heart"'),
        (lambda: knitting.area(["circle", "heart"], ONE), '"heart"'),
        (lambda: knitting.area("circle", cm(0)), "width"),
        (lambda: knitting.area("circle", ONE, pieces=0), "pieces"),
        (lambda: knitting.area("rectangle", ONE), "height"),
        (lambda: knitting.area("triangle", ONE, cm(0)), "height"),
        (lambda: knitting.area("trapezoid", ONE, ONE), "second side"),
        (lambda: knitting.area("trapezoid", ONE, None, ONE), "height"),
        (lambda: knitting.area("ring", ONE), "inner diameter"),
        (lambda: knitting.area("ring", ONE, second=ONE), "below the outer"),
        (lambda: knitting.area("ring", ONE, second=2 * ONE), "below the outer"),
        (lambda: knitting.from_swatch(-(ONE**2), ONE**2, grams(1), Quantity(1, "m/g")), "piece"),
        (lambda: knitting.from_swatch(ONE**2, 0 * ONE**2, grams(1), Quantity(1, "m/g")), "swatch"),
        (lambda: knitting.from_swatch(ONE**2, ONE**2, grams(0), Quantity(1, "m/g")), "weigh"),
        (lambda: knitting.from_swatch(ONE**2, ONE**2, grams(1), Quantity(0, "m/g")), "grist"),
        (lambda: knitting.from_piece(grams(0), Quantity(1, "m/g")), "weigh"),
        (lambda: knitting.from_piece(grams(1), Quantity(0, "m/g")), "grist"),
        (lambda: knitting.stitch_length(cm(0), 1), "unraveled"),
        (lambda: knitting.stitch_length(ONE, 0), "stitches"),
        (lambda: knitting.munden_stitch_length(per_square_centimeter(0), 19), "stitch density"),
        (lambda: knitting.munden_stitch_length(per_square_centimeter(1), 0), "constant"),
        (lambda: knitting.stitch_density(per_centimeter(0), per_centimeter(1)), "stitch gauge"),
        (lambda: knitting.stitch_density(per_centimeter(1), per_centimeter(0)), "row gauge"),
        (lambda: knitting.from_gauge(-(ONE**2), per_square_centimeter(1), ONE), "area"),
        (lambda: knitting.from_gauge(ONE**2, per_square_centimeter(0), ONE), "stitch density"),
        (lambda: knitting.from_gauge(ONE**2, per_square_centimeter(1), cm(0)), "stitch must"),
        (lambda: knitting.rows_possible(grams(-1), grams(2), grams(1), 1), "left"),
        (lambda: knitting.rows_possible(grams(1), grams(2), grams(-1), 1), "after the rows cannot"),
        (lambda: knitting.rows_possible(grams(1), grams(2), grams(2), 1), "lighter"),
        (lambda: knitting.rows_possible(grams(1), grams(2), grams(1), 0), "rows"),
        (lambda: knitting.lasts(-1, 1), "possible"),
        (lambda: knitting.lasts(1, -1), "still to knit"),
        (lambda: knitting.tightness(Quantity(0, "tex"), ONE), "linear density"),
        (lambda: knitting.tightness(Quantity(1, "tex"), cm(0)), "stitch"),
        (lambda: knitting.swatch_area(cm(0), cm(1)), "width and a height"),
        (lambda: knitting.swatch_area(cm(1), cm(-1)), "width and a height"),
        (lambda: knitting.stitch_length_in_use(), "[Uu]nravel"),
        (lambda: knitting.stitch_length_in_use(cm(0), cm(1)), "stitch must have"),
        (lambda: knitting.estimate_in_use(), "give a swatch"),
        (lambda: knitting.estimate_basis(), "give a swatch"),
        (lambda: knitting.estimated_by_parts("Cap"), "Neither a swatch nor a gauge"),
        (lambda: knitting.by_rule_alone("gauge", cm(0)), "above zero"),
        (lambda: knitting.estimated_by_parts("Cap", gauge=cm(-1)), "negative"),
        (lambda: knitting.estimate_in_use(cm(-1), cm(1)), "negative"),
        (lambda: knitting.estimate_basis(piece=cm(-1)), "negative"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()


def test_a_project_without_parts_has_no_area():
    with pytest.raises(OutOfValidity, match="no parts yet") as refusal:
        knitting.area_in_all(["hat", "shawl"], ["hat", ""], square_centimeters([640.0, np.nan]))
    assert refusal.value.holds.tolist() == [True, False]
