"""How good is the check? Change each formula of a planner in each way, and see whether values alone betray it.

    python -m tests.mutation.formulas [--scenarios N] [--search M] [--seed S]

A changed formula is found when its own cell, under the check's scenarios, shows another
value than the reference library expects; whatever hangs on it differs only if it does.
Every fourth set is one in which projects share yarns (`shared_yarns`), which blind drawing
hardly comes to; another fourth is whole, as the check draws it.
So all changed formulas stand in one workbook, far to the right of the sheet where the
good one is, and one evaluation tries them all. `tests/checking/test_mutants_found.py`
edits files and runs the check itself, and holds that this comes to the same.

By its text a changed formula is always found; here the check must do without. What it
does not find is held against the good formula with many more inputs: most of it never
differs (a guard that another guard implies, a limit that a text fails anyway).
"""

import argparse
import re
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from itertools import islice
from pathlib import Path

from workbookgen.book.layout import Layout, Placement
from workbookgen.build import layout_of, workbook
from workbookgen.checking.compare import agree
from workbookgen.checking.driving import read, set_inputs
from workbookgen.checking.expected import expected_of_proofs, expected_of_scenarios
from workbookgen.checking.scenarios import scenario_of_check
from workbookgen.engines import Area, engine
from workbookgen.language.automatic import SPOILED
from workbookgen.language.entries import Entries
from workbookgen.language.planner import Planner
from workbookgen.language.proofs import ProofTable
from workbookgen.settings import Rows, Settings

from .changes import Change, changes, with_addresses
from .shared_yarns import shared

TOGETHER = 20  # sets of inputs: their expected values take a third of the time then
ROWS = Rows(**dict.fromkeys(Rows.model_fields, 4) | {"skeins": 6, "guide": 40})


@dataclass(frozen=True, eq=False)
class Mutant:
    """One formula of the planner, changed."""

    placement: Placement
    row: int
    change: Change

    def __str__(self) -> str:
        return f"{self.placement.key}[{self.row}] {self.change.kind}: {self.change.what}"


def distinct(layout: Layout) -> list[tuple[Placement, int]]:
    """One cell for each formula that differs from others by more than its row."""
    found = {}
    for placement in layout.formulas:
        for row in sorted(
            range(placement.rows), key=lambda row: row != 1
        ):  # the second row has neighbors on both sides
            text = re.sub(rf"(\$[A-Z]+){placement.row + row}\b", r"\1{row}", placement.formulas[row])
            found.setdefault(
                (
                    placement.sheet,
                    placement.holder.key,
                    placement.column if placement.rows > 1 else placement.row,
                    text,
                ),
                (placement, row),
            )
    return list(found.values())


def mutants(layout: Layout) -> list[Mutant]:
    return [
        Mutant(placement, row, change)
        for placement, row in distinct(layout)
        for change in changes(with_addresses(layout, placement.formulas[row]))
    ]


def in_its_row(mutant: Mutant) -> str:
    """The changed formula as it can stand in another row: one that counts lines by its own row says which."""
    return mutant.change.formula.replace("ROW()", f"ROW($A{mutant.placement.row + mutant.row})")


class Bench:
    """A planner in which all these mutants stand beside the good formulas."""

    def __init__(self, session, layout: Layout, tried: list[Mutant]):
        self.session, self.layout = session, layout
        self.columns = {
            sheet: [each for each in tried if each.placement.sheet == sheet]
            for sheet in {each.placement.sheet for each in tried}
        }
        self.free = 1 + max(max(plan.widths) for plan in layout.plans.values())  # a column beyond all others
        self.good = list({each.placement.key: each.placement for each in tried}.values())
        for sheet, group in self.columns.items():
            session._workbook.set_formulas_batch(sheet, 1, self.free, [[in_its_row(each)] for each in group])

    def differing(self, entries: Entries, wanted: Mapping[str, tuple] | None = None) -> set[Mutant]:
        """The mutants that show another value than is wanted; without one, than the good formula shows."""
        set_inputs(self.session, self.layout, entries)
        self.session.evaluate()
        wanted = wanted or read(self.session, self.good)
        return {
            each
            for sheet, group in self.columns.items()
            for each, (value,) in zip(group, self.session.read(Area(sheet, 1, self.free, len(group))), strict=True)
            if not agree(wanted[each.placement.key][each.row], value)
        }


