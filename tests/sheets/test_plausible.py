"""What is unlike what people usually have is asked about: the result stays, and the mark is a question's."""

import pytest

from entries import entries_with, values_of
from workbookgen.checking.expected import expected_values
from workbookgen.errors import DescriptionError
from workbookgen.filled.planner import described
from workbookgen.language.domains import Number
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card
from workbookgen.language.rules import Rule
from workbookgen.settings import Settings

US = described(Settings(units="us"))
METRIC = described(Settings(units="metric"))


def skein(described, weight):
    loop = 72.0 if described is US else 180.0
    return values_of(
        described, reels=[{"name": "Porch", "rated": loop}], skeins=[{"name": "One", "reel": "Porch", "wraps": 100.0, "gross": weight}],
    )


@pytest.mark.parametrize(
    ("described", "weight", "asked"),
    [(US, 58.0, "more than a kilogram"), (US, 2.05, None), (METRIC, 58.0, None), (METRIC, 2.0, "less than 3 g"), (US, 0.05, "less than 3 g")],
)
def test_a_weight_in_another_unit_is_asked_about_and_reckoned_with(described, weight, asked):
    values = skein(described, weight)
    message, mark = values["skeins_message"][0], values["skeins_mark"][0]
    assert values["skeins_net"][0] == pytest.approx(weight), "the result stays"
    assert (asked in message and message.startswith("Is it right?") and mark == "?") if asked else (message is None and mark is None)


@pytest.mark.parametrize(("described", "weight", "asked"), [
    (US, 1360.0, "usually 0.18 to 710 oz"), (US, 700.0, None), (METRIC, 700.0, None), (METRIC, 2.4, "usually 5 to 20,000 g"), (METRIC, 5.0, None),
    (US, 0.17, "usually 0.18 to 710 oz"), (US, 0.18, None),
])
def test_a_lot_in_another_unit_is_asked_about_and_reckoned_with(described, weight, asked):
    values = values_of(described, fiber=[{"name": "Moss", "state": "prepared fiber", "weight": weight, "own_spinning": 0.05}])
    message, mark = values["fiber_message"][0], values["fiber_mark"][0]
    assert values["fiber_listed"][0] == "Moss" and values["fiber_to_come"][0] > 0, "the result stays"
    assert (asked in message and message.startswith("Is it right?") and mark == "?") if asked else (message is None and mark is None)


@pytest.mark.parametrize(("described", "typed", "asked"), [
    (US, {"gross": 100.0}, "more than a kilogram"), (US, {"gross_lb": 2.0, "gross": 5.0}, "more than a kilogram"), (US, {"gross": 4.0}, None),
    (METRIC, {"gross": 2.0}, "less than 3 g"), (METRIC, {"gross": 100.0}, None),
    (METRIC, {"gross": 100.0, "washed_loop": 200.0}, "Loop washed: far"), (METRIC, {"gross": 100.0, "washed_loop": 197.0}, None),
    (METRIC, {"gross": 100.0, "loop": 1.8}, "under 20 cm"), (METRIC, {"gross": 100.0, "washed_loop": 80.0}, "Loop washed: far"),
    (METRIC, {"gross": 100.0, "counted_wpi": 40.0}, "Wraps counted: far"),
    (METRIC, {"gross": 100.0, "tare": 120.0, "washed_loop": 80.0}, "Bag or tag"),  # what is wrong comes first
])
def test_one_skein_is_asked_about_and_measured_all_the_same(described, typed, asked):
    loop = {"loop": 72.0} if described is US else {"loop": 180.0}
    values = expected_values(described, starting_entries(described) | {f"measure_{key}": (value,) for key, value in ({"wraps": 100.0} | loop | typed).items()})
    said = values["measure_wrong"][0]
    assert (said is None) if asked is None else asked in said
    assert values["measure_finished"][0] > 0 and values["measure_message"][0] is None, "the result stays"


