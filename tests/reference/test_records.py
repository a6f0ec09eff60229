"""Finding a name and adding up what belongs to it, with pandas as the outside witness."""

import numpy as np
import pandas as pd
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.reference import kept_stock, records
from workbookgen.reference.calculation import OutOfValidity
from workbookgen.units import Quantity

from .quantities import grams

LOTS = ["Aster", "birch", "", "ASTER", "cedar"]
OUNCES = Quantity([1.0, 2.0, 4.0, 8.0, np.nan], "oz")
REELS = ["Big reel", "", "niddy"]
LOOPS = Quantity([72.0, np.nan, 48.0], "inch")


def test_pick_of_each_kind_of_value():
    assert records.lookup("NIDDY", REELS, LOOPS) == Quantity(48.0, "inch")
    assert records.lookup("niddy", REELS, [1.5, 2.0, 2.5]) == 2.5
    word = records.lookup("big reel", REELS, ["rated", "", "measured with a cord"])
    assert word == "rated" and type(word) is str


def test_pick_for_several_names():
    loops = records.lookup(["niddy", "Big reel", "niddy"], REELS, LOOPS)
    assert loops.m_as("inch").tolist() == [48, 72, 48]
    words = records.lookup(["niddy"], REELS, ["rated", "", "measured with a cord"])
    assert words.dtype == object and list(words) == ["measured with a cord"]


def test_total_ignores_case_and_blanks_and_keeps_the_unit():
    total = records.sum_where("aster", LOTS, OUNCES)
    assert (total.magnitude, str(total.units)) == (9.0, "ounce")
    assert records.sum_where("cedar", LOTS, OUNCES) == Quantity(0.0, "oz")
    assert records.sum_where("dogwood", LOTS, OUNCES) == Quantity(0.0, "oz")
    assert records.sum_where("birch", LOTS, [1, 2, 3, 4, 5]) == 2


@pytest.mark.parametrize(
    "names, values, holds",
    [
        (["niddy", "hasp", "Big reel"], LOOPS, [True, False, True]),
        (["niddy", "Big reel"], Quantity([72.0, 2.0, np.nan], "inch"), [False, True]),
        (["Big reel", "niddy"], ["rated", "", " "], [True, False]),
    ],
)
def test_a_refused_pick_tells_which_names_are_all_right(names, values, holds):
    with pytest.raises(OutOfValidity) as refusal:
        records.lookup(names, REELS, values)
    assert refusal.value.holds.astype(bool).tolist() == holds


def test_tally_counts_amounts_that_are_there():
    assert records.count_where("aster", LOTS, OUNCES) == 2
    assert records.count_where("cedar", LOTS, OUNCES) == 0  # its only amount is blank
    assert records.count_where("dogwood", LOTS, OUNCES) == 0
    assert records.count_where("aster", LOTS, ["rated", "", "", 0.0, ""]) == 2  # nothing weighed is a record too


@given(
    rows=st.lists(
        st.tuples(st.sampled_from(["Aster", "aster", "birch", ""]), st.one_of(st.just(np.nan), st.floats(0, 1e4))),
        min_size=1,
    )
)
def test_pandas_counts_the_same(rows):
    names, amounts = zip(*rows, strict=True)
    frame = pd.DataFrame({"lot": pd.Series(names, dtype=str).str.lower(), "mass": amounts})
    counts = frame.groupby("lot")["mass"].count()
    for lot in ("aster", "birch"):
        assert records.count_where(lot, names, np.array(amounts)) == counts.get(lot, 0)


def test_part_of_a_name_is_another_name():
    assert records.sum_where("ast", LOTS, OUNCES).magnitude == 0
    assert records.sum_where("a*", LOTS, OUNCES).magnitude == 0
    assert records.sum_where("aster ", LOTS, OUNCES).magnitude == 0


@given(
    rows=st.lists(
        st.tuples(
            st.sampled_from(["Aster", "aster", "birch", "BIRCH", ""]), st.one_of(st.just(np.nan), st.floats(0, 1e4))
        ),
        min_size=1,
    )
)
def test_pandas_adds_up_the_same(rows):
    names, amounts = zip(*rows, strict=True)
    frame = pd.DataFrame({"lot": pd.Series(names, dtype=str).str.lower(), "mass": amounts})
    sums = frame.groupby("lot")["mass"].sum()
    for lot in ("aster", "birch"):
        assert records.sum_where(lot, names, np.array(amounts)) == approx(sums.get(lot, 0.0))


