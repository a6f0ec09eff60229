"""Building a planner, whole and by stage, against stock XlsxWriter that is asked for the very same workbook.

The whole command is held against a whole process that imports XlsxWriter and makes the same
calls: cells, formats, validations, rules, charts and pictures (`recording.py`).
"""

from pathlib import Path

from figure import HERE, TRIES, Figure, command, seconds, workbookgen
from recording import recorded

from workbookgen.book.layout import place
from workbookgen.book.write import write
from workbookgen.build import EMBEDDED, sets_to_try
from workbookgen.checking.driving import read
from workbookgen.checking.expected import expected_of_proofs, expected_of_scenarios, expected_values
from workbookgen.checking.trial import findings_of
from workbookgen.engines import engine
from workbookgen.language.entries import starting_entries
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner

SHARED = "the same calls, no searches"
SEARCHED = "the same calls with searches"
STOCK = "each formula in its own cell, searches"


def figures(folder: Path) -> list[Figure]:
    settings = Settings()
    described = planner(settings)
    layout, entries = place(described), starting_entries(described)
    draft, calls, file = folder / "draft.xlsx", folder / "calls", folder / "built.xlsx"
    draft.write_bytes(write(layout, entries, {}))
    with engine(EMBEDDED).open(draft) as session:
        shown = read(session, layout.formulas)
    recorded(lambda: write(layout, entries, shown), calls)
    begun = command("-c", "import xlsxwriter", tries=TRIES)[0] - again("ready", calls, folder)
    bases = {
        name: begun + again(how, calls, folder)
        for how, name in (("shared", SHARED), ("searched", SEARCHED), ("stock", STOCK))
    }
    if (folder / "shared.xlsx").read_bytes() != write(layout, entries, shown):
        raise RuntimeError("the calls made again do not give the same workbook, so there is nothing to compare")
    whole, memory = workbookgen("build", "-o", str(file), tries=TRIES)

    def evaluate():
        with engine(EMBEDDED).open(draft) as session:
            read(session, layout.formulas)

    proofs, drawn = expected_of_proofs(described), sets_to_try(layout, 4)

    def try_drawn():
        with engine(EMBEDDED).open(draft) as session:
            findings_of(layout, session, EMBEDDED, drawn, proofs)

    stages = (
        (
            "  import what it needs",
            lambda: command("-c", "import workbookgen.cli, workbookgen.settings, workbookgen.build"),
        ),
        ("  describe", lambda: planner(settings)),
        ("  lay out and bind", lambda: place(described)),
        ("  write a draft", lambda: write(layout, entries, {})),
        ("  evaluate", evaluate),
        ("  expected values", lambda: expected_values(described, entries)),
        ("  expected values of the drawn sets", lambda: expected_of_scenarios(described, drawn, proofs)),
        ("  evaluate, try the drawn sets", try_drawn),
        ("  write with cached values", lambda: write(layout, entries, shown)),
    )
    return [
        *(
            Figure("build, the whole command", whole, "s", name, base, aim=1.5 if name is SHARED else None)
            for name, base in bases.items()
        ),
        *(Figure(name, seconds(work), "s", SHARED, bases[SHARED]) for name, work in stages),
        *(Figure(f"  XlsxWriter: {name}", base) for name, base in bases.items()),
        Figure("size of the blank planner", file.stat().st_size / 1000, "kB", aim=400),
        Figure("peak memory of the command build", memory, "MB", aim=200),
    ]


def again(how: str, calls: Path, folder: Path) -> float:
    """Seconds of a process that makes the recorded calls again."""
    return command(f"{HERE}/recording.py", how, str(calls), str(folder / f"{how}.xlsx"), tries=TRIES)[0]
