"""Projects: how much yarn and fiber a piece needs, and whether the chosen lots give it."""

from workbookgen.language.domains import Choice, Name, Number
from workbookgen.language.fields import Group, Input, Result, Rule
from workbookgen.language.parts import Chapter, Log, Sheet
from workbookgen.language.quantities import (
    GRIST,
    GRIST_US,
    LENGTH,
    MASS,
    NUMBER,
    SHARE,
    SQUARE_GRIST,
    SQUARE_LENGTH,
    SQUARE_MASS,
)
from workbookgen.reference import (
    plying,
    project,
    sharing,
    statistics,
    stock,
    uncertainty,
    yarn_count,
)
from workbookgen.language.views import Kind, LogView
from workbookgen.settings import Settings
from workbookgen.sheets import fiber, samples
from workbookgen.texts import folded

SHEET = "Projects"
LOTS = ("lot_1", "lot_2", "lot_3")
ANY_LOT = "OR(given(lot_1), given(lot_2), given(lot_3))"


def sheet(settings: Settings) -> Sheet:
    return Sheet(
        SHEET,
        "Projects",
        "The yarn that a piece wants, and the lots to spin it from.",
        (Chapter(SHEET, (projects(settings),), VIEW),),
        kind=Kind.LOG,
        near=("Samples", "Fiber", "Need", "Time"),
    )


VIEW = LogView(
    typed="name wanted sample lot_1 lot_2",
    answers=(("Is it enough?", "length have surplus chance verdict"),),
)


