"""Counts: any yarn number to all the others, a weighed length, thickness, and moisture."""

from math import pi

from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter
from workbookgen.language.quantities import (
    ALLOA,
    COTTON_COUNT,
    DENIER,
    DENSITY,
    DTEX,
    FIBER_DIAMETER,
    FINE_MASS,
    FRENCH_COTTON,
    GALASHIELS_CUT,
    GRIST,
    GRIST_METRIC,
    GRIST_US,
    JUTE,
    LENGTH,
    LINEN_LEA,
    MASS,
    METRIC_COUNT,
    NUMBER,
    SHARE,
    TEX,
    THREADS,
    WEST_OF_ENGLAND,
    WOOLLEN_CUT,
    WOOLLEN_RUN,
    WORSTED_COUNT,
    YARN_DIAMETER,
    YORKSHIRE_SKEIN,
    Kind,
)
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, MISSING
from workbookgen.language.views import LEFT, Picture
from workbookgen.reference import diameter, moisture, plying, yarn_count
from workbookgen.settings import Settings
from workbookgen.sheets import by_k, light_weights, lists, plausible, tabs, usual
from workbookgen.sheets.card_view import asked_and_answered, in_the_planners_unit
from workbookgen.sheets.limits import CLOSE, DENSE, LARGE, LOSS, NONE_OR_PART, STRANDS, TWOFOLD
from workbookgen.unit_systems import UNIT_SYSTEMS
from workbookgen.units import Quantity

SHEET = tabs.TWIST
CHAPTER = "Counts"
PACKED = "4 * {k} * {k} * 453.59237 / 0.9144 / (PI() * fiber_density * 0.0254 * 0.0254)"
SOLID = f"{PACKED} <= 1"


def chapter(settings: Settings) -> Chapter:
    drawn = {THICKNESS.key: WRAPS_DRAWN}
    number, short, grist = counts(settings), weighed(settings), in_the_planners_unit(settings, "grist", "grist_m_100g")
    return Chapter(CHAPTER, (number, FOLDED, short, THICKNESS, MOISTURE),
                   tuple(asked_and_answered(each, first, drawn=drawn.get(each.key))
                         for each, first in ((number, grist), (FOLDED, grist), (short, grist), (THICKNESS, "wrapped"), (MOISTURE, "at_regain"))))


WRAPS_DRAWN = Picture(
    file="counting-wraps.png",
    about="Yarn wound round a ruler, side by side, neither pushed together nor pulled; the wraps between two marks one inch apart are counted.",
    across=LEFT,
    is_below=True,
)


def of_yarn_number(key: str, label: str, digits: int) -> Result:
    """The grist of a yarn number in a system: a length for a weight as it stands, a weight for a length turned over."""
    factor = "lookup(systems_factor, systems_name, system)"
    return Result(key, label, f"IF(lookup(systems_direct, systems_name, system) = 1, 1 / (number * {factor}), number * {factor})",
                  yarn_count.grist_of, GRIST_US, digits=digits)


def _indirect(key: str, label: str, kind: Kind, note: str = "") -> Result:
    return Result(key, label, "grist", yarn_count.indirect_count, kind, note=note)


def _direct(key: str, label: str, kind: Kind, note: str = "") -> Result:
    return Result(key, label, "1 / grist", yarn_count.direct_count, kind, note=note)


def counts(settings: Settings) -> Card:
    is_metric = UNIT_SYSTEMS[settings.units].is_metric("length")
    number, system = (200.0, "meters per 100 grams") if is_metric else (1000.0, "yards per pound")
    return Card(
        "counts",
        "One yarn, all its numbers",
        groups=(
            Group("You type", (
                Input("number", "Yarn number", LARGE, NUMBER, needed=True, starts_as=number, help="The number itself: 20 for 20s or for 20 tex."),
                Input("system", "In this system", lists.one_of(lists.SYSTEMS), needed=True, starts_as=system, help="The system that the number belongs to."),
            )),
            Group("Worked out", tuple(sorted(NUMBERS, key=lambda each: is_metric and each.key not in FIRST_IN_METERS))),
        ),
        rules=(plausible.a_date("number", "Yarn number"), plausible.thick_by_tex("Yarn number", sentence=plausible.OTHER_SYSTEM)),
    )


