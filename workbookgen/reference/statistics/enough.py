"""How many readings are enough for a mean, and how many more to take.

The variation of the readings so far is taken for that of readings to come; the fewer there are, the less it says, so
nothing is worked out below three.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers, whole_for
from workbookgen.reference.limits import ABOVE_ZERO, AT_LEAST_ONE, NOT_NEGATIVE, require_within
from workbookgen.reference.statistics.readings import T_TABLE, t_quantile
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.reference.words import rounded
from workbookgen.units import Quantity, Ratio, Some

FEWEST = 3  # two readings that happen to agree would be enough for any tolerance
PLACES = 5  # readings for which a sample has room
MOST_INCHES = 10  # at a time, that anyone counts
# Readings from which an entry of the table holds; its last one, of the normal distribution, has no upper end.
READINGS, QUANTILES = np.array([(degrees + 1, t) for degrees, t in T_TABLE[:-1]]).T


@calculation
def readings_in_all(variation: Ratio, error: Ratio) -> Ratio:
    """Number of readings for a sufficiently certain mean.

    n = the least with t · CV / √n ≤ E. Student's t, with n - 1 degrees of freedom, is larger for few readings, so it
    falls as n rises.

    Parameters
    ----------
    variation : CV, coefficient of variation of the readings taken so far
    error : E, acceptable error of the mean, as a share of it

    Returns
    -------
    n, a whole number, at least 3; above 31, the next one in the table of t: 41, 61, 121

    Raises
    ------
    ValueError
        A negative variation, an error that is not above zero, or more than 121 readings.

    Notes
    -----
    Valid for normally distributed readings that continue as they began; 95 percent, two-sided.

    References
    ----------
    n = (t · CV / E)²: public examination paper in textile technology (read); t for the number found, as advised in
    NIST/SEMATECH, e-Handbook, 7.2.2.2 (from memory).

    Examples
    --------
    >>> print(readings_in_all(0.05, error=0.05))  # t is 2.571 > √6 with six, 2.447 < √7 with seven
    7.0
    """
    require_within(NOT_NEGATIVE, "The coefficient of variation", variation)
    require_within(ABOVE_ZERO, "The acceptable error", error)
    wanted = (np.multiply.outer(np.asarray(variation / error, dtype=float), QUANTILES)) ** 2
    is_enough = (wanted <= READINGS * (1 + ROUNDING)) & (READINGS >= FEWEST)
    require(is_enough.any(axis=-1), "Such uneven yarn takes more than 121 readings.")
    return READINGS[is_enough.argmax(axis=-1)][()]


@calculation
def inches_each(variation: Ratio, error: Ratio) -> Ratio:
    """Inches to count at a time for five readings to be enough.

    N = (t · CV / E)² / 5, rounded up. A reading over N inches is a mean of N, and varies 1/√N as much.

    Parameters
    ----------
    variation : CV, coefficient of variation of readings of one inch
    error : E, acceptable error of the mean, as a share of it

    Returns
    -------
    N, a whole number

    Raises
    ------
    ValueError
        A negative variation, or an error that is not above zero.

    Notes
    -----
    Valid for inches that vary independently; adjacent ones are more alike, so the readings then taken decide.

    References
    ----------
    JCGM 100, 4.2.3, the uncertainty of a mean (from memory); t of five readings, NIST/SEMATECH table (read).

    Examples
    --------
    >>> print(inches_each(0.1, error=0.05))  # (2.776 · 2)² / 5 = 6.2
    7.0
    """
    require_within(NOT_NEGATIVE, "The coefficient of variation", variation)
    require_within(ABOVE_ZERO, "The acceptable error", error)
    return whole_for((t_quantile(PLACES - 1.0) * variation / error) ** 2 / PLACES)


@calculation
def more_readings(
    count: Ratio,
    error: Ratio,
    in_all: Ratio | None = None,
    inches: Ratio | None = None,
    within: Some = None,
    mean: Some = None,
) -> str:
    """How many more readings to take, in words.

    more = n - k. With fewer than three, more are taken to see how they vary; if five are too few, each is counted over
    more inches. Enough of them are not enough where w > E · x̄, since all were rounded.

    Parameters
    ----------
    count : k, readings taken so far
    error : E, acceptable error of the mean, as a share of it
    in_all : n, total number of readings needed; None if the table does not go that far
    inches : inches to count at a time for five readings to be enough
    within : w, how near the true mean lies, with the step to which they were read
    mean : x̄, their mean, of the same kind

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        No reading at all, or an error that is not above zero.

    Notes
    -----
    Valid for a sample with room for five readings. Beyond ten inches at a time, wraps say little about the yarn.

    References
    ----------
    Definition of the difference; counting over more inches: common practice, no source.

    Examples
    --------
    >>> print(more_readings(3, error=0.05, in_all=5))
    2 more for ±5%
    """
    require_numbers(in_all, inches)
    require_within(AT_LEAST_ONE, "There must be a reading.", count)
    require_within(ABOVE_ZERO, "The acceptable error", error)
    share = 0.0 if within is None or mean is None else Quantity(within / mean).m_as("")
    return by_element(_in_words, count, error, *(np.inf if each is None else each for each in (in_all, inches)), share)


def _in_words(count, error, in_all, inches, share) -> str:
    if count < FEWEST:
        return f"{FEWEST - count:.0f} more to see how they vary"
    within = f"for ±{rounded(error * 100, 1)}%"
    if in_all <= PLACES:
        if in_all > count:
            return f"{in_all - count:.0f} more {within}"
        return f"read parts of a wrap {within}" if share > error * (1 + ROUNDING) else f"enough {within}"
    return f"{PLACES} over {inches:.0f} inches each {within}" if inches <= MOST_INCHES else f"too uneven {within}"
