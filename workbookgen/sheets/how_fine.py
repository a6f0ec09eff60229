"""The finest yarn that a fiber can make, and the twist that its staple needs."""

from workbookgen.language.domains import Choice
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card
from workbookgen.language.quantities import (
    DENSITY,
    DTEX,
    FIBER_DIAMETER,
    GRIST,
    GRIST_METRIC,
    GRIST_US,
    NUMBER,
    STAPLE,
    TEX,
    THREADS,
    TWIST,
)
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, MISSING, UNKNOWN
from workbookgen.reference import diameter, how_fine, yarn_count
from workbookgen.reference import twist as trade
from workbookgen.sheets import by_k, guide, usual
from workbookgen.sheets.limits import CLOSE, DENSE, LARGE, REACH, SIZE, TWISTED
from workbookgen.sheets.lookup import lookup
from workbookgen.texts import folded
from workbookgen.units import Quantity

NO_WOOL = ("silk", "cotton", "linen", "hemp", "ramie")  # as the guide calls them on labels
OTHER_DENSITIES = "Silk has 1.34, cotton 1.52, and flax, hemp and ramie about as much."  # these three from memory


def _density_of_wool(values: dict) -> bool:
    return bool(values["kind"]) and isinstance(values["generic"], str) and folded(values["generic"]) in NO_WOOL and abs(values["fiber_density"] / 1.31 - 1) < 0.000001


FINEST = Card(
    "finest",
    "The finest single from a fiber",
    groups=(
        Group("You type", (
            Input("kind", "Breed or fiber", Choice("guide_listed", guide.SHEET), help="Takes diameter and staple from the guide."),
            Input("fiber_diameter", "Or fiber diameter", CLOSE, FIBER_DIAMETER, usual=usual.FIBERS, help="Mean of your own fleece; wins over the guide."),
            Input("fiber_density", "Fiber density", DENSE, DENSITY, needed=True, starts_as=Quantity(1.31, "gram / centimeter ** 3"),
                  help="Wool 1.31, silk 1.34, cotton 1.52, nylon 1.14."),
            Input("fibers", "Fibers side by side, at least", SIZE, NUMBER, blank_means=40,
                  help="30 to 60 by hand; empty means 40 (common practice, no source). Mills spin worsted with 35 to 40."),
            Input("wanted", "Grist you would like", LARGE, GRIST, help="Of the single, to see whether the fiber can make it."),
            Input("staple", "Staple length", REACH, STAPLE, usual=usual.STAPLES, help="Of your own fleece; wins over the guide, whose shortest is taken."),
            Input("twist", "Turns you would give it", TWISTED, TWIST, usual=usual.TWISTS),
        )),
        Group("Worked out", (
            lookup("generic", "On labels", "guide_generic", "kind", None),
            lookup("of_kind", "Fiber by the guide", "guide_diameter", "kind", FIBER_DIAMETER),
            Result("across", "Fiber diameter", "or_else(fiber_diameter, of_kind)", how_fine.own_or_published, FIBER_DIAMETER,
                   uses={"own": "fiber_diameter", "published": "of_kind"}, only_if="OR(given(fiber_diameter), given(of_kind))"),
            Result("one", "One fiber", "PI() / 4 * across * across * fiber_density", diameter.fiber_linear_density, DTEX, digits=2, uses={"fiber_diameter": "across"}),
            Result("tex", "Finest, tex", "fibers * PI() / 4 * across * across * fiber_density", how_fine.finest_yarn, TEX, uses={"fiber_diameter": "across"},
                   note="So many fibers side by side."),
            Result("grist", "Finest grist, evenly drafted", "1 / tex", yarn_count.grist_of_density, GRIST_US, digits=0, uses={"linear_density": "tex"},
                   note="Most hands stay thicker."),
            Result("grist_m", "Finest grist, evenly drafted", "1 / tex", yarn_count.grist_of_density, GRIST_METRIC, digits=0, uses={"linear_density": "tex"}),
            Result("wraps", "Wraps per inch of it", by_k.threads("thickness_k_wrapped", "grist"), diameter.threads_side_by_side, THREADS, digits=0,
                   uses={"k": "thickness_k_wrapped"}, note="By the K on the sheet Counts."),
            Result("wanted_tex", "Its tex", "1 / wanted", yarn_count.direct_count, TEX, uses={"grist": "wanted"}),
            Result("within", "Fibers in it", "wanted_tex / (PI() / 4 * across * across * fiber_density)", diameter.fibers_in_section, NUMBER, digits=0,
                   uses={"linear_density": "wanted_tex", "fiber_diameter": "across"}),
            Result("words", "The grist you would like",
                   'ROUNDDOWN(ROUND(within, 6), 0) & IF(ROUND(within / fibers, 6) >= 1, " fibers: enough, in practiced hands", " fibers: too few to hold")',
                   how_fine.fit_words, None, uses={"in_section": "within"}, only_if="within < 999999"),
            lookup("kind_staple", "Staple by the guide", "guide_staple_low", "kind", STAPLE),
            Result("long", "Staple", "or_else(staple, kind_staple)", how_fine.own_or_published, STAPLE,
                   uses={"own": "staple", "published": "kind_staple"}, only_if="OR(given(staple), given(kind_staple))"),
            Result("least", "Least turns for it", "4 / long", trade.least_twist, TWIST, uses={"staple": "long"}, leaves=("wraps",),
                   note="Four in a staple (common practice, no source); a warning, not a law."),
            Result("round", "Your turns in a staple", "twist * long", how_fine.turns_round, NUMBER, digits=1, uses={"staple": "long"},
                   note="3 to 5 hold a soft yarn, a warp takes more (common practice, no source)."),
        )),
    ),
    rules=(
        Rule(f"AND(given(kind), OR({', '.join(f'generic = {chr(34)}{name}{chr(34)}' for name in NO_WOOL)}), ABS(fiber_density / 1310000 - 1) < 0.000001)", _density_of_wool,
             f"{ASKING} Fiber density: 1.31 is that of wool and hair. {OTHER_DENSITIES}"),
        Rule("AND(NOT(given(kind)), NOT(given(fiber_diameter)), OR(NOT(given(staple)), given(wanted)))",
             lambda values: values["kind"] is None and values["fiber_diameter"] is None and (values["staple"] is None or values["wanted"] is not None),
             f"{MISSING}: the fiber diameter, or a breed from the guide."),
        Rule("AND(given(kind), NOT(given(across)))", lambda values: bool(values["kind"]) and values["across"] is None,
             f"{UNKNOWN}: the guide gives no diameter of this fiber. Type it here, and the fiber density if it is not wool."),
        Rule("AND(given(twist), NOT(given(long)))", lambda values: values["twist"] is not None and values["long"] is None,
             f"{UNKNOWN}: for the turns in a staple, type Staple length."),
    ),
)
