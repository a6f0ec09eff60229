"""Fiber content on a label, against the examples that the rules print and a plain count of its own.

The examples of 16 CFR 300 and 303 were read in texts of the Code of Federal Regulations; a
handbook of labels is the witness of "97 % wool, 3 % cashmere".
"""

from fractions import Fraction
from itertools import pairwise
from random import Random

import numpy as np
import pytest
from pytest import approx

from entries import entries_with
from long_run import SEED
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
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
    of = {"lot": lots[0]["name"]} if skein is None else skein
    logs = {
        "guide": FIBERS,
        "fiber": [{"state": "prepared fiber", "weight": 10.0} | lot for lot in lots],
        "designs": [{"name": "Design"}],
        "components": [{"design": "Design"} | each for each in components],
        "skeins": [{"name": "One", "reel": "R", "wraps": 1.0} | of],
        "labels": [{"skein": "One"}],
    }
    key = f"labels_{field}"
    return expected_of_keys(US, [entries_with(US, logs)], [key])[0][key][0]


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
    logs = {
        "guide": FIBERS,
        "fiber": lots,
        "skeins": [{"name": f"Skein {n}", "reel": "R", "wraps": 1.0, "lot": f"Lot {n}"} for n in range(len(lots))],
        "labels": [{"skein": f"Skein {n}"} for n in range(len(lots))],
    }
    [values] = expected_of_keys(MANY, [entries_with(MANY, logs)], ["labels_content_is"])
    return values["labels_content_is"][: len(lots)]


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


def test_a_place_beyond_the_five_is_none():
    for place in (0, 6, 1.5):
        with pytest.raises(ValueError, match="from 1 to 5"):
            content.whole_percent(40.0, 30.0, 20.0, 10.0, 0.0, place)


@pytest.mark.parametrize(
    "others, share",
    [
        ({}, 1),
        ({"also_kind": "silk", "also": 0.25}, 0.75),
        ({"third_kind": "nylon", "third": 0.125}, 0.875),
        ({"also_kind": "silk", "also": 0.25, "third_kind": "nylon", "third": 0.125}, 0.625),
    ],
)
def test_the_main_fiber_is_all_that_is_not_another(others, share):
    assert content.main_share("wool", **others) == share
    assert content.main_share(np.array(["wool", "linen"], dtype=object), **others).tolist() == [share, share]


@pytest.mark.parametrize("second", [{}, {"other": "Birch", "other_mixed": "1000 WOOL"}])
def test_a_second_lot_of_the_same_fibers_changes_nothing(second):
    assert content.lot_of_strand("Aster", "1000 wool", **second) == "Aster"


@pytest.mark.parametrize("known, unknown", [((0.5, "Aster"), 0), ((0.5, None), 1), ((None, "Aster"), 1), ((), 1)])
def test_a_strand_is_known_by_its_share_and_its_lot(known, unknown):
    assert content.untold("Gray 2-ply", *known) == unknown
    assert content.untold(np.array(["Gray", "Marl"], dtype=object), *known).tolist() == [unknown, unknown]


def test_half_of_a_strand_that_is_half_of_the_yarn_is_a_quarter_of_it():
    assert content.strand_share("Aster") == 1 and content.strand_share("Aster", 0.5) == 0.5
    assert content.strand_share(np.array(["Aster", "Birch"], dtype=object)).tolist() == [1, 1]
    assert content.share_in_yarn("wool", 0.5, "birch", ["Aster", "Birch"], np.array([1.0, 0.5])) == 0.25


FOUR = ("silk", "wool", "nylon", "alpaca")
TENTHS = (0.1, 0.4, 0.3, 0.2)
IN_ORDER = [("wool", 0.4), ("nylon", 0.3), ("alpaca", 0.2), ("silk", 0.1)]


@pytest.mark.parametrize("turned", [0, 1, 2, 3])
@pytest.mark.parametrize("listed", [0, 1, 2, 3])
def test_fibers_come_in_order_of_weight_wherever_they_stand(turned, listed):
    fibers, shares = FOUR[turned:] + FOUR[:turned], TENTHS[turned:] + TENTHS[:turned]
    yarn = {f"fiber_{place}": fiber for place, fiber in enumerate(fibers, start=1)}
    yarn |= {f"named_{place}": share for place, share in enumerate(shares, start=1)}
    yarn |= {f"before_{place}": name.upper() for place, (name, _) in enumerate(IN_ORDER[:listed], start=1)}
    name, share = IN_ORDER[listed]
    assert content.largest_share(**yarn) == share and content.largest_fiber(share, **yarn) == name


def test_of_two_fibers_alike_the_first_comes_first_and_then_nothing_is_left():
    assert content.largest_fiber(0.5, "silk", 0.5, "wool", 0.5) == "silk"
    assert content.largest_fiber(0.5, "silk", 0.5, "wool", 0.5, before_1="silk") == "wool"
    assert content.largest_share("wool", 1.0, before_1="wool") == 0
    assert content.largest_share("wool", 0.6, "silk") == 0.6


@pytest.mark.parametrize("place", range(1, 13))
@pytest.mark.parametrize("told", [("wool",), ("nylon", "WOOL"), ("nylon", "linen", "Wool")])
def test_each_fiber_is_named_once_wherever_it_stands(place, told):
    fibers = {f"fiber_{each}": "silk" if each == place else "wool" for each in range(1, 13)}
    before = {f"before_{each}": name for each, name in enumerate(told, start=1)}
    assert content.next_fiber(**fibers, **before) == "silk"


