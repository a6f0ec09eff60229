"""The lot of a skein: one that nobody names, and one that is none of its project's.

By hand, of no lot: 16 oz of top, none lost, are 1,000 yd at 1,000 yd/lb. Three skeins of 190 yd, washed, and 3.04 oz
are spun of it, so that 6.88 oz are left: 430 yd beside 570, 1,000 in all. Without their lot, their yarn is there, and
the fiber in them counts as well: there were 1,570 yd.
"""

import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

US, US_SMALL = described(Settings(units="us")), described(Settings(units="us", size="small"))
TOP = {"name": "Top", "state": "prepared fiber", "weight": 16.0, "own_spinning": 0.0}
VEST = {"name": "Vest", "wanted": 1200.0, "margin": 0.0, "grist": 1000.0}
STRAND = {"design": "Two-ply", "name": "Single", "number": 2000.0, "system": "yards per pound", "strands": 2.0, "lot": "Top"}
SKEINS, PROJECTS = "skeins_message", "projects_message"
AGAIN = "without it, its fiber counts twice for its project: as still to spin, too. Choose it; leave it empty for yarn of no lot."
LOOK = "Is it right? A skein of it is of no lot, so that its fiber counts once more, as still to spin. Look at the sheet Skeins, at Fiber lot and Design."


def told(planner, skein, project):
    skeins = [{"name": f"V {place}", "reel": "Reel", "wraps": 95.0, "washed_loop": 72.0, "gross": 3.04, "project": "Vest"} | skein for place in (1, 2, 3)]
    logs = {"reels": [{"name": "Reel", "rated": 72.0}], "fiber": [TOP], "projects": [VEST | project], "skeins": skeins}
    if planner is US:
        logs |= {"designs": [{"name": "Two-ply"}], "components": [STRAND]}
    entries = entries_with(planner, logs)
    [values] = expected_of_keys(planner, [entries], (SKEINS, PROJECTS, "projects_have"))
    return values[SKEINS][2], values[PROJECTS][0], values["projects_have"][0]


@pytest.mark.parametrize("planner", [US, US_SMALL])
def test_a_skein_of_no_lot_is_asked_about_beside_it_and_beside_its_project(planner):
    assert told(planner, {}, {"lot_1": "Top"}) == (f"Is it right? Fiber lot: {AGAIN}", LOOK, pytest.approx(1570))
    assert told(planner, {"lot": "Top"}, {"lot_1": "Top"}) == (None, None, pytest.approx(1000, rel=1e-3))
    assert told(planner, {"gone": "sold"}, {"lot_1": "Top"})[:2] == (f"Is it right? Fiber lot: {AGAIN}", LOOK)


def test_so_is_a_skein_of_no_design_for_a_project_that_has_one():
    assert told(US, {}, {"design": "Two-ply"})[:2] == (f"Is it right? Design: {AGAIN}", LOOK)
    assert told(US, {"design": "Two-ply"}, {"design": "Two-ply"})[:2] == (None, None)


def test_a_project_of_skeins_alone_has_no_fiber_that_counts_twice():
    assert told(US, {}, {})[0] is None


METRIC, METRIC_SMALL = (described(Settings(units="metric", size=size)) for size in ("whole", "small"))
LOTS = [{"name": name, "state": "prepared fiber", "weight": 500.0, "own_spinning": 0.05, "grist": 300.0} for name in ("Merle", "Brack", "Dun", "Roan")]
OF_OTHERS = "Is it right? Fiber lot: its project is spun from others. Choose the right lot or project, or add this lot to the project."


@pytest.mark.parametrize("planner", [METRIC, METRIC_SMALL], ids=["whole", "small"])
@pytest.mark.parametrize(("lots", "lot", "asked"), [
    (("Merle",), "Merle", None), (("Merle",), "MERLE", None), (("Merle",), "Brack", OF_OTHERS),
    (("Merle", "Brack"), "brack", None), (("Merle", "Brack", "Dun"), "Dun", None), (("Merle", "Brack", "Dun"), "Roan", OF_OTHERS),
    ((), "Brack", None),  # its project says nothing
])
def test_a_skein_of_a_lot_that_its_project_does_not_name(planner, lots, lot, asked):
    project = {"name": "Vest", "wanted": 600.0, "strands": 1.0} | {f"lot_{place}": each for place, each in enumerate(lots, start=1)}
    skein = {"name": "One", "reel": "Reel", "wraps": 200.0, "gross": 100.0, "project": "Vest", "lot": lot}
    entries = entries_with(planner, {"fiber": LOTS, "reels": [{"name": "Reel", "rated": 150.0}], "projects": [project], "skeins": [skein]})
    [values] = expected_of_keys(planner, [entries], ["skeins_message"])
    assert values["skeins_message"][0] == asked
