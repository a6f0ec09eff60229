"""Measure: one skein of the log, or one that is only tried out; what it is, and what it is good for."""

from collections.abc import Callable

from workbookgen.language.domains import Choice
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter, Log
from workbookgen.language.quantities import (
    GRIST,
    GRIST_METRIC,
    GRIST_US,
    IN_METERS,
    IN_YARDS,
    LENGTH,
    LOOP,
    MASS,
    NUMBER,
    POUND,
    SHARE,
    THREADS,
    Kind,
    always,
)
from workbookgen.language.side_by_side import SideBySide
from workbookgen.language.views import Answers, Band, Chart, Headline, Picture, Series, band
from workbookgen.reference import diameter, gauge, labels, measuring, overview, records, reeling, statistics, yarn_count
from workbookgen.reference.statistics import groups
from workbookgen.settings import Settings
from workbookgen.settings.reels import SPAN
from workbookgen.sheets import by_k, compare, one_skein, one_skein_questions, reels, scale_steps, skeins, tabs, uses
from workbookgen.sheets.limits import CLOSE, NONE_OR_AMOUNT, NONE_OR_PART, NONE_OR_SIZE, NONE_OR_TURNS, REACH
from workbookgen.sheets.lookup import lookup, of_lot, of_project
from workbookgen.unit_systems import UNIT_SYSTEMS

SHEET = tabs.MEASURE
CHAPTER = "Measure"
TOO_HEAVY = "Bag or tag: it must weigh less than the whole. Check both."
CHOSEN = "measure_skein"
POINTS = 24  # skeins of a lot in the chart
LEFT, RIGHT = (1, 4), (6, 12)


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (measure(settings), points()), (_band(settings),))


def _of_log(key: str, label: str, column: str, unit: Kind | None, **more) -> Result:
    """A value of the chosen skein, from the log."""
    return lookup(f"log_{key}", label, f"skeins_{column}", "skein", unit, **more)


def _of_reel(key: str, label: str, column: str) -> Result:
    return lookup(key, label, f"reels_{column}", "reel", LOOP)


def _used(key: str, label: str, tried: str, unit: Kind) -> Result:
    """What was typed here, or else what is in the log."""
    return Result(f"used_{key}", label, f"or_else({tried}, log_{key})", measuring.tried_or_logged, unit,
                  uses={"tried": tried, "logged": f"log_{key}"}, only_if=f"OR(given({tried}), given(log_{key}))")


def _from_reel(key: str, label: str, typed: str, of_reel: str, logged: str) -> Result:
    return Result(key, label, f"or_else({typed}, IF(given(reel), {of_reel}, {logged}))", measuring.of_the_reel, LOOP,
                  uses={"typed": typed, "of_reel": of_reel, "logged": logged},
                  only_if=f"OR(given({typed}), AND(given(reel), given({of_reel})), AND(NOT(given(reel)), given({logged})))")


POUNDS = Input("gross_lb", "Weight", NONE_OR_AMOUNT, always(POUND), help="Whole pounds on the scale, if it shows pounds and ounces; the ounces below come on top.")


def in_pounds(settings: Settings) -> bool:
    """Whether weights are typed as pounds and ounces."""
    return UNIT_SYSTEMS[settings.units].masses == "ounces"


def measure(settings: Settings) -> Card:
    return Card(
        "measure",
        "One skein",
        groups=(
            _you_type(settings),
            _in_the_log(settings),
            _in_use(settings),
            Group("It is", (*_so_long(), *_so_heavy(settings), *_so_thick())),
            _in_words(),
            Group("What it can become", uses.enough_for("finished", "wpi")),
            _its_lot(),
        ),
        rules=one_skein.without_a_loop(),
    )


