"""Where lines go: the same places, fewer or more lines, the lines that a planner brings along."""

import pytest

from chapters import all_but
from planners import rows_of
from workbookgen.book.layout import place
from workbookgen.carry.carry import carry
from workbookgen.carry.leftovers import IN_ITS_CELL, ONLY_HERE
from workbookgen.carry.matching import match
from workbookgen.errors import FileError
from workbookgen.filled.planner import ROWS_OF, described, read_filled
from workbookgen.language.parts import Log
from workbookgen.settings import Reel, Rows, Settings

from .conftest import LINES, cell, filled, small, written


def test_by_its_own_settings_everything_is_as_it_was(old_file, old_entries, old_settings, carried):
    outcome = carried(old_file)
    assert outcome.new.entries == old_entries
    assert outcome.new.settings == old_settings
    assert outcome.carried.leftovers == outcome.carried.differences == outcome.carried.notes == ()
    assert outcome.carried.lines == {"Reels": 2, "Fiber": 2, "Skeins": 3, "Projects": 1, "Need": LINES}


def test_there_and_back_between_yards_and_meters(old_file, old_entries, carried, tmp_path):
    there = carried(old_file, small("metric"))
    assert there.new.entries["skeins_gross"][0] == pytest.approx(4.02 * 28.349523125, rel=1e-14)
    assert there.new.entries["skeins_washed_loop"][1] == pytest.approx(51.3 * 2.54, rel=1e-14)
    sheet, *first = there.new.position("skeins_gross", 0)
    assert there.new.book.comments[sheet][tuple(first)] == "Was 4.02 oz in the old planner."
    sheet, *second = there.new.position("skeins_washed_loop", 1)
    assert tuple(second) not in there.new.book.comments[sheet]  # 130.302 cm needs no note
    assert there.carried.leftovers == there.carried.differences == ()
    assert there.carried.converted > 15
    back = carried(tmp_path / "new.xlsx", small("us"), "back.xlsx")
    for key, column in old_entries.items():
        texts = [each for each in column if not isinstance(each, float)]
        assert [each for each in back.new.entries[key] if not isinstance(each, float)] == texts, key
        numbers = [each for each in column if isinstance(each, float)]
        assert [each for each in back.new.entries[key] if isinstance(each, float)] == pytest.approx(
            numbers, rel=1e-12
        ), key
    assert back.new.book.comments["Skeins"] == {}


def test_with_more_lines_every_line_keeps_its_place(old_file, old_entries, carried):
    outcome = carried(old_file, small(lines=6))
    for key in ("skeins_name", "skeins_wraps", "fiber_note"):
        assert outcome.new.entries[key] == (*old_entries[key], None, None)


def test_with_fewer_lines_the_rest_is_left_over(old_file, carried):
    outcome = carried(old_file, small(lines=2))
    assert outcome.new.entries["skeins_name"] == ("First", "Second")
    assert outcome.leftovers[cell("skeins_name", 2)] == ("Third", ONLY_HERE)
    assert outcome.leftovers[cell("skeins_gross", 2)] == (3.88, ONLY_HERE)
    assert {
        each.label for each in outcome.carried.leftovers if f"{each.sheet}!{each.cell}" == cell("skeins_gross", 2)
    } == {"Weight (oz) of Third"}
    assert any(each.key == "fiber_spun" for each in outcome.carried.differences), "a skein less was spun from Clover"


def test_blank_lines_give_way_where_lines_are_few(tmp_path, carried):
    settings = small()
    lines = [{"name": "First"}, {}, {}, {"name": "Last"}]
    path = written(tmp_path / "old.xlsx", settings, filled(settings, {"skeins": lines}, {}))
    assert carried(path, small(lines=2)).new.entries["skeins_name"] == ("First", "Last")


def test_a_left_out_sheet_leaves_its_entries_over(old_file, carried):
    outcome = carried(
        old_file, small(leave_out=("Projects", "Project", "Knitting", "Pieces", "Weaving", "Time", "Cost"))
    )
    assert "projects_name" not in outcome.new.entries
    assert {what for each, (what, _) in outcome.leftovers.items() if each.startswith("Projects!")} == {
        "Hat",
        200.0,
        "10%",
        850.0,
        "Clover",
    }


def test_a_label_that_ends_with_of_is_said_with_its_record(tmp_path, carried):
    settings = small(leave_out=all_but("Guide", "Labels"), fibers=None, rows=rows_of(LINES, guide=60))
    path = written(
        tmp_path / "mixed.xlsx",
        settings,
        filled(settings, {"fiber": [{"name": "River", "also_kind": "Silk", "also_share": 0.2}]}, {}),
    )
    told = {each.label for each in carried(path, small(size="small", leave_out=())).carried.leftovers}
    assert {"Also of, River", "Its share of River"} <= told


