"""How things grow with the log of skeins: 200, 2,000 and 20,000 lines, all of them filled in.

Ten times the lines should take at most ten times as long; what does not grow makes it
less. Each piece of work has a process of its own, so that memory can be told apart.
"""

import sys
from pathlib import Path

from figure import ROOT, Figure, command, workbookgen

LINES = (200, 2_000, 20_000)
LINEAR = 12  # ten times the lines, and what a machine's caches cost on the way
ENGINES = ("formualizer", "ironcalc", "libreoffice", "gnumeric")


def figures(folder: Path) -> list[Figure]:
    found: dict[str, list[tuple[int, float, str]]] = {}

    def note(what: str, lines: int, value: float, unit: str = "s") -> None:
        found.setdefault(what, []).append((lines, value, unit))

    for lines in LINES:
        settings, file = folder / f"{lines}.toml", folder / f"{lines}.xlsx"
        settings.write_text(f"[rows]\nskeins = {lines}\n")
        taken, memory = workbookgen("build", "--settings", str(settings), "-o", str(file))
        note("build", lines, taken)
        note("build, peak memory", lines, memory, "MB")
        note("file", lines, file.stat().st_size / 1000, "kB")
        taken, memory = workbookgen("check", str(file), "--scenarios", "1")
        note("check, 2 sets of inputs", lines, taken)
        note("check, peak memory", lines, memory, "MB")
        ready, _ = command(__file__, "ready", str(file))
        for name in ENGINES:
            opened, worked_out = (command(__file__, how, str(file), name)[0] for how in ("open", "fill"))
            note(f"{name} opens", lines, opened - ready)
            note(f"{name} works out a full log", lines, worked_out - opened)
    return [figure for what, values in found.items() for figure in _growth(what, values)]


def _growth(what: str, values: list[tuple[int, float, str]]):
    """Each value against the one before."""
    before = None
    for lines, value, unit in values:
        name = f"{what}, {lines:,} skeins"
        yield (
            Figure(name, value, unit)
            if before is None
            else Figure(name, value, unit, "a tenth of the lines", before, LINEAR)
        )
        before = value


def main(how: str, file: str, name: str = "") -> None:
    """Get ready; or also open a planner in an engine; or also fill in every line and work it out."""
    from workbookgen.checking.driving import read, set_inputs
    from workbookgen.checking.scenarios import scenario
    from workbookgen.engines import engine
    from workbookgen.planner_file import read_planner

    layout = read_planner(Path(file)).layout
    filled = scenario(layout.planner, 1)
    if how == "ready":
        return
    with engine(name).open(Path(file)) as session:
        if how == "fill":
            set_inputs(session, layout, filled)
            session.evaluate()
            read(session, layout.formulas)


if __name__ == "__main__":
    sys.path.insert(0, ROOT)
    main(*sys.argv[1:])
