"""Made with: the version and the settings that this planner was built from, so that it can be built again."""

from workbookgen import __version__
from workbookgen.language.parts import Chapter, Column, Table
from workbookgen.language.views import Facts, band
from workbookgen.settings import Settings
from workbookgen.sheets import tabs

SHEET = tabs.REFERENCE
CHAPTER = "Made with"
KEY = "origin"


def chapter(settings: Settings) -> Chapter:
    # A fiber table of one's own stays behind: its lines are in the guide, and its path is private.
    told = settings.model_copy(update={"fibers": ""}) if settings.fibers else settings
    lines = (f"# workbookgen {__version__}", *told.as_toml().strip().split("\n"))
    table = Table(
        KEY,
        "What this planner was made with",
        (Column("line", "Line", tuple(line or " " for line in lines), runs_on=True),),
        about="The settings it was built from. Leave them as they are: checking and renewing the planner reads them.",
    )
    return Chapter(CHAPTER, (table,), (band(Facts(table=KEY, is_printed=False)),))
