"""Made with: the version and the settings that this planner was built from, so that it can be built again."""

from workbookgen import __version__
from workbookgen.language.parts import Column, Sheet, Table
from workbookgen.settings import Settings

SHEET = "Made with"
KEY = "origin"


def sheet(settings: Settings) -> Sheet:
    # A fiber table of one's own stays behind: its lines are in the guide, and its place is nobody's business.
    told = settings.model_copy(update={"fibers": ""}) if settings.fibers else settings
    lines = (f"# workbookgen {__version__}", *told.as_toml().strip().split("\n"))
    return Sheet(
        SHEET,
        "What this planner was made with",
        "The settings it was built from. Leave them as they are: checking and renewing the planner reads them.",
        (Table(KEY, "Settings", (Column("line", "Line", tuple(line or " " for line in lines), width=90),)),),
        wide=False,
    )
