"""Weaving: sett from yarn and reed, ends, warp and weft, each of its own yarn, for a cloth of wanted size."""

from workbookgen.language.domains import Choice
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Chapter, Log
from workbookgen.language.quantities import GRIST, LENGTH, LOOP, MASS, NUMBER, SETT, SHARE
from workbookgen.language.repeated import repeated
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import MISSING
from workbookgen.language.usual import Usual
from workbookgen.language.views import Listing, LogView, band
from workbookgen.reference import diameter, yarn_count
from workbookgen.reference import weaving as trade
from workbookgen.settings import Settings
from workbookgen.sheets import by_k, cloth_questions, lists, plausible, tabs, usual
from workbookgen.sheets.limits import AMOUNT, LOSS, NONE_OR_TURNS, PART, PIECES, STITCHES
from workbookgen.sheets.lookup import lookup, of_project
from workbookgen.texts import folded

SHEET = tabs.NEED
CHAPTER = "Weaving"
CLOTH = {"finished_length": "length"}


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (weavings(settings),), (band(Listing(
        title="A woven piece", block="weavings", view=VIEW,
        aside="Take-up and shrinkage are shares of the yarn before it loses them, so they divide: a warp, or a weft, "
              "that loses a tenth must be longer by more than a tenth.",
    )),))


VIEW = LogView(typed="project weave grist width length", answers=(("The estimate", "yarn sett warp_yarn weft_yarn"),))


def weavings(settings: Settings) -> Log:
    return Log(
        "weavings",
        title="",
        rows=settings.rows.weavings,
        groups=(
            _you_type(),
            _sett(),
            _warp(),
            _weft(),
            Group("The estimate", (
                Result("yarn", "Yarn", "IF(OR(given(weft_grist), given(weft_project)), warp_yarn, warp_yarn + weft_yarn)", trade.yarn_of_the_warp, LENGTH,
                       note="Warp and weft, or the warp alone where the weft is another yarn. No reserve in it; the project adds its own."),
                Result("mass", "Weight", "warp_yarn / grist + weft_yarn / or_else(weft_grist, grist)", trade.weight_of_cloth, MASS, note="Of warp and weft."),
            )),
            Group("For other sheets", (
                of_project("planned", "Planned for it", "planned", GRIST, chosen="project"),
                of_project("weft_planned", "Planned for the weft", "planned", GRIST, chosen="weft_project"),
                repeated("of", "Of", "project", width=24),
                repeated("weft_of", "Weft of", "weft_project", width=24),
                Result("weft_apart", "Weft apart", "weft_yarn", trade.weft_apart, LENGTH, only_if="weft_grist > 0"),
            ), printed=False),
        ),
        rules=(
            Rule("AND(given(weft_grist), NOT(given(weft_project)))", lambda values: values["weft_grist"] is not None and not values["weft_project"],
                 f"{MISSING}: the project that makes the weft, since it is another yarn."),
            Rule("AND(given(weft_project), NOT(given(weft_grist)))", lambda values: bool(values["weft_project"]) and values["weft_grist"] is None,
                 "Weft's project: give the weft's grist too, or leave this empty."),
            Rule("AND(given(weft_project), weft_project = project)", _weft_of_the_warp,
                 "Weft's project: choose another one than the warp's."),
            *plausible.thick(settings.units, grist="Grist", weft_grist="Weft grist"),
            plausible.of_another_yarn("grist", "planned", "Grist"),
            plausible.of_another_yarn("weft_grist", "weft_planned", "Weft grist"),
            cloth_questions.touching_counted(),
            *cloth_questions.far_reed(settings.units),
            cloth_questions.close_sett(),
            cloth_questions.open_warp(),
            plausible.counted_as_none("Loom waste, draw-in, shrinkage, take-up: an empty one counts as none, and the warp may come out short.",
                                      "loom_waste", "draw_in", "shrinkage", "take_up", "weft_lost"),
        ),
    )


