"""The planner: all sheets, in the order in which they stand in the workbook."""

from workbookgen.language.parts import Planner
from workbookgen.settings import Settings
from workbookgen.sheets import (
    buying,
    compare,
    components,
    cost,
    counts,
    fiber,
    figures,
    guide,
    knitting,
    labels,
    lists,
    methods,
    origin,
    pictures,
    pieces,
    projects,
    proofs,
    questions,
    reels,
    samples,
    scouring,
    skeins,
    start,
    time,
    twist,
    weaving,
    yarn,
)
from workbookgen.sheets.leaving_out import leaving

WORKING = (
    reels, guide, fiber, buying, scouring, samples, yarn, components, twist, skeins, compare, labels, knitting, pieces, weaving, projects, time, figures, cost, pictures, counts, questions,
)


def planner(settings: Settings) -> Planner:
    """The planner that these settings ask for, described and not yet laid out."""
    working, facts = tuple(each.sheet(settings) for each in WORKING), lists.sheet(settings)
    fallen, absent, cautions = frozenset(), {}, ()
    if settings.leave_out:
        full = Planner(settings.units, settings.paper, settings.title, (*working, facts))
        left = leaving(full, settings.leave_out)
        working = tuple(left.kept(sheet) for sheet in working if sheet.name not in settings.leave_out)
        fallen, absent, cautions = left.fallen, {key: full.by_key[key] for key in left.fallen}, left.cautions
    proven = proofs.without(fallen)
    return Planner(
        settings.units,
        settings.paper,
        settings.title,
        (start.sheet(settings, proven.rows, cautions), *working, methods.sheet(working), proofs.sheet(proven), facts, origin.sheet(settings)),
        absent,
        settings.colors.chosen,
    )
