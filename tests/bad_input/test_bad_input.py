"""A mistake is told in the line where it was made, harms no other line, and leaves with its cause."""

import pytest

from .cases import CASES
from .conftest import BEGUN, changed, differing, errors, in_engines, is_of_all

# What every line has, begun or not: what the sheet Sureness assumes, and its number.
ASSUMED = {
    "skeins_shrinkage_expected",
    "projects_shrinkage_used",
    "fiber_yield_doubt",
    "fiber_preparation_doubt",
    "fiber_second_loss",
    "fiber_second_doubt",
} | {f"{log}_own_line" for log in ("reels", "guide", "fiber", "skeins", "projects")}


@in_engines("case", CASES, lambda case: case.name)
def test_the_line_says_what_to_do_and_the_others_stay(planner, case):
    with planner.with_typed(case.typed) as shown:
        block, row = case.speaks
        assert shown[f"{block}_message", row] == case.sentence
        assert errors(shown) == {}
        assert changed(planner, shown) <= case.may_change
        assert [cell for cell in differing(planner, shown) if case.is_own(*cell)] == []
        if case.blank:
            assert planner.good[case.blank, row] is not None or planner.typed[next(iter(case.typed))] is None
            assert shown[case.blank, row] is None
    assert planner.shown() == planner.good


def test_good_lines_say_nothing(planner):
    messages = {f"{block}_message" for block in BEGUN}
    said = {cell: value for cell, value in planner.good.items() if cell[0] in messages and value}
    assert said == {} and errors(planner.good) == {}


def test_good_lines_show_what_they_are_asked_for(planner):
    for row in range(4):
        assert all(
            planner.good[f"skeins_{key}", row] for key in ("length_yd", "grist_yd_lb", "weight_class", "lot_left")
        )
    assert planner.good["skeins_length_yd", 0] == pytest.approx(208, rel=1e-12)  # 104 turns of 2 yd


def test_untouched_lines_show_nothing(planner):
    for block, first, rows in (("reels", 3, 4), ("guide", 2, 3), ("fiber", 3, 4), ("skeins", 4, 6), ("projects", 2, 3)):
        for (key, row), value in planner.good.items():
            if (
                key.startswith(f"{block}_")
                and first <= row < rows
                and not is_of_all(planner.layout, key)
                and key not in ASSUMED
            ):
                assert value is None, (key, row)


def test_a_blank_line_in_the_middle_harms_nobody(planner):
    emptied = {cell: None for cell in planner.typed if cell[0].startswith("skeins_") and cell[1] == 1}
    with planner.with_typed(emptied) as shown:
        left = {
            key for (key, row), value in shown.items() if key.startswith("skeins_") and row == 1 and value is not None
        }
        assert left <= ASSUMED
        assert errors(shown) == {}
        assert changed(planner, shown) == {("skeins", 1), ("fiber", 1), ("projects", 1)}
        assert shown["fiber_spun", 1] == 0 and shown["fiber_spun", 0] == planner.good["fiber_spun", 0]
    assert planner.shown() == planner.good


@in_engines("name", ["Cr*ss", "Cross?", "~Cross", "*", "?", "~*", "<>", ">0", "=1", "7", 'a "b" & <c>', "Größe 2"])
def test_a_strange_name_is_a_name(planner, name):
    """Programs read * ? ~ and signs at the front as patterns; here they are letters of a reel's name."""
    with planner.with_typed({("reels_name", 1): name, ("skeins_reel", 1): name}) as shown:
        assert errors(shown) == {}
        changes = {cell: value for cell, value in shown.items() if value != planner.good[cell]}
        assert changes == {("reels_listed", 1): name, ("skeins_from_reel", 1): name}
    assert planner.shown() == planner.good


def test_a_pattern_beside_what_it_would_match(planner):
    """One reel is called C*s: who chooses Cross gets Cross, and who chooses C*s gets that."""
    typed = {("reels_name", 2): "C*s", ("reels_name", 1): "Cross", ("skeins_reel", 3): "C*s"}
    with planner.with_typed(typed) as shown:
        assert shown["skeins_message", 1] is None and shown["skeins_message", 3] is None
        assert shown["skeins_loop", 1] == planner.good["skeins_loop", 1]
        assert shown["skeins_loop", 3] == planner.good["skeins_loop", 3] != shown["skeins_loop", 1]


def test_capitals_do_not_matter_in_a_choice(planner):
    with planner.with_typed({("skeins_reel", 1): "CROSS"}) as shown:
        assert differing(planner, shown) == [("skeins", 1, "from_reel")]  # where the choice is said again
        assert shown["skeins_from_reel", 1] == "CROSS"


def test_a_whole_column_of_nonsense(planner):
    typed = {(f"skeins_{key}", row): "12,5" for key in ("wraps", "gross", "tare", "counted_wpi") for row in range(6)}
    with planner.with_typed(typed) as shown:
        assert errors(shown) == {}
        assert all(shown["skeins_message", row] for row in range(6))
        assert all(shown["skeins_length_yd", row] is None for row in range(6))
        assert shown["fiber_spun", 0] == 0 and shown["reels_loop", 0] == 72
    assert planner.shown() == planner.good


@in_engines("value", ["12,5", "*", -1.0, 0.0, 1e12, 1e-12, "=1/0", "x" * 300], lambda value: str(value)[:9])
def test_the_same_nonsense_in_every_input(planner, value):
    """Whatever it is: no error anywhere, and every log line that was touched says something or is fine with it."""
    with planner.with_typed(dict.fromkeys(planner.typed, value)) as shown:
        assert errors(shown) == {}
        assert all(shown["skeins_message", row] for row in range(6))
    assert planner.shown() == planner.good
