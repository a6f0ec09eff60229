"""No published value is lost: each is proven in the planner, or elsewhere, or left out for a reason.

published_rows.csv lists them all. The topic "further" names values that were taken in on the
way.
"""

from collections import Counter

from workbookgen.sheets.proofs import read_proofs

from .rows import table

ROWS = table("published_rows.csv")
LOOKED_AT = {  # published values collected before any was computed, by topic
    "units": 15,
    "yarn_count": 38,
    "yarn_diameter": 25,
    "skein_method": 10,
    "reeling": 4,
    "moisture_regain": 26,
    "wool_yield": 22,
    "fiber": 1,
    "scouring": 14,
    "uncertainty": 27,
    "resultant_count": 20,
    "twist": 23,
    "plying": 1,
    "knit_crochet": 38,
    "knitting": 1,
    "weaving": 23,
}


def ids(*places: str) -> list[str]:
    return sorted(row["id"] for row in ROWS if row["where"] in places)


def test_none_is_missing_and_none_stands_twice():
    assert Counter(row["topic"] for row in ROWS if row["topic"] in LOOKED_AT) == LOOKED_AT
    assert max(Counter(row["id"] for row in ROWS).values()) == 1


def test_what_the_planner_proves_is_on_the_sheet_proofs_and_nothing_else():
    proven, listed = {proof.number for proof in read_proofs()}, set(ids("planner"))
    assert proven - listed == set(), (
        "each example of proofs.csv needs a line in published_rows.csv: NUMBER,further,planner,"
    )
    assert listed - proven == set(), "published_rows.csv has these in the planner, and proofs.csv does not"


def test_what_is_proven_elsewhere_has_its_row_there():
    elsewhere = table("published_elsewhere.csv")
    assert ids("library", "table") == sorted(row["id"] for row in elsewhere)
    assert ids("table") == sorted(row["id"] for row in elsewhere if row["call"] in ("fibers", "help"))


def test_only_what_is_left_out_needs_a_reason():
    assert [row["id"] for row in ROWS if row["where"] not in {"planner", "library", "table", "left out"}] == []
    assert [row["id"] for row in ROWS if bool(row["reason"].strip()) != (row["where"] == "left out")] == []
