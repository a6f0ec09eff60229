"""Project: one project, each of its strands against its need, the answer in a sentence, and its weeks."""

from workbookgen.language.domains import Choice
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter, Log
from workbookgen.language.quantities import DAY, HOURS, LENGTH, MASS, NUMBER, SHARE, Kind
from workbookgen.language.repeated import repeated_day
from workbookgen.language.views import Answers, Chart, Listing, LogView, Matrix, Sentences, Series, band
from workbookgen.reference import answer, chart_bars, planning, sharing
from workbookgen.settings import Settings
from workbookgen.sheets import tabs
from workbookgen.sheets.lookup import lookup, of_project

SHEET = tabs.PROJECT
CHAPTER = "Project"
STRANDS = (1, 2, 3, 4)
WEEKS = tuple(range(1, 10))
STEPS = ("preparing", "spinning", "plying", "finishing")


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (PROJECT, weeks()), (
        band(Sentences(across=(1, 9), fields=("project_in_short", "project_answer", "project_advice", "project_instead", "project_log_says"), is_large=True, is_long=True)),
        band(
            Matrix(
                title="Strand by strand", across=(1, 8), heads=("", "", "still needs", "has", "give or take", "over", "at the end", "share used"),
                rows=tuple(("", tuple(f"project_{key}_{part}" if key else "" for key in ("name", "", "needs", "left", "within", "over", "unused", "used"))) for part in STRANDS),
            ),
            Chart(
                title="Has, against what it still needs (100%)", across=(9, 12), kind="shares", rows=len(STRANDS), categories=("project_name_1", "project_name_4"),
                series=(Series("has", ("project_has_1", "project_has_4"), whisker=("project_whisker_1", "project_whisker_4")),),
                about="A bar for each strand: what there is of it as a share of what the project still needs, cut at 200%.",
            ),
        ),
        band(
            Answers(title="Yarn and fiber for it", across=(1, 5), lines=("project_length", "project_yarn", "project_prepared", "project_bought")),
            Answers(title="When", across=(7, 12), lines=("project_ahead", "project_likely", "project_counted_from", "project_finish", "project_safe")),
        ),
        band(Listing(title="The weeks", aside="hours, week by week", block="weeks", view=LogView("", (("", "step hours . " + " ".join(f"week_{week}" for week in WEEKS)),)),
                     filled=" ".join(f"week_{week}" for week in WEEKS))),
        band(Answers(title="In its making", across=(1, 5), lines=(
            "project_in_skeins", "project_free", "project_packages", "project_packages_more", "project_per_bobbin", "project_drift",
        ))),
    ))


def _of_time(key: str, label: str, column: str, unit: Kind | None, note: str = "", **more) -> Result:
    return lookup(key, label, f"times_{column}", "name", unit, note=note, **more)


def _strand(part: int) -> tuple[Result, ...]:
    """A value in the line of a strand; what it has is blank while one of its lots is unknown."""
    columns = (
        ("left", "Has", "left", MASS, 1), ("doubt", "Has ±, standard", "doubt", MASS, 1), ("over", "Over or short", "over", MASS, 1),
        ("unused", "Left at the end", "unused", MASS, 1), ("used", "Share used", "used", SHARE, 0),
    )
    return (
        of_project(f"name_{part}", f"Strand, {part}", f"part_{part}_name"),
        of_project(f"needs_{part}", f"Needs, {part}", f"part_{part}_needs", MASS, 1),
        of_project(f"unknown_{part}", f"Lots not known, {part}", f"part_{part}_unknown", NUMBER, 0),
        *(of_project(f"found_{key}_{part}", f"{label}, {part}", f"part_{part}_{column}", unit, digits) for key, label, column, unit, digits in columns),
        *(_known(key, part, label, unit, digits, "unknown" if key == "unused" else f"unknown_{part}") for key, label, _, unit, digits in columns),
        Result(f"within_{part}", f"Give or take, {part}", f"2 * doubt_{part}", chart_bars.give_or_take, MASS, digits=1, uses={"doubt": f"doubt_{part}"},
               note="Very likely it has no more and no less than that: 19 times in 20."),
    )


def _known(key: str, part: int, label: str, unit: Kind, digits: int, unknown: str) -> Result:
    return Result(f"{key}_{part}", f"{label}, {part}", f"found_{key}_{part}", sharing.if_known, unit, digits=digits,
                  uses={"amount": f"found_{key}_{part}", "unknown": unknown}, only_if=f"{unknown} < 0.5")


