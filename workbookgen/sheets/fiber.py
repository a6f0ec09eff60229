"""Fiber: each lot from what was bought to yarn, and what is left of it."""

from workbookgen.language.domains import Date, Name, Note
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Chapter, Log, Sheet
from workbookgen.language.quantities import DAY, GRIST, LENGTH, MASS, NUMBER, SHARE, SQUARE_GRIST, SQUARE_MASS
from workbookgen.language.repeated import repeated, repeated_day
from workbookgen.language.views import LogView, SheetKind
from workbookgen.reference import (
    belongings,
    kept_stock,
    own_records,
    planning,
    records,
    sharing,
    statistics,
    used_up,
    yarn_count,
)
from workbookgen.reference import fiber as trade
from workbookgen.settings import Settings
from workbookgen.sheets import content, guide, lists, plausible, stages, tabs, totals, usual
from workbookgen.sheets.cost import money
from workbookgen.sheets.limits import AMOUNT, NONE_OR_AMOUNT
from workbookgen.sheets.lookup import lookup
from workbookgen.sheets.plausible import IN_DAMP_AIR

SHEET = tabs.FIBER
CHAPTER = "Fiber"


def sheet(settings: Settings) -> Sheet:
    return Sheet(
        SHEET,
        SHEET,
        "One line a lot. What you weigh replaces what is expected.",
        (Chapter(CHAPTER, (lots(settings), totals.shelf(settings)), VIEW),),
        kind=SheetKind.LOG,
        related=(tabs.LOT, tabs.FLEECE, tabs.SKEINS, tabs.PROJECTS),
    )


VIEW = LogView(
    typed="name kind state weight yarn_weighed",
    answers=(("It gives", "yarn kept to_come to_come_length"), ("Promised", "promised")),
    in_head="lot_sums_words",
)


def variation_of_grist(note: str) -> Result:
    """Formula text of the variation of skeins, from sums of their grists: of a lot, or of a project's lots."""
    spread = "grist_squares / (skeins * mean_grist * mean_grist) - 1"
    return Result("variation", "CV of grist", f"SQRT(IF({spread} < 0.000001, 0, {spread}) * skeins / (skeins - 1))",
                  statistics.variation_of_sums, SHARE, uses={"squares": "grist_squares", "count": "skeins", "mean": "mean_grist"},
                  only_if="skeins > 1", note=note)


# The columns of what each project's components claim, and of the lots that they claim it from.
PLACES = ((1, "a"), (1, "b"), (1, "c"), (2, "a"), (2, "b"), (3, "a"), (3, "b"), (4, "a"), (4, "b"))
CLAIMS = tuple((f"projects_part_{part}_claim", f"projects_part_{part}_lot_{lot}") for part, lot in PLACES)
OF_CLAIMS = {f"claims_{part}": f"projects_part_{part}_claim" for part in (1, 2, 3, 4)} | {
    f"lots_{part}_{lot}": f"projects_part_{part}_lot_{lot}" for part, lot in PLACES
}

# The columns of the squared uncertainty of what each component will take of its first lot, and of that lot.
SQUARES = tuple((f"projects_part_{part}_need_square", f"projects_part_{part}_lot_a") for part in (1, 2, 3, 4))
OF_SQUARES = {f"squares_{part}": f"projects_part_{part}_need_square" for part in (1, 2, 3, 4)} | {f"lots_{part}_a": f"projects_part_{part}_lot_a" for part in (1, 2, 3, 4)}

# The columns of what the plan leaves open of each component's needs, and of its first lot.
HANDS = tuple((f"projects_part_{part}_hand", f"projects_part_{part}_lot_a") for part in (1, 2, 3, 4))
OF_HANDS = {f"hands_{part}": f"projects_part_{part}_hand" for part in (1, 2, 3, 4)} | {f"lots_{part}_a": f"projects_part_{part}_lot_a" for part in (1, 2, 3, 4)}

# The columns of what each finished piece took of a component's first lot, and of that lot.
TAKEN = tuple((f"projects_part_{part}_taken", f"projects_part_{part}_lot_a") for part in (1, 2, 3, 4))
OF_TAKEN = {f"taken_{part}": f"projects_part_{part}_taken" for part in (1, 2, 3, 4)} | {f"lots_{part}": f"projects_part_{part}_lot_a" for part in (1, 2, 3, 4)}

