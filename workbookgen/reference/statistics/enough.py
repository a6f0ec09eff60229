"""How many readings are enough for a mean, and how many more to take.

The spread of the readings that are there is taken for that of those to come; the fewer they are,
the less it says, so that below three nothing is reckoned.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers, whole_for
from workbookgen.reference.statistics.readings import T_TABLE, t_quantile
from workbookgen.reference.words import rounded
from workbookgen.units import Ratio

FEWEST = 3  # two readings that happen to agree would be enough for anything
PLACES = 5  # readings that a sample has room for
MOST_INCHES = 10  # at a time, that anybody counts
# Readings from which an entry of the table holds; its last one, the normal distribution's, has no end.
READINGS, QUANTILES = np.array([(degrees + 1, t) for degrees, t in T_TABLE[:-1]]).T
ROUNDING = 1e-9


@calculation
def readings_in_all(variation: Ratio, error: Ratio) -> Ratio:
    """Readings that a mean takes to be sure enough.

    n = the least with t · CV / √n ≤ E. Student's t, of n - 1 degrees of freedom, is larger for
    few readings, so that it falls while n rises.

    Parameters
    ----------
    variation : CV, coefficient of variation of the readings taken so far
    error : E, how far the mean may be off, as a share of it

    Returns
    -------
    n, a whole number, 3 at least; above 31 the next that the table of t has: 41, 61, 121

    Raises
    ------
    ValueError
        A negative variation, an error that is not above zero, or more than 121 readings.

    Notes
    -----
    Valid for readings that scatter like a normal distribution, and go on as they began; 95 per cent, two-sided.

    References
    ----------
    n = (t · CV / E)²: public examination paper in textile technology (read); t of the number found, as NIST/SEMATECH,
    e-Handbook, 7.2.2.2 advises (from memory).

    Examples
    --------
    >>> print(readings_in_all(0.05, error=0.05))  # t is 2.571 > √6 with six, 2.447 < √7 with seven
    7.0
    """
    require(variation >= 0, "The coefficient of variation cannot be negative.")
    require(error > 0, "The error to put up with must be above zero.")
    wanted = (np.multiply.outer(np.asarray(variation / error, dtype=float), QUANTILES)) ** 2
    is_enough = (wanted <= READINGS * (1 + ROUNDING)) & (READINGS >= FEWEST)
    require(is_enough.any(axis=-1), "So uneven a thing takes more than 121 readings.")
    return READINGS[is_enough.argmax(axis=-1)][()]


@calculation
def inches_each(variation: Ratio, error: Ratio) -> Ratio:
    """Inches to count at a time, so that five readings are enough.

    N = (t · CV / E)² / 5, rounded up. A reading over N inches is a mean of N, and varies by 1/√N as much.

    Parameters
    ----------
    variation : CV, coefficient of variation of readings of one inch
    error : E, how far the mean may be off, as a share of it

    Returns
    -------
    N, a whole number

    Raises
    ------
    ValueError
        A negative variation, or an error that is not above zero.

    Notes
    -----
    Valid for inches that vary each by itself; those beside each other are more alike, so that what is counted then decides.

    References
    ----------
    JCGM 100, 4.2.3, the doubt of a mean (from memory); t of five readings, NIST/SEMATECH table (read).

    Examples
    --------
    >>> print(inches_each(0.1, error=0.05))  # (2.776 · 2)² / 5 = 6.2
    7.0
    """
    require(variation >= 0, "The coefficient of variation cannot be negative.")
    require(error > 0, "The error to put up with must be above zero.")
    return whole_for((t_quantile(PLACES - 1.0) * variation / error) ** 2 / PLACES)


@calculation
def more_readings(count: Ratio, error: Ratio, in_all: Ratio | None = None, inches: Ratio | None = None) -> str:
    """How many more readings to take, in words.

    more = n - k. Before there are three, more are taken to see how they vary; if five are too few, each is counted over more inches.

    Parameters
    ----------
    count : k, readings taken so far
    error : E, how far the mean may be off, as a share of it
    in_all : n, readings that it takes in all; None if more than any table tells
    inches : inches to count at a time, so that five readings are enough

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        No reading at all, or an error that is not above zero.

    Notes
    -----
    Valid for a sample with room for five readings. Beyond ten inches at a time, wraps say little of the yarn.

    References
    ----------
    Definition of the difference; counting over more inches: common practice, no source.

    Examples
    --------
    >>> print(more_readings(3, error=0.05, in_all=5))
    2 more for ±5%
    """
    require_numbers(in_all, inches)
    require(count >= 1, "There must be a reading.")
    require(error > 0, "The error to put up with must be above zero.")
    return by_element(_in_words, count, error, *(np.inf if each is None else each for each in (in_all, inches)))


def _in_words(count, error, in_all, inches) -> str:
    if count < FEWEST:
        return f"{FEWEST - count:.0f} more to see how they vary"
    within = f"for ±{rounded(error * 100, 1)}%"
    if in_all <= PLACES:
        return f"{in_all - count:.0f} more {within}" if in_all > count else f"enough {within}"
    return f"{PLACES} over {inches:.0f} inches each {within}" if inches <= MOST_INCHES else f"too uneven {within}"