def projects(settings: Settings) -> Log:
    return Log(
        "projects",
        title="",
        rows=settings.rows.projects,
        groups=(
            Group("You type", (
                Input("name", "Project", Name(), needed=True, width=24),
                Input("wanted", "Yarn wanted", Number(above=0, most=10_000_000), LENGTH, help="The yardage that a pattern or your own record states; leave it empty to use the estimates of the sheets Knitting and Weaving."),
                Input("margin", "Margin", Number(least=0, most=2), SHARE, blank_means=0.1, help="Reserve on top; empty means 10% (common practice: 10 to 15%)."),
                Input("grist", "Grist planned", Number(above=0, most=1_000_000), GRIST, needed=samples.SHEET in settings.leave_out, help="Grist of the finished yarn; empty takes it from the sheet Samples."),
                Input("sample", "Planned by sample", Choice("samples_listed", samples.SHEET), width=22, help="A sample of this yarn: its grist, loss, shrinkage and take-up are used."),
                *(
                    Input(lot, label, Choice("fiber_listed", fiber.SHEET), width=22, help="A lot of the sheet Fiber to spin from.")
                    for lot, label in zip(LOTS, ("First lot", "Second lot", "Third lot"), strict=True)
                ),
                Input("package", "A ball holds", Number(above=0, most=1_000_000), LENGTH, help="If you buy the yarn: length of one ball or skein."),
                Input("bobbins", "Bobbins", Number(least=1, most=1000, whole=True), help="To share the fiber out evenly by weight."),
                Input("used", "Yarn used", Number(least=0, most=1_000_000), MASS, help="Once it is finished: what the piece weighs. Keep its line and its skeins; the rest of its lots is free for other projects."),
            )),
            Group("Enough?", (
                Result("length", "Yarn, margin in", "need * (1 + margin)", project.yarn_length, LENGTH, uses={"length_wanted": "need"}, note="What to have: the yarn needed, and the margin."),
                Result("have", "The lots give", "in_skeins + to_come * planned", project.length_in_hand, LENGTH, uses={"spun_length": "in_skeins", "grist": "planned"},
                       note="Their skeins, and the rest spun at the grist in use."),
                Result("surplus", "Alone, over or short", "have - length", project.surplus, LENGTH, uses={"need": "length"}, width=11,
                       note="Below zero it is short. Other projects on the same lots are left out."),
                Result("with_others", "With the others", "have - others * planned - length", sharing.surplus_with_others, LENGTH,
                       uses={"need": "length", "grist": "planned"}, note="What is over or short once the other projects on the same lots have theirs."),
                Result("chance", "Chance that it is enough", "IF(doubt_spare > 0, NORMSDIST(spare / doubt_spare), IF(spare >= 0, 1, 0))",
                       uncertainty.chance_enough, SHARE, uses={"surplus": "spare", "uncertainty": "doubt_spare"}, digits=0, width=11,
                       note="From the doubts under How sure?, with what the others leave."),
                Result("verdict", "In words",
                       'IF(given(used), "finished", '
                       'IF(with_others >= 0, "enough, " & ROUND(ROUND(with_others / 0.9144, 9), 0) & " yd (" & ROUND(ROUND(with_others, 9), 0) & " m) to spare", '
                       'IF(surplus >= 0, "enough alone, together ", "") & "short by " & ROUND(ROUND(0 - with_others / 0.9144, 9), 0) & " yd (" '
                       '& ROUND(ROUND(0 - with_others, 9), 0) & " m)"))',
                       project.verdict, None, uses={"surplus": "with_others", "alone": "surplus"}, width=44,
                       only_if="IF(given(used), 1 = 1, IF(AND(given(with_others), given(surplus)), ABS(with_others) < 100000000, 1 = 0))",
                       note="Together: with the other projects that chose one of these lots. What is finished is neither enough nor short."),
            )),
            Group("Needed", (
                Result("estimated", "Estimated", "total(estimates_yarn, estimates_of, name) + total(weavings_yarn, weavings_of, name)", stock.spun, LENGTH,
                       uses={"names": "estimates_of", "amounts": "estimates_yarn", "second_names": "weavings_of", "second_amounts": "weavings_yarn"},
                       note="For this project, from the sheets Knitting and Weaving."),
                Result("need", "Yarn needed", "IF(given(wanted), wanted, estimated)", project.wanted_in_use, LENGTH, uses={"stated": "wanted"},
                       only_if="OR(given(wanted), IF(given(estimated), estimated > 0, 1 = 0))", note="What you stated, or the estimates; no margin yet."),
                *(_of_sample(key, label, unit) for key, label, unit in OF_SAMPLE),
                Result("planned", "Grist in use", "IF(given(grist), grist, sample_grist_yd_lb)", project.planned_grist, GRIST,
                       uses={"own": "grist", "sample": "sample_grist_yd_lb"}, only_if="OR(given(grist), given(sample_grist_yd_lb))",
                       note="What you planned, or else the sample's."),
                Result("unwashed", "To spin, unwashed", "length / (1 - sample_shrinkage)", project.unwashed_length, LENGTH,
                       uses={"shrinkage": "sample_shrinkage"}, only_if="sample_shrinkage < 0.9", note="Length before washing, that shrinks as the sample did."),
                Result("yarn", "Weight of yarn", "length / planned", yarn_count.mass_of_length, MASS, uses={"grist": "planned"}, note="Of the yarn with its margin."),
                Result("lot_kept", "Lot keeps", "pick(fiber_kept_of_prepared, fiber_listed, lot_1)", stock.pick, SHARE,
                       uses={"name": "lot_1", "names": "fiber_listed", "values": "fiber_kept_of_prepared"},
                       note="Of the first lot: share of prepared fiber that becomes yarn."),
                Result("kept_of_prepared", "Kept in spinning", "IF(given(sample_loss), 1 - sample_loss, lot_kept)", project.kept_in_spinning, SHARE,
                       uses={"lot": "lot_kept"}, only_if="OR(AND(given(sample_loss), sample_loss < 1, sample_loss >= 0), AND(NOT(given(sample_loss)), given(lot_kept)))",
                       note="By the sample, or else by the first lot."),
                Result("prepared", "Prepared fiber", "yarn / kept_of_prepared", project.fiber_for, MASS, uses={"kept": "kept_of_prepared"}, note="To spin this much yarn."),
                Result("kept", "Kept of the lot", "pick(fiber_kept, fiber_listed, lot_1)", stock.pick, SHARE,
                       uses={"name": "lot_1", "names": "fiber_listed", "values": "fiber_kept"},
                       note="Of the first lot: share of the bought weight that becomes yarn."),
                Result("bought", "Fiber as bought", "yarn / kept", project.fiber_for, MASS,
                       note="Raw fleece or other fiber, in the state in which the first lot was bought."),
                Result("packages", "Balls to buy", "ROUNDUP(ROUND(length / package, 6), 0)", plying.packages, NUMBER, digits=0),
                Result("per_bobbin", "On a bobbin", "yarn / bobbins", project.per_bobbin, MASS, uses={"mass": "yarn"},
                       note="Weight of yarn on each, so that all are alike."),
            )),
            Group("The chosen lots", (
                Result("in_skeins", "In skeins", of_lots("fiber_spun_length"), stock.of_lots, LENGTH,
                       uses={"names": "fiber_listed", "amounts": "fiber_spun_length"}, only_if=ANY_LOT,
                       note="Finished length of the skeins already spun from them."),
                Result("to_come", "Still to spin", of_lots("fiber_to_come"), stock.of_lots, MASS, width=9,
                       uses={"names": "fiber_listed", "amounts": "fiber_to_come"}, only_if=ANY_LOT,
                       note="Yarn that they can still give."),
                Result("gives", "Yarn in all", of_lots("fiber_gives"), stock.of_lots, MASS, width=9,
                       uses={"names": "fiber_listed", "amounts": "fiber_gives"}, only_if=ANY_LOT, note="Weight of what is spun and of what is still to spin."),
                Result("takes", "This project takes", "IF(given(used), used, yarn)", sharing.takes, MASS, uses={"needed": "yarn"},
                       only_if="OR(given(used), given(yarn))", note="The weight of yarn planned, or once it is finished what it used."),
                Result("promised", "All projects take", promised(), sharing.promised, MASS, uses=OF_ALL_PROJECTS, only_if=ANY_LOT,
                       note="From these lots. A project of several lots is taken to draw on each by what it gives."),
                Result("others", "The others take", "IF(promised - takes > takes * 0.000001, promised - takes, 0)", sharing.others_take, MASS,
                       note="Weight that other projects on the same lots need or have used."),
                Result("left", "Left by the others", "MAX(0, have - others * planned)", sharing.left_by_others, LENGTH, uses={"grist": "planned"}),
            )),
            Group("Their skeins together", (
                _of_skeins("skeins", "Skeins", "fiber_skeins", NUMBER),
                Result("mean_grist", "Mean grist", "grist_sum / skeins", statistics.group_mean, GRIST_US, digits=0,
                       uses={"total": "grist_sum", "count": "skeins"}, only_if="skeins > 0"),
                fiber.variation_of_grist("Between all skeins of the chosen lots; 5 to 15% is usual for handspun (common practice, no source)."),
            )),
            Group("How sure?", (
                Result("doubt_have", "Lots give ±", "SQRT(spun_square + to_come_square * planned * planned + POWER(to_come * planned * doubts_grist, 2))",
                       uncertainty.have_doubt, LENGTH, uses={"grist": "planned", "grist_doubt": "doubts_grist"}, note="Standard uncertainty of what the lots give (JCGM 100)."),
                Result("doubt_need", "Need ±", "need * margin / 2", uncertainty.margin_uncertainty, LENGTH,
                       note="A margin within which the need surely lies is two standard uncertainties."),
                Result("spare", "Over the bare need", "left - need", project.surplus, LENGTH, uses={"have": "left"}, note="What the others leave, less the yarn needed without margin."),
                Result("doubt_spare", "Over ±", "SQRT(doubt_have * doubt_have + doubt_need * doubt_need)", uncertainty.surplus_uncertainty, LENGTH,
                       uses={"u_have": "doubt_have", "u_need": "doubt_need"}),
                Result("relative", "Lots give ±, share", "doubt_have / have", uncertainty.relative, SHARE, uses={"uncertainty": "doubt_have", "value": "have"},
                       only_if="have > 0"),
                Result("to_have", "To have, to be sure",
                       "(need + NORMSINV(doubts_certainty) * SQRT(need * need * relative * relative + doubt_need * doubt_need * (1 - NORMSINV(doubts_certainty) * NORMSINV(doubts_certainty) * relative * relative))) "
                       "/ (1 - NORMSINV(doubts_certainty) * NORMSINV(doubts_certainty) * relative * relative)",
                       uncertainty.amount_for, LENGTH, uses={"u_need": "doubt_need", "relative_have": "relative", "certainty": "doubts_certainty"},
                       only_if="NORMSINV(doubts_certainty) * relative < 1", note="As sure as you ask on the sheet Figures; the doubt grows with the amount."),
            )),
            Group("For other sheets", (
                Result("claim", "Claim on its lots", "takes / gives", sharing.claim, SHARE, only_if="gives > 0", note="Share of its lots that this project takes."),
                _of_skeins("grist_sum", "Grists, summed", "fiber_grist_sum", GRIST_US),
                _of_skeins("grist_squares", "Grists², summed", "fiber_grist_squares", SQUARE_GRIST),
                Result("spun_square", "Doubt², skeins", of_lots("fiber_spun_square"), stock.of_lots, SQUARE_LENGTH,
                       uses={"names": "fiber_listed", "amounts": "fiber_spun_square"}, only_if=ANY_LOT),
                Result("to_come_square", "Doubt², to spin", of_lots("fiber_to_come_square"), stock.of_lots, SQUARE_MASS,
                       uses={"names": "fiber_listed", "amounts": "fiber_to_come_square"}, only_if=ANY_LOT),
                Result("listed", "Listed as", "name", stock.listed, None, width=24, note="The name under which other sheets find this project."),
                *(
                    Result(f"from_{place}", "Drawn from", lot, stock.listed, None, uses={"name": lot}, width=22)
                    for place, lot in enumerate(LOTS, start=1)
                ),
            ), printed=False),
        ),
        rules=(
            Rule("AND(NOT(given(grist)), NOT(given(sample)), NOT(given(used)))",
                 lambda values: values["grist"] is None and values["sample"] is None and values["used"] is None,
                 "Still to fill in: Grist planned, or a sample that has one."),
            Rule('OR(AND(given(lot_1), lot_1 = lot_2), AND(given(lot_1), lot_1 = lot_3), AND(given(lot_2), lot_2 = lot_3))',
                 _same_lot_twice, "Lots: choose each lot only once."),
        ),
    )


