"""Bobbins that are plied together: what is on each, how many there are, and which is the shortest."""

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_applicable, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, require_within
from workbookgen.units import Grist, Length, Mass, Quantity, Ratio


@calculation
def bobbin_has(length: Length | None = None, mass: Mass | None = None, grist: Grist | None = None) -> Length:
    """Length of single on a bobbin.

    ℓ = as stated, or else m · g. It is easier to weigh a bobbin than to unwind it.

    Parameters
    ----------
    length : length as stated
    mass : m, mass of the single on it, without the bobbin
    grist : g, grist of the single

    Returns
    -------
    ℓ, a length

    Raises
    ------
    ValueError
        Neither a length nor a mass with its grist, or one that is not above zero.

    Notes
    -----
    Valid for an even single.

    References
    ----------
    Definition of the grist.

    Examples
    --------
    >>> print(bobbin_has(mass=Quantity(50, "g"), grist=Quantity(4, "m/g")))
    200 meter
    """
    if length is None:
        require(mass is not None and grist is not None, "Give the length, or the weight and the grist.")
        length = (mass * grist).to("m")
    require_within(ABOVE_ZERO, "A bobbin that is counted must have something on it.", length)
    return length


@calculation
def bobbin_lacking(length: Length | None = None, mass: Mass | None = None, has: Length | None = None) -> Ratio:
    """Whether it is unknown how long the single on a bobbin is.

    u = 0 where its length is known, else 1. Of bobbins plied together one that is not known may be the shortest.

    Parameters
    ----------
    length : length on it, as stated
    mass : mass of single on it, if that was weighed
    has : ℓ, the length that is known by either

    Returns
    -------
    u, 0 or 1

    Raises
    ------
    ValueError
        A bobbin of which nothing is stated.

    Notes
    -----
    Valid for any bobbin.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(bobbin_lacking(mass=Quantity(100, "g")))
    1.0
    """
    require_numbers(length, mass, has)
    require_applicable(length is not None or mass is not None, "State the length on the bobbin, or the mass.")
    stated = mass if length is None else length
    return (0 * np.asarray(stated.magnitude, dtype=float) + (1.0 if has is None else 0.0))[()]


@calculation
def bobbins_plied(amounts: Length, lacking: Ratio = 0.0, wrong: Ratio = 0.0) -> Ratio:
    """How many bobbins are plied together.

    n = number of bobbins. While the length on one of them is not known, neither is the ply.

    Parameters
    ----------
    amounts : ℓ, length on each bobbin; one that is not a number is blank
    lacking : number of bobbins whose length is not known yet
    wrong : number of bobbins of which something was stated that is no amount

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        No bobbin, or one of which the length is not known.

    Notes
    -----
    Valid for one bobbin per strand.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(bobbins_plied(Quantity([200, 180], "m")))
    2.0
    """
    require_numbers(lacking, wrong)
    known = _numbers(amounts)
    require(len(known) > 0, "State what is on at least one bobbin.")
    require((np.asarray(lacking) < 0.5) & (np.asarray(wrong) == 0), "The length on one of the bobbins is not known.")
    return np.full(np.broadcast(lacking, wrong).shape, float(len(known)))[()]


@calculation
def shortest_of(amounts: Length) -> Length:
    """The shortest of all bobbins.

    ℓ₁ = min ℓ. When it runs out, the ply ends.

    Parameters
    ----------
    amounts : ℓ, length on each bobbin; one that is not a number is blank

    Returns
    -------
    ℓ₁, a length

    Raises
    ------
    ValueError
        No bobbin with a length.

    Notes
    -----
    Valid for one bobbin per strand.

    References
    ----------
    Definition of the minimum.

    Examples
    --------
    >>> print(shortest_of(Quantity([200, 180], "m")))
    180.0 meter
    """
    numbers = _numbers(amounts)
    require(len(numbers) > 0, "State what is on at least one bobbin.")
    return Quantity(float(numbers.min()), amounts.units)


def _numbers(amounts) -> np.ndarray:
    values = np.ravel(np.asarray(amounts.magnitude, dtype=float))
    return values[np.isfinite(values)]
