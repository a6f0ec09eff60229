"""Pace, hours and the day of the end, with the calendar as an outside witness."""

from datetime import date, timedelta
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.reference import planning, yarn_count
from workbookgen.reference.calculation import OutOfValidity
from workbookgen.units import Quantity

from .quantities import hours, yards


def test_hours_of_lengths_and_of_masses():
    # 25 yards in a quarter of an hour are 100 in one hour; 400 yards take four.
    pace = planning.pace(yards(25), Quantity(15, "minute"))
    assert pace.m_as("yard/hour") == approx(100)
    assert planning.hours(yards(400), pace).m_as("hour") == approx(4)
    # An ounce in an hour, a pound in sixteen.
    assert planning.hours(Quantity(1, "pound"), Quantity(1, "oz/hour")).m_as("hour") == approx(16)


@given(length=st.floats(1, 1e5), minutes=st.floats(0.1, 1e4))
def test_what_was_timed_takes_the_time_it_took(length, minutes):
    pace = planning.pace(yards(length), Quantity(minutes, "minute"))
    assert planning.hours(yards(length), pace).m_as("minute") == approx(minutes)


def test_a_single_is_not_plied():
    # By hand: 400 yards at 200 yards an hour.
    length, pace = Quantity(400, "yard"), Quantity(200, "yard/hour")
    assert planning.plying_hours(length, 2, pace).m_as("hour") == approx(2)
    assert planning.plying_hours(length, 1, pace).m_as("hour") == planning.plying_hours(length, 1).m_as("hour") == 0
    assert planning.plying_hours(length, 0, pace).m_as("hour") == 0
    # With a bought thread, or of bought threads alone, it is.
    for singles, bought, hours_of_plying in ((1, 0.3, 2), (0, 1, 2), (1, 0, 0), (3, 0, 2)):
        assert planning.plying_hours(length, singles, pace, bought).m_as("hour") == approx(hours_of_plying)
    for wrong in (
        lambda: planning.plying_hours(length, 2),
        lambda: planning.plying_hours(length, 2, 0 * pace),
        lambda: planning.plying_hours(length, 1.5, pace),
        lambda: planning.plying_hours(length, -1, pace),
    ):
        with pytest.raises(ValueError):
            wrong()


def test_it_is_said_what_the_hours_in_all_are_without():
    assert planning.steps_known(hours(1), hours(2), hours(3), hours(0)) == "all steps"
    assert planning.steps_known(preparing=hours(1), finishing=hours(2)) == "without spinning, plying"
    assert planning.steps_known(spinning=hours(1), plying=hours(1), finishing=hours(2)) == "without preparing"
    with pytest.raises(ValueError, match="at least one step"):
        planning.steps_known()
    with pytest.raises(ValueError, match="Hours"):
        planning.steps_known(spinning=hours(-1))


def test_hours_in_all_leaves_out_what_is_not_known():
    steps = [hours(4), None, Quantity(90, "minute"), hours(0), None, Quantity(0.5, "hour")]
    assert planning.hours_in_all(*steps).m_as("hour") == approx(6)
    assert planning.hours_in_all(hours_6=hours(2)).m_as("hour") == approx(2)


def test_weeks_are_hours_by_the_hours_of_a_week():
    assert planning.weeks(hours(30), hours(4)) == approx(7.5)


@pytest.mark.parametrize(
    "work, per_week, days",
    [
        (5, 5, 7),
        (1, 7, 1),
        (1.001, 7, 2),
        (0.1 + 0.2, 0.1, 21),  # in binary a hair above 21: it must not cost a day
        (30, 4, 53),  # 52.5 days
    ],
)
def test_finish_day(work, per_week, days):
    assert planning.finish_day(45000, hours(work), hours(per_week)) == 45000 - 1 + days


def test_a_week_of_work_from_a_monday_ends_on_the_sunday():
    monday, sunday = date(2026, 11, 2), date(2026, 11, 8)
    assert planning.finish_day(monday.toordinal(), hours(7), hours(7)) == sunday.toordinal()
    assert planning.finish_day(monday.toordinal(), hours(0.5), hours(7)) == monday.toordinal()


