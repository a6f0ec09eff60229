"""Entries: what a new planner shows, and records put in from the top."""

import pytest

import described
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.language.parts import Log
from workbookgen.sheets.planner import planner


def test_a_new_planner_has_one_value_for_every_record():
    entries = starting_entries(described.whole())
    assert {key: len(values) for key, values in entries.items()} == (
        {f"reels_{key}": 3 for key in ("name", "loop")}
        | {f"skeins_{key}": 4 for key in ("reel", "wraps", "rest", "start", "end", "counted", "note")}
        | {f"plan_{key}": 1 for key in ("wanted", "margin", "usual")}
    )
    assert {value for values in entries.values() for value in values} == {None}


def test_what_a_log_and_a_card_bring_along(small):
    whole = planner(small)
    entries = starting_entries(whole)
    # 72 in, and 4 * sqrt(15**2 + 7**2 + 7**2) has no rated loop: both as the settings of the fixture say.
    assert entries["reels_name"] == ("Clock reel", "Niddy-noddy", None, None)
    assert entries["reels_rated"] == (pytest.approx(72.0), None, None, None)
    assert entries["reels_height"] == (None, pytest.approx(15.0), None, None)
    assert entries["thickness_k_touching"] == (0.9,)
    assert isinstance(whole.blocks["reels"], Log) and entries["skeins_wraps"] == (None,) * 6


def test_records_stand_at_the_top_and_the_rest_is_emptied():
    whole = described.whole()
    before = starting_entries(whole) | {"reels_name": ("x", "y", "z"), "plan_wanted": (7.0,)}
    after = with_records(whole, before, "reels", [{"name": "Clock", "loop": 180.0}, {"loop": 90.0}])
    assert after["reels_name"] == ("Clock", None, None)
    assert after["reels_loop"] == (180.0, 90.0, None)
    assert after["plan_wanted"] == (7.0,), "other blocks stay as they were"
    assert before["reels_name"] == ("x", "y", "z"), "and so do the entries given"


def test_more_records_than_lines():
    with pytest.raises(ValueError, match="reels has 3 lines, and 4 records were given"):
        with_records(described.whole(), {}, "reels", [{}] * 4)


@pytest.mark.parametrize("word", ["lopp", "hundred"])  # misspelt, and a result
def test_a_record_may_only_fill_inputs(word):
    with pytest.raises(ValueError, match=f"reels has no inputs {word}"):
        with_records(described.whole(), {}, "reels", [{"name": "Clock"}, {word: 1.0}])