PROJECT = Card(
    "project",
    "One project",
    groups=(
        Group("You type", (Input("name", "Project", Choice("projects_listed", tabs.PROJECTS), help="Choose one of your projects."),)),
        Group("Is it enough?", (
            of_project("verdict", "In a word", "verdict"),
            of_project("spare", "Over or short", "spare", LENGTH),
            Result("lacking", "Lacking", "MAX(0, 0 - spare)", answer.lacking, LENGTH),
            Result("in_short", "In short",
                   'IF(verdict = "finished", "Finished", IF(verdict = "no yarn yet", "No yarn yet", IF(spare < 0, '
                   '"Short by " & said(lacking), IF(verdict = "enough", "Enough: ", IF(verdict = "in doubt", "In doubt: ", '
                   '"Likely enough: ")) & said(spare) & " over")))',
                   answer.in_short, None, only_if='IF(AND(given(spare), given(lacking)), ABS(spare) < 900000, verdict = "finished")'),
            of_project("answer", "In a sentence", "answer"),
            of_project("advice", "To be as sure as you ask", "advice"),
            of_project("instead", "If there is no more", "instead"),
            of_project("log_says", "What the log says", "message"),
        )),
        Group("Strands", (of_project("unknown", "Lots not known", "lots_unknown", NUMBER, 0), *(result for part in STRANDS for result in _strand(part)))),
        Group("For the chart", (
            *(Result(f"has_{part}", f"Has, {part}", f"MIN(2, left_{part} / needs_{part})", chart_bars.has_of_needs, SHARE, only_if=f"needs_{part} > 0",
                     uses={"has": f"left_{part}", "needs": f"needs_{part}"}) for part in STRANDS),
            *(Result(f"whisker_{part}", f"Give or take, {part}", f"IF(ROUND(left_{part} / needs_{part}, 9) < 2, 2 * doubt_{part} / needs_{part}, 0)", chart_bars.whisker, SHARE,
                     only_if=f"needs_{part} > 0",
                     uses={"has": f"left_{part}", "needs": f"needs_{part}", "doubt": f"doubt_{part}"}) for part in STRANDS),
        ), printed=False),
        Group("For it", (
            of_project("length", "Yarn with reserve", "length", LENGTH),
            of_project("yarn", "It weighs", "yarn", MASS, 1),
            of_project("prepared", "Prepared fiber", "prepared", MASS, 1, "To spin this much yarn."),
            of_project("bought", "Fiber as bought", "bought", MASS, 1, "In the state in which each lot was bought."),
            of_project("in_skeins", "In its skeins", "in_skeins", LENGTH),
            of_project("free", "In free skeins of this yarn", "free", LENGTH, note="Not counted: give them to the project on the sheet Skeins."),
            of_project("packages", "Balls in all", "packages", NUMBER, 0, "For the yarn with its reserve."),
            of_project("packages_more", "Balls to buy", "open_balls", NUMBER, 0, "On top of what is there, to be as sure as you ask."),
            of_project("per_bobbin", "On a bobbin", "per_bobbin", MASS, 1),
            of_project("drift", "Change of grist", "drift", SHARE, 0, "From the first skein to the last; below zero: coarser. "
                       "By a straight line through all of them, in the order of the log."),
        )),
        Group("Its hours", (
            *(_of_time(step, step.capitalize(), step, HOURS) for step in STEPS),
            _of_time("ahead", "Hours still ahead", "ahead", HOURS, "By your paces on the sheet Figures; empty until they are typed or timed."),
            _of_time("likely", "Very likely, hours", "likely", None, is_range=True),
            _of_time("ahead_share", "Share ahead", "ahead_share", SHARE),
            _of_time("hours", "Hours in all", "hours", HOURS),
            repeated_day("counted_from", "Counted from", "pace_counted_from",
                         note="First day on the sheet Figures, or your latest skein or lot. If that is long ago, type today there."),
            _of_time("finish", "Done on", "finish", DAY, "As if it alone had all your hours a week."),
            _of_time("safe", "Safe to promise by", "safe", DAY, "Done by then 19 times in 20 or more, as far as your pace, your weeks and the yarn go. "
                     "Hours for another project come on top."),
        )),
    ),
)


def weeks() -> Log:
    """The hours of each step, week by week from the first day."""
    hours = ", ".join(f"project_{step}" for step in STEPS)
    of_steps = {step: f"project_{step}" for step in STEPS}
    return Log("weeks", "", rows=len(STEPS), groups=(
        Group("", (
            Result("step", "", 'IF(line = 1, "Preparing", IF(line = 2, "Spinning", IF(line = 3, "Plying", "Finishing")))', planning.step_in_words, None, uses={"place": "line"}),
            Result("hours", "ahead", _by_line(hours.split(", ")) + " * project_ahead_share", planning.hours_of_step, HOURS,
                   uses={"place": "line", "left": "project_ahead_share"} | of_steps, digits=1),
            *(
                Result(f"week_{week}", f"week {week}", f"MAX(0, MIN(before + hours, {week} * pace_weekly) - MAX(before, {week - 1} * pace_weekly))",
                       planning.hours_in_week, HOURS, uses={"weekly": "pace_weekly"}, fixed={"week": float(week)}, digits=1)
                for week in WEEKS
            ),
        )),
        Group("For the weeks", (
            Result("before", "before it", _by_line(_sums_before(hours.split(", "))) + " * project_ahead_share", planning.hours_before_step, HOURS,
                   uses={"place": "line", "left": "project_ahead_share"} | of_steps, digits=1),
        ), printed=False),
    ))


def _by_line(words: list[str]) -> str:
    first, second, third, fourth = words
    return f"IF(line = 1, {first}, IF(line = 2, {second}, IF(line = 3, {third}, {fourth})))"


def _sums_before(words: list[str]) -> list[str]:
    """For each of four words the sum of those before it. The first has none; 0 times the last one stands there, since
    the reference takes all four."""
    first, second, third, fourth = words
    return [f"(0 * {fourth})", first, f"({first} + {second})", f"({first} + {second} + {third})"]
