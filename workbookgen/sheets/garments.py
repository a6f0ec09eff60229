"""Garments: from size and ease to yarn, a pattern at another gauge, a shawl that grows, and fulling."""

from workbookgen.language.domains import Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter
from workbookgen.language.quantities import AREA, GAUGE, GRIST, LENGTH, LOOP, MASS, NUMBER, SHARE
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, MISSING
from workbookgen.language.views import Prose, band
from workbookgen.reference import garments as trade
from workbookgen.reference import knitting, yarn_count
from workbookgen.settings import Settings
from workbookgen.sheets import light_weights, plausible, swatch_questions, tabs, usual
from workbookgen.sheets.card_view import asked_and_answered
from workbookgen.sheets.fabric import fabric
from workbookgen.sheets.limits import AMOUNT, NONE_OR_AMOUNT, NONE_OR_SIZE, SIZE, STITCHES

SHEET = tabs.NEED
CHAPTER = "Garments"

CAUTIONS = (
    "Fulling takes hot water, soap and rubbing. Long gloves; hand-hot is hot enough where hands go in; children stay away. Look every few minutes: nothing brings it back. "
    "Stop when wrists or shoulders hurt.",
)


def chapter(settings: Settings) -> Chapter:
    size, area, gauge, grown, felt = garment(settings), fabric(settings), pattern(settings), shawl(settings), fulling(settings)
    return Chapter(CHAPTER, (size, area, gauge, grown, felt), (
        asked_and_answered(size, "mass", "yarn", hidden="swatch_area", is_printed=False),
        asked_and_answered(area, "area", "far", hidden="swatch_area by_swatch density munden stitch by_gauge", is_printed=False),
        asked_and_answered(gauge, "yarn", "mass", hidden="density", is_printed=False),
        asked_and_answered(grown, "possible", hidden="rest", is_printed=False),
        band(Prose(title="Before you full", sentences=CAUTIONS, is_caution=True, is_printed=False)),
        asked_and_answered(felt, "make_width", "make_length", hidden="swatch_area area", is_printed=False),
    ), CAUTIONS)


