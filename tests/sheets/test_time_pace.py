"""A pace that was timed on a yarn far thicker or finer than a project's: its hours are another yarn's.

The sample: 100 m of single that became 45 m of ply, timed; 45 m of its yarn weigh 22.5 g, 200 m in 100 g.
"""

import pytest

from planners import rows_of
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.settings import Settings

PLANNER = described(Settings(units="metric", fibers="", rows=rows_of(4)))
SAMPLE = {"name": "Thick", "length": 45.0, "mass": 22.5, "singles_length": 47.0, "plied_length": 45.0, "spin_minutes": 30.0, "ply_minutes": 10.0}
ASKED = "Is it right? Its hours go by the pace of a sample far thicker or finer than it, on the sheet Time."


def told(grist, paces=None, **project):
    entries = starting_entries(PLANNER) | {"pace_sample": ("Thick",)} | (paces or {})
    shawl = {"name": "Shawl", "wanted": 900.0, "grist": grist, "lot_1": "Top", "strands": 2.0, "take_up": 0.04}
    lot = {"name": "Top", "state": "prepared fiber", "weight": 2000.0, "own_spinning": 0.03}
    for log, line in {"samples": SAMPLE, "fiber": lot, "projects": shawl | project}.items():
        entries = with_records(PLANNER, entries, log, [line])
    [values] = expected_of_keys(PLANNER, [entries], ["projects_message", "times_ahead"])
    return values["projects_message"][0] or "", values["times_ahead"][0]


@pytest.mark.parametrize("grist", [351.0, 800.0, 114.0])
def test_a_pace_of_another_yarn_is_asked_about(grist):
    message, hours = told(grist)
    assert message.startswith(ASKED) and hours > 0, "and reckoned with all the same"


@pytest.mark.parametrize("grist", [115.0, 200.0, 350.0])
def test_that_of_a_yarn_like_it_is_not(grist):
    assert told(grist)[0] == ""


def test_nor_is_one_that_you_typed_or_that_of_a_finished_piece():
    """A pace that is typed has no grist beside it: the sheets Time and Figures say of which yarn it is to be."""
    assert told(800.0, {"pace_spinning": (90.0,)})[0] == ""
    assert "Its hours" not in told(800.0, used=100.0)[0]
