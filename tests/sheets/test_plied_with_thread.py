"""A single plied with a bought thread, by hand: the thread is used up by length, the wool by what is left of the
weight, and washing takes of both.

A single of 2,000 yd/lb beside a thread of 8,000 yd/lb fed 1.05 to 1 weighs 1/2,000 + 1.05/8,000 lb a yard. A cone of 4
oz holds 2,000 yd of thread, for 1,904.8 yd of yarn as it is plied, and 1,809.5 yd once it has lost 5% in washing.
"""

import pytest

from entries import entries_with, shown_in
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

PLANNER = described(Settings(units="us"))
LOTS = [{"name": "Fog", "state": "prepared fiber", "weight": 40.0, "own_spinning": 0.0}, {"name": "Cone", "state": "yarn or thread", "weight": 4.0}]
STRANDS = [
    {"design": "Tweed", "name": "Single", "number": 2000.0, "system": "yards per pound", "place": 1.0, "lot": "Fog"},
    {"design": "Tweed", "name": "Thread", "number": 8000.0, "system": "yards per pound", "place": 2.0, "lot": "Cone", "feed": 1.05},
]
PLIED = 1 / (1 / 2000 + 1.05 / 8000)  # yards in a pound, 1,584.2
REEL = {"name": "Reel", "rated": 72.0}
SHAWL = {"name": "Shawl", "wanted": 1500.0, "margin": 0.0, "design": "Tweed"}


def told(*keys, design=None, **records):
    logs = {"reels": [REEL], "fiber": LOTS, "designs": [{"name": "Tweed", "wanted": 1000.0} | (design or {})], "components": STRANDS, "projects": [SHAWL]} | records
    entries = entries_with(PLANNER, logs)
    [values] = expected_of_keys(PLANNER, [entries], keys)
    return [values[key] for key in keys]


def skeins(number, ounces):
    """Of 200 yards each on the reel."""
    return [{"name": f"T {place}", "reel": "Reel", "wraps": 100.0, "gross": ounces, "design": "Tweed", "project": "Shawl"} for place in range(number)]


def test_a_finished_yard_takes_more_than_a_yard_of_each_strand():
    grist, length, spool = told("designs_grist_yd_lb", "components_length", "components_mass")
    assert grist[0] == pytest.approx(PLIED * 0.95)
    assert length[:2] == (pytest.approx(1000 / 0.95), pytest.approx(1050 / 0.95)) and spool[1] == pytest.approx(1050 / 0.95 / 8000 * 16)
    unshrunk = told("designs_grist_yd_lb", "components_length", design={"shrinkage": 0.0})
    assert unshrunk[0][0] == pytest.approx(PLIED) and unshrunk[1][1] == pytest.approx(1050)


@pytest.mark.parametrize("ounces", [1.6, 16 * 200 / PLIED, 2.6])
def test_the_thread_goes_by_length_however_thick_the_single_is(ounces):
    spun, has, scarcest = told("fiber_spun", "projects_have", "projects_scarcest", skeins=skeins(3, ounces))
    thread = 600 * 1.05 / 8000 * 16
    assert spun[:2] == (pytest.approx(3 * ounces - thread), pytest.approx(thread))
    assert has[0] == pytest.approx(2000 / 1.05 * 0.95) and scarcest[0] == "Thread"


def test_skeins_lighter_than_their_thread_took_no_wool():
    assert told("fiber_spun", skeins=skeins(3, 0.3))[0][:2] == (0, pytest.approx(600 * 1.05 / 8000 * 16))


def test_a_skein_that_was_not_weighed_took_the_wool_that_its_design_says():
    """Its 200 yards hold 0.42 oz of thread, and the rest of what 200 yards of the design weigh is wool."""
    thread, yarn = 200 * 1.05 / 8000 * 16, 16 * 200 / PLIED
    spun = told("fiber_spun", skeins=[*skeins(3, 1.6), *skeins(1, None)])[0]
    assert spun[:2] == (pytest.approx(3 * (1.6 - thread) + yarn - thread), pytest.approx(4 * thread))


def test_two_lots_of_one_strand_are_used_in_proportion():
    lots, strands = [*LOTS, LOTS[0] | {"name": "Gull", "weight": 10.0}], [STRANDS[0] | {"other_lot": "Gull"}, STRANDS[1]]
    wool = 3 * 2.6 - 600 * 1.05 / 8000 * 16
    spun = told("fiber_spun", skeins=skeins(3, 2.6), fiber=lots, components=strands)[0]
    assert spun[0] == pytest.approx(wool * 0.8) and spun[2] == pytest.approx(wool * 0.2)


