"""Projects: how much yarn and fiber a piece needs, and whether the chosen lots give it."""

from workbookgen.language.domains import Choice, Name, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Chapter, Log, Sheet
from workbookgen.language.quantities import GRIST, HOURS, LENGTH, MASS, NUMBER, SHARE, Kind
from workbookgen.language.repeated import repeated
from workbookgen.language.views import LogView, SheetKind
from workbookgen.reference import belongings, planning, plying, project, records, reeling, uncertainty, yarn_count
from workbookgen.settings import Settings
from workbookgen.sheets import (
    another_grist,
    enough,
    fiber,
    getting_more,
    project_rules,
    project_skeins,
    project_yarn,
    samples,
    scarcest,
    skeins,
    spinning_hand,
    strand_fiber,
    supply,
    tabs,
    usual,
    yarn,
)
from workbookgen.sheets.limits import AMOUNT, COUNTED, LARGE, LOSS, NONE_OR_AMOUNT, STRANDS, UNCERTAIN
from workbookgen.sheets.lookup import lookup
from workbookgen.sheets.project_rules import LOTS

SHEET = tabs.PROJECTS
CHAPTER = "Projects"
ANY_LOT = "OR(given(lot_1), given(lot_2), given(lot_3))"


def sheet(settings: Settings) -> Sheet:
    return Sheet(
        SHEET,
        SHEET,
        "The yarn that a piece wants, and the lots to spin it from.",
        (Chapter(CHAPTER, (projects(settings),), VIEW),),
        kind=SheetKind.LOG,
        related=(tabs.SAMPLES, tabs.FIBER, tabs.NEED, tabs.TIME),
    )


VIEW = LogView(
    typed="name wanted design lot_1 sample",
    answers=(("Is it enough?", "verdict chance_words open_spare need open_have"),),
)


def projects(settings: Settings) -> Log:
    return Log(
        "projects",
        title="",
        rows=settings.rows.projects,
        groups=(
            _you_type(),
            _enough(),
            _needed(),
            project_skeins.group(),
            Group("Strands", (*supply.strand_by_strand(), *spinning_hand.of_the_others(), *spinning_hand.apart(), *spinning_hand.in_common(), *scarcest.lesser())),
            Group("Its fiber", tuple(strand_fiber.its_fiber())),
            Group("How sure?", (
                *project_skeins.drifting(), *project_skeins.as_it_is_spun(), *project_skeins.in_doubt(few=settings.rows.skeins <= skeins.FEW),
                *_of_all_there_is(), *getting_more.to_be_surer(),
            )),
            _for_other_sheets(),
        ),
        rules=project_rules.rules(settings, tuple(f"sample_{key}" for key, *_ in OF_SAMPLE)),
    )


# Whether its design says how many singles are to be spun; of a yarn that is all bought, none are.
DESIGN_KNOWS = "given_and(design_strands, OR(design_strands > 0.5, given_and(bought_share, bought_share > 0.999999)))"


def _you_type() -> Group:
    return Group("You type", (
        Input("name", "Project", Name(), needed=True, width=20),
        Input("wanted", "Yarn wanted", LARGE, LENGTH, help="The yardage that a pattern or your own record states; "
                                                           "leave it empty to use the estimates on the sheets Knitting and Weaving. "
                                                           "For ten balls of 125: =10*125, whatever they weigh."),
        Input("need_doubt", "Wanted, ±", UNCERTAIN, SHARE,
              help="One standard uncertainty; empty means 5% (common practice: a pattern's may be off by 5 to 10%), "
                   "8% of a weft of its own yarn, or 8% where the sheet Knitting knows a stitch by rule alone."),
        Input("margin", "Reserve", Number(least=0, most=2), SHARE, blank_means=0.1,
              help="What you want left over; empty means 10%. It has nothing to do with doubt."),
        Input("grist", "Grist planned", AMOUNT, GRIST,
              help="Grist of the finished yarn; it wins. Empty takes the first lot's; a design on the sheet Yarn replaces that; a sample on the sheet Samples replaces both."),
        Input("design", "Its yarn", Choice("designs_listed", yarn.SHEET), width=16,
              help="A design on the sheet Yarn, if it is plied from several lots. A plain yarn needs none: choose its lots."),
        Input("sample", "Planned by sample", Choice("samples_listed", samples.SHEET), width=16, help="A sample of this yarn: its grist, loss, shrinkage and take-up are used."),
        *(
            Input(lot, label, Choice("fiber_listed", fiber.SHEET), width=16,
                  help="For a plain yarn: a lot on the sheet Fiber to spin from, or the yarn bought. Two or three alike add up, behind the + above the columns; "
                       "of more, make one lot.")
            for lot, label in zip(LOTS, ("First lot", "Second lot", "Third lot"), strict=True)
        ),
        Input("package", "A ball holds", AMOUNT, LENGTH, usual=usual.IN_A_BALL, help="If you buy the yarn: length of one ball or skein."),
        Input("bobbins", "Bobbins", COUNTED, help="How many to fill equally, by weight of yarn. Weigh out more fiber than that, since spinning loses some."),
        Input("strands", "Strands", STRANDS, NUMBER,
              help="For the hours: singles in the ply; empty takes those of its skeins, or two; a design on the sheet Yarn replaces it, and knows how many are not bought."),
        Input("take_up", "Take-up", LOSS, SHARE, usual=usual.TAKE_UP,
              help="For the hours: share of the singles' length lost in plying; empty takes it from the sheet Samples; or by the feeds on the sheet Yarn."),
        Input("done", "Hours done", NONE_OR_AMOUNT, HOURS, help="Hours that you have worked on it so far."),
        Input("used", "Yarn used", NONE_OR_AMOUNT, MASS, help="All finished, both socks: its weight; 0 if given up. Mark its skeins as used. "
                                                              "What it took beyond the skeins logged for it is taken off its lots; "
                                                              "what is left is free for other projects."),
    ))


