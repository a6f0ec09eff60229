"""Skeins: wraps and weight in; length, grist and counts out."""

from workbookgen.language.domains import Choice, Date, Name, Note, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Chapter, Log, Sheet
from workbookgen.language.quantities import (
    DAY,
    GRIST,
    GRIST_METRIC,
    GRIST_US,
    IN_METERS,
    IN_YARDS,
    LENGTH,
    LOOP,
    MASS,
    METRIC_COUNT,
    NUMBER,
    SHARE,
    SQUARE_GRIST,
    SQUARE_LENGTH,
    SQUARE_MASS,
    TEX,
    THREADS,
    WOOLLEN_RUN,
    WORSTED_COUNT,
)
from workbookgen.language.repeated import repeated, repeated_day
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import UNKNOWN
from workbookgen.language.views import LogView, SheetKind
from workbookgen.reference import (
    belongings,
    diameter,
    kept_stock,
    labels,
    planning,
    plying,
    records,
    reeling,
    statistics,
    strands,
    uncertainty,
    which_yarn,
    yarn_count,
)
from workbookgen.settings import Settings
from workbookgen.sheets import (
    by_k,
    fiber,
    lists,
    one_skein,
    reels,
    scale_steps,
    skein_questions,
    stages,
    tabs,
    totals,
    yarn,
)
from workbookgen.sheets.cost import money
from workbookgen.sheets.limits import AMOUNT, CLOSE, NONE_OR_AMOUNT, NONE_OR_PART, NONE_OR_SIZE, NONE_OR_TURNS, REACH
from workbookgen.sheets.lookup import lookup
from workbookgen.sheets.one_skein import parted
from workbookgen.unit_systems import UNIT_SYSTEMS

SHEET = tabs.SKEINS
CHAPTER = "Skeins"
# With more skeins the planner would be slow if it compared every name with every other, or if a message needed the mean
# of every lot, since after each entry the head reads all messages. What stands out is then told beside the skein.
FEW = 1_000
FINISHED = "IF(given(washed_loop), length_yd * washed_loop / loop, length_yd * (1 - or_else(shrinkage_expected, 0)))"
AS_BOUGHT = "given_and(as_bought, as_bought > 0.5)"
OF_FINISHED = {"length": "length_yd", "shrinkage": "shrinkage_expected"}
OF_SKEIN = {"uses": {"length": "finished_yd", "mass": "net"}, "only_if": "finished_yd > 0"}


def sheet(settings: Settings) -> Sheet:
    return Sheet(
        SHEET,
        SHEET,
        "Count the wraps on the reel; weigh it washed and dry, and measure its loop again.",
        (Chapter(CHAPTER, (skeins(settings), totals.spun(settings)), view(settings)),),
        kind=SheetKind.LOG,
        related=(tabs.MEASURE, tabs.REELS, tabs.FIBER, tabs.PROJECTS, tabs.PRINT),
    )


def view(settings: Settings) -> LogView:
    """The answers, in the planner's own unit of length; the columns of the other unit are folded."""
    metric = UNIT_SYSTEMS[settings.units].is_metric("length")
    finished, grist = ("finished_m", "grist_m_100g") if metric else ("finished_yd", "grist_yd_lb")
    return LogView(
        typed="name reel wraps gross washed_loop lot project",
        answers=(("It is", f"{finished} {grist} doubt weight_class"), ("In its lot", "deviation")),
        in_head="skein_sums_words",
    )


