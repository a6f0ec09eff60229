"""The path of the strands in a ply, and the length that it takes.

A strand runs along a screw whose middle is the axis of the ply. Unrolled, the screw is the long
side of a right triangle, so the length of strand in a length of ply is geometry."""

import numpy as np

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, AT_LEAST_ONE, LESS_THAN_ALL, UNDER_ONE, require_within
from workbookgen.reference.twist.angle import require_screw, turn_over_rise
from workbookgen.units import Length, PerLength, Ratio

MOST_STRANDS = 12


@calculation
def ply_take_up(before: Ratio, left: Ratio, ratio: Ratio) -> Ratio:
    """Share of the singles' length that plying takes.

    c = 1 - (1 - k') / (1 - k) / m. The strand takes a longer path, but it has grown through the twist that it lost:
    below zero, it has grown by more.

    Parameters
    ----------
    before : k, share that the single had lost to its twist before plying
    left : k', share still lost afterward
    ratio : m, length of strand on its screw in one length of ply, from 1 up

    Returns
    -------
    c, lost length over the length before plying

    Raises
    ------
    ValueError
        A loss outside 0 to under 1, or a ratio below 1.

    Notes
    -----
    Valid for round strands that slip freely; about 1 to 6 percent in an ordinary ply (common practice). A sample beats
    it.

    References
    ----------
    Geometry, as in an abstract of the Journal of the Textile Machinery Society of Japan (read).

    Examples
    --------
    >>> print(round(ply_take_up(0.1, 0.1, ratio=1.25), 6))
    0.2
    """
    require_within(LESS_THAN_ALL, "The share that a single has lost", before, left)
    return 1 - (1 - left) / (1 - before) * (1 - take_up(ratio))


@calculation
def ply_path(diameter: Length, strands: Ratio) -> Length:
    """Diameter of the screw on which the strands of a ply run.

    D = d / sin(π / n). The centers of n round strands that touch in a ring lie on it.

    Parameters
    ----------
    diameter : d, diameter of one strand
    strands : n, number of strands, 2 to 12

    Returns
    -------
    D, a length; 1 d for two strands, 1.155 d for three, 1.414 d for four

    Raises
    ------
    ValueError
        A diameter that is not above zero, or strands that are not a whole number from 2 to 12.

    Notes
    -----
    Valid for equal round strands with none in the core; true for 2 to 4, seldom for more.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(ply_path(Quantity(1, "mm"), 2))
    1.0 millimeter
    """
    require_within(ABOVE_ZERO, "The diameter", diameter)
    require_strands(strands)
    return diameter / np.sin(np.pi / strands)


@calculation
def ply_ratio(path: Length, twist: PerLength) -> Ratio:
    """Length of strand in one length of ply.

    m = √(1 + (π · D · T)²). The strand runs around the axis, the ply along it.

    Parameters
    ----------
    path : D, diameter of the screw on which the strands run
    twist : T, twist of the ply

    Returns
    -------
    m, a number from 1 up

    Raises
    ------
    ValueError
        A path that is not above zero, or a negative twist.

    Notes
    -----
    Valid for strands that neither stretch nor untwist in plying.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(round(ply_ratio(Quantity(1, "mm"), Quantity(750 / np.pi, "1/m")), 6))
    1.25
    """
    require_screw(path, twist, "The path of the strands must have a diameter.")
    return np.sqrt(1 + turn_over_rise(path, twist) ** 2)


@calculation
def take_up(ratio: Ratio) -> Ratio:
    """Share of its length that a strand loses to its path in the ply.

    c = 1 - 1 / m. It is a share of the length before plying, as everywhere here.

    Parameters
    ----------
    ratio : m, length of strand in one length of ply, from 1 up

    Returns
    -------
    c, lost length over the length before plying

    Raises
    ------
    ValueError
        A ratio below 1.

    Notes
    -----
    Valid for any way of finding the ratio, by geometry or by measuring.

    References
    ----------
    Definition of the take-up; some books state it as a share of the plied length.

    Examples
    --------
    >>> print(round(take_up(1.25), 6))
    0.2
    """
    require_within(AT_LEAST_ONE, "A length of ply holds at least the same length of strand: give 1 or more.", ratio)
    return 1 - 1 / ratio


@calculation
def take_up_in_use(expected: Ratio | None = None, sample: Ratio | None = None) -> Ratio:
    """Take-up to plan with.

    c = of the sample, or else as expected. A sample beats geometry.

    Parameters
    ----------
    expected : take-up by geometry
    sample : take-up measured on a sample; below zero where it grew

    Returns
    -------
    c, lost length over the length before plying

    Raises
    ------
    ValueError
        Neither is known, or a take-up of 1 or more.

    Notes
    -----
    Valid for a sample plied as the yarn will be.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(take_up_in_use(expected=0.03, sample=0.05))
    0.05
    """
    known = expected if sample is None else sample
    require(known is not None, "Give the take-up of a sample, or what geometry expects.")
    require_within(UNDER_ONE, "The take-up", known)
    return known


@calculation
def feed(take_up: Ratio) -> Ratio:
    """Length of a strand in one length of yarn.

    m = 1 / (1 - c). It is the figure that a design uses.

    Parameters
    ----------
    take_up : c, share of the strand's length that plying takes; below zero where it grows

    Returns
    -------
    m, a number

    Raises
    ------
    ValueError
        A take-up of 1 or more.

    Notes
    -----
    Valid for take-up as a share of the length before plying, as everywhere here.

    References
    ----------
    Definition of the take-up.

    Examples
    --------
    >>> print(feed(0.2))
    1.25
    """
    require_within(UNDER_ONE, "The take-up", take_up)
    return 1 / (1 - take_up)


def require_strands(strands: Ratio) -> None:
    """Refuse what is not a number of strands that a ring can hold."""
    require(
        (strands >= 2) & (strands <= MOST_STRANDS) & (strands % 1 == 0),
        f"The number of strands is a whole number from 2 to {MOST_STRANDS}.",
    )
