"""Figures: the spinner's own pace, with which other sheets plan."""


from workbookgen.language.domains import Choice, Date, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter
from workbookgen.language.quantities import DAY, GRIST, HOURS, LENGTH, MASS_PACE, NUMBER, PACE, SHARE
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, UNKNOWN
from workbookgen.reference import overview, planning, project, records, reeling
from workbookgen.settings import Settings
from workbookgen.sheets import samples, tabs, usual
from workbookgen.sheets.card_view import asked_and_answered
from workbookgen.sheets.limits import AMOUNT, STRANDS
from workbookgen.sheets.lookup import lookup
from workbookgen.units import Quantity

SHEET = tabs.TIME
CHAPTER = "Figures"
# Days between the first day and the latest skein or lot: one of them is old, or of another year. Common practice, no
# source.
LONG_AFTER = 300


def chapter(settings: Settings) -> Chapter:
    card = paces(settings)
    return Chapter(CHAPTER, (card,), (asked_and_answered(card, "stock_weeks", hidden="varies timed_grist sample_shrinkage sample_take_up stock_shrinkage stock_plied"),))


def paces(settings: Settings) -> Card:
    return Card(
        "pace",
        "Your pace",
        groups=(_you_type(), _worked_out()),
        rules=(
            Rule("AND(given(sample), NOT(given(spinning)), NOT(given(sample_spinning)))",
                 lambda values: bool(values["sample"]) and values["spinning"] is None and values["sample_spinning"] is None,
                 f"{UNKNOWN} by the sample: it has no pace of spinning. Type its singles and minutes on the sheet Samples, or your own pace here."),
            Rule(f"counted_from - start > {LONG_AFTER}", lambda values: values["counted_from"] - values["start"] > LONG_AFTER,
                 f"{ASKING} First day: a skein is finished, or a lot bought, over 300 days after it, and all days are counted from there. "
                 "Type today, or look at the year on the sheets Skeins and Fiber."),
        ),
    )


def _you_type() -> Group:
    return Group("You type", (
        Input("sample", "As in the sample", Choice("samples_listed", samples.SHEET), help="A sample with minutes taken; your own figures below win over it."),
        Input("preparing", "Preparing fiber", AMOUNT, MASS_PACE, usual=usual.PREPARED, needed=True, starts_as=Quantity(2, "ounce / hour"),
              help="Carding or combing: what comes out of it in an hour, ready to spin."),
        Input("spinning", "Spinning singles", AMOUNT, PACE, usual=usual.PACE_OF_YARN,
              help="Length in an hour, of a yarn like those that you plan: one four times as fine takes about twice as long."),
        Input("plying", "Plying", AMOUNT, PACE, usual=usual.PACE_OF_YARN, help="Length of ply in an hour."),
        Input("finishing", "Winding and washing", AMOUNT, PACE, usual=usual.PACE_OF_YARN, needed=True, starts_as=Quantity(400, "yard / hour"),
              help="Length of yarn reeled, tied and washed in an hour."),
        Input("strands", "Strands for the stock", STRANDS, NUMBER, needed=True, starts_as=2.0, help="How the stock will be plied, for the weeks of spinning in it."),
        Input("weekly", "Hours a week", Number(above=0, most=168), HOURS, usual=usual.HOURS_A_WEEK, needed=True, starts_as=Quantity(6, "hour")),
        Input("start", "First day", Date(), DAY,
              help="Today, and again after a break: the planner does not know it. Days are never counted from before your latest finished skein, or the lot bought last."),
    ))


def _worked_out() -> Group:
    return Group("Worked out", (
        lookup("sample_spinning", "Spinning in the sample", "samples_spin_pace", "sample", PACE),
        lookup("sample_plying", "Plying in the sample", "samples_ply_pace", "sample", PACE),
        lookup("timed_grist", "Grist of the sample", "samples_grist_yd_lb", "sample", GRIST, note="Of which its pace is."),
        Result("spin", "Spinning, in use", "or_else(spinning, sample_spinning)", planning.pace_in_use, PACE,
               uses={"own": "spinning", "sample": "sample_spinning"}, only_if="OR(given(spinning), given(sample_spinning))"),
        Result("ply", "Plying, in use", "or_else(plying, sample_plying)", planning.pace_in_use, PACE,
               uses={"own": "plying", "sample": "sample_plying"}, only_if="OR(given(plying), given(sample_plying))"),
        Result("timed", "Paces timed", "COUNT(samples_spin_pace)", overview.how_many, NUMBER, uses={"amounts": "samples_spin_pace"}, digits=0,
               note="Samples with minutes of spinning."),
        Result("varies", "They differ by", "STDEV(samples_spin_pace) / AVERAGE(samples_spin_pace)", planning.pace_variation, SHARE, uses={"paces": "samples_spin_pace"},
               digits=0, only_if="COUNT(samples_spin_pace) > 1", note="From two timed samples on."),
        Result("doubt", "Pace, in use, ±",
               "IF(given(varies), SQRT((4 * doubts_pace * doubts_pace + (timed - 1) * 2 * varies * varies) / (timed + 3)), doubts_pace)",
               planning.pace_uncertainty, SHARE, uses={"u_usual": "doubts_pace", "variation": "varies", "count": "timed"}, digits=0,
               note="By the sheet Sureness, and how your timed paces differ."),
        Result("counted_from", "Days are counted from", "MAX(start, MAX(skeins_dated), MAX(fiber_dated))", planning.counted_from, DAY,
               uses={"days": "skeins_dated", "bought_days": "fiber_dated"},
               note="The first day above, or that of the skein finished or the lot bought last, if it is later."),
        Result("stock", "Yarn still to spin in the stock", "sum(fiber_to_spin_length)", records.sum_of, LENGTH, uses={"amounts": "fiber_to_spin_length"},
               note="Of all lots of fiber that have a wanted grist; bought yarn and thread are spun already."),
        lookup("sample_shrinkage", "Shrinkage in the sample", "samples_shrinkage", "sample", SHARE),
        lookup("sample_take_up", "Take-up in the sample", "samples_take_up", "sample", SHARE),
        Result("stock_shrinkage", "Shrinkage in use", "or_else(sample_shrinkage, doubts_shrinkage)", reeling.expected_shrinkage, SHARE,
               uses={"usual": "doubts_shrinkage", "sample": "sample_shrinkage"}, only_if="blank_or(sample_shrinkage, sample_shrinkage < 0.9)"),
        Result("stock_plied", "As plied, unwashed", "stock / (1 - stock_shrinkage)", project.unwashed_length, LENGTH,
               uses={"length": "stock", "shrinkage": "stock_shrinkage"}, leaves=("bought_share", "design"),
               note="Before washing takes its share: the sample's above, or else the usual one on the sheet Sureness."),
        Result("stock_singles", "As singles", "stock_plied * strands / (1 - or_else(sample_take_up, 0))", planning.singles_length, LENGTH,
               uses={"length": "stock_plied", "take_up": "sample_take_up"},
               note="Before plying and washing; without a sample above, no take-up is allowed for."),
        Result("stock_hours", "Hours to spin the stock", "stock_singles / spin", planning.hours, HOURS, uses={"amount": "stock_singles", "pace": "spin"}),
        Result("stock_weeks", "Weeks to spin the stock", "stock_hours / weekly", planning.weeks, NUMBER, uses={"hours": "stock_hours", "hours_per_week": "weekly"}, digits=1),
    ))

