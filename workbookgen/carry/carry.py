"""Carrying over: read the old planner, build the new one with its entries, look the outcome over.

The old file is only read. The new one is proven like any other before it is put in its
place, and the reference library says whether it still means the same.
"""

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from workbookgen.book.layout import place
from workbookgen.build import workbook
from workbookgen.carry.leftovers import ONLY_HERE, Leftover, kept_from_before, with_leftovers
from workbookgen.carry.matching import match
from workbookgen.carry.names import misplaced
from workbookgen.carry.review import Difference, differences, refused, results, results_of_old
from workbookgen.carry.strays import strays
from workbookgen.errors import Fault
from workbookgen.filled.arithmetic import worked_out
from workbookgen.filled.planner import FilledPlanner, described, read_filled
from workbookgen.filled.replacing import require_no_entries
from workbookgen.language.parts import Log
from workbookgen.saving import require_another, save
from workbookgen.settings import Rows, Settings

STEPS = 4  # that a progress bar counts


@dataclass(frozen=True)
class Carried:
    """What came over, and what did not."""

    version: str  # of the old planner
    lines: dict[str, int]  # of each log that has any
    converted: int
    renewed: int
    leftovers: tuple[Leftover, ...]
    differences: tuple[Difference, ...]
    notes: tuple[Fault, ...]

    @property
    def homeless(self) -> int:
        return sum(each.now == ONLY_HERE for each in self.leftovers)


def carry(source: Path, target: Path, settings: Settings | None = None, step: Callable[[], None] = lambda: None) -> Carried:
    """Build a new planner with the entries of an old one, by these settings or by the old one's own.

    `step` is called after each of the STEPS. Raises FileError for anything that cannot be
    carried; then nothing is written.
    """
    require_another(target, [source])
    require_no_entries(target)
    old = worked_out(read_filled(source))
    settings = settings or buildable(old.settings)
    plain = described(settings)
    step()
    matched = match(old, plain)
    entries = {key: tuple(column) for key, column in matched.entries.items()}
    after = results(plain, entries)
    found = [*matched.leftovers, *refused(old, plain, after, matched), *strays(old), *kept_from_before(old)]
    step()
    planner = with_leftovers(plain, dict.fromkeys(found))
    content = workbook(place(planner), entries, matched.notes)
    step()
    changed = differences(old, results_of_old(old), plain, after, matched)
    save(target, content)
    step()
    return Carried(old.version, _lines(old, matched.rows), matched.converted, len(matched.renewed), tuple(dict.fromkeys(found)), tuple(changed), (*old.notes, *misplaced(old)))


def buildable(settings: Settings) -> Settings:
    """An old planner's settings, with no more rows than a planner may have."""
    limits = {name: next(limit.le for limit in each.metadata if hasattr(limit, "le")) for name, each in Rows.model_fields.items()}
    rows = {name: min(rows, limits[name]) for name, rows in settings.rows.model_dump().items()}
    return settings.model_copy(update={"rows": Rows(**rows)})


def _lines(old: FilledPlanner, rows: dict[str, dict[int, int]]) -> dict[str, int]:
    """Sheet -> how many lines of its log came over."""
    planner = described(old.settings)
    sheets = Counter({
        sheet.name: len(rows.get(part.key, {})) for sheet in planner.sheets for part in sheet.parts if isinstance(part, Log)
    })
    return dict(+sheets)
