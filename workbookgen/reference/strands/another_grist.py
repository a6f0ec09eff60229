"""A yarn of another grist than its design's: its bought thread weighs the same, its singles make the difference."""

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, PART, require_within
from workbookgen.reference.tolerances import NEARLY_ALL
from workbookgen.units import Grist, LinearDensity, Ratio

LITTLE = 1e-6  # a share of thread that counts as none
MOST_THREAD = 0.99  # of a yarn that has singles, too


@calculation
def off_the_design(
    planned: Grist,
    linear_density: LinearDensity,
    shrinkage: Ratio,
    thread: Ratio,
    own: Grist | None = None,
    sample: Grist | None = None,
) -> Ratio:
    """How much finer a yarn is planned than its design makes it.

    d = g · t / (1 - s) - 1. Where a grist is typed or comes from a sample, it need not be that of the design.

    Parameters
    ----------
    planned : g, grist of the finished yarn that is planned
    linear_density : t, of the design, as plied
    shrinkage : s, share of the length that washing takes
    thread : share of the design's weight that is bought
    own, sample : the grist that was typed, and that of a sample, one or both

    Returns
    -------
    d, a share; below zero it is planned coarser

    Raises
    ------
    ValueError
        Neither a grist of its own nor a sample's, a grist or a density that is not above zero, a shrinkage outside 0 to
        1, or a yarn that is not partly bought and partly spun.

    Notes
    -----
    Valid for a design of singles and bought thread: any other keeps its shares.

    References
    ----------
    Linear densities of strands add; definition of shrinkage.

    Examples
    --------
    >>> print(round(off_the_design(Quantity(3, "m/g"), Quantity(400, "tex"), 0, 0.2, own=Quantity(3, "m/g")), 6))
    0.2
    """
    require_numbers(planned, linear_density, shrinkage, thread, own, sample)
    require(own is not None or sample is not None, "It is planned by its design.")
    require_within(ABOVE_ZERO, "The grist", planned)
    require_within(ABOVE_ZERO, "The linear density", linear_density)
    require(shrinkage < 1, "Washing leaves something.")
    require((thread > LITTLE) & (thread < NEARLY_ALL), "It is of singles and bought thread.")
    return (planned * linear_density).m_as("") / (1 - shrinkage) - 1


@calculation
def share_of_thread_times(off: Ratio, thread: Ratio) -> Ratio:
    """How many times the design's share a thread has in a yarn of another grist.

    f = 1 + d, at most such that 99% of the yarn is thread. A thread is as thick in a thin yarn as in a thick one.

    Parameters
    ----------
    off : d, how much finer the yarn is planned than its design makes it
    thread : share of the design's weight that is bought

    Returns
    -------
    f, a number

    Raises
    ------
    ValueError
        Less than nothing left of the design, or a share that is not above zero.

    Notes
    -----
    Valid for threads that the planned grist does not change.

    References
    ----------
    Linear densities of strands add; definition of a share.

    Examples
    --------
    >>> print(round(share_of_thread_times(0.2, 0.2), 6))
    1.2
    """
    require_numbers(off, thread)
    require(off > -1, "A yarn has a grist.")
    require_within(ABOVE_ZERO, "The share", thread)
    return np.minimum(1 + off, np.maximum(1, MOST_THREAD / thread))[()]


@calculation
def share_of_singles_times(times: Ratio, thread: Ratio) -> Ratio:
    """How many times the design's share each of its singles has in a yarn of another grist.

    h = (1 - f · b) / (1 - b). All that is not thread is singles.

    Parameters
    ----------
    times : f, how many times the design's share a thread has
    thread : b, share of the design's weight that is bought

    Returns
    -------
    h, a number

    Raises
    ------
    ValueError
        A share outside 0 to 1, or one in the yarn.

    Notes
    -----
    Valid for singles that all become finer, or coarser, alike.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(round(share_of_singles_times(1.2, 0.2), 6))
    0.95
    """
    require_numbers(times, thread)
    require_within(PART, "The share", thread)
    require((thread < 1) & (times * thread < 1), "A yarn of thread alone has no singles.")
    return (1 - times * thread) / (1 - thread)
