"""The check: every formula cell of a planner, in real engines, against the reference library.

Nothing that a file says about itself is trusted. Each engine gets a copy whose cached values are poisoned, so an engine
that does not recalculate gives itself away. The file's formulas are compared with those that the generator writes for
the same settings. The first scenario is the content of the planner; the others are drawn from the domains of its
inputs.
"""

import time
from collections.abc import Callable, Iterable, Iterator
from contextlib import ExitStack
from dataclasses import asdict, dataclass, field, replace
from functools import partial
from itertools import islice, pairwise
from pathlib import Path

from workbookgen.book.placement import Layout
from workbookgen.checking.compare import Finding
from workbookgen.checking.driving import read_inputs
from workbookgen.checking.expected import expected_of_proofs, expected_of_scenarios
from workbookgen.checking.formulas import Texts, as_formulas, foreign_formulas, typed_formulas
from workbookgen.checking.one_spelling import A_TO_Z_ALONE, in_one_spelling
from workbookgen.checking.stored import as_stored, stale_results
from workbookgen.checking.trial import MOST_FINDINGS, POISON, EngineTrial, Outcome, drawn_ahead, try_drawn, try_share
from workbookgen.checking.whole_file import changes
from workbookgen.engines import EMBEDDED, Engine, Session, engine
from workbookgen.engines.copies import with_cached
from workbookgen.errors import FileError
from workbookgen.language.entries import Entries
from workbookgen.ooxml.workbook import WholeFile
from workbookgen.processes import cores, helpers
from workbookgen.temporary import temporary_folder

A_SHARE = 6  # scenarios, which take about as long as starting a process
MOST_CELLS = 600_000  # formula cells in all processes of one check together; the embedded engine takes 7 kB for each
SPELLED_ONCE = (
    "it takes capitals with accents (É, é) for other letters, where spreadsheet programs take them for the same; "
    "so it was given each name of the planner in one spelling"
)


@dataclass
class EngineReport:
    """What one engine did: how many formula cells it has, read, agreed on in every scenario, disagreed on in any."""

    name: str
    version: str
    declared: int
    read: int = 0
    agreed: int = 0
    refused: int = 0
    comparisons: int = 0
    worst_relative_difference: float = 0.0
    note: str = ""  # what differs in its copy from the planner

    def take(self, outcome: Outcome) -> None:
        """Take over the outcome of its scenarios."""
        self.read, self.comparisons = outcome.read, outcome.comparisons
        self.worst_relative_difference = outcome.worst_relative_difference
        self.refused = sum(int(cells.sum()) for cells in outcome.refused.values())
        self.agreed = self.declared - self.refused

    def as_json(self) -> dict:
        return asdict(self)


@dataclass
class Report:
    """The outcome of a check."""

    scenarios: int
    formula_cells: int
    formula_cells_checked: int = 0
    formula_cells_seen_filled: int = 0
    engines: list[EngineReport] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)
    seconds: float = 0.0

    @property
    def comparisons(self) -> int:
        return sum(each.comparisons for each in self.engines)

    @property
    def worst_relative_difference(self) -> float:
        return max((each.worst_relative_difference for each in self.engines), default=0.0)

    def as_json(self) -> dict:
        return {
            "engines": [each.as_json() for each in self.engines],
            "scenarios": self.scenarios,
            "formula_cells": self.formula_cells,
            "formula_cells_checked": self.formula_cells_checked,
            "formula_cells_seen_filled": self.formula_cells_seen_filled,
            "comparisons": self.comparisons,
            "worst_relative_difference": self.worst_relative_difference,
            "findings": [each.as_json() for each in self.findings],
            "seconds": round(self.seconds, 3),
        }


def check(
    path: Path,
    layout: Layout,
    engines: Iterable[str | Engine] = (EMBEDDED,),
    scenarios: int = 20,
    seed: int = 1,
    *,
    formulas_in_file: Texts | None = None,
    whole: WholeFile | None = None,
    step: Callable[[], None] = lambda: None,
    lay_out: Callable[[], Layout] | None = None,
) -> Report:
    """Check a planner against the layout that its own settings give.

    An engine is given by its name or as an object. `formulas_in_file` are the formulas that the file really has, by
    sheet and cell, and `whole` is everything in it; what is not given is not checked. With `lay_out`, a function that
    makes the layout anew and can be pickled, the drawn scenarios are shared among as many processes as there are
    cores, with the same outcome. `step` is called after each scenario. Raises MissingEngine when an engine is absent.
    """
    began = time.perf_counter()
    chosen = [engine(each) if isinstance(each, str) else each for each in dict.fromkeys(engines)]
    names = [each.name for each in chosen]
    report = Report(1 + scenarios, _formula_cells(layout, formulas_in_file))
    report.engines = [EngineReport(each.name, each.version(), layout.formula_cells) for each in chosen]
    report.findings += _of_the_file(layout, formulas_in_file, whole)
    first, *others = shares(range(seed, seed + scenarios), _processes(layout, scenarios) if lay_out else 1)
    with temporary_folder("workbookgen") as folder, ExitStack() as opened:
        poisoned = folder / "planner.xlsx"
        with_cached(path, poisoned, POISON)
        proofs = expected_of_proofs(layout.planner)
        sets = opened.enter_context(drawn_ahead(layout, first, proofs))
        trials = [
            EngineTrial(layout, opened.enter_context(_opened(each, poisoned, path)), each.name) for each in chosen
        ]
        works = [partial(try_share, lay_out, poisoned, names, seeds) for seeds in others]
        helping = opened.enter_context(helpers(works, step))

        def step_and_listen() -> None:
            step()
            for each in helping:
                each.listen()

        for one, record in zip(trials, report.engines, strict=True):
            once = whole if one is trials[0] else None
            record.note, stale = _try_as_it_stands(one, proofs, once)
            report.findings += stale
            step_and_listen()
        try_drawn(trials, sets, step_and_listen)
        for each in helping:
            for one, later in zip(trials, each.outcome(), strict=True):
                one.outcome.add(later)
    _conclude(report, layout, [one.outcome for one in trials])
    report.seconds = time.perf_counter() - began
    return report