def _you_type(settings: Settings) -> Group:
    return Group("You type", (
        Input("skein", "Skein", Choice("skeins_listed", skeins.SHEET), help="One of your log, or leave it empty and type what you counted and weighed below."),
        Input("reel", "Reel", Choice("reels_listed", reels.SHEET), help="The reel it was wound on."),
        Input("loop", "or one loop of it", SPAN, LOOP, help="One full turn, if the reel is not on the sheet Reels. It wins over the reel."),
        Input("wraps", "Wraps", NONE_OR_TURNS, help="Full turns of the reel."),
        Input("part_wrap", "Part wrap", NONE_OR_PART, help="The last turn if it is not full: 0.5 is half a turn."),
        Input("rest", "Rest", NONE_OR_SIZE, LENGTH, help="Or the leftover length, measured apart."),
        *((POUNDS,) if in_pounds(settings) else ()),
        Input("gross", "Weight", NONE_OR_AMOUNT, MASS, help="On the scale, with whatever holds it. Best washed and dry."),
        Input("tare", "Bag or tag", NONE_OR_AMOUNT, MASS, help="Weight of bag, tag or bobbin alone."),
        Input("washed_loop", "Loop washed", REACH, LOOP, help="One full loop of the washed, dry, slack skein."),
        Input("counted_wpi", "Wraps counted", CLOSE, THREADS, help="On a ruler, side by side, not pushed together and not pulled."),
    ))


def _in_the_log(settings: Settings) -> Group:
    return Group("In the log", (
        _of_log("reel", "Reel", "from_reel", None),
        _of_log("loop", "Loop", "loop", LOOP),
        _of_log("wraps", "Wraps", "wraps", NUMBER, digits=0),
        _of_log("part_wrap", "Part wrap", "part_wrap", NUMBER),
        _of_log("rest", "Rest", "rest", LENGTH, digits=1),
        _of_log("gross", "Weight", "gross", MASS, digits=2 if in_pounds(settings) else 1),
        _of_log("tare", "Bag or tag", "tare", MASS, digits=2 if in_pounds(settings) else 1),
        _of_log("washed_loop", "Loop washed", "washed_loop", LOOP, digits=1),
        _of_log("counted_wpi", "Wraps counted", "counted_wpi", THREADS),
        _of_log("reel_doubt", "Loop ±", "reel_doubt", LOOP, digits=3),
        _of_log("lot", "Fiber lot", "from_lot", None),
        _of_log("project", "Project", "for_project", None),
        _of_log("shrinkage_sample", "Its sample's shrinkage", "shrinkage_sample", SHARE),
        _of_log("as_bought", "As bought", "as_bought", NUMBER, digits=0),
        _of_log("mark", "Mark", "mark", None),
        _of_log("message", "What the log says", "message", None),
        Result("log_fault", "Wrong in the log", "log_message", measuring.fault_in_log, None,
               uses={"mark": "log_mark", "message": "log_message"}, only_if='log_mark = "!"'),
    ))


def _in_use(settings: Settings) -> Group:
    return Group("In use", (
        _of_reel("reel_loop", "Loop of the reel", "loop"),
        _of_reel("reel_doubt", "Its loop ±", "doubt"),
        Result("loop_doubt", "Typed loop ±", "0.02 * loop / SQRT(3)", reeling.loop_uncertainty, LOOP, leaves=("tolerance", "misread", "from_arms"), digits=3),
        _from_reel("used_loop", "Loop in use", "loop", "reel_loop", "log_loop"),
        _from_reel("used_loop_doubt", "Its ±", "loop_doubt", "reel_doubt", "log_reel_doubt"),
        Result("used_wraps", "Wraps in use", "or_else(wraps, log_wraps)", measuring.wraps_in_use, NUMBER,
               uses={"tried": "wraps", "logged": "log_wraps", "fault": "log_fault"},
               only_if="AND(NOT(given(message)), NOT(given(log_fault)), OR(given(wraps), given(log_wraps)))"),
        _used("part_wrap", "Part wrap in use", "part_wrap", NUMBER),
        _used("rest", "Rest in use", "rest", LENGTH),
        _weight_in_use(settings),
        _used("tare", "Bag or tag, in use", "tare", MASS),
        _used("washed_loop", "Washed loop in use", "washed_loop", LOOP),
        _used("counted_wpi", "Wraps counted, in use", "counted_wpi", THREADS),
    ))


