"""Samples: all that planning needs, measured once on a few yards."""

from workbookgen.language.domains import Choice, Name
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Chapter, Log, Sheet
from workbookgen.language.quantities import (
    ANGLE,
    GRIST_METRIC,
    GRIST_US,
    LENGTH,
    LOOP,
    MASS,
    MINUTES,
    NUMBER,
    PACE,
    SHARE,
    TEX,
    THREADS,
    TWIST,
    YARN_DIAMETER,
)
from workbookgen.language.repeated import repeated
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, MISSING
from workbookgen.language.usual import Usual
from workbookgen.language.views import LogView, SheetKind
from workbookgen.reference import diameter, planning, reeling, statistics, twist, yarn_count
from workbookgen.reference import fiber as trade
from workbookgen.settings import Settings
from workbookgen.sheets import by_k, fiber, light_weights, plausible, tabs, usual
from workbookgen.sheets.limits import AMOUNT, CLOSE, NONE_OR_TURNS
from workbookgen.sheets.plausible import IN_DAMP_AIR
from workbookgen.unit_systems import UNIT_SYSTEMS

SHEET = tabs.SAMPLES
CHAPTER = "Samples"
SHORTEST_PIECE = 0.75  # meters, of which half an inch of tape is under 2%
NO_GAIN = f"ROUND(yarn_out / fiber_in, 9) <= {IN_DAMP_AIR}"
READINGS = tuple(f"wpi_{number}" for number in range(1, 6))
ALL_READINGS = ", ".join(READINGS)
OF_READINGS = {f"reading_{number}": word for number, word in enumerate(READINGS, start=1)}


def _off(parts: int) -> str:
    """Formula text of how far the readings are from whole fractions of a wrap per inch, in all."""
    return " + ".join(f"IF(given({word}), ABS({word} * 0.0254 * {parts} - ROUND({word} * 0.0254 * {parts}, 0)), 0)" for word in READINGS)


# The number of lines in the table of t for too few readings.
TOO_FEW = "SUMPRODUCT((quantiles_t * quantiles_t * variation * variation > quantiles_readings * doubts_readings * doubts_readings * 1.000000001) * 1)"


def sheet(settings: Settings) -> Sheet:
    return Sheet(
        SHEET,
        SHEET,
        "Fill in only what you measured; projects plan with it when you choose it there.",
        (Chapter(CHAPTER, (samples(settings),), view(settings)),),
        kind=SheetKind.LOG,
        related=(tabs.TWIST, tabs.FIBER, tabs.PROJECTS, tabs.TIME),
    )


def view(settings: Settings) -> LogView:
    """The answers, with the grist in the planner's own unit."""
    grist = "grist_m_100g" if UNIT_SYSTEMS[settings.units].is_metric("length") else "grist_yd_lb"
    return LogView(
        typed="name lot length mass wpi_1",
        answers=(("It is", f"{grist} wpi k readings_words"), ("For planning", "loss shrinkage take_up")),
    )


def samples(settings: Settings) -> Log:
    return Log(
        "samples",
        title="",
        rows=settings.rows.samples,
        groups=(
            _you_type(),
            _thickness(),
            _grist(),
            _twist(),
            _for_planning(),
            _for_other_sheets(),
        ),
        rules=(
            Rule("clean_out > raw_in", lambda values: values["clean_out"] > values["raw_in"],
                 "Washed, dry: more than the fleece that went in. Let it dry, weigh again."),
            Rule(f"ROUND(yarn_out / fiber_in, 9) > {IN_DAMP_AIR}", lambda values: round(values["yarn_out"] / values["fiber_in"], 9) > IN_DAMP_AIR,
                 "Yarn out: more than the fiber that went in. Let it dry, weigh both again."),
            _together("length", "mass", "Length and Its weight"),
            _together("singles_turns", "singles_piece", "Turns, singles, and In singles of"),
            _together("ply_turns", "ply_piece", "Turns, ply, and In ply of"),
            _timed("spin_minutes", "singles_length", "Singles used, for the pace of spinning; of a yarn that is not plied, its length before washing"),
            _timed("ply_minutes", "plied_length", "Plied length, for the pace of plying"),
            plausible.thick_by_tex("Its weight", sentence=plausible.HEAVY),
            _short_piece(settings.units),
            *light_weights.coarse_length(settings.units, "Its weight"),
            *light_weights.coarse_loss(settings.units),
        ),
    )


