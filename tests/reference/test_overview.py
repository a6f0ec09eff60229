"""What is there at a glance."""

import pytest

from workbookgen.reference.lot_words import there_in_words
from workbookgen.reference.overview import how_many_above_nothing
from workbookgen.units import Quantity


def test_a_lot_that_is_spun_up_is_not_counted():
    assert how_many_above_nothing(Quantity([3.0, 0.0, float("nan"), 0.5], "ounce")) == 2


@pytest.mark.parametrize("rest", [1e-15, -1e-15, 0.0009])
def test_what_rounding_leaves_of_a_lot_is_nothing(rest):
    """Programs differ in it: 0.3 - 0.1 - 0.2 is nothing in one and -2.8E-17 in another."""
    assert how_many_above_nothing(Quantity([rest, 1.0], "gram")) == 1


@pytest.mark.parametrize(
    "skeins, yards, ounces, words",
    [
        (0, 0, 0, "no skeins yet"),
        (1, 198.6, 4.02, "1 skein, 199 yd, 4 oz"),
        (1204, 240_800.4, 4816.26, "1,204 skeins, 240,800 yd, 4816.3 oz"),
        (20_000, 999_999.5, 999_999.96, "20,000 skeins, 1,000,000 yd, 1000000 oz"),
        (20_000, 4_080_007.4, 80_000.0, "20,000 skeins, 4,080,007 yd, 80000 oz"),
        (20_000, 99_999_998.4, 1.0, "20,000 skeins, 99,999,998 yd, 1 oz"),
    ],
)
def test_the_head_of_the_skeins(skeins, yards, ounces, words):
    assert there_in_words(skeins, Quantity(float(yards), "yard"), Quantity(float(ounces), "oz")) == words


def test_no_head_has_more_than_a_hundred_million():
    with pytest.raises(ValueError, match="hundred million"):
        there_in_words(2, Quantity(99_999_999.0, "yard"), Quantity(1.0, "oz"))
