"""How many singles a project's yarn has, where only its skeins say so: who weaves with singles spins no second strand,
and plies nothing.
"""

import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

PLANNER = described(Settings(units="us"))
SKEIN = {"reel": "Clock reel", "wraps": 100.0, "gross": 4.0, "lot": "Moss", "project": "Shawl"}


def told(*skeins, **project):
    logs = {
        "reels": [{"name": "Clock reel", "rated": 72.0}],
        "fiber": [{"name": "Moss", "kind": "Romney", "state": "prepared fiber", "weight": 20.0, "grist": 1000.0}],
        "skeins": [SKEIN | {"name": f"Skein {number}"} | each for number, each in enumerate(skeins)],
        "projects": [{"name": "Shawl", "wanted": 800.0, "margin": 0.0, "lot_1": "Moss"} | project],
    }
    entries = entries_with(PLANNER, logs) | {"pace_spinning": (100.0,), "pace_plying": (200.0,)}
    keys = ("projects_plies", "times_plies", "times_singles", "times_spinning", "times_plying", "skeins_message")
    [values] = expected_of_keys(PLANNER, [entries], keys)
    plies, strands, singles, spinning, plying = (values[key][0] for key in keys[:5])
    return plies, strands, singles, spinning, plying, values["skeins_message"][: len(skeins)]


def test_skeins_of_singles_need_no_plying():
    plies, strands, singles, spinning, plying, messages = told({"plied_of": 1.0}, {"plied_of": 1.0})
    # 800 yards finished are 842.1 before washing takes its usual 5%; at 100 yards an hour 8.42 hours.
    assert (plies, strands, plying) == (1, 1, 0) and messages == (None, None)
    assert singles == pytest.approx(800 / 0.95) and spinning == pytest.approx(8 / 0.95)


@pytest.mark.parametrize(
    ("skeins", "project", "plies"),
    [
        ([{}], {}, None),  # nobody says
        ([{}, {"plied_of": 3.0}], {}, 3),
        ([{"plied_of": 1.0}], {"strands": 2.0}, 2),  # what is typed for the project wins
        ([{"plied_of": 2.0}, {"plied_of": 2.0}, {"plied_of": 2.0}, {"plied_of": 1.0}], {}, 2),
        ([{"plied_of": 1.0, "gone": "sold"}], {}, None),  # it is no skein of it any more
    ],
)
def test_the_project_comes_first_and_then_most_of_its_skeins(skeins, project, plies):
    of_project, strands, *_ = told(*skeins, **project)
    assert of_project == plies and strands == (plies or 2)


def test_a_single_among_plied_skeins_is_asked_about():
    *_, messages = told({"plied_of": 2.0}, {"plied_of": 2.0}, {"plied_of": 2.0}, {"plied_of": 1.0})
    assert messages[:3] == (None, None, None) and messages[3].startswith("Is it right? Plied of: these are singles")
