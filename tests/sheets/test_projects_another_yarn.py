"""A need that is reckoned for another yarn than its project plans is asked about.

Yarn of 4 m a gram is set closer than yarn of 3 m a gram, by √(4 / 3): where one takes 100 m of warp, the other takes
87, and the weft goes with it. So who spins 3 m a gram would be sent for a seventh more than it takes.
"""

import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

PLANNER = described(Settings(units="metric"))
LOTS = [
    {"name": "Warp", "state": "prepared fiber", "weight": 400.0, "own_spinning": 0.0, "grist": 300.0},
    {"name": "Weft", "state": "prepared fiber", "weight": 400.0, "own_spinning": 0.0, "grist": 200.0},
]
PROJECTS = [{"name": "Blanket", "lot_1": "Warp"}, {"name": "Its weft", "lot_1": "Weft"}, {"name": "Cap"}]
LOST = {"loom_waste": 60.0, "draw_in": 0.08, "shrinkage": 0.1, "take_up": 0.1, "weft_lost": 0.07}
CLOTH = {"project": "Blanket", "weave": "plain", "width": 80.0, "length": 150.0, "grist": 300.0} | LOST
WEFT = {"weft_grist": 200.0, "weft_project": "Its weft"}
SWATCH = {"project": "Blanket", "grist": 300.0, "swatch_width": 20.0, "swatch_height": 20.0, "swatch_mass": 12.0}
BODY = {"project": "Blanket", "part": "Body", "shape": "rectangle", "width": 50.0, "height": 60.0}


def asked(log, record):
    entries = entries_with(PLANNER, {"fiber": LOTS, "projects": PROJECTS, "pieces": [BODY], log: [record]})
    [values] = expected_of_keys(PLANNER, [entries], [f"{log}_message"])
    return values[f"{log}_message"][0]


def off(label):
    return f"Is it right? {label}: over a quarter off the grist planned for its project, and the need goes by this one. Look at both."


# A quarter of 300 is 75, and of 200 it is 50.
@pytest.mark.parametrize(("grist", "is_asked"), [(300.0, False), (225.0, False), (375.0, False), (224.0, True), (376.0, True), (400.0, True)])
def test_a_grist_far_from_what_its_project_plans(grist, is_asked):
    sentence = off("Grist") if is_asked else None
    assert asked("weavings", CLOTH | {"grist": grist}) == sentence
    assert asked("estimates", SWATCH | {"grist": grist}) == sentence


@pytest.mark.parametrize(("grist", "is_asked"), [(200.0, False), (250.0, False), (251.0, True)])
def test_a_weft_far_from_what_its_project_plans(grist, is_asked):
    assert asked("weavings", CLOTH | WEFT | {"weft_grist": grist}) == (off("Weft grist") if is_asked else None)


def test_a_project_that_plans_no_yarn_yet_is_not_compared():
    assert asked("weavings", CLOTH | {"project": "Cap", "grist": 400.0}) is None


@pytest.mark.parametrize(("wraps", "is_asked"), [(240.0, False), (241.0, True), (94.0, False), (93.0, True), (300.0, True)])
def test_skeins_of_another_yarn_than_their_project_plans(wraps, is_asked):
    """50 g of it have 150 m: 1.6 times as fine is 240 m, and as coarse 93.75; loops counted twice make 300."""
    skein = {"name": "One", "reel": "Meter", "wraps": wraps, "gross": 50.0, "washed_loop": 100.0, "project": "Blanket", "lot": "Warp"}
    logs = {
        "fiber": LOTS, "projects": [{"name": "Blanket", "wanted": 900.0, "lot_1": "Warp"}], "reels": [{"name": "Meter", "rated": 100.0}], "skeins": [skein],
    }
    entries = entries_with(PLANNER, logs)
    [values] = expected_of_keys(PLANNER, [entries], ["projects_message"])
    assert (values["projects_message"][0] or "").startswith("Is it right? Its skeins are far finer than planned, or far coarser.") == is_asked
