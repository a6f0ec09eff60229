"""What twist does to a yarn: the lie of its fibers and strands, and the length it costs.

A fiber at the surface and a strand in a ply run along a screw. Unroll the screw and it is
the long side of a right triangle, so angle and lost length are geometry. Real yarns give
way and slip: a sample, measured before and after, beats all of this.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require
from workbookgen.units import Angle, Length, PerLength, Quantity, Ratio

NO_LENGTH = Quantity(0.0, "m")
NO_TWIST = Quantity(0.0, "1/m")
STEEPEST = np.pi / 3
MOST_STRANDS = 12


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
    Valid for a round yarn, its fibers lying along a screw of even pitch.

    References
    ----------
    Geometry. What is soft and what is hard: common practice, no source.
    """
    _require_screw(diameter, twist, "The diameter must be above zero.")
    return Quantity(np.degrees(np.arctan(_turn_over_rise(diameter, twist))), "degree")


@calculation
def turns_for_angle(angle: Angle, diameter: Length) -> PerLength:
    """Twist that gives the fibers at the surface a wanted angle.

    T = tan β / (π · d). The same screw, asked the other way.

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
        An angle outside 0 to 60 degrees, or a diameter that is not above zero.

    Notes
    -----
    Valid for a round yarn, its fibers lying along a screw of even pitch.

    References
    ----------
    Geometry.
    """
    require((angle > 0) & (angle < STEEPEST), "The angle lies above 0 and under 60 degrees.")
    require(diameter > NO_LENGTH, "The diameter must be above zero.")
    return np.tan(angle) / (np.pi * diameter)


@calculation
def retraction(angle: Angle) -> Ratio:
    """Share of its length that a single loses by its own twist.

    c = (sec β - 1) / (sec β + 1), since the fibers' mean path is (1 + sec β) / 2. Those in
    the core run straight, those at the surface farthest.

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
    """
    require((angle >= 0) & (angle < STEEPEST), "The angle lies from 0 to under 60 degrees.")
    secant = 1 / np.cos(angle)
    return (secant - 1) / (secant + 1)


@calculation
def retraction_by_twist(diameter: Length, twist: PerLength) -> Ratio:
    """Share of its length that a single has lost by its twist.

    k = (s - 1) / (s + 1), s = √(1 + (π · d · T)²). The retraction of the surface angle that this twist gives.

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
        A diameter that is not above zero, a negative twist, or one so high that the angle is 60 degrees and more.

    Notes
    -----
    Valid for a round yarn of even packing, closely up to an angle of about 40 degrees.

    References
    ----------
    Hearle, Grosberg and Backer, Structural Mechanics of Fibers, Yarns, and Fabrics (from memory); geometry.
    """
    angle = surface_angle(diameter, twist)
    require(angle.m_as("radian") < STEEPEST, "The twist is too much for a yarn so thick: its surface would be steeper than any yarn's.")
    return retraction(angle)


@calculation
def retraction_left(diameter: Length, singles_twist: PerLength, ply_twist: PerLength) -> Ratio:
    """Share of its length that a single has lost by the twist that plying leaves in it.

    k' = k(|T - P|). Plying against the singles takes about a turn out of them for each turn of the ply.

    Parameters
    ----------
    diameter : d, diameter of the single
    singles_twist : T, its twist before plying
    ply_twist : P, twist of the ply, the other way round

    Returns
    -------
    k', lost length over the length before twisting

    Raises
    ------
    ValueError
        A diameter that is not above zero, a negative twist, or one so high that the angle is 60 degrees and more.

    Notes
    -----
    Valid for singles and ply of opposite directions.

    References
    ----------
    Geometry; that the twist left is the difference: common practice, no source.
    """
    require((singles_twist >= NO_TWIST) & (ply_twist >= NO_TWIST), "The twist cannot be negative.")
    return retraction_by_twist(diameter, np.abs(singles_twist - ply_twist))


