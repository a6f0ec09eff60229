"""A planner of two logs and a card, described for tests and small enough to work out by hand.

Its sheets are "Reels", "Skeins", "Work" and "Facts". A log's first record stands in row 8 and its
first column is B; a page's first band begins in row 5, where a card's inputs stand in D and its
results in K; so every cell that a test names can be told by counting. Nothing here is meant for spinning.
"""

from collections.abc import Callable

from workbookgen.language.domains import Choice, Name, Note, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Block, Card, Chapter, Column, Log, Sheet, Table
from workbookgen.language.planner import Planner
from workbookgen.language.quantities import LENGTH, LOOP, MASS, NUMBER_UNIT, SHARE, THREADS
from workbookgen.language.repeated import repeated
from workbookgen.language.rules import Rule
from workbookgen.language.views import Facts, LogView, SheetKind, band
from workbookgen.reference import records
from workbookgen.sheets.card_view import asked_and_answered
from workbookgen.units import Quantity

ANY = Number(above=0, most=1000)


def a_hundred(loop):
    return 100 * loop


def on_the_reel(wraps, loop, rest=Quantity(0.0, "meter")):  # noqa: B008  nobody changes it
    return wraps * loop + rest


def share_kept(start, end):
    """Refuses what cannot be, and with it every record of the same call."""
    if (end > start).any():
        raise ValueError("No fiber grows.")
    return end / start


def with_margin(wanted, margin=0.1):
    return wanted * (1 + margin)


def in_use(counted=None, usual=None):
    if counted is None and usual is None:
        raise ValueError("Nothing is known.")
    return usual if counted is None else counted


def size(wraps):
    return [
        "fine" if each >= 20 else "middle" if each >= 10 else "thick" for each in wraps.to("1/inch").magnitude
    ]


COUNTING = Table("lists", "Counting", (Column("number", "Number", (1.0, 2.0, 3.0, 4.0), NUMBER_UNIT),))
SIZES = Table(
    "sizes",
    "Sizes",
    (Column("name", "Size", ("thick", "middle", "fine")), Column("from", "From", (0.0, 10.0, 20.0), THREADS.customary)),
)

# Reels!B8:F10 (the mark in A, the message behind them).
REELS = Log(
    "reels",
    "",
    groups=(
        Group("Typed", (
            Input("name", "Reel", Name(longest=12), needed=True),
            Input("loop", "Loop", ANY, LOOP, needed=True),
        )),
        Group("Worked out", (
            Result("hundred", "A hundred turns", "100 * loop", a_hundred, LENGTH),
            repeated("listed", "Listed as", "name"),
            Result("wound", "Wound on it", "sum_where(skeins_length, skeins_wound_on, name)", records.sum_where, LENGTH,
                   uses={"amounts": "skeins_length", "names": "skeins_wound_on"}),
        )),
    ),
    rows=3,
)

# Skeins!B8:N11 (the mark in A, the message behind them).
SKEINS = Log(
    "skeins",
    "",
    groups=(
        Group("Typed", (
            Input("reel", "On the reel", Choice("reels_listed", "Reels"), needed=True),
            Input("wraps", "Wraps", Number(least=0, most=5000), needed=True),
            Input("rest", "Rest", Number(least=0, below=100), LENGTH, blank_means=0),
            Input("start", "Fiber", ANY, MASS),
            Input("end", "Yarn", ANY, MASS),
            Input("counted", "Counted", ANY, THREADS),
            Input("note", "Note", Note(longest=20)),
        )),
        Group("Worked out", (
            Result("loop", "Loop", "lookup(reels_loop, reels_listed, reel)", records.lookup, LOOP,
                   uses={"values": "reels_loop", "names": "reels_listed", "name": "reel"}),
            Result("length", "Length", "wraps * loop + rest", on_the_reel, LENGTH),
            repeated("wound_on", "Wound on", "reel"),
            Result("kept", "Kept", "end / start", share_kept, SHARE, only_if="end <= start"),
            Result("wpi", "In use", "IF(given(counted), counted, plan_usual)", in_use, THREADS,
                   uses={"usual": "plan_usual"}, only_if="OR(given(counted), given(plan_usual))"),
            Result("size", "Size", "class_of(sizes_name, sizes_from, wpi)", size, None, uses={"wraps": "wpi"}),
        )),
    ),
    rules=(Rule("end > start", lambda values: values["end"] > values["start"], "Yarn: more than the fiber."),),
    rows=4,
)

# Work: inputs in D6:D8, the message in I6, the result in K7.
PLAN = Card(
    "plan",
    "",
    groups=(
        Group("Typed", (
            Input("wanted", "Wanted", ANY, LENGTH, needed=True),
            Input("margin", "Margin", Number(least=0, most=2), SHARE, blank_means=0.1),
            Input("usual", "Usual count", ANY, THREADS),
        )),
        Group("Worked out", (Result("need", "Needed", "wanted * (1 + margin)", with_margin, LENGTH),)),
    ),
)


def planner_of(*blocks: Block, system: str = "metric") -> Planner:
    """A planner with a sheet for each log, one for all cards, and the facts that every planner needs."""
    logs = tuple(each for each in blocks if isinstance(each, Log))
    cards = tuple(each for each in blocks if not isinstance(each, Log))
    return Planner(
        system,
        "a4",
        "Tried out",
        (
            *(Sheet(log.key.capitalize(), "A log", "For tests.", (Chapter(log.key, (log,), view_of(log)),), SheetKind.LOG) for log in logs),
            *([Sheet("Work", "Cards", "For tests.", tuple(Chapter(card.key, (card,), (asked_and_answered(card),)) for card in cards))] if cards else []),
            Sheet("Facts", "Facts", "For tests.", (Chapter("Facts", (SIZES, COUNTING), (band(Facts(table="sizes")),)),)),
        ),
    )


def view_of(log: Log) -> LogView:
    """All inputs, then all results, and nothing folded."""
    results = " ".join(each.key for each in log.results)
    return LogView(" ".join(each.key for each in log.inputs), (("Worked out", results),) if results else ())


def whole(system: str = "metric") -> Planner:
    """The planner of all the parts above."""
    return planner_of(REELS, SKEINS, PLAN, system=system)


def one_result(formula: str, reference: Callable, **how) -> Result:
    """A length worked out by a formula, for what is said about formulas alone."""
    return Result("outcome", "Outcome", formula, reference, **{"unit": LENGTH} | how)
