"""Planners filled at random, saved by programs, carried to other units and back: nothing is lost, nothing appears.

Every planner is drawn anew: entries as a careful person types them, at their limits and beyond,
nonsense, words of many scripts, days, arithmetic, notes, with lines inserted and sheets renamed. All
are edited and saved by one LibreOffice, some of them by Gnumeric. What the new planners hold is read
by others than the project (`independent`). A few are drawn at each push, many in a long run.
"""

import math
from dataclasses import dataclass
from pathlib import Path
from random import Random

import pytest

from long_run import LONG, drawn
from planners import rows_of
from workbookgen.book.placement import Layout
from workbookgen.book.write import write
from workbookgen.build import layout_of
from workbookgen.carry.carry import carry
from workbookgen.checking.scenarios import scenario
from workbookgen.language.quantities import DAY
from workbookgen.settings import Settings
from workbookgen.sheets.uses import USUAL
from workbookgen.units import Quantity

from .conftest import LEFT_OUT, small
from .independent import Workbook
from .programs import in_gnumeric, in_libreoffice

pytestmark = pytest.mark.programs

SEEDS = range(drawn(3, 60))  # three are one for each way of saving
LINES, MORE = 5, 7
UNITS = ("us", "us-grams", "metric")
SAVED = (".ods", ".xlsx", "Gnumeric", ".xlsx")  # one after the other
SHEETS = {"skeins": "Skeins", "fiber": "Fiber"}  # logs in which a line may be inserted
# Inputs into which arithmetic may be typed.
NUMBERED = ("skeins_wraps", "skeins_gross", "fiber_weight", "projects_wanted")
ODD = (
    "Élan",
    "e\u0301lan",
    "ß und ſ",
    "繭 まゆ",
    "шерсть",
    "صوف",
    "🐑🧶",
    "a\u00a0b",
    "a\u2003b",
    "a  b",
    " lead",
    "two\nlines",
    "x" * 300,
    "&lt;b> \"q\" 'p'",
    "_x0041_",
    "=1+1",
    "+1",
    "-",
    "@sum",
    "12,5",
    "1e400",
    1e-9,
    1e12,
    -273.15,
    0.1 + 0.2,
    1 / 3,
    123456789.123456,
    1e15,
    0.0,
)

Place = tuple[str, int]  # a field, and the line of its log


def few(units: str, lines: int, seed: int) -> Settings:
    """Settings with few lines, but for what pieces usually take: a log too short for all of it would get the rest with
    its new lines.

    At a push the first planner that is drawn has all chapters, in a long run each.
    """
    return small(units, leave_out=() if LONG or seed == 0 else LEFT_OUT, rows=rows_of(lines, uses=len(USUAL) + lines))


@dataclass(frozen=True)
class Drawn:
    """What is typed into a planner: entries and notes as it is made, then lines, arithmetic and names of sheets in
    LibreOffice."""

    units: str
    other: str  # to which it is carried
    layout: Layout
    entries: dict[str, list]
    notes: dict[Place, str]
    inserted: dict[str, int]  # log -> the line before which one is inserted, never the first
    formulas: dict[Place, str]  # in first lines
    renamed: dict[str, str]

    def moved(self, place: Place) -> Place:
        """Where something is once the lines are inserted."""
        key, row = place
        at = self.inserted.get(key.partition("_")[0], math.inf)
        return key, row + (row >= at)

    @property
    def typed(self) -> dict[Place, float | str]:
        """All that stands in the planner in the end."""
        entries = {
            (key, row): entry
            for key, column in self.entries.items()
            for row, entry in enumerate(column)
            if entry not in (None, "")
        }
        return {self.moved(place): entry for place, entry in entries.items()} | {
            place: eval(text[1:]) for place, text in self.formulas.items()
        }

    def job(self, planner: Path, saved: Path) -> dict:
        """The edits, for LibreOffice."""
        at = self.layout.placements
        cells: dict[str, dict[str, str]] = {}
        for (key, row), text in self.formulas.items():
            cells.setdefault(at[key].sheet, {})[at[key].cell(row)] = text
        lines = {SHEETS[log]: at[f"{log}_name"].row + row for log, row in self.inserted.items()}
        return {"planner": str(planner), "saved": [str(saved)], "lines": lines, "cells": cells, "renamed": self.renamed}