def _enough() -> Group:
    return Group("Enough?", (
        *enough.in_words(),
        Result("open_have", "There is", "there", project.while_open, LENGTH, uses={"amount": "there"}, only_if="NOT(given(used))",
               note="Its skeins, also those that are in the piece already, and what its lots still give once the other projects on them have theirs. "
                    "Empty for a finished piece."),
        Result("open_spare", "Over or short", "spare", project.while_open, LENGTH, uses={"amount": "spare"}, only_if="NOT(given(used))", width=11,
               note="Beside the yarn needed, with no reserve. Below zero it is short. Other projects on the same lots have theirs."),
        Result("open_chance", "Chance, open", "chance", project.while_open, SHARE, uses={"amount": "chance"}, only_if="NOT(given(used))", digits=0, width=11),
        Result("have", "There is, net", "in_skeins + or_else(lesser_4, 0)", project.all_there_is, LENGTH,
               uses={"to_come": "lesser_4", "unknown": "lots_unknown"}, only_if="blank_or(lots_unknown, lots_unknown = 0)",
               note="Its skeins, and what its lots still give; where a yarn has several components, the scarcest limits."),
        Result("spare", "Over, net", "have - need", project.surplus, LENGTH, width=11,
               note="Beside the yarn needed, with no reserve. Below zero it is short. Other projects on the same lots have theirs."),
        Result("chance", "Chance that it is enough", "IF(doubt_spare > 0, NORMSDIST(spare / doubt_spare), IF(spare >= 0, 1, 0))",
               uncertainty.chance_enough, SHARE, uses={"surplus": "spare", "uncertainty": "doubt_spare"}, digits=0, width=11,
               note="For the yarn needed. The reserve does not lower it."),
        Result("length", "Yarn with reserve", "need * (1 + margin)", project.yarn_length, LENGTH, uses={"length_wanted": "need"},
               note="What to have: the yarn needed, and the reserve."),
        Result("surplus", "Over, reserve kept", "have - length", project.surplus, LENGTH, uses={"need": "length"}, width=11, note="Below zero the reserve is not whole, or worse."),
        Result("free", "In free skeins", "IF(given(design), sum_where(designs_free_length, designs_listed, design), 0)"
               + "".join(f" + IF(given({lot}), sum_where(fiber_free_length, fiber_listed, {lot}), 0)" for lot in LOTS),
               belongings.free_skeins, LENGTH,
               uses={"designs": "designs_listed", "of_designs": "designs_free_length", "lots": "fiber_listed", "of_lots": "fiber_free_length"},
               only_if=f"OR(given(design), {ANY_LOT[3:]}", note="Skeins of this yarn that belong to no open project. "
                                                                "They are not counted: choose the project beside them on the sheet Skeins."),
    ))


