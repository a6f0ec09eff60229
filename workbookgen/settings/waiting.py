"""How long a full planner keeps a spreadsheet program busy, reported before anyone fills it in.

Each lot and each project adds up its own skeins, and searches all of them for that; so the time grows with skeins
times lots and projects. It was measured in LibreOffice 7.4: 13 s of work after one wrap typed into 20,000, with 1,000
lots and 500 projects, and 1.1 s into a quarter of each.
"""

from workbookgen.settings import Settings

LOT_SUMS, PROJECT_SUMS = 6, 9  # columns of the skeins that each lot and each project adds up
SECONDS = 8e-8  # for one skein in one sum
BEARABLE = 2.0  # seconds after each entry


def seconds_an_entry(settings: Settings) -> float:
    """What one more skein takes where every line of the planner is filled."""
    rows = settings.rows
    projects = 0 if "Projects" in settings.without else rows.projects
    return SECONDS * rows.skeins * (LOT_SUMS * rows.fiber + PROJECT_SUMS * projects)


def long_wait(settings: Settings) -> str:
    """A sentence for someone who asks for a planner so large that each entry makes them wait; else nothing."""
    seconds = seconds_an_entry(settings)
    if seconds <= BEARABLE:
        return ""
    rows = settings.rows
    sums = f"{rows.fiber:,} lots" + ("" if "Projects" in settings.without else f" and {rows.projects:,} projects")
    return (
        f"Once its lines are full, a spreadsheet program may need {seconds:.0f} seconds or more after each skein you type: "
        f"{rows.skeins:,} skeins are added up for {sums}. Fewer lines under [rows] in the settings make it quicker."
    )