GAUGED = {"pattern_stitches": 5.0, "pattern_own_stitches": 4.5}
SWATCH = {"fabric_length": 400.0, "fabric_grist": 1000.0, "fabric_swatch_width": 4.0, "fabric_swatch_height": 4.0}
DECIMETER = {"fabric_swatch_width": 10.0, "fabric_swatch_height": 10.0}
FULLED = {
    "fulling_before_width": 4.0, "fulling_before_height": 4.0, "fulling_after_width": 3.0, "fulling_after_height": 3.0, "fulling_width": 9.0, "fulling_length": 9.0,
}


@pytest.mark.parametrize(("described", "typed", "asked", "stays"), [
    (US, GAUGED, None, "pattern_kept"),
    (US, GAUGED | {"pattern_stitches": 20.0}, "Stitches, by the pattern", "pattern_kept"),  # over 4 in, typed for one
    (US, GAUGED | {"pattern_own_stitches": 0.9}, "Stitches, by your swatch", "pattern_kept"),
    (METRIC, {"pattern_stitches": 22.0, "pattern_own_stitches": 2.2}, "Stitches, by your swatch", "pattern_kept"),  # over a centimeter
    (METRIC, {"pattern_stitches": 8.0, "pattern_own_stitches": 4.0}, None, "pattern_kept"),
    (METRIC, {"pattern_stitches": 56.0, "pattern_own_stitches": 56.0}, None, "pattern_kept"),
    (US, SWATCH | {"fabric_swatch_mass": 0.2}, "steps of 0.1 oz, and the fabric with it", "fabric_area"),
    (US, SWATCH | {"fabric_swatch_mass": 0.25}, "steps of 0.05 oz, and the fabric with it", "fabric_area"),
    (US, SWATCH | {"fabric_swatch_mass": 0.26}, None, "fabric_area"),  # 7.4 g in 0.0103 m²: 710 g/m²
    (US, SWATCH | {"fabric_swatch_mass": 6.0}, "far from what a swatch", "fabric_area"),
    (METRIC, SWATCH | {"fabric_swatch_mass": 6.0}, "far from what a swatch", "fabric_area"),  # 4 by 4 cm, for inches
    (METRIC, SWATCH | DECIMETER | {"fabric_swatch_mass": 6.2}, None, "fabric_area"),
    (METRIC, SWATCH | DECIMETER | {"fabric_swatch_mass": 0.15}, "far from what a swatch", "fabric_area"),
    (US, FULLED | {"fulling_swatch_mass": 7.0}, "far from what a swatch", "fulling_mass"),
    (US, FULLED | {"fulling_swatch_mass": 0.3}, "steps of 0.1 oz, and the yarn with it", "fulling_mass"),
    (US, FULLED | {"fulling_swatch_mass": 0.36}, None, "fulling_mass"),
])
def test_a_gauge_or_a_swatch_in_another_unit_is_asked_about_and_reckoned_with(described, typed, asked, stays):
    values = expected_values(described, starting_entries(described) | {key: (value,) for key, value in typed.items()})
    message = values[f"{stays.partition('_')[0]}_message"][0]
    assert (message is None) if asked is None else message.startswith("Is it right?") and asked in message
    assert values[stays][0] is not None, "the result stays"


CLOSE = "too close to tell: weigh again later"
SWATCH = {"project": "Hat", "grist": 380.0, "swatch_width": 4.0, "swatch_height": 4.0}  # a grist of which lace and felt weigh as much


