"""The loop of a crowded reel: each layer of yarn lies around the one below and is longer.

Some tenths of a percent for a fine yarn wound wide, one or two for a thick one wound narrow, more when a reel is
filled. The path turns through a certain angle on its way around; a layer one diameter farther out is longer by that
angle times the diameter.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require, whole_for
from workbookgen.reference.limits import ABOVE_ZERO, AT_LEAST_ONE, SOME_PART, require_within
from workbookgen.units import Angle, Length, Quantity, Ratio

MOST_LAYERS = 1000  # with more, a share of the last one is lost among the digits of the others


@calculation
def layers_wound(wraps: Ratio, diameter: Length, width: Length) -> Ratio:
    """Layers of yarn on a reel.

    k = n · d / b, rounded up. Wraps fill the width side by side, then they climb.

    Parameters
    ----------
    wraps : n, wraps on the reel
    diameter : d, diameter of the yarn as it lies
    width : b, width of the winding

    Returns
    -------
    k, a whole number

    Raises
    ------
    ValueError
        A number of wraps, a diameter or a width that is not above zero.

    Notes
    -----
    Valid for wraps laid side by side; crossed winding builds higher.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(layers_wound(100, Quantity(2, "mm"), Quantity(50, "mm")))
    4.0
    """
    require_within(ABOVE_ZERO, "There must be some wraps.", wraps)
    require_within(ABOVE_ZERO, "The yarn must have a diameter.", diameter)
    require_within(ABOVE_ZERO, "The winding must have a width.", width)
    return whole_for((wraps * diameter / width).m_as(""))


@calculation
def last_layer(wraps: Ratio, diameter: Length, width: Length, layers: Ratio) -> Ratio:
    """Share of the last layer on a reel that is filled.

    p = n · d / b - (k - 1), but not above 1. All layers below it are full.

    Parameters
    ----------
    wraps : n, wraps on the reel
    diameter : d, diameter of the yarn as it lies
    width : b, width of the winding
    layers : k, layers, those begun among them

    Returns
    -------
    p, a share

    Raises
    ------
    ValueError
        A number of wraps, a diameter or a width that is not above zero, less than one layer, a thousand or more, or
        more layers than the wraps begin.

    Notes
    -----
    Valid for wraps laid side by side.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(round(last_layer(110, Quantity(2, "mm"), Quantity(50, "mm"), layers=5), 6))
    0.4
    """
    require_within(ABOVE_ZERO, "There must be some wraps.", wraps)
    require_within(ABOVE_ZERO, "The yarn must have a diameter.", diameter)
    require_within(ABOVE_ZERO, "The winding must have a width.", width)
    require_within(AT_LEAST_ONE, "There is at least one layer.", layers)
    require(layers < MOST_LAYERS, "No reel holds a thousand layers.")
    in_full_layers = (layers - 1) * (width / diameter).m_as("")
    require(in_full_layers < wraps, "So few wraps do not begin so many layers.")
    return np.minimum((wraps - in_full_layers) * (diameter / width).m_as(""), 1.0)


@calculation
def turning(height: Length | None = None, arm_a: Length | None = None, arm_b: Length | None = None) -> Angle:
    """Angle through which the path turns on its way around a reel.

    θ = 2 π around a plain frame; around a niddy-noddy θ = 2 (π - φa) + 2 (π - φb), cos φa = (h² + a²/4 - b²/4) / ℓ², ℓ²
    = h² + a²/4 + b²/4. The yarn turns sharply over each arm end.

    Parameters
    ----------
    height : h, distance between a niddy-noddy's crossed arms; a plain frame has none
    arm_a : a, span of one arm from where the yarn lies on it to where it lies again
    arm_b : b, span of the other arm

    Returns
    -------
    θ, an angle

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
    >>> print(round(turning().to("degree")))
    360 degree
    """
    if height is None or arm_a is None or arm_b is None:
        return Quantity(2 * np.pi, "radian")
    require_within(ABOVE_ZERO, "The height", height)
    require_within(ABOVE_ZERO, "Both arms must have a span.", arm_a, arm_b)
    # By sine and cosine, each times ℓ²: near a straight line a cosine alone leaves half its digits.
    at_a, at_b = (
        np.arctan2(
            (other * np.sqrt(height**2 + one**2 / 4)).m_as("m^2"), (height**2 + one**2 / 4 - other**2 / 4).m_as("m^2")
        )
        for one, other in ((arm_a, arm_b), (arm_b, arm_a))
    )
    return Quantity(2 * (np.pi - at_a) + 2 * (np.pi - at_b), "radian")


@calculation
def mean_loop(loop: Length, turning: Angle, diameter: Length, layers: Ratio, last: Ratio = 1.0) -> Length:
    """Mean loop over all wraps.

    C̄ = C + θ · d · (k - 1) · (k - 2 + 2 p) / (2 · (k - 1 + p)), with a full last layer C + θ · d · (k - 1) / 2. Each
    layer is longer by as much as the one before, and the longest is seldom full.

    Parameters
    ----------
    loop : C, loop of the bare reel
    turning : θ, angle through which the path turns on its way around
    diameter : d, diameter of the yarn as it lies
    layers : k, number of layers, the last one among them
    last : p, share of the last layer that is filled

    Returns
    -------
    C̄, a length

    Raises
    ------
    ValueError
        A loop, an angle or a diameter that is not above zero, less than one layer, or a share
        that is not above 0 and up to 1.

    Notes
    -----
    Valid for layers that lie on each other without sinking in.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(round(mean_loop(Quantity(1.5, "m"), Quantity(360, "degree"), Quantity(2, "mm"), layers=4), 3))
    1.519 meter
    """
    require_within(ABOVE_ZERO, "The loop must have a length.", loop)
    require_within(ABOVE_ZERO, "The path must turn.", turning)
    require_within(ABOVE_ZERO, "The yarn must have a diameter.", diameter)
    require_within(AT_LEAST_ONE, "There is at least one layer.", layers)
    require_within(SOME_PART, "The share of the last layer that is filled", last)
    # Full layers, longer than the first by 0, 1, ... below - 1 times what a layer adds; the last by `below` times.
    below = layers - 1
    added = (below * (below - 1) / 2 + last * below) / (below + last)
    return loop + turning * diameter * added


@calculation
def growth(mean_loop: Length, loop: Length) -> Ratio:
    """Growth of the loop.

    g = C̄ / C - 1. The share by which wraps times bare loop falls short.

    Parameters
    ----------
    mean_loop : C̄, mean loop over all layers
    loop : C, loop of the bare reel

    Returns
    -------
    g, a share

    Raises
    ------
    ValueError
        A loop of no length, or a mean loop below it.

    Notes
    -----
    Valid for one skein at a time on the reel.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(round(growth(Quantity(1.515, "m"), Quantity(1.5, "m")), 6))
    0.01
    """
    require_within(ABOVE_ZERO, "The loop must have a length.", loop)
    require(mean_loop >= loop, "Layers cannot shorten a loop.")
    return (mean_loop / loop).m_as("") - 1
