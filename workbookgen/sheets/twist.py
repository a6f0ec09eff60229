"""Twist: turns for a wanted yarn, counted turns, the balanced ply, and how to insert it."""

from workbookgen.language.domains import Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter
from workbookgen.language.quantities import (
    ANGLE,
    GRIST,
    LOOP,
    NUMBER,
    SHARE,
    STAPLE,
    TEX,
    TWIST,
    TWIST_PER_METER,
    YARN_DIAMETER,
)
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING
from workbookgen.language.usual import Usual
from workbookgen.language.views import LEFT, Picture
from workbookgen.reference import diameter, yarn_count
from workbookgen.reference import twist as trade
from workbookgen.settings import Settings
from workbookgen.sheets import lists, plausible, tabs, usual, wheel
from workbookgen.sheets.card_view import asked_and_answered, in_the_planners_unit
from workbookgen.sheets.how_fine import FINEST
from workbookgen.sheets.limits import AMOUNT, NONE_OR_TURNS, NONE_OR_TWISTED, PLIED, REACH, SHRINKAGE, TWISTED, TWOFOLD

SHEET = tabs.TWIST
CHAPTER = "Twist"

LEAST_FACTOR, MOST_FACTOR = 0.4, 12  # in the cotton system: softer than the softest single, harder than crepe; common practice, no source
OF_FINEST = "generic of_kind one wanted_tex within kind_staple"  # intermediate results


def chapter(settings: Settings) -> Chapter:
    drawn, finest = {WANTED.key: ANGLE_DRAWN}, in_the_planners_unit(settings, "grist", "grist_m")
    first, last = (
        tuple(asked_and_answered(each, big, hidden=hidden, drawn=drawn.get(each.key)) for each, big, hidden in cards)
        for cards in (((WANTED, "turns", ""), (PLY, "twist", "by_grist take_up_used")), ((COUNTED, "twist", ""), (FINEST, finest, OF_FINEST)))
    )
    holders = (WANTED, COUNTED, PLY, wheel.WHEEL, wheel.whorls(settings), wheel.SPINDLE, FINEST)
    return Chapter(CHAPTER, holders, (*first, *wheel.bands(), *last), wheel.CAUTIONS)


ANGLE_DRAWN = Picture(
    file="angle-of-twist.png",
    about="A yarn from the side, its axis dashed. A fiber at its surface runs slantwise round it; the angle of twist lies between this fiber and the axis.",
    across=LEFT,
    is_below=True,
)


def factors(twist: str, within: Usual | None = None) -> tuple[Result, ...]:
    """The twist factor of a yarn in the systems in use; the words are the twist's and tex.

    The last is usually `within` a range.
    """
    return (
        Result("cotton", "Twist factor, cotton", f"{twist} * 0.0254 / SQRT(453.59237 / (840 * 0.9144) / tex)", trade.cotton_factor,
               NUMBER, uses={"twist": twist, "linear_density": "tex"}, note="Turns per inch over the root of the cotton count."),
        Result("worsted", "Twist factor, worsted", f"{twist} * 0.0254 / SQRT(453.59237 / (560 * 0.9144) / tex)", trade.worsted_factor,
               NUMBER, uses={"twist": twist, "linear_density": "tex"}, note="Turns per inch over the root of the worsted count."),
        Result("run", "Twist factor, woolen run", f"{twist} * 0.0254 / SQRT(453.59237 / (1600 * 0.9144) / tex)", trade.run_factor,
               NUMBER, uses={"twist": twist, "linear_density": "tex"}, note="Turns per inch over the root of the run."),
        Result("factor_tex", "Twist factor, tex", f"{twist} / 100 * SQRT(1000 * tex)", trade.tex_factor,
               NUMBER, uses={"twist": twist, "linear_density": "tex"}, digits=1, usual=within, note="Turns per centimeter times the root of tex."),
    )


