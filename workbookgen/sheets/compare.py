"""Compare: two skeins side by side, and whether they may share a piece."""

from workbookgen.language.automatic import MESSAGE
from workbookgen.language.domains import Choice
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter
from workbookgen.language.quantities import (
    GRIST_METRIC,
    GRIST_US,
    IN_METERS,
    IN_YARDS,
    LOOP,
    MASS,
    NUMBER,
    SHARE,
    THREADS,
    Kind,
)
from workbookgen.language.side_by_side import SideBySide
from workbookgen.language.views import Answers, Band, Headline, Prose, band
from workbookgen.reference import measuring, statistics
from workbookgen.settings import Settings
from workbookgen.sheets import skeins, tabs
from workbookgen.sheets.lookup import lookup
from workbookgen.unit_systems import UNIT_SYSTEMS

SHEET = tabs.MEASURE
CHAPTER = "Compare"
LEFT, RIGHT = (1, 8), (10, 12)


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (COMPARE,), (_band(settings),))


# What is compared: a column of the skeins, its label, and its unit (None for a text).
COMPARED = (
    ("finished_yd", "Length", IN_YARDS),
    ("finished_m", "Length", IN_METERS),
    ("net", "Weight", MASS),
    ("grist_yd_lb", "Grist", GRIST_US),
    ("grist_m_100g", "Grist", GRIST_METRIC),
    ("wpi", "Wraps", THREADS),
    ("washed_loop", "Loop washed", LOOP),
    ("shrinkage", "Washing took", SHARE),
    ("weight_class", "Yarn weight class", None),
)
TOLD_APART = ("finished_yd", "net", "grist_yd_lb", "wpi", "washed_loop")  # compared by how much more or less, too


def _of(skein: str, name: str, key: str, label: str, unit: Kind | None) -> Result:
    column, digits = f"skeins_{key}", 1 if unit is LOOP else None
    return lookup(f"{skein}_{key}", f"{label}, {skein}", column, name, unit, digits=digits)


def _apart(key: str, label: str) -> tuple[Result, Result]:
    """By how much the second skein exceeds the first, as a share and as a dot plot."""
    return (
        Result(f"more_{key}", f"{label}, more or less", f"second_{key} / first_{key} - 1", statistics.relative_deviation, SHARE, digits=0, is_signed=True,
               uses={"value": f"second_{key}", "mean": f"first_{key}"}, only_if=f"first_{key} > 0"),
        Result(f"dots_{key}", f"{label}, drawn", f'REPT("–", MIN(15, ROUND(ROUND(ABS(more_{key}) * 50, 9), 0))) & "●"', measuring.dots, None, uses={"deviation": f"more_{key}"}),
    )


DIFFERENCE = "ABS(first_grist_yd_lb - second_grist_yd_lb) / ((first_grist_yd_lb + second_grist_yd_lb) / 2)"
OF_BOTH = {"first": "first_grist_yd_lb", "second": "second_grist_yd_lb"}


def verdict(first: str, second: str) -> str:
    """Formula text of whether two grists may share a piece."""
    difference = f"ROUND(ABS({first} - {second}) / (({first} + {second}) / 2), 9)"
    return f'IF({difference} <= 0.1, "go together", IF({difference} <= 0.2, "alternate rows", "keep apart"))'


def _dye(skein: str, name: str) -> tuple[Result, ...]:
    """The dye lot of a skein: its own, or else that of the lot it was spun from."""
    return (
        lookup(f"{skein}_own_dye", f"Its own dye lot, {skein}", "skeins_dyed", name),
        lookup(f"{skein}_lot", f"Fiber lot, {skein}", "skeins_from_lot", name),
        lookup(f"{skein}_lot_dye", f"Dye lot of its fiber, {skein}", "fiber_dyed", f"{skein}_lot"),
        Result(f"{skein}_dye", f"Dye lot, {skein}", f"or_else({skein}_own_dye, {skein}_lot_dye)", measuring.tried_or_logged, None,
               uses={"tried": f"{skein}_own_dye", "logged": f"{skein}_lot_dye"}, only_if=f"OR(given({skein}_own_dye), given({skein}_lot_dye))"),
    )


