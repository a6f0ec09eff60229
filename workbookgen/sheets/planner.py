"""The planner: all sheets, in the order in which they stand in the workbook."""

from workbookgen.language.parts import Planner
from workbookgen.settings import Settings
from workbookgen.sheets import (
    buying,
    counts,
    fiber,
    guide,
    lists,
    methods,
    origin,
    projects,
    proofs,
    reels,
    samples,
    skeins,
    start,
    twist,
    yarn,
)


def planner(settings: Settings) -> Planner:
    """The planner that these settings ask for, described and not yet laid out."""
    working = tuple(each.sheet(settings) for each in (reels, guide, fiber, buying, samples, yarn, twist, skeins, projects, counts))
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
