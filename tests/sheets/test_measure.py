"""Measure: one skein, typed or chosen, in a planner that holds nothing else, and beside the others of its lot."""

import pytest

from chapters import all_but
from planners import laid_out, rows_of
from workbookgen.book.write import write
from workbookgen.build import computed
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.settings import Settings
from workbookgen.settings.reels import Reel


def us():
    return laid_out(Settings(rows=rows_of(4, skeins=8, guide=60), reels=(Reel(name="Hall reel", loop="2 yd"),), leave_out=all_but("Counts")))


SKEINS = [
    {"name": "Aster 1", "reel": "Hall reel", "wraps": 100.0, "gross": 4.0, "washed_loop": 72.0, "lot": "Aster"},
    {"name": "Aster 2", "reel": "Hall reel", "wraps": 104.0, "gross": 4.0, "tare": 0.1, "lot": "Aster", "counted_wpi": 12.0},
    {"name": "Aster 3", "reel": "Hall reel", "wraps": 118.0, "part_wrap": 0.5, "rest": 1.0, "gross": 4.0, "washed_loop": 72.0, "lot": "Aster"},
    {"name": "Birch 1", "reel": "Hall reel", "wraps": 10.0, "gross": 1.0},
    {"name": "Aster 4", "reel": "Hall reel", "wraps": 160.0, "gross": 4.0, "washed_loop": 72.0, "lot": "Aster"},
    {"name": "Aster 5", "reel": "Hall reel", "wraps": "many", "gross": 4.0, "lot": "Aster"},
]


def entries(**typed):
    blank = starting_entries(us().planner)
    return blank | {f"measure_{key}": (value,) for key, value in typed.items()}


def logged(**typed):
    filled = with_records(us().planner, entries(**typed), "fiber", [{"name": "Aster", "state": "raw fleece", "weight": 64.0}])
    return with_records(us().planner, filled, "skeins", SKEINS)


def shown(entries):
    values = computed(us(), write(us(), entries, {}))
    return lambda key: values[key][0], values


def test_a_typed_skein_is_measured_in_a_planner_that_holds_nothing_else():
    one, _ = shown(entries(loop=72.0, wraps=104.0, gross_lb=0.0, gross=4.0, washed_loop=72.0, counted_wpi=12.0))
    # 104 turns of 2 yd; 4 oz are a quarter of a pound: proportion.
    assert one("measure_finished") == pytest.approx(208)
    assert one("measure_grist") == pytest.approx(832)
    assert one("measure_wpi") == pytest.approx(12)
    assert one("measure_likely").startswith("very likely 20")
    assert one("measure_wrong") in ("", None)


def test_pounds_come_on_top_of_ounces_and_a_reel_of_the_planner_will_do():
    one, _ = shown(entries(reel="Hall reel", wraps=100.0, washed_loop=72.0, gross_lb=1.0, gross=4.0))
    assert one("measure_finished") == pytest.approx(200)
    assert one("measure_grist") == pytest.approx(200 / 1.25)


@pytest.mark.parametrize("place", range(3))
def test_a_chosen_skein_is_what_the_log_says_of_it(place):
    one, values = shown(logged(skein=SKEINS[place]["name"].upper()))
    for here, there in (("finished_yd", "finished_yd"), ("doubt", "doubt"), ("grist_yd_lb", "grist_yd_lb"), ("wpi", "wpi"), ("weight_class", "weight_class"),
                        ("net", "net"), ("off", "deviation"), ("basis", "known_from")):
        wanted = values[f"skeins_{there}"][place]
        assert wanted not in ("", None)
        assert one(f"measure_{here}") == (wanted if isinstance(wanted, str) else pytest.approx(wanted)), here


def test_what_is_tried_out_wins_and_the_rest_is_the_logs():
    one, values = shown(logged(skein="Aster 3", wraps=200.0))
    # The log's half wrap and its yard of rest stay: 200.5 turns of 2 yd, and 1 yd.
    assert one("measure_finished") == pytest.approx(402)
    assert values["skeins_finished_yd"][2] == pytest.approx(238)


def test_skeins_of_its_lot_are_told_apart():
    # Yards in a pound: 800, 832 less shrinkage and tare, 952, 1,280. From Aster 1, Aster 3 is off by 17 %, Aster 4 by
    # 46 %.
    one, _ = shown(logged(skein="Aster 1"))
    assert one("measure_goes_with") == "Aster 2"
    assert one("measure_alternates_with") == "Aster 3"
    assert one("measure_apart_from") == "Aster 4"


