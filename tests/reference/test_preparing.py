"""Carding and combing apart, and a lot's own handfuls before its breed's figures: by hand, and as the planner
reckons."""

import pytest
from pytest import approx

from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.reference import fiber
from workbookgen.settings import Settings
from workbookgen.units import Quantity

US = described(Settings(units="us"))


def lots(lines, samples=()):
    entries = with_records(
        US,
        starting_entries(US),
        "fiber",
        [{"state": "raw fleece", "kind": "Awassi", "weight": 100.0, **line} for line in lines],
    )
    return expected_values(US, with_records(US, entries, "samples", list(samples)))


def test_a_comb_keeps_back_what_the_guide_says_of_combs():
    values = lots([{"name": "A"}, {"name": "B", "way": "carding"}, {"name": "C", "way": "combing"}])
    # Awassi by the guide: 15% skirted off, 60 to 70% yield, 6% lost in carding, 30% left in the comb, 3% in spinning.
    carded, combed = (100 * 0.85 * 0.65 * kept * 0.97 for kept in (0.94, 0.7))
    assert values["fiber_yarn"][:3] == (approx(carded), approx(carded), approx(combed))


def test_combed_fiber_is_less_surely_known():
    # By hand: JCGM 100, 4.3.7. Ranges 2 to 10 and 20 to 40% lost, over what is kept in their middles.
    half = 12**0.5
    assert fiber.preparation_uncertainty(0.08 / half / 0.94, 0.2 / half / 0.7, "combing") == approx(0.0825, abs=0.0001)
    values = lots([{"name": "A", "scoured_weighed": 50.0}, {"name": "B", "way": "combing", "scoured_weighed": 50.0}])
    known = 50 * 0.97
    assert values["fiber_to_come_doubt"][0] == approx(known * 0.94 * (0.025**2 + 0.012**2) ** 0.5)
    assert values["fiber_to_come_doubt"][1] == approx(known * 0.7 * (0.08**2 + 0.012**2) ** 0.5)


def test_lots_of_one_way_do_not_speak_for_the_other():
    weighed = {"scoured_weighed": 50.0, "kind": "Awassi"}
    values = lots(
        [
            {"name": "A", "prepared_weighed": 45.0, **weighed},
            *({"name": n, "way": "combing", "prepared_weighed": 30.0, **weighed} for n in "BCD"),
        ]
    )
    awassi = 0
    assert (values["guide_lots_preparation"][awassi], values["guide_lots_combing"][awassi]) == (1, 3)
    assert (values["guide_used_preparation"][awassi], values["guide_used_combing"][awassi]) == (
        approx(0.06),
        approx(0.4),
    )


def test_a_second_preparation_loses_once_more():
    lines = [
        {"name": "A", "way": "carding", "second_way": "combing"},
        {"name": "B", "second_way": "carding", "own_second": 0.1},
        {"name": "C"},
    ]
    values = lots(lines)
    # By hand, with Awassi's figures above: what carding leaves is combed, or carded again at one's own 10%.
    once = 100 * 0.85 * 0.65 * 0.94
    assert values["fiber_prepared"][:3] == (approx(once * 0.7), approx(once * 0.9), approx(once))
    assert values["fiber_lost_preparation"][0] == approx(1 - 0.94 * 0.7)


def test_a_bought_top_that_is_carded_again_loses_in_that_alone():
    top = {"state": "prepared fiber", "weight": 20.0}
    lines = [
        {"name": "A"},
        {"name": "B", "second_way": "carding"},
        {"name": "C", "second_way": "carding", "prepared_weighed": 19.5},
        {"name": "D", "prepared_weighed": 19.5},
    ]
    values = lots([top | line for line in lines])
    # D says nothing of a second preparation: what was bought prepared is taken as it was bought, as it always was.
    assert values["fiber_prepared"][:4] == (approx(20), approx(20 * 0.94), approx(19.5), approx(20))


