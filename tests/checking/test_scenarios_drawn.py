"""Scenarios: the same for the same seed, and between them everything that may be typed."""

import pytest

import described
from workbookgen.build import DRAWN, LINES, sets_to_try
from workbookgen.checking.expected import expected_of_scenarios
from workbookgen.checking.scenarios import NONSENSE, scenario
from workbookgen.language.automatic import MESSAGE
from workbookgen.language.domains import Choice, Name, Note, Number
from workbookgen.language.entries import starting_entries
from workbookgen.language.fields import Result
from workbookgen.language.sentences import ASKING, UNKNOWN
from workbookgen.sheets.planner import planner

SEEDS = range(150)


@pytest.fixture(scope="module")
def whole():
    return described.whole()


@pytest.fixture(scope="module")
def drawn(whole):
    return [scenario(whole, seed) for seed in SEEDS]


def values(drawn, key):
    return [value for entries in drawn for value in entries[key]]


def test_the_same_seed_gives_the_same_values(whole):
    assert scenario(whole, 7) == scenario(whole, 7)


def test_other_seeds_give_other_values(drawn):
    assert len({str(entries) for entries in drawn}) == len(SEEDS)


def test_every_input_gets_one_value_a_record(whole, drawn):
    wanted = {key: len(column) for key, column in starting_entries(whole).items()}
    assert {key: len(column) for key, column in drawn[0].items()} == wanted


def test_a_real_planner_is_drawn_for_whole(small):
    real = planner(small)
    wanted = {key: len(column) for key, column in starting_entries(real).items()}
    assert {key: len(column) for key, column in scenario(real, 1).items()} == wanted


def faults(block, record, listed) -> int:
    return sum(
        record[each.key] is not None
        and not (
            each.domain.accepts(record[each.key], listed)
            if isinstance(each.domain, Choice)
            else each.domain.accepts(record[each.key])
        )
        for each in block.inputs
    )


def test_all_moods_appear(drawn):
    moods = {"not begun": 0, "careful": 0, "one slip": 0, "wild": 0}
    for entries in drawn:
        for row in range(described.SKEINS.rows):
            record = {each.key: entries[f"skeins_{each.key}"][row] for each in described.SKEINS.inputs}
            wrong = faults(described.SKEINS, record, entries["reels_name"])
            if all(value is None for value in record.values()):
                moods["not begun"] += 1
            else:
                moods[("careful", "one slip")[wrong] if wrong < 2 else "wild"] += 1
    records = len(SEEDS) * described.SKEINS.rows
    assert all(moods.values()), moods
    assert moods["careful"] > 0.6 * records, "most records are such as a person types"
    assert moods["wild"] > 0.03 * records and moods["not begun"] > 0.01 * records


def test_edges_and_what_lies_beyond_them_appear(drawn):
    seen = set(values(drawn, "skeins_rest"))
    domain = described.SKEINS.by_key["rest"].domain
    assert domain == Number(least=0, below=100)
    assert {0.0, 100.0, -1.0} <= seen
    assert any(value is not None and isinstance(value, float) and value > 100 for value in seen)
    assert {0.0, 5000.0, 5000 * 1.001} <= set(values(drawn, "skeins_wraps"))


def test_numbers_are_spread_over_their_orders(drawn):
    careful = [value for value in values(drawn, "reels_loop") if isinstance(value, float) and 0 < value <= 1000]
    assert min(careful) < 2 and max(careful) > 300
    assert len(set(careful)) > len(careful) / 2


def test_shares_lie_between_their_limits(drawn):
    inside = [value for value in values(drawn, "plan_margin") if isinstance(value, float) and 0 <= value <= 2]
    assert min(inside) < 0.3 and max(inside) > 1.7


def test_blanks_and_nonsense_appear(drawn):
    for key in ("skeins_wraps", "skeins_rest", "plan_wanted"):
        seen = values(drawn, key)
        assert None in seen and set(NONSENSE) & {value for value in seen if isinstance(value, str)}


def test_names_are_too_long_doubled_and_of_other_signs(drawn):
    domain = described.REELS.by_key["name"].domain
    assert isinstance(domain, Name)
    seen = values(drawn, "reels_name")
    assert {"x" * (domain.longest + 1), "*", 'a "b" & <c>'} <= set(seen)
    assert any(
        len(set(filter(None, entries["reels_name"]))) < len(list(filter(None, entries["reels_name"])))
        for entries in drawn
    )
    assert isinstance(described.SKEINS.by_key["note"].domain, Note)
    assert "x" * 21 in values(drawn, "skeins_note")


def test_choices_are_of_the_list_and_off_it(drawn):
    on = off = otherwise_written = 0
    for entries in drawn:
        names = [name for name in entries["reels_name"] if isinstance(name, str)]
        for value in entries["skeins_reel"]:
            if isinstance(value, str):
                on += value in names
                off += value.lower() not in [name.lower() for name in names]
                otherwise_written += value not in names and value.lower() in [name.lower() for name in names]
    assert on > 100 and off > 5 and otherwise_written > 3


def test_values_are_what_a_cell_can_hold(drawn):
    kinds = {type(value) for entries in drawn for column in entries.values() for value in column}
    assert kinds == {float, str, type(None)}


def test_what_a_new_planner_is_tried_with_fills_its_pages(layout):
    """A cell that stays blank was compared with nothing: at least 19 of 20 results show something in one of the
    sets."""
    shown = expected_of_scenarios(layout.planner, sets_to_try(layout, DRAWN))
    results = [each.key for each in layout.formulas if isinstance(each.field, Result) and each.key in shown[0]]
    blank = [key for key in results if all(value is None for entries in shown for value in entries[key])]
    assert len(results) > 700 and len(blank) <= 0.05 * len(results), blank


def test_whole_lines_break_few_rules(layout):
    """Drawn again where they do; what is wrong only beside another line stays, and what is only unlike the usual.

    A line that waits for another, as a design for its components, breaks no rule.
    """
    [shown] = expected_of_scenarios(layout.planner, [scenario(layout.planner, 1, LINES, is_whole=True)])
    lines = [
        message
        for block in layout.planner.blocks.values()
        if block.inputs
        for message in shown[f"{block.key}_{MESSAGE.key}"]
    ]
    told = [message for message in lines if message is not None and not message.startswith((ASKING, UNKNOWN))]
    assert len(told) < 0.05 * len(lines)
