"""Several whorls and several treadles per draft: which of them comes nearest to a wanted twist.

Treadles to a draft are whole, and so few that they can be counted while spinning.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_name
from workbookgen.reference.limits import ABOVE_ZERO, AT_LEAST_ONE, NOT_NEGATIVE, require_within
from workbookgen.reference.words import rounded
from workbookgen.units import PerLength, Quantity, Ratio

MOST_COUNTED = 8  # treadles to a draft
NEAR = 0.2  # share by which the nearest twist may be off the wanted one, and still be called near
FINEST = 6  # decimals of a treadle, and of a turn per meter, that may decide
MOST_SAID = Quantity(1000.0, "1/inch")


@calculation
def nearest_treadles(treadles: Ratio) -> Ratio:
    """Treadles to a draft that come nearest to a wanted twist.

    n = ⌈k - 1/2⌉, from 1 to 8. Twist is proportional to treadles, so the nearest number of treadles gives the nearest
    twist. More than eight are hard to count, draft after draft.

    Parameters
    ----------
    treadles : k, treadles per draft that would give the wanted twist, parts included

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        A negative number of treadles.

    Notes
    -----
    Valid for one whorl; of two equally near, the fewer treadles.

    References
    ----------
    Definition of the nearest; that eight can be counted is common practice, no source.

    Examples
    --------
    >>> print(nearest_treadles(4.8))
    5.0
    """
    require_within(NOT_NEGATIVE, "The number of treadles", treadles)
    return np.clip(np.ceil(np.round(treadles, FINEST) - 0.5), 1.0, MOST_COUNTED)


@calculation
def off_the_wanted(twist: PerLength, wanted: PerLength) -> PerLength:
    """Difference between a twist and the wanted one.

    a = |T - W|. The smallest one gives the whorl to use.

    Parameters
    ----------
    twist : T, twist that whorl and treadles give
    wanted : W, twist wanted

    Returns
    -------
    a, a number per length, in a meter to six decimals

    Raises
    ------
    ValueError
        A negative twist.

    Notes
    -----
    Valid for choosing among whorls; it is rounded, so equal ones compare equal.

    References
    ----------
    Definition of a difference.

    Examples
    --------
    >>> print(off_the_wanted(Quantity(200, "1/m"), Quantity(215, "1/m")))
    15 / meter
    """
    require_within(NOT_NEGATIVE, "The twist", twist, wanted)
    return Quantity(np.round(np.abs((twist - wanted).m_as("1/m")), FINEST), "1/m")


@calculation
def place_of_least(amounts: PerLength) -> Ratio:
    """Which whorl of the list comes nearest.

    p = the line with the least a. It is the first if several are equally near.

    Parameters
    ----------
    amounts : a of each whorl, difference from the wanted twist; one that is not a number is blank

    Returns
    -------
    p, a whole number from 1

    Raises
    ------
    ValueError
        No whorl has an a.

    Notes
    -----
    Valid for a list of any length.

    References
    ----------
    Definition of the least.

    Examples
    --------
    >>> print(place_of_least(Quantity([15, 4, 9], "1/m")))
    2.0
    """
    away = np.atleast_1d(amounts.magnitude)
    require(bool(np.isfinite(away).any()), "There must be at least one whorl.")
    return float(np.nanargmin(away)) + 1


@calculation
def nearest_words(name: str, treadles: Ratio, twist: PerLength, exact: Ratio) -> str:
    """The whorl and the treadles that come nearest to a wanted twist, in words.

    text = its name, n treadles, T, and k where it is off by over a fifth. It says which whorl to use, and what to
    count; the nearest of a table is not always near.

    Parameters
    ----------
    name : what the whorl is called
    treadles : n, treadles per draft that come nearest with it
    twist : T, twist that they give
    exact : k, treadles per draft that would give the wanted twist

    Returns
    -------
    a text such as "Nearest to the twist wanted: Fast, 6 treadles to a draft: 5.2 turns per inch (205 per meter)"

    Raises
    ------
    ValueError
        A blank name, treadles below 1, a negative twist, no treadles at all for the wanted one, or a twist of a
        thousand turns per inch or more.

    Notes
    -----
    Valid for up to eight treadles to a draft.

    References
    ----------
    Definition of the nearest.

    Examples
    --------
    >>> print(nearest_words("Fast", 6, Quantity(5.2, "1/inch"), 5.8))
    Nearest to the twist wanted: Fast, 6 treadles to a draft: 5.2 turns per inch (205 per meter)
    """
    require_name(name)
    require_within(AT_LEAST_ONE, "There must be at least one treadle.", treadles)
    require_within(NOT_NEGATIVE, "The twist", twist)
    require(twist < MOST_SAID, "That is too many turns to state.")
    require_within(ABOVE_ZERO, "The number of treadles", exact)
    return by_element(_said, name, treadles, twist.m_as("1/inch"), twist.m_as("1/m"), exact)


def _said(name: str, treadles: float, inch: float, meter: float, exact: float) -> str:
    feet = "1 treadle" if treadles == 1 else f"{rounded(treadles, 0)} treadles"
    far = (
        f". That is not near: the twist wanted takes {rounded(exact, 1).replace(',', '')} treadles"
        if abs(round(treadles / exact - 1, FINEST)) > NEAR
        else ""
    )
    return f"Nearest to the twist wanted: {name}, {feet} to a draft: {rounded(inch, 1)} turns per inch ({rounded(meter, 0).replace(',', '')} per meter){far}"
