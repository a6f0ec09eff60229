"""How much twist a yarn has: turns in a length, and the factor in a count system.

A thin yarn needs more turns than a thick one to be equally hard. The factor takes out the thickness, so yarns with
the same factor feel alike whatever their count. Every count system has its own factor, and they differ only in their
units.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.units import Length, LinearDensity, PerLength, Quantity, Ratio

# What the spinner chooses from, and its unit: turns in a length over the root of an indirect
# count, or times the root of a direct one.
SYSTEMS = {
    "cotton": "1 / inch / number_english ** 0.5",
    "worsted": "1 / inch / worsted_count ** 0.5",
    "woolen run": "1 / inch / woollen_run ** 0.5",
    "metric": "1 / meter / number_meter ** 0.5",
    "tex": "tex ** 0.5 / centimeter",
}
COHERENT = "tex ** 0.5 / meter"  # any one unit in which all factors can be expressed

ENOUGH, TOO_LITTLE = "enough for the staple", "too little for the staple: fibers may slip"


@calculation
def turns_counted(turns: Ratio, length: Length) -> PerLength:
    """Twist of a yarn, by counting.

    T = turns / G. Untwist a measured piece until its strands or fibers lie parallel, and count.

    Parameters
    ----------
    turns : the turns counted, parts of a turn included
    length : G, length of the piece before it is untwisted

    Returns
    -------
    T, a number per length

    Raises
    ------
    ValueError
        A negative number of turns, or a length that is not above zero.

    Notes
    -----
    Valid for the piece counted; twist runs to thin places, so count several.

    References
    ----------
    Direct counting, ISO 2061, with lengths of 250 or 500 mm (from memory).

    Examples
    --------
    >>> print(turns_counted(25, Quantity(5, "inch")))
    5.0 / inch
    """
    require_within(NOT_NEGATIVE, "The number of turns", turns)
    require_within(ABOVE_ZERO, "The length", length)
    return turns / length


@calculation
def factor(twist: PerLength, linear_density: LinearDensity, system: str) -> Ratio:
    """Twist factor of a yarn in one of the count systems.

    M = T / √N of an indirect count, M = T · √tex of a direct one. It distinguishes soft yarns from hard ones whatever
    their thickness.

    Parameters
    ----------
    twist : T, turns in a length: an inch; a meter for metric; a centimeter for tex
    linear_density : the yarn's fineness, which gives its count N or its tex
    system : the count system, such as cotton; case does not matter

    Returns
    -------
    M, a number

    Raises
    ------
    ValueError
        A negative twist, a linear density that is not above zero, or an unknown system.

    Notes
    -----
    Valid for comparing yarns of one fiber, spun one way.

    References
    ----------
    Equal factors mean equal surface angles: a handbook of short-staple spinning (read).
    Cotton and tex: N. Balasubramanian, table of conversion factors (read).

    Examples
    --------
    >>> print(round(factor(Quantity(20, "1/inch"), 1 / Quantity(25, "number_english"), "cotton"), 6))
    4.0
    """
    require_within(NOT_NEGATIVE, "The twist", twist)
    require_within(ABOVE_ZERO, "The linear density", linear_density)
    return (twist * np.sqrt(linear_density)).m_as(COHERENT) / _one_in(system)


@calculation
def turns(multiplier: Ratio, linear_density: LinearDensity, system: str) -> PerLength:
    """Twist of a yarn with a given factor.

    T = M · √N of an indirect count, T = M / √tex of a direct one. It gives the turns to insert for a yarn as soft or
    as hard as wanted.

    Parameters
    ----------
    multiplier : M, twist factor in the system
    linear_density : the yarn's fineness, which gives its count N or its tex
    system : the count system, such as cotton; case does not matter

    Returns
    -------
    T, a number per length

    Raises
    ------
    ValueError
        A negative factor, a linear density that is not above zero, or an unknown system.

    Notes
    -----
    Valid for fiber and spinning like those for which the factor is stated. Cotton: about 2.1 to
    3.0 for knitting, 3.0 to 3.8 for weft, 3.4 to 5.0 for warp; wool needs less.

    References
    ----------
    W. Klein, Technology of Short-staple Spinning (read), for cotton. That wool needs less: common practice, no
    source.

    Examples
    --------
    >>> print(round(turns(4, 1 / Quantity(25, "number_english"), "cotton").to("1/inch"), 6))
    20.0 / inch
    """
    require_within(NOT_NEGATIVE, "The twist factor", multiplier)
    require_within(ABOVE_ZERO, "The linear density", linear_density)
    factors = Quantity(multiplier * _one_in(system), COHERENT)
    return (factors / np.sqrt(linear_density)).to("1/meter")


def _one_in(system):
    """The factor 1 of a system, in the unit shared by all systems."""
    units = {name.casefold(): unit for name, unit in SYSTEMS.items()}
    for name in np.ravel(system):
        require(str(name).casefold() in units, f'"{name}" is not a known twist factor: choose one from the list.')
    ones = by_element(lambda name: Quantity(1.0, units[str(name).casefold()]).m_as(COHERENT), system)
    return ones.astype(float) if np.ndim(ones) else ones


@calculation
def least_twist(staple: Length, wraps: Ratio = 4.0) -> PerLength:
    """Least twist that holds the fibers of a yarn.

    T = q / s. A fiber holds if it winds around the yarn a few times along its length.

    Parameters
    ----------
    staple : s, length of the fibers
    wraps : q, times that a fiber winds around, about 3 to 5 for soft yarn, more for warp

    Returns
    -------
    T, a number per length

    Raises
    ------
    ValueError
        A staple or a number of wraps that is not above zero.

    Notes
    -----
    Valid for a warning only: thickness, fiber and preparation matter too.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(least_twist(Quantity(4, "inch"), wraps=4))
    1.0 / inch
    """
    require_within(ABOVE_ZERO, "The staple must have a length.", staple)
    require_within(ABOVE_ZERO, "The number of wraps", wraps)
    return wraps / staple


@calculation
def staple_words(twist: PerLength, least: PerLength) -> str:
    """Whether a twist is enough for the staple, in words.

    enough if T ≥ q / s. Below that, the yarn may drift apart under its own weight.

    Parameters
    ----------
    twist : T, twist of the yarn
    least : q / s, least twist for its staple

    Returns
    -------
    "enough for the staple" or "too little for the staple: fibers may slip"

    Raises
    ------
    ValueError
        A negative twist, or a least twist that is not above zero.

    Notes
    -----
    Valid for a warning only; the two are compared to nine decimals.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(staple_words(Quantity(2, "1/inch"), Quantity(1, "1/inch")))
    enough for the staple
    """
    require_within(NOT_NEGATIVE, "The twist", twist)
    require_within(ABOVE_ZERO, "The least twist", least)
    # The last digits of a quotient must not decide a borderline case.
    holds = np.round((twist / least).m_as(""), 9) >= 1
    return by_element(lambda enough: ENOUGH if enough else TOO_LITTLE, holds)
