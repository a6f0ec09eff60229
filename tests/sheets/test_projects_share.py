"""Projects that share a lot, skeins that belong, and strands that cannot replace each other, in the planner itself.

Worked by hand.

A lot of 20 oz of bought yarn at 1,000 yards to the pound is 1,250 yards. Two projects of 750
yards together lack 250.
"""

import pytest

from entries import entries_with, shown_in
from planners import rows_of
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.language.entries import with_records
from workbookgen.settings import Settings

PLANNER = described(Settings(fibers="", rows=rows_of(4)))
LOT = {"name": "Clover", "state": "yarn or thread", "weight": 20.0}
OTHER = {"name": "Moss", "state": "yarn or thread", "weight": 20.0}
SCARF = {"name": "Scarf", "wanted": 750.0, "margin": 0.0, "grist": 1000.0, "lot_1": "Clover"}
SOCKS = SCARF | {"name": "Socks"}
REEL = {"name": "Reel", "rated": 72.0}


def of_times(*keys, **logs):
    return told(*keys, block="times", **logs)


def told(*keys, block="projects", **logs):
    """What the planner says in these columns of the sheet Projects, or of another log."""
    entries = entries_with(PLANNER, {"fiber": [LOT, OTHER]} | logs)
    [values] = expected_of_keys(PLANNER, [entries], [f"{block}_{key}" for key in keys])
    found = [values[f"{block}_{key}"] for key in keys]
    return found[0] if len(found) == 1 else found


def test_one_project_has_the_lot_to_itself():
    assert told("spare", projects=[SCARF])[0] == pytest.approx(500)


def test_two_projects_on_one_lot_have_one_surplus_and_one_chance():
    spare, chance, verdict = told("spare", "chance", "verdict", projects=[SCARF, SOCKS | {"lot_1": "clover"}])
    assert spare[:2] == (pytest.approx(-250), pytest.approx(-250))
    assert chance[0] == pytest.approx(chance[1]) and chance[0] < 0.5 and verdict[:2] == ("short", "short")


@pytest.mark.parametrize(("wraps", "over"), [(400.0, 50), (375.0, 0)])
def test_what_is_in_its_skeins_is_not_lost_to_another_that_is_short(wraps, over):
    """800 or 750 yards of the scarf lie in a skein of 12.8 oz.

    The lot still gives 7.2 oz, 450 yards, and the socks want 750: they lack 300, the scarf nothing.
    """
    skein = {"name": "S", "reel": "Reel", "wraps": wraps, "washed_loop": 72.0, "gross": 12.8, "lot": "Clover", "project": "Scarf"}
    spare, left, doubt, has, verdict = told("spare", "part_1_left", "part_1_doubt", "have", "verdict", reels=[REEL], skeins=[skein], projects=[SCARF, SOCKS])
    assert spare[:2] == (pytest.approx(over), pytest.approx(-300)) and has[0] == pytest.approx(2 * wraps)
    assert left[:2] == (0, pytest.approx(7.2)) and doubt[0] == 0 and doubt[1] > 0
    assert (verdict[0] == "short") is False and verdict[1] == "short"


def test_a_finished_piece_lacks_nothing_of_a_lot_that_others_lack():
    """The scarf took 5 oz; 15 are left, 937.5 yards, and two others want 750 each."""
    left, over = told("part_1_left", "part_1_over", projects=[SCARF | {"used": 5.0}, SOCKS, SOCKS | {"name": "Hat"}])
    assert left[0] == over[0] == 0 and over[1:3] == (pytest.approx(-9), pytest.approx(-9))


def test_on_different_lots_they_do_not_meet():
    assert told("spare", projects=[SCARF, SOCKS | {"lot_1": "Moss"}])[:2] == (pytest.approx(500), pytest.approx(500))


def test_what_is_finished_takes_no_more_than_it_took():
    spare, verdict = told("spare", "verdict", projects=[SCARF, SOCKS | {"used": 4.0}])
    assert spare[0] == pytest.approx(16 / 16 * 1000 - 750) and verdict[1] == "finished"


