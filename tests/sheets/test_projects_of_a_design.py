"""A wool single plied with a bought silk thread, as one may log it: where the planner would answer wrongly, it asks.

Worked by hand: a single of metric count 10 weighs 0.1 g a meter, a thread of count 60 a sixtieth of a gram, so the yarn
0.1 + 1/60 = 7/60 g, as it is plied. 120 g of Fern give 1,200 m of it; washing takes a tenth, and leaves 1,080 m.
"""

import pytest

from entries import entries_with, shown_in
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

PLANNER = described(Settings(units="metric"))
FERN = {"name": "Fern", "state": "prepared fiber", "weight": 120.0, "own_spinning": 0.0}
SILK = {"name": "Silk", "state": "yarn or thread", "weight": 50.0, "grist": 6000.0}
SINGLE = {"design": "Silky", "name": "Single", "number": 10.0, "system": "metric count", "lot": "Fern"}
THREAD = {"design": "Silky", "name": "Thread", "number": 60.0, "system": "metric count", "lot": "Silk", "place": 2.0}
REEL = {"name": "Reel", "rated": 150.0}
SHAWL = {"name": "Shawl", "wanted": 800.0, "margin": 0.0}
# 400 m as they are plied, of 46.667 g: 40 g of Fern, and 6.667 g of thread. The washed loop has lost a tenth.
SKEIN = {"name": "One", "reel": "Reel", "wraps": 266.0, "rest": 1.0, "gross": 46.667, "washed_loop": 135.0}

OF_A_LOT = (
    "Is it right? Skeins of a lot of its design belong to no project. If they are of its yarn, choose this project and its "
    "design beside them, in place of the lot."
)
EITHER = (
    "Is it right? Its lots are fiber and bought yarn, and count as if either can replace the other. Plied together? "
    "Then choose their design, from the sheet Yarn, at Its yarn."
)
NOT_COMPLETE = "No answer yet: its design is not complete, or no component of it has the No. 1. Look at its lines on the sheet Yarn."


def told(project, *keys, planner=PLANNER, **logs):
    usual = {"reels": [REEL], "fiber": [FERN, SILK], "designs": [{"name": "Silky", "shrinkage": 0.1}], "components": [SINGLE, THREAD]}
    typed = {"projects": [SHAWL | project]} | usual | logs
    entries = entries_with(planner, {log: records for log, records in typed.items() if log in planner.blocks})
    return shown_in(planner, entries, ["projects_message", *keys])


def without(record, *keys):
    return {key: value for key, value in record.items() if key not in keys}


BY_DESIGN = {"design": "Silky"}


def test_who_logs_it_by_its_design_is_asked_nothing():
    message, there = told(BY_DESIGN, "projects_open_have")
    assert (message, there) == (None, pytest.approx(1080))
    assert told(BY_DESIGN, skeins=[SKEIN | BY_DESIGN | {"project": "Shawl"}]) == [None]


@pytest.mark.parametrize(("wanted", "asked"), [(500.0, None), (800.0, OF_A_LOT)])
def test_skeins_of_the_yarn_logged_with_the_wool_alone(wanted, asked):
    """They take 46.667 g off Fern, and 73.333 g are left, for 660 m; the skein's 361 m serve nobody."""
    message, there = told(BY_DESIGN | {"wanted": wanted}, "projects_open_have", skeins=[SKEIN | {"lot": "Fern"}])
    assert there == pytest.approx(660, rel=1e-3)
    assert message == asked


@pytest.mark.parametrize(("components", "there", "asked"), [
    # Both have the number 1, or one has no yarn number, or there are none.
    ([SINGLE, without(THREAD, "place")], None, NOT_COMPLETE),
    ([SINGLE, without(THREAD, "number")], None, NOT_COMPLETE),
    ([SINGLE | {"place": 2.0}, THREAD | {"place": 3.0}], None, NOT_COMPLETE),
    ([], None, NOT_COMPLETE),
])
def test_a_design_that_lacks_something(components, there, asked):
    message, has = told(BY_DESIGN, "projects_open_have", components=components)
    assert (message, has) == (asked, there)


@pytest.mark.parametrize(("lots", "asked"), [
    ({"lot_1": "Fern", "lot_2": "Silk"}, EITHER), ({"lot_1": "Silk", "lot_2": "Fern"}, EITHER), ({"lot_1": "Fern", "lot_3": "Silk"}, EITHER),
    ({"lot_1": "Fern"}, None), ({"lot_1": "Fern", "lot_2": "Moss"}, None), ({"lot_1": "Silk", "lot_2": "Cone"}, None),
    ({"lot_1": "Fern", "lot_2": "Silk", "used": 90.0}, None),
])
def test_a_thread_among_the_lots_to_spin_from(lots, asked):
    fiber = [FERN, SILK, FERN | {"name": "Moss"}, SILK | {"name": "Cone"}]
    message, there = told(lots | {"grist": 800.0}, "projects_open_have", fiber=fiber)
    assert message == asked
    if asked:  # 120 g and 50 g at 8 m a gram, of which there will be no 1,360 m
        assert there == pytest.approx(1360)


def test_a_thread_where_there_are_no_designs():
    small = described(Settings(units="metric", size="small"))
    [message] = told({"lot_1": "Fern", "lot_2": "Silk", "grist": 800.0}, planner=small)
    assert message == EITHER.replace("choose their design, from the sheet Yarn, at Its yarn", "choose only the one that runs out first")
