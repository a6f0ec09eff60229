"""Projects: what is in the skeins that belong to one, what they tell of the rest, and how sure that is."""

from workbookgen.language.fields import Group, Result
from workbookgen.language.quantities import (
    GRIST,
    LENGTH,
    MASS,
    NUMBER,
    SHARE,
    SQUARE_GRIST,
    SQUARE_LENGTH,
    SQUARE_MASS,
    Kind,
)
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING
from workbookgen.reference import (
    belongings,
    planning,
    project,
    records,
    statistics,
    strands,
    uncertainty,
    used_up,
    yarn_count,
)
from workbookgen.sheets import fiber
from workbookgen.sheets.strand import PARTS

ENOUGH_SKEINS = 5  # common practice, no source: of fewer, chance makes more than a hand does
FAR_LESS_EVEN = 1.75  # times the usual variation; common practice, no source
SPUN_SHARE = "1 - or_else(bought_share, 0)"
SORTED = "If you sorted them, sort by day again."
HARDLY_ANY = 0.0001  # of the weight of its skeins: sums differ in their last digits
HARDLY_CHANCE = 2.2  # standard deviations of a slope: three in a hundred steady hands are beyond (normal distribution)


def group() -> Group:
    return Group("Its skeins", (
        _of_skeins("in_skeins", "In skeins", "skeins_finished_yd", LENGTH, digits=None, width=10,
                   note="Finished length of the skeins that belong to this project; what is used is in the piece, and counts."),
        Result("skeins", "Skeins", "sum_where(skeins_counted, skeins_for_project, name)", records.sum_where, NUMBER, digits=0, width=8,
               uses={"names": "skeins_for_project", "amounts": "skeins_counted"}, note="Of these, those that were weighed."),
        _of_skeins("grist_sum", "Grists, summed", "skeins_grist_yd_lb", GRIST),
        _of_skeins("grist_squares", "Grists², summed", "skeins_grist_square", SQUARE_GRIST),
        Result("mean_grist", "Mean grist", "grist_sum / skeins", statistics.group_mean, GRIST,
               uses={"total": "grist_sum", "count": "skeins"}, only_if="skeins > 0"),
        _of_skeins("length_weighed", "Weighed, length", "skeins_finished_yd", LENGTH, names="skeins_weighed_for"),
        _of_skeins("mass_weighed", "Weighed, weight", "skeins_net", MASS, names="skeins_weighed_for"),
        _of_skeins("mass_squares", "Weighed, weight²", "skeins_mass_square", SQUARE_MASS, names="skeins_weighed_for"),
        Result("count_alike", "As good as alike", "IF(mass_squares > 0, mass_weighed * mass_weighed / mass_squares, 0)", statistics.as_good_as_alike, NUMBER, digits=1, width=9,
               uses={"total": "mass_weighed", "squares": "mass_squares"},
               note="So many skeins of one weight would tell as much of the rest; small ones tell little."),
        Result("grist_so_far", "Grist so far", "length_weighed / mass_weighed", yarn_count.grist, GRIST, uses={"length": "length_weighed", "mass": "mass_weighed"},
               only_if="mass_weighed > 0", note="Of all of them together, length over weight: what is still to spin is expected to be like that."),
        fiber.variation_of_grist("Between its skeins; 5 to 15% is usual for handspun (common practice, no source)."),
        Result("unevenness", "CV, beside the usual", "variation / doubts_variation", statistics.beside_the_usual, NUMBER, uses={"usual": "doubts_variation"},
               only_if="doubts_variation > 0", note="How many times what your skeins usually differ by, on the sheet Sureness."),
        Result("used_logged", "Used, in skeins", "sum_where(skeins_net, skeins_of_project, name) + sum_where(skeins_guess, skeins_of_project, name)", records.spun, MASS,
               uses={"names": "skeins_of_project", "amounts": "skeins_net", "second_names": "skeins_of_project", "second_amounts": "skeins_guess"},
               leaves=("third_names", "third_amounts", "besides", "expected"),
               note="Weight of all skeins logged for it, those that are gone too; expected until they are weighed."),
        _of_skeins("served", "In its skeins", "skeins_net", MASS, digits=None, width=10,
                   note="Weight of those that are there or used for it."),
        Result("lengthless", "Weighed, no length", "MAX(0, served - mass_weighed)", belongings.without_length, MASS, uses={"measured": "mass_weighed"},
               note="Of those, without a length: they count for nothing yet."),
        _of_skeins("still_there", "Still in them", "skeins_net", MASS, names="skeins_left_of", digits=None, width=10,
                   note="Weight of those that are there."),
        _of_skeins("plied_sum", "Singles, summed", "skeins_singles", NUMBER, width=9),
        Result("plied_count", "Singles, known", "count_where(skeins_singles, skeins_for_project, name)", records.count_where, NUMBER, digits=0, width=8,
               uses={"names": "skeins_for_project", "amounts": "skeins_singles"}, note="Skeins of which it is known."),
        Result("skeins_plies", "Singles in most", "ROUND(ROUND(plied_sum / plied_count, 9), 0)", planning.usual_ply, NUMBER, digits=0, width=8,
               uses={"total": "plied_sum", "count": "plied_count"}, only_if="plied_count > 0", note="On the average, as a whole number."),
        Result("off_marks", "Off its marks", "ABS(still_there - MAX(0, served - used)) / served", used_up.off_its_marks, SHARE, digits=0,
               only_if="served > 0", note="What is there of its skeins, beside what it left of them, as a share of their weight."),
        Result("used_rest", "Used besides", "MAX(0, used - used_logged)", strands.used_besides, MASS, uses={"logged": "used_logged"},
               note="What a finished piece took that no skein was logged for: it is taken off its lots."),
        Result("used_of_need", "Used, of the need", "used * planned / need", project.used_of_need, SHARE, digits=0, only_if="need > 0",
               note="Beside what the yarn needed weighs at the grist in use."),
        Result("to_spin", "Still to make", "IF(given(used), 0, MAX(0, need - in_skeins))", strands.to_spin, LENGTH, note="Of the yarn needed, what is not in its skeins."),
    ))


