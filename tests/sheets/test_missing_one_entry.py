"""A spinner forgets one entry: the planner says so where an answer would be missing, or would send her to buy.

Worked by hand: metric, wraps of a meter, a lot of 400 g of bought yarn at 250 m in 100 g, which is 1,000 m.
"""

import pytest

from entries import entries_with, shown_in
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

PLANNER = described(Settings(units="metric"))
TYPED = {
    "reels": [{"name": "Reel", "rated": 100.0}],
    "fiber": [{"name": "Fern", "state": "yarn or thread", "weight": 400.0, "grist": 250.0}],
    "projects": [{"name": "Vest", "wanted": 800.0, "lot_1": "Fern", "margin": 0.0}],
    "skeins": [{"name": "One", "reel": "Reel", "wraps": 300.0, "gross": 120.0, "washed_loop": 100.0, "lot": "Fern", "project": "Vest"}],
}
ONE_LOT = "Is it right? No lot is chosen, so only its skeins count. If more is to be spun for it, choose that lot at First lot, or its design at Its yarn."


def told(*keys, **logs):
    entries = entries_with(PLANNER, TYPED | logs) | {"project_name": ("Vest",)}
    return shown_in(PLANNER, entries, keys)


def without(log, key):
    return {log: [{each: value for each, value in TYPED[log][0].items() if each != key}]}


def test_who_forgets_nothing_is_asked_nothing():
    messages = [f"{log}_message" for log in TYPED]
    assert told("projects_verdict", *messages) == ["enough", None, None, None, None]


def test_the_loop_of_the_reel():
    reel, skein, length = told("reels_message", "skeins_message", "skeins_finished_m", **without("reels", "rated"))
    assert reel == "No answer yet: type the rated loop, or better a cord's length and the turns it makes."
    assert skein == "No answer yet: nobody knows what one turn of its reel measures. Its line on the sheet Reels says what it needs."
    assert length is None


def test_the_lot_of_a_project_that_has_skeins():
    message, verdict, spare = told("projects_message", "projects_verdict", "projects_spare", **without("projects", "lot_1"))
    assert (message, verdict, spare) == (ONE_LOT, "short", pytest.approx(-500))
    # What its skeins suffice for needs no lot, and neither does a piece that is finished.
    for enough in ({"wanted": 200.0}, {"used": 120.0}):
        [message] = told("projects_message", projects=[{"name": "Vest", "wanted": 800.0, "margin": 0.0} | enough])
        assert message != ONE_LOT


def test_what_a_finished_piece_was_to_take():
    """It is finished all the same, and no project of which nobody knows whether it is enough."""
    done = {"name": "Vest", "used": 300.0, "lot_1": "Fern"}
    keys = "projects_verdict", "projects_answer", "project_in_short", "first_projects_words", "glance_projects_words", "projects_message"
    assert told(*keys, projects=[done], skeins=[TYPED["skeins"][0] | {"gone": "used"}]) == [
        "finished", "It took 300 g of yarn.", "Finished", "finished", "open projects have enough yarn", None,
    ]  # fmt: skip


FLEECE = {"name": "Fern", "kind": "Romney", "state": "raw fleece", "weight": 2000.0}


def test_that_nothing_is_left_of_a_lot():
    """400 g less 5% are 380 g, of which 378 are spun; who still needs 60 g of it looks into the basket."""
    lot = FLEECE | {"state": "prepared fiber", "weight": 400.0, "own_spinning": 0.05, "grist": 250.0}
    skein = TYPED["skeins"][0] | {"wraps": 945.0, "gross": 378.0}
    project = TYPED["projects"][0] | {"wanted": 1100.0}
    asked = "Is it right? By its weights, a lot of it is nearly spun. If nothing is left of that, say so on the sheet Fiber: its rest is used."
    for gone, weight, message in (({}, 400.0, asked), ({"gone": "used"}, 400.0, None), ({}, 500.0, None)):
        [said] = told("projects_message", fiber=[lot | gone | {"weight": weight}], projects=[project], skeins=[skein])
        assert said == message
