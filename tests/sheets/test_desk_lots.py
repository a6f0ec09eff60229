"""What the desk says of each lot: all that was spun of it, also what is no longer there."""

import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.settings import Settings
from workbookgen.sheets.desk import LOT_BY_LOT

METRIC = described(Settings(units="metric"))


def test_a_lots_line_counts_skeins_that_are_gone_so_it_is_not_called_the_shelf():
    """Two skeins of 150 g, one given away: the stock is one skein, and 2 skeins and 300 g were spun of the lot."""
    entries = with_records(
        METRIC, starting_entries(METRIC), "fiber",
        [{"name": "Fern", "kind": "Wool top or roving", "state": "prepared fiber", "weight": 600.0}],
    )
    entries = with_records(METRIC, entries, "reels", [{"name": "Porch", "rated": 150.0}])
    skein = {"lot": "Fern", "reel": "Porch", "wraps": 200.0, "gross": 150.0}
    entries = with_records(
        METRIC, entries, "skeins", [{"name": "Fern 1", "gone": "given"} | skein, {"name": "Fern 2"} | skein]
    )
    values = expected_values(METRIC, entries)
    assert values["first_lots_skeins"][0] == 2
    assert values["first_lots_mass"][0] == pytest.approx(300)
    assert values["glance_skeins"][0] == 1
    assert "shelf" not in LOT_BY_LOT.title.lower()


def test_what_is_not_known_is_told_as_such():
    """A raw fleece of which nobody knows what it loses, another that was sold, a bought top, and two projects."""
    fleece = {"state": "raw fleece", "weight": 2400.0, "grist": 250.0}
    top = {"kind": "Wool top or roving", "state": "prepared fiber", "weight": 600.0, "grist": 250.0}
    lots = [{"name": "Brown"} | fleece, {"name": "Fern"} | top, {"name": "Gray", "gone": "sold"} | fleece]
    entries = entries_with(METRIC, {"fiber": lots})
    wanted = [{"name": "Sweater", "wanted": 1200.0, "lot_1": "Brown"}, {"name": "Cap", "wanted": 100.0, "lot_1": "Fern"}]
    values = expected_values(METRIC, with_records(METRIC, entries, "projects", wanted))
    assert values["first_projects_words"][:3] == ("no answer yet", "enough", None)
    assert values["glance_projects"] == ("1 of 1",)
    assert values["glance_projects_words"] == ("open project has enough, 1 not known",)
    assert values["lot_sums_words"][0].endswith(" of yarn still in it; 1 more not known")
    assert values["glance_lots_words"] == ("of yarn still in 1 lot, 1 not known",)
    # The sweater takes of the fleece, and nobody knows which share: none is told. The cap takes 40 g of the top.
    assert values["first_lots_promised"][0] is None and values["fiber_promised"][0] is None
    assert values["first_lots_promised"][1] == pytest.approx(100 / 250 * 100 / (600 * 0.95), rel=0.05)
    # The sweater's grist is known, so nobody is sent to look for one.
    assert values["projects_message"][0] == "No answer yet: what its lots give is unknown. Their lines on the sheet Fiber say what they still need."
    assert values["fiber_message"][0] == (
        "No answer yet: what it loses on its way to yarn is not known. Choose its breed or fiber, or type your own losses."
    )
