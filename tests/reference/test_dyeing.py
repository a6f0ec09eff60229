"""Dye, stock and bath, against a public dye table and against each other."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.reference import dyeing, scouring
from workbookgen.units import Quantity

from .quantities import grams


# A public dye table (read): 125 g to a shade of 2% take 2.5 g of dye, 300 g to 3% take 9 g.
@pytest.mark.parametrize("goods, depth, wanted", [(125, 0.02, 2.5), (300, 0.03, 9)])
def test_dye_as_a_public_table_has_it(goods, depth, wanted):
    assert dyeing.dye(grams(goods), depth).m_as("g") == approx(wanted, rel=1e-12)


def test_one_gram_in_a_hundred_milliliters_is_one_percent():
    # By definition of the strength by weight in volume.
    assert dyeing.stock(grams(1), 0.01).m_as("mL") == approx(100, rel=1e-12)
    assert dyeing.powder(Quantity(100, "mL"), 0.01).m_as("g") == approx(1, rel=1e-12)
    assert dyeing.powder(Quantity(1, "L"), 0.005).m_as("g") == approx(5, rel=1e-12)


@given(volume=st.floats(1, 1e5), strength=st.floats(0.001, 1))
def test_the_powder_of_a_stock_is_in_that_stock(volume, strength):
    powder = dyeing.powder(Quantity(volume, "mL"), strength)
    assert dyeing.stock(powder, strength).m_as("mL") == approx(volume)


@given(powder=st.floats(0.01, 1e4), depth=st.floats(0.001, 5))
def test_the_goods_that_it_dyes_take_that_powder(powder, depth):
    assert dyeing.dye(dyeing.dyes(grams(powder), depth), depth).m_as("g") == approx(powder)


def test_the_bath_holds_the_stock():
    # 100 g in 30 liters for a kilogram: 3 L, of which 200 mL are stock.
    bath = scouring.liquor(grams(100), Quantity(30, "L/kg"))
    assert bath.m_as("L") == approx(3)
    assert dyeing.water(bath, Quantity(200, "mL")).m_as("L") == approx(2.8)
    assert dyeing.water(bath, bath).m_as("L") == 0  # all of it is stock
    with pytest.raises(ValueError, match="more stock than bath"):
        dyeing.water(bath, Quantity(3.1, "L"))


def test_mixed_dyes_share_one_depth_and_assistants_go_by_the_goods():
    shade = dyeing.dye(grams(200), 0.02)  # 4 g
    parts = [dyeing.to_weigh(dye=shade, of_shade=share).m_as("g") for share in (0.5, 0.3, 0.2)]
    assert parts == approx([2, 1.2, 0.8]) and sum(parts) == approx(shade.m_as("g"))
    assert dyeing.to_weigh(goods=grams(200), of_goods=0.03).m_as("g") == approx(6)
    assert dyeing.to_weigh(dye=shade, of_shade=0.5, goods=grams(200), of_goods=0.03).m_as("g") == approx(2)
    assert dyeing.stock_of(shade, 0.5, 0.01).m_as("mL") == approx(200)
    with pytest.raises(ValueError, match="share of the shade"):
        dyeing.to_weigh(goods=grams(200), of_shade=0.5)


def test_what_was_weighed_is_taken_before_what_was_chosen():
    assert dyeing.goods(grams(90), grams(100), grams(500)) == grams(90)
    assert dyeing.goods(skein=grams(100), lot=grams(500)) == grams(100)
    assert dyeing.goods(lot=grams(500)) == grams(500)
    with pytest.raises(ValueError):
        dyeing.goods()


def test_shares_add_up_and_a_sum_that_does_not_is_told():
    assert dyeing.whole_of(np.array([0.5, np.nan, 0.4])) == approx(0.9)
    assert dyeing.shade_words(dyeing.whole_of(np.array([0.7, 0.2, 0.1]))) == "The dyes make up the whole shade."
    assert "less than 100%" in dyeing.shade_words(0.996) and "paler" in dyeing.shade_words(0.996)
    assert "more than 100%" in dyeing.shade_words(1.001) and "deeper" in dyeing.shade_words(1.001)
    for nothing in ([np.nan], [0.0], [0.1, -0.4]):
        with pytest.raises(ValueError, match="above zero"):
            dyeing.whole_of(np.array(nothing))


@pytest.mark.parametrize("share", [0, 0.4, 1])
def test_a_dye_counts_as_its_share(share):
    assert dyeing.in_shade(share) == share


@pytest.mark.parametrize("share", [-0.1, 1.1])
def test_no_dye_is_more_than_the_shade(share):
    with pytest.raises(ValueError, match="share"):
        dyeing.in_shade(share)