@pytest.mark.parametrize("gone, together", [
    ("given", "none"), ("Sold", "none"), ("lost", "none"), ("used", "Aster 2"), ("set aside", "Aster 2"), (None, "Aster 2"),
])
def test_a_skein_that_somebody_else_has_goes_together_with_none(gone, together):
    """Nobody can knit with it. One that was used is in the piece, and the next is to go with it."""
    skeins = [each | ({"gone": gone} if each["name"] == "Aster 2" and gone else {}) for each in SKEINS]
    one, _ = shown(with_records(us().planner, logged(skein="Aster 1"), "skeins", skeins))
    assert (one("measure_goes_with"), one("measure_alternates_with")) == (together, "Aster 3")


@pytest.mark.parametrize("typed, words", [
    ({"skein": "Aster 5"}, "In the log: Wraps: "),
    ({"skein": "Aster 1", "rest": "much"}, "Rest: "),
    ({"skein": "Aster 1", "tare": 5.0}, "Bag or tag: it must weigh less"),
    ({"skein": "Cedar"}, "Skein: "),
])
def test_what_is_wrong_is_said_in_place_of_the_answer(typed, words):
    one, _ = shown(logged(**typed))
    assert one("measure_wrong").startswith(words)
    assert one("measure_grist") in ("", None)


def test_the_first_skein_of_two_is_the_one_above_unless_another_is_chosen():
    both = {"compare_second": ("Aster 3",)}
    one, _ = shown(logged(skein="Aster 1") | both)
    assert one("compare_words") == "alternate rows"
    assert one("compare_differ") == "Their grists differ by 17%."
    assert one("compare_more_grist_yd_lb") == pytest.approx(952 / 800 - 1)
    assert one("compare_dots_grist_yd_lb") == "–" * 10 + "●"
    one, _ = shown(logged(skein="Aster 1") | both | {"compare_first": ("Aster 4",)})
    assert one("compare_words") == "keep apart"


@pytest.mark.parametrize(("own", "of_lot", "words", "differ"), [
    (None, None, "go together", "."),
    (None, "A 12", "go together", "."),  # both are of the lot's
    ("B 3", "A 12", "alternate rows", "; two dye lots."),
    ("a 12", "A 12", "go together", "."),
    ("B 3", None, "go together", "."),  # of the other one nothing is known
])
def test_skeins_of_two_dye_lots_are_not_put_into_one_piece_unasked(own, of_lot, words, differ):
    """Of one grist within 1.3%: 800 yd/lb, and 104 turns of 2 yd less a twentieth, 197.6 yd, in 3.9 oz, which are
    810.7."""
    filled = with_records(us().planner, entries(skein="Aster 1") | {"compare_second": ("Aster 2",)}, "fiber",
                          [{"name": "Aster", "state": "raw fleece", "weight": 64.0, "dye_lot": of_lot}])
    one, _ = shown(with_records(us().planner, filled, "skeins", [each | {"dye_lot": own if each["name"] == "Aster 2" else None} for each in SKEINS]))
    assert one("compare_words") == words and one("compare_differ") == f"Their grists differ by 1%{differ}"


@pytest.mark.parametrize(
    ("weights", "within"),
    [
        # 2 * sqrt(u² + (d / 3.75)² / 12): with quarters of an ounce for d it is 3.9%, with hundredths next to nothing.
        ((4.0, 3.25, 4.5, 3.75), (0.0385, 0.06)),
        ((4.0, 3.25, 4.5), (0.0, 0.03)),
        ((4.0, 3.25, 4.5, 3.75, 3.8), (0.0, 0.03)),
    ],
    ids=["four in quarters", "three in quarters", "one in tenths"],
)
def test_a_log_of_weights_in_coarse_steps_tells_of_a_coarse_scale(weights, within):
    skeins = [
        {"name": f"Dale {number}", "reel": "Hall reel", "wraps": 100.0, "gross": weight}
        for number, weight in enumerate(weights)
    ]
    typed = entries(loop=72.0, wraps=104.0, gross=3.75, washed_loop=72.0)
    one, _ = shown(with_records(us().planner, typed, "skeins", skeins))
    low, high = within
    assert low <= one("measure_grist_within") <= high
