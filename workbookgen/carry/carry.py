"""Carrying over: read the old planner, build the new one with its entries, review the outcome.

The old file is only read. What it shows is compared with what the new one will show, as calculated by the reference
library. The embedded engine calculates the new one too; where it differs, as it does for a capital with an accent,
that is reported, and the entries come over all the same: no single engine decides whether a user gets a new planner.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

from workbookgen.book.layout import Layout, place
from workbookgen.book.write import write
from workbookgen.build import computed, disagreements, finished, first_lines
from workbookgen.carry.belonging import skeins_without_project
from workbookgen.carry.leftovers import ONLY_HERE, Leftover, kept_from_before, with_leftovers
from workbookgen.carry.matching import match
from workbookgen.carry.moved import move
from workbookgen.carry.names import misplaced
from workbookgen.carry.review import Difference, differences, refused, results_of_old, shown_by_old
from workbookgen.carry.spelling import ambiguous_names, has_capitals_beyond_a_to_z
from workbookgen.checking.expected import expected_values
from workbookgen.engines import EMBEDDED
from workbookgen.errors import Fault, FileError
from workbookgen.filled.arithmetic import with_arithmetic_done
from workbookgen.filled.as_made import laid_out
from workbookgen.filled.foreign_cells import foreign_cells
from workbookgen.filled.planner import FilledPlanner, described, read_filled
from workbookgen.filled.replacing import require_no_entries
from workbookgen.language.entries import Entries
from workbookgen.saving import require_another, require_workbook_name, save
from workbookgen.settings import Rows, Settings

STEPS = 4  # of carrying, for a progress bar
OTHER_CAPITALS = (
    "it takes É and é, and so every letter beyond A to Z, for different letters where spreadsheet programs do not. "
    "To it, a name that is written both ways is two names."
)


@dataclass(frozen=True)
class Carried:
    """What came over, and what did not."""

    version: str  # of the old planner
    lines: dict[str, int]  # sheet -> how many lines of its log came over
    converted: int  # values
    renewed: int  # lines that took the new planner's own figures
    leftovers: tuple[Leftover, ...]
    differences: tuple[Difference, ...]
    notes: tuple[Fault, ...]
    misplaced: tuple[Fault, ...] = ()  # names that point to cells of another field, with the consequence
    unproven: tuple[Fault, ...] = ()  # formula cells for which the embedded engine differs from the library

    @property
    def without_place(self) -> int:
        return sum(each.now == ONLY_HERE for each in self.leftovers)


def carry(
    source: Path, target: Path, settings: Settings | None = None, step: Callable[[], None] = lambda: None
) -> Carried:
    """Build a new planner with the entries of an old one, by these settings or by the old one's own.

    `step` is called after each of the STEPS. Raises FileError for anything that cannot be
    carried; then nothing is written.
    """
    require_workbook_name(target)
    require_another(target, [source])
    require_no_entries(target)
    old = with_arithmetic_done(read_filled(source))
    settings = settings or within_limits(old.settings)
    plain = described(settings)
    step()
    matched = match(old, plain)
    moved = move(old, plain, matched)
    entries = {key: tuple(column) for key, column in matched.entries.items()}
    after = expected_values(plain, entries)
    found = [
        *matched.leftovers,
        *refused(old, plain, after, matched),
        *(Leftover(**vars(each)) for each in foreign_cells(old, moved)),
        *kept_from_before(old),
    ]
    step()
    layout = place(with_leftovers(plain, dict.fromkeys(found))) if found else laid_out(settings)
    content = finished(layout, entries, after, matched.notes)
    unproven = _unproven(layout, content, entries, after)
    step()
    changed = differences(old, shown_by_old(old) or results_of_old(old), plain, after, matched)
    save(target, content)
    step()
    return Carried(
        version=old.version,
        lines=_lines(old, matched.rows),
        converted=matched.converted,
        renewed=len(matched.renewed),
        leftovers=tuple(dict.fromkeys(found)),
        differences=tuple(changed),
        notes=(*old.notes, *skeins_without_project(old, entries), *ambiguous_names(plain, entries)),
        misplaced=tuple(misplaced(old)),
        unproven=tuple(unproven),
    )


def _unproven(layout: Layout, content: bytes, entries: Entries, expected: Mapping[str, tuple]) -> list[Fault]:
    """Where the embedded engine differs from the library; that it cannot calculate the planner counts as well.

    It is given the new file itself, except for the ends of long logs that show nothing, as `build` does.
    """
    begun = first_lines(layout, {**expected, **entries})
    if begun is not layout:
        content = write(begun, entries, {})
    try:
        faults = disagreements(begun, expected, computed(begun, content))
    except FileError as problem:
        return [Fault(EMBEDDED, fault.sentence) for fault in problem.faults]
    return (
        [Fault(EMBEDDED, OTHER_CAPITALS), *faults]
        if faults and has_capitals_beyond_a_to_z(layout.planner, entries)
        else faults
    )


def within_limits(settings: Settings) -> Settings:
    """An old planner's settings, with rows reduced to the most that a planner may have."""
    fields = Rows.model_fields.items()
    most = {name: next(limit.le for limit in each.metadata if hasattr(limit, "le")) for name, each in fields}
    rows = {name: min(rows, most[name]) for name, rows in settings.rows.model_dump().items()}
    return settings.model_copy(update={"rows": Rows(**rows)})


def _lines(old: FilledPlanner, rows: dict[str, dict[int, int]]) -> dict[str, int]:
    """Sheet -> how many lines of its log came over."""
    lines = {sheet.name: len(rows.get(log.key, {})) for sheet in old.planner.sheets for log in sheet.logs}
    return {sheet: number for sheet, number in lines.items() if number}
