"""The length that each strand should last for, so that the yarn is long enough whichever strand runs out first."""

import numpy as np

from workbookgen.reference.calculation import calculation, require_numbers
from workbookgen.reference.limits import NO_LENGTH, NOT_NEGATIVE, require_within
from workbookgen.units import Area, Length, Ratio

# How far the least of 2, 3 or 4 equal, independent normal values is expected below their mean, as a share of the root
# of the sum of their squared uncertainties: 0.5642 / √2, 0.8463 / √3, 1.0294 / 2 (tables of normal order statistics).
BELOW = (0.0, 0.0, 0.398942280401433, 0.48860251190292, 0.514687686148188)


@calculation
def may_run_out(come: Length, u_come: Length, least: Length, more: Length, shared: Ratio = 0.0) -> Area:
    """Squared uncertainty of a strand that may be the first to run out, once each lasts longer.

    v² = max(u² / 2, u² - r · L i²) where L i - u ≤ L + E, otherwise 0. A strand that lasts far longer than the others
    does not count, nor does what makes all of them longer or shorter together.

    Parameters
    ----------
    come : L i, length for which this strand lasts
    u_come : u, its standard uncertainty
    least : L, length for which the scarcest strand lasts
    more : E, additional length to have
    shared : r, relative variance that all strands have in common

    Returns
    -------
    v², a squared length

    Raises
    ------
    ValueError
        A negative uncertainty, variance or length to add.

    Notes
    -----
    Valid for strands that have at most half of their variance in common. The last digits do not decide.

    References
    ----------
    Leaving out what lies more than one standard uncertainty off (common practice, no source).

    Examples
    --------
    >>> print(may_run_out(Quantity(110, "m"), Quantity(3, "m"), least=Quantity(100, "m"), more=Quantity(10, "m")))
    9.0 meter ** 2
    """
    require_numbers(come, u_come, least, more, shared)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_come)
    require_within(NOT_NEGATIVE, "A variance", shared)
    require_within(NOT_NEGATIVE, "The additional length", more)
    apart = np.round((come - u_come - least - more).m_as("m"), 9)
    own = np.maximum(u_come**2 / 2, u_come**2 - shared * np.maximum(come, NO_LENGTH) ** 2)
    return np.where(apart <= 0, 1.0, 0.0)[()] * own


@calculation
def length_to_last(
    least: Length,
    mean: Length,
    more: Length,
    near_1: Area,
    near_2: Area | None = None,
    near_3: Area | None = None,
    near_4: Area | None = None,
) -> Length:
    """Length for which each strand should last, so that the yarn is longer by what is wanted.

    T = L + E + max(0, b · √(Σ v²) - (L - M)), b = 0, 0.399, 0.489 or 0.515 by how many v² are above zero; T = L where
    E = 0. Strands that are to last equally long will hardly all do so, and the shortest ends the yarn.

    Parameters
    ----------
    least : L, length for which the scarcest strand lasts
    mean : M, expected length of the yarn
    more : E, additional length to have
    near_1, near_2, near_3, near_4 : v², squared uncertainties of the strands that may run out first

    Returns
    -------
    T, a length

    Raises
    ------
    ValueError
        A negative squared uncertainty or length to add.

    Notes
    -----
    Valid for up to four independent strands whose uncertainties are of one size.

    References
    ----------
    Expected values of normal order statistics, tables (from memory).

    Examples
    --------
    >>> # 110 + 5 / √(2 π)
    >>> print(round(length_to_last(Quantity(100, "m"), Quantity(100, "m"), Quantity(10, "m"), Quantity(9, "m^2"),
    ...     Quantity(16, "m^2")), 2))
    111.99 meter
    """
    near = [each for each in (near_1, near_2, near_3, near_4) if each is not None]
    require_numbers(least, mean, more, *near)
    require_within(NOT_NEGATIVE, "The additional length", more)
    require_within(NOT_NEGATIVE, "A squared uncertainty", *near)
    squares = np.broadcast_arrays(*(each.m_as("m^2") for each in near))
    below = np.asarray(BELOW)[np.sum([each > 0 for each in squares], axis=0)] * np.sqrt(np.sum(squares, axis=0))
    further = np.maximum(below - (least - mean).m_as("m"), 0.0)
    return least + np.where(more > NO_LENGTH, 1.0, 0.0)[()] * (more + (further * NO_LENGTH.units).to("m"))