def skeins(settings: Settings) -> Log:
    return Log(
        "skeins",
        title="",
        rows=settings.rows.skeins,
        groups=(
            _you_type(settings),
            _length(),
            _grist_and_counts(),
            _thickness(),
            Group("In the stock", (
                Result("worth", "Worth", "price", kept_stock.still_there, money(settings), uses={"amount": "price"}, only_if=stages.STILL_THERE),
            )),
            Group("Its lot", (
                lookup("lot_left", "Lot still to spin", "fiber_to_come", "lot", MASS, width=9,
                       note="Yarn that this skein's lot can still give."),
            )),
            _in_its_lot(),
            _for_the_labels(),
            _for_other_sheets(settings),
        ),
        rules=(
            Rule("AND(given(reel), NOT(given(loop)))", lambda values: bool(values["reel"]) and values["loop"] is None,
                 f"{UNKNOWN}: nobody knows what one turn of its reel measures. Its line on the sheet Reels says what it needs."),
            *skein_questions.skein_weight(settings.units),
            skein_questions.washed_loop(),
            skein_questions.wraps_counted(),
            skein_questions.without_length(),
            skein_questions.long_rest(settings.units),
            *((skein_questions.off_the_like(), stages.of_a_lot_spun()) if settings.rows.skeins <= FEW else ()),
            skein_questions.of_a_lot_alone(),
            *skein_questions.of_no_lot(),
            skein_questions.of_another_lot(),
            skein_questions.of_singles(),
            *skein_questions.not_weighed(),
            Rule("tare >= gross", lambda values: values["tare"] >= values["gross"],
                 "Bag or tag: it must weigh less than the whole. Check both."),
            Rule("AND(given(design), given(lot))", lambda values: bool(values["design"]) and bool(values["lot"]),
                 "Fiber lot: leave it empty, since the design has lots of its own."),
        ),
    )


def _you_type(settings: Settings) -> Group:
    return Group("You type", (
        Input("name", "Skein", Name(unique=settings.rows.skeins <= FEW), needed=True, width=15, help="What you call this skein."),
        Input("reel", "Reel", Choice("reels_listed", reels.SHEET), needed=True, width=15, help="The reel it was wound on, from the sheet Reels."),
        Input("wraps", "Wraps", NONE_OR_TURNS, needed=True, width=8, help="Full turns of the reel."),
        Input("part_wrap", "Part wrap", NONE_OR_PART, blank_means=0, help="The last turn if it is not full: 0.5 is half a turn."),
        Input("rest", "Rest", NONE_OR_SIZE, LENGTH, blank_means=0, help="Or the leftover length, measured apart."),
        Input("gross", "Weight", AMOUNT, MASS, width=9,
              help="On the scale, with whatever holds it. Best washed and dry. If a part goes, divide the skein into two lines, one of them gone: "
                   "otherwise its fiber counts as still to spin."),
        Input("tare", "Bag or tag", NONE_OR_AMOUNT, MASS, blank_means=0, help="Weight of bag, tag or bobbin alone."),
        Input("washed_loop", "Loop washed", REACH, LOOP, width=9,
              help="One full loop of the washed, dry, slack skein. If you wound it again after washing, count its wraps on that reel, and measure its loop as it lies now."),
        Input("counted_wpi", "Wraps counted", CLOSE, THREADS, help="On a ruler, side by side, not pushed together and not pulled."),
        Input("project", "For project", Choice("projects_listed", tabs.PROJECTS, or_none=True), width=15,
              help="The project that it belongs to, from the sheet Projects. Empty: it is free. So is what is left of a finished one, unless you set it aside."),
        Input("design", "Design", Choice("designs_listed", yarn.SHEET), width=22,
              help="If it is plied from several lots: its design, from the sheet Yarn. The design knows the shares of each."),
        Input("lot", "Fiber lot", Choice("fiber_listed", fiber.SHEET), width=13,
              help="If it is all of one lot: that lot, from the sheet Fiber. Leave it empty for yarn that came from none."),
        Input("gone", "Gone, or set aside", lists.one_of(lists.FATES), width=12,
              help="Used: it counts for its project. Given, sold or lost (to moths): for none. "
                   "Set aside: it stays, for no other project. If a part goes, divide wraps and weight into two lines."),
        Input("finished_on", "Finished on", Date(), DAY, help="The day it came off the reel, or dried."),
        Input("plied_of", "Plied of", Number(least=1, most=24, whole=True), NUMBER, width=8, help="Number of singles in it: 1, 2, 3."),
        Input("dye_lot", "Dye lot", Note(), width=14, help="Number or name of the dye bath or dyed top. Skeins of another one may differ in color."),
        Input("wheel", "Wheel and whorl", Note(), width=18, help="What it was spun and plied on, to spin it that way again."),
        Input("place", "Kept in", Note(), width=14, help="Box, shelf, or who has it."),
        Input("price", "Price", NONE_OR_AMOUNT, money(settings),
              help="What it cost you, or would sell for: choose one for all of them. The head adds up those that are still there."),
    ))


