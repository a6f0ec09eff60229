"""A line that is filled in as asked, and still shows no answer, says what it waits for, and with what mark."""

import pytest

from entries import values_of
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

US = described(Settings(units="us"))
SMALL = described(Settings(size="small"))
NO_MEASURE = "No answer yet: type the rated loop, or better a cord's length and the turns it makes."
NO_LOOP = "No answer yet: nobody knows what one turn of its reel measures. Its line on the sheet Reels says what it needs."
WOUND = [{"name": "Gray", "reel": "Porch", "wraps": 90.0, "gross": 3.5}]


@pytest.mark.parametrize("described", [US, SMALL], ids=["whole", "small"])
@pytest.mark.parametrize(("measures", "of_reel", "of_skein"), [
    ({}, NO_MEASURE, NO_LOOP),
    ({"tolerance": 0.5}, NO_MEASURE, NO_LOOP),
    ({"cord": 360.0}, "Still to fill in: the cord's length and the turns it makes go together.", NO_LOOP),
    ({"height": 15.0, "arm_a": 14.0}, "Still to fill in: height and both arms go together.", NO_LOOP),
    ({"rated": 0.0}, "Rated loop: type a number above 0 up to 1,000 in, in digits, or empty it.", NO_LOOP),
    ({"rated": 72.0}, None, None),
    ({"cord": 360.0, "turns": 5.0}, None, None),  # 72 in
    ({"height": 15.0, "arm_a": 14.0, "arm_b": 14.0}, None, None),
])
def test_a_skein_on_a_reel_without_a_loop(measures, of_reel, of_skein, described):
    values = values_of(described, reels=[{"name": "Porch"} | measures], skeins=WOUND)
    assert (values["reels_message"][0], values["skeins_message"][0]) == (of_reel, of_skein)
    assert (values["reels_loop"][0] is None) == (of_reel is not None)
    assert (values["skeins_finished_yd"][0] is None) == (of_skein is not None)
    assert values["skeins_mark"][0] == (of_skein and "…")
    assert values["skeins_open"][0] == 0, "nothing in its own line is wrong"


def test_what_is_wrong_in_the_line_of_such_a_skein_comes_first():
    values = values_of(US, reels=[{"name": "Porch"}], skeins=[WOUND[0] | {"tare": 4.0}])  # the bag heavier than all
    assert values["skeins_message"][0] == "Bag or tag: it must weigh less than the whole. Check both."


WHEEL = "No answer yet: type Drive wheel across, above."
DRAFT = "No answer yet: type Draft length, above."


@pytest.mark.parametrize(("card", "whorl", "message", "ratio", "turns"), [
    ({}, {"across": 2.0}, WHEEL, None, None),
    ({"draft": 10.0}, {"across": 2.0}, WHEEL, None, None),
    ({"wheel": 20.0}, {"across": 2.0}, DRAFT, 10.0, None),
    ({}, {"stamped": 8.0}, DRAFT, 8.0, None),
    ({"wheel": 20.0, "draft": 10.0}, {"across": 2.0}, None, 10.0, 1.0),  # 10 turns of the flyer in 10 in, by one treadle
    ({"draft": 10.0}, {"flyer": 80.0}, None, 8.0, 0.8),
    ({}, {}, "Still to fill in: its ratio as stamped, the turns of the flyer, or how far it is across.", None, None),
])
def test_a_whorl_says_what_it_needs_of_the_card_above(card, whorl, message, ratio, turns):
    values = values_of(US, {f"wheel_{key}": value for key, value in card.items()}, whorls=[{"name": "Fast"} | whorl])
    assert values["whorls_message"][0] == message
    assert values["whorls_ratio"][0] == (ratio and pytest.approx(ratio))
    assert values["whorls_twist_1"][0] == (turns and pytest.approx(turns))
    assert values["whorls_mark"][0] == (message and "…")


