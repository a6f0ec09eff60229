"""What twist does to a single: the lie of its fibers, and the length it costs.

A fiber at the surface runs along a screw. Unroll the screw and it is the long side of a right
triangle, so angle and lost length are geometry. Real yarns yield and slip: a sample, measured
before and after, beats all of this.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, Limits, require_within
from workbookgen.units import Angle, Length, PerLength, Quantity, Ratio

STEEPEST = np.pi / 3
SLANT, ANY_SLANT = Limits(above=0, below=STEEPEST), Limits(least=0, below=STEEPEST)


@calculation
def surface_angle(diameter: Length, twist: PerLength) -> Angle:
    """Angle of the fibers at the surface of a yarn.

    tan β = π · d · T. About 10 to 20 degrees is soft, 25 to 35 is hard.

    Parameters
    ----------
    diameter : d, diameter of the yarn
    twist : T, its twist

    Returns
    -------
    β, an angle to the axis of the yarn

    Raises
    ------
    ValueError
        A diameter that is not above zero, or a negative twist.

    Notes
    -----
    Valid for a round yarn with its fibers along a screw of even pitch.

    References
    ----------
    Geometry. What is soft and what is hard: common practice, no source.

    Examples
    --------
    >>> print(round(surface_angle(Quantity(1, "mm"), Quantity(1000 / np.pi, "1/m")), 6))
    45.0 degree
    """
    require_screw(diameter, twist, "The diameter must be above zero.")
    return Quantity(np.degrees(np.arctan(turn_over_rise(diameter, twist))), "degree")


@calculation
def turns_for_angle(angle: Angle, diameter: Length) -> PerLength:
    """Twist that gives the fibers at the surface a wanted angle.

    T = tan β / (π · d). The same screw, solved for its pitch.

    Parameters
    ----------
    angle : β, angle wanted, above 0 and under 60 degrees
    diameter : d, diameter of the yarn

    Returns
    -------
    T, a number per length

    Raises
    ------
    ValueError
        An angle that is not above 0 and under 60 degrees, or a diameter that is not above zero.

    Notes
    -----
    Valid for a round yarn with its fibers along a screw of even pitch.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(round(turns_for_angle(Quantity(45, "degree"), Quantity(1, "mm")).to("1/m") * np.pi, 6))
    1000.0 / meter
    """
    require_within(SLANT, "The angle must be above 0 and under 60 degrees.", angle)
    require_within(ABOVE_ZERO, "The diameter", diameter)
    return np.tan(angle) / (np.pi * diameter)


@calculation
def retraction(angle: Angle) -> Ratio:
    """Share of its length that a single loses to its own twist.

    c = (sec β - 1) / (sec β + 1), since the fibers' mean path is (1 + sec β) / 2. Those in the core run straight,
    those at the surface take the longest way.

    Parameters
    ----------
    angle : β, angle of the fibers at the surface, from 0 to under 60 degrees

    Returns
    -------
    c, lost length over the length before twisting

    Raises
    ------
    ValueError
        An angle outside 0 to under 60 degrees.

    Notes
    -----
    Valid for a round yarn of even packing, closely up to about 40 degrees.

    References
    ----------
    Hearle, Grosberg and Backer, Structural Mechanics of Fibers, Yarns, and Fabrics (from memory).

    Examples
    --------
    >>> print(round(retraction(np.arctan(0.75)), 3))  # the secant is 5/4
    0.111
    """
    require_within(ANY_SLANT, "The angle must be from 0 to under 60 degrees.", angle)
    secant = 1 / np.cos(angle)
    return (secant - 1) / (secant + 1)


@calculation
def retraction_by_twist(diameter: Length, twist: PerLength) -> Ratio:
    """Share of its length that a single has lost to its twist.

    k = (s - 1) / (s + 1), s = √(1 + (π · d · T)²). It is the retraction at the surface angle that this twist gives.

    Parameters
    ----------
    diameter : d, diameter of the single
    twist : T, its twist

    Returns
    -------
    k, lost length over the length before twisting

    Raises
    ------
    ValueError
        A diameter that is not above zero, a negative twist, or one so high that the angle is 60 degrees or more.

    Notes
    -----
    Valid for a round yarn of even packing, closely up to an angle of about 40 degrees.

    References
    ----------
    Hearle, Grosberg and Backer, Structural Mechanics of Fibers, Yarns, and Fabrics (from memory); geometry.

    Examples
    --------
    >>> print(round(retraction_by_twist(Quantity(1, "mm"), Quantity(750 / np.pi, "1/m")), 3))
    0.111
    """
    angle = surface_angle(diameter, twist)
    require(
        angle.m_as("radian") < STEEPEST,
        "The twist is too high for such a thick yarn: no yarn has a surface that steep.",
    )
    return retraction(angle)


@calculation
def retraction_left(diameter: Length, singles_twist: PerLength, ply_twist: PerLength) -> Ratio:
    """Share of its length that a single has lost to the twist left by plying.

    k' = k(|T - P|). Plying against the singles removes about one turn from them for each turn of the ply.

    Parameters
    ----------
    diameter : d, diameter of the single
    singles_twist : T, its twist before plying
    ply_twist : P, twist of the ply, in the opposite direction

    Returns
    -------
    k', lost length over the length before twisting

    Raises
    ------
    ValueError
        A diameter that is not above zero, a negative twist, or one so high that the angle is 60 degrees or more.

    Notes
    -----
    Valid for singles and ply of opposite directions.

    References
    ----------
    Geometry; that the twist left is the difference: common practice, no source.

    Examples
    --------
    >>> print(retraction_left(Quantity(1, "mm"), Quantity(300, "1/m"), Quantity(300, "1/m")))
    0.0
    """
    require_within(NOT_NEGATIVE, "The twist", singles_twist, ply_twist)
    return retraction_by_twist(diameter, np.abs(singles_twist - ply_twist))


def require_screw(diameter: Length, twist: PerLength, sentence: str) -> None:
    """Refuse a diameter and a twist that make no screw; the sentence is about the diameter."""
    require_within(ABOVE_ZERO, sentence, diameter)
    require_within(NOT_NEGATIVE, "The twist", twist)


def turn_over_rise(diameter, twist):
    """How far around a screw goes, over how far along."""
    return np.pi * (diameter * twist).m_as("")
