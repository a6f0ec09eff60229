"""Whatever was typed into a planner is in the new one, or on its sheet Leftovers."""

import math
from collections import Counter

from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from long_run import drawn
from workbookgen.carry.carry import carry
from workbookgen.filled.planner import described, read_filled
from workbookgen.units import Quantity

from .conftest import filled, small, written

TEXTS = st.sampled_from(
    (
        "=6.5*16",
        "+1",
        "-",
        "@sum",
        "about a hundred",
        "12,5",
        "Clover",
        "clover",
        "Attic reel",
        "ünï — 繭",
        "a\nb",
        "  x ",
        "x" * 300,
    )
)
NUMBERS = st.one_of(st.floats(-1e7, 1e7), st.integers(-3, 500).map(float), st.sampled_from((0.1, 1 / 3, 1e-9, 46357.0)))
ENTRIES = st.one_of(st.none(), TEXTS, NUMBERS)
OLD = small(leave_out=())
KEYS = sorted(f"{block.key}_{each.key}" for block in described(OLD).blocks.values() for each in block.inputs)
NEW = st.builds(
    lambda units, lines, out: small(units, lines, reels=(), leave_out=out),
    st.sampled_from(("us", "us-grams", "metric")),
    st.sampled_from((2, 3, 4, 7)),
    st.sampled_from(
        ((), ("Guide", "Weaving"), ("Projects", "Project", "Knitting", "Pieces", "Weaving", "Time", "Cost"))
    ),
)


# Carrying takes seconds, so a failing example is told as it is and not made smaller.
@settings(
    max_examples=drawn(4, 60),
    deadline=None,
    phases=[Phase.explicit, Phase.generate],
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(typed=st.dictionaries(st.tuples(st.sampled_from(KEYS), st.integers(0, 3)), ENTRIES, max_size=60), new=NEW)
def test_every_entry_is_in_the_new_planner_or_among_its_leftovers(typed, new, tmp_path):
    entries = {key: list(column) for key, column in filled(OLD).items()}
    for (key, row), entry in typed.items():
        entries[key][row % len(entries[key])] = entry
    path = written(tmp_path / "old.xlsx", OLD, entries)
    before = path.read_bytes()
    (tmp_path / "new.xlsx").unlink(missing_ok=True)
    outcome = carry(path, tmp_path / "new.xlsx", new)
    assert path.read_bytes() == before
    old, renewed = read_filled(path), read_filled(tmp_path / "new.xlsx")
    planner = described(OLD)
    starts = {
        f"{block.key}_{each.key}": each.first(planner.system)
        for block in planner.blocks.values()
        for each in block.inputs
    }
    listed = Counter((each.sheet, each.cell) for each in outcome.leftovers)
    for key, column in entries.items():
        block, field = planner.by_key[key]
        for row, entry in enumerate(column):
            if (
                entry is None
                or entry == starts[key]
                or listed[old.place(key, row)]
                or is_as_brought_along(block, row, entries)
            ):
                continue
            assert any(same(entry, each, field, new.units) for each in renewed.entries.get(key, ())), (key, row, entry)


def is_as_brought_along(block, row, entries) -> bool:
    """Whether a line is still as the old planner brought it along: the new one has its own, rounded in its own
    units."""
    brought = getattr(block, "starts_with", ())
    return row < len(brought) and all(
        entries[f"{block.key}_{each.key}"][row] == brought[row].get(each.key) for each in block.inputs
    )


def same(entry, now, field, units) -> bool:
    """Whether a value stands there as it was, or in the new unit; converted here by the registry alone."""
    if isinstance(entry, float) and isinstance(now, float) and field.unit and not field.is_text:
        wanted = Quantity(entry, field.unit.unit(OLD.units).pint).to(field.unit.unit(units).pint).magnitude
        return math.isclose(now, wanted, rel_tol=1e-12, abs_tol=1e-300)
    return entry == now
