"""How finely readings were taken, as the readings themselves show.

Someone who counts 14, 14 and 14 wraps has not found that the yarn is perfectly even, but has counted whole wraps. What
lies between two steps of a scale or a ruler does not show in the spread of readings.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.limits import NOT_NEGATIVE, require_within
from workbookgen.reference.tolerances import HAIR
from workbookgen.units import PerLength, Quantity, Some


@calculation
def read_to(
    reading_1: PerLength | None = None,
    reading_2: PerLength | None = None,
    reading_3: PerLength | None = None,
    reading_4: PerLength | None = None,
    reading_5: PerLength | None = None,
) -> PerLength:
    """The step to which wraps were read.

    d = 1 wrap in an inch if all readings are whole, else 0.5 if all are whole or half, else 0. Finer steps matter no
    more.

    Parameters
    ----------
    reading_1, reading_2, reading_3, reading_4, reading_5 : wraps per inch

    Returns
    -------
    d, wraps per inch

    Raises
    ------
    ValueError
        No reading, or a negative one.

    Notes
    -----
    Valid for wraps counted in an inch; readings that happen to be whole are taken for rounded ones.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(read_to(Quantity(14, "1/inch"), Quantity(14.5, "1/inch")))
    0.5 / inch
    """
    readings = [each for each in (reading_1, reading_2, reading_3, reading_4, reading_5) if each is not None]
    require(len(readings) > 0, "There must be a reading.")
    require_numbers(*readings)
    require_within(NOT_NEGATIVE, "A reading", *readings)
    wraps = [each.m_as("1/inch") for each in readings]
    step = np.where(_off(wraps, 1) < HAIR, 1.0, np.where(_off(wraps, 2) < HAIR, 0.5, 0.0))[()]
    return Quantity(step, "1/inch")


@calculation
def within(half_width: Some, step: Some) -> Some:
    """How near the true mean lies, nineteen times out of twenty.

    w = √(h² + (d / 2)²). Readings rounded alike are off alike, by half a step at most, and no spread shows it.

    Parameters
    ----------
    half_width : h, half the 95 percent confidence interval by the spread of the readings
    step : d, the step to which they were read, of the same kind

    Returns
    -------
    w, of the same kind

    Raises
    ------
    ValueError
        A negative half width or step.
    DimensionalityError
        A half width and a step of different kinds.

    Notes
    -----
    Valid for three readings or more; two that are rounded may agree by chance.

    References
    ----------
    JCGM 100, F.2.2.1, the step of an indication (from memory); half of it taken whole, not as a standard uncertainty.

    Examples
    --------
    >>> print(within(Quantity(1.2, "1/inch"), Quantity(1, "1/inch")))
    1.3 / inch
    """
    require_numbers(half_width, step)
    require_within(NOT_NEGATIVE, "A half width", half_width)
    require_within(NOT_NEGATIVE, "The step", step)
    return (half_width**2 + (step / 2) ** 2) ** 0.5


def _off(wraps, parts: int):
    """How far the readings lie off whole parts, in all."""
    return sum(np.abs(each * parts - np.round(each * parts)) for each in wraps)