@pytest.mark.parametrize(("used", "is_asked"), [(0.0, True), (6.0, True), (7.1, True), (7.3, False), (12.0, False), (20.0, False)])
def test_one_sock_of_two_is_not_the_finished_piece(used, is_asked):
    """750 yards at 1,000 to the pound weigh 12 oz: 6 are one of two socks, and 7.2 three fifths."""
    share, message = told("used_of_need", "message", projects=[SOCKS | {"used": used}])
    assert share[0] == pytest.approx(used / 12)
    assert (message[0] or "").startswith("Is it right? Yarn used: far less than planned.") == is_asked == bool(message[0])
    assert told("used_of_need", projects=[SOCKS])[0] is None


def test_of_a_finished_piece_it_is_not_asked_whether_it_is_enough():
    # The scarf, still to make, takes all that is left of the lot and more; the socks are done and lack nothing.
    scarf, socks = SCARF | {"wanted": 1200.0}, SOCKS | {"used": 4.0}
    shown = told("verdict", "chance_words", "open_have", "open_spare", "open_chance", projects=[scarf, socks])
    assert [column[1] for column in shown] == ["finished", None, None, None, None]
    assert None not in [column[0] for column in shown] and shown[2][0] == pytest.approx(1000)
    projects = [scarf | {"wanted": 700.0}, socks]
    assert told("projects", "projects_words", block="glance", projects=projects) == [("1 of 1",), ("open project has enough yarn",)]


def test_what_others_need_more_than_there_is_is_said_with_what_is_short():
    # 1,250 yd less 1,500 for the socks is none, and 250 more are lacking: 1,000 with the scarf's own 750.
    have, answer = told("open_have", "answer", projects=[SCARF, SOCKS | {"wanted": 1500.0}])
    assert have[0] == 0 and answer[0].startswith("There is 0 yd; it takes 750 yd: 1,000 yd short, for all projects on its lots.")
    most, net, doubt = told("most", "have", "doubt_have", projects=[SCARF, SOCKS | {"wanted": 1300.0}])
    assert net[0] == pytest.approx(-50) and doubt[0] > 25 and most[0] == pytest.approx(2 * doubt[0] - 50), "the range begins below nothing"
    assert "for all projects" not in told("answer", projects=[SCARF, SOCKS])[0], "250 yd are lacking, and of 1,250 each has a part"
    assert "for all projects" not in told("answer", projects=[SCARF | {"wanted": 1500.0}])[0], "it is alone on its lot"


def test_what_lies_in_its_own_skeins_is_there_whatever_others_lack_of_its_lot():
    # 100 wraps of 2 yd are in the scarf's skein. Its lot gives 1,250 yd, of which the socks want 1,500: for all of them
    # 350 are short, 100 of the scarf's own.
    skein = {"name": "One", "reel": "Reel", "wraps": 100.0, "washed_loop": 72.0, "project": "Scarf"}
    scarf = SCARF | {"wanted": 300.0}
    have, net, least, most, skeins, answer = told(
        "open_have", "have", "least", "most", "doubt_skeins", "answer", reels=[REEL], skeins=[skein], projects=[scarf, SOCKS | {"wanted": 1500.0}],
    )
    assert (have[0], net[0]) == (pytest.approx(200), pytest.approx(-50))
    assert (least[0], most[0]) == (pytest.approx(200 - 2 * skeins[0]), pytest.approx(200 + 2 * skeins[0]))
    assert answer[0].startswith("There is 200 yd, very likely 1") and "it takes 300 yd: 350 yd short, for all projects on its lots." in answer[0]


def test_a_larger_reserve_never_lowers_the_chance():
    chances = [told("chance", projects=[SCARF | {"wanted": 1200.0, "margin": margin}])[0] for margin in (0.0, 0.1, 0.5, 2.0)]
    assert len(set(chances)) == 1 and 0.5 < chances[0] < 0.9