def test_no_work_ends_after_the_last_day_that_spreadsheets_have():
    last = (date(9999, 12, 31) - date(1899, 12, 30)).days  # outside witness: the calendar of datetime
    assert planning.finish_day(last, hours(1), hours(7)) == last
    with pytest.raises(ValueError, match="9999"):
        planning.finish_day(last, hours(2), hours(7))


@given(start=st.dates(date(2000, 1, 1), date(2100, 1, 1)), work=st.integers(1, 2000), per_week=st.integers(1, 80))
def test_the_calendar_counts_the_same_days(start, work, per_week):
    # Outside witness: exact fractions for the days, datetime for the calendar.
    days = -((-7 * Fraction(work, per_week)) // 1)
    finish = planning.finish_day(start.toordinal(), hours(work), hours(per_week))
    assert date.fromordinal(int(finish)) == start + timedelta(days=int(days) - 1)  # the start is a day of work


@given(mass=st.floats(0, 1e5), grist=st.floats(100, 2e4), speed=st.floats(1, 1e3))
def test_the_stock_takes_the_hours_of_its_length(mass, grist, speed):
    stock, fineness = Quantity(mass, "g"), Quantity(grist, "yard/pound")
    pace = Quantity(speed, "yard/hour")
    by_length = planning.hours(yarn_count.length_of_mass(stock, fineness), pace)
    assert by_length.m_as("hour") == approx(mass / 453.59237 * grist / speed)


def test_bought_yarn_is_not_spun_again():
    assert [planning.still_to_spin(yards(900), stage) for stage in (1, 4)] == [yards(900)] * 2
    for no_fiber in (0, 1.5, 5, 6):
        with pytest.raises(ValueError, match="Only raw"):
            planning.still_to_spin(yards(900), no_fiber)
    with pytest.raises(ValueError, match="negative"):
        planning.still_to_spin(yards(-1), 1)


def test_years_of_spinning_in_the_stock():
    # 10 pounds at 1,600 yards per pound and 80 yards an hour: 200 hours, 50 weeks of 4 hours.
    stock = planning.hours(
        yarn_count.length_of_mass(Quantity(10, "pound"), Quantity(1600, "yard/pound")), Quantity(80, "yard/hour")
    )
    assert stock.m_as("hour") == approx(200)
    assert planning.weeks(stock, hours(4)) == approx(50)


def test_hours_done_were_counted_and_leave_the_doubt_of_all_the_work():
    # By hand: of 40 hours reckoned 30 are worked, and no skein is there. At a pace off by ln 1.25 / 2, as a factor of
    # 1.25, all 40 hours may be 50 or 32.
    u = np.log(1.25) / 2
    work = dict(ahead=hours(10), hours=hours(40), left=1, u_pace=u, by_need=hours(0))
    assert planning.most_hours(**work).m_as("hour") == approx(20)
    assert planning.least_hours(**work).m_as("hour") == approx(2)
    assert planning.least_hours(**work | {"ahead": hours(5)}).m_as("hour") == 0
    # With half of it in skeins, half the work can be wrong.
    assert planning.most_hours(**work | {"ahead": hours(20), "left": 0.5}).m_as("hour") == approx(25)
    # Weeks that are off alone stretch the calendar by their own factor: 10 hours stretch to 10 and a quarter of 40.
    assert planning.hours_to_allow(**work | {"u_pace": 0}, u_weekly=u).m_as("hour") == approx(20)


def test_hours_and_skeins_together_tell_of_a_slow_hand_or_of_full_bobbins():
    # By hand: half of 40 hours' yarn is in skeins, and 25 hours are worked. At the pace planned five of them are in
    # singles, and 15 are ahead. If no singles wait, the half took 25 hours, and so will the rest. A pace off by ln 1.25
    # / 2 makes 50 hours or 32 of it, of which 25 or 7 are ahead.
    u = np.log(1.25) / 2
    work = dict(ahead=hours(15), hours=hours(40), left=0.5, u_pace=u, by_need=hours(0), done=hours(25))
    assert planning.most_hours(**work).m_as("hour") == approx(25)
    assert planning.least_hours(**work).m_as("hour") == approx(7)
    # By a factor of 1.15 all of it takes 46 hours, so that 21 are ahead; by a half more, the skeins show how slow.
    assert planning.most_hours(**work | {"u_pace": np.log(1.15) / 2}).m_as("hour") == approx(21)
    assert planning.most_hours(**work | {"u_pace": np.log(1.5) / 2}).m_as("hour") == approx(25)
    # Weeks of four fifths of their hours stretch those 25 to 31.25, and all of it to 50, less 25.
    assert planning.hours_to_allow(**work | {"u_pace": 0}, u_weekly=u).m_as("hour") == approx(25)
    assert planning.hours_to_allow(**work, u_weekly=0.0).m_as("hour") == approx(25)
    # Fewer hours than the skeins take by the plan are not all that were worked: nothing is learned of them.
    few = work | {"ahead": hours(20), "done": hours(3)}
    assert planning.most_hours(**few).m_as("hour") == approx(25)
    assert planning.least_hours(**few).m_as("hour") == approx(16)
    # Hours as planned, all used up with half in skeins: half of them are ahead, at the pace planned.
    late = work | {"ahead": hours(20), "done": hours(40)}
    assert planning.least_hours(**late).m_as("hour") == approx(16)
    assert planning.most_hours(**late).m_as("hour") == approx(25)


def test_two_timed_paces_show_how_much_they_differ():
    # 90 and 110 are 10 off their mean: √(100 + 100) is 14.142.
    assert planning.pace_variation(Quantity([90.0, np.nan, 110.0], "m/hour")) == approx(0.141421, rel=1e-5)


def test_without_timed_paces_the_usual_figure_stands():
    assert planning.pace_uncertainty(0.2) == 0.2


def test_rounding_never_narrows_what_is_very_likely():
    assert planning.likely_hours(hours(41.9), hours(91.1)) == "41 to 92"
    assert planning.likely_hours(hours(0.2), hours(0.3)) == "0 to 1"


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: planning.pace_variation(Quantity([90.0], "m/hour")), "two samples"),
        (lambda: planning.pace_variation(Quantity([90.0, 0.0], "m/hour")), "pace"),
        (lambda: planning.pace_uncertainty(0.2, variation=0.1, count=1), "at least two"),
        (lambda: planning.least_hours(hours(0), hours(40), 1, 0.2, hours(2)), "ahead"),
        (lambda: planning.hours_by_need(hours(40), yards(50), yards(0)), "yarn to make"),
        (lambda: planning.likely_hours(hours(1), hours(1e6)), "no plan"),
        (lambda: planning.likely_hours(hours(1), hours(2e6)), "no plan"),
    ],
)
def test_doubts_of_no_work_are_refused(wrong, words):
    with pytest.raises(OutOfValidity, match=words):
        wrong()


