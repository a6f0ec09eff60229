"""Fiber content on a label, against the examples that the rules print and a plain count of its own.

The examples of 16 CFR 300 and 303 were read in texts of the Code of Federal Regulations; a
handbook of labels is the witness of "97 % wool, 3 % cashmere".
"""

from fractions import Fraction
from itertools import pairwise
from random import Random

import pytest

from long_run import SEED
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.reference import content
from workbookgen.settings import Rows, Settings

US = described(Settings(fibers="", rows=Rows(guide=14, fiber=12, skeins=12, designs=4, components=12, labels=12)))
MANY = described(Settings(fibers="", rows=Rows(guide=14, fiber=60, skeins=60, labels=60)))
ARE_WOOL = {"wool", "mohair", "cashmere", "alpaca", "recycled wool"}
NAMES = (
    "wool",
    "mohair",
    "cashmere",
    "silk",
    "cotton",
    "nylon",
    "linen",
    "alpaca",
    "viscose",
    "acetate",
    "rayon",
    "recycled wool",
)
FIBERS = [{"name": f"{name} fleece" if name == "wool" else name.upper(), "on_labels": name} for name in NAMES] + [
    {"name": "A breed", "on_labels": "wool"},
    {"name": "Unheard of"},
]
OF = {record.get("on_labels"): record["name"] for record in FIBERS[:12]}


def told(lots, components=(), skein=None, field="content_is"):
    """What the planner tells of one skein of these lots, strands and log entry."""
    entries = with_records(US, starting_entries(US), "guide", FIBERS)
    entries = with_records(US, entries, "fiber", [{"state": "prepared fiber", "weight": 10.0} | lot for lot in lots])
    entries = with_records(US, entries, "designs", [{"name": "Design"}])
    entries = with_records(US, entries, "components", [{"design": "Design"} | each for each in components])
    entries = with_records(
        US,
        entries,
        "skeins",
        [{"name": "One", "reel": "R", "wraps": 1.0} | ({"lot": lots[0]["name"]} if skein is None else skein)],
    )
    entries = with_records(US, entries, "labels", [{"skein": "One"}])
    key = f"labels_{field}"
    return expected_of_keys(US, [entries], [key])[0][key][0]


def of_shares(*fibers):
    """What is told of a lot of these fibers: (name, share), up to three."""
    (main, _), *others = fibers
    lot = {"name": "Lot", "kind": OF[main]}
    for key, (name, share) in zip(("also", "third"), others, strict=False):
        lot |= {f"{key}_kind": OF[name], f"{key}_share": share}
    return told([lot])


@pytest.mark.parametrize(
    "fibers, words",
    [
        ([("wool", 1.0)], "100% wool"),  # 16 CFR 300.17: "100% Wool" where it is wholly of one fiber
        ([("mohair", 0.5), ("wool", 0.5)], "50% mohair, 50% wool"),  # 300.19 (b)
        ([("cotton", 0.6), ("cashmere", 0.4)], "60% cotton, 40% cashmere"),  # 300.19 (b), there recycled
        # A guide to the Wool Act: specialty fibers are wool.
        ([("wool", 0.97), ("cashmere", 0.03)], "97% wool, 3% cashmere"),
        # 300.16 (a).
        ([("wool", 0.5), ("recycled wool", 0.25), ("cotton", 0.25)], "50% wool, 25% recycled wool, 25% cotton"),
        ([("cotton", 0.97), ("wool", 0.03)], "97% cotton, 3% wool"),  # 15 U.S.C. 68b: wool of any share (from memory)
        ([("cotton", 0.96), ("nylon", 0.04)], "96% cotton, 4% other fiber"),  # 303.3, 303.42 (a)
        ([("cotton", 0.93), ("nylon", 0.04), ("silk", 0.03)], "93% cotton, 7% other fibers"),
        ([("cotton", 0.95), ("nylon", 0.05)], "95% cotton, 5% nylon"),  # 303.6 (a): 5 per centum or more
        ([("silk", 0.2), ("wool", 0.8)], "80% wool, 20% silk"),  # 303.42 (a): in order of predominance
        # The wool is the rest; never 0%, and never 100% of what is not wholly of it.
        ([("wool", 0.0), ("silk", 0.998)], "99% silk, 1% wool"),
    ],
)
def test_as_the_rules_have_it(fibers, words):
    assert of_shares(*fibers) == words