def _together(one: str, other: str, labels: str) -> Rule:
    """Rules for two figures that are measured together and mean nothing alone."""
    return Rule(f"OR(AND(given({one}), NOT(given({other}))), AND(given({other}), NOT(given({one}))))",
                lambda values: (values[one] is None) != (values[other] is None), f"{MISSING}: {labels} go together.")


def _timed(minutes: str, length: str, sentence: str) -> Rule:
    return Rule(f"AND(given({minutes}), NOT(given({length})))", lambda values: values[minutes] is not None and values[length] is None, f"{MISSING}: {sentence}.")


def _short_piece(system: str) -> Rule:
    """A piece so short that what a tape may be off, before and after, hides what washing took."""
    meters = LENGTH.unit(system).value
    return Rule(f"AND(given(shrinkage), unwashed < {SHORTEST_PIECE})", lambda values: values["shrinkage"] is not None and values["unwashed"] * meters < SHORTEST_PIECE,
                f"{ASKING} Before washing: under 75 cm (30 in) shows shrinkage only to some percent. Measure a longer piece.")


def _you_type() -> Group:
    return Group("You type", (
        Input("name", "Sample", Name(), needed=True, width=19, help="What you call this sample. Projects choose it by this name."),
        Input("lot", "Fiber lot", Choice("fiber_listed", fiber.SHEET), width=15, help="What it was spun from."),
        *(
            Input(word, f"Wraps {number}", CLOSE, THREADS, width=8,
                  help="Wraps in an inch of the finished yarn, counted afresh at another place. Of uneven yarn wrap several inches, and divide: =31/3.")
            for number, word in enumerate(READINGS, start=1)
        ),
        Input("length", "Length", AMOUNT, LENGTH, help="Of the finished sample."),
        Input("mass", "Its weight", AMOUNT, MASS, help="Of that same length."),
        Input("raw_in", "Fleece in", AMOUNT, MASS, help="A handful of the skirted fleece, weighed in the grease, that you washed to see its yield; not the fiber that you spun."),
        Input("clean_out", "Washed, dry", AMOUNT, MASS, help="What that handful weighed, washed and quite dry."),
        Input("fiber_in", "Fiber in", AMOUNT, MASS, help="Prepared fiber weighed out for the sample, washed already: what washing takes is not a loss of spinning."),
        Input("yarn_out", "Yarn out", AMOUNT, MASS, help="All the yarn that it became. Its lot expects the same loss of all its fiber. "
                                                     "Log it as a skein, too: until then its fiber counts as still to spin."),
        Input("unwashed", "Before washing", AMOUNT, LENGTH, help="Its length before washing."),
        Input("washed", "After washing", AMOUNT, LENGTH, help="The same piece washed, dry and slack."),
        Input("singles_length", "Singles used", AMOUNT, LENGTH, help="Length of one of the singles that went into the ply."),
        Input("plied_length", "Plied length", AMOUNT, LENGTH, help="Length of ply that it made."),
        Input("singles_turns", "Turns, singles", NONE_OR_TURNS, NUMBER, help="Turns counted out of a piece of the singles; if the ply was washed, out of one of its strands."),
        Input("singles_piece", "In singles of", AMOUNT, LOOP, help="Length of that piece."),
        Input("ply_turns", "Turns, ply", NONE_OR_TURNS, NUMBER, width=9, help="Turns counted out of a piece of the ply."),
        Input("ply_piece", "In ply of", AMOUNT, LOOP, help="Length of that piece."),
        Input("spin_minutes", "Spinning took", AMOUNT, MINUTES, help="Minutes for that length of one of the singles, not for all of them."),
        Input("ply_minutes", "Plying took", AMOUNT, MINUTES, width=9, help="Minutes for the plied length."),
    ))