def garment(settings: Settings) -> Card:
    return Card(
        "garment",
        "A garment, from size and ease",
        groups=(
            Group("You type", (
                Input("body", "Body around", SIZE, LOOP, usual=usual.BODY, needed=True, help="Chest or bust, at the widest."),
                Input("ease", "Ease", Number(least=-1000, most=1000), LOOP, usual=usual.EASE, blank_means=0,
                      help="In all, beyond the body; below 0 it stretches. 2 to 6 in (5 to 15 cm) is usual (common practice, no source)."),
                Input("length", "Length", SIZE, LOOP, usual=usual.GARMENT, needed=True, help="From the shoulder to the lower edge."),
                Input("sleeve", "Sleeve length", NONE_OR_SIZE, LOOP, usual=usual.SLEEVE, blank_means=0, help="Empty for none."),
                Input("upper_arm", "Sleeve around, upper arm", NONE_OR_SIZE, LOOP, usual=usual.AROUND_AN_ARM, blank_means=0, help="Of the sleeve, its ease in it."),
                Input("cuff", "Sleeve around, cuff", NONE_OR_SIZE, LOOP, usual=usual.AROUND_AN_ARM, help="Empty: as wide as above."),
                Input("more", "On top", Number(least=0, most=2), SHARE, blank_means=0.05, help="For collar, bands and seams; empty means 5% (common practice, no source)."),
                Input("swatch_width", "Swatch width", SIZE, LOOP, help="Washed, at rest."),
                Input("swatch_height", "Swatch height", SIZE, LOOP),
                Input("swatch_mass", "Its weight", AMOUNT, MASS),
                Input("grist", "Grist", AMOUNT, GRIST, help="Of its yarn; for the length."),
            )),
            Group("Worked out", (
                Result("around", "Garment around", "body + ease", trade.finished_around, LOOP, only_if="body + ease > 0", digits=1),
                Result("panel", "Back or front, wide", "around / 2", trade.panel_width, LOOP, digits=1),
                Result("area", "Its area", "(around * length + (upper_arm + or_else(cuff, upper_arm)) * sleeve) * (1 + more)", trade.garment_area, AREA, digits=0,
                       only_if="OR(sleeve = 0, upper_arm > 0)",
                       note="Body and sleeves laid flat. For other shapes, the list of parts above."),
                Result("swatch_area", "Swatch", "swatch_width * swatch_height", knitting.swatch_area, AREA, uses={"width": "swatch_width", "height": "swatch_height"}),
                Result("mass", "Yarn, weight", "area / swatch_area * swatch_mass", trade.yarn_by_swatch, MASS, note="No reserve in it."),
                Result("yarn", "Yarn, length", "mass * grist", yarn_count.length_of_mass, LENGTH),
            )),
        ),
        rules=(
            Rule("body + ease <= 0", lambda values: values["body"] + values["ease"] <= 0, "Ease: it takes away all that the body measures."),
            Rule("AND(given_and(sleeve, sleeve > 0), blank_or(upper_arm, upper_arm = 0))",
                 lambda values: (values["sleeve"] or 0) > 0 and not values["upper_arm"], f"{MISSING}: sleeve around, upper arm."),
            Rule("AND(NOT(given(sleeve)), IF(given(upper_arm), upper_arm > 0, given(cuff)))",
                 lambda values: values["sleeve"] is None and (values["upper_arm"] or (values["upper_arm"] is None and values["cuff"] is not None)),
                 f"{MISSING}: sleeve length, or 0 for none."),
            swatch_questions.whole_swatch(),
            swatch_questions.swatch_weight(settings.units),
            swatch_questions.covered_swatch(settings.units),
            *light_weights.coarse_swatch(settings.units),
            *plausible.thick(settings.units, grist="Grist"),
            plausible.counted_as_none("Ease: an empty one counts as none, for a piece no wider than the body.", "ease"),
        ),
    )


def pattern(settings: Settings) -> Card:
    return Card(
        "pattern",
        "A pattern in another gauge, for the same size",
        groups=(
            Group("You type", (
                Input("stitches", "Stitches, by the pattern", STITCHES, GAUGE, needed=True),
                Input("own_stitches", "Stitches, by your swatch", STITCHES, GAUGE, needed=True, help="Washed, at rest."),
                Input("rows", "Rows, by the pattern", STITCHES, GAUGE, help="Empty: they change as the stitches do."),
                Input("own_rows", "Rows, by your swatch", STITCHES, GAUGE),
                Input("length", "Yarn, by the pattern", AMOUNT, LENGTH, usual=usual.IN_A_PIECE),
                Input("grist", "Grist of your yarn", AMOUNT, GRIST, help="For the weight."),
                Input("count", "Stitches to change", NONE_OR_AMOUNT, NUMBER, help="Any number of stitches in the pattern."),
                Input("row_count", "Rows to change", NONE_OR_AMOUNT, NUMBER),
            )),
            Group("Worked out", (
                Result("work", "Your stitches for them", "count * own_stitches / stitches", trade.same_size, NUMBER, digits=1,
                       uses={"pattern": "stitches", "own": "own_stitches"}, note="Take the whole number near it that fits the repeat."),
                Result("work_rows", "Your rows for them", "row_count * own_rows / rows", trade.same_size, NUMBER, digits=1,
                       uses={"count": "row_count", "pattern": "rows", "own": "own_rows"}),
                Result("kept", "Width by its numbers", "stitches / own_stitches - 1", trade.size_of_its_numbers, SHARE, is_signed=True,
                       uses={"pattern": "stitches", "own": "own_stitches"}, note="If you keep them: wider, or below 0 narrower."),
                Result("density", "Stitches for one", "own_stitches / stitches * IF(AND(given(rows), given(own_rows)), own_rows / rows, own_stitches / stitches)",
                       trade.stitches_for_one, NUMBER,
                       uses={"pattern": "stitches", "own": "own_stitches", "pattern_rows": "rows"}),
                Result("yarn", "Yarn you need", "length * SQRT(density)", trade.yarn_in_gauge, LENGTH, uses={"yarn": "length", "stitches_for_one": "density"},
                       note="By Munden's relation, within 10 to 15%, each yarn worked as firmly; a swatch says more."),
                Result("mass", "Its weight", "yarn / grist", yarn_count.mass_of_length, MASS, uses={"length": "yarn"}),
            )),
        ),
        rules=(
            Rule("AND(OR(given(rows), given(own_rows), given(row_count)), NOT(AND(given(rows), given(own_rows))))", _lacks_rows,
                 f"{MISSING}: rows, by the pattern and by your swatch; one without the other counts for nothing."),
            Rule("AND(given(grist), NOT(given(length)))", lambda values: values["grist"] is not None and values["length"] is None,
                 f"{MISSING}: Yarn, by the pattern, for its weight."),
            *swatch_questions.stitches(
                settings.units, stitches="Stitches, by the pattern", own_stitches="Stitches, by your swatch", rows="Rows, by the pattern", own_rows="Rows, by your swatch"
            ),
            *plausible.thick(settings.units, grist="Grist of your yarn"),
            swatch_questions.another_gauge(),
        ),
    )


