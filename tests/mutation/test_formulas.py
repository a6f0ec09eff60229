"""All changed formulas, which the check finds by their text, and a sample of them, drawn with a seed, by values alone.

`python -m tests.mutation.formulas` tries every one, and takes minutes.
"""

import random

import pytest

from long_run import LONG, SEED, drawn
from workbookgen.build import layout_of
from workbookgen.checking.compare import agree
from workbookgen.checking.driving import read, set_inputs
from workbookgen.checking.expected import expected_of_proofs, expected_of_scenarios
from workbookgen.checking.formula_spelling import spelled
from workbookgen.settings import Settings

from .changes import changes
from .formulas import ROWS, bench, has_inputs, mutants, told_apart, undetected
from .shared_yarns import shared

SAMPLE, SCENARIOS, SEARCH = drawn(500, 1500), drawn(200, 200), drawn(40, 60)
FOUND = 0.75 if LONG else 0.70
# And what a sample may stray by; what is left is mostly the same in other words.
FOUND_AT_LEAST = FOUND - 3 * (FOUND * (1 - FOUND) / SAMPLE) ** 0.5
MISSED_AT_MOST = 0.08  # differed from the good formula in as many other sets of inputs


@pytest.fixture(scope="module")
def layout():
    return layout_of(Settings(rows=ROWS))


@pytest.fixture(scope="module")
def every(layout):
    """All changed formulas, nearly a hundred thousand."""
    return mutants(layout)


@pytest.fixture(scope="module")
def tried(every):
    return random.Random(2026).sample([each for each in every if has_inputs(each)], SAMPLE)


def test_most_changes_are_found_by_value_and_few_are_missed(layout, tried):
    left = undetected(layout, tried, SCENARIOS)
    missed = told_apart(layout, left, SEARCH, seed=100_000)
    assert len(left) < (1 - FOUND_AT_LEAST) * SAMPLE
    assert len(missed) < MISSED_AT_MOST * SAMPLE, [str(each) for each in missed[:20]]


def test_every_change_is_found_by_its_text(every):
    """In every distinct formula of the planner: that is how the check holds a file's formulas against ours. At a
    push every fourth change."""
    assert len(every) > 30_000
    every = every if LONG else every[SEED % 4 :: 4]
    good = {(each.placement.key, each.row): each.placement.formulas[each.row] for each in every}
    good = {place: spelled(text) for place, text in good.items()}
    assert [str(each) for each in every if spelled(each.change.formula) == good[each.placement.key, each.row]] == []


def test_good_formulas_are_not_found(layout, every):
    """The bench itself finds nothing wrong with a formula that was not changed."""
    tried = [
        type(each)(each.placement, each.row, type(each.change)("none", "", each.placement.formulas[each.row]))
        for each in every[::200]
    ]
    assert tried and undetected(layout, tried, 4) == tried


def test_every_formula_is_right_where_projects_share_yarns(layout):
    """Blind drawing seldom comes there: the least sure of four strands, and what other projects leave of a lot."""
    proofs = expected_of_proofs(layout.planner)
    seen = set()
    with bench(layout, []) as planner:
        together = [shared(layout.planner, seed) for seed in range(12)]
        for entries, expected in zip(together, expected_of_scenarios(layout.planner, together, proofs), strict=True):
            wanted = proofs | expected
            set_inputs(planner.session, layout, entries)
            planner.session.evaluate()
            shown = read(planner.session, layout.formulas)
            assert [
                (key, row)
                for key, column in shown.items()
                for row, value in enumerate(column)
                if not agree(wanted[key][row], value)
            ] == []
            seen |= {key for key, column in wanted.items() if any(value not in (None, "", 0.0) for value in column)}
    assert {
        f"projects_part_{part}_{what}" for part in (1, 2, 3, 4) for what in ("claim", "left", "come_doubt", "unused")
    } <= seen
    assert {
        "projects_lesser_2_doubt",
        "projects_lesser_3_doubt",
        "projects_lesser_4_doubt",
        "projects_advice",
        "projects_scarcest",
    } <= seen
    assert {f"projects_part_{part}_before" for part in (2, 3, 4)} & seen, "strands that share their lots"


@pytest.mark.parametrize(
    ("kind", "changed"),
    [
        ("another constant", '=IF(ISNUMBER($A7),SUM(Reels!$B$7:$B$9)*0.923544,"")'),
        ("another unit", '=IF(ISNUMBER($A7),SUM(Reels!$B$7:$B$9)*0.3048,"")'),
        ("another sign", '=IF(ISNUMBER($A7),SUM(Reels!$B$7:$B$9)/0.9144,"")'),
        ("a cell one row off", '=IF(ISNUMBER($A8),SUM(Reels!$B$7:$B$9)*0.9144,"")'),
        ("a range one row short", '=IF(ISNUMBER($A7),SUM(Reels!$B$7:$B$8)*0.9144,"")'),
        ("the column beside it", '=IF(ISNUMBER($A7),SUM(Reels!$C$7:$C$9)*0.9144,"")'),
        ("a missing guard", "=(SUM(Reels!$B$7:$B$9)*0.9144)"),
        ("another function", '=IF(ISNUMBER($A7),COUNT(Reels!$B$7:$B$9)*0.9144,"")'),
    ],
)
def test_kinds_of_change(kind, changed):
    made = {each.formula: each.kind for each in changes('=IF(ISNUMBER($A7),SUM(Reels!$B$7:$B$9)*0.9144,"")')}
    assert made[changed] == kind
