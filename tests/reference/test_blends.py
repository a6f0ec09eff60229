"""Blends: published items, by hand, and as the planner shows them."""

from math import pi

import pytest
from pytest import approx

from entries import entries_with
from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.reference import blends, diameter, fiber
from workbookgen.settings import Settings
from workbookgen.units import Quantity

from .quantities import grams

METRIC = described(Settings(units="metric"))


def mean_of(unit, *parts):
    """Mean fineness of (mass, fineness) of each fiber."""
    length = sum(blends.fiber_length(grams(mass), Quantity(each, unit)).m_as("m") for mass, each in parts)
    return blends.mean_fineness(
        grams(sum(mass for mass, _ in parts)), Quantity(length, "m"), len(parts), len(parts)
    ).m_as(unit)


def test_mean_fineness_of_a_blend():
    # 67 % of 1.3 dtex with 33 % of 1.7 dtex: 1.41 dtex, by hand 1 / (0.67 / 1.3 + 0.33 / 1.7) = 1.40944.
    assert mean_of("decitex", (67, 1.3), (33, 1.7)) == approx(1.40944, abs=5e-6)


def test_shares_price_and_laying_out():
    # By hand: 70 g at 2 for 100 g and 30 g at 5 for 100 g: 1.40 and 1.50, so 2.90 for 100 g.
    price = [Quantity(each, "1/hectogram") for each in (2, 5)]
    cost = blends.cost_of(grams(70), price[0]) + blends.cost_of(grams(30), price[1])
    assert blends.blend_price(cost, grams(100), 2, 2).m_as("1/hectogram") == approx(2.9)
    assert blends.to_lay_out(blends.share_of_blend(grams(70), grams(100)), grams(250)).m_as("g") == approx(175)


def test_a_fiber_of_known_diameter_is_a_round_rod():
    # Geometry: 25 µm of wool is 0.643 tex; in dtex 6.43.
    assert (
        blends.fineness(None, Quantity(25, "µm")).m_as("decitex")
        == approx(pi / 4 * 25**2 * 1.31 * 1e-2, rel=1e-12)
        == approx(6.43, abs=5e-3)
    )
    assert blends.fineness(None, Quantity(25, "µm"), Quantity(1.31, "g/cm^3")) == diameter.fiber_linear_density(
        Quantity(25, "µm"), Quantity(1.31, "g/cm^3")
    )
    assert blends.thickness(blends.fineness(None, Quantity(25, "µm"))).m_as("µm") == approx(25)


def test_fine_fibers_are_more():
    # By hand: of one density, n is as x / d²: half of 10 µm and half of 20 µm are 4 fibers to 1, and 12 µm in the mean.
    fine, coarse = (blends.fiber_length(grams(50), blends.fineness(None, Quantity(each, "µm"))) for each in (10, 20))
    side = blends.fiber_side(fine, Quantity(10, "µm")) + blends.fiber_side(coarse, Quantity(20, "µm"))
    assert (fine / coarse).m_as("") == approx(4) and blends.mean_diameter(side, fine + coarse, 2, 2).m_as(
        "µm"
    ) == approx(12)


def test_a_fiber_is_at_most_all_of_the_blend():
    assert [blends.share_of_blend(grams(each), grams(100)) for each in (70, 100)] == approx([0.7, 1])
    assert blends.share_of_blend(grams(100 * (1 + 1e-12)), grams(100)) == approx(1)  # a sum of others in other units
    for more in (101, 150):
        with pytest.raises(ValueError, match="more than the blend"):
            blends.share_of_blend(grams(more), grams(100))
    assert blends.blend_price(8.0, grams(200)).m_as("1/hectogram") == approx(4)
    for no_part in (-0.5, 1.01, 1.5):
        with pytest.raises(ValueError, match="A share"):
            blends.to_lay_out(no_part, grams(100))


def test_a_mean_needs_every_fiber():
    with pytest.raises(ValueError, match="every fiber"):
        blends.mean_fineness(grams(100), Quantity(1, "km"), 1, 2)
    # Of one fiber that is known, by nobody's counting: 3 g in 6 km, and 0.11 m² in 5 km.
    assert blends.mean_fineness(grams(3), Quantity(6, "km")).m_as("tex") == approx(0.5)
    assert blends.mean_diameter(Quantity(0.11, "m^2"), Quantity(5, "km")).m_as("µm") == approx(22)


def shown(*records):
    return expected_values(METRIC, entries_with(METRIC, {"blend": list(records)}) | {"mix_wanted": (250.0,)})


def test_a_blend_on_the_sheet():
    values = shown(
        {"name": "polyester", "mass": 67.0, "dtex": 1.3, "price": 2.0},
        {"name": "cotton", "mass": 33.0, "dtex": 1.7, "price": 5.0},
    )
    assert (
        values["mix_fineness"][0] == approx(1.40944, abs=5e-6)
        and values["mix_price"][0] == approx(2.99)
        and values["mix_regain"][0] is None
    )
    assert values["blend_lay_out"][:2] == approx((167.5, 82.5))