def test_strands_do_not_add_up_and_the_scarcest_is_named():
    # Half the weight is wool, half silk: 18 oz of the one and 7 oz of the other make 14 oz of yarn, not 25.
    lots = [LOT | {"weight": 18.0}, OTHER | {"weight": 7.0}]
    strands = [
        {"design": "Both", "name": name, "number": 2000.0, "system": "yards per pound", "place": place, "lot": lot}
        for place, name, lot in ((1.0, "Wool", "Clover"), (2.0, "Silk", "Moss"))
    ]
    have, scarcest, left = told(
        "have", "scarcest", "part_1_unused", fiber=lots, designs=[{"name": "Both", "shrinkage": 0.0}], components=strands,
        projects=[{"name": "Shawl", "wanted": 800.0, "design": "Both"}],
    )
    assert have[0] == pytest.approx(14 / 16 * 1000, rel=0.01) and scarcest[0] == "Silk"
    assert left[0] == pytest.approx(11)


def test_a_skein_serves_its_project_without_a_lot_and_no_other():
    skeins = [{"name": "One", "reel": "Reel", "wraps": 100.0, "washed_loop": 72.0, "project": "Scarf"}, {"name": "Two", "reel": "Reel", "wraps": 50.0, "washed_loop": 72.0}]
    bare = {"name": "Scarf", "wanted": 150.0, "grist": 1000.0}
    have = told("have", reels=[REEL], skeins=skeins, projects=[bare, bare | {"name": "Socks"}])
    assert have[0] == pytest.approx(200) and have[1] == 0
    gone = [skeins[0] | {"gone": "sold"}]
    assert told("have", reels=[REEL], skeins=gone, projects=[bare])[0] == 0


def test_an_unwashed_skein_counts_less_what_washing_takes():
    skein = {"name": "One", "reel": "Reel", "wraps": 100.0, "project": "Scarf"}
    samples = [{"name": "Swatch", "unwashed": 10.0, "washed": 9.0}]
    bare = {"name": "Scarf", "wanted": 150.0, "grist": 1000.0}
    assert told("have", reels=[REEL], skeins=[skein], projects=[bare])[0] == pytest.approx(190)  # the usual 5%
    assert told("have", reels=[REEL], skeins=[skein], samples=samples, projects=[bare | {"sample": "Swatch"}])[0] == pytest.approx(180)


def test_ten_skeins_of_one_reel_do_not_make_the_reel_better():
    reels = [REEL | {"name": name, "tolerance": 1.0} for name in ("A", "B")]
    bare = {"name": "Scarf", "wanted": 150.0, "grist": 1000.0}
    one = [{"name": f"S {number}", "reel": "A", "wraps": 1000.0, "project": "Scarf"} for number in range(4)]
    two = [skein | {"reel": reel} for skein, reel in zip(one, "ABAB", strict=True)]
    by_one, by_two = (told("reel_square", reels=reels, skeins=skeins, projects=[bare])[0] for skeins in (one, two))
    assert by_one == pytest.approx((4 * 1900 / 72 / 3**0.5) ** 2) and by_two == pytest.approx(by_one / 2)


def test_fiber_of_a_design_is_that_of_all_its_lots_and_bought_thread_is_none():
    # 1,000 yd at 1,000 yd/lb, half of it wool, half silk thread; the wool loses a tenth in spinning, and half was lost
    # in washing.
    lots = [
        LOT | {"state": "washed fiber", "own_preparation": 0.2, "own_spinning": 0.1}, OTHER,
    ]
    strands = [
        {"design": "Both", "name": name, "number": 2000.0, "system": "yards per pound", "place": place, "lot": lot}
        for place, name, lot in ((1.0, "Wool", "Clover"), (2.0, "Silk", "Moss"))
    ]
    known = dict(fiber=lots, designs=[{"name": "Both", "shrinkage": 0.0}], components=strands, projects=[{"name": "Shawl", "wanted": 1000.0, "margin": 0.0, "design": "Both"}])
    prepared, bought, to_prepare = told("prepared", "bought", "to_prepare", **known)
    assert prepared[0] == pytest.approx(8 / 0.9) and bought[0] == pytest.approx(8 / 0.9 / 0.8) and to_prepare[0] == pytest.approx(8 / 0.9)
    top = [lots[0] | {"state": "prepared fiber"}, OTHER]
    assert told("prepared", "to_prepare", **known | {"fiber": top}) == [prepared, (0, None, None, None)]