@contextmanager
def bench(layout: Layout, tried: list[Mutant]) -> Iterator[Bench]:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "planner.xlsx"
        path.write_bytes(workbook(layout))
        with engine("formualizer").open(path) as session:
            yield Bench(session, layout, tried)


def sets(planner: Planner, number: int, seed: int) -> Iterator[Entries]:
    """So many sets of inputs: the check's, and every fourth of projects that share yarns."""
    for each in range(seed, seed + number):
        yield shared(planner, each) if each % 4 == 1 else scenario_of_check(planner, each)


def batches(drawn: Iterator[Entries]) -> Iterator[list[Entries]]:
    """So many sets at a time as are best worked out together."""
    while together := list(islice(drawn, TOGETHER)):
        yield together


def undetected(layout: Layout, tried: list[Mutant], scenarios: int, seed: int = 1) -> list[Mutant]:
    """The mutants that agreed with the reference in every scenario of the check."""
    proofs = expected_of_proofs(layout.planner)
    found: set[Mutant] = set()
    with bench(layout, tried) as planner:
        for together in batches(sets(layout.planner, scenarios, seed)):
            for entries, wanted in zip(together, expected_of_scenarios(layout.planner, together, proofs), strict=True):
                found |= planner.differing(entries, proofs | wanted)
    return [each for each in tried if each not in found]


def told_apart(layout: Layout, tried: list[Mutant], scenarios: int, seed: int) -> list[Mutant]:
    """The mutants that show another value than the good formula in any of many more sets of inputs."""
    found: set[Mutant] = set()
    with bench(layout, tried) as planner:
        for entries in sets(layout.planner, scenarios, seed):
            found |= planner.differing(entries)
    return [each for each in tried if each in found]


def has_inputs(mutant: Mutant) -> bool:
    """Whether anything that is typed into inputs can change what stands there.

    A proof shows the same for ever, and the count of worked-out cells that someone typed over or
    emptied is nothing until someone does.
    """
    return not isinstance(mutant.placement.holder, ProofTable) and mutant.placement.field != SPOILED


def report(tried: list[Mutant], left: list[Mutant]) -> str:
    """How many of each kind were found."""
    of_kind, missed = Counter(each.change.kind for each in tried), Counter(each.change.kind for each in left)
    lines = [f"{kind:<32} {number - missed[kind]:>6} of {number:>6}" for kind, number in sorted(of_kind.items())]
    return "\n".join(
        [*lines, f"{'in all':<32} {len(tried) - len(left):>6} of {len(tried):>6} ({1 - len(left) / len(tried):.2%})"]
    )


def main() -> int:
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--scenarios", type=int, default=200, help="as many as the check is given")
    options.add_argument(
        "--search", type=int, default=1000, help="further sets of inputs, to tell what was missed from what is the same"
    )
    options.add_argument("--seed", type=int, default=1)
    chosen = options.parse_args()
    layout = layout_of(Settings(rows=ROWS))
    tried = [each for each in mutants(layout) if has_inputs(each)]
    left = undetected(layout, tried, chosen.scenarios, chosen.seed)
    missed = told_apart(layout, left, chosen.search, chosen.seed + 100_000)
    for each in left:
        print("missed:" if each in missed else "the same:", each)
    print(report(tried, left))
    print(
        f"{len(left) - len(missed)} of those left never differed from the good formula in {chosen.search} further sets of inputs; {len(missed)} did."
    )
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
