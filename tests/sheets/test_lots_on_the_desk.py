"""What the desk says of each lot: all that was spun of it, also what is no longer there."""

import pytest

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
