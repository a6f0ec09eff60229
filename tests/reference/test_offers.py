"""Offers by what their fiber costs: by hand, and as the planner says it."""

import pytest
from pytest import approx

from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.reference import offers
from workbookgen.settings import Settings
from workbookgen.units import Quantity

US = described(Settings(units="us"))


def told(*records):
    """What the planner works out of these offers."""
    return expected_values(US, with_records(US, starting_entries(US), "offers", list(records)))


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
