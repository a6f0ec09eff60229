"""What the planner says of simulated worlds, and how often it came true.

Many worlds are typed into one planner, each under names of its own, and worked out by the
reference path, with which the engines agree. `python -m tests.calibration.reckoning` prints
the first table of the README beside it.
"""

import sys
from dataclasses import dataclass
from statistics import NormalDist

import numpy as np

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.settings import Rows, Settings
from workbookgen.sheets.planner import planner

from .worlds import BREED, SITUATIONS

WORLDS, TOGETHER = 2_000, 2_000
LOGS = ("reels", "fiber", "samples", "designs", "components", "skeins", "projects")
BINS = ((0.0, 0.1), (0.1, 0.3), (0.3, 0.5), (0.5, 0.7), (0.7, 0.9), (0.9, 1.0))
SAID = ("projects_chance", "projects_spare", "projects_doubt_spare")


@dataclass(frozen=True)
class Reckoning:
    """Of each world: the chance stated, whether it was enough, and the surplus: stated, its doubt, and true."""

    chance: np.ndarray
    enough: np.ndarray
    spare: np.ndarray
    doubt: np.ndarray
    truth: np.ndarray

    @property
    def off(self) -> np.ndarray:
        """How far the truth lay from what was stated, in standard uncertainties."""
        return (self.truth - self.spare) / self.doubt

    def within(self, times: float) -> float:
        return float(np.mean(np.abs(self.off) <= times))

    def sure(self, certainty: float) -> float:
        """How often it is enough for those who have as much as they need to be so sure."""
        return float(np.mean(self.off >= -NormalDist().inv_cdf(certainty)))

    def bins(self) -> list[tuple[int, float, float]]:
        """Of each bin: its worlds, the mean chance stated, and how often it was enough."""
        found = []
        for low, high in BINS:
            inside = (self.chance >= low) & ((self.chance < high) | (high == 1.0))
            if inside.any():
                found.append((int(inside.sum()), float(self.chance[inside].mean()), float(self.enough[inside].mean())))
        return found


def reckon(situation: str, worlds: int = WORLDS, seed: int = 1) -> Reckoning:
    draw = np.random.default_rng([seed, list(SITUATIONS).index(situation)])
    answers = []
    for start in range(0, worlds, TOGETHER):
        drawn = [SITUATIONS[situation](f"{start + number}", draw) for number in range(min(TOGETHER, worlds - start))]
        answers += _said(drawn)
    return Reckoning(*(np.array(column, dtype=float) for column in zip(*answers, strict=True)))


def _said(worlds) -> list[tuple[float, ...]]:
    records = {log: [record for world in worlds for record in getattr(world, log)] for log in LOGS}
    # Built past the limits that a person's settings have, so that many worlds stand in one planner.
    rows = Rows.model_construct(**Rows().model_dump() | {log: max(1, len(found)) for log, found in records.items()})
    described = planner(Settings(units="metric", fibers="", rows=rows))
    entries = entries_with(described, {"guide": [BREED | {"source": "invented"}]} | records)
    [values] = expected_of_keys(described, [entries], SAID)
    chance, spare, doubt = (values[key] for key in SAID)
    answers, line = [], 0
    for world in worlds:
        answers.append((chance[line], world.has >= world.takes, spare[line], doubt[line], world.has - world.takes))
        line += len(world.projects)
    return answers


def table(reckonings: dict[str, Reckoning]) -> str:
    """The report, in Markdown."""
    lines = [
        "| situation | worlds | said 10–30% | said 30–50% | said 50–70% | said 70–90% | said over 90% | sure at 90% | ± 1 u | ± 2 u |",
        "|---|---|---|---|---|---|---|---|---|---|",
    ]
    for name, found in reckonings.items():
        cells = []
        for low, high in BINS[1:]:
            inside = (found.chance >= low) & ((found.chance < high) | (high == 1.0))
            cells.append(
                f"{found.chance[inside].mean():.0%} → {found.enough[inside].mean():.0%}" if inside.sum() else ""
            )
        lines.append(
            f"| {name} | {len(found.chance):,} | {' | '.join(cells)} | {found.sure(0.9):.1%} | {found.within(1):.1%} | {found.within(2):.1%} |"
        )
    return "\n".join(lines)


if __name__ == "__main__":
    print(table({name: reckon(name, int(sys.argv[1]) if len(sys.argv) > 1 else WORLDS) for name in SITUATIONS}))
