"""Worlds in which several projects or lots have a part, and worlds that are not as the planner takes them to be.

Each gives the records that a person types, what there is in truth for the project whose name begins with "Piece", and
what that takes. What other projects take comes first off the lot they share. Nothing here is taken from the planner's
model.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from .purchases import FLEECE_KEPT, fleece_kept, skewed_kept
from .worlds import (
    BREED,
    PLAN,
    PLANNED,
    SCALE,
    SKEINS_DIFFER,
    SLACK,
    TAPE,
    USUAL,
    USUAL_DOUBT,
    Draw,
    _reel,
    _skein,
    _spun,
    _top,
    _wanted,
)

WHOLE_FLEECE, WHOLE_TOP = 2500.0, 900.0
USUAL_WRAPS, SMALL = (90, 140), (15, 30)
EVENINGS, OF_AN_EVENING, HOLDS = 8, 3, 164.0


@dataclass(frozen=True)
class Shared:
    records: dict[str, list[dict]]
    there: float
    takes: float
    in_skeins: float = 0.0  # of what is there: its own, which nobody takes from it


def _project(name: str, stated: float, *lots: str, **more) -> dict:
    return (
        {"name": name, "wanted": round(stated, 1), "grist": PLANNED}
        | dict(zip(("lot_1", "lot_2", "lot_3"), lots, strict=False))
        | more
    )


def _fleece(tag: str, off: float, weight: float = WHOLE_FLEECE) -> dict:
    return {"name": f"Lot {tag}", "kind": BREED["name"], "state": "raw fleece", "weight": round(weight * (1 + off), 0)}


def contested(is_fleece: bool, others: int) -> Callable[[str, Draw], Shared]:
    """The other projects need from a third of what there is to far more than there is."""

    def shared(tag: str, draw: Draw) -> Shared:
        off = SCALE * draw.normal()
        lot, yarn = (_fleece(tag, off), WHOLE_FLEECE * fleece_kept(draw)) if is_fleece else _top(tag, draw, off)
        expected = (WHOLE_FLEECE * FLEECE_KEPT if is_fleece else WHOLE_TOP * 0.97) * PLANNED / 100
        needs = [_wanted(draw, expected * share) for share in draw.dirichlet(np.ones(others)) * draw.uniform(0.3, 1.6)]
        stated, takes = _wanted(draw, expected * 0.3)
        has = _spun(draw, yarn, PLANNED * (1 + PLAN * draw.normal()))
        rest = has - sum(takes for _, takes in needs)
        projects = [_project(f"Piece {tag}", stated, lot["name"])] + [
            _project(f"Other {place} {tag}", wanted, lot["name"]) for place, (wanted, _) in enumerate(needs)
        ]
        return Shared({"fiber": [lot], "projects": projects}, rest, takes)

    return shared


def after_a_finished_piece(tag: str, draw: Draw) -> Shared:
    """A piece that was made of the lot, and weighed; no skein was logged for it."""
    off = SCALE * draw.normal()
    lot, yarn = _top(tag, draw, off)
    took = yarn * draw.uniform(0.2, 0.6)
    stated, takes = _wanted(draw, (WHOLE_TOP * 0.97 - took) * PLANNED / 100)
    old = _project(f"Old {tag}", took * 2 * draw.uniform(0.9, 1.1), lot["name"], used=round(took * (1 + off), 1))
    there = _spun(draw, yarn - took, PLANNED * (1 + PLAN * draw.normal()))
    return Shared({"fiber": [lot], "projects": [old, _project(f"Piece {tag}", stated, lot["name"])]}, there, takes)


def after_a_finished_piece_with_skeins(tag: str, draw: Draw) -> Shared:
    """As many skeins as it took were logged for it, with a little thrown away."""
    off = SCALE * draw.normal()
    shrinkage = USUAL + USUAL_DOUBT * draw.normal()
    grist = PLANNED * (1 + PLAN * draw.normal())
    lot, yarn = _top(tag, draw, off)
    reel, loop = _reel(draw, f"Reel {tag}")
    made = [
        _skein(
            draw,
            f"Skein {place} {tag}",
            reel["name"],
            loop,
            shrinkage,
            grist,
            off,
            None,
            project=f"Old {tag}",
            lot=lot["name"],
            gone="used",
        )
        for place in range(int(draw.integers(2, 5)))
    ]
    spun = sum(mass for *_, mass in made)
    stated, takes = _wanted(draw, (WHOLE_TOP * 0.97 - spun) * PLANNED / 100)
    old = _project(f"Old {tag}", 800.0, lot["name"], used=round(spun * draw.uniform(0.9, 1.0) * (1 + off), 1))
    records = {
        "fiber": [lot],
        "reels": [reel],
        "skeins": [typed for typed, *_ in made],
        "projects": [old, _project(f"Piece {tag}", stated, lot["name"])],
    }
    return Shared(records, _spun(draw, yarn - spun, grist), takes)


def two_lots(is_one_fleece: bool) -> Callable[[str, Draw], Shared]:
    """Two lots for one piece: of two fleeces, or one fleece that was logged as two lots and so yields alike in both."""

    def shared(tag: str, draw: Draw) -> Shared:
        off, first = SCALE * draw.normal(), fleece_kept(draw)
        kept = first + (first if is_one_fleece else fleece_kept(draw))
        lots = [_fleece(f"{letter} {tag}", off, WHOLE_FLEECE / 2) for letter in "AB"]
        stated, takes = _wanted(draw, WHOLE_FLEECE * FLEECE_KEPT * PLANNED / 100)
        there = _spun(draw, WHOLE_FLEECE / 2 * kept, PLANNED * (1 + PLAN * draw.normal()))
        return Shared(
            {"fiber": lots, "projects": [_project(f"Piece {tag}", stated, *(lot["name"] for lot in lots))]},
            there,
            takes,
        )

    return shared


def overlapping(tag: str, draw: Draw) -> Shared:
    """The piece may use either lot, the other project only the second, which gets its due before the piece."""
    off, grist = SCALE * draw.normal(), PLANNED * (1 + PLAN * draw.normal())
    (first, yarn), (second, others_yarn) = (_top(f"{letter} {tag}", draw, off, WHOLE_TOP / 2) for letter in "AB")
    others_stated, others_take = _wanted(draw, WHOLE_TOP / 2 * 0.97 * PLANNED / 100 * draw.uniform(0.3, 0.9))
    stated, takes = _wanted(draw, WHOLE_TOP * 0.97 * PLANNED / 100 - others_stated)
    projects = [
        _project(f"Piece {tag}", stated, first["name"], second["name"]),
        _project(f"Other {tag}", others_stated, second["name"]),
    ]
    return Shared(
        {"fiber": [first, second], "projects": projects},
        _spun(draw, yarn, grist) + _spun(draw, others_yarn, grist) - others_take,
        takes,
    )


def of_two_grists(is_one_hand: bool) -> Callable[[str, Draw], Shared]:
    """The other project spins the same lot to another grist: finer or thicker than this one, or on its own."""

    def shared(tag: str, draw: Draw) -> Shared:
        off = SCALE * draw.normal()
        others_grist = float(draw.choice([100.0, 400.0, 800.0]))
        share = draw.uniform(0.2, 0.6)
        lot, yarn = _top(tag, draw, off)
        finer = 1 + PLAN * draw.normal()
        others_finer = finer if is_one_hand else 1 + PLAN * draw.normal()
        others_stated, others_take = _wanted(draw, WHOLE_TOP * 0.97 * share * others_grist / 100)
        stated, takes = _wanted(draw, WHOLE_TOP * 0.97 * (1 - share) * PLANNED / 100)
        there = _spun(draw, yarn - others_take * 100 / (others_grist * others_finer), PLANNED * finer)
        projects = [
            _project(f"Piece {tag}", stated, lot["name"]),
            _project(f"Other {tag}", others_stated, lot["name"], grist=others_grist),
        ]
        return Shared({"fiber": [lot], "projects": projects}, there, takes)

    return shared


def half_spun(
    skeins: tuple[int, int], alike: float = 0.0, is_skewed: bool = False, is_one_small: bool = False
) -> Callable[[str, Draw], Shared]:
    """Skeins and fiber.

    Of an evening's three skeins, `alike` is the share of their variance that they have in common. The first may be a
    small one; the less yarn, the more its grist differs, its variance in inverse proportion.
    """

    def shared(tag: str, draw: Draw) -> Shared:
        off, slack, shrinkage = SCALE * draw.normal(), SLACK * draw.normal(), USUAL + USUAL_DOUBT * draw.normal()
        lot, yarn = _top(tag, draw, off)
        grist = PLANNED * (1 + PLAN * draw.normal())
        reel, loop = _reel(draw, f"Reel {tag}")
        evening, own = np.repeat(draw.normal(size=EVENINGS), OF_AN_EVENING), draw.normal(size=EVENINGS * OF_AN_EVENING)
        each = draw.gamma(1.0, size=own.size) - 1 if is_skewed else np.sqrt(alike) * evening + np.sqrt(1 - alike) * own
        grists = grist / 100 * (1 + SKEINS_DIFFER * each)
        made, length, mass = [], 0.0, 0.0
        for place in range(int(draw.integers(*skeins))):
            is_small = is_one_small and place == 0
            counted = float(draw.integers(*(SMALL if is_small else USUAL_WRAPS)))
            reeled = (counted + draw.uniform(-1, 1)) * loop / 100 * (1 - shrinkage)
            if is_small:
                grists[place] += (grists[place] - grist / 100) * (np.sqrt(sum(USUAL_WRAPS) / 2 / counted) - 1)
            weighs = reeled / grists[place]
            washed = round(loop * (1 - shrinkage) * (1 + slack) + draw.uniform(-TAPE, TAPE), 2)
            made.append(
                {
                    "name": f"Skein {place} {tag}",
                    "reel": reel["name"],
                    "wraps": counted,
                    "gross": round(weighs * (1 + off), 1),
                    "washed_loop": washed,
                    "project": f"Piece {tag}",
                    "lot": lot["name"],
                }
            )
            length, mass = length + reeled, mass + weighs
        rest = max(0.0, yarn - mass)
        still = max(1, round(rest * grist / 100 / HOLDS))
        coming = sum(rest / still * grists[(len(made) + place) % grists.size] for place in range(still))
        stated, takes = _wanted(draw, WHOLE_TOP * 0.97 * PLANNED / 100)
        records = {
            "fiber": [lot],
            "reels": [reel],
            "skeins": made,
            "projects": [_project(f"Piece {tag}", stated, lot["name"])],
        }
        return Shared(records, length + coming, takes)

    return shared


def dirty_fleeces(tag: str, draw: Draw) -> Shared:
    off = SCALE * draw.normal()
    stated, takes = _wanted(draw, WHOLE_FLEECE * FLEECE_KEPT * PLANNED / 100)
    there = _spun(draw, WHOLE_FLEECE * skewed_kept(draw), PLANNED * (1 + PLAN * draw.normal()))
    return Shared(
        {"fiber": [_fleece(tag, off)], "projects": [_project(f"Piece {tag}", stated, f"Lot {tag}")]}, there, takes
    )


def fleece_looked_into(handfuls: int = 0, weighed: str = "", is_own: bool = False) -> Callable[[str, Draw], Shared]:
    """A fleece of which handfuls were washed, or all of it, or whose yield is known from fleeces like it."""

    def shared(tag: str, draw: Draw) -> Shared:
        off, skirted, clean = SCALE * draw.normal(), 1 - draw.uniform(0.05, 0.25), draw.uniform(0.45, 0.65)
        prepared = skirted * clean * (1 - draw.uniform(0.02, 0.10))
        kept = prepared * (1 - draw.uniform(0.01, 0.05))
        lot = _fleece(tag, off)
        if weighed == "skirted":
            lot["skirted_weighed"] = round(WHOLE_FLEECE * skirted * (1 + off), 0)
        if weighed == "washed":
            lot["scoured_weighed"] = round(WHOLE_FLEECE * skirted * clean * (1 + off), 0)
        if weighed == "prepared":  # and nothing before it
            lot["prepared_weighed"] = round(WHOLE_FLEECE * prepared * (1 + off), 0)
        if is_own:
            lot["own_yield"] = round(clean * (1 + 0.03 * draw.normal()), 3)
        samples = [
            {
                "name": f"Handful {place} {tag}",
                "lot": lot["name"],
                "raw_in": 50.0,
                "clean_out": round(50 * clean * (1 + 0.08 * draw.normal()), 1),
            }
            for place in range(handfuls)
        ]
        stated, takes = _wanted(draw, WHOLE_FLEECE * FLEECE_KEPT * PLANNED / 100)
        there = _spun(draw, WHOLE_FLEECE * kept, PLANNED * (1 + PLAN * draw.normal()))
        records = {"fiber": [lot], "projects": [_project(f"Piece {tag}", stated, lot["name"])]} | (
            {"samples": samples} if samples else {}
        )
        return Shared(records, there, takes)

    return shared