def _thickness() -> Group:
    return Group("Thickness", (
        Result("count", "Readings", f"readings({ALL_READINGS})", statistics.count, NUMBER, uses=OF_READINGS, digits=0,
               only_if=f"readings({ALL_READINGS}) > 0"),
        Result("wpi", "Wraps, mean", f"mean({ALL_READINGS})", statistics.mean, THREADS, uses=OF_READINGS, only_if=f"readings({ALL_READINGS}) > 0"),
        Result("spread", "Spread", f"stdev({ALL_READINGS})", statistics.deviation, THREADS, uses=OF_READINGS, digits=2,
               only_if=f"readings({ALL_READINGS}) > 1", note="Standard deviation of the readings."),
        Result("variation", "CV", "spread / wpi", statistics.variation, SHARE, usual=Usual(most=0.25, hint="Look at each of the wraps."),
               uses={"deviation": "spread", "mean": "wpi"},
               note="Coefficient of variation: spread over mean."),
        Result("within", "95% within ±", "SQRT(half_width * half_width + step * step / 4)", statistics.within, THREADS, digits=2,
               note="The yarn's own mean lies this near, 19 times in 20. Of wraps counted whole, half a wrap is never known."),
        Result("readings_words", "Readings to take",
               'IF(count < 3, (3 - count) & " more to see how they vary", IF(given_and(in_all, in_all <= 5), IF(in_all > count, (in_all - count) & " more", '
               'IF(IF(AND(given(within), given(wpi)), within > doubts_readings * wpi * 1.000000001, 1 = 0), "read parts of a wrap", "enough")), '
               'IF(given_and(inches, inches <= 10), "5 over " & inches & " inches each", "too uneven")) & " for ±" & ROUND(ROUND(doubts_readings * 100, 9), 1) & "%")',
               statistics.more_readings, None, uses={"error": "doubts_readings", "mean": "wpi"}, width=26,
               note="For a mean that lies as near as the sheet Sureness says, 19 times in 20, if the others vary as these do."),
        Result("width", "Yarn width", "1 / wpi", diameter.wrap_width, YARN_DIAMETER, uses={"wraps": "wpi"}),
    ))


def _grist() -> Group:
    return Group("Grist", (
        Result("grist_yd_lb", "Grist", "length / mass", yarn_count.grist, GRIST_US, digits=0),
        Result("grist_m_100g", "Grist", "length / mass", yarn_count.grist, GRIST_METRIC),
        Result("tex", "Tex", "mass / length", yarn_count.linear_density, TEX, width=9),
        Result("k", "K", by_k.fitted("wpi", "grist_yd_lb"), diameter.fitted_k, NUMBER, usual=usual.K_AS_LAID, width=8,
               uses={"wraps": "wpi", "grist": "grist_yd_lb"}, note="Your own K for wraps as laid: type it on the sheet Counts."),
    ))


def _twist() -> Group:
    return Group("Twist", (
        Result("singles_twist", "Singles", "singles_turns / singles_piece", twist.turns_counted, TWIST, usual=usual.TWISTS_COUNTED, width=9,
               uses={"turns": "singles_turns", "length": "singles_piece"}),
        Result("ply_twist", "Ply", "ply_turns / ply_piece", twist.turns_counted, TWIST, usual=usual.TWISTS_COUNTED, width=9, uses={"turns": "ply_turns", "length": "ply_piece"}),
        Result("factor_tex", "Ply factor, tex", "ply_twist / 100 * SQRT(1000 * tex)", twist.tex_factor, NUMBER, usual=usual.TWIST_FACTOR, width=9,
               uses={"twist": "ply_twist", "linear_density": "tex"}, digits=1, note="Turns per centimeter times the root of tex, of the whole yarn."),
        Result("diameter", "Diameter", by_k.width("or_else(thickness_k_touching, 0.9)", "grist_yd_lb"),
               diameter.touching_width, YARN_DIAMETER, uses={"grist": "grist_yd_lb", "k": "thickness_k_touching"},
               note="Threads touching, by length and weight, with a K of 0.9; your own stands on the sheet Counts. Wraps as laid have air between them."),
        Result("angle", "Ply angle", "ATAN(PI() * diameter * ply_twist)", twist.surface_angle, ANGLE, uses={"twist": "ply_twist"},
               note="At the surface, by that diameter, as on the sheet Twist: there the same angle gives the same turns. "
                    "Not pressed together, the yarn is thicker and its angle looks wider."),
        Result("balance", "Against balance", "ply_twist / (2 / 3 * singles_twist) - 1", twist.balance, SHARE,
               uses={"plied_twist": "ply_twist"}, leaves=("share",), usual=Usual(-0.75, 2.0, "Look at the turns of singles and ply, and at each piece."),
               only_if="singles_twist > 0", note="Two thirds of the singles' twist would be 0%."),
        Result("balance_words", "In words",
               'IF(ABS(ROUND(balance, 9)) <= 0.125, "balanced", IF(balance > 0, "more ply twist than balance", "less ply twist than balance"))',
               twist.balance_words, None, width=25),
    ))


