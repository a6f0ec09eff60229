"""Weighings of a step before a lot was bought, and skeins that weigh more than their lot: the planner asks."""

import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

PLANNER = described(Settings(units="metric"))
# Washed wool loses 6% in carding and 3% in spinning where the spinner says so: of 1,000 g, 911.8 g of yarn.
HILL = {"name": "Hill", "state": "washed fiber", "weight": 1000.0, "own_preparation": 0.06, "own_spinning": 0.03}
CONE = {"name": "Cone", "state": "yarn or thread", "weight": 500.0, "grist": 300.0}
PART = "Is it right? Far less is left than expected. Of a part of the lot, leave the weight out until all is done, or give that part a line of its own."
BEFORE = "Is it right? A weight is of a step before it was bought, and does not count. If less is left, correct Weight."


def told(lot, *keys):
    entries = entries_with(PLANNER, {"fiber": [lot]})
    [values] = expected_of_keys(PLANNER, [entries], ["fiber_message", *keys])
    return [values[key][0] for key in ("fiber_message", *keys)]


@pytest.mark.parametrize(("weighed", "yarn", "asked"), [
    ({}, 911.8, None),
    ({"prepared_weighed": 470.0}, 455.9, PART),  # the first half of the lot is carded: 0.97 of 470 g
    ({"prepared_weighed": 800.0}, 776.0, None),  # a carding that loses a fifth
    ({"prepared_weighed": 564.0}, 547.08, None),  # 0.6 of what was expected, to the last digit
    ({"prepared_weighed": 563.9}, 546.983, PART),
    ({"yarn_weighed": 100.0}, 100.0, PART),  # the first skein of the lot
    ({"yarn_weighed": 900.0}, 900.0, None),
    # Nobody knows what to expect of a fleece whose breed is not typed.
    ({"state": "raw fleece", "yarn_weighed": 100.0}, 100.0, None),
    ({"state": "raw fleece", "own_skirting": 0.1, "own_yield": 0.6, "scoured_weighed": 270.0}, 246.186, PART),  # of 540 g washed
    ({"state": "raw fleece", "own_skirting": 0.1, "own_yield": 0.6, "scoured_weighed": 400.0}, 364.72, None),
    # Combed after carding: 1,000 · 0.94 · 0.7 · 0.97 = 638.26 g are expected, of 0.6 of which 382.956 g remain.
    ({"second_way": "combing", "own_second": 0.3, "yarn_weighed": 383.0}, 383.0, None),
    ({"second_way": "combing", "own_second": 0.3, "yarn_weighed": 382.9}, 382.9, PART),
])
def test_a_part_that_is_weighed_for_the_whole_lot(weighed, yarn, asked):
    assert told(HILL | weighed, "fiber_yarn") == [asked, pytest.approx(yarn)]


@pytest.mark.parametrize(("lot", "counted", "asked"), [
    (CONE, 500.0, None),
    (CONE | {"yarn_weighed": 200.0}, 500.0, BEFORE),  # the cone is used in part, and its rest is weighed
    (CONE | {"prepared_weighed": 200.0}, 500.0, BEFORE),
    (CONE | {"weight": 200.0}, 200.0, None),
    (CONE | {"own_second": 0.2}, 500.0, None),
    (HILL | {"scoured_weighed": 900.0}, 911.8, BEFORE),
    (HILL | {"scoured_weighed": 1000.0}, 911.8, None),  # it says nothing else
    (HILL | {"skirted_weighed": 900.0}, 911.8, BEFORE),
    (HILL | {"state": "prepared fiber", "prepared_weighed": 900.0}, 970.0, BEFORE),
    # A bought top that is carded again is weighed after that.
    (HILL | {"state": "prepared fiber", "second_way": "carding", "own_second": 0.05, "prepared_weighed": 900.0}, 873.0, None),
])
def test_a_step_that_was_over_when_the_lot_was_bought(lot, counted, asked):
    assert told(lot, "fiber_yarn") == [asked, pytest.approx(counted)]


BATT = {"state": "prepared fiber", "weight": 60.0, "own_spinning": 0.0, "grist": 300.0}
OF_ANOTHER = "Is it right? Fiber lot: the skeins of this lot weigh more than the whole lot. Is one of them of another lot? Look at their weights, too."


@pytest.mark.parametrize(("weight", "second", "there", "asked"), [
    (57.0, "B", 342 + 18, None),  # 57 g each, at 3 m a gram, and 3 g of either batt
    (57.0, "A", 342 + 180, OF_ANOTHER),  # 114 g of a batt of 60 g: B still counts whole, and there is not so much
    (37.5, "A", 225 + 180, None),  # 75 g: a quarter more, of which the lot asks
    (37.6, "A", 225.6 + 180, OF_ANOTHER),
])
def test_a_second_batt_spun_under_the_name_of_the_first(weight, second, there, asked):
    skein = {"reel": "Reel", "rest": weight * 3, "wraps": 0.0, "gross": weight, "washed_loop": 150.0, "project": "Vest"}
    logs = {
        "reels": [{"name": "Reel", "rated": 150.0}],
        "fiber": [BATT | {"name": "A"}, BATT | {"name": "B"}],
        "projects": [{"name": "Vest", "wanted": 600.0, "lot_1": "A", "lot_2": "B"}],
        "skeins": [skein | {"name": "One", "lot": "A"}, skein | {"name": "Two", "lot": second}],
    }
    entries = entries_with(PLANNER, logs)
    [values] = expected_of_keys(PLANNER, [entries], ["skeins_message", "projects_open_have"])
    assert values["projects_open_have"][0] == pytest.approx(there, abs=0.5)
    assert values["skeins_message"][:2] == (asked, asked)
