"""What a field asks for is what its formula takes it for.

Each case was worked out by hand: what a person would find who measured something else.
"""

import math

import pytest
from pytest import approx

from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries
from workbookgen.reference import weaving
from workbookgen.settings import Settings
from workbookgen.sheets import methods
from workbookgen.units import Quantity

US = described(Settings(units="us"))

ASKED = (
    # A shaft between a thigh at rest and a hand moves half as far as the hand: 14 in of the hand turn a shaft of 1 in
    # not 4.46 times but 2.23 times.
    ("spindle_rolled", "rolls along the thigh, half as far as the hand goes"),
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
    ("projects_bobbins", "equally, by weight of yarn"),
    # Three pieces of 5 in, with 12, 15 and 13 turns, have 40 turns in 15 in: 2.67 in an inch.
    ("counted_turns", "of several pieces, those of all: =12+15+13"),
    ("counted_length", "all together: =3*5"),
    # A shorn fleece of 10 lb, of which 15% are skirted off and 60% of the rest are wool, gives 5.1 lb; a yield of 60%
    # that was told of the shorn fleece would have that of 8.5 lb be 7.06 lb after skirting, not 5.1.
    ("guide_yield_low", "mostly of skirted wool"),
)


@pytest.mark.parametrize(("name", "words"), ASKED)
def test_it_asks_for_what_it_takes(name, words):
    _, field = US.by_key[name]
    assert words.casefold() in field.help.casefold()


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


def test_twist_of_several_pieces_is_that_of_their_sum():
    """12 + 15 + 13 turns in 3 times 5 in: 40 / 15."""
    assert told("counted", turns=40.0, length=15.0)("twist") == approx(40 / 15)


@pytest.mark.parametrize(
    ("wound", "growth", "said"),
    [
        # 100 wraps of 0.1 in fill 3 in by 30: 30, 30 and 30 wraps, and 10 in the fourth layer, which are (0 + 30 + 60
        # + 30) / 100 = 1.2 layers up. With 15 in of height and arms of 14 in, half a leg is 17.97 in and a layer adds
        # 9.366 times 0.1 in: 1.124 in of 71.89.
        ({"loop": 71.89, "wraps": 100.0, "wpi": 10.0, "width": 3.0, "height": 15.0, "arm_a": 14.0, "arm_b": 14.0}, 0.01563, "1 to 2% for a thick one wound narrow"),
        # 300 wraps of 0.05 in fill 4 in by 80: (0 + 80 + 160 + 3 · 60) / 300 = 1.4 layers up, 6.283 · 0.05 in each:
        # 0.44 in of 72.
        ({"loop": 72.0, "wraps": 300.0, "wpi": 20.0, "width": 4.0}, 0.00611, "some tenths of a percent for a fine yarn wound wide"),
    ],
)
def test_a_crowded_reel_winds_longer_by_what_is_said_of_it(wound, growth, said):
    assert told("crowded", **wound)("growth") == approx(growth, rel=1e-3)
    assert said in US.blocks["crowded"].about


def test_a_longer_loop_is_of_use_to_the_skeins_wound_so():
    """73.12 in instead of 72 are 3.1 yd in a hundred wraps, and no skein takes its loop from this card."""
    _, field = US.by_key["crowded_mean"]
    assert "as the rated loop of a reel of its own" in field.note


def test_a_crowded_reel_winds_longer_by_that_at_most():
    """Each layer is reckoned a whole yarn above the last. Yarn that lies in the grooves of the layer below, three yarns
    to a triangle, is only √3/2 of it higher: the niddy-noddy above then grows by 1.35%, not by 1.56%."""
    _, field = US.by_key["crowded_growth"]
    assert field.note.startswith("At most")


def test_the_weft_takes_up_a_share_of_its_own_length():
    """A pick of 33 in lies in 30 in of the reed: 3 of its 33 in, 9.09%, are its take-up, and 20 picks in an inch of 10
    in take 6,600 in. Reckoned from the reed it would be 10%, and 66.7 in too much would be spun."""
    inches = {"picks": Quantity(20, "1/inch"), "woven_length": Quantity(10, "inch"), "width": Quantity(30, "inch")}
    assert weaving.weft_yarn(**inches, take_up=3 / 33).m_as("inch") == approx(6600)
    assert weaving.weft_yarn(**inches, take_up=0.1).m_as("inch") == approx(6666.67, rel=1e-6)
    assert any("what a straightened pick has beyond the width in the reed, over the pick" in each for each in methods.CONVENTIONS.sentences)


def test_geometry_gives_two_strands_next_to_no_take_up_and_says_so():
    """A single of 1,500 yd/lb is 1 / (0.9 · √1500) = 0.0287 in across; with 3 turns in an inch its surface goes round
    x = 0.2704 for 1 along. By its twist it lost x² / 4 = 1.83%, by the third that plying leaves 0.20%, and a ply of two
    turns takes (0.667 · x)² / 2 = 1.62%: 1.62 - (1.83 - 0.20) is nothing, where spinners measure 1 to 6%."""
    assert told("plying", singles=3.0, grist=1500.0)("take_up") == approx(0, abs=0.001)
    _, field = US.by_key["plying_take_up"]
    assert "reckoned so, two strands lose hardly any" in field.note
