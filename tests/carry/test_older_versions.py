"""A planner that an old version of the project made: its entries come over."""

from pathlib import Path

import pytest

from workbookgen.carry.leftovers import IN_ITS_CELL
from workbookgen.filled.planner import described, read_filled
from workbookgen.language.entries import starting_entries

from .older.make_older import CARDS, RECORDS

OLDEST = Path(__file__).parent / "older" / "1f39ebd.xlsx"


@pytest.fixture(scope="module")
def old():
    return read_filled(OLDEST)


def test_what_that_version_lacked_is_not_read(old):
    assert "skeins_name" in old.entries
    assert "samples_name" not in old.entries, "it had no samples"
    assert "samples_name" in starting_entries(described(old.settings))


def test_all_its_entries_come_over_and_mean_the_same(old, carried):
    outcome = carried(OLDEST)
    for block, records in RECORDS.items():
        for row, record in enumerate(records if f"{block}_name" in old.entries else ()):
            assert {key: outcome.new.entries[f"{block}_{key}"][row] for key in record} == record
    for key, value in CARDS.items():
        assert outcome.new.entries[key] == (value,)
    assert outcome.new.entries["thickness_k_touching"] == (0.9,), "a first value that it brought along"
    assert outcome.carried.differences == ()
    assert outcome.leftovers == {"Skeins!B10": ("Attic reel", IN_ITS_CELL), "Skeins!C10": ("about a hundred", IN_ITS_CELL)}
    assert outcome.new.entries["samples_name"] == (None,) * 30, "a new log is as a new planner has it"
    assert outcome.new.settings.title == "An older planner"


def test_its_own_reel_is_not_lost_to_one_of_the_settings(carried):
    outcome = carried(OLDEST)
    assert outcome.new.entries["reels_name"][:3] == ("Porch reel", "Crow niddy", None), "Spare reel was written over by hand"
