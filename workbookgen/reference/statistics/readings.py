"""Up to five readings of one thing: mean, standard deviation, and the uncertainty of the mean.

Yarn is uneven, so one reading says little. The readings may be of any kind, as long as all are of the same kind;
those that were not taken are left out. With few readings, the mean is less certain than their standard deviation
shows, which is what the table of Student's t is for.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require, whole_for
from workbookgen.reference.limits import ABOVE_ZERO, AT_LEAST_ONE, AT_LEAST_TWO, COUNTED, NOT_NEGATIVE, require_within
from workbookgen.units import Quantity, Ratio, Some

# Degrees of freedom from which an entry holds, and t for 95 percent, two-sided.
T_TABLE = (
    (1, 12.706),
    (2, 4.303),
    (3, 3.182),
    (4, 2.776),
    (5, 2.571),
    (6, 2.447),
    (7, 2.365),
    (8, 2.306),
    (9, 2.262),
    (10, 2.228),
    (11, 2.201),
    (12, 2.179),
    (13, 2.160),
    (14, 2.145),
    (15, 2.131),
    (16, 2.120),
    (17, 2.110),
    (18, 2.101),
    (19, 2.093),
    (20, 2.086),
    (21, 2.080),
    (22, 2.074),
    (23, 2.069),
    (24, 2.064),
    (25, 2.060),
    (26, 2.056),
    (27, 2.052),
    (28, 2.048),
    (29, 2.045),
    (30, 2.042),
    (40, 2.021),
    (60, 2.000),
    (120, 1.980),
    (121, 1.960),  # that of the normal distribution, for all beyond the table
)


@calculation
def mean(
    reading_1: Some = None,
    reading_2: Some = None,
    reading_3: Some = None,
    reading_4: Some = None,
    reading_5: Some = None,
) -> Some:
    """Mean of some readings.

    x̄ = Σ x / n. The best single figure for something that varies.

    Parameters
    ----------
    reading_1, reading_2, reading_3, reading_4, reading_5 : x, readings of one kind, any quantity

    Returns
    -------
    x̄, of the same kind

    Raises
    ------
    ValueError
        No reading, or one that is not a number.
    DimensionalityError
        Readings of different kinds.

    Notes
    -----
    Valid for readings taken the same way, at places chosen at random.

    References
    ----------
    JCGM 100, 4.2.1 (from memory).

    Examples
    --------
    >>> print(mean(10, 12, 14))
    12.0
    """
    first, shifts = _shifts(reading_1, reading_2, reading_3, reading_4, reading_5)
    return first + sum(shifts) / len(shifts)


@calculation
def count(
    reading_1: Some = None,
    reading_2: Some = None,
    reading_3: Some = None,
    reading_4: Some = None,
    reading_5: Some = None,
) -> Ratio:
    """Number of readings.

    n = count of x. A reading that was not taken does not count.

    Parameters
    ----------
    reading_1, reading_2, reading_3, reading_4, reading_5 : x, readings of one kind, any quantity

    Returns
    -------
    n, 1 to 5

    Raises
    ------
    ValueError
        No reading, or one that is not a number.
    DimensionalityError
        Readings of different kinds.

    Notes
    -----
    Valid for readings taken the same way.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(count(10, 12, 14))
    3.0
    """
    _, shifts = _shifts(reading_1, reading_2, reading_3, reading_4, reading_5)
    return np.full(np.shape(sum(shifts)), float(len(shifts)))[()]


@calculation
def deviation(
    reading_1: Some = None,
    reading_2: Some = None,
    reading_3: Some = None,
    reading_4: Some = None,
    reading_5: Some = None,
) -> Some:
    """Standard deviation of some readings.

    s = √(Σ (x - x̄)² / (n - 1)). How far a single reading typically lies from the mean.

    Parameters
    ----------
    reading_1, reading_2, reading_3, reading_4, reading_5 : x, readings of one kind, any quantity

    Returns
    -------
    s, of the same kind

    Raises
    ------
    ValueError
        Fewer than two readings, or one that is not a number.
    DimensionalityError
        Readings of different kinds.

    Notes
    -----
    Valid for readings that are a sample of the whole; with two readings it is only a hint.

    References
    ----------
    JCGM 100, 4.2.2 (from memory).

    Examples
    --------
    >>> print(deviation(10, 12, 14))
    2.0
    """
    _, shifts = _shifts(reading_1, reading_2, reading_3, reading_4, reading_5)
    require(len(shifts) >= 2, "One reading has no deviation: take at least two.")
    middle = sum(shifts) / len(shifts)
    return np.sqrt(sum((shift - middle) ** 2 for shift in shifts) / (len(shifts) - 1))


def _shifts(*readings):
    """The first reading, and the deviation of each from it: equal readings then have no deviation at all."""
    given = [reading for reading in readings if reading is not None]
    require(len(given) > 0, "Give at least one reading.")
    shifts = [reading - given[0] for reading in given]
    require(np.isfinite(sum(shifts)), "Every reading must be a number.")
    return given[0], shifts


@calculation
def variation(deviation: Some, mean: Some) -> Ratio:
    """Coefficient of variation.

    CV = s / x̄. A deviation of two wraps is a lot for a thick yarn and little for a fine one.

    Parameters
    ----------
    deviation : s, standard deviation, any quantity
    mean : x̄, mean of the same readings, of the same kind

    Returns
    -------
    CV, a share

    Raises
    ------
    ValueError
        A negative deviation, or a mean that is not above zero.
    DimensionalityError
        A deviation and a mean of different kinds.

    Notes
    -----
    Valid for quantities with a true zero: lengths, masses, counts, not temperatures.

    References
    ----------
    Definition of the coefficient of variation.

    Examples
    --------
    >>> print(variation(Quantity(2, "m"), Quantity(20, "m")))
    0.1
    """
    require_within(NOT_NEGATIVE, "The standard deviation", deviation)
    require_within(ABOVE_ZERO, "The mean", mean)
    return Quantity(deviation / mean).m_as("")


@calculation
def t_quantile(degrees: Ratio) -> Ratio:
    """Student's t for 95 percent.

    t = entry of the highest degrees of freedom ≤ ν in the table. It widens an uncertainty that rests on few readings.

    Parameters
    ----------
    degrees : ν, degrees of freedom, the number of readings less one

    Returns
    -------
    t, two-sided, three decimals as printed

    Raises
    ------
    ValueError
        Less than one degree of freedom.

    Notes
    -----
    Valid for normally distributed readings. Between entries the higher t
    is taken, which errs on the safe side; beyond 120, that of the normal distribution, at worst 1 percent low.

    References
    ----------
    Table of Student's t of NIST/SEMATECH, as reproduced on a public page (read); its entries
    for 11 to 13, 15 to 18, 20 to 28, 30, 40, 60 and 120 (from memory).

    Examples
    --------
    >>> print(t_quantile(4))
    2.776
    """
    require_within(AT_LEAST_ONE, "There must be at least one degree of freedom: two readings.", degrees)
    starts, quantiles = np.array(T_TABLE).T
    return quantiles[np.searchsorted(starts, np.round(degrees, 9), side="right") - 1]


@calculation
def half_width(deviation: Some, count: Ratio) -> Some:
    """Half width of the 95 percent confidence interval of a mean.

    h = t · s / √n. The true mean lies within x̄ ± h nineteen times out of twenty.

    Parameters
    ----------
    deviation : s, standard deviation of the readings, any quantity
    count : n, number of readings; t has n - 1 degrees of freedom

    Returns
    -------
    h, of the kind of the deviation

    Raises
    ------
    ValueError
        A negative deviation, fewer than two readings, or a fraction of one.

    Notes
    -----
    Valid for normally distributed readings.

    References
    ----------
    JCGM 100, G.3.2 (from memory).

    Examples
    --------
    >>> print(half_width(2, 4))
    3.182
    """
    require_within(AT_LEAST_TWO, "One reading has no deviation: take at least two.", count)
    return t_quantile(count - 1) * standard_error(deviation, count)


@calculation
def standard_error(deviation, count: Ratio):
    """Standard uncertainty of a mean.

    u = s / √n. Four times as many readings halve the uncertainty.

    Parameters
    ----------
    deviation : s, standard deviation of the readings, any quantity
    count : n, number of readings

    Returns
    -------
    u, of the kind of the deviation

    Raises
    ------
    ValueError
        A negative deviation, no reading, or a fraction of one.

    Notes
    -----
    Valid for independent readings.

    References
    ----------
    JCGM 100, 4.2.3 (from memory).

    Examples
    --------
    >>> print(standard_error(2, 4))
    1.0
    """
    require_within(NOT_NEGATIVE, "The standard deviation", deviation)
    require_within(COUNTED, "Readings are counted in whole numbers, from one.", count)
    return deviation / np.sqrt(count)


@calculation
def specimens(variation: Ratio, error: Ratio, t: Ratio = 1.96) -> Ratio:
    """Number of readings to take for a sufficiently certain mean.

    n = (t · CV / E)², rounded up. Half the error takes four times the readings.

    Parameters
    ----------
    variation : CV, coefficient of variation of single readings
    error : E, acceptable error of the mean, as a share
    t : t, number of standard uncertainties that the error covers

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        A negative variation, or an error or a t that is not above zero.

    Notes
    -----
    Valid for a variation known from many readings; 1.96 stands for 95 percent. Readings that do not vary at all give
    0.

    References
    ----------
    Public examination paper in textile technology (read); 1.96, NIST/SEMATECH table (read).

    Examples
    --------
    >>> print(specimens(0.1, error=0.05))  # (1.96 · 2)² = 15.4
    16.0
    """
    require_within(NOT_NEGATIVE, "The coefficient of variation", variation)
    require_within(ABOVE_ZERO, "The acceptable error", error)
    require_within(ABOVE_ZERO, "The number of standard uncertainties", t)
    return whole_for((t * variation / error) ** 2)  # rounding must not ask for one more