# Each stage: its number, what was weighed after it or later, the spinner's own figure, and the uncertainty of what is
# expected.
WEIGHED = ("skirted_weighed", "scoured_weighed", "prepared_weighed", "yarn_weighed")
DOUBTED = (
    (1, "own_skirting", "doubts_skirting"),
    (2, "own_yield", "yield_doubt"),
    (3, "own_preparation", "preparation_doubt"),
    (4, "own_spinning", "doubts_spinning"),
)
SECOND_DOUBT = "IF(OR(stage > 4, given(prepared_weighed), given(yarn_weighed)), 0, POWER(second_doubt, 2))"


def _doubt_of(number: int, own: str, expected: str) -> str:
    known = ", ".join(f"given({weighed})" for weighed in WEIGHED[number - 1 :])
    return f"IF(OR(stage > {number}, {known}), 0, POWER(IF(given({own}), doubts_own, {expected}), 2))"


def _anew(number: int, own: str, expected: str) -> str:
    return f"IF(stage > {number}, 0, POWER(IF(given({own}), doubts_own, {expected}), 2))"


WENT = 'given_and(gone, gone <> "set aside")'


def lots(settings: Settings) -> Log:
    return Log(
        "fiber",
        title="",
        rows=settings.rows.fiber,
        groups=(
            _you_type(settings),
            Group("Weights", stages.weights_down()),
            Group("Carded or combed", stages.out_of_fed()),
            _the_yarn(),
            Group("Kept", (
                Result("worth", "Rest is worth", "cost * to_come / yarn", kept_stock.worth_of_rest, money(settings), only_if="yarn > 0", note="Its share of what the lot cost."),
                Result("thawed_on", "Thaw it from", "frozen_on + 7", kept_stock.out_of_freezer, DAY, uses={"frozen": "frozen_on"}, width=11,
                       only_if="frozen_on = ROUND(frozen_on, 0)", note="A week at -20 °C, by what museums advise; a milder freezer needs longer."),
            )),
            _its_skeins(),
            Group("Share lost", stages.shares_lost()),
            _losses_expected(),
            _seen_in_this_lot(),
            _for_other_sheets(),
        ),
        rules=(*stages.cannot_gain(), *content.lot_rules(), plausible.light_for_projects(settings.units),
               *plausible.thick(settings.units, grist="Grist wanted"),
               plausible.more_than_the_lot(), stages.of_a_step_before(), stages.weighed_in_part(),
               stages.hardly_washed(), *stages.unknown_losses(has_guide="Guide" not in settings.without)),
    )


def _you_type(settings: Settings) -> Group:
    return Group("You type", (
        Input("name", "Lot", Name(), needed=True, width=22, help="What you call this lot. Skeins and projects choose it by this name."),
        guide.kind(width=20),
        Input("state", "Bought as", lists.one_of(lists.STATES), needed=True, width=16,
              help="How far the fiber was worked when you bought it. Raw fleece is as it was shorn; if it was skirted before you bought it, choose skirted fleece."),
        Input("weight", "Weight", AMOUNT, MASS, usual=usual.LOT, needed=True, help="Weight as bought. A pound is 16 ounces: you may type =6.5*16."),
        Input("grist", "Grist wanted", AMOUNT, GRIST, help="Grist of the finished yarn you plan."),
        stages.way(),
        stages.second_way(),
        *stages.own_losses(),
        stages.own_second(),
        Input("skirted_weighed", "Skirted", AMOUNT, MASS, help="Weighed after skirting."),
        Input("scoured_weighed", "Washed", AMOUNT, MASS, help="Weighed after scouring, quite dry. Bought washed: correct Weight instead."),
        Input("prepared_weighed", "Prepared", AMOUNT, MASS,
              help="Weighed after carding or combing; of two preparations, after the last. What a mill sends back goes here: it is not a new lot. "
                   "Bought prepared, and no second one: correct Weight instead."),
        Input("noil_weighed", "Noil", AMOUNT, MASS, help="What the comb keeps back, weighed: 20 to 40% (common practice). Log it as a lot of its own when you card it."),
        Input("yarn_weighed", "Yarn", AMOUNT, MASS, help="All the yarn of the lot, once the whole lot is spun."),
        Input("note", "Note", Note(), width=24),
        Input("gone", "Rest gone, or set aside", lists.one_of(lists.FATES), width=12,
              help="Once the rest is given, sold, used or lost (to moths), nothing is left to spin. "
                   "Set aside: it stays, for the projects that draw on it. If a part goes, give that a line of its own."),
        Input("cost", "It cost", NONE_OR_AMOUNT, money(settings), help="All of it, with the shipping. The head adds up what the rest is worth by it."),
        Input("bought_on", "Bought on", Date(), DAY),
        Input("dye_lot", "Dye lot", Note(), width=14, help="Of a dyed top or thread: another one may differ in color."),
        Input("place", "Kept in", Note(), width=14, help="Box, bag or shelf."),
        Input("apart_until", "Apart until", Date(), DAY, help="New wool: the day until which it stays in a closed bag, away from the rest."),
        Input("frozen_on", "In the freezer on", Date(), DAY, width=11, help="Sealed in a bag, against moths. Let it thaw closed; museums do it twice."),
        *content.mixed_of(),
    ))


