"""What skeins of a plied yarn do not tell: by how much one strand came out finer, and the other thicker.

A skein is weighed as a whole. Its grist says how fine the hand spins its strands together, and not which of them took
more of its lot. So strands of several lots stay unsure however many skeins there are, and what is unsure of one is
unsure of the others the other way round.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, PART, require_within
from workbookgen.units import Grist, Length, Mass, MassSquared, Quantity, Ratio


@calculation
def strands_apart(
    bought_1: Ratio,
    bought_2: Ratio | None = None,
    bought_3: Ratio | None = None,
    bought_4: Ratio | None = None,
    before_2: Ratio | None = None,
    before_3: Ratio | None = None,
    before_4: Ratio | None = None,
) -> Ratio:
    """How many strands of a yarn are spun of lots of their own.

    n = Σ of the strands that are spun and have no strand of the same lots before them. What two strands take of one
    lot, their skeins tell.

    Parameters
    ----------
    bought_1, bought_2, bought_3, bought_4 : 1 for each strand that is bought, else 0; none for one that is not there
    before_2, before_3, before_4 : how many strands before it are of the same lots, if any is known to be

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        A negative number.

    Notes
    -----
    Valid for strands of the same lots or of others; two that share one lot of two count as apart.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(strands_apart(0, 0, 1, before_2=0))
    2.0
    """
    bought = (bought_1, bought_2, bought_3, bought_4)
    before = (None, before_2, before_3, before_4)
    require_numbers(*bought, *before)
    require_within(NOT_NEGATIVE, "A number", *(each for each in (*bought, *before) if each is not None))
    counted = (
        (np.asarray(is_bought) == 0) & (np.asarray(0 if earlier is None else earlier) < 0.5)
        for is_bought, earlier in zip(bought, before, strict=True)
        if is_bought is not None
    )
    return np.sum(np.broadcast_arrays(*counted), axis=0).astype(float)[()]


@calculation
def apart_in_common(u_plan: Ratio, weight: Ratio, count: Ratio) -> Ratio:
    """By how much one strand is thicker where another is finer, once skeins tell of all of them together.

    q = w · h² / (2 n), and 0 for a single strand. Half of what a hand errs by is each strand's own, and of that, skeins
    tell the mean.

    Parameters
    ----------
    u_plan : h, relative uncertainty of the planned grist
    weight : w, weight of the skeins against the plan
    count : n, strands that are spun of lots of their own

    Returns
    -------
    q, a squared share: minus the covariance of two of them; (n - 1) · q is the variance of each

    Raises
    ------
    ValueError
        A negative uncertainty or number, or a weight outside 0 to 1.

    Notes
    -----
    Valid for strands of about one weight.

    References
    ----------
    Variance and covariance of deviations from a mean of n: textbooks of statistics (from memory). That half of what a
    hand errs by is each strand's own: common practice, no source.

    Examples
    --------
    >>> print(apart_in_common(0.2, weight=0.5, count=2))
    0.005
    """
    require_numbers(u_plan, weight, count)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_plan)
    require_within(PART, "The weight", weight)
    require_within(NOT_NEGATIVE, "A number", count)
    of_two = weight * np.square(u_plan) / (2 * np.maximum(count, 2.0))
    return np.where(np.asarray(count) > 1, np.round(of_two, 15), 0.0)[()]


@calculation
def apart_square(
    apart: Ratio, count: Ratio, pool: Mass, in_skeins: Length, share: Ratio, planned: Grist, ratio: Ratio, bought: Ratio
) -> MassSquared:
    """Squared uncertainty of a strand by what its skeins do not tell of it.

    s² = (n - 1) · q · (m + L · x / (g · f))², and 0 of a bought one. A strand that came out finer took less of its lot,
    and what is left of that goes further.

    Parameters
    ----------
    apart : q, by how much one strand is thicker where another is finer, squared
    count : n, strands that are spun of lots of their own
    pool : m, mass that the lots still give
    in_skeins : L, length of all skeins of its design, whichever piece they are for
    share : x, share of the component in the yarn's weight
    planned : g, planned grist of the yarn
    ratio : f, how much finer the spun strands come out
    bought : 1 for a bought yarn or thread, else 0

    Returns
    -------
    s², a squared mass

    Raises
    ------
    ValueError
        A negative number, length or mass, or a grist or a ratio that is not above zero.

    Notes
    -----
    Valid for skeins that have all strands.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).

    Examples
    --------
    >>> print(round(apart_square(0.01, 2, Quantity(60, "g"), Quantity(80, "m"), 0.5, Quantity(1, "m/g"), 1, 0), 9))
    100.0 gram ** 2
    """
    require_numbers(apart, count, pool, in_skeins, share, planned, ratio, bought)
    require_within(NOT_NEGATIVE, "What is apart", apart)
    require_within(NOT_NEGATIVE, "A number", count)
    require_within(NOT_NEGATIVE, "An amount", pool)
    require_within(NOT_NEGATIVE, "A length", in_skeins)
    require_within(ABOVE_ZERO, "The grist", planned)
    require_within(ABOVE_ZERO, "The ratio", ratio)
    whole = pool.m_as("g") + (in_skeins * share / (planned * ratio)).m_as("g")
    of_it = np.maximum(count - 1.0, 0.0) * apart * np.square(whole)
    return Quantity(np.where(np.asarray(bought) == 1, 0.0, of_it)[()], "g^2")
