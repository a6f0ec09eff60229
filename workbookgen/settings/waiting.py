"""How long a full planner keeps a spreadsheet program busy, so that it can be said before anyone fills it in.

Each lot and each project searches all skeins to add up its own, so the time grows with the number of skeins times
that of lots and projects. LibreOffice calculates only what it shows. Measured in its window, version 7.4, with 20,000
skeins, 1,000 lots and 500 projects in a file that had been saved with its results: 0.2 to 0.3 s after an entry on a
log's sheet (0.8 s after the first), and 33 to 53 s on going to the desk afterwards. It looks at 300 million cells
then, each of which has to come from memory, since the cells of a column lie far apart there: 0.1 microseconds each
with results, half of that in a file without (16 s). Other programs may calculate everything after each entry.
"""

from workbookgen.settings.model import Settings

LOT_SUMS, PROJECT_SUMS = 7, 21  # columns of the skeins that each lot and each project adds up
SECONDS = 1.2e-7  # per skein and sum
BEARABLE = 2.0  # seconds


def seconds_an_entry(settings: Settings) -> float:
    """The time after one more skein, if every line of the planner is filled and all sums are calculated anew."""
    rows = settings.rows
    projects = 0 if "Projects" in settings.without else rows.projects
    return SECONDS * rows.skeins * (LOT_SUMS * rows.fiber + PROJECT_SUMS * projects)


def long_wait(settings: Settings) -> str:
    """A warning if a planner is so large that its sums will keep people waiting; otherwise ""."""
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