def drifting() -> tuple[Result, ...]:
    """Whether its skeins become finer or coarser, in the order of the log."""
    return (
        _of_skeins("order_sum", "Places, summed", "skeins_order", NUMBER),
        _of_skeins("order_squares", "Places², summed", "skeins_order_square", NUMBER),
        _of_skeins("order_grists", "Grists by place", "skeins_order_grist", GRIST),
        Result("order_spread", "Spread of the places", "order_squares - order_sum * order_sum / skeins", statistics.spread_of_places, NUMBER,
               uses={"squares": "order_squares", "places": "order_sum", "count": "skeins"}, only_if="skeins > 1"),
        Result("drift_by_place", "Change by line", "(order_grists - order_sum * grist_sum / skeins) / (order_spread * mean_grist)", statistics.change_by_place, SHARE,
               uses={"products": "order_grists", "places": "order_sum", "total": "grist_sum", "count": "skeins", "spread": "order_spread", "mean": "mean_grist"}, digits=2,
               only_if="mean_grist > 0"),
        Result("drift", "Change, first to last", "drift_by_place * SQRT(12 * order_spread / skeins * (skeins - 1) / (skeins + 1))", statistics.from_first_to_last, SHARE,
               uses={"change": "drift_by_place", "spread": "order_spread", "count": "skeins"}, digits=0, only_if=f"skeins >= {ENOUGH_SKEINS}",
               note="How much finer the last of its skeins is than the first, by a straight line through all of them in the order of the log. Below zero it is coarser."),
        Result("beyond_chance", "Beside chance",
               "drift_by_place * SQRT(order_spread) / MAX(doubts_variation, SQRT(MAX(0, variation * variation * (skeins - 1) - drift_by_place * drift_by_place * order_spread) "
               "/ (skeins - 2)))", statistics.beyond_chance, NUMBER, digits=1, only_if="AND(skeins > 2, doubts_variation > 0)",
               uses={"change": "drift_by_place", "spread": "order_spread", "count": "skeins", "usual": "doubts_variation"}, note="Beyond 2.2, or below -2.2, it is hardly chance."),
    )


def as_it_is_spun() -> tuple[Result, ...]:
    """What the skeins already spun tell about those to come, and how much a skein holds."""
    return (
        Result("learned", "Skeins overrule the plan by",
               "IF(count_alike > 0, IF(doubts_grist > 0, doubts_grist * doubts_grist "
               "/ (doubts_grist * doubts_grist + doubts_variation * doubts_variation / count_alike), 0), 0)",
               uncertainty.learned_weight, SHARE, uses={"u_plan": "doubts_grist", "variation": "doubts_variation", "skeins": "count_alike"}, digits=0, width=15,
               note="How far the grist of the skeins already spun is expected of the rest as well."),
        Result("bought_share", "Bought thread", "part_1_bought * part_1_share" + "".join(
            f" + IF(AND(given(part_{part}_bought), given(part_{part}_share)), part_{part}_bought * part_{part}_share, 0)" for part in (2, 3, 4)),
               strands.bought_share, SHARE,
               uses={f"{key}_{part}": f"part_{part}_{key}" for part in PARTS for key in ("bought", "share")}, only_if="part_1_share > 0"),
        Result("finer_so_far", "Finer so far",
               "IF(given(grist_so_far), IF(AND(bought_share < 0.999999, planned / grist_so_far - bought_share > 0.1 * (1 - bought_share)), "
               "1 + learned * ((1 - bought_share) / (planned / grist_so_far - bought_share) - 1), 1), 1)",
               uncertainty.finer_than_planned, NUMBER, uses={"weight": "learned", "seen": "grist_so_far"}, only_if="planned > 0",
               note="How much finer the spun strands come out than planned, as far as the skeins tell."),
        Result("expected_grist", "Grist expected", "planned * finer_so_far", project.grist_expected, GRIST, uses={"ratio": "finer_so_far"},
               note="Of a skein that is not weighed yet."),
        Result("hold", "A skein holds", "or_else(package, IF(skeins > 0, in_skeins / skeins, doubts_skein))", project.skein_holds, LENGTH,
               uses={"usual": "doubts_skein"}, only_if="OR(given(package), skeins = 0, in_skeins > 0)"),
        Result("ahead", "Change ahead",
               f"IF(AND(given(drift), given(beyond_chance), given(hold), given(to_spin), {SPUN_SHARE} > 0.000001), "
               f"IF(AND(ROUND(ABS(beyond_chance), 9) > {HARDLY_CHANCE}, to_spin > 0), "
               f"MAX(-1, MIN(1, drift * (skeins + to_spin / hold) / 2 / (skeins - 1) / ({SPUN_SHARE}))), 0), 0)",
               statistics.change_ahead, SHARE, uses={"count": "skeins", "beyond": "beyond_chance"}, digits=0,
               note="Of what is spun: from its skeins to those to come, if the hand goes on so."),
        Result("finer", "Finer ahead", "finer_so_far * (1 + ahead / 2)", uncertainty.finer_to_come, NUMBER, uses={"finer": "finer_so_far"},
               note="Half of the change ahead is expected, since the hand may go on so or come back."),
        Result("hand_doubt", "Grist ahead ±", "SQRT(POWER(doubts_grist, 2) * (1 - learned) + POWER(ahead / 2, 2))", uncertainty.hand_uncertainty, SHARE,
               uses={"weight": "learned", "u_plan": "doubts_grist"}, note="Of all that is still to be spun, together."),
    )


