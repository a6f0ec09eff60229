"""Building a planner: describe, lay out, write, evaluate, hold against the reference, write again.

The second writing stores in every formula cell the value that the embedded engine worked
out, so that a program which does not recalculate on loading shows the right numbers. A
planner that disagrees with the reference library is never left on disk.
"""

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from workbookgen.book.layout import place
from workbookgen.book.placement import Layout
from workbookgen.book.write import Notes, write
from workbookgen.checking.compare import agree
from workbookgen.checking.driving import read
from workbookgen.checking.expected import expected_values
from workbookgen.engines import engine
from workbookgen.errors import Disagreement, Fault
from workbookgen.language.entries import Entries, starting_entries
from workbookgen.saving import save
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner
from workbookgen.temporary import temporary_folder

EMBEDDED = "formualizer"
STEPS = 4  # of making a workbook, that a progress bar counts


def layout_of(settings: Settings) -> Layout:
    """The planner that these settings ask for, with everything in its place."""
    return place(planner(settings))


def workbook(
    layout: Layout, entries: Entries | None = None, notes: Notes | None = None, step: Callable[[], None] = lambda: None
) -> bytes:
    """A planner with these entries, its cached values proven. Raises Disagreement. `step` is called after each of the STEPS."""
    entries = starting_entries(layout.planner) if entries is None else entries
    cached = computed(layout, entries, step)
    step()
    expected = expected_values(layout.planner, entries)
    step()
    if faults := disagreements(layout, expected, cached):
        raise Disagreement(*faults[:20])
    content = write(layout, entries, cached, notes)
    step()
    return content


def computed(layout: Layout, entries: Entries, step: Callable[[], None] = lambda: None) -> dict[str, tuple]:
    """Full key of every formula -> what the embedded engine works out for its cells."""
    with temporary_folder("workbookgen") as folder:
        draft = folder / "planner.xlsx"
        draft.write_bytes(write(layout, entries, {}))
        step()
        with engine(EMBEDDED).open(draft) as session:
            return read(session, layout, layout.formulas)


def disagreements(layout: Layout, expected: Mapping[str, Sequence], cached: Mapping[str, Sequence]) -> list[Fault]:
    """The formula cells of which the embedded engine says something else than the reference library."""
    return [
        Fault(f"{placement.sheet}!{placement.cell(row)}", f"expected {wanted!r}, but {EMBEDDED} computes {shown!r}.")
        for placement in layout.formulas
        for row, (wanted, shown) in enumerate(zip(expected[placement.key], cached[placement.key], strict=True))
        if not agree(wanted, shown)
    ]


def build(settings: Settings, target: Path, entries: Entries | None = None, step: Callable[[], None] = lambda: None) -> Layout:
    """Build a planner file. On any failure nothing is left behind, and an old file stays as it was."""
    layout = layout_of(settings)
    save(target, workbook(layout, entries, step=step))
    return layout
