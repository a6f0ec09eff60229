"""Arguments for the calculations of buying and keeping: offers side by side, a purchase that is divided, what is
still there."""

import numpy as np

from workbookgen.reference import fiber, kept_stock, offers, split, stock_words

from .amounts import n, q, texts

TWO = dict(price=q("1/oz", 1.4, 2.0), least=q("1/kg", 40, 70))

EXAMPLES = [
    (
        fiber.clean_uncertainty,
        dict(clean=q("oz", 50, 20), stage=n(1, 2), u_skirting=n(0.07, 0.07), u_yield=n(0.1, 0.1), u_own=n(0.03, 0.03)),
    ),
    (
        fiber.clean_uncertainty,
        dict(
            clean=q("oz", 50, 20),
            stage=n(1, 2),
            u_skirting=n(0.07, 0.07),
            u_yield=n(0.1, 0.1),
            u_own=n(0.03, 0.03),
            own_skirting=n(0.1, 0.2),
            own_yield=n(0.5, 0.6),
        ),
    ),
    (offers.paid, dict(price=n(54, 58), name=texts("Hill ewe", "Top"), shipping=n(16, 0))),
    (offers.per_mass, dict(money=n(70, 0), mass=q("oz", 50, 400))),
    (offers.price_uncertainty, dict(price=q("1/oz", 1.4, 0), mass=q("g", 1400, 400), doubt=q("oz", 4, 0))),
    (offers.of_others, dict(price=q("1/oz", 1.4, 0), name=texts("Hill ewe", "Top"), best=texts("Top", "Hill ewe"))),
    (offers.costs_more, TWO),
    (offers.told_apart, TWO | dict(u_price=q("1/oz", 0.1, 0.4), u_least=q("1/kg", 1, 9))),
    (offers.may_cost_less, TWO | dict(u_price=q("1/oz", 0.1, 0.4), u_least=q("1/kg", 1, 9))),
    (
        offers.cheapest_in_words,
        dict(
            best=texts("Top", "Hill ewe"),
            following=texts("Hill ewe", "Top"),
            more=n(0.12, 0),
            apart=n(1, 0),
            lacking=n(0, 2),
            least=q("1/oz", 1.5, 2),
            dearer=q("1/oz", 1.68, 2),
        ),
    ),
    (
        offers.cheapest_in_words,
        dict(
            best=texts("Top", "Hill ewe"),
            following=texts("Hill ewe", "Top"),
            more=n(0.12, 0),
            apart=n(1, 0),
            lacking=n(0, 2),
            least=q("1/oz", 1.5, 2),
            dearer=q("1/oz", 1.68, 2),
            rough=texts("Ram", "Lamb"),
        ),
    ),
    (
        offers.cheapest_in_words,
        dict(
            best=texts("Top", "Hill ewe"),
            following=texts("Hill ewe", "Top"),
            apart=n(1, 0),
            lacking=n(0, 2),
            least=q("1/oz", 0, 0),
            dearer=q("1/oz", 1.68, 0),
        ),
    ),
    (split.whole_steps, dict(amount=q("oz", 107.3, 0), step=q("g", 5, 1))),
    (split.whole_steps, dict(amount=n(70, 0.3), step=n(0.01, 0.05))),
    (split.of_steps, dict(steps=n(1073, 0), step=q("oz", 0.1, 1))),
    (split.undivided, dict(amount=q("g", 107, 20), step=q("g", 5, 1), steps=n(21, 20))),
    (split.asked, dict(line=n(1, 2), wanted=q("oz", 32, 1))),
    (split.part, dict(line=n(1, 2), parts=n(1, 2))),
    (split.part, dict(line=n(1, 2), parts=n(1, 2), wanted=q("oz", 32, 1))),
    (split.for_parts, dict(mass=q("oz", 107, 10), wanted=q("g", 900, 900))),
    (split.claim, dict(part=n(1, 2), rest=q("oz", 50, 0), parts=n(3, 3))),
    (split.claim, dict(part=n(0, 0), rest=q("oz", 50, 0), parts=n(3, 0), wanted=q("g", 900, 20))),
    (split.exact, dict(steps=n(1073, 0), due=q("oz", 32, 0), in_all=q("g", 3000, 3000))),
    (split.whole, dict(exact=n(2.333333, 7))),
    (split.turn, dict(exact=n(2.333333, 7), whole=n(2, 7), line=n(1, 8))),
    (split.steps_left, dict(steps=n(10, 9), amounts=n(3, np.nan, 5))),
    (split.last_turn, dict(left=n(1, 2), amounts=n(333333999, np.nan, 998))),
    (split.given_out, dict(whole=n(3, 5), turn=n(333333999, 998))),
    (split.given_out, dict(whole=n(3, 5), turn=n(333333999, 998), last=n(333333999, 333333999))),
    (split.of_the_wanted, dict(mass=q("oz", 107, 10), wanted=q("g", 900, 900))),
    (
        split.split_in_words,
        dict(in_all=q("oz", 107, 10), parts=n(3, 0), mass_left=n(0, 0.4), money_left=n(0, 0.5), fit=n(0.9, 1)),
    ),
    (split.split_in_words, dict(in_all=q("oz", 107, 10), parts=n(3, 1), mass_left=n(0, 0.4), money_left=n(0.5, 0))),
    (kept_stock.still_there, dict(amount=n(24, 0), gone=texts("set aside", "Set aside"))),
    (kept_stock.still_there, dict(amount=q("yard", 200, 0))),
    (kept_stock.left_of, dict(name=texts("Vest", "Cap"), mass=q("oz", 4, 1), gone=texts("set aside", "Set aside"))),
    (kept_stock.in_stock, dict(length=q("yard", 200, 0), gone=texts("set aside", "Set aside"))),
    (kept_stock.worth_of_rest, dict(cost=n(60, 0), to_come=q("oz", 20, 0), yarn=q("g", 1000, 400))),
    (kept_stock.worth_in_words, dict(worth=n(1240, 12))),
    (kept_stock.out_of_freezer, dict(frozen=n(46357, 46360))),
    (kept_stock.still_to_come, dict(yarn=q("oz", 4, 1), spun=q("g", 50, 50), gone=texts("sold", "given"))),
    (
        stock_words.there_in_words,
        dict(
            count=n(12, 3),
            length=q("yard", 200, 10),
            mass=q("oz", 4, 1),
            gone=n(1, 2),
            aside=n(0, 1),
            worth=texts("worth $32", "worth $5"),
            unweighed=n(2, 3),
        ),
    ),
    (stock_words.shelf_in_words, dict(count=n(12, 3), mass=q("oz", 4, 1), aside=q("oz", 0, 1))),
    (stock_words.shelf_in_words, dict(count=n(12, 3), mass=q("oz", 4, 1), worth=texts("worth $32", "worth $5"))),
]
