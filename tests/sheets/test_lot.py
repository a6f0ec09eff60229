"""What the sheet Lot says of how far a lot is spun, by hand.

Two skeins of 200 yd and 2.6 oz are plied of a single and of a thread of 6,000 yd/lb, fed 1.05 to 1: 420 yd of it are
1.12 oz, so that 5.2 - 1.12 = 4.08 oz are of the single.
"""

import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.settings import Settings

US = described(Settings(units="us"))
TOP = {"name": "Top", "state": "prepared fiber", "weight": 40.0, "own_spinning": 0.05}
CONE = {"name": "Cone", "state": "yarn or thread", "weight": 8.0}
STRANDS = [
    {"design": "Tweed", "name": "Single", "number": 2000.0, "system": "yards per pound", "place": 1.0, "lot": "Top"},
    {"design": "Tweed", "name": "Thread", "number": 6000.0, "system": "yards per pound", "place": 2.0, "lot": "Cone", "feed": 1.05},
]
SKEIN = {"reel": "Reel", "wraps": 100.0}
PLIED = [SKEIN | {"name": f"T {place}", "gross": 2.6, "design": "Tweed"} for place in (1, 2)]
OWN = [SKEIN | {"name": "S", "gross": 12.0, "lot": "Top"}]


def said(lot, skeins, top=TOP):
    logs = {"reels": [{"name": "Reel", "rated": 72.0}], "fiber": [top, CONE], "designs": [{"name": "Tweed"}], "components": STRANDS, "skeins": skeins}
    entries = entries_with(US, logs) | {"way_lot": (lot,)}
    [values] = expected_of_keys(US, [entries], ["way_spun_words", "way_skeins"])
    return values["way_spun_words"][0], values["way_skeins"][0]


@pytest.mark.parametrize(("lot", "skeins", "words", "number"), [
    ("Top", OWN, "12 oz is spun, 26 oz still to spin.", 1),
    ("Top", PLIED, "4.1 oz is spun, 4.1 oz of it in skeins of designs, 33.9 oz still to spin.", 0),
    ("Top", [*OWN, *PLIED], "16.1 oz is spun, 4.1 oz of it in skeins of designs, 21.9 oz still to spin.", 1),
    ("Cone", PLIED, "1.1 oz is used, 1.1 oz of it in skeins of designs, 6.9 oz is left.", 0),
])
def test_what_lies_in_skeins_of_designs_is_said_beside_a_lots_own(lot, skeins, words, number):
    """A lot with no skein of its own showed 0 skeins and 0 yd beside its ounces, and a thread was still to spin."""
    assert said(lot, skeins) == (words, number)


def test_a_lot_whose_yarn_was_weighed_has_nothing_to_spin():
    """Of 38 oz of yarn 12 lie in a skein: the others were told as still to spin."""
    assert said("Top", OWN, TOP | {"yarn_weighed": 38.0})[0] == "38 oz is spun, 26 oz of it in no skein yet."


@pytest.mark.parametrize(("lot", "words"), [("Top", "What is still to spin is "), ("Cone", "What is left is ")])
def test_what_is_left_of_a_thread_is_not_spun(lot, words):
    entries = starting_entries(US) | {"way_lot": (lot,)}
    entries = with_records(US, entries, "fiber", [each | {"grist": 1000.0} for each in (TOP, CONE)])
    [values] = expected_of_keys(US, [entries], ["way_enough_words"])
    assert values["way_enough_words"][0].startswith(words)


@pytest.mark.parametrize(("wanted", "words"), [(0.0, ""), (950.0, " Projects take 40% of it."), (2850.0, " Projects take 120% of it, which is more than there is.")])
def test_what_projects_take_of_a_lot_is_said_beside_what_it_is_enough_for(wanted, words):
    """By hand: 40 oz of top give 38 oz of yarn, 2,375 yd at 1,000 yd/lb. What a vest takes of it stood in the table
    alone, below a sentence that gave all of the lot to another piece."""
    vest = [{"name": "Vest", "wanted": wanted, "margin": 0.0, "lot_1": "Top"}] if wanted else []
    entries = entries_with(US, {"fiber": [TOP | {"grist": 1000.0}], "projects": vest}) | {"way_lot": ("Top",)}
    [values] = expected_of_keys(US, [entries], ["way_enough", "way_enough_words"])
    assert values["way_enough_words"][0] == f"What is still to spin is {values['way_enough'][0]}.{words}"


@pytest.mark.parametrize(
    ("state", "expected"),
    [
        # 40 oz of which nothing is known but how it was bought: it lost nothing at the stages before.
        ("raw fleece", (None, None, None, None)),
        ("skirted fleece", (40.0, None, None, None)),
        ("washed fiber", (40.0, 40.0, None, None)),
        ("prepared fiber", (40.0, 40.0, 40.0, None)),
        ("yarn or thread", (40.0, 40.0, 40.0, 40.0)),
    ],
)
def test_what_was_bought_later_lost_nothing_before(state, expected):
    """Of a top, Washed was blank between Skirted and Prepared, since no yield of it is known."""
    entries = with_records(US, starting_entries(US) | {"way_lot": ("Bag",)}, "fiber", [{"name": "Bag", "state": state, "weight": 40.0}])
    keys = [f"way_expected_{stage}" for stage in ("skirted", "washed", "prepared", "yarn")]
    [values] = expected_of_keys(US, [entries], keys)
    assert tuple(values[key][0] and round(values[key][0], 9) for key in keys) == expected


@pytest.mark.parametrize(("lot", "words"), [
    ({"own_spinning": 0.03, "prepared_weighed": None, "state": "washed fiber", "own_preparation": 0.05, "yarn_weighed": 10.0}, "Far less is left than expected."),
    ({"weight": 2400.0}, "Weight: usually"),
    ({}, None),
])
def test_what_the_log_asks_about_a_lot_stands_beside_its_answers(lot, words):
    """Half of a lot, weighed for the whole, was told as all of it; only the log asked."""
    entries = with_records(US, starting_entries(US) | {"way_lot": ("Top",)}, "fiber", [TOP | lot])
    [values] = expected_of_keys(US, [entries], ["way_log_says", "way_words"])
    told = values["way_log_says"][0]
    assert (told.startswith(f"Is it right? {words}") if words else told is None) and values["way_words"][0]
