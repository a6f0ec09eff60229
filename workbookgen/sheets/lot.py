"""Lot: the history of one lot, from purchase to yarn, stage by stage."""

from workbookgen.language.domains import Choice
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter
from workbookgen.language.quantities import GRIST, LENGTH, MASS, NUMBER, SHARE, THREADS
from workbookgen.language.views import Chart, Matrix, Sentences, Series, band
from workbookgen.reference import chart_bars, diameter, one_lot_words, yarn_count
from workbookgen.reference import fiber as trade
from workbookgen.settings import Settings
from workbookgen.sheets import by_k, fiber, stages, tabs, uses
from workbookgen.sheets.lookup import of_lot

SHEET = tabs.LOT
CHAPTER = "Lot"
CLEARLY_ANOTHER = 0.1  # of the length at the grist wanted: more than a plan is usually off by; common practice, no source
# Of each stage: its key, its label, its column of the lots, and the stage before.
STAGES = (("skirted", "Skirted", "skirted", "bought"), ("washed", "Washed", "scoured", "skirted"), ("prepared", "Prepared", "prepared", "washed"),
          ("yarn", "Yarn", "yarn", "prepared"))
OF_STAGE = {"skirted": stages.SKIRTING, "washed": stages.SCOURING, "prepared": stages.PREPARATION, "yarn": stages.SPINNING}
STEPS = {"skirted": "skirting", "washed": "scouring", "prepared": "preparation", "yarn": "spinning"}
AFTER = {"skirted": trade.after_skirting, "washed": trade.after_scouring, "prepared": trade.after_preparation, "yarn": trade.after_spinning}


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (WAY,), (
        band(Sentences(fields=("way_words", "way_spun_words", "way_enough_words", "way_samples_words", "way_log_says"), is_large=True)),
        band(
            Matrix(title="From grease to yarn", heads=("Bought", *(label for _, label, *_ in STAGES)), across=(1, 7), rows=(
                ("In use", ("way_bought", *(f"way_{key}" for key, *_ in STAGES))),
                ("Weighed", ("", *(f"way_weighed_{key}" for key, *_ in STAGES))),
                ("Expected", ("", *(f"way_expected_{key}" for key, *_ in STAGES))),
                ("Lost here", ("", *(f"way_lost_{key}" for key, *_ in STAGES))),
            )),
            Matrix(title="Its skeins", heads=("",), across=(9, 12), rows=(
                ("Skeins of it alone", ("way_skeins",)), ("Yarn in them", ("way_length",)), ("Mean grist", ("way_grist",)), ("They vary by (CV)", ("way_variation",)),
                ("Projects take of it", ("way_promised",)),
            )),
        ),
        band(
            CHART,
            Matrix(title="Carded or combed", heads=("", "Of the fed"), across=(9, 12), rows=(
                ("Top or batts", ("way_weighed_top", "way_top_share")), ("Noil", ("way_noil", "way_noil_share")), ("Waste", ("way_waste", "way_waste_share")),
            )),
        ),
    ))


def _expected(key: str, label: str, before: str) -> Result:
    """What is expected after a stage. A lot that was bought after it lost nothing there."""
    loss, stage = f"loss_{key}", OF_STAGE[key]
    known = f"OR(stage > {stage.number}, given({loss}))"
    lost = f"or_else({loss}, 0)"
    if key == "prepared":
        return Result(f"expected_{key}", label, f"IF(stage > IF(second > 0, 4, 3), {before}, {before} * IF(stage > 3, 1, 1 - {lost}) * (1 - second))", AFTER[key], MASS,
                      uses={"scoured": before, "guide": loss}, leaves=(*stage.of_the_scale, "own", "second_way", "own_second"), only_if=known)
    kept = lost if key == "washed" else f"(1 - {lost})"
    return Result(f"expected_{key}", label, f"IF(stage > {stage.number}, {before}, {before} * {kept})", AFTER[key], MASS,
                  uses={"weight" if key == "skirted" else AFTERS_BEFORE[key]: before, "guide": loss}, leaves=(*stage.of_the_scale, "own"), only_if=known)