def _length() -> Group:
    return Group("Length", (
        Result("shrinkage_sample", "Its sample's shrinkage", "or_else(project_shrinkage, or_else(design_shrinkage, 0))",
               reeling.known_shrinkage, SHARE, uses={"sample": "project_shrinkage", "design": "design_shrinkage", "bought": "as_bought"},
               only_if=f"OR(given(project_shrinkage), given(design_shrinkage), {AS_BOUGHT})",
               note="By the sample of its project, or by the design of its yarn; none of a bought yarn, which is finished."),
        Result("shrinkage_expected", "Shrinkage expected", "or_else(shrinkage_sample, doubts_shrinkage)", reeling.expected_shrinkage, SHARE,
               uses={"usual": "doubts_shrinkage", "sample": "shrinkage_sample"}, only_if="blank_or(shrinkage_sample, shrinkage_sample < 0.9)",
               note="Until you measure the washed loop: the usual one on the sheet Sureness; a design on the sheet Yarn replaces it; a sample on the sheet Samples "
                    "replaces both. A bought yarn is finished: if you wash it, measure its loop."),
        lookup("loop", "Loop", "reels_loop", "reel", LOOP),
        Result("length_yd", "On the reel", "(wraps + part_wrap) * loop + rest", reeling.length, IN_YARDS,
               note="Every full turn of the reel is one loop."),
        Result("length_m", "On the reel", "(wraps + part_wrap) * loop + rest", reeling.length, IN_METERS),
        Result("finished_yd", "Finished", FINISHED, reeling.finished_length, IN_YARDS, uses=OF_FINISHED,
               note="What washing leaves of it: by the washed loop, or until you give that by the shrinkage expected."),
        Result("finished_m", "Finished", FINISHED, reeling.finished_length, IN_METERS, uses=OF_FINISHED),
        Result("known_from", "Known from",
               f'IF(given(washed_loop), "measured", IF({AS_BOUGHT}, "as bought", IF(given(shrinkage_sample), "shrinks as its sample", "usual shrinkage")))',
               reeling.length_basis, None, uses={"length": "length_yd", "sample": "shrinkage_sample", "bought": "as_bought"}, only_if="length_yd >= 0", width=21,
               note="A skein that was not measured after washing is counted with the shrinkage expected."),
        Result("shrinkage", "Shrinkage", "1 - washed_loop / loop", reeling.shrinkage, SHARE,
               uses={"length": "loop", "finished": "washed_loop"}, note="Share of the loop lost in washing."),
    ))


def _grist_and_counts() -> Group:
    return Group("Grist and counts", (
        Result("net", "Net weight", "gross - tare", reeling.net_mass, MASS, only_if="tare < gross"),
        Result("grist_yd_lb", "Grist", "finished_yd / net", yarn_count.grist, GRIST_US, **OF_SKEIN,
               note="Finished length over net weight."),
        Result("grist_m_100g", "Grist", "finished_yd / net", yarn_count.grist, GRIST_METRIC, **OF_SKEIN),
        Result("tex", "Tex", "net / finished_yd", yarn_count.linear_density, TEX, **OF_SKEIN, note="Grams in 1,000 m."),
        Result("metric", "Metric count", "finished_yd / net", yarn_count.grist, METRIC_COUNT, width=9, **OF_SKEIN),
        Result("worsted", "Worsted count", "finished_yd / net", yarn_count.grist, WORSTED_COUNT, width=9, **OF_SKEIN,
               note="Hanks of 560 yd in a pound."),
        Result("run", "Woolen run", "finished_yd / net", yarn_count.grist, WOOLLEN_RUN, width=9, **OF_SKEIN,
               note="Hanks of 1,600 yd in a pound."),
    ))


def _thickness() -> Group:
    return Group("Thickness", (
        Result("expected_wpi", "Expected wpi",
               by_k.threads(by_k.K_WRAPPED, "grist_yd_lb"),
               diameter.wraps_expected, THREADS, width=9, uses={"grist": "grist_yd_lb", "k": "thickness_k_wrapped"},
               note="Wraps per inch expected from the grist, with a K of 0.35; your own K stands on the sheet Counts."),
        Result("wpi", "Wpi in use", "or_else(counted_wpi, expected_wpi)", diameter.wraps_in_use, THREADS, width=9,
               uses={"counted": "counted_wpi", "expected": "expected_wpi"},
               only_if="OR(given(counted_wpi), given(expected_wpi))",
               note="Your own count, or the expected one."),
        one_skein.weight_class(width=22, note="By wraps per inch. The published classes overlap, so that several may be named; sources differ."),
    ))


