"""A record that cannot give its answer says what to type, and gives no answer made of less."""

import pytest

from entries import values_of
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

US = described(Settings(units="us"))
METRIC = described(Settings(units="metric"))
SMALL = described(Settings(size="small"))
BODY = {"garment_body": 36.0, "garment_ease": 4.0, "garment_length": 24.0}
VEST = [{"name": "Vest"}]
FRONT = {"project": "Vest", "shape": "rectangle", "width": 20.0, "height": 24.0}
SWATCH = {"swatch_width": 6.0, "swatch_height": 6.0, "swatch_mass": 1.2}


@pytest.mark.parametrize(("sleeve", "area", "message"), [
    ({}, 40 * 24 * 1.05, None),
    ({"sleeve": 18.0, "upper_arm": 14.0, "cuff": 8.0}, (40 * 24 + 22 * 18) * 1.05, None),
    ({"sleeve": 0.0, "upper_arm": 14.0}, 40 * 24 * 1.05, None),
    ({"sleeve": 18.0}, None, "Still to fill in: sleeve around, upper arm."),  # not the body alone
    ({"sleeve": 18.0, "cuff": 8.0}, None, "Still to fill in: sleeve around, upper arm."),  # nor a sleeve that begins with nothing
    ({"sleeve": 18.0, "upper_arm": 0.0}, None, "Still to fill in: sleeve around, upper arm."),
    ({"upper_arm": 14.0}, 40 * 24 * 1.05, "Still to fill in: sleeve length, or 0 for none."),
    ({"cuff": 8.0}, 40 * 24 * 1.05, "Still to fill in: sleeve length, or 0 for none."),
    ({"swatch_width": 6.0, "swatch_height": 6.0}, 40 * 24 * 1.05, "Still to fill in: the swatch's width, height and weight go together."),
])
def test_a_sleeve_without_its_measures_is_not_left_out_in_silence(sleeve, area, message):
    values = values_of(US, BODY | {f"garment_{key}": value for key, value in sleeve.items()})
    assert values["garment_message"][0] == message
    assert values["garment_area"][0] == (area and pytest.approx(area))


@pytest.mark.parametrize(("part", "message"), [
    ({"shape": "triangle", "width": 60.0}, "Still to fill in: its height."),
    ({"shape": "trapezoid", "width": 14.0}, "Still to fill in: its height."),
    ({"shape": "trapezoid", "width": 14.0, "height": 18.0}, "Still to fill in: its other width; of a ring, the hole across."),
    ({"shape": "ring", "width": 20.0}, "Still to fill in: its other width; of a ring, the hole across."),
    ({"shape": "Ring", "width": 8.0, "second": 20.0}, "Other width: the hole of a ring must be less than the ring across."),
    ({"shape": "circle", "width": 20.0}, None),
    ({"shape": "ring", "width": 20.0, "second": 8.0}, None),
    ({"shape": "trapezoid", "width": 14.0, "height": 18.0, "second": 20.0}, None),
])
def test_a_part_without_an_area_says_what_it_lacks(part, message):
    values = values_of(US, projects=VEST, pieces=[{"project": "Vest"} | part])
    assert values["pieces_message"][0] == message
    assert (values["pieces_area"][0] is None) == (message is not None)


@pytest.mark.parametrize(("estimate", "parts", "message"), [
    (SWATCH | {"grist": 1000.0}, True, None),
    (SWATCH, True, "Still to fill in: the grist of the yarn that was weighed."),
    ({"piece_mass": 12.0}, False, "Still to fill in: the grist of the yarn that was weighed."),
    ({"piece_mass": 12.0, "grist": 1000.0}, False, None),
    ({"swatch_width": 6.0, "swatch_mass": 1.2, "grist": 1000.0}, True, "Still to fill in: the swatch's width, height and weight go together."),
    ({"stitches": 5.0}, True, "Still to fill in: stitches and rows go together."),
    (SWATCH | {"grist": 1000.0}, False, "No answer yet: list the parts of this project with their measures, under its name."),
    ({"stitches": 5.0, "rows": 7.0, "relaxed": "fully relaxed"}, False, "No answer yet: list the parts of this project with their measures, under its name."),
    ({"stitches": 5.0, "rows": 7.0, "relaxed": "fully relaxed"}, True, None),
])
def test_an_estimate_says_what_it_lacks(estimate, parts, message):
    values = values_of(US, projects=VEST, pieces=[FRONT] * parts, estimates=[{"project": "Vest"} | estimate])
    assert values["estimates_message"][0] == message
    assert (values["estimates_yarn"][0] is None) == (message is not None)
    assert values["estimates_mark"][0] == (message and "…")
    assert values["estimates_open"][0] == 0, "nothing is wrong"