def test_the_first_value_of_a_field_that_is_no_more_is_nobodys_entry(tmp_path, carried):
    """A small planner has no samples, and so no uncertainty of their wraps."""
    settings, field = small(leave_out=all_but("Samples")), "doubts_readings"
    plain = written(tmp_path / "plain.xlsx", settings, filled(settings, {}, {}))
    assert field in carried(plain).new.entries
    outcome = carried(plain, small(size="small", leave_out=()), "small.xlsx")
    assert field not in outcome.new.entries and outcome.leftovers == {}
    touched = written(tmp_path / "touched.xlsx", settings, filled(settings, {}, {field: 0.07}))
    assert [
        what for what, _ in carried(touched, small(size="small", leave_out=()), "touched-small.xlsx").leftovers.values()
    ] == ["7%"]


def test_the_reels_of_the_new_settings_and_of_the_old_planner(old_file, carried):
    reels = (Reel(name="Spare", loop="55 in"), Reel(name="clock reel", loop="71 in"), Reel(name="Mill", loop="100 in"))
    outcome = carried(old_file, small(reels=reels))
    # Clock reel was changed by hand and stays; Spare was not, and takes the new figure; Mill is new.
    assert outcome.new.entries["reels_name"] == ("Clock reel", "Spare", "Mill", None)
    assert outcome.new.entries["reels_rated"] == (72.0, 55.0, 100.0, None)
    assert outcome.new.entries["reels_turns"][0] == 8.25
    assert outcome.leftovers == {cell("reels_rated", 1): (54.0, ONLY_HERE)}
    assert outcome.carried.renewed == 1 + LINES, "Spare, and what pieces usually take"


def test_a_reel_of_other_units_is_another_reel(old_file, carried):
    """What was wound on 54 inches stays on 54 inches, 137.16 cm, though planners in meters have a Spare of 150 cm."""
    reels = (Reel(name="Spare", loop="150 cm"), Reel(name="Mill", loop="100 cm"))
    outcome = carried(old_file, small("metric", reels=reels))
    assert outcome.new.entries["reels_name"] == ("Clock reel", "Spare", "Mill", None)
    assert outcome.new.entries["reels_rated"][1:3] == (pytest.approx(137.16), 100.0)
    assert "reels_rated" not in {each.key for each in outcome.carried.differences}
    assert not any(each.key.startswith("skeins_") for each in outcome.carried.differences), "no skein is longer for it"
    assert outcome.leftovers == {}


def test_a_reel_that_both_settings_mean_alike_is_as_the_new_planner_has_it(old_file, carried):
    outcome = carried(old_file, small("metric", reels=(Reel(name="Spare", loop="54 in"),)))
    assert outcome.new.entries["reels_rated"][1] == pytest.approx(137.16)
    assert outcome.carried.renewed == 1 + LINES, "Spare, and what pieces usually take"
    outcome = carried(old_file, small("us-grams", reels=(Reel(name="Spare", loop="55 in"),)), "inches.xlsx")
    assert outcome.new.entries["reels_rated"][1] == 55.0, "its loop is in inches as before, and was measured anew"
    assert set(outcome.leftovers) == {cell("reels_rated", 1)}


def test_a_reel_of_the_old_settings_only_is_kept(old_file, carried):
    outcome = carried(old_file, small(reels=()))
    assert outcome.new.entries["reels_name"] == ("Clock reel", "Spare", None, None)
    assert outcome.leftovers == {}


def test_the_guide_takes_new_figures_only_where_nobody_touched_it(tmp_path):
    settings = small(fibers=None, lines=60)
    metric = described(settings.model_copy(update={"units": "metric"}))
    entries = filled(settings, {}, {})
    names, lines = entries["guide_name"], len(metric.blocks["guide"].starts_with)
    for key, column in entries.items():
        if key.startswith("guide_"):
            entries[key] = (*column[:2], None, *column[3:])  # the third line was deleted
    entries["guide_yield_low"] = (0.123, *entries["guide_yield_low"][1:])
    entries["guide_name"] = (*entries["guide_name"][:lines], "Fog", *[None] * (59 - lines))
    matched = match(read_filled(written(tmp_path / "old.xlsx", settings, entries)), metric)
    assert matched.entries["guide_yield_low"][0] == 0.123
    assert matched.entries["guide_fleece_low"][0] == pytest.approx(
        entries["guide_fleece_low"][0] * 0.45359237, rel=1e-14
    )
    published = {record["name"]: record for record in metric.blocks["guide"].starts_with}
    assert matched.entries["guide_fleece_low"][1] == published[names[1]]["fleece_low"], (
        "rounded as the new guide has it"
    )
    assert matched.entries["guide_name"][2] is None, "a deleted line does not come back"
    assert matched.entries["guide_name"][lines] == "Fog"
    assert len([block for block, _ in matched.renewed if block == "guide"]) == lines - 2
    assert matched.leftovers == [], "figures that differ by rounding only are the same"


