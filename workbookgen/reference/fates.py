"""What became of a skein, or of the rest of a lot: given away, sold, used or lost, it is gone; set aside, it is
still there."""

import numpy as np

from workbookgen.reference.calculation import by_element
from workbookgen.texts import folded

ASIDE, USED = "set aside", "used"


def serves_its_project(fate: str) -> bool:
    """Whether a skein of this fate is part of what its project has: what is used is in the piece."""
    return folded(fate) in (ASIDE, USED)


def is_gone(fate: str) -> bool:
    """Whether a thing of this fate is no longer there."""
    return folded(fate) != ASIDE


def share_still_there(fate: str | None):
    """1 for what is there, 0 for what is gone; a thing of no fate is simply there."""
    return (
        1.0
        if fate is None
        else np.asarray(by_element(lambda each: 0.0 if is_gone(str(each)) else 1.0, fate), dtype=float)[()]
    )