def test_lengths_to_spin_are_before_washing_and_only_what_is_not_in_skeins_is_ahead():
    # 950 yd of finished yarn are 1,000 on the reel at the usual 5%; two singles with 20% take-up are 2,500. A skein of
    # 190 yd leaves four fifths.
    spun = LOT | {"state": "prepared fiber"}
    known = dict(reels=[REEL], fiber=[spun], projects=[SCARF | {"wanted": 950.0, "take_up": 0.2}])
    length, singles, left = of_times("length", "singles", "singles_left", **known)
    assert (length[0], singles[0], left[0]) == (pytest.approx(1000), pytest.approx(2500), pytest.approx(2500))
    skein = {"name": "One", "reel": "Reel", "wraps": 95.0, "washed_loop": 72.0, "project": "Scarf"}
    assert of_times("singles_left", skeins=[skein], **known)[0] == pytest.approx(2000)
    assert of_times("length", **known | {"fiber": [LOT]})[0] == 0  # bought yarn is not spun


def test_a_piece_that_was_only_weighed_when_finished_leaves_its_lot_right():
    # 9 oz in the piece: none logged, 4 oz logged and gone, 4 oz logged that the design shares out.
    finished = SCARF | {"used": 9.0}
    skein = {"name": "One", "reel": "Reel", "wraps": 100.0, "washed_loop": 72.0, "gross": 4.0, "project": "Scarf", "lot": "Clover", "gone": "used"}
    known = dict(block="fiber", fiber=[LOT, OTHER], reels=[REEL])
    assert told("to_come", projects=[finished], **known)[:2] == (pytest.approx(11), pytest.approx(20))
    assert told("to_come", projects=[finished], skeins=[skein], **known)[0] == pytest.approx(11)
    assert told("to_come", projects=[finished | {"used": 3.0}], skeins=[skein], **known)[0] == pytest.approx(16)
    strands = [
        {"design": "Both", "name": name, "number": number, "system": "yards per pound", "place": place, "lot": lot}
        for place, name, lot, number in ((1.0, "Wool", "Clover", 1000.0), (2.0, "Silk", "Moss", 3000.0))
    ]
    of_design = {"name": "Shawl", "wanted": 500.0, "design": "Both", "used": 8.0}
    left = told("to_come", designs=[{"name": "Both"}], components=strands, projects=[of_design], **known)
    assert left[:2] == (pytest.approx(14), pytest.approx(18))  # three quarters wool, one quarter silk


@pytest.mark.parametrize(("fate", "serves"), [(None, True), ("set aside", True), ("Used", True), ("given", False), ("sold", False)])
def test_what_is_knitted_in_already_is_part_of_what_a_project_has(fate, serves):
    """Two skeins of 190 yards, one of them in the piece; whoever counts that as gone spins it again."""
    skein = {"reel": "Reel", "wraps": 95.0, "washed_loop": 72.0, "gross": 4.0, "project": "Scarf", "lot": "Clover"}
    skeins = [skein | {"name": "One"}, skein | {"name": "Two", "gone": fate}]
    in_skeins, left = told("in_skeins", "left_share", projects=[SCARF], skeins=skeins, reels=[REEL])
    assert in_skeins[0] == pytest.approx(380 if serves else 190) and left[0] == pytest.approx(1 - in_skeins[0] / 750)
    spun = told("spun", block="fiber", projects=[SCARF], skeins=skeins, reels=[REEL])
    assert spun[0] == pytest.approx(8), "wherever they went, they are spun"


def test_two_components_of_one_design_with_one_number_are_both_told():
    component = {"design": "Both", "number": 2000.0, "system": "yards per pound", "feed": 1.0}
    components = [component | {"place": 1.0}, component | {"design": "BOTH"}, component | {"place": 2.0}, component | {"design": "Other", "place": 1.0}]
    said = told("message", block="components", designs=[{"name": "Both"}, {"name": "Other"}], components=components)
    fault = "No.: another component of this design has this number; give each its own."
    assert said == (fault, fault, None, None)


