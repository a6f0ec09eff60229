"""Worlds that are less kind than the planner takes them to be: skeins that are not weighed yet, rests of almost
nothing, damp air, a scale that is off by grams, hands that drift or are uneven, chances with heavy tails.

Each is a `Shared` of the sharers. A skein here is of a given true mass, and its wraps are counted from its length.
Nothing is taken from the planner's model.
"""

from collections.abc import Callable, Sequence

import numpy as np

from .purchases import FLEECE_KEPT, fleece_kept
from .sharers import WHOLE_FLEECE, WHOLE_TOP, Shared, _fleece, _project
from .worlds import (
    OWN_RECORD,
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
    _spun,
    _top,
    _wanted,
    half_plied,
)

World = Callable[[str, Draw], Shared]
EACH = 80.0  # grams of a skein
LOGS = ("reels", "fiber", "designs", "components", "skeins", "projects")


def wound(
    tag: str,
    draw: Draw,
    masses: Sequence[float],
    grists: Sequence[float],
    off: float,
    grams: float = 0.0,
    step: float = 0.1,
    **more,
) -> tuple[dict, list[dict], float]:
    """A reel, skeins of these masses and grists as they are typed, and their true length.

    The scale is off by a share, and by so many grams; it shows steps.
    """
    reel, loop = _reel(draw, f"Reel {tag}")
    shrinkage, slack = USUAL + USUAL_DOUBT * draw.normal(), SLACK * draw.normal()
    typed, length = [], 0.0
    for place, (mass, grist) in enumerate(zip(masses, grists, strict=True)):
        finished = mass * grist / 100
        length += finished
        turns = finished / (1 - shrinkage) / (loop / 100)
        typed.append(
            {
                "name": f"Skein {place} {tag}",
                "reel": reel["name"],
                "wraps": max(1.0, float(round(turns + draw.uniform(-0.5, 0.5)))),
                "gross": max(step, round(round((mass * (1 + off) + grams) / step) * step, 6)),
                "washed_loop": round(loop * (1 - shrinkage) * (1 + slack) + draw.uniform(-TAPE, TAPE), 2),
                "project": f"Piece {tag}",
            }
            | more
        )
    return reel, typed, length


def two_skeins(
    tag: str, draw: Draw, mass: float, step: float, apart: float, is_second_washed: bool
) -> tuple[dict, list[dict]]:
    """A reel, and two skeins of one weight, the grist of the second that much finer than that of the first."""
    off, grists = SCALE * draw.normal(), PLANNED * np.array([1 - apart / 2, 1 + apart / 2])
    reel, skeins, _ = wound(tag, draw, [mass, mass], grists, off, step=step)
    if not is_second_washed:
        del skeins[1]["washed_loop"]
    return reel, [{key: value for key, value in skein.items() if key != "project"} for skein in skeins]


def sampled(step: float, meters: tuple[float, float]) -> World:
    """A hand that spins as its sample, which was weighed in so many meters; the project is planned by that."""

    def world(tag: str, draw: Draw) -> Shared:
        off = SCALE * draw.normal()
        lot, yarn = _top(tag, draw, off)
        hand = PLANNED * (1 + 0.15 * draw.normal())
        length, grist = draw.uniform(*meters), hand * (1 + SKEINS_DIFFER * draw.normal())
        weighs = max(step, round(round(length / grist * 100 * (1 + off) / step) * step, 6))
        sample = {"name": f"Sample {tag}", "length": round(length, 1), "mass": weighs}
        stated, takes = _wanted(draw, WHOLE_TOP * 0.97 * hand / 100)
        project = {"name": f"Piece {tag}", "wanted": round(stated, 1), "lot_1": lot["name"], "sample": sample["name"]}
        there = _spun(draw, yarn, hand * (1 + 0.04 * draw.normal()))
        return Shared({"fiber": [lot], "samples": [sample], "projects": [project]}, there, takes)

    return world


def after_samples(are_logged: bool) -> World:
    """Three samples were spun of a small lot, and are kept; they are logged as skeins of it, or not."""

    def world(tag: str, draw: Draw) -> Shared:
        off = SCALE * draw.normal()
        lot, yarn = _top(tag, draw, off, 250.0)
        grist = PLANNED * (1 + PLAN * draw.normal())
        masses = draw.uniform(5, 10, size=3)
        grists = grist * (1 + SKEINS_DIFFER * draw.normal(size=3))
        reel, skeins, _ = wound(tag, draw, masses, grists, off, lot=lot["name"])
        samples = [
            {"name": f"Sample {place} {tag}", "lot": lot["name"], "fiber_in": round(mass / 0.97, 1), "yarn_out": mass}
            for place, mass in enumerate(np.round(masses * (1 + off), 1))
        ]
        stated, takes = _wanted(draw, (yarn - masses.sum()) * PLANNED / 100, OWN_RECORD)
        project = _project(f"Piece {tag}", stated, lot["name"], need_doubt=OWN_RECORD)
        kept = [{key: value for key, value in skein.items() if key != "project"} for skein in skeins]
        records = {"fiber": [lot], "reels": [reel], "samples": samples, "projects": [project]}
        return Shared(
            records | ({"skeins": kept} if are_logged else {}), _spun(draw, yarn - masses.sum(), grist), takes
        )

    return world