def _the_yarn() -> Group:
    return Group("The yarn", (
        Result("kept", "Yarn kept", "MIN(1, yarn / weight)", trade.share_kept, SHARE, uses={"start": "weight"},
               note="Share of the bought weight that becomes yarn."),
        Result("kept_of_prepared", "Kept in spinning", "MIN(1, yarn / prepared)", trade.share_kept, SHARE, uses={"start": "prepared"},
               note="Share of the prepared fiber that becomes yarn."),
        Result("length", "Length at grist", "yarn * grist", yarn_count.length_of_mass, LENGTH, uses={"mass": "yarn"},
               note="Of all the yarn, at the grist you want."),
        Result("pieces", "In pieces", " + ".join(f"sum_where({taken}, {lots_of}, name)" for taken, lots_of in TAKEN), sharing.taken_by_pieces, MASS, uses=OF_TAKEN,
               note="Taken by finished pieces, with no skein to show for it."),
        Result("unweighed", "In skeins not weighed", "sum_where(skeins_guess, skeins_from_lot, name)", records.sum_where, MASS,
               uses={"names": "skeins_from_lot", "amounts": "skeins_guess"}, note="What its skeins are expected to weigh that were not weighed yet."),
        Result("spun", "Spun so far",
               "sum_where(skeins_net, skeins_from_lot, name) + sum_where(components_drawn_1, components_from_1, name) + sum_where(components_drawn_2, components_from_2, name) + "
               "or_else(pieces, 0) + unweighed",
               records.spun, MASS,
               uses={"names": "skeins_from_lot", "amounts": "skeins_net", "expected": "unweighed", "second_names": "components_from_1", "second_amounts": "components_drawn_1",
                     "third_names": "components_from_2", "third_amounts": "components_drawn_2", "besides": "pieces"},
               note="Weight of this lot in the skeins on the sheet Skeins, expected until they are weighed, and in finished pieces; "
                    "its share in a design on the sheet Yarn counts, too."),
        Result("spun_length", "In skeins", "sum_where(skeins_finished_yd, skeins_from_lot, name)", records.sum_where, LENGTH,
               uses={"names": "skeins_from_lot", "amounts": "skeins_finished_yd"},
               note="Finished length of the skeins spun from it alone."),
        Result("to_come", "Still to spin", f"IF({WENT}, 0, IF(yarn - spun > 0.000001, yarn - spun, 0))", kept_stock.still_to_come, MASS,
               note="Yarn that the lot can still give; nothing once its rest is gone."),
        Result("to_come_length", "That is", "to_come * grist", yarn_count.length_of_mass, LENGTH, uses={"mass": "to_come"},
               note="Yarn still to spin, at the grist you want."),
        Result("promised", "Projects take", " + ".join(f"sum_where({claims}, {lots_of}, name)" for claims, lots_of in CLAIMS), sharing.share_promised, SHARE, digits=0,
               uses=OF_CLAIMS | {"left": "to_come"}, only_if="given(to_come)",
               note="Share of what it still gives that projects need to spin from it. Over 100%, it is promised more than once."),
        Result("needs_square", "Projects take ±²", " + ".join(f"sum_where({squares}, {lots_of}, name)" for squares, lots_of in SQUARES), sharing.squares_on_lot, SQUARE_MASS,
               uses=OF_SQUARES),
        Result("needs_hand", "Needs ± by hand", " + ".join(f"sum_where({hands}, {lots_of}, name)" for hands, lots_of in HANDS), sharing.hands_on_lot, MASS,
               uses=OF_HANDS),
    ))


