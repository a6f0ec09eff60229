"""Offers: fleeces and fibers side by side, by what their clean fiber and their yarn would cost."""

from collections.abc import Callable, Mapping

from workbookgen.language.domains import Name
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter, Log
from workbookgen.language.quantities import MASS, NUMBER, OZ, SHARE, Kind, Unit, by_mass
from workbookgen.language.repeated import repeated
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, UNKNOWN
from workbookgen.language.views import Listing, LogView, Sentences, band
from workbookgen.reference import fiber as trade
from workbookgen.reference import offers
from workbookgen.settings import Settings
from workbookgen.sheets import guide, lists, plausible, split, stages, tabs
from workbookgen.sheets.cost import money
from workbookgen.sheets.limits import AMOUNT, NONE_OR_AMOUNT
from workbookgen.sheets.lookup import lookup

SHEET = tabs.FLEECE
CHAPTER = "Offers"
HEAVIEST_OFFER = 10_000  # grams; common practice, no source: two heavy fleeces
ABOUT = "Shipping goes in with the price. ± is one standard uncertainty, from the guide's range: prices closer together than that are hardly different."


def chapter(settings: Settings) -> Chapter:
    bands = (
        band(Listing(title="What is offered, side by side", block="offers", view=VIEW, aside=ABOUT)),
        band(Sentences(fields=("best_words",))),
        *split.bands(),
    )
    return Chapter(CHAPTER, (log(settings), best(settings), *split.blocks(settings)), bands)


VIEW = LogView(
    typed="name kind state weight price shipping own_yield way",
    answers=(("Price", "clean_price clean_price_doubt yarn_price yarn_price_doubt"),),
)


def per_mass(settings: Settings) -> Kind:
    """Money per ounce, or per 100 grams."""
    hundred = Unit(f"{settings.currency}/100 g", "1 / hectogram", "0.01")
    return by_mass(Unit(f"{settings.currency}/oz", "1 / ounce", f"1/{OZ}"), hundred)


DOUBTED = ((1, "own_skirting", "doubts_skirting"), (2, "own_yield", "yield_doubt"), (3, "own_preparation", "preparation_doubt"), (4, "own_spinning", "doubts_spinning"))


def _weights_down() -> tuple[Result, ...]:
    """What is expected to be left of an offer after each stage."""
    skirting, scouring, preparation, spinning = stages.SKIRTING, stages.SCOURING, stages.PREPARATION, stages.SPINNING
    return (
        _after(skirting, "weight", "skirted", "Skirted", trade.after_skirting),
        _after(scouring, "skirted", "clean", "Clean fiber", trade.after_scouring),
        _after(preparation, "clean", "prepared", "Prepared", trade.after_preparation, uses={"scoured": "clean"}, leaves=("second", "second_way", "own_second")),
        _after(spinning, "prepared", "yarn", "Yarn", trade.after_spinning),
    )


def _after(stage: stages.Stage, before: str, key: str, label: str, reference: Callable, *, uses: Mapping[str, str] = {}, leaves: tuple[str, ...] = ()) -> Result:
    return Result(key, label, f"IF(stage > {stage.number}, {before}, {before} * {stage.kept})", reference, MASS, uses=stage.uses | uses, leaves=(*stage.of_the_scale, *leaves),
                  only_if=f"OR(stage > {stage.number}, {stage.is_known})", note="Expected, of all that is offered.")


def _doubt(weight: str, stages_in_it: int) -> str:
    squares = (f"IF(stage > {number}, 0, POWER(IF(given({own}), doubts_own, {expected}), 2))" for number, own, expected in DOUBTED[:stages_in_it])
    return f"{weight} * SQRT({' + '.join(squares)})"


def log(settings: Settings) -> Log:
    amount, price = money(settings), per_mass(settings)
    return Log(
        "offers",
        title="",
        rows=settings.rows.offers,
        groups=(
            _you_type(amount),
            _price(price),
            _worked_out(amount, price),
        ),
        rules=(
            Rule("NOT(given(yarn_price))", lambda values: values["yarn_price"] is None,
                 f"{UNKNOWN}: a loss or the yield is not known. Choose a breed or fiber, or type your own figures."),
            plausible.light_fleece(settings.units),
            _heavy(settings.units),
        ),
    )