def _needed() -> Group:
    return Group("Needed", (
        Result("estimated", "Estimated", "sum_where(estimates_yarn, estimates_of, name) + sum_where(weavings_yarn, weavings_of, name) "
                                         "+ sum_where(weavings_weft_apart, weavings_weft_of, name)", records.spun, LENGTH,
               uses={"names": "estimates_of", "amounts": "estimates_yarn", "second_names": "weavings_of", "second_amounts": "weavings_yarn",
                     "third_names": "weavings_weft_of", "third_amounts": "weavings_weft_apart"}, leaves=("besides", "expected"),
               note="For this project, from the sheets Knitting and Weaving."),
        Result("by_rule", "Stitches by rule", "sum_where(estimates_by_rule, estimates_of, name)", records.sum_where, NUMBER, digits=0,
               uses={"names": "estimates_of", "amounts": "estimates_by_rule"}, note="Estimates that know a stitch by Munden's relation alone."),
        Result("weft", "In a weft apart", "sum_where(weavings_weft_apart, weavings_weft_of, name)", records.sum_where, LENGTH,
               uses={"names": "weavings_weft_of", "amounts": "weavings_weft_apart"}, note="Of that, what is beaten in as a yarn of its own."),
        Result("need", "Yarn needed", "or_else(wanted, estimated)", project.wanted_in_use, LENGTH, uses={"stated": "wanted"},
               only_if="OR(given(wanted), given_and(estimated, estimated > 0))", note="What you stated, or the estimates; no reserve yet."),
        *(_of_sample(key, label, unit) for key, label, unit in OF_SAMPLE),
        lookup("sample_mark", "Sample's mark", "samples_mark", "sample", width=11),
        lookup("design_grist", "Design's grist", "designs_grist_yd_lb", "design", GRIST),
        lookup("design_washing", "Design's washing ±", "designs_washing_doubt", "design", SHARE),
        lookup("design_shrinkage", "Design's shrinkage", "designs_shrinkage", "design", SHARE),
        lookup("design_strands", "Design's singles", "designs_to_spin", "design", NUMBER, digits=0),
        lookup("design_take_up", "Design's take-up", "designs_take_up", "design", SHARE),
        Result("plies", "Singles in the ply", f"IF({DESIGN_KNOWS}, design_strands, or_else(strands, skeins_plies))", planning.singles_in_ply, NUMBER,
               digits=0, uses={"own": "strands", "design": "design_strands", "bought": "bought_share", "skeins": "skeins_plies"},
               only_if=f"OR(given(strands), given(skeins_plies), {DESIGN_KNOWS})",
               note="For the hours: as typed, or else as its skeins are plied; a design on the sheet Yarn replaces it, and knows how many are not bought."),
        lookup("lot_grist", "First lot's grist", "fiber_grist", "lot_1", GRIST),
        lookup("lot_stage", "Its stage", "fiber_stage", "lot_1", NUMBER, digits=0),
        lookup("lot_weight", "It weighed", "fiber_weight", "lot_1", MASS),
        lookup("lot_fate", "Its rest went", "fiber_fate", "lot_1", width=12),
        Result("planned", "Grist in use", "or_else(grist, or_else(sample_grist_yd_lb, or_else(design_grist, lot_grist)))",
               project.planned_grist, GRIST,
               uses={"own": "grist", "sample": "sample_grist_yd_lb", "design": "design_grist", "lot": "lot_grist"},
               only_if="OR(given(grist), given(sample_grist_yd_lb), given(design_grist), given(lot_grist))",
               note="What you planned, or else the first lot's; a design on the sheet Yarn replaces it; a sample on the sheet Samples replaces both."),
        Result("shrinkage_known", "Shrinkage known", "or_else(sample_shrinkage, design_shrinkage)", reeling.known_shrinkage, SHARE,
               uses={"sample": "sample_shrinkage", "design": "design_shrinkage"}, leaves=("bought",), only_if="OR(given(sample_shrinkage), given(design_shrinkage))"),
        Result("shrinkage_used", "Shrinkage in use", "or_else(shrinkage_known, doubts_shrinkage)", reeling.expected_shrinkage, SHARE,
               uses={"usual": "doubts_shrinkage", "sample": "shrinkage_known"}, only_if="blank_or(shrinkage_known, shrinkage_known < 0.9)",
               note="The usual one on the sheet Sureness; a design on the sheet Yarn replaces it; a sample on the sheet Samples replaces both."),
        *another_grist.beside_the_design(),
        Result("unwashed", "To spin, unwashed",
               "IF(AND(or_else(bought_share, 0) > 0.999999, NOT(given(design))), 0, length / (1 - shrinkage_used))", project.unwashed_length, LENGTH,
               uses={"shrinkage": "shrinkage_used"},
               note="Length on the reel, before washing takes its share. None of a yarn that is bought; threads of a design on the sheet Yarn are plied."),
        Result("left_share", "Still to make", "IF(given(used), 0, MAX(0, 1 - in_skeins / length))", project.left_share, SHARE, digits=0,
               note="Of the yarn with reserve, what is not in its skeins."),
        Result("yarn", "Weight of yarn", "length / planned", yarn_count.mass_of_length, MASS, uses={"grist": "planned"}, note="Of the yarn with its reserve."),
        *strand_fiber.fiber_in_all(),
        Result("packages", "Balls in all", "ROUNDUP(ROUND(length / package, 6), 0)", plying.packages, NUMBER, digits=0, note="For the yarn with its reserve."),
        Result("per_bobbin", "On a bobbin", "yarn / bobbins", project.per_bobbin, MASS, uses={"mass": "yarn"},
               note="Weight of yarn on each, so that all are alike."),
    ))


