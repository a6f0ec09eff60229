"""The loop of a reel: what one full turn of it measures, and how surely.

Everything that is counted in wraps rests on the loop. It is stated by the maker, worked out from height and arms, or
measured with a cord; the best figure known is used.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.reference.tolerances import HAIR
from workbookgen.units import Length, Ratio

USUAL_TOLERANCE = 0.005  # of a loop that was measured, where no tolerance is given
AS_RATED = 0.02  # of one that only its maker states
QUARTERS, TENTHS = 4, 10  # the parts in which people read a turn

MEASURED, FROM_ARMS, RATED = "measured with a cord", "from height and arms", "rated"


@calculation
def measured_loop(cord: Length, turns: Ratio) -> Length:
    """Loop of a reel, measured with a cord.

    C = cord / turns. Wind a cord of known length and count the turns it makes.

    Parameters
    ----------
    cord : length of the cord
    turns : turns that the cord makes, parts of a turn included

    Returns
    -------
    C, the loop

    Raises
    ------
    ValueError
        A cord or a number of turns that is not above zero.

    Notes
    -----
    Valid for a cord that does not stretch; more turns measure better.

    References
    ----------
    Definition of the loop.

    Examples
    --------
    >>> print(measured_loop(Quantity(12, "m"), 8))
    1.5 meter
    """
    require_within(ABOVE_ZERO, "The cord must have a length.", cord)
    require_within(ABOVE_ZERO, "The cord must make at least part of a turn.", turns)
    return cord / turns


@calculation
def niddy_noddy_loop(height: Length, arm_a: Length, arm_b: Length) -> Length:
    """Loop of a niddy-noddy, from its height and its two arms.

    C = 4 · √(h² + (a/2)² + (b/2)²). The yarn runs in four legs from arm to arm.

    Parameters
    ----------
    height : h, distance from the yarn on one arm to that on the other, along the shaft
    arm_a : a, span of one arm from where the yarn lies on it to where it lies again
    arm_b : b, span of the other arm

    Returns
    -------
    C, the loop

    Raises
    ------
    ValueError
        A height or a span that is not above zero.

    Notes
    -----
    Valid for arms at right angles. A yarn that lies in notches lies within the arm ends.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(niddy_noddy_loop(Quantity(30, "cm"), Quantity(20, "cm"), Quantity(30, "cm")))  # 4 · √(30² + 10² + 15²)
    140.0 centimeter
    """
    require_within(ABOVE_ZERO, "The height", height)
    require_within(ABOVE_ZERO, "Both arms must have a span.", arm_a, arm_b)
    return 4 * np.sqrt(height**2 + (arm_a / 2) ** 2 + (arm_b / 2) ** 2)


@calculation
def loop_in_use(rated: Length | None = None, measured: Length | None = None, from_arms: Length | None = None) -> Length:
    """Loop of a reel that the planner uses.

    C = measured, else from arms, else rated. Your own measurement beats arithmetic, and arithmetic on the real reel
    beats the maker's figure.

    Parameters
    ----------
    rated : the loop that the maker states
    measured : the loop measured with a cord
    from_arms : the loop from height and arms

    Returns
    -------
    C, the loop in use

    Raises
    ------
    ValueError
        None of the three is known, or the loop in use is not above zero.

    Notes
    -----
    Valid for three figures of the same reel.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(loop_in_use(rated=Quantity(1.8, "m"), measured=Quantity(1.83, "m")))
    1.83 meter
    """
    _, loop = _best_known(rated, measured, from_arms)
    return loop


@calculation
def loop_basis(rated: Length | None = None, measured: Length | None = None, from_arms: Length | None = None) -> str:
    """Where the loop in use comes from.

    basis = the first known of measured, from arms, rated. A length is no better than the loop it rests on, so its
    origin is stated.

    Parameters
    ----------
    rated : the loop that the maker states
    measured : the loop measured with a cord
    from_arms : the loop from height and arms

    Returns
    -------
    "measured with a cord", "from height and arms" or "rated"

    Raises
    ------
    ValueError
        None of the three is known, or the loop in use is not above zero.

    Notes
    -----
    Valid for three figures of the same reel.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(loop_basis(rated=Quantity(1.8, "m")))
    rated
    """
    basis, loop = _best_known(rated, measured, from_arms)
    return np.full(loop.shape, basis, dtype=object) if np.ndim(loop.magnitude) else basis


def _best_known(rated, measured, from_arms):
    ranking = ((MEASURED, measured), (FROM_ARMS, from_arms), (RATED, rated))
    known = [(basis, loop) for basis, loop in ranking if loop is not None]
    require(len(known) > 0, "The loop is not known: state it, measure it, or give the arms.")
    basis, loop = known[0]
    require_within(ABOVE_ZERO, "The loop must have a length.", loop)
    return basis, loop


@calculation
def relative_tolerance(tolerance: Length, loop: Length) -> Ratio:
    """Tolerance of a loop as a share of it.

    t = u / C. The same relative uncertainty enters every length wound on the reel.

    Parameters
    ----------
    tolerance : u, how far the loop may be off, to either side
    loop : C, the loop

    Returns
    -------
    t, a share

    Raises
    ------
    ValueError
        A negative tolerance, or a loop of no length.

    Notes
    -----
    Valid for a tolerance that is small beside the loop.

    References
    ----------
    Relative uncertainty as in JCGM 100, 5.1.6 (from memory).

    Examples
    --------
    >>> print(relative_tolerance(Quantity(1, "cm"), Quantity(2, "m")))
    0.005
    """
    require_within(NOT_NEGATIVE, "The tolerance", tolerance)
    require_within(ABOVE_ZERO, "The loop must have a length.", loop)
    return (tolerance / loop).m_as("")


@calculation
def hundred_wraps_tolerance(tolerance: Length) -> Length:
    """Tolerance of the length of a hundred wraps.

    U = 100 · u. The loop is off by the same amount in every wrap, so the errors add and do not cancel.

    Parameters
    ----------
    tolerance : u, how far the loop may be off, to either side

    Returns
    -------
    U, a length

    Raises
    ------
    ValueError
        A negative tolerance.

    Notes
    -----
    Valid for wraps counted without error.

    References
    ----------
    Fully correlated errors add: JCGM 100, 5.2.2 (from memory).

    Examples
    --------
    >>> print(hundred_wraps_tolerance(Quantity(1, "cm")).to("m"))
    1.0 meter
    """
    require_within(NOT_NEGATIVE, "The tolerance", tolerance)
    return 100 * tolerance


@calculation
def misread_turns(turns: Ratio, measured: Length) -> Ratio:
    """How far the turns of a cord may be misread, as a share of them.

    e = 1 / (2 · k · n), k = 4 for quarter turns, 10 for tenths. Whoever reads 6.75 turns has not found them to a
    hundredth. Whole turns are taken as marked on the cord, which is measured then, and other parts as read more finely.

    Parameters
    ----------
    turns : n, turns that the cord makes
    measured : the loop that is measured by it

    Returns
    -------
    e, a share

    Raises
    ------
    ValueError
        A number of turns or a loop that is not above zero.

    Notes
    -----
    Valid for turns that were read to the parts in which they are stated.

    References
    ----------
    JCGM 100, F.2.2.1, the resolution of an indication (from memory). Quarters and tenths: common practice, no source.

    Examples
    --------
    >>> print(misread_turns(6.25, Quantity(1.6, "m")))  # an eighth of a turn in 6.25
    0.02
    """
    require_within(ABOVE_ZERO, "The cord must make at least part of a turn.", turns)
    require_within(ABOVE_ZERO, "The loop must have a length.", measured)
    is_whole, is_quarter, is_tenth = (
        np.abs(turns * parts - np.round(turns * parts)) < HAIR for parts in (1, QUARTERS, TENTHS)
    )
    parts = np.select([is_whole, is_quarter, is_tenth], [np.inf, QUARTERS, TENTHS], np.inf)
    return 1 / (2 * parts * turns) * np.ones(np.shape(measured.magnitude))[()]


@calculation
def loop_uncertainty(
    loop: Length, tolerance: Length | None = None, misread: Ratio | None = None, from_arms: Length | None = None
) -> Length:
    """Standard uncertainty of a loop.

    u = t / √3. Without a tolerance t = C · max(0.005, e) by a cord, C · 0.005 by its arms, and C · 0.02 as rated. A
    "give or take" becomes the measure in which uncertainties add up.

    Parameters
    ----------
    loop : C, the loop
    tolerance : t, how far the loop may be off, to either side
    misread : e, how far the turns of its cord may be misread, as a share of them
    from_arms : the loop from height and arms

    Returns
    -------
    u, a length

    Raises
    ------
    ValueError
        A loop of no length, or a negative tolerance or share.

    Notes
    -----
    Valid for limits within which no loop is likelier than another.

    References
    ----------
    JCGM 100, 4.3.7 (from memory). A measured loop within 0.5 percent, a rated one within 2: common practice, no source.

    Examples
    --------
    >>> print(round(loop_uncertainty(Quantity(2, "m"), tolerance=Quantity(3, "cm")), 2))  # √3
    1.73 centimeter
    """
    require_numbers(from_arms)
    require_within(ABOVE_ZERO, "The loop must have a length.", loop)
    require_within(NOT_NEGATIVE, "What is misread", 0.0 if misread is None else misread)
    is_rated = misread is None and from_arms is None
    usual = AS_RATED if is_rated else np.maximum(USUAL_TOLERANCE, 0.0 if misread is None else misread)
    limit = usual * loop if tolerance is None else tolerance
    require_within(NOT_NEGATIVE, "The tolerance", limit)
    return limit / np.sqrt(3)
