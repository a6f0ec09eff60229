"""The desk, where one starts: entrances by what one wants to do, what is there, what needs a look, cautions, and
whether this program computes correctly."""

from itertools import zip_longest

from workbookgen.language.automatic import FIRST, OPEN, QUESTIONS, SPOILED, UNFINISHED
from workbookgen.language.fields import Group, Result
from workbookgen.language.parts import Card, Chapter, Log, Sheet
from workbookgen.language.quantities import LENGTH, MASS, NUMBER, SHARE
from workbookgen.language.views import (
    Alerts,
    Band,
    Chart,
    Entrance,
    Link,
    Listing,
    LogView,
    Prose,
    Sentences,
    Series,
    SheetKind,
    band,
)
from workbookgen.reference import agreement, chart_bars, desk_words, overview, records, stock_words
from workbookgen.settings import Settings
from workbookgen.sheets import tabs, totals
from workbookgen.sheets.lookup import of_lot, of_project

SHEET = tabs.DESK
PROJECTS_SHOWN, LOTS_SHOWN = 5, 5


def sheet(settings: Settings, proofs: str, sheets: tuple[Sheet, ...], cautions: tuple[str, ...]) -> Sheet:
    """The first sheet, in front of these. `cautions` are those of chapters that were left out."""
    there = {log.key: _link_to(sheet, log.key) for sheet in sheets for log in sheet.logs if log.inputs}
    bands = (*_note(settings), band(Prose(sentences=STEPS, is_small=True)), _entrances(), *_bands(there, cautions))
    holders = (check(proofs), glance(), look(there), projects(settings), lots(settings))
    return Sheet(SHEET, settings.title, "Type in tinted cells. Everything else is worked out.", (Chapter(SHEET, holders, bands),), SheetKind.DESK)


def _link_to(sheet: Sheet, log: str) -> Link:
    """The link to the head of a log, under the name of its chapter, or under its own if it is not the first there."""
    chapter = next(chapter for chapter in sheet.chapters if any(holder.key == log for holder in chapter.holders))
    first, *others = (holder for holder in chapter.holders if isinstance(holder, Log) and holder.inputs)
    name = chapter.name if first.key == log else next(each.title for each in others if each.key == log)
    return Link(sheet.name, name, f"{log}_{FIRST.key}")


def _note(settings: Settings) -> tuple[Band, ...]:
    """The note of a guild to those who open its planner."""
    paragraphs = tuple(line.strip() for line in settings.note.split("\n") if line.strip())
    return (band(Prose(title=NOTE, sentences=paragraphs, is_verbatim=True)),) if paragraphs else ()


NOTE = "Before you begin"


# ------------------------------------------------------------------ entrances
def _entrances() -> Band:
    entrances = (
        Entrance(link=Link(tabs.MEASURE, "Measure a skein"), number="glance_length", counts="glance_skeins_words", across=(1, 3),
             more_links=(Link(tabs.SKEINS, "the log"), Link(tabs.PRINT, "labels"))),
        Entrance(link=Link(tabs.LOT, "Follow a fleece"), number="glance_to_come", counts="glance_lots_words", across=(4, 6),
             more_links=(Link(tabs.FIBER, "the log"), Link(tabs.FLEECE, "buy, wash, dye"))),
        Entrance(link=Link(tabs.PROJECT, "Plan a project", "project_name"), number="glance_projects", counts="glance_projects_words", across=(7, 9),
             more_links=(Link(tabs.PROJECTS, "the log"), Link(tabs.TIME, "hours, cost"))),
        Entrance(link=Link(tabs.REFERENCE, "Look something up"), number="glance_words", counts="glance_words_words", across=(10, 12),
             more_links=(Link(tabs.TWIST, "yarn numbers"), Link(tabs.YARN, "design"))),
    )
    return Band(entrances)


