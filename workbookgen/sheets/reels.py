"""Reels: how long one full turn of each reel is, and how sure that is."""

from workbookgen.language.domains import Name
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Chapter, Log, Sheet
from workbookgen.language.quantities import LENGTH, LOOP, SHARE
from workbookgen.language.repeated import repeated
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import MISSING, UNKNOWN
from workbookgen.language.views import LogView, SheetKind
from workbookgen.reference import reeling
from workbookgen.settings import Settings
from workbookgen.settings.reels import CORD, SPAN, TOLERANCE, TURNS, Reel, shown
from workbookgen.sheets import plausible, tabs, usual

SHEET = tabs.REELS
CHAPTER = "Reels"


def sheet(settings: Settings) -> Sheet:
    return Sheet(
        SHEET,
        SHEET,
        "Give the rated loop, or better: wind a cord of known length and count its turns.",
        (Chapter(CHAPTER, (reels(settings),), VIEW),),
        kind=SheetKind.LOG,
        related=(tabs.MEASURE, tabs.SKEINS, tabs.TWIST),
    )


# Half of a quarter of a turn, or of a tenth; none where turns are whole, as marked on the cord, or read more finely.
PART_OF_A_TURN = (
    "IF(ABS(turns - ROUND(turns, 0)) < 0.000001, 0, IF(ABS(4 * turns - ROUND(4 * turns, 0)) < 0.000001, 0.125, "
    "IF(ABS(10 * turns - ROUND(10 * turns, 0)) < 0.000001, 0.05, 0)))"
)
VIEW = LogView(
    typed="name rated cord turns tolerance",
    answers=(("One turn is", "loop basis relative"), ("A hundred wraps", "hundred hundred_tolerance")),
)


def reels(settings: Settings) -> Log:
    return Log(
        "reels",
        title="",
        rows=settings.rows.reels,
        starts_with=tuple(starting_reel(reel, settings.units) for reel in settings.reels),
        groups=(
            _you_type(),
            _the_loop(),
            Group("A hundred wraps", (
                Result("hundred", "Measure", "100 * loop", reeling.hundred_wraps, LENGTH, digits=1),
                Result("hundred_tolerance", "±", "100 * tolerance", reeling.hundred_wraps_tolerance, LENGTH, digits=1),
            )),
            Group("For other sheets", (
                Result("misread", "Cord, misread", f"{PART_OF_A_TURN} / turns", reeling.misread_turns, SHARE, digits=2, only_if="measured > 0",
                       note="By half of the parts in which its turns were read, where no tolerance is typed."),
                Result("doubt", "Loop ±, standard", "or_else(tolerance, loop * IF(given(misread), MAX(0.005, misread), IF(given(from_arms), 0.005, 0.02))) / SQRT(3)",
                       reeling.loop_uncertainty, LOOP, digits=3,
                       note="Standard uncertainty. A loop without tolerance is taken within 0.5% if it was measured, or within half of the part of a turn to which its cord "
                            "was read, and within 2% as rated (common practice, no source)."),
                repeated("listed", "Listed as", "name", width=24,
                       note="The name under which skeins find this reel."),
            ), printed=False),
        ),
        rules=(
            Rule("OR(AND(given(cord), NOT(given(turns))), AND(given(turns), NOT(given(cord))))",
                 lambda values: (values["cord"] is None) != (values["turns"] is None),
                 f"{MISSING}: the cord's length and the turns it makes go together."),
            Rule("AND(OR(given(height), given(arm_a), given(arm_b)), NOT(AND(given(height), given(arm_a), given(arm_b))))",
                 lambda values: len({values[each] is None for each in ("height", "arm_a", "arm_b")}) == 2,
                 f"{MISSING}: height and both arms go together."),
            Rule("NOT(given(loop))", lambda values: values["loop"] is None, f"{UNKNOWN}: type the rated loop, or better a cord's length and the turns it makes."),
            plausible.off_the_rated(),
            plausible.cord_and_arms(),
            plausible.unlike_arms(),
        ),
    )


def _you_type() -> Group:
    return Group("You type", (
        Input("name", "Reel", Name(), needed=True, width=24, help="What you call this reel. Skeins choose it by this name."),
        Input("rated", "Rated loop", SPAN, LOOP, help="What the maker says one full turn measures; without a tolerance it is taken within 2%."),
        Input("cord", "Cord length", CORD, LOOP, help="A cord that does not stretch, wound on like yarn."),
        Input("turns", "Cord turns", TURNS, help="Turns that the cord makes; parts of a turn count, as 4.25. Best are whole turns, marked on the cord, which you then measure: "
                                                     "of seven turns, a quarter misread by half is 2%."),
        Input("height", "Height", SPAN, LOOP, help="Niddy-noddy: from the yarn on one arm to the yarn on the other, along the shaft."),
        Input("arm_a", "One arm", SPAN, LOOP, help="Niddy-noddy: one arm, from the yarn at one end to the yarn at the other. In notches it lies within the ends."),
        Input("arm_b", "Other arm", SPAN, LOOP, help="Niddy-noddy: the other arm, measured alike."),
        Input("tolerance", "Loop ±", TOLERANCE, LOOP, usual=usual.OFF_A_LOOP, help="How far the loop may be off, either way."),
    ))


def _the_loop() -> Group:
    return Group("The loop", (
        Result("measured", "By the cord", "cord / turns", reeling.measured_loop, LOOP,
               note="Cord length over the turns it makes."),
        Result("from_arms", "By height and arms",
               "4 * SQRT(height * height + arm_a * arm_a / 4 + arm_b * arm_b / 4)",
               reeling.niddy_noddy_loop, LOOP, note="Four legs of yarn from arm to arm."),
        Result("loop", "Loop in use",
               "or_else(measured, or_else(from_arms, rated))",
               reeling.loop_in_use, LOOP, usual=usual.LOOPS,
               only_if="OR(given(measured), given(from_arms), given(rated))",
               note="Your cord beats the arithmetic, and that beats the rated loop."),
        Result("basis", "Known from",
               'IF(given(measured), "measured with a cord", IF(given(from_arms), "from height and arms", "rated"))',
               reeling.loop_basis, None,
               only_if="OR(given(measured), given(from_arms), given(rated))", width=21),
        Result("relative", "Loop ±", "tolerance / loop", reeling.relative_tolerance, SHARE, digits=2,
               note="The tolerance as a share of the loop."),
    ))


def starting_reel(reel: Reel, units: str) -> dict[str, float | str]:
    """A reel of the settings as a record of the log, in the units that the log shows."""
    arms = reel.arms or (None, None)
    lengths = {"rated": reel.loop, "cord": reel.cord, "height": reel.height, "arm_a": arms[0], "arm_b": arms[1], "tolerance": reel.tolerance}
    record: dict[str, float | str] = {"name": reel.name} | {key: shown(text, units) for key, text in lengths.items() if text}
    return record | ({"turns": reel.turns} if reel.turns else {})
