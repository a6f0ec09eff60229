"""The check: every formula cell of a planner, in real engines, against the reference library.

Nothing that a file says about itself is trusted. Each engine gets a copy whose cached values are poisoned, so an engine
that does not recalculate gives itself away. The file's formulas are compared with those that the generator writes for
the same settings. The first scenario is the content of the planner; the others are drawn from the domains of its
inputs.
"""

import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import ExitStack
from dataclasses import dataclass, replace
from functools import partial
from itertools import islice, pairwise
from pathlib import Path

from workbookgen.book.placement import Layout
from workbookgen.checking.compare import Finding
from workbookgen.checking.driving import read_inputs
from workbookgen.checking.expected import expected_of_proofs, expected_of_scenarios
from workbookgen.checking.formulas import Texts, as_formulas, foreign_formulas, typed_formulas
from workbookgen.checking.name_spelling import A_TO_Z_ALONE, in_one_spelling
from workbookgen.checking.report import EngineReport, Report
from workbookgen.checking.stored import as_stored, stale_results
from workbookgen.checking.trial import MOST_FINDINGS, EngineTrial, Outcome, drawn_ahead, try_drawn, try_share
from workbookgen.checking.whole_file import changes
from workbookgen.engines import EMBEDDED, Engine, Session, engine
from workbookgen.engines.copies import with_poison
from workbookgen.errors import FileError
from workbookgen.language.entries import Entries
from workbookgen.ooxml.workbook import WholeFile
from workbookgen.processes import cores, helpers
from workbookgen.temporary import temporary_folder

A_SHARE = 6  # scenarios, which take about as long as starting a process
MOST_CELLS = 600_000  # formula cells in all processes of one check together; the embedded engine takes 7 kB for each
SPELLED_ONCE = (
    "it takes capitals with accents (É, é) for other letters, where spreadsheet programs take them for the same; "
    "so it was given each name of the planner in one spelling"
)


@dataclass(frozen=True)
class FileToCheck:
    """A planner's file, the layout that its own settings give, and what of the file is compared besides its results.

    What is None is not compared.
    """

    path: Path
    layout: Layout
    formulas: Texts | None = None  # sheet and cell -> formula, as the file has them
    whole: WholeFile | None = None  # everything in the file
    # Makes the layout anew; can be pickled. With it, the drawn scenarios are shared among as many processes as there
    # are cores, with the same outcome.
    lay_out: Callable[[], Layout] | None = None


def check(
    file: FileToCheck,
    engines: Iterable[str | Engine] = (EMBEDDED,),
    scenarios: int = 20,
    seed: int = 1,
    step: Callable[[], None] = lambda: None,
) -> Report:
    """Check a planner with its own entries, and with as many `scenarios`, drawn by a seed, in each engine.

    An engine is given by its name or as an object. `step` is called after each scenario. Raises MissingEngine when an
    engine is absent, and FileError when one refuses the file.
    """
    began = time.perf_counter()
    chosen = [engine(each) if isinstance(each, str) else each for each in dict.fromkeys(engines)]
    report = Report(1 + scenarios, _formula_cells(file))
    report.engines = [EngineReport(each.name, each.version(), file.layout.formula_cells) for each in chosen]
    report.findings += _differences(file)
    report.conclude(file.layout, _outcomes(file, chosen, range(seed, seed + scenarios), step, report))
    report.seconds = time.perf_counter() - began
    return report