def test_two_breeds_are_one_wool():
    strands = [
        {"place": 1.0, "number": 10.0, "system": "tex", "lot": "First"},
        {"place": 2.0, "number": 10.0, "system": "tex", "lot": "Second"},
    ]
    lots = [{"name": "First", "kind": "A breed"}, {"name": "Second", "kind": "wool fleece"}]
    assert told(lots, strands, {"design": "Design"}) == "100% wool"


def test_strands_count_by_their_weight():
    # 2 × 40 tex of wool and 1 × 20 tex of a thread that is half silk, half cotton: 80, 10 and 10 of 100.
    strands = [
        {"place": 1.0, "number": 40.0, "system": "tex", "strands": 2.0, "lot": "Fleece"},
        {"place": 2.0, "number": 20.0, "system": "tex", "lot": "Thread"},
    ]
    lots = [
        {"name": "Fleece", "kind": "wool fleece"},
        {"name": "Thread", "kind": "SILK", "also_kind": "COTTON", "also_share": 0.5},
    ]
    assert told(lots, strands, {"design": "Design"}) == "80% wool, 10% silk, 10% cotton"


FLEECE, SILK = {"name": "Fleece", "kind": "wool fleece"}, {"name": "Thread", "kind": "SILK"}
STRAND = {"place": 1.0, "number": 40.0, "system": "tex", "lot": "Fleece"}
SECOND = {"place": 2.0, "number": 40.0, "system": "tex", "lot": "Thread"}


@pytest.mark.parametrize(
    "lots, strands, skein, why",
    [
        ([{"name": "Fleece"}], [], {"lot": "Fleece"}, "see the fiber of its lot."),
        ([{"name": "Fleece", "kind": "Unheard of"}], [], {"lot": "Fleece"}, "see the fiber of its lot."),
        ([FLEECE], [], {}, "it has no lot and no design."),
        ([{**FLEECE, "also_kind": "SILK"}], [], {"lot": "Fleece"}, "see the fiber of its lot."),
        ([{**FLEECE, "also_share": 0.3}], [], {"lot": "Fleece"}, "see the fiber of its lot."),
        ([FLEECE, SILK], [STRAND, {**SECOND, "lot": None}], {"design": "Design"}, "see the strands of its design."),
        ([FLEECE, SILK], [STRAND, {**SECOND, "number": None}], {"design": "Design"}, "see the strands of its design."),
        ([FLEECE, {"name": "Thread"}], [STRAND, SECOND], {"design": "Design"}, "see the strands of its design."),
        ([FLEECE, SILK], [STRAND, {**SECOND, "place": 1.0}], {"design": "Design"}, "see the strands of its design."),
        ([FLEECE, SILK], [{**STRAND, "other_lot": "Thread"}], {"design": "Design"}, "see the strands of its design."),
        ([FLEECE, SILK], [], {"design": "Design"}, "see the strands of its design."),
    ],
)
def test_what_is_not_known_is_not_told(lots, strands, skein, why):
    strands = [{key: value for key, value in each.items() if value is not None} for each in strands]
    assert told(lots, strands, skein) is None and told(lots, strands, skein, "content") is None
    assert told(lots, strands, skein, "content_told") == f"Unknown: {why}"


def test_a_lot_that_may_replace_another_of_the_same_fiber_changes_nothing():
    lots = [FLEECE, {"name": "Other", "kind": "A breed"}]
    assert told(lots, [{**STRAND, "other_lot": "Other"}], {"design": "Design"}) == "100% wool"


