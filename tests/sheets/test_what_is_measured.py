"""What a field asks for is what its formula takes it for.

Each case was worked out by hand: what a person would find who measured something else.
"""

import math

import pytest
from pytest import approx

from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries
from workbookgen.settings import Settings

US = described(Settings(units="us"))

ASKED = (
    # A shaft between a thigh at rest and a hand moves half as far as the hand: 14 in of the hand turn a shaft of 1 in
    # not 4.46 times but 2.23 times.
    ("spindle_rolled", "Way of the shaft along the thigh, half that of the hand"),
    # A binder of 3 turns leaves 5 of 8: counted on the bound yarn, the wrapper would be fed for 5, and 2 be told as
    # left.
    ("wrapped_turns", "before a binder is plied on"),
    # Six bobbins for a 2-ply are not six strands: a third of the plied yarn would be told.
    ("rack_length", "plied at the same time"),
    # A tenth lost in washing makes 6.67 turns of 6: with singles of 9 counted before it, a balanced ply is 11% above
    # balance.
    ("samples_singles_turns", "if the ply was washed, out of one of its strands"),
    ("plying_plied", "before washing, as the singles were"),
    # Two singles of 20 yd spun in 30 minutes: 20 yd of one took 15, and a pace of 80 yd an hour; with the minutes of
    # both it would be 40.
    ("samples_spin_minutes", "one of the singles, not for all"),
    # K is of the wraps and of the grist, and the grist is that of the finished sample, which washing has made rounder
    # and shorter.
    ("samples_wpi_1", "of the finished yarn"),
    # Of 2 oz fed to a comb in an hour 1.4 oz are ready to spin; 14 oz of it take ten hours, not seven.
    ("pace_preparing", "what comes out of it in an hour"),
    # 12 oz of yarn on three bobbins are 4 oz on each, and of fiber that loses 4% in spinning 4.17 oz.
    ("projects_bobbins", "by the weight of yarn on each"),
)


@pytest.mark.parametrize(("name", "words"), ASKED)
def test_it_asks_for_what_it_takes(name, words):
    _, field = US.by_key[name]
    assert words in field.help


def told(block, **typed):
    values = expected_values(US, starting_entries(US) | {f"{block}_{key}": (value,) for key, value in typed.items()})
    return lambda key: values[f"{block}_{key}"][0]


def test_a_shaft_turns_by_its_own_way():
    """A hand that moves 14 in rolls the shaft along 7 in of the thigh: a mark on a shaft of 1 in comes by 7 / 3.1416
    times."""
    assert told("spindle", draft=24.0, rolled=7.0, shaft=1.0)("by_roll") == approx(7 / math.pi)


def test_a_binder_takes_turns_from_a_wrapper_and_no_length():
    wrapped = dict(core=2000.0, wrapper=2000.0, core_wraps=20.0, wrapper_wraps=20.0, turns=8.0)
    bare, bound = told("wrapped", **wrapped), told("wrapped", **wrapped, binder=9000.0, binder_wraps=60.0, binder_turns=3.0)
    assert bound("turns_left") == approx(5) and bound("feed") == approx(bare("feed"))
    assert bare("feed") == approx(math.hypot(1, math.pi * 0.1 * 8))


def test_a_ply_counted_like_its_singles_is_as_balanced_as_it_was():
    """Singles of 9 turns, plied with 6: a balanced ply, before a tenth goes in the wash and after it, if both are
    counted then."""
    for left in (1.0, 0.9):
        assert told("plying", singles=9.0 / left, plied=6.0 / left, share=2 / 3)("balance") == approx(0, abs=1e-9)
