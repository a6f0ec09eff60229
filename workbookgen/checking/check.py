"""The check: every formula cell of a planner, in real engines, against the reference library.

Nothing that a file says of itself is believed. Each engine gets a copy whose cached values
are poisoned, so that one which does not recalculate gives itself away. Formulas are held
against those that the generator writes for the same settings. The first scenario is what
stands in the planner; the others are drawn from the domains of its inputs.
"""

import re
import tempfile
import time
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from pathlib import Path

from workbookgen.book.layout import Layout, Placement
from workbookgen.checking.compare import Finding, agree, relative_difference
from workbookgen.checking.driving import read, read_inputs, set_inputs
from workbookgen.checking.expected import expected_of_blocks, expected_of_proofs
from workbookgen.checking.scenarios import scenario
from workbookgen.engines import Engine, ErrorValue, Session, engine
from workbookgen.engines.package import with_cached
from workbookgen.errors import FileError
from workbookgen.language.entries import Entries
from workbookgen.language.fields import Result

POISON = -987_654_321.0
MOST_FINDINGS = 200  # of one engine; a broken planner would otherwise tell thousands
NEWER_NAMES = {"_XLFN.STDEV.S": "STDEV", "_XLFN.NORM.S.INV": "NORMSINV"}  # Gnumeric writes them instead; they mean the same

_NUMBER = re.compile(r"(?<![A-Z0-9$._])\d+(?:\.\d*)?(?:E[+-]?\d+)?(?![0-9.:])")  # and no part of a reference


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

    def as_json(self) -> dict:
        return {key: getattr(self, key) for key in (
            "name", "version", "declared", "read", "agreed", "refused", "comparisons", "worst_relative_difference"
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
    engines: Iterable[str] = ("formualizer",),
    scenarios: int = 20,
    seed: int = 1,
    formulas_in_file: dict[tuple[str, str], str] | None = None,
    step: Callable[[], None] = lambda: None,
) -> Report:
    """Check a planner against the layout that its own settings give.

    `formulas_in_file` are the formulas that the file really holds, by sheet and cell.
    `step` is called after each scenario. Raises MissingEngine when an engine is absent.
    """
    began = time.perf_counter()
    chosen = [engine(name) for name in dict.fromkeys(engines)]
    versions = [each.version() for each in chosen]
    declared = sum(len(each.formulas) for each in layout.formulas)
    report = Report(1 + scenarios, declared)
    if formulas_in_file is not None:
        ours = not_typed(layout, formulas_in_file)
        report.findings += foreign_formulas(layout, ours)
        report.formula_cells = len(ours)
    drawn = [scenario(layout.planner, seed + number) for number in range(scenarios)]
    proofs = expected_of_proofs(layout.planner)
    expected_drawn = [proofs | expected_of_blocks(layout.planner, entries, proofs) for entries in drawn]
    seen: set[tuple[str, int]] = set()
    checked: set[tuple[str, int]] = set()
    with tempfile.TemporaryDirectory(prefix="workbookgen-") as folder:
        poisoned = Path(folder) / "planner.xlsx"
        with_cached(path, poisoned, POISON)
        for each, version in zip(chosen, versions, strict=True):
            record = EngineReport(each.name, version, declared)
            told_before = len(report.findings)
            with _opened(each, poisoned, path) as session:
                entries = with_empty_texts(layout, read_inputs(session, layout), formulas_in_file or {})
                runs = [(entries, proofs | expected_of_blocks(layout.planner, entries, proofs)), *zip(drawn, expected_drawn, strict=True)]
                refused: set[tuple[str, int]] = set()
                for number, (inputs, expected) in enumerate(runs):
                    if number:
                        set_inputs(session, layout, inputs)
                        session.evaluate()
                    got = read(session, layout, layout.formulas)
                    findings = _compare(layout, inputs, expected, got, record, refused, checked, seen)
                    told = len(report.findings) - told_before
                    report.findings += findings[: max(0, MOST_FINDINGS - told)]
                    step()
                record.read = len({(key, row) for key in got for row in range(len(got[key]))})
                record.refused = len(refused)
                record.agreed = declared - len(refused)
            report.engines.append(record)
    report.formula_cells_checked = len(checked)
    report.formula_cells_seen_filled = len(seen)
    report.findings += [
        Finding("nothing checks this formula", placement.cell(row), placement.key)
        for placement in layout.formulas
        for row in range(placement.rows)
        if (placement.key, row) not in checked
    ]
    report.seconds = time.perf_counter() - began
    return report


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
    ours = {
        (placement.sheet, placement.cell(row)): (placement, text)
        for placement in layout.formulas
        for row, text in enumerate(placement.formulas)
    }
    findings = []
    for place, text in in_file.items():
        if place not in ours:
            findings.append(Finding("this cell holds a formula that no reference checks", f"{place[0]}!{place[1]}", got=text))
        elif spelled(text) != spelled(ours[place][1]):
            placement, wanted = ours[place]
            findings.append(Finding("the formula was changed", f"{place[0]}!{place[1]}", placement.key, expected=wanted, got=text))
    for place, (placement, wanted) in ours.items():
        if place not in in_file:
            findings.append(Finding("the formula is gone", f"{place[0]}!{place[1]}", placement.key, expected=wanted))
    return findings


def spelled(formula: str) -> str:
    """A formula without what programs change when they save it: spaces, capitals, last digits of numbers, new names."""
    pieces = formula.lstrip("=").split('"')
    return '"'.join(piece if index % 2 else _bare(piece) for index, piece in enumerate(pieces))


def _bare(piece: str) -> str:
    bare = piece.replace(" ", "").upper()
    for newer, name in NEWER_NAMES.items():
        bare = bare.replace(f"{newer}(", f"{name}(")
    return _NUMBER.sub(lambda found: f"{float(found[0]):.14g}", bare)


def _compare(layout, inputs: Entries, expected, got, record: EngineReport, refused, checked, seen) -> list[Finding]:
    findings = []
    for placement in layout.formulas:
        key = placement.key
        for row, (wanted, shown) in enumerate(zip(expected[key], got[key], strict=True)):
            record.comparisons += 1
            checked.add((key, row))
            if wanted is not None:
                seen.add((key, row))
            if agree(wanted, shown):
                difference = relative_difference(wanted, shown)
                record.worst_relative_difference = max(record.worst_relative_difference, difference)
            else:
                refused.add((key, row))
                findings.append(_finding(layout, placement, row, inputs, wanted, shown, record.name))
    return findings


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
