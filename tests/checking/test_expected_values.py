"""Expected values of a small planner, worked out here by hand, and where a cell must be blank."""

from dataclasses import replace

import pytest

import described
from entries import entries_with
from workbookgen.checking.expected import expected_values
from workbookgen.errors import DescriptionError
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.language.rules import Rule

INCH, YARD, OUNCE = 0.0254, 0.9144, 28.349523125  # definitions


def filled(reels=(), skeins=(), plan=(), system="metric"):
    planner = described.whole(system)
    entries = entries_with(planner, {"reels": reels, "skeins": skeins, "plan": plan})
    return expected_values(planner, entries)


CLOCK, NIDDY = {"name": "Clock", "loop": 180.0}, {"name": "Niddy", "loop": 150.0}


def test_a_record_by_hand():
    values = filled(
        [CLOCK, NIDDY],
        [{"reel": "Clock", "wraps": 100.0, "rest": 1.5, "start": 80.0, "end": 60.0, "counted": 12.0}],
        [{"wanted": 200.0}],
    )
    assert values["reels_hundred"][:2] == (pytest.approx(180.0), pytest.approx(150.0))  # 100 turns of 1.8 m and 1.5 m
    assert values["skeins_loop"][0] == pytest.approx(180.0)
    assert values["skeins_length"][0] == pytest.approx(100 * 1.8 + 1.5)
    assert values["reels_wound"] == (pytest.approx(181.5), 0.0, None)
    assert values["skeins_kept"][0] == pytest.approx(0.75)
    assert (values["skeins_wpi"][0], values["skeins_size"][0]) == (pytest.approx(12.0), "middle")
    assert values["plan_need"] == (pytest.approx(220.0),)  # an empty margin means a tenth


def test_the_same_record_in_yards_and_inches():
    values = filled(
        [{"name": "Clock", "loop": 72.0}],
        [{"reel": "clock", "wraps": 100.0, "rest": 2.0, "start": 4.0, "end": 3.0}],
        [{"wanted": 200.0, "margin": 0.0, "usual": 22.0}],
        system="us",
    )
    assert values["reels_hundred"][0] == pytest.approx(100 * 72 * INCH / YARD)  # 200 yd
    assert values["skeins_length"][0] == pytest.approx(202.0)
    assert values["skeins_kept"][0] == pytest.approx(0.75)
    assert (values["skeins_wpi"][0], values["skeins_size"][0]) == (pytest.approx(22.0), "fine")
    assert values["plan_need"] == (pytest.approx(200.0),)


def test_several_records_of_one_reel_add_up():
    skeins = [{"reel": name, "wraps": wraps} for name, wraps in (("Clock", 10.0), ("Niddy", 20.0), ("CLOCK", 30.0))]
    assert filled([CLOCK, NIDDY], skeins)["reels_wound"] == (pytest.approx(40 * 1.8), pytest.approx(20 * 1.5), None)


def test_nothing_typed_nothing_shown():
    values = filled()
    counts = {
        f"{log}_{told}" for log in ("reels", "skeins") for told in ("open", "questions", "unfinished", "spoiled")
    }  # lines that are wrong, cells that fail
    lines = {f"{log}_own_line": (0.0,) * len(values[f"{log}_own_line"]) for log in ("reels", "skeins")}
    shown = {key: column for key, column in values.items() if set(column) != {None}}
    assert shown == dict.fromkeys(counts, (0.0,)) | lines
    of_all = {f"skeins_{told}": 1 for told in ("first", "open", "questions", "unfinished", "spoiled")}
    each = (
        "loop",
        "length",
        "wound_on",
        "kept",
        "wpi",
        "size",
        "message",
        "mark",
        "filled",
        "own_line",
        "line_of_reel",
    )
    assert {key: len(column) for key, column in values.items() if key.startswith("skeins")} == of_all | {
        f"skeins_{key}": 4 for key in each
    }


@pytest.mark.parametrize(
    ("change", "blank"),
    [
        ({"wraps": None}, {"length"}),
        ({"wraps": -1.0}, {"length"}),
        ({"wraps": 5001.0}, {"length"}),
        ({"wraps": "ten"}, {"length"}),
        ({"wraps": True}, {"length"}),
        ({"rest": "2 m"}, {"length"}),  # it may be missing, but not be wrong
        ({"rest": 100.0}, {"length"}),
        ({"reel": None}, {"loop", "length", "wound_on"}),
        ({"reel": "Other"}, {"loop", "length", "wound_on"}),
        ({"reel": 7.0}, {"loop", "length", "wound_on"}),
        ({"reel": "Loopless"}, {"loop", "length"}),
        ({"end": None}, {"kept"}),
        ({"end": 90.0}, {"kept"}),  # more than the fiber: the condition does not hold
        ({"counted": 0.0}, {"wpi", "size"}),
        ({"note": "x" * 21}, set()),  # nothing is worked out from a note
    ],
)
def test_blank_where_something_needed_is_missing_or_wrong(change, blank):
    good = {"reel": "Clock", "wraps": 10.0, "rest": 1.0, "start": 80.0, "end": 60.0, "counted": 12.0}
    values = filled([CLOCK, {"name": "Loopless"}], [good | change, good])
    for key in ("loop", "length", "wound_on", "kept", "wpi", "size"):
        assert (values[f"skeins_{key}"][0] is None) == (key in blank), key
        assert values[f"skeins_{key}"][1] is not None, "one record's fault does not touch another"


