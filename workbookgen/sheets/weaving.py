"""Weaving: sett from the yarn, ends, warp and weft, for a cloth of wanted size."""

from workbookgen.language.domains import Choice, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Chapter, Log
from workbookgen.language.quantities import (
    GRIST,
    LENGTH,
    LOOP,
    MASS,
    NUMBER,
    SETT,
    SHARE,
)
from workbookgen.reference import diameter, stock, yarn_count
from workbookgen.reference import weaving as trade
from workbookgen.language.views import Listing, LogView, band
from workbookgen.settings import Settings
from workbookgen.sheets import lists
from workbookgen.sheets.knitting import PROJECTS

SHEET = "Need"
CHAPTER = "Weaving"
ANY = Number(above=0, most=1_000_000)
ALLOWANCE = Number(least=0, most=100_000)
LOSS = Number(least=0, below=1)
CLOTH = {"finished_length": "length"}


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (weavings(settings),), (band(Listing(title="A woven piece", block="weavings", view=VIEW, aside="Warp and weft of one yarn. Take-up and shrinkage are shares of the yarn before it loses them, so they divide: a warp, or a weft, that loses a tenth must be longer by more than a tenth.")),))


VIEW = LogView(typed="project weave grist width length", answers=(("The estimate", "yarn sett warp_yarn weft_yarn"),))


def weavings(settings: Settings) -> Log:
    return Log(
        "weavings",
        title="",
        rows=settings.rows.weavings,
        groups=(
            Group("You type", (
                Input("project", "Project", Choice("projects_listed", PROJECTS), needed=True, width=24),
                Input("weave", "Weave", Choice("weaves_name", lists.SHEET), needed=True, width=13),
                Input("grist", "Grist", ANY, GRIST, needed=True),
                Input("width", "Finished width", ANY, LOOP, needed=True, help="Of the washed cloth."),
                Input("length", "Finished length", ANY, LOOP, needed=True, help="Of one piece, washed."),
                Input("pieces", "Pieces", Number(above=0, most=1000), NUMBER, blank_means=1, help="On one warp; empty means one."),
                Input("hems", "Hems, fringe", ALLOWANCE, LOOP, blank_means=0, help="Of one piece, both ends."),
                Input("samples", "Samples", ALLOWANCE, LOOP, blank_means=0, help="Length for trying out."),
                Input("loom_waste", "Loom waste", ALLOWANCE, LOOP, blank_means=0, help="Warp that stays on the loom: floor loom 18 to 36 in (45 to 90 cm), rigid heddle 12 to 24 in (common practice, no source)."),
                Input("draw_in", "Draw-in", LOSS, SHARE, blank_means=0, help="Share of the width in the reed lost while weaving."),
                Input("shrinkage", "Shrinkage", LOSS, SHARE, blank_means=0, help="Share lost in washing, both ways: 5 to 15% (common practice, no source)."),
                Input("take_up", "Warp take-up", LOSS, SHARE, blank_means=0, help="Share of the straightened warp lost going over and under (ASTM D3883): 8 to 12% (common practice, no source)."),
                Input("weft_lost", "Weft take-up", LOSS, SHARE, blank_means=0, help="Share of the straightened weft lost going over and under, as for the warp: 5 to 10% (common practice, no source)."),
                Input("firmness", "Firmness", Number(above=0, most=1), NUMBER, blank_means=0.75, help="Share of the closest sett: 0.75 to 0.8 for cloth, 0.6 for a shawl (common practice); empty means 0.75."),
                Input("own_sett", "Own sett", Number(above=0, most=1000), SETT, help="If you know your sett; it wins over the working sett."),
                Input("own_picks", "Own picks", Number(above=0, most=1000), SETT, help="Weft picks, if they differ from the sett."),
            )),
            Group("Sett", (
                Result("touching", "Threads touching", "thickness_k_touching * SQRT(grist * 453.59237 / 0.9144) / 0.0254", diameter.threads_side_by_side, SETT,
                       uses={"k": "thickness_k_touching"}, note="With K of the sheet Counts."),
                Result("ends_in_repeat", "Ends in repeat", "pick(weaves_ends, weaves_name, weave)", stock.pick, NUMBER, digits=0,
                       uses={"name": "weave", "names": "weaves_name", "values": "weaves_ends"}),
                Result("crossings", "Crossings", "pick(weaves_crossings, weaves_name, weave)", stock.pick, NUMBER, digits=0,
                       uses={"name": "weave", "names": "weaves_name", "values": "weaves_crossings"}),
                Result("closest", "Closest sett", "touching * ends_in_repeat / (ends_in_repeat + crossings)", trade.closest_sett, SETT,
                       uses={"threads_side_by_side": "touching", "ends": "ends_in_repeat", "intersections": "crossings"},
                       note="The closest sett (Ashenhurst); for cloth by hand, take 0.75 to 0.8 of it (common practice, no source)."),
                Result("working", "Working sett", "closest * firmness", trade.working_sett, SETT, uses={"share": "firmness"}),
                Result("sett", "Sett in use", "IF(given(own_sett), own_sett, working)", trade.sett_in_use, SETT, uses={"own": "own_sett"},
                       only_if="OR(given(own_sett), given(working))"),
            )),
            Group("Warp", (
                Result("reed_width", "Width in reed", "width / ((1 - draw_in) * (1 - shrinkage))", trade.width_in_reed, LOOP, uses={"finished_width": "width"}),
                Result("ends", "Ends", "ROUNDUP(ROUND(sett * reed_width, 6), 0)", trade.ends, NUMBER, uses={"width": "reed_width"}, digits=0),
                Result("warp_length", "Warp length", "(pieces * (length + hems) + samples) / ((1 - shrinkage) * (1 - take_up)) + loom_waste",
                       trade.warp_length, LENGTH, uses=CLOTH),
                Result("warp_yarn", "Warp yarn", "ends * warp_length", trade.warp_yarn, LENGTH, only_if="ends > 0"),
            )),
            Group("Weft", (
                Result("woven", "Length to weave", "(pieces * (length + hems) + samples) / (1 - shrinkage)", trade.woven_length, LENGTH, uses=CLOTH),
                Result("picks", "Picks in use", "IF(given(own_picks), own_picks, sett)", trade.sett_in_use, SETT, uses={"own": "own_picks", "working": "sett"},
                       only_if="OR(given(own_picks), given(sett))"),
                Result("weft_yarn", "Weft yarn", "picks * woven * reed_width / (1 - weft_lost)", trade.weft_yarn, LENGTH,
                       uses={"woven_length": "woven", "width": "reed_width", "take_up": "weft_lost"}),
            )),
            Group("The estimate", (
                Result("yarn", "Yarn", "warp_yarn + weft_yarn", trade.all_yarn, LENGTH, note="No margin in it; the project adds its own."),
                Result("mass", "Weight", "yarn / grist", yarn_count.mass_of_length, MASS, uses={"length": "yarn"}),
            )),
            Group("For other sheets", (
                Result("of", "Of", "project", stock.listed, None, uses={"name": "project"}, width=24),
            ), printed=False),
        ),
    )