def test_a_second_preparation_is_in_doubt_until_it_is_weighed():
    washed = {"scoured_weighed": 50.0, "second_way": "combing"}
    values = lots(
        [
            {"name": "A", **washed},
            {"name": "B", **washed, "own_second": 0.25},
            {"name": "C", **washed, "prepared_weighed": 33.0},
        ]
    )
    # JCGM 100, 5.1.6: relative squares add.
    assert values["fiber_to_come_doubt"][0] == approx(50 * 0.94 * 0.7 * 0.97 * (0.025**2 + 0.08**2 + 0.012**2) ** 0.5)
    assert values["fiber_to_come_doubt"][1] == approx(50 * 0.94 * 0.75 * 0.97 * (0.025**2 + 0.03**2 + 0.012**2) ** 0.5)
    assert values["fiber_to_come_doubt"][2] == approx(33 * 0.97 * 0.012)


def test_a_lot_prepared_twice_tells_the_guide_of_neither():
    weighed = {"scoured_weighed": 50.0, "prepared_weighed": 33.0}
    values = lots(
        [
            {"name": "A", **weighed},
            {"name": "B", "second_way": "combing", **weighed},
            {"name": "C", "own_second": 0.3, **weighed},
        ]
    )
    assert (values["guide_lots_preparation"][0], values["guide_lots_combing"][0]) == (1, 0)


def test_of_a_fiber_without_figures_a_second_preparation_is_unknown_until_it_is_weighed():
    with pytest.raises(ValueError, match="Nothing is known"):
        fiber.after_preparation(Quantity(50.0, "g"), 3, own=0.06, second_way="combing")
    assert fiber.after_preparation(Quantity(50.0, "g"), 4, Quantity(40.0, "g"), second_way="combing").m_as("g") == 40


def test_an_own_figure_for_a_second_preparation_that_is_no_share_leaves_the_weight_unknown():
    with pytest.raises(ValueError, match="second preparation"):
        fiber.after_preparation(Quantity(50.0, "g"), 1, own=0.06, own_second=0.3)
    lines = lots(
        [
            {"name": name, "scoured_weighed": 50.0, "own_preparation": 0.06, "own_second": own}
            for name, own in (("A", None), ("B", 0.5), ("C", "=1"), ("D", 7.0))
        ]
    )
    assert lines["fiber_prepared"][:4] == (approx(47), approx(23.5), None, None)


@pytest.mark.parametrize("stage", [1, 3, 4, 5])
def test_backwards_is_the_way_back(stage):
    known = {"stage": stage, "guide": 0.06, "second": 0.3}
    there = fiber.after_preparation(Quantity(50.0, "g"), **known)
    assert fiber.before_preparation(there, **known).m_as("g") == approx(50)
    assert there.m_as("g") == approx({1: 50 * 0.94 * 0.7, 3: 50 * 0.94 * 0.7, 4: 50 * 0.7, 5: 50}[stage])


def handful(lot, raw, clean):
    return {"name": f"{lot} {clean}", "lot": lot, "raw_in": raw, "clean_out": clean}


def test_a_lots_own_handfuls_win_over_its_breed_and_a_figure_over_both():
    values = lots(
        [{"name": "A"}, {"name": "B"}, {"name": "C", "own_yield": 0.6}],
        [handful("A", 2.0, 1.0), handful("a", 1.0, 0.4), handful("C", 2.0, 1.0)],
    )
    assert values["fiber_expected_yield"][:3] == (approx(0.45), approx(0.65), approx(0.5))
    assert values["fiber_scoured"][:3] == (approx(85 * 0.45), approx(85 * 0.65), approx(85 * 0.6))


