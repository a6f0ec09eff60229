"""Time: hours for each of your projects at your own pace, and the day it will be done."""

from workbookgen.language.fields import Group, Result
from workbookgen.language.parts import Chapter, Log
from workbookgen.language.quantities import DAY, HOURS, LENGTH, MASS, NUMBER, SHARE
from workbookgen.language.repeated import repeated
from workbookgen.language.views import Listing, LogView, Prose, band
from workbookgen.reference import cost, overview, planning
from workbookgen.settings import Settings
from workbookgen.sheets import tabs
from workbookgen.sheets.lookup import of_project

SHEET = tabs.TIME
CHAPTER = "Time"


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (times(settings),), (band(Listing(title="Hours and days", block="times", view=VIEW), Prose(sentences=ABOUT, is_small=True, is_below=True)),))


ABOUT = (
    "Each of your projects as if it alone had all your hours a week. Strands, take-up and hours done are typed beside it on the sheet Projects. "
    "Rest counts too: stop and stretch every half hour.",
    "The planner cannot know today: type it as First day before you read a day here. "
    'To promise a day, take "Safe by": half of all work takes longer than "Done on" says.',
    "A pace is that of one yarn: of four times the yards in a pound, each takes twice the turns, and about twice as long to spin. Time a sample of each.",
    "A cable is plied twice, and only once is counted here: of two plies, the plying takes some three times these hours.",
)
COUNTED = "IF(AND(given(used), given(done_hours)), done_hours > 0, 1 = 0)"
DONE = "or_else(done_hours, 0)"
PLAN_USED_UP = f"{DONE} >= whole * 0.999999999"  # so that the last digits do not decide
VIEW = LogView(typed="", answers=(("", "name . plies done_hours whole ahead likely weeks finish safe known ."),))


def times(settings: Settings) -> Log:
    return Log(
        "times",
        title="",
        rows=settings.rows.projects,
        groups=(
            _of_the_project(),
            _what_there_is_to_do(),
            _hours(),
            _when(),
            Group("For the hours", tuple(of_project(*each) for each in (
                ("own_strands", "Its strands", "plies", NUMBER), ("thread", "Bought thread in it", "bought_share", SHARE), ("own_take_up", "Its take-up", "take_up", SHARE),
                ("sample_take_up", "Sample's take-up", "sample_take_up", SHARE), ("design_take_up", "Design's take-up", "design_take_up", SHARE),
            )), printed=False),
            _how_sure(),
            Group("For other sheets", (
                Result("whole", "In all", "hours", planning.hours_with_spinning, HOURS, only_if="AND(spinning >= 0, plying >= 0)",
                       note="Once spinning and plying can be reckoned: without them the rest would look like all."),
                Result("paid", "To be paid", f"IF({COUNTED}, done_hours, MAX(whole, or_else(done_hours, 0) + or_else(ahead, 0)))",
                       cost.hours_to_pay, HOURS, uses={"planned": "whole", "done": "done_hours"}, only_if=f"OR({COUNTED}, given(whole))",
                       note="As planned, or more where more is done; of a finished piece the hours done."),
                repeated("listed", "Listed as", "name", width=24),
            ), printed=False),
        ),
    )


def _of_the_project() -> Group:
    return Group("Of the project", (
        Result("name", "Project", 'INDEX(projects_listed, line) & ""', overview.nth, None, uses={"names": "projects_listed", "place": "line"},
               only_if="line <= COUNTA(projects_listed)", width=24),
        Result("plies", "Strands", "or_else(own_strands, 2)", planning.strands_in_use, NUMBER, uses={"project": "name", "own": "own_strands"}, digits=0,
               only_if='name <> ""',
               note="Singles in the ply, as the sheet Projects says, or its skeins at Plied of, or else two; a design on the sheet Yarn knows how many are not bought."),
        Result("take_up_used", "Take-up in use", "or_else(own_take_up, or_else(sample_take_up, design_take_up))", planning.take_up_in_use, SHARE,
               uses={"own": "own_take_up", "sample": "sample_take_up", "design": "design_take_up"},
               only_if="OR(given(own_take_up), IF(given(sample_take_up), sample_take_up < 1, given(design_take_up)))"),
        of_project("done_hours", "Hours done", "done", HOURS),
    ))