WANTED = Card(
    "twist",
    "Twist for a single or a plied yarn",
    groups=(
        Group("You type", (
            Input("grist", "Grist", AMOUNT, GRIST, needed=True, help="Of the yarn that gets this twist."),
            Input("multiplier", "Twist factor", Number(above=0, most=1000), NUMBER, needed=True, starts_as=2.5,
                  help="Cotton: knitting 2.1 to 3.0, weft 3.0 to 3.8, warp 3.4 to 5.0 (handbook, read). Wool takes less."),
            Input("system", "In this system", lists.one_of(lists.TWISTS), needed=True, starts_as="cotton"),
            Input("slant", "Or angle wanted", Number(above=0, below=60), ANGLE, help="At the surface: soft 10 to 20°, hard 25 to 35° (common practice, no source)."),
            Input("staple", "Staple length", REACH, STAPLE, usual=usual.STAPLES, help="How long the fibers are."),
            Input("wraps", "Turns in a staple, at least", Number(above=0, most=50), NUMBER, blank_means=4,
                  help="3 to 5 for soft yarn, more for warp; empty means 4 (common practice, no source)."),
        )),
        Group("Worked out", (
            Result("tex", "Tex", "1 / grist", yarn_count.direct_count, TEX),
            Result("turns", "Turns", "multiplier * lookup(twists_scale, twists_name, system) / SQRT(1000 * tex)", trade.turns, TWIST,
                   uses={"linear_density": "tex"}, note="Twist factor times the root of the count."),
            Result("turns_m", "Turns", "multiplier * lookup(twists_scale, twists_name, system) / SQRT(1000 * tex)", trade.turns, TWIST_PER_METER,
                   uses={"linear_density": "tex"}),
            *factors("turns"),
            Result("diameter", "Diameter", "SQRT(4 * tex / (PI() * thickness_fiber_density * thickness_packing))", diameter.yarn_diameter, YARN_DIAMETER,
                   uses={"linear_density": "tex", "fiber_density": "thickness_fiber_density", "packing": "thickness_packing"},
                   note="Threads touching, by the K on the sheet Counts."),
            Result("angle", "Angle at the surface", "ATAN(PI() * diameter * turns)", trade.surface_angle, ANGLE,
                   uses={"twist": "turns"}, note="By that diameter, as Ply angle on the sheet Samples. Soft 10 to 20°, hard 25 to 35° (common practice, no source)."),
            Result("turns_slant", "Turns for the wanted angle", "TAN(slant) / (PI() * diameter)", trade.turns_for_angle, TWIST, uses={"angle": "slant"}),
            Result("retraction", "Shorter by its twist", "(1 / COS(angle) - 1) / (1 / COS(angle) + 1)", trade.retraction, SHARE,
                   only_if="angle < PI() / 3", note="What a single loses of its length."),
            Result("least", "Least turns for the staple", "wraps / staple", trade.least_twist, TWIST, note="Only a warning, not a law."),
            Result("staple_words", "In words", 'IF(ROUND(turns / least, 9) >= 1, "enough for the staple", "too little for the staple: fibers may slip")',
                   trade.staple_words, None, uses={"twist": "turns"}),
        )),
    ),
    rules=(
        plausible.thick_by_tex("Grist"),
        Rule(f"OR(ROUND(cotton, 9) < {LEAST_FACTOR}, ROUND(cotton, 9) > {MOST_FACTOR})",
             lambda values: not LEAST_FACTOR <= round(values["cotton"], 9) <= MOST_FACTOR,
             f"{ASKING} Twist factor: no yarn is twisted so. Look at its system: 2.5 cotton is 2.0 worsted, 3.5 woolen run, 76 metric, 24 tex."),
    ),
)

COUNTED = Card(
    "counted",
    "Twist, counted",
    about="Untwist a length and count the turns, several times; or count the spindle's turns while you draft a length.",
    groups=(
        Group("You type", (
            Input("turns", "Turns counted", NONE_OR_TURNS, NUMBER, needed=True, help="Of several pieces, those of all: =12+15+13."),
            Input("length", "In this length", AMOUNT, LOOP, needed=True, help="Of several pieces, all together: =3*5."),
            Input("grist", "Grist", AMOUNT, GRIST, help="For the twist factors."),
        )),
        Group("Worked out", (
            Result("twist", "Twist", "turns / length", trade.turns_counted, TWIST, usual=usual.TWISTS_COUNTED),
            Result("twist_m", "Twist", "turns / length", trade.turns_counted, TWIST_PER_METER),
            Result("tex", "Tex", "1 / grist", yarn_count.direct_count, TEX),
            *factors("twist", within=usual.TWIST_FACTOR),
        )),
    ),
    rules=(plausible.thick_by_tex("Grist"),),
)


def _retraction(twist: str) -> str:
    """Formula text of (s - 1) / (s + 1), where s is the length of a surface fiber per length of yarn."""
    way = f"SQRT(1 + PI() * diameter * {twist} * PI() * diameter * {twist})"
    return f"({way} - 1) / ({way} + 1)"


def _not_too_steep(twist: str) -> str:
    return f"ABS(PI() * diameter * {twist}) < TAN(PI() / 3)"