@pytest.mark.parametrize(("described", "mass", "asked"), [
    (US, 0.2, "steps of 0.1 oz"), (US, 0.9, "steps of 0.1 oz"), (US, 1.0, None), (US, 0.25, "steps of 0.05 oz"), (US, 0.55, None), (US, 0.18, None), (US, 0.07, "steps of 0.01 oz"),
    (METRIC, 3.0, "steps of 1 g"), (METRIC, 9.0, "steps of 1 g"), (METRIC, 10.0, None), (METRIC, 3.1, None), (METRIC, 1.1, None), (METRIC, 0.9, "steps of 0.1 g"),
])
def test_a_small_swatch_on_a_coarse_scale_is_asked_about_and_reckoned_with(described, mass, asked):
    """Half a gram is 5% of ten grams, half a tenth of an ounce is 5% of one ounce."""
    side = 4.0 if described is US else 10.0
    swatch = SWATCH | {"swatch_width": side, "swatch_height": side, "swatch_mass": mass}
    parts = [{"project": "Hat", "part": "all", "shape": "rectangle", "width": 20.0, "height": 20.0}]
    values = values_of(described, projects=[{"name": "Hat"}], estimates=[swatch], pieces=parts)
    message, mark = values["estimates_message"][0], values["estimates_mark"][0]
    assert values["estimates_yarn"][0] > 0, "the result stays"
    assert (asked in message and message.startswith("Is it right?") and mark == "?") if asked else (message is None and mark is None)


@pytest.mark.parametrize(("described", "mass", "asked"), [
    (US, 0.2, "steps of 0.1 oz"), (US, 0.15, "steps of 0.05 oz"), (US, 0.23, None), (US, 1.0, None),
    (METRIC, 5.0, "steps of 1 g"), (METRIC, 5.3, None), (METRIC, 0.4, "steps of 0.1 g"),
])
def test_a_sample_too_light_for_its_scale_is_asked_about_and_reckoned_with(described, mass, asked):
    """Ten meters that show 5 g weigh 4.5 to 5.5: the grist of all that is planned with them may be off by 10%."""
    values = values_of(described, samples=[{"name": "First", "length": 10.0, "mass": mass}])
    message = values["samples_message"][0]
    assert values["samples_tex"][0] > 0, "the result stays"
    assert (message is None) if asked is None else message.startswith("Is it right? Its weight: so light a length") and asked in message


@pytest.mark.parametrize(("described", "fiber", "yarn", "asked"), [
    (US, 0.5, 0.4, "steps of 0.1 oz"), (US, 1.9, 1.8, "steps of 0.1 oz"), (US, 2.0, 1.9, None), (US, 0.5, 0.45, "steps of 0.05 oz"), (US, 0.37, 0.36, None),
    (US, 0.12, 0.11, "steps of 0.01 oz"), (METRIC, 10.0, 9.0, "steps of 1 g"), (METRIC, 10.0, 9.7, None), (METRIC, 1.5, 1.4, "steps of 0.1 g"), (METRIC, 20.0, 19.0, None),
])
def test_the_loss_of_a_sample_too_light_for_its_scale_is_asked_about_and_reckoned_with(described, fiber, yarn, asked):
    """10 g and 9 g may be 9.5 and 9.4, or 10.4 and 8.6: 1% lost, or 17%."""
    values = values_of(described, samples=[{"name": "First", "fiber_in": fiber, "yarn_out": yarn}])
    message = values["samples_message"][0]
    assert (message is None) if asked is None else message.startswith("Is it right? Fiber in: so light a sample") and asked in message
    assert values["samples_loss"][0] == pytest.approx(1 - yarn / fiber), "the result stays"


@pytest.mark.parametrize(("described", "before", "after", "asked"), [
    (US, 3.5, 3.2, "steps of 0.1 oz"), (US, 3.5, 2.6, "steps of 0.1 oz"), (US, 3.5, 2.5, None),
    (US, 3.5, 3.25, "steps of 0.05 oz"), (US, 3.5, 3.33, None), (US, 3.5, 3.43, "steps of 0.01 oz"),
    (METRIC, 100.0, 91.0, "steps of 1 g"), (METRIC, 100.0, 90.0, None), (METRIC, 100.0, 96.4, None), (METRIC, 99.4, 96.4, None), (METRIC, 99.4, 98.6, "steps of 0.1 g"),
])
def test_a_ball_weighed_twice_within_a_few_steps_of_the_scale_is_asked_about(described, before, after, asked):
    """3.5 oz and 3.2 oz may be 3.45 and 3.25 on the way from 3.55 and 3.15: ten rows took 0.2 to 0.4 oz, and 3.2 oz
    make 80 to 160 more."""
    typed = {"making_before": before, "making_after": after, "making_rows": 10.0, "making_left": after, "making_wanted": 10.0}
    values = expected_values(described, starting_entries(described) | {key: (value,) for key, value in typed.items()})
    message = values["making_message"][0]
    assert (message is None) if asked is None else message.startswith("Is it right? Ball after") and asked in message
    assert values["making_words"][0] == "it will last", "the result stays"


