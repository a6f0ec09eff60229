"""From fleece to yarn and back, ranges of breeds, grades of wool."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx
from scipy import stats

from workbookgen.reference import fiber
from workbookgen.reference.calculation import OutOfValidity
from workbookgen.units import Quantity

from .quantities import grams

RAW, SKIRTED, WASHED, PREPARED, YARN = 1, 2, 3, 4, 5
FORWARDS = [fiber.after_skirting, fiber.after_scouring, fiber.after_preparation, fiber.after_spinning]
BACKWARDS = [fiber.before_skirting, fiber.before_scouring, fiber.before_preparation, fiber.before_spinning]
losses, yields = st.floats(0, 0.95), st.floats(0.05, 1)


def chain(calculations, start, stage, figures):
    for calculation, figure in zip(calculations, figures, strict=True):
        start = calculation(start, stage, guide=figure)
    return start


def test_a_stage_is_known_by_the_state_in_any_case():
    assert [fiber.stage(state) for state in fiber.STATES] == [1, 2, 3, 4, 5]
    assert fiber.stage("Washed Fiber") == 3
    assert fiber.stage(["raw fleece", "YARN OR THREAD"]).tolist() == [1.0, 5.0]


def test_the_whole_chain():
    # Chain of masses, by hand: 3000 g less 10 %, 60 % yield, less 8 %, less 3 %.
    yarn = chain(FORWARDS, grams(3000), RAW, [0.10, 0.60, 0.08, 0.03])
    assert yarn.m_as("g") == approx(1445.688, rel=1e-12)
    assert fiber.share_kept(grams(3000), yarn) == approx(0.481896, rel=1e-12)


@pytest.mark.parametrize("stage, left", [(RAW, 0.1), (SKIRTED, 0.2), (WASHED, 0.4), (PREPARED, 0.5), (YARN, 1.0)])
def test_steps_behind_the_lot_cost_nothing(stage, left):
    figures = [0.5, 0.5, 0.2, 0.5]  # keeps 0.5, 0.5, 0.8 and 0.5
    assert chain(FORWARDS, grams(1000), stage, figures).m_as("g") == approx(1000 * left)


@given(stage=st.integers(1, 5), figures=st.tuples(losses, yields, losses, losses), mass=st.floats(1, 1e5))
def test_backwards_undoes_forwards(stage, figures, mass):
    yarn = chain(FORWARDS, grams(mass), stage, figures)
    bought = chain(BACKWARDS[::-1], yarn, stage, figures[::-1])
    assert bought.m_as("g") == approx(mass)
    assert yarn.m_as("g") <= mass * (1 + 1e-12)


@pytest.mark.parametrize("calculation", FORWARDS)
def test_scale_beats_own_figure_and_that_beats_the_guide(calculation):
    weighed = calculation(grams(1000), RAW, weighed=Quantity(0.7, "kg"), own=0.4, guide=0.1)
    assert weighed.m_as("g") == approx(700)
    own, guide = calculation(grams(1000), RAW, own=0.4, guide=0.1), calculation(grams(1000), RAW, guide=0.4)
    assert own.m_as("g") == approx(guide.m_as("g"))


def test_scouring_is_told_by_its_yield_and_the_others_by_their_loss():
    left = [calculation(grams(1000), RAW, own=0.3).m_as("g") for calculation in FORWARDS]
    assert left == approx([700, 300, 700, 700])
    needed = [calculation(grams(300), RAW, own=0.25).m_as("g") for calculation in BACKWARDS]
    assert needed == approx([400, 1200, 400, 400])


@pytest.mark.parametrize("calculation", FORWARDS)
def test_a_lot_bought_as_yarn_needs_no_figure_and_no_sense_in_one(calculation):
    assert calculation(grams(100), YARN) == grams(100)
    assert calculation(grams(100), YARN, own=7.0) == grams(100)
    assert calculation(grams(100), YARN, weighed=grams(900)).m_as("g") == 100


@pytest.mark.parametrize("calculation", BACKWARDS)
def test_backwards_a_lot_of_yarn_needs_no_figure_either(calculation):
    assert calculation(grams(100), YARN) == grams(100)
    assert calculation(grams(100), YARN, guide=-3.0) == grams(100)


def test_mixed_stages_in_one_array():
    weighed = Quantity([0.6, np.nan, 2.0], "kg")
    left = fiber.after_scouring(grams([1000.0, 500.0, 300.0]), [SKIRTED, WASHED, YARN], weighed=weighed)
    assert left.m_as("g") == approx([600, 500, 300])


def test_share_lost():
    assert fiber.share_lost(grams(1000), Quantity(0.85, "kg")) == approx(0.15)
    assert fiber.share_lost(grams(100), grams(104)) == 0  # water from damp air


def test_what_was_seen_in_one_lot():
    # By hand: 3000 g raw, 2700 g skirted, 1620 g washed, 1490.4 g prepared.
    assert fiber.seen_skirting(grams(3000), grams(2700), RAW) == approx(0.1)
    assert fiber.seen_yield(grams(2700), grams(1620)) == approx(0.6)
    assert fiber.seen_loss(grams(1620), Quantity(1.4904, "kg")) == approx(0.08)
    assert fiber.seen_loss(grams(5), grams(5)) == 0  # nothing lost is a record too


def test_a_little_water_from_damp_air_is_no_loss_and_no_fault():
    """103 g of 100: nothing is lost, all is kept, and 103 g lie there; 105 g are the last that is taken."""
    for calculation in FORWARDS:
        assert calculation(grams(100), RAW, weighed=grams(105)).m_as("g") == approx(105)
    assert fiber.seen_loss(grams(100), grams(103)) == fiber.seen_skirting(grams(100), grams(103), RAW) == 0
    assert fiber.seen_in_preparing(grams(100), grams(103), by="carding") == 0
    assert fiber.share_kept(grams(100), grams(103)) == 1
    assert fiber.share_of_fed(grams(103), grams(100)) == 1
    assert fiber.waste_of_fed(grams(100), grams(78), grams(24)) == grams(0)


@given(mass=st.floats(1, 1e5), loss=losses, scoured_yield=yields)
def test_what_was_seen_is_the_figure_to_use_next_time(mass, loss, scoured_yield):
    skirted = fiber.after_skirting(grams(mass), RAW, guide=loss)
    washed = fiber.after_scouring(skirted, RAW, guide=scoured_yield)
    assert fiber.seen_skirting(grams(mass), skirted, RAW) == approx(loss, abs=1e-12)
    assert fiber.seen_yield(skirted, washed) == approx(scoured_yield)


def test_what_was_bought_skirted_tells_nothing_of_skirting():
    with pytest.raises(OutOfValidity, match="raw fleece") as refusal:
        fiber.seen_skirting(grams([10.0, 10.0]), grams([9.0, 9.0]), np.array([RAW, SKIRTED]))
    assert refusal.value.holds.tolist() == [True, False]


@given(mass=st.floats(1, 1e5), loss=losses)
def test_the_share_lost_is_the_figure_to_use_next_time(mass, loss):
    after = fiber.after_preparation(grams(mass), RAW, guide=loss)
    assert fiber.share_lost(grams(mass), after) == approx(loss, abs=1e-12)


@pytest.mark.parametrize(
    "fleece, yields, printed",
    [  # middle fleece times middle yield, ranges as published in extension sheets (read)
        ((3, 5), (0.55, 0.65), 2.4),  # Babydoll Southdown
        ((9, 14), (0.45, 0.54), 5.6925),  # Delaine-Merino
        ((8, 18), (0.35, 0.55), 5.85),  # Rambouillet
        ((12, 20), (0.65, 0.80), 11.6),  # Lincoln
    ],
)
def test_clean_fleece(fleece, yields, printed):
    low, high = (Quantity(pounds, "lb") for pounds in fleece)
    assert fiber.clean_fleece(low, high, *yields).m_as("lb") == approx(printed, rel=1e-12)


def test_middle_and_doubt_of_a_range():
    # JCGM 100, 4.3.7 (from memory): 35 to 55 per cent, half width 10 over the root of 3.
    assert fiber.rectangular_uncertainty(0.35, 0.55) == approx(0.10 / math.sqrt(3), rel=1e-12)
    assert fiber.midpoint(0.35, 0.55) == approx(0.45)
    assert fiber.midpoint(Quantity(1, "lb"), Quantity(32, "oz")).m_as("oz") == approx(24)


@given(low=st.floats(-1e3, 1e3), width=st.floats(1e-3, 1e3))
def test_scipy_says_the_same_of_a_uniform_distribution(low, width):
    # Outside witness: scipy's uniform distribution from low to low + width.
    uniform = stats.uniform(low, width)
    high = Quantity(low + width, "g")
    assert fiber.midpoint(grams(low), high).m_as("g") == approx(uniform.mean(), abs=1e-9)
    assert fiber.rectangular_uncertainty(grams(low), high).m_as("g") == approx(uniform.std(), rel=1e-6)


@pytest.mark.parametrize(
    "grade, lowest, highest",
    [  # USDA grades, New Mexico extension guide B-409, table 1 (read)
        ("80s", 17.70, 19.14),
        ("70s", 19.15, 20.59),
        ("64s", 20.60, 22.04),
        ("62s", 22.05, 23.49),
        ("60s", 23.50, 24.94),
        ("58s", 24.95, 26.39),
        ("56s", 26.40, 27.84),
        ("54s", 27.85, 29.29),
        ("50s", 29.30, 30.99),
        ("48s", 31.00, 32.69),
        ("46s", 32.70, 34.39),
        ("44s", 34.40, 36.19),
        ("40s", 36.20, 38.09),  # from memory
        ("36s and coarser", 38.10, 60.0),  # from memory
        ("finer than 80s", 10.0, 17.69),
    ],
)
def test_wool_grades(grade, lowest, highest):
    ends = Quantity([lowest, highest], "um")
    assert list(fiber.wool_grade(ends)) == [grade, grade]
    assert list(fiber.wool_grade(ends.to("inch"))) == [grade, grade]


def test_whole_fleeces():
    low, high = Quantity(3, "lb"), Quantity(5, "lb")
    assert fiber.fleeces(Quantity(8, "lb"), low, high) == 2
    assert fiber.fleeces(Quantity(8.01, "lb"), low, high) == 3
    # 1.2 kg in fleeces of 0.3 and 0.1: six, though the digits of 1.2 / 0.2 spill over.
    assert fiber.fleeces(Quantity(1.2, "kg"), Quantity(0.1, "kg"), Quantity(0.3, "kg")) == 6


@given(weight=st.floats(0, 1e3), low=st.floats(0.5, 10), width=st.floats(0, 10))
def test_fleeces_suffice_and_one_less_does_not(weight, low, width):
    low, high = Quantity(low, "kg"), Quantity(low + width, "kg")
    count, middle = fiber.fleeces(Quantity(weight, "kg"), low, high), (low + high).m_as("kg") / 2
    assert count * middle >= weight - 1e-6
    assert weight == 0 or weight < 1e-6 or (count - 1) * middle < weight


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: fiber.stage("felt"), '"felt"'),
        (lambda: fiber.stage(["raw fleece", "felt"]), '"felt"'),
        *(
            (lambda calculation=calculation: calculation(grams(100), 0, guide=0.2), "stage")
            for calculation in FORWARDS + BACKWARDS
        ),
        *(
            (lambda calculation=calculation: calculation(grams(100), 6, guide=0.2), "stage")
            for calculation in FORWARDS + BACKWARDS
        ),
        *(
            (lambda calculation=calculation: calculation(grams(-1), RAW, guide=0.2), "negative")
            for calculation in FORWARDS + BACKWARDS
        ),
        *(
            (lambda calculation=calculation: calculation(grams(100), RAW), "Nothing is known")
            for calculation in FORWARDS + BACKWARDS
        ),
        *(
            (lambda calculation=calculation: calculation(grams([1.0, 1.0]), [RAW, YARN]), "Nothing")
            for calculation in FORWARDS + BACKWARDS
        ),
        *(
            (lambda calculation=calculation: calculation(grams(100), RAW, weighed=grams(105.1)), "gain")
            for calculation in FORWARDS
        ),
        *(
            (lambda calculation=calculation: calculation(grams(100), RAW, weighed=grams(-1)), "weighed")
            for calculation in FORWARDS
        ),
        *(
            (lambda calculation=calculation: calculation(grams(100), RAW, own=-0.1), "loss|yield")
            for calculation in FORWARDS + BACKWARDS
        ),
        (lambda: fiber.after_skirting(grams(100), RAW, own=1), "loss"),
        (lambda: fiber.after_skirting(grams(100), RAW, own=1.2), "loss"),
        (lambda: fiber.after_preparation(grams(100), RAW, guide=1), "loss"),
        (lambda: fiber.after_spinning(grams(100), RAW, guide=1), "loss"),
        (lambda: fiber.after_scouring(grams(100), RAW, guide=0), "yield"),
        (lambda: fiber.after_scouring(grams(100), RAW, guide=1.1), "yield"),
        (lambda: fiber.before_scouring(grams(100), RAW, guide=0), "yield"),
        (lambda: fiber.before_spinning(grams(100), RAW, guide=1), "loss"),
        (lambda: fiber.share_lost(grams(0), grams(0)), "before"),
        (lambda: fiber.share_lost(grams(1), grams(-1)), "after"),
        (lambda: fiber.share_lost(grams(1), grams(1.051)), "dry it"),
        (lambda: fiber.seen_loss(grams(0), grams(0)), "before"),
        (lambda: fiber.seen_loss(grams(1), grams(1.051)), "dry it"),
        (lambda: fiber.seen_loss(grams(1), grams(-1)), "add mass"),
        (lambda: fiber.seen_skirting(grams(1), grams(2), RAW), "dry it"),
        (lambda: fiber.seen_yield(grams(1), grams(2)), "dry it"),
        (lambda: fiber.share_kept(grams(0), grams(0)), "start"),
        (lambda: fiber.share_kept(grams(1), grams(-1)), "yarn"),
        (lambda: fiber.midpoint(2, 1), "lower end"),
        (lambda: fiber.rectangular_uncertainty(grams(2), grams(1)), "lower end"),
        (lambda: fiber.clean_fleece(grams(0), grams(1), 0.4, 0.5), "fleece"),
        (lambda: fiber.clean_fleece(grams(2), grams(1), 0.4, 0.5), "lower end"),
        (lambda: fiber.clean_fleece(grams(1), grams(2), 0.5, 0.4), "lower end"),
        (lambda: fiber.clean_fleece(grams(1), grams(2), 0, 0.5), "yield"),
        (lambda: fiber.clean_fleece(grams(1), grams(2), -0.1, 0.5), "yield"),
        (lambda: fiber.clean_fleece(grams(1), grams(2), 0.4, 1.1), "yield"),
        (lambda: fiber.wool_grade(Quantity(0, "um")), "diameter"),
        (lambda: fiber.fleeces(grams(-1), grams(1), grams(2)), "weight"),
        (lambda: fiber.fleeces(grams(1), grams(0), grams(2)), "fleece"),
        (lambda: fiber.fleeces(grams(1), grams(3), grams(2)), "lower end"),
        (lambda: fiber.fleeces(grams(1), grams(1), grams(2), stage=3), "raw"),
        (lambda: fiber.surely_before(grams(-1), RAW, 0, 0, 0, 1), "mass"),
        (lambda: fiber.surely_before(grams(1), RAW, -0.1, 0, 0, 1), "uncertainty"),
        (lambda: fiber.surely_before(grams(1), YARN, 0, -0.1, 0, 1), "uncertainty"),
        (lambda: fiber.surely_before(grams(1), RAW, 0, 0, -0.1, 1), "uncertainty"),
        (lambda: fiber.surely_before(grams(1), RAW, 0.92, 0, 0, 1), "count on"),
        (lambda: sure(stage=0), "from 1 to 5"),
        (lambda: sure(stage=1.5), "from 1 to 5"),
        (lambda: sure(stage=6), "from 1 to 5"),
        (lambda: sure(u_second=-0.1), "uncertainty"),
        (lambda: fiber.rest_square(grams(-1), YARN, 0.1, grams(1), grams(1)), "mass"),
        (lambda: fiber.rest_square(grams(1), YARN, 0.1, grams(-1), grams(1)), "mass"),
        (lambda: fiber.rest_square(grams(1), YARN, 0.1, grams(1), grams(-1)), "mass"),
        (lambda: fiber.rest_square(grams(1), YARN, -0.1, grams(1), grams(1)), "uncertainty"),
        (lambda: fiber.rest_square(grams(1), YARN, 0.1, grams(1), u_grist=-0.1), "uncertainty"),
        (lambda: fiber.rest_square(grams(1), YARN, 0.1, grams(1), unweighed=grams(-1)), "mass"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()


@pytest.mark.parametrize("stage, buy", [(RAW, 1050), (SKIRTED, 1050), (WASHED, 1050), (PREPARED, 1050), (YARN, 900)])
def test_who_wants_to_be_sure_buys_more_and_yarn_is_as_sure_as_its_label(stage, buy):
    """Of fleece 1 - 2 · √(0.12² + 0.16²) = 0.6 can be counted on, of bought yarn 1 - 2 · √(0.12² + 0.09²) = 0.7."""
    doubts = {"u_kept": 0.12, "u_grist": 0.16, "u_batch": 0.09}
    assert fiber.surely_before(grams(630), stage, **doubts, coverage=2).m_as("g") == approx(buy)
    assert fiber.surely_before(grams(630), stage, **doubts, coverage=0).m_as("g") == 630
    column = fiber.surely_before(grams([630.0, 1260.0]), np.array([stage, YARN]), **doubts, coverage=2)
    assert column.m_as("g") == approx(np.array([buy, 1800]))


def sure(stage=RAW, **changed):
    """Steps whose squared doubts are 1, 4, 16 and 64 hundredths, and that of an own figure 100."""
    doubts = {"u_skirting": 0.1, "u_yield": 0.2, "u_preparation": 0.4, "u_spinning": 0.8, "u_own": 1.0}
    told = fiber.yarn_uncertainty(grams(100), stage, **doubts | changed).m_as("g")
    return told**2 / 100


@pytest.mark.parametrize("stage, square", [(RAW, 85), (SKIRTED, 84), (WASHED, 80), (PREPARED, 64), (YARN, 0)])
def test_only_steps_still_ahead_are_in_doubt(stage, square):
    assert sure(stage) == approx(square)


@pytest.mark.parametrize(
    "step, own, weighed, square_own, square_weighed",
    [
        ("skirting", 0.2, "skirted", 184, 84),
        ("yield", 0.5, "scoured", 181, 80),
        ("preparation", 0.1, "prepared", 169, 64),
        ("spinning", 0.0, "whole", 121, 0),
    ],
)
def test_what_is_weighed_is_sure_and_an_own_figure_has_its_own_doubt(step, own, weighed, square_own, square_weighed):
    assert sure(**{f"own_{step}": own}) == approx(square_own)
    assert sure(**{weighed: grams(50)}) == approx(square_weighed)


@pytest.mark.parametrize(
    "known, square",
    [
        ({}, 110),
        ({"scoured": grams(50)}, 105),
        ({"stage": PREPARED}, 89),  # top that is carded once more
        ({"stage": YARN}, 0),
        ({"prepared": grams(50)}, 64),
        ({"whole": grams(50)}, 0),
        ({"gone": "sold"}, 0),
        ({"gone": "set aside"}, 110),
    ],
)
def test_a_second_preparation_is_in_doubt_until_it_is_weighed(known, square):
    assert sure(u_second=0.5, **known) == approx(square)


@pytest.mark.parametrize(
    "stage, own, square",
    [
        (RAW, {}, 25),
        (RAW, {"own_skirting": 0.1}, 41),
        (RAW, {"own_yield": 0.5}, 34),
        (RAW, {"own_skirting": 0.1, "own_yield": 0.5}, 50),
        (SKIRTED, {"own_skirting": 0.1}, 16),
        (SKIRTED, {"own_yield": 0.5}, 25),
        (WASHED, {"own_yield": 0.5}, 0),
        (YARN, {}, 0),
    ],
)
def test_an_offer_is_in_doubt_by_skirting_and_scouring_while_they_are_ahead(stage, own, square):
    told = fiber.clean_uncertainty(grams(100), stage, u_skirting=0.03, u_yield=0.04, u_own=0.05, **own)
    assert told.m_as("g") ** 2 == approx(square)


@pytest.mark.parametrize(
    "stage, u, plied, gone, square",
    [
        (YARN, 10, 20, None, 116),
        (YARN, 10, 20, "set aside", 116),
        (YARN, 0, 20, "sold", 0),
        (YARN, 10, None, None, 100),
        (YARN, 10, 0, None, 100),
        (RAW, 10, 20, None, 100),
        (PREPARED, 10, 20, None, 100),  # of singles, the skeins took what they weigh
    ],
)
def test_a_thread_thicker_than_its_label_is_so_in_skeins_and_in_the_rest(stage, u, plied, gone, square):
    """10 percent of 20 g in skeins and 30 g to come: 0.01 · 20 · (20 + 60) = 16, which with 3² is 5², of 50 g."""
    taken = None if plied is None else grams(plied)
    told = fiber.rest_square(grams(u), stage, u_batch=0.1, to_come=grams(30), plied=taken, gone=gone)
    assert told.m_as("g^2") == approx(square)


@pytest.mark.parametrize(
    "stage, gone, square", [(RAW, None, 106.4), (PREPARED, None, 106.4), (YARN, None, 110), (RAW, "sold", 100)]
)
def test_skeins_not_yet_weighed_leave_the_rest_less_certain(stage, gone, square):
    """Spun finer or thicker by 8 percent: 0.08² · 10 · (10 + 90) = 6.4; a label is off by 10, 0.1² · 1000 = 10."""
    told = fiber.rest_square(grams(10), stage, 0.1, grams(45), gone=gone, u_grist=0.08, unweighed=grams(10))
    assert told.m_as("g^2") == approx(square)


@pytest.mark.parametrize("calculation", FORWARDS)
def test_borders_are_still_inside(calculation):
    assert calculation(grams(0.0), RAW, guide=0.5).m_as("g") == 0
    assert calculation(grams(100.0), RAW, weighed=grams(100.0)).m_as("g") == 100
    assert calculation(grams(100.0), RAW, weighed=grams(0.0)).m_as("g") == 0


def test_more_borders_are_still_inside():
    assert all(calculation(grams(0.0), RAW, guide=0.5).m_as("g") == 0 for calculation in BACKWARDS)
    assert fiber.clean_fleece(grams(1), grams(1), 1, 1).m_as("g") == 1


def test_rounding_forgives_last_digits_and_no_more():
    assert fiber.wool_grade(Quantity(17.6999, "um")) == "finer than 80s"
    assert fiber.wool_grade(Quantity(0.5, "um")) == "finer than 80s"
    assert fiber.fleeces(Quantity(2.0001, "kg"), Quantity(1, "kg"), Quantity(1, "kg")) == 3