def draw(seed: int) -> Drawn:
    at_random = Random(seed)
    units, other = at_random.sample(UNITS, 2)
    layout = layout_of(few(units, LINES, seed))
    entries = {key: list(column) for key, column in scenario(layout.planner, seed).items()}
    keys = sorted(entries)
    for key in at_random.sample(keys, 40):
        odd = at_random.choice(ODD)
        # The other reader keeps only the time of such a day.
        is_before_days = isinstance(odd, float) and odd < 0 and layout.placements[key].field.unit is DAY
        entries[key][at_random.randrange(len(entries[key]))] = "-" if is_before_days else odd
    pinned = {
        (key, at_random.randrange(len(entries[key]))): f"ask Fern about {key}" for key in at_random.sample(keys, 6)
    }
    return Drawn(
        units,
        other,
        layout,
        entries,
        pinned,
        {log: at_random.randrange(1, LINES) for log in SHEETS if at_random.random() < 0.6},
        {(key, 0): f"={at_random.randint(2, 90)}*4.5" for key in at_random.sample(NUMBERED, 2)},
        {"Skeins": "My skeins, 2026"} if at_random.random() < 0.5 else {},
    )


@pytest.fixture(scope="module")
def planners(tmp_path_factory) -> list[tuple[Drawn, Path]]:
    """What was drawn, and the planners as the programs saved them."""
    folder = tmp_path_factory.mktemp("random")
    found, jobs = [], []
    for seed in SEEDS:
        each, way = draw(seed), SAVED[seed % len(SAVED)]
        path = folder / f"{seed}.xlsx"
        path.write_bytes(write(each.layout, each.entries, {}, each.notes))
        saved = folder / f"{seed}-saved{way if way.startswith('.') else '.xlsx'}"
        jobs.append(each.job(path, saved))
        found.append((each, saved))
    in_libreoffice(folder, jobs)
    for seed in SEEDS:
        if SAVED[seed % len(SAVED)] == "Gnumeric":
            each, saved = found[seed]
            in_gnumeric(saved, folder / f"{seed}-again.xlsx")
            found[seed] = each, folder / f"{seed}-again.xlsx"
    return found


@pytest.mark.parametrize("seed", SEEDS)
def test_carried_there_and_back_all_is_where_it_was(seed, planners, tmp_path):
    each, path = planners[seed]
    before = path.read_bytes()
    there_placed = layout_of(few(each.other, MORE, seed)).placements
    kept = [key for key in each.entries if key in there_placed]  # pounds have cells of their own in US planners alone
    there, back = tmp_path / "there.xlsx", tmp_path / "back.xlsx"
    carry(path, there, few(each.other, MORE, seed))
    carry(there, back, few(each.units, MORE, seed))
    assert path.read_bytes() == before
    for new, units in ((there, each.other), (back, each.units)):
        workbook = Workbook(new)
        listed = workbook.column("leftovers_what")
        assert unlike(each, units, kept, workbook.entries(each.entries)) == {}
        assert [entry for (key, _), entry in each.typed.items() if key not in kept and entry not in listed] == []
        notes = {place: text.partition("\n")[0] for place, text in workbook.notes(each.entries).items()}
        assert [
            place for place, text in each.notes.items() if text != notes.get(each.moved(place)) and text not in listed
        ] == []
        assert set(each.formulas.values()) <= set(listed), "arithmetic is kept on Leftovers"


def unlike(each: Drawn, units: str, keys: list[str], found: dict[Place, float | str]) -> dict[Place, tuple]:
    """What stands otherwise than it was typed, and what was never typed: place -> what is wanted, what is there."""
    wanted = {place: in_units(each, place, entry, units) for place, entry in each.typed.items() if place[0] in keys}
    return {
        place: (wanted.get(place), found.get(place))
        for place in wanted.keys() | found.keys()
        if not (
            same(wanted.get(place), found.get(place))
            or _are_days_alike(each, place, wanted.get(place), found.get(place))
        )
    }


def _are_days_alike(each: Drawn, place: Place, one, other) -> bool:
    """The other reader tells a day by the clock, to the millisecond, and one before the first of all as that one."""
    _, field = each.layout.planner.by_key[place[0]]
    return (
        field.unit is DAY
        and isinstance(one, float)
        and isinstance(other, float)
        and abs(max(one, 0.0) - other) < 1.2e-8
    )


def in_units(each: Drawn, place: Place, entry: float | str, units: str) -> float | str:
    """Converted by the registry of units alone."""
    _, field = each.layout.planner.by_key[place[0]]
    if isinstance(entry, str) or field.unit is None or field.is_text:
        return entry
    return Quantity(entry, field.unit.unit(each.units).pint).to(field.unit.unit(units).pint).magnitude


def same(one, other) -> bool:
    if isinstance(one, float) and isinstance(other, float):
        return math.isclose(one, other, rel_tol=1e-12, abs_tol=1e-300)
    return one == other
