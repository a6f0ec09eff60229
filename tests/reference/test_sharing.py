"""Several projects on one lot: worked by hand, and laws that hold for any of them."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbookgen.reference import project, sharing
from workbookgen.units import Quantity

amounts = st.floats(1, 1e4)
LOTS = ["Clover", "Moss", "River", ""]


def grams(value):
    return Quantity(value, "g")


def meters(value):
    return Quantity(value, "m")


def approx(value):
    return pytest.approx(value, rel=1e-9)


def claims_of(projects, gives):
    """The claims of projects, each (what it takes, its lots), on lots that give so much."""
    return [sharing.claim(grams(takes), grams(sum(gives[lot] for lot in lots))) for takes, lots in projects]


def columns(projects):
    padded = [[*lots, "", "", ""][:3] for _, lots in projects]
    return {f"{place}_lots": list(column) for place, column in zip(("first", "second", "third"), zip(*padded, strict=True), strict=True)}


def others(projects, gives, asking):
    """What the others take from the lots of one project, by the laws under test."""
    takes, lots = projects[asking]
    known = {f"lot_{number}": lot for number, lot in enumerate(lots, start=1)}
    whole = sharing.promised(
        list(gives), grams(np.array(list(gives.values()))), claims_of(projects, gives), **columns(projects), **known
    )
    return sharing.others_take(whole, grams(takes))


def test_two_projects_on_one_lot():
    # By hand: a lot of 500 g, asked for 300 g by one and 260 g by the other.
    gives = {"Clover": 500.0}
    projects = [(300.0, ["Clover"]), (260.0, ["clover"])]
    gives_any_case = gives | {"clover": 500.0}
    assert claims_of(projects, gives_any_case) == [approx(0.6), approx(0.52)]
    assert others([(300.0, ["Clover"]), (260.0, ["Clover"])], gives, 0).m_as("g") == approx(260)
    share = sharing.share_promised("Clover", [0.6, 0.52], ["Clover", "clover"], ["", ""], ["", ""])
    assert share == approx(1.12)


def test_a_project_of_two_lots_draws_on_each_by_what_it_gives():
    # By hand: lots of 300 g and 100 g; 200 g from both is half of each, so 50 g of the second.
    gives = {"Moss": 300.0, "River": 100.0}
    projects = [(200.0, ["Moss", "River"]), (40.0, ["River"])]
    assert others(projects, gives, 1).m_as("g") == approx(50)
    assert others(projects, gives, 0).m_as("g") == approx(40)


def test_a_project_that_has_its_lots_to_itself_shares_nothing():
    assert others([(300.0, ["Clover"]), (100.0, ["Moss"])], {"Clover": 500.0, "Moss": 90.0}, 0).m_as("g") == 0


@given(takes=st.lists(amounts, min_size=2, max_size=6), gives=amounts)
def test_on_one_lot_the_others_take_what_they_take(takes, gives):
    projects = [(each, ["Clover"]) for each in takes]
    assert others(projects, {"Clover": gives}, 0).m_as("g") == pytest.approx(sum(takes[1:]), rel=1e-6)


@given(
    gives=st.lists(amounts, min_size=3, max_size=3),
    chosen=st.lists(st.tuples(amounts, st.sets(st.sampled_from(LOTS[:3]), min_size=1)), min_size=1, max_size=5),
)
def test_what_is_promised_of_all_lots_is_what_all_projects_take(gives, chosen):
    lots = dict(zip(LOTS, gives, strict=False))
    projects = [(takes, sorted(wanted)) for takes, wanted in chosen]
    shares = [sharing.share_promised(lot, claims_of(projects, lots), **columns(projects)) for lot in lots]
    assert sum(share * given for share, given in zip(shares, gives, strict=True)) == approx(sum(takes for takes, _ in projects))


def test_what_the_others_leave():
    # By hand: 1,000 m, of which others take 200 g of a yarn of 2 m/g.
    grist = Quantity(2, "m/g")
    assert sharing.left_by_others(meters(1000), grams(200), grist).m_as("m") == approx(600)
    assert sharing.left_by_others(meters(300), grams(200), grist).m_as("m") == 0
    assert sharing.surplus_with_others(meters(1000), meters(700), grams(200), grist).m_as("m") == approx(-100)
    assert sharing.surplus_with_others(meters(1000), meters(700), grams(0), grist) == project.surplus(meters(1000), meters(700))


def test_a_remainder_that_is_rounding_is_nothing():
    assert sharing.others_take(grams(100.00001), grams(100)) == grams(0)
    assert sharing.others_take(grams(100 - 1e-9), grams(100)) == grams(0)
    assert sharing.others_take(grams(90), grams(100)) == grams(0)
    assert sharing.others_take(grams(100.001), grams(100)).m_as("g") == pytest.approx(0.001)
    assert sharing.others_take(grams(3), grams(0)) == grams(3)


def test_a_finished_project_takes_what_it_used():
    assert sharing.takes(needed=grams(300), used=grams(280)) == grams(280)
    assert sharing.takes(needed=grams(300)) == grams(300)
    assert sharing.takes(used=grams(0)) == grams(0)


def test_a_lot_gives_what_is_spun_and_what_is_to_come():
    assert sharing.lot_gives(grams(120), grams(380)) == grams(500)


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: sharing.lot_gives(grams(-1), grams(1)), "spun"),
        (lambda: sharing.lot_gives(grams(1), grams(-1)), "to come"),
        (lambda: sharing.takes(), "what it took"),
        (lambda: sharing.takes(grams(-1)), "less than nothing"),
        (lambda: sharing.claim(grams(1), grams(0)), "give something"),
        (lambda: sharing.claim(grams(-1), grams(1)), "less than nothing"),
        (lambda: sharing.promised(["a"], grams(np.array([1.0])), [1.0], ["a"], [""], [""]), "at least one lot"),
        (lambda: sharing.others_take(grams(-1), grams(1)), "promised"),
        (lambda: sharing.others_take(grams(1), grams(-1)), "less than nothing"),
        (lambda: sharing.left_by_others(meters(-1), grams(1), Quantity(1, "m/g")), "there is"),
        (lambda: sharing.left_by_others(meters(1), grams(-1), Quantity(1, "m/g")), "others"),
        (lambda: sharing.surplus_with_others(meters(1), meters(1), grams(1), Quantity(0, "m/g")), "grist"),
        (lambda: sharing.surplus_with_others(meters(1), meters(-1), grams(1), Quantity(1, "m/g")), "needed"),
        (lambda: sharing.share_promised("", [1.0], ["a"], [""], [""]), "blank"),
    ],
)
def test_what_cannot_be_is_refused(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