@pytest.mark.parametrize(("wanted", "words"), [(28.0, "it will last"), (28.1, CLOSE), (32.2, CLOSE), (32.3, "it will not last")])
def test_rows_that_are_too_close_to_tell_are_told_so(wanted, words):
    """Ten rows took 10 g, and 30 g make 30 more: 28 times 1.07 is 29.96, and 32.2 times 0.93 is 29.95."""
    typed = {"making_before": 40.0, "making_after": 30.0, "making_rows": 10.0, "making_left": 30.0, "making_wanted": wanted}
    values = expected_values(METRIC, starting_entries(METRIC) | {key: (value,) for key, value in typed.items()})
    assert values["making_words"][0] == words


@pytest.mark.parametrize(("share", "asked"), [(4.0, True), (0.04, False), (0.5, False)])
def test_acid_or_salt_without_its_percent_sign_is_asked_about(share, asked):
    # 4 for 4% of 200 g would be 800 g.
    entries = starting_entries(METRIC) | {"dyeing_mass": (200.0,)}
    values = expected_values(METRIC, with_records(METRIC, entries, "recipe", [{"name": "acid", "of_goods": share}]))
    assert ("not for alum or dry acid" in (values["recipe_message"][0] or "")) == asked
    assert values["recipe_mass"][0] == pytest.approx(200 * share)


@pytest.mark.parametrize(("number", "asked"), [(46358.0, True), (46358.5, False), (1200.0, False), (45291.0, False)])
def test_a_count_that_became_a_date(number, asked):
    # 12/2 typed in 2026 becomes December 2 of that year, day 46,358 as programs count.
    entries = starting_entries(US) | {"counts_number": (number,)}
    values = expected_values(US, entries)
    assert values["counts_grist"][0] == pytest.approx(number)
    said = "Is it right? Yarn number: the program may have turned it into a date. Type 12/2 as the number 12, and its two ends apart."
    assert values["counts_message"][0] == (said if asked else None)


@pytest.mark.parametrize(("given", "message"), [
    ({"cord": 300.0}, "Still to fill in: the cord's length and the turns it makes go together."),
    ({"height": 15.0, "arm_a": 14.0}, "Still to fill in: height and both arms go together."),
    ({"height": 15.0, "arm_a": 14.0, "arm_b": 14.0}, None),
    ({"rated": 72.0}, None),
])
def test_a_reel_says_which_measure_it_lacks(given, message):
    assert values_of(US, reels=[{"name": "Porch", **given}])["reels_message"][0] == message


def skeins(*lines, **others):
    return values_of(
        US, **others, reels=[{"name": "Porch", "rated": 72.0}], fiber=[{"name": "Moss", "state": "washed fiber", "weight": 40.0}],
        skeins=[{"name": str(number), "reel": "Porch", "wraps": 100.0, **line} for number, line in enumerate(lines)],
    )


@pytest.mark.parametrize(("loop", "asked"), [(36.0, True), (140.0, True), (68.0, False), (55.0, False), (53.0, True), (74.0, False)])
def test_a_washed_loop_folded_or_doubled_is_asked_about_and_reckoned_with(loop, asked):
    values = skeins({"washed_loop": loop})
    assert ("loop of its reel" in (values["skeins_message"][0] or "")) == asked
    assert values["skeins_finished_yd"][0] == pytest.approx(100 * loop / 36)