def _heavy(system: str) -> Rule:
    """An offer heavier than fleeces are, with which its price would seem low: grams, typed for ounces."""
    grams = MASS.unit(system).value
    return Rule(f"weight > {HEAVIEST_OFFER}", lambda values: values["weight"] * grams > HEAVIEST_OFFER,
                f"{ASKING} Weight: more than 10 kg (22 lb) in one offer. Look at the unit above: grams, or ounces?")


def _you_type(amount: Kind) -> Group:
    return Group("You type", (
        Input("name", "Offer", Name(), needed=True, width=20, help="What you call it: the ewe, or the kind."),
        guide.kind(width=12),
        Input("state", "Offered as", lists.one_of(lists.STATES), needed=True, width=12,
              help="Raw fleece is as shorn, not skirted. Or skirted, washed, prepared, or yarn."),
        Input("weight", "Weight", AMOUNT, MASS, needed=True, help="All that you would get. A pound is 16 ounces: you may type =6.5*16."),
        Input("price", "Price", NONE_OR_AMOUNT, amount, needed=True, help="Of all of it, not of a pound; 0 for a gift."),
        Input("shipping", "Shipping", NONE_OR_AMOUNT, amount, blank_means=0, help="Postage, or the way there."),
        stages.way(),
        *stages.own_losses(),
    ))


def _price(price: Kind) -> Group:
    return Group("Price", (
        Result("clean_price", "Clean fiber", "paid / clean", offers.per_mass, price, uses={"money": "paid", "mass": "clean"},
               note="Price over what washing leaves."),
        Result("clean_price_doubt", "±", "clean_price * clean_doubt / clean", offers.price_uncertainty, price,
               uses={"price": "clean_price", "mass": "clean", "doubt": "clean_doubt"}, note="One standard uncertainty of it."),
        Result("yarn_price", "Its yarn", "paid / yarn", offers.per_mass, price, uses={"money": "paid", "mass": "yarn"},
               note="Price over the yarn that it gives."),
        Result("yarn_price_doubt", "±", "yarn_price * yarn_doubt / yarn", offers.price_uncertainty, price,
               uses={"price": "yarn_price", "mass": "yarn", "doubt": "yarn_doubt"}, note="One standard uncertainty of it."),
    ))


def _worked_out(amount: Kind, price: Kind) -> Group:
    return Group("Worked out", (
        Result("paid", "Paid in all", "price + shipping", offers.paid, amount, only_if='name <> ""'),
        stages.stage(),
        *stages.guide_losses(),
        stages.guide_yield("expected_yield"),
        *_weights_down(),
        lookup("yield_spread", "Yield ±", "guide_used_spread", "kind", SHARE),
        Result("yield_doubt", "Yield, relative ±", "IF(AND(given(yield_spread), given(expected_yield)), yield_spread / expected_yield, doubts_own)",
               trade.yield_uncertainty, SHARE,
               uses={"u_own": "doubts_own", "spread": "yield_spread", "published": "expected_yield"}, fixed={"u_handful": 0.0}, leaves=("samples",),
               only_if="blank_or(expected_yield, expected_yield > 0)"),
        Result("preparation_doubt", "Preparation, relative ±", f"IF({stages.COMBED}, doubts_combing, doubts_preparation)", trade.preparation_uncertainty, SHARE,
               uses={"u_carding": "doubts_preparation", "u_combing": "doubts_combing"}),
        Result("clean_doubt", "Clean fiber ±", _doubt("clean", 2), trade.clean_uncertainty, MASS,
               uses={"u_skirting": "doubts_skirting", "u_yield": "yield_doubt", "u_own": "doubts_own"}),
        Result("yarn_doubt", "Yarn ±", _doubt("yarn", 4), trade.yarn_uncertainty, MASS, leaves=("u_second", "skirted", "scoured", "prepared", "whole", "gone"),
               uses={"u_skirting": "doubts_skirting", "u_yield": "yield_doubt", "u_preparation": "preparation_doubt", "u_spinning": "doubts_spinning",
                     "u_own": "doubts_own"}),
        repeated("listed", "Called", "name", width=20),
        Result("other", "Yarn, if not the cheapest", "yarn_price", offers.of_others, price, uses={"price": "yarn_price", "best": "best_name"},
               only_if="name <> best_name"),
        Result("near", "May cost less", "IF(other - best_price > 2 * SQRT(best_doubt * best_doubt + yarn_price_doubt * yarn_price_doubt), 0, 1)", offers.may_cost_less,
               NUMBER, digits=0, uses={"price": "other", "least": "best_price", "u_price": "yarn_price_doubt", "u_least": "best_doubt"}, only_if="other >= best_price"),
    ), printed=False)


