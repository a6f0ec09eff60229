"""Arguments for the calculations of what is told at a glance: on the desk, of a lot, in a chart, and in a project's
weeks."""

import numpy as np

from workbookgen.reference import answer, chart_bars, desk_words, one_lot_words, overview, planning, stock_words, uses

from .amounts import n, q, texts

CHANCES = dict(chances=[0.5, np.nan, 0.95])
PIECES = dict(values=[0.5, np.nan, 0.25], pieces=n(2, 2))
STEPS = dict(preparing=q("hour", 4, 0), spinning=q("hour", 20, 9), plying=q("hour", 6, 0), finishing=q("minute", 60, 0))
WEIGHTS = dict(after=q("oz", 30, 40), before=q("g", 1000, 800))

EXAMPLES = [
    (overview.how_many_enough, dict(certainty=n(0.9, 0.99), **CHANCES)),
    (desk_words.so_many_of, dict(enough=n(1, 0), **CHANCES)),
    (desk_words.projects_in_words, CHANCES | dict(unanswered=n(0, 2))),
    (desk_words.verdict_in_words, dict(name=texts("Vest", "Cap"), verdict=texts("enough", "short"))),
    (
        overview.how_many_unknown,
        dict(names=["Aster", "", "birch"], values=q("oz", 4, np.nan, np.nan), fates=["", "", "sold"]),
    ),
    (desk_words.words_explained, dict(count=n(150, 1))),
    (overview.nth, dict(names=["Aster", "", "birch"], place=n(1, 3))),
    (desk_words.program_in_words, dict(agreeing=n(237, 236), total=n(237, 237))),
    (desk_words.needs_a_look, dict(spoiled=n(1, 2), wrong=n(0, 1))),
    (desk_words.needs_a_look, dict(spoiled=n(0, 0), wrong=n(0, 0), questions=n(1, 3), unfinished=n(0, 2))),
    (
        desk_words.needs_a_look,
        dict(spoiled=n(0, 0, 2), wrong=n(1, 0, 1), first=texts("Aster: Weight", "Birch: Is it right?", "Cedar: Reel")),
    ),
    (stock_words.skeins_in_words, dict(count=n(1, 1200), mass=q("oz", 4, 0))),
    (stock_words.skeins_in_words, dict(count=n(1, 1200), mass=q("oz", 4, 0), unweighed=n(1, 2))),
    (stock_words.there_in_words, dict(count=n(1, 1200, 0), length=q("yard", 200, 0, 0), mass=q("oz", 4, 0, 0))),
    (stock_words.shelf_in_words, dict(count=n(1, 12), mass=q("g", 400, 0), unknown=n(0, 2))),
    (stock_words.lots_in_words, dict(count=n(1, 12), unknown=n(0, 1))),
    (one_lot_words.by_samples, dict(handfuls=n(2, 0), samples=n(0, 3))),
    (one_lot_words.lot_in_words, dict(yarn=q("oz", 40, 0), bought=q("oz", 104, 1))),
    (one_lot_words.lot_in_words, dict(yarn=q("oz", 40, 0), bought=q("oz", 104, 1), stage=n(5, 4))),
    (one_lot_words.way_in_words, dict(spun=q("oz", 40, 0), to_come=q("oz", 4, 1))),
    (one_lot_words.way_in_words, dict(spun=q("oz", 40, 0), to_come=q("oz", 4, 1), length=q("yard", 300, 0))),
    (
        one_lot_words.way_in_words,
        dict(spun=q("oz", 40, 0), to_come=q("oz", 4, 1), length=q("yard", 300, 200), as_spun=q("yard", 310, 300)),
    ),
    (one_lot_words.way_in_words, dict(spun=q("oz", 40, 5), to_come=q("oz", 4, 1), plied=q("oz", 0, 5), stage=n(1, 5))),
    (
        one_lot_words.way_in_words,
        dict(spun=q("oz", 40, 5), to_come=q("oz", 4, 1), weighed=q("oz", 44, 6), yarn=q("oz", 44, 6)),
    ),
    (chart_bars.has_of_needs, dict(has=q("oz", 40, 900), needs=q("g", 500, 800))),
    (chart_bars.give_or_take, dict(doubt=q("g", 30, 0))),
    (chart_bars.whisker, dict(has=q("oz", 40, 10), needs=q("g", 500, 800), doubt=q("g", 30, 0))),
    *(
        (calculation, WEIGHTS)
        for calculation in (chart_bars.known_part, chart_bars.expected_part, chart_bars.lost_part)
    ),
    *(
        (calculation, WEIGHTS | dict(weighed=q("oz", 30, 40)))
        for calculation in (chart_bars.known_part, chart_bars.expected_part)
    ),
    (planning.step_in_words, dict(place=n(1, 4))),
    *(
        (calculation, dict(place=n(1, 4), **STEPS))
        for calculation in (planning.hours_of_step, planning.hours_before_step)
    ),
    *(
        (calculation, dict(place=n(1, 4), left=n(0.5, 0), **STEPS))
        for calculation in (planning.hours_of_step, planning.hours_before_step)
    ),
    (
        planning.hours_in_week,
        dict(before=q("hour", 4, 0), hours=q("hour", 20, 9), weekly=q("hour", 6, 7), week=n(1, 2)),
    ),
    (answer.lacking, dict(spare=q("yard", 20, -20))),
    (answer.in_short, dict(verdict=texts("enough", "short"), spare=q("yard", 20, -20), lacking=q("yard", 0, 20))),
    (one_lot_words.still_enough, dict(to_come=q("oz", 4, 0.1), enough=texts("enough for hat", "not enough for hat"))),
    (
        one_lot_words.still_enough,
        dict(to_come=q("oz", 4, 4), enough=texts("enough for hat", "a"), promised=n(0.9, 1.2)),
    ),
    (
        one_lot_words.still_enough,
        dict(to_come=q("oz", 4, 0.1), enough=texts("enough for hat", "not enough for hat"), stage=n(5, 4)),
    ),
    (
        one_lot_words.still_enough,
        dict(to_come=q("oz", 4, 0.1), enough=texts("enough for hat", "not enough for hat"), promised=n(0.25, 0)),
    ),
    (uses.called, dict(name=texts("hat", "Scarf"))),
    (uses.called, dict(name=texts("hat", "Scarf"), size=texts("child", "grown"))),
    (uses.covers, dict(length=q("yard", 200, 0), wraps=q("1/inch", 10, 14))),
    (uses.covers_piece, dict(length=q("yard", 200, 0), wraps=q("1/inch", 10, 14), name=texts("hat", "Scarf"))),
    (uses.in_this_yarn, dict(length=q("yard", 200, 0), wraps=q("1/inch", 10, 14), wpi=q("1/cm", 4, 5))),
    (uses.how_many_fit, dict(area=n(0.3, 0), **PIECES)),
    (uses.how_many_may_fit, dict(area=n(0.3, 0), **PIECES)),
    (uses.enough_words, dict(fits=n(1, 0), may_fit=n(1, 2), names=["hat", "", "mitts"], **PIECES)),
]