def _in_its_lot() -> Group:
    return Group("In its lot", (
        lookup("lot_mean", "Lot's mean grist", "fiber_mean_grist", "lot", GRIST),
        Result("deviation", "Off the mean", "grist_yd_lb / lot_mean - 1", statistics.relative_deviation, SHARE, width=9,
               uses={"value": "grist_yd_lb", "mean": "lot_mean"}),
        lookup("lot_variation", "Lot's CV", "fiber_variation", "lot", SHARE, width=9),
        lookup("lot_grubbs", "Grubbs' limit", "fiber_grubbs", "lot", NUMBER, width=9),
        Result("stands_out", "Stands out?", 'IF(ROUND(ABS(deviation), 12) > ROUND(lot_grubbs * lot_variation, 12), "stands out", "in line")',
               statistics.stands_out, None, uses={"variation": "lot_variation", "times": "lot_grubbs"}, width=10,
               note="Farther off the lot's mean than chance would put one skein of so many (Grubbs); from three skeins on."),
    ))


def _for_the_labels() -> Group:
    return Group("For the labels", (
        Result("length_words", "Length",
               'IF(OR(known_from = "usual shrinkage", known_from = "shrinks as its sample"), "about ", "") '
               f'& {parted("ROUND(ROUND(finished_yd / 0.9144, 9), 0)")} & " yd (" & {parted("ROUND(ROUND(finished_yd, 9), 0)")} & " m)"',
               labels.length_words, None, uses={"length": "finished_yd", "basis": "known_from"}, only_if="finished_yd < 900000", width=24),
        Result("mass_words", "Weight", one_skein.IT_WEIGHS, labels.mass_words, None, uses={"mass": "net"}, only_if="net < 28000", width=16),
        Result("grist_words", "Grist",
               f'{parted("ROUND(ROUND(grist_yd_lb * 453.59237 / 0.9144, 9), 0)")} & " yd/lb (" & {parted("ROUND(ROUND(grist_yd_lb * 100, 9), 0)")} & " m/100 g)"',
               labels.grist_words, None, uses={"grist": "grist_yd_lb"}, only_if="grist_yd_lb < 2000", width=24),
        Result("wraps_words", "Wraps",
               'IF(given(counted_wpi), ROUND(ROUND(wpi * 0.0254, 9), 1), "about " & ROUND(ROUND(wpi * 0.0254, 9), 0)) & " wraps per inch"',
               labels.wraps_words, None, uses={"wraps": "wpi", "counted": "counted_wpi"}, only_if="wpi < 39000", width=26),
    ), printed=False)