@pytest.mark.parametrize("shares, whole", [((0.4,), 0.4), ((0.4, None, 0.2), 0.6), ((0.1, 0.2, 0.3, 0.4), 1)])
def test_what_is_known_of_a_yarn_adds_up(shares, whole):
    assert content.known_in_all(*shares) == approx(whole)


@pytest.mark.parametrize(
    "fiber, share, named",
    [("silk", 0.049, 0), ("silk", 0.05, 0.05), ("wool", 0.01, 0.01), ("Cashmere", 0.01, 0.01), ("nylon", 0.01, 0)],
)
def test_under_five_percent_only_a_wool_is_named(fiber, share, named):
    assert content.named_share(fiber, share) == named


@pytest.mark.parametrize("named, others", [((0.02,), 0), ((0.97, 0), 1), ((0, None, None, 0), 2), ((0, 0, 0.5, 0), 3)])
def test_fibers_without_a_name_are_counted(named, others):
    assert content.without_a_name(*named) == others


@pytest.mark.parametrize(
    "told, points",
    [((0.75, 0.2, 0, 0), 5), ((0.4, 0.2, 0.1, 0.05), 25), ((0.4, 0.3, 0.2, 0.1), 0), ((0.997, 0, 0, 0), 1)],
)
def test_others_are_what_the_named_leave_and_never_told_as_nothing(told, points):
    assert content.others_percent(*told) == points


def test_the_largest_is_what_all_others_leave():
    assert content.rest_percent(20, 10, 5, 2) == 63


@pytest.mark.parametrize(
    "points, others, unnamed, words",
    [
        ((40, 30, 20, 10), 0, 0, "40% wool, 30% silk, 20% nylon, 10% alpaca"),
        ((70, 25, 0, 0), 5, 1, "70% wool, 25% silk, 5% other fiber"),
        ((93, 0, 0, 0), 7, 2, "93% wool, 7% other fibers"),
    ],
)
def test_a_label_says_each_fiber_with_its_percentage(points, others, unnamed, words):
    names = dict(fiber_1="wool", fiber_2="silk", fiber_3="nylon", fiber_4="alpaca")
    assert content.content_words(**names, **percents(points), others=others, unnamed=unnamed, whole=1) == words
    assert content.on_ticket(words) == f"Fiber content: {words}"


def percents(points):
    return {f"percent_{place}": each for place, each in enumerate(points, start=1)}


@pytest.mark.parametrize(
    "known, words",
    [
        ({"content": "100% wool", "lot": "Aster", "design": "Marl"}, "100% wool"),
        ({"lot": "Aster", "design": "Marl"}, "Unknown: see the strands of its design."),
        ({"lot": "Aster"}, "Unknown: see the fiber of its lot."),
        ({}, "Unknown: it has no lot and no design."),
    ],
)
def test_a_label_without_its_fibers_says_where_to_look(known, words):
    assert content.what_to_type("One", **known) == words


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: content.main_share("wool", "silk", 0.5, "nylon", 0.5), "add up to all"),
        (lambda: content.main_share("wool", "silk"), "belong together"),
        (lambda: content.main_share("wool", also=0.1), "belong together"),
        (lambda: content.main_share("wool", third_kind="silk"), "belong together"),
        (lambda: content.main_share("wool", "silk", -0.1), "negative"),
        (lambda: content.main_share(" "), "blank"),
        (lambda: content.lot_of_strand("Aster", "1000 wool", "Birch", "1000 silk"), "other fibers"),
        (lambda: content.lot_of_strand("Aster", "1000 silk", "Birch", "1000 wool"), "other fibers"),
        (lambda: content.lot_of_strand("Aster", "1000 wool", "Birch"), "not known"),
        (lambda: content.untold("Marl", -0.1), "negative"),
        (lambda: content.untold(" "), "blank"),
        (lambda: content.share_in_yarn(" ", 0.5, "Aster", ["Aster"], np.array([1.0])), "blank"),
        (lambda: content.largest_fiber(0, "wool", 1.0, before_1="wool"), "share"),
        (lambda: content.next_fiber(), "No fiber"),
        (lambda: content.next_fiber("wool", before_1="WOOL"), "has been named"),
        (lambda: content.content_words("wool", 98, 0, 0, 0, others=0, unnamed=0, whole=0.98), "not all of the yarn"),
        (lambda: content.content_words("wool", 100, 0, 0, 0, others=0, unnamed=0, whole=1, untold=1), "not known"),
        (lambda: content.on_ticket(" "), "nothing to state"),
        (lambda: content.what_to_type(" "), "blank"),
    ],
)
def test_what_is_not_known_of_fibers_is_refused(wrong, words):
    with pytest.raises(ValueError, match=words):
        wrong()


@pytest.mark.parametrize("place", range(1, 13))
def test_two_breeds_are_both_wool_wherever_they_stand(place):
    fibers = {f"fiber_{each}": "Wool" if each == place else "silk" for each in range(1, 13)}
    shares = {f"share_{each}": each / 100 for each in range(1, 13)}
    assert content.together("wool", **fibers, **shares) == place / 100
