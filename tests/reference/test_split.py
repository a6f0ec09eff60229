"""A purchase divided: the parts add up to the whole, whoever divides it by hand."""

from fractions import Fraction
from math import floor

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as some
from pytest import approx

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.reference import split
from workbookgen.settings import Settings
from workbookgen.units import Quantity

from .quantities import grams

METRIC = described(Settings(units="metric"))


def divided(members, mass, money=None, step=1.0, coin=0.01):
    """Steps, coins and the sentence, of a purchase in grams."""
    entries = entries_with(METRIC, {"members": members})
    entries |= {"split_mass": (mass,), "split_money": (money,), "split_step": (step,), "split_coin": (coin,)}
    keys = (
        "members_weight",
        "members_pays",
        "split_words",
        "split_divided",
        "split_paid",
        "members_got",
        "members_coins",
    )
    return expected_of_keys(METRIC, [entries], keys)[0]


def by_hand(dues, steps):
    """Largest remainders in exact fractions: whole parts first, then one each by remainder, the first of equal ones
    first."""
    exact = [Fraction(due) * steps / sum(map(Fraction, dues)) for due in dues]
    got = [floor(each) for each in exact]
    in_turn = sorted(range(len(dues)), key=lambda place: (-(exact[place] - got[place]), place))
    for place in in_turn[: steps - sum(got)]:
        got[place] += 1
    return got


@pytest.mark.parametrize(
    ("members", "mass", "weights"),
    [
        # Three alike and 100 g: the gram that is left is the first one's.
        ([{"name": "A"}, {"name": "B"}, {"name": "C"}], 100.0, (34, 33, 33)),
        ([{"name": "A", "parts": 1.0}, {"name": "B", "parts": 2.0}], 100.0, (33, 67)),
        # More wanted than there is: 4 : 4 : 2 of 50.
        (
            [{"name": "A", "wanted": 40.0}, {"name": "B", "wanted": 40.0}, {"name": "C", "wanted": 20.0}],
            50.0,
            (20, 20, 10),
        ),
        # Less wanted: everyone gets more, and a line without a weight takes the rest.
        ([{"name": "A", "wanted": 40.0}, {"name": "B", "wanted": 40.0}], 100.0, (50, 50)),
        ([{"name": "A", "wanted": 40.0}, {"name": "B", "wanted": 40.0}, {"name": "rest"}], 100.0, (40, 40, 20)),
        ([{"name": "A", "wanted": 80.0}, {"name": "rest"}], 60.0, (60, 0)),
        # Seats by largest remainders, a textbook example (from memory): 10 seats for 47,000, 16,000, 15,800, 12,000,
        # 6,100 and 3,100 votes.
        (
            [
                {"name": name, "wanted": votes}
                for name, votes in zip("ABCDEF", (47e3, 16e3, 15.8e3, 12e3, 6.1e3, 3.1e3), strict=True)
            ],
            10.0,
            (5, 2, 1, 1, 1, 0),
        ),
    ],
)
def test_weights_by_hand(members, mass, weights):
    assert divided(members, mass)["members_weight"][: len(weights)] == approx(weights)


def test_money_goes_by_the_weight_that_is_got():
    # By hand: 34, 33 and 33 g of 100, and 10.00: 3.40, 3.30, 3.30. And 1.00 by three alike of 99 g: 34, 33, 33 cents.
    three = [{"name": "A"}, {"name": "B"}, {"name": "C"}]
    assert divided(three, 100.0, 10.0)["members_pays"][:3] == approx((3.4, 3.3, 3.3))
    assert divided(three, 99.0, 1.0)["members_pays"][:3] == approx((0.34, 0.33, 0.33))


@given(some.lists(some.integers(1, 5000), min_size=1, max_size=8), some.integers(1, 20_000), some.integers(1, 200_000))
@settings(max_examples=60, deadline=None)
def test_nothing_is_over_and_nobody_is_cut_short(wanted, mass, cents):
    members = [{"name": f"Member {place}", "wanted": float(each)} for place, each in enumerate(wanted)]
    told = divided(members, float(mass), cents / 100)
    got, coins = (tuple(int(each) for each in told[key][: len(wanted)]) for key in ("members_got", "members_coins"))
    assert sum(got) == mass and sum(coins) == cents
    assert list(got) == by_hand(wanted, mass) and list(coins) == by_hand(got, cents)
    assert told["split_divided"][0] == approx(mass) and told["split_paid"][0] == approx(cents / 100)