PLY = Card(
    "plying",
    "The ply",
    about="A plied yarn is balanced when a hanging loop of it does not turn. Two thirds of the singles' twist is a first guess.",
    groups=(
        Group("You type", (
            Input("singles", "Twist of the singles", TWISTED, TWIST, needed=True),
            Input("grist", "Grist of the singles", AMOUNT, GRIST, help="For the take-up."),
            Input("measured", "Or their diameter, measured", Number(above=0, most=100), YARN_DIAMETER,
                  help="Wins over the grist. Under a lens beside a ruler, or by wraps that touch: 25.4 over wraps per inch."),
            Input("strands", "Strands", PLIED, NUMBER, needed=True, starts_as=2.0),
            Input("share", "Share of the singles' twist", TWOFOLD, NUMBER, needed=True, starts_as=0.6667,
                  help="0.6 to 0.75 (common practice, no source). With a thread, of the single alone."),
            Input("direction", "Singles spun", lists.one_of(lists.DIRECTIONS), needed=True, starts_as="Z", help="Z: the wheel or spindle turns clockwise."),
            Input("sample", "Take-up of a sample", SHRINKAGE, SHARE, usual=usual.MEASURED_TAKE_UP, help="See the sheet Samples; it wins over what is worked out here."),
            Input("plied", "Ply twist of a sample", NONE_OR_TWISTED, TWIST, usual=usual.TWISTS,
                  help="Counted before washing, as the singles were, to see how far it is from balance."),
        )),
        Group("Worked out", (
            Result("twist", "Ply twist", "singles * share", trade.ply_twist, TWIST, uses={"singles_twist": "singles"}),
            Result("twist_m", "Ply twist", "singles * share", trade.ply_twist, TWIST_PER_METER, uses={"singles_twist": "singles"}),
            Result("equal", "Ply twist of equal factor", "singles / SQRT(strands)", trade.equal_factor_ply_twist, TWIST,
                   uses={"singles_twist": "singles"}, note="The other guess: singles and ply as hard as each other."),
            Result("towards", "Ply towards", 'IF(direction = "Z", "S", "Z")', trade.opposite, None, note="Against the singles."),
            Result("left", "Left in the singles", "singles - or_else(plied, twist)", trade.twist_left, TWIST,
                   uses={"singles_twist": "singles", "ply_twist": "twist"}, is_signed=True,
                   note="After plying; by the sample's ply twist, if you counted it. Below 0 they turn the other way."),
            Result("tex", "Tex of the singles", "1 / grist", yarn_count.direct_count, TEX),
            Result("by_grist", "Diameter by the grist", "SQRT(4 * tex / (PI() * thickness_fiber_density * thickness_packing))", diameter.yarn_diameter, YARN_DIAMETER,
                   uses={"linear_density": "tex", "fiber_density": "thickness_fiber_density", "packing": "thickness_packing"},
                   note="Threads touching, by the K on the sheet Counts."),
            Result("diameter", "Diameter of the singles", "or_else(measured, by_grist)", diameter.diameter_in_use, YARN_DIAMETER,
                   uses={"expected": "by_grist"}, only_if="OR(given(measured), given(by_grist))"),
            Result("path", "Strands lie on a circle of", "diameter / SIN(PI() / strands)", trade.ply_path, YARN_DIAMETER),
            Result("ratio", "Strand for one of ply", "SQRT(1 + PI() * path * twist * PI() * path * twist)", trade.ply_ratio, NUMBER, digits=3),
            Result("helix", "Lost by the way round", "1 - 1 / ratio", trade.take_up, SHARE, note="Of the helix alone: the singles grow in plying."),
            Result("lost_before", "Singles shorter by their twist", _retraction("singles"), trade.retraction_by_twist, SHARE,
                   uses={"twist": "singles"}, only_if=_not_too_steep("singles")),
            Result("lost_after", "By what plying leaves", _retraction("(singles - twist)"), trade.retraction_left, SHARE,
                   uses={"singles_twist": "singles", "ply_twist": "twist"}, only_if=_not_too_steep("(singles - twist)"),
                   note="Plying takes twist out of the singles, and they grow."),
            Result("take_up", "Take-up, reckoned", "1 - (1 - lost_after) / (1 - lost_before) / ratio", trade.ply_take_up, SHARE,
                   uses={"before": "lost_before", "left": "lost_after"},
                   note="Believe a sample: 1 to 6% is usual. That is common practice, no source; reckoned so, two strands lose hardly any. "
                        "Share of the singles' length lost in plying, both together."),
            Result("take_up_used", "Take-up in use", "or_else(sample, take_up)", trade.take_up_in_use, SHARE, uses={"expected": "take_up"},
                   only_if="OR(given(sample), given(take_up))"),
            Result("feed", "Feed, for a component", "1 / (1 - take_up_used)", trade.feed, NUMBER, digits=3, uses={"take_up": "take_up_used"},
                   note="Single in one length of ply: 1.05 is 5% more. Type it on the sheet Yarn; below 1, type 1."),
            Result("balance", "Sample against balance", "plied / (share * singles) - 1", trade.balance, SHARE,
                   uses={"singles_twist": "singles", "plied_twist": "plied"}),
            Result("words", "In words",
                   'IF(ABS(ROUND(balance, 9)) <= 0.125, "balanced", IF(balance > 0, "more ply twist than balance", "less ply twist than balance"))',
                   trade.balance_words, None),
        )),
    ),
    rules=(
        plausible.thick_by_tex("Grist of the singles"),
        Rule("AND(given(diameter), NOT(given(lost_before)))", lambda values: values["diameter"] is not None and values["lost_before"] is None,
             f"{ASKING} Twist of the singles: more than so thick a single takes. Look at the turns, per inch, and at its grist or diameter."),
    ),
)