def _what_there_is_to_do() -> Group:
    return Group("What there is to do", (
        of_project("prepared", "Fiber to prepare", "to_prepare", MASS, note="None of what was bought prepared."),
        of_project("length", "Yarn to make", "unwashed", LENGTH, note="With its reserve, before washing takes its share."),
        of_project("left", "Still to make", "left_share", SHARE, digits=0, note="Share of the yarn that is not in skeins yet."),
        Result("singles", "Singles in all", "length * plies / (1 - or_else(take_up_used, 0))", planning.singles_length, LENGTH,
               uses={"strands": "plies", "take_up": "take_up_used"},
               only_if="plies > 0", note="Without a known take-up, none is allowed for."),
        Result("singles_left", "Singles still to spin", "singles * left", planning.length_ahead, LENGTH, uses={"amount": "singles"}, note="Before washing."),
        of_project("used", "Yarn used", "used", MASS, note="Of a finished project, for which nothing is ahead any more."),
    ))


def _hours() -> Group:
    return Group("Hours", (
        Result("preparing", "Preparing", "prepared / pace_preparing", planning.hours, HOURS, uses={"amount": "prepared", "pace": "pace_preparing"}),
        Result("spinning", "Spinning", "IF(plies > 0, singles / pace_spin, 0)", planning.spinning_hours, HOURS, uses={"strands": "plies", "pace": "pace_spin"},
               only_if="OR(plies = 0, AND(given(singles), given(pace_spin)))", note="None for a yarn that is plied of bought threads alone."),
        Result("plying", "Plying", "IF(OR(plies > 1, or_else(thread, 0) > 0.000001), length / pace_ply, 0)", planning.plying_hours, HOURS,
               uses={"strands": "plies", "pace": "pace_ply", "bought": "thread"}, only_if="OR(AND(plies = 1, or_else(thread, 0) <= 0.000001), given(pace_ply))",
               note="None for a single. A cable is plied twice: its first plying is not counted."),
        Result("finishing", "Finishing", "length / pace_finishing", planning.hours, HOURS, uses={"amount": "length", "pace": "pace_finishing"}),
        Result("hours", "Of the steps known",
               "or_else(preparing, 0) + or_else(spinning, 0) + or_else(plying, 0) + or_else(finishing, 0)",
               planning.hours_in_all, HOURS, uses={"hours_1": "preparing", "hours_2": "spinning", "hours_3": "plying", "hours_4": "finishing"},
               leaves=("hours_5", "hours_6"), only_if="OR(given(preparing), given(spinning), given(plying), given(finishing))",
               note="Of the steps whose pace is known."),
        Result("known", "Reckoned with",
               'IF(AND(given(preparing), given(spinning), given(plying), given(finishing)), "all steps", SUBSTITUTE(SUBSTITUTE("without" '
               '& IF(given(preparing), "", " preparing") & IF(given(spinning), "", " spinning") & IF(given(plying), "", " plying") '
               '& IF(given(finishing), "", " finishing"), " ", ", "), "without, ", "without "))',
               planning.steps_known, None, only_if="OR(given(preparing), given(spinning), given(plying), given(finishing))", width=25,
               note="A step is left out while its pace is not known: give it on the sheet Figures."),
        Result("ahead", "Still ahead", f"IF(given(used), 0, IF({PLAN_USED_UP}, whole * left, MIN(whole - {DONE}, whole * left)))",
               planning.hours_ahead, HOURS, uses={"hours": "whole", "done": "done_hours"},
               only_if=f"OR(given(used), left < 1, whole <= 0, NOT({PLAN_USED_UP}))",
               note="All less those done, and no more than what is not in skeins yet would take; not known once those done are as many, and nothing is in skeins. "
                    "None once the project is finished, which is when the sheet Projects says what it used."),
    ))