def _lacks_rows(values: dict) -> bool:
    gauges = [values["rows"], values["own_rows"]]
    return None in gauges and any(each is not None for each in (*gauges, values["row_count"]))


# Stitches that the rest of the yarn makes, times two; and by how many stitches each row grows.


TWICE = "rest / used * rows * (first + now)"
GROWTH = "(now - first) / rows"
EVENLY = f"{TWICE} / (now + SQRT(MAX(now * now + {GROWTH} * {TWICE}, 0)))"


def shawl(settings: Settings) -> Card:
    return Card(
        "shawl",
        "A shawl that grows: how far the yarn goes",
        groups=(
            Group("You type", (
                Input("used", "Yarn used so far", AMOUNT, MASS, needed=True),
                Input("left", "Yarn left", NONE_OR_AMOUNT, MASS, needed=True),
                Input("keep", "Of it, to keep", NONE_OR_AMOUNT, MASS, blank_means=0, help="For the edge and for binding off."),
                Input("rows", "Rows so far", AMOUNT, NUMBER, needed=True, help="Worked so far; the shawl must go on growing evenly."),
                Input("now", "Stitches in a row now", AMOUNT, NUMBER, needed=True),
                Input("first", "Stitches in the first row", NONE_OR_AMOUNT, NUMBER, blank_means=0, help="Empty: from a point. As many as now: from a side, all rows alike."),
                Input("wanted", "Rows still to work", NONE_OR_AMOUNT, NUMBER),
            )),
            Group("Worked out", (
                Result("rest", "To work with", "left - keep", trade.yarn_to_work, MASS, uses={"kept": "keep"}, only_if="left >= keep"),
                Result("possible", "Rows that are possible", f"IF(now >= first, {EVENLY}, MIN({EVENLY}, now * rows / (first - now)))", trade.rows_still, NUMBER, digits=1,
                       uses={"left": "rest"}, note="Yarn goes with stitches: from a point, half the rows take a quarter."),
                Result("takes", "Yarn for those still to work", f"used * wanted * (2 * now + {GROWTH} * wanted) / (rows * (first + now))", trade.yarn_for_rows, MASS,
                       only_if=f"ROUND(now + {GROWTH} * wanted, 6) >= 0"),
                Result("share", "Share of it used so far", "used / (used + takes)", trade.share_worked, SHARE, uses={"to_come": "takes"},
                       note="Of what all rows need, those still to work with them."),
                Result("words", "In words", 'IF(ROUND(rest - takes * 1.07, 9) >= 0, "it will last", IF(ROUND(rest - takes * 0.93, 9) >= 0, '
                                           '"too close to tell: weigh again later", "it will not last"))', trade.rest_lasts, None, uses={"left": "rest", "needed": "takes"}),
            )),
        ),
        rules=(
            Rule("keep > left", lambda values: values["keep"] > values["left"], "Of it, to keep: it is more than is left."),
            Rule(f"ROUND(now + {GROWTH} * wanted, 6) < 0",
                 lambda values: round(values["now"] + (values["now"] - values["first"]) / values["rows"] * values["wanted"], 6) < 0,
                 "Rows still to work: the rows get shorter, and no stitches are left for so many."),
            *light_weights.coarse_start(settings.units),
        ),
    )


