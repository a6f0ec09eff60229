"""Skeins and lots in sentences: word by word, as a spinner would say them."""

import pytest

from workbookgen.reference import stock_words
from workbookgen.units import Quantity

from .quantities import grams


@pytest.mark.parametrize("count, words", [(0, "in 0 skeins, 90 g"), (1, "in 1 skein, 90 g"), (2, "in 2 skeins, 90 g")])
def test_one_skein_is_a_skein(count, words):
    assert stock_words.skeins_in_words(count, grams(90)) == words


@pytest.mark.parametrize(
    "count, unweighed, words",
    [
        (0, 0, "in 0 skeins, 0 g"),
        (1, 1, "in 1 skein, not weighed"),
        (3, 3, "in 3 skeins, not weighed"),
        (3, 1, "in 3 skeins, 0 g, 1 not weighed"),
    ],
)
def test_no_weight_is_stated_of_what_was_not_weighed(count, unweighed, words):
    assert stock_words.skeins_in_words(count, grams(0), unweighed) == words


@pytest.mark.parametrize(
    "count, unweighed, aside, words",
    [
        (1, 1, 0, "1 skein, 600 m, not weighed"),
        (1, 0, 1, "1 skein, 600 m, 300 g; set aside"),
        (3, 3, 1, "3 skeins, 600 m, not weighed; 1 of them set aside"),
        (3, 2, 2, "3 skeins, 600 m, 300 g; 2 of them not weighed; 2 of them set aside"),
    ],
)
def test_the_head_tells_how_many_were_not_weighed(count, unweighed, aside, words):
    assert stock_words.there_in_words(count, Quantity(600, "m"), grams(300), 0, aside, None, unweighed) == words


@pytest.mark.parametrize(
    "gone, aside, worth, more",
    [
        (0, 0, None, ""),
        (1, 0, None, "; 1 more gone"),
        (0, 1, None, "; 1 of them set aside"),
        (2, 1, "worth $9", "; 1 of them set aside; worth $9; 2 more gone"),
    ],
)
def test_the_head_of_the_log_tells_what_is_there(gone, aside, worth, more):
    told = stock_words.there_in_words(3, Quantity(600, "m"), grams(300), gone, aside, worth)
    assert told == "3 skeins, 600 m, 300 g" + more


@pytest.mark.parametrize(
    "gone, words", [(0, "no skeins yet"), (1, "no skeins left; 1 is gone"), (2, "no skeins left; 2 are gone")]
)
def test_no_skeins_are_none_yet_or_none_left(gone, words):
    assert stock_words.there_in_words(0, Quantity(0, "m"), grams(0), gone) == words


@pytest.mark.parametrize(
    "count, more, words",
    [
        (1, {}, "1 lot, 90 g of yarn still in it"),
        (2, {"aside": grams(20)}, "2 lots, 90 g of yarn still in them, 20 g of it set aside"),
        (
            2,
            {"aside": grams(0.6), "worth": "worth $9"},
            "2 lots, 90 g of yarn still in them, 0.6 g of it set aside, worth $9",
        ),
        (2, {"worth": "worth $9"}, "2 lots, 90 g of yarn still in them, worth $9"),
        (1, {"worth": "worth $9", "unknown": 2}, "1 lot, 90 g of yarn still in it, worth $9; 2 more not known"),
    ],
)
def test_the_shelf_tells_what_yarn_is_still_in_it(count, more, words):
    assert stock_words.shelf_in_words(count, grams(90), **more) == words


@pytest.mark.parametrize("count, words", [(1, "of yarn still in 1 lot"), (3, "of yarn still in 3 lots")])
def test_one_lot_is_a_lot(count, words):
    assert stock_words.lots_in_words(count) == words
    assert stock_words.lots_in_words(count, 2) == f"{words}, 2 not known"


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: stock_words.skeins_in_words(-1, grams(1)), "from 0"),
        (lambda: stock_words.skeins_in_words(1, grams(-1)), "from 0"),
        (lambda: stock_words.shelf_in_words(0, grams(1)), "must be a lot"),
        (lambda: stock_words.lots_in_words(-1), "from 0"),
    ],
)
def test_what_nobody_can_say_is_refused(wrong, words):
    with pytest.raises(ValueError, match=words):
        wrong()
