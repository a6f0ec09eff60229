"""One's own records beside the published, with pandas as the outside witness."""

import numpy as np
import pandas as pd
import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx
from scipy import stats

from workbookgen.reference import own_records
from workbookgen.units import Quantity

LOTS = ["Romney", "merino", "", "ROMNEY", "romney", "Merino"]
YIELDS = [0.6, 0.5, 0.9, 0.7, np.nan, np.nan]


def test_records_of_a_name():
    assert own_records.observed("romney", LOTS, YIELDS) == approx(0.65)
    assert own_records.how_many("romney", LOTS, YIELDS) == 2
    assert own_records.observed("Merino", LOTS, YIELDS) == 0.5
    assert own_records.how_many("Merino", LOTS, YIELDS) == 1
    assert own_records.how_many("Cheviot", LOTS, YIELDS) == 0


def test_records_in_per_cent_are_shares():
    in_percent = Quantity(np.array(YIELDS) * 100, "percent")
    assert own_records.observed("romney", LOTS, in_percent) == approx(0.65)
    assert own_records.how_many("romney", LOTS, in_percent) == 2


def test_records_of_several_names():
    assert own_records.observed(["romney", "merino"], LOTS, YIELDS) == approx(np.array([0.65, 0.5]))
    assert own_records.how_many(["romney", "dorset"], LOTS, YIELDS) == approx(np.array([2, 0]))


def test_records_that_are_no_shares_are_refused():
    for calculation in (own_records.observed, own_records.how_many):
        with pytest.raises(pint.DimensionalityError):
            calculation("romney", LOTS, Quantity(np.array(YIELDS), "g"))


@given(
    rows=st.lists(
        st.tuples(st.sampled_from(["Aster", "aster", "birch", ""]), st.one_of(st.just(np.nan), st.floats(-0.2, 1))),
        min_size=1,
    )
)
def test_pandas_averages_and_counts_the_same(rows):
    names, shares = zip(*rows, strict=True)
    groups = pd.DataFrame({"name": pd.Series(names, dtype=str).str.lower(), "share": shares}).groupby("name")["share"]
    for name in ("aster", "birch"):
        records = groups.count().get(name, 0)
        assert own_records.how_many(name, names, shares) == records
        if records:
            assert own_records.observed(name, names, shares) == approx(groups.mean()[name], rel=1e-9, abs=1e-12)


@pytest.mark.parametrize(
    "known, figure",
    [
        (dict(published=0.5), 0.5),
        (dict(published=0.5, observed=0.6, observations=2), 0.5),
        (dict(published=0.5, observed=0.6, observations=3), 0.6),
        (dict(published=0.5, observed=0.6, observations=2, enough=1), 0.6),
        (dict(published=0.5, observed=0.6, observations=9, enough=10), 0.5),
        (dict(observed=0.6, observations=3), 0.6),
        (dict(published=0.5, observations=3), 0.5),
        (dict(published=Quantity(50, "percent")), 0.5),
    ],
)
def test_one_s_own_records_win_once_there_are_enough(known, figure):
    assert own_records.observed_or_published(**known) == approx(figure)


def test_each_figure_of_many_is_chosen_by_itself():
    many = dict(published=np.array([0.5, 0.4, 0.3]), observed=0.6, observations=np.array([0, 3, 12]))
    assert own_records.observed_or_published(published=0.5, observed=0.6, enough=1) == 0.5  # nobody has counted any
    assert own_records.observed_or_published(**many) == approx(np.array([0.5, 0.6, 0.6]))


SEEN = dict(observed=0.6, squares=0.5**2 + 0.6**2 + 0.7**2, observations=3)