def test_lines_that_share_a_name_are_known_by_all_their_words(tmp_path):
    """What a hat takes differs for a child and a grown one; two figures of yards are two other ones of meters."""
    settings = small(lines=20)
    metric = described(settings.model_copy(update={"units": "metric"}))
    entries = filled(settings, {}, {})
    hats = {entries["uses_size"][row]: row for row, name in enumerate(entries["uses_name"]) if name == "hat"}
    assert set(hats) == {"child", "grown"}
    entries["uses_length"] = tuple(
        130.0 if row == hats["grown"] else each for row, each in enumerate(entries["uses_length"])
    )
    matched = match(read_filled(written(tmp_path / "old.xlsx", settings, entries)), metric)
    given = {(each["name"], each["size"]): each["length"] for each in metric.blocks["uses"].starts_with}
    assert matched.entries["uses_length"][hats["child"]] == given["hat", "child"], "nobody touched it"
    assert matched.entries["uses_length"][hats["grown"]] == pytest.approx(130 * 0.9144, rel=1e-14), "it was typed over"
    assert len([block for block, _ in matched.renewed if block == "uses"]) == len(given) - 1
    assert matched.leftovers == []
    assert matched.entries["uses_name"] == [*entries["uses_name"]], "and no line came twice"


def test_entries_that_the_planner_does_not_take_stay_and_are_told(tmp_path, carried):
    settings = small()
    lines = [
        {"name": "First", "reel": "Attic reel", "wraps": "about a hundred", "gross": -3.0, "tare": "12,5", "lot": 7.0}
    ]
    path = written(tmp_path / "old.xlsx", settings, filled(settings, {"skeins": lines}, {}))
    outcome = carried(path, small("metric"))
    assert [outcome.new.entries[f"skeins_{key}"][0] for key in ("reel", "wraps", "tare", "lot")] == [
        "Attic reel",
        "about a hundred",
        "12,5",
        7.0,
    ]
    assert outcome.new.entries["skeins_gross"][0] == pytest.approx(-3 * 28.349523125)
    told = {f"{each.sheet}!{each.cell}": each for each in outcome.carried.leftovers}
    assert set(told) == {cell(f"skeins_{key}") for key in ("reel", "wraps", "gross", "tare", "lot")}
    assert {each.now for each in told.values()} == {IN_ITS_CELL}
    assert "Reel: choose one of the names on the sheet Reels." in told[cell("skeins_reel")].why
    assert "The old planner was for us." in told[cell("skeins_tare")].why
    assert outcome.carried.without_place == 0


def test_a_name_that_two_lines_have_is_told_where_it_stands(tmp_path, carried):
    """Not only in the skeins, which are told to choose one of the names: the cause is on the sheet Reels."""
    settings = small()
    reels = [{"name": "Clock reel", "rated": 72.0}, {"name": "CLOCK reel", "rated": 60.0}]
    skeins = [{"name": "First", "reel": "Clock reel", "wraps": 104.0}]
    path = written(tmp_path / "old.xlsx", settings, filled(settings, {"reels": reels, "skeins": skeins}, {}))
    outcome = carried(path)
    told = {f"{each.sheet}!{each.cell}": (each.why, each.now) for each in outcome.carried.leftovers}
    twice = "nothing can choose this name now. Reel: another line has this name; give each its own."
    assert told[cell("reels_name")] == told[cell("reels_name", 1)] == (twice, IN_ITS_CELL)
    assert set(told) == {cell("reels_name"), cell("reels_name", 1), cell("skeins_reel")}


def test_the_old_planner_is_not_written_over(old_file, tmp_path):
    link = tmp_path / "link.xlsx"
    link.symlink_to(old_file)
    before = old_file.read_bytes()
    for target in (old_file, link):
        with pytest.raises(FileError, match="this is the file that is read"):
            carry(old_file, target)
    assert old_file.read_bytes() == before


def test_the_new_planner_has_the_cells_that_its_layout_says(old_file, carried):
    layout = place(described(small("metric", lines=6)))
    outcome = carried(old_file, small("metric", lines=6))
    assert layout.placements.keys() <= outcome.new.ranges.keys()


def test_every_log_in_which_one_types_can_be_longer_so_that_inserted_lines_come_along():
    logs = {block.key for block in described(Settings()).blocks.values() if isinstance(block, Log) and block.inputs}
    assert logs and {ROWS_OF.get(key, key) for key in logs} <= set(Rows.model_fields)
