"""The check: every formula cell of a planner, in real engines, against the reference library.

Nothing that a file says of itself is believed. Each engine gets a copy whose cached values
are poisoned, so that one which does not recalculate gives itself away. Formulas are held
against those that the generator writes for the same settings. The first scenario is what
stands in the planner; the others are drawn from the domains of its inputs.
"""

import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import ExitStack
from dataclasses import dataclass, field, replace
from itertools import islice
from pathlib import Path

from workbookgen.book.placement import Layout, Placement
from workbookgen.checking.compare import Finding, agree, relative_difference
from workbookgen.checking.driving import read, read_inputs, set_inputs
from workbookgen.checking.expected import expected_of_proofs, expected_of_scenarios
from workbookgen.checking.one_spelling import A_TO_Z_ALONE, in_one_spelling
from workbookgen.checking.scenarios import scenario_of_check
from workbookgen.checking.spelled import spelled
from workbookgen.checking.stored import as_stored, stale_results
from workbookgen.checking.whole_file import changes
from workbookgen.engines import Engine, ErrorValue, Session, engine
from workbookgen.engines.package import with_cached
from workbookgen.errors import FileError
from workbookgen.language.entries import Entries
from workbookgen.language.fields import Result
from workbookgen.ooxml.workbook import WholeFile
from workbookgen.temporary import temporary_folder

POISON = -987_654_321.0
RECORDS = 10_000  # whose expected values are worked out at a time
SPELLED_ONCE = (
    "it takes capitals with accents (É, é) for other letters, where spreadsheet programs take them for the same; "
    "so it was given each name of the planner in one spelling"
)
MOST_FINDINGS = 200  # of one engine; a broken planner would otherwise tell thousands


@dataclass
class EngineReport:
    """What one engine did: formula cells declared, read, agreed in every scenario, refused in any."""

    name: str
    version: str
    declared: int
    read: int = 0
    agreed: int = 0
    refused: int = 0
    comparisons: int = 0
    worst_relative_difference: float = 0.0
    note: str = ""  # what it was given otherwise than it stands in the planner

    def as_json(self) -> dict:
        return {key: getattr(self, key) for key in (
            "name", "version", "declared", "read", "agreed", "refused", "comparisons", "worst_relative_difference", "note"
        )}


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
    engines: Iterable[str | Engine] = ("formualizer",),
    scenarios: int = 20,
    seed: int = 1,
    formulas_in_file: dict[tuple[str, str], str] | None = None,
    step: Callable[[], None] = lambda: None,
    whole: WholeFile | None = None,
) -> Report:
    """Check a planner against the layout that its own settings give.

    An engine is named, or handed in. `formulas_in_file` are the formulas that the file really holds, by sheet and cell,
    and `whole` is all that it says; what is not told is not looked at.
    `step` is called after each scenario. Raises MissingEngine when an engine is absent.
    """
    began = time.perf_counter()
    chosen = [engine(each) if isinstance(each, str) else each for each in dict.fromkeys(engines)]
    declared = sum(len(each.formulas) for each in layout.formulas)
    report = Report(1 + scenarios, declared)
    report.engines = [EngineReport(each.name, each.version(), declared) for each in chosen]
    if formulas_in_file is not None:
        ours = not_typed(layout, formulas_in_file)
        report.findings += foreign_formulas(layout, ours)
        report.formula_cells = len(ours)
    if whole is not None:
        report.findings += islice(changes(layout, whole), MOST_FINDINGS)
    with temporary_folder("workbookgen") as folder, ExitStack() as opened:
        poisoned = folder / "planner.xlsx"
        with_cached(path, poisoned, POISON)
        tries = [
            _Try(layout, opened.enter_context(_opened(each, poisoned, path)), record, formulas_in_file or {})
            for each, record in zip(chosen, report.engines, strict=True)
        ]
        proofs = expected_of_proofs(layout.planner)
        for one in tries:
            [expected] = expected_of_scenarios(layout.planner, [one.typed], proofs)
            if one.record.name in A_TO_Z_ALONE and (spelled_once := in_one_spelling(layout.planner, one.typed)) != one.typed:
                one.record.note = SPELLED_ONCE
                [wanted] = expected_of_scenarios(layout.planner, [spelled_once], proofs)
                one.run(spelled_once, proofs | wanted)
            else:
                one.compare(one.typed, proofs | expected)
            if whole is not None and one is tries[0]:
                report.findings += islice(_stale(layout, whole, one.typed, proofs, expected), MOST_FINDINGS)
            step()
        for drawn in _batches(layout, scenarios, seed):
            for inputs, expected in zip(drawn, expected_of_scenarios(layout.planner, drawn, proofs), strict=True):
                for one in tries:
                    one.run(inputs, proofs | expected)
                    step()
    for one in tries:
        report.findings += one.findings
        one.record.refused, one.record.agreed = len(one.refused), declared - len(one.refused)
    checked = {place for one in tries for place in one.checked}
    report.formula_cells_checked = len(checked)
    report.formula_cells_seen_filled = len({place for one in tries for place in one.seen})
    report.findings += [
        Finding("nothing checks this formula", placement.cell(row), placement.key)
        for placement in layout.formulas
        for row in range(placement.rows)
        if (placement.key, row) not in checked
    ]
    report.seconds = time.perf_counter() - began
    return report


def _stale(layout: Layout, whole: WholeFile, typed: Entries, proofs: dict, expected: dict) -> Iterator[Finding]:
    stored = as_stored(layout, whole, typed)
    if stored != typed:
        [expected] = expected_of_scenarios(layout.planner, [stored], proofs)
    return stale_results(layout, whole, proofs | expected)