def _for_other_sheets(settings: Settings) -> Group:
    return Group("For other sheets", (
        lookup("reel_doubt", "Loop ±", "reels_doubt", "reel", LOOP, digits=3),
        *doubts(few=settings.rows.skeins <= FEW),
        *((lookup("lot_spun", "Spun of its lot", "fiber_spun_of_it", "lot", NUMBER), *_made_alike()) if settings.rows.skeins <= FEW else ()),
        *_in_order(),
        # To be summed up: to count under two conditions takes a program two to five times as long.
        Result("counted", "With a grist", "1", which_yarn.counts_as_one, NUMBER, uses={"grist": "grist_yd_lb"}, digits=0, only_if="grist_yd_lb > 0"),
        Result("grist_square", "Grist²", "grist_yd_lb * grist_yd_lb", statistics.square_of, SQUARE_GRIST, uses={"value": "grist_yd_lb"}),
        repeated("listed", "Listed as", "name", width=20),
        repeated("of_project", "Made for", "project", width=22),
        repeated("from_reel", "Reel", "reel", width=18),
        Result("from_lot", "Drawn from", "lot", which_yarn.of_one_lot, None, width=18, only_if="NOT(given(design))"),
        repeated("from_design", "Design", "design", width=18),
        repeated("dyed", "Dyed", "dye_lot", width=14, only_if='LEN(SUBSTITUTE(dye_lot, " ", "")) > 0'),
        lookup("project_shrinkage", "Its project's shrinkage", "projects_shrinkage_known", "project", SHARE),
        lookup("project_grist", "Its project's grist", "projects_expected_grist", "project", GRIST),
        Result("guess", "Will weigh", "finished_yd / or_else(project_grist, lot_mean)", plying.expected_weight, MASS,
               uses={"finished": "finished_yd", "planned": "project_grist", "mean": "lot_mean"},
               only_if="AND(NOT(given(net)), finished_yd >= 0, IF(given(project_grist), project_grist > 0, given_and(lot_mean, lot_mean > 0)))",
               note="What its length says, until it is weighed."),
        lookup("design_shrinkage", "Its design's shrinkage", "designs_shrinkage", "design", SHARE),
        lookup("lot_stage", "Its lot's stage", "fiber_stage", "from_lot", NUMBER, digits=0),
        Result("as_bought", "As bought", "IF(OR(given(project_shrinkage), given(design_shrinkage)), 0, IF(lot_stage > 4.5, 1, 0))", reeling.as_bought,
               NUMBER, uses={"stage": "lot_stage", "sample": "project_shrinkage", "design": "design_shrinkage"}, digits=0),
        Result("weighed_of", "Weighed, of", "design", which_yarn.weighed, None, uses={"name": "design", "mass": "net"}, only_if="net > 0", width=18),
        lookup("project_design", "Its project's yarn", "projects_by_design", "project", width=18),
        lookup("project_lot", "Its project's lot", "projects_by_lot", "project", width=18),
        *(lookup(f"project_lot_{place}", "And its lot", f"projects_by_lot_{place}", "project", width=18) for place in (2, 3)),
        Result("singles", "Singles in it", "plied_of", planning.singles_in_skein, NUMBER, uses={"counted": "plied_of"}, digits=0),
        lookup("project_plies", "Its project's singles", "projects_plies", "project", NUMBER, digits=0),
        Result("lotless", "Made of nothing, for", "project", which_yarn.of_no_lot, None, uses={"name": "project"}, width=22,
               only_if="AND(NOT(given(lot)), NOT(given(design)))"),
        *(
            Result(f"design_key_{place}", "Component", f'design & " / {place}"', plying.component_key, None, fixed={"place": place}, width=22)
            for place in (1, 2)
        ),
        *(
            lookup(key, label, "components_from_1", f"design_key_{place}", among="components_key", width=20)
            for place, key, label in ((1, "from_first", "First lot of the design"), (2, "from_second", "And from"))
        ),
        Result("made_first", "Made of", "or_else(from_first, lot)", strands.lot_in_use, None, uses={"picked": "from_first", "own": "lot"},
               only_if="OR(given(from_first), AND(given(lot), NOT(given(design))))", width=20),
        repeated_day("dated", "Finished on", "finished_on"),
        repeated("fate", "Where it went", "gone", width=12),
        scale_steps.coarse(settings),
        Result("stock", "In the stock", '"there"', kept_stock.in_stock, None, uses={"length": "finished_yd"}, only_if=f"AND(finished_yd >= 0, {stages.STILL_THERE})", width=8),
        lookup("project_took", "Its project took", "projects_used", "project", MASS),
        Result("free_design", "Free, of design", "design", belongings.is_free, None, uses={"name": "design", "took": "project_took"}, leaves=("other",), width=18,
               only_if="AND(OR(NOT(given(project)), given(project_took)), NOT(given(gone)))"),
        Result("free_lot", "Free, of lot", "lot", belongings.is_free, None, uses={"name": "lot", "other": "design", "took": "project_took"}, width=18,
               only_if="AND(OR(NOT(given(project)), given(project_took)), NOT(given(gone)), NOT(given(design)))"),
    ), printed=False)