def test_a_yarn_of_five_fibers_is_not_told_of():
    lots = [
        {
            "name": "Fleece",
            "kind": "wool fleece",
            "also_kind": "SILK",
            "also_share": 0.2,
            "third_kind": "NYLON",
            "third_share": 0.1,
        },
        {"name": "Thread", "kind": "COTTON", "also_kind": "LINEN", "also_share": 0.5},
    ]
    assert told(lots, [STRAND, SECOND], {"design": "Design"}) is None
    del lots[1]["also_kind"], lots[1]["also_share"]
    assert told(lots, [STRAND, SECOND], {"design": "Design"}) == "50% cotton, 35% wool, 10% silk, 5% nylon"


def parts(words):
    """The percentages of a content, and the names."""
    pairs = [each.split("% ") for each in words.split(", ")]
    return [int(percent) for percent, _ in pairs], [name for _, name in pairs]


def of_many(mixtures):
    """What is told of each of several lots; a mixture is three names with their weights."""
    lots = [
        {
            "name": f"Lot {n}",
            "state": "prepared fiber",
            "weight": 10.0,
            "kind": OF[first],
            "also_kind": OF[second],
            "also_share": b / (a + b + c),
            "third_kind": OF[third],
            "third_share": c / (a + b + c),
        }
        for n, ((first, a), (second, b), (third, c)) in enumerate(mixtures)
    ]
    entries = with_records(MANY, starting_entries(MANY), "guide", FIBERS)
    entries = with_records(MANY, entries, "fiber", lots)
    entries = with_records(
        MANY,
        entries,
        "skeins",
        [{"name": f"Skein {n}", "reel": "R", "wraps": 1.0, "lot": f"Lot {n}"} for n in range(len(lots))],
    )
    entries = with_records(MANY, entries, "labels", [{"skein": f"Skein {n}"} for n in range(len(lots))])
    return expected_of_keys(MANY, [entries], ["labels_content_is"])[0]["labels_content_is"][: len(lots)]


def test_percentages_are_whole_in_order_and_add_up_to_100():
    dice = Random(SEED)
    small = [(1, 1, 1), (1, 1, 98), (998, 1, 1), (49, 49, 2), (1, 19, 980), (339, 336, 325)]
    weights = small + [
        tuple(dice.choice((dice.randint(1, 60), dice.randint(1, 999))) for _ in range(3))
        for _ in range(60 - len(small))
    ]
    mixtures = [list(zip(dice.sample(NAMES, 3), each, strict=True)) for each in weights]
    for words, mixture in zip(of_many(mixtures), mixtures, strict=True):
        total = sum(weight for _, weight in mixture)
        shares = {name: Fraction(weight, total) for name, weight in mixture}
        percents, told_names = parts(words)
        assert sum(percents) == 100 and min(percents) >= 1, words
        named = [name for name in told_names if not name.startswith("other fiber")]
        rank, in_order = [shares[name] for name in named], percents[: len(named)]
        assert all(more >= less - Fraction(1, 10**9) for more, less in pairwise(rank)), (words, mixture)
        assert in_order == sorted(in_order, reverse=True)
        assert set(named) == {name for name, share in shares.items() if share >= Fraction(5, 100) or name in ARE_WOOL}
        others = len(shares) - len(named)
        assert told_names[len(named) :] == (["other fiber"] if others == 1 else ["other fibers"] if others else [])
        farthest = 1 if min(shares.values()) >= Fraction(1, 100) else 3
        assert all(
            abs(percent - 100 * shares[name]) < farthest for name, percent in zip(named, percents, strict=False)
        ), (words, mixture)


def test_a_third_each_is_told_with_the_one_more_at_the_first():
    assert [float(content.whole_percent(*(100 / 3,) * 3, 0.0, 0.0, place)) for place in (1, 2, 3, 4, 5)] == [
        34,
        33,
        33,
        0,
        0,
    ]


@pytest.mark.parametrize("points", [(30.0, 33.3, 33.3), (99.0, 1.0, 1.0), (99.99, 0.0, 0.0)])
def test_points_that_are_not_a_hundred_are_refused(points):
    # A part of a hundred is all that largest remainders can hand out.
    with pytest.raises(ValueError, match="add up to 100"):
        content.whole_percent(*points, 0.0, 0.0, 1)
