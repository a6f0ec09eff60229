"""What to have of a yarn of several strands, reckoned as if all that is still to come were got anew.

What is there of a strand and what is added to it come out finer or thicker together, and are at most as uncertain as if
all of it were still to be got. A strand of which there is plenty does not run out, and makes no other one less certain.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, quotient, require, require_numbers
from workbookgen.reference.limits import NOT_NEGATIVE, PART, require_within
from workbookgen.units import Length, Quantity, Ratio


@calculation
def anew_square(
    weight: Ratio,
    u_scale: Ratio,
    in_skeins: Length,
    skeins_doubt: Length,
    square_1: Ratio,
    come_1: Length,
    u_come_1: Length,
    square_2: Ratio | None = None,
    come_2: Length | None = None,
    u_come_2: Length | None = None,
    square_3: Ratio | None = None,
    come_3: Length | None = None,
    u_come_3: Length | None = None,
    square_4: Ratio | None = None,
    come_4: Length | None = None,
    u_come_4: Length | None = None,
) -> Ratio:
    """Squared relative uncertainty of yarn, none of whose strands is known better than if it were got anew.

    Q = max(q, (u / C)²) of all strands + (w · u_S / S)² + ((1 - w) · r)². A strand that lasts for no more than it is
    uncertain counts 1.

    Parameters
    ----------
    weight : w, weight of the skeins against the plan
    u_scale : r, relative uncertainty of the scale
    in_skeins : S, length in skeins
    skeins_doubt : u_S, its standard uncertainty
    square_1, square_2, square_3, square_4 : q, squared relative uncertainty of more of each strand
    come_1, come_2, come_3, come_4 : C, length for which each strand lasts
    u_come_1, u_come_2, u_come_3, u_come_4 : u, its standard uncertainty, if it is not that of another strand

    Returns
    -------
    Q, a share squared

    Raises
    ------
    ValueError
        A negative square, uncertainty or length in skeins, or a weight outside 0 to 1.

    Notes
    -----
    Valid for strands that do not replace each other.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).

    Examples
    --------
    >>> none = Quantity(0, "m")
    >>> print(round(anew_square(0, 0, none, none, 0.01, Quantity(100, "m"), Quantity(20, "m")), 9))
    0.04
    """
    comes, doubts = (come_1, come_2, come_3, come_4), (u_come_1, u_come_2, u_come_3, u_come_4)
    squares = [each for each in (square_1, square_2, square_3, square_4) if each is not None]
    known = [(come, doubt) for come, doubt in zip(comes, doubts, strict=True) if come is not None and doubt is not None]
    require_numbers(weight, u_scale, in_skeins, skeins_doubt, *squares, *(each for pair in known for each in pair))
    require_within(NOT_NEGATIVE, "A squared uncertainty", *squares)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_scale, skeins_doubt, *(doubt for _, doubt in known))
    require_within(NOT_NEGATIVE, "The length in skeins", in_skeins)
    require_within(PART, "The weight", weight)
    largest = np.maximum.reduce(np.broadcast_arrays(*squares, *(_relative_square(*pair) for pair in known)))
    by_skeins = quotient(skeins_doubt.m_as("m"), in_skeins.m_as("m"))
    return (largest + np.square(weight * by_skeins) + np.square((1 - weight) * u_scale))[()]


def _relative_square(come: Length, doubt: Length):
    lasts, uncertain = come.m_as("m"), doubt.m_as("m")
    is_known = (lasts > uncertain) | (uncertain <= 0)
    return np.where(is_known, np.square(quotient(uncertain, lasts)), 1.0)


@calculation
def more_anew(
    in_skeins: Length,
    need: Length,
    to_come: Length,
    u_skeins: Length,
    u_need: Length,
    square: Ratio,
    coverage: Ratio,
    weight: Ratio,
    hold: Length,
    variation: Ratio,
    u_ball: Ratio,
) -> Length:
    """What to have besides, to be as certain as wanted, if all that is to come were got anew.

    E = (√(b² - a · (s² - z² · (u_N² + u_S²))) - b) / a - M, s = S - N, a = 1 - z² · Q, b = s - z² · k, k = max(c,
    c_b)² · ℓ / 2 + w · u_S² / S. Below zero, what is to come is enough by itself.

    Parameters
    ----------
    in_skeins : S, length in skeins
    need : N, what is needed
    to_come : M, length that is expected to come of what is there
    u_skeins : u_S, standard uncertainty of the skeins
    u_need : u_N, standard uncertainty of the need
    square : Q, squared relative uncertainty of yarn that is got anew
    coverage : z, standard uncertainties needed for the certainty
    weight : w, weight of the skeins against the plan
    hold : ℓ, length in one skein or ball
    variation : c, coefficient of variation between skeins
    u_ball : c_b, relative uncertainty of one ball against the others

    Returns
    -------
    E, a length

    Raises
    ------
    ValueError
        A negative uncertainty, coverage or length in skeins, or z² · Q of 1 or more.

    Notes
    -----
    Valid for z² · Q below 1.

    References
    ----------
    JCGM 100, 5.1.2, 5.2 and F.1.2, on correlated terms (from memory), solved for the amount.

    Examples
    --------
    >>> # T - 100 = 0.5 · T is true for 200, of which 50 are there.
    >>> none = Quantity(0, "m")
    >>> print(round(more_anew(none, Quantity(100, "m"), Quantity(50, "m"), none, none, square=0.25, coverage=1,
    ...     weight=0, hold=Quantity(100, "m"), variation=0, u_ball=0), 6))
    150.0 meter
    """
    require_numbers(in_skeins, need, to_come, u_skeins, u_need, square, coverage, weight, hold, variation, u_ball)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_skeins, u_need, square, variation, u_ball)
    require_within(NOT_NEGATIVE, "The coverage", coverage)
    require_within(NOT_NEGATIVE, "The length in skeins", in_skeins)
    skeins, doubt = in_skeins.m_as("m"), u_skeins.m_as("m")
    z2 = np.square(coverage)
    a, spare = 1 - z2 * square, skeins - need.m_as("m")
    require(a > 0, "No amount is that certain: measure better, or ask for less certainty.")
    by_skeins = quotient(weight * np.square(doubt), skeins)
    b = spare - z2 * (np.square(np.maximum(variation, u_ball)) * hold.m_as("m") / 2 + by_skeins)
    squares = np.square(u_need.m_as("m")) + np.square(doubt)
    root = np.sqrt(np.maximum(0.0, np.square(b) - a * (np.square(spare) - z2 * squares)))
    return Quantity(((root - b) / a - to_come.m_as("m"))[()], "m")


@calculation
def no_more_than_anew(joint: Length, anew: Length | None = None, share: Ratio | None = None) -> Length:
    """What to have besides, and no more than if all that is to come were got anew.

    E = min(E_j, E_a), or E_j where E_a is not known or not above zero, and of a yarn of one strand. Of strands that
    last equally long, one ends before it is expected to, and what is there is then worth less than new.

    Parameters
    ----------
    joint : E_j, with all strands taken together
    anew : E_a, if all that is to come were got anew
    share : share of its second strand in the yarn's weight, if it has one

    Returns
    -------
    E, a length

    Raises
    ------
    ValueError
        A negative length.

    Notes
    -----
    Valid for one project.

    References
    ----------
    Definition of a selection.

    Examples
    --------
    >>> print(no_more_than_anew(Quantity(120, "m"), Quantity(90, "m"), 0.5))
    90 meter
    """
    require_numbers(joint, anew, share)
    require_within(NOT_NEGATIVE, "What to have besides", joint)
    if anew is None or share is None:
        return joint
    first, second = joint.m_as("m"), anew.m_as("m")
    return Quantity(np.where(second > 0, np.minimum(first, second), first)[()], "m").to(joint.units)