def test_what_they_lack_together_is_got_once():
    advice = told("advice", projects=[SCARF, SOCKS])
    assert advice[0] == advice[1] and advice[0].endswith(" Get it once: other projects draw on the same lots.")
    assert "Get it once" not in told("advice", projects=[SCARF | {"wanted": 3000.0}])[0]


LOT_NOT_KNOWN = "No answer yet: what its lots give is unknown. Their lines on the sheet Fiber say what they still need."
# The lot's line is complete, so nobody is sent there.
GRIST_NOT_KNOWN = "No answer yet: how far its fiber goes is not known; choose a sample, or type Grist planned, behind the + above the columns."


@pytest.mark.parametrize(("lot", "project", "said"), [
    ({"name": "Fern", "state": "raw fleece", "weight": 48.0, "grist": 1000.0}, {}, LOT_NOT_KNOWN),  # no breed, so no yield
    ({"name": "Fern", "state": "prepared fiber", "weight": 48.0, "own_spinning": 30.0, "grist": 1000.0}, {}, LOT_NOT_KNOWN),  # 30 for 30%
    ({"name": "Fern", "state": "yarn or thread", "weight": 48.0}, {"grist": None}, GRIST_NOT_KNOWN),
])
def test_a_lot_that_is_not_known_is_not_called_empty(lot, project, said):
    known = {"name": "Vest", "wanted": 750.0, "grist": 1000.0, "lot_1": "Fern"} | project
    words = told("verdict", "answer", "advice", "message", fiber=[lot], projects=[known])
    assert [column[0] for column in words[:3]] == [None] * 3
    assert words[3][0] == said


def test_who_spins_and_forgets_the_project_is_asked_for_it():
    """13 oz of top less 5% are 12.35 oz, 772 yd at 1,000 yd/lb, and 750 are wanted. A skein of 6 oz leaves 397 yd of
    it, as long as nobody says that the skein is for the project."""
    lot = {"name": "Fern", "state": "prepared fiber", "weight": 13.0, "own_spinning": 0.05, "grist": 1000.0}
    skein = {"name": "One", "reel": "Reel", "wraps": 200.0, "gross": 6.0, "washed_loop": 72.0, "lot": "Fern"}
    project = {"name": "Vest", "wanted": 750.0, "lot_1": "Fern"}
    asked = "Is it right? Skeins of its yarn belong to no open project"
    words = ("message", "advice", "verdict")
    message, advice, verdict = told(*words, reels=[REEL], fiber=[lot], projects=[project], skeins=[skein])
    assert verdict[0] == "short"
    assert message[0].startswith(asked)
    assert advice[0].startswith("Are the skeins of no open project for it? Choose it beside them, at For project. Otherwise, to be 90% sure, get ")
    for change in ({"project": "Vest"}, {"gone": "set aside"}):
        message, advice, verdict = told(*words, reels=[REEL], fiber=[lot], projects=[project], skeins=[skein | change])
        assert message[0] is None or asked not in message[0]
        assert "skeins of no open project" not in advice[0]
    # Where there is enough without them, they may as well stay free.
    message, _, verdict = told(*words, reels=[REEL], fiber=[lot | {"weight": 40.0}], projects=[project], skeins=[skein])
    assert message[0] is None and verdict[0] == "enough"


def test_skeins_that_suffice_are_enough_whatever_their_lot_gives():
    lot = {"name": "Fern", "state": "raw fleece", "weight": 48.0}
    skein = {"name": "One", "reel": "Reel", "wraps": 500.0, "gross": 16.0, "washed_loop": 72.0, "project": "Vest", "lot": "Fern"}
    project = {"name": "Vest", "wanted": 750.0, "grist": 1000.0, "lot_1": "Fern"}
    answer, message = told("answer", "message", reels=[REEL], fiber=[lot], skeins=[skein], projects=[project])
    assert answer[0].startswith("There is 1,000 yd") and message[0] is None