@pytest.mark.parametrize(("typed", "is_known"), [
    ({"kind": "Romney"}, True), ({}, False), ({"kind": "Cotton"}, False), ({"kind": "Cotton", "own_yield": 1.0}, True),
    ({"own_skirting": 0.1, "own_yield": 0.6, "own_preparation": 0.1, "own_spinning": 0.05}, True), ({"kind": "Silk", "state": "prepared fiber"}, True),
])
def test_what_to_buy_is_not_known_without_losses(typed, is_known):
    values = values_of(US, {f"buying_{key}": value for key, value in ({"length": 2000.0, "grist": 1000.0} | typed).items()})
    assert (values["buying_to_buy"][0] is not None) == is_known
    assert values["buying_message"][0] == (None if is_known else "No answer yet: a loss or the yield is not known. Choose a breed or fiber, or type your own figures.")


@pytest.mark.parametrize(("kind", "diameter", "is_known"), [("Merino", None, True), ("Cotton", None, False), ("Cotton", 15.0, True)])
def test_a_fiber_of_which_the_guide_gives_no_diameter(kind, diameter, is_known):
    own = {"finest_fiber_diameter": diameter, "finest_fiber_density": 1.52} if diameter else {}
    values = values_of(US, {"finest_kind": kind} | own)
    assert (values["finest_grist"][0] is not None) == is_known
    assert (values["finest_message"][0] is None) == is_known


@pytest.mark.parametrize(("typed", "said"), [
    ({"kind": "Merino", "twist": 8.0}, "No answer yet: for the turns in a staple, type Staple length."),  # the guide has none of Merino
    ({"fiber_diameter": 20.0, "twist": 8.0}, "No answer yet: for the turns in a staple, type Staple length."),
    ({"kind": "Merino", "twist": 8.0, "staple": 3.0}, None),
    ({"kind": "Cashmere", "wanted": 8000.0}, "No answer yet: the guide gives no diameter of this fiber. Type it here, and the fiber density if it is not wool."),
    ({"staple": 3.0, "wanted": 8000.0}, "Still to fill in: the fiber diameter, or a breed from the guide."),
    ({"staple": 3.0, "twist": 8.0}, None),
])
def test_the_finest_single_says_what_an_answer_waits_for(typed, said):
    assert values_of(US, {f"finest_{key}": value for key, value in typed.items()})["finest_message"][0] == said


@pytest.mark.parametrize(("line", "typed", "said"), [
    ({"of_goods": 0.12}, {}, "No answer yet: type the goods above, or choose a skein or a lot there."),
    ({"of_goods": 0.12}, {"mass": 4.0}, None),
    ({"of_shade": 0.5}, {"mass": 4.0}, "No answer yet: type the goods and the depth of shade above."),
    ({"of_shade": 0.5}, {"mass": 4.0, "depth": 0.02}, None),
])
def test_a_recipe_for_goods_that_are_not_known_says_so(line, typed, said):
    values = values_of(US, {f"dyeing_{key}": value for key, value in typed.items()}, recipe=[{"name": "One"} | line])
    assert values["recipe_message"][0] == said and (values["recipe_mass"][0] is None) == bool(said)


TOP = {"mass": 4.0, "repeats": 3.0}
GAUGE_OF_PATTERN = {"stitches": 5.0, "own_stitches": 6.0}
ROWS_LACK = "rows, by the pattern and by your swatch; one without the other counts for nothing."
POT = {"volume": 5.0, "temperature": 60.0}


