"""Groups taken together, such as the skeins of all lots that go into one project."""

import numpy as np

from workbookgen.reference.law import law, require
from workbookgen.units import Ratio


@law
def joined_variation(within, mean_squares, count: Ratio, mean) -> Ratio:
    """Coefficient of variation of several groups together.

    CV = √(((W + M) / (N x̄²) - 1) · N / (N - 1)). Squares within the groups and between their means add up.

    Parameters
    ----------
    within : W, sum of the squared deviations from each group's own mean
    mean_squares : M, sum over the groups of count times squared mean
    count : N, members in all
    mean : x̄, mean of all members

    Returns
    -------
    CV, a share

    Raises
    ------
    ValueError
        Fewer than two members, a number of them that is not whole, or a mean that is not above zero.

    Notes
    -----
    Valid for groups that share no member.

    References
    ----------
    Steiner's theorem: sums of squares about means (from memory).
    """
    require((count >= 2) & (count % 1 == 0), "One member has no spread: count at least two.")
    require(mean > 0, "The mean must be above zero.")
    spread = ((within + mean_squares) / (count * mean**2)) - 1
    spread = spread.m_as("") if hasattr(spread, "m_as") else spread
    return np.sqrt(np.maximum(0.0, np.round(spread, 12)) * count / (count - 1))


@law
def squares_within(squares: Ratio, mean):
    """Sum of squared deviations from a group's mean.

    W = S · x̄². Relative deviations turn into deviations.

    Parameters
    ----------
    squares : S, sum of the squared relative deviations
    mean : x̄, mean of the group

    Returns
    -------
    W, of the kind of the mean squared

    Raises
    ------
    ValueError
        A negative sum, or a mean that is not above zero.

    Notes
    -----
    Valid for deviations that were told of that same mean.

    References
    ----------
    Definition of the relative deviation.
    """
    require(squares >= 0, "A sum of squares cannot be negative.")
    require(mean > 0, "The mean must be above zero.")
    return squares * mean**2


@law
def squares_of_means(count: Ratio, mean):
    """Squares of a group's mean, once for each member.

    M = k · x̄². What the group adds to the sum of squares besides its own spread.

    Parameters
    ----------
    count : k, members of the group
    mean : x̄, mean of the group

    Returns
    -------
    M, of the kind of the mean squared

    Raises
    ------
    ValueError
        No member, or a mean that is not above zero.

    Notes
    -----
    Valid for a group whose members all count alike.

    References
    ----------
    Steiner's theorem: sums of squares about means (from memory).
    """
    require(count >= 1, "A group has at least one member.")
    require(mean > 0, "The mean must be above zero.")
    return count * mean**2