@pytest.mark.parametrize(
    ("wanted", "text"),
    [
        ((60.0, 60.0), "They want more than there is: each gets less than wanted, all in proportion."),
        (
            (60.0, 60.0, None),
            "They want more than there is: each gets less than wanted, all in proportion, and nothing is left for the others.",
        ),
        ((60.0, 40.0), "Each gets the weight wanted."),
        ((60.0, 40.0, None), "Each gets the weight wanted, and nothing is left for the others."),
        ((60.0, 20.0, None), "Each gets the weight wanted, and the others divide the rest."),
        (
            (60.0, 20.0),
            "They want less than there is: each gets more than wanted, all in proportion. To keep the rest apart, give it a line without a weight.",
        ),
        ((None, None), "All of it is divided by parts."),
    ],
)
def test_whoever_gets_other_than_was_wanted_is_told(wanted, text):
    members = [
        {"name": f"Member {place}"} | ({} if each is None else {"wanted": each}) for place, each in enumerate(wanted)
    ]
    assert divided(members, 100.0)["split_words"] == (text,)


def test_what_is_less_than_a_step_or_a_coin_is_told():
    told = divided([{"name": "A"}, {"name": "B"}], 103.0, 10.02, step=5.0, coin=0.05)
    assert told["members_weight"][:2] == approx((50, 50)) and told["members_pays"][:2] == approx((5, 5))
    assert told["split_words"][0].endswith("What is less than a step of the scale and a coin stays undivided.")


def test_steps_that_binary_numbers_miss_are_whole():
    # 0.3 / 0.1 is 2.9999999999999996 in binary numbers.
    assert split.whole_steps(0.3, 0.1) == 3
    assert split.whole_steps(Quantity(0.3, "oz"), Quantity(0.1, "oz")) == 3
    assert split.whole_steps(100_000.0, 0.01) == 10_000_000
    with pytest.raises(ValueError, match="told apart"):
        split.whole_steps(100_000.01, 0.01)


def test_what_is_wanted_comes_first_and_parts_share_the_rest():
    assert split.asked(1, grams(500)).m_as("g") == 500
    assert split.part(2, parts=3) == 3 and split.part(2, parts=3, wanted=grams(500)) == 0
    assert split.for_parts(grams(2000), grams(500)).m_as("g") == 1500
    assert split.for_parts(grams(500), grams(2000)).m_as("g") == 0
    assert split.claim(2, grams(1500), parts=3).m_as("g") == approx(1000)
    assert split.claim(0, grams(1500), parts=0, wanted=grams(500)).m_as("g") == 500
    assert split.of_the_wanted(Quantity(1, "kg"), grams(800)) == approx(1.25)


LESS = "They want more than there is: each gets less than wanted, all in proportion"
MORE = "They want less than there is: each gets more than wanted, all in proportion. To keep the rest apart, give it a line without a weight."


@pytest.mark.parametrize(
    "fit, parts, text",
    [
        (None, 2, "All of it is divided by parts."),
        (0.9, 0, f"{LESS}."),
        (0.9, 0.5, f"{LESS}, and nothing is left for the others."),
        (1, 0, "Each gets the weight wanted."),
        (1 + 1e-12, 0, "Each gets the weight wanted."),
        (1, 0.5, "Each gets the weight wanted, and nothing is left for the others."),
        (1.1, 0, MORE),
        (1.1, 0.5, "Each gets the weight wanted, and the others divide the rest."),
    ],
)
@pytest.mark.parametrize(
    "mass_left, money_left, rest",
    [
        (0, None, ""),
        (0, 0, ""),
        (0.5, None, " What is less than a step of the scale stays undivided."),
        (0, 0.5, " What is less than a coin stays undivided."),
        (0.5, 0.5, " What is less than a step of the scale and a coin stays undivided."),
    ],
)
def test_whoever_gets_other_than_was_wanted_and_what_stays_over_is_told(fit, parts, text, mass_left, money_left, rest):
    assert split.split_in_words(grams(9), parts, mass_left, money_left, fit) == text + rest


def test_steps_left_go_to_the_largest_remainders():
    """10 steps for 3.4, 3.4 and 3.2: three each, and the one that is left is the first one's."""
    exact = [split.exact(10, grams(each), grams(1000)) for each in (340, 340, 320)]
    whole = [split.whole(each) for each in exact]
    turns = [split.turn(each, base, line) for each, base, line in zip(exact, whole, (1, 2, 3), strict=True)]
    assert exact == approx([3.4, 3.4, 3.2]) and whole == [3, 3, 3] and turns == [400_000_999, 400_000_998, 200_000_997]
    left = split.steps_left(10, [*whole, float("nan")])
    last = split.last_turn(left, [*turns, float("nan")])
    got = [split.given_out(base, turn, last) for base, turn in zip(whole, turns, strict=True)]
    assert left == 1 and last == turns[0] and got == [4, 3, 3]
    assert split.handed_out([*got, float("nan")]) == 10 and split.given_out(3, turns[0]) == 3


