"""The report of a check: what each engine did, and everything that was found."""

from dataclasses import asdict, dataclass, field

from workbookgen.book.placement import Layout
from workbookgen.checking.compare import Finding
from workbookgen.checking.trial import Outcome


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

    def conclude(self, layout: Layout, outcomes: list[Outcome]) -> None:
        """Put what the engines' trials came to into it."""
        for outcome, record in zip(outcomes, self.engines, strict=True):
            record.take(outcome)
            self.findings += outcome.findings
        self._count_cells(layout, outcomes)

    def _count_cells(self, layout: Layout, outcomes: list[Outcome]) -> None:
        """Count the cells that any engine compared, and those that showed something; report those that none did."""
        every = Outcome()
        for each in outcomes:
            every.add(each)
        self.formula_cells_checked = sum(map(len, every.seen.values()))
        self.formula_cells_seen_filled = sum(int(cells.sum()) for cells in every.seen.values())
        self.findings += [
            Finding("nothing checks this formula", placement.address(row), placement.key)
            for placement in layout.formulas
            for row in range(len(every.seen.get(placement.key, ())), placement.rows)
        ]

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
