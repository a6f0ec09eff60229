"""Lots that several projects draw on: worked by hand."""

import pytest
from pytest import approx

from workbookgen.reference import sharing
from workbookgen.units import Quantity


def meters(number):
    return Quantity(number, "m")


def grams(number):
    return Quantity(number, "g")


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
