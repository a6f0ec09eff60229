"""A part of a lot is given away, and the whole rest is marked as gone: whoever is short by it is asked.

By hand, metric: 500 g of top, none lost in spinning, are 2,000 m at 400 m in 100 g. Marked as gone, it
gives nothing more.
"""

import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

PLANNER = described(Settings(units="metric"))
TOP = {"name": "Top", "state": "prepared fiber", "weight": 500.0, "own_spinning": 0.0, "grist": 400.0}
SHAWL = {"name": "Shawl", "wanted": 1000.0, "lot_1": "Top", "margin": 0.0}
ASKED = (
    "Is it right? The rest of its first lot is gone. "
    "If only a part went, empty Rest gone, and give that part a line of its own."
)
SKEIN = {"name": "One", "reel": "Reel", "wraps": 1200.0, "gross": 300.0, "washed_loop": 100.0, "lot": "Top", "project": "Shawl"}


def told(lot, *, project=SHAWL, skeins=()):
    logs = {"reels": [{"name": "Reel", "rated": 100.0}], "fiber": lot, "projects": [project], "skeins": list(skeins)}
    entries = entries_with(PLANNER, logs)
    [values] = expected_of_keys(PLANNER, [entries], ("projects_have", "projects_message"))
    return values["projects_have"][0], values["projects_message"][0]


@pytest.mark.parametrize("fate", ["given", "sold", "lost"])
def test_who_is_short_by_it_is_asked_whether_all_of_it_went(fate):
    assert told([TOP | {"gone": fate}]) == (0, ASKED)


def test_as_asked_for_the_rest_is_there_again():
    """200 of the 500 g have a line of their own; 300 g are 1,200 m."""
    part = TOP | {"name": "Part", "weight": 200.0, "gone": "given"}
    assert told([TOP | {"weight": 300.0}, part]) == (pytest.approx(1200), None)


def test_who_is_not_short_or_has_the_rest_is_not_asked():
    gone = [TOP | {"gone": "given"}]
    there, asked = told([TOP | {"gone": "used"}])
    assert there == 0 and asked != ASKED, "spun to its end: it is asked where its yarn is"
    assert told([TOP | {"gone": "set aside"}]) == (pytest.approx(2000), None)
    assert told(gone, skeins=[SKEIN]) == (pytest.approx(1200), None)
    assert told(gone, project=SHAWL | {"used": 250.0})[1] != ASKED
