"""One skein: what is tried out wins, what is said of it, and where it is drawn among its lot."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbookgen.reference import measuring
from workbookgen.units import Quantity

from .quantities import grams, yards

amounts = st.floats(0.01, 1e4)


def test_what_is_tried_out_wins_over_the_log():
    assert measuring.tried_or_logged(yards(3), yards(5)) == yards(3)
    assert measuring.tried_or_logged(logged=yards(5)) == yards(5)
    assert measuring.wraps_in_use(100.0, 90.0) == 100
    assert measuring.wraps_in_use(logged=90.0) == 90
    with pytest.raises(ValueError):
        measuring.tried_or_logged()


@pytest.mark.parametrize("wrong", [{"fault": "Wraps: type a number."}, {"message": "Rest: type a number."}])
def test_nothing_is_used_while_something_is_wrong(wrong):
    with pytest.raises(ValueError):
        measuring.wraps_in_use(100.0, **wrong)


def test_a_typed_loop_wins_over_the_reel_and_that_over_the_log():
    everything = {"typed": yards(1), "reel": "Hall reel", "of_reel": yards(2), "logged": yards(3)}
    assert measuring.of_the_reel(**everything) == yards(1)
    assert measuring.of_the_reel(**everything | {"typed": None}) == yards(2)
    assert measuring.of_the_reel(logged=yards(3)) == yards(3)


def test_a_reel_of_which_nothing_is_known_is_not_replaced_by_the_log():
    with pytest.raises(ValueError):
        measuring.of_the_reel(reel="Hall reel", logged=yards(3))


def test_pounds_and_ounces_add_up():
    # 2 lb 3.5 oz are 35.5 oz: a pound is 16 ounces (NIST Handbook 44, Appendix C, from memory).
    weighed = measuring.weight_in_use(Quantity(2, "pound"), Quantity(3.5, "ounce"), grams(7))
    assert weighed.m_as("ounce") == pytest.approx(35.5, rel=1e-12)
    assert measuring.weight_in_use(rest=grams(100), logged=grams(7)) == grams(100)
    assert measuring.weight_in_use(logged=grams(7)) == grams(7)


@given(length=amounts, uncertainty=amounts)
def test_the_two_ends_lie_two_uncertainties_off_and_never_below_nothing(length, uncertainty):
    low, high = (
        calculation(yards(length), yards(uncertainty)).m_as("yard")
        for calculation in (measuring.least_likely, measuring.most_likely)
    )
    assert high - length == pytest.approx(2 * uncertainty, rel=1e-9, abs=1e-9)
    assert low == pytest.approx(max(0.0, 2 * length - high), rel=1e-9, abs=1e-9)


def test_a_length_is_told_with_both_ends_and_its_unit():
    assert measuring.likely_words(yards(1230.4), yards(1236.5)) == "very likely 1,230 yd to 1,237 yd"


def test_a_grist_is_as_sure_as_its_length_and_the_scale():
    # By hand: 3 and 4 in a thousand make 5 (JCGM 100, 5.1.6), and twice that is said.
    assert measuring.grist_within(yards(1000), yards(3), 0.004, grams(100), grams(0)) == pytest.approx(0.01)
    # A step of √3 g in 50 g: 3 / 12 / 2,500 = 0.0001, which is 1%, beside 0.6% and 0.8%, which also make 1%: twice √2
    # %. Bag and all are two readings: twice √3 %.
    assert measuring.grist_within(yards(1000), yards(6), 0.008, grams(50), grams(3**0.5)) == pytest.approx(
        0.02 * 2**0.5
    )
    assert measuring.grist_within(
        yards(1000), yards(6), 0.008, grams(50), grams(3**0.5), tare=grams(0)
    ) == pytest.approx(0.02 * 2**0.5)
    assert measuring.grist_within(
        yards(1000), yards(6), 0.008, grams(50), grams(3**0.5), tare=grams(4)
    ) == pytest.approx(0.02 * 3**0.5)
    assert measuring.grist_words(0.01, Quantity(800, "yard / pound")) == "very likely within 1%"
    assert measuring.grist_words(0.5, Quantity(800, "yard / pound")) == "very likely within 50%"
    assert measuring.grist_words(1.15, Quantity(800, "yard / pound")) == "known roughly: wind more"
    assert measuring.grist_words(0.0234, Quantity(800, "yard / pound")) == "very likely within 2.3%"


@pytest.mark.parametrize(
    "typed, unit, step",
    [
        (57, "g", 1),
        (57.3, "g", 0.1),
        (57.25, "g", 0.1),
        (57.5, "g", 0.1),
        (3.5, "oz", 0.1),
        (4, "oz", 0.1),
        (3.55, "oz", 0.05),
        (3.52, "oz", 0.01),
        (19.7, "oz", 0.1),
    ],
)
def test_a_weight_tells_how_finely_the_scale_shows_it(typed, unit, step):
    assert measuring.scale_step(Quantity(typed, unit), in_ounces=float(unit == "oz")).m_as(unit) == pytest.approx(step)


@pytest.mark.parametrize(
    ("typed", "unit", "weighed", "coarse", "step"),
    [
        (45, "g", 4, 4, 5),  # 45, 110, 95, 60: a scale in steps of 5 g
        (45, "g", 3, 3, 1),  # three may be so by chance
        (45, "g", 9, 8, 1),  # one shows that it can do better
        (46, "g", 4, 4, 1),  # and so does this one
        (45.5, "g", 4, 4, 0.1),
        (3.75, "oz", 4, 4, 0.25),
        (4, "oz", 12, 12, 0.25),
        (4, "oz", 12, 11, 0.1),
        (3.8, "oz", 4, 4, 0.1),
    ],
)
def test_weights_that_are_all_coarse_tell_of_a_coarse_scale(typed, unit, weighed, coarse, step):
    told = measuring.scale_step(Quantity(typed, unit), float(unit == "oz"), float(weighed), float(coarse))
    assert told.m_as(unit) == pytest.approx(step)


def test_a_coarse_weight():
    in_grams = [measuring.is_coarse(Quantity(grams, "g"), 0.0) for grams in (5.0, 45.0, 46.0, 47.5)]
    in_ounces = [measuring.is_coarse(Quantity(ounces, "oz"), 1.0) for ounces in (0.25, 3.5, 4.0, 4.1, 3.3)]
    assert (in_grams, in_ounces) == ([1, 1, 0, 0], [1, 1, 1, 0, 0])
    with pytest.raises(ValueError, match="weight"):
        measuring.is_coarse(Quantity(-5.0, "g"), 0.0)


def test_a_grist_lies_as_near_as_promised():
    # Skeins drawn with the stated doubts of length and scale: 95 in 100 lie within what is said.
    draw = np.random.default_rng(7)
    length, weight = 200 * (1 + 0.01 * draw.standard_normal(20_000)), 100 * (1 + 0.006 * draw.standard_normal(20_000))
    within = measuring.grist_within(yards(200), yards(2), 0.006, grams(100), grams(0))
    assert np.mean(np.abs(length / weight / 2 - 1) <= within) == pytest.approx(0.95, abs=0.01)


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: measuring.grist_within(yards(0), yards(3), 0.004, grams(50), grams(1)), "length"),
        (lambda: measuring.grist_within(yards(10), yards(-3), 0.004, grams(50), grams(1)), "negative"),
        (lambda: measuring.grist_within(yards(10), yards(3), -0.004, grams(50), grams(1)), "negative"),
        (lambda: measuring.grist_within(yards(10), yards(3), 0.004, grams(0), grams(1)), "weight"),
        (lambda: measuring.grist_within(yards(10), yards(3), 0.004, grams(50), grams(-1)), "step"),
        (lambda: measuring.grist_within(yards(10), yards(3), 0.004, grams(50), grams(1), grams(-1)), "tare"),
        (lambda: measuring.scale_step(grams(-1), 0.0), "weight"),
        (lambda: measuring.apart_from(["Aster 1"], ["keep apart"], [1.0], deviation=-1.5), "deviation must be that"),
        (lambda: measuring.grist_words(-0.1, Quantity(1, "m/g")), "negative"),
        (lambda: measuring.grist_words(0.1, Quantity(0, "m/g")), "grist"),
    ],
)
def test_doubts_of_a_grist_that_are_none(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()


@pytest.mark.parametrize(
    "known, asked",
    [
        ({}, "Choose a skein, or type reel and wraps."),
        ({"wraps": 3.0}, "Choose a reel, or type its loop."),
        ({"loop": yards(2)}, "Type the wraps you counted."),
    ],
)
def test_what_is_missing_is_asked_for(known, asked):
    assert measuring.likely_words(**known) == asked


def test_only_what_is_wrong_in_the_log_is_told():
    assert measuring.fault_in_log("!", "Wraps: type a number.") == "Wraps: type a number."
    with pytest.raises(ValueError):
        measuring.fault_in_log("…", "Still to fill in: Reel.")


def test_what_is_wrong_is_told_in_its_order():
    assert measuring.wrong_words("Rest: type a number.", "Wraps: type a number.") == "Rest: type a number."
    assert measuring.wrong_words(fault="Wraps: type a number.") == "In the log: Wraps: type a number."
    assert measuring.wrong_words(gross=grams(3)).startswith("Bag or tag: ")
    with pytest.raises(ValueError):
        measuring.wrong_words(gross=grams(3), net=grams(2))


LOOP = {"loop": Quantity(72, "inch")}
SKEIN = LOOP | {"mass": grams(100)}
RULER = {"counted": Quantity(12, "1/inch"), "expected": Quantity(10, "1/inch")}


@pytest.mark.parametrize(
    ("measured", "asked"),
    [
        (SKEIN | {"loop": Quantity(2, "inch")}, "Loop: under 20 cm"),
        (SKEIN | {"loop": Quantity(19.5, "cm")}, "Loop: under 20 cm"),
        (SKEIN | {"mass": Quantity(100, "oz")}, "Weight: more than a kilogram"),
        (SKEIN | {"mass": grams(2.9)}, "Weight: less than 3 g"),
        (SKEIN | {"washed_loop": Quantity(35, "inch")}, "Loop washed: far from"),  # the folded skein, half of the loop
        (SKEIN | {"washed_loop": Quantity(53, "inch")}, "Loop washed: far from"),  # of a reel of a yard and a half
        (SKEIN | {"washed_loop": Quantity(140, "inch")}, "Loop washed: far from"),
        # Washing makes no loop a tenth longer.
        (SKEIN | {"washed_loop": Quantity(80, "inch")}, "Loop washed: far from"),
        (SKEIN | RULER | {"counted": Quantity(18, "1/inch")}, "Wraps counted: far from"),
        (SKEIN | RULER | {"counted": Quantity(5, "1/inch")}, "Wraps counted: far from"),
    ],
)
def test_what_is_unlike_most_skeins_is_asked_about(measured, asked):
    assert measuring.unusual(**measured).startswith(f"Is it right? {asked}")


@pytest.mark.parametrize(
    "measured",
    [
        {},
        SKEIN,
        SKEIN | {"washed_loop": Quantity(66, "inch")},
        SKEIN | RULER,
        {"mass": grams(1000)},
        {"mass": grams(3)},
        {"loop": Quantity(20, "cm")},
        LOOP | {"washed_loop": Quantity(79.2, "inch")},
        LOOP | {"washed_loop": Quantity(54, "inch")},  # 1.1 and 0.75 of it
        {"loop": Quantity(0, "inch"), "washed_loop": Quantity(70, "inch")} | {"loop": Quantity(200, "cm")},
        {"washed_loop": Quantity(3, "inch")},
        {"counted": Quantity(90, "1/inch")},
        RULER | {"expected": Quantity(0, "1/inch")},
    ],
)
def test_nothing_else_is_asked_about(measured):
    with pytest.raises(ValueError, match="Nothing is unusual"):
        measuring.unusual(**measured)


def test_each_skein_of_many_is_asked_about_by_itself():
    found = measuring.unusual(mass=Quantity([2000.0, 1.0], "g"), loop=Quantity([100.0, 10.0], "cm"))
    assert [words.split(":")[0] for words in found] == ["Is it right? Weight", "Is it right? Loop"]


NAMES = [f"Aster {number}" for number in range(1, 7)]


@pytest.mark.parametrize(
    "alike, words",
    [
        ((), "none"),
        ((2,), "Aster 2"),
        ((1, 2, 4), "Aster 1, Aster 2, Aster 4"),
        ((1, 2, 4, 5, 6), "Aster 1, Aster 2, Aster 4 and 2 more"),
    ],
)
@pytest.mark.parametrize(
    "calculation, verdict",
    [
        (measuring.goes_with, "go together"),
        (measuring.alternates_with, "alternate rows"),
        (measuring.apart_from, "keep apart"),
    ],
)
def test_the_first_three_are_named(calculation, verdict, alike, words):
    verdicts = [verdict if number in alike else "" for number in range(1, 7)]
    assert calculation(NAMES, verdicts, np.arange(1.0, 7.0), 0.1) == words


def test_a_skein_is_told_as_a_share_of_its_project():
    share = measuring.share_of_need(yards(233), yards(2530))
    assert measuring.project_words("Harbor vest", yards(2530), share) == "Harbor vest: 9% of its 2,530 yd"


def test_a_group_is_taken_out_of_its_log_line_by_line():
    names, known = ["Aster", "birch", "", "aster", "Aster"], np.array([1.0, 2.0, 3.0, np.nan, 5.0])
    assert [measuring.place("ASTER", names, known, number) for number in (1.0, 2.0)] == [1.0, 5.0]
    with pytest.raises(ValueError):
        measuring.place("Aster", names, known, 3.0)


def test_lines_that_are_not_needed_repeat_the_last_and_are_not_looked_at():
    assert [measuring.place_in_group(float(line), 2.0) for line in (1, 2, 3)] == [1, 2, 2]
    with pytest.raises(ValueError):
        measuring.of_another(grams(3), 3.0, 2.0, "Aster 2", "Aster 1")
    with pytest.raises(ValueError):
        measuring.of_another(grams(3), 1.0, 1.0, "ASTER 1", "Aster 1")
    assert measuring.of_another(grams(3), 2.0, 2.0, "Aster 2", "Aster 1") == grams(3)
    assert measuring.of_another(grams(3), 2.0, 2.0, "Aster 2", "Aster 1", fate="Used") == grams(3)
    for fate in ("given", "SOLD", "lost"):
        with pytest.raises(ValueError, match="no longer here"):
            measuring.of_another(grams(3), 2.0, 2.0, "Aster 2", "Aster 1", fate=fate)


def test_what_is_not_there_lies_off_the_chart():
    # The chart shows 30 % to either side, and numbers from 0 on.
    assert (
        measuring.on_the_chart() < -0.3 and measuring.high_on_the_chart() < -0.3 and measuring.low_on_the_chart() < -0.3
    )
    assert measuring.where_drawn("cedar", ["Aster"], np.array([1.0])) < 0
    assert measuring.where_drawn("ASTER", ["Aster", "Birch", "Aster"], np.array([2.0, 1.0, 2.0])) == 2
    assert [measuring.on_the_chart(each) for each in (-0.9, -0.1, 0.4)] == [-0.3, -0.1, 0.3]
    assert measuring.high_on_the_chart(measuring.limit_off(1.5, 0.1)) == pytest.approx(0.15)
    assert measuring.low_on_the_chart(0.15) == -0.15


@pytest.mark.parametrize(
    "deviation, dashes", [(0.0, 0), (0.009, 0), (0.01, 1), (-0.1, 5), (0.28, 14), (0.3, 15), (2.0, 15)]
)
def test_a_deviation_is_as_many_dashes_as_fiftieths(deviation, dashes):
    assert measuring.dots(deviation) == "–" * dashes + "●"


def test_a_difference_is_told_in_whole_percent():
    assert measuring.difference_words(0.1666) == "Their grists differ by 17%."


def test_the_lot_is_told_with_its_skeins_or_what_is_missing():
    assert measuring.lot_words() == "choose a skein of your log to see this"
    assert measuring.lot_words("Aster 1") == "it is of no single lot in the log"
    assert measuring.lot_words("Aster 1", "Aster", 1.0) == "Aster, 1 skein"
    assert measuring.lot_words("Aster 1", "Aster", 1204.0) == "Aster, 1,204 skeins"
    with pytest.raises(ValueError):
        measuring.lot_words("Aster 1", "Aster")


def test_an_empty_list_is_drawn_at_nothing():
    assert measuring.number_on_the_chart() == 0 and measuring.number_on_the_chart(4) == 4
    with pytest.raises(ValueError, match="place"):
        measuring.number_on_the_chart(float("nan"))


@pytest.mark.parametrize("second, two", [("a 12", 0), ("A 12", 0), ("A 13", 1)])
def test_dye_lots_of_one_number_are_one(second, two):
    assert measuring.two_dye_lots("A 12", second) == measuring.two_dye_lots(second, "A 12") == two


@pytest.mark.parametrize(
    "verdict, two, words",
    [
        ("go together", {}, "go together"),
        ("go together", {"two": 0}, "go together"),
        ("go together", {"two": 1}, "alternate rows"),
        ("keep apart", {"two": 1}, "keep apart"),
    ],
)
def test_two_dye_lots_are_worked_in_turn_where_the_yarns_go_together(verdict, two, words):
    assert measuring.by_dye_lots(verdict, **two) == words


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: measuring.two_dye_lots(" ", "A"), "blank"),
        (lambda: measuring.two_dye_lots("A", " "), "blank"),
        (lambda: measuring.by_dye_lots(" ", 1), "blank"),
        (lambda: measuring.by_dye_lots("go together", 2), "dye lots"),
    ],
)
def test_a_dye_lot_that_is_none_is_refused(wrong, words):
    with pytest.raises(ValueError, match=words):
        wrong()
