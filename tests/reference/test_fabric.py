"""Fabric of a yarn: by hand from a swatch and a gauge, and the reverse of what a piece takes."""

import pytest
from pytest import approx

from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries
from workbookgen.reference import garments, knitting
from workbookgen.settings import Settings
from workbookgen.units import Quantity

METRIC = described(Settings(units="metric", fibers=""))


def shown(**typed):
    values = expected_values(
        METRIC, starting_entries(METRIC) | {f"fabric_{key}": (value,) for key, value in typed.items()}
    )
    return {key: values[f"fabric_{key}"][0] for key in ("area", "far", "basis", "stitch")}


def test_a_hundred_grams_are_ten_swatches_of_ten():
    # By hand: 200 m at 200 m/100 g weigh 100 g, ten swatches of 10 g and 15 x 20 cm: 3,000 cm², 150 cm of 20.
    found = shown(length=200.0, grist=200.0, swatch_width=15.0, swatch_height=20.0, swatch_mass=10.0, width=20.0)
    assert (found["area"], found["far"], found["basis"]) == (approx(3000), approx(150), "a weighed swatch")


def test_stitches_that_were_unraveled():
    # By hand: 2 stitches and 3 rows to the centimeter, 1 cm in each: 100 m make 10,000 stitches, 6 to the cm².
    found = shown(length=100.0, stitches=20.0, rows=30.0, unraveled=1.0)
    assert (found["area"], found["basis"], found["far"]) == (approx(10_000 / 6), "the gauge", None)


def test_a_stitch_by_rule():
    # By hand: √(21.6 / 6) = 1.897 cm in a stitch.
    found = shown(length=100.0, stitches=20.0, rows=30.0)
    assert (found["stitch"], found["area"]) == (approx(1.897, abs=1e-3), approx(10_000 / 6 / 1.8974, abs=0.1))


def test_a_swatch_wins_over_the_gauge():
    assert shown(
        length=200.0, grist=200.0, swatch_width=15.0, swatch_height=20.0, swatch_mass=10.0, stitches=20.0, rows=30.0
    )["area"] == approx(3000)


def test_without_a_yarn_nothing_is_told():
    assert shown(grist=200.0, swatch_width=15.0, swatch_height=20.0, swatch_mass=10.0) == {
        "area": None,
        "far": None,
        "basis": None,
        "stitch": None,
    }


@pytest.mark.parametrize("length", [1.0, 640.0])
def test_it_is_the_reverse_of_what_a_piece_takes(length):
    yarn, grist = Quantity(length, "m"), Quantity(2.0, "m/g")
    swatch, mass = Quantity(225, "cm^2"), Quantity(7, "g")
    area = garments.area_by_swatch(yarn, grist, swatch, mass)
    assert knitting.from_swatch(area, swatch, mass, grist).m_as("m") == approx(length)
    density, stitch = Quantity(5.5, "1/cm^2"), Quantity(1.3, "cm")
    assert knitting.from_gauge(garments.area_by_gauge(yarn, density, stitch), density, stitch).m_as("m") == approx(
        length
    )


@pytest.mark.parametrize(
    "swatch, gauge, area, basis",
    [(1, 1.25, 1, "a weighed swatch"), (1, None, 1, "a weighed swatch"), (None, 1.25, 1.25, "the gauge")],
)
def test_a_weighed_swatch_says_more_than_a_gauge(swatch, gauge, area, basis):
    known = [None if each is None else Quantity(each, "m^2") for each in (swatch, gauge)]
    assert garments.area_in_use(*known).m_as("m^2") == area and garments.area_basis(*known) == basis


@pytest.mark.parametrize("width, length", [(0.5, 2), (0.25, 4)])
def test_a_scarf_half_as_wide_is_twice_as_long(width, length):
    assert garments.far_at_width(Quantity(10_000, "cm^2"), Quantity(width, "m")).m_as("m") == approx(length)


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: garments.area_in_use(), "Neither"),
        (lambda: garments.area_in_use(Quantity(-1, "m^2")), "area"),
        (lambda: garments.far_at_width(Quantity(-1, "m^2"), Quantity(1, "m")), "area"),
        (lambda: garments.far_at_width(Quantity(1, "m^2"), Quantity(0, "m")), "width"),
    ],
)
def test_what_is_no_fabric_is_refused(wrong, words):
    with pytest.raises(ValueError, match=words):
        wrong()