AFTERS_BEFORE = {"washed": "skirted", "yarn": "prepared"}  # the name that the reference has for the stage before


def _parts(key: str, label: str, before: str) -> tuple[Result, ...]:
    """The parts of a stage's column in the chart: known, only expected, and lost."""
    is_known = f"OR(given(weighed_{key}), {key} >= {before} * 0.999999999)"
    of_both = {"after": key, "before": before}
    return (
        Result(f"known_{key}", label, f"IF({is_known}, {key}, 0)", chart_bars.known_part, MASS, uses=of_both | {"weighed": f"weighed_{key}"}),
        Result(f"guess_{key}", label, f"IF({is_known}, 0, {key})", chart_bars.expected_part, MASS, uses=of_both | {"weighed": f"weighed_{key}"}),
        Result(f"gone_{key}", label, f"IF({before} > {key}, {before} - {key}, 0)", chart_bars.lost_part, MASS, uses=of_both),
    )


_PARTS = [_parts(key, label, before) for key, label, _, before in STAGES]

WAY = Card(
    "way",
    "One lot, from what was bought to yarn",
    groups=(
        Group("You type", (
            Input("lot", "Fiber lot", Choice("fiber_listed", fiber.SHEET), help="Choose a lot to see it stage by stage."),
        )),
        Group("Weights", (
            of_lot("stage", "Stage", "stage", NUMBER, 0),
            of_lot("bought", "Bought", "weight", MASS),
            *(of_lot(key, label, column, MASS) for key, label, column, _ in STAGES),
            *(of_lot(f"weighed_{key}", label, f"{column}_weighed", MASS) for key, label, column, _ in STAGES),
            *(of_lot(f"loss_{key}", label, f"expected_{'yield' if key == 'washed' else STEPS[key]}", SHARE) for key, label, *_ in STAGES),
            of_lot("second", "Second preparation", "second_loss", SHARE),
            *(_expected(key, label, before) for key, label, _, before in STAGES),
            of_lot("weighed_top", "Top or batts", "prepared_weighed", MASS),
            of_lot("top_share", "Its share", "top_share", SHARE, 0),
            of_lot("noil", "Noil", "noil_weighed", MASS),
            of_lot("noil_share", "Its share", "noil_share", SHARE, 0),
            of_lot("waste", "Waste", "waste", MASS),
            of_lot("waste_share", "Its share", "waste_share", SHARE, 0),
            *(of_lot(f"lost_{key}", label, f"lost_{STEPS[key]}", SHARE, 0) for key, label, *_ in STAGES),
        )),
        Group("Its yarn", (
            of_lot("spun", "Spun so far", "spun", MASS),
            of_lot("to_come", "Still to spin", "to_come", MASS),
            of_lot("reach", "That is", "to_come_length", LENGTH),
            of_lot("wanted", "Grist wanted", "grist", GRIST),
            Result("wraps", "Wraps expected", by_k.threads("thickness_k_wrapped", "wanted"), diameter.threads_side_by_side, THREADS,
                   uses={"grist": "wanted", "k": "thickness_k_wrapped"}),
            *uses.enough_for("reach", "wraps"),
            Result("enough_words", "What the rest is for",
                   '"What is " & IF(stage > 4, "left", "still to spin") & " is " & enough & "." & IF(given_and(promised, AND(promised >= 0.005, promised < 1000)), '
                   '" Projects take " & ROUND(ROUND(promised * 100, 9), 0) & "% of it" '
                   '& IF(ROUND(ROUND(promised * 100, 9), 0) > 100, ", which is more than there is.", "."), "")',
                   one_lot_words.still_enough, None, only_if="to_come > 1.5"),
            of_lot("skeins", "Skeins", "skeins", NUMBER, 0),
            of_lot("length", "Yarn in skeins", "spun_length", LENGTH),
            of_lot("grist", "Mean grist", "mean_grist", GRIST),
            Result("as_spun", "As its skeins are", "to_come * grist", yarn_count.length_of_mass, LENGTH, uses={"mass": "to_come"}),
            of_lot("variation", "CV of grist", "variation", SHARE),
            of_lot("promised", "Projects take", "promised", SHARE, 0),
            Result("words", "In words", 'IF(stage > 4, said(bought) & " of yarn, as bought", '
                   'said(yarn) & " of yarn from " & said(bought) & ": " & IF(ROUND(yarn / bought, 9) > 1, "all kept; in damper air fiber weighs more", '
                   'ROUND(ROUND(yarn / bought * 100, 9), 0) & "% kept"))',
                   one_lot_words.lot_in_words, None, only_if="bought > 0"),
            of_lot("by_handfuls", "Handfuls in use", "by_handfuls", NUMBER, 0),
            of_lot("by_samples", "Samples in use", "by_samples", NUMBER, 0),
            Result("samples_words", "By its samples",
                   'IF(by_handfuls > 1, "Its yield is the mean of " & said(by_handfuls) & " handfuls. ", "") & IF(by_samples > 1, "Its loss in spinning is the mean of " '
                   '& said(by_samples) & " samples. ", "") & "To leave one out, empty its lot on the sheet Samples."',
                   one_lot_words.by_samples, None, uses={"handfuls": "by_handfuls", "samples": "by_samples"}, only_if="OR(by_handfuls > 1, by_samples > 1)"),
            of_lot("log_says", "What the log says", "message"),
            of_lot("plied", "In skeins of designs", "plied", MASS),
            Result("spun_words", "In words",
                   'IF(given(weighed_yarn), said(yarn) & " is spun", IF(spun > 0, said(spun), "Nothing") & IF(stage > 4, " is used", " is spun") & IF(spun > 0, "", " yet")) '
                   '& IF(given_and(plied, plied > 1.5), ", " & said(plied) & " of it in skeins of designs", "") '
                   '& ", " & IF(to_come > 1.5, said(to_come) & IF(given(weighed_yarn), " of it in no skein yet", IF(stage > 4, " is left", " still to spin")) '
                   '& IF(given(reach), ": about " & said(reach) & IF(stage > 4, "", " at the grist wanted"'
                   f' & IF(given_and(as_spun, ABS(ROUND(as_spun / reach - 1, 9)) > {CLEARLY_ANOTHER}), ", " & said(as_spun) & " at that of its skeins", "")), ""), '
                   'IF(given(weighed_yarn), "nothing is left outside skeins", IF(stage > 4, "nothing is left", "nothing is left to spin"))) & "."',
                   one_lot_words.way_in_words, None, uses={"length": "reach", "weighed": "weighed_yarn"}),
        )),
        Group("For the chart", (
            Result("known_bought", "Bought", "bought", chart_bars.known_part, MASS, uses={"after": "bought", "before": "bought"}, leaves=("weighed",)),
            *(known for known, _, _ in _PARTS),
            Result("guess_bought", "Bought", "0 * bought", chart_bars.expected_part, MASS, uses={"after": "bought", "before": "bought"}, leaves=("weighed",)),
            *(guess for _, guess, _ in _PARTS),
            Result("gone_bought", "Bought", "0 * bought", chart_bars.lost_part, MASS, uses={"after": "bought", "before": "bought"}),
            *(gone for *_, gone in _PARTS),
        ), printed=False),
    ),
)

CHART = Chart(
    title="Stage by stage", kind="stages", across=(1, 7), rows=11, heads=("Bought", *(label for _, label, *_ in STAGES)),
    series=(
        Series("weighed", ("way_known_bought", "way_known_yarn")),
        Series("expected", ("way_guess_bought", "way_guess_yarn"), look="soft"),
        Series("lost at this stage", ("way_gone_bought", "way_gone_yarn"), look="hair"),
    ),
    about="A column for each stage: what the lot weighed there, or is expected to weigh, and on top of it what it lost.",
)
