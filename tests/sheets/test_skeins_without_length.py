"""Skeins that were weighed and not reeled: their fiber is gone from its lot, and their yarn is not there yet.

By hand: 16 oz of top, none lost, are 1,000 yd at 1,000 yd/lb. Four skeins of 4 oz and 250 yd are all of it. With two of
them on balls, 500 yd are there, and the project would send to the shop for as much again.
"""

import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

US, SMALL = described(Settings(units="us")), described(Settings(units="us", size="small"))
TOP = {"name": "Top", "state": "prepared fiber", "weight": 16.0, "own_spinning": 0.0}
VEST = {"name": "Vest", "wanted": 950.0, "margin": 0.0, "grist": 1000.0, "lot_1": "Top"}
REELED = {"reel": "Reel", "wraps": 125.0, "washed_loop": 72.0}
LOOK = "Is it right? A skein of it was weighed and has no length yet, so it does not count. Its line on the sheet Skeins says what it needs."


def told(planner, *skeins, wanted=950.0, of=VEST):
    lines = [{"name": f"V {place}", "gross": 4.0, "lot": "Top", "project": "Vest"} | skein for place, skein in enumerate(skeins)]
    logs = {"reels": [{"name": "Reel", "rated": 72.0}, {"name": "Cord"}], "fiber": [TOP], "projects": [of | {"wanted": wanted}], "skeins": lines}
    entries = entries_with(planner, logs)
    keys = ("projects_message", "projects_have")
    [values] = expected_of_keys(planner, [entries], keys)
    message, has = (values[key][0] for key in keys)
    return message, has


@pytest.mark.parametrize("planner", [US, SMALL])
def test_a_project_that_falls_short_asks_for_the_length_of_its_skeins(planner):
    assert told(planner, REELED, REELED, {}, {}) == (LOOK, pytest.approx(500, rel=0.05))
    assert told(planner, REELED, REELED, REELED, REELED)[1] == pytest.approx(1000, rel=0.05)


@pytest.mark.parametrize("lacking", [{"reel": None}, {"wraps": None}, {"reel": "Cord"}, {"reel": "Reel\u00a0"}, {"wraps": "125 turns"}, {"wraps": 0.0}])
def test_whatever_its_length_lacks(lacking):
    assert told(US, REELED, REELED, REELED, REELED | lacking)[0] == LOOK


def test_nobody_is_asked_for_what_would_change_no_answer():
    assert told(US, REELED, REELED, REELED, {}, wanted=500.0)[0] is None
    assert told(US, REELED, REELED, {"gross": None}, {"gross": None})[0] is None, "their fiber is still there"
    assert told(US, REELED, REELED, {"gone": "sold"}, {"gone": "sold"})[0] != LOOK
    assert told(US, REELED, REELED, {}, {}, of=VEST | {"used": 16.0})[0] != LOOK


def test_a_project_of_such_skeins_alone_is_not_told_that_it_has_no_yarn():
    assert told(US, {}, {}, of=VEST | {"lot_1": None})[0] == LOOK
