"""Whether a program computes what was published: the verdicts on the published examples.

The planner computes each example live beside its printed answer, in the program that the reader actually uses. These
three calculations turn the pairs into one sentence on the first sheet.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require
from workbookgen.reference.limits import AT_LEAST_ONE, NOT_NEGATIVE, require_within
from workbookgen.units import Ratio

AGREES, DIFFERS = "agrees", "differs"


@calculation
def agrees(computed, printed, tolerance: Ratio) -> str:
    """Whether a computed value agrees with a printed one.

    |v - p| ≤ t · |p|. Printed values are rounded, so each example carries its own tolerance; texts must be equal.

    Parameters
    ----------
    computed : v, the value computed, any quantity or a text
    printed : p, the value printed, of the same kind
    tolerance : t, how far the two may differ, as a share of the printed value

    Returns
    -------
    "agrees" or "differs"

    Raises
    ------
    ValueError
        A value that is not a number, or a negative tolerance.
    DimensionalityError
        Two values of different kinds.

    Notes
    -----
    Valid for numbers and texts; a printed zero is met only by a computed zero.

    References
    ----------
    Definition of the relative difference.

    Examples
    --------
    >>> print(agrees(Quantity(1.501, "m"), Quantity(1.5, "m"), tolerance=0.001))
    agrees
    """
    if isinstance(printed, str):
        return AGREES if computed == printed else DIFFERS
    difference = abs(computed - printed)
    require(NOT_NEGATIVE.hold(difference), "Both values must be numbers.")
    require_within(NOT_NEGATIVE, "The tolerance", tolerance)
    within = difference <= tolerance * abs(printed)
    return by_element(lambda holds: AGREES if holds else DIFFERS, within)


@calculation
def how_many_agree(verdicts: str) -> Ratio:
    """Number of examples that agree.

    k = count of "agrees". A verdict that is missing is not counted.

    Parameters
    ----------
    verdicts : the verdicts, texts

    Returns
    -------
    k, a whole number

    Raises
    ------
    ValueError
        There are no verdicts.

    Notes
    -----
    Valid for verdicts as `agrees` gives them.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(how_many_agree(["agrees", "differs", "agrees"]))
    2
    """
    verdicts = np.atleast_1d(np.asarray(verdicts, dtype=object))
    require(verdicts.size > 0, "There are no verdicts to count.")
    return int(np.count_nonzero(verdicts == AGREES))


@calculation
def how_many(verdicts: str) -> Ratio:
    """Number of examples.

    n = count of all verdicts. One that could not be computed counts too.

    Parameters
    ----------
    verdicts : the verdicts, texts

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        There are no verdicts.

    Notes
    -----
    Valid for verdicts as `agrees` gives them.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(how_many(["agrees", "differs", "agrees"]))
    3
    """
    verdicts = np.atleast_1d(np.asarray(verdicts, dtype=object))
    require(verdicts.size > 0, "There are no verdicts to count.")
    return int(verdicts.size)


@calculation
def trust(agreeing: Ratio, total: Ratio) -> str:
    """What the published examples say about the program at hand.

    trusted if k = n. One example that differs is enough to distrust every number.

    Parameters
    ----------
    agreeing : k, number of examples that agree
    total : n, number of examples

    Returns
    -------
    a sentence

    Raises
    ------
    ValueError
        No examples, more of them agreeing than there are, or numbers that are not whole.

    Notes
    -----
    Valid for examples that use every kind of formula in the planner.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(trust(40, 42))
    Do not rely on the numbers here: 2 of 42 checks fail in this program.
    """
    require_within(AT_LEAST_ONE, "There must be at least one example.", total)
    require((agreeing >= 0) & (agreeing <= total), "From none to all of the examples agree.")
    require((agreeing % 1 == 0) & (total % 1 == 0), "Examples are counted in whole numbers.")
    return by_element(_trust_sentence, agreeing, total)


def _trust_sentence(agreeing, total) -> str:
    if agreeing == total:
        return "This program computes the planner correctly."
    return f"Do not rely on the numbers here: {int(total - agreeing)} of {int(total)} checks fail in this program."
