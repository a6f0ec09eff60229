"""Knitting: how much yarn a piece takes, from its area and a swatch, its gauge, or a piece like it."""

from workbookgen.language.domains import Choice
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Chapter, Log
from workbookgen.language.quantities import AREA, GAUGE, GRIST, LENGTH, LOOP, MASS, NUMBER, PER_AREA
from workbookgen.language.repeated import repeated
from workbookgen.language.rules import Distinct, Rule
from workbookgen.language.sentences import ASKING, MISSING, UNKNOWN
from workbookgen.language.views import Listing, LogView, band
from workbookgen.reference import knitting as trade
from workbookgen.settings import Settings
from workbookgen.sheets import light_weights, lists, plausible, swatch_questions, tabs, usual
from workbookgen.sheets.limits import AMOUNT, SIZE, STITCHES, TURNS
from workbookgen.sheets.lookup import lookup, of_project

SHEET = tabs.NEED
CHAPTER = "Knitting"


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (estimates(settings),), (band(Listing(title="A knitted or crocheted piece", block="estimates", view=VIEW,
                                                                  aside="Give a swatch, a gauge, or the weight of a piece like it: one way is enough, a swatch is the surest.")),))


VIEW = LogView(
    typed="project grist swatch_width swatch_height swatch_mass",
    answers=(("The estimate", "yarn basis"),),
)


def estimates(settings: Settings) -> Log:
    return Log(
        "estimates",
        title="",
        rows=settings.rows.estimates,
        groups=(
            _you_type(),
            _by_swatch(),
            _by_gauge(),
            Group("By a piece like it", (
                Result("by_piece", "Yarn", "piece_mass * grist", trade.from_piece, LENGTH, uses={"mass": "piece_mass"}, width=17),
            )),
            _the_estimate(),
            Group("For other sheets", (
                of_project("planned", "Planned for it", "planned", GRIST, chosen="project"),
                repeated("of", "Of", "project", width=24),
                Result("by_parts", "By the parts of", "project", trade.estimated_by_parts, None, uses={"swatch": "by_swatch", "gauge": "by_gauge"}, width=24,
                       only_if="OR(given(by_swatch), given(by_gauge))"),
                Result("by_rule", "By rule alone", 'IF(basis = "gauge", IF(given(counted), 0, 1), 0)', trade.by_rule_alone, NUMBER, digits=0),
            ), printed=False),
        ),
        distinct=(Distinct("by_parts", f"{ASKING} Project: another line reckons with all of its parts, too, and they count twice. Keep one of the two lines."),),
        rules=(
            Rule("AND(given(stitches), given(rows), NOT(AND(given(unraveled), given(unraveled_stitches))), NOT(given(relaxed)), NOT(given(swatch_mass)), NOT(given(piece_mass)))",
                 _without_a_stitch,
                 f"{MISSING}: for a gauge, the yarn that some stitches gave, or how relaxed the swatch was."),
            swatch_questions.whole_swatch(),
            Rule("AND(OR(given(swatch_mass), given(piece_mass)), NOT(given(grist)), NOT(given(stitches)))",
                 lambda values: (values["swatch_mass"] is not None or values["piece_mass"] is not None) and values["grist"] is None and values["stitches"] is None,
                 f"{MISSING}: the grist of the yarn that was weighed."),
            swatch_questions.stitches_and_rows(),
            Rule("AND(OR(given(unraveled), given(unraveled_stitches), given(relaxed)), NOT(given(stitches)), NOT(given(rows)), NOT(given(swatch_mass)), NOT(given(piece_mass)))",
                 _without_a_gauge,
                 f"{MISSING}: stitches and rows, the gauge of what was unraveled or relaxed."),
            Rule("AND(NOT(given(area)), NOT(given(yarn)), OR(AND(given(swatch_area), given(swatch_mass)), given(stitch)))",
                 lambda values: values["area"] is None and values["yarn"] is None
                 and (None not in (values["swatch_area"], values["swatch_mass"]) or values["stitch"] is not None),
                 f"{UNKNOWN}: list the parts of this project with their measures, under its name."),
            Rule("AND(NOT(given(swatch_mass)), NOT(given(stitches)), NOT(given(rows)), NOT(given(piece_mass)))",
                 lambda values: all(values[each] is None for each in ("swatch_mass", "stitches", "rows", "piece_mass")),
                 f"{MISSING}: a weighed swatch, stitches and rows, or the weight of a piece like it."),
            plausible.of_another_yarn("grist", "planned", "Grist"),
            swatch_questions.swatch_weight(settings.units),
            swatch_questions.covered_swatch(settings.units),
            *plausible.thick(settings.units, grist="Grist"),
            *swatch_questions.stitches(settings.units, stitches="Stitches", rows="Rows"),
            swatch_questions.uneven_gauge(unraveled="counted"),
            swatch_questions.unlike_its_gauge(settings.units, "counted", "Unraveled"),
            swatch_questions.swatch_against_gauge(),
            *light_weights.coarse_swatch(settings.units),
        ),
    )


