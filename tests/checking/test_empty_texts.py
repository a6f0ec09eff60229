"""An empty text counts as blank: whatever is left out of a planner, a formula that shows nothing may stand there.

Such cells come along with what is pasted from another spreadsheet. So all formulas are compared on drawn entries of
which nothing is blank any more: each cell that was has a formula that gives an empty text.
"""

import pytest

from long_run import SEED, drawn
from workbookgen.checking.compare import agree
from workbookgen.checking.driving import read, set_inputs
from workbookgen.checking.expected import expected_of_proofs, expected_of_scenarios
from workbookgen.checking.scenarios import WHOLE_EVERY, scenario_of_check
from workbookgen.engines import Typed, engine

EMPTY = Typed('=""')
SETS = {"formualizer": drawn(6, 40), "ironcalc": drawn(3, 40), "libreoffice": drawn(2, 40), "gnumeric": drawn(1, 40)}


def with_empty_texts(entries):
    """The entries with an empty text for every cell that is blank."""
    return {key: tuple(EMPTY if value is None else value for value in column) for key, column in entries.items()}


@pytest.fixture(scope="module")
def sets(small_layout):
    """Drawn entries of which every second is whole, and what is expected of them."""
    start = SEED - SEED % WHOLE_EVERY
    seeds = [start + turn // 2 * WHOLE_EVERY + turn % 2 for turn in range(max(SETS.values()))]
    entries = [scenario_of_check(small_layout.planner, seed) for seed in seeds]
    proofs = expected_of_proofs(small_layout.planner)
    expected = expected_of_scenarios(small_layout.planner, entries, proofs)
    return [(each, proofs | wanted) for each, wanted in zip(entries, expected, strict=True)]


@pytest.mark.parametrize(
    "name",
    [pytest.param(each, marks=pytest.mark.programs if each in ("libreoffice", "gnumeric") else ()) for each in SETS],
)
def test_what_is_left_out_may_hold_an_empty_text(name, small_layout, small_file, sets):
    with engine(name).open(small_file) as session:
        for number, (entries, expected) in enumerate(sets[: SETS[name]]):
            set_inputs(session, small_layout, with_empty_texts(entries))
            session.evaluate()
            got = read(session, small_layout.formulas)
            differing = [
                f"{key}[{row}]: expected {wanted!r}, got {value!r}"
                for key, column in got.items()
                for row, (wanted, value) in enumerate(zip(expected[key], column, strict=True))
                if not agree(wanted, value)
            ]
            assert differing == [], f"{len(differing)} cells of set {number}"
