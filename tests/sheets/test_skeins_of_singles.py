"""Singles on a skein winder, logged for a project whose yarn is plied, would count twice: as they are, and plied.

377 m of singles and the 188.5 m plied of them would be 565.5 m of yarn in the skeins of the project.
"""

import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

PLANNER = described(Settings(units="metric"))
LOT = {"name": "Merle", "state": "prepared fiber", "weight": 300.0, "own_spinning": 0.05, "grist": 250.0}
SINGLES = {"name": "One", "reel": "Reel", "wraps": 260.0, "gross": 78.0, "washed_loop": 145.0, "lot": "Merle", "project": "Vest"}
TWICE = "Is it right? Plied of: these are singles, and its project's yarn is plied. Log only the plied yarn, or both count."


@pytest.mark.parametrize(("strands", "plied_of", "asked"), [
    (2.0, 1.0, TWICE), (3.0, 1.0, TWICE),
    (None, 1.0, TWICE),  # nothing is planned, and another skein of it is plied
    # A yarn of singles, one that is plied as planned or otherwise, and where nothing is said.
    (1.0, 1.0, None), (2.0, 2.0, None), (3.0, 2.0, None), (2.0, None, None), (None, None, None),
])
def test_singles_of_a_yarn_that_is_plied(strands, plied_of, asked):
    vest = {"name": "Vest", "wanted": 650.0, "margin": 0.0, "lot_1": "Merle"} | ({"strands": strands} if strands else {})
    plied = {"name": "Two", "wraps": 130.0, "plied_of": 2.0}
    first = SINGLES | ({"plied_of": plied_of} if plied_of else {}) | ({"gross": 156.0} if plied_of == 2 else {})  # as heavy a yarn as the second
    skeins = [first, SINGLES | plied]
    entries = entries_with(PLANNER, {"fiber": [LOT], "reels": [{"name": "Reel", "rated": 150.0}], "projects": [vest], "skeins": skeins})
    [values] = expected_of_keys(PLANNER, [entries], ["skeins_message", "projects_in_skeins"])
    assert values["skeins_message"][:2] == (asked, None)
    assert values["projects_in_skeins"][0] == pytest.approx(565.5)
