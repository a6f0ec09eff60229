"""What became of a skein, or of the rest of a lot: given away, sold, used or lost, it is gone; set aside, it is
still there."""

import numpy as np

from workbookgen.reference.calculation import by_element
from workbookgen.texts import folded

ASIDE, USED = "set aside", "used"


def serves_its_project(fate: str) -> bool:
    """Whether a skein with this fate still counts for its project; a used one is in the piece."""
    return folded(fate) in (ASIDE, USED)


def is_gone(fate: str) -> bool:
    """Whether something with this fate is no longer there."""
    return folded(fate) != ASIDE


def share_still_there(fate: str | None) -> float | np.ndarray:
    """1 for what is still there, 0 for what is gone; something without a fate is still there."""
    return (
        1.0
        if fate is None
        else np.asarray(by_element(lambda each: 0.0 if is_gone(str(each)) else 1.0, fate), dtype=float)[()]
    )