@pytest.mark.parametrize(("typed", "whorls", "message"), [
    ({"wanted": 6.0, "draft": 10.0}, [], "No answer yet: type the ratio in one of these ways, or your whorls below."),
    ({"wanted": 6.0, "draft": 10.0}, [{"name": "Fast", "stamped": 8.0}], None),  # the table answers
    ({"wanted": 6.0, "draft": 10.0, "stamped": 8.0}, [], None),
    ({"draft": 10.0}, [], None),
])
def test_a_twist_wanted_of_no_ratio(typed, whorls, message):
    values = values_of(US, {f"wheel_{key}": value for key, value in typed.items()}, whorls=whorls)
    assert values["wheel_message"][0] == message


SINGLE = {"design": "Socks", "number": 2400.0, "system": "yards per pound", "strands": 2.0}


@pytest.mark.parametrize(("components", "message"), [
    ([], "No answer yet: list its components below, each with its number and system."),
    ([{"design": "Socks", "name": "Single"}], "No answer yet: one of its components is not complete. Look at its line below."),
    ([SINGLE], None),
])
def test_a_design_without_components(components, message):
    values = values_of(US, designs=[{"name": "Socks", "wanted": 400.0}], components=components)
    assert values["designs_message"][0] == message
    assert (values["designs_tex"][0] is None) == (message is not None)
    assert values["designs_mark"][0] == (message and "…")


def test_an_estimate_of_nothing():
    values = values_of(US, projects=[{"name": "Vest"}], estimates=[{"project": "Vest"}, {"project": "Vest", "grist": 1000.0}])
    needs = "Still to fill in: a weighed swatch, stitches and rows, or the weight of a piece like it."
    assert values["estimates_message"][:2] == (needs, needs)
    assert values["estimates_mark"][:2] == ("…", "…")


PORCH, ATTIC = {"name": "Porch"}, {"name": "Attic", "rated": 72.0}  # 100 wraps of 72 in are 200 yd, and 5% is lost in washing
OF_REEL = "No answer yet: the loop of this reel is not known. Look at its line on the sheet Reels, or type one loop of it."
OF_LOG = "No answer yet: its line on the sheet Skeins says what it still needs."


@pytest.mark.parametrize("described", [US, SMALL], ids=["whole", "small"])
@pytest.mark.parametrize(("typed", "wrong", "finished"), [
    ({"reel": "Porch", "wraps": 100.0}, OF_REEL, None),
    ({"reel": "Porch", "wraps": 100.0, "loop": 72.0}, None, 190.0),
    ({"reel": "Attic", "wraps": 100.0}, None, 190.0),
    ({"wraps": 100.0}, "Still to fill in: the reel, or one loop of it.", None),
    ({"wraps": 100.0, "loop": 72.0}, None, 190.0),
    ({"reel": "Attic"}, None, None),
    ({"gross": 3.5}, None, None),
    ({"skein": "On Porch"}, OF_LOG, None),
    ({"skein": "On Porch", "reel": "Attic"}, None, 190.0),
    ({"skein": "On Porch", "wraps": 80.0}, OF_LOG, None),
    ({"skein": "On Attic"}, None, 190.0),
    ({"skein": "On Attic", "reel": "Porch"}, OF_REEL, None),  # what is tried out wins
    ({"skein": "Wrong"}, "In the log: Wraps: type a number from 0 up to 100,000, in digits.", None),
    ({"reel": "Cellar", "wraps": 100.0}, "Reel: choose one of the names on the sheet Reels, or empty it.", None),
])
def test_one_skein_of_an_unknown_loop(typed, wrong, finished, described):
    wound = {"wraps": 100.0, "gross": 3.5}
    values = values_of(described, {f"measure_{key}": value for key, value in typed.items()}, reels=[PORCH, ATTIC], skeins=[
        {"name": "On Porch", "reel": "Porch"} | wound, {"name": "On Attic", "reel": "Attic"} | wound, {"name": "Wrong", "reel": "Porch"} | wound | {"wraps": "many"},
    ])
    assert values["measure_wrong"][0] == wrong
    assert values["measure_finished_yd"][0] == (finished and pytest.approx(finished))