def best(settings: Settings) -> Card:
    price = per_mass(settings)
    return Card("best", "", groups=(Group("", (
        _named("name", "Cheapest by its yarn", "offers_yarn_price"),
        _of("price", "Its price", "yarn_price", "name", price),
        _of("doubt", "Its ±", "yarn_price_doubt", "name", price),
        _named("second", "The next", "offers_other"),
        _of("second_price", "Its price", "yarn_price", "second", price),
        _of("second_doubt", "Its ±", "yarn_price_doubt", "second", price),
        Result("more", "The next costs more by", "second_price / price - 1", offers.costs_more, SHARE, uses={"price": "second_price", "least": "price"},
               only_if="AND(price > 0, second_price >= price)", note="None beside a gift."),
        Result("apart", "Told apart", "IF(second_price - price > 2 * SQRT(doubt * doubt + second_doubt * second_doubt), 1, 0)", offers.told_apart, NUMBER, digits=0,
               uses={"price": "second_price", "least": "price", "u_price": "second_doubt", "u_least": "doubt"}, only_if="second_price >= price"),
        Result("rough", "One that may cost less", "INDEX(offers_listed, MATCH(1, offers_near, 0))", offers.first_that_may, None,
               uses={"names": "offers_listed", "values": "offers_near"}, only_if="COUNTIF(offers_near, 1) > 0"),
        Result("lacking", "Offers left aside", "COUNT(offers_paid) - COUNT(offers_yarn_price)", offers.unpriced, NUMBER, digits=0,
               uses={"amounts": "offers_paid", "values": "offers_yarn_price"}),
        Result("words", "In words",
               'IF(price > 0, name & IF(AND(apart = 1, NOT(given(rough))), " costs least by its yarn: ", " seems cheapest by its yarn, but not for certain: ") '
               '& second & ", the next, costs " & '
               'IF(ROUND(ROUND(more * 100, 9), 0) = 0, "about as much", said(more) & " more") & IF(AND(apart = 1, NOT(given(rough))), ".", '
               'IF(apart = 1, ", but " & rough & " is known less well and may cost less.", ", which is within their uncertainty. Choose by the fiber.")), '
               'IF(second_price > 0, name & " costs nothing. The next by its yarn is " & second & ".", name & " and " & second & " cost nothing. Choose by the fiber.")) & '
               'IF(lacking = 0, "", " " & said(lacking) & IF(lacking = 1, " offer is left aside: its line says", " offers are left aside: their lines say") & " why.")',
               offers.cheapest_in_words, None, uses={"best": "name", "following": "second", "least": "price", "dearer": "second_price"},
               only_if="OR(price <= 0, given(more))", width=60),
    )),))


def _named(key: str, label: str, prices: str) -> Result:
    return Result(key, label, f"INDEX(offers_listed, MATCH(SMALL({prices}, 1), {prices}, 0))", offers.cheapest, None, uses={"names": "offers_listed", "amounts": prices},
                  only_if=f"COUNT({prices}) > 0")


def _of(key: str, label: str, column: str, name: str, unit: Kind) -> Result:
    return lookup(key, label, f"offers_{column}", name, unit)