def _outcomes(
    file: FileToCheck, engines: Sequence[Engine], seeds: range, step: Callable[[], None], report: Report
) -> list[Outcome]:
    """Try a planner as it stands, and with drawn inputs, in each engine.

    What differs in the file, and what was respelled for an engine, goes into the report at once.
    """
    layout, names = file.layout, [each.name for each in engines]
    first, *others = shares(seeds, _processes(layout, len(seeds)) if file.lay_out else 1)
    with temporary_folder("workbookgen") as folder, ExitStack() as opened:
        poisoned = folder / "planner.xlsx"
        with_poison(file.path, poisoned)
        proofs = expected_of_proofs(layout.planner)
        sets = opened.enter_context(drawn_ahead(layout, first, proofs))
        sessions = [opened.enter_context(_opened(each, poisoned, file.path)) for each in engines]
        trials = [EngineTrial(layout, session, name) for session, name in zip(sessions, names, strict=True)]
        works = [partial(try_share, file.lay_out, poisoned, names, share) for share in others]
        helping = opened.enter_context(helpers(works, step))

        def step_and_listen() -> None:
            step()
            for each in helping:
                each.listen()

        for one, record in zip(trials, report.engines, strict=True):
            once = file.whole if one is trials[0] else None  # what is stored is the same for every engine
            record.note, stale = _try_as_it_stands(one, proofs, once)
            report.findings += stale
            step_and_listen()
        try_drawn(trials, sets, step_and_listen)
        for each in helping:
            for one, later in zip(trials, each.outcome(), strict=True):
                one.outcome.add(later)
    return [one.outcome for one in trials]


def _formula_cells(file: FileToCheck) -> int:
    """How many formulas to check: those of the file, without formulas typed into inputs, or else the layout's."""
    if file.formulas is None:
        return file.layout.formula_cells
    texts = as_formulas(file.formulas)
    return len(texts) - sum(1 for each in file.layout.inputs for _ in typed_formulas(texts, each))


def _try_as_it_stands(one: EngineTrial, proofs: dict, whole: WholeFile | None) -> tuple[str, list[Finding]]:
    """Compare an engine with the library on the planner's own entries.

    Returns a note if names had to be respelled for the engine, and the stale stored results of the `whole` file.
    """
    layout, planner = one.layout, one.layout.planner
    typed = read_inputs(one.session, layout)
    [expected] = expected_of_scenarios(planner, [typed], proofs)
    stale = [] if whole is None else list(islice(_stale(layout, whole, typed, proofs, expected), MOST_FINDINGS))
    if one.name in A_TO_Z_ALONE and (spelled_once := in_one_spelling(planner, typed)) != typed:
        [wanted] = expected_of_scenarios(planner, [spelled_once], proofs)
        one.run(spelled_once, proofs | wanted)
        return SPELLED_ONCE, stale
    one.compare(typed, proofs | expected)
    return "", stale


def shares(seeds: range, processes: int) -> list[range]:
    """Divide scenarios, by their seeds, among a number of processes, in order."""
    ends = [len(seeds) * number // processes for number in range(processes + 1)]
    return [seeds[start:end] for start, end in pairwise(ends)]


def _processes(layout: Layout, scenarios: int) -> int:
    """How many processes are worth starting, and fit into memory."""
    return max(1, min(cores(), scenarios // A_SHARE, MOST_CELLS // layout.formula_cells))


def _differences(file: FileToCheck) -> list[Finding]:
    """Where the file differs from what the generator writes, whatever its formulas give."""
    found = [] if file.formulas is None else foreign_formulas(file.layout, file.formulas)
    if file.whole is not None:
        found += islice(changes(file.layout, file.whole), MOST_FINDINGS)
    return found


def _stale(layout: Layout, whole: WholeFile, typed: Entries, proofs: dict, expected: dict) -> Iterator[Finding]:
    """Stored results that differ from what the entries give, with the entries as the file spells them."""
    stored = as_stored(layout, whole, typed)
    if stored != typed:
        [expected] = expected_of_scenarios(layout.planner, [stored], proofs)
    return stale_results(layout, whole, proofs | expected)


def _opened(chosen: Engine, poisoned: Path, path: Path) -> Session:
    """A session with the poisoned copy; errors name the user's own file."""
    try:
        return chosen.open(poisoned)
    except FileError as problem:
        raise FileError(*(replace(fault, place=str(path)) for fault in problem.faults)) from None
