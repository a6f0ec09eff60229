"""Offers by what their fiber costs: by hand, and as the planner says it."""

import pytest
from pytest import approx

from entries import entries_with
from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import described
from workbookgen.reference import offers
from workbookgen.settings import Settings
from workbookgen.units import Quantity

US = described(Settings(units="us"))


def told(*records):
    """What the planner works out of these offers."""
    return expected_values(US, entries_with(US, {"offers": list(records)}))


def offer(name, state, weight, price, **more):
    return {"name": name, "state": state, "weight": weight, "price": price, **more}


OWN = {"own_skirting": 0.2, "own_yield": 0.5, "own_preparation": 0.1, "own_spinning": 0.0}


def test_price_is_over_what_is_kept_and_the_post_is_in_it():
    # By hand: 100 oz skirted to 80, washed to 40, carded and spun to 36; 60 + 12 is 72.
    values = told(offer("Ewe", "raw fleece", 100.0, 60.0, shipping=12.0, **OWN))
    assert values["offers_clean_price"][0] == approx(1.8)
    assert values["offers_yarn_price"][0] == approx(2.0)


def test_doubt_of_a_price_is_that_of_what_is_kept():
    # By hand: a figure of one's own is doubted by 3%, two of them by 3% · √2, four by 3% · 2 (JCGM 100, the relative
    # form).
    values = told(offer("Ewe", "raw fleece", 100.0, 72.0, **OWN))
    assert values["offers_clean_price_doubt"][0] == approx(1.8 * 0.03 * 2**0.5)
    assert values["offers_yarn_price_doubt"][0] == approx(2.0 * 0.06)


def test_what_was_washed_by_the_seller_is_in_no_doubt_of_ones_own():
    values = told(offer("Top", "prepared fiber", 10.0, 18.0, **OWN))
    assert values["offers_clean_price_doubt"][0] == 0
    assert values["offers_yarn_price_doubt"][0] == approx(1.8 * 0.03)


def test_range_of_the_guide_is_the_doubt():
    # Targhee is printed with 50 to 55%: a standard uncertainty of 5% / √12, of 52.5%.
    values = told(offer("Ewe", "skirted fleece", 100.0, 52.5, kind="Targhee"))
    assert values["offers_clean_price"][0] == approx(1.0)
    assert values["offers_clean_price_doubt"][0] == approx(0.05 / 12**0.5 / 0.525)


@pytest.mark.parametrize(
    ("price", "text"),
    [
        # By hand: two doubts of 6% each; of 2 and 2.2 the difference is 0.2, and twice √(0.12² + 0.132²) is 0.357.
        (
            79.2,
            "Ewe seems cheapest by its yarn, but not for certain: Ram, the next, costs 10% more, which is within their uncertainty. Choose by the fiber.",
        ),
        # Of 2 and 2.6: 0.6 beside 0.394.
        (93.6, "Ewe costs least by its yarn: Ram, the next, costs 30% more."),
        (
            72.0,
            "Ewe seems cheapest by its yarn, but not for certain: Ram, the next, costs about as much, which is within their uncertainty. Choose by the fiber.",
        ),
    ],
)
def test_sentence_tells_prices_apart_only_beyond_their_doubt(price, text):
    values = told(offer("Ewe", "raw fleece", 100.0, 72.0, **OWN), offer("Ram", "raw fleece", 100.0, price, **OWN))
    assert values["best_words"] == (text,)


def test_a_third_offer_that_is_known_less_well_may_be_the_cheapest():
    """By hand: tops of 1.80 ± 0.054 and 2.00 ± 0.06 are told apart, 0.2 beside 0.161; a fleece of 2.02 ± 0.121 is not
    told from the first, 0.22 beside 0.265, and one of 2.10 ± 0.126 is, 0.3 beside 0.274."""
    tops = [offer("Gray", "prepared fiber", 10.0, 18.0, **OWN), offer("Brown", "prepared fiber", 10.0, 20.0, **OWN)]
    for price, text in (
        (
            72.72,
            "Gray seems cheapest by its yarn, but not for certain: Brown, the next, costs 11% more, but Ram is known less well and may cost less.",
        ),
        (75.6, "Gray costs least by its yarn: Brown, the next, costs 11% more."),
    ):
        assert told(*tops, offer("Ram", "raw fleece", 100.0, price, **OWN))["best_words"] == (text,)


