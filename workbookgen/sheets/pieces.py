"""Pieces: an irregular piece of work as rectangles, triangles, trapezoids, circles and rings."""

from workbookgen.language.domains import Choice, Note
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Chapter, Log
from workbookgen.language.quantities import AREA, LOOP, NUMBER
from workbookgen.language.repeated import repeated
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, MISSING
from workbookgen.language.views import Listing, LogView, band
from workbookgen.reference import knitting as trade
from workbookgen.settings import Settings
from workbookgen.sheets import lists, tabs
from workbookgen.sheets.limits import PIECES, SIZE
from workbookgen.texts import folded

SHEET = tabs.NEED
CHAPTER = "Pieces"
FLAT = 'OR(shape = "circle", shape = "ring", given(height))'
ROUND = 'OR(shape = "rectangle", shape = "triangle", shape = "circle", given(second))'


LARGEST_PART = 1  # square meters, of a part that is made several times; common practice, no source: the back of a large coat has 0.9


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (pieces(settings),), (band(Listing(
        title="Its parts", block="pieces", view=VIEW,
        aside="A sleeve is a trapezoid; a yoke a ring; a shawl a triangle. "
              "Circle and ring: the width is what they measure across.",
    )),))


VIEW = LogView(typed="project part shape width height second pieces", answers=(("It has", "area"),))


def pieces(settings: Settings) -> Log:
    return Log(
        "pieces",
        title="",
        rows=settings.rows.pieces,
        groups=(
            Group("You type", (
                Input("project", "Project", Choice("projects_listed", tabs.PROJECTS), needed=True, width=24),
                Input("part", "Part", Note(), width=18),
                Input("shape", "Shape", lists.one_of(lists.SHAPES), needed=True, width=12),
                Input("width", "Width", SIZE, LOOP, needed=True, help="Or what it measures across."),
                Input("height", "Height", SIZE, LOOP, help="Not for circle and ring."),
                Input("second", "Other width", SIZE, LOOP, help="Trapezoid: the other of the two parallel sides. Ring: the hole across."),
                Input("pieces", "How many", PIECES, NUMBER, blank_means=1, help="Empty means one."),
            )),
            Group("Worked out", (
                Result("area", "Area",
                       'pieces * IF(shape = "rectangle", width * height, IF(shape = "triangle", width * height / 2, '
                       'IF(shape = "trapezoid", (width + second) / 2 * height, IF(shape = "circle", PI() / 4 * width * width, '
                       'PI() / 4 * (width * width - second * second)))))',
                       trade.area, AREA, width=12,
                       only_if=f'AND({FLAT}, {ROUND}, OR(shape <> "ring", blank_or(second, second < width)))'),
            )),
            Group("For other sheets", (
                repeated("of", "Of", "project", width=24),
            ), printed=False),
        ),
        rules=(
            Rule('AND(OR(shape = "rectangle", shape = "triangle", shape = "trapezoid"), given(width), NOT(given(height)))', _without_height, f"{MISSING}: its height."),
            Rule('AND(OR(shape = "trapezoid", shape = "ring"), given(width), NOT(given(second)))', _without_second,
                 f"{MISSING}: its other width; of a ring, the hole across."),
            Rule('AND(shape = "ring", second >= width)', lambda values: _is(values, "ring") and values["second"] >= values["width"],
                 "Other width: the hole of a ring must be less than the ring across."),
            *_large_part(settings.units),
        ),
    )


def _large_part(system: str) -> tuple[Rule, ...]:
    """A part that is made more than once, and each time as large as a blanket: centimeters, typed as inches.

    Last digits do not decide.
    """
    if AREA.unit(system) == AREA.metric:
        return ()
    meters = AREA.unit(system).value
    return (
        Rule(
            f"AND(pieces > 1.5, ROUND(area / pieces, 9) > {LARGEST_PART})",
            lambda values: values["pieces"] > 1.5 and round(values["area"] * meters / values["pieces"], 9) > LARGEST_PART,
            f"{ASKING} How many: several, and each larger than 1,550 square inches (a square meter). Look at the unit of its measures: inches, or cm?",
        ),
    )


def _is(values: dict, *shapes: str) -> bool:
    return isinstance(values["shape"], str) and folded(values["shape"]) in shapes


def _without_height(values: dict) -> bool:
    return _is(values, "rectangle", "triangle", "trapezoid") and values["width"] is not None and values["height"] is None


def _without_second(values: dict) -> bool:
    return _is(values, "trapezoid", "ring") and values["width"] is not None and values["second"] is None