@pytest.mark.parametrize(("block", "typed", "lacks"), [
    ("color", TOP, None),  # strips are all that is asked for
    ("color", TOP | {"row": 30.0}, "Grist of each single, for the length of its colors."),
    ("color", TOP | {"take_up": 0.04}, "Grist of each single, for the length of its colors."),
    ("color", TOP | {"grist": 2800.0, "take_up": 0.04, "row_gauge": 7.0}, "Yarn for one row, for the stripes."),
    ("color", TOP | {"grist": 2800.0, "take_up": 0.04, "row_gauge": 7.0, "row": 30.0}, None),
    ("fabric", {"length": 400.0}, "a weighed swatch, or its stitches and rows."),
    ("fabric", {"width": 20.0}, "a weighed swatch, or its stitches and rows."),
    ("fabric", {"length": 400.0, "stitches": 5.0}, "stitches and rows go together."),
    ("fabric", {"length": 400.0, "stitches": 5.0, "rows": 7.0}, None),
    ("pattern", GAUGE_OF_PATTERN, None),
    ("pattern", GAUGE_OF_PATTERN | {"row_count": 80.0}, ROWS_LACK),
    ("pattern", GAUGE_OF_PATTERN | {"rows": 7.0}, ROWS_LACK),
    ("pattern", GAUGE_OF_PATTERN | {"rows": 7.0, "own_rows": 8.0, "row_count": 80.0}, None),
    ("pattern", GAUGE_OF_PATTERN | {"grist": 1000.0}, "Yarn, by the pattern, for its weight."),
    ("waters", {"volume": 5.0}, "Its temperature, of the water in the pot."),
    ("waters", POT, "Temperature of that, of the water you add."),
    ("waters", POT | {"added_temperature": 200.0}, "how much water, and what you add to it or the temperature wanted."),
    ("waters", {"temperature": 60.0, "added_temperature": 200.0, "target": 120.0}, "how much water, and what you add to it or the temperature wanted."),
    ("waters", POT | {"added_temperature": 200.0, "added": 2.0}, None),
    ("waters", POT | {"added_temperature": 200.0, "target": 120.0}, None),
    ("waters", {"temperature": 60.0, "added_temperature": 200.0, "target": 120.0, "wanted": 10.0}, None),
    ("wheel", {"stamped": 8.0, "wanted": 9.0}, "draft length."),
    ("wheel", {"stamped": 8.0, "wanted": 9.0, "draft": 30.0}, None),
    ("wheel", {"wanted_ratio": 9.0}, "Drive wheel across, for the whorl of the ratio wanted."),
    ("wheel", {"wanted_ratio": 9.0, "wheel": 20.0}, None),
])
def test_what_gives_no_answer_by_itself_says_what_it_lacks(block, typed, lacks):
    message = values_of(US, {f"{block}_{key}": value for key, value in typed.items()})[f"{block}_message"][0]
    assert message == (lacks and f"Still to fill in: {lacks}")


TIMED = "Singles used, for the pace of spinning; of a yarn that is not plied, its length before washing."


@pytest.mark.parametrize(("typed", "lacks"), [
    ({"length": 18.5}, "Length and Its weight go together."),
    ({"mass": 0.35}, "Length and Its weight go together."),
    ({"length": 18.5, "mass": 0.36, "wpi_1": 11.0}, None),
    ({"singles_turns": 40.0}, "Turns, singles, and In singles of go together."),
    ({"singles_turns": 40.0, "singles_piece": 10.0}, None),
    ({"ply_piece": 10.0}, "Turns, ply, and In ply of go together."),
    ({"spin_minutes": 18.0}, TIMED),
    ({"spin_minutes": 18.0, "singles_length": 16.4}, None),
    ({"ply_minutes": 6.0}, "Plied length, for the pace of plying."),
    ({"fiber_in": 0.4, "unwashed": 19.0, "raw_in": 2.0, "singles_length": 20.0}, None),  # to be weighed and measured later
])
def test_a_sample_of_which_half_was_measured(typed, lacks):
    message = values_of(US, samples=[{"name": "Swatch"} | typed])["samples_message"][0]
    assert message == (lacks and f"Still to fill in: {lacks}")


@pytest.mark.parametrize(("measured", "pace", "is_lacking"), [
    ({"wpi_1": 11.0}, {}, True),
    ({"spin_minutes": 20.0, "singles_length": 20.0}, {}, False),
    ({"wpi_1": 11.0}, {"pace_spinning": 60.0}, False),  # chosen for its shrinkage
])
def test_a_sample_without_a_pace(measured, pace, is_lacking):
    values = values_of(US, {"pace_sample": "Swatch"} | pace, samples=[{"name": "Swatch"} | measured])
    assert ("No answer yet by the sample: it has no pace of spinning" in (values["pace_message"][0] or "")) is is_lacking
    assert (values["pace_spin"][0] is None) is is_lacking


