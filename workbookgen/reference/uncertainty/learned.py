"""What the skeins already spun tell of the yarn that is still to be spun: how far they overrule the plan, and how much
finer or thicker it comes out, even if the hand changes."""

import numpy as np

from workbookgen.reference.calculation import calculation, quotient, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, ONE_EITHER_WAY, PART, require_within
from workbookgen.reference.tolerances import NEARLY_ALL
from workbookgen.units import Grist, Ratio

LEAST_SPUN = 0.1  # of the spun part as planned; less can hardly be measured beside a bought thread


@calculation
def learned_weight(u_plan: Ratio, variation: Ratio, skeins: Ratio) -> Ratio:
    """Weight of the skeins already spun against the planned grist.

    w = h² / (h² + c² / n). One skein says a little, ten say nearly everything.

    Parameters
    ----------
    u_plan : h, relative standard uncertainty of the planned grist
    variation : c, coefficient of variation between skeins
    skeins : n, how many alike tell as much as those spun

    Returns
    -------
    w, a share; 0 before the first skein

    Raises
    ------
    ValueError
        A negative uncertainty or number.

    Notes
    -----
    Valid for skeins that vary about a mean which is itself uncertain; n follows from their weights.

    References
    ----------
    Mean of a normal distribution with a normal prior: textbooks of statistics (from memory).

    Examples
    --------
    >>> print(learned_weight(0.1, 0.1, skeins=4))
    0.8
    """
    require_numbers(u_plan, variation, skeins)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_plan, variation)
    require_within(NOT_NEGATIVE, "The number of skeins", skeins)
    h, c, n = np.square(u_plan), np.square(variation), np.asarray(skeins)
    return np.where(n > 0, quotient(h, h + quotient(c, n)), 0.0)[()]


@calculation
def finer_than_planned(weight: Ratio, bought_share: Ratio, planned: Grist, seen: Grist | None = None) -> Ratio:
    """Ratio by which the spun strands come out finer than planned, as far as is known.

    q = 1 + w · (ρ - 1), ρ = (1 - b) / (g / g_s - b). A bought thread does not change, so all of the difference lies
    in the spun strands.

    Parameters
    ----------
    weight : w, weight of the skeins against the plan
    bought_share : b, share of the planned yarn's weight that is bought thread
    planned : g, planned grist of the yarn
    seen : g_s, grist of all skeins together, length over weight, if there are any

    Returns
    -------
    q, a number, 1 where the skeins say nothing

    Raises
    ------
    ValueError
        A weight or a share outside 0 to 1, or a grist that is not above zero.

    Notes
    -----
    Valid for skeins whose spun strands weigh at least a tenth of what was planned; below that, q is 1.

    References
    ----------
    Linear densities of strands add; definition of the weighted mean.

    Examples
    --------
    >>> print(round(finer_than_planned(0.5, 0, Quantity(2, "m/g"), seen=Quantity(2.4, "m/g")), 6))
    1.1
    """
    require_numbers(weight, bought_share, planned, seen)
    require_within(PART, "The weight", weight)
    require_within(NOT_NEGATIVE, "The bought share", bought_share)
    require(bought_share <= 1 + 1e-6, "The bought share is a part of the whole yarn.")
    require_within(ABOVE_ZERO, "The grist", planned)
    if seen is None:
        return np.ones(np.shape(weight))[()]
    require_within(ABOVE_ZERO, "The grist", seen)
    spun_planned = 1 - bought_share
    spun_seen = (planned / seen).m_as("") - bought_share
    tells = (bought_share < NEARLY_ALL) & (spun_seen > LEAST_SPUN * spun_planned)
    ratio = np.where(tells, quotient(spun_planned, spun_seen), 1.0)
    return (1 + weight * (ratio - 1))[()]


@calculation
def finer_to_come(finer: Ratio, ahead: Ratio) -> Ratio:
    """Ratio by which what is still to be spun comes out finer than planned.

    q = q_0 · (1 + D / 2). A hand that changes may go on so or come back to what it was, so half of it is expected.

    Parameters
    ----------
    finer : q_0, ratio by which the skeins that there are came out finer
    ahead : D, change from these to those still to be spun, if the hand goes on so

    Returns
    -------
    q, a number

    Raises
    ------
    ValueError
        A ratio that is not above zero, or a change outside -1 to 1.

    Notes
    -----
    Valid for a hand of which nobody knows whether it goes on so: half of the change is common practice, no source.

    References
    ----------
    Definition of the mean, of two cases that are equally likely.

    Examples
    --------
    >>> print(finer_to_come(1.0, ahead=-0.25))
    0.875
    """
    require_within(ABOVE_ZERO, "The ratio", finer)
    require_within(ONE_EITHER_WAY, "The change", ahead)
    return finer * (1 + ahead / 2)


@calculation
def hand_uncertainty(weight: Ratio, u_plan: Ratio, ahead: Ratio) -> Ratio:
    """Relative uncertainty of the grist that is common to all that is still to be spun.

    u = √(h² · (1 - w) + (D / 2)²). How far the hand is off the plan is known the better the more skeins there are;
    whether it goes on as it changes is not.

    Parameters
    ----------
    weight : w, weight of the skeins against the plan
    u_plan : h, relative uncertainty of the planned grist
    ahead : D, change from the skeins there are to those still to be spun, if the hand goes on so

    Returns
    -------
    u, a share

    Raises
    ------
    ValueError
        A negative uncertainty, a weight outside 0 to 1, or a change outside -1 to 1.

    Notes
    -----
    Valid for a hand of which nobody knows whether it goes on so: half of the change is common practice, no source.

    References
    ----------
    JCGM 100, 5.1.2; standard deviation of two equally likely cases (from memory).

    Examples
    --------
    >>> print(round(hand_uncertainty(0.75, u_plan=0.08, ahead=-0.06), 6))  # √(0.04² + 0.03²)
    0.05
    """
    require_numbers(weight, u_plan, ahead)
    require_within(PART, "The weight", weight)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_plan)
    require_within(ONE_EITHER_WAY, "The change", ahead)
    return np.sqrt(np.square(u_plan) * (1 - weight) + np.square(ahead / 2))


@calculation
def beside_the_plan(seen: Grist, planned: Grist) -> Ratio:
    """How many times as fine as planned a yarn is spun.

    q = g / p. Far from 1, the plan or the log is of another yarn.

    Parameters
    ----------
    seen : g, grist of the skeins so far
    planned : p, planned grist

    Returns
    -------
    q, a ratio

    Raises
    ------
    ValueError
        A grist that is not above zero.

    Notes
    -----
    Valid for skeins that were weighed.

    References
    ----------
    Definition of a ratio.

    Examples
    --------
    >>> print(beside_the_plan(Quantity(3, "m/g"), Quantity(4, "m/g")))
    0.75
    """
    require_within(ABOVE_ZERO, "A grist", seen, planned)
    return (seen / planned).m_as("")