def _you_type() -> Group:
    return Group("You type", (
        Input("project", "Project", Choice("projects_listed", tabs.PROJECTS), needed=True, width=24),
        Input("weave", "Weave", lists.one_of(lists.WEAVES), needed=True, width=13),
        Input("grist", "Grist", AMOUNT, GRIST, needed=True),
        Input("width", "Finished width", AMOUNT, LOOP, usual=usual.LOOM, needed=True, help="Of the washed cloth."),
        Input("length", "Finished length", AMOUNT, LOOP, usual=usual.WOVEN, needed=True, help="Of one piece, washed."),
        Input("pieces", "Pieces", PIECES, NUMBER, blank_means=1, help="On one warp; empty means one."),
        Input("hems", "Hems", NONE_OR_TURNS, LOOP, usual=usual.HEMS, blank_means=0,
              help="Of one piece, both ends. They are woven; a fringe is not, and goes with the loom waste."),
        Input("samples", "Samples", NONE_OR_TURNS, LOOP, usual=usual.TRIED_OUT, blank_means=0, help="Length for trying out."),
        Input("loom_waste", "Loom waste", NONE_OR_TURNS, LOOP, usual=usual.LOOM_WASTE, blank_means=0,
              help="Warp not woven: left on the loom, floor loom 18 to 36 in (45 to 90 cm), rigid heddle 12 to 24 in (common practice, no source); "
                   "and fringes that are not cut from that."),
        Input("draw_in", "Draw-in", LOSS, SHARE, usual=Usual(most=0.3), blank_means=0, help="Share of the width in the reed lost while weaving."),
        Input("shrinkage", "Shrinkage", LOSS, SHARE, blank_means=0,
              help="Share lost in washing, taken alike in length and width: 5 to 15% (common practice, no source). If your sample lost more one way, type that: "
                   "no side comes out too small."),
        Input("take_up", "Warp take-up", LOSS, SHARE, usual=usual.WOVEN_IN, blank_means=0,
              help="Share of the straightened warp lost going over and under (ASTM D3883): 8 to 12% (common practice, no source)."),
        Input("weft_lost", "Weft take-up", LOSS, SHARE, usual=usual.WOVEN_IN, blank_means=0,
              help="Share of a straightened pick beyond the width in the reed, since draw-in counts by itself: 5 to 10% (common practice, no source)."),
        Input("firmness", "Firmness", PART, NUMBER, blank_means=0.75,
              help="Share of the closest sett: 0.75 to 0.8 for cloth, 0.6 for a shawl (common practice); empty means 0.75."),
        Input("own_sett", "Own sett", STITCHES, SETT, help="If you know your sett, in the reed; it wins over the working sett."),
        Input("own_picks", "Own picks", STITCHES, SETT,
              help="Weft picks on the loom, if they differ from the sett. A weft that covers its warp, as in a rug, has far more: count a sample's."),
        Input("counted", "Wraps, touching", STITCHES, SETT, help="Warp threads laid side by side on a ruler until they touch; they win over the grist."),
        Input("dents", "Reed, dents", STITCHES, SETT, help="Of the reed you have."),
        Input("weft_grist", "Weft grist", AMOUNT, GRIST, help="If the weft is another yarn; empty: it is the warp's."),
        Input("weft_project", "Weft's project", Choice("projects_listed", tabs.PROJECTS), width=20, help="The project that makes this other yarn."),
    ))