def fulling(settings: Settings) -> Card:
    return Card(
        "fulling",
        "Fulling: how large to make it",
        groups=(
            Group("You type", (
                Input("width", "Width wanted, fulled", SIZE, LOOP, needed=True),
                Input("length", "Length wanted, fulled", SIZE, LOOP, needed=True),
                Input("before_width", "Swatch width before", SIZE, LOOP, needed=True),
                Input("after_width", "Swatch width after", SIZE, LOOP, needed=True, help="Fulled as the piece will be, dry."),
                Input("before_height", "Swatch height before", SIZE, LOOP, needed=True),
                Input("after_height", "Swatch height after", SIZE, LOOP, needed=True),
                Input("swatch_mass", "Its weight", AMOUNT, MASS),
                Input("stitches", "Stitches before fulling", STITCHES, GAUGE, help="Gauge of the swatch before."),
                Input("rows", "Rows before fulling", STITCHES, GAUGE),
            )),
            Group("Worked out", (
                Result("lost_width", "Lost across", "1 - after_width / before_width", trade.lost_in_fulling, SHARE, uses={"before": "before_width", "after": "after_width"},
                       is_signed=True),
                Result("lost_length", "Lost along", "1 - after_height / before_height", trade.lost_in_fulling, SHARE, uses={"before": "before_height", "after": "after_height"},
                       is_signed=True,
                       note="Below 0 it has grown."),
                Result("make_width", "Make it wide", "width / (1 - lost_width)", trade.size_to_make, LOOP, uses={"wanted": "width", "lost": "lost_width"},
                       only_if="lost_width < 0.99", digits=1),
                Result("make_length", "Make it long", "length / (1 - lost_length)", trade.size_to_make, LOOP, uses={"wanted": "length", "lost": "lost_length"},
                       only_if="lost_length < 0.99", digits=1),
                Result("cast_on", "Stitches for it", "make_width * stitches", trade.counted_over, NUMBER, uses={"size": "make_width", "gauge": "stitches"}, digits=0),
                Result("work", "Rows for it", "make_length * rows", trade.counted_over, NUMBER, uses={"size": "make_length", "gauge": "rows"}, digits=0),
                Result("swatch_area", "Swatch", "before_width * before_height", knitting.swatch_area, AREA, uses={"width": "before_width", "height": "before_height"}),
                Result("area", "Piece", "make_width * make_length", knitting.swatch_area, AREA, uses={"width": "make_width", "height": "make_length"}),
                Result("mass", "Yarn, weight", "area / swatch_area * swatch_mass", trade.yarn_by_swatch, MASS, note="No reserve in it."),
            )),
        ),
        rules=(
            swatch_questions.swatch_weight(settings.units, "before_width", "before_height"),
            *light_weights.coarse_swatch(settings.units),
            Rule("AND(after_width > before_width, after_height > before_height)",
                 lambda values: values["after_width"] > values["before_width"] and values["after_height"] > values["before_height"],
                 f"{ASKING} Swatch after fulling: it has grown both ways. Were before and after exchanged?"),
            *(swatch_questions.fulled(word, label) for word, label in (("lost_width", "Swatch width after"), ("lost_length", "Swatch height after"))),
            *swatch_questions.stitches(settings.units, stitches="Stitches before fulling", rows="Rows before fulling"),
            swatch_questions.fulled_weight(settings.units),
            swatch_questions.uneven_gauge("Stitches before fulling", "Rows"),
        ),
    )
