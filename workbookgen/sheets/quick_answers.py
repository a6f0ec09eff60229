"""Questions: short calculations that need no record."""

from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter
from workbookgen.language.quantities import (
    ANGLE,
    GRIST,
    GRIST_METRIC,
    GRIST_US,
    LOOP,
    MASS,
    NUMBER,
    SHARE,
    TEX,
    THREADS,
    YARN_DIAMETER,
)
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, MISSING
from workbookgen.reference import diameter, knitting, plying, reeling, yarn_count
from workbookgen.settings import Settings
from workbookgen.sheets import light_weights, plausible, singles, tabs, usual
from workbookgen.sheets.card_view import asked_and_answered, in_the_planners_unit
from workbookgen.sheets.limits import CLOSE, LARGE, NONE_OR_AMOUNT, PLIED, REACH, SHRINKAGE, TURNS

SHEET = tabs.TWIST
CHAPTER = "Questions"


def chapter(settings: Settings) -> Chapter:
    large_answers = ((backwards(settings), in_the_planners_unit(settings, "singles", "singles_m")), (making(settings), "possible"), (CROWDED, "growth"))
    cards = tuple(card for card, _ in large_answers)
    return Chapter(CHAPTER, cards, tuple(asked_and_answered(card, answer) for card, answer in large_answers))


def backwards(settings: Settings) -> Card:
    """From a plied yarn back to its singles. Without the sheet Counts there is no K, and so no grist by wraps."""
    return Card(
        "backwards",
        "From the yarn you want back to its singles",
        about="Give the grist of the plied yarn. Or give the wraps per inch that it should have, which K on the sheet Counts turns into a grist.",
        groups=(
            Group("You type", (
                Input("grist", "Grist of the plied yarn", LARGE, GRIST, needed="Counts" in settings.without),
                Input("wraps", "Or wraps per inch", CLOSE, THREADS, usual=usual.WRAPS, help="Used if you give no grist; K on the sheet Counts turns it into one."),
                Input("strands", "Strands", PLIED, NUMBER, needed=True, starts_as=2.0),
                singles.take_up(),
                Input("shrinkage", "Shrinkage in washing", SHRINKAGE, SHARE, usual=usual.SHRUNK,
                      help="Share of the length that washing takes; from a sample. Empty takes the usual one on the sheet Sureness."),
                Input("known", "One strand is already there", LARGE, GRIST, help="Grist of a thread or single to be used; the card says what each of the others must be."),
            )),
            _back_to_singles(),
        ),
        rules=(
            Rule("AND(NOT(given(grist)), NOT(given(wraps)))", lambda values: values["grist"] is None and values["wraps"] is None,
                 "Still to fill in: the grist, or the wraps per inch."),
            plausible.thick_by_tex("Grist of the plied yarn"),
            Rule("ROUND(known_tex / strands_tex, 9) >= 1", lambda values: round(values["known_tex"] / values["strands_tex"], 9) >= 1,
                 f"{ASKING} One strand is already there: it alone is as thick as all strands may be, and nothing is left for the rest."),
            plausible.no_take_up(),
        ),
    )


def _back_to_singles() -> Group:
    return Group("Worked out", (
        Result("from_wraps", "Grist for those wraps",
               "wraps * 0.0254 / thickness_k_wrapped * wraps * 0.0254 / thickness_k_wrapped * 0.9144 / 453.59237",
               plying.grist_for_wraps, GRIST, uses={"k": "thickness_k_wrapped"}),
        Result("plied", "Grist to make", "or_else(grist, from_wraps)", yarn_count.grist_in_use, GRIST,
               uses={"wanted": "grist"}, only_if="OR(given(grist), given(from_wraps))"),
        Result("tex", "Tex of the plied yarn", "1 / plied", yarn_count.direct_count, TEX, uses={"grist": "plied"}),
        singles.shrinkage_used(),
        Result("singles_tex", "Tex of each single", "tex * (1 - shrinkage_used) * (1 - take_up) / strands", plying.singles_for, TEX,
               uses={"plied": "tex", "shrinkage": "shrinkage_used"}, note="Before washing."),
        Result("singles", "Grist of each single", "1 / singles_tex", yarn_count.grist_of_density, GRIST_US, digits=0, uses={"linear_density": "singles_tex"},
               note="Spin to this, before washing."),
        Result("singles_m", "Grist of each single", "1 / singles_tex", yarn_count.grist_of_density, GRIST_METRIC, uses={"linear_density": "singles_tex"}),
        Result("known_tex", "Tex of the strand you have", "1 / known", yarn_count.direct_count, TEX, uses={"grist": "known"}),
        Result("strands_tex", "Tex of all strands", "tex * (1 - shrinkage_used) * (1 - take_up)", plying.all_strands, TEX,
               uses={"plied": "tex", "shrinkage": "shrinkage_used"}, note="Before washing."),
        Result("rest_tex", "Tex of the rest", "strands_tex - known_tex", plying.missing_component, TEX,
               only_if="strands_tex > known_tex", uses={"resultant": "strands_tex", "known": "known_tex"}),
        Result("other_tex", "Tex of each other single", "rest_tex / (strands - 1)", plying.each_other_strand, TEX, uses={"rest": "rest_tex"}),
        Result("rest", "Grist of each other", "1 / other_tex", yarn_count.grist_of_density, GRIST_US, digits=0, uses={"linear_density": "other_tex"},
               note="Spin each single beside the strand you have to this, before washing."),
        Result("rest_m", "Grist of each other", "1 / other_tex", yarn_count.grist_of_density, GRIST_METRIC, uses={"linear_density": "other_tex"}),
    ))


