"""Simulated worlds: what is true, and what a person reads off and types.

Nothing here is taken from the planner's model. A world is drawn from what is physical: reels
whose loop is not what is rated, wraps miscounted, yarn that shrinks, a scale that is off,
fleeces that yield more or less, hands that spin finer or thicker than planned and never twice
alike, labels that are not quite true, patterns that take more or less than they say. How wide
these lie is what the planner states to the person on its sheets Figures, Reels and Guide. A
person then types what can be read, and in the end it turns out whether the yarn was enough.

Lengths are in meters, masses in grams, loops in centimeters, grists in meters per 100 g.
"""

from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

RATED, TOLERANCE, ROUGH = 150.0, 1.0, 3.0  # loop of every reel, as typed, and how far it may be off; a reel of sticks
PLANNED = 200.0  # grist planned, m in 100 g
SKEIN = 182.88  # what a skein holds, as the sheet Figures has it: 200 yd
BREED = {
    "name": "Invented breed",
    "yield_low": 0.45,
    "yield_high": 0.65,
    "skirting": 0.15,
    "preparation": 0.06,
    "spinning": 0.03,
}
PLAN, SKEINS_DIFFER, NEED, OWN_RECORD = 0.08, 0.08, 0.05, 0.01
USUAL, USUAL_DOUBT, SAMPLE_DOUBT = 0.05, 0.03, 0.01
TAPE, SLACK, SCALE, BATCH, BALL = 0.635, 0.005, 0.005, 0.03, 0.02


@dataclass
class World:
    """The records that a person types, and whether it came true: what there is in truth, and what the pieces take."""

    projects: list[dict]
    has: float
    takes: float
    skeins: list[dict] = field(default_factory=list)
    reels: list[dict] = field(default_factory=list)
    fiber: list[dict] = field(default_factory=list)
    samples: list[dict] = field(default_factory=list)
    designs: list[dict] = field(default_factory=list)
    components: list[dict] = field(default_factory=list)


Draw = np.random.Generator


def _wanted(draw: Draw, nominal: float, doubt: float = NEED) -> tuple[float, float]:
    """The yardage of a pattern or of one's own record, what a person hopes to have, and what the piece takes."""
    stated = nominal * np.exp(draw.uniform(-0.22, 0.14) * (1 if doubt == NEED else 0.35))
    return stated, stated * (1 + doubt * draw.normal())


def _reel(draw: Draw, name: str, tolerance: float = TOLERANCE) -> tuple[dict, float]:
    return {"name": name, "rated": RATED, "tolerance": tolerance}, RATED + draw.uniform(-tolerance, tolerance)


def _skein(
    draw: Draw,
    name: str,
    reel: str,
    loop: float,
    shrinkage: float,
    grist: float,
    scale: float,
    slack: float | None,
    **more,
) -> tuple[dict, float, float]:
    """A skein as it is typed; its true finished length and its true mass.

    `slack` is given where the washed loop is measured.
    """
    counted = float(draw.integers(90, 140))
    length = (counted + draw.uniform(-1, 1)) * loop / 100 * (1 - shrinkage)
    mass = length / (grist / 100 * (1 + SKEINS_DIFFER * draw.normal()))
    typed = {"name": name, "reel": reel, "wraps": counted, "gross": round(mass * (1 + scale), 1)} | more
    if slack is not None:
        typed["washed_loop"] = round(loop * (1 - shrinkage) * (1 + slack) + draw.uniform(-TAPE, TAPE), 2)
    return typed, length, mass


def _spun(draw: Draw, mass: float, grist: float, hold: float = SKEIN) -> float:
    """Length that comes of a mass, skein by skein."""
    skeins = max(1, round(mass * grist / 100 / hold))
    return float(np.sum(mass / skeins * grist / 100 * (1 + SKEINS_DIFFER * draw.normal(size=skeins))))


def left_by_washing(draw: Draw) -> float:
    """What washing leaves of a length; a design knows the numbers of its strands before that."""
    return 1 - (USUAL + USUAL_DOUBT * draw.normal())


def _skeins(
    tag: str,
    draw: Draw,
    reels: int,
    washed: bool,
    sampled: bool = False,
    tolerance: float = TOLERANCE,
    need: float = NEED,
) -> World:
    """A project all of whose yarn is spun: six skeins."""
    scale, slack = SCALE * draw.normal(), SLACK * draw.normal() if washed else None
    seen = round(draw.uniform(0.02, 0.10), 3)
    shrinkage = seen + SAMPLE_DOUBT * draw.normal() if sampled else USUAL + USUAL_DOUBT * draw.normal()
    named = [_reel(draw, f"Reel {number} {tag}", tolerance) for number in range(reels)]
    grist = PLANNED * (1 + PLAN * draw.normal())
    made = [
        _skein(
            draw,
            f"Skein {number} {tag}",
            named[number % reels][0]["name"],
            named[number % reels][1],
            shrinkage,
            grist,
            scale,
            slack,
            project=f"Piece {tag}",
        )
        for number in range(6)
    ]
    stated, takes = _wanted(draw, 6 * 115 * RATED / 100 * (1 - (seen if sampled else USUAL)), need)
    project = {"name": f"Piece {tag}", "wanted": round(stated, 1), "grist": PLANNED, "need_doubt": need}
    samples = [{"name": f"Sample {tag}", "unwashed": 10.0, "washed": round(10 * (1 - seen), 2)}] if sampled else []
    if sampled:
        project["sample"] = f"Sample {tag}"
    return World(
        [project],
        sum(length for _, length, _ in made),
        takes,
        [typed for typed, *_ in made],
        [reel for reel, _ in named],
        samples=samples,
    )