def test_an_offer_that_cannot_be_compared_is_not_passed_over_in_silence():
    values = told(
        offer("Ewe", "raw fleece", 100.0, 72.0, **OWN),
        offer("Lamb", "raw fleece", 50.0, 1.0),
        offer("Ram", "raw fleece", 100.0, 93.6, **OWN),
    )
    assert values["best_words"][0].endswith(" 1 offer is left aside: its line says why.")
    assert values["offers_message"][1].startswith("No answer yet: a loss or the yield is not known.")


def test_a_gift_costs_nothing():
    """By hand: 0 over 36 oz of yarn is 0; a gift that comes by post costs the post, 9 over 36, 0.25."""
    gift, ram = offer("Ewe", "raw fleece", 100.0, 0.0, **OWN), offer("Ram", "raw fleece", 100.0, 93.6, **OWN)
    values = told(gift, ram, offer("Lamb", "raw fleece", 50.0, 0.0))
    assert values["offers_yarn_price"][:2] == (0, approx(2.6)) and values["offers_yarn_price_doubt"][0] == 0
    assert values["best_words"] == (
        "Ewe costs nothing. The next by its yarn is Ram. 1 offer is left aside: its line says why.",
    )
    assert told(gift, ram | {"price": 0.0})["best_words"] == ("Ewe and Ram cost nothing. Choose by the fiber.",)
    by_post = told(gift | {"shipping": 9.0}, ram)
    assert by_post["offers_yarn_price"][0] == approx(0.25) and by_post["best_words"] == (
        "Ewe costs least by its yarn: Ram, the next, costs 940% more.",
    )


def test_one_offer_is_compared_with_nothing():
    assert told(offer("Ewe", "raw fleece", 100.0, 72.0, **OWN))["best_words"] == (None,)


def test_the_cheapest_is_none_of_the_others():
    with pytest.raises(ValueError, match="cheapest itself"):
        offers.of_others(Quantity(1.0, "1/oz"), "Ewe", "EWE")


def a_pound(number):
    return Quantity(number, "1/lb")


def test_a_price_is_what_is_paid_over_what_is_kept():
    assert offers.per_mass(90, Quantity(0.5, "kg")).m_as("1/kg") == approx(180)
    assert offers.per_mass(0, Quantity(0.5, "kg")).m_as("1/kg") == 0
    assert offers.paid(80, "Ewe") == 80 and offers.paid(80, "Ewe", 12) == 92 and offers.paid(0, "Ewe") == 0


def test_a_price_is_as_uncertain_as_the_weight_kept():
    """0.1 of 2 kg are 5 percent, of 30 a kg 1.50."""
    doubt = offers.price_uncertainty(Quantity(30, "1/kg"), Quantity(2000, "g"), Quantity(0.1, "kg"))
    assert doubt.m_as("1/kg") == approx(1.5)


@pytest.mark.parametrize("price, more", [(a_pound(45), 0.25), (Quantity(45 / 16, "1/oz"), 0.25), (a_pound(36), 0)])
def test_how_much_more_is_a_share_of_the_lower_price(price, more):
    assert offers.costs_more(price, a_pound(36)) == approx(more)


@pytest.mark.parametrize("price, apart", [(46, 0), (46.5, 1), (36, 0)])
def test_prices_are_told_apart_beyond_two_uncertainties(price, apart):
    """√(3² + 4²) = 5, twice that is 10."""
    of_fleeces = [Quantity(each, "1/g") for each in (price, 36, 3, 4)]
    assert offers.told_apart(*of_fleeces) == apart and offers.may_cost_less(*of_fleeces) == 1 - apart


def test_offers_without_a_price_by_what_is_kept_are_counted():
    nan = float("nan")
    assert offers.unpriced([90, nan, 70, 60], a_pound([45, nan, nan, nan])) == 2
    assert offers.unpriced([90, 70], a_pound([45, 40])) == 0
    assert offers.cheapest(["gray", "brown", "black"], a_pound([45, nan, 40])) == "black"
    assert offers.cheapest(["gray", "brown"], a_pound([40, 40])) == "gray"
    assert (
        offers.of_others(a_pound(45), "gray", "brown") == offers.of_others(a_pound(45), "ash", "brown") == a_pound(45)
    )


SURE = "brown costs least by its yarn: gray, the next, costs"
UNSURE = "brown seems cheapest by its yarn, but not for certain: gray, the next, costs"
DOUBT = "which is within their uncertainty. Choose by the fiber."