def test_a_skein_far_from_its_lot_is_asked_about_and_its_neighbors_are_not():
    # Of four skeins of 2, 2, 2 and 5 oz one has 40% of the others' grist: 48% off the mean of all, 60% off theirs.
    values = skeins(*({"lot": "Moss", "gross": weight} for weight in (2.0, 2.0, 2.0, 5.0)))
    assert [message is not None for message in values["skeins_message"][:4]] == [False, False, False, True]
    assert values["skeins_mark"][3] == "?" and "far off that of the other skeins of its lot" in values["skeins_message"][3]
    assert values["skeins_open"] == (0,), "a question is nothing wrong"
    assert values["skeins_deviation"][3] == pytest.approx(0.4 / 0.85 - 1)
    assert values["skeins_off_others"][3] == pytest.approx(0.4 - 1)


@pytest.mark.parametrize(("wraps", "asked"), [((100, 100, 100, 125), False), ((100, 100, 100, 127), True), ((100, 130, 90, 128), False)])
def test_how_far_a_skein_may_be_off_the_others_is_what_they_differ_by(wraps, asked):
    """2.8 times the usual 8%, times √(4 / 3), is 25.9% of four; those of 100, 130 and 90 wraps differ by 19.5%."""
    values = skeins(*({"lot": "Moss", "gross": 4.0, "wraps": float(each)} for each in wraps))
    assert ["Its grist" in (message or "") for message in values["skeins_message"][:4]] == [False, False, False, asked]


LACE_AND_BULKY = ((1.0, "Shawl", 2.0), (1.1, "Shawl", 2.0), (4.0, "Cowl", 2.0), (4.4, "Cowl", 2.0), (2.0, None, 3.0), (0.5, None, 1.0))


@pytest.mark.parametrize(("slip", "asked"), [({}, []), ({"wraps": 170.0}, []), ({"wraps": 171.0}, [0, 1]), ({"project": "Cowl"}, [1, 2, 3])])
def test_two_yarns_of_one_fleece_are_not_asked_about(slip, asked):
    """One fleece, spun fine for a shawl and thick for a cowl, and two more skeins for nothing yet.

    The shawl's have 100 wraps in 1 oz and in 1.1 oz: 100 and 90.9. With 170 wraps the second has 154.5, which is less
    than 1.55 times as fine, and with 171 it has 155.5. For the cowl, beside 25 and 22.7, it is 3.8 times as fine as
    they are, and each of these two is less than half as fine as the others together.
    """
    lines = [{"lot": "Moss", "gross": gross, "plied_of": plies} | ({"project": project} if project else {}) for gross, project, plies in LACE_AND_BULKY]
    lines[1] |= slip
    values = skeins(*lines, projects=[{"name": "Shawl"}, {"name": "Cowl"}])
    assert [row for row in range(6) if "Its grist" in (values["skeins_message"][row] or "")] == asked


def test_a_fiber_finer_than_fiber_in_the_guide_is_asked_about():
    entries = entries_with(US, {"guide": [{"name": "Dream", "diameter_low": 5.0, "diameter_high": 20.0}]})
    values = expected_values(US, entries)
    assert "Fiber from: usually 8 µm or more" in values["guide_message"][0]
    assert values["guide_diameter"][0] == pytest.approx(12.5)


@pytest.mark.parametrize(("sentence", "word", "refused"), [
    ("Is it right? Much.", "twice", False), ("Too much.", "twice", True), ("Too much.", "typed", False), ("Is it right? Much.", "other", True),
])
def test_only_questions_look_at_results_and_only_at_their_own(sentence, word, refused):
    def described():
        return Card("card", "", groups=(Group("All", (Input("typed", "Typed", Number(least=0, most=9)), Result("twice", "Twice", "2 * typed", abs, uses={"x": "typed"}))),),
                    rules=(Rule(f"{word} > 4", lambda values: values[word] > 4, sentence),))

    if refused:
        with pytest.raises(DescriptionError, match=word):
            described()
    else:
        described()