def in_doubt(*, few: bool) -> tuple[Result, ...]:
    """The uncertainty of its skeins, by what they share."""
    return (
        _of_skeins("own_square", "Skeins' own ±²", "skeins_own_square", SQUARE_LENGTH),
        *_by_reels(few=few),
        _of_skeins("slack_sum", "By slack ±", "skeins_slack_part", LENGTH),
        _of_skeins("shrink_sum", "By shrinkage ±", "skeins_shrink_part", LENGTH, width=11),
        Result("doubt_skeins", "Skeins ±", "SQRT(own_square + reel_square + slack_sum * slack_sum + shrink_sum * shrink_sum)", uncertainty.skeins_uncertainty, LENGTH,
               uses={"own": "own_square", "by_reels": "reel_square", "slack": "slack_sum", "shrink": "shrink_sum"},
               note="Standard uncertainty of its skeins together; what they share is added before it is squared (JCGM 100)."),
    )


def _of_skeins(key: str, label: str, column: str, unit: Kind, *, names: str = "skeins_for_project", **more) -> Result:
    """The sum of a column over the skeins that have the project's name in the column `names`."""
    return Result(key, label, f"sum_where({column}, {names}, name)", records.sum_where, unit,
                  uses={"names": names, "amounts": column}, **{"digits": 0, "width": 8} | more)


def _by_reels(*, few: bool) -> tuple[Result, ...]:
    """The squared uncertainty from the reels of its skeins: reel by reel, or for many skeins as of a single reel."""
    if few:
        return (_of_skeins("reel_square", "By reels ±²", "skeins_reel_square", SQUARE_LENGTH),)
    return (
        _of_skeins("reel_sum", "By reels ±", "skeins_reel_part", LENGTH),
        Result("reel_square", "By reels ±²", "reel_sum * reel_sum", uncertainty.square, SQUARE_LENGTH, uses={"uncertainty": "reel_sum"}),
    )


def not_measured() -> Rule:
    """A question about skeins that were weighed only: their fiber is gone from the lot, and their yarn is not there."""
    return Rule(f"AND(lengthless > {HARDLY_ANY} * served, wanting > 0.5)", lambda values: values["lengthless"] > HARDLY_ANY * values["served"] and values["wanting"] > 0.5,
                f"{ASKING} A skein of it was weighed and has no length yet, so it does not count. Its line on the sheet Skeins says what it needs.")


def questions() -> tuple[Rule, ...]:
    """Questions about skeins that put in doubt what the planner says of the rest of the yarn.

    First, a drift: skeins that become coarser or finer line by line; half of that is expected to go on. Then, skeins
    that differ far more than the sheet Sureness says, so that every range is too narrow. Of groups of five skeins
    that differ as it says, one in fifty looks like that by chance.
    """
    return (
        Rule("ahead < 0", lambda values: values["ahead"] < 0,
             f"{ASKING} Line by line its skeins become coarser, so the rest may give even less. Lay the first beside the wheel, and spin like it. {SORTED}"),
        Rule("ahead > 0", lambda values: values["ahead"] > 0,
             f"{ASKING} Line by line its skeins become finer, so the rest will not be like the first. Lay that beside the wheel, and spin like it. {SORTED}"),
        Rule(f"AND(skeins >= {ENOUGH_SKEINS}, to_spin > 0, ROUND(unevenness, 9) > {FAR_LESS_EVEN})",
             lambda values: values["skeins"] >= ENOUGH_SKEINS and values["to_spin"] > 0 and round(values["unevenness"], 9) > FAR_LESS_EVEN,
             f"{ASKING} Its skeins differ far more than yours usually do, so the answer is too sure. Type their CV at Skeins differ by, on the sheet Project."),
    )
