"""The wheel's whorls in a table, what a spindle puts in, and the finest single, worked by hand."""

import pytest

from chapters import all_but
from planners import laid_out, rows_of
from workbookgen.book.write import write
from workbookgen.build import computed
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.settings import Settings


def us():
    return laid_out(Settings(rows=rows_of(8, guide=60), leave_out=all_but("Twist")))


def shown(whorls=(), **typed):
    entries = starting_entries(us().planner) | {key: (value,) for key, value in typed.items()}
    if whorls:
        entries = with_records(us().planner, entries, "whorls", list(whorls))
    return computed(us(), write(us(), entries, {}))


WHORLS = (
    {"name": "Slow", "flyer": 60.0},  # in ten turns of the wheel: 6
    {"name": "Middle", "stamped": 10.0},  # a tenth slips: 9
    {"name": "Fast", "across": 2.0},  # 24 in over 2 in, a tenth slips: 10.8
    {"name": "Odd", "flyer": 60.0, "turns": 5.0, "stamped": 3.0},  # counted wins: 12
    {"name": "Bare"},
)


def test_whorls_against_treadles():
    values = shown(WHORLS, wheel_wheel=24.0, wheel_slip=0.1, wheel_draft=10.0, wheel_wanted=5.0)
    assert list(values["whorls_ratio"][:4]) == pytest.approx([6, 9, 10.8, 12])
    # Ratio times treadles over 10 in.
    for treadles in (1, 2, 3, 4, 6, 8):
        assert list(values[f"whorls_twist_{treadles}"][:4]) == pytest.approx([0.1 * each * treadles for each in (6, 9, 10.8, 12)])
    # 8 of Slow give 4.8, 6 of Middle 5.4, 5 of Fast 5.4, 4 of Odd 4.8: Slow stands first.
    assert list(values["whorls_nearest"][:4]) == [8, 6, 5, 4]
    assert values["wheel_nearest"][0] == "Nearest to the twist wanted: Slow, 8 treadles to a draft: 4.8 turns per inch (189 per meter)"
    assert values["whorls_message"][4].startswith("Still to fill in: its ratio as stamped")
    assert values["whorls_ratio"][4] in ("", None)


def test_the_nearest_number_of_treadles_need_not_be_in_the_table():
    """By hand: 8 per inch over 12 in are 96 turns. At 8, 10 and 14 to 1 less a twentieth they take 12.6, 10.1 and 7.2
    treadles: the eight of the first two, which are all that one counts, are far off, and 7 of the third give 7.8. (Of
    the columns 8 would be 8.9.)"""
    whorls = [{"name": name, "stamped": ratio} for name, ratio in (("Low", 8.0), ("Middle", 10.0), ("High", 14.0))]
    values = shown(whorls, wheel_slip=0.05, wheel_draft=12.0, wheel_wanted=8.0)
    assert list(values["whorls_nearest"][:3]) == [8, 8, 7]
    assert values["wheel_nearest"][0].startswith("Nearest to the twist wanted: High, 7 treadles to a draft: 7.8 turns")


def test_the_whorl_for_a_ratio_gives_that_ratio():
    """By hand: of a wheel of 20 in a tenth of all turns slips. For 9 to 1 the whorl is 2 in across, and with it the
    card above says 9; one of 2.22 in gives 8.1."""
    values = shown(wheel_wheel=20.0, wheel_slip=0.1, wheel_wanted_ratio=9.0)
    assert values["wheel_whorl_wanted"][0] == pytest.approx(2)
    assert shown(wheel_wheel=20.0, wheel_slip=0.1, wheel_whorl=2.0)["wheel_ratio"][0] == pytest.approx(9)
    assert shown(wheel_wheel=20.0, wheel_slip=0.1, wheel_whorl=20 / 9)["wheel_ratio"][0] == pytest.approx(8.1)


def test_who_uses_the_table_alone_is_asked_for_no_whorl():
    assert shown(WHORLS[:1], wheel_draft=10.0, wheel_wanted=5.0)["wheel_message"][0] in ("", None)
    assert shown(wheel_draft=10.0, wheel_treadles=4.0)["wheel_message"][0].startswith("Still to fill in: drive wheel and whorl")


def test_no_whorl_no_sentence():
    assert shown(wheel_draft=10.0, wheel_wanted=5.0)["wheel_nearest"][0] in ("", None)


def test_the_finest_single_of_a_fleece_of_ones_own():
    # Geometry: forty fibers of 25 µm of wool are 25.7 tex; 32 of them would be 20.6 tex, some 24,100 yd/lb.
    values = shown(finest_fiber_diameter=25.0, finest_wanted=24_100.0, finest_staple=3.0, finest_twist=5.0)
    assert values["finest_tex"][0] == pytest.approx(25.72, abs=0.01)
    assert values["finest_words"][0] == "32 fibers: too few to hold"
    assert values["finest_least"][0] == pytest.approx(4 / 3)
    assert values["finest_round"][0] == pytest.approx(15)


def test_a_sample_of_the_ply_beats_geometry():
    values = shown(plying_singles=9.0, plying_measured=0.5, plying_sample=0.05, plying_plied=5.0)
    assert values["plying_diameter"][0] == pytest.approx(0.5)
    assert values["plying_left"][0] == pytest.approx(4)
    assert values["plying_feed"][0] == pytest.approx(1 / 0.95)
