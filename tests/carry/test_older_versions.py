"""A planner that an old version of the project made: its entries come over."""

from pathlib import Path

import openpyxl
import pytest

from workbookgen.carry.earlier_units import EARLIER_UNITS
from workbookgen.carry.leftovers import IN_ITS_CELL, ONLY_HERE
from workbookgen.errors import FileError
from workbookgen.filled.planner import described, read_filled
from workbookgen.language.entries import starting_entries
from workbookgen.planner_file import read_planner

from .older.make_older import CARDS, RECORDS

OLDEST, LATEST, BEFORE_TIMES_MOVED, SAID_OTHERWISE, IN_METERS = (
    Path(__file__).parent / "older" / f"{commit}.xlsx"
    for commit in ("1f39ebd", "fb79c8c", "03fbab8", "ef6c051", "49d3ab3")
)
PACKING = "thickness_packing"  # is worked out now, from K
# Up to version 0.4.3 a design was not washed: its grist, and what a project reckons by it.
OF_WASHED_DESIGN = {
    "designs_grist_yd_lb",
    "designs_grist_m_100g",
    "projects_design_grist",
    "projects_planned",
    "projects_yarn",
    "projects_part_1_need_square",
    "projects_finer",
}
DROPPED = {
    "skeins_second_lot",
    "skeins_second_share",
}  # a skein of several lots is of a design now, which knows its shares
FALLEN = {
    OLDEST: {
        "Counts!B45": (CARDS[PACKING], ONLY_HERE),
        "Skeins!K9": ("Gray thread", ONLY_HERE),
        "Skeins!L9": (0.18, ONLY_HERE),
    },
    LATEST: {
        "Counts!B45": (CARDS[PACKING], ONLY_HERE),
        "Twist!B8": (0.5, ONLY_HERE),
        "Twist!B9": (1.31, ONLY_HERE),
        "Skeins!K8": ("Gray thread", ONLY_HERE),
        "Skeins!L8": (0.18, ONLY_HERE),
        "Figures!B26": (0.05, ONLY_HERE),
    },
}


def assert_told_as_it_was_shown(outcome, old):
    """What is another now was in the old file as it is told, and is not what the new file shows.

    Versions differ in what they work out.
    """
    assert outcome.carried.differences
    for each in outcome.carried.differences:
        assert old.cell(each.key, each.row).value == each.before
        now = outcome.new.cell(each.key, each.row)
        assert (None if now.value == "" else now.value) == each.after != each.before


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
            kept = {key: value for key, value in record.items() if f"{block}_{key}" not in DROPPED}
            assert {key: outcome.new.entries[f"{block}_{key}"][row] for key in kept} == kept
    for key, value in CARDS.items():
        assert key == PACKING or outcome.new.entries[key] == (value,)
    assert outcome.new.entries["thickness_k_touching"] == (0.9,), "a first value that it brought along"
    assert_told_as_it_was_shown(outcome, old)
    assert (
        outcome.leftovers
        == {"Skeins!B10": ("Attic reel", IN_ITS_CELL), "Skeins!C10": ("about a hundred", IN_ITS_CELL)} | FALLEN[OLDEST]
    )
    assert outcome.new.entries["samples_name"] == (None,) * 30, "a new log is as a new planner has it"
    assert outcome.new.settings.title == "An older planner"


def test_the_latest_brings_all_its_logs(carried):
    outcome = carried(LATEST)
    for block, records in RECORDS.items():
        for row, record in enumerate(records):
            kept = {key: value for key, value in record.items() if f"{block}_{key}" not in DROPPED}
            assert {key: outcome.new.entries[f"{block}_{key}"][row] for key in kept} == kept
    assert_told_as_it_was_shown(outcome, read_filled(LATEST))
    assert (
        outcome.leftovers
        == {  # and no formula: that another version's are not the same is nobody's change
            "Skeins!B9": ("Attic reel", IN_ITS_CELL),
            "Skeins!C9": ("about a hundred", IN_ITS_CELL),
            "Components!A7": ("Tweed", IN_ITS_CELL),
        }
        | FALLEN[LATEST]
    )


@pytest.mark.parametrize(("path", "sheet"), [(OLDEST, "Counts"), (IN_METERS, "Measure")])
def test_a_formula_of_ones_own_among_its_fields_is_told(path, sheet, carried, tmp_path):
    """All of its own have names, but for some of its first sheet, which are not told."""
    book = openpyxl.load_workbook(path)
    page = book[sheet]
    free = next(cell for (cell,) in page["F6:F40"] if cell.value is None)
    free.value = "=1+2"
    book.save(tmp_path / "older.xlsx")
    told = {place: what for place, what in carried(tmp_path / "older.xlsx").leftovers.items() if "=" in str(what[0])}
    assert told == {f"{sheet}!{free.coordinate}": ("=1+2", ONLY_HERE)}