@pytest.mark.parametrize(("typed", "asked"), [
    ({"dyeing_depth": 2.0}, "Depth of shade"), ({"dyeing_depth": 0.02}, None), ({"dyeing_strength": 1.0}, "Strength of stock"), ({"dyeing_strength": 0.05}, None),
    ({"dyeing_depth": 0.1}, "Depth of shade"), ({"dyeing_depth": 0.5}, "Depth of shade"), ({"dyeing_strength": 0.1}, "Strength of stock"),  # .1 and .5, taken for 10% and 50%
])
def test_a_percentage_without_its_sign_is_asked_about_before_dye_is_weighed(typed, asked):
    entries = starting_entries(US) | {"dyeing_mass": (4.0,)} | {key: (value,) for key, value in typed.items()}
    message = expected_values(US, entries)["dyeing_message"][0]
    assert (asked in message and message.startswith("Is it right?")) if asked else message is None


@pytest.mark.parametrize(("described", "loop", "asked"), [(US, 2.0, True), (US, 8.0, False), (METRIC, 1.8, True), (METRIC, 19.9, True), (METRIC, 20.0, False)])
def test_a_loop_in_yards_or_meters_is_asked_about(described, loop, asked):
    values = values_of(described, reels=[{"name": "Porch", "rated": loop}])
    assert ("Loop in use: usually" in (values["reels_message"][0] or "")) == asked
    assert values["reels_loop"][0] == pytest.approx(loop)


@pytest.mark.parametrize(("counted", "asked"), [(30.0, True), (5.0, True), (16.0, False), (6.5, False), (11.0, False)])
def test_wraps_that_do_not_go_with_the_grist_are_asked_about(counted, asked):
    # 190 yd washed in 4 oz are 760 yd/lb, and 0.35 times its root 9.6 wraps.
    values = skeins({"gross": 4.0, "counted_wpi": counted})
    assert values["skeins_expected_wpi"][0] == pytest.approx(9.65, abs=0.1)
    assert ("Wraps counted" in (values["skeins_message"][0] or "")) == asked
    assert values["skeins_wpi"][0] == counted


SAMPLE = {"name": "S", "length": 10.0, "mass": 0.16}  # 1,000 yards in a pound


@pytest.mark.parametrize(("sample", "asked", "stays"), [
    (SAMPLE | {"wpi_1": 11.0}, None, "k"),
    (SAMPLE | {"wpi_1": 20.0}, "K: usually 0.19 to 0.62", "k"),  # 20 / sqrt(1000) = 0.63
    (SAMPLE | {"wpi_1": 6.1}, None, "k"),
    (SAMPLE | {"wpi_1": 5.0}, "K: usually 0.19 to 0.62", "k"),
    (SAMPLE | {"mass": 4.5}, "Its weight: no yarn", "grist_yd_lb"),  # grams in a cell for ounces: 36 yards in a pound
    (SAMPLE | {"mass": 1.5}, None, "grist_yd_lb"),  # 107
    ({"singles_length": 22.0, "plied_length": 10.5}, "of one of the singles", "feed"),  # both of them together: 52%
    ({"singles_length": 10.0, "plied_length": 10.6}, "of one of the singles", "feed"),
    ({"singles_length": 10.0, "plied_length": 9.5}, None, "feed"),
    ({"unwashed": 10.0, "washed": 11.2}, "Were before and after washing exchanged?", "shrinkage"),
    ({"unwashed": 10.0, "washed": 10.8}, None, "shrinkage"),
    ({"unwashed": 10.0, "washed": 7.6}, None, "shrinkage"),
    ({"unwashed": 10.0, "washed": 7.4}, "Were before and after washing exchanged?", "shrinkage"),
    ({"fiber_in": 14.0, "yarn_out": 0.47}, "usually up to 15%", "loss"),  # grams in, ounces out
    ({"fiber_in": 0.56, "yarn_out": 0.47}, "ready to spin when weighed", "loss"),
    ({"fiber_in": 0.53, "yarn_out": 0.47}, None, "loss"),
    ({"singles_turns": 90.0, "singles_piece": 1.0}, "Singles: usually up to 60 per in", "singles_twist"),  # a yard, typed as 1
    ({"ply_turns": 60.0, "ply_piece": 1.0}, None, "ply_twist"),
    ({"ply_turns": 61.0, "ply_piece": 1.0}, "Ply: usually up to 60 per in", "ply_twist"),
])
def test_a_sample_measured_another_way_is_asked_about_and_planned_with(sample, asked, stays):
    values = values_of(US, samples=[{"name": "S"} | sample])
    message = values["samples_message"][0]
    assert (message is None) if asked is None else message.startswith("Is it right?") and asked in message
    assert values[f"samples_{stays}"][0] is not None, "the result stays"


