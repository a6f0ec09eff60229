"""Compare: two skeins side by side, and whether they may share a piece."""

from workbookgen.language.domains import Choice
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter
from workbookgen.language.quantities import (
    GRIST_METRIC,
    GRIST_US,
    IN_METERS,
    IN_YARDS,
    MASS,
    SHARE,
    THREADS,
    Kind,
)
from workbookgen.reference import statistics, stock
from workbookgen.settings import Settings
from workbookgen.sheets.shown import asked_and_answered
from workbookgen.sheets import skeins

SHEET = "Measure"
CHAPTER = "Compare"


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (COMPARE,), (asked_and_answered(COMPARE, "words"),))


# What is compared: column of the skeins, label, unit (None for a text).
COMPARED = (
    ("finished_yd", "Finished length", IN_YARDS),
    ("finished_m", "Finished length", IN_METERS),
    ("net", "Weight", MASS),
    ("grist_yd_lb", "Grist", GRIST_US),
    ("grist_m_100g", "Grist", GRIST_METRIC),
    ("wpi", "Wraps per inch", THREADS),
    ("shrinkage", "Shrinkage", SHARE),
    ("weight_class", "Yarn weight class", None),
)


def _of(skein: str, key: str, label: str, unit: Kind | None) -> Result:
    column = f"skeins_{key}"
    return Result(f"{skein}_{key}", f"{label}, {skein}", f"pick({column}, skeins_listed, {skein})", stock.pick, unit,
                  uses={"name": skein, "names": "skeins_listed", "values": column})


DIFFERENCE = "ABS(first_grist_yd_lb - second_grist_yd_lb) / ((first_grist_yd_lb + second_grist_yd_lb) / 2)"
OF_BOTH = {"first": "first_grist_yd_lb", "second": "second_grist_yd_lb"}

def verdict(first: str, second: str) -> str:
    """Whether two grists may share a piece, in words of a formula."""
    difference = f"ROUND(ABS({first} - {second}) / (({first} + {second}) / 2), 9)"
    return f'IF({difference} <= 0.1, "go together", IF({difference} <= 0.2, "alternate rows", "keep apart"))'


COMPARE = Card(
    "compare",
    "Do they go together?",
    groups=(
        Group("You type", (
            Input("first", "First skein", Choice("skeins_listed", skeins.SHEET), needed=True),
            Input("second", "Second skein", Choice("skeins_listed", skeins.SHEET), needed=True),
        )),
        Group("Side by side", tuple(_of(skein, *compared) for compared in COMPARED for skein in ("first", "second"))),
        Group("Verdict", (
            Result("difference", "Grists differ by", DIFFERENCE, statistics.difference, SHARE, uses=OF_BOTH),
            Result("words", "In words",
                   f'IF(ROUND({DIFFERENCE}, 9) <= 0.1, "go together", IF(ROUND({DIFFERENCE}, 9) <= 0.2, "alternate rows", "keep apart"))',
                   statistics.may_share, None, uses=OF_BOTH, note="Within 10%: the same piece. Within 20%: alternate them row by row (common practice, no source)."),
        )),
    ),
)