@pytest.mark.parametrize(("measured", "is_lacking"), [
    ({"wpi_1": 11.0}, True), ({"length": 20.0, "mass": 0.4}, False), ({"fiber_in": 0.4, "yarn_out": 0.39}, False),
    ({"unwashed": 20.0, "washed": 19.0}, False), ({"singles_length": 21.0, "plied_length": 20.0}, False),
])
def test_a_sample_that_tells_nothing_to_plan_with(measured, is_lacking):
    project = {"name": "Vest", "wanted": 900.0, "grist": 1000.0, "sample": "Swatch"}
    message = values_of(US, projects=[project], samples=[{"name": "Swatch"} | measured])["projects_message"][0] or ""
    assert message.startswith("No answer yet by its sample: it has no grist, loss, shrinkage or take-up.") is is_lacking


@pytest.mark.parametrize(("typed", "is_asked"), [
    ({"unraveled": 22.0}, True),
    ({"unraveled": 22.0, "unraveled_stitches": 20.0}, True),
    ({"relaxed": "fully relaxed"}, True),
    ({"unraveled": 22.0, "unraveled_stitches": 20.0, "stitches": 4.0, "rows": 5.5}, False),
    ({"relaxed": "fully relaxed", "grist": 1200.0} | SWATCH, False),
    ({"unraveled": 22.0, "grist": 1200.0, "piece_mass": 3.0}, False),
])
def test_a_stitch_without_its_gauge(typed, is_asked):
    values = values_of(US, projects=VEST, pieces=[FRONT], estimates=[{"project": "Vest"} | typed])
    assert ((values["estimates_message"][0] or "") == "Still to fill in: stitches and rows, the gauge of what was unraveled or relaxed.") is is_asked
    assert (values["estimates_yarn"][0] is None) is is_asked


@pytest.mark.parametrize(("typed", "area"), [({}, None), ({"length": 480.0}, None), ({"length": 480.0, "grist": 1600.0}, 144)])
def test_a_swatch_without_a_yarn(typed, area):
    """A swatch of 36 sq in and 1.2 oz; 480 yards of 1,600 in a pound weigh 4.8 oz, four swatches."""
    values = values_of(US, {f"fabric_{key}": value for key, value in (SWATCH | typed).items()})
    assert values["fabric_area"][0] == (area and pytest.approx(area))
    assert (values["fabric_message"][0] or "").startswith("No answer yet: type the yarn, and its grist") is (area is None)


@pytest.mark.parametrize(("grist", "message"), [(None, "No answer yet: give the grist of the singles above, or the length."), (2000.0, None)])
def test_bobbins_that_were_weighed_want_a_grist(grist, message):
    values = values_of(US, {"ending_grist": grist} if grist else {}, rack=[{"mass": 2.0}, {"length": 180.0}])
    assert values["rack_message"][:2] == (message, None)
    assert values["ending_strands"][0] == (2 if grist else None)


@pytest.mark.parametrize("third", [{"mass": 1.0}, {"length": "150 yd"}])
def test_of_three_bobbins_two_are_no_two_ply(third):
    """By hand: 200, 180 and 150 yd give 150 yd of a three-ply; without the third, 180 yd of a two-ply were told."""
    rack = [{"length": 200.0}, {"length": 180.0}, third]
    values = values_of(US, {"ending_take_up": 0.0}, rack=rack)
    assert [values[f"ending_{key}"][0] for key in ("strands", "plied", "each", "words")] == [None] * 4
    whole = values_of(US, {"ending_take_up": 0.0}, rack=[*rack[:2], {"length": 150.0}])
    assert [whole[f"ending_{key}"][0] for key in ("strands", "plied", "words")] == [3, pytest.approx(150), "3-ply: chain-ply the rest."]


ONE_BOBBIN = "A ply takes two bobbins, a line each. As a chain, one gives a third of its length, less the take-up."


