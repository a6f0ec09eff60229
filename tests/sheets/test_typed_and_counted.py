"""What was typed counts, or one is told: hours that were worked, estimates beside a stated yardage, parts reckoned
with twice.

Worked by hand: 396 yards with their reserve are 360 wanted and a tenth. Washing takes a twentieth of what is spun,
417 yards of ply in 834 of singles: 8.34 h at 100 yards an hour, 4.17 at 100 and 1.04 at 400, 13.55 in all.
"""

import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

PLANNER = described(Settings(units="us"))
PACE = {"pace_spinning": 100.0, "pace_plying": 100.0}
VEST = {"name": "Vest", "wanted": 360.0}
IN_ALL = 396 / 0.95 * (2 / 100 + 1 / 100 + 1 / 400)


def told(*keys, cards=PACE, **logs):
    """The first line of each of these."""
    entries = entries_with(PLANNER, logs)
    entries |= {key: (value,) for key, value in cards.items()}
    values = expected_of_keys(PLANNER, [entries], keys)[0]
    return [values[key][0] for key in keys]


@pytest.mark.parametrize(("typed", "hours"), [
    ({}, IN_ALL),
    ({"done": 10.0}, IN_ALL),
    ({"done": 40.0}, 40),  # longer than planned
    ({"done": 10.0, "used": 6.0}, 10),  # finished
    ({"used": 6.0}, IN_ALL),
])
def test_the_price_pays_for_the_hours_that_were_worked(typed, hours):
    keys, cost = ("costs_hours", "costs_labor"), {"project": "Vest", "rate": 20.0}
    assert told(*keys, projects=[VEST | typed], costs=[cost]) == [pytest.approx(hours), pytest.approx(20 * hours)]


def test_what_is_no_skein_yet_is_paid_besides_the_hours_done():
    # 208.4 yards washed of 396: what is left is 0.474 of 13.55 h, 6.4 h; with 40 done 46.4.
    skein = {"name": "One", "reel": "Two yards", "wraps": 104.2, "washed_loop": 72.0, "project": "Vest"}
    logs = {"projects": [VEST | {"done": 40.0}], "skeins": [skein], "reels": [{"name": "Two yards", "rated": 72.0}]}
    [hours] = told("costs_hours", costs=[{"project": "Vest", "rate": 20.0}], **logs)
    assert hours == pytest.approx(40 + (1 - 208.4 / 396) * IN_ALL)


def test_hours_of_a_finished_piece_need_no_pace():
    projects, costs = [VEST | {"done": 10.0, "used": 6.0}], [{"project": "Vest", "rate": 20.0}]
    assert told("costs_hours", "costs_message", cards={}, projects=projects, costs=costs) == [10, None]


# A cap of two squares of 10 in, 200 sq in. Its swatch of 5 by 5 in weighs 0.64 oz: 8 swatches are 5.12 oz, at 1,000
# yards a pound 320 yards. By gauge 4 by 5 stitches of 1.44 in: 200 x 20 x 1.44 / 36 = 160 yards.
PARTS = [{"project": "Cap", "shape": "rectangle", "width": 10.0, "height": 10.0, "pieces": 2.0}]
SWATCH = {"project": "Cap", "grist": 1000.0, "swatch_width": 5.0, "swatch_height": 5.0, "swatch_mass": 0.64}
GAUGE = {"project": "Cap", "stitches": 4.0, "rows": 5.0, "unraveled": 14.4, "unraveled_stitches": 10.0}
LIKE_IT = {"project": "Cap", "grist": 1000.0, "piece_mass": 4.0}  # 250 yards
TWICE = "Is it right? Project: another line reckons with all of its parts, too, and they count twice. Keep one of the two lines."
FAR_OFF = "Is it right? Its weight: by it the piece takes far more yarn"


@pytest.mark.parametrize(("lines", "yards", "asked"), [
    ([SWATCH], 320, None),
    ([SWATCH, LIKE_IT], 570, None),  # a cap, and mittens that weigh as much as others did
    ([SWATCH, GAUGE | {"project": "Vest"}], 320, None),
    ([SWATCH, GAUGE], 480, TWICE),
    ([GAUGE, GAUGE], 320, TWICE),
])
def test_parts_that_two_estimates_reckon_with(lines, yards, asked):
    [need] = told("projects_need", projects=[{"name": "Cap"}, {"name": "Vest"}], pieces=PARTS, estimates=lines)
    [message] = told("estimates_message", projects=[{"name": "Cap"}, {"name": "Vest"}], pieces=PARTS, estimates=lines)
    assert (need, message) == (pytest.approx(yards), asked)


@pytest.mark.parametrize(("changed", "asked"), [
    ({}, None),  # the swatch takes twice as much, as with floats of another color
    ({"swatch_mass": 0.65}, FAR_OFF),
    ({"swatch_mass": 0.16}, None),  # half as much
    ({"swatch_mass": 0.15}, FAR_OFF),
    ({"swatch_mass": None}, "Still to fill in: the swatch's width, height and weight go together."),
])
def test_a_swatch_far_from_its_gauge(changed, asked):
    [message] = told("estimates_message", projects=[{"name": "Cap"}], pieces=PARTS, estimates=[GAUGE | SWATCH | changed])
    assert message == asked or message.startswith(asked)


@pytest.mark.parametrize(("typed", "is_asked"), [
    ({}, False),
    ({"wanted": 290.0}, True),  # 320 are 1.103 of it
    ({"wanted": 291.0}, False),
    ({"wanted": 500.0}, False),
    ({"wanted": 200.0, "used": 4.0}, False),  # finished
])
def test_an_estimate_beside_a_stated_yardage(typed, is_asked):
    logs = {"projects": [{"name": "Cap", "lot_1": "Top"} | typed], "pieces": PARTS, "estimates": [SWATCH]}
    lot = {"name": "Top", "kind": "Romney", "state": "prepared fiber", "weight": 32.0, "grist": 1000.0}
    need, message = told("projects_need", "projects_message", fiber=[lot], **logs)
    assert need == pytest.approx(typed.get("wanted", 320))
    assert ("Yarn wanted: by the sheet Need it takes over a tenth more" in (message or "")) is is_asked


@pytest.mark.parametrize(("typed", "balls", "advice"), [({}, 3, "To be 90% sure"), ({"used": 8.0}, None, "Nothing more to do.")])
def test_a_finished_piece_wants_no_more_balls(typed, balls, advice):
    """400 yards are two balls of 200, and what it takes to be sure a part of the third."""
    project = {"name": "Cap", "wanted": 400.0, "package": 200.0, "grist": 1000.0} | typed
    found, says = told("project_packages_more", "project_advice", projects=[project], cards={"project_name": "Cap"})
    assert found == balls and says.startswith(advice)
