"""Results that older planners show in another unit than today's; in the right unit they are no differences."""

from collections.abc import Iterable

from workbookgen.carry.conversion import in_unit
from workbookgen.language.entries import Entry
from workbookgen.language.fields import Result
from workbookgen.language.quantities import GRIST_US

# Before this version, planners of every unit system showed these in yards per pound.
FIRST_WITH_TODAYS_UNITS = (0, 4, 3)
EARLIER_UNITS = dict.fromkeys(
    (
        "fiber_mean_grist",
        "fiber_limit_low",
        "fiber_limit_high",
        "fiber_grist_sum",
        "skeins_lot_mean",
        "projects_design_grist",
        "projects_grist_sum",
        "projects_mean_grist",
        "way_wanted",
        "way_grist",
    ),
    GRIST_US,
)


def in_todays_unit(key: str, result: Result, values: Iterable[Entry], version: str, system: str) -> tuple[Entry, ...]:
    """A result's values in the unit of today's planner, from a planner of this `version` and unit `system`."""
    if key not in EARLIER_UNITS or _numbers(version) >= FIRST_WITH_TODAYS_UNITS:
        return tuple(values)
    before, today = EARLIER_UNITS[key].unit(system), result.unit.unit(system)
    return tuple(in_unit(value, before, today) if isinstance(value, float) else value for value in values)


def _numbers(version: str) -> tuple[int, ...]:
    return tuple(int(each) for each in version.split(".") if each.isdigit())
