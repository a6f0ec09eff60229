"""A purchase divided: the parts add up to the whole, whoever divides it by hand."""

from fractions import Fraction
from math import floor

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some
from pytest import approx

from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.reference import split
from workbookgen.settings import Settings
from workbookgen.units import Quantity

METRIC = described(Settings(units="metric"))


def divided(members, mass, money=None, step=1.0, coin=0.01):
    """Steps, coins and the sentence, of a purchase in grams."""
    entries = with_records(METRIC, starting_entries(METRIC), "members", members)
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
