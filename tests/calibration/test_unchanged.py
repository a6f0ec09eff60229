"""What must not matter does not: the order of lines, the names, what others own, and the units in which one types.

No truth is drawn here, and nothing is taken from the planner's model: one household is typed in two ways.
"""

from functools import cache

import numpy as np
import pytest
from pytest import approx

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.language.entries import starting_entries
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import Log
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner
from workbookgen.unit_systems import UNIT_SYSTEMS
from workbookgen.units import Quantity

from .households import Household

HOUSEHOLDS = 24
NAMED = ("reels", "fiber", "samples", "projects", "skeins", "designs", "components")
NO_NAMES = ("kind", "state", "gone")
# They tell where something stands, or show what stands first; the times of a project stand beside the project. The
# order of a project's skeins tells whether its hand changes.
OF_THE_SCALE = {"skeins_coarse", "skein_sums_coarse"}  # in what steps a scale shows weights, depends on its unit
OF_PLACES = ("_line_of_", "first_lots_", "first_projects_", "times_", "_order", "_drift", "_beyond_chance")


class Exact(Household):
    """Types every figure in full, so that the same is typed in any unit system."""

    def typed(self, log: str, key: str, value):
        unit = self.planner.by_key[f"{log}_{key}"][1].unit
        return value if isinstance(value, str) or unit is None else float(value) / unit.unit(self.planner.system).value


@cache
def described(system: str = "metric"):
    return planner(Settings(units=system))


def entries(planner, logs: dict[str, list[dict]]):
    return entries_with(planner, logs)


def households(kind: type[Household] = Household, system: str = "metric", seed: int = 1) -> list[dict[str, list[dict]]]:
    return [
        {
            log: list(records)
            for log, records in kind(described(system), np.random.default_rng([seed, number])).logs.items()
        }
        for number in range(HOUSEHOLDS)
    ]


def shown(typed: list[dict[str, list[dict]]], system: str = "metric") -> list[dict[str, tuple]]:
    """Every result of these households, and their messages."""
    these = described(system)
    keys = [key for key, (_, each) in these.by_key.items() if isinstance(each, Result)]
    keys += [f"{log}_message" for log in NAMED]
    return expected_of_keys(these, [entries(these, logs) for logs in typed], keys)


@cache
def as_typed() -> tuple[dict, ...]:
    return tuple(shown(households()))


def alike(one, other) -> bool:
    if one in (None, "") or other in (None, ""):
        return one in (None, "") and other in (None, "")
    return one == other if isinstance(one, str) else other == approx(one, rel=1e-9, abs=1e-12)


def test_the_order_of_lines_does_not_matter():
    draw = np.random.default_rng(3)
    typed = households()
    orders = [{log: draw.permutation(len(records)) for log, records in logs.items()} for logs in typed]
    moved = [
        {log: [records[place] for place in order[log]] for log, records in logs.items()}
        for logs, order in zip(typed, orders, strict=True)
    ]
    told = 0
    for before, after, order in zip(as_typed(), shown(moved), orders, strict=True):
        for key, column in before.items():
            if any(each in key for each in OF_PLACES):
                continue
            holder = described().by_key[key][0] if key in described().by_key else described().automatic[key][0]
            places = order.get(holder.key, ()) if isinstance(holder, Log) and len(column) > 1 else ()
            wanted = [*(column[place] for place in places), *column[len(places) :]]
            assert all(map(alike, wanted, after[key])), key
            told += sum(each not in (None, "") for each in wanted)
    assert told > 1_000 * HOUSEHOLDS


def renamed(logs: dict[str, list[dict]], names: set[str], new) -> dict[str, list[dict]]:
    return {
        log: [
            {key: new(value) if value in names and key not in NO_NAMES else value for key, value in record.items()}
            for record in records
        ]
        for log, records in logs.items()
    }


def names_of(logs: dict[str, list[dict]]) -> set[str]:
    return {record["name"] for log in NAMED for record in logs.get(log, ()) if "name" in record}


def test_names_do_not_matter():
    """Every number stays; only texts speak of what was renamed."""
    other = [renamed(logs, names_of(logs), lambda name: f"Y{name[::-1]}") for logs in households()]
    for before, after in zip(as_typed(), shown(other), strict=True):
        for key, column in before.items():
            assert all(isinstance(one, str) or alike(one, two) for one, two in zip(column, after[key], strict=True)), (
                key
            )


def test_what_another_spins_does_not_matter():
    """A second household in the same planner, with reels, lots and projects of its own. What one's own fleeces of a
    breed tell is meant to be shared, so the guide and what follows from its lots is left aside."""
    typed = households()
    others = [renamed(logs, names_of(logs), lambda name: f"Z {name}") for logs in households(seed=2)]
    both = [
        {log: [*mine.get(log, ()), *theirs.get(log, ())] for log in mine | theirs}
        for mine, theirs in zip(typed, others, strict=True)
    ]
    for logs, before, after in zip(typed, as_typed(), shown(both), strict=True):
        for key, column in before.items():
            holder = described().by_key[key][0] if key in described().by_key else described().automatic[key][0]
            if not isinstance(holder, Log) or holder.key == "guide" or any(each in key for each in OF_PLACES):
                continue
            mine = len(logs.get(holder.key, ()))
            assert all(map(alike, column[:mine], after[key][:mine])), key


def in_units_of(system: str, key: str, column: tuple) -> list:
    """A column of the metric planner as another one shows it, converted by pint."""
    there, here = (described(each).by_key[key][1].unit for each in ("metric", system))
    if there is None or there.unit("metric") == here.unit(system):
        return list(column)
    before, after = there.unit("metric").pint, here.unit(system).pint
    return [Quantity(each, before).m_as(after) if isinstance(each, float) else each for each in column]


@pytest.mark.parametrize("system", [each for each in UNIT_SYSTEMS if each != "metric"])
def test_the_units_do_not_matter(system):
    """The same quantities typed in full, and the same figures to start with, give the same results."""
    metric, other = described(), described(system)
    both = metric.by_key.keys() & other.by_key.keys()
    start = {
        key: tuple(in_units_of(system, key, column))
        for key, column in starting_entries(metric).items()
        if key in both and isinstance(metric.by_key[key][1], Input)
    }
    keys = [key for key in both - OF_THE_SCALE if isinstance(metric.by_key[key][1], Result)]
    these, those = (
        expected_of_keys(planner, [begun | typed_in(planner, logs) for logs in households(Exact, units)], keys)
        for planner, begun, units in (
            (metric, starting_entries(metric), "metric"),
            (other, starting_entries(other) | start, system),
        )
    )
    told = 0
    for before, after in zip(these, those, strict=True):
        for key in keys:
            wanted = in_units_of(system, key, before[key])
            for one, two in zip(wanted, after[key], strict=True):
                assert isinstance(one, str) or isinstance(two, str) or alike(one, two), (key, one, two)
                told += one is not None
    assert told > 1_000 * HOUSEHOLDS


def typed_in(planner, logs: dict[str, list[dict]]) -> dict:
    """Of the logs in which these households type, the columns."""
    return {key: column for key, column in entries(planner, logs).items() if planner.by_key[key][0].key in logs}