def _weight_in_use(settings: Settings) -> Result:
    """The weight typed here, with pounds and ounces added up, or else that in the log."""
    parts = ("gross_lb", "gross") if in_pounds(settings) else ("gross",)
    typed = " + ".join(f"or_else({part}, 0)" for part in parts)
    any_of_them = ", ".join(f"given({part})" for part in parts)
    uses, leaves = ({"pounds": "gross_lb"}, ()) if in_pounds(settings) else ({}, ("pounds",))
    return Result("used_gross", "Weight in use", f"IF(OR({any_of_them}), {typed}, log_gross)", measuring.weight_in_use, MASS,
                  uses=uses | {"rest": "gross", "logged": "log_gross"}, leaves=leaves, only_if=f"OR({any_of_them}, given(log_gross))")


def _so_long() -> tuple[Result, ...]:
    """Its length, how that is known, and how sure it is."""
    return (
        Result("reeled", "On the reel", f"(used_wraps + {_or_nothing('used_part_wrap')}) * used_loop + {_or_nothing('used_rest')}", reeling.length, LENGTH,
               uses={"wraps": "used_wraps", "loop": "used_loop", "part_wrap": "used_part_wrap", "rest": "used_rest"}, only_if="used_loop > 0"),
        Result("expected_shrinkage", "Shrinkage expected", "or_else(log_shrinkage_sample, doubts_shrinkage)", reeling.expected_shrinkage, SHARE,
               uses={"usual": "doubts_shrinkage", "sample": "log_shrinkage_sample"}, only_if="blank_or(log_shrinkage_sample, log_shrinkage_sample < 0.9)"),
        *(
            Result(f"finished{key}", "Length",
                   "IF(given(used_washed_loop), reeled * used_washed_loop / used_loop, reeled * (1 - or_else(expected_shrinkage, 0)))",
                   reeling.finished_length, unit, uses={"length": "reeled", "loop": "used_loop", "washed_loop": "used_washed_loop", "shrinkage": "expected_shrinkage"},
                   only_if="used_loop > 0")
            for key, unit in (("", LENGTH), ("_yd", IN_YARDS), ("_m", IN_METERS))
        ),
        Result("basis", "Shrinkage",
               'IF(given(used_washed_loop), "measured", IF(given_and(log_as_bought, log_as_bought > 0.5), "as bought", '
               'IF(given(log_shrinkage_sample), "shrinks as its sample", "usual shrinkage")))',
               reeling.length_basis, None, uses={"length": "reeled", "washed_loop": "used_washed_loop", "sample": "log_shrinkage_sample", "bought": "log_as_bought"},
               only_if="reeled >= 0"),
        Result("shrinkage", "Washing took", "1 - used_washed_loop / used_loop", reeling.shrinkage, SHARE,
               uses={"length": "used_loop", "finished": "used_washed_loop"}, only_if="used_loop > 0"),
        *one_skein.length_doubts(one_skein.Words(
            "finished", "used_wraps", "used_loop", "used_loop_doubt", "used_washed_loop", shrinkage="expected_shrinkage", shrinkage_sample="log_shrinkage_sample",
        )).values(),
        Result("least", "At least", "MAX(0, finished - 2 * doubt)", measuring.least_likely, LENGTH, uses={"length": "finished", "uncertainty": "doubt"}),
        Result("most", "At most", "finished + 2 * doubt", measuring.most_likely, LENGTH, uses={"length": "finished", "uncertainty": "doubt"}),
    )


def _so_heavy(settings: Settings) -> tuple[Result, ...]:
    """Its weight and its grist, and how sure that is."""
    return (
        Result("net", "Net weight", "used_gross - " + _or_nothing("used_tare"), reeling.net_mass, MASS, uses={"gross": "used_gross", "tare": "used_tare"},
               only_if=f"{_or_nothing('used_tare')} < used_gross"),
        *(
            Result(key, "Grist", "finished / net", yarn_count.grist, unit, uses={"length": "finished", "mass": "net"}, only_if="finished > 0", digits=0)
            for key, unit in (("grist", GRIST), ("grist_yd_lb", GRIST_US), ("grist_m_100g", GRIST_METRIC))
        ),
        scale_steps.step(settings),
        Result("grist_within", "Grist, within",
               "2 * SQRT(POWER(doubt / finished, 2) + POWER(doubts_scale, 2) + POWER(scale_step / net, 2) / 12 * IF(or_else(used_tare, 0) > 0, 2, 1))",
               measuring.grist_within, SHARE,
               uses={"length": "finished", "uncertainty": "doubt", "u_scale": "doubts_scale", "step": "scale_step", "tare": "used_tare"},
               only_if="finished > 0", note="By the doubt of its length and of your scale, and by the steps in which the scale shows a weight."),
    )


