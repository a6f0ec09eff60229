"""Twist: turns for a wanted yarn, counted turns, the ply that balances, and what a wheel puts in."""

from workbookgen.language.domains import Choice, Number
from workbookgen.language.fields import Group, Input, Result, Rule
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
from workbookgen.language.views import LEFT, Picture
from workbookgen.reference import diameter, yarn_count
from workbookgen.reference import twist as trade
from workbookgen.settings import Settings
from workbookgen.sheets.shown import asked_and_answered
from workbookgen.sheets import lists

SHEET = "Twist"
CHAPTER = "Twist"
ANY = Number(above=0, most=1_000_000)
SPAN = Number(above=0, most=1000)
TURNS = Number(above=0, most=200)
STRANDS = Number(least=2, most=12, whole=True)


def chapter(settings: Settings) -> Chapter:
    drawn = {WANTED.key: ANGLE_DRAWN}
    return Chapter(CHAPTER, (WANTED, COUNTED, PLY, WHEEL), tuple(
        asked_and_answered(each, first, drawn=drawn.get(each.key)) for each, first in ((WANTED, "turns"), (PLY, "twist"), (WHEEL, "inserted"), (COUNTED, "twist"))
    ))


ANGLE_DRAWN = Picture(
    file="angle-of-twist.png",
    width=268,
    height=120,
    about="A yarn from the side, its axis dashed. A fiber at its surface runs slantwise round it; the angle of twist lies between this fiber and the axis.",
    across=LEFT,
    is_below=True,
)


def factors(twist: str) -> tuple[Result, ...]:
    """The twist factor of a yarn in the systems in use; the words are the twist's and tex."""
    return (
        Result("cotton", "Twist factor, cotton", f"{twist} * 0.0254 / SQRT(453.59237 / (840 * 0.9144) / tex)", trade.cotton_factor,
               NUMBER, uses={"twist": twist, "linear_density": "tex"}, note="Turns per inch over the root of the cotton count."),
        Result("worsted", "Twist factor, worsted", f"{twist} * 0.0254 / SQRT(453.59237 / (560 * 0.9144) / tex)", trade.worsted_factor,
               NUMBER, uses={"twist": twist, "linear_density": "tex"}, note="Turns per inch over the root of the worsted count."),
        Result("run", "Twist factor, woolen run", f"{twist} * 0.0254 / SQRT(453.59237 / (1600 * 0.9144) / tex)", trade.run_factor,
               NUMBER, uses={"twist": twist, "linear_density": "tex"}, note="Turns per inch over the root of the run."),
        Result("factor_tex", "Twist factor, tex", f"{twist} / 100 * SQRT(1000 * tex)", trade.tex_factor,
               NUMBER, uses={"twist": twist, "linear_density": "tex"}, digits=1, note="Turns per centimeter times the root of tex."),
    )


WANTED = Card(
    "twist",
    "Twist for a single or a plied yarn",
    groups=(
        Group("You type", (
            Input("grist", "Grist", ANY, GRIST, needed=True, help="Of the yarn that gets this twist."),
            Input("multiplier", "Twist factor", Number(above=0, most=1000), NUMBER, needed=True, starts_as=2.5,
                  help="Cotton system: knitting 2.1 to 3.0, weft 3.0 to 3.8, warp 3.4 to 5.0 (spinning handbook, read). Wool is lower."),
            Input("system", "In this system", Choice("twists_name", lists.SHEET), needed=True, starts_as="cotton"),
            Input("staple", "Staple length", SPAN, STAPLE, help="How long the fibers are."),
            Input("wraps", "Turns in a staple, at least", Number(above=0, most=50), NUMBER, blank_means=4, help="3 to 5 for soft yarn, more for warp; empty means 4 (common practice, no source)."),
        )),
        Group("Worked out", (
            Result("tex", "Tex", "1 / grist", yarn_count.direct_count, TEX),
            Result("turns", "Turns", "multiplier * pick(twists_scale, twists_name, system) / SQRT(1000 * tex)", trade.turns, TWIST,
                   uses={"linear_density": "tex"}, note="Twist factor times the root of the count."),
            Result("turns_m", "Turns", "multiplier * pick(twists_scale, twists_name, system) / SQRT(1000 * tex)", trade.turns, TWIST_PER_METER,
                   uses={"linear_density": "tex"}),
            *factors("turns"),
            Result("diameter", "Diameter", "SQRT(4 * tex / (PI() * thickness_fiber_density * thickness_packing))", diameter.yarn_diameter, YARN_DIAMETER,
                   uses={"linear_density": "tex", "fiber_density": "thickness_fiber_density", "packing": "thickness_packing"},
                   note="Threads touching, by K of the sheet Counts."),
            Result("angle", "Angle at the surface", "ATAN(PI() * diameter * turns)", trade.surface_angle, ANGLE,
                   uses={"twist": "turns"}, note="Soft 10 to 20°, hard 25 to 35° (common practice, no source)."),
            Result("retraction", "Shorter by its twist", "(1 / COS(angle) - 1) / (1 / COS(angle) + 1)", trade.retraction, SHARE,
                   only_if="angle < PI() / 3", note="What a single loses of its length."),
            Result("least", "Least turns for the staple", "wraps / staple", trade.least_twist, TWIST, note="A warning, not a law."),
            Result("staple_words", "In words", 'IF(ROUND(turns / least, 9) >= 1, "enough for the staple", "too little for the staple: fibers may slip")',
                   trade.staple_words, None, uses={"twist": "turns"}),
        )),
    ),
)