def _batches(layout: Layout, scenarios: int, seed: int) -> Iterator[list[Entries]]:
    """The drawn scenarios, as many at a time as are worked out together."""
    most = together(layout)
    for start in range(0, scenarios, most):
        seeds = range(seed + start, seed + min(start + most, scenarios))
        yield [scenario_of_check(layout.planner, each) for each in seeds]


def not_typed(layout: Layout, in_file: dict[tuple[str, str], str]) -> dict[tuple[str, str], str]:
    """The formulas outside the inputs: there a person may type arithmetic, such as =6.5*16."""
    inputs = {(placement.sheet, placement.cell(row)) for placement in layout.inputs for row in range(placement.rows)}
    return {place: text for place, text in in_file.items() if place not in inputs}


def with_empty_texts(layout: Layout, entries: Entries, in_file: dict[tuple[str, str], str]) -> Entries:
    """The entries, an input whose formula gives nothing holding the empty text: it is not blank, and its line says so."""
    return {
        placement.key: tuple(
            "" if value is None and (placement.sheet, placement.cell(row)) in in_file else value
            for row, value in enumerate(entries[placement.key])
        )
        for placement in layout.inputs
    }


def _opened(chosen: Engine, poisoned: Path, path: Path) -> Session:
    """A session on the poisoned copy; a fault speaks of the person's own file."""
    try:
        return chosen.open(poisoned)
    except FileError as problem:
        raise FileError(*(replace(fault, place=str(path)) for fault in problem.faults)) from None


def foreign_formulas(layout: Layout, in_file: dict[tuple[str, str], str]) -> list[Finding]:
    """Formulas in the file that the generator does not write there, and those that are missing."""
    strangers, changed, gone = dict(in_file), [], []
    for placement in layout.formulas:
        for row, wanted in enumerate(placement.formulas):
            cell = f"{placement.sheet}!{placement.cell(row)}"
            text = strangers.pop((placement.sheet, placement.cell(row)), None)
            if text is None:
                gone.append(Finding("the formula is gone", cell, placement.key, expected=wanted))
            elif text != wanted and spelled(text) != spelled(wanted):
                changed.append(Finding("the formula was changed", cell, placement.key, expected=wanted, got=text))
    foreign = [
        Finding("this cell holds a formula that no reference checks", f"{sheet}!{cell}", got=text) for (sheet, cell), text in strangers.items()
    ]
    return foreign + changed + gone


class _Try:
    """One engine at work on the planner, and what came of it. Cells are told by field and row."""

    def __init__(self, layout: Layout, session: Session, record: EngineReport, in_file: dict[tuple[str, str], str]):
        self.layout, self.session, self.record = layout, session, record
        self.typed = with_empty_texts(layout, read_inputs(session, layout), in_file)  # what stands in the planner
        self.findings: list[Finding] = []
        self.refused: set[tuple[str, int]] = set()
        self.checked: set[tuple[str, int]] = set()
        self.seen: set[tuple[str, int]] = set()

    def run(self, inputs: Entries, expected: dict) -> None:
        set_inputs(self.session, self.layout, inputs)
        self.session.evaluate()
        self.compare(inputs, expected)

    def compare(self, inputs: Entries, expected: dict) -> None:
        got = read(self.session, self.layout, self.layout.formulas)
        self.record.read = sum(map(len, got.values()))
        self.record.comparisons += self.record.read
        if not self.checked:  # the cells are the same in every scenario
            self.checked.update((key, row) for key, values in got.items() for row in range(len(values)))
        for placement in self.layout.formulas:
            key = placement.key
            for row, (wanted, shown) in enumerate(zip(expected[key], got[key], strict=True)):
                if wanted is None and shown is None:
                    continue
                if wanted is not None:
                    self.seen.add((key, row))
                if agree(wanted, shown):
                    difference = relative_difference(wanted, shown)
                    self.record.worst_relative_difference = max(self.record.worst_relative_difference, difference)
                else:
                    self.refused.add((key, row))
                    if len(self.findings) < MOST_FINDINGS:
                        self.findings.append(_finding(self.layout, placement, row, inputs, wanted, shown, self.record.name))


def findings_of(layout: Layout, session: Session, name: str, sets: Sequence[Entries], proofs: dict) -> list[Finding]:
    """What an open engine computes otherwise than the library expects, for some sets of inputs."""
    one = _Try(layout, session, EngineReport(name, "", 0), {})
    for inputs, expected in zip(sets, expected_of_scenarios(layout.planner, sets, proofs), strict=True):
        one.run(inputs, proofs | expected)
    return one.findings


def together(layout: Layout) -> int:
    """How many sets of inputs make up some thousand records: to work out more at a time saves nothing, and needs memory."""
    return max(1, RECORDS // sum(block.rows for block in layout.planner.blocks.values()))


def _finding(layout: Layout, placement: Placement, row: int, inputs: Entries, wanted, shown, name: str) -> Finding:
    if shown == POISON:
        reason = "the engine handed back a stored value instead of computing it"
    elif isinstance(shown, ErrorValue):
        reason = "the cell shows an error"
    else:
        reason = "the reference library disagrees"
    return Finding(
        reason,
        f"{placement.sheet}!{placement.cell(row)}",
        placement.key,
        name,
        _inputs_of(layout, placement, row, inputs),
        wanted,
        str(shown) if isinstance(shown, ErrorValue) else shown,
    )


def _inputs_of(layout: Layout, placement: Placement, row: int, inputs: Entries) -> dict:
    """The inputs of the finding's own record, so that it can be repeated by hand."""
    block = placement.holder
    if not isinstance(placement.field, Result) or not hasattr(block, "inputs"):
        return {}
    return {each.key: inputs[f"{block.key}_{each.key}"][row] for each in block.inputs}