def test_spun_adds_both_places_in_any_unit():
    spun = records.spun("birch", LOTS, OUNCES, ["birch", "Birch", "aster"], grams([10.0, 20.0, 40.0]))
    assert spun.m_as("g") == approx(2 * 28.349523125 + 30)


def test_what_lies_in_a_third_place_or_besides_is_spun_as_well():
    """An ounce and 8 of Aster are 9, with 10 g of designs, 20 g of pieces, 5 g besides and 2 g that are expected."""
    of_lots, of_designs, of_pieces = (
        (LOTS, OUNCES),
        (["aster"], grams([10.0])),
        (["Aster", "birch"], grams([20.0, 3.0])),
    )

    def in_grams(**more):
        return records.spun("aster", *of_lots, *of_designs, **more).m_as("g") - 9 * 28.349523125

    third = dict(zip(("third_names", "third_amounts"), of_pieces, strict=True))
    assert in_grams() == approx(10)
    assert in_grams(**third) == approx(30)
    assert in_grams(besides=grams(5.0)) == approx(15)
    assert in_grams(expected=grams(2.0)) == approx(12)
    assert in_grams(**third, besides=grams(5.0), expected=grams(2.0)) == approx(37)


def test_still_to_come_never_falls_below_zero():
    assert kept_stock.still_to_come(grams(100.0), grams(30.0)).m_as("g") == approx(70)
    assert kept_stock.still_to_come(grams(100.0), grams(130.0)).m_as("g") == 0


@given(yarn=st.floats(0, 1e4), spun=st.floats(0, 1e4))
def test_what_is_spun_and_what_is_to_come_cover_the_lot(yarn, spun):
    to_come = kept_stock.still_to_come(grams(yarn), grams(spun)).m_as("g")
    assert to_come >= 0
    assert to_come + spun == approx(max(yarn, spun), abs=1e-6)  # less than a millionth of a gram is nothing


@given(st.lists(st.one_of(st.just(np.nan), st.floats(0, 1e4))))
def test_pandas_adds_up_the_same_column(amounts):
    found = records.sum_of(grams(np.array(amounts)))
    assert found.m_as("g") == approx(pd.Series(amounts, dtype=float).sum())


def test_sum_of_numbers_and_of_amounts_in_any_unit():
    assert records.sum_of(OUNCES).m_as("pound") == approx(15 / 16)
    assert records.sum_of([1, None, 2.5]) == 3.5
    assert records.sum_of([]) == 0


def test_skeins_without_a_weight():
    assert kept_stock.not_weighed(12, 9) == 3 and kept_stock.not_weighed(3, 3) == 0


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: kept_stock.not_weighed(2, 3), "More skeins"),
        (lambda: kept_stock.not_weighed(-1, -1), "number of skeins"),
        (lambda: records.lookup("", REELS, LOOPS), "blank"),
        (lambda: records.lookup("hasp", REELS, LOOPS), "A name is not in the list: add it there"),
        (lambda: records.lookup(["niddy", "hasp"], REELS, LOOPS), "A name is not in the list: add it there"),
        (lambda: records.lookup("aster", LOTS, OUNCES), "A name is in the list more than once: give each its own"),
        (lambda: records.lookup("cedar", LOTS, OUNCES), "The value beside a name is blank"),
        (lambda: records.lookup("niddy", REELS, ["rated", "", " "]), "The value beside a name is blank"),
        (lambda: records.lookup("niddy", REELS, [1.0]), "one value"),
        (lambda: records.lookup("niddy", REELS, [1.0, 2.0, 3.0, 4.0]), "one value"),
        (lambda: records.sum_where(" ", LOTS, OUNCES), "blank"),
        (lambda: records.sum_where("aster", LOTS, [1.0]), "one amount"),
        (lambda: records.sum_where("aster", LOTS, [1.0] * 6), "one amount"),
        (lambda: records.sum_where("aster", LOTS, 1.0), "one amount"),
        (lambda: records.count_where(" ", LOTS, OUNCES), "blank"),
        (lambda: records.count_where("aster", LOTS, OUNCES[:2]), "one amount"),
        (lambda: records.spun("", LOTS, OUNCES, LOTS, OUNCES), "blank"),
        (lambda: records.spun("aster", LOTS, OUNCES, LOTS, OUNCES[:2]), "one amount"),
        (lambda: kept_stock.still_to_come(grams(-1), grams(0)), "to come"),
        (lambda: kept_stock.still_to_come(grams(1), grams(-1)), "spun"),
        (lambda: records.sum_of([1.0, np.inf]), "finite"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
