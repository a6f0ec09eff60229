"""A hand whose yarn becomes coarser or finer from skein to skein is asked about it while there is some left to spin."""

import pytest
from pytest import approx

from entries import entries_with
from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import described
from workbookgen.settings import Rows, Settings

PLANNER = Settings(units="metric", fibers="")
PLAN = 0.08
COARSER, FINER = "Line by line its skeins become coarser", "Line by line its skeins become finer"


TOP = {"name": "Top", "state": "prepared fiber", "weight": 3000.0, "own_spinning": 0.03}


def told(*grams, settings=PLANNER, wanted=4000.0, other=(), lot=None):
    """Of a vest whose skeins of 400 m weigh so much, one after another; the hand is known to vary by 5%."""
    planner = described(settings)
    of_all = {"reel": "Meter", "washed_loop": 100.0, "wraps": 400.0, "lot": "Top"}
    made = [of_all | {"name": f"Skein {at}", "gross": each, "project": "Vest"} for at, each in enumerate(grams)]
    made[2:2] = [of_all | {"name": f"Hat {at}", "gross": each, "project": "Hat"} for at, each in enumerate(other)]
    logs = {
        "reels": [{"name": "Meter", "rated": 100.0}],
        "fiber": [TOP | (lot or {})],
        "skeins": made,
        "projects": [{"name": "Vest", "wanted": wanted, "grist": 400.0, "lot_1": "Top"}, {"name": "Hat"}],
    }
    entries = entries_with(planner, logs) | {"doubts_variation": (0.05,), "doubts_grist": (PLAN,)}
    shown = expected_values(planner, entries | {"project_name": ("Vest",)})
    return {key.removeprefix("projects_"): each[0] for key, each in shown.items() if key.startswith("projects_")} | {
        key: each for key, each in shown.items() if key.startswith("project_")
    }


def test_skein_by_skein_coarser():
    # 400 m of 80, 88.89, 100, 114.29 and 133.33 g: grists of 500, 450, 400, 350 and 300 m in 100 g. From line to line
    # 50 of a mean of 400 less, an eighth: half of it in all. The places spread by 10: 0.125 · √10 / 0.05 = 7.9.
    vest = told(80.0, 400 / 4.5, 100.0, 400 / 3.5, 400 / 3)
    assert vest["order_spread"] == approx(10) and vest["drift_by_place"] == approx(-0.125)
    assert vest["drift"] == approx(-0.5) and vest["beyond_chance"] == approx(-7.9057, abs=1e-4)
    assert COARSER in vest["message"] and vest["message"].startswith("Is it right?")
    assert vest["project_drift"] == (approx(-0.5),) and COARSER in vest["project_log_says"][0]


def test_skein_by_skein_finer():
    vest = told(400 / 3, 400 / 3.5, 100.0, 400 / 4.5, 80.0)
    assert vest["drift"] == approx(0.5) and FINER in vest["message"]


def test_lines_of_another_project_between_them_make_no_difference_to_what_is_asked():
    vest = told(80.0, 400 / 4.5, 100.0, 400 / 3.5, 400 / 3, other=(100.0, 100.0))
    # In lines 1, 2, 5, 6, 7: 4.2 in the middle, so a spread of 10.24 + 4.84 + 0.64 + 3.24 + 7.84 = 26.8.
    assert vest["order_spread"] == approx(26.8) and COARSER in vest["message"]


@pytest.mark.parametrize(
    "grams",
    [
        pytest.param((80.0, 400 / 4.5, 100.0, 400 / 3.5), id="four skeins"),
        pytest.param((100.0, 96.0, 104.0, 98.0, 102.0), id="up and down"),
        pytest.param((100.0, 100.0, 100.0, 100.0, 100.0), id="all alike"),
    ],
)
def test_few_skeins_and_chance_make_no_drift(grams):
    assert "become" not in (told(*grams)["message"] or "")


def test_of_four_skeins_no_change_is_told():
    assert told(80.0, 400 / 4.5, 100.0, 400 / 3.5)["drift"] is None


def test_with_all_of_it_in_skeins_it_is_not_asked():
    vest = told(80.0, 400 / 4.5, 100.0, 400 / 3.5, 400 / 3, wanted=1900.0)
    assert vest["drift"] == approx(-0.5) and COARSER not in (vest["message"] or "")


def test_half_of_what_is_ahead_is_counted_on():
    # 5 skeins are there, 2,000 m of 400 m each are still to be spun: half of ten skeins away, each an eighth coarser.
    vest = told(80.0, 400 / 4.5, 100.0, 400 / 3.5, 400 / 3)
    assert vest["ahead"] == approx(-0.625) and vest["finer"] == approx(vest["finer_so_far"] * 0.6875)
    assert vest["hand_doubt"] ** 2 == approx(0.3125**2 + PLAN**2 * (1 - vest["learned"]))
    steady = told(*[516.5 / 5] * 5)
    assert steady["ahead"] == 0 and steady["finer"] == steady["finer_so_far"]
    assert vest["have"] == approx(2000 + (steady["have"] - 2000) * 0.6875, rel=1e-3)
    assert vest["doubt_have"] > 2 * steady["doubt_have"]


def test_a_bought_yarn_is_not_asked_to_be_spun_like_the_first():
    """Its balls may happen to lie on a line, but no hand changed: nothing of it is still to be spun."""
    coarser = 80.0, 400 / 4.5, 100.0, 400 / 3.5, 400 / 3
    assert COARSER in told(*coarser)["message"]
    bought = told(*coarser, lot={"state": "yarn or thread"})
    assert bought["beyond_chance"] < -7 and bought["ahead"] == 0 and "become" not in (bought["message"] or "")


def test_what_there_is_is_told_before_one_knows_how_much_it_takes():
    vest = told(80.0, 400 / 4.5, 100.0, 400 / 3.5, 400 / 3, wanted=None)
    assert vest["ahead"] == 0 and vest["have"] > 2000 and vest["open_have"] == vest["have"]


def test_a_planner_of_thousands_of_skeins_asks_too():
    vest = told(80.0, 400 / 4.5, 100.0, 400 / 3.5, 400 / 3, settings=Settings(units="metric", fibers="", rows=Rows(skeins=1001)))
    assert COARSER in vest["message"] and vest["project_drift"] == (approx(-0.5),)
