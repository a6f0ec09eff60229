"""Stock that is kept: what was given away is no stock, and what is left has its worth."""

import pytest
from pytest import approx

from entries import entries_with, values_of
from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import described
from workbookgen.reference import kept_stock
from workbookgen.settings import Settings
from workbookgen.units import Quantity

US = described(Settings(units="us"))
LOT = {"name": "Moss", "state": "prepared fiber", "weight": 10.0, "grist": 1600.0, "own_spinning": 0.0, "cost": 50.0}
SKEIN = {"reel": "Two-yard reel", "wraps": 100.0, "gross": 4.0, "washed_loop": 72.0, "lot": "Moss"}


def told(lot, skeins=(), projects=()):
    reel = {"name": "Two-yard reel", "rated": 72.0}
    return values_of(US, reels=[reel], fiber=[lot], skeins=skeins, projects=projects)


def test_rest_of_a_lot_is_worth_its_share_of_the_cost():
    # By hand: 10 oz for 50, of which 4 are spun: 6 oz are worth 30.
    values = told(LOT, [SKEIN | {"name": "One"}])
    assert values["fiber_worth"][0] == approx(30) and values["lot_sums_words"] == (
        "1 lot, 6 oz of yarn still in it, worth $30",
    )


def test_a_lot_whose_rest_is_sold_has_nothing_left_and_no_doubt_of_it():
    before, after = told(LOT), told(LOT | {"gone": "sold"})
    assert before["fiber_to_come"][0] == approx(10) and before["fiber_to_come_doubt"][0] > 0
    assert (
        after["fiber_to_come"][0] == 0
        and after["fiber_to_come_doubt"][0] == 0
        and after["fiber_to_spin_length"][0] == 0
    )
    assert after["fiber_worth"][0] == 0 and after["lot_sums_words"] == (None,)


def test_a_project_cannot_count_on_a_lot_that_is_sold():
    project = {"name": "Cap", "wanted": 300.0, "grist": 1600.0, "lot_1": "Moss"}
    before, after = told(LOT, projects=[project]), told(LOT | {"gone": "given"}, projects=[project])
    assert before["projects_have"][0] == approx(1000) and before["projects_verdict"][0] != "short"
    assert after["projects_have"][0] == 0 and after["projects_verdict"][0] == "short"


def test_a_skein_that_was_sold_is_spun_and_no_stock():
    skeins = [SKEIN | {"name": "One", "price": 20.0}, SKEIN | {"name": "Two", "price": 24.0, "gone": "sold"}]
    values = told(LOT, skeins)
    assert values["skeins_worth"][:2] == (20, None)
    assert values["skein_sums_words"] == ("1 skein, 200 yd, 4 oz; worth $20; 1 more gone",)
    # What the desk says is there.
    assert values["glance_length"][0] == approx(200) and values["glance_skeins_words"] == ("in 1 skein, 4 oz",)
    assert values["fiber_skeins"][0] == 2 and values["fiber_spun_length"][0] == approx(400)  # both were spun of it
    assert values["fiber_to_come"][0] == approx(2)  # it took its weight of the lot all the same


@pytest.mark.parametrize(
    ("weights", "head", "desk"),
    [
        ((4.0, 4.0), "2 skeins, 400 yd, 8 oz", "in 2 skeins, 8 oz"),
        ((4.0, None), "2 skeins, 400 yd, 4 oz; 1 of them not weighed", "in 2 skeins, 4 oz, 1 not weighed"),
        ((None, None), "2 skeins, 400 yd, not weighed", "in 2 skeins, not weighed"),
        ((None,), "1 skein, 200 yd, not weighed", "in 1 skein, not weighed"),
    ],
)
def test_what_was_not_weighed_weighs_not_nothing(weights, head, desk):
    skeins = [SKEIN | {"name": f"Skein {place}", "gross": gross} for place, gross in enumerate(weights)]
    values = told(LOT, skeins)
    assert (values["skein_sums_words"], values["glance_skeins_words"]) == ((head,), (desk,))


def test_who_comes_back_after_a_year_reads_what_is_there():
    """Three of 200 yd and 4 oz: one used, one sold, and the last given away, too."""
    skeins = [
        SKEIN | {"name": name, "gone": gone} for name, gone in (("One", "used"), ("Two", "sold"), ("Three", None))
    ]
    assert told(LOT, skeins)["skein_sums_words"] == ("1 skein, 200 yd, 4 oz; 2 more gone",)
    moths = [SKEIN | {"name": "One", "gone": "lost", "project": "Cap"}, SKEIN | {"name": "Two", "project": "Cap"}]
    cap = told(
        LOT | {"gone": "Lost"}, moths, projects=[{"name": "Cap", "wanted": 300.0, "grist": 1600.0, "lot_1": "Moss"}]
    )
    # Moths had the other skein and the rest of the lot.
    assert cap["projects_in_skeins"][0] == approx(200) and cap["fiber_to_come"][0] == 0
    nothing = told(LOT, [*skeins[:2], skeins[2] | {"gone": "given"}])
    assert nothing["skein_sums_words"] == ("no skeins left; 3 are gone",) and nothing["glance_length"] == (0,)


