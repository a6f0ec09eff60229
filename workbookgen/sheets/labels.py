"""Labels: eight strips to a page, each for a skein chosen from the log."""

from workbookgen.language.domains import Choice, Note
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Chapter, Log
from workbookgen.language.views import Listing, LogView, band
from workbookgen.reference import stock
from workbookgen.settings import Settings
from workbookgen.sheets import skeins

SHEET = "Print"
CHAPTER = "Labels"


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (labels(settings),), (band(Listing(title="Labels", block="labels", view=VIEW, aside="Choose a skein in each line.")),))


VIEW = LogView(typed="skein words", answers=(("On the label", "from_lot length_words mass_words grist_words weight_class"),))


def labels(settings: Settings) -> Log:
    return Log(
        "labels",
        title="",
        rows=settings.rows.labels,
        groups=(
            Group("You type", (
                Input("skein", "Skein", Choice("skeins_listed", skeins.SHEET), needed=True, width=24, help="From the sheet Skeins."),
                Input("words", "Your words", Note(), width=44, help="Name of the yarn, care, a date, a price."),
            )),
            Group("On the label", (
                _of_skein("from_lot", "Fiber", 22),
                _of_skein("length_words", "Length", 20),
                _of_skein("mass_words", "Weight", 18),
                _of_skein("grist_words", "Grist", 26),
                _of_skein("weight_class", "Yarn weight class", 26),
            )),
        ),
    )


def _of_skein(key: str, label: str, width: int) -> Result:
    """A text of the chosen skein."""
    column = f"skeins_{key}"
    return Result(key, label, f"pick({column}, skeins_listed, skein)", stock.pick, None,
                  uses={"name": "skein", "names": "skeins_listed", "values": column}, width=width)
