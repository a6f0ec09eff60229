"""Color: a dyed top divided so that its colors keep their order, and how long each color becomes."""

from dataclasses import replace

from workbookgen.language.domains import Note
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter, Log
from workbookgen.language.quantities import FINE_MASS, GAUGE, GRIST, LENGTH, LOOP, MASS, NUMBER, SHARE
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, MISSING
from workbookgen.language.views import RIGHT, Listing, LogView, Sentences, band
from workbookgen.reference import color, dyeing
from workbookgen.settings import Rows, Settings
from workbookgen.sheets import plausible, tabs, usual
from workbookgen.sheets.card_view import asked_and_answered
from workbookgen.sheets.limits import AMOUNT, COUNTED, LARGE, LOSS, NONE_OR_PART, PART, STITCHES, STRANDS

SHEET = tabs.YARN
CHAPTER = "Color"
VIEW = LogView(typed="name . share weight", answers=(("In the yarn", "share_used weight_used length run rows width"),))


def chapter(settings: Settings) -> Chapter:
    top = asked_and_answered(TOP, "strip", "repeat", hidden="pieces order shares whole least shortest meeting", is_printed=False)
    said = Sentences(fields=("color_order", "color_meeting", "color_whole"), across=RIGHT, is_below=True, is_printed=False)
    return Chapter(CHAPTER, (TOP, replace(COLORS, rows=settings.rows.colors)), (
        band(*top.sections, said),
        band(Listing(title="Its colors", block="colors", view=VIEW, aside="By eye along one repeat, or weighed.", is_printed=False)),
    ))


TOP = Card(
    "color",
    "Dividing a dyed top",
    groups=(
        Group("You type", (
            Input("mass", "The top weighs", AMOUNT, MASS, usual=usual.PIECE, needed=True),
            Input("repeats", "Repeats along it", COUNTED, NUMBER, needed=True, help="How often its colors come back in the same order; 1 for a gradient."),
            Input("strands", "Strands in the yarn", STRANDS, NUMBER, needed=True, starts_as=2.0, help="A chain ply counts as 1; its grist below is then a third of the single's."),
            Input("skeins", "Skeins alike", COUNTED, NUMBER, needed=True, starts_as=1.0),
            Input("strips", "Strips", COUNTED, NUMBER, help="Lengthwise. Empty: one for each strand of each skein. Fewer make longer runs of color."),
            Input("grist", "Grist of each single", LARGE, GRIST),
            Input("take_up", "Take-up", LOSS, SHARE, usual=usual.TAKE_UP, blank_means=0, help="Share of the singles' length lost in plying; from a sample."),
            Input("differ", "Strands differ by", NONE_OR_PART, SHARE,
                  help="In grist, at most: two strands by three times what your skeins differ by (CV), three or more by four times. More, if the strips differ in weight."),
            Input("row", "Yarn for one row", AMOUNT, LOOP, help="Of a washed swatch, for stripes."),
            Input("row_gauge", "Rows", STITCHES, GAUGE),
        )),
        Group("Worked out", (
            Result("pieces", "Strands in all", "strands * skeins", color.strips, NUMBER, leaves=("chosen",)),
            Result("strips_used", "Divide it into strips", "or_else(strips, strands * skeins)", color.strips, NUMBER, uses={"chosen": "strips"}, digits=0,
                   note="Lengthwise."),
            Result("strip", "One strip weighs", "mass / strips_used", color.part, FINE_MASS, uses={"parts": "strips_used"},
                   note="Weigh each: of a strip that is a tenth heavier, each color is a tenth longer."),
            Result("strand", "One strand weighs", "mass / pieces", color.part, FINE_MASS, uses={"parts": "pieces"}, note="Of each skein."),
            Result("strand_repeats", "Repeats in a strand", "repeats * strips_used / (strands * skeins)", color.repeats_of_strand, NUMBER, uses={"strips": "strips_used"},
                   digits=2),
            Result("order", "The order",
                   'IF(ROUND(strand_repeats, 6) = ROUND(strand_repeats, 0), "Each strand holds the same colors in the same order.", '
                   '"The strands would not be alike: they end within a repeat. Divide into " & said(pieces) & " strips instead.")',
                   color.order_words, None, uses={"repeats": "strand_repeats"}),
            Result("yarn", "Yarn in a skein", "strand * grist * (1 - take_up)", color.strand_length, LENGTH, uses={"mass": "strand"}, note="Before washing."),
            Result("repeat", "One repeat", "yarn / strand_repeats", color.run, LENGTH, uses={"length": "yarn", "repeats": "strand_repeats"}, leaves=("share",), digits=1,
                   note="In the yarn."),
            Result("ahead", "Out of step at the end", "yarn * differ", color.out_of_step, LENGTH, uses={"length": "yarn", "difference": "differ"}, only_if="strands > 1", digits=1,
                   note="One strand ahead of another, at most."),
            Result("least", "Least color", "MIN(colors_share_used)", color.least_share, SHARE, uses={"shares": "colors_share_used"}, only_if="COUNT(colors_share_used) > 0"),
            Result("shortest", "Shortest run", "repeat * least", color.run, LENGTH, uses={"length": "repeat", "share": "least"}, fixed={"repeats": 1.0}, digits=1),
            Result("meeting", "The plies",
                   'IF(ahead - shortest > -0.000000001, "At the end the plies may have lost step: the shortest color then no longer meets itself.", '
                   'IF(ahead - shortest / 2 > 0.000000001, "At the end most of the shortest color may be plied with another: the plies then meet in less than half of it.", '
                   '"If the strands differ by no more, the colors of the plies meet to the end of the yarn."))',
                   color.meeting_words, None),
            Result("shares", "Colors come to", "sum(colors_share_used)", dyeing.whole_of, SHARE, uses={"shares": "colors_share_used"}, only_if="sum(colors_share_used) > 0"),
            Result("whole", "The colors",
                   'IF(ABS(shares - 1) < 0.000000001, "The colors make up the whole top.", "The colors come to " & IF(shares < 1, "less", "more") '
                   '& " than the top weighs: look at their shares.")',
                   color.whole_words, None, uses={"total": "shares"}),
        )),
    ),
    rules=(
        Rule("AND(OR(given(take_up), given(differ), given(row), given(row_gauge)), NOT(given(grist)))",
             lambda values: values["grist"] is None and any(values[each] is not None for each in ("take_up", "differ", "row", "row_gauge")),
             f"{MISSING}: Grist of each single, for the length of its colors."),
        Rule("AND(given(row_gauge), NOT(given(row)))", lambda values: values["row_gauge"] is not None and values["row"] is None,
             f"{MISSING}: Yarn for one row, for the stripes."),
        plausible.no_take_up(where="grist"),
    ),
)