def _sett() -> Group:
    return Group("Sett", (
        Result("touching", "Threads touching", by_k.threads("thickness_k_touching", "grist"), diameter.threads_side_by_side, SETT,
               uses={"k": "thickness_k_touching"}, note="By the K on the sheet Counts."),
        lookup("ends_in_repeat", "Ends in repeat", "weaves_ends", "weave", NUMBER, among="weaves_name", digits=0),
        lookup("crossings", "Crossings", "weaves_crossings", "weave", NUMBER, among="weaves_name", digits=0),
        Result("touching_used", "Touching, in use", "or_else(counted, touching)", diameter.wraps_in_use, SETT, uses={"expected": "touching"},
               only_if="OR(given(counted), given(touching))"),
        Result("touching_weft", "Weft, touching", by_k.threads("thickness_k_touching", "weft_grist"), diameter.threads_side_by_side, SETT,
               uses={"grist": "weft_grist", "k": "thickness_k_touching"}, note="Of a weft that is another yarn."),
        Result("closest", "Closest sett", "ends_in_repeat / (ends_in_repeat / touching_used + crossings / or_else(touching_weft, touching_used))",
               trade.closest_sett, SETT,
               uses={"threads_side_by_side": "touching_used", "ends": "ends_in_repeat", "intersections": "crossings", "crossing": "touching_weft"},
               note="The closest sett (Ashenhurst); for cloth by hand, take 0.75 to 0.8 of it (common practice, no source)."),
        Result("working", "Working sett", "closest * firmness", trade.working_sett, SETT, uses={"share": "firmness"}),
        Result("sett", "Sett in use", "or_else(own_sett, working)", trade.sett_in_use, SETT, uses={"own": "own_sett"},
               only_if="OR(given(own_sett), given(working))"),
        Result("per_dent", "Ends in a dent", "MAX(1, ROUND(ROUND(2 * sett / dents, 9), 0)) / 2", trade.ends_in_a_dent, NUMBER, digits=1,
               note="1.5: one and two by turns; 0.5: every other dent stays empty."),
        Result("reed_sett", "The reed's sett", "per_dent * dents", trade.sett_of_reed, SETT),
        Result("set_at", "Sett on the loom", "or_else(reed_sett, sett)", trade.sett_on_the_loom, SETT, uses={"of_reed": "reed_sett"}),
    ))


def _warp() -> Group:
    return Group("Warp", (
        Result("reed_width", "Width in reed", "width / ((1 - draw_in) * (1 - shrinkage))", trade.width_in_reed, LOOP, uses={"finished_width": "width"}),
        Result("ends", "Ends", "ROUNDUP(ROUND(set_at * reed_width, 6), 0)", trade.ends, NUMBER, uses={"sett": "set_at", "width": "reed_width"}, digits=0),
        Result("warp_length", "Warp length", "(pieces * (length + hems) + samples) / ((1 - shrinkage) * (1 - take_up)) + loom_waste",
               trade.warp_length, LENGTH, uses=CLOTH, digits=2),  # the length to wind: half a yard off would be felt
        Result("warp_yarn", "Warp yarn", "ends * warp_length", trade.warp_yarn, LENGTH, only_if="ends > 0"),
        Result("warp_mass", "Warp weighs", "warp_yarn / grist", yarn_count.mass_of_length, MASS, uses={"length": "warp_yarn"}),
    ))


def _weft() -> Group:
    return Group("Weft", (
        Result("woven", "Length to weave", "(pieces * (length + hems) + samples) / (1 - shrinkage)", trade.woven_length, LENGTH, uses=CLOTH, digits=2,
               note="Measured slack: under tension it looks longer, and the cloth would come out short (common practice, no source)."),
        Result("closest_picks", "Closest picks", "ends_in_repeat / (ends_in_repeat / touching_weft + crossings / touching_used)", trade.closest_sett, SETT,
               uses={"threads_side_by_side": "touching_weft", "ends": "ends_in_repeat", "intersections": "crossings", "crossing": "touching_used"},
               note="Of a weft that is another yarn."),
        Result("picks", "Picks in use", "or_else(own_picks, IF(given(closest_picks), closest_picks * firmness, set_at))", trade.picks_in_use, SETT,
               uses={"own": "own_picks", "closest": "closest_picks", "share": "firmness", "sett": "set_at"},
               only_if="OR(given(own_picks), given(closest_picks), given(set_at))"),
        Result("weft_yarn", "Weft yarn", "picks * woven * reed_width / (1 - weft_lost)", trade.weft_yarn, LENGTH,
               uses={"woven_length": "woven", "width": "reed_width", "take_up": "weft_lost"}),
    ))


def _weft_of_the_warp(values: dict) -> bool:
    chosen = [values[each] for each in ("project", "weft_project")]
    return all(isinstance(each, str) and each for each in chosen) and folded(chosen[0]) == folded(chosen[1])