def test_a_skein_that_is_set_aside_is_stock_but_not_free():
    fates = (
        ("One", {}),
        ("Two", {"gone": "set aside"}),
        ("Three", {"gone": "Set Aside", "project": "Cap"}),
        ("Four", {"gone": "sold"}),
    )
    skeins = [SKEIN | {"name": name, "price": 20.0} | more for name, more in fates]
    values = told(LOT, skeins, projects=[{"name": "Cap", "wanted": 500.0, "grist": 1600.0, "lot_1": "Moss"}])
    assert values["skeins_worth"][:4] == (20, 20, 20, None)
    assert values["skeins_free_lot"][:4] == ("Moss", None, None, None)
    assert values["skeins_for_project"][:4] == (None, None, "Cap", None) and values["projects_in_skeins"][0] == approx(
        200
    )
    assert values["skein_sums_words"] == ("3 skeins, 600 yd, 12 oz; 2 of them set aside; worth $60; 1 more gone",)


def test_the_rest_of_a_lot_that_is_set_aside_is_stock_for_the_projects_that_draw_on_it():
    project = {"name": "Cap", "wanted": 300.0, "grist": 1600.0, "lot_1": "Moss"}
    before, after = told(LOT, projects=[project]), told(LOT | {"gone": "set aside"}, projects=[project])
    assert after["fiber_to_come"][0] == before["fiber_to_come"][0] == approx(10)
    assert (
        after["fiber_to_come_doubt"][0] == before["fiber_to_come_doubt"][0]
        and after["projects_have"][0] == before["projects_have"][0]
    )
    assert after["lot_sums_words"] == ("1 lot, 10 oz of yarn still in it, 10 oz of it set aside, worth $50",)


def test_a_currency_of_letters_stands_apart_from_the_number():
    kr = described(Settings(units="metric", currency="kr"))
    entries = entries_with(kr, {"fiber": [LOT | {"weight": 100.0}]})
    assert expected_values(kr, entries)["lot_sums_worth_words"] == ("worth kr 50",)


def test_a_week_in_the_freezer():
    # A week at -20 °C: advice of a national institute of conservation and of a museum (read as reproduced).
    assert kept_stock.out_of_freezer(46357.0) == 46364
    with pytest.raises(ValueError, match="whole number"):
        kept_stock.out_of_freezer(46357.5)


FATES = [(None, 1), ("set aside", 1), ("Set Aside", 1), ("sold", 0), ("given", 0), ("used", 0), ("lost", 0)]


@pytest.mark.parametrize("fate, is_there", FATES)
def test_what_is_gone_is_no_stock_and_what_is_set_aside_is(fate, is_there):
    skein = Quantity(200, "yard")
    if is_there:
        assert kept_stock.still_there(skein, fate) == skein and kept_stock.in_stock(skein, fate) == "there"
        return
    for calculation in (kept_stock.still_there, kept_stock.in_stock):
        with pytest.raises(ValueError, match="gone"):
            calculation(skein, fate)


@pytest.mark.parametrize("to_come, worth", [(Quantity(200, "g"), 15), (Quantity(0.8, "kg"), 60), (Quantity(0, "g"), 0)])
def test_a_rest_is_worth_its_share_of_what_the_lot_cost(to_come, worth):
    assert kept_stock.worth_of_rest(60, to_come, Quantity(800, "g")) == approx(worth)


def test_worth_is_told_in_whole_money():
    assert kept_stock.worth_in_words(1240.4, "$") == "worth $1,240" and kept_stock.worth_in_words(0.5) == "worth 1"


def test_the_first_day_is_a_day():
    assert kept_stock.out_of_freezer(1) == 8


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: kept_stock.still_there(Quantity(-1, "m")), "negative"),
        (lambda: kept_stock.worth_of_rest(-1, Quantity(1, "g"), Quantity(1, "g")), "money"),
        (lambda: kept_stock.worth_of_rest(1, Quantity(-1, "g"), Quantity(1, "g")), "yarn to come"),
        (lambda: kept_stock.worth_of_rest(1, Quantity(1, "g"), Quantity(0, "g")), "yarn of the lot"),
        (lambda: kept_stock.worth_in_words(0), "has a price"),
        (lambda: kept_stock.out_of_freezer(0), "from 1"),
        (lambda: kept_stock.out_of_freezer(-7), "from 1"),
    ],
)
def test_what_is_no_stock_is_refused(wrong, words):
    with pytest.raises(ValueError, match=words):
        wrong()
