"""Worlds of fleeces like those one has washed before, from which the guide has learned.

Each world has a breed of its own, a few fleeces of it that are long used up, and one more, whole, for a piece. A fleece
yields what it likes, whatever the others did; how it is skirted, carded and spun is in part the same hand's way.
"""

from collections.abc import Callable

import numpy as np

from .sharers import Shared
from .worlds import BREED, PLAN, PLANNED, SCALE, Draw, _spun, _wanted

WHOLE = 2500.0
LOSSES = {"skirting": (0.15, 0.10), "preparation": (0.06, 0.04), "spinning": (0.03, 0.02)}  # middle, and half the range
UNPUBLISHED = {key: value for key, value in BREED.items() if not key.startswith("yield")}


def _losses(draw: Draw) -> Callable[[], dict[str, float]]:
    """The losses of one hand's fleeces: half of what they differ by is its way, and the same for all of them."""
    way = {key: draw.uniform(-half, half) for key, (_, half) in LOSSES.items()}
    return lambda: {
        key: middle + (way[key] + draw.uniform(-half, half)) / np.sqrt(2) for key, (middle, half) in LOSSES.items()
    }


def published(draw: Draw) -> tuple[dict, Callable[[], float], float]:
    return BREED, lambda: draw.uniform(0.45, 0.65), 0.55


def unpublished(draw: Draw) -> tuple[dict, Callable[[], float], float]:
    """A breed of which the guide has no yield: fleeces differ as those of other breeds do, some more and some less."""
    middle, spread = draw.uniform(0.45, 0.75), draw.uniform(0.025, 0.06)
    return UNPUBLISHED, lambda: float(np.clip(middle + spread * draw.normal(), 0.1, 0.95)), middle


def after(fleeces: int, breed=published) -> Callable[[str, Draw], Shared]:
    """One more fleece after so many, all weighed at each stage."""

    def shared(tag: str, draw: Draw) -> Shared:
        line, clean, middle = breed(draw)
        line, losses = line | {"name": f"Breed {tag}"}, _losses(draw)
        seen = [_weighed(f"Old {number} {tag}", line["name"], draw, clean(), losses()) for number in range(fleeces)]
        off, lost = SCALE * draw.normal(), losses()
        lot = {"name": f"Lot {tag}", "kind": line["name"], "state": "raw fleece", "weight": round(WHOLE * (1 + off), 0)}
        kept = clean() * np.prod([1 - each for each in lost.values()])
        stated, takes = _wanted(draw, WHOLE * middle * 0.85 * 0.94 * 0.97 * PLANNED / 100)
        piece = {"name": f"Piece {tag}", "wanted": round(stated, 1), "grist": PLANNED, "lot_1": lot["name"]}
        there = _spun(draw, WHOLE * kept, PLANNED * (1 + PLAN * draw.normal()))
        return Shared({"guide": [line], "fiber": [*seen, lot], "projects": [piece]}, there, takes)

    return shared


def _weighed(name: str, kind: str, draw: Draw, clean: float, lost: dict[str, float]) -> dict:
    """A fleece that became yarn long ago, as it was weighed on the way."""
    skirted = WHOLE * (1 - lost["skirting"])
    prepared = skirted * clean * (1 - lost["preparation"])
    weights = {
        "weight": WHOLE,
        "skirted_weighed": skirted,
        "scoured_weighed": skirted * clean,
        "prepared_weighed": prepared,
        "yarn_weighed": prepared * (1 - lost["spinning"]),
    }
    typed = {key: round(weight * (1 + SCALE * draw.normal()), 0) for key, weight in weights.items()}
    return {"name": name, "kind": kind, "state": "raw fleece", "gone": "used"} | typed