def test_two_handfuls_are_surer_than_one_by_the_root_of_two():
    assert fiber.yield_uncertainty(0.03, 0.08, 2) == approx(0.08 / 2**0.5)
    assert fiber.yield_uncertainty(0.03, 0.08, 0, 0.06, 0.5) == approx(0.12)
    assert fiber.yield_uncertainty(0.03, 0.08, 1) == 0.08
    assert fiber.yield_uncertainty(0.03, 0.08) == fiber.yield_uncertainty(0.03, 0.08, spread=0.06) == 0.03
    assert fiber.yield_uncertainty(0.03, 0.08, published=0.5) == 0.03
    values = lots(
        [{"name": "A"}, {"name": "B", "own_yield": 0.5}],
        [handful("A", 2.0, 1.0), handful("A", 1.0, 0.5), handful("B", 2.0, 1.0)],
    )
    rest = 0.07**2 + 0.025**2 + 0.012**2
    of_a, of_b = (100 * 0.85 * 0.5 * 0.94 * 0.97 * (rest + doubt**2) ** 0.5 for doubt in (0.08 / 2**0.5, 0.03))
    assert values["fiber_to_come_doubt"][:2] == (approx(of_a), approx(of_b))


@pytest.mark.parametrize("way", ["felting", ""])
def test_another_way_is_refused(way):
    with pytest.raises(ValueError, match="carding or combing"):
        fiber.preparation_loss(0.06, 0.3, way)


def test_a_lot_of_the_other_way_is_refused():
    with pytest.raises(ValueError, match="other way"):
        fiber.seen_in_preparing(Quantity(2.0, "g"), Quantity(1.0, "g"), "combing")
    with pytest.raises(ValueError, match="other way"):
        fiber.seen_in_preparing(Quantity(2.0, "g"), Quantity(1.0, "g"), "carding", "combing")


def test_a_lot_prepared_twice_is_refused():
    for known in ({"second_way": "combing"}, {"own_second": 0.1}):
        with pytest.raises(ValueError, match="twice"):
            fiber.seen_in_preparing(Quantity(2.0, "g"), Quantity(1.0, "g"), "carding", **known)


def test_a_negative_doubt_of_a_second_preparation_is_refused():
    with pytest.raises(ValueError, match="negative"):
        fiber.second_uncertainty(0.03, 0.025, -0.08)
    for doubts in ((-0.02, 0.08), (0.02, -0.08)):
        with pytest.raises(ValueError, match="negative"):
            fiber.preparation_uncertainty(*doubts)


@pytest.mark.parametrize("known, found", [((0.55, 0.5), 0.55), ((0.55,), 0.55), ((None, 0.5), 0.5)])
def test_a_washed_handful_says_more_than_the_breeds_figure(known, found):
    assert fiber.yield_in_use(*known) == found


@pytest.mark.parametrize("known, found", [((0.1, 0.03), 0.1), ((0.1,), 0.1), ((None, 0.03), 0.03), ((0.0, 0.03), 0.0)])
def test_a_sample_of_the_lot_says_more_than_the_usual_loss(known, found):
    assert fiber.spinning_loss_in_use(*known) == found


def test_without_a_sample_or_a_breed_no_loss_is_known():
    with pytest.raises(ValueError, match="spin a sample"):
        fiber.spinning_loss_in_use()
    with pytest.raises(ValueError, match="number"):
        fiber.spinning_loss_in_use(float("nan"), 0.03)


def test_without_a_handful_or_a_breed_no_yield_is_known():
    with pytest.raises(ValueError, match="wash a handful"):
        fiber.yield_in_use()


@pytest.mark.parametrize(
    "second, loss, doubt",
    [
        ({}, 0, 0),
        ({"way": "carding"}, 0.05, 0.03),
        ({"way": "Combing"}, 0.3, 0.08),
        ({"way": "combing", "own": 0.2}, 0.2, 0.02),
        ({"way": "combing", "own": 0.0}, 0, 0),  # it lost nothing, and that is sure
    ],
)
def test_a_second_preparation_loses_by_its_own_figure_or_its_way_or_was_not_done(second, loss, doubt):
    assert fiber.second_loss(carding=0.05, combing=0.3, **second) == loss
    assert fiber.second_uncertainty(0.02, u_carding=0.03, u_combing=0.08, **second) == doubt


@pytest.mark.parametrize("by, way", [("carding", None), ("Carding", "carding"), ("combing", "COMBING")])
def test_what_a_lot_lost_is_told_of_the_way_it_went(by, way):
    assert fiber.seen_in_preparing(Quantity(200.0, "g"), Quantity(150.0, "g"), by, way) == approx(0.25)
