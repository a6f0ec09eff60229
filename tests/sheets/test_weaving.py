"""What a weaver takes to the loom: threads that touch, a reed that misses the sett, lengths to wind and to weave."""

import pytest

from entries import entries_with
from planners import rows_of
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.language.entries import with_records
from workbookgen.settings import Settings

US, METRIC = (described(Settings(units=units, fibers="", rows=rows_of(4))) for units in ("us", "metric"))
LOSSES = {"loom_waste": 18.0, "draw_in": 0.1, "shrinkage": 0.1, "take_up": 0.1, "weft_lost": 0.06}
SCARF = {"project": "Scarf", "weave": "plain", "grist": 1000.0, "width": 8.1, "length": 54.0} | LOSSES
FAR = "Is it right? Reed, dents: by whole and half ends in a dent it comes out over 10% off the sett in use"


def told(planner, *keys, **typed):
    entries = entries_with(planner, {"projects": [{"name": "Scarf"}]})
    [values] = expected_of_keys(planner, [with_records(planner, entries, "weavings", [SCARF | typed])], [f"weavings_{key}" for key in keys])
    return [values[f"weavings_{key}"][0] for key in keys]


@pytest.mark.parametrize(("sett", "dents", "at", "asked"), [
    (12.0, 10.0, 10.0, True),  # 1.2 in a dent: the nearest half is 1, a sixth fewer ends than she asked for
    (12.5, 10.0, 15.0, True),  # 1.25: rounded up, a fifth more
    (14.0, 10.0, 15.0, False),  # 1.4: 1 and 2 by turns, 7% more
    (11.0, 10.0, 10.0, False),  # 9% fewer
    (6.0, 8.0, 8.0, True),  # 0.75: a third more
    (12.0, 8.0, 12.0, False), (12.0, None, 12.0, False),
])
def test_a_reed_that_misses_the_sett_is_asked_about(sett, dents, at, asked):
    message, set_at, ends, width = told(US, "message", "set_at", "ends", "reed_width", own_sett=sett, dents=dents)
    assert bool(message) == asked and (message or FAR).startswith(FAR)
    assert set_at == at and width == pytest.approx(10) and ends == at * 10, "8.1 in. over 0.9 · 0.9"


CLOSER = "Is it right? Reed, dents: with every other one empty they lie closer than the sett in use, and the yarn goes by them. Look at the unit above. "


@pytest.mark.parametrize(("planner", "sett", "dents", "asked"), [
    (METRIC, 7.5, 40.0, f"{CLOSER}A reed of 40/10 has 4 in a cm."),  # 20 ends in a cm of threads that touch at 22: it was taken so, with 2.7 times the yarn
    (METRIC, 7.5, 4.0, None),  # 8 in a cm
    (US, 3.0, 10.0, f"{CLOSER}It is the dents in an inch."),
    (US, 4.6, 10.0, None), (US, 4.5, 10.0, CLOSER),
])
def test_a_reed_too_close_even_half_empty(planner, sett, dents, asked):
    grist = 800.0 if planner is METRIC else 1000.0
    [message] = told(planner, "message", own_sett=sett, dents=dents, grist=grist, own_picks=sett)
    assert message is asked or message.startswith(asked)


@pytest.mark.parametrize(("planner", "counted", "sett", "asked"), [
    (US, None, 10.67, False),  # 0.9 · √1,000 = 28.46 touch; half of them, and three quarters of that
    (US, 12.0, 4.5, True),  # as laid on a ruler by hand: a warp more open than any shawl
    (US, 24.0, 9.0, False),
    (US, 19.5, 7.31, True), (US, 20.0, 7.5, False), (US, 42.6, 15.98, False), (US, 42.8, 16.05, True),
    (METRIC, 11.0, 4.13, False),  # of 200 m/100 g, 11.25 touch in a cm
    (METRIC, 28.0, 10.5, True),  # counted in an inch
])
def test_threads_counted_as_they_never_touch_are_asked_about(planner, counted, sett, asked):
    message, used = told(planner, "message", "sett", counted=counted, own_picks=10.0, grist=200.0 if planner is METRIC else 1000.0)
    assert (message or "").startswith("Is it right? Wraps, touching: far from what its grist would have") == asked and bool(message) == asked
    assert used == pytest.approx(sett, abs=0.01), "what is typed is reckoned with"


@pytest.mark.parametrize("planner", [US, METRIC])
def test_the_lengths_to_wind_and_to_weave_are_told_to_a_hundredth(planner):
    """54 / 0.9 = 60 to weave; 60 / 0.9 + 18 = 84.67 to wind. A whole yard, or meter, may be half of one short."""
    unit = 36 if planner is US else 100
    woven, warp = told(planner, "woven", "warp_length")
    assert (woven, warp) == (pytest.approx(60 / unit), pytest.approx((60 / 0.9 + 18) / unit))
    assert [planner.by_key[f"weavings_{key}"][1].digits for key in ("woven", "warp_length")] == [2, 2]
