"""Lots that several projects draw on: worked by hand."""

import numpy as np
import pytest
from pytest import approx

from workbookgen.reference import sharing
from workbookgen.units import Quantity

from .quantities import grams, meters


@pytest.mark.parametrize("ahead, unknown", [(0, 0), (0.5, 1), (200, 1)])
def test_a_lot_that_says_nothing_matters_while_anything_is_to_be_made(ahead, unknown):
    assert sharing.unknown_lots(meters(ahead), "Aster", grams(100), "Birch") == unknown
    assert sharing.unknown_in_all(meters(ahead), 0, 0, 0, 0, lot_1="Aster") == unknown


def test_what_is_not_known_of_any_component_counts():
    assert sharing.unknown_in_all(meters(200), 0, 1, 0, 2, lasts=meters(90), design="Marl") == 3


@pytest.mark.parametrize("left, shared", [(350, 1), (500, 0), (600, 0)])
def test_a_component_is_shared_where_others_take_something(left, shared):
    assert sharing.shared_components(grams(500), grams(left)) == shared
    assert sharing.shared_components(grams(500), grams(left), pool_2=grams(90)) == shared  # unknown what is left of it


@pytest.mark.parametrize(
    "pool, square, more",
    [
        (0, 100, 7.978846),  # 10 · √(2 / π)
        (10, 100, 2.875999),  # 10 · 0.2419707 / 0.8413447
        (30, 100, 0.044378),  # 10 · 0.0044318 / 0.9986501
        (40, 100, 0),
        (0, 0, 0),
        (500, 0, 0),
    ],
)
def test_a_rest_of_almost_nothing_is_more_than_reckoned_on_average(pool, square, more):
    told = sharing.more_than_reckoned(grams(pool), Quantity(square, "g^2"))
    assert told.m_as("g") == approx(more, abs=1e-5)


def test_a_strand_counts_on_the_last_of_its_lots_where_that_is_more_than_a_twentieth():
    assert [sharing.on_the_last(grams(more), grams(100)) for more in (0, 4.9, 5.1, 30)] == [0, 0, 1, 1]
    assert sharing.on_the_last(grams(30), grams(0)) == 0  # nothing is needed of it any more
    assert sharing.on_the_last(grams(0), grams(0)) == 0
    for place in (2, 3, 4):
        other = {f"more_{place}": grams(8), f"needs_{place}": grams(100)}
        assert sharing.on_the_last(grams(8), grams(100), **other) == 2, place
        for half in other:  # of a strand of which one is not known, the other says nothing
            assert sharing.on_the_last(grams(8), grams(100), **{half: other[half]}) == 1, half


def test_what_lots_give_more_is_there_for_who_draws_on_them():
    """Of 100 g and 8 more on average, others take 25: 83 are left, and they are shared."""
    names, amounts = ["Aster"], Quantity([100.0], "g")
    told = sharing.left_by_others(grams(100), grams(50), names, amounts, [0.75], "Aster", more=grams(8))
    assert told.m_as("g") == approx(83)
    assert sharing.shared_components(grams(100), grams(107.9), more_1=grams(8)) == 1
    assert sharing.shared_components(grams(100), grams(108), more_1=grams(8)) == 0


def left(promised, needs):
    """What others leave of 100 g, of which all projects take a share, and this one so much."""
    names, amounts = ["Aster", "Birch"], Quantity([100.0, 900.0], "g")
    return sharing.left_by_others(grams(100), grams(needs), names, amounts, [promised, 0.5], "aster").m_as("g")


@pytest.mark.parametrize("promised, needs, others_leave", [(0.75, 50, 75), (1.5, 50, 0), (2, 50, -50), (0.5, 50, 100)])
def test_others_leave_what_they_do_not_take(promised, needs, others_leave):
    assert left(promised, needs) == approx(others_leave)


def test_what_others_lack_is_no_matter_of_a_project_that_takes_nothing():
    assert left(1.5, 0) == 0


@pytest.mark.parametrize("promised", [0.5 + 2e-7, 0.5 - 2e-7, 0.4])
def test_rounding_takes_nothing_and_gives_nothing(promised):
    assert left(promised, 50) == 100


PLACES = ("1_a", "1_b", "1_c", "2_a", "2_b", "3_a", "3_b", "4_a", "4_b")


@pytest.mark.parametrize("place", PLACES)
def test_each_lot_of_a_component_is_promised_what_that_component_takes(place):
    claims = {"claims_1": [0.1], "claims_2": [0.2], "claims_3": [0.4], "claims_4": [0.8]}
    lots = {f"lots_{each}": ["Moss" if each == place else ""] for each in PLACES}
    assert sharing.share_promised("Moss", **claims, **lots, left=Quantity(4, "oz")) == claims[f"claims_{place[0]}"][0]


