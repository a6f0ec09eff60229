"""How good is the check? Change each formula of a planner in each way, and see whether values alone betray it.

    python -m tests.mutation.formulas [--scenarios N] [--seed S]

A changed formula is found when its own cell, under the check's scenarios, shows another
value than the reference library expects; whatever hangs on it differs only if it does.
So all changed formulas stand in one workbook, far to the right of the sheet where the
good one is, and one evaluation tries them all. `tests/checking/test_mutants_found.py`
edits files and runs the check itself, and holds that this comes to the same.

By its text a changed formula is always found; here the check must do without.
"""

import argparse
import re
import sys
import tempfile
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

from workbookgen.book.layout import Layout, Placement
from workbookgen.build import layout_of, workbook
from workbookgen.checking.compare import agree
from workbookgen.checking.driving import set_inputs
from workbookgen.checking.expected import expected_of_blocks, expected_of_proofs
from workbookgen.checking.scenarios import scenario
from workbookgen.engines import Area, engine
from workbookgen.settings import Rows, Settings

from .changes import Change, changes

FAR_RIGHT = 300  # column from which on a sheet is free
ROWS = Rows(**{log: 4 for log in Rows.model_fields} | {"skeins": 6, "guide": 40})


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
        for row in sorted(range(placement.rows), key=lambda row: row != 1):  # the second row has neighbors on both sides
            text = re.sub(rf"(\$[A-Z]+){placement.row + row}\b", r"\1{row}", placement.formulas[row])
            found.setdefault((placement.sheet, placement.holder.key, placement.column if placement.rows > 1 else placement.row, text), (placement, row))
    return list(found.values())


def mutants(layout: Layout) -> list[Mutant]:
    return [Mutant(placement, row, change) for placement, row in distinct(layout) for change in changes(placement.formulas[row])]


def undetected(layout: Layout, tried: list[Mutant], scenarios: int, seed: int = 1) -> list[Mutant]:
    """The mutants that agreed with the reference in every scenario."""
    left = {sheet: [each for each in tried if each.placement.sheet == sheet] for sheet in {each.placement.sheet for each in tried}}
    proofs = expected_of_proofs(layout.planner)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "planner.xlsx"
        path.write_bytes(workbook(layout))
        with engine("formualizer").open(path) as session:
            for sheet, group in left.items():
                session._workbook.set_formulas_batch(sheet, 1, FAR_RIGHT, [[each.change.formula] for each in group])
            found = set()
            for number in range(scenarios):
                entries = scenario(layout.planner, seed + number)
                set_inputs(session, layout, entries)
                session.evaluate()
                expected = proofs | expected_of_blocks(layout.planner, entries, proofs)
                for sheet, group in left.items():
                    shown = session.read(Area(sheet, 1, FAR_RIGHT, len(group)))
                    found |= {
                        each for each, (value,) in zip(group, shown, strict=True)
                        if each not in found and not agree(expected[each.placement.key][each.row], value)
                    }
    return [each for each in tried if each not in found]


def report(tried: list[Mutant], left: list[Mutant]) -> str:
    """How many of each kind were found."""
    of_kind, missed = Counter(each.change.kind for each in tried), Counter(each.change.kind for each in left)
    lines = [f"{kind:<32} {number - missed[kind]:>6} of {number:>6}" for kind, number in sorted(of_kind.items())]
    return "\n".join([*lines, f"{'in all':<32} {len(tried) - len(left):>6} of {len(tried):>6} ({1 - len(left) / len(tried):.2%})"])


def main() -> int:
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--scenarios", type=int, default=100)
    options.add_argument("--seed", type=int, default=1)
    chosen = options.parse_args()
    layout = layout_of(Settings(rows=ROWS))
    tried = mutants(layout)
    left = undetected(layout, tried, chosen.scenarios, chosen.seed)
    for each in left:
        print("not found:", each)
    print(report(tried, left))
    return 1 if left else 0


if __name__ == "__main__":
    sys.exit(main())