ONE_PACE = Quantity(1, "m/hour")


def test_own_pace_beats_the_sample():
    own, sample = Quantity(80, "yard/hour"), Quantity(90, "yard/hour")
    assert planning.pace_in_use(own, sample) == own
    assert planning.pace_in_use(sample=sample) == sample
    assert planning.pace_in_use(Quantity(30, "g/hour"), Quantity(0, "g/hour")) == Quantity(30, "g/hour")


def test_own_take_up_beats_the_samples():
    assert planning.take_up_in_use(0.05, 0.1) == 0.05
    assert planning.take_up_in_use(0, 0.1) == 0
    assert planning.take_up_in_use(sample=Quantity(10, "percent")) == approx(0.1)


@given(singles=st.floats(1, 1e5), take_up=st.floats(0, 0.9))
def test_the_take_up_of_a_sample_asks_for_the_singles_it_took(singles, take_up):
    # Two strands: what the sample's plying left is the yarn wanted now.
    wanted = (1 - take_up) * yards(singles)
    again = planning.singles_length(wanted, 2, planning.take_up_in_use(sample=take_up))
    assert again.m_as("yard") == approx(2 * singles)


def test_hours_counted_beat_hours_planned():
    assert planning.hours_in_use(hours(30), hours(20)) == hours(30)
    assert planning.hours_in_use(planned=hours(20)) == hours(20)
    assert planning.hours_in_use(hours(0), hours(20)) == hours(0)