@pytest.mark.parametrize(("reel", "asked"), [
    ({"rated": 72.0, "cord": 180.0, "turns": 5.02}, "far from the rated loop"),  # half turns counted: 35.9 in
    ({"rated": 72.0, "cord": 360.0, "turns": 5.02}, None),
    ({"rated": 72.0, "height": 14.0, "arm_a": 12.0, "arm_b": 12.0}, None),  # 65.5 in, as some are
    ({"rated": 54.0, "height": 14.0, "arm_a": 12.0, "arm_b": 12.0}, "far from the rated loop"),
    ({"cord": 360.0, "turns": 11.0, "height": 14.0, "arm_a": 12.0, "arm_b": 12.0}, "what height and arms suggest"),  # 32.7 in
    ({"cord": 360.0, "turns": 5.5, "height": 14.0, "arm_a": 12.0, "arm_b": 12.0}, None),
])
def test_a_loop_far_from_what_else_is_known_of_the_reel_is_asked_about(reel, asked):
    values = values_of(US, reels=[{"name": "Porch"} | reel])
    message = values["reels_message"][0]
    assert (message is None) if asked is None else message.startswith("Is it right?") and asked in message
    assert values["reels_loop"][0] > 0, "the result stays"


def test_the_head_of_a_log_reads_out_what_its_marks_mean_and_the_desk_counts_the_others():
    """A mark without its sentence helps nobody: the column of the sentences is hidden."""
    good, asking = {"reel": "Porch", "wraps": 100.0, "gross": 80.0}, {"reel": "Porch", "wraps": 100.0, "gross": 2.0}
    unfinished, wrong = {"reel": "Porch"}, {"reel": "Proch", "wraps": 100.0}

    def told(*skeins):
        lines = [{"name": name} | skein for name, skein in zip(("Ash", "Birch", "Cedar", "Elm"), skeins, strict=False)]
        values = values_of(METRIC, reels=[{"name": "Porch", "rated": 180.0}], skeins=lines)
        return values["skeins_first"][0], values["look_skeins"][0]

    assert told(good) == (None, "nothing")
    head, desk = told(asking, good, asking, good)
    assert head.startswith("Cedar: Is it right? Weight: less than 3 g") and desk == "2 questions", "the last that asks: one types at the bottom"
    head, desk = told(unfinished, unfinished, good)
    assert head.startswith("Birch: ") and "Wraps" in head and desk == "2 unfinished"
    head, desk = told(asking, unfinished)
    assert head.startswith("Birch: ") and "Wraps" in head and desk == "1 question, 1 unfinished", "an old question whose answer is yes hides nothing"
    head, desk = told(unfinished, asking, good)
    assert head.startswith("Birch: Is it right?") and desk == "1 question, 1 unfinished"
    head, desk = told(unfinished, asking, wrong, wrong)
    assert head == desk == "Cedar: Reel: choose one of the names on the sheet Reels.", "the first that is wrong before all else"