def test_fibers_get_the_names_for_labels_that_it_had_no_column_for(carried):
    new = carried(LATEST).new
    named = dict(zip(new.entries["guide_name"], new.entries["guide_on_labels"], strict=True))
    assert (named["Corriedale"], named["Flax"], named["Cashmere"]) == ("wool", "linen", "cashmere")
    assert named["Nylon"] is None, "no line of today's table"


@pytest.mark.parametrize("path", [OLDEST, LATEST], ids=lambda path: path.stem)
def test_one_of_another_version_is_not_checked_but_carried(path):
    with pytest.raises(
        FileError, match=rf"made with workbookgen 0\.1\.0, and this is .*workbookgen carry .*{path.name}"
    ):
        read_planner(path)


def test_its_own_reel_is_not_lost_to_one_of_the_settings(carried):
    outcome = carried(OLDEST)
    assert outcome.new.entries["reels_name"][:3] == ("Porch reel", "Crow niddy", None), (
        "Spare reel was written over by hand"
    )


@pytest.mark.parametrize("old", [OLDEST, LATEST])
def test_skeins_that_belonged_to_no_project_are_told_of(carried, old):
    """Their planners counted all skeins of a lot for each of its projects, so that projects have less now."""
    notes = [note.sentence for note in carried(old).carried.notes if note.place == "Skeins"]
    assert len(notes) == 1 and "choose the project beside each skein" in notes[0]


def test_what_was_said_of_a_project_on_its_own_sheet_comes_to_the_project(carried):
    """The first line is of one project, the second of none that is there; the third line's has spoken before."""
    outcome = carried(BEFORE_TIMES_MOVED)
    assert [outcome.new.entries[f"projects_{key}"] for key in ("strands", "take_up", "done")] == [
        (3.0, None, None),
        (0.06, None, None),
        (9.0, None, None),
    ]
    listed = {what for what, _ in outcome.leftovers.values()}
    assert {"Given away", 3.0, "Winter cardigan", 1.0} <= listed and not {"winter cardigan", 9.0} & listed


def test_words_of_the_planner_that_are_others_now_are_nobodys_entries(carried):
    """Version 0.4.0 said many things in other words, in formulas, helps and pages; all of its fields are there."""
    outcome = carried(SAID_OTHERWISE)
    assert outcome.leftovers == {
        "Skeins!C10": ("Attic reel", IN_ITS_CELL),
        "Skeins!D10": ("about a hundred", IN_ITS_CELL),
        "Yarn!B17": ("Tweed", IN_ITS_CELL),
    }
    assert outcome.new.entries["skeins_name"] == read_filled(SAID_OTHERWISE).entries["skeins_name"]


def test_what_a_planner_in_meters_told_in_yards_a_pound_is_no_other_result_now(carried):
    """Up to version 0.4.2 the grist of a lot, its limits and those of a project were told so in every planner."""
    old, outcome = read_filled(IN_METERS), carried(IN_METERS)
    # This planner is a small one, which had no wraps but those counted.
    new = [each.key for each in outcome.carried.differences if each.before is None]
    assert set(new) == {"skeins_wpi", "skeins_weight_class", "skeins_wraps_words"}
    other = {each.key for each in outcome.carried.differences if each.key not in new}
    # A thread is not still to spin; what is, is at the grist wanted; projects that are not finished are called open; a
    # length that was not measured washed is "about" so long; on a label, thousands are parted; the desk counts
    # questions and unfinished lines.
    said_otherwise = {
        "look_components",
        "look_skeins",
        "glance_lots_words",
        "lot_sums_words",
        "way_spun_words",
        "glance_projects_words",
        "skeins_length_words",
        "skeins_grist_words",
    }
    # Three skeins of unlike weight count for somewhat less than three.
    by_weight = {"projects_learned", "projects_part_1_relative"}
    # Its reel is one that only its maker tells of.
    as_rated = {
        "projects_answer",
        "projects_least",
        "projects_most",
        "projects_doubt_spare",
        "first_projects_doubt",
    } | {
        f"{log}_{key}"
        for log, keys in (
            ("projects", ("doubt_have", "doubt_skeins", "reel_square")),
            ("skeins", ("doubt", "reel_doubt", "reel_part", "reel_square", "reel_sum")),
        )
        for key in keys
    }
    assert other == OF_WASHED_DESIGN | said_otherwise | by_weight | as_rated and outcome.leftovers == {}
    for key in EARLIER_UNITS:  # and the file has each of them, in yards per pound
        before, now = old.cell(key, 0).value, outcome.new.cell(key, 0).value
        washed = 1 / 0.95 if key in OF_WASHED_DESIGN else 1
        # Of a meter in 100 g: 0.9144 m and 453.59237 g.
        assert before == pytest.approx(now * washed * 4.96054648, rel=1e-8), key
