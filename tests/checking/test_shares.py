"""A check whose drawn sets are divided among processes: quicker, and otherwise as if one had tried them all."""

import os
import signal
from functools import partial

import pytest

from workbookgen.build import layout_of
from workbookgen.checking import check as checking
from workbookgen.checking.check import FileToCheck, check, shares
from workbookgen.checking.trial import MOST_FINDINGS
from workbookgen.errors import FileError, PlannerError

from .mutants import edited

SETS = 12  # that two processes divide


@pytest.fixture(autouse=True)
def three_cores(monkeypatch):
    monkeypatch.setattr(checking, "cores", lambda: 3)


def spoiled(file, layout, path, *keys: str):
    """A planner in which some fields' formulas give texts instead of numbers: wrong in the sets that show something
    there."""
    placed = [(layout.placements[key], row) for key in keys for row in range(layout.placements[key].rows)]
    edited(file, path, layout, {(each.sheet, each.cell(row)): f'{each.formulas[row]}&""' for each, row in placed})
    return path


def test_the_outcome_is_that_of_one_process(little, little_file, little_layout, tmp_path):
    wrong = spoiled(little_file, little_layout, tmp_path / "wrong.xlsx", "reels_hundred")
    engines = ["formualizer", "ironcalc"]
    alone, steps = check(FileToCheck(wrong, little_layout), engines, SETS, seed=3), []
    divided = check(
        FileToCheck(wrong, little_layout, lay_out=partial(layout_of, little)),
        engines,
        SETS,
        seed=3,
        step=lambda: steps.append(1),
    )
    assert divided.as_json() | {"seconds": 0} == alone.as_json() | {"seconds": 0}
    assert 2 * SETS < len(alone.findings) < 2 * MOST_FINDINGS  # of early sets and late ones, in both engines
    assert len(steps) == 2 * (1 + SETS) and divided.comparisons == little_layout.formula_cells * len(steps)


def test_many_findings_are_cut_off_where_one_process_would(little, little_file, little_layout, tmp_path):
    wrong = spoiled(little_file, little_layout, tmp_path / "wrong.xlsx", "skeins_length_yd", "reels_loop")
    alone, divided = (
        check(FileToCheck(wrong, little_layout, lay_out=lay_out), scenarios=SETS)
        for lay_out in (None, partial(layout_of, little))
    )
    assert alone.as_json() | {"seconds": 0} == divided.as_json() | {"seconds": 0}
    assert len(alone.findings) == MOST_FINDINGS and alone.engines[0].refused > 0


@pytest.mark.parametrize(("sets", "processes"), [(20, 1), (20, 3), (7, 2), (0, 1)])
def test_shares_are_alike_and_in_order(sets, processes):
    seeds = range(5, 5 + sets)
    divided = shares(seeds, processes)
    assert [seed for share in divided for seed in share] == list(seeds)
    assert len(divided) == processes and max(map(len, divided)) - min(map(len, divided)) <= 1


def test_few_sets_and_large_planners_are_not_divided(little_layout, monkeypatch):
    assert [checking._processes(little_layout, sets) for sets in (0, 1, 11, 12, 100)] == [1, 1, 1, 2, 3]
    monkeypatch.setattr(checking, "MOST_CELLS", little_layout.formula_cells * 2)
    assert checking._processes(little_layout, 100) == 2
    monkeypatch.setattr(checking, "MOST_CELLS", 1)
    assert checking._processes(little_layout, 100) == 1


def refusing():
    raise FileError.at("planner.xlsx", "it cannot be laid out.")


def failing():
    raise ZeroDivisionError("of our own")


def dying():
    os.kill(os.getpid(), signal.SIGKILL)


@pytest.mark.parametrize(
    ("lay_out", "kind", "sentence"),
    [
        (refusing, FileError, "planner.xlsx: it cannot be laid out."),
        (failing, ZeroDivisionError, "of our own"),
        (
            dying,
            PlannerError,
            "A process that did part of the work was stopped from outside, perhaps because memory ran out",
        ),
    ],
)
def test_what_goes_wrong_elsewhere_is_raised_here(little_file, little_layout, lay_out, kind, sentence):
    with pytest.raises(kind) as caught:
        check(FileToCheck(little_file, little_layout, lay_out=lay_out), scenarios=SETS)
    assert str(caught.value).startswith(sentence)
