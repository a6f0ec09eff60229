"""Hours done beyond the plan, with nothing in skeins: what is ahead is asked about, and no day is promised.

By hand: a vest of 950 yd, no reserve, is 1,000 yd before washing. Of two strands that is 2,000 yd of single, 20 hours
at 100 yd; 5 of plying at 200, and 2.5 of washing at 400: 27.5 hours.
"""

import pytest

from entries import entries_with, shown_in
from planners import rows_of
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

PLANNER = described(Settings(fibers="", rows=rows_of(4)))
SMALL = described(Settings(fibers="", size="small"))
VEST = {"name": "Vest", "wanted": 950.0, "margin": 0.0}
PACES = {"pace_spinning": (100.0,), "pace_plying": (200.0,), "pace_start": (46000.0,), "project_name": ("Vest",)}
HALF = {"name": "One", "reel": "Reel", "wraps": 237.0, "part_wrap": 0.5, "washed_loop": 72.0, "project": "Vest"}  # 475 of the 950 yd
ASKED = "Is it right? Hours done: as many as planned, and nothing is in skeins. Log what is reeled, or look at your pace on the sheet Time."


def told(*keys, skeins=(), paces=PACES, fiber=(), **project):
    entries = entries_with(PLANNER, {"projects": [VEST | project], "reels": [{"name": "Reel", "rated": 72.0}], "skeins": list(skeins), "fiber": list(fiber)}) | paces
    return shown_in(PLANNER, entries, keys)


@pytest.mark.parametrize("done", [27.5, 30.0, 200.0])
def test_no_hours_and_no_day_are_told_where_the_plan_is_used_up_and_nothing_reeled(done):
    keys = ("times_ahead", "times_likely", "times_weeks", "times_finish", "times_safe", "project_ahead", "projects_message", "project_log_says")
    assert told(*keys, done=done) == [None] * 6 + [ASKED, ASKED]
    assert told("times_whole", done=done) == [pytest.approx(27.5)], "the plan itself stays"


@pytest.mark.parametrize(("typed", "ahead"), [
    ({}, 27.5),  # nothing done yet
    ({"done": 27.0}, 0.5),  # nearly all, on bobbins
    ({"done": 30.0, "skeins": [HALF]}, 13.75),  # half of it reeled: the other half takes its time
    ({"done": 30.0, "used": 16.0, "grist": 1000.0}, 0),  # finished; 950 yd weigh 15.2 oz
    ({"done": 3.0, "lot_1": "Cone", "grist": 1000.0, "fiber": [{"name": "Cone", "state": "yarn or thread", "weight": 20.0}]}, 0),  # bought: nothing is spun
    ({"done": 30.0, "paces": {}}, None),  # at a pace that nobody knows
])
def test_hours_done_are_not_asked_about_in_ordinary_use(typed, ahead):
    hours, message = told("times_ahead", "projects_message", **typed)
    assert hours == (ahead if ahead is None else pytest.approx(ahead))
    assert "Hours done" not in (message or "")


def test_a_small_planner_has_no_hours_to_ask_about():
    assert not [rule for rule in SMALL.blocks["projects"].rules if "Hours done" in rule.sentence]