def _so_thick() -> tuple[Result, ...]:
    """Its wraps, its class, and the gauge to expect."""
    return (
        Result("expected_wpi", "Expected wpi", by_k.threads(by_k.K_WRAPPED, "grist"),
               diameter.wraps_expected, THREADS, uses={"k": "thickness_k_wrapped"}),
        Result("wpi", "Wraps per inch", "or_else(used_counted_wpi, expected_wpi)", diameter.wraps_in_use, THREADS,
               uses={"counted": "used_counted_wpi", "expected": "expected_wpi"}, only_if="OR(given(used_counted_wpi), given(expected_wpi))"),
        one_skein.weight_class(),
        Result("fewest", "Stitches, from", "class_of(classes_fewest, classes_past, wpi * 0.9999999)", gauge.fewest_stitches, NUMBER, uses={"wraps": "wpi"}, digits=0),
        Result("stitches", "Stitches, to", "class_of(classes_most, classes_from, wpi * 1.0000001)", gauge.most_stitches, NUMBER, uses={"wraps": "wpi"}, digits=0),
        Result("gauge", "Gauge to expect",
               'IF(fewest = 0, "up to ", said(fewest) & " to ") & said(stitches) & " stitches in 4 in (10 cm), plain; a swatch decides"',
               gauge.gauge_words, None, uses={"most": "stitches"}, width=40),
    )


def _in_words() -> Group:
    return Group("In words", (
        Result("likely", "Very likely",
               'IF(given(most), "very likely " & said(least) & " to " & said(most), '
               'IF(given(used_loop), "Type the wraps you counted.", IF(given(used_wraps), "Choose a reel, or type its loop.", "Choose a skein, or type reel and wraps.")))',
               measuring.likely_words, None, uses={"loop": "used_loop", "wraps": "used_wraps"},
               only_if="IF(given(most), given(least), OR(NOT(given(used_loop)), NOT(given(used_wraps))))"),
        Result("grist_likely", "Very likely",
               'IF(ROUND(grist_within, 9) > 0.5, "known roughly: wind more", "very likely within " & ROUND(ROUND(grist_within * 100, 9), 1) & "%")',
               measuring.grist_words, None, uses={"within": "grist_within"}, only_if="grist > 0"),
        Result("weighs", "It weighs", one_skein.IT_WEIGHS, labels.mass_words, None, uses={"mass": "net"}, only_if="net < 28000"),
        one_skein_questions.unusual(),
        Result("wrong", "What is wrong",
               f'or_else(message, IF(given(log_fault), "In the log: " & log_fault, IF(AND(given(used_gross), NOT(given(net))), "{TOO_HEAVY}", unusual)))',
               measuring.wrong_words, None, uses={"fault": "log_fault", "gross": "used_gross"},
               only_if="OR(given(message), given(log_fault), AND(given(used_gross), NOT(given(net))), given(unusual))"),
        *(_named(key, label, verdict, reference) for key, label, verdict, reference in (
            ("goes_with", "Goes together with", groups.TOGETHER, measuring.goes_with),
            ("alternates_with", "Alternate rows with", groups.ALTERNATE, measuring.alternates_with),
            ("apart_from", "Keep apart from", groups.APART, measuring.apart_from),
        )),
        of_project("project_need", "It needs", "need", LENGTH, chosen="log_project"),
        Result("project_share", "Share of its need", "finished / project_need", measuring.share_of_need, SHARE, uses={"length": "finished", "need": "project_need"},
               only_if="project_need > 0"),
        Result("in_project", "In a project", 'log_project & ": " & said(project_share) & " of its " & said(project_need)', measuring.project_words, None,
               uses={"project": "log_project", "need": "project_need", "share": "project_share"}),
    ))


