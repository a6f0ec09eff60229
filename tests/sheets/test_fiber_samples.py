"""A lot and the project that is spun from it count the fiber by one loss, where the lot has a sample of its own.

By hand: 20 oz of top, of which a sample kept 0.9 oz of 1, give 18 oz of yarn, 1,125 yd at 1,000 yd/lb; 900 yd weigh
14.4 oz and take 16 oz of the top. The guide expects spinning to take 3% of such fiber: 19.4 oz, and 14.4 / 0.97 oz.
"""

import pytest

from entries import entries_with, shown_in
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

US = described(Settings(units="us"))
GUIDE = [{"name": "Moor", "spinning": 0.03, "preparation": 0.06, "combing": 0.3, "skirting": 0.1, "yield_low": 0.5, "yield_high": 0.6}]
TOP = {"name": "Top", "kind": "Moor", "state": "prepared fiber", "weight": 20.0, "grist": 1000.0}
SWATCH = {"name": "Swatch", "lot": "Top", "fiber_in": 1.0, "yarn_out": 0.9}
HAT = {"name": "Hat", "wanted": 900.0, "margin": 0.0, "lot_1": "Top", "grist": 1000.0}
KEYS = ("fiber_yarn", "way_yarn", "way_expected_yarn", "projects_prepared", "projects_bought")


def told(*keys, samples=(), top=TOP, hat=HAT):
    entries = entries_with(US, {"guide": GUIDE, "fiber": [top], "samples": samples, "projects": [hat]}) | {"way_lot": ("Top",)}
    return shown_in(US, entries, keys)


BY_SAMPLE, BY_GUIDE = (18, 18, 18, 16, 16), (19.4, 19.4, 19.4, 14.4 / 0.97, 14.4 / 0.97)


@pytest.mark.parametrize("chosen", [None, "Swatch"])
def test_a_lot_loses_in_spinning_what_its_own_sample_lost(chosen):
    """The sheet Lot told 19.4 oz of yarn beside a project that counted by 10%."""
    assert told(*KEYS, samples=[SWATCH], hat=HAT | {"sample": chosen}) == [pytest.approx(each) for each in BY_SAMPLE]


@pytest.mark.parametrize("samples", [
    [],  # none at all
    [SWATCH | {"lot": None}],  # of a lot that nobody names
    [SWATCH | {"yarn_out": None}],  # one that was measured, and not weighed before and after
    [SWATCH | {"yarn_out": 1.1}],  # a slip, which its own line tells
])
def test_without_a_sample_of_it_a_lot_goes_by_the_guide(samples):
    assert told(*KEYS, samples=samples) == [pytest.approx(each) for each in BY_GUIDE]


def test_two_samples_of_a_lot_are_expected_in_the_mean():
    """10 and 20% lost: of 20 oz 17 are left."""
    assert told("fiber_yarn", samples=[SWATCH, SWATCH | {"name": "Other", "yarn_out": 0.8}]) == [pytest.approx(17)]


LEAVE_OUT = "To leave one out, empty its lot on the sheet Samples."
LOST = f"Its loss in spinning is the mean of 2 samples. {LEAVE_OUT}"
WASHED = {"raw_in": 2.0, "clean_out": 1.2}


@pytest.mark.parametrize(("more", "top", "said"), [
    (({},), {}, None),  # one sample is no mean
    (({}, {}), {}, LOST),
    (({}, {"lot": None}), {}, None),
    (({}, {"yarn_out": None}), {}, None),
    (({}, {}), {"own_spinning": 0.05}, None),
    (({}, {}), {"yarn_weighed": 18.0}, None),
    (({}, {}), {"state": "yarn or thread"}, None),
    ((WASHED, WASHED), {}, LOST),  # a top is not scoured
    ((WASHED, WASHED), {"state": "raw fleece"}, f"Its yield is the mean of 2 handfuls. {LOST}"),
    ((WASHED, WASHED | {"yarn_out": None}), {"state": "raw fleece"}, f"Its yield is the mean of 2 handfuls. {LEAVE_OUT}"),
    ((WASHED, WASHED), {"state": "raw fleece", "scoured_weighed": 11.0}, LOST),
    ((WASHED, WASHED), {"state": "raw fleece", "own_yield": 0.55}, LOST),
])
def test_a_lot_says_that_it_goes_by_the_mean_of_its_samples(more, top, said):
    """Whichever the spinner goes with: there is no cell to say it, but a sample without the lot does not count."""
    samples = [SWATCH | {"name": str(number)} | each for number, each in enumerate(more)]
    assert told("way_samples_words", samples=samples, top=TOP | top) == [said]


def test_what_is_typed_or_weighed_goes_before_a_sample():
    assert told("fiber_yarn", samples=[SWATCH], top=TOP | {"own_spinning": 0.05}) == [pytest.approx(19)]
    assert told("fiber_yarn", samples=[SWATCH], top=TOP | {"yarn_weighed": 18.6}) == [pytest.approx(18.6)]


def test_a_sample_tells_the_loss_of_a_fiber_that_the_guide_does_not_know():
    top = TOP | {"kind": None}
    assert told("fiber_yarn", "fiber_message", samples=[SWATCH], top=top) == [pytest.approx(18), None]
    assert told("fiber_yarn", top=top) == [None]