def _its_skeins() -> Group:
    return Group("Its skeins", (
        Result("skeins", "Skeins", "sum_where(skeins_counted, skeins_from_lot, name)", records.sum_where, NUMBER, digits=0,
               uses={"names": "skeins_from_lot", "amounts": "skeins_counted"}),
        Result("mean_grist", "Mean grist", "grist_sum / skeins", statistics.group_mean, GRIST,
               uses={"total": "grist_sum", "count": "skeins"}, only_if="skeins > 0"),
        variation_of_grist("Coefficient of variation between skeins; 5 to 15% is usual for handspun (common practice, no source)."),
        Result("grubbs", "Grubbs' limit", "class_of(grubbs_limit, grubbs_skeins, skeins)", statistics.grubbs_limit, NUMBER,
               uses={"count": "skeins"}, only_if="skeins > 2", note="So many standard deviations off the mean, a skein stands out; from three skeins on."),
        Result("limit_low", "Limit, low", "mean_grist * (1 - grubbs * variation)", statistics.limit_low, GRIST,
               uses={"mean": "mean_grist", "times": "grubbs"}, note="A skein below it stands out from its lot."),
        Result("limit_high", "Limit, high", "mean_grist * (1 + grubbs * variation)", statistics.limit_high, GRIST,
               uses={"mean": "mean_grist", "times": "grubbs"}),
    ))


def _losses_expected() -> Group:
    return Group("Losses expected", (
        stages.stage(),
        *stages.guide_losses("breed_spinning"),
        stages.guide_yield("breed_yield"),
        Result("samples", "Handfuls washed", "count_where(samples_scoured_yield, samples_of_lot, name)", records.count_where, NUMBER, digits=0,
               uses={"names": "samples_of_lot", "amounts": "samples_scoured_yield"}, note="Samples of this lot that tell its yield."),
        Result("sampled_yield", "Yield, samples", "sum_where(samples_scoured_yield, samples_of_lot, name) / count_where(samples_scoured_yield, samples_of_lot, name)",
               own_records.observed, SHARE, width=9,
               uses={"names": "samples_of_lot", "shares": "samples_scoured_yield"}, only_if="count_where(samples_scoured_yield, samples_of_lot, name) > 0",
               note="Mean of the washed handfuls of this lot."),
        Result("expected_yield", "Scoured yield", "or_else(sampled_yield, breed_yield)", trade.yield_in_use, SHARE, width=11,
               uses={"sampled": "sampled_yield", "published": "breed_yield"}, only_if="OR(given(sampled_yield), given(breed_yield))",
               note="Share kept: of the lot's own samples, or as the guide on the sheet Guide expects."),
        _counted_on("by_handfuls", "Handfuls in use", "samples", 2, "own_yield", ("scoured_weighed", "prepared_weighed", "yarn_weighed")),
        Result("spun_samples", "Samples spun", "count_where(samples_seen_loss, samples_of_lot, name)", records.count_where, NUMBER, digits=0,
               uses={"names": "samples_of_lot", "amounts": "samples_seen_loss"}, note="Samples of this lot that tell its loss in spinning."),
        _counted_on("by_samples", "Samples in use", "spun_samples", 4, "own_spinning", ("yarn_weighed",)),
        Result("sampled_spinning", "Spinning, samples", "sum_where(samples_seen_loss, samples_of_lot, name) / count_where(samples_seen_loss, samples_of_lot, name)",
               own_records.observed, SHARE, width=11,
               uses={"names": "samples_of_lot", "shares": "samples_seen_loss"}, only_if="count_where(samples_seen_loss, samples_of_lot, name) > 0",
               note="Mean of what samples of this lot lost in spinning."),
        Result("expected_spinning", "Spinning", "or_else(sampled_spinning, breed_spinning)", trade.spinning_loss_in_use, SHARE, width=11,
               uses={"sampled": "sampled_spinning", "published": "breed_spinning"}, only_if="OR(given(sampled_spinning), given(breed_spinning))",
               note="Share lost: of the lot's own samples, or as the guide on the sheet Guide expects. A project counts by the sample that it is planned by."),
    ))


