"""A binder: a fine thread that holds a wrapped yarn together, plied on in the opposite direction."""

import numpy as np

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, NO_LINEAR_DENSITY, NOT_NEGATIVE, require_within
from workbookgen.units import Length, LinearDensity, PerLength, Ratio


@calculation
def binder_feed(core_diameter: Length, wrapper_diameter: Length, binder_diameter: Length, turns: PerLength) -> Ratio:
    """Length of binder in one length of wrapped yarn.

    m = √(1 + (π · (d₁ + 2 d₂ + d₃) · T)²). It lies over the wrapper: its center follows a circle as wide as the core,
    the wrapper on both sides, and itself.

    Parameters
    ----------
    core_diameter : d₁, diameter of the core
    wrapper_diameter : d₂, diameter of the wrapper
    binder_diameter : d₃, diameter of the binder
    turns : T, turns of the binder, per length of yarn

    Returns
    -------
    m, a plain number from 1 up

    Raises
    ------
    ValueError
        A diameter that is not above zero, or negative turns.

    Notes
    -----
    Valid for a binder that lies on the wrapper all the way. Where it sinks in between the wraps it takes less, so this
    is enough.

    References
    ----------
    Geometry of a helix.

    Examples
    --------
    >>> # √(1 + 0.75²)
    >>> print(round(binder_feed(Quantity(1, "mm"), Quantity(0.9, "mm"), Quantity(0.2, "mm"),
    ...     Quantity(250 / np.pi, "1/m")), 6))
    1.25
    """
    for each in (core_diameter, wrapper_diameter, binder_diameter):
        require_within(ABOVE_ZERO, "The thickness", each)
    require_within(NOT_NEGATIVE, "Turns cannot be below zero.", turns)
    round_it = (np.pi * (core_diameter + 2 * wrapper_diameter + binder_diameter) * turns).m_as("")
    return np.sqrt(1 + round_it * round_it)


@calculation
def turns_left(turns: PerLength, binder_turns: PerLength) -> PerLength:
    """Turns left in a wrapper once the binder is on.

    T = T₂ - T₃, but not below zero. The binder goes around the other way, and each of its turns takes one out of the
    wrapper.

    Parameters
    ----------
    turns : T₂, turns of the wrapper before
    binder_turns : T₃, turns of the binder

    Returns
    -------
    T, turns per length

    Raises
    ------
    ValueError
        Turns below zero.

    Notes
    -----
    Valid for a binder plied on in the opposite direction, if the yarn stays as long as its core.

    References
    ----------
    Twists of two directions subtract; Geometry.

    Examples
    --------
    >>> print(turns_left(Quantity(300, "1/m"), Quantity(100, "1/m")))
    200 / meter
    """
    require_within(NOT_NEGATIVE, "Turns cannot be below zero.", turns, binder_turns)
    return np.maximum(turns - binder_turns, 0 * turns)


@calculation
def bound_density(
    wrapped: LinearDensity, bound: LinearDensity | None = None, binder: LinearDensity | None = None
) -> LinearDensity:
    """Linear density of a wrapped yarn with its binder.

    R = R₁ + m · t₃. Without a binder it is the wrapped yarn's own.

    Parameters
    ----------
    wrapped : R₁, linear density of core and wrapper together
    bound : m · t₃, what the binder adds
    binder : t₃, linear density of the binder, if there is one

    Returns
    -------
    R, a mass per length

    Raises
    ------
    ValueError
        A linear density that is not above zero, or a binder whose addition is not known.

    Notes
    -----
    Valid for a core that stays straight.

    References
    ----------
    Definition of the linear density.

    Examples
    --------
    >>> print(bound_density(Quantity(400, "tex"), bound=Quantity(20, "tex"), binder=Quantity(18, "tex")))
    420 tex
    """
    for each in (wrapped, bound, binder):
        require(each is None or each > NO_LINEAR_DENSITY, "The linear density must be above zero.")
    require(binder is None or bound is not None, "It is not known what the binder adds: give its wraps and its turns.")
    return wrapped if bound is None else wrapped + bound