TWO_DYES = "or_else(two_dyes, 0) = 1"
COMPARE = Card(
    "compare",
    "Beside another",
    groups=(
        Group("You type", (
            Input("first", "First skein", Choice("skeins_listed", skeins.SHEET), help="Leave it empty to take the skein chosen above."),
            Input("second", "Second skein", Choice("skeins_listed", skeins.SHEET), needed=True, help="The one to hold beside it."),
        )),
        Group("Side by side", (
            Result("left", "First skein in use", "or_else(first, measure_skein)", measuring.tried_or_logged, None,
                   uses={"tried": "first", "logged": "measure_skein"}, only_if="OR(given(first), given(measure_skein))"),
            *(_of(skein, name, *compared) for compared in COMPARED for skein, name in (("first", "left"), ("second", "second"))),
            *(each for key, label, _ in COMPARED if key in TOLD_APART for each in _apart(key, label)),
            *_dye("first", "left"),
            *_dye("second", "second"),
        )),
        Group("Verdict", (
            Result("difference", "Grists differ by", DIFFERENCE, statistics.difference, SHARE, uses=OF_BOTH),
            Result("by_grist", "By their grists", verdict("first_grist_yd_lb", "second_grist_yd_lb"), statistics.may_share, None, uses=OF_BOTH),
            Result("two_dyes", "Two dye lots", "IF(first_dye = second_dye, 0, 1)", measuring.two_dye_lots, NUMBER, digits=0,
                   uses={"first": "first_dye", "second": "second_dye"}),
            Result("words", "In words", f'IF({TWO_DYES}, IF(by_grist = "go together", "alternate rows", by_grist), by_grist)', measuring.by_dye_lots, None,
                   uses={"verdict": "by_grist", "two": "two_dyes"}),
            Result("differ", "In words", f'"Their grists differ by " & said(difference) & IF({TWO_DYES}, "; two dye lots.", ".")',
                   measuring.difference_words, None, uses={"two": "two_dyes"}),
        )),
    ),
)


def _band(settings: Settings) -> Band:
    length, grist = ("finished_m", "grist_m_100g") if UNIT_SYSTEMS[settings.units].lengths == "meters" else ("finished_yd", "grist_yd_lb")

    def row(key: str, label: str) -> tuple[str, tuple[str, ...]]:
        told = {length: "finished_yd", grist: "grist_yd_lb"}.get(key, key)
        apart = (f"compare_more_{told}", f"compare_dots_{told}") if told in TOLD_APART else ("", "")
        return label, (f"compare_first_{key}", f"compare_second_{key}", *apart)

    shown = [key for key, *_ in COMPARED if key in (length, grist) or not key.startswith(("finished_", "grist_"))]
    labels = {key: label for key, label, _ in COMPARED}
    beside = SideBySide(
        title="Beside another", heads=("one (or the skein above)", "the other", "more, or less", ""), wide=(2, 2, 1, 1), across=LEFT,
        rows=(("Skein", ("compare_first", "compare_second", "", "")), *(row(key, labels[key]) for key in shown), ("Dye lot", ("compare_first_dye", "compare_second_dye", "", ""))),
        dots=tuple(f"compare_dots_{key}" for key in TOLD_APART), loud=(f"compare_first_{grist}",),
    )
    together = Answers(
        title="Do they go together?", across=RIGHT, message=f"compare_{MESSAGE.key}", large=(Headline("compare_words", below=("compare_differ",)),),
    )
    rules = Prose(is_small=True, across=RIGHT, is_below=True, sentences=(
        "Within 10%, and of one dye lot: the same piece.", "Within 20%: alternate them, row by row.", "More: keep them apart.", "Common practice, no source.",
    ))
    return band(beside, together, rules)
