"""The angle of a ply on the sheet Samples and that of the sheet Twist are one angle, of one yarn.

By hand: 10 yd that weigh 0.16 oz are 1,000 yd/lb. Threads that touch lie 0.9 · √1,000 = 28.46 to an inch, so the yarn
is 0.8925 mm across, and 4 turns in an inch, 157.48 in a meter, run at atan(π · 0.0008925 · 157.48) = 23.8°. By wraps as
laid by hand, 0.35 · √1,000 = 11.07 to an inch, they would run at 48.7°; asked for on the sheet Twist, that angle takes
10.3 turns.
"""

import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries
from workbookgen.settings import Settings

US = described(Settings(units="us"))
SAMPLE = {"name": "Swatch", "length": 10.0, "mass": 0.16, "wpi_1": 11.0, "ply_turns": 12.0, "ply_piece": 3.0}


def test_a_sample_and_the_sheet_twist_tell_one_angle():
    entries = entries_with(US, {"samples": [SAMPLE]})
    keys = ("samples_grist_yd_lb", "samples_ply_twist", "samples_diameter", "samples_angle")
    [values] = expected_of_keys(US, [entries], keys)
    grist, twist, across, angle = (values[key][0] for key in keys)
    assert (grist, twist) == pytest.approx((1000, 4)) and across == pytest.approx(0.8925, abs=0.0005) and angle == pytest.approx(23.8, abs=0.05)
    # What the sample shows, asked for of a yarn of its grist, gives its turns back.
    wanted = starting_entries(US) | {"twist_grist": (grist,), "twist_slant": (angle,)}
    [found] = expected_of_keys(US, [wanted], ("twist_turns_slant", "twist_diameter"))
    assert found["twist_turns_slant"][0] == pytest.approx(twist) and found["twist_diameter"][0] == pytest.approx(across)


def test_without_its_weight_a_sample_has_no_angle():
    entries = entries_with(US, {"samples": [SAMPLE | {"length": None, "mass": None}]})
    [values] = expected_of_keys(US, [entries], ("samples_angle", "samples_wpi"))
    assert values["samples_angle"][0] is None and values["samples_wpi"][0] == 11