def unwashed(tag: str, draw: Draw) -> World:
    return _skeins(tag, draw, 1, washed=False)


def washed(tag: str, draw: Draw) -> World:
    return _skeins(tag, draw, 1, washed=True)


def several_reels(tag: str, draw: Draw) -> World:
    return _skeins(tag, draw, 3, washed=False)


def samples_shrinkage(tag: str, draw: Draw) -> World:
    return _skeins(tag, draw, 1, washed=False, sampled=True)


def rough_reel(tag: str, draw: Draw) -> World:
    """Nothing is in doubt as much as the reel: a piece made before, a sample washed, all skeins of one reel."""
    return _skeins(tag, draw, 1, washed=False, sampled=True, tolerance=ROUGH, need=OWN_RECORD)


def _top(tag: str, draw: Draw, scale: float, weight: float = 900.0) -> tuple[dict, float]:
    """A lot of prepared fiber as it is typed, and the yarn that it really gives."""
    loss = draw.uniform(0.01, 0.05)
    return {
        "name": f"Lot {tag}",
        "kind": BREED["name"],
        "state": "prepared fiber",
        "weight": round(weight * (1 + scale), 1),
    }, weight * (1 - loss)


def half_spun(tag: str, draw: Draw) -> World:
    scale, slack, shrinkage = SCALE * draw.normal(), SLACK * draw.normal(), USUAL + USUAL_DOUBT * draw.normal()
    lot, yarn = _top(tag, draw, scale)
    grist = PLANNED * (1 + PLAN * draw.normal())
    reel, loop = _reel(draw, f"Reel {tag}")
    made = [
        _skein(
            draw,
            f"Skein {number} {tag}",
            reel["name"],
            loop,
            shrinkage,
            grist,
            scale,
            slack,
            project=f"Piece {tag}",
            lot=lot["name"],
        )
        for number in range(5)
    ]
    rest = yarn - sum(mass for *_, mass in made)
    has = sum(length for _, length, _ in made) + _spun(draw, rest, grist, 115 * RATED / 100 * (1 - USUAL))
    stated, takes = _wanted(draw, 900 * 0.97 * PLANNED / 100)
    return World(
        [{"name": f"Piece {tag}", "wanted": round(stated, 1), "grist": PLANNED, "lot_1": lot["name"]}],
        has,
        takes,
        [typed for typed, *_ in made],
        [reel],
        [lot],
    )


def raw_fleece(tag: str, draw: Draw) -> World:
    scale = SCALE * draw.normal()
    kept = (
        (1 - draw.uniform(0.05, 0.25))
        * draw.uniform(0.45, 0.65)
        * (1 - draw.uniform(0.02, 0.10))
        * (1 - draw.uniform(0.01, 0.05))
    )
    lot = {"name": f"Lot {tag}", "kind": BREED["name"], "state": "raw fleece", "weight": round(2500 * (1 + scale), 0)}
    stated, takes = _wanted(draw, 2500 * 0.85 * 0.55 * 0.94 * 0.97 * PLANNED / 100)
    has = _spun(draw, 2500 * kept, PLANNED * (1 + PLAN * draw.normal()))
    return World(
        [{"name": f"Piece {tag}", "wanted": round(stated, 1), "grist": PLANNED, "lot_1": lot["name"]}],
        has,
        takes,
        fiber=[lot],
    )