def _of_all_there_is() -> tuple[Result, ...]:
    """The uncertainty of all that there is and will be, of the need, and of what is over."""
    return (
        Result("common_doubt", "All to come ±",
               "IF(AND(given(design_washing), NOT(given(grist)), NOT(given(sample_grist_yd_lb))), SQRT(doubts_scale * doubts_scale "
               "+ design_washing * design_washing), doubts_scale)",
               uncertainty.common_to_all, SHARE, uses={"project": "name", "u_scale": "doubts_scale", "u_washing": "design_washing", "own": "grist", "sample": "sample_grist_yd_lb"},
               only_if='name <> ""', note="Relative, of all yarn to come together: the scale, and washing."),
        Result("bought_doubt", "Bought ±",
               "IF(AND(given(design_washing), OR(given(grist), given(sample_grist_yd_lb))), SQRT(doubts_batch * doubts_batch + design_washing * design_washing), doubts_batch)",
               uncertainty.bought_together, SHARE, only_if='name <> ""',
               uses={"project": "name", "u_batch": "doubts_batch", "u_washing": "design_washing", "own": "grist", "sample": "sample_grist_yd_lb"},
               note="Relative, of all bought yarn together: its label, and what washing leaves of it where the grist in use is that of washed yarn."),
        Result("doubt_have", "There is ±",
               "IF(AND(given(lesser_4), given(lesser_4_doubt)), SQRT(POWER(doubt_skeins * (1 + learned * IF(in_skeins > 0, MAX(0, lesser_4) / in_skeins, 0)), 2) "
               "+ lesser_4_doubt * lesser_4_doubt + POWER(MAX(0, lesser_4) * (1 - learned) * common_doubt, 2)), doubt_skeins)",
               uncertainty.in_hand_uncertainty, LENGTH,
               uses={"skeins_doubt": "doubt_skeins", "to_come": "lesser_4", "u_to_come": "lesser_4_doubt", "weight": "learned", "u_scale": "common_doubt"},
               only_if="blank_or(lesser_4, given(lesser_4_doubt))", note="Standard uncertainty of all that there is and will be (JCGM 100)."),
        Result("need_relative", "Need ±, relative",
               "or_else(need_doubt, IF(AND(NOT(given(wanted)), OR(given_and(by_rule, by_rule > 0.5), given_and(weft, weft > 0))), 0.08, 0.05))",
               uncertainty.need_relative, SHARE, uses={"own": "need_doubt", "stated": "wanted"}, only_if="need > 0", note="What you typed, or the usual."),
        Result("doubt_need", "Need ±", "need * need_relative", uncertainty.need_uncertainty, LENGTH, uses={"relative": "need_relative"},
               note="Standard uncertainty of the yarn needed."),
        Result("doubt_spare", "Over ±", "SQRT(doubt_have * doubt_have + doubt_need * doubt_need)", uncertainty.surplus_uncertainty, LENGTH,
               uses={"u_have": "doubt_have", "u_need": "doubt_need"}),
    )


def _for_other_sheets() -> Group:
    return Group("For other sheets", (
        *supply.what_it_is_of(),
        *supply.taken(),
        *supply.unknown_lots(),
        supply.shared_lots(),
        *project_yarn.asked_about(),
        *enough.said(),
        Result("yarnless", "No yarn yet", f"IF(OR(in_skeins > 0, given(design), {ANY_LOT[3:]}, 0, 1)", project.without_yarn, NUMBER, uses={"skeins": "in_skeins"}, digits=0),
        *project_yarn.chosen(),
        Result("in_lotless", "In skeins of no lot", "sum_where(skeins_finished_yd, skeins_lotless, name)", records.sum_where, LENGTH,
               uses={"names": "skeins_lotless", "amounts": "skeins_finished_yd"}, note="Their fiber still counts as there."),
        lookup("hours_planned", "Hours planned", "times_whole", "name", HOURS),
        repeated("listed", "Listed as", "name", width=24, note="The name under which other sheets find this project."),
    ), printed=False)


# What a project takes from its sample: the column of the samples, its label and its unit.
OF_SAMPLE = (
    ("grist_yd_lb", "Sample's grist", GRIST),
    ("loss", "Sample's loss", SHARE),
    ("shrinkage", "Sample's shrinkage", SHARE),
    ("take_up", "Sample's take-up", SHARE),
)


def _of_sample(key: str, label: str, unit: Kind) -> Result:
    column = f"samples_{key}"
    return lookup(f"sample_{key}", label, column, "sample", unit, width=9)
