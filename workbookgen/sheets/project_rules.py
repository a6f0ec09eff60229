"""What is wrong, missing or unusual in a project."""

from collections.abc import Mapping

from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, UNKNOWN
from workbookgen.settings import Settings
from workbookgen.sheets import plausible, project_skeins, project_yarn, yarn
from workbookgen.sheets.stages import FOLDED
from workbookgen.texts import folded

LOTS = ("lot_1", "lot_2", "lot_3")
LOTS_UNKNOWN = f"{UNKNOWN}: what its lots give is unknown. Their lines on the sheet Fiber say what they still need."
HALF_DONE = 0.6  # one of a pair and a little more; a whole piece seldom takes so little (common practice, no source)
NOT_MARKED = 0.1  # of its skeins' weight: more than damp air and a tag weigh; common practice, no source
FAR_MORE = 1.1  # of a yardage that is typed: twice its usual doubt; common practice, no source


def rules(settings: Settings, of_sample: tuple[str, ...]) -> tuple[Rule, ...]:
    """What is wrong, missing or unusual; of several that apply, the first is shown.

    `of_sample` are the fields with what a project takes from its sample.
    """
    return (
        Rule("AND(given(design), OR(given(lot_1), given(lot_2), given(lot_3)))", lambda values: bool(values["design"]) and any(values[lot] for lot in LOTS),
             "Lots: leave them empty, since the design has its own."),
        *project_yarn.design_unknown(settings),
        _without_grist(settings),
        Rule("AND(lots_unknown > 0, yarn > 0)", lambda values: values["lots_unknown"] > 0 and values["yarn"] > 0, LOTS_UNKNOWN),
        Rule('OR(AND(given(lot_1), lot_1 = lot_2), AND(given(lot_1), lot_1 = lot_3), AND(given(lot_2), lot_2 = lot_3))',
             _same_lot_twice, "Lots: choose each lot only once."),
        *plausible.thick(settings.units, grist="Grist planned"),
        *_without_need(settings),
        *plausible.yarn_wanted(settings.units),
        _more_than_wanted(),
        _empty_sample(of_sample),
        project_skeins.not_measured(),
        plausible.of_a_light_fleece(settings.units),
        Rule("AND(in_skeins <= 0, free > 0.5, wanting > 0.5)", lambda values: values["in_skeins"] <= 0 and values["free"] > 0.5 and values["wanting"] > 0.5,
             f"{ASKING} Skeins of its yarn belong to no open project, so it does not count them. Are they for it? Choose it beside them, at For project. If not, set them aside."),
        _counts_only_skeins(settings),
        Rule('AND(wanting > 0.5, given(lot_fate), lot_fate <> "set aside", lot_fate <> "used")', _of_a_lot_that_went,
             f"{ASKING} The rest of its first lot is gone. If only a part went, empty Rest gone, and give that part a line of its own."),
        *project_yarn.questions(settings),
        *project_skeins.questions(),
        Rule("AND(in_lotless > 0, given(part_1_lot_a))", lambda values: values["in_lotless"] > 0 and bool(values["part_1_lot_a"]),
             f"{ASKING} A skein of it is of no lot, so that its fiber counts once more, as still to spin. Look at the sheet Skeins, at Fiber lot and Design."),
        _asked_sample(),
        Rule("ABS(strands - plies) > 0.5", lambda values: abs(values["strands"] - values["plies"]) > 0.5,
             f"{ASKING} Strands: its design has another number of singles to spin, which is taken. Empty it, or look at the design."),
        Rule(f"ROUND(off_marks, 9) > {NOT_MARKED}", lambda values: round(values["off_marks"], 9) > NOT_MARKED,
             f"{ASKING} Yarn used: its skeins tell of more or less. Mark those that are used, and divide one that is used in part."),
        Rule(f"used_of_need < {HALF_DONE}", lambda values: values["used_of_need"] < HALF_DONE,
             f"{ASKING} Yarn used: far less than planned. It is for the whole piece, finished; after one sock of two leave it empty. For a piece given up, 0 is right."),
        Rule(f"AND(ROUND(used_rest - {NOT_MARKED} * used, 9) > 0, free > 0.5)",
             lambda values: round(values["used_rest"] - NOT_MARKED * values["used"], 9) > 0 and values["free"] > 0.5,
             f"{ASKING} Yarn used: more than its skeins. If it took a skein of no open project, choose this project beside that skein, and mark it used."),
        Rule("AND(left_share >= 1, hours_planned > 0, done >= hours_planned * 0.999999999)", _plan_used_up,
             f"{ASKING} Hours done: as many as planned, and nothing is in skeins. Log what is reeled, or look at your pace on the sheet Time."),
        project_yarn.timed_on_another(),
        Rule("AND(need > 0, yarnless > 0.5, NOT(given(used)))", lambda values: values["need"] > 0 and values["yarnless"] > 0.5 and values["used"] is None,
             f"{UNKNOWN}: it has no yarn. Choose its lot here, or this project beside its skeins on the sheet Skeins."),
    )