def test_a_name_that_stands_twice_finds_no_record():
    values = filled(
        [CLOCK, {"name": "clock", "loop": 150.0}, NIDDY],
        [{"reel": "Clock", "wraps": 1.0}, {"reel": "Niddy", "wraps": 1.0}],
    )
    assert values["skeins_loop"][:2] == (None, pytest.approx(150.0))


def test_a_refusal_of_the_library_blanks_only_the_record_it_is_meant_for():
    # share_kept refuses a whole column in which one record gains weight; the condition is taken off to let it.
    from dataclasses import replace

    skeins = replace(
        described.SKEINS,
        groups=(
            described.SKEINS.groups[0],
            replace(
                described.SKEINS.groups[1],
                fields=tuple(
                    replace(each, only_if="") if each.key == "kept" else each
                    for each in described.SKEINS.groups[1].fields
                ),
            ),
        ),
    )
    planner = described.planner_of(described.REELS, skeins, described.PLAN)
    records = [{"start": 80.0, "end": end} for end in (40.0, 90.0, 60.0, 81.0)]
    entries = entries_with(planner, {"skeins": records})
    assert expected_values(planner, entries)["skeins_kept"] == (0.5, None, 0.75, None)


def test_an_absent_word_is_left_out_of_the_call():
    # Counted wins over usual; neither known, nothing shown.
    skeins = [{"counted": 12.0}, {"wraps": 1.0}]
    assert filled(skeins=skeins, plan=[{"usual": 25.0}])["skeins_wpi"] == tuple(
        map(pytest.approx, (12.0, 25.0, 25.0, 25.0))
    )
    assert filled(skeins=skeins)["skeins_wpi"] == (pytest.approx(12.0), None, None, None)


def test_the_starting_planner_expects_what_its_reels_are(small_layout):
    values = expected_values(small_layout.planner, starting_entries(small_layout.planner))
    # 4 * sqrt(15**2 + 7**2 + 7**2) in, of the niddy-noddy in the fixture's settings.
    assert values["reels_loop"] == (pytest.approx(72.0), pytest.approx(4 * 323**0.5), None, None)
    assert values["reels_basis"] == ("rated", "from height and arms", None, None)
    assert set(values) == {each.key for each in small_layout.formulas}


REEL = {"name": "Clock", "loop": 180.0}
SKEIN = {"reel": "Clock", "wraps": 10.0}


@pytest.mark.parametrize(
    ("skein", "message"),
    [
        ({}, None),
        (SKEIN, None),
        ({"note": "washed"}, "Still to fill in: On the reel."),
        ({"reel": "Clock"}, "Still to fill in: Wraps."),
        (SKEIN | {"wraps": "ten"}, "Wraps: type a number from 0 up to 5,000, in digits."),
        (SKEIN | {"wraps": 5001.0}, "Wraps: type a number from 0 up to 5,000, in digits."),
        (SKEIN | {"rest": 100.0}, "Rest: type a number from 0 below 100 m, in digits, or empty it."),
        (SKEIN | {"reel": "Other"}, "On the reel: choose one of the names on the sheet Reels."),
        (SKEIN | {"note": "x" * 21}, "Note: type words, up to 20 letters, or empty it."),
        (SKEIN | {"start": 10.0, "end": 11.0}, "Yarn: more than the fiber."),
        (SKEIN | {"start": 10.0, "end": 10.0}, None),
        # What is wrong comes before a broken rule, and both before what is missing.
        ({"reel": "Clock", "start": 10.0, "end": 11.0}, "Yarn: more than the fiber."),
        (
            {"reel": "Clock", "start": 10.0, "end": 11.0, "counted": -1.0},
            "Counted: type a number above 0 up to 1,000 per in, in digits, or empty it.",
        ),
        ({"wraps": -1.0, "reel": "Other"}, "On the reel: choose one of the names on the sheet Reels."),
    ],
)
def test_a_line_says_the_first_thing_that_is_wrong_in_it(skein, message):
    assert filled([REEL], [skein])["skeins_message"] == (message, None, None, None)