def _counted_on(key: str, label: str, count: str, step: int, own: str, weighed: tuple[str, ...]) -> Result:
    """On how many samples of its own the lot's figure for a step rests, until something better is known."""
    known = ", ".join(f"given({each})" for each in (own, *weighed))
    spoken = dict(zip(("spun", "prepared", "scoured"), reversed(weighed), strict=False))
    return Result(key, label, f"IF(OR(stage > {step}, {known}), 0, {count})", trade.counted_on, NUMBER, digits=0,
                  uses={"count": count, "own": own} | spoken, fixed={"step": float(step)}, leaves=tuple({"scoured", "prepared"} - set(spoken)))


def _seen_in_this_lot() -> Group:
    return Group("Seen in this lot", (
        Result("seen_skirting", "Skirting", "MAX(0, 1 - skirted_weighed / weight)", trade.seen_skirting, SHARE,
               uses={"before": "weight", "after": "skirted_weighed"}, only_if=f"AND(stage = 1, ROUND(skirted_weighed / weight, 9) <= {IN_DAMP_AIR})",
               note="From your own weighings; the guide on the sheet Guide learns from it."),
        Result("seen_yield", "Scoured yield", "scoured_weighed / skirted_weighed", trade.seen_yield, SHARE,
               uses={"before": "skirted_weighed", "after": "scoured_weighed"}, only_if="scoured_weighed <= skirted_weighed"),
        Result("seen_preparation", "Preparation", "MAX(0, 1 - prepared_weighed / scoured_weighed)", trade.seen_in_preparing, SHARE, width=11,
               uses={"before": "scoured_weighed", "after": "prepared_weighed"}, fixed={"by": "carding"},
               only_if=f"AND(ROUND(prepared_weighed / scoured_weighed, 9) <= {IN_DAMP_AIR}, {stages.ONCE}, NOT({stages.COMBED}))", note="If it was carded, and nothing else."),
        Result("seen_combing", "Combing", "MAX(0, 1 - prepared_weighed / scoured_weighed)", trade.seen_in_preparing, SHARE,
               uses={"before": "scoured_weighed", "after": "prepared_weighed"}, fixed={"by": "combing"},
               only_if=f"AND(ROUND(prepared_weighed / scoured_weighed, 9) <= {IN_DAMP_AIR}, {stages.ONCE}, {stages.COMBED})", note="If it was combed, and nothing else."),
        Result("seen_spinning", "Spinning", "MAX(0, 1 - yarn_weighed / prepared_weighed)", trade.seen_loss, SHARE,
               uses={"before": "prepared_weighed", "after": "yarn_weighed"}, only_if=f"ROUND(yarn_weighed / prepared_weighed, 9) <= {IN_DAMP_AIR}"),
    ))


