"""Costs and prices: known answers worked by hand, and ways there and back."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.reference import cost
from workbookgen.units import Quantity

money = st.floats(0, 1e4)


def test_a_skein_from_fleece_to_price():
    # Worked by hand: 24 for 4 ounces are 6 an ounce; 3 ounces 18; with 2 of dye 20; 3 hours at 12
    # are 36; 56 and a quarter are 70; 200 yards at 0.35.
    materials = cost.material_cost(fiber=24 / 4 * 3, dye=2)
    work = cost.labor(Quantity(180, "minute"), 12)
    fair = cost.price(materials, work, Quantity(25, "percent"))
    assert (materials, work, fair) == (approx(20), approx(36), approx(70))
    assert cost.per_length(fair, Quantity(200, "yard")).m_as("1/yard") == approx(0.35)


@pytest.mark.parametrize(
    ("known", "paid"),
    [
        ({"planned": 24, "ahead": 24}, 24),
        ({"planned": 24, "done": 30}, 30),  # the plan is used up
        ({"planned": 24, "done": 20, "ahead": 12.5}, 32.5),  # half of it is no skein yet
        ({"planned": 24, "done": 5, "ahead": 10}, 24),  # hours may not have been written down
        ({"planned": 24, "done": 18, "used": 300}, 18),
        ({"planned": 24, "done": 0, "used": 300}, 24),
        ({"done": 18, "used": 300}, 18),
    ],
)
def test_hours_that_were_worked_are_paid(known, paid):
    amounts = {key: Quantity(float(value), "gram" if key == "used" else "hour") for key, value in known.items()}
    assert cost.hours_to_pay(**amounts).m_as("hour") == approx(paid)


@given(st.lists(st.integers(0, 10**6), min_size=4, max_size=4))
def test_cents_add_up(cents):
    # Outside witness: decimal, which reckons with cents as people do.
    exact = sum((Decimal(each) / 100 for each in cents), Decimal(0))
    assert cost.material_cost(*(each / 100 for each in cents)) == approx(float(exact))


def test_what_is_not_given_costs_nothing():
    assert cost.material_cost(thread=3) == cost.material_cost(tools=3) == 3
    assert cost.price(20) == 20
    assert cost.price(20, margin=0.5) == cost.price(labor=20, margin=0.5) == approx(30)


def test_after_the_market_has_kept_its_share_the_cost_is_left():
    # Worked by hand: of 80 a market that keeps a fifth leaves 64, which are 40 and 24.
    assert cost.price(40, 24, fees=0.2) == approx(80)
    assert cost.price(40, 10, margin=0.2, fees=Quantity(25, "percent")) * 0.75 == approx(60)


@given(materials=money, work=money, margin=st.floats(0, 3))
def test_a_price_bears_cost_work_and_margin(materials, work, margin):
    fair = cost.price(materials, work, margin)
    assert fair >= materials + work - 1e-9
    assert fair - materials - work == approx(margin * (materials + work), rel=1e-6, abs=1e-6)


@given(paid=money, skeins=st.integers(1, 1000))
def test_all_the_skeins_cost_what_they_cost(paid, skeins):
    assert cost.per_skein(paid, skeins) * skeins == approx(paid)


@given(count=st.integers(0, 40), each=money)
def test_several_alike_cost_what_they_cost_one_by_one(count, each):
    assert cost.in_all(count, each) == approx(sum([each] * count))


def test_what_costs_nothing_costs_nothing_in_all():
    assert cost.in_all(3) == 0


def test_a_price_of_the_material_alone_says_so():
    assert cost.paid_for(30) == cost.paid_for(cost=0) == "material only"
    assert cost.paid_for(labor=0) == "work only"
    assert cost.paid_for(30, 90) == "both"
    assert list(cost.paid_for([30, 1], 90)) == ["both"] * 2


def test_cost_of_a_skein():
    assert cost.per_skein(30, 4) == 7.5
    assert cost.per_skein(30, 1) == 30


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: cost.material_cost(1, 1, -1), "money"),
        (lambda: cost.hours_to_pay(done=Quantity(5, "hour")), "plan them"),
        (lambda: cost.hours_to_pay(done=Quantity(0, "hour"), used=Quantity(300, "gram")), "plan them"),
        (lambda: cost.hours_to_pay(Quantity(-1, "hour")), "Hours"),
        (lambda: cost.hours_to_pay(Quantity(1, "hour"), Quantity(-1, "hour")), "Hours"),
        (lambda: cost.hours_to_pay(Quantity(1, "hour"), done=Quantity(-1, "hour")), "Hours"),
        (lambda: cost.labor(Quantity(-1, "hour"), 1), "Hours"),
        (lambda: cost.labor(Quantity(1, "hour"), -1), "money"),
        (lambda: cost.material_cost(), "at least one cost"),
        (lambda: cost.price(margin=0.5), "or the worth"),
        (lambda: cost.price(-1), "money"),
        (lambda: cost.price(1, -1), "money"),
        (lambda: cost.price(1, 1, -0.1), "margin"),
        (lambda: cost.price(1, 1, 0, 1), "fees"),
        (lambda: cost.price(1, 1, 0, -0.1), "fees"),
        (lambda: cost.paid_for(), "or the worth"),
        (lambda: cost.paid_for(-1), "money"),
        (lambda: cost.paid_for(1, -1), "money"),
        (lambda: cost.per_length(-1, Quantity(1, "m")), "money"),
        (lambda: cost.per_length(1, Quantity(0, "m")), "length"),
        (lambda: cost.per_skein(-1, 1), "money"),
        (lambda: cost.per_skein(1, 0), "skeins"),
        (lambda: cost.per_skein(1, 2.5), "skeins"),
        (lambda: cost.in_all(-1, 1), "count"),
        (lambda: cost.in_all(1, -1), "money"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
