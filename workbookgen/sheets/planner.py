"""The planner: all its sheets, in the order of the workbook."""

from collections.abc import Iterator, Sequence
from functools import partial
from inspect import signature
from itertools import chain
from types import ModuleType
from typing import get_args

from workbookgen.errors import DescriptionError
from workbookgen.language.parts import Chapter, Sheet
from workbookgen.language.planner import Planner
from workbookgen.language.views import Grid, SheetKind
from workbookgen.settings import IN_SMALL, NEEDS, Leavable, Settings
from workbookgen.sheets import (
    blends,
    bobbins,
    buying,
    color,
    compare,
    components,
    cost,
    counts,
    desk,
    dyeing,
    fiber,
    garments,
    guide,
    knitting,
    labels,
    lists,
    lot,
    matching,
    measure,
    methods,
    offers,
    origin,
    paces,
    pieces,
    project,
    projects,
    proofs,
    quick_answers,
    reels,
    samples,
    scouring,
    skeins,
    structures,
    sureness,
    tabs,
    time,
    twist,
    uses,
    weaving,
    yarn,
)
from workbookgen.sheets.leaving_out import Leaving
from workbookgen.sheets.naming import retold, said_with, sheets_of_chapters

OF_LOGS = Grid((119, *(92,) * 3, 108, *(91,) * 4, *(92,) * 2, 91))  # for pages with logs: wide columns for names, also those of yarn counts
EMPTY_IT = "To remove a line, empty it: a deleted row goes right across the sheet."  # on sheets of several tables
OF_FACTS = Grid((150, 250, 250, 330, 200, 220, 84, 70, 84))


def working_sheets(settings: Settings) -> Iterator[Sheet]:
    """The sheets that one works on, between the desk and the sheet Reference."""
    yield Sheet(
        tabs.MEASURE, "Skein", "Choose one of your log, or leave it empty and type below.", _on(tabs.MEASURE, settings, measure, compare), SheetKind.PAGE,
        related=(tabs.SKEINS, tabs.REELS), grid=Grid(chosen=measure.CHOSEN),
    )
    yield Sheet(
        tabs.LOT, tabs.LOT, "Choose one; a new one begins on the sheet Fiber.", _on(tabs.LOT, settings, lot),
        SheetKind.PAGE, related=(tabs.FIBER, tabs.FLEECE), grid=Grid(chosen="way_lot"),
    )
    yield Sheet(
        tabs.PROJECT, tabs.PROJECT, "Choose one; a new one begins on the sheet Projects.", _on(tabs.PROJECT, settings, project, sureness),
        SheetKind.PAGE, related=(tabs.PROJECTS, tabs.SAMPLES), grid=Grid(chosen="project_name"),
    )
    yield skeins.sheet(settings)
    yield reels.sheet(settings)
    yield fiber.sheet(settings)
    yield samples.sheet(settings)
    yield projects.sheet(settings)
    yield Sheet(
        tabs.YARN, tabs.YARN, "Design a plied yarn of singles and bought thread; divide a dyed top by its colors. " + EMPTY_IT,
        _on(tabs.YARN, settings, yarn, components, color, bobbins, structures, matching, blends),
        related=(tabs.TWIST, tabs.SAMPLES), grid=OF_LOGS,
    )
    yield Sheet(
        tabs.NEED, tabs.NEED, "How much yarn a piece takes, if no pattern says so. " + EMPTY_IT,
        _on(tabs.NEED, settings, knitting, pieces, weaving, uses, garments), related=(tabs.PROJECTS,), grid=OF_LOGS,
    )
    yield Sheet(
        tabs.FLEECE, tabs.FLEECE, "What to buy, how to wash and to dye it, and what fleeces give. " + EMPTY_IT,
        _on(tabs.FLEECE, settings, buying, offers, scouring, dyeing, guide), related=(tabs.FIBER, tabs.LOT), grid=OF_LOGS,
    )
    yield Sheet(
        tabs.TWIST, tabs.TWIST, "Rules of thumb: spin a sample, let it hang in a loop, and believe the sample. " + EMPTY_IT,
        _on(tabs.TWIST, settings, twist, counts, quick_answers), related=(tabs.YARN, tabs.SAMPLES),
    )
    yield Sheet(
        tabs.TIME, tabs.TIME, "Hours, weeks and a day for each project, and what it costs. " + EMPTY_IT,
        _on(tabs.TIME, settings, paces, time, cost), related=(tabs.PROJECTS, tabs.SAMPLES), grid=OF_LOGS,
    )
    yield Sheet(tabs.PRINT, tabs.PRINT, "Labels for your skeins.", _on(tabs.PRINT, settings, labels), SheetKind.PAPER, related=(tabs.SKEINS,), grid=labels.GRID)


