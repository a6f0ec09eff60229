"""Where uncertainty comes from and how uncertainties add up.

Limits are converted to standard uncertainties first, so all are of one kind. Then they add in quadrature: for a sum
as they are, for a product or a quotient as shares. One much smaller than another may be neglected.
"""

import numpy as np

from workbookgen.reference.calculation import calculation
from workbookgen.reference.limits import NOT_NEGATIVE, require_within
from workbookgen.units import Ratio, Some, SomeSquared


@calculation
def rectangular(half_width: Some) -> Some:
    """Standard uncertainty of a value known to lie within limits.

    u = a / √3. It turns a "give or take" into the common measure.

    Parameters
    ----------
    half_width : a, half the distance between the limits, any quantity

    Returns
    -------
    u, of the same kind

    Raises
    ------
    ValueError
        A negative half width.

    Notes
    -----
    Valid for limits within which no value is likelier than another.

    References
    ----------
    JCGM 100, 4.3.7 (from memory).

    Examples
    --------
    >>> print(round(rectangular(Quantity(3, "cm")), 2))  # √3
    1.73 centimeter
    """
    require_within(NOT_NEGATIVE, "The half width", half_width)
    return half_width / np.sqrt(3)


@calculation
def combined(u_1, u_2=None, u_3=None, u_4=None):
    """Standard uncertainty of a sum or a difference.

    u = √(u₁² + u₂² + u₃² + u₄²). Uncertainties partly cancel, so they add in quadrature.

    Parameters
    ----------
    u_1, u_2, u_3, u_4 : u₁ to u₄, standard uncertainties of one kind, any quantity

    Returns
    -------
    u, of the same kind

    Raises
    ------
    ValueError
        A negative uncertainty.
    DimensionalityError
        Uncertainties of different kinds.

    Notes
    -----
    Valid for independent uncertainties, and a sum in which each counts once.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).

    Examples
    --------
    >>> print(combined(Quantity(3, "m"), Quantity(4, "m")))
    5.0 meter
    """
    return _root_of_squares(u_1, u_2, u_3, u_4)


@calculation
def product_relative(relative_1: Ratio, relative_2: Ratio | None = None, relative_3: Ratio | None = None) -> Ratio:
    """Relative uncertainty of a product or a quotient.

    r = √(r₁² + r₂² + r₃²). A grist is a length over a mass, so it takes on the uncertainty of both.

    Parameters
    ----------
    relative_1, relative_2, relative_3 : r₁ to r₃, relative standard uncertainties of the factors

    Returns
    -------
    r, a share

    Raises
    ------
    ValueError
        A negative uncertainty.

    Notes
    -----
    Valid for small, independent uncertainties, and factors that each enter once.

    References
    ----------
    JCGM 100, 5.1.6 (from memory).

    Examples
    --------
    >>> print(product_relative(0.03, 0.04))
    0.05
    """
    return _root_of_squares(relative_1, relative_2, relative_3)


def _root_of_squares(first, *others):
    given = [first, *(other for other in others if other is not None)]
    for uncertainty in given:
        require_within(NOT_NEGATIVE, "A standard uncertainty", uncertainty)
    squares = [uncertainty**2 for uncertainty in given]
    return np.sqrt(sum(squares[1:], start=squares[0]))


@calculation
def square(uncertainty: Some) -> SomeSquared:
    """Square of a standard uncertainty.

    q = u². Kept beside each skein and each lot, so their uncertainties add up in one column.

    Parameters
    ----------
    uncertainty : u, a standard uncertainty, any quantity

    Returns
    -------
    q, of the squared kind

    Raises
    ------
    ValueError
        A negative uncertainty.

    Notes
    -----
    Valid for independent uncertainties; only the squares of these may be summed.

    References
    ----------
    Definition of the variance; JCGM 100, 5.1.2 (from memory).

    Examples
    --------
    >>> print(square(Quantity(3, "m")))
    9 meter ** 2
    """
    require_within(NOT_NEGATIVE, "A standard uncertainty", uncertainty)
    return uncertainty**2