def test_washing_is_in_the_doubt_of_what_a_design_still_gives():
    common = told("projects_common_doubt")[0][0]
    assert common == pytest.approx((0.005**2 + (0.03 / 0.95) ** 2) ** 0.5)
    assert told("projects_common_doubt", design={"shrinkage": 0.2})[0][0] == pytest.approx((0.005**2 + (0.01 / 0.8) ** 2) ** 0.5)
    assert told("projects_common_doubt", projects=[SHAWL | {"grist": 1500.0}])[0][0] == pytest.approx(0.005)


def test_what_washing_takes_of_a_design_is_taken_of_its_projects_and_skeins():
    """By hand: a design that loses an eighth. Of 200 yd on the reel 175 are left, not 190; 1,500 yd are plied as
    1,714.3, not as 1,578.9, and its singles for bobbins are those of the design as it is plied. A sample that the
    project plans with goes before it: of a tenth, 180 yd and 1,666.7.
    """
    lines = [*skeins(1, 1.6), skeins(1, 1.6)[0] | {"project": None, "name": "Free"}]
    keys = ("skeins_finished_yd", "skeins_known_from", "projects_unwashed", "projects_in_skeins", "skeins_shrink_part")
    finished, known, unwashed, held, doubt = told(*keys, design={"shrinkage": 0.125}, skeins=lines)
    assert finished[:2] == (pytest.approx(175), pytest.approx(175)) and known[0] == "shrinks as its sample"
    assert unwashed[0] == pytest.approx(1500 / 0.875) and held[0] == pytest.approx(175)
    assert doubt[0] == pytest.approx(200 * 0.01)
    sample = [{"name": "Swatch", "unwashed": 10.0, "washed": 9.0}]
    finished, known, unwashed, *_ = told(*keys, design={"shrinkage": 0.125}, skeins=lines, samples=sample, projects=[SHAWL | {"sample": "Swatch"}])
    assert finished[:2] == (pytest.approx(180), pytest.approx(175)) and unwashed[0] == pytest.approx(1500 / 0.9)
    finished, known, unwashed, *_ = told(*keys, skeins=lines)
    assert finished[:2] == (pytest.approx(190), pytest.approx(190)) and known[0] == "usual shrinkage" and unwashed[0] == pytest.approx(1500 / 0.95)


def test_bobbins_of_a_project_hold_the_single_that_its_design_has():
    """By hand: beside the thread, its single is still one of 2,000 yd/lb; of the whole yarn it would be one of
    1,584. 1,500 yd of it weigh 12 oz, and 1,575 yd of the thread 3.15 oz more: all of it needs two plying bobbins of
    14 oz.
    """
    cards = {"bobbin_project": ("Shawl",), "bobbin_weighed": (14.0,), "bobbin_take_up": (0.0,)}
    entries = entries_with(PLANNER, {"fiber": LOTS, "designs": [{"name": "Tweed", "shrinkage": 0.0}], "components": STRANDS, "projects": [SHAWL]}) | cards
    keys = ("bobbin_singles", "bobbin_mass", "bobbin_plying_bobbins", "bobbin_bobbins")
    [values] = expected_of_keys(PLANNER, [entries], keys)
    assert [values[key][0] for key in keys] == [pytest.approx(2000), pytest.approx(12), 2, 1]


def told_with_paces(*keys, design=None, cards=None, components=STRANDS, lots=LOTS, project=SHAWL, **records):
    """At 100 yards of single an hour, 200 of ply, and 400 washed."""
    logs = {"fiber": lots, "designs": [{"name": "Tweed", "shrinkage": 0.0} | (design or {})], "components": components, "projects": [project]} | records
    entries = entries_with(PLANNER, logs) | {"pace_spinning": (100.0,), "pace_plying": (200.0,), "pace_finishing": (400.0,)} | (cards or {})
    return shown_in(PLANNER, entries, keys)


HOURS = ("times_spinning", "times_plying", "times_finishing", "times_hours", "times_whole")


