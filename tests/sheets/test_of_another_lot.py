"""A skein whose lot is none of those that its project is spun from: one of the two was chosen wrong."""

import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

WHOLE, SMALL = (described(Settings(units="metric", size=size)) for size in ("whole", "small"))
LOTS = [{"name": name, "state": "prepared fiber", "weight": 500.0, "own_spinning": 0.05, "grist": 300.0} for name in ("Merle", "Brack", "Dun", "Roan")]
ASKED = "Is it right? Fiber lot: its project is spun from others. Choose the right lot or project, or add this lot to the project."


@pytest.mark.parametrize("planner", [WHOLE, SMALL], ids=["whole", "small"])
@pytest.mark.parametrize(("lots", "lot", "asked"), [
    (("Merle",), "Merle", None), (("Merle",), "MERLE", None), (("Merle",), "Brack", ASKED),
    (("Merle", "Brack"), "brack", None), (("Merle", "Brack", "Dun"), "Dun", None), (("Merle", "Brack", "Dun"), "Roan", ASKED),
    ((), "Brack", None),  # its project says nothing
])
def test_a_skein_of_a_lot_that_its_project_does_not_name(planner, lots, lot, asked):
    project = {"name": "Vest", "wanted": 600.0, "strands": 1.0} | {f"lot_{place}": each for place, each in enumerate(lots, start=1)}
    skein = {"name": "One", "reel": "Reel", "wraps": 200.0, "gross": 100.0, "project": "Vest", "lot": lot}
    entries = entries_with(planner, {"fiber": LOTS, "reels": [{"name": "Reel", "rated": 150.0}], "projects": [project], "skeins": [skein]})
    [values] = expected_of_keys(planner, [entries], ["skeins_message"])
    assert values["skeins_message"][0] == asked