@pytest.mark.parametrize(("rack", "words"), [
    ([{"length": 200.0}], ONE_BOBBIN),  # the first of them, or the only one
    ([{}, {"mass": 2.0}], ONE_BOBBIN),  # weighed, on the second line
    ([{"length": 200.0}, {"length": "180 yd"}], None),  # the other cannot be read, which is told there
    ([{"length": 200.0}, {"length": 200.0}], "2-ply: of one grist, the bobbins would run out together."),
    ([{"mass": 1.0}, {}, {"length": 125.0}], "2-ply: of one grist, the bobbins would run out together."),  # an ounce of 2,000 yd/lb; a line left free between
    ([{}, {}], None),  # nothing on the rack
])
def test_a_single_bobbin_on_the_rack_is_told_what_it_lacks(rack, words):
    values = values_of(US, {"ending_grist": 2000.0, "ending_take_up": 0.0}, rack=rack)
    assert values["ending_words"][0] == words
    assert (values["ending_plied"][0] is not None) == ("2-ply" in (words or ""))


def test_bobbins_plied_without_a_take_up_are_told_so():
    assert values_of(US, rack=[{"length": 200.0}, {"length": 180.0}])["ending_words"][0] == "2-ply, no take-up reckoned: wind the rest into a ball, and ply it from both ends."


@pytest.mark.parametrize(("second", "tex"), [
    ({"number": 4000.0, "system": "yards per pound"}, 496.055 / 2 + 496.055 / 4),  # 2,000 and 4,000 yards in a pound, in tex
    ({"number": 4000.0}, None),  # no system yet: not the grist of the first alone
    ({"number": 4000.0, "system": "yards"}, None),
])
def test_a_design_is_not_known_by_some_of_its_components(second, tex):
    first = {"design": "Marl", "number": 2000.0, "system": "yards per pound"}
    values = values_of(
        US,
        designs=[{"name": "Marl"}, {"name": "Sock"}], components=[first, {"design": "marl", "place": 2.0} | second, first | {"design": "Sock"}],
    )
    assert values["designs_tex"][0] == (tex and pytest.approx(tex, rel=1e-5)) and values["designs_tex"][1] == pytest.approx(248.03, rel=1e-4)
    assert values["designs_message"][:2] == (None if tex else "No answer yet: one of its components is not complete. Look at its line below.", None)


LOT = {"name": "Clover", "state": "raw fleece", "weight": 100.0}
OWN = {"own_skirting": 0.2, "own_yield": 0.5, "own_preparation": 0.1, "own_spinning": 0.05}
FOLDED = "behind the + above the columns"
BREED = "No answer yet: what it loses on its way to yarn is not known. Choose its breed or fiber, or type your own losses."
LACKED = "No answer yet: the guide lacks a loss or the yield of its fiber. Type your own figures, or what you weighed."
TYPED = {
    "skirting": f"No answer yet: type Own skirting loss, or Skirted once it is weighed, {FOLDED}.",
    "yield": f"No answer yet: type Own scoured yield, or Washed once it is weighed, {FOLDED}.",
    "preparation": f"No answer yet: type Own prep. loss, or Prepared once it is weighed, {FOLDED}.",
    "second": f"No answer yet: type Own second loss, or Prepared once it is weighed, {FOLDED}.",
    "spinning": f"No answer yet: type Own spin. loss, {FOLDED}; or Yarn, once all of it is spun.",
}


@pytest.mark.parametrize(("lot", "message"), [
    ({}, BREED),
    ({"state": "prepared fiber"}, BREED),
    ({"state": "yarn or thread"}, None),
    (OWN, None),
    ({"kind": "Romney"}, None),
    ({"gone": "sold"}, None),  # nobody waits for its yarn
    ({"gone": "Set aside"}, BREED),
    ({"kind": "Cotton"}, LACKED),  # of which the guide gives no yield
    ({"kind": "Wool top or roving", "state": "prepared fiber", "second_way": "combing"}, LACKED),
    ({"kind": "Romney", "scoured_weighed": 80.0}, None),  # of 100 oz, the guide expects 53.125 to be left by scouring: it was less dirty
    (OWN | {"prepared_weighed": 41.0}, None),  # of 100 oz, 40 are expected to be left by scouring
    (OWN | {"yarn_weighed": 36.5}, None),  # and 36 by preparation
    ({"yarn_weighed": 36.5}, None),  # what is weighed needs no losses
    (OWN | {"prepared_weighed": 40.0, "yarn_weighed": 39.0}, None),
    ({"kind": "Cotton", "scoured_weighed": "wet"}, "Washed: type a number above 0 up to 1,000,000 oz, in digits, or empty it."),
])
def test_a_lot_says_what_its_yarn_hangs_on(lot, message):
    values = values_of(US, fiber=[LOT | lot])
    assert values["fiber_message"][0] == message
    assert (values["fiber_yarn"][0] is None) == (message is not None) or "gone" in lot
    assert values["fiber_mark"][0] == (message and ("…" if message.startswith("No answer") else "!"))