@calculation
def ply_take_up(before: Ratio, left: Ratio, ratio: Ratio) -> Ratio:
    """Share of the singles' length that plying takes.

    c = 1 - (1 - k') / (1 - k) / m. The strand runs a longer way round, but it has grown by the twist that it lost: below
    zero it has grown by more.

    Parameters
    ----------
    before : k, what the single had lost by its twist before plying
    left : k', what it has still lost afterwards
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
    Valid for round strands that slip freely; about 1 to 6 per cent in an ordinary ply (common practice). A sample beats it.

    References
    ----------
    Geometry, as in an abstract of the Journal of the Textile Machinery Society of Japan (read).
    """
    require((before >= 0) & (before < 1) & (left >= 0) & (left < 1), "What a single has lost lies from 0 to under 1.")
    return 1 - (1 - left) / (1 - before) * (1 - take_up(ratio))


@calculation
def ply_path(diameter: Length, strands: Ratio) -> Length:
    """Diameter of the screw on which the strands of a ply run.

    D = d / sin(π / n). The middles of n round strands that touch in a ring lie on it.

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
        A diameter that is not above zero, or strands that are no whole number from 2 to 12.

    Notes
    -----
    Valid for equal round strands with none in the core; that holds for 2 to 4, seldom above.

    References
    ----------
    Geometry.
    """
    require(diameter > NO_LENGTH, "The diameter must be above zero.")
    require_strands(strands)
    return diameter / np.sin(np.pi / strands)


@calculation
def ply_ratio(path: Length, twist: PerLength) -> Ratio:
    """Length of strand in one length of ply.

    m = √(1 + (π · D · T)²). The strand runs round the axis, the ply along it.

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
    Valid for strands that do not stretch or untwist as they are plied.

    References
    ----------
    Geometry.
    """
    _require_screw(path, twist, "The path of the strands must have a diameter.")
    return np.sqrt(1 + _turn_over_rise(path, twist) ** 2)


@calculation
def take_up(ratio: Ratio) -> Ratio:
    """Share of its length that a strand loses by its way round in the ply.

    c = 1 - 1 / m. It is told of the length before plying, as everywhere here.

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
    Valid for any way in which the ratio was found, by geometry or by measuring.

    References
    ----------
    Definition of the take-up; some books tell it of the plied length instead.
    """
    require(ratio >= 1, "A length of ply holds at least its own length of strand: give 1 or more.")
    return 1 - 1 / ratio


@calculation
def take_up_in_use(expected: Ratio | None = None, sample: Ratio | None = None) -> Ratio:
    """Take-up to reckon with.

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
        Neither is known, or a take-up of 1 and more.

    Notes
    -----
    Valid for a sample plied as the yarn will be.

    References
    ----------
    Common practice, no source.
    """
    known = expected if sample is None else sample
    require(known is not None, "Give the take-up of a sample, or what geometry expects.")
    require(known < 1, "The take-up lies under 1.")
    return known


@calculation
def feed(take_up: Ratio) -> Ratio:
    """Length of a strand in one length of yarn.

    m = 1 / (1 - c). What a design reckons with.

    Parameters
    ----------
    take_up : c, share of the strand's length that plying takes; below zero where it grows

    Returns
    -------
    m, a number

    Raises
    ------
    ValueError
        A take-up of 1 and more.

    Notes
    -----
    Valid for take-up told of the length before plying, as everywhere here.

    References
    ----------
    Definition of the take-up.
    """
    require(take_up < 1, "The take-up lies under 1.")
    return 1 / (1 - take_up)


def require_strands(strands) -> None:
    """Refuse what is no number of strands that a ring can hold."""
    require(
        (strands >= 2) & (strands <= MOST_STRANDS) & (strands % 1 == 0),
        f"The number of strands is a whole number from 2 to {MOST_STRANDS}.",
    )


def _require_screw(diameter, twist, sentence) -> None:
    require(diameter > NO_LENGTH, sentence)
    require(twist >= NO_TWIST, "The twist cannot be negative.")


def _turn_over_rise(diameter, twist):
    """How far round a screw goes, over how far along."""
    return np.pi * (diameter * twist).m_as("")