@pytest.mark.parametrize(
    "known, spread",
    [
        (dict(published=0.05), 0.05),
        (dict(published=0.05, observed=0.6, squares=0.74, observations=2), 0.05),
        # Three lots differ by 0.1, which is 0.02 in squares; two more times the published square; a mean of three.
        (SEEN | dict(published=0.05), ((0.02 + 0.005) / 4 * 4 / 3) ** 0.5),
        (SEEN | dict(published=0.0), ((0.02 + 0.0) / 4 * 4 / 3) ** 0.5),
        (SEEN, ((0.02 + 2 * 0.0016) / 4 * 4 / 3) ** 0.5),  # nothing is published: 0.04
        (SEEN | dict(usual=0.1), ((0.02 + 0.02) / 4 * 4 / 3) ** 0.5),
        # Alike by chance, and to the last digit less than the squares of their mean.
        (dict(published=0.05, observed=0.1, squares=0.03 - 1e-17, observations=3), (0.005 / 4 * 4 / 3) ** 0.5),
        # Of a thousand that are alike, the last digits of a long sum.
        (
            dict(published=0.05, observed=0.1, squares=10 - 2e-11, observations=1000),
            (0.005 / 1001 * 1001 / 1000) ** 0.5,
        ),
        # Of many, what is published hardly counts, and their mean is nearly certain.
        (dict(published=0.9, observed=0.5, squares=1e6 * 0.26, observations=10**6), 0.1),
    ],
)
def test_the_next_lot_may_be_as_far_off_as_one_s_own_were(known, spread):
    assert own_records.spread_in_use(**known) == approx(spread, rel=1e-4 if known.get("observations", 0) > 9 else 1e-9)


def test_the_spread_of_each_of_many_is_its_own():
    many = dict(published=np.array([0.05, 0.05]), observed=0.6, squares=1.105, observations=np.array([2, 3]))
    assert own_records.spread_in_use(**many) == approx(np.array([0.05, 0.1]))


def test_a_new_fleece_is_within_two_of_these_spreads_as_often_as_it_should():
    # Fleeces that differ as published. By the published spread alone, one more was within two of it in 91.7%.
    draw = np.random.default_rng(5)
    fleeces = 0.6 + 0.05 * draw.normal(size=(20_000, 4))
    seen, new = fleeces[:, :3], fleeces[:, 3]
    known = dict(observed=seen.mean(axis=1), squares=np.square(seen).sum(axis=1), observations=3)
    spread = own_records.spread_in_use(published=0.05, **known)
    off = abs(new - known["observed"])
    assert 0.925 <= np.mean(off <= 2 * spread) <= 0.965
    assert np.mean(off <= 2 * 0.05) < 0.92


def test_the_third_record_is_the_one_that_matters_most():
    # The reason given for three: half widths of 95 per cent in units of the spread, from scipy's t.
    two, three, four = (stats.t.ppf(0.975, count - 1) / count**0.5 for count in (2, 3, 4))
    assert two / three > 3 > 1.6 > three / four


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: own_records.observed("cheviot", LOTS, YIELDS), "no record"),
        (lambda: own_records.observed("romney", ["romney"], [np.nan]), "no record"),
        (lambda: own_records.observed(["romney", "cheviot"], LOTS, YIELDS), "no record"),
        (lambda: own_records.observed(" ", LOTS, YIELDS), "blank"),
        (lambda: own_records.how_many("", LOTS, YIELDS), "blank"),
        (lambda: own_records.how_many("romney", LOTS, YIELDS[:2]), "one amount"),
        (lambda: own_records.observed_or_published(), "Nothing is published"),
        (lambda: own_records.observed_or_published(observed=0.6, observations=2), "Nothing is published"),
        (lambda: own_records.observed_or_published(observations=5), "Nothing is published"),
        (lambda: own_records.observed_or_published(published=0.5, observations=-1), "records"),
        (
            lambda: own_records.observed_or_published(published=0.5, observed=0.6, observations=1, enough=0),
            "At least one",
        ),
        (lambda: own_records.observed_or_published(published=float("inf")), "number"),
        (lambda: own_records.spread_in_use(observed=0.6, squares=0.74, observations=2), "Nothing is published"),
        (lambda: own_records.spread_in_use(published=-0.1), "A spread"),
        (lambda: own_records.spread_in_use(observed=0.6, squares=1.0, observations=3), "squares"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