def test_threads_that_are_bought_are_plied_and_not_spun():
    """By hand: 1,500 yd of two bought threads are no hours of spinning, 7.5 of plying, 3.75 of washing; no pace of
    spinning is asked for."""
    lots = [LOTS[0] | {"state": "yarn or thread"}, LOTS[1]]
    assert told_with_paces("times_plies", "times_singles", *HOURS, lots=lots) == [0, None, 0, pytest.approx(7.5), pytest.approx(3.75), pytest.approx(11.25), pytest.approx(11.25)]
    unpaced = told_with_paces("times_spinning", "times_whole", "times_known", lots=lots, cards={"pace_spinning": (None,)})
    assert unpaced == [0, pytest.approx(11.25), "all steps"]
    bobbins = {"bobbin_project": ("Shawl",), "bobbin_weighed": (14.0,)}
    assert told_with_paces("bobbin_strands_used", "bobbin_singles", "bobbin_all_singles", lots=lots, cards=bobbins) == [None] * 3
    assert told_with_paces("bobbin_message", lots=lots, cards=bobbins) == ["No answer yet: the yarn of this project is all bought, so there are no singles to spin."]
    assert told_with_paces("bobbin_message", cards=bobbins) == [None]


def test_a_single_that_has_a_design_is_spun_and_not_plied():
    """By hand: 1,500 yd are 15 hours of spinning and 3.75 of washing. Two of it, or a thread, are plied."""
    single = [{"design": "Tweed", "number": 1000.0, "system": "yards per pound", "lot": "Fog"}]
    keys = ("times_plies", *HOURS)
    assert told_with_paces(*keys, components=single) == [1, pytest.approx(15), 0, *[pytest.approx(each) for each in (3.75, 18.75, 18.75)]]
    unpaced = told_with_paces("times_plying", "times_known", components=single, cards={"pace_plying": (None,)})
    assert unpaced == [0, "all steps"]
    assert told_with_paces("times_plying", components=[single[0] | {"strands": 2.0}]) == [pytest.approx(7.5)]
    assert told_with_paces("times_plies", "times_plying") == [1, pytest.approx(7.5)]


def test_no_day_is_told_before_a_first_day_is_typed():
    """By hand: 15 and 7.5 and 3.75 hours at 6 a week are 30.6 days; the 31st, of which day 46,000 is the first, is
    46,030."""
    keys = ("times_hours", "times_finish", "project_counted_from")
    assert told_with_paces(*keys) == [pytest.approx(26.25), None, None]
    assert told_with_paces(*keys, cards={"pace_start": (46000.0,)}) == [pytest.approx(26.25), 46030, 46000]


def test_a_design_without_components_has_no_hours_of_its_own():
    assert told_with_paces("projects_plies", "times_plies", components=[]) == [None, 2]


def test_two_components_of_one_lot_are_told_what_they_are_told_of_its_line_divided_in_two():
    """By hand: 10 oz for 8 and 4 are 2 oz short, 10 of 12 are five sixths. Divided into 6 2/3 and 3 1/3 oz, both last
    for these; of the lot undivided each was told the whole to be short, 750 and 500 yd."""
    single = {"design": "Tweed", "number": 4000.0, "system": "yards per pound", "feed": 1.0}
    strands = [single | {"place": 1.0, "strands": 2.0}, single | {"place": 2.0}]
    fog, two = LOTS[0] | {"weight": 10.0}, [LOTS[0] | {"name": "Fog A", "weight": 20 / 3}, LOTS[0] | {"name": "Fog B", "weight": 10 / 3}]
    shawl, keys = SHAWL | {"wanted": 1000.0}, ("components_message", "projects_part_1_come", "projects_part_2_come")
    five_sixths = [None, pytest.approx(1000 * 5 / 6), pytest.approx(1000 * 5 / 6)]
    assert told_with_paces(*keys, lots=[fog], components=[each | {"lot": "Fog"} for each in strands], project=shawl) == five_sixths
    divided = [each | {"lot": lot["name"]} for each, lot in zip(strands, two, strict=True)]
    assert told_with_paces(*keys, lots=two, components=divided, project=shawl) == five_sixths


ASKED = "Is it right? Strands: its design has another number of singles to spin, which is taken. Empty it, or look at the design."


