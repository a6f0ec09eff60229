"""Planners of hands that drift, in the engines.

Drawn entries have no skeins in such a row, so of what is ahead they would only compare that it is nothing.
"""

import pytest

from entries import entries_with
from long_run import some
from workbookgen.book.write import write
from workbookgen.checking.check import FileToCheck, check
from workbookgen.checking.expected import expected_of_keys

COARSER = 4.0, 4.2, 4.3, 4.55, 4.8, 4.95, 5.2  # ounces of skeins of 400 yards
STEADY = 4.3, 4.2, 4.35, 4.25, 4.3, 4.4, 4.2
PIECES = {"Vest": COARSER, "Shawl": COARSER[::-1], "Jacket": COARSER, "Cap": STEADY}
OF_THREAD = "Jacket"  # is half of a bought thread
DESIGN = {"design": "Wool and thread"}


def drifting(planner):
    """A hand that becomes coarser, one that becomes finer, one beside a bought thread, and a steady one."""
    of = {piece: DESIGN if piece == OF_THREAD else {"lot": f"Top of the {piece}"} for piece in PIECES}
    lots = [
        {
            "name": f"Top of the {piece}",
            "state": "prepared fiber",
            "weight": 60.0,
            "own_spinning": 0.03,
            "grist": 1600.0,
        }
        for piece in PIECES
    ]
    parts = [
        {"number": 3200.0, "system": "yards per pound", "place": 1.0, "lot": f"Top of the {OF_THREAD}"},
        {"number": 3200.0, "system": "yards per pound", "place": 2.0, "lot": "Thread"},
    ]
    records = {
        "reels": [{"name": "Six feet", "rated": 72.0}],
        "fiber": [*lots, {"name": "Thread", "state": "yarn or thread", "weight": 60.0}],
        "designs": [{"name": DESIGN["design"]}],
        "components": [DESIGN | each for each in parts],
        "skeins": [
            of[piece] | {"name": f"{piece} {at}", "reel": "Six feet", "wraps": 200.0, "gross": each, "project": piece}
            for piece, weights in PIECES.items()
            for at, each in enumerate(weights)
        ],
        "projects": [
            {"name": piece, "wanted": 5000.0} | (DESIGN if piece == OF_THREAD else {"lot_1": of[piece]["lot"]})
            for piece in PIECES
        ],
    }
    entries = entries_with(planner, records)
    return entries | {"project_name": ("Vest",)}


@pytest.fixture(scope="module")
def drifted(layout, tmp_path_factory):
    file = tmp_path_factory.mktemp("drifting") / "drifting.xlsx"
    file.write_bytes(write(layout, drifting(layout.planner), {}))
    return file


def test_three_hands_drift_and_one_does_not(layout):
    [shown] = expected_of_keys(layout.planner, [drifting(layout.planner)], ["projects_ahead", "projects_message"])
    vest, shawl, jacket, cap = shown["projects_ahead"][:4]
    assert -0.5 < vest < -0.1 and 0.1 < shawl < 0.5 and cap == 0
    assert jacket < 1.5 * vest  # all of it is of the wool
    asked = ["Line by line its skeins become" in (each or "") for each in shown["projects_message"][:4]]
    assert asked == [True, True, True, False]


@pytest.mark.parametrize("name", ["formualizer", "ironcalc"])
def test_the_engines_agree_about_what_is_ahead(name, layout, drifted):
    assert check(FileToCheck(drifted, layout), [name], scenarios=0).findings == []


@pytest.mark.programs
@pytest.mark.parametrize("name", some(["libreoffice", "gnumeric"], 1))
def test_the_programs_agree_about_what_is_ahead(name, layout, drifted):
    assert check(FileToCheck(drifted, layout), [name], scenarios=0).findings == []
