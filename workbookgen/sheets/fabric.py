"""Fabric: the area that a yarn gives, by a weighed swatch or its gauge, and how long a strip of it becomes."""

from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card
from workbookgen.language.quantities import AREA, GAUGE, GRIST, LENGTH, LOOP, MASS, PER_AREA
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import MISSING, UNKNOWN
from workbookgen.reference import garments, knitting, measuring
from workbookgen.settings import Settings
from workbookgen.sheets import light_weights, plausible, swatch_questions, usual
from workbookgen.sheets.limits import AMOUNT, SIZE, STITCHES
from workbookgen.sheets.swatch_questions import WET_RELAXED


def fabric(settings: Settings) -> Card:
    return Card(
        "fabric",
        "How much fabric a yarn gives",
        groups=(
            _you_type(),
            _worked_out(),
        ),
        rules=(
            _without_swatch(),
            swatch_questions.stitches_and_rows(),
            swatch_questions.whole_swatch(),
            Rule("AND(OR(AND(given(swatch_area), given(swatch_mass)), given(stitch)), NOT(given(area)))",
                 lambda values: values["area"] is None and (None not in (values["swatch_area"], values["swatch_mass"]) or values["stitch"] is not None),
                 f"{UNKNOWN}: type the yarn, and its grist for a weighed swatch, or choose a skein on the sheet Measure."),
            swatch_questions.swatch_weight(settings.units),
            swatch_questions.covered_swatch(settings.units, "yarn_grist"),
            *light_weights.coarse_swatch(settings.units, "the fabric"),
            *plausible.thick(settings.units, grist="Its grist"),
            *swatch_questions.stitches(settings.units, stitches="Stitches", rows="Rows"),
            swatch_questions.uneven_gauge(unraveled="unraveled"),
            swatch_questions.unlike_its_gauge(settings.units, "unraveled", "Yarn in a stitch"),
        ),
    )


def _you_type() -> Group:
    return Group("You type", (
        Input("length", "Yarn", AMOUNT, LENGTH, usual=usual.IN_A_PIECE, help="Empty: the skein on the sheet Measure."),
        Input("grist", "Its grist", AMOUNT, GRIST, help="For a weighed swatch. Empty: of the skein on the sheet Measure."),
        Input("swatch_width", "Swatch width", SIZE, LOOP, help="Washed, at rest, of this yarn."),
        Input("swatch_height", "Swatch height", SIZE, LOOP),
        Input("swatch_mass", "Its weight", AMOUNT, MASS),
        Input("stitches", "Or stitches", STITCHES, GAUGE, help="If no swatch was weighed."),
        Input("rows", "And rows", STITCHES, GAUGE),
        Input("unraveled", "Yarn in a stitch", SIZE, LOOP,
              help="Unravel twenty and divide. Empty: by Munden's rule, for plain knitting that was washed and dried flat; within 10 to 15%."),
        Input("width", "Wide", SIZE, LOOP, help="Of a scarf or shawl, to see how long it gets."),
    ))


def _worked_out() -> Group:
    return Group("Worked out", (
        Result("yarn", "Yarn in use", "or_else(length, measure_finished)", measuring.tried_or_logged, LENGTH, uses={"tried": "length", "logged": "measure_finished"},
               only_if="OR(given(length), given(measure_finished))"),
        Result("yarn_grist", "Grist in use", "or_else(grist, measure_grist)", measuring.tried_or_logged, GRIST, uses={"tried": "grist", "logged": "measure_grist"},
               only_if="OR(given(grist), given(measure_grist))"),
        Result("swatch_area", "Swatch", "swatch_width * swatch_height", knitting.swatch_area, AREA, uses={"width": "swatch_width", "height": "swatch_height"}),
        Result("by_swatch", "By the swatch", "yarn / yarn_grist / swatch_mass * swatch_area", garments.area_by_swatch, AREA, uses={"length": "yarn", "grist": "yarn_grist"},
               only_if="yarn_grist > 0"),
        Result("density", "Stitches", "stitches * rows", knitting.stitch_density, PER_AREA),
        Result("munden", "A stitch, by rule", f"SQRT({WET_RELAXED} / density)", knitting.munden_stitch_length, LOOP, uses={"stitch_density": "density"},
               fixed={"constant": WET_RELAXED}, digits=3),
        Result("stitch", "A stitch", "or_else(unraveled, munden)", knitting.stitch_length_in_use, LOOP, uses={"counted": "unraveled"},
               only_if="OR(given(unraveled), given(munden))", digits=3),
        Result("by_gauge", "By the gauge", "yarn / (density * stitch)", garments.area_by_gauge, AREA,
               uses={"length": "yarn", "stitch_density": "density", "stitch_length": "stitch"}),
        Result("area", "Fabric", "or_else(by_swatch, by_gauge)", garments.area_in_use, AREA, uses={"swatch": "by_swatch", "gauge": "by_gauge"},
               only_if="OR(given(by_swatch), given(by_gauge))", digits=0),
        Result("far", "At that width, long", "area / width", garments.far_at_width, LOOP, digits=0, note="A rectangle, without fringes; keep some yarn for the ends."),
        Result("basis", "Known from", 'IF(given(by_swatch), "a weighed swatch", "the gauge")', garments.area_basis, None, uses={"swatch": "by_swatch", "gauge": "by_gauge"},
               only_if="OR(given(by_swatch), given(by_gauge))"),
    ))


YARN, FABRIC = ("length", "grist", "unraveled", "width"), ("swatch_width", "swatch_height", "swatch_mass", "stitches", "rows")


def _without_swatch() -> Rule:
    """Questions about a yarn for which neither swatch nor gauge says how much fabric it gives."""
    some_yarn, some_fabric = (f"OR({', '.join(f'given({word})' for word in words)})" for words in (YARN, FABRIC))
    return Rule(f"AND({some_yarn}, NOT({some_fabric}))",
                lambda values: any(values[word] is not None for word in YARN) and all(values[word] is None for word in FABRIC),
                f"{MISSING}: a weighed swatch, or its stitches and rows.")
