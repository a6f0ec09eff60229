"""A piece is finished and its yarn weighed: the skeins that it took are to be marked, or they stay in the stock.

By hand: two skeins of 4 and 3.5 oz, 7.5 in all, of which a vest took 6.5; 1 oz is left, and a tenth of 7.5 oz may be
damp air, tags and a scale.
"""

import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

US = described(Settings(units="us"))
SMALL = described(Settings(units="us", size="small"))
ASKED = "Is it right? Yarn used: its skeins tell of more or less. Mark those that are used, and divide one that is used in part."


def skein(name, gross, gone=None, **more):
    return {"name": name, "reel": "Porch", "wraps": 100.0, "gross": gross, "project": "Vest", "gone": gone} | more


@pytest.mark.parametrize("described", [US, SMALL], ids=["whole", "small"])
@pytest.mark.parametrize(("skeins", "used", "asked"), [
    ((skein("A", 4.0), skein("B", 3.5)), 6.5, True),  # none is marked: 7.5 oz are logged as there
    ((skein("A", 4.0, "used"), skein("B", 3.5)), 6.5, True),
    ((skein("A", 4.0, "used"), skein("B", 3.5, "used")), 6.5, True),  # 1 oz is left, and nothing there
    ((skein("A", 4.0, "used"), skein("B", 2.5, "used"), skein("C", 1.0)), 6.5, False),
    ((skein("A", 4.0, "used"), skein("B", 3.0, "used"), skein("C", 0.5)), 6.5, False),  # half an ounce of 7.5 is no matter
    ((skein("A", 4.0, "used"), skein("B", 2.5, "used"), skein("C", 1.0, "set aside")), 6.5, False),
    ((skein("A", 4.0, "used"), skein("B", 2.5, "used"), skein("C", 1.0, "given")), 6.5, False),  # what was given away is not of it
    ((skein("A", 4.0, "used"), skein("B", 3.5, "used")), 7.8, False),
    ((skein("A", 4.0), skein("B", 3.5)), 7.8, True),
    ((skein("A", 4.0), skein("B", 3.5)), None, False),
    ((), 6.5, False),
])
def test_a_finished_piece_asks_for_its_skeins_to_be_marked(described, skeins, used, asked):
    vest = {"name": "Vest", "wanted": 200.0, "grist": 600.0, "used": used}  # 200 yd at 600 yd/lb are 5.3 oz
    entries = entries_with(described, {"reels": [{"name": "Porch", "rated": 72.0}], "projects": [vest], "skeins": skeins})
    [values] = expected_of_keys(described, [entries], ("projects_message", "projects_mark"))
    assert (values["projects_message"][0], values["projects_mark"][0]) == ((ASKED, "?") if asked else (None, None))