def _its_lot() -> Group:
    return Group("Its lot", (
        Result("lot_skeins", "Skeins of its lot", "count_where(skeins_grist_yd_lb, skeins_from_lot, log_lot)", records.count_where, NUMBER, digits=0,
               uses={"name": "log_lot", "names": "skeins_from_lot", "amounts": "skeins_grist_yd_lb"}),
        Result("lot_words", "Its lot",
               'IF(given(skein), IF(given(log_lot), log_lot & ", " & IF(lot_skeins = 1, "1 skein", said(lot_skeins) & " skeins"), "it is of no single lot in the log"), '
               '"choose a skein of your log to see this")',
               measuring.lot_words, None, uses={"lot": "log_lot", "count": "lot_skeins"}, only_if="blank_or(log_lot, given(lot_skeins))"),
        *(of_lot(f"lot_{key}", label, column, unit, chosen="log_lot") for key, label, column, unit in (
            ("mean", "Its mean grist", "mean_grist", GRIST), ("variation", "CV", "variation", SHARE), ("grubbs", "Grubbs' limit", "grubbs", NUMBER),
        )),
        Result("off", "Off the mean", "grist / lot_mean - 1", statistics.relative_deviation, SHARE, uses={"value": "grist", "mean": "lot_mean"}),
        Result("chart_y", "On the chart", drawn("off"), measuring.on_the_chart, SHARE, uses={"deviation": "off"}, digits=0),
        Result("chart_x", "At", "IF(count_where(measure_points_x, measure_points_name, skein) > 0, "
               "sum_where(measure_points_x, measure_points_name, skein) / count_where(measure_points_x, measure_points_name, skein), 0 - 1)", measuring.where_drawn, NUMBER,
               uses={"name": "skein", "names": "measure_points_name", "amounts": "measure_points_x"}, digits=0),
        Result("limit", "Limit", "lot_grubbs * lot_variation", measuring.limit_off, SHARE, uses={"times": "lot_grubbs", "variation": "lot_variation"}),
    ))


def _or_nothing(word: str) -> str:
    return f"or_else({word}, 0)"


def _named(key: str, label: str, verdict: str, reference: Callable) -> Result:
    """The names of the first skeins with a verdict, and how many more there are."""
    of, lines = f'SUMPRODUCT((measure_points_verdict = "{verdict}") * 1)', f'(measure_points_verdict <> "{verdict}") * 1000 + measure_points_line'

    def name(place: int) -> str:
        return f"INDEX(measure_points_name, MATCH(SUMPRODUCT(SMALL({lines}, {place})), measure_points_line, 0))"

    text = f'{name(1)} & IF({of} > 1, ", " & {name(2)}, "") & IF({of} > 2, ", " & {name(3)}, "") & IF({of} > 3, " and " & ({of} - 3) & " more", "")'
    return Result(key, label, f'IF({of} = 0, "none", {text})', reference, None,
                  uses={"names": "measure_points_name", "verdicts": "measure_points_verdict", "lines": "measure_points_line", "deviation": "off"},
                  only_if="off >= 0 - 1")


def drawn(deviation: str) -> str:
    return f"IF(given({deviation}), MAX(-0.3, MIN(0.3, {deviation})), 0 - 1)"