def making(settings: Settings) -> Card:
    return Card(
        "making",
        "While making: will the ball last?",
        about="Weigh the ball, work some rows, weigh it again.",
        groups=(
            Group("You type", (
                Input("before", "Ball before", LARGE, MASS, needed=True),
                Input("after", "Ball after", NONE_OR_AMOUNT, MASS, needed=True),
                Input("rows", "Rows worked between", TURNS, NUMBER, needed=True),
                Input("left", "Yarn left in all", NONE_OR_AMOUNT, MASS, needed=True, help="This ball and all others."),
                Input("wanted", "Rows still to work", NONE_OR_AMOUNT, NUMBER, help="With two more for binding off (common practice, no source)."),
            )),
            Group("Worked out", (
                Result("possible", "Rows that are possible", "left / ((before - after) / rows)", knitting.rows_possible, NUMBER, digits=1, only_if="before > after",
                       note="Yarn left over the weight of one row."),
                Result("words", "In words", 'IF(ROUND(possible - wanted * 1.07, 9) >= 0, "it will last", IF(ROUND(possible - wanted * 0.93, 9) >= 0, '
                                       '"too close to tell: weigh again later", "it will not last"))', knitting.lasts, None),
            )),
        ),
        rules=(
            Rule("after >= before", lambda values: values["after"] >= values["before"], "Ball after: it must be lighter than before."),
            *light_weights.coarse_difference(settings.units),
        ),
    )


def _arm_angle(one: str, other: str) -> str:
    """Formula text of the angle between the two legs that meet at an end of the arm `one`.

    The tangent of half of it is half the other arm over the middle line.
    """
    return f"2 * ATAN({other} / SQRT(4 * height * height + {one} * {one}))"


CROWDED = Card(
    "crowded",
    "How much longer does a full reel wind?",
    about="Layers lie on layers, and each is longer than the one below: by some tenths of a percent for a fine yarn wound wide, "
          "1 to 2% for a thick one wound narrow, more on a crowded reel.",
    groups=(
        Group("You type", (
            Input("loop", "Loop of the bare reel", REACH, LOOP, needed=True),
            Input("wraps", "Wraps on it", TURNS, NUMBER, needed=True),
            Input("wpi", "Wraps per inch as they lie", CLOSE, THREADS, usual=usual.WRAPS, needed=True),
            Input("width", "Width of the winding", REACH, LOOP, needed=True, help="How wide the yarn spreads on the arms."),
            Input("height", "Niddy-noddy: height", REACH, LOOP, help="Leave these three empty for a plain frame; all are measured from yarn to yarn."),
            Input("arm_a", "Niddy-noddy: one arm", REACH, LOOP),
            Input("arm_b", "Niddy-noddy: other arm", REACH, LOOP),
        )),
        Group("Worked out", (
            Result("diameter", "Yarn width", "1 / wpi", diameter.wrap_width, YARN_DIAMETER, uses={"wraps": "wpi"}),
            Result("layers", "Layers", "ROUNDUP(ROUND(wraps * diameter / width, 6), 0)", reeling.layers_wound, NUMBER, digits=0),
            Result("turning", "The path turns by",
                   f"IF(AND(given(height), given(arm_a), given(arm_b)), 2 * (PI() - {_arm_angle('arm_a', 'arm_b')}) + 2 * (PI() - {_arm_angle('arm_b', 'arm_a')}), 2 * PI())",
                   reeling.turning, ANGLE, note="360° round a plain frame, more over the arm ends of a niddy-noddy."),
            Result("last", "Of the last layer, filled", "MIN(1, wraps * diameter / width - (layers - 1))", reeling.last_layer, SHARE, only_if="AND(layers >= 1, layers < 1000)"),
            Result("mean", "Mean loop", "loop + turning * diameter * (layers - 1) * (layers - 2 + 2 * last) / (2 * (layers - 1 + last))", reeling.mean_loop, LOOP, digits=3,
                   note="Of all wraps; a last layer that is not full counts for less. For skeins wound so, type it as the rated loop of a reel of its own, on the sheet Reels."),
            Result("growth", "Longer by", "mean / loop - 1", reeling.growth, SHARE, uses={"mean_loop": "mean"}, digits=2,
                   note="At most: soft layers sink into those below."),
        )),
    ),
    rules=(
        Rule("AND(OR(given(height), given(arm_a), given(arm_b)), NOT(AND(given(height), given(arm_a), given(arm_b))))",
             lambda values: len({values[each] is None for each in ("height", "arm_a", "arm_b")}) == 2, f"{MISSING}: height and both arms go together."),
        Rule("layers >= 1000", lambda values: values["layers"] >= 1000,
             f"{ASKING} Wraps per inch as they lie: they make 1,000 layers or more. Look at the wraps and the width, too."),
    ),
)
