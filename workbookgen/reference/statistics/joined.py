"""The spread of a group that is known by its sums: the skeins of a lot, or of several lots together.

Sums of values and of their squares add up over groups, so the spread of any of them, and
of all together, follows without going through the members again.
"""

import numpy as np

from workbookgen.reference.law import law, require
from workbookgen.units import Ratio

ROUNDING = 1e-12  # of a relative variance: below it there is nothing but the rounding of sums


@law
def square_of(value):
    """Square of a value.

    q = x². Summed up, squares tell of the spread.

    Parameters
    ----------
    value : x, any quantity that is not negative

    Returns
    -------
    q, of the kind of the value squared

    Raises
    ------
    ValueError
        A negative value, or one that is not a number.

    Notes
    -----
    Valid for any quantity.

    References
    ----------
    Definition of the square.
    """
    require(value >= 0, "The value cannot be negative.")
    return value**2


@law
def variation_of_sums(squares, count: Ratio, mean) -> Ratio:
    """Coefficient of variation of a group, from its sums.

    CV = √((Q / (N x̄²) - 1) · N / (N - 1)). A relative variance under 10⁻¹² is the rounding of the sums and counts as none.

    Parameters
    ----------
    squares : Q, sum of the squared values
    count : N, members of the group
    mean : x̄, mean of the group

    Returns
    -------
    CV, a share

    Raises
    ------
    ValueError
        Fewer than two members, a number of them that is not whole, a mean that is not above zero, or squares too small for it.
    DimensionalityError
        Squares that are not of the kind of the mean squared.

    Notes
    -----
    Valid for groups whose members all count alike.

    References
    ----------
    Steiner's theorem: sums of squares about means (from memory).
    """
    require((count >= 2) & (count % 1 == 0), "One member has no spread: count at least two.")
    require(mean > 0, "The mean must be above zero.")
    ratio = squares / (count * mean**2)
    spread = (ratio.m_as("") if hasattr(ratio, "m_as") else ratio) - 1
    require(spread >= -ROUNDING, "Such squares cannot belong to that mean.")
    return np.sqrt(np.where(spread < ROUNDING, 0.0, spread) * count / (count - 1))
