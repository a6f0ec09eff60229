"""How long a full planner keeps a spreadsheet program busy, reported before anyone fills it in.

Each lot and each project adds up its own skeins, and searches all of them for that; so the time grows with skeins
times lots and projects. LibreOffice works out only what it shows. Measured in its window, version 7.4, with 20,000
skeins, 1,000 lots and 500 projects: 0.1 s of work after an entry on a log's sheet (the first 0.9 s), and 12 to 20 s
when one comes to the desk afterwards; with a quarter of each, 1.0 s. Others may work out all of it after each entry.
"""

from workbookgen.settings import Settings

LOT_SUMS, PROJECT_SUMS = 6, 9  # columns of the skeins that each lot and each project adds up
SECONDS = 8e-8  # for one skein in one sum
BEARABLE = 2.0  # seconds


def seconds_an_entry(settings: Settings) -> float:
    """What one more skein takes, all sums worked out anew, where every line of the planner is filled."""
    rows = settings.rows
    projects = 0 if "Projects" in settings.without else rows.projects
    return SECONDS * rows.skeins * (LOT_SUMS * rows.fiber + PROJECT_SUMS * projects)


def long_wait(settings: Settings) -> str:
    """A sentence for someone who asks for a planner so large that its sums make them wait; else nothing."""
    seconds = seconds_an_entry(settings)
    if seconds <= BEARABLE:
        return ""
    rows = settings.rows
    sums = f"{rows.fiber:,} lots" + ("" if "Projects" in settings.without else f" and {rows.projects:,} projects")
    return (
        f"Once its lines are full, a spreadsheet program may need {seconds:.0f} seconds or more "
        f"to add {rows.skeins:,} skeins up for {sums}: "
        "LibreOffice when you come to the desk, others perhaps after each skein you type. "
        "Fewer lines under [rows] in the settings make it quicker."
    )
