"""Worlds in which there is too little, and a person gets as much more as the planner says.

What comes after is drawn before the planner is asked, as far as it is one hand's or one fleece's; nothing here is
taken from the planner's model. The hand that spins the first fiber too fine spins the second too fine. Another
fleece yields as it likes. Bought fiber is weighed on the same scale; yarn comes in whole balls.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from .worlds import (
    BALL,
    BATCH,
    BREED,
    PLAN,
    PLANNED,
    RATED,
    SCALE,
    SKEIN,
    USUAL,
    USUAL_DOUBT,
    Draw,
    _reel,
    _skein,
    _spun,
    _wanted,
    left_by_washing,
)

Grams = float


@dataclass(frozen=True)
class Purchase:
    """What a person types, and whether it is enough once so many grams of each of four components are got besides."""

    records: dict[str, list[dict]]
    is_enough: Callable[..., bool]


def top_kept(draw: Draw) -> float:
    return 1 - draw.uniform(0.01, 0.05)


def fleece_kept(draw: Draw) -> float:
    return (
        (1 - draw.uniform(0.05, 0.25))
        * draw.uniform(0.45, 0.65)
        * (1 - draw.uniform(0.02, 0.10))
        * (1 - draw.uniform(0.01, 0.05))
    )


def skewed_kept(draw: Draw) -> float:
    """With the mean and the spread of the range in the guide, but now and then a fleece with a great deal of dirt."""
    return (
        (1 - draw.uniform(0.05, 0.25))
        * (0.608 - 0.058 * draw.gamma(1.0))
        * (1 - draw.uniform(0.02, 0.10))
        * (1 - draw.uniform(0.01, 0.05))
    )


FLEECE_KEPT = 0.85 * 0.55 * 0.94 * 0.97  # as a person expects it by the guide


def _lot(tag: str, state: str, weight: float) -> dict:
    return {"name": f"Lot {tag}", "kind": BREED["name"], "state": state, "weight": round(weight, 1)}


def _piece(tag: str, stated: float, **more) -> dict:
    return {"name": f"Piece {tag}", "wanted": round(stated, 1)} | more


def of_fiber(
    state: str, whole: Grams, expected: float, kept: Callable[[Draw], float], is_one_fleece: bool = False
) -> Callable[[str, Draw], Purchase]:
    """Fiber of which there is a fifth to somewhat more than all that it takes, and more of the kind."""

    def purchase(tag: str, draw: Draw) -> Purchase:
        there = whole * draw.uniform(0.2, 1.1)
        off = 1 + SCALE * draw.normal()
        grist = PLANNED * (1 + PLAN * draw.normal())
        first = kept(draw)
        second = first if is_one_fleece else kept(draw)
        stated, takes = _wanted(draw, whole * expected * PLANNED / 100)
        records = {
            "fiber": [_lot(tag, state, there * off)],
            "projects": [_piece(tag, stated, grist=PLANNED, lot_1=f"Lot {tag}")],
        }
        return Purchase(records, lambda grams, *_: _spun(draw, there * first + grams / off * second, grist) >= takes)

    return purchase


def of_nothing(tag: str, draw: Draw) -> Purchase:
    """Nothing is there yet; what is to be got is told as weight of yarn."""
    grist = PLANNED * (1 + PLAN * draw.normal())
    stated, takes = _wanted(draw, 1500.0)
    return Purchase(
        {"projects": [_piece(tag, stated, grist=PLANNED)]}, lambda grams, *_: _spun(draw, grams, grist) >= takes
    )


def of_balls(tag: str, draw: Draw) -> Purchase:
    """Some balls of a yarn; the others are of the same dye lot."""
    label, there = 120.0, int(draw.integers(1, 14))
    batch = label * (1 + BATCH * draw.normal())
    stated, takes = _wanted(draw, label * 14)
    records = {
        "fiber": [{"name": f"Lot {tag}", "state": "yarn or thread", "weight": 50.0 * there, "grist": label * 2}],
        "projects": [_piece(tag, stated, lot_1=f"Lot {tag}", package=label)],
    }
    return Purchase(
        records,
        lambda grams, *_: (
            np.sum(batch * (1 + BALL * draw.normal(size=there + int(np.ceil(round(grams / 50, 6)))))) >= takes
        ),
    )


def of_skeins_and_fiber(tag: str, draw: Draw) -> Purchase:
    """One to five skeins, not measured after washing, and fiber."""
    off = SCALE * draw.normal()
    shrinkage = USUAL + USUAL_DOUBT * draw.normal()
    grist = PLANNED * (1 + PLAN * draw.normal())
    yarn = 600 * top_kept(draw)
    reel, loop = _reel(draw, f"Reel {tag}")
    made = [
        _skein(
            draw,
            f"Skein {number} {tag}",
            reel["name"],
            loop,
            shrinkage,
            grist,
            off,
            None,
            project=f"Piece {tag}",
            lot=f"Lot {tag}",
        )
        for number in range(int(draw.integers(1, 6)))
    ]
    rest, length = yarn - sum(mass for *_, mass in made), sum(each for _, each, _ in made)
    stated, takes = _wanted(draw, 1600.0)
    records = {
        "fiber": [_lot(tag, "prepared fiber", 600 * (1 + off))],
        "reels": [reel],
        "skeins": [each for each, *_ in made],
        "projects": [_piece(tag, stated, grist=PLANNED, lot_1=f"Lot {tag}")],
    }
    hold = 115 * RATED / 100 * (1 - USUAL)
    return Purchase(
        records, lambda grams, *_: length + _spun(draw, rest + grams / (1 + off) * top_kept(draw), grist, hold) >= takes
    )


def _plied(tag: str, stated: float, lots: list[dict], numbers: tuple[float, ...]) -> dict[str, list[dict]]:
    strands = [
        {
            "design": f"Yarn {tag}",
            "name": f"Strand {place} {tag}",
            "number": number,
            "system": "meters per 100 grams",
            "place": float(place),
            "lot": lot["name"],
        }
        for place, (number, lot) in enumerate(zip(numbers, lots, strict=True), start=1)
    ]
    return {
        "fiber": lots,
        "designs": [{"name": f"Yarn {tag}"}],
        "components": strands,
        "projects": [_piece(tag, stated, design=f"Yarn {tag}")],
    }


def of_single_and_thread(tag: str, draw: Draw, plenty: float = 1.0) -> Purchase:
    """A single of a top, so many times as much as it may take, and a thread."""
    off = SCALE * draw.normal()
    there = 600 * draw.uniform(0.3, 1.1) * plenty
    grist = 400 * (1 + PLAN * draw.normal())
    batch = 1 + BATCH * draw.normal()
    yarn, thread = there * top_kept(draw), round(600 * 0.97 * 0.4 * draw.uniform(0.3, 1.2), 1)
    stated, takes = _wanted(draw, 2300.0)
    left = left_by_washing(draw)
    lots = [
        _lot(tag, "prepared fiber", there * (1 + off)),
        {"name": f"Thread {tag}", "state": "yarn or thread", "weight": thread, "grist": 1000.0},
    ]

    def is_enough(wool: Grams, silk: Grams, *_) -> bool:
        spools = max(1, round((thread + silk) * 10 / SKEIN))
        of_thread = (thread + silk) * 10 * batch * np.mean(1 + BALL * draw.normal(size=spools))
        return min(_spun(draw, yarn + wool / (1 + off) * top_kept(draw), grist), of_thread) * left >= takes

    return Purchase(_plied(tag, stated, lots, (400.0, 1000.0)), is_enough)


def of_plenty_and_thread(tag: str, draw: Draw) -> Purchase:
    """Of the single there is more than enough, so that only the thread may run out."""
    return of_single_and_thread(tag, draw, plenty=3.0)


def of_fleeces(number: int, plenty: float = 1.0) -> Callable[[str, Draw], Purchase]:
    """As many singles, each of a fleece of its own: any of them may run out first, but for one of which is plenty."""

    def purchase(tag: str, draw: Draw) -> Purchase:
        off, single, whole = SCALE * draw.normal(), PLANNED * number, 4000 / number
        grist = single * (1 + PLAN * draw.normal())
        there = whole * draw.uniform(0.3, 1.1, size=number)
        there[0] *= plenty
        yarn = [each * fleece_kept(draw) for each in there]
        stated, takes = _wanted(draw, whole * FLEECE_KEPT * single / 100)
        lots = [
            _lot(f"{letter} {tag}", "raw fleece", each * (1 + off)) for letter, each in zip("ABCD", there, strict=False)
        ]
        left = left_by_washing(draw)
        return Purchase(
            _plied(tag, stated, lots, (single,) * number),
            lambda *grams: (
                left
                * min(
                    _spun(draw, first + more / (1 + off) * fleece_kept(draw), grist)
                    for first, more in zip(yarn, grams, strict=False)
                )
                >= takes
            ),
        )

    return purchase


def of_two_projects(tag: str, draw: Draw) -> Purchase:
    """Two projects on one lot, and what the first is told to get: it is to be got once, and to be enough for both."""
    off, there, grist = SCALE * draw.normal(), 900 * draw.uniform(0.2, 1.1), PLANNED * (1 + PLAN * draw.normal())
    yarn, share = there * top_kept(draw), draw.uniform(0.3, 0.7)
    (stated, takes), (others_stated, others_take) = (
        _wanted(draw, 900 * 0.97 * PLANNED / 100 * each) for each in (share, 1 - share)
    )
    lot = _lot(tag, "prepared fiber", there * (1 + off))
    projects = [
        _piece(tag, stated, grist=PLANNED, lot_1=lot["name"]),
        {"name": f"Other {tag}", "wanted": round(others_stated, 1), "grist": PLANNED, "lot_1": lot["name"]},
    ]
    return Purchase(
        {"fiber": [lot], "projects": projects},
        lambda grams, *_: _spun(draw, yarn + grams / (1 + off) * top_kept(draw), grist) >= takes + others_take,
    )


TOP = of_fiber("prepared fiber", 900, 0.97, top_kept)
FLEECE = of_fiber("raw fleece", 2500, FLEECE_KEPT, fleece_kept)
ONE_FLEECE = of_fiber("raw fleece", 2500, FLEECE_KEPT, fleece_kept, is_one_fleece=True)
SKEWED = of_fiber("raw fleece", 2500, FLEECE_KEPT, skewed_kept)