@pytest.mark.parametrize(("lot", "missing"), [
    ({}, "skirting"), (OWN | {"own_yield": None}, "yield"), (OWN | {"own_preparation": None}, "preparation"), (OWN | {"second_way": "carding"}, "second"),
    (OWN | {"own_spinning": None}, "spinning"), ({"state": "prepared fiber"}, "spinning"), ({"state": "washed fiber"}, "preparation"),
    ({"state": "washed fiber", "prepared_weighed": 90.0}, "spinning"), ({"state": "prepared fiber", "yarn_weighed": 95.0}, None), (OWN, None),
    ({"yarn_weighed": 50.0}, None), ({"scoured_weighed": 60.0}, "preparation"), ({"prepared_weighed": 55.0}, "spinning"),
])
def test_a_small_planner_has_no_breeds_and_asks_for_the_very_figure(lot, missing):
    values = values_of(SMALL, fiber=[LOT | lot])
    assert values["fiber_message"][0] == (missing and TYPED[missing])
    assert (values["fiber_yarn"][0] is None) == (missing is not None)


@pytest.mark.parametrize("described", [US, SMALL])
def test_a_lot_that_was_spun_and_weighed_needs_nothing_more(described):
    """45 oz of the 100 that were bought; 15 of them are in a skein, 30 elsewhere.

    Nobody weighed in between, and nobody needs to.
    """
    lot = LOT | {"yarn_weighed": 45.0}
    reels = [{"name": "Reel", "rated": 72.0}]
    values = values_of(described, reels=reels, fiber=[lot], skeins=[{"name": "A", "reel": "Reel", "wraps": 90.0, "gross": 15.0, "lot": "Clover"}])
    assert values["fiber_yarn"][0] == pytest.approx(45) and values["fiber_kept"][0] == pytest.approx(0.45) and values["fiber_to_come"][0] == pytest.approx(30)
    assert values["fiber_to_come_doubt"][0] == 0 and values["fiber_lost_spinning"][0] is None, "what each stage took, nobody knows"
    too_much = values_of(described, fiber=[LOT | {"yarn_weighed": 106.0}])
    assert too_much["fiber_yarn"][0] is None and too_much["fiber_message"][0] == "Yarn: more than before. Dry it, or correct the earlier weight."


@pytest.mark.parametrize("described", [US, SMALL], ids=["whole", "small"])
def test_a_skein_of_a_lot_wants_its_weight_for_the_lot_to_count_it(described):
    """Until then, 200 yd take what the lot's other 200 yd took: 2 oz of its 4, and nothing is left."""
    told = "No answer yet: what it took of its fiber is expected by the grist of its project or its lot's skeins, if known. Type its weight once it is dry."
    reel, top = {"name": "Reel", "rated": 72.0}, {"name": "Top", "state": "yarn or thread", "weight": 4.0}
    skeins = [{"name": name, "reel": "Reel", "wraps": 100.0} | more for name, more in (("A", {"lot": "Top"}), ("B", {"lot": "Top", "gross": 2.0}), ("C", {}))]
    values = values_of(described, reels=[reel], fiber=[top], skeins=skeins)
    assert values["skeins_message"][:3] == (told, None, None)
    assert values["skeins_length_yd"][0] == 200 and values["skeins_guess"][0] == pytest.approx(2.0) and values["fiber_to_come"][0] == pytest.approx(0.0, abs=1e-9)