def test_the_last_turn_is_that_of_as_many_as_are_left():
    turns = [5.0, 9.0, float("nan"), 7.0]
    assert [split.last_turn(left, turns) for left in (1, 2, 3)] == [9, 7, 5]
    assert split.last_turn(np.array([1.0, 3.0]), turns).tolist() == [9, 5]
    assert split.steps_left(66, [33, 33]) == 0


@pytest.mark.parametrize("line, turn", [(1, 999), (999, 1)])
def test_among_equal_remainders_the_upper_line_comes_first(line, turn):
    assert split.turn(3, 3, line) == split.turn(3 - 1e-8, 3, line) == turn


def test_steps_and_coins_make_weights_and_money():
    assert split.of_steps(100, grams(5)).m_as("g") == 500 and split.of_steps(20, 0.05) == approx(1)
    assert split.undivided(grams(503), grams(5), 100) == 0.6 and split.undivided(10.02, 0.05, 200) == 0.4
    assert split.handed_out(Quantity([170, float("nan"), 165], "g")).m_as("g") == 335


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: split.asked(0, grams(1)), "from 1"),
        (lambda: split.asked(1, grams(0)), "weight wanted"),
        (lambda: split.part(0, 1), "from 1"),
        (lambda: split.part(1, 0), "parts"),
        (lambda: split.for_parts(grams(-1), grams(1)), "mass"),
        (lambda: split.for_parts(grams(1), grams(-1)), "wanted"),
        (lambda: split.claim(1, grams(1), 0), "no parts"),
        (lambda: split.claim(1, grams(-1), 1), "mass"),
        (lambda: split.claim(-1, grams(1), 1), "Parts"),
        (lambda: split.claim(1, grams(1), 1, grams(0)), "wanted"),
        (lambda: split.of_the_wanted(grams(0), grams(1)), "mass"),
        (lambda: split.of_the_wanted(grams(1), grams(0)), "wanted"),
        (lambda: split.split_in_words(grams(0), 0, 0), "Nothing is due"),
        (lambda: split.split_in_words(grams(1), -1, 0), "negative"),
        (lambda: split.split_in_words(grams(1), 0, -1), "negative"),
        (lambda: split.whole(-1), "share"),
        (lambda: split.turn(4, 3, 1), "less than one step more"),
        (lambda: split.turn(4.5, 3, 1), "less than one step more"),
        (lambda: split.turn(2.9, 3, 1), "at least its whole steps"),
        (lambda: split.turn(3, 3, 0), "1 to 999"),
        (lambda: split.turn(3, 3, 1000), "1 to 999"),
        (lambda: split.turn(3, 3, 1001), "1 to 999"),
        (lambda: split.steps_left(9, [5, 5]), "more whole steps"),
        (lambda: split.last_turn(0, [5]), "No step"),
        (lambda: split.last_turn(2, [5]), "than members"),
        (lambda: split.given_out(-1, 5), "number of steps"),
        (lambda: split.handed_out([float("nan")]), "Nobody"),
        (lambda: split.of_steps(-1, 5), "number of steps"),
        (lambda: split.of_steps(1, 0), "above zero"),
        (lambda: split.of_steps(1, -5), "above zero"),
        (lambda: split.undivided(1, 0, 1), "above zero"),
        (lambda: split.undivided(1, -1, -1), "above zero"),
        (lambda: split.undivided(9, 5, 2), "more whole steps"),
        (lambda: split.whole_steps(-1, 5), "negative"),
        (lambda: split.whole_steps(1, 0), "above zero"),
        (lambda: split.whole_steps(1, -5), "above zero"),
        (lambda: split.exact(-1, 1, 1), "number of steps"),
        (lambda: split.exact(1, -1, 1), "negative"),
        (lambda: split.exact(1, 1, 0), "Nothing is due"),
        (lambda: split.exact(1, 1, -1), "Nothing is due"),
    ],
)
def test_what_cannot_be_divided_is_refused(wrong, words):
    with pytest.raises(ValueError, match=words):
        wrong()
