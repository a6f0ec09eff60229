"""Trials: one engine fills in sets of inputs, calculates, and is compared with the reference library.

Drawn sets can be shared among processes: `try_share` tries some of them in a session of its own, and the outcomes of
all shares, put together in order, are the same as of a single trial.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

from workbookgen.book.placement import Layout, Placement
from workbookgen.checking.compare import Finding, agree, relative_difference
from workbookgen.checking.driving import read, set_inputs
from workbookgen.checking.expected import expected_of_proofs, expected_of_scenarios
from workbookgen.checking.scenarios import scenario_of_check
from workbookgen.engines import ErrorValue, Session, engine
from workbookgen.engines.copies import POISON
from workbookgen.language.entries import Entries, Entry
from workbookgen.language.fields import Result

RECORDS = 10_000  # the expected values of so many are calculated at a time
MOST_FINDINGS = 200  # of one engine; a broken planner would otherwise report thousands

Cells = dict[str, np.ndarray]  # full key of a formula -> a flag for each of its cells


@dataclass
class Outcome:
    """The outcome of a trial."""

    read: int = 0  # formula cells in each set
    comparisons: int = 0
    worst_relative_difference: float = 0.0
    findings: list[Finding] = field(default_factory=list)
    seen: Cells = field(default_factory=dict)  # should show something in at least one set
    refused: Cells = field(default_factory=dict)  # differed from the library in at least one set

    def add(self, later: "Outcome") -> None:
        """Add the outcome of later sets."""
        self.read = self.read or later.read
        self.comparisons += later.comparisons
        self.worst_relative_difference = max(self.worst_relative_difference, later.worst_relative_difference)
        self.findings = (self.findings + later.findings)[:MOST_FINDINGS]
        for mine, theirs in ((self.seen, later.seen), (self.refused, later.refused)):
            for key, cells in theirs.items():
                mine[key] = mine[key] | cells if key in mine else cells


class EngineTrial:
    """One engine with a planner open in it, and the outcome so far."""

    def __init__(self, layout: Layout, session: Session, name: str):
        self.layout, self.session, self.name = layout, session, name
        self.outcome = Outcome()

    def run(self, inputs: Entries, expected: dict) -> None:
        """Fill in these inputs, calculate, and compare."""
        set_inputs(self.session, self.layout, inputs)
        self.session.evaluate()
        self.compare(inputs, expected)

    def compare(self, inputs: Entries, expected: dict) -> None:
        """Compare what the engine shows with the expected values. The inputs become part of a finding."""
        got, tried = read(self.session, self.layout.formulas), Outcome()
        tried.read = tried.comparisons = sum(map(len, got.values()))
        for placement in self.layout.formulas:
            wanted, shown = expected[placement.key][: placement.rows], got[placement.key]
            tried.seen[placement.key] = np.fromiter((value is not None for value in wanted), bool, len(wanted))
            if wrong := self._compare(placement, inputs, wanted, shown, tried):
                tried.refused[placement.key] = np.isin(np.arange(len(wanted)), wrong)
        self.outcome.add(tried)

    def _compare(
        self, placement: Placement, inputs: Entries, wanted: Sequence[Entry], shown: Sequence, tried: Outcome
    ) -> list[int]:
        """The rows of one field in which the engine shows something else."""
        wrong = []
        for row, (one, other) in enumerate(zip(wanted, shown, strict=True)):
            if one is None and other is None:
                continue
            if agree(one, other):
                tried.worst_relative_difference = max(tried.worst_relative_difference, relative_difference(one, other))
            else:
                wrong.append(row)
                if len(tried.findings) < MOST_FINDINGS:
                    tried.findings.append(self._finding(placement, row, inputs, one, other))
        return wrong

    def _finding(self, placement: Placement, row: int, inputs: Entries, wanted: Entry, shown: object) -> Finding:
        if shown == POISON:
            reason = "the engine returned a stored value instead of computing it"
        elif isinstance(shown, ErrorValue):
            reason = "the cell shows an error"
        else:
            reason = "the reference library disagrees"
        return Finding(
            reason,
            cell=placement.address(row),
            key=placement.key,
            engine=self.name,
            inputs=_inputs_of(placement, row, inputs),
            expected=wanted,
            got=str(shown) if isinstance(shown, ErrorValue) else shown,
        )


def try_drawn(trials: Sequence[EngineTrial], sets: Iterable[tuple[Entries, dict]], step: Callable[[], None]) -> None:
    """Try sets of inputs, each with its expected values, in every engine; `step` is called after each."""
    for inputs, expected in sets:
        for one in trials:
            one.run(inputs, expected)
            step()


def try_share(
    lay_out: Callable[[], Layout], file: Path, engines: Sequence[str], seeds: range, step: Callable[[], None]
) -> list[Outcome]:
    """Try a share of the drawn sets, in a new process; returns the outcome for each engine."""
    layout = lay_out()
    with ExitStack() as opened:
        sets = opened.enter_context(drawn_ahead(layout, seeds, expected_of_proofs(layout.planner)))
        trials = [EngineTrial(layout, opened.enter_context(engine(name).open(file)), name) for name in engines]
        try_drawn(trials, sets, step)
    return [each.outcome for each in trials]


@contextmanager
def drawn_ahead(layout: Layout, seeds: range, proofs: dict) -> Iterator[Iterator[tuple[Entries, dict]]]:
    """The sets drawn with these seeds, each with its expected values.

    The next batch is prepared in a thread while the engines work on the last one, since they run outside Python.
    """
    batches = _batches(layout, seeds)
    with ThreadPoolExecutor(1) as beside:

        def next_of_them() -> Future | None:
            some = next(batches, None)
            return beside.submit(_worked_out, layout, some, proofs) if some else None

        yield _taken(next_of_them(), next_of_them)


def _taken(coming: Future | None, following: Callable[[], Future | None]) -> Iterator[tuple[Entries, dict]]:
    while coming:
        sets, coming = coming.result(), following()
        yield from sets


def _worked_out(layout: Layout, seeds: range, proofs: dict) -> list[tuple[Entries, dict]]:
    drawn = [scenario_of_check(layout.planner, seed) for seed in seeds]
    wanted = expected_of_scenarios(layout.planner, drawn, proofs)
    return [(inputs, proofs | expected) for inputs, expected in zip(drawn, wanted, strict=True)]


def findings_of(layout: Layout, session: Session, name: str, sets: Sequence[Entries], proofs: dict) -> list[Finding]:
    """Where an open engine disagrees with the library on these sets of inputs."""
    one = EngineTrial(layout, session, name)
    for inputs, expected in zip(sets, expected_of_scenarios(layout.planner, sets, proofs), strict=True):
        one.run(inputs, proofs | expected)
    return one.outcome.findings


def sets_at_once(layout: Layout) -> int:
    """How many sets to prepare at a time: a few thousand records, since more save no time and take memory."""
    return max(1, RECORDS // sum(block.rows for block in layout.planner.blocks.values()))


def _batches(layout: Layout, seeds: range) -> Iterator[range]:
    """The seeds in batches of sets that are prepared together."""
    most = sets_at_once(layout)
    yield from (seeds[start : start + most] for start in range(0, len(seeds), most))


def _inputs_of(placement: Placement, row: int, inputs: Entries) -> dict:
    """The inputs of a finding's record, so that it can be repeated by hand."""
    block = placement.holder
    if not isinstance(placement.field, Result) or not hasattr(block, "inputs"):
        return {}
    return {each.key: inputs[block.full_key(each.key)][row] for each in block.inputs}