def _how_sure() -> Group:
    """The range of hours and how many to allow for; the pace is uncertain by a factor, the need by a length."""
    of_pace = {"hours": "whole", "u_pace": "pace_doubt", "by_need": "need_hours", "done": "done_hours"}
    factor, weeks = "2 * SQRT(pace_doubt * pace_doubt + doubts_weekly * doubts_weekly)", "EXP(2 * doubts_weekly)"
    fewer = f"MAX(whole * left * (1 - EXP(0 - 2 * pace_doubt)), IF({PLAN_USED_UP}, 0, ahead + {DONE} - whole * EXP(0 - 2 * pace_doubt)))"
    return Group("How sure?", (
        of_project("need_doubt", "Need ±", "doubt_need", LENGTH),
        of_project("with_reserve", "Yarn with reserve", "length", LENGTH),
        Result("need_hours", "Hours by need, ±", "whole * need_doubt / with_reserve", planning.hours_by_need, HOURS,
               uses={"hours": "whole", "u_need": "need_doubt", "length": "with_reserve"}, only_if="with_reserve > 0"),
        Result("least", "At least", f"MAX(0, ahead - SQRT(POWER({fewer}, 2) + POWER(2 * need_hours, 2)))",
               planning.least_hours, HOURS, uses=of_pace, only_if="ahead > 0"),
        Result("most", "At most", f"ahead + SQRT(POWER({_more('2 * pace_doubt', '1')}, 2) + POWER(2 * need_hours, 2))",
               planning.most_hours, HOURS, uses=of_pace, only_if="ahead > 0"),
        Result("allow", "Hours to allow for",
               f"ahead + SQRT(POWER({_more(factor, weeks)}, 2) + POWER(2 * need_hours, 2))",
               planning.hours_to_allow, HOURS, uses=of_pace | {"u_weekly": "doubts_weekly"}, only_if="ahead > 0"),
    ), printed=False)


def _more(factor: str, weeks: str) -> str:
    """Formula text of the hours more of a slow hand; how slow, hours and skeins show, if none of it is on bobbins."""
    slow = f"MIN(whole * EXP({factor}) - {DONE}, {DONE} * left / (1 - left) * {weeks}) - ahead"
    return f"MAX(whole * left * (EXP({factor}) - 1), IF(left < 1, IF({DONE} > whole * (1 - left), {slow}, 0), 0))"


def _when() -> Group:
    return Group("When", (
        Result("ahead_share", "Share ahead", "ahead / whole", planning.ahead_share, SHARE, digits=0, uses={"hours": "whole"}, only_if="whole > 0"),
        Result("likely", "Very likely, h", 'ROUNDDOWN(ROUND(least, 6), 0) & " to " & ROUNDUP(ROUND(most, 6), 0)', planning.likely_hours, None,
               only_if="most < 1000000", width=13, is_range=True, note="Hours still ahead, 19 times in 20."),
        Result("weeks", "Weeks", "ahead / pace_weekly", planning.weeks, NUMBER, uses={"hours": "ahead", "hours_per_week": "pace_weekly"}, digits=1),
        Result("finish", "Done on", "pace_counted_from - 1 + ROUNDUP(ROUND(ahead / pace_weekly * 7, 6), 0)", planning.finish_day, DAY,
               uses={"start": "pace_counted_from", "hours": "ahead", "hours_per_week": "pace_weekly"}, width=12,
               only_if="AND(ahead > 0, pace_counted_from - 1 + ROUNDUP(ROUND(ahead / pace_weekly * 7, 6), 0) <= 2958465)",  # the last day that programs know
               note="The day from which days are counted on the sheet Figures is a day of work. Empty when nothing is ahead."),
        Result("safe", "Safe by", "pace_counted_from - 1 + ROUNDUP(ROUND(allow / pace_weekly * 7, 6), 0)", planning.finish_day, DAY,
               uses={"start": "pace_counted_from", "hours": "allow", "hours_per_week": "pace_weekly"}, width=12,
               only_if="AND(allow > 0, pace_counted_from - 1 + ROUNDUP(ROUND(allow / pace_weekly * 7, 6), 0) <= 2958465)",
               note="The day to promise: done by then 19 times in 20 or more, as far as your pace, your weeks and the yarn go. Hours for another project come on top."),
    ))
