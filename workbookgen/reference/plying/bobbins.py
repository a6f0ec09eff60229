"""Bobbins and cops: what one holds, and how many a yarn fills.

A bobbin is a roll of yarn around a shaft: its space, and how densely yarn lies in it, say what it
holds. Both are rough, so weighing one full bobbin beats them.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers, whole_for
from workbookgen.reference.limits import ABOVE_ZERO, AT_LEAST_ONE, COUNTED, NOT_NEGATIVE, SOME_PART, require_within
from workbookgen.reference.tolerances import NEARLY_ALL
from workbookgen.reference.words import said
from workbookgen.units import Density, Length, Mass, Ratio

SURELY_FITS = 0.85  # of a bobbin: what it holds and what the yarn will weigh are each known to about a tenth


@calculation
def bobbin_mass(outer: Length, inner: Length, height: Length, package_density: Density, fullness: Ratio = 0.9) -> Mass:
    """Mass of yarn on a bobbin or a cop.

    m = π / 4 · (D² - d²) · h · f · ρ. A ring of yarn around the shaft, with the air between its layers.

    Parameters
    ----------
    outer : D, diameter across the yarn when full
    inner : d, diameter of the bare shaft
    height : h, wound length of the shaft
    package_density : ρ, mass of yarn in its space on the bobbin, air included
    fullness : f, share of that space that is filled, above 0 and up to 1; 0.9 if not given

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A measure that is not above zero, a full bobbin no thicker than its shaft, or a fullness that is not above 0
        and up to 1.

    Notes
    -----
    Valid for straight sides; a tapered cop is less full. A package density of 0.3 to 0.45 g/cm³, and nine tenths full,
    are common practice.

    References
    ----------
    Geometry. The package density: common practice, no source.

    Examples
    --------
    >>> # π / 4 · 60 · 10 · 0.9 · 0.4
    >>> print(round(bobbin_mass(Quantity(8, "cm"), Quantity(2, "cm"), Quantity(10, "cm"),
    ...     Quantity(0.4, "g/cm^3")) / np.pi))
    54 gram
    """
    require_within(ABOVE_ZERO, "Every measure of a bobbin", inner, height)
    require(outer > inner, "A full bobbin must be thicker than its shaft.")
    require_within(ABOVE_ZERO, "The package density", package_density)
    require_within(SOME_PART, "The filled share of a bobbin", fullness)
    return (np.pi / 4 * (outer**2 - inner**2) * height * fullness * package_density).to("g")


@calculation
def bobbin_holds(weighed: Mass | None = None, estimated: Mass | None = None) -> Mass:
    """Mass on a full bobbin that the planner uses.

    m = weighed, or else estimated. Weighing a full one beats measuring it.

    Parameters
    ----------
    weighed : yarn on a bobbin that was full
    estimated : mass by the bobbin's measures

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        Neither is known, or a mass that is not above zero.

    Notes
    -----
    Valid for a bobbin filled as firmly as the weighed one.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(bobbin_holds(weighed=Quantity(110, "g"), estimated=Quantity(120, "g")))
    110 gram
    """
    mass = estimated if weighed is None else weighed
    require(mass is not None, "Give the measures of the bobbin, or weigh a full one.")
    require_within(ABOVE_ZERO, "A bobbin must hold something.", mass)
    return mass


@calculation
def bobbins_to_fill(length: Length, holds: Length, strands: Ratio) -> Ratio:
    """Bobbins that all strands of a yarn fill.

    k = n · ⌈ℓ / b⌉. Each strand needs bobbins of its own, since they are plied together.

    Parameters
    ----------
    length : ℓ, length of each strand
    holds : b, length that one bobbin holds
    strands : n, number of strands

    Returns
    -------
    k, a whole number

    Raises
    ------
    ValueError
        A negative length, a bobbin that holds nothing, or strands that are not a whole number from 1 up.

    Notes
    -----
    Valid for equal strands; ℓ / b is rounded to six decimals first.

    References
    ----------
    Definition of the quotient.

    Examples
    --------
    >>> print(bobbins_to_fill(Quantity(900, "m"), Quantity(400, "m"), strands=2))
    6.0
    """
    require_within(NOT_NEGATIVE, "A length", length)
    require_within(ABOVE_ZERO, "A bobbin must hold something.", holds)
    require_within(COUNTED, "The number of strands", strands)
    return strands * whole_for((length / holds).m_as(""))


@calculation
def filled_to(length: Length, holds: Length, strands: Ratio, bobbins: Ratio) -> Ratio:
    """How full each bobbin of singles becomes.

    s = n · ℓ / (k · b). All bobbins of a strand are filled alike.

    Parameters
    ----------
    length : ℓ, length of each strand
    holds : b, length that one bobbin holds
    strands : n, number of strands
    bobbins : k, bobbins that all strands fill

    Returns
    -------
    s, a share

    Raises
    ------
    ValueError
        A negative length, a bobbin that holds nothing, strands that are not a whole number from 1 up, or no bobbin.

    Notes
    -----
    Valid for equal strands; above 0.85 a bobbin may run over, since what it holds is known to a tenth.

    References
    ----------
    Definition of a share; that bobbins differ by a tenth: common practice, no source.

    Examples
    --------
    >>> print(filled_to(Quantity(900, "m"), Quantity(500, "m"), strands=2, bobbins=4))
    0.9
    """
    require_within(NOT_NEGATIVE, "A length", length)
    require_within(ABOVE_ZERO, "A bobbin must hold something.", holds)
    require_within(COUNTED, "The number of strands", strands)
    require_within(AT_LEAST_ONE, "There must be at least one bobbin.", bobbins)
    return (strands * length / (bobbins * holds)).m_as("")


@calculation
def plying_bobbins(
    mass: Mass, holds: Mass | None = None, plying: Mass | None = None, bought: Ratio | None = None
) -> Ratio:
    """Bobbins that the plied yarn fills.

    k = ⌈m / (1 - b) / M⌉, M the plying bobbin's, or else what the others hold. The plied yarn weighs what its singles
    weigh, and a bought thread in it.

    Parameters
    ----------
    mass : m, mass of all singles
    holds : mass that a bobbin of singles holds
    plying : mass that a plying bobbin holds, if it is a different one
    bought : b, share of the yarn's weight that is a bought thread, none if not given

    Returns
    -------
    k, a whole number

    Raises
    ------
    ValueError
        A negative mass, no bobbin at all, or one that holds nothing, or a yarn all bought.

    Notes
    -----
    Valid for plied yarn that packs as densely as its singles; what is rounded up is rounded to six decimals first.

    References
    ----------
    Definition of the quotient.

    Examples
    --------
    >>> print(plying_bobbins(Quantity(250, "g"), holds=Quantity(100, "g")))
    3.0
    """
    return whole_for(of_one_bobbin(mass, holds, plying, bought))


@calculation
def bobbin_gets(length: Length, bobbins: Ratio) -> Length:
    """Length of plied yarn on each plying bobbin.

    ℓ = L / k. All are filled equally, so none overflows.

    Parameters
    ----------
    length : L, length of the plied yarn
    bobbins : k, plying bobbins that it fills

    Returns
    -------
    ℓ, a length

    Raises
    ------
    ValueError
        A negative length, or no bobbin at all.

    Notes
    -----
    Valid for plying bobbins of one size.

    References
    ----------
    Definition of the quotient.

    Examples
    --------
    >>> print(bobbin_gets(Quantity(900, "m"), 3))
    300.0 meter
    """
    require_within(AT_LEAST_ONE, "There must be at least one bobbin.", bobbins)
    require_within(NOT_NEGATIVE, "A length", length)
    return length / bobbins


@calculation
def plying_words(bobbins: Ratio, each: Length, fills: Ratio) -> str:
    """Whether a plied yarn fits on one plying bobbin, in words.

    words = it fits if s ≤ 0.85, it may not if k ≤ 1, or else the bobbins and the length on each, and that one more may
    be needed if s / k > 0.85. An overflowing bobbin spoils the end, and what one holds and what the yarn will weigh are
    known to a tenth.

    Parameters
    ----------
    bobbins : k, plying bobbins that the yarn fills
    each : length of plied yarn on each of them
    fills : s, share of one plying bobbin that the yarn fills

    Returns
    -------
    a sentence

    Raises
    ------
    ValueError
        No bobbin at all, a negative share, or a length that is negative or too large to state.

    Notes
    -----
    Valid for plied yarn that packs as densely as its singles.

    References
    ----------
    Definition of the quotient; that yarn and bobbins differ by a tenth: common practice, no source.

    Examples
    --------
    >>> print(plying_words(3, Quantity(300, "yd"), fills=2.4))
    It fills 3 plying bobbins of 300 yd each.
    """
    require_within(AT_LEAST_ONE, "There must be at least one bobbin.", bobbins)
    require_within(NOT_NEGATIVE, "The share of a bobbin", fills)
    return by_element(_on_bobbins, bobbins, fills, said(bobbins), said(each))


def _on_bobbins(bobbins: float, fills: float, count: str, length: str) -> str:
    if bobbins > 1:
        is_sure = np.round(fills / bobbins, 9) <= SURELY_FITS
        return f"It fills {count} plying bobbins of {length} each{'' if is_sure else ', and may need one more'}."
    return f"It {'all fits' if np.round(fills, 9) <= SURELY_FITS else 'may not all fit'} on one plying bobbin."


@calculation
def of_one_bobbin(
    mass: Mass, holds: Mass | None = None, plying: Mass | None = None, bought: Ratio | None = None
) -> Ratio:
    """Share of one plying bobbin that a plied yarn fills.

    s = M / ((1 - b) · H). The nearer to all of it, the less surely it fits.

    Parameters
    ----------
    mass : M, mass of all singles
    holds : H, mass of yarn on a full bobbin
    plying : the same of a plying bobbin, if it is another; it wins
    bought : b, share of the yarn's mass that is bought thread, not spun

    Returns
    -------
    s, a number

    Raises
    ------
    ValueError
        A negative mass, a bobbin that holds nothing, or a yarn that is all bought.

    Notes
    -----
    Valid for plied yarn that packs as densely as its singles.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(of_one_bobbin(Quantity(60, "g"), Quantity(100, "g")))
    0.6
    """
    require_numbers(mass, holds, plying, bought)
    room = holds if plying is None else plying
    spun = 1.0 if bought is None else 1 - bought
    require(bought is None or bought < NEARLY_ALL, "A yarn that is all bought is not plied.")
    require(room is not None, "State what a bobbin holds.")
    require_within(ABOVE_ZERO, "A bobbin must hold something.", room)
    require_within(NOT_NEGATIVE, "A mass", mass)
    return (mass / spun / room).m_as("")