def test_what_is_done_is_no_longer_ahead():
    assert planning.hours_ahead(hours(30), done=Quantity(90, "minute")).m_as("hour") == approx(28.5)
    assert planning.hours_ahead(hours(30)) == hours(30)


@pytest.mark.parametrize("done", [4, 4 * (1 - 1e-12), 5])
def test_work_that_took_longer_than_planned_and_shows_nothing_is_not_called_done(done):
    with pytest.raises(ValueError, match="hours are used up"):
        planning.hours_ahead(hours(4), done=hours(done))
    assert planning.hours_ahead(hours(4), 0.75, hours(done)).m_as("hour") == approx(3), "a quarter is in skeins"
    assert planning.hours_ahead(hours(0), done=hours(done)) == hours(0), "nothing was to be done"


def test_skeins_bear_out_what_is_ahead():
    assert planning.hours_ahead(hours(30), 0.25, hours(0)).m_as("hour") == approx(7.5)
    assert planning.hours_ahead(hours(30), 0.25, hours(5)).m_as("hour") == approx(7.5), (
        "three quarters are in skeins, whatever was told"
    )
    assert planning.hours_ahead(hours(30), 0.75, hours(20)).m_as("hour") == approx(10), (
        "there is work in what is not a skein yet"
    )
    assert planning.hours_ahead(hours(30), 0.5, hours(40)).m_as("hour") == approx(15), (
        "half is not spun, though the hours are used up"
    )


def test_what_is_finished_has_nothing_ahead():
    assert planning.hours_ahead(hours(4), done=hours(1), used=Quantity(300, "g")) == hours(0)
    assert planning.hours_ahead(hours(4), used=Quantity(0, "g")) == hours(0)


@given(whole=st.floats(0.01, 1e4), part=st.floats(0, 0.999))
def test_done_and_ahead_cover_the_whole(whole, part):
    ahead = planning.hours_ahead(hours(whole), done=hours(whole * part)).m_as("hour")
    assert ahead > 0 and ahead + whole * part == approx(whole)


def test_a_project_in_several_lines_has_the_hours_of_all():
    lines, worked = ["Shawl", "hat", "", "shawl"], hours([30.0, 4.0, 7.0, 2.0])
    assert planning.hours_planned("SHAWL", lines, worked).m_as("hour") == 32
    assert planning.hours_planned(["hat", "shawl"], lines, worked).m_as("hour").tolist() == [4, 32]


def test_a_project_without_hours_is_told_from_one_with_some():
    with pytest.raises(OutOfValidity, match="no hours planned yet") as refusal:
        planning.hours_planned(["hat", "shawl", "mitts"], ["hat", "mitts"], hours([4.0, np.nan]))
    assert refusal.value.holds.tolist() == [True, False, False]


def test_singles_of_two_strands_unless_told():
    assert planning.singles_length(yards(400)) == yards(800)
    # Three strands that lose a fifth: 400 / 0.8 is 500, three times.
    assert planning.singles_length(yards(400), 3, Quantity(20, "percent")).m_as("yard") == approx(1500)
    # Singles that grow by a quarter in plying: 400 / 1.25 is 320, twice.
    assert planning.singles_length(yards(400), 2, -0.25).m_as("yard") == approx(640)