def glance() -> Card:
    """The number at each entrance."""
    return Card("glance", "", groups=(
        Group("", (
            *totals.in_stock(),
            Result("skeins_words", "In words",
                   'IF(skeins = 1, "in 1 skein, ", "in " & said(skeins) & " skeins, ") & IF(unweighed = 0, said_in_all(mass), IF(unweighed = skeins, "not weighed", '
                   'said_in_all(mass) & ", " & said(unweighed) & " not weighed"))',
                   stock_words.skeins_in_words, None, uses={"count": "skeins"}),
            Result("to_come", "Yarn to spin", "sum(fiber_to_come)", records.sum_of, MASS, uses={"amounts": "fiber_to_come"}),
            Result("lots", "Lots with something left", 'COUNTIF(fiber_to_come, ">=" & 0.001)', overview.how_many_above_nothing, NUMBER, uses={"amounts": "fiber_to_come"},
                   digits=0),
            Result("lots_words", "In words",
                   'IF(lots = 1, "of yarn still in 1 lot", "of yarn still in " & said(lots) & " lots") '
                   '& IF(lot_sums_unknown > 0, ", " & said(lot_sums_unknown) & " not known", "")',
                   stock_words.lots_in_words, None, uses={"count": "lots", "unknown": "lot_sums_unknown"}),
            Result("enough", "Projects with enough yarn", "SUMPRODUCT((projects_open_chance >= doubts_certainty) * (projects_open_chance <= 1))", overview.how_many_enough, NUMBER,
                   uses={"chances": "projects_open_chance", "certainty": "doubts_certainty"}, digits=0),
            Result("projects", "Projects", 'said(enough) & " of " & COUNT(projects_open_chance)', desk_words.so_many_of, None, uses={"chances": "projects_open_chance"}),
            Result("unanswered", "Projects not known", 'SUMPRODUCT((projects_listed <> "") * (projects_verdict = ""))', overview.how_many_unknown, NUMBER,
                   uses={"names": "projects_listed", "values": "projects_verdict"}, leaves=("fates",), digits=0),
            Result("projects_words", "In words",
                   'IF(COUNT(projects_open_chance) = 1, "open project has enough", "open projects have enough") '
                   '& IF(unanswered > 0, ", " & said(unanswered) & " not known", " yarn")',
                   desk_words.projects_in_words, None, uses={"chances": "projects_open_chance"}),
            Result("words", "Words on the sheet Reference", "COUNTA(glossary_word)", agreement.how_many, NUMBER, uses={"verdicts": "glossary_word"}, digits=0),
            Result("words_words", "In words", 'IF(words = 1, "word explained", "words explained")', desk_words.words_explained, None, uses={"count": "words"}),
        )),
    ))


# ------------------------------------------------------------------ what is there
def projects(settings: Settings) -> Log:
    """The first few projects of their log."""
    return Log("first_projects", "", rows=min(PROJECTS_SHOWN, settings.rows.projects), groups=(
        Group("", (
            Result("name", "Project", 'INDEX(projects_listed, line) & ""', overview.nth, None, uses={"names": "projects_listed", "place": "line"},
                   only_if="line <= COUNTA(projects_listed)"),
            *(of_project(key, label, column, unit, digits) for key, label, column, unit, digits in (
                ("needs", "needs", "need", LENGTH, 0), ("has", "has", "open_have", LENGTH, 0), ("chance", "chance", "chance_words", None, None),
            )),
            Result("words", "in words", 'or_else(verdict, IF(LEN(name) > 0, "no answer yet", ""))', desk_words.verdict_in_words, None),
        )),
        Group("Out of sight", (of_project("verdict", "Verdict", "verdict"), of_project("doubt", "±, standard", "doubt_have", LENGTH, 0),
                                Result("within", "give or take", "2 * doubt", chart_bars.give_or_take, LENGTH, digits=0)), printed=False),
    ))


