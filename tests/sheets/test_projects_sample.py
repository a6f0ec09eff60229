"""A project that is short by a sample which its own sheet asks about: it says so, before anything is bought.

By hand: 16 oz of top at 800 yd/lb are 800 yd, less 3% in spinning. The sample's 10 yd weigh 0.2 oz; in grams, typed for
ounces, 5.67: 28 yd/lb.
"""

import pytest

from entries import entries_with, shown_in
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

US = described(Settings(units="us"))
TOP = {"name": "Top", "kind": "Wool top or roving", "state": "prepared fiber", "weight": 16.0}
LOOK = "Is it right? Its sample: the sheet Samples asks something about it. Look there before you get more."


def told(sample, **project):
    logs = {"fiber": [TOP], "samples": [{"name": "Swatch"} | sample], "projects": [{"name": "Vest", "wanted": 400.0, "lot_1": "Top", "sample": "Swatch"} | project]}
    entries = entries_with(US, logs)
    keys = ("projects_message", "projects_verdict", "samples_mark")
    return tuple(shown_in(US, entries, keys))


@pytest.mark.parametrize("slip", [{"mass": 5.67}, {"mass": 1.5, "washed": 12.0, "unwashed": 8.0}, {"mass": 1.0, "fiber_in": 4.0, "yarn_out": 1.0}])
def test_a_slip_in_a_sample_is_asked_about_beside_the_project_that_it_makes_short(slip):
    assert told({"length": 10.0} | slip) == (LOOK, "short", "?")


def test_so_is_a_sample_in_which_something_cannot_be_right():
    assert told({"length": 10.0, "mass": 1.5, "fiber_in": 1.0, "yarn_out": 4.0}) == (LOOK, "short", "!")


def test_nobody_is_asked_whose_yarn_is_enough_or_whose_sample_is_in_order():
    assert told({"length": 10.0, "mass": 0.1}) == (None, "enough", "?"), "a light sample, and plenty of yarn"
    assert told({"length": 100.0, "mass": 2.0}, wanted=2000.0) == (None, "short", None)
    assert told({"length": 10.0, "mass": 5.67}, used=8.0)[0] != LOOK
