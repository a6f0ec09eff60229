"""Time: hours for each project at your own pace, and the day it will be done."""

from workbookgen.language.domains import Choice, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Chapter, Log
from workbookgen.language.quantities import DAY, HOURS, LENGTH, MASS, NUMBER, SHARE
from workbookgen.reference import planning, stock
from workbookgen.language.views import Listing, LogView, band
from workbookgen.settings import Settings
from workbookgen.sheets.knitting import PROJECTS

SHEET = "Time"
CHAPTER = "Time"


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (times(settings),), (band(Listing(title="Hours and days", block="times", view=VIEW, aside="At your pace below. Rest counts too: stop and stretch every half hour.")),))


VIEW = LogView(typed="project strands take_up done", answers=(("It takes", "hours ahead weeks finish"),))


def times(settings: Settings) -> Log:
    return Log(
        "times",
        title="",
        rows=settings.rows.projects,
        groups=(
            Group("You type", (
                Input("project", "Project", Choice("projects_listed", PROJECTS), needed=True, width=24),
                Input("strands", "Strands", Number(least=1, most=12, whole=True), NUMBER, blank_means=2, help="Singles in the ply; empty means two."),
                Input("take_up", "Take-up", Number(least=0, below=1), SHARE, help="Share of the singles' length lost in plying; empty takes it from the sheet Samples."),
                Input("done", "Hours done", Number(least=0, most=1_000_000), HOURS, blank_means=0, help="Hours of work on it that are behind you."),
            )),
            Group("What there is to do", (
                Result("sample_take_up", "Sample's take-up", "pick(projects_sample_take_up, projects_listed, project)", stock.pick, SHARE,
                       uses={"name": "project", "names": "projects_listed", "values": "projects_sample_take_up"}),
                Result("take_up_used", "Take-up in use", "IF(given(take_up), take_up, sample_take_up)", planning.take_up_in_use, SHARE,
                       uses={"own": "take_up", "sample": "sample_take_up"}, only_if="OR(given(take_up), AND(given(sample_take_up), sample_take_up < 1))"),
                Result("prepared", "Fiber to prepare", "pick(projects_to_prepare, projects_listed, project)", stock.pick, MASS,
                       uses={"name": "project", "names": "projects_listed", "values": "projects_to_prepare"}, note="None of what was bought prepared."),
                Result("length", "Yarn to make", "pick(projects_unwashed, projects_listed, project)", stock.pick, LENGTH,
                       uses={"name": "project", "names": "projects_listed", "values": "projects_unwashed"}, note="With its reserve, before washing takes its share."),
                Result("left", "Still to make", "pick(projects_left_share, projects_listed, project)", stock.pick, SHARE, digits=0,
                       uses={"name": "project", "names": "projects_listed", "values": "projects_left_share"}, note="Share of the yarn that is not in skeins yet."),
                Result("singles", "Singles in all", "length * strands / (1 - IF(given(take_up_used), take_up_used, 0))", planning.singles_length, LENGTH, uses={"take_up": "take_up_used"},
                       only_if="OR(NOT(given(take_up_used)), take_up_used >= 0)", note="Without a known take-up, none is reckoned."),
                Result("singles_left", "Singles still to spin", "singles * left", planning.length_ahead, LENGTH, uses={"amount": "singles"}, note="Before washing."),
                Result("used", "Yarn used", "pick(projects_used, projects_listed, project)", stock.pick, MASS,
                       uses={"name": "project", "names": "projects_listed", "values": "projects_used"}, note="Of a finished project, for which nothing is ahead any more."),
            )),
            Group("Hours", (
                Result("preparing", "Preparing", "prepared / pace_preparing", planning.hours, HOURS, uses={"amount": "prepared", "pace": "pace_preparing"}),
                Result("spinning", "Spinning", "singles / pace_spin", planning.hours, HOURS, uses={"amount": "singles", "pace": "pace_spin"}),
                Result("plying", "Plying", "IF(strands > 1, length / pace_ply, 0)", planning.plying_hours, HOURS, uses={"pace": "pace_ply"},
                       only_if="OR(strands = 1, given(pace_ply))", note="None for a single."),
                Result("finishing", "Finishing", "length / pace_finishing", planning.hours, HOURS, uses={"amount": "length", "pace": "pace_finishing"}),
                Result("hours", "In all",
                       "IF(given(preparing), preparing, 0) + IF(given(spinning), spinning, 0) + IF(given(plying), plying, 0) + IF(given(finishing), finishing, 0)",
                       planning.hours_in_all, HOURS, uses={"hours_1": "preparing", "hours_2": "spinning", "hours_3": "plying", "hours_4": "finishing"},
                       leaves=("hours_5", "hours_6"), only_if="OR(given(preparing), given(spinning), given(plying), given(finishing))",
                       note="Of the steps whose pace is known."),
                Result("known", "Reckoned with",
                       'IF(AND(given(preparing), given(spinning), given(plying), given(finishing)), "all steps", SUBSTITUTE(SUBSTITUTE("without" '
                       '& IF(given(preparing), "", " preparing") & IF(given(spinning), "", " spinning") & IF(given(plying), "", " plying") '
                       '& IF(given(finishing), "", " finishing"), " ", ", "), "without, ", "without "))',
                       planning.steps_known, None, only_if="OR(given(preparing), given(spinning), given(plying), given(finishing))", width=25,
                       note="A step is left out while its pace is not known: give it on the sheet Figures."),
                Result("ahead", "Still ahead", "IF(given(used), 0, IF(AND(left < 1, done >= hours), hours * left, MIN(MAX(0, hours - done), hours * left)))", planning.hours_ahead, HOURS,
                       note="All less those done, and no more than what is not in skeins yet would take. None once the project is finished, which is when the sheet Projects says what it used."),
            )),
            Group("When", (
                Result("ahead_share", "Share ahead", "ahead / hours", planning.ahead_share, SHARE, digits=0, only_if="hours > 0"),
                Result("weeks", "Weeks", "ahead / pace_weekly", planning.weeks, NUMBER, uses={"hours": "ahead", "hours_per_week": "pace_weekly"}, digits=1),
                Result("finish", "Done on", "pace_start - 1 + ROUNDUP(ROUND(ahead / pace_weekly * 7, 6), 0)", planning.finish_day, DAY,
                       uses={"start": "pace_start", "hours": "ahead", "hours_per_week": "pace_weekly"}, width=12,
                       only_if="AND(ahead > 0, pace_start - 1 + ROUNDUP(ROUND(ahead / pace_weekly * 7, 6), 0) <= 2958465)",  # the last day that programs know
                       note="The first day of the sheet Figures counts as a day of work. Empty when nothing is ahead."),
            )),
            Group("For other sheets", (
                Result("listed", "Listed as", "project", stock.listed, None, uses={"name": "project"}, width=24),
            ), printed=False),
        ),
    )
