"""The demo: a story that shows every sheet at work, and the pictures that the README names."""

import re
from pathlib import Path

import pytest

from demo_planner import demo_entries, demo_settings, make
from planners import laid_out
from workbookgen.checking.expected import expected_values
from workbookgen.errors import DescriptionError

ROOT = Path(__file__).parent.parent


@pytest.fixture(scope="module")
def told():
    return expected_values(laid_out(demo_settings()).planner, demo_entries())


@pytest.mark.parametrize(
    ("name", "value", "refusal"),
    [
        ("CARDS", {"twist_gist": (1.0,)}, "demo/make.py: its CARDS fill in twist_gist, which is no input"),
        ("records", lambda log: [{"rell": "Porch"}], "demo/reels.csv: reels has no inputs rell"),
    ],
)
def test_what_is_told_of_no_input_is_refused(monkeypatch, name, value, refusal):
    """Else a field that was renamed would leave the demo without a word."""
    monkeypatch.setattr(make, name, value)
    with pytest.raises(DescriptionError, match=refusal):
        make.entries(demo_settings())


def test_the_scenario_has_what_a_spinner_has():
    states = [record["state"] for record in make.records("fiber")]
    assert states.count("raw fleece") >= 2 and "prepared fiber" in states and "yarn or thread" in states
    skeins = make.records("skeins")
    assert len(skeins) == 9 and len({skein["reel"] for skein in skeins}) == 2


def test_one_project_turns_out_short_and_two_want_the_same_lot(told):
    verdicts = [verdict for verdict in told["projects_verdict"] if verdict]
    assert len(verdicts) == len(make.records("projects"))
    assert verdicts.count("short") == 1
    lots = told["projects_part_1_name"]
    shared = [place for place, lot in enumerate(lots) if lot and lots.count(lot) > 1]
    assert len(shared) == 2 and [verdicts[place] for place in shared] == ["likely enough"] * 2
    # Of the lot they want nearly all together, so that neither is sure.
    claims = [told["projects_part_1_claim"][place] for place in shared]
    assert max(claims) < 0.7 and 0.9 < sum(claims) < 1


def test_nothing_in_the_demo_is_left_to_fix(told):
    assert {key: said for key, said in told.items() if key.endswith("_message") and any(said)} == {}


def test_every_sheet_has_something_to_show(told):
    blocks = {key.partition("_")[0] for key, values in told.items() if any(value is not None for value in values)}
    assert blocks >= {
        "reels",
        "guide",
        "fiber",
        "buying",
        "scouring",
        "samples",
        "designs",
        "components",
        "twist",
        "skeins",
        "compare",
        "labels",
        "estimates",
        "pieces",
        "weavings",
        "projects",
        "pace",
        "costs",
        "way",
        "counts",
        "backwards",
    }


def test_the_pictures_of_the_readme_are_there():
    named = re.findall(r"\]\((demo/pictures/[^)]+)\)", (ROOT / "README.md").read_text(encoding="utf-8"))
    assert named and all((ROOT / picture).is_file() for picture in named)
