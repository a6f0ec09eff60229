"""The way of a lot in words."""

import pytest

from workbookgen.reference import one_lot_words
from workbookgen.units import Quantity

from .quantities import grams


def test_a_lot_is_told_by_what_it_keeps():
    assert one_lot_words.lot_in_words(Quantity(46, "oz"), Quantity(92, "oz")) == "46 oz of yarn from 92 oz: 50% kept"
    assert one_lot_words.lot_in_words(grams(400), Quantity(1, "kg")) == "400 g of yarn from 1 kg: 40% kept"
    assert one_lot_words.lot_in_words(grams(400), grams(400), stage=5) == "400 g of yarn, as bought"
    assert one_lot_words.lot_in_words(grams(392), grams(400), stage=4) == "392 g of yarn from 400 g: 98% kept"


@pytest.mark.parametrize(
    "yarn, kept", [(100, "100% kept"), (100 + 1e-9, "100% kept"), (103, "all kept; in damper air fiber weighs more")]
)
def test_more_yarn_than_fiber_is_told_to_be_water(yarn, kept):
    assert one_lot_words.lot_in_words(grams(yarn), grams(100)) == f"{yarn:.0f} g of yarn from 100 g: {kept}"


@pytest.mark.parametrize(
    "more, words",
    [
        ({}, "300 g is spun, 200 g still to spin."),
        ({"length": Quantity(400, "m")}, "300 g is spun, 200 g still to spin: about 400 m at the grist wanted."),
        (
            {"length": Quantity(400, "m"), "as_spun": Quantity(440, "m")},
            "300 g is spun, 200 g still to spin: about 400 m at the grist wanted.",
        ),
        (
            {"length": Quantity(400, "m"), "as_spun": Quantity(350, "m")},
            "300 g is spun, 200 g still to spin: about 400 m at the grist wanted, 350 m at that of its skeins.",
        ),
        ({"as_spun": Quantity(350, "m")}, "300 g is spun, 200 g still to spin."),
        ({"length": Quantity(400, "m"), "stage": 5}, "300 g is used, 200 g is left: about 400 m."),
        ({"plied": grams(50)}, "300 g is spun, 50 g of it in skeins of designs, 200 g still to spin."),
        ({"plied": grams(0)}, "300 g is spun, 200 g still to spin."),
        ({"stage": 4}, "300 g is spun, 200 g still to spin."),
        ({"stage": 5}, "300 g is used, 200 g is left."),
        ({"weighed": grams(500), "yarn": grams(500)}, "500 g is spun, 200 g of it in no skein yet."),
        ({"weighed": grams(500), "yarn": grams(500), "stage": 5}, "500 g is spun, 200 g of it in no skein yet."),
    ],
)
def test_the_way_of_a_lot_is_told_up_to_what_is_still_to_spin(more, words):
    assert one_lot_words.way_in_words(grams(300), grams(200), **more) == words


@pytest.mark.parametrize(
    "more, words",
    [({}, "Nothing is spun yet, 200 g still to spin."), ({"stage": 5}, "Nothing is used yet, 200 g is left.")],
)
def test_a_lot_that_is_not_begun_is_told_to_be(more, words):
    assert one_lot_words.way_in_words(grams(0), grams(200), **more) == words


@pytest.mark.parametrize("rest", [0, 1.5])
@pytest.mark.parametrize(
    "more, words",
    [
        ({}, "300 g is spun, nothing is left to spin."),
        ({"length": Quantity(3, "m")}, "300 g is spun, nothing is left to spin."),
        ({"stage": 5}, "300 g is used, nothing is left."),
        ({"weighed": grams(301), "yarn": grams(301)}, "301 g is spun, nothing is left outside skeins."),
    ],
)
def test_a_lot_that_is_used_up_is_told_to_be(rest, more, words):
    assert one_lot_words.way_in_words(grams(300), grams(rest), **more) == words


def test_a_gram_in_skeins_of_designs_is_not_worth_a_word():
    assert one_lot_words.way_in_words(grams(300), grams(200), plied=grams(1)) == "300 g is spun, 200 g still to spin."


@pytest.mark.parametrize(
    "stage, rest", [({}, "still to spin"), ({"stage": 4}, "still to spin"), ({"stage": 5}, "left")]
)
def test_of_a_bought_thread_nothing_is_to_spin(stage, rest):
    told = one_lot_words.still_enough(grams(85), "usually enough for hat", **stage)
    assert told == f"What is {rest} is usually enough for hat."


def test_several_samples_are_told_to_count_by_their_mean():
    leave = "To leave one out, empty its lot on the sheet Samples."
    assert one_lot_words.by_samples(2, 1) == f"Its yield is the mean of 2 handfuls. {leave}"
    both = f"Its yield is the mean of 3 handfuls. Its loss in spinning is the mean of 2 samples. {leave}"
    assert one_lot_words.by_samples(3, 2) == both
    # None of the one is no several of the other.
    assert one_lot_words.by_samples(2, 0) == f"Its yield is the mean of 2 handfuls. {leave}"
    assert one_lot_words.by_samples(0, 2) == f"Its loss in spinning is the mean of 2 samples. {leave}"


@pytest.mark.parametrize(
    "promised, words",
    [
        (0.93, " Projects take 93% of it."),
        (0.004, ""),
        (0.006, " Projects take 1% of it."),
        (1.004, " Projects take 100% of it."),
        (1.006, " Projects take 101% of it, which is more than there is."),
        (1000.0, ""),  # that is no plan
        (2000.0, ""),
        (1.24, " Projects take 124% of it, which is more than there is."),
    ],
)
def test_what_is_promised_more_than_once_is_told_to_be(promised, words):
    """It was told to be enough for mittens, and 124% of it to be taken, as if that could be."""
    assert one_lot_words.still_enough(grams(1.6), "enough for a ring").endswith("is enough for a ring.")
    told = one_lot_words.still_enough(grams(85), "usually enough for hat", promised=promised)
    assert told == f"What is still to spin is usually enough for hat.{words}"


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: one_lot_words.lot_in_words(grams(1), grams(0)), "bought"),
        (lambda: one_lot_words.way_in_words(grams(1), grams(1), weighed=grams(1)), "state its yarn"),
        (lambda: one_lot_words.way_in_words(grams(1), grams(1), yarn=grams(1e6)), "below a million"),
        (lambda: one_lot_words.still_enough(grams(85), ""), "nothing to say"),
        (lambda: one_lot_words.by_samples(1, 1), "no mean of one"),
        (lambda: one_lot_words.by_samples(0, 1), "no mean of one"),
        (lambda: one_lot_words.by_samples(1, 0), "no mean of one"),
        (lambda: one_lot_words.still_enough(grams(1.5), "enough for hat"), "Nothing is left"),
        (lambda: one_lot_words.still_enough(grams(0.4), "enough for hat"), "Nothing is left"),
    ],
)
def test_what_nobody_can_say_is_refused(wrong, words):
    with pytest.raises(ValueError, match=words):
        wrong()