def spun_in_part(
    share: tuple[float, float],
    *,
    unweighed: float = 0.0,
    damp: float = 0.0,
    grams: float = 0.0,
    differ: float = SKEINS_DIFFER,
    drift: float = 0.0,
    each: float = EACH,
    weight: float = WHOLE_TOP,
) -> World:
    """A top of which a share is spun, in skeins of so many grams; the project takes about all of it.

    The last skeins, as a share, are not weighed yet. The lot was weighed in air that was damper or drier than that of
    the skeins, by so much as one standard deviation. Skeins differ by so much, and each is finer than the one before.
    """

    def world(tag: str, draw: Draw) -> Shared:
        off = SCALE * draw.normal()
        lot, yarn = _top(tag, draw, off, weight)
        lot["weight"] = round(weight * (1 + off) * (1 + damp * draw.normal()) + grams, 1)
        grist = PLANNED * (1 + PLAN * draw.normal())
        spun = yarn * draw.uniform(*share)
        made, still = max(1, round(spun / each)), max(1, round((yarn - spun) / each))
        grists = grist * (1 + drift * np.arange(made + still)) * (1 + differ * draw.normal(size=made + still))
        reel, skeins, length = wound(tag, draw, np.full(made, spun / made), grists[:made], off, grams, lot=lot["name"])
        for skein in skeins[made - round(unweighed * made) :]:
            del skein["gross"]
        stated, takes = _wanted(draw, weight * 0.97 * PLANNED / 100)
        records = {
            "fiber": [lot],
            "reels": [reel],
            "skeins": skeins,
            "projects": [_project(f"Piece {tag}", stated, lot["name"])],
        }
        return Shared(records, length + (yarn - spun) / still * np.sum(grists[made:]) / 100, takes)

    return world


def contested_in_part(
    is_fleece: bool, unweighed: float, share: tuple[float, float], others: int = 2, is_it_alone: bool = False
) -> World:
    """A lot of which a share is spun, a skein for each of its projects in turn, or for one alone; some skeins are not
    weighed yet. What is still to spin of it goes first to the other projects, which may need more than there is."""

    def world(tag: str, draw: Draw) -> Shared:
        off, grist = SCALE * draw.normal(), PLANNED * (1 + PLAN * draw.normal())
        lot, yarn = (_fleece(tag, off), WHOLE_FLEECE * fleece_kept(draw)) if is_fleece else _top(tag, draw, off)
        expected = (WHOLE_FLEECE * FLEECE_KEPT if is_fleece else WHOLE_TOP * 0.97) * PLANNED / 100
        shares = [0.4, *(draw.dirichlet(np.ones(others)) * draw.uniform(0.4, 1.1))]
        wanted = [_wanted(draw, expected * each) for each in shares]
        names = [f"Piece {tag}", *(f"Other {place} {tag}" for place in range(others))]
        spun = yarn * draw.uniform(*share)
        made = max(len(names), round(spun / EACH))
        grists = grist * (1 + SKEINS_DIFFER * draw.normal(size=made))
        owner = np.arange(made) % (1 if is_it_alone else len(names))
        reel, skeins, _ = wound(tag, draw, np.full(made, spun / made), grists, off, lot=lot["name"])
        for place, skein in enumerate(skeins):
            skein["project"] = names[owner[place]]
            if draw.uniform() < unweighed:
                del skein["gross"]
        has = [float(np.sum(spun / made * grists[owner == place] / 100)) for place in range(len(names))]
        for_others = sum(max(0, takes - there) for (_, takes), there in zip(wanted[1:], has[1:], strict=True))
        left = _spun(draw, yarn - spun, grist) - for_others
        projects = [_project(name, stated, lot["name"]) for name, (stated, _) in zip(names, wanted, strict=True)]
        records = {"fiber": [lot], "reels": [reel], "skeins": skeins, "projects": projects}
        return Shared(records, has[0] + left, wanted[0][1], has[0])

    return world


def nearly_spun(takes_more: float) -> World:
    """A fleece weighed only as it was bought. About as much as was to be expected is spun, and some is left of it; the
    project takes up to so much more than is in skeins."""

    def world(tag: str, draw: Draw) -> Shared:
        off = SCALE * draw.normal()
        spun = WHOLE_FLEECE * FLEECE_KEPT * draw.uniform(0.75, 1.1)
        yarn = 0.0
        while yarn <= spun:  # of a fleece that gave less, all is spun
            yarn = WHOLE_FLEECE * fleece_kept(draw)
        grist = PLANNED * (1 + PLAN * draw.normal())
        made = round(spun / EACH)
        grists = grist * (1 + SKEINS_DIFFER * draw.normal(size=made))
        lot = _fleece(tag, off)
        reel, skeins, length = wound(tag, draw, np.full(made, spun / made), grists, off, lot=lot["name"])
        takes = length * (1 + draw.uniform(0, takes_more))
        project = _project(f"Piece {tag}", takes * (1 + OWN_RECORD * draw.normal()), lot["name"], need_doubt=OWN_RECORD)
        records = {"fiber": [lot], "reels": [reel], "skeins": skeins, "projects": [project]}
        return Shared(records, length + _spun(draw, yarn - spun, grist, 2 * EACH), takes)

    return world


def plied_in_part(unweighed: int) -> World:
    """A single plied with a bought thread, five skeins of it made; the last ones are not weighed yet."""

    def world(tag: str, draw: Draw) -> Shared:
        plied = half_plied(tag, draw)
        for skein in plied.skeins[len(plied.skeins) - unweighed :]:
            del skein["gross"]
        return Shared({log: getattr(plied, log) for log in LOGS}, plied.has, plied.takes)

    return world
