"""What the planner says comes true as often as it says. Thousands of simulated worlds, twelve situations.

A chance in a bin is held against how often it came true, within three points beyond the
binomial error of that bin (two standard errors). For a spread that is right, one and two
standard uncertainties cover 68 and 95.5 per cent of a normal distribution; the surplus is
nearly one.
"""

import math
from functools import wraps

import numpy as np
import pytest

from workbookgen.reference import uncertainty

from . import reckoning
from .reckoning import Reckoning, reckon
from .worlds import OWN_RECORD, SITUATIONS, World, _skeins

POINTS = 0.03
FEWEST = 40  # worlds in a bin that can tell anything


@pytest.fixture(scope="module", params=SITUATIONS)
def found(request) -> Reckoning:
    return reckon(request.param)


def test_chances_come_true(found):
    telling = [each for each in found.bins() if each[0] >= FEWEST]
    assert telling
    for worlds, said, happened in telling:
        error = math.sqrt(max(said * (1 - said), 0.01) / worlds)
        assert abs(said - happened) <= POINTS + 2 * error, (
            f"{said:.0%} was said of {worlds} worlds, and it came true in {happened:.0%}"
        )


def test_sure_at_ninety_is_sure_nine_times_in_ten(found):
    assert 0.87 <= found.sure(0.9) <= 0.93


def test_one_and_two_standard_uncertainties_cover_what_they_should(found):
    assert 0.65 <= found.within(1) <= 0.71
    assert 0.94 <= found.within(2) <= 0.97


STICKS = 8.0  # cm by which each of three reels of sticks may be off


def three_rough_reels(tag: str, draw) -> World:
    return _skeins(tag, draw, 3, washed=False, sampled=True, tolerance=STICKS, need=OWN_RECORD)


@pytest.mark.parametrize(
    "together, low, high",
    [
        pytest.param(150, 0.65, 0.71, id="few skeins, reel by reel"),  # as the planners that people have reckon
        # Which never makes it surer than it is.
        pytest.param(600, 0.80, 0.92, id="thousands of skeins, as if of one reel"),
    ],
)
def test_errors_of_several_reels_partly_cancel(monkeypatch, together, low, high):
    monkeypatch.setattr(reckoning, "TOGETHER", together)
    monkeypatch.setitem(SITUATIONS, "three rough reels", three_rough_reels)
    each = reckon("three rough reels", 600)
    error = 2 * math.sqrt(0.68 * 0.32 / 600)
    assert low - error <= each.within(1) <= high + error, f"{each.within(1):.1%}"
    assert each.sure(0.9) >= 0.87


def test_the_test_would_notice_that_the_reel_is_forgotten(monkeypatch):
    """A planner that takes each reel for what is rated: sure of itself, and wrong three times in ten where it should
    be once."""
    calculation = uncertainty.skeins_uncertainty
    monkeypatch.setattr(
        uncertainty,
        "skeins_uncertainty",
        wraps(calculation)(lambda by_reels, **others: calculation(by_reels=by_reels * 0, **others)),
    )
    forgetful = reckon("a rough reel", 500)
    assert forgetful.within(1) < 0.65 and forgetful.within(2) < 0.94


def test_the_test_would_notice_a_doubt_that_is_a_quarter_too_small():
    honest = reckon("raw fleece", 500)
    bold = Reckoning(honest.chance, honest.enough, honest.spare, honest.doubt * 0.75, honest.truth)
    assert not 0.65 <= bold.within(1) <= 0.71 or not 0.94 <= bold.within(2) <= 0.97
    assert np.all(honest.doubt > 0)