def _for_other_sheets() -> Group:
    return Group("For other sheets", (
        repeated("seen_kind", "Of", "kind", width=20),
        Result("seen_yield_square", "Scoured yield²", "seen_yield * seen_yield", statistics.square_of, SHARE, uses={"value": "seen_yield"}),
        Result("grist_sum", "Grists, summed", "sum_where(skeins_grist_yd_lb, skeins_from_lot, name)", records.sum_where, GRIST,
               uses={"names": "skeins_from_lot", "amounts": "skeins_grist_yd_lb"}),
        Result("grist_squares", "Grists², summed", "sum_where(skeins_grist_square, skeins_from_lot, name)", records.sum_where, SQUARE_GRIST,
               uses={"names": "skeins_from_lot", "amounts": "skeins_grist_square"}),
        Result("to_spin_length", "To spin", "to_come_length", planning.still_to_spin, LENGTH, uses={"length": "to_come_length"}, only_if="stage < 5",
               note="What the lot can still give, unless it was bought as yarn or thread."),
        lookup("yield_spread", "Yield ±", "guide_used_spread", "kind", SHARE),
        Result("yield_doubt", "Yield, relative ±",
               "IF(given_and(samples, samples > 0), doubts_handful / SQRT(samples), IF(AND(given(yield_spread), given(breed_yield)), "
               "yield_spread / breed_yield, doubts_own))",
               trade.yield_uncertainty, SHARE,
               uses={"u_own": "doubts_own", "u_handful": "doubts_handful", "spread": "yield_spread", "published": "breed_yield"},
               only_if="blank_or(breed_yield, breed_yield > 0)"),
        Result("preparation_doubt", "Preparation, relative ±", f"IF({stages.COMBED}, doubts_combing, doubts_preparation)", trade.preparation_uncertainty, SHARE,
               uses={"u_carding": "doubts_preparation", "u_combing": "doubts_combing"}),
        stages.second_loss(),
        Result("second_doubt", "Second preparation, relative ±",
               f"IF(given(own_second), IF(own_second > 0, doubts_own, 0), IF(given(second_way), IF({stages.COMBED_AGAIN}, doubts_combing, doubts_preparation), 0))",
               trade.second_uncertainty, SHARE, uses={"u_own": "doubts_own", "u_carding": "doubts_preparation", "u_combing": "doubts_combing", "own": "own_second",
                                                      "way": "second_way"}),
        Result("to_come_doubt", "To spin ±", f"IF({WENT}, 0, yarn * SQRT({' + '.join((*(_doubt_of(*step) for step in DOUBTED), SECOND_DOUBT))}))", trade.yarn_uncertainty, MASS,
               uses={"u_skirting": "doubts_skirting", "u_yield": "yield_doubt", "u_preparation": "preparation_doubt", "u_second": "second_doubt", "u_spinning": "doubts_spinning",
                     "u_own": "doubts_own",
                     "skirted": "skirted_weighed", "scoured": "scoured_weighed", "prepared": "prepared_weighed", "whole": "yarn_weighed"},
               note="Standard uncertainty of the whole lot's yarn, from the stages not yet weighed. It stays with what is left."),
        Result("kept_doubt", "More like it, kept ±", f"SQRT({' + '.join(_anew(*step) for step in DOUBTED)} + IF(stage > 4, 0, POWER(second_doubt, 2)))",
               trade.kept_uncertainty, SHARE,
               uses={"u_skirting": "doubts_skirting", "u_yield": "yield_doubt", "u_preparation": "preparation_doubt", "u_second": "second_doubt", "u_spinning": "doubts_spinning",
                     "u_own": "doubts_own"},
               note="Standard uncertainty of what would be kept of more, got in the form in which this lot was bought."),
        Result("plied", "In skeins of designs", "sum_where(components_drawn_1, components_from_1, name) + sum_where(components_drawn_2, components_from_2, name)",
               records.spun, MASS, leaves=("third_names", "third_amounts", "besides", "expected"),
               uses={"names": "components_from_1", "amounts": "components_drawn_1", "second_names": "components_from_2", "second_amounts": "components_drawn_2"}),
        Result("to_come_square", "To spin ±²", "to_come_doubt * to_come_doubt + "
               f"IF({WENT}, 0, IF(AND(stage > 4, given(plied)), doubts_batch * or_else(plied, 0) * doubts_batch * (or_else(plied, 0) + 2 * to_come), 0) "
               "+ POWER(IF(stage > 4, doubts_batch, doubts_grist), 2) * unweighed * (unweighed + 2 * to_come))",
               trade.rest_square, SQUARE_MASS, uses={"uncertainty": "to_come_doubt", "u_batch": "doubts_batch", "u_grist": "doubts_grist"}),
        Result("free_length", "In free skeins", "sum_where(skeins_finished_yd, skeins_free_lot, name)", records.sum_where, LENGTH,
               uses={"names": "skeins_free_lot", "amounts": "skeins_finished_yd"}, note="Of this lot alone, and of no open project."),
        *content.of_lot(),
        *stages.asked_about(),
        Result("unseen", "Used, in no skein", "MAX(0, 1 - spun / yarn)", used_up.in_no_skein, SHARE, uses={"fate": "gone"},
               only_if='AND(gone = "used", yarn > 0)', note="Of its yarn, once its rest is used: what may be on bobbins."),
        Result("aside", "Set aside", "to_come", belongings.set_aside, MASS, uses={"rest": "to_come", "fate": "gone"}, only_if='gone = "set aside"'),
        repeated("bought_as", "Bought as", "state", width=16),
        repeated("fate", "Where it went", "gone", width=12),
        repeated_day("dated", "Bought on", "bought_on"),
        repeated("dyed", "Dyed", "dye_lot", width=14, only_if='LEN(SUBSTITUTE(dye_lot, " ", "")) > 0'),
        repeated("listed", "Listed as", "name", width=22,
               note="The name under which skeins and projects find this lot."),
    ), printed=False)