def lots(settings: Settings) -> Log:
    """The first few lots of their log."""
    return Log("first_lots", "", rows=min(LOTS_SHOWN, settings.rows.fiber), groups=(
        Group("", (
            Result("name", "Lot", 'INDEX(fiber_listed, line) & ""', overview.nth, None, uses={"names": "fiber_listed", "place": "line"},
                   only_if="line <= COUNTA(fiber_listed)"),
            *(of_lot(key, label, column, unit, digits, chosen="name") for key, label, column, unit, digits in (
                ("skeins", "own skeins", "skeins", NUMBER, 0), ("spun", "in them", "spun_length", LENGTH, 0), ("mass", "spun", "spun", MASS, 1),
                ("to_come", "left", "to_come", MASS, 1), ("promised", "promised", "promised", SHARE, 0),
            )),
        )),
    ))


ENOUGH = Listing(
    title="Is it enough?", block="first_projects", across=(1, 8), view=LogView("", (("", "name . needs has chance . . words"),)),
    chart=Chart(
        across=(6, 7), kind="bars", rows=PROJECTS_SHOWN, categories=("first_projects_name",),
        series=(Series("has", ("first_projects_has",), whisker=("first_projects_within",)), Series("needs", ("first_projects_needs",), look="straw")),
        about="Two bars a project: what it has, with its give or take, and below it what it needs.",
    ),
)
LOT_BY_LOT = Listing(title="Lot by lot", block="first_lots", across=(1, 8), view=LogView("", (("", "name . skeins spun mass to_come promised"),)))


# ------------------------------------------------------------------ what needs a look
def look(there: dict[str, Link]) -> Card:
    """A line for each log: how many calculated cells were emptied or typed over, or the first thing that is wrong."""
    program = Result(
        "program", "", 'IF(start_agreeing = start_examples, "computes the planner correctly", "do not rely on it: " & (start_examples - start_agreeing) '
                       '& IF(start_examples - start_agreeing = 1, " check fails", " checks fail"))',
        desk_words.program_in_words, None, uses={"agreeing": "start_agreeing", "total": "start_examples"},
    )
    return Card("look", "", groups=(Group("", (program, *(_look(key) for key in there))),))


def _look(log: str) -> Result:
    first, wrong, questions, unfinished, spoiled = (f"{log}_{each.key}" for each in (FIRST, OPEN, QUESTIONS, UNFINISHED, SPOILED))
    asked = f'IF({questions} > 0, {questions} & IF({questions} = 1, " question", " questions"), "")'
    lacking = f'IF({unfinished} > 0, {unfinished} & " unfinished", "")'
    both = f'{asked} & IF(AND({questions} > 0, {unfinished} > 0), ", ", "") & {lacking}'
    return Result(
        log, "", f'IF({spoiled} > 0, said({spoiled}) & IF({spoiled} = 1, " worked-out cell was", " worked-out cells were") '
                 f'& " emptied, typed over or moved: undo it, or carry the planner over", '
                 f'IF(given({first}), IF({wrong} > 0, {first}, {both}), "nothing"))',
        desk_words.needs_a_look, None, uses={"spoiled": spoiled, "wrong": wrong, "questions": questions, "unfinished": unfinished, "first": first},
    )


def _bands(there: dict[str, Link], cautions: tuple[str, ...]) -> tuple[Band, ...]:
    own = [key for key in ("skeins", "reels", "fiber", "samples", "projects") if key in there]
    looks = _looks("Needs a look", own, there, ("look_program", Link(tabs.REFERENCE, "This program")))
    others = _looks("Or on another sheet", [key for key in there if key not in own], there)
    tables = [each for each, key in ((ENOUGH, "projects"), (LOT_BY_LOT, "fiber")) if key in there]
    beside = [each for each in (looks, others) if each.places]
    return (
        *(band(*pair) for pair in (tuple(each for each in both if each) for both in zip_longest(tables, beside))),
        band(Sentences(title="Does this program compute right?", fields=("start_trust",))),
        band(Prose(title="Take care", sentences=(*CAUTIONS, *cautions), is_caution=True, is_small=True)),
        band(Prose(title="Good to know", sentences=KEY, is_small=True)),
    )


