"""What a project's skeins tell of the rest counts by their weight: a leftover skein does not turn a plan over."""

import pytest
from pytest import approx

from entries import entries_with
from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

LARGE, SMALL = {"wraps": 400.0, "gross": 100.0}, {"wraps": 10.0, "gross": 10.0}


@pytest.fixture(scope="module")
def told():
    planner = described(Settings(units="metric", fibers=""))

    def telling(*skeins):
        """Of a vest planned at 400 m in 100 g. One loop is a meter, and washing takes nothing."""
        made = [
            each | {"name": f"Skein {place}", "reel": "Meter", "washed_loop": 100.0, "project": "Vest", "lot": "Top"}
            for place, each in enumerate(skeins)
        ]
        logs = {
            "reels": [{"name": "Meter", "rated": 100.0}],
            "fiber": [{"name": "Top", "state": "prepared fiber", "weight": 1000.0}],
            "skeins": made,
            "projects": [{"name": "Vest", "wanted": 2000.0, "grist": 400.0, "lot_1": "Top"}],
        }
        entries = entries_with(planner, logs) | {"doubts_grist": (0.1,), "doubts_variation": (0.1,)}
        shown = expected_values(planner, entries)
        return {
            key.removeprefix("projects_"): column[0] for key, column in shown.items() if key.startswith("projects_")
        }

    return telling


def test_a_small_skein_of_another_grist_says_little(told):
    vest = told(LARGE, SMALL)
    # 410 m in 110 g. 110² / (100² + 10²) = 1.198 skeins alike; 0.01 / (0.01 + 0.01 / 1.198) = 0.545. The rest is
    # expected 0.545 of the way from the 400 that was planned to 372.7: 385.1, which is 0.9628 of it. The two skeins
    # alike would say 250, and weigh 2/3: 300.
    assert vest["grist_so_far"] == approx(410 / 110 * 100) and vest["mean_grist"] == approx(250)
    assert vest["count_alike"] == approx(12_100 / 10_100)
    assert vest["learned"] == approx(0.54505, abs=1e-5) and vest["finer"] == approx(0.96284, abs=1e-5)


def test_equal_skeins_count_one_by_one(told):
    vest = told(LARGE, LARGE, LARGE)
    assert vest["count_alike"] == approx(3) and vest["learned"] == approx(0.75) and vest["finer"] == approx(1)


def test_a_skein_divided_into_two_lines_says_the_same(told):
    """As the planner tells those to do of whom a part of a skein goes elsewhere."""
    whole, halves = told(LARGE, SMALL), told(LARGE, *[{"wraps": 5.0, "gross": 5.0}] * 2)
    assert halves["grist_so_far"] == approx(whole["grist_so_far"])
    assert halves["finer"] == approx(whole["finer"], rel=1e-3)


def test_a_skein_that_was_not_weighed_says_nothing_of_it(told):
    vest = told(LARGE, {"wraps": 200.0})
    assert vest["in_skeins"] == approx(600) and vest["grist_so_far"] == approx(400)
    assert vest["count_alike"] == approx(1)


def test_a_skein_that_was_sold_still_says_how_the_yarn_comes_out(told):
    """It was forgotten with the skein, so that whoever gave the thick one away was promised more of the rest."""
    kept, sold = told(LARGE, SMALL), told(LARGE, SMALL | {"gone": "sold"})
    assert (kept["in_skeins"], sold["in_skeins"]) == (approx(410), approx(400))
    assert sold["grist_so_far"] == approx(kept["grist_so_far"]) and sold["finer"] == approx(kept["finer"])


def test_before_the_first_skein_the_plan_holds(told):
    vest = told()
    assert (vest["grist_so_far"], vest["count_alike"], vest["learned"], vest["finer"]) == (None, 0, 0, 1)