def _for_planning() -> Group:
    return Group("For planning", (
        Result("scoured_yield", "Scoured yield", "clean_out / raw_in", trade.seen_yield, SHARE, width=9, uses={"before": "raw_in", "after": "clean_out"},
               only_if="clean_out <= raw_in", note="Of the washed handful: its lot expects it of the whole fleece."),
        Result("loss", "Spinning loss", "MAX(0, 1 - yarn_out / fiber_in)", trade.share_lost, SHARE, usual=usual.LOST_IN_SPINNING, width=9,
               uses={"before": "fiber_in", "after": "yarn_out"},
               only_if=NO_GAIN, note="In damper air the yarn may weigh a little more: then nothing was lost."),
        Result("shrinkage", "Shrinkage", "1 - washed / unwashed", reeling.shrinkage, SHARE, usual=usual.SHRUNK_IN_A_SAMPLE, uses={"length": "unwashed", "finished": "washed"}),
        Result("take_up", "Take-up", "1 - plied_length / singles_length", reeling.shrinkage, SHARE, usual=usual.OF_ONE_SINGLE, width=9,
               uses={"length": "singles_length", "finished": "plied_length"}, note="Share of the singles' length lost in plying."),
        Result("feed", "Feed", "1 / (1 - take_up)", twist.feed, NUMBER, width=8, digits=3,
               note="Of a component on the sheet Yarn: length of single in one length of ply; below 1, type 1."),
        Result("spin_pace", "Spinning", "singles_length / spin_minutes", planning.pace, PACE, usual=usual.TIMED, uses={"length": "singles_length", "minutes": "spin_minutes"}),
        Result("ply_pace", "Plying", "plied_length / ply_minutes", planning.pace, PACE, usual=usual.TIMED, uses={"length": "plied_length", "minutes": "ply_minutes"}),
    ))


def _for_other_sheets() -> Group:
    return Group("For other sheets", (
        Result("step", "Wraps read to", f"IF({_off(1)} < 0.000001, 1, IF({_off(2)} < 0.000001, 0.5, 0)) / 0.0254", statistics.read_to, THREADS, uses=OF_READINGS,
               only_if=f"readings({ALL_READINGS}) > 0", note="Whole or half wraps, if no reading is finer."),
        Result("half_width", "Within, by spread", "class_of(quantiles_t, quantiles_readings, count) * spread / SQRT(count)", statistics.half_width, THREADS,
               uses={"deviation": "spread"}, digits=2, note="19 times in 20, if the readings were not rounded."),
        Result("in_all", "Readings in all", f"INDEX(quantiles_readings, MAX(2, 1 + {TOO_FEW}))", statistics.readings_in_all, NUMBER, uses={"error": "doubts_readings"}, digits=0,
               only_if=f"{TOO_FEW} < COUNT(quantiles_readings)"),
        Result("inches", "Inches at a time", "ROUNDUP(ROUND(POWER(INDEX(quantiles_t, 4) * variation / doubts_readings, 2) / 5, 6), 0)", statistics.inches_each, NUMBER,
               uses={"error": "doubts_readings"}, digits=0),
        Result("seen_loss", "Lost in spinning", "MAX(0, 1 - yarn_out / fiber_in)", trade.seen_loss, SHARE, uses={"before": "fiber_in", "after": "yarn_out"},
               only_if=NO_GAIN, note="Of this sample: its lot expects it of all its fiber."),
        repeated("of_lot", "Sample of", "lot", width=18),
        repeated("listed", "Listed as", "name", width=22),
    ), printed=False)
