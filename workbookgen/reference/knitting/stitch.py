"""The stitch: how many of them in an area, and how much yarn in one.

Unraveling gives the yarn in a stitch for certain. Munden's relation gives it from the gauge alone, since relaxed
plain knitting always has the same shape, larger or smaller.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, require_within
from workbookgen.units import Length, LinearDensity, PerArea, PerLength, Ratio

# Munden's constant of stitch density in plain wool knitting, by state of relaxation.
MUNDEN = {"dry relaxed": 19.0, "wet relaxed": 21.6, "fully relaxed": 23.1}


@calculation
def stitch_length(length: Length, stitches: Ratio) -> Length:
    """Length of yarn in one stitch, by unraveling.

    ℓ = L / k. Unravel counted stitches and measure their yarn, pulled straight.

    Parameters
    ----------
    length : L, length of the unraveled yarn
    stitches : k, number of stitches it made

    Returns
    -------
    ℓ, a length

    Raises
    ------
    ValueError
        A length or a number of stitches that is not above zero.

    Notes
    -----
    Valid for stitches of one kind; more of them give a better figure.

    References
    ----------
    Definition of the stitch length.

    Examples
    --------
    >>> print(stitch_length(Quantity(50, "cm"), 40))
    1.25 centimeter
    """
    require_within(ABOVE_ZERO, "The unraveled yarn must have a length.", length)
    require_within(ABOVE_ZERO, "The number of stitches", stitches)
    return length / stitches


@calculation
def munden_stitch_length(stitch_density: PerArea, constant: Ratio) -> Length:
    """Length of yarn in one stitch, by Munden's relation.

    ℓ = √(k / S), since S = k / ℓ². Relaxed plain knitting always has the same shape, larger or smaller.

    Parameters
    ----------
    stitch_density : S, stitches in an area
    constant : k, 19.0 dry relaxed, 21.6 wet relaxed, 23.1 fully relaxed

    Returns
    -------
    ℓ, a length

    Raises
    ------
    ValueError
        A stitch density or a constant that is not above zero.

    Notes
    -----
    Valid for washed stocking stitch in wool, to 10 or 15 percent by hand; not for rib, garter,
    lace or cables.

    References
    ----------
    Munden, 1959, for 19.0 and 21.6 (from memory); Knapton and others, 1968, for 23.1, its factors
    5.5 and 4.2 in public exam paper GATE TF 2015, Q54 (read).

    Examples
    --------
    >>> print(munden_stitch_length(Quantity(19, "1/cm^2"), 19.0))
    1.0 centimeter
    """
    require_stitch_density(stitch_density)
    require_within(ABOVE_ZERO, "Munden's constant", constant)
    return np.sqrt(constant / stitch_density)


@calculation
def stitch_length_in_use(counted: Length | None = None, munden: Length | None = None) -> Length:
    """Length of yarn in one stitch to use.

    ℓ = counted, or else by Munden's relation. Unraveled yarn beats a rule.

    Parameters
    ----------
    counted : length of a stitch, by unraveling
    munden : length of a stitch, by Munden's relation

    Returns
    -------
    ℓ, a length

    Raises
    ------
    ValueError
        Neither is known, or the length in use is not above zero.

    Notes
    -----
    Valid for two figures of the same swatch.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(stitch_length_in_use(counted=Quantity(1.25, "cm"), munden=Quantity(1.2, "cm")))
    1.25 centimeter
    """
    length = munden if counted is None else counted
    require(length is not None, "Unravel some stitches, or give the gauge of plain knitting and its state.")
    require_stitch_length(length)
    return length


@calculation
def stitch_density(stitches: PerLength, rows: PerLength) -> PerArea:
    """Stitches in an area.

    S = w · c. Both gauges of a swatch, multiplied.

    Parameters
    ----------
    stitches : w, stitches in a length, side by side
    rows : c, rows in a length, one above the other

    Returns
    -------
    S, a number per area

    Raises
    ------
    ValueError
        A gauge that is not above zero.

    Notes
    -----
    Valid for a swatch that lies flat, washed and dry.

    References
    ----------
    Definition of the stitch density.

    Examples
    --------
    >>> print(stitch_density(Quantity(2, "1/cm"), Quantity(3, "1/cm")))
    6 / centimeter ** 2
    """
    require_within(ABOVE_ZERO, "The stitch gauge", stitches)
    require_within(ABOVE_ZERO, "The row gauge", rows)
    return stitches * rows


@calculation
def tightness(linear_density: LinearDensity, stitch_length: Length) -> Ratio:
    """Tightness factor of plain knitting.

    K = √T / ℓ, T in tex, ℓ in millimeters. It goes with the share of the fabric that the yarn covers.

    Parameters
    ----------
    linear_density : T, linear density of the yarn
    stitch_length : ℓ, yarn in one stitch

    Returns
    -------
    K, a number; plain knitting has about 1.3 to 1.5

    Raises
    ------
    ValueError
        A linear density or a stitch length that is not above zero.

    Notes
    -----
    Valid for plain knitting; compare yarns of one kind only.

    References
    ----------
    Lecture notes on knitting science (read).

    Examples
    --------
    >>> print(tightness(Quantity(400, "tex"), Quantity(16, "mm")))
    1.25
    """
    require_within(ABOVE_ZERO, "The linear density", linear_density)
    require_stitch_length(stitch_length)
    return np.sqrt(linear_density.m_as("tex")) / stitch_length.m_as("millimeter")


def require_stitch_density(stitch_density: PerArea) -> None:
    """Refuse what is not a number of stitches in an area."""
    require_within(ABOVE_ZERO, "The stitch density", stitch_density)


def require_stitch_length(stitch_length: Length) -> None:
    """Refuse what is not the length of a stitch."""
    require_within(ABOVE_ZERO, "The stitch must have a length.", stitch_length)