def _looks(title: str, logs: list[str], there: dict[str, Link], *more: tuple[str, Link]) -> Alerts:
    return Alerts(title=title, across=(10, 12), places=(*more, *((f"look_{key}", there[key]) for key in logs)))


STEPS = (
    "1. Reels: give each reel its loop.   2. Skeins: type wraps, weight and project of each skein.   "
    "3. Projects: type the yarn wanted and choose the lot.",
)
KEY = (
    "A tinted cell is yours: type there. All else is worked out, empty until what it needs is there, and refuses to be typed into. "
    "A cell that was emptied or pasted over is reported above.",
    "A red ! at the left of a line means that something in it cannot be right, ? that it is not as usual, … that something is still missing. "
    'The head of the log says what for one line; for each of them, the + at "what to look at". Other lines are not touched by it.',
    "Type percentages with the sign: 15%. Parts of a number as 9.25 or 9 1/4. A weight in pounds and ounces may be typed as a sum: =6*16+4.",
    "Paste values only, so that the cells keep their look. Do not cut or drag a cell: the formulas follow it to its new place. If it happened, undo it. "
    "A line that the program fills down may have its numbers counted up: look at them.",
    "To sort a log, select whole lines, from the first column to the last, and sort. No line needs inserting: type below the last, then sort. "
    "The + above the columns opens what is folded away.",
    "On paper a log has its first 24 lines, or those that were in use when the planner was built and eight more: for others, set the print range.",
    "If a sheet is wider than your window, hold Ctrl and turn the mouse wheel: then it fits.",
    "Not every program computes the planner right. If the line This program says that yours does not, open it in another.",
)


def check(proofs: str) -> Card:
    """How many checks of the sheet Reference this program gets right, of how many."""
    return Card(
        "start",
        "Is this program right?",
        groups=(
            Group("Proofs", (
                Result("agreeing", "Checks that agree", 'COUNTIF(proofs_verdict, "agrees")', agreement.how_many_agree, NUMBER,
                       uses={"verdicts": "proofs_verdict"}, digits=0, note=f"of {proofs}"),
                Result("examples", "Checks in all", "COUNTA(proofs_verdict)", agreement.how_many, NUMBER,
                       uses={"verdicts": "proofs_verdict"}, digits=0),
                Result("trust", "In words",
                       'IF(agreeing = examples, "This program computes the planner correctly.", '
                       '"Do not rely on the numbers here: " & (examples - agreeing) & " of " & examples & " checks fail in this program.")',
                       agreement.trust, None, uses={"total": "examples"}),
            )),
        ),
    )


CAUTIONS = (
    "Hot water: at 60 °C (140 °F) it scalds in less than 5 seconds, at 49 °C (120 °F) in minutes, and children sooner. Long gloves, tools, a lid, and nobody lifts a full pot.",
    "Raw fleece: its dust and dirt can carry disease (Q fever, orf, ringworm, anthrax where it occurs). Wear gloves and a dust mask, "
    "work wet or outdoors, wash your hands, do not eat there. If you are pregnant, your defenses are weak, or a heart valve is damaged, keep away and ask a doctor.",
    "Detergent, soda, mothproofing and dye: follow the label of the product. Do not mix products; keep pots for dyeing apart from food.",
    "Grease in drains: it sets when it cools. Strain the water, and follow your local rules for waste water and septic tanks.",
    "Moving parts: keep hair, sleeves, cords and children's fingers away from wheel, flyer, carder and picker. Combs, hackles and pickers are sharp: cover their teeth.",
    "Long work: change posture, stand up and stretch every half hour; stop when wrist, shoulder or back hurts.",
    "These are the usual cautions. Local codes, product labels, and licensed practice come before anything on these sheets.",
)