def test_of_a_lot_that_gives_nobody_knows_how_much_no_share_is_told():
    nowhere = {f"lots_{each}": [""] for each in PLACES} | {f"claims_{part}": [0.0] for part in range(1, 5)}
    assert sharing.share_promised("Moss", **nowhere, left=grams(0)) == 0
    with pytest.raises(ValueError, match="not known"):
        sharing.share_promised("Moss", **nowhere)


@pytest.mark.parametrize("used, square", [(None, 100), (grams(50), 0)])
def test_a_finished_piece_has_no_need_that_might_differ(used, square):
    assert sharing.need_square(0.5, meters(40), Quantity(2, "m/g"), used).m_as("g^2") == square


@pytest.mark.parametrize("others, counted", [(0.5, 0), (2, 2)])
def test_less_than_a_millionth_of_its_own_is_rounding(others, counted):
    of_all = Quantity([1e6 + others, 7.0], "g^2")
    others_square = sharing.others_square(Quantity(1e6, "g^2"), ["Moss", "Fern"], of_all, "Moss")
    assert others_square.m_as("g^2") == approx(counted)


def test_who_has_no_lot_shares_none():
    of_all = Quantity([125.0], "g^2")
    assert sharing.others_square(Quantity(100, "g^2"), ["Moss"], of_all).m_as("g^2") == 0


@pytest.mark.parametrize("place", [1, 2, 3, 4])
def test_each_component_of_each_piece_took_of_its_lot(place):
    """Two pieces that took 1 and 16 g, 2 and 32 g, 4 and 64 g, 8 and 128 g of their components' lots."""
    taken = {f"taken_{each}": grams([2.0 ** (each - 1), 2.0 ** (each + 3)]) for each in (1, 2, 3, 4)}
    lots = {f"lots_{each}": ["Moss", ""] if each == place else ["Fern", "Moss"] for each in (1, 2, 3, 4)}
    of_moss = 2 ** (place - 1) + sum(2 ** (each + 3) for each in (1, 2, 3, 4) if each != place)
    assert sharing.taken_by_pieces("moss", **taken, **lots).m_as("g") == of_moss


def test_what_others_give_is_no_answer_while_a_lot_is_unknown():
    assert sharing.if_known(grams(200), 0) == grams(200)
    with pytest.raises(ValueError, match="not known"):
        sharing.if_known(grams(200), 1)


# Two strands of one yarn, three and two tenths of its weight, on a lot of 100 g: three fifths of it are for the one.
PARTS = [(0.3, 0.6), (0.2, 0.4)]


@pytest.mark.parametrize("share, part", PARTS)
def test_strands_of_one_yarn_divide_the_lots_that_they_share(share, part):
    lots = ["Marl / Aster", "", "MARL / ASTER", "Marl / Aster / Fern", "Other / Aster"]
    shares = [0.3, float("nan"), 0.2, 0.5, 0.7]
    assert sharing.part_of_lots(share, lots, shares, "marl / aster") == approx(part)
    assert sharing.part_of_lots(share, lots, shares) == 1
    assert sharing.pool(share, ["Aster"], grams([100.0]), "Aster", part=part).m_as("g") == approx(100 * part)
    of_lot = Quantity([25.0], "g^2")
    assert sharing.pool_square(share, ["Aster"], of_lot, "Aster", part=part).m_as("g^2") == approx((5 * part) ** 2)


@pytest.mark.parametrize("share, part", PARTS)
def test_both_claim_of_it_what_the_yarn_takes_and_bear_what_others_take(share, part):
    """Of 200 g of yarn they need 60 and 40 g, all of it; others take 30, and leave 70: 42 and 28."""
    needs, pool = grams(200 * share), grams(100 * part)
    assert sharing.claim(needs, pool, part) == approx(2 * share)
    left = sharing.left_by_others(pool, needs, ["Aster"], grams([100.0]), [1.3], "Aster", part=part)
    assert left.m_as("g") == approx(70 * part)
    alone = sharing.left_by_others(pool, needs, ["Aster"], grams([100.0]), [1.0], "Aster", part=part)
    assert alone.m_as("g") == pool.m_as("g"), "its fellow is no other project"


def test_what_they_need_is_uncertain_together():
    """20 g off in the whole yarn are 10 in half of it, 100 g²; another project adds 25 g², 5 g, of which 3 and 2."""
    squares = [sharing.need_square(share, meters(40), Quantity(2, "m/g"), part=part) for share, part in PARTS]
    assert sum(each.m_as("g^2") for each in squares) == approx(100)
    for own, (_, part) in zip(squares, PARTS, strict=True):
        others = sharing.others_square(own, ["Aster"], Quantity([125.0], "g^2"), "Aster", part)
        assert others.m_as("g^2") == approx((5 * part) ** 2)
        assert sharing.others_square(own, ["Aster"], Quantity([100.0], "g^2"), "Aster", part).m_as("g^2") == 0