def test_no_day_is_promised_while_nobody_knows_how_long_the_spinning_takes():
    def day(**pace):
        entries = entries_with(PLANNER, {"projects": [{"name": "Vest", "wanted": 950.0, "margin": 0.0}]})
        entries |= {"pace_start": (46000.0,)} | {f"pace_{key}": (value,) for key, value in pace.items()}
        keys = ("times_hours", "times_known", "times_ahead", "times_finish")
        return shown_in(PLANNER, entries, keys)

    # 950 yd are 1,000 yd before washing: 2.5 h of winding at 400 yd an hour, 20 h for two strands at 100, 5 h of plying
    # at 200.
    assert day() == [pytest.approx(2.5), "without preparing, spinning, plying", None, None]
    hours, known, ahead, finish = day(spinning=100.0, plying=200.0)
    assert (hours, ahead) == (pytest.approx(27.5), pytest.approx(27.5)) and known == "without preparing"
    assert finish == 46000 - 1 + 33  # 27.5 h at 6 h a week are 32.08 days


@pytest.mark.parametrize(("components", "typed", "strands", "hours"), [
    ((("Top", 2.0), ("Nylon top", 1.0)), {}, 3, 12 + 2 + 1),
    ((("Top", 3.0),), {}, 3, 12 + 2 + 1),
    ((("Top", None), ("Thread", None)), {}, 1, 4 + 2 + 1),  # the thread is bought, and plied all the same
    ((("Top", 2.0), ("Thread", 1.0)), {}, 2, 8 + 2 + 1),
    ((("Top", 2.0), ("Nylon top", 1.0)), {"strands": 4.0}, 3, 12 + 2 + 1),  # asked about: the design has its grist of three
])
def test_hours_are_of_the_singles_that_a_design_has(components, typed, strands, hours):
    """380 yd of socks are 400 before washing: 4 h for each single at 100 yards an hour, 2 h of plying at 200, 1 h of
    winding at 400."""
    tops = [{"name": "Top", "state": "prepared fiber", "weight": 20.0}, {"name": "Nylon top", "state": "Prepared Fiber", "weight": 20.0}]
    lots = [*tops, {"name": "Thread", "state": "Yarn or Thread", "weight": 20.0}]
    made = [{"design": "Sock", "number": 5000.0, "system": "yards per pound", "place": float(place), "lot": lot, "strands": number}
            for place, (lot, number) in enumerate(components, start=1)]
    socks = {"name": "Socks", "wanted": 380.0, "margin": 0.0, "design": "sock"} | typed
    entries = entries_with(PLANNER, {"projects": [socks], "fiber": lots, "designs": [{"name": "Sock"}], "components": made})
    entries |= {"pace_spinning": (100.0,), "pace_plying": (200.0,), "bobbin_project": ("Socks",)}
    [values] = expected_of_keys(PLANNER, [entries], ("times_plies", "times_whole", "bobbin_strands_used"))
    assert [values[key][0] for key in values] == [strands, pytest.approx(hours), strands]


def test_what_is_still_ahead_is_not_worked_before_the_skein_that_was_finished_last():
    """Half of the 27.5 hours above lie in a skein of 475 yd, finished 40 days after the first day: 13.75 h at 6 a week
    are 16.04 days, counted from that day.

    To allow for: 13.75 + √((13.75 · 0.760655)² + 2.75²) = 24.5645 h, 28.66 days. From the first day on, all would have
    been done before that very skein.
    """
    skein = {"name": "One", "reel": "Reel", "wraps": 237.0, "part_wrap": 0.5, "washed_loop": 72.0, "project": "Vest"}
    keys = ("pace_counted_from", "times_ahead", "times_finish", "times_safe", "project_counted_from")

    def day(start=46000.0, **dated):
        other = {"name": "Two", "finished_on": "in spring"}
        entries = entries_with(PLANNER, {"projects": [{"name": "Vest", "wanted": 950.0, "margin": 0.0}]})
        entries = with_records(PLANNER, with_records(PLANNER, entries, "reels", [REEL]), "skeins", [skein | dated, other])
        entries |= {"pace_start": (start,), "pace_spinning": (100.0,), "pace_plying": (200.0,), "project_name": ("Vest",)}
        return shown_in(PLANNER, entries, keys)

    assert day() == [46000, pytest.approx(13.75), 46000 - 1 + 17, 46000 - 1 + 29, 46000]
    assert day(finished_on=46040.0) == [46040, pytest.approx(13.75), 46040 - 1 + 17, 46040 - 1 + 29, 46040]
    # Ill for six weeks: who types the day on which she begins again reads days that can come true.
    assert day(start=46082.0, finished_on=46040.0)[2:] == [46082 - 1 + 17, 46082 - 1 + 29, 46082]
    assert day(start=None)[0] is day(start=None)[2] is None


