"""Skeins of planners in which no skein could belong to a project: they come over free, until a project is chosen.

The lot of a skein does not show which project it serves: what a lot gave may be lent, sold or meant for another
piece. So no project is chosen on the user's behalf; it is reported instead.
"""

from workbookgen.errors import Fault
from workbookgen.filled.planner import FilledPlanner
from workbookgen.language.entries import Entries

SKEINS, PROJECTS, OF_PROJECT = "skeins_name", "projects_name", "skeins_project"
CHOOSE_PROJECTS = (
    "the old planner did not say which project a skein is for. Until you choose the project beside each skein, "
    "the skeins are free and count for none, so projects have less yarn than the old planner shows."
)


def skeins_without_project(old: FilledPlanner, entries: Entries) -> list[Fault]:
    """What to choose, if skeins and projects came over and nothing in the old planner connected them."""
    both = all(any(value is not None for value in entries.get(key, ())) for key in (SKEINS, PROJECTS))
    return (
        [Fault("Skeins", CHOOSE_PROJECTS)] if both and OF_PROJECT not in old.entries and OF_PROJECT in entries else []
    )