def _made_alike() -> tuple[Result, ...]:
    """The deviation of a skein from those of its lot with as many singles and the same project, or none."""
    like_it = {"uses": {"name": "alike", "names": "skeins_alike", "amounts": "skeins_grist_yd_lb"}}
    of_all = {"value": "grist_yd_lb", "total": "alike_sum", "count": "alike_count"}
    others = "alike_sum - grist_yd_lb"
    spread = f"(alike_squares - grist_yd_lb * grist_yd_lb) * (alike_count - 1) / POWER({others}, 2)"
    return (
        Result("alike", "Made alike", 'lot & " / " & or_else(project, "") & " / " & or_else(plied_of, 0)', which_yarn.made_alike, None,
               uses={"singles": "plied_of"}, only_if="NOT(given(design))", width=22),
        Result("alike_sum", "Grists, summed", "sum_where(skeins_grist_yd_lb, skeins_alike, alike)", records.sum_where, GRIST, **like_it),
        Result("alike_count", "So many", "count_where(skeins_grist_yd_lb, skeins_alike, alike)", records.count_where, NUMBER, digits=0, **like_it),
        Result("alike_squares", "Grists², summed", "sum_where(skeins_grist_square, skeins_alike, alike)", records.sum_where, SQUARE_GRIST,
               uses={"name": "alike", "names": "skeins_alike", "amounts": "skeins_grist_square"}),
        Result("off_others", "Off those alike", "MIN(100, grist_yd_lb * (alike_count - 1) / (alike_sum - grist_yd_lb) - 1)", statistics.off_the_others, SHARE,
               uses=of_all, only_if=f"AND(alike_count > 1, {others} > 0)"),
        Result("beyond_others", "Beside chance",
               f"ABS(off_others) / (MAX(doubts_variation, SQRT(MAX(0, {spread} - 1) * (alike_count - 1) / (alike_count - 2))) * SQRT(alike_count / (alike_count - 1)))",
               statistics.beyond_the_others, NUMBER, uses=of_all | {"off": "off_others", "squares": "alike_squares", "usual": "doubts_variation"}, digits=1,
               only_if=f"AND(alike_count > 2, doubts_variation > 0, {others} > 0, ROUND(off_others, 9) < 1)", note="Beyond 2.8 it is hardly chance."),
    )


def _in_order() -> tuple[Result, ...]:
    """The parts of the sums that fit a straight line through the grists of a project's skeins, in log order."""
    return (
        Result("order", "Place", "own_line", statistics.place_of, NUMBER, uses={"place": "own_line", "grist": "grist_yd_lb"}, digits=0, only_if="grist_yd_lb > 0"),
        Result("order_square", "Place²", "order * order", statistics.square_of, NUMBER, uses={"value": "order"}, digits=0),
        Result("order_grist", "Place × grist", "order * grist_yd_lb", statistics.weighted_by_place, GRIST, uses={"place": "order", "grist": "grist_yd_lb"}),
    )


LENGTH_DOUBTS = one_skein.length_doubts(
    one_skein.Words("finished_yd", "wraps", "loop", "reel_doubt", "washed_loop", shrinkage="shrinkage_expected", shrinkage_sample="shrinkage_sample")
)


def doubts(*, few: bool) -> tuple[Result, ...]:
    """The uncertainty of a skein's length, separated by what it shares.

    With many skeins all reels are taken for one, which never underestimates it. The project then adds the parts up
    once, since twenty thousand skeins that each search all the others would be slow.
    """
    of_reel = (
        Result("reel_sum", "All of that reel", "sum_where(skeins_reel_part, skeins_pair, pair)", records.sum_where, LENGTH,
               uses={"name": "pair", "names": "skeins_pair", "amounts": "skeins_reel_part"})
        if few
        else lookup("reel_sum", "All of its project", "projects_reel_sum", "for_project", LENGTH)
    )
    return (
        Result("for_project", "Serves", "project", belongings.belongs, None, uses={"name": "project"}, width=22,
               only_if='blank_or(gone, OR(gone = "set aside", gone = "used"))'),
        Result("mass_square", "Weight²", "net * net", statistics.square_of, SQUARE_MASS, uses={"value": "net"}),
        Result("weighed_for", "Weighed, for", "project", which_yarn.measured, None, uses={"name": "project", "grist": "grist_yd_lb"}, width=22, only_if="grist_yd_lb > 0"),
        Result("pair", "Project and reel", 'for_project & " / " & reel', which_yarn.pair, None, uses={"first": "for_project", "second": "reel"}, width=30),
        *(LENGTH_DOUBTS[key] for key in ("count_part", "tape_part", "own_square", "reel_part")),
        of_reel,
        Result("reel_square", "± by reel, squared", "reel_part * reel_sum", uncertainty.with_its_reel, SQUARE_LENGTH,
               uses={"part": "reel_part", "sum_of_reel": "reel_sum"}),
        *(LENGTH_DOUBTS[key] for key in ("slack_part", "shrink_part", "doubt")),
        Result("left_of", "Left, of", "project", kept_stock.left_of, None, uses={"name": "project", "mass": "net"}, width=22, only_if=f"AND(net > 0, {stages.STILL_THERE})"),
    )
