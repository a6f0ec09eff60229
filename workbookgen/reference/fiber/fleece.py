"""What is published about fleeces: ranges, their midpoint and uncertainty, and wool grades.

Breed descriptions give a lowest and a highest figure. The midpoint stands for a fleece not known yet, and the width
of the range says how uncertain it is.
"""

from functools import partial

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, first_reached, require, whole_for
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.units import Length, Mass, Ratio, Some

# Lower limits of the mean diameter in micrometers.
WOOL_GRADES = (
    (38.10, "36s and coarser"),
    (36.20, "40s"),
    (34.40, "44s"),
    (32.70, "46s"),
    (31.00, "48s"),
    (29.30, "50s"),
    (27.85, "54s"),
    (26.40, "56s"),
    (24.95, "58s"),
    (23.50, "60s"),
    (22.05, "62s"),
    (20.60, "64s"),
    (19.15, "70s"),
    (17.70, "80s"),
    (0.0, "finer than 80s"),
)


@calculation
def midpoint(low: Some, high: Some) -> Some:
    """Middle of a range.

    m = (a + b) / 2. The best single estimate when only the ends are known.

    Parameters
    ----------
    low : a, lower end, any quantity
    high : b, upper end, of the same kind

    Returns
    -------
    m, of the same kind

    Raises
    ------
    ValueError
        A lower end above the upper.
    DimensionalityError
        Two ends of different kinds.

    Notes
    -----
    Valid for a range within which no value is likelier than another.

    References
    ----------
    Expectation of a rectangular distribution, JCGM 100, 4.3.7 (from memory).

    Examples
    --------
    >>> print(midpoint(Quantity(6, "lb"), Quantity(10, "lb")))
    8.0 pound
    """
    middle = (low + high) / 2
    _require_range(low, high)
    return middle


@calculation
def rectangular_uncertainty(low: Some, high: Some) -> Some:
    """Standard uncertainty of a range.

    u = (b - a) / √12. The standard deviation of a value that may lie anywhere in the range.

    Parameters
    ----------
    low : a, lower end, any quantity
    high : b, upper end, of the same kind

    Returns
    -------
    u, of the same kind

    Raises
    ------
    ValueError
        A lower end above the upper.
    DimensionalityError
        Two ends of different kinds.

    Notes
    -----
    Valid for a range within which no value is likelier than another.

    References
    ----------
    JCGM 100, 4.3.7 (from memory).

    Examples
    --------
    >>> print(round(rectangular_uncertainty(Quantity(6, "lb"), Quantity(12, "lb")), 3))  # √3
    1.732 pound
    """
    width = high - low
    _require_range(low, high)
    return width / np.sqrt(12)


def _require_range(low: Some, high: Some) -> None:
    require(low <= high, "The lower end of a range cannot be above the upper.")


@calculation
def clean_fleece(fleece_low: Mass, fleece_high: Mass, yield_low: Ratio, yield_high: Ratio) -> Mass:
    """Clean wool that a fleece of the breed gives.

    c = (f_low + f_high) / 2 · (y_low + y_high) / 2. Midpoint of the fleece times midpoint of the yield.

    Parameters
    ----------
    fleece_low : f_low, lightest grease fleece of the breed
    fleece_high : f_high, heaviest
    yield_low : y_low, lowest scoured yield, a share
    yield_high : y_high, highest

    Returns
    -------
    c, a mass

    Raises
    ------
    ValueError
        A reversed range, a fleece of no mass, or a yield not above 0 and up to 1.

    Notes
    -----
    Valid for the fleece of a mature ewe with nothing skirted off, and for weight and yield that vary independently.

    References
    ----------
    Ranges of breeds from extension sheets and breed directories (read).

    Examples
    --------
    >>> print(clean_fleece(Quantity(6, "lb"), Quantity(10, "lb"), 0.4, 0.6))
    4.0 pound
    """
    require_within(ABOVE_ZERO, "A fleece must have a mass.", fleece_low)
    require((yield_low > 0) & (yield_high <= 1), "A yield must be above 0 and up to 1.")
    return midpoint(fleece_low, fleece_high) * midpoint(yield_low, yield_high)


@calculation
def wool_grade(fiber_diameter: Length) -> str:
    """Grade of wool by its mean fiber diameter.

    grade = the one with the highest lower limit ≤ d. Its number is traditional: the finer the wool, the more hanks
    could be spun from a pound.

    Parameters
    ----------
    fiber_diameter : d, mean diameter of the fiber

    Returns
    -------
    a grade such as "62s"

    Raises
    ------
    ValueError
        A diameter that is not above zero.

    Notes
    -----
    Valid for sheep's wool; the grade also limits the variation of diameters, which is not judged here.

    References
    ----------
    USDA grades in an extension guide of New Mexico, B-409 (read; its misprinted limit of 70s corrected); limits of
    40s and coarser (from memory).

    Examples
    --------
    >>> print(wool_grade(Quantity(22.5, "µm")))
    62s
    """
    require_within(ABOVE_ZERO, "The diameter of the fiber", fiber_diameter)
    return by_element(partial(first_reached, WOOL_GRADES), fiber_diameter.m_as("micrometer"))


@calculation
def fleeces(weight: Mass, fleece_low: Mass, fleece_high: Mass, stage: Ratio = 1) -> Ratio:
    """Whole fleeces to buy.

    n = weight / midpoint of a fleece, rounded up. Fleeces are sold whole.

    Parameters
    ----------
    weight : mass of raw fleece to buy
    fleece_low : lightest grease fleece of the breed
    fleece_high : heaviest
    stage : how far it is processed when bought, 1 for raw fleece

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        A negative weight, a fleece of no mass, a reversed range, or fiber that is not raw.

    Notes
    -----
    Valid for fleeces of average weight; a light one may leave you short.

    References
    ----------
    Ranges of breeds from extension sheets and breed directories (read).

    Examples
    --------
    >>> print(fleeces(Quantity(20, "lb"), Quantity(6, "lb"), Quantity(10, "lb")))
    3.0
    """
    require(stage == 1, "Only raw fiber is counted in fleeces.")
    require_within(NOT_NEGATIVE, "The weight to buy", weight)
    require_within(ABOVE_ZERO, "A fleece must have a mass.", fleece_low)
    share = (weight / midpoint(fleece_low, fleece_high)).m_as("")
    return whole_for(share)  # rounding must not buy one more fleece