COUNTED = Card(
    "counted",
    "Twist, counted",
    about="Untwist a length and count the turns, several times; or count the spindle's turns while you draft a length.",
    groups=(
        Group("You type", (
            Input("turns", "Turns counted", Number(least=0, most=100_000), NUMBER, needed=True),
            Input("length", "In this length", ANY, LOOP, needed=True),
            Input("grist", "Grist", ANY, GRIST, help="For the twist factors."),
        )),
        Group("Worked out", (
            Result("twist", "Twist", "turns / length", trade.turns_counted, TWIST),
            Result("twist_m", "Twist", "turns / length", trade.turns_counted, TWIST_PER_METER),
            Result("tex", "Tex", "1 / grist", yarn_count.direct_count, TEX),
            *factors("twist"),
        )),
    ),
)

def _retraction(twist: str) -> str:
    """(s - 1) / (s + 1), s the way of a surface fiber in one length of yarn."""
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
            Input("singles", "Twist of the singles", TURNS, TWIST, needed=True),
            Input("grist", "Grist of the singles", ANY, GRIST, help="For the take-up."),
            Input("strands", "Strands", STRANDS, NUMBER, needed=True, starts_as=2.0),
            Input("share", "Share of the singles' twist", Number(above=0, most=2), NUMBER, needed=True, starts_as=0.6667,
                  help="0.6 to 0.75 (common practice, no source). With a thread, of the single alone."),
            Input("direction", "Singles spun", Choice("directions_name", lists.SHEET), needed=True, starts_as="Z", help="Z: the wheel or spindle turns clockwise."),
            Input("plied", "Ply twist of a sample", Number(least=0, most=200), TWIST, help="Counted, to see how far it is from balance."),
        )),
        Group("Worked out", (
            Result("twist", "Ply twist", "singles * share", trade.ply_twist, TWIST, uses={"singles_twist": "singles"}),
            Result("twist_m", "Ply twist", "singles * share", trade.ply_twist, TWIST_PER_METER, uses={"singles_twist": "singles"}),
            Result("equal", "Ply twist of equal factor", "singles / SQRT(strands)", trade.equal_factor_ply_twist, TWIST,
                   uses={"singles_twist": "singles"}, note="The other guess: singles and ply as hard as each other."),
            Result("towards", "Ply towards", 'IF(direction = "Z", "S", "Z")', trade.opposite, None, note="Against the singles."),
            Result("tex", "Tex of the singles", "1 / grist", yarn_count.direct_count, TEX),
            Result("diameter", "Diameter of the singles", "SQRT(4 * tex / (PI() * thickness_fiber_density * thickness_packing))", diameter.yarn_diameter, YARN_DIAMETER,
                   uses={"linear_density": "tex", "fiber_density": "thickness_fiber_density", "packing": "thickness_packing"},
                   note="Threads touching, by K of the sheet Counts."),
            Result("path", "Strands lie on a circle of", "diameter / SIN(PI() / strands)", trade.ply_path, YARN_DIAMETER),
            Result("ratio", "Strand for one of ply", "SQRT(1 + PI() * path * twist * PI() * path * twist)", trade.ply_ratio, NUMBER, digits=3),
            Result("helix", "Lost by the way round", "1 - 1 / ratio", trade.take_up, SHARE, note="Of the helix alone: the singles grow in plying."),
            Result("lost_before", "Singles shorter by their twist", _retraction("singles"), trade.retraction_by_twist, SHARE,
                   uses={"twist": "singles"}, only_if=_not_too_steep("singles")),
            Result("lost_after", "By what plying leaves", _retraction("(singles - twist)"), trade.retraction_left, SHARE,
                   uses={"singles_twist": "singles", "ply_twist": "twist"}, only_if=_not_too_steep("(singles - twist)"),
                   note="Plying takes twist out of the singles, and they grow."),
            Result("take_up", "Take-up", "1 - (1 - lost_after) / (1 - lost_before) / ratio", trade.ply_take_up, SHARE,
                   uses={"before": "lost_before", "left": "lost_after"},
                   note="Share of the singles' length lost in plying: both together. 1 to 6% is usual (common practice, no source); a sample beats it."),
            Result("feed", "Feed, for a component", "1 / (1 - take_up)", trade.feed, NUMBER, digits=3, note="Single in one length of ply: 1.05 is 5% more."),
            Result("balance", "Sample against balance", "plied / (share * singles) - 1", trade.balance, SHARE,
                   uses={"singles_twist": "singles", "plied_twist": "plied"}),
            Result("words", "In words",
                   'IF(ABS(ROUND(balance, 9)) <= 0.1, "balanced", IF(balance > 0, "more ply twist than balance", "less ply twist than balance"))',
                   trade.balance_words, None),
        )),
    ),
)