@pytest.mark.parametrize(
    "least, dearer, apart, more, text",
    [
        (36, 45, 1, 0.25, f"{SURE} 25% more."),
        (36, 45, 0, 0.25, f"{UNSURE} 25% more, {DOUBT}"),
        (36, 36.1, 0, 0.004, f"{UNSURE} about as much, {DOUBT}"),
        (36, 36.1, 1, 0.004, f"{SURE} about as much."),
        (0, 45, 1, None, "brown costs nothing. The next by its yarn is gray."),
        (0, 0.5, 1, None, "brown costs nothing. The next by its yarn is gray."),
        (0, 0, 0, None, "brown and gray cost nothing. Choose by the fiber."),
    ],
)
@pytest.mark.parametrize(
    "lacking, aside",
    [(0, ""), (1, " 1 offer is left aside: its line says why."), (2, " 2 offers are left aside: their lines say why.")],
)
def test_the_cheapest_is_told_as_surely_as_it_is_known(least, dearer, apart, more, text, lacking, aside):
    told_of = offers.cheapest_in_words("brown", "gray", a_pound(least), a_pound(dearer), apart, lacking, more)
    assert told_of == text + aside


def test_another_that_may_cost_less_is_named():
    assert offers.first_that_may(["gray", "brown", "black", "ash"], [0, float("nan"), 1, 1]) == "black"
    told_of = offers.cheapest_in_words("brown", "gray", a_pound(36), a_pound(45), 1, 0, 0.25, "ash")
    assert told_of == f"{UNSURE} 25% more, but ash is known less well and may cost less."
    unsure = offers.cheapest_in_words("brown", "gray", a_pound(36), a_pound(45), 0, 0, 0.25, "gray")
    assert unsure == f"{UNSURE} 25% more, {DOUBT}"


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: offers.paid(1, " "), "blank"),
        (lambda: offers.paid(-1, "Ewe"), "price"),
        (lambda: offers.paid(1, "Ewe", -1), "shipping"),
        (lambda: offers.per_mass(-1, Quantity(1, "g")), "money"),
        (lambda: offers.per_mass(1, Quantity(0, "g")), "mass"),
        (lambda: offers.price_uncertainty(a_pound(-1), Quantity(1, "g"), Quantity(1, "g")), "price"),
        (lambda: offers.price_uncertainty(a_pound(1), Quantity(0, "g"), Quantity(1, "g")), "mass"),
        (lambda: offers.price_uncertainty(a_pound(1), Quantity(1, "g"), Quantity(-1, "g")), "uncertainty"),
        (lambda: offers.costs_more(a_pound(1), a_pound(0)), "lower price"),
        (lambda: offers.costs_more(a_pound(1), a_pound(2)), "cannot be lower"),
        (lambda: offers.told_apart(a_pound(1), a_pound(2), a_pound(1), a_pound(1)), "cannot be lower"),
        (lambda: offers.told_apart(a_pound(2), a_pound(1), a_pound(-1), a_pound(1)), "uncertainty"),
        (lambda: offers.may_cost_less(a_pound(1), a_pound(2), a_pound(1), a_pound(1)), "cannot be lower"),
        (lambda: offers.first_that_may(["gray", "brown"], [0, float("nan")]), "No offer may"),
        (lambda: offers.first_that_may(["gray"], [1, 0]), "one value beside"),
        (lambda: offers.unpriced([1], a_pound([1, 2])), "more prices"),
        (lambda: offers.cheapest(["gray"], a_pound([1, 2])), "one price beside"),
        (lambda: offers.cheapest(["gray", "brown"], a_pound([1])), "one price beside"),
        (lambda: offers.cheapest(["gray"], a_pound([float("nan")])), "No offer"),
        (lambda: offers.of_others(a_pound(-1), "gray", "brown"), "price"),
        (lambda: offers.cheapest_in_words("a", "b", a_pound(1), a_pound(2), 1, 0), "not known"),
        (lambda: offers.cheapest_in_words("a", "b", a_pound(1), a_pound(2), 0.5, 0, 1), "told apart"),
        (lambda: offers.cheapest_in_words("a", "b", a_pound(-1), a_pound(2), 1, 0, 1), "price"),
        (lambda: offers.cheapest_in_words("a", "b", a_pound(1), a_pound(2), 1, 0, 1e6), "too large"),
    ],
)
def test_what_is_no_price_is_refused(wrong, words):
    with pytest.raises(ValueError, match=words):
        wrong()