def points() -> Log:
    """The first skeins of the chosen one's lot, for the chart; spare lines repeat the last one."""
    return Log("measure_points", "", rows=POINTS, groups=(
        Group("For the chart", (
            Result("number", "Skein", "IF(line < measure_lot_skeins, line, measure_lot_skeins)", measuring.place_in_group, NUMBER, digits=0,
                   uses={"count": "measure_lot_skeins"}, only_if="measure_lot_skeins > 0"),
            Result("place", "Its line", "place(skeins_from_lot, measure_log_lot, skeins_grist_yd_lb, number)", measuring.place, NUMBER, digits=0,
                   uses={"name": "measure_log_lot", "names": "skeins_from_lot", "amounts": "skeins_grist_yd_lb"}),
            Result("name", "Name", "INDEX(skeins_listed, place)", overview.nth, None, uses={"names": "skeins_listed"}),
            lookup("grist", "Grist", "skeins_grist_yd_lb", "name", GRIST),
            lookup("fate", "Where it went", "skeins_fate", "name"),
            Result("other", "If another's", "grist", measuring.of_another, GRIST, uses={"value": "grist", "chosen": "measure_skein"},
                   only_if='AND(line = number, name <> measure_skein, blank_or(fate, OR(fate = "set aside", fate = "used")))'),
            Result("verdict", "Beside the chosen one", compare.verdict("other", "measure_grist"), statistics.may_share, None,
                   uses={"first": "other", "second": "measure_grist"}),
            Result("x", "At", "or_else(number, 0)", measuring.number_on_the_chart, NUMBER, digits=0),
            Result("off", "Off the mean", "grist / measure_lot_mean - 1", statistics.relative_deviation, SHARE, uses={"value": "grist", "mean": "measure_lot_mean"}),
            Result("y", "Drawn at", drawn("off"), measuring.on_the_chart, SHARE, uses={"deviation": "off"}, digits=0),
            *(
                Result(side, f"Limit, {side}", f"IF(given(measure_limit), {sign}measure_limit, 0 - 1)", reference, SHARE, uses={"limit": "measure_limit"}, digits=0)
                for side, sign, reference in (("low", "0 - ", measuring.low_on_the_chart), ("high", "", measuring.high_on_the_chart))
            ),
        ), printed=False),
    ))


def _band(settings: Settings) -> Band:
    length, grist = ("finished_yd", "grist_yd_lb") if UNIT_SYSTEMS[settings.units].lengths == "meters" else ("finished_m", "grist_m_100g")  # in the other unit
    weights = (("", ("measure_gross_lb", "")), ("and", ("measure_gross", "measure_log_gross"))) if in_pounds(settings) else (("", ("measure_gross", "measure_log_gross")),)
    asked = SideBySide(
        title="Counted and weighed", heads=("try out", "in the log"), across=LEFT,
        rows=(
            *(("", (f"measure_{key}", f"measure_log_{key}")) for key in ("reel", "loop", "wraps", "part_wrap", "rest")),
            *weights,
            *(("", (f"measure_{key}", f"measure_log_{key}")) for key in ("tare", "washed_loop", "counted_wpi")),
        ),
    )
    answered = Answers(
        title="It is", aside="what you try out wins over the log", across=RIGHT, message="measure_wrong",
        large=(
            Headline("measure_finished", "length, washed", ("measure_likely", f"measure_{length}", "measure_weighs"), columns=3),
            Headline("measure_grist", "grist", ("measure_grist_likely", f"measure_{grist}"), columns=2),
            Headline("measure_wpi", "wraps in an inch", ("measure_weight_class",), columns=2),
        ),
        lines=("measure_basis", "measure_gauge"),
    )
    good = Answers(
        title="It is good for", across=RIGHT, is_below=True,
        lines=("measure_lot_words", "measure_goes_with", "measure_alternates_with", "measure_apart_from", "measure_in_project", "measure_enough"),
    )
    chart = Chart(
        title="Finer or coarser than its lot", aside="the lot's skeins in their order; dashed: beyond it, one stands out", across=RIGHT, is_below=True, kind="control", rows=8,
        categories=("measure_points_x",),
        series=(
            Series("limit, low", ("measure_points_low",), "limit"),
            Series("limit, high", ("measure_points_high",), "limit"),
            Series("skeins", ("measure_points_y",), "points"),
            Series("this skein", ("measure_chart_y",), "chosen", at=("measure_chart_x",)),
        ),
        about="How far each skein of the lot is off the lot's mean grist, in percent: up is finer, down is coarser. The skein chosen is drawn larger, with its percentage.",
    )
    return band(asked, NIDDY_NODDY, answered, good, chart)


NIDDY_NODDY = Picture(
    title="One wrap of a niddy-noddy", file="niddy-noddy.png", across=LEFT, is_below=True,
    about="A niddy-noddy: its height and both arms are measured from yarn to yarn; four legs of yarn are one wrap.",
)