@pytest.mark.parametrize(("finished", "asked"), [(46365.0, True), (46301.0, True), (46300.0, False), (46184.0, False), (46000.0, False), (45000.0, False)])
def test_a_skein_finished_in_another_year_is_asked_about_where_days_are_counted(finished, asked):
    """The first day is 46,000: a year typed wrong in one skein puts off the days of all projects by 365.

    Who spins on without a break need not type a first day anew, and after half a year nothing is to be asked.
    """
    skein = {"name": "One", "reel": "Reel", "wraps": 237.0, "finished_on": finished}
    entries = entries_with(PLANNER, {"reels": [REEL], "skeins": [skein]})
    bought = entries_with(PLANNER, {"fiber": [{"name": "Top", "bought_on": finished}, {"name": "Cone", "bought_on": "in spring"}]})
    for typed in (entries, bought):  # who dates no skein may date what she buys, and that is later than the first day, too
        [values] = expected_of_keys(PLANNER, [typed | {"pace_start": (46000.0,)}], ("pace_message", "pace_counted_from"))
        assert ((values["pace_message"][0] or "").startswith("Is it right? First day:"), values["pace_counted_from"][0]) == (asked, max(46000.0, finished))


def test_a_day_is_promised_with_the_doubt_of_pace_weeks_and_yarn():
    """The 27.5 hours above, by hand. Pace and weeks are off by 20%, the 950 yd by 5%, which is 1.375 h.

    At least: 27.5 - √((27.5 · 0.329680)² + 2.75²) = 27.5 - 9.4741. At most: 27.5 + √((27.5 · 0.491825)² + 2.75²) = 27.5
    + 13.8019. To allow for: √(0.2² + 0.2²) = 0.282843, e to the double of it 1.760655: 27.5 + √((27.5 · 0.760655)² +
    2.75²) = 27.5 + 21.0980, at 6 h a week 56.70 days.
    """
    keys = ("times_least", "times_most", "times_likely", "times_safe", "pace_doubt", "pace_timed")

    def sure(samples=(), **project):
        entries = entries_with(PLANNER, {"projects": [{"name": "Vest", "wanted": 950.0, "margin": 0.0} | project], "samples": list(samples)})
        entries |= {"pace_start": (46000.0,), "pace_spinning": (100.0,), "pace_plying": (200.0,)}
        [values] = expected_of_keys(PLANNER, [entries], keys)
        return [values[key] if isinstance(values[key], str | float | int | None) else values[key][0] for key in keys]

    assert sure() == [pytest.approx(18.0259, abs=1e-3), pytest.approx(41.3019, abs=1e-3), "18 to 42", 46000 - 1 + 57, pytest.approx(0.2), 0]
    # All of it worked already, or finished: nothing is ahead to be unsure of.
    assert sure(done=27.5)[:4] == sure(used=8.0)[:4] == [None] * 4
    # Paces of 90, 100 and 110 yards an hour differ by 10%: √((4 · 0.04 + 2 · 2 · 0.01) / 6) = 0.182574.
    timed = [{"name": f"Sample {length}", "singles_length": length, "spin_minutes": 60.0} for length in (90.0, 100.0, 110.0)]
    assert sure(timed)[4:] == [pytest.approx(0.182574, abs=1e-6), 3]
