"""The check, against the engine alone: the same scenarios set, evaluated and read, and nothing held against
anything."""

from pathlib import Path

from figure import Figure, seconds, timed, workbookgen

from workbookgen.build import layout_of, workbook
from workbookgen.checking.check import FileToCheck, check
from workbookgen.checking.driving import read, read_inputs, set_inputs
from workbookgen.checking.scenarios import scenario
from workbookgen.engines import engine
from workbookgen.planner_file import read_planner
from workbookgen.settings import Settings

SCENARIOS = 20


def figures(folder: Path) -> list[Figure]:
    file = folder / "checked.xlsx"
    layout = layout_of(Settings())
    file.write_bytes(workbook(layout))
    drawn = [scenario(layout.planner, number + 1) for number in range(SCENARIOS)]
    lines = []
    for name in ("formualizer", "ironcalc"):
        alone = seconds(lambda name=name: engine_alone(name, file, layout, drawn), 2)
        reading, planner = timed(lambda: read_planner(file))
        checking, report = timed(
            lambda name=name, planner=planner: check(
                FileToCheck(file, planner.layout, formulas=planner.formulas), [name], SCENARIOS, 1
            )
        )
        if report.findings:
            raise RuntimeError(f"{name}: {report.findings[0]}")
        lines += [
            Figure(
                f"check of {SCENARIOS} scenarios in {name}", reading + checking, "s", "the engine alone", alone, aim=2
            ),
            Figure("  reading the planner for it", reading, "s", "the engine alone", alone),
            Figure("  the engine alone", alone),
        ]
    _, memory = workbookgen("check", str(file))
    lines.append(Figure("peak memory of the command check", memory, "MB", aim=200))
    return lines


def engine_alone(name: str, file: Path, layout, drawn) -> None:
    with engine(name).open(file) as session:
        read_inputs(session, layout)
        read(session, layout.formulas)
        for entries in drawn:
            set_inputs(session, layout, entries)
            session.evaluate()
            read(session, layout.formulas)