def _counts_only_skeins(settings: Settings) -> Rule:
    """A question about an open project that is short, and has skeins, but nothing to spin more from."""
    sources, or_design = (LOTS, "") if yarn.CHAPTER in settings.without else ((*LOTS, "design"), ", or its design at Its yarn")
    some = ", ".join(f"given({each})" for each in sources)
    return Rule(f"AND(NOT(OR({some})), in_skeins > 0, wanting > 0.5)",
                lambda values: not any(values[each] for each in sources) and values["in_skeins"] > 0 and values["wanting"] > 0.5,
                f"{ASKING} No lot is chosen, so only its skeins count. If more is to be spun for it, choose that lot at First lot{or_design}.")


def _of_a_lot_that_went(values: Mapping) -> bool:
    """Given, sold or lost; one whose rest is used was spun to its end."""
    fate = folded(values["lot_fate"] or "")
    return values["wanting"] > 0.5 and fate not in ("", "set aside", "used")


def _plan_used_up(values: Mapping) -> bool:
    return values["left_share"] >= 1 and values["hours_planned"] > 0 and values["done"] >= values["hours_planned"] * 0.999999999


def _without_grist(settings: Settings) -> Rule:
    """A note on a project whose grist is not known, so that its fiber gives no length."""
    samples_too = "" if "Samples" in settings.without else "choose a sample, or "
    return Rule("AND(lots_unknown > 0, NOT(given(yarn)))", lambda values: values["lots_unknown"] > 0 and values["yarn"] is None,
                f"{UNKNOWN}: how far its fiber goes is not known; {samples_too}type Grist planned, {FOLDED}.")


def _without_need(settings: Settings) -> tuple[Rule, ...]:
    """A note on an unfinished project whose need is not known: no longer, or not yet."""
    estimated = ", or work it out on the sheet Need" if {"Knitting", "Weaving"} - set(settings.without) else ""
    return tuple(
        Rule(f"AND(NOT(given(need)), NOT(given(used)){begun})", lambda values, is_begun=is_begun: _is_without_need(values) and (not is_begun or values["in_skeins"] > 0),
             f"{UNKNOWN}: type the yarn wanted{estimated}.{given_up}")
        for begun, is_begun, given_up in (
            (", in_skeins > 0", True, f" If it is given up, type 0 at Yarn used, {FOLDED}: then its skeins are free."),
            ("", False, ""),
        )
    )


def _is_without_need(values: Mapping) -> bool:
    return values["need"] is None and values["used"] is None


def _more_than_wanted() -> Rule:
    """A yardage that is typed, and an estimate far beyond it, which then counts for nothing.

    Its last digits do not decide.
    """
    return Rule(f"AND(NOT(given(used)), ROUND(estimated / wanted, 9) > {FAR_MORE})",
                lambda values: values["used"] is None and round(values["estimated"] / values["wanted"], 9) > FAR_MORE,
                f"{ASKING} Yarn wanted: by the sheet Need it takes over a tenth more. What is typed here counts; empty it to take the estimate.")


def _empty_sample(told: tuple[str, ...]) -> Rule:
    """A question about a sample that has nothing to plan with, so that the lot's grist and the usual losses count."""
    return Rule(f"AND(given(sample), NOT(OR({', '.join(f'given({each})' for each in told)})))",
                lambda values: bool(values["sample"]) and all(values[each] is None for each in told),
                f"{UNKNOWN} by its sample: it has no grist, loss, shrinkage or take-up. Measure one of them, or choose another sample.")


def _asked_sample() -> Rule:
    """A question about a project that is short by a sample which has a question or a fault on its own sheet."""
    return Rule('AND(wanting > 0.5, OR(sample_mark = "?", sample_mark = "!"))', lambda values: values["wanting"] > 0.5 and values["sample_mark"] in ("?", "!"),
                f"{ASKING} Its sample: the sheet Samples asks something about it. Look there before you get more.")


def _same_lot_twice(values: Mapping) -> bool:
    chosen = [folded(values[lot]) for lot in LOTS if isinstance(values[lot], str) and values[lot]]
    return len(chosen) != len(set(chosen))