def _plied(tag: str, draw: Draw, skeins: int) -> World:
    """A single plied with a bought thread, meant to last about equally long; so many skeins are made already."""
    scale, left = SCALE * draw.normal(), left_by_washing(draw)
    wool, yarn = _top(tag, draw, scale, 600.0)
    single, thread = 400.0, 1000.0  # m in 100 g
    spun, batch = single * (1 + PLAN * draw.normal()), 1 + BATCH * draw.normal()
    grams = 600 * 0.97 * single / thread * draw.uniform(0.9, 1.15)  # of thread, by its label
    nominal = min(600 * 0.97 * single, grams * thread) / 100 * (1 - USUAL)
    spools = max(1, round(grams * thread / 100 / SKEIN))
    of_thread = grams * thread / 100 * batch * float(np.mean(1 + BALL * draw.normal(size=spools)))
    silk = {"name": f"Thread {tag}", "state": "yarn or thread", "weight": grams, "grist": thread}
    strands = [
        {
            "design": f"Yarn {tag}",
            "name": f"Single {tag}",
            "number": single,
            "system": "meters per 100 grams",
            "place": 1.0,
            "lot": wool["name"],
        },
        {
            "design": f"Yarn {tag}",
            "name": f"Silk {tag}",
            "number": thread,
            "system": "meters per 100 grams",
            "place": 2.0,
            "lot": silk["name"],
        },
    ]
    reel, loop = _reel(draw, f"Reel {tag}")
    made, plied, used = [], 0.0, 0.0
    for number in range(skeins):
        counted, single_now = float(draw.integers(90, 140)), spun * (1 + SKEINS_DIFFER * draw.normal())
        long = (counted + draw.uniform(-1, 1)) * loop / 100
        plied, used = plied + long, used + long / single_now * 100
        mass = long / single_now * 100 + long / (thread * batch) * 100
        typed = {
            "name": f"Skein {number} {tag}",
            "reel": reel["name"],
            "wraps": counted,
            "gross": round(mass * (1 + scale), 1),
        }
        made.append(typed | {"project": f"Piece {tag}", "design": f"Yarn {tag}"})
    stated, takes = _wanted(draw, nominal)
    return World(
        [{"name": f"Piece {tag}", "wanted": round(stated, 1), "design": f"Yarn {tag}"}],
        min(plied + _spun(draw, yarn - used, spun), of_thread) * left,
        takes,
        fiber=[wool, silk],
        designs=[{"name": f"Yarn {tag}"}],
        components=strands,
        skeins=made,
        reels=[reel] if made else [],
    )


def plied(tag: str, draw: Draw) -> World:
    return _plied(tag, draw, skeins=0)


def half_plied(tag: str, draw: Draw) -> World:
    """The single comes out finer or thicker than planned, and each yard of it takes as much of the thread."""
    return _plied(tag, draw, skeins=5)


def of_one_lot(tag: str, draw: Draw) -> World:
    """A thick single and a thin one of one lot, and of one hand, which spins both finer or thicker than planned. Of
    whichever runs out more is spun, as long as there is fiber."""
    scale, left = SCALE * draw.normal(), left_by_washing(draw)
    lot, yarn = _top(tag, draw, scale)
    planned = {"Core": 300.0, "Wrapper": 900.0}  # m in 100 g
    hand = 1 + PLAN * draw.normal()
    strands = [
        {
            "design": f"Yarn {tag}",
            "name": f"{name} {tag}",
            "number": grist,
            "system": "meters per 100 grams",
            "place": float(place),
            "lot": lot["name"],
        }
        for place, (name, grist) in enumerate(planned.items(), start=1)
    ]
    nominal = 900 * 0.97 / sum(100 / grist for grist in planned.values()) * (1 - USUAL)
    stated, takes = _wanted(draw, nominal)
    return World(
        [{"name": f"Piece {tag}", "wanted": round(stated, 1), "design": f"Yarn {tag}"}],
        yarn / sum(100 / grist for grist in planned.values()) * hand * left,
        takes,
        fiber=[lot],
        designs=[{"name": f"Yarn {tag}"}],
        components=strands,
    )


def bought(tag: str, draw: Draw) -> World:
    balls = int(draw.integers(6, 14))
    label = 120.0
    has = float(np.sum(label * (1 + BATCH * draw.normal()) * (1 + BALL * draw.normal(size=balls))))
    lot = {"name": f"Lot {tag}", "state": "yarn or thread", "weight": 50.0 * balls, "grist": label * 2}
    stated, takes = _wanted(draw, label * balls)
    return World(
        [{"name": f"Piece {tag}", "wanted": round(stated, 1), "lot_1": lot["name"], "package": label}],
        has,
        takes,
        fiber=[lot],
    )


def two_projects(tag: str, draw: Draw) -> World:
    scale = SCALE * draw.normal()
    lot, yarn = _top(tag, draw, scale)
    nominal = 900 * 0.97 * PLANNED / 100
    pieces = [_wanted(draw, nominal * share) for share in (0.6, 0.4)]
    has = _spun(draw, yarn, PLANNED * (1 + PLAN * draw.normal()))
    projects = [
        {"name": f"{name} {tag}", "wanted": round(stated, 1), "grist": PLANNED, "lot_1": lot["name"]}
        for name, (stated, _) in zip(("Piece", "Other"), pieces, strict=True)
    ]
    return World(projects, has, sum(takes for _, takes in pieces), fiber=[lot])


SITUATIONS: dict[str, Callable[[str, Draw], World]] = {
    "unwashed skeins": unwashed,
    "washed skeins": washed,
    "several reels": several_reels,
    "half spun": half_spun,
    "raw fleece": raw_fleece,
    "plied with a bought thread": plied,
    "half of it plied": half_plied,
    "two strands of one lot": of_one_lot,
    "a sample's shrinkage": samples_shrinkage,
    "a rough reel": rough_reel,
    "bought yarn": bought,
    "two projects on one lot": two_projects,
}
