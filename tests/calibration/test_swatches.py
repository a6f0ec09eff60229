"""Swatches of fabrics as they are made, typed as they are and in another unit: who is asked, and who is not.

A stitch of so many yarn widths covers its own area (Munden, from memory: stitches in an area times the square of the
length of a stitch are 19 to 23). The rule of the sheet is not copied: it is only seen whether it asks.
"""

import numpy as np
import pytest

from workbookgen.checking.expected import expected_of_keys
from workbookgen.language.entries import starting_entries
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner

WORLDS, SEED = 200, 31
INCH, OUNCE, POUND, YARD = 0.0254, 28.349523125, 453.59237, 0.9144
# Yarn widths in a stitch, and how many times the yarn of plain knitting lies on the same area; common practice, no
# source.
FABRICS = {
    "plain": ((7, 13), (0.95, 1.1)),
    "lace": ((11, 15), (0.55, 0.8)),
    "two colors": ((7, 11), (1.7, 2.1)),
    "fulled": ((8, 12), (1.3, 1.8)),
}


def swatches(fabric: str) -> tuple[np.ndarray, ...]:
    """Grist in m/g, side in m and mass in g of swatches 10 to 18 cm wide, of yarns from lace to bulky."""
    draw = np.random.default_rng([SEED, len(fabric)])
    widths, times = FABRICS[fabric]
    wraps = np.exp(draw.uniform(np.log(6), np.log(30), WORLDS))  # in an inch, as laid by hand
    grist = (wraps / draw.uniform(0.31, 0.40, WORLDS)) ** 2 * YARD / POUND
    stitch = draw.uniform(*widths, WORLDS) * INCH / wraps
    side = draw.uniform(0.10, 0.18, WORLDS)
    length = draw.uniform(19, 23, WORLDS) / stitch * draw.uniform(*times, WORLDS) * side**2
    return grist, side, length / grist


def asked(system: str, grist: np.ndarray, side: np.ndarray, mass: np.ndarray) -> float:
    """The share of these that are asked about the weight of the swatch beside its size, each as typed in a planner."""
    described = planner(Settings(units=system))
    scenarios = [
        starting_entries(described)
        | {
            "fabric_length": (200.0,),
            "fabric_grist": (each,),
            "fabric_swatch_width": (across,),
            "fabric_swatch_height": (across,),
            "fabric_swatch_mass": (weight,),
        }
        for each, across, weight in zip(grist.tolist(), side.tolist(), mass.tolist(), strict=True)
    ]
    told = expected_of_keys(described, scenarios, ("fabric_message",))
    return float(np.mean(["of this size" in (each["fabric_message"][0] or "") for each in told]))


US, METRIC = (POUND / YARD, INCH, OUNCE), (100.0, 0.01, 1.0)


@pytest.mark.parametrize("fabric", FABRICS)
@pytest.mark.parametrize("system, units", [("us", US), ("metric", METRIC)])
def test_a_swatch_as_it_is_is_not_asked_about(fabric, system, units):
    grist, side, mass = swatches(fabric)
    in_a_gram, meters, grams = units
    assert asked(system, grist * in_a_gram, side / meters, np.round(mass / grams, 3)) <= 0.01


@pytest.mark.parametrize("fabric", FABRICS)
def test_centimeters_typed_for_inches_are_asked_about(fabric):
    """As it was, hardly anybody was, and a sweater seemed to take a sixth of its yarn. What has twice the yarn of plain
    knitting then looks like lace, of which hardly anybody makes so large a swatch.
    """
    least = 0.99
    grist, side, mass = swatches(fabric)
    assert asked("us", grist * US[0], side / METRIC[1], np.round(mass / OUNCE, 3)) >= least


@pytest.mark.parametrize("fabric", FABRICS)
def test_inches_typed_for_centimeters_are_asked_about(fabric):
    least = 0.99
    grist, side, mass = swatches(fabric)
    assert asked("metric", grist * METRIC[0], side / INCH, np.round(mass, 2)) >= least