@pytest.mark.parametrize(
    "lots, found",
    [
        ([("A", ""), ("A", "")], 0),
        ([("A", "B"), ("a", "b")], 0),
        ([("A", ""), ("B", "")], 0),
        ([("A", ""), ("A", "B")], 1),  # the second is on A, and not on A alone
        ([("A", ""), ("B", "A")], 1),
        ([("A", "B"), ("A", "")], 1),
        ([("A", "B"), ("B", "A")], 2),  # on both, in another order
        ([("A", "B"), ("A", "B"), ("B", "")], 1),
    ],
)
def test_strands_that_share_their_lots_in_part(lots, found):
    under = [[f"T / {each}" if each else "" for each in column] for column in zip(*lots, strict=True)]
    every = [f"T / {first}" + (f" / {other}" if other else "") for first, other in lots]
    other = under[1][0] or None
    assert sharing.strands_that_overlap(every[0], under[0][0], every, *under, [1.0] * len(lots), other) == found


def test_lots_are_named_under_their_design():
    assert sharing.strand_lots("T", "A") == "T / A" and sharing.strand_lots("T", "A", "B") == "T / A / B"
    with pytest.raises(ValueError, match="blank"):
        sharing.strand_lots("T", " ")


@pytest.mark.parametrize(
    "earlier, counted",
    [({}, 0), ({"lot_1": "a", "other_1": "B"}, 1), ({"lot_1": "A"}, 0), ({"lot_1": "B", "other_1": "A"}, 0)],
)
def test_a_strand_on_the_lots_of_an_earlier_one_is_no_further_doubt(earlier, counted):
    assert sharing.counted_before("A", other="B", **earlier) == counted
    assert sharing.counted_before("A", other="B", **earlier, lot_3="A", other_3="B") == counted + 1


@pytest.mark.parametrize("part", [0, -0.5])
def test_no_part_of_a_lot_is_refused(part):
    for call in (
        lambda: sharing.pool(1, ["A"], grams([1.0]), "A", part=part),
        lambda: sharing.claim(grams(1), grams(1), part),
        lambda: sharing.left_by_others(grams(1), grams(1), ["A"], grams([1.0]), [1.0], "A", part=part),
        lambda: sharing.need_square(1, meters(1), Quantity(1, "m/g"), part=part),
        lambda: sharing.others_square(Quantity(1, "g^2"), ["A"], Quantity([1.0], "g^2"), "A", part),
    ):
        with pytest.raises(ValueError, match="part"):
            call()


def test_what_the_plan_leaves_open_of_the_others_needs_counts_for_who_knows_his_hand():
    """Of 100 g that another project needs, 8% are 8 g; with skeins that overrule three quarters of the plan, 4 g."""
    assert sharing.hand_of_needs(grams(100), 0, 0.08, 0).m_as("g") == approx(8)
    assert sharing.hand_of_needs(grams(100), 0, 0.08, 0.75).m_as("g") == approx(4)
    assert sharing.hand_of_needs(grams(100), np.array([0, 1]), 0.08, 0.75).m_as("g") == approx(np.array([4, 0]))
    # Two others of 8 and 4 g, and 2 g of its own: 12 g, squared, as far as it knows its hand.
    of_all = grams([14.0, 0.0])
    assert sharing.others_hand(grams(2), ["Moss", "Fern"], of_all, 0.5, "Moss").m_as("g^2") == approx(72)
    assert sharing.others_hand(grams(2), ["Moss", "Fern"], of_all, 0.0, "Moss").m_as("g^2") == 0
    assert sharing.others_hand(grams(2), ["Moss", "Fern"], of_all, 0.5).m_as("g^2") == 0
    # Half of the lot's needs are those of another strand of its own: 7 - 2.
    assert sharing.others_hand(grams(2), ["Moss", "Fern"], of_all, 1, "Moss", 0.5).m_as("g^2") == approx(25)
    assert sharing.others_hand(grams(2), ["Moss"], grams([2.0 + 1e-9]), 1, "Moss").m_as("g^2") == 0  # rounding alone
    with pytest.raises(ValueError, match="part"):
        sharing.others_hand(grams(2), ["Moss"], grams([2.0]), 1, "Moss", 0)
    for wrong in ((-1, 0.08, 0), (1, -0.08, 0), (1, 0.08, 1.5)):
        with pytest.raises(ValueError):
            sharing.hand_of_needs(grams(wrong[0]), 0, *wrong[1:])


def test_hands_on_a_lot_add_up():
    none, nowhere = grams([0.0, 0.0]), ["", ""]
    of_lot = sharing.hands_on_lot(
        "Moss", grams([8.0, 4.0]), grams([0.0, 2.0]), none, none, ["Moss", "Moss"], ["", "Moss"], nowhere, nowhere
    )
    assert of_lot.m_as("g") == approx(14)
