"""Pounds typed for ounces, and balls or ounces for a length: where that turns an answer, it is asked about beside it.

By hand: a raw Romney of 7 lb gives some 3.8 lb of yarn, 3,400 yd at 900 yd/lb, and of 7 oz a sixteenth of that.
"""

import pytest

from entries import entries_with, shown_in
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

US, METRIC, SMALL = described(Settings(units="us")), described(Settings(units="metric")), described(Settings(units="us", size="small"))
LOSSES = {"own_skirting": 0.1, "own_yield": 0.6, "own_preparation": 0.05, "own_spinning": 0.03}
FLEECE = {"name": "Daisy", "state": "raw fleece", "grist": 900.0} | LOSSES
POUNDS = "Is it right? Weight: under half a pound (225 g) for a fleece. Look at the unit above: pounds are too large for it."
KILOGRAMS = "Is it right? Weight: under 30 g of a fleece. Look at the unit above: kilograms are too large for it."
LOOK = "Look at its weight on the sheet Fiber, and at the unit there."


def told(planner, lot, **project):
    entries = entries_with(planner, {"fiber": [FLEECE | lot], "projects": [{"name": "Sweater", "lot_1": "Daisy"} | project]})
    keys = ("fiber_message", "projects_message", "projects_verdict")
    return shown_in(planner, entries, keys)


@pytest.mark.parametrize(("planner", "lot", "said"), [
    (US, {"weight": 7.0}, POUNDS), (SMALL, {"weight": 7.0}, POUNDS), (US, {"weight": 6.0, "state": "Skirted fleece"}, POUNDS),
    (METRIC, {"weight": 5.2, "grist": 180.0}, KILOGRAMS),
])
def test_a_fleece_by_the_pound_is_asked_about_beside_it_and_beside_its_project(planner, lot, said):
    of_fiber, of_project, verdict = told(planner, lot, wanted=1400.0)
    assert of_fiber == said and verdict == "short"
    assert of_project == f"Is it right? Its first lot: {said.partition('Weight: ')[2].partition('. ')[0]}. {LOOK}"


@pytest.mark.parametrize(("planner", "lot", "wanted"), [
    (US, {"weight": 112.0}, 1400.0), (US, {"weight": 7.0}, 150.0), (US, {"weight": 4.0}, None), (US, {"weight": 8.0}, 1400.0),
    (US, {"weight": 4.0, "state": "prepared fiber"}, 1400.0), (METRIC, {"weight": 113.0, "grist": 180.0}, 1400.0),
])
def test_a_bag_to_try_is_not_asked_about(planner, lot, wanted):
    of_fiber, of_project, _ = told(planner, lot, **({"wanted": wanted} if wanted else {}))
    assert of_fiber is None and "first lot" not in (of_project or "")


@pytest.mark.parametrize(("planner", "wanted", "asked"), [
    (US, 12.0, "under 20 m (22 yd)"), (US, 21.8, "under 20 m"), (US, 21.9, None), (METRIC, 19.0, "under 20 m"), (METRIC, 20.0, None),
    (US, 46_024.0, "more than 30 km (33,000 yd)"), (US, 32_800.0, None), (METRIC, 30_001.0, "more than 30 km"),
])
def test_a_length_that_no_piece_takes(planner, wanted, asked):
    """Twelve balls; and a date that was pasted there."""
    _, message, verdict = told(planner, {"weight": 112.0 if planner is US else 3200.0, "grist": 900.0 if planner is US else 180.0}, wanted=wanted)
    assert (f"Is it right? Yarn wanted: {asked}" in (message or "") if asked else "Yarn wanted" not in (message or "")) and verdict


def test_a_finished_piece_is_not_asked_about():
    assert "Yarn wanted" not in told(US, {"weight": 112.0}, wanted=12.0, used=0.1)[1]