WHEEL = Card(
    "wheel",
    "What the wheel puts in",
    about="For a spindle, the turns are counted: see the card Twist, counted.",
    groups=(
        Group("You type", (
            Input("wheel", "Drive wheel across", SPAN, LOOP, help="Diameter of its groove, where the drive band runs."),
            Input("whorl", "Whorl across", SPAN, LOOP, help="Diameter of its groove."),
            Input("band", "Thickness of the band", Number(least=0, most=100), LOOP, blank_means=0, help="It bends along its middle: on a small whorl this counts."),
            Input("stamped", "Or the ratio stamped on it", Number(above=0, most=200), NUMBER, help="Wins over the diameters: 8 for 8 to 1."),
            Input("slip", "Slip", Number(least=0, below=1), SHARE, blank_means=0, help="Share of the turns that the drive band loses."),
            Input("draft", "Draft length", SPAN, LOOP, help="Yarn drafted in one go."),
            Input("treadles", "Treadles for it", Number(above=0, most=1000), NUMBER, help="Turns of the drive wheel while you draft that length."),
            Input("wanted", "Twist wanted", TURNS, TWIST),
            Input("wanted_ratio", "Ratio wanted", Number(above=0, most=200), NUMBER, help="To find the whorl for it."),
        )),
        Group("Worked out", (
            Result("geared", "Ratio by the diameters", "(wheel + band) / (whorl + band)", trade.geared, NUMBER, note="Each with the band's thickness."),
            Result("ratio", "Drive ratio", "IF(given(stamped), stamped, geared) * (1 - slip)", trade.drive_ratio, NUMBER,
                   only_if="OR(given(stamped), given(geared))", note="Turns of the flyer for one of the wheel."),
            Result("inserted", "Twist you get", "ratio * treadles / draft", trade.inserted, TWIST),
            Result("treadles_wanted", "Treadles for the wanted twist", "wanted * draft / ratio", trade.treadles_for, NUMBER, digits=1, uses={"twist": "wanted"}),
            Result("draft_wanted", "Or draft, for your treadles", "ratio * treadles / wanted", trade.draft_for, LOOP, uses={"twist": "wanted"}),
            Result("whorl_wanted", "Whorl for the wanted ratio", "(wheel + band) / wanted_ratio - band", trade.whorl_for, LOOP, uses={"ratio": "wanted_ratio"},
                   only_if="wheel + band > wanted_ratio * band", note="Across its groove, without slip."),
        )),
    ),
    rules=(
        Rule("AND(NOT(given(stamped)), NOT(AND(given(wheel), given(whorl))))",
             lambda values: values["stamped"] is None and (values["wheel"] is None or values["whorl"] is None),
             "Still to fill in: drive wheel and whorl, or the ratio stamped on it."),
    ),
)