def test_strands_typed_beside_a_design_are_asked_about_and_not_spun():
    """By hand: two strands typed for a single and a thread were 30 hours of spinning in place of 15, and for two
    threads 30 in place of none. A design without components knows nothing, so that what is typed counts."""
    typed, keys = SHAWL | {"strands": 2.0}, ("projects_plies", "times_spinning", "projects_message")
    assert told_with_paces(*keys, project=typed) == [1, pytest.approx(15), ASKED]
    assert told_with_paces(*keys, project=SHAWL | {"strands": 1.0}) == [1, pytest.approx(15), None]
    lots = [LOTS[0] | {"state": "yarn or thread"}, LOTS[1]]
    assert told_with_paces(*keys, project=typed, lots=lots) == [0, 0, ASKED]
    assert told_with_paces(*keys[:1], project=typed, components=[]) == [2]


def test_a_bought_yarn_that_nobody_plies_takes_no_hours():
    plain = SHAWL | {"design": None, "lot_1": "Cone", "grist": 8000.0}
    assert told_with_paces("times_length", *HOURS, project=plain) == [0] * 6


def test_singles_are_as_long_as_their_feed_says():
    """By hand: a single fed 1.25 to 1 is 1,875 yd for 1,500 yd of yarn, 18.75 hours, not 15; plying and washing take
    11.25 more. What is typed as take-up goes before it, and so does a sample's: of 10%, 1,666.7 yd."""
    fed = [STRANDS[0] | {"feed": 1.25}, STRANDS[1]]
    assert told_with_paces("designs_take_up", *HOURS, components=fed) == [pytest.approx(0.2), *map(pytest.approx, (18.75, 7.5, 3.75, 30, 30))]
    assert told_with_paces("times_spinning", components=fed, project=SHAWL | {"take_up": 0.0}) == [pytest.approx(15)]
    sample = [{"name": "Swatch", "singles_length": 100.0, "plied_length": 90.0}]
    assert told_with_paces("times_spinning", components=fed, samples=sample, project=SHAWL | {"sample": "Swatch"}) == [pytest.approx(1500 / 0.9 / 100)]
    assert told_with_paces("designs_take_up", "times_spinning") == [None, pytest.approx(15)], "the feed of a bought thread is not spun"


def test_bobbins_are_filled_for_singles_as_long_as_their_feed_says():
    """The single is one of 2,000 yd/lb whatever its feed: 1,875 yd of it are 15 oz, on two bobbins of 14."""
    fed = [STRANDS[0] | {"feed": 1.25}, STRANDS[1]]
    bobbins = {"bobbin_project": ("Shawl",), "bobbin_weighed": (14.0,)}
    found = told_with_paces("bobbin_take_up_used", "bobbin_singles", "bobbin_strand", "bobbin_mass", "bobbin_bobbins", "bobbin_message", components=fed, cards=bobbins)
    assert found == [pytest.approx(0.2), pytest.approx(2000), pytest.approx(1875), pytest.approx(15), 2, None]


def test_weeks_of_spinning_in_the_stock_are_of_singles_before_plying_and_washing():
    """By hand: 10 lb to spin at 1,900 yd/lb are 19,000 yd finished and 20,000 as plied, 40,000 of singles; where
    plying takes a fifth, 50,000, and 500 hours. By a sample that loses a tenth in washing, 21,111 as plied."""
    lots = [{"name": "Fog", "state": "prepared fiber", "weight": 160.0, "own_spinning": 0.0, "grist": 1900.0}]
    keys = ("pace_stock", "pace_stock_plied", "pace_stock_singles", "pace_stock_hours")
    assert told_with_paces(*keys, lots=lots) == [*map(pytest.approx, (19000, 20000, 40000, 400))]
    sample = [{"name": "Swatch", "singles_length": 100.0, "plied_length": 80.0}]
    by_sample = {"pace_sample": ("Swatch",)}
    assert told_with_paces(*keys, lots=lots, samples=sample, cards=by_sample) == [*map(pytest.approx, (19000, 20000, 50000, 500))]
    washed = [sample[0] | {"unwashed": 10.0, "washed": 9.0}]
    assert told_with_paces(*keys, lots=lots, samples=washed, cards=by_sample)[1:3] == [pytest.approx(19000 / 0.9), pytest.approx(19000 / 0.9 * 2 / 0.8)]


@pytest.mark.parametrize(("skein", "is_asked"), [
    ({"lot": "Fog"}, True), ({"design": "Tweed"}, False), ({"lot": "Fog", "project": None}, False),
])
def test_a_skein_of_one_lot_for_a_plied_project_is_asked_about(skein, is_asked):
    line = {"name": "T", "reel": "Reel", "wraps": 100.0, "gross": 1.6, "project": "Shawl"} | skein
    message = told("skeins_message", skeins=[line])[0][0] or ""
    assert message.startswith("Is it right? Fiber lot: its project is plied by a design.") == is_asked == bool(message)
    plain = [SHAWL | {"design": None, "lot_1": "Fog", "grist": 2000.0}]
    assert told("skeins_message", skeins=[line | {"design": None, "lot": "Fog"}], projects=plain)[0][0] is None