# What a project takes over from its sample: column of the samples, label, unit.
OF_SAMPLE = (
    ("grist_yd_lb", "Sample's grist", GRIST),
    ("loss", "Sample's loss", SHARE),
    ("shrinkage", "Sample's shrinkage", SHARE),
    ("take_up", "Sample's take-up", SHARE),
)


def _of_sample(key: str, label: str, unit) -> Result:
    column = f"samples_{key}"
    return Result(f"sample_{key}", label, f"pick({column}, samples_listed, sample)", stock.pick, unit,
                  uses={"name": "sample", "names": "samples_listed", "values": column}, width=9)


def of_lots(amounts: str) -> str:
    """The sum over the chosen lots, in words."""
    return " + ".join(f"IF(given({lot}), total({amounts}, fiber_listed, {lot}), 0)" for lot in LOTS)


# The lots of all projects, and what each project takes of its own.
OF_ALL_PROJECTS = {
    "names": "fiber_listed", "amounts": "fiber_gives", "claims": "projects_claim",
    "first_lots": "projects_from_1", "second_lots": "projects_from_2", "third_lots": "projects_from_3",
}


def promised() -> str:
    """What all projects take from the chosen lots, in words: of each lot the share that every project on it claims."""
    return " + ".join(
        f"IF(given({lot}), total(fiber_gives, fiber_listed, {lot}) * ({' + '.join(f'total(projects_claim, projects_from_{place}, {lot})' for place in (1, 2, 3))}), 0)"
        for lot in LOTS
    )


def _of_skeins(key: str, label: str, column: str, unit) -> Result:
    """A sum over the skeins of the chosen lots."""
    return Result(key, label, of_lots(column), stock.of_lots, unit, uses={"names": "fiber_listed", "amounts": column}, only_if=ANY_LOT, digits=0, width=8)


def _same_lot_twice(values) -> bool:
    chosen = [folded(values[lot]) for lot in LOTS if isinstance(values[lot], str) and values[lot]]
    return len(chosen) != len(set(chosen))
