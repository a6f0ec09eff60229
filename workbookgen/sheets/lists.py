"""Lists: the fixed facts that formulas look up, and the names that cells offer to choose from."""

from workbookgen.language.domains import Choice
from workbookgen.language.parts import Chapter, Column, Table
from workbookgen.language.quantities import (
    ALLOA,
    COTTON_COUNT,
    DENIER,
    DTEX,
    FIBER_DIAMETER,
    FRENCH_COTTON,
    GALASHIELS_CUT,
    GRIST_METRIC,
    GRIST_US,
    JUTE,
    LINEN_LEA,
    METRIC_COUNT,
    NUMBER_UNIT,
    TEX,
    THREADS,
    WEST_OF_ENGLAND,
    WOOLLEN_CUT,
    WOOLLEN_RUN,
    WORSTED_COUNT,
    YORKSHIRE_SKEIN,
)
from workbookgen.language.views import Facts, band
from workbookgen.settings import Settings
from workbookgen.sheets import tabs

SHEET = tabs.REFERENCE
CHAPTER = "Lists"
FEW = 5  # as many names as one sentence may list


def chapter(settings: Settings) -> Chapter:
    tables = TABLES if not settings.without else (*TABLES, NOTHING)
    return Chapter(CHAPTER, (*tables, NUMBERS), tuple(band(Facts(table=each.key, title=each.title, is_printed=False)) for each in tables))


def one_of(table: Table) -> Choice:
    """The choice of one of a table's names; if there are few, a refusal lists them all."""
    names = table.columns[0]
    return Choice(table.full_key(names.key), SHEET, names.values if table.rows <= FEW else ())


STATES = Table(
    "states",
    "How far fiber was worked",
    (
        Column("name", "Bought as", ("raw fleece", "skirted fleece", "washed fiber", "prepared fiber", "yarn or thread"), width=24),
        Column("stage", "Stage", (1.0, 2.0, 3.0, 4.0, 5.0), NUMBER_UNIT),
    ),
)

WAYS = Table("ways", "How fiber is prepared", (Column("name", "Prepared by", ("carding", "combing"), width=24),))

CLASSES = Table(
    "classes",
    "Yarn weight classes by wraps per inch",
    (
        Column("name", "Class", ("7 jumbo", "6 super bulky", "5 bulky", "4 medium", "3 light", "2 fine", "1 super fine", "0 lace"), width=24),
        Column("from", "From", (0.0, 5.0, 6.0, 9.0, 11.0, 12.0, 14.0, 30.0), THREADS.metric),
        Column("past", "Thicker one to", (0.0, 5.0, 6.0, 9.0, 12.0, 15.0, 18.0, 30.0), THREADS.metric),
        Column("fewest", "Stitches, from", (0.0, 7.0, 12.0, 16.0, 21.0, 23.0, 27.0, 33.0), NUMBER_UNIT),
        Column("most", "Stitches, to", (6.0, 11.0, 15.0, 20.0, 24.0, 26.0, 32.0, 40.0), NUMBER_UNIT),
    ),
    about="Standard yarn weight system of the yarn trade (read as reproduced); stitches in 4 inches of plain knitting. Its classes overlap; other tables differ.",
)

GRADES = Table(
    "grades",
    "US wool grades by mean fiber diameter (USDA, read in an extension guide; the two coarsest from memory)",
    (
        Column("name", "Grade", (
            "finer than 80s", "80s", "70s", "64s", "62s", "60s", "58s", "56s", "54s", "50s", "48s", "46s", "44s", "40s",
            "36s and coarser",
        ), width=24),
        Column("from", "From", (
            0.0, 17.7, 19.15, 20.6, 22.05, 23.5, 24.95, 26.4, 27.85, 29.3, 31.0, 32.7, 34.4, 36.2, 38.1,
        ), FIBER_DIAMETER.metric),
    ),
)


# Name, the unit whose factor turns the number into coherent units, and whether it is mass per length.
_SYSTEMS = (
    ("yards per pound", GRIST_US, 0.0),
    ("meters per 100 grams", GRIST_METRIC, 0.0),
    ("tex", TEX, 1.0),
    ("dtex", DTEX, 1.0),
    ("denier", DENIER, 1.0),
    ("metric count", METRIC_COUNT, 0.0),
    ("cotton count", COTTON_COUNT, 0.0),
    ("worsted count", WORSTED_COUNT, 0.0),
    ("woolen run", WOOLLEN_RUN, 0.0),
    ("woolen cut", WOOLLEN_CUT, 0.0),
    ("linen lea", LINEN_LEA, 0.0),
    ("Yorkshire skein", YORKSHIRE_SKEIN, 0.0),
    ("Galashiels cut", GALASHIELS_CUT, 0.0),
    ("Alloa", ALLOA, 0.0),
    ("West of England", WEST_OF_ENGLAND, 0.0),
    ("French cotton", FRENCH_COTTON, 0.0),
    ("jute count", JUTE, 1.0),
)

SYSTEMS = Table(
    "systems",
    "Yarn count systems",
    (
        Column("name", "System", tuple(name for name, _, _ in _SYSTEMS), width=24),
        Column("factor", "m/g or g/m", tuple(kind.metric.value for _, kind, _ in _SYSTEMS), NUMBER_UNIT),
        Column("direct", "Mass per length", tuple(direct for *_, direct in _SYSTEMS), NUMBER_UNIT),
    ),
    about="The factor is meters per gram in one unit of the system, or grams per meter where mass per length says 1.",
)