NUMBERS = (
    of_yarn_number("grist", "Grist", digits=0),
    _indirect("grist_m_100g", "Grist", GRIST_METRIC),
    _direct("tex", "Tex", TEX, "Grams in 1,000 m."),
    _direct("dtex", "Decitex", DTEX),
    _direct("denier", "Denier", DENIER, "Grams in 9,000 m."),
    _direct("jute", "Jute, flax and hemp tow", JUTE, "Pounds in a spyndle of 14,400 yd."),
    _indirect("metric", "Metric count", METRIC_COUNT),
    _indirect("cotton", "Cotton count, spun silk", COTTON_COUNT, "Hanks of 840 yd in a pound."),
    _indirect("worsted", "Worsted count", WORSTED_COUNT, "Hanks of 560 yd in a pound."),
    _indirect("run", "Woolen run", WOOLLEN_RUN, "Hanks of 1,600 yd in a pound."),
    _indirect("cut", "Woolen cut", WOOLLEN_CUT, "Hanks of 300 yd in a pound."),
    _indirect("lea", "Linen and hemp lea", LINEN_LEA, "Leas of 300 yd in a pound."),
    _indirect("yorkshire", "Yorkshire skein", YORKSHIRE_SKEIN, "Skeins of 256 yd in a pound."),
    _indirect("galashiels", "Galashiels cut", GALASHIELS_CUT, "Cuts of 300 yd in 24 ounces."),
    _indirect("alloa", "Alloa", ALLOA, "240 yd in a pound."),
    _indirect("west", "West of England", WEST_OF_ENGLAND, "320 yd in a pound."),
    _indirect("french", "French cotton", FRENCH_COTTON, "Hanks of 1,000 m in 500 g."),
)
FIRST_IN_METERS = ("grist_m_100g", "tex", "dtex", "metric")  # what is usual where yarn is sold in meters and grams

FOLDED = Card(
    "folded",
    "A folded yarn, by its label",
    about="Cotton and worsted 2/40s, and metric 28/2: the number is of each end. Spun silk 40/2 in the cotton count, and R 40 tex/2: it is of the folded yarn. "
          "Silk sold today as 60/2 is mostly metric, of each end, and 3.4 times as heavy: weigh a length to be sure.",
    groups=(
        Group("You type", (
            Input("ends", "Ends folded", STRANDS, NUMBER, needed=True, starts_as=2.0, help="2 for 2/40s and for 28/2. Never type 12/2 as it stands: it becomes a date."),
            Input("number", "Number", LARGE, NUMBER, needed=True, help="40 for 2/40s, 28 for 28/2."),
            Input("system", "In this system", lists.one_of(lists.SYSTEMS), needed=True),
            Input("notation", "The number is", lists.one_of(lists.NOTATIONS), needed=True, starts_as="of each end",
                  help="Of each end, or, as in R tex and spun silk in the cotton count, of the folded yarn."),
        )),
        Group("Worked out", (
            of_yarn_number("of_number", "Grist of that number", digits=0),
            Result("grist", "Grist", "of_number / IF(lookup(notations_whole, notations_name, notation) = 1, 1, ends)", plying.folded_grist, GRIST_US, digits=0,
                   uses={"grist": "of_number"}, note="Of the folded yarn, without take-up, as the trade counts it."),
            Result("grist_m_100g", "Grist", "of_number / IF(lookup(notations_whole, notations_name, notation) = 1, 1, ends)", plying.folded_grist, GRIST_METRIC,
                   uses={"grist": "of_number"}),
            _direct("tex", "Tex", TEX),
            Result("end_tex", "Tex of each end", "tex / ends", plying.singles_for, TEX, uses={"plied": "tex", "strands": "ends"}, leaves=("take_up", "shrinkage")),
        )),
    ),
    rules=(
        plausible.a_date("number", "Number"),
        Rule("AND(ends > 4, ends > number)", lambda values: values["ends"] > 4 and values["ends"] > values["number"],
             f"{ASKING} Ends folded: so many, and of so low a number. Were the two exchanged?"),
    ),
)


def weighed(settings: Settings) -> Card:
    return Card(
        "weighed",
        "A length, weighed",
        about="Wind off a length you know and weigh it: the finer the scale, the shorter the length may be.",
        groups=(
            Group("You type", (
                Input("length", "Length", LARGE, LENGTH, needed=True),
                Input("mass", "Weight", LARGE, MASS, needed=True),
                Input("wanted", "How long is a weight of", LARGE, MASS, help="Some other weight of the same yarn."),
            )),
            Group("Worked out", (
                Result("grist", "Grist", "length / mass", yarn_count.grist, GRIST_US, digits=0),
                Result("grist_m_100g", "Grist", "length / mass", yarn_count.grist, GRIST_METRIC),
                Result("tex", "Tex", "mass / length", yarn_count.linear_density, TEX),
                Result("cotton", "Cotton count", "length / mass", yarn_count.grist, COTTON_COUNT),
                Result("worsted", "Worsted count", "length / mass", yarn_count.grist, WORSTED_COUNT),
                Result("wanted_length", "That weight measures", "wanted * grist", yarn_count.length_of_mass, LENGTH, uses={"mass": "wanted"}),
            )),
        ),
        rules=(plausible.thick_by_tex("Weight", sentence=plausible.HEAVY), *light_weights.coarse_length(settings.units), plausible.thin_by_tex("Weight")),
    )


def _packed(values: dict) -> float:
    """Formula text of the share of the cross section that is fiber, where threads touch.

    From K, the threads of 1 yd/lb that lie in an inch, and a density in g/cm³.
    """
    across = 2.54 / values["k_touching"]
    return 453.59237 / 91.44 / (pi / 4 * across**2 * values["fiber_density"])


