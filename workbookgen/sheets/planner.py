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

WORKING = (
    reels, guide, fiber, buying, scouring, samples, yarn, components, twist, skeins, compare, labels, knitting, pieces, weaving, projects, time, figures, cost, pictures, counts, questions,
)


def planner(settings: Settings) -> Planner:
    """The planner that these settings ask for, described and not yet laid out."""
    working = tuple(each.sheet(settings) for each in WORKING)
    return Planner(
        settings.units,
        settings.paper,
        settings.title,
        (
            start.sheet(settings),
            *working,
            methods.sheet(working),
            proofs.sheet(settings),
            lists.sheet(settings),
            origin.sheet(settings),
        ),
    )
