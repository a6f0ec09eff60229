"""Two skeins compared by their dye lots, which neither scale nor reel shows."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require_name
from workbookgen.reference.limits import PART, require_within
from workbookgen.reference.statistics.groups import ALTERNATE, TOGETHER
from workbookgen.texts import folded
from workbookgen.units import Ratio


@calculation
def two_dye_lots(first: str, second: str) -> Ratio:
    """Whether two skeins are of two dye lots.

    t = 0 if both have one name or number, else 1. Of different baths, one color differs from the other.

    Parameters
    ----------
    first : dye lot of the first
    second : dye lot of the second

    Returns
    -------
    t, 1 or 0

    Raises
    ------
    ValueError
        A dye lot that is blank.

    Notes
    -----
    Valid for dye lots spelled alike; case does not matter.

    References
    ----------
    Definition of equality.

    Examples
    --------
    >>> print(two_dye_lots("A 12", "B 3"))
    1.0
    """
    require_name(first)
    require_name(second)
    apart = by_element(lambda one, other: folded(str(one)) != folded(str(other)), first, second)
    return np.asarray(apart, dtype=float)[()]


@calculation
def by_dye_lots(verdict: str, two: Ratio = 0.0) -> str:
    """Whether two skeins may share a piece, by their grists and their dye lots.

    words = the verdict, but "alternate rows" for two that go together and are of two dye lots. A change of color shows
    as a line where one ends.

    Parameters
    ----------
    verdict : what their grists say
    two : 1 for two dye lots, else 0

    Returns
    -------
    a text such as "alternate rows"

    Raises
    ------
    ValueError
        A verdict that is blank, or a number that is neither.

    Notes
    -----
    Valid for skeins of similar fiber, ply and twist.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(by_dye_lots("go together", 1))
    alternate rows
    """
    require_name(verdict)
    require_within(PART, "Two dye lots", two)
    return by_element(lambda word, apart: ALTERNATE if apart and word == TOGETHER else word, verdict, two)