@pytest.mark.parametrize(
    ("reels", "messages"),
    [
        (
            [REEL, {"name": "cLOCK", "loop": 1.0}],
            ("Reel: another line has this name; give each its own.",) * 2 + (None,),
        ),
        ([{"loop": 1.0}], ("Still to fill in: Reel.", None, None)),
        ([{"name": "x" * 13}], ("Reel: type a name of up to 12 letters.", None, None)),
        ([{"name": 7.0, "loop": 1.0}], ("Reel: type a name of up to 12 letters.", None, None)),
        ([{"name": "Clock"}], ("Still to fill in: Loop.", None, None)),
    ],
)
def test_messages_of_names(reels, messages):
    assert filled(reels)["reels_message"] == messages


@pytest.mark.parametrize(
    ("margin", "message"),
    [
        (0.5, None),
        (2.5, "Margin: type a percentage from 0% up to 200%, or empty it."),
        ("15 percent", "Margin: type a percentage from 0% up to 200%, or empty it."),
    ],
)
def test_messages_of_a_card(margin, message):
    assert filled(plan=[{"wanted": 1.0, "margin": margin}])["plan_message"] == (message,)


NEW = {"plying_strands": 2.0, "plying_share": 0.6667, "plying_direction": "Z"}
ASKED = "Still to fill in: Twist of the singles."


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({}, None),
        ({"plying_direction": "z"}, None),
        (dict.fromkeys(NEW), None),
        ({"plying_strands": 3.0}, ASKED),
        ({"plying_direction": "S"}, ASKED),
        ({"plying_share": None}, ASKED),
        ({"plying_grist": 1000.0}, ASKED),
        ({"plying_singles": 9.0}, None),
        ({"plying_singles": 9.0, "plying_share": None}, "Still to fill in: Share of the singles' twist."),
        ({"plying_share": "half"}, "Share of the singles' twist: type a number above 0 up to 2, in digits."),
    ],
)
def test_a_card_asks_for_nothing_until_something_of_its_own_is_entered(small_layout, changes, message):
    planner = small_layout.planner
    starting = starting_entries(planner)
    assert {key: starting[key] for key in NEW} == {key: (value,) for key, value in NEW.items()}
    entries = starting | {key: (value,) for key, value in changes.items()}
    assert expected_values(planner, entries)["plying_message"] == (message,)


def test_a_new_planner_asks_for_nothing(small_layout):
    planner = small_layout.planner
    values = expected_values(planner, starting_entries(planner))
    assert [key for key, column in values.items() if key.endswith("_message") and any(column)] == []


def broken(change) -> str:
    """What is said of a planner whose card was changed, when a length is typed into it."""
    planner = described.planner_of(described.REELS, described.SKEINS, change(described.PLAN))
    with pytest.raises(DescriptionError) as refused:
        dict(expected_values(planner, entries_with(planner, {"plan": [{"wanted": 200.0}]})))
    return str(refused.value)


def test_what_nobody_asks_for_is_not_worked_out():
    fails = described.planner_of(
        described.REELS, described.SKEINS, need_by(lambda wanted, margin: 1 / 0)(described.PLAN)
    )
    entries = entries_with(fails, {"plan": [{"wanted": 200.0}]})
    values = expected_values(fails, with_records(fails, entries, "reels", [CLOCK]))
    assert values["reels_hundred"][0] == pytest.approx(180.0)
    assert "plan_need" in set(values) and len(values) == len(list(values))
    with pytest.raises(ZeroDivisionError):
        values["plan_need"]
    with pytest.raises(KeyError):
        values["plan_wanted"]  # an input is no formula


def need_by(reference):
    """The card, its answer worked out by another reference."""

    def change(card):
        typed, worked_out = card.groups
        return replace(
            card, groups=(typed, replace(worked_out, fields=(replace(worked_out.fields[0], reference=reference),)))
        )

    return change


@pytest.mark.parametrize(
    "reference, sentence",
    [
        (lambda wanted, margin: 3.0, "it gives a plain number, and is shown in meter."),
        (lambda wanted, margin: wanted * wanted, "Cannot convert from"),
        (lambda wanted, margin: wanted.no_such, "no_such"),
    ],
)
def test_a_reference_that_fails_is_told_with_its_field(reference, sentence):
    said = broken(need_by(reference))
    assert said.startswith("field plan_need: its reference ") and sentence in said


def test_a_rule_that_asks_for_what_is_not_there_is_told_with_its_block():
    rule = Rule("wanted > 1", lambda values: values["wnated"] > 1, "Wanted: too much.")
    assert (
        broken(lambda card: replace(card, rules=(rule,)))
        == "block plan: the rule 'Wanted: too much.' cannot be tried: its `broken` fails with KeyError: 'wnated'."
    )