@given(length=st.floats(0, 1e5), strands=st.integers(1, 12), take_up=st.floats(0, 0.9))
def test_the_singles_plied_give_the_length(length, strands, take_up):
    each = planning.singles_length(yards(length), strands, take_up) / strands
    assert (1 - take_up) * each.m_as("yard") == approx(length)


@pytest.mark.parametrize("own, strands", [(None, 2), (3, 3), (0, 0)])
def test_two_strands_are_planned_until_more_is_known(own, strands):
    assert planning.strands_in_use("Vest", own) == strands


def test_two_strands_are_planned_of_each_project():
    assert planning.strands_in_use(np.array(["Vest", "Hat"])).tolist() == [2, 2]


@pytest.mark.parametrize(
    "own, design, bought, singles",
    [
        (3, None, None, 3),
        (None, 2, None, 2),
        (3, 2, None, 2),
        (3, 1, 0.5, 1),
        (3, 0, None, 3),  # a design whose components are not known yet
        (3, 0, 0.5, 3),
        (3, 0, 1, 0),  # a yarn plied of bought threads alone
        (None, 0, 1, 0),
    ],
)
def test_a_design_says_how_many_singles_are_spun_once_it_is_known(own, design, bought, singles):
    assert planning.singles_in_ply(own, design, bought) == singles


@pytest.mark.parametrize(
    "own, design, bought, skeins, singles",
    [
        (None, None, None, 1, 1),
        (2, None, None, 1, 2),
        (None, 3, None, 1, 3),
        (None, 0, 0.5, 1, 1),  # a design whose components are not known yet
        (None, 0, 1, 1, 0),
    ],
)
def test_skeins_tell_how_many_singles_are_plied_where_nothing_else_does(own, design, bought, skeins, singles):
    assert planning.singles_in_ply(own, design, bought, skeins) == singles


@pytest.mark.parametrize("total, count, singles", [(1, 1, 1), (7, 4, 2), (5, 4, 1), (3, 2, 2), (12, 4, 3)])
def test_most_skeins_are_plied_of_so_many(total, count, singles):
    assert planning.usual_ply(total, count) == singles


@pytest.mark.parametrize("strands, takes", [(0, 0), (1, 3), (2, 3)])
def test_what_has_no_single_is_not_spun(strands, takes):
    assert planning.spinning_hours(strands, yards(900), Quantity(300, "yard/hour")).m_as("hour") == approx(takes)
    column = planning.spinning_hours(np.array([strands, 2.0]), yards(900), Quantity(300, "yard/hour"))
    assert column.m_as("hour") == approx(np.array([takes, 3]))


def test_who_spins_nothing_needs_no_pace():
    assert planning.spinning_hours(0) == hours(0)


@pytest.mark.parametrize(
    "start, days, first", [(100, [], 100), (100, [np.nan, 90], 100), (100, [104, np.nan, 90], 104)]
)
def test_what_is_ahead_is_counted_from_the_last_skein_or_lot_or_the_first_day(start, days, first):
    assert planning.counted_from(start, days) == planning.counted_from(start, [], days) == first
    assert planning.counted_from(start, days, [np.nan, 102]) == max(first, 102)