COLORS = Log(
    "colors",
    title="",
    rows=Rows().colors,
    groups=(
        Group("You type", (
            Input("name", "Color", Note(), width=20),
            Input("share", "Of the top", PART, SHARE),
            Input("weight", "Or weighs", AMOUNT, MASS, help="In the whole top."),
        )),
        Group("In the yarn", (
            Result("weight_used", "Weight", "or_else(weight, share * color_mass)", color.color_weight, FINE_MASS, uses={"whole": "color_mass", "weighed": "weight"},
                   only_if="OR(given(weight), given(share))"),
            Result("share_used", "Share", "weight_used / color_mass", color.share_of_top, SHARE, uses={"weight": "weight_used", "whole": "color_mass"},
                   only_if="weight_used <= color_mass"),
            Result("length", "In a skein", "color_yarn * share_used", color.run, LENGTH, uses={"length": "color_yarn", "share": "share_used"}, fixed={"repeats": 1.0}, digits=1,
                   note="If the plies keep step."),
            Result("run", "Each time", "color_yarn * share_used / color_strand_repeats", color.run, LENGTH,
                   uses={"length": "color_yarn", "repeats": "color_strand_repeats", "share": "share_used"}, digits=1),
            Result("rows", "Rows", "run * (1 - doubts_shrinkage) / color_row", color.stripe_rows, NUMBER,
                   uses={"length": "run", "per_row": "color_row", "shrinkage": "doubts_shrinkage"}, digits=1,
                   note="Of the run once it is washed, by the usual shrinkage on the sheet Sureness."),
            Result("width", "Stripe", "rows / color_row_gauge", color.stripe_width, LOOP, uses={"row_gauge": "color_row_gauge"}, digits=1),
        )),
    ),
    rules=(
        Rule("AND(given(share), given(weight))", lambda values: values["share"] is not None and values["weight"] is not None,
             "Give the color's share or its weight, not both."),
        Rule("AND(given(name), NOT(given(share)), NOT(given(weight)))",
             lambda values: values["name"] is not None and values["share"] is None and values["weight"] is None,
             "Still to fill in: its share of the top, or its weight."),
        Rule("AND(given(weight_used), NOT(given(share_used)))", lambda values: values["weight_used"] is not None and values["share_used"] is None,
             f"{ASKING} Or weighs: more than the whole top. Look at the weight of both."),
    ),
)
