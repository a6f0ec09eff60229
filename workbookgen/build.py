"""Building a planner: describe, lay out, write, evaluate, compare with the reference library, write again.

The second writing stores in every formula cell the value that the embedded engine calculated, so that a program that
does not recalculate on loading shows the right numbers. Since most cells of a blank planner show nothing, a few sets
of drawn inputs are tried too. A planner that disagrees with the reference library is never left on disk.

The lines of a log share one formula. So of a column whose later lines are all blank, the engine is given only the
first MOST_LINES cells; for the two million cells of a large planner it would take a minute to find them blank. `check`
calculates every one.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path

from workbookgen.book.layout import place
from workbookgen.book.placement import Layout
from workbookgen.book.write import Notes, write
from workbookgen.checking.compare import Finding, agree
from workbookgen.checking.driving import read
from workbookgen.checking.expected import expected_of_blocks, expected_of_proofs
from workbookgen.checking.scenarios import scenario
from workbookgen.checking.trial import findings_of, sets_at_once
from workbookgen.engines import EMBEDDED, Session, engine
from workbookgen.engines.copies import with_poison
from workbookgen.errors import Disagreement, Fault
from workbookgen.language.entries import Entries, Entry, starting_entries
from workbookgen.language.parts import Log
from workbookgen.language.planner import Planner
from workbookgen.ooxml.package import packed
from workbookgen.saving import require_workbook_name, save
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner
from workbookgen.temporary import temporary_folder

STEPS = 4  # of making a workbook, for a progress bar
# The drawn sets of inputs that a new planner is tried with: seeds that were chosen because together they show almost
# every field, each with whether the set is whole.
SETS = ((1, True), (15, True), (17, True), (3, False))
LINES = 24  # that a set fills in each log
MOST_LINES = 250  # of a column whose later lines are blank; the usual logs are shorter
DRAWN = len(SETS)
MOST_FAULTS = 20  # that are reported of a planner that disagrees


def layout_of(settings: Settings) -> Layout:
    """The layout of the planner that these settings ask for."""
    return place(planner(settings))


def workbook(
    layout: Layout,
    entries: Entries | None = None,
    notes: Notes | None = None,
    step: Callable[[], None] = lambda: None,
    drawn: int = 0,
) -> bytes:
    """A planner with these entries and proven cached values, in which `drawn` sets of inputs were tried as well.

    Raises Disagreement. `step` is called after each of the STEPS.
    """
    entries = starting_entries(layout.planner) if entries is None else entries
    proofs = expected_of_proofs(layout.planner)
    expected = proofs | expected_of_blocks(layout.planner, entries, proofs)
    begun = first_lines(layout, expected | entries)
    with _opened(begun, entries, step) as session:
        cached = read(session, begun.formulas)
        step()
        faults = unlike_the_print(layout.planner, proofs) + disagreements(begun, expected, cached)
        if drawn and not faults:
            faults = [
                _fault(each) for each in findings_of(begun, session, EMBEDDED, sets_to_try(layout, drawn), proofs)
            ]
    step()
    if faults:
        raise Disagreement(*faults[:MOST_FAULTS])
    content = finished(layout, entries, cached, notes)
    step()
    return content


def finished(layout: Layout, entries: Entries, cached: Mapping[str, Sequence], notes: Notes | None = None) -> bytes:
    """The file of a planner as it is handed out: packed as tightly as it can be."""
    return packed(write(layout, entries, cached, notes))


def first_lines(layout: Layout, shown: Mapping[str, Sequence[Entry]]) -> Layout:
    """The part of a layout that the engine calculates: without the ends of long columns that are blank there."""
    long = {key: values for key, values in shown.items() if len(values) > MOST_LINES}
    silent = {key for key, values in long.items() if all(value is None for value in values[MOST_LINES:])}
    return layout.first_lines(MOST_LINES, silent) if silent else layout


def has_longer_logs(layout: Layout) -> bool:
    """Whether some log has more lines than the engine calculates where they are blank."""
    return any(isinstance(block, Log) and block.rows > MOST_LINES for block in layout.planner.blocks.values())


def sets_to_try(layout: Layout, drawn: int) -> list[Entries]:
    """The sets of inputs that a new planner is tried with; the last one has slips, the others leave little out."""
    return [
        scenario(layout.planner, seed, LINES, is_whole=is_whole)
        for seed, is_whole in SETS[: min(drawn, sets_at_once(layout))]
    ]


def computed(layout: Layout, content: bytes) -> dict[str, tuple]:
    """Full key of every formula -> what the embedded engine calculates for its cells in a finished planner.

    The stored results are poisoned first, so none of them can be among these values.
    """
    with temporary_folder("workbookgen") as folder:
        file, poisoned = folder / "finished.xlsx", folder / "planner.xlsx"
        file.write_bytes(content)
        with_poison(file, poisoned)
        with engine(EMBEDDED).open(poisoned) as session:
            return read(session, layout.formulas)


@contextmanager
def _opened(layout: Layout, entries: Entries, step: Callable[[], None]) -> Iterator[Session]:
    """A session of the embedded engine with a draft of the planner."""
    with temporary_folder("workbookgen") as folder:
        draft = folder / "planner.xlsx"
        draft.write_bytes(write(layout, entries, {}))
        step()
        with engine(EMBEDDED).open(draft) as session:
            yield session


def disagreements(layout: Layout, expected: Mapping[str, Sequence], cached: Mapping[str, Sequence]) -> list[Fault]:
    """The formula cells for which the embedded engine and the reference library disagree."""
    faults = []
    for placement in layout.formulas:
        column = zip(expected[placement.key][: placement.rows], cached[placement.key], strict=True)
        for row, (wanted, shown) in enumerate(column):
            if not agree(wanted, shown):
                where = f"{placement.address(row)} ({placement.key})"
                faults.append(Fault(where, f"expected {wanted!r}, but {EMBEDDED} computes {shown!r}."))
    return faults


def unlike_the_print(planner: Planner, proofs: Mapping[str, Sequence]) -> list[Fault]:
    """The published examples whose printed answer the planner does not reproduce."""
    faults = []
    for table in planner.proof_tables.values():
        # The trials, which follow the proofs, are not printed anywhere.
        answers, verdicts = (proofs[table.full_key(column)] for column in ("computed", "verdict"))
        for proof, answer, verdict in zip(table.proofs, answers, verdicts, strict=False):
            if verdict == "differs":
                sentence = f"the planner works out {answer!r}, but {proof.printed!r} is printed."
                faults.append(Fault(f"proof {proof.number}", sentence))
    return faults


def _fault(found: Finding) -> Fault:
    given = ", ".join(f"{word} = {value!r}" for word, value in found.inputs.items() if value is not None)
    told = f"expected {found.expected!r}, but {found.engine} computes {found.got!r}"
    return Fault(f"{found.cell} ({found.key})", f"{told}, with {given}." if given else f"{told}.")


def build(
    settings: Settings, target: Path, entries: Entries | None = None, step: Callable[[], None] = lambda: None
) -> Layout:
    """Build a planner file. On any failure no new file is left behind, and an old one stays as it was."""
    require_workbook_name(target)
    layout = layout_of(settings)
    save(target, workbook(layout, entries, step=step, drawn=DRAWN))
    return layout