THICKNESS = Card(
    "thickness",
    "How thick is it?",
    groups=(
        Group("You type", (
            Input("grist", "Grist", LARGE, GRIST, needed=True),
            Input("k_touching", "K, threads touching", TWOFOLD, needed=True, starts_as=0.9, help="Ashenhurst: 0.90 worsted, 0.84 woolen, 0.95 cotton."),
            Input("k_wrapped", "K, wraps as laid by hand", TWOFOLD, needed=True, starts_as=0.35,
                  help="Common practice, no source: fit it to your own yarn. The sheet Skeins uses it."),
            Input("counted", "Wraps per inch counted", CLOSE, THREADS, usual=usual.WRAPS, help="Of this same yarn; your own K follows from it."),
            Input("fiber_density", "Fiber density", DENSE, DENSITY, needed=True, starts_as=Quantity(1.31, "gram / centimeter ** 3"),
                  help="Wool 1.31, silk 1.34, cotton 1.52, nylon 1.14."),
            Input("fiber_diameter", "Fiber diameter", CLOSE, FIBER_DIAMETER, usual=usual.FIBERS),
        )),
        Group("Worked out", (
            Result("touching", "Threads side by side", by_k.threads("k_touching", "grist"), diameter.threads_side_by_side, THREADS,
                   uses={"k": "k_touching"}, note="Touching and compressed, as in cloth: K times the root of yards per pound."),
            Result("wrapped", "Wraps per inch", by_k.threads("k_wrapped", "grist"), diameter.threads_side_by_side, THREADS,
                   uses={"k": "k_wrapped"}, note="As laid on a ruler by hand."),
            Result("own_k", "Your own K", by_k.fitted("counted", "grist"), diameter.fitted_k, NUMBER,
                   uses={"wraps": "counted"}, digits=3, usual=usual.K_AS_LAID, note="Type it above as K, wraps as laid by hand."),
            Result("tex", "Tex", "1 / grist", yarn_count.direct_count, TEX),
            Result("packing", "Fiber in it, threads touching", PACKED.format(k="k_touching"), diameter.packing, SHARE, uses={"k": "k_touching"},
                   only_if=SOLID.format(k="k_touching"),
                   note="Share of the yarn's section that is fiber, by K: lofty 35%, hard twisted 65%; the rest is air."),
            Result("packing_laid", "Fiber in it, as laid by hand", PACKED.format(k="k_wrapped"), diameter.packing, SHARE, uses={"k": "k_wrapped"},
                   only_if=SOLID.format(k="k_wrapped"),
                   note="The same of what a wrap takes up on the ruler: the air between the wraps counts as yarn there."),
            Result("diameter", "Diameter", "SQRT(4 * tex / (PI() * fiber_density * packing))", diameter.yarn_diameter, YARN_DIAMETER,
                   uses={"linear_density": "tex"}, note="Of a round yarn, threads touching."),
            Result("fiber_tex", "One fiber", "PI() / 4 * fiber_diameter * fiber_diameter * fiber_density", diameter.fiber_linear_density, DTEX, digits=2),
            Result("fibers", "Fibers in the cross-section", "tex / (PI() / 4 * fiber_diameter * fiber_diameter * fiber_density)",
                   diameter.fibers_in_section, NUMBER, uses={"linear_density": "tex"}, digits=0),
        )),
    ),
    rules=(
        plausible.thick_by_tex("Grist"),
        Rule(f"NOT({SOLID.format(k='k_touching')})", lambda values: _packed(values) > 1,
             "K, threads touching: fiber without any air would be thicker. Check K and the fiber density."),
    ),
)

MOISTURE = Card(
    "moisture",
    "Weight and moisture",
    about="Fiber weighs more in damp air. Regain is water over dry weight; moisture content is water over the whole weight.",
    groups=(
        Group("You type", (
            Input("mass", "Weight on the scale", LARGE, MASS),
            Input("content", "Moisture content", LOSS, SHARE, help="Water over the whole weight, as an oven test gives it."),
            Input("regain", "Regain agreed", NONE_OR_PART, SHARE, needed=True, starts_as=0.136, help="Wool 13.6%, silk 11%, flax and hemp 12%, cotton 8.5%."),
        )),
        Group("Worked out", (
            Result("dry", "Dry weight", "mass * (1 - content)", moisture.dry_mass, FINE_MASS, uses={"moisture_content": "content"}),
            Result("at_regain", "Weight at the regain", "dry * (1 + regain)", moisture.mass_at_regain, FINE_MASS, uses={"dry_mass": "dry"}),
            Result("corrected", "Correct weight", "mass * (1 - content) * (1 + regain)", moisture.correct_mass, FINE_MASS,
                   uses={"moisture_content": "content"}, note="The same in one step: what the scale would say at the agreed regain."),
            Result("regain_of_content", "Regain of that content", "content / (1 - content)", moisture.regain_of, SHARE, uses={"moisture_content": "content"}),
            Result("content_of_regain", "Content at that regain", "regain / (1 + regain)", moisture.moisture_content_of, SHARE),
        )),
    ),
    rules=(
        Rule("AND(given(mass), NOT(given(content)))", lambda values: values["mass"] is not None and values["content"] is None,
             f"{MISSING}: Moisture content, which tells how much of the weight is water."),
    ),
)