def test_a_skein_not_yet_weighed_takes_what_its_project_lets_expect():
    """190 yd washed, of 200 on the reel, at 760 yd/lb (47.5 yd/oz) take 4 oz; without a known grist, none yet."""
    reels, top = [{"name": "Reel", "rated": 72.0}], {"name": "Top", "state": "prepared fiber", "weight": 20.0, "own_spinning": 0.0}
    projects = [{"name": "Vest", "wanted": 500.0, "grist": 760.0, "lot_1": "Top"}]
    skein = {"name": "A", "reel": "Reel", "wraps": 100.0, "lot": "Top"}
    for more, taken in (({"project": "Vest"}, 4.0), ({}, 0.0), ({"project": "Vest", "gross": 5.0}, 5.0)):
        values = values_of(US, reels=reels, fiber=[top], skeins=[skein | more], projects=projects)
        assert values["fiber_spun"][0] == pytest.approx(taken) and values["fiber_to_come"][0] == pytest.approx(20 - taken)
    finished = values_of(US, reels=reels, fiber=[top], skeins=[skein | {"project": "Vest", "gone": "used"}], projects=[projects[0] | {"used": 4.0}])
    assert finished["fiber_to_come"][0] == pytest.approx(16.0), "taken once, by the skein, and not again by the piece"


SHADE = {"dyeing_depth": 0.02}


@pytest.mark.parametrize(("chosen", "grams", "message"), [
    ({"dyeing_skein": "Weighed"}, 4 * 28.349523125 * 0.02, None),
    ({"dyeing_skein": "Not weighed"}, None, "No answer yet: what is chosen has no weight yet. Weigh it, or type the goods."),
    ({"dyeing_lot": "Unknown"}, None, "No answer yet: what is chosen has no weight yet. Weigh it, or type the goods."),
    ({"dyeing_lot": "Top"}, 40 * 28.349523125 * 0.02, "Is it right? Or a washed lot: some of it is spun, and all of it is taken here. Type the weight of what you dye."),
    ({"dyeing_lot": "Top", "dyeing_mass": 36.0}, 36 * 28.349523125 * 0.02,
     "Is it right? Goods: the weight that is typed wins over the skein or the lot. Empty it to take that of the chosen one."),
    ({"dyeing_lot": "Whole"}, 40 * 28.349523125 * 0.02, None),
])
def test_what_is_dyed_has_a_weight(chosen, grams, message):
    """By hand: 2% of 4, 40 and 36 ounces. Of the lot of 40 ounces 4 lie in a skein, so that 36 are left to dye."""
    lots = [{"name": "Top", "state": "prepared fiber", "weight": 40.0}, {"name": "Whole", "state": "prepared fiber", "weight": 40.0},
            {"name": "Unknown", "state": "raw fleece", "weight": 40.0}]
    skeins = [{"name": "Weighed", "reel": "Reel", "wraps": 100.0, "gross": 4.0, "lot": "Top"}, {"name": "Not weighed", "reel": "Reel", "wraps": 100.0, "lot": "Top"}]
    values = values_of(US, SHADE | chosen, reels=[{"name": "Reel", "rated": 72.0}], fiber=lots, skeins=skeins)
    assert values["dyeing_dye"][0] == (grams and pytest.approx(grams)) and values["dyeing_message"][0] == message


@pytest.mark.parametrize(("second", "left", "over"), [(None, 20.0, 4.0), ("Unknown", None, None)])
def test_a_project_has_nothing_told_of_lots_that_are_not_known(second, left, over):
    """By hand: 1,000 yd at 1,000 yd/lb need 16 oz, of which 20 are there. Of a raw fleece nobody knows how much is
    lost: with it, or alone, the strand was told to have 20 oz, or 0 and 16 short."""
    lots = [{"name": "Top", "state": "prepared fiber", "weight": 20.0, "own_spinning": 0.0}, {"name": "Unknown", "state": "raw fleece", "weight": 40.0}]
    project = {"name": "Vest", "wanted": 1000.0, "margin": 0.0, "grist": 1000.0, "lot_1": "Top", "lot_2": second}
    values = values_of(US, {"project_name": "Vest"}, fiber=lots, projects=[project])
    shown = [values[f"project_{key}_1"][0] for key in ("needs", "left", "over", "used", "has")]
    assert shown == [pytest.approx(16), *(each and pytest.approx(each) for each in (left, over, left and 0.8, left and 1.25))]
    if second:
        assert values["project_unused_1"][0] is values["project_doubt_1"][0] is None
        alone = values_of(US, {"project_name": "Vest"}, fiber=lots, projects=[project | {"lot_1": "Unknown", "lot_2": None}])
        assert [alone[f"project_{key}_1"][0] for key in ("needs", "left", "over", "unused", "has")] == [pytest.approx(16), None, None, None, None]