def _conclude(report: Report, layout: Layout, outcomes: list[Outcome]) -> None:
    """Put what the engines' trials came to into the report."""
    for outcome, record in zip(outcomes, report.engines, strict=True):
        record.take(outcome)
        report.findings += outcome.findings
    _count_cells(report, layout, outcomes)


def _formula_cells(layout: Layout, formulas_in_file: Texts | None) -> int:
    """How many formulas to check: those of the file, without formulas typed into inputs, or else the layout's."""
    if formulas_in_file is None:
        return layout.formula_cells
    texts = as_formulas(formulas_in_file)
    return len(texts) - sum(1 for each in layout.inputs for _ in typed_formulas(texts, each))


def _try_as_it_stands(one: EngineTrial, proofs: dict, whole: WholeFile | None) -> tuple[str, list[Finding]]:
    """Compare an engine with the library on the planner's own entries.

    Returns a note if names had to be respelled for the engine, and the stale stored results of the `whole` file.
    """
    layout, planner = one.layout, one.layout.planner
    typed = read_inputs(one.session, layout)
    [expected] = expected_of_scenarios(planner, [typed], proofs)
    stale = [] if whole is None else list(islice(_stale(layout, whole, typed, proofs, expected), MOST_FINDINGS))
    if one.name in A_TO_Z_ALONE and (spelled_once := in_one_spelling(planner, typed)) != typed:
        [wanted] = expected_of_scenarios(planner, [spelled_once], proofs)
        one.run(spelled_once, proofs | wanted)
        return SPELLED_ONCE, stale
    one.compare(typed, proofs | expected)
    return "", stale


def shares(seeds: range, processes: int) -> list[range]:
    """Divide scenarios, by their seeds, among a number of processes, in order."""
    ends = [len(seeds) * number // processes for number in range(processes + 1)]
    return [seeds[start:end] for start, end in pairwise(ends)]


def _processes(layout: Layout, scenarios: int) -> int:
    """How many processes are worth starting, and fit into memory."""
    return max(1, min(cores(), scenarios // A_SHARE, MOST_CELLS // layout.formula_cells))


def _of_the_file(layout: Layout, formulas_in_file: Texts | None, whole: WholeFile | None) -> list[Finding]:
    """Where the file differs from what the generator writes, whatever its formulas give."""
    found = [] if formulas_in_file is None else foreign_formulas(layout, formulas_in_file)
    if whole is not None:
        found += islice(changes(layout, whole), MOST_FINDINGS)
    return found


def _count_cells(report: Report, layout: Layout, outcomes: list[Outcome]) -> None:
    """Count the cells that any engine compared, and those that showed something; report those that none compared."""
    every = Outcome()
    for each in outcomes:
        every.add(each)
    report.formula_cells_checked = sum(map(len, every.seen.values()))
    report.formula_cells_seen_filled = sum(int(cells.sum()) for cells in every.seen.values())
    report.findings += [
        Finding("nothing checks this formula", placement.cell(row), placement.key)
        for placement in layout.formulas
        for row in range(len(every.seen.get(placement.key, ())), placement.rows)
    ]


def _stale(layout: Layout, whole: WholeFile, typed: Entries, proofs: dict, expected: dict) -> Iterator[Finding]:
    """Stored results that differ from what the entries give, with the entries as the file spells them."""
    stored = as_stored(layout, whole, typed)
    if stored != typed:
        [expected] = expected_of_scenarios(layout.planner, [stored], proofs)
    return stale_results(layout, whole, proofs | expected)


def _opened(chosen: Engine, poisoned: Path, path: Path) -> Session:
    """A session with the poisoned copy; errors name the user's own file."""
    try:
        return chosen.open(poisoned)
    except FileError as problem:
        raise FileError(*(replace(fault, place=str(path)) for fault in problem.faults)) from None
