"""What a spinner has, and the planner counts as none: it asks, before it sends to the shop.

Worked by hand: a single of metric count 8 weighs 1/8 g a meter, one of 12 weighs 1/12 g, and a thread of 60 a sixtieth
of a gram: 0.225 g together, as plied. Of 285 g of Merle, 95 g of Brack and 15 g of thread there are 2,280 m, 1,140 m
and 900 m; washing takes a twentieth.
"""

import pytest

from entries import entries_with, shown_in
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

PLANNER = described(Settings(units="metric"))
FIBER = [
    {"name": "Merle", "state": "prepared fiber", "weight": 300.0, "own_spinning": 0.05, "grist": 250.0},
    {"name": "Brack", "state": "prepared fiber", "weight": 100.0, "own_spinning": 0.05},
    {"name": "Cone", "state": "yarn or thread", "weight": 15.0, "grist": 6000.0},
]
COMPONENTS = [
    {
        "design": "Tweedy",
        "name": lot,
        "number": number,
        "system": "metric count",
        "place": place,
        "lot": lot,
    }
    for place, (lot, number) in enumerate((("Merle", 8.0), ("Brack", 12.0), ("Cone", 60.0)), start=1)
]
VEST = {"name": "Vest", "wanted": 1000.0, "margin": 0.0, "design": "Tweedy"}
# 185 wraps of 1.5 m, whose loop shrank to 1.45 m: 188.5 m, of 78 g.
SKEIN = {"name": "One", "reel": "Reel", "wraps": 130.0, "gross": 78.0, "washed_loop": 145.0}

NO_LOT = (
    "Is it right? A component of its design has no lot, so none of it counts as there. If you have it, choose its lot "
    "on the sheet Yarn."
)
ON_BOBBINS = (
    "Is it right? A lot of it is used, and much of its yarn is in no skein. What is on bobbins counts once it is logged; "
    "until then, empty Rest gone."
)


def told(*keys, planner=PLANNER, **logs):
    usual = {"reels": [{"name": "Reel", "rated": 150.0}], "designs": [{"name": "Tweedy", "shrinkage": 0.05}]}
    typed = usual | {"fiber": FIBER, "components": COMPONENTS} | logs
    entries = entries_with(planner, {log: records for log, records in typed.items() if log in planner.blocks})
    return shown_in(planner, entries, ["projects_message", *keys])


def without_lot(*places):
    return [{key: each for key, each in one.items() if key != "lot" or one["place"] not in places} for one in COMPONENTS]


@pytest.mark.parametrize(
    ("places", "there", "asked"),
    [((), 855, None), ((1,), 0, NO_LOT), ((2,), 0, NO_LOT), ((3,), 0, NO_LOT), ((1, 2, 3), 0, NO_LOT)],
)
def test_a_component_without_its_lot(places, there, asked):
    """The thread is the scarcest: 900 m, less a twentieth, is 855 m. Without one lot nothing can be plied."""
    message, has = told("projects_open_have", components=without_lot(*places), projects=[VEST])
    assert message == asked
    assert has == pytest.approx(there, abs=0.5)


def test_who_has_enough_in_skeins_or_is_done_is_not_asked():
    skein = SKEIN | {"gross": 44.0, "project": "Vest", "design": "Tweedy"}
    assert told(components=without_lot(2), projects=[VEST | {"wanted": 100.0}], skeins=[skein]) == [None]
    done = VEST | {"wanted": 188.0, "used": 44.0}
    assert told(components=without_lot(2), projects=[done], skeins=[skein | {"gone": "used"}]) == [None]


CAP = {"name": "Vest", "wanted": 650.0, "margin": 0.0, "lot_1": "Merle"}


@pytest.mark.parametrize(
    ("gone", "skeins", "there", "asked"),
    [
        # 285 g less 78 g, at 2.5 m a gram and a little coarser as the skein tells, and its 188.5 m
        (None, 1, 697, None),
        ("used", 0, 0, ON_BOBBINS),
        ("used", 1, 188.5, ON_BOBBINS),
        ("used", 2, 377, ON_BOBBINS),  # 156 g of 285 g: 45% are in no skein
        ("used", 3, 565.5, None),  # 234 g: 18%, no more than a lot may have lost
    ],
)
def test_a_lot_that_is_used_while_its_yarn_is_on_bobbins(gone, skeins, there, asked):
    fiber = [FIBER[0] | ({"gone": gone} if gone else {})]
    logged = [SKEIN | {"name": f"Skein {number}", "lot": "Merle", "project": "Vest"} for number in range(skeins)]
    message, has = told("projects_open_have", fiber=fiber, projects=[CAP], skeins=logged)
    assert message == asked
    assert has == pytest.approx(there, abs=0.5)


def test_it_is_asked_in_a_small_planner_too():
    small = described(Settings(units="metric", size="small"))
    assert told(planner=small, fiber=[FIBER[0] | {"gone": "used"}], projects=[CAP]) == [ON_BOBBINS]


def test_of_a_lot_that_is_gone_nobody_takes_any_more():
    """Another project on the same lot, and nothing left of it: there is nothing, and that is certain."""
    both = [CAP | {"wanted": 150.0}, CAP | {"name": "Cowl"}]
    _, there, doubt = told("projects_have", "projects_doubt_have", fiber=[FIBER[0] | {"gone": "lost"}], projects=both)
    assert (there, doubt) == (0, 0)


FERN = {"name": "Fern", "state": "prepared fiber", "own_spinning": 0.0}
SINGLE = {"design": "Silky", "name": "Single", "number": 10.0, "system": "metric count", "lot": "Fern"}
THREAD = {"design": "Silky", "name": "Thread", "number": 60.0, "system": "metric count", "place": 2.0}


@pytest.mark.parametrize(("fern", "more"), [(200.0, 925.6), (400.0, 923.6), (800.0, 922.5)])
def test_who_has_more_of_one_strand_need_not_get_more_of_the_other(fern, more):
    """Nothing is there of the thread, and more than enough of the single: 9 m a gram, of which a skein holds 180 m.

    Of 800 ± 40 m: T = 800 + 1.28155 · √(40² + 2 · 0.576 · T + Q · T²), 0.576 = 0.08² · 180 / 2. Q is 0.08² by grist,
    0.03² by what is kept, 0.08² over the number of skeins, 10, 20 and 40, and 0.000148 by scale and washing: 0.008088,
    0.007768, 0.007608. It was 1,039 m and 1,125 m: the more fiber there was, the more thread was to be bought.
    """
    shawl = {"name": "Shawl", "wanted": 800.0, "margin": 0.0, "design": "Silky"}
    logs = {"designs": [{"name": "Silky", "shrinkage": 0.1}], "components": [SINGLE, THREAD], "projects": [shawl]}
    _, told_more = told("projects_more", fiber=[FERN | {"weight": fern}], **logs)
    assert told_more == pytest.approx(more, abs=0.5)
