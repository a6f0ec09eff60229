"""A label tells a buyer what was measured, and says "about" of what is only expected.

By hand: 100 turns of 72 in. are 200 yd; 5% lost in washing, 190 yd or 173.7 m; washed to 70 in., 194.4 yd or 177.8 m.
Of 190 yd and 3 oz, 1,013 yd/lb, 0.35 · √1,013 = 11.1 wraps are expected.
"""

import pytest

from entries import entries_with
from planners import rows_of
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

PLANNER = described(Settings(fibers="", rows=rows_of(4)))
SAMPLE = {"name": "Swatch", "unwashed": 20.0, "washed": 19.0}
SKEIN = {"name": "One", "reel": "Reel", "wraps": 100.0, "gross": 3.0}


@pytest.mark.parametrize(("typed", "length", "wraps"), [
    ({}, "about 190 yd (174 m)", "about 11 wraps per inch"),
    ({"project": "Vest"}, "about 190 yd (174 m)", "about 11 wraps per inch"),  # as its sample shrank
    ({"washed_loop": 70.0}, "194 yd (178 m)", "about 11 wraps per inch"),
    ({"washed_loop": 70.0, "counted_wpi": 11.5}, "194 yd (178 m)", "11.5 wraps per inch"),
    ({"lot": "Cone"}, "200 yd (183 m)", "about 11 wraps per inch"),  # bought, and finished
])
def test_what_was_not_measured_is_told_as_about_so_much(typed, length, wraps):
    records = {
        "reels": [{"name": "Reel", "rated": 72.0}], "samples": [SAMPLE], "projects": [{"name": "Vest", "sample": "Swatch"}],
        "fiber": [{"name": "Cone", "state": "yarn or thread", "weight": 16.0}], "skeins": [SKEIN | typed], "labels": [{"skein": "One"}],
    }
    entries = entries_with(PLANNER, records)
    [values] = expected_of_keys(PLANNER, [entries], ["labels_length_words", "labels_wraps_words"])
    assert (values["labels_length_words"][0], values["labels_wraps_words"][0]) == (length, wraps)
