"""Planners in which projects share lots and strands, as they do once one lives with a planner.

Blind drawing hardly ever comes to it: two projects must take of one lot that still has
something left, a design must have strands of which each is known to the last figure, and a
label several fibers, all with their names.
So these sets begin with a small household of ours (invented), whose lines stand in another
order each time; most amounts are drawn anew around what they were, and some cells are left out.
"""

from collections.abc import Mapping
from random import Random

from workbookgen.checking.scenarios import scenario
from workbookgen.language.entries import Entries, Entry, with_records
from workbookgen.language.planner import Planner

PREPARED, THREAD = "prepared fiber", "yarn or thread"
FIBERS = (
    {"name": "Moor sheep", "on_labels": "wool"},
    {"name": "Hill sheep", "on_labels": "wool"},
    {"name": "Cocoon", "on_labels": "silk"},
    {"name": "Stalk", "on_labels": "linen"},
    {"name": "Goat", "on_labels": "mohair"},
)
LOTS = (
    {
        "name": "Bracken",
        "state": PREPARED,
        "weight": 30.0,
        "grist": 1500.0,
        "own_spinning": 0.05,
        "kind": "Moor sheep",
        "also_kind": "Goat",
        "also_share": 0.2,
        "third_kind": "Cocoon",
        "third_share": 0.1,
    },
    {
        "name": "Heath",
        "state": PREPARED,
        "weight": 18.0,
        "grist": 1500.0,
        "own_spinning": 0.08,
        "kind": "Hill sheep",
        "also_kind": "Stalk",
        "also_share": 0.25,
    },
    {
        "name": "Fog",
        "state": PREPARED,
        "weight": 22.0,
        "grist": 1400.0,
        "own_spinning": 0.04,
        "kind": "Goat",
        "also_kind": "Hill sheep",
        "also_share": 0.4,
        "third_kind": "Stalk",
        "third_share": 0.04,
    },
    {"name": "Spark", "state": THREAD, "weight": 9.0, "grist": 6000.0, "kind": "Cocoon"},
)
DESIGNS = ({"name": "Moorland", "wanted": 1200.0}, {"name": "Drizzle", "wanted": 700.0})
YARDS = "yards per pound"
STRANDS = (
    {
        "design": "Moorland",
        "name": "Brown",
        "number": 3000.0,
        "system": YARDS,
        "place": 1.0,
        "lot": "Bracken",
        "other_lot": "Heath",
        "package": 300.0,
    },
    {
        "design": "Moorland",
        "name": "Gray",
        "number": 2800.0,
        "system": YARDS,
        "place": 2.0,
        "lot": "Fog",
        "feed": 1.05,
        "package": 250.0,
    },
    {
        "design": "Moorland",
        "name": "Heather",
        "number": 3200.0,
        "system": YARDS,
        "place": 3.0,
        "lot": "Heath",
        "other_lot": "Fog",
        "package": 200.0,
    },
    {
        "design": "Moorland",
        "name": "Glint",
        "number": 9000.0,
        "system": YARDS,
        "place": 4.0,
        "lot": "Spark",
        "feed": 1.2,
        "package": 500.0,
    },
)
PROJECTS = (
    {"name": "Coat", "wanted": 900.0, "design": "Moorland", "package": 200.0, "margin": 0.1, "bobbins": 4.0},
    {"name": "Shawl", "wanted": 400.0, "design": "Moorland", "margin": 0.15, "need_doubt": 0.1},
    {"name": "Socks", "wanted": 350.0, "lot_1": "Bracken", "lot_2": "Fog", "grist": 1500.0, "package": 150.0},
    {"name": "Hat", "wanted": 200.0, "lot_1": "Heath", "grist": 1300.0},
)
SKEINS = (
    {"name": "One", "reel": "Frame", "wraps": 60.0, "gross": 2.1, "design": "Moorland", "project": "Coat"},
    {"name": "Two", "reel": "Frame", "wraps": 45.0, "gross": 1.6, "design": "Moorland"},
    {"name": "Three", "reel": "Frame", "wraps": 50.0, "gross": 1.5, "lot": "Bracken", "project": "Socks"},
    {"name": "Four", "reel": "Frame", "wraps": 40.0, "gross": 1.4, "lot": "Heath"},
)
LABELS = tuple({"skein": skein, "words": "Wash by hand."} for skein in ("One", "Two", "Three", "Four"))
REELS = ({"name": "Frame", "rated": 72.0, "tolerance": 0.2},)
HOUSEHOLD = {
    "reels": REELS,
    "guide": FIBERS,
    "fiber": LOTS,
    "designs": DESIGNS,
    "components": STRANDS,
    "projects": PROJECTS,
    "skeins": SKEINS,
    "labels": LABELS,
}
NAMED, KEPT = ("name", "design", "lot", "state", "system", "place", "reel", "on_labels", "kind", "skein"), ("place",)
ANEW, SPREAD, LEFT_OUT, ELSEWHERE, LARGEST = 0.7, 0.5, 0.06, 0.3, 0.49


def shared(planner: Planner, seed: int) -> Entries:
    """A set of the check, in which this household has its logs."""
    draw = Random(seed)
    entries = dict(scenario(planner, seed))
    for log, records in HOUSEHOLD.items():
        lines = [_changed(each, draw) | _elsewhere(each, draw) for each in records]
        draw.shuffle(lines)
        entries = with_records(planner, entries, log, lines)
    if draw.random() < 0.85:  # the doubts and the plan's figures as a new planner brings them
        entries |= {f"doubts_{each.key}": (each.first(planner.system),) for each in planner.blocks["doubts"].inputs}
    return entries


def _changed(record: Mapping[str, Entry], draw: Random) -> dict[str, Entry]:
    def value(key: str, usual: Entry) -> Entry:
        if key not in NAMED and draw.random() < LEFT_OUT:
            return None
        if isinstance(usual, str) or key in KEPT or draw.random() > ANEW:
            return usual
        changed = round(usual * 2.0 ** draw.gauss(0, SPREAD), 3)
        if key.endswith("_share"):  # of two other fibers, which must leave something for the main one
            return min(changed, LARGEST)
        return max(1.0, round(changed)) if key == "bobbins" else max(1.0, changed) if key == "feed" else changed

    return {key: value(key, usual) for key, usual in record.items()}


def _elsewhere(record: Mapping[str, Entry], draw: Random) -> dict[str, Entry]:
    """Other lots for some of those that are chosen."""
    chosen = [key for key in ("lot", "other_lot", "lot_1", "lot_2") if key in record]
    return {key: draw.choice(LOTS)["name"] for key in chosen if draw.random() < ELSEWHERE}
