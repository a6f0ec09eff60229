"""A skein logged on another reel than it was wound on: a third too long, or a quarter too short, and its yarn with it.

How skeins differ is common practice, no source.
"""

import numpy as np
import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner

HANDS, SEED = 60, 3
TWO_YARDS, ONE_AND_A_HALF = "Two yards", "One and a half"


def asked(skeins: int, variation: float, logged: str | None, wound: str) -> float:
    """The share of skeins that are asked about: those logged on another reel, or all of hands that logged right."""
    described, draw = planner(Settings(units="us")), np.random.default_rng([SEED, skeins])
    scenarios, slips = [], []
    for _ in range(HANDS):
        wraps, of_it = draw.integers(80, 140, skeins), draw.integers(skeins)
        yards = wraps * {TWO_YARDS: 2.0, ONE_AND_A_HALF: 1.5}[wound] * 0.95
        weights = 16 * yards / (900 * np.exp(draw.normal(0, variation, skeins)))
        log = [
            {
                "name": f"S{place}",
                "reel": wound,
                "wraps": float(turns),
                "gross": round(weight, 2),
                "lot": "Moss",
                "project": "Vest",
            }
            for place, (turns, weight) in enumerate(zip(wraps, weights, strict=True))
        ]
        if logged:
            log[of_it]["reel"] = logged
        logs = {
            "reels": [{"name": TWO_YARDS, "rated": 72.0}, {"name": ONE_AND_A_HALF, "rated": 54.0}],
            "fiber": [{"name": "Moss", "state": "prepared fiber", "weight": 90.0, "own_spinning": 0.03}],
            "projects": [{"name": "Vest", "wanted": 900.0, "lot_1": "Moss", "strands": 1.0}],
            "skeins": log,
        }
        scenarios.append(entries_with(described, logs))
        slips.append(range(of_it, of_it + 1) if logged else range(skeins))
    found = expected_of_keys(described, scenarios, ["skeins_message"])
    told = [
        "Its grist is far off" in (values["skeins_message"][row] or "")
        for values, rows in zip(found, slips, strict=True)
        for row in rows
    ]
    return sum(told) / len(told)


@pytest.mark.parametrize(("skeins", "least"), [(4, 0.75), (8, 0.85)])
def test_a_steady_hand_is_asked_about_a_skein_that_is_a_third_too_long(skeins, least):
    assert asked(skeins, 0.05, logged=TWO_YARDS, wound=ONE_AND_A_HALF) >= least


@pytest.mark.parametrize(("skeins", "least"), [(4, 0.3), (8, 0.5)])
def test_a_steady_hand_is_asked_about_a_skein_that_is_a_quarter_too_short(skeins, least):
    assert asked(skeins, 0.05, logged=ONE_AND_A_HALF, wound=TWO_YARDS) >= least


@pytest.mark.parametrize(("variation", "most"), [(0.05, 0), (0.08, 0.01), (0.12, 0.04), (0.16, 0.06)])
def test_of_skeins_logged_right_few_are_asked_about_even_of_an_unsteady_hand(variation, most):
    assert asked(8, variation, logged=None, wound=TWO_YARDS) <= most
