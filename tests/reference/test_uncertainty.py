"""Doubts and chances, with `uncertainties`, scipy and a million draws as outside witnesses."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx
from scipy import optimize, stats
from uncertainties import ufloat

from workbookgen.reference import fiber, project, reeling, uncertainty
from workbookgen.units import Quantity

DRAWS = 1_000_000  # as many trials as JCGM 101, 7.2.2 asks for (from memory)
doubts = st.floats(0.001, 1e3)
IN_HAND = {
    "spun_square": Quantity(1.0, "m^2"),
    "to_come_square": Quantity(1.0, "g^2"),
    "to_come": Quantity(1.0, "g"),
    "grist": Quantity(1.0, "m/g"),
    "grist_doubt": 0.1,
}


def yards(number):
    return Quantity(number, "yard")


def test_rectangular_is_scipys_spread_of_a_rectangle():
    assert uncertainty.rectangular(0.1) == approx(stats.uniform(-0.1, 0.2).std())
    assert uncertainty.rectangular(Quantity(0.5, "g")).m_as("g") == approx(stats.uniform(0, 1).std())


@given(half=doubts)
def test_two_ways_to_tell_the_same_rectangle(half):
    by_ends = fiber.rectangular_uncertainty(-half, half)
    assert uncertainty.rectangular(half) == approx(by_ends)


def test_doubts_of_a_gauge_block():
    # JCGM 100, H.1 (from memory): 25, 9.7, 2.9 and 16.6 nm give 32 nm.
    parts = [Quantity(size, "nm") for size in (25.0, 9.7, 2.9, 16.6)]
    assert uncertainty.combined(*parts).m_as("nm") == approx(32, abs=0.5)


def test_doubts_of_different_units_and_gaps():
    assert uncertainty.combined(Quantity(30.0, "mm"), None, Quantity(4.0, "cm")).m_as("mm") == approx(50)
    assert uncertainty.combined(Quantity(5.0, "g")).m_as("g") == approx(5)
    assert uncertainty.product_relative(Quantity(3, "percent"), 0.04) == approx(0.05)


@given(doubts, doubts, doubts, doubts)
def test_the_package_uncertainties_adds_alike(first, second, third, fourth):
    together = sum(ufloat(10, each) for each in (first, second, third, fourth))
    assert uncertainty.combined(first, second, third, fourth) == approx(together.std_dev)
    assert uncertainty.surplus_uncertainty(first, second) == approx((ufloat(9, first) - ufloat(7, second)).std_dev)


@given(st.tuples(*[st.floats(1, 1e3)] * 3), st.tuples(*[st.floats(0.001, 0.05)] * 3))
def test_the_package_uncertainties_multiplies_alike(values, shares):
    first, second, third = (ufloat(value, value * share) for value, share in zip(values, shares, strict=True))
    quotient = first * second / third
    assert uncertainty.product_relative(*shares) == approx(quotient.std_dev / quotient.nominal_value)
    pair = first / third
    assert uncertainty.product_relative(shares[0], shares[2]) == approx(pair.std_dev / pair.nominal_value)


def test_length_of_a_hundred_wraps():
    # Half a wrap and half a per cent of the loop; JCGM 100, 5.1.6 (from memory).
    relative = uncertainty.length_relative(100, 0.5, Quantity(72.0, "inch"), Quantity(0.36, "inch"))
    assert relative == approx(0.005 * 2**0.5)
    assert uncertainty.length_uncertainty(yards(200.0), relative).m_as("yard") == approx(2**0.5)


@given(
    wraps=st.floats(10, 500), u_wraps=st.floats(0.01, 1), loop=st.floats(30, 90), u_loop=st.floats(0.01, 0.5)
)
def test_the_package_uncertainties_finds_the_same_doubt_of_a_length(wraps, u_wraps, loop, u_loop):
    measured = ufloat(wraps, u_wraps) * ufloat(loop, u_loop)
    relative = uncertainty.length_relative(wraps, u_wraps, Quantity(loop, "inch"), Quantity(u_loop, "inch"))
    found = uncertainty.length_uncertainty(reeling.length(wraps, Quantity(loop, "inch")), relative)
    assert found.m_as("inch") == approx(measured.std_dev, rel=1e-9, abs=1e-12)


def test_a_million_draws_scatter_as_the_doubt_of_a_length_says():
    chance = np.random.default_rng(1)
    lengths = reeling.length(chance.normal(80, 0.5, DRAWS), Quantity(chance.normal(72, 0.4, DRAWS), "inch"))
    relative = uncertainty.length_relative(80, 0.5, Quantity(72.0, "inch"), Quantity(0.4, "inch"))
    told = uncertainty.length_uncertainty(reeling.length(80, Quantity(72.0, "inch")), relative)
    assert told.m_as("yard") == approx(lengths.m_as("yard").std(), rel=0.005)


@pytest.mark.parametrize("have, need", [(420, 400), (400, 410), (405, 400), (460, 400)])
def test_a_million_draws_are_enough_as_often_as_the_chance_says(have, need):
    chance = np.random.default_rng(2)
    left_over = yards(chance.normal(have, 12, DRAWS)) - yards(chance.normal(need, 16, DRAWS))
    doubt = uncertainty.surplus_uncertainty(yards(12.0), yards(16.0))
    told = uncertainty.chance_enough(project.surplus(yards(float(have)), yards(float(need))), doubt)
    assert doubt.m_as("yard") == approx(left_over.m_as("yard").std(), rel=0.005)
    assert told == approx((left_over.magnitude >= 0).mean(), abs=0.002)


@pytest.mark.parametrize(
    "surplus, told",
    [(0.0, 0.5), (20.0, 0.8413447461), (-20.0, 0.1586552539), (40.0, 0.9772498681)],
)
def test_chance_from_the_table_of_the_normal_distribution(surplus, told):
    # Table of the normal distribution at 0, 1 and 2 (from memory).
    assert uncertainty.chance_enough(yards(surplus), Quantity(18.288, "m")) == approx(told, rel=1e-9)


@given(surplus=st.floats(-1e3, 1e3), doubt=st.floats(30, 1e3))
def test_scipy_finds_the_same_chance_even_in_the_tails(surplus, doubt):
    assert uncertainty.chance_enough(surplus, doubt) == approx(stats.norm.cdf(surplus / doubt), rel=1e-11)


def test_without_doubt_the_chance_is_all_or_nothing():
    sure = uncertainty.chance_enough(yards(np.array([1.0, 0.0, -1.0, 20.0])), yards(np.array([0.0, 0.0, 0.0, 20.0])))
    assert sure == approx(np.array([1, 1, 0, 0.8413447461]))


@pytest.mark.parametrize("certainty, z", [(0.5, 0), (0.8413447461, 1), (0.95, 1.645), (0.975, 1.960), (0.99, 2.326)])
def test_coverage_from_the_table_of_the_normal_distribution(certainty, z):
    # Table of the normal distribution (from memory), three decimals.
    assert uncertainty.coverage(certainty) == approx(z, abs=0.0005)


@given(st.floats(0.5, 0.9999))
def test_coverage_undoes_the_chance(certainty):
    z = uncertainty.coverage(certainty)
    assert z == approx(stats.norm.ppf(certainty), rel=1e-9, abs=1e-12)
    assert uncertainty.chance_enough(z, 1.0) == approx(certainty)


amounts = {
    "need": st.floats(1, 1e4),
    "u_share": st.floats(0, 0.3),
    "relative": st.floats(0, 0.25),
    "certainty": st.floats(0.5, 0.999),
}


@given(**amounts)
def test_the_amount_is_enough_with_the_certainty_asked_for(need, u_share, relative, certainty):
    wanted, u_need = yards(need), yards(need * u_share)
    amount = uncertainty.amount_for(wanted, u_need, relative, certainty)
    doubt = uncertainty.surplus_uncertainty(amount * relative, u_need)
    if doubt.magnitude > need * 1e-6:
        assert uncertainty.chance_enough(amount - wanted, doubt) == approx(certainty, rel=1e-6)
    else:
        assert amount.m_as("yard") == approx(need, rel=1e-5)


@given(**amounts)
def test_scipy_solves_for_the_same_amount(need, u_share, relative, certainty):
    # The equation itself, solved by bisection, with a bracket that holds the larger root only.
    z, u_need = stats.norm.ppf(certainty), need * u_share

    def lacking(amount):
        return amount - need - z * np.hypot(amount * relative, u_need)

    if lacking(need) > -1e-9 * need:
        expected = need
    else:
        expected = optimize.brentq(lacking, need, 100 * need, rtol=1e-12)
    assert uncertainty.amount_for(need, u_need, relative, certainty) == approx(expected, rel=1e-8)


def test_a_million_draws_bear_the_amount_out():
    amount = uncertainty.amount_for(yards(400.0), yards(16.0), 0.05, 0.95).m_as("yard")
    chance = np.random.default_rng(3)
    enough = chance.normal(amount, amount * 0.05, DRAWS) >= chance.normal(400, 16, DRAWS)
    assert enough.mean() == approx(0.95, abs=0.001)


def test_without_any_doubt_the_need_is_the_amount():
    assert uncertainty.amount_for(yards(400.0), yards(0.0), 0, 0.99).m_as("yard") == approx(400)
    assert uncertainty.amount_for(yards(400.0), yards(50.0), 0.2, 0.5).m_as("yard") == approx(400)


def test_a_margin_is_two_standard_uncertainties():
    # Coverage factor 2, JCGM 100, 6.3 (from memory): 10 per cent of 400 yards are twice 20.
    u_need = uncertainty.margin_uncertainty(yards(400.0), 0.1)
    assert u_need.m_as("yard") == approx(20)
    assert uncertainty.chance_enough(yards(40.0), u_need) == approx(0.977, abs=0.0005)


def test_square_keeps_the_kind_squared():
    assert uncertainty.square(yards(3)).m_as("ft^2") == approx(81)
    assert uncertainty.square(0.5) == 0.25


@given(doubts, doubts)
def test_squares_in_a_column_are_doubts_combined(first, second):
    column = uncertainty.square(yards(first)) + uncertainty.square(yards(second))
    assert np.sqrt(column).m_as("yard") == approx(uncertainty.combined(yards(first), yards(second)).m_as("yard"))


def test_relative_undoes_the_length_uncertainty():
    assert uncertainty.relative(yards(12), Quantity(365.76, "m")) == approx(0.03)  # 12 of 400 yd
    assert uncertainty.length_uncertainty(yards(400), uncertainty.relative(yards(12), yards(400))) == yards(12)
    assert uncertainty.relative(0, 5) == 0


def test_doubt_in_hand_of_each_cause_alone():
    none, grist = Quantity(0.0, "g^2"), Quantity(1600, "yard/pound")
    nothing, quarter = Quantity(0.0, "m^2"), Quantity(4, "oz")

    def in_yards(*given):
        return uncertainty.have_doubt(*given).m_as("yard")

    # 4 oz at 1,600 yd/lb are 400 yd: 8 % of them 32 yd; half an ounce of doubt 50 yd.
    assert in_yards(Quantity(49, "yard^2"), none, quarter, grist, 0) == approx(7)
    assert in_yards(nothing, Quantity(0.25, "oz^2"), quarter, grist, 0) == approx(50)
    assert in_yards(nothing, none, quarter, grist, 0.08) == approx(32)


@given(doubts, doubts, st.floats(0, 1e3), doubts, st.floats(0.001, 0.2))
def test_the_package_uncertainties_carries_the_same_doubt_in_hand(spun, u_mass, mass, grist, grist_doubt):
    in_hand = ufloat(200, spun) + ufloat(mass, u_mass) * ufloat(grist, grist * grist_doubt)
    found = uncertainty.have_doubt(
        Quantity(spun**2, "m^2"),
        Quantity(u_mass**2, "g^2"),
        Quantity(mass, "g"),
        Quantity(grist, "m/g"),
        grist_doubt,
    )
    assert found.m_as("m") == approx(in_hand.std_dev)


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: uncertainty.rectangular(-1.0), "half width"),
        (lambda: uncertainty.combined(1.0, -1.0), "uncertainty"),
        (lambda: uncertainty.product_relative(0.1, 0.1, -0.1), "uncertainty"),
        (lambda: uncertainty.length_relative(0, 1, yards(1), yards(0)), "wrap"),
        (lambda: uncertainty.length_relative(1, 1, yards(0), yards(0)), "loop"),
        (lambda: uncertainty.length_relative(1, -1, yards(1), yards(0)), "uncertainty"),
        (lambda: uncertainty.length_relative(1, 1, yards(1), yards(-1)), "uncertainty"),
        (lambda: uncertainty.length_uncertainty(yards(-1), 0.1), "length"),
        (lambda: uncertainty.length_uncertainty(yards(1), -0.1), "uncertainty"),
        (lambda: uncertainty.surplus_uncertainty(yards(-1), yards(1)), "uncertainty"),
        (lambda: uncertainty.chance_enough(float("inf"), 1.0), "surplus"),
        (lambda: uncertainty.chance_enough(1.0, -1.0), "uncertainty"),
        (lambda: uncertainty.coverage(0.49), "certainty"),
        (lambda: uncertainty.coverage(1), "certainty"),
        (lambda: uncertainty.amount_for(yards(-1), yards(1), 0.1, 0.9), "needed"),
        (lambda: uncertainty.amount_for(yards(1), yards(-1), 0.1, 0.9), "uncertainty"),
        (lambda: uncertainty.amount_for(yards(1), yards(1), -0.1, 0.9), "uncertainty"),
        (lambda: uncertainty.amount_for(yards(1), yards(1), 0.1, 1), "certainty"),
        (lambda: uncertainty.amount_for(yards(1), yards(1), 0.7, 0.95), "No amount is that sure"),
        (lambda: uncertainty.margin_uncertainty(yards(-1), 0.1), "needed"),
        (lambda: uncertainty.margin_uncertainty(yards(1), -0.1), "margin"),
        (lambda: uncertainty.square(-1), "uncertainty"),
        (lambda: uncertainty.relative(-1, 1), "uncertainty"),
        (lambda: uncertainty.relative(yards(1), yards(0)), "above zero"),
        (lambda: uncertainty.relative(0.0, 0.0), "above zero"),
        *(
            (lambda broken=broken: uncertainty.have_doubt(**{**IN_HAND, **broken}), sentence)
            for broken, sentence in (
                (dict(spun_square=Quantity(-1, "m^2")), "skeins"),
                (dict(to_come_square=Quantity(-1, "g^2")), "to come"),
                (dict(to_come=Quantity(-1, "g")), "mass"),
                (dict(grist=Quantity(0, "m/g")), "grist"),
                (dict(grist_doubt=-0.1), "standard uncertainty"),
            )
        ),
    ],
)
def test_refusals(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