def test_what_is_not_known_of_one_is_not_told_of_all():
    values = shown(
        {"name": "wool", "mass": 50.0, "diameter": 20.0, "regain": 0.15}, {"name": "silk", "mass": 50.0, "regain": 0.1}
    )
    assert values["mix_diameter"][0] is None and values["mix_price"][0] is None
    # By hand: 50 / 1.15 + 50 / 1.10 = 88.933 g dry; 100 g hold 11.067 g of water.
    assert values["mix_regain"][0] == approx(11.0672 / 88.9328, abs=1e-5)


def test_top_noil_and_waste_are_what_was_fed():
    # By hand: of 200 g fed, 130 g of top and 60 g of noil leave 10 g of waste.
    waste = fiber.waste_of_fed(grams(200), grams(130), grams(60))
    assert waste.m_as("g") == approx(10)
    assert sum(fiber.share_of_fed(each, grams(200)) for each in (grams(130), grams(60), waste)) == approx(1)
    with pytest.raises(ValueError, match="fed"):
        fiber.waste_of_fed(grams(200), grams(151), grams(60))
    # What arithmetic in other units leaves of the same weight is no waste.
    assert fiber.waste_of_fed(grams(200), grams(200 - 1e-8)) == grams(0)
    assert fiber.waste_of_fed(grams(200), grams(200 - 1e-6)).m_as("g") == approx(1e-6, rel=1e-3)


def test_a_combed_lot_on_the_sheet():
    lot = {
        "name": "Fleece",
        "state": "washed fiber",
        "weight": 200.0,
        "way": "combing",
        "prepared_weighed": 130.0,
        "noil_weighed": 60.0,
    }
    values = expected_values(METRIC, entries_with(METRIC, {"fiber": [lot]}))
    assert (values["fiber_top_share"][0], values["fiber_noil_share"][0], values["fiber_waste"][0]) == approx(
        (0.65, 0.3, 10)
    )
    more = expected_values(METRIC, entries_with(METRIC, {"fiber": [lot | {"noil_weighed": 81.0}]}))
    assert more["fiber_message"][0].startswith("Noil:") and more["fiber_waste"][0] is None


def test_the_page_of_a_lot_tells_top_noil_and_waste():
    def page(**lot):
        entries = with_records(
            METRIC,
            starting_entries(METRIC),
            "fiber",
            [{"name": "Fleece", "state": "washed fiber", "weight": 200.0, "prepared_weighed": 130.0} | lot],
        )
        values = expected_values(METRIC, entries | {"way_lot": ("Fleece",)})
        return tuple(values[f"way_{key}"][0] for key in ("top_share", "noil", "noil_share", "waste", "waste_share"))

    assert page(way="combing", noil_weighed=60.0) == approx((0.65, 60, 0.3, 10, 0.05))
    assert page(way="combing") == (0.65, None, None, None, None), "what the comb kept may be noil or waste"
    assert page(way="carding") == (0.65, None, None, approx(70), approx(0.35)), "cards keep no noil back"


def test_a_blend_takes_up_moisture_by_its_dry_shares():
    """116 g at 16 percent are 100 g dry, 54 g at 8 percent 50 g: 20 g of water in 150 g."""
    dry = blends.dry_at_regain(grams(116), 0.16) + blends.dry_at_regain(grams(54), 0.08)
    assert dry.m_as("g") == approx(150)
    assert blends.blend_regain(grams(170), dry, known=2, of=2) == approx(2 / 15) == approx(2 / 3 * 0.16 + 1 / 3 * 0.08)
    assert blends.blend_regain(grams(100), grams(100)) == 0


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: blends.dry_at_regain(grams(-1), 0.1), "mass"),
        (lambda: blends.dry_at_regain(grams(1), -0.1), "regain"),
        (lambda: blends.blend_regain(grams(2), grams(1), known=1, of=2), "every fiber"),
        (lambda: blends.blend_regain(grams(2), grams(1), known=0, of=0), "every fiber"),
        (lambda: blends.blend_regain(grams(2), grams(0)), "weighs something"),
        (lambda: blends.blend_regain(grams(2), grams(2.1)), "no more than the whole"),
        (lambda: fiber.waste_share(grams(-1), grams(1)), "waste"),
        (lambda: fiber.waste_share(grams(1), grams(0)), "fed"),
    ],
)
def test_what_is_no_blend_is_refused(wrong, words):
    with pytest.raises(ValueError, match=words):
        wrong()


@pytest.mark.parametrize("waste, share", [(Quantity(0.01, "kg"), 0.1), (Quantity(0, "g"), 0)])
def test_waste_is_a_share_of_what_was_fed(waste, share):
    assert fiber.waste_share(waste, grams(100)) == approx(share)
