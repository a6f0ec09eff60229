"""A key can be spelled in a formula, and is no cell address."""

import pytest

from workbookgen.errors import DescriptionError
from workbookgen.language.keys import Keyed, check_keys, key_objection


@pytest.mark.parametrize("key", ["wraps", "part_wrap", "k_wrapped", "lot_1", "a1_b", "rate", "color", "row_1", "xfda1"])
def test_a_key_that_may_be_borne(key):
    assert key_objection(key) is None


@pytest.mark.parametrize(
    "key", ["tex1", "ne30", "a1", "xfd9", "r", "c", "r1", "c12", "rc", "r1c1", "r1c", "rc1", "r12c345"]
)
def test_a_key_that_is_a_cell(key):
    assert key_objection(key) == "this key is also a cell address"


@pytest.mark.parametrize(
    "key", ["", "Wraps", "TEX", "part-wrap", "part wrap", "_wraps", "2ply", "größe", "wraps.part", "wraps\n"]
)
def test_a_key_in_other_letters(key):
    assert "lower case" in key_objection(key)


def test_keys_that_cannot_be_borne_are_all_told():
    with pytest.raises(DescriptionError) as caught:
        check_keys("block skeins", ["tex1", "Loop", "wraps", "wraps"])
    said = str(caught.value)
    assert said.startswith("block skeins: ")
    assert "tex1: this key is also a cell address" in said
    assert "Loop: a key is written in lower case" in said
    assert "wraps is used twice" in said


def test_keys_that_can_be_borne():
    assert check_keys("block skeins", ["wraps", "rest"]) is None


def test_a_full_key_begins_with_the_key_of_its_block():
    class Reels(Keyed):
        key = "reels"

    assert Reels().full_key("loop") == "reels_loop"