def test_what_is_ahead_is_its_share_of_the_work():
    assert planning.length_ahead(yards(1000), 0.25).m_as("yard") == 250
    assert planning.ahead_share(Quantity(90, "minute"), hours(6)) == approx(0.25)
    assert planning.ahead_share(hours(0), hours(6)) == 0
    assert planning.hours_with_spinning(hours(30), hours(20), hours(0)) == hours(30)


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: planning.pace(yards(0), hours(1)), "length"),
        (lambda: planning.pace(yards(1), hours(0)), "time"),
        (lambda: planning.hours(yards(-1), ONE_PACE), "amount"),
        (lambda: planning.hours(yards(1), 0 * ONE_PACE), "pace"),
        (lambda: planning.hours_in_all(), "at least one step"),
        (lambda: planning.hours_in_all(hours(1), hours(-1)), "Hours"),
        (lambda: planning.weeks(hours(-1), hours(1)), "Hours"),
        (lambda: planning.weeks(hours(1), hours(0)), "week"),
        (lambda: planning.finish_day(-1, hours(1), hours(1)), "start"),
        (lambda: planning.finish_day(1, hours(0), hours(1)), "Hours"),
        (lambda: planning.finish_day(1, hours(1), hours(0)), "week"),
        (lambda: planning.hours_in_use(), "Give the hours"),
        (lambda: planning.hours_in_use(hours(-1), hours(2)), "Hours"),
        (lambda: planning.hours_ahead(hours(-1)), "Hours"),
        (lambda: planning.hours_ahead(hours(1), done=hours(-1)), "Hours"),
        (lambda: planning.pace_in_use(), "own pace"),
        (lambda: planning.pace_in_use(Quantity(0, "yard/hour"), Quantity(9, "yard/hour")), "above zero"),
        (lambda: planning.take_up_in_use(), "Give the take-up"),
        (lambda: planning.take_up_in_use(1.0), "under 1"),
        (lambda: planning.take_up_in_use(1.0, 0.1), "under 1"),
        (lambda: planning.take_up_in_use(sample=1.5), "under 1"),
        (lambda: planning.singles_length(yards(-1)), "negative"),
        (lambda: planning.singles_length(yards(1), 0), "strands"),
        (lambda: planning.singles_length(yards(1), 2.5), "strands"),
        (lambda: planning.singles_length(yards(1), 2, 1), "take-up"),
        (lambda: planning.singles_length(yards(1), 2, 1.1), "take-up"),
        (lambda: planning.strands_in_use(""), "Name the project"),
        (lambda: planning.strands_in_use("Vest", -1), "strands"),
        (lambda: planning.singles_in_ply(), "Neither"),
        (lambda: planning.usual_ply(2, 0), "above zero"),
        (lambda: planning.singles_in_skein(0), "at least one"),
        (lambda: planning.usual_ply(-2, 1), "negative"),
        (lambda: planning.singles_in_ply(skeins=0), "at least one"),
        (lambda: planning.singles_in_ply(0), "at least one"),
        (lambda: planning.singles_in_ply(0, 2), "at least one"),
        (lambda: planning.singles_in_ply(None, -1), "singles"),
        (lambda: planning.singles_in_ply(None, 0), "no singles yet"),
        (lambda: planning.singles_in_ply(None, 0, 0.5), "no singles yet"),
        (lambda: planning.spinning_hours(1), "length of the singles"),
        (lambda: planning.spinning_hours(1, yards(1)), "length of the singles"),
        (lambda: planning.spinning_hours(1, None, ONE_PACE), "length of the singles"),
        (lambda: planning.spinning_hours(1.5, yards(1), ONE_PACE), "strands"),
        (lambda: planning.spinning_hours(1, yards(-1), ONE_PACE), "length"),
        (lambda: planning.spinning_hours(1, yards(1), 0 * ONE_PACE), "pace"),
        (lambda: planning.plying_hours(yards(1), 0), "pace of plying"),
        (lambda: planning.plying_hours(yards(1), 1, bought=0.3), "pace of plying"),
        (lambda: planning.counted_from(-1, []), "day 0"),
        (lambda: planning.counted_from(1, [2, -1]), "day 0"),
        (lambda: planning.counted_from(1, [2], [-1]), "day 0"),
        (lambda: planning.length_ahead(yards(-1), 0.5), "length"),
        (lambda: planning.length_ahead(yards(1), -0.5), "share"),
        (lambda: planning.ahead_share(hours(-1), hours(1)), "Hours"),
        (lambda: planning.ahead_share(hours(0), hours(0)), "whole work"),
        (lambda: planning.hours_with_spinning(hours(-1), hours(1), hours(1)), "Hours"),
        (lambda: planning.hours_with_spinning(hours(1), hours(-1), hours(1)), "Hours"),
        (lambda: planning.hours_with_spinning(hours(1), hours(1), hours(-1)), "Hours"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