def _on(sheet: str, settings: Settings, *modules: ModuleType) -> tuple[Chapter, ...]:
    """The chapters of a sheet, one module each."""
    for module in modules:
        for name in ("SHEET", "chapter"):
            if not hasattr(module, name):
                raise DescriptionError.at(module.__name__, f"it has no {name}: the module of a chapter says on which SHEET it is, and has a function chapter(settings).")
        if len(signature(module.chapter).parameters) != 1:
            raise DescriptionError.at(module.__name__, "its chapter takes one argument, the settings: def chapter(settings).")
        if module.SHEET != sheet:
            raise DescriptionError.at(module.__name__, f"its SHEET is {module.SHEET}, and sheets/planner.py has it on {sheet}.")
    return tuple(module.chapter(settings) for module in modules)


def planner(settings: Settings) -> Planner:
    """The planner that these settings ask for, described and not yet laid out."""
    working, facts = tuple(working_sheets(settings)), lists.chapter(settings)
    _require_known_chapters(working)
    leaving = Leaving(_whole(settings, working, facts), settings.without) if settings.without else None
    if leaving:
        working = tuple(kept for sheet in working if (kept := leaving.kept(sheet)))
    proven = proofs.with_trials(proofs.without(leaving.absent if leaving else ()), working)
    first = desk.sheet(settings, proofs.verdict(proven), working, leaving.cautions if leaving else ())
    reference = _reference(methods.chapter(working), proofs.chapter(proven), facts, origin.chapter(settings))
    sheets = (leaving.kept(first) if leaving else first, *(sheet.answered_twice() for sheet in working), reference)
    sheet_of = sheets_of_chapters(sheets)
    return Planner(
        settings.units,
        settings.paper,
        settings.title,
        tuple(retold(sheet, partial(said_with, sheet_of=sheet_of, here=sheet.name)) for sheet in sheets),
        leaving.absent_fields if leaving else {},
        settings.colors.chosen,
    )


def _require_known_chapters(working: Sequence[Sheet]) -> None:
    """Refuse settings that name a chapter which no sheet has."""
    chapters = [chapter.name for sheet in working for chapter in sheet.chapters]
    if unknown := [name for name in dict.fromkeys((*get_args(Leavable), *IN_SMALL, *NEEDS, *chain(*NEEDS.values()))) if name not in chapters]:
        raise DescriptionError.at("settings/model.py", f"{unknown[0]} is to be left out or kept, and no sheet in sheets/planner.py has a chapter of this name.")


def _whole(settings: Settings, working: Sequence[Sheet], facts: Chapter) -> Planner:
    """The planner of all chapters, from which some are to be left out."""
    every = proofs.without(())
    first = desk.sheet(settings, every.rows, working, ())
    return Planner(settings.units, settings.paper, settings.title, (first, *working, _reference(methods.chapter(working), proofs.chapter(every), facts)))


def _reference(*chapters) -> Sheet:
    return Sheet(
        origin.SHEET, tabs.REFERENCE, "What the words mean, how each figure is worked out, and who says so. A weighed sample beats every formula.",
        chapters, SheetKind.PAPER, grid=OF_FACTS,
    )
