"""What the sheet Fleece says to buy: how often it gives the yarn wanted, by the middle figure and to be as sure as
one asks."""

import numpy as np
import pytest

from .answers import give_or_take, said
from .purchases import fleece_kept, skewed_kept, top_kept
from .worlds import BREED, PLAN, PLANNED

FLEECES, WANTED = 4_000, 1_500.0


def enough(state: str, kept, asked: float) -> tuple[float, float]:
    """How often the middle weight gave the yarn, and how often the weight that one is that sure of did."""
    draw = np.random.default_rng(31)
    middle, sure = said(
        {},
        "buying_to_buy",
        "buying_sure",
        buying_kind=BREED["name"],
        buying_state=state,
        buying_length=WANTED,
        buying_grist=PLANNED,
        doubts_certainty=asked,
    )
    gives = np.array([kept(draw) * PLANNED / 100 * (1 + PLAN * draw.normal()) for _ in range(FLEECES)])
    return float(np.mean(gives * middle.item() >= WANTED)), float(np.mean(gives * sure.item() >= WANTED))


@pytest.mark.parametrize("asked", [0.75, 0.9, 0.95])
@pytest.mark.parametrize(
    "state, kept", [("raw fleece", fleece_kept), ("raw fleece", skewed_kept), ("prepared fiber", top_kept)]
)
def test_what_to_buy_is_enough_as_often_as_asked(state, kept, asked):
    middle, sure = enough(state, kept, asked)
    assert 0.4 <= middle <= 0.6, f"{middle:.1%}"
    drift = 0.04 if kept is skewed_kept else 0.02
    assert abs(sure - asked) <= drift + give_or_take(asked, FLEECES), f"{sure:.1%}"