def test_what_a_thread_is_off_its_label_counts_for_all_of_it():
    """3 skeins took 1.26 oz of the 4; 3% of a label on 1.26 and on 2.74 together is 3% of 4 oz."""
    square, rest = told("fiber_to_come_square", "fiber_to_come", skeins=skeins(3, 1.9))
    assert rest[1] == pytest.approx(2.74) and square[1] + (0.03 * 2.74) ** 2 == pytest.approx((0.03 * 4) ** 2)
    gone = [LOTS[0], LOTS[1] | {"gone": "used"}]
    assert told("fiber_to_come_square", skeins=skeins(3, 1.9), fiber=gone)[0][1] == 0
    assert told("fiber_to_come_square")[0][1] == 0, "of a whole cone, only its own length is asked"


# By hand: of 1,500 yd of yarn, 1,578.9 yd are plied, with 1,657.9 yd of the thread, 0.20724 lb, whatever the single is.
# Planned at 2,000 yd/lb they weigh 0.75 lb: 0.54276 lb of it are singles.
FINER, SAMPLED = {"grist": 2000.0}, {"sample": "Swatch"}
SWATCH = {"name": "Swatch", "length": 20.0, "mass": 0.16}  # 2,000 yd/lb
THREAD = 1500 / 0.95 * 1.05 / 8000 * 16


@pytest.mark.parametrize(("planned", "single"), [({}, 1500 / 0.95 / 2000 * 16), (FINER, 12 - THREAD), (SAMPLED, 12 - THREAD)])
def test_a_thread_is_as_thick_in_a_thin_yarn_as_in_a_thick_one(planned, single):
    """Its cone would seem to last for 2,404 yd of a yarn that is planned at 2,000 yd/lb."""
    of = {"projects": [SHAWL | planned], "samples": [SWATCH]}
    *needs, lasts, has, scarcest = told("projects_part_1_needs", "projects_part_2_needs", "projects_part_2_come", "projects_have", "projects_scarcest", **of)
    assert [each[0] for each in needs] == [pytest.approx(single), pytest.approx(THREAD)]
    assert lasts[0] == pytest.approx(2000 / 1.05 * 0.95) and has[0] == pytest.approx(lasts[0], rel=2e-3) and scarcest[0] == "Thread"


def test_what_washing_takes_of_a_sample_is_taken_of_the_thread():
    """Of 2,000 yd of thread 1,904.8 yd are plied; a sample that lost a tenth leaves 1,714.3."""
    [lasts] = told("projects_part_2_come", projects=[SHAWL | SAMPLED], samples=[SWATCH | {"unwashed": 10.0, "washed": 9.0}])
    assert lasts[0] == pytest.approx(2000 / 1.05 * 0.9)


@pytest.mark.parametrize(("grist", "is_asked"), [(1500.0, False), (1870.0, False), (1890.0, True), (1120.0, True), (40_000.0, True)])
def test_a_grist_far_from_that_of_the_design_is_asked_about(grist, is_asked):
    """Its design makes 1,505 yd/lb. At 40,000 the thread alone is heavier than the yarn."""
    message, verdict = told("projects_message", "projects_verdict", projects=[SHAWL | {"grist": grist}])
    assert ("over a quarter off what its design makes" in (message[0] or "")) == is_asked and verdict[0]


def test_a_design_without_a_thread_keeps_its_shares():
    lots = [LOTS[0], LOTS[1] | {"state": "prepared fiber", "own_spinning": 0.0}]
    [share, message] = told("projects_part_2_share", "projects_message", projects=[SHAWL | {"grist": 2500.0}], fiber=lots)
    assert share[0] == pytest.approx(1.05 / 8000 * PLIED) and "design makes" not in (message[0] or "")


def test_a_yarn_of_two_bought_threads_keeps_its_shares():
    lots = [LOTS[0] | {"state": "yarn or thread", "own_spinning": None}, LOTS[1]]
    [share] = told("projects_part_2_share", projects=[SHAWL | {"grist": 2500.0}], fiber=lots)
    assert share[0] == pytest.approx(1.05 / 8000 * PLIED)