# Turns per meter times the root of tex that one unit of a system's twist factor stands for.
TWISTS = Table(
    "twists",
    "Twist factor systems",
    (
        Column("name", "System", ("cotton", "worsted", "woolen run", "metric", "tex"), width=24),
        Column("scale", "Turns per m · √tex", (
            *((1000 * 453.59237 / (yards * 0.9144)) ** 0.5 / 0.0254 for yards in (840, 560, 1600)), 1000**0.5, 100.0,
        ), NUMBER_UNIT),
    ),
)

# Two-sided 95 % quantiles of Student's t, NIST/SEMATECH e-Handbook table, by number of readings: read for 2 to 11, 15,
# 20, 30.
_T = (
    12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228, 2.201, 2.179, 2.160, 2.145, 2.131, 2.120,
    2.110, 2.101, 2.093, 2.086, 2.080, 2.074, 2.069, 2.064, 2.060, 2.056, 2.052, 2.048, 2.045, 2.042,
)
QUANTILES = Table(
    "quantiles",
    "Student's t, two-sided 95%, by number of readings",
    (
        Column("readings", "Readings, from", tuple(float(n) for n in range(2, 32)) + (41.0, 61.0, 121.0), NUMBER_UNIT),
        Column("t", "t", (*_T, 2.021, 2.000, 1.980), NUMBER_UNIT),
    ),
    about="Table of NIST/SEMATECH: 2 to 11, 15, 20 and 30 readings read, the others from memory.",
)

# (n - 1) / √n · √(t² / (n - 2 + t²)) for 3 to 30 values, and for every fifth, tenth and so on after that.
_GRUBBS = (
    1.1543, 1.4813, 1.7150, 1.8871, 2.0200, 2.1266, 2.2150, 2.2900, 2.3547, 2.4116, 2.4620, 2.5073, 2.5483, 2.5857,
    2.6200, 2.6516, 2.6809, 2.7082, 2.7338, 2.7577, 2.7803, 2.8016, 2.8217, 2.8408, 2.8589, 2.8762, 2.8927, 2.9085,
)
GRUBBS = Table(
    "grubbs",
    "How many standard deviations off the mean a skein stands out (Grubbs, 5%)",
    (
        Column("skeins", "Skeins, from", (*(float(n) for n in range(3, 31)), 35.0, 40.0, 50.0, 60.0, 80.0, 100.0, 150.0, 200.0, 300.0, 500.0, 1000.0), NUMBER_UNIT),
        Column("limit", "Limit", (*_GRUBBS, 2.9782, 3.0361, 3.1282, 3.1997, 3.3061, 3.3841, 3.5170, 3.6055, 3.7236, 3.8631, 4.0400), NUMBER_UNIT),
    ),
    about="Grubbs' test, two-sided: 3 to 12 skeins as in a table of LibreTexts (read), the others by its formula.",
)

RELAXATIONS = Table(
    "relaxations",
    "Stitches by area and stitch length in plain wool knitting (Munden 1959, from memory; fully relaxed read)",
    (
        Column("name", "State", ("dry relaxed", "wet relaxed", "fully relaxed"), width=24),
        Column("constant", "Constant", (19.0, 21.6, 23.1), NUMBER_UNIT),
    ),
)

SHAPES = Table(
    "shapes",
    "Shapes of parts",
    (Column("name", "Shape", ("rectangle", "triangle", "trapezoid", "circle", "ring"), width=24),),
)

WEAVES = Table(
    "weaves",
    "Weaves: ends in a repeat, and how often they cross the weft (Taylor, Ashenhurst, read)",
    (
        Column("name", "Weave", ("plain", "2/1 twill", "2/2 twill", "5-end satin", "8-end satin"), width=24),
        Column("ends", "Ends", (2.0, 3.0, 4.0, 5.0, 8.0), NUMBER_UNIT),
        Column("crossings", "Crossings", (2.0, 2.0, 2.0, 2.0, 2.0), NUMBER_UNIT),
    ),
)

NOTHING = Table(
    "nothing",
    "A cell that stays empty: what other sheets would take from a sheet that was left out",
    (Column("cell", "Nothing", ("",), width=24),),
)

FATES = Table("fates", "Where a skein or a lot went", (Column("name", "Gone, or set aside", ("given", "sold", "used", "lost", "set aside"), width=24),))

DIRECTIONS = Table("directions", "Directions of twist", (Column("name", "Direction", ("Z", "S")),))


NOTATIONS = Table(
    "notations",
    "What the number of a folded yarn counts",
    (
        Column("name", "The number is", ("of each end", "of the folded yarn"), width=24),
        Column("whole", "Of the whole", (0.0, 1.0), NUMBER_UNIT),
    ),
    about="Taylor and Davis (read): 2/40s cotton or worsted is two ends of 40s, spun silk 40/2 is 40 already folded. "
          "Silk of 60/2 metric has 30,000 m in a kilogram: a page on counts (read). Metric 28/2, R 40 tex/2: (from memory).",
)

STRUCTURES = Table(
    "structures",
    "How a yarn is built of singles",
    (
        Column("name", "Built as", ("several strands", "a chain of three", "a ball on itself", "a cable"), width=24),
        Column("ends", "Ends", (0.0, 3.0, 2.0, 0.0), NUMBER_UNIT),
        Column("cabled", "Cabled", (0.0, 0.0, 0.0, 1.0), NUMBER_UNIT),
    ),
    about="Ends of single that follow from the structure alone; 0 where one says how many.",
)

# A program's functions are tried on them.
NUMBERS = Table("lists", "Counting numbers", (Column("number", "Number", (1.0, 2.0, 3.0, 4.0, 5.0), NUMBER_UNIT),))

TABLES = (STATES, WAYS, CLASSES, GRADES, DIRECTIONS, NOTATIONS, STRUCTURES, SYSTEMS, TWISTS, RELAXATIONS, SHAPES, WEAVES, FATES, QUANTILES, GRUBBS)