def _you_type() -> Group:
    return Group("You type", (
        Input("project", "Project", Choice("projects_listed", tabs.PROJECTS), needed=True, width=24),
        Input("grist", "Grist", AMOUNT, GRIST, width=9, help="Of the yarn that was weighed in the swatch, or in the piece like it."),
        Input("swatch_width", "Swatch width", SIZE, LOOP, width=9, help="Washed, at rest."),
        Input("swatch_height", "Swatch height", SIZE, LOOP, width=9),
        Input("swatch_mass", "Its weight", AMOUNT, MASS, width=9),
        Input("stitches", "Stitches", STITCHES, GAUGE, width=9, help="Stitch gauge of the washed swatch."),
        Input("rows", "Rows", STITCHES, GAUGE, width=8, help="Row gauge of the washed swatch."),
        Input("unraveled", "Unraveled", AMOUNT, LOOP, help="Yarn that some stitches gave when you unraveled them."),
        Input("unraveled_stitches", "Stitches in it", TURNS, NUMBER, width=9),
        Input("relaxed", "Or how relaxed", lists.one_of(lists.RELAXATIONS), width=14, help="Plain knitting, not unraveled: how far the swatch was relaxed."),
        Input("piece_mass", "Piece like it", AMOUNT, MASS, usual=usual.PIECE, width=9, help="Weight of a piece like the one you want."),
    ))


def _by_swatch() -> Group:
    return Group("By swatch", (
        Result("area", "Area of the parts", "sum_where(pieces_area, pieces_of, project)", trade.area_in_all, AREA,
               uses={"projects": "pieces_of", "areas": "pieces_area"}, only_if="sum_where(pieces_area, pieces_of, project) > 0"),
        Result("swatch_area", "Swatch", "swatch_width * swatch_height", trade.swatch_area, AREA,
               uses={"width": "swatch_width", "height": "swatch_height"}),
        Result("by_swatch", "Yarn", "area / swatch_area * swatch_mass * grist", trade.from_swatch, LENGTH,
               note="Area over swatch area, times the yarn in the swatch."),
    ))


def _by_gauge() -> Group:
    return Group("By gauge", (
        Result("density", "Stitches", "stitches * rows", trade.stitch_density, PER_AREA),
        Result("counted", "A stitch, unraveled", "unraveled / unraveled_stitches", trade.stitch_length, LOOP,
               uses={"length": "unraveled", "stitches": "unraveled_stitches"}, digits=3),
        lookup("constant", "Constant", "relaxations_constant", "relaxed", NUMBER, among="relaxations_name", digits=1),
        Result("munden", "A stitch, by rule", "SQRT(constant / density)", trade.munden_stitch_length, LOOP,
               uses={"stitch_density": "density"}, digits=3, note="Munden's relation for plain wool knitting; within 10 to 15%."),
        Result("stitch", "A stitch", "or_else(counted, munden)", trade.stitch_length_in_use, LOOP,
               only_if="OR(given(counted), given(munden))", digits=3),
        Result("by_gauge", "Yarn", "area * density * stitch", trade.from_gauge, LENGTH,
               uses={"stitch_density": "density", "stitch_length": "stitch"}),
    ))


def _the_estimate() -> Group:
    return Group("The estimate", (
        Result("yarn", "Yarn", "or_else(by_swatch, or_else(by_gauge, by_piece))", trade.estimate_in_use, LENGTH,
               uses={"swatch": "by_swatch", "gauge": "by_gauge", "piece": "by_piece"},
               only_if="OR(given(by_swatch), given(by_gauge), given(by_piece))", note="No reserve in it; the project adds its own."),
        Result("basis", "Known from", 'IF(given(by_swatch), "swatch", IF(given(by_gauge), "gauge", "existing piece"))', trade.estimate_basis, None,
               uses={"swatch": "by_swatch", "gauge": "by_gauge", "piece": "by_piece"},
               only_if="OR(given(by_swatch), given(by_gauge), given(by_piece))", width=15),
    ))


def _without_a_gauge(values: dict) -> bool:
    """Condition that a stitch is known but not how many there are, and that nothing else tells the yarn."""
    of_a_stitch = values["unraveled"], values["unraveled_stitches"], values["relaxed"] or None
    return any(each is not None for each in of_a_stitch) and all(values[each] is None for each in ("stitches", "rows", "swatch_mass", "piece_mass"))


def _without_a_stitch(values: dict) -> bool:
    """Condition that there is only a gauge: the length of a stitch is missing, and nothing else tells the yarn."""
    gauge = values["stitches"] is not None and values["rows"] is not None
    unraveled = values["unraveled"] is not None and values["unraveled_stitches"] is not None
    return gauge and not unraveled and all(values[each] is None for each in ("relaxed", "swatch_mass", "piece_mass"))
