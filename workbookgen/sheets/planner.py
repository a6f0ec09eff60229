"""The planner: all sheets, in the order of the workbook, each with everything about it."""

from collections.abc import Iterator
from functools import partial

from workbookgen.language.parts import Planner, Sheet
from workbookgen.language.views import Grid, Kind
from workbookgen.settings import Settings
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
    figures,
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
    pieces,
    project,
    projects,
    proofs,
    questions,
    reels,
    samples,
    scouring,
    skeins,
    structures,
    tabs,
    time,
    twist,
    uses,
    weaving,
    yarn,
)
from workbookgen.sheets.leaving_out import leaving
from workbookgen.sheets.naming import retold, said_with, sheets_of_chapters

OF_LOGS = Grid((150, *(94,) * 11))  # a page of logs: their names need room
OF_FACTS = Grid((150, 250, 250, 330, 200, 220, 84, 70, 84))


def working_sheets(settings: Settings) -> Iterator[Sheet]:
    """The sheets on which one works, between the desk and the reference."""
    yield Sheet(
        measure.SHEET, "Skein", "Choose one of your log, or leave it empty and type below.", (measure.chapter(settings), compare.chapter(settings)), Kind.PAGE,
        near=(tabs.SKEINS, tabs.REELS), grid=Grid(chosen=measure.CHOSEN),
    )
    yield Sheet(lot.SHEET, tabs.LOT, "Choose one of your lots.", (lot.chapter(settings),), Kind.PAGE, near=(tabs.FIBER, tabs.FLEECE), grid=Grid(chosen="way_lot"))
    yield Sheet(
        project.SHEET, tabs.PROJECT, "Choose one of your projects.", (project.chapter(settings), figures.sureness(settings)),
        Kind.PAGE, near=(tabs.PROJECTS, tabs.SAMPLES), grid=Grid(chosen="project_name"),
    )
    yield skeins.sheet(settings)
    yield reels.sheet(settings)
    yield fiber.sheet(settings)
    yield samples.sheet(settings)
    yield projects.sheet(settings)
    yield Sheet(
        yarn.SHEET, tabs.YARN, "Design a plied yarn of singles and bought thread; divide a dyed top by its colors.",
        (yarn.chapter(settings), components.chapter(settings), color.chapter(settings), bobbins.chapter(settings), structures.chapter(settings), matching.chapter(settings), blends.chapter(settings)),
        near=(tabs.TWIST, tabs.SAMPLES), grid=OF_LOGS,
    )
    yield Sheet(
        knitting.SHEET, tabs.NEED, "How much yarn a piece takes, if no pattern says so.",
        (knitting.chapter(settings), pieces.chapter(settings), weaving.chapter(settings), uses.chapter(settings), garments.chapter(settings)), near=(tabs.PROJECTS,), grid=OF_LOGS,
    )
    yield Sheet(
        guide.SHEET, tabs.FLEECE, "What to buy, how to wash and to dye it, and what fleeces give.",
        (buying.chapter(settings), offers.chapter(settings), scouring.chapter(settings), dyeing.chapter(settings), guide.chapter(settings)), near=(tabs.FIBER, tabs.LOT), grid=OF_LOGS,
    )
    yield Sheet(
        twist.SHEET, tabs.TWIST, "Rules of thumb: spin a sample, let it hang in a loop, and believe the sample.",
        (twist.chapter(settings), counts.chapter(settings), questions.chapter(settings)), near=(tabs.YARN, tabs.SAMPLES),
    )
    yield Sheet(
        time.SHEET, tabs.TIME, "Hours, weeks and a day for each project, and what it costs.",
        (time.chapter(settings), figures.chapter(settings), cost.chapter(settings)), near=(tabs.PROJECTS, tabs.SAMPLES), grid=OF_LOGS,
    )
    yield Sheet(labels.SHEET, tabs.PRINT, "Labels for your skeins.", (labels.chapter(settings),), Kind.PAPER, near=(tabs.SKEINS,), grid=labels.GRID)


def planner(settings: Settings) -> Planner:
    """The planner that these settings ask for, described and not yet laid out."""
    working, facts = tuple(working_sheets(settings)), lists.chapter(settings)
    fallen, absent, cautions = frozenset(), {}, ()
    left = None
    if settings.without:
        every = proofs.without(fallen)
        first = desk.sheet(settings, every.rows, working, cautions)
        full = Planner(settings.units, settings.paper, settings.title, (first, *working, _reference(proofs.chapter(every), facts)))
        left = leaving(full, settings.without)
        working = tuple(kept for sheet in working if (kept := left.kept(sheet)))
        fallen, absent, cautions = left.fallen, {key: full.by_key[key] for key in left.fallen}, left.cautions
    proven = proofs.with_trials(proofs.without(fallen), working)
    reference = _reference(methods.chapter(working), proofs.chapter(proven), facts, origin.chapter(settings))
    first = desk.sheet(settings, proofs.verdict(proven), working, cautions)
    sheets = (left.kept(first) if left else first, *(sheet.answered_twice() for sheet in working), reference)
    sheet_of = sheets_of_chapters(sheets)
    return Planner(
        settings.units,
        settings.paper,
        settings.title,
        tuple(retold(sheet, partial(said_with, sheet_of=sheet_of, here=sheet.name)) for sheet in sheets),
        absent,
        settings.colors.chosen,
    )


def _reference(*chapters) -> Sheet:
    return Sheet(
        origin.SHEET, tabs.REFERENCE, "What the words mean, how each figure is worked out, and who says so. A weighed sample beats every formula.",
        chapters, Kind.PAPER, grid=OF_FACTS,
    )
