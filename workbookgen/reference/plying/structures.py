"""How a yarn is built from singles: strands side by side, a chain, a ball plied on itself, a cable, a core with its
wrapper.

Whatever the structure, a number of ends lie side by side in the yarn, and each stage of twisting keeps a share of the
length. These two figures convert singles into yarn, and back.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require
from workbookgen.reference.limits import (
    ABOVE_ZERO,
    AT_LEAST_ONE,
    COUNTED,
    NOT_NEGATIVE,
    SOME_PART,
    require_loss,
    require_within,
)
from workbookgen.texts import folded
from workbookgen.units import Grist, Length, LinearDensity, PerLength, Ratio

OF_ITSELF = {"a chain of three": 3, "a ball on itself": 2}  # ends that follow from the structure alone
OF_STRANDS, CABLE = "several strands", "a cable"


@calculation
def ends_in(structure: str, strands: Ratio = 2, plies: Ratio = 2) -> Ratio:
    """Ends of single that lie side by side in a yarn.

    n = 3 in a chain, 2 in a ball on itself, the strands of a ply, strands · plies in a cable. They all run the whole
    length of the yarn.

    Parameters
    ----------
    structure : "several strands", "a chain of three", "a ball on itself" or "a cable"
    strands : singles in a ply
    plies : plied yarns in a cable

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        An unknown structure, or strands or plies that are not a whole number from 1 up.

    Notes
    -----
    Valid for yarns of the same structure throughout.

    References
    ----------
    Geometry of the structures.

    Examples
    --------
    >>> print(ends_in("a cable", strands=2, plies=3))
    6.0
    """
    require(by_element(_is_known, structure), "The structure is not known: choose one from the list.")
    for each in (strands, plies):
        require_within(COUNTED, "Strands and plies are whole numbers, 1 or more.", each)
    ends = np.asarray(by_element(_ends, structure, strands, plies), dtype=float)
    return ends if np.ndim(ends) else float(ends)


@calculation
def kept_in(structure: str, take_up: Ratio = 0.0, cabling: Ratio = 0.0) -> Ratio:
    """Share of the single's length that is left in a yarn.

    k = 1 - c, and in a cable (1 - c) · (1 - c'). Each stage of twisting takes its own share.

    Parameters
    ----------
    structure : "several strands", "a chain of three", "a ball on itself" or "a cable"
    take_up : c, share of the singles' length lost in plying
    cabling : c', share of the plies' length lost in cabling; for a cable only

    Returns
    -------
    k, a share

    Raises
    ------
    ValueError
        An unknown structure, or a take-up outside 0 to under 1.

    Notes
    -----
    Valid for equal ends, before washing.

    References
    ----------
    Definition of the take-up.

    Examples
    --------
    >>> print(round(kept_in("a cable", take_up=0.1, cabling=0.1), 6))
    0.81
    """
    require(by_element(_is_known, structure), "The structure is not known: choose one from the list.")
    require_loss(take_up, "take-up")
    require_loss(cabling, "take-up in cabling")
    is_cable = np.asarray(by_element(lambda each: folded(each) == CABLE, structure), dtype=bool)
    kept = (1 - take_up) * np.where(is_cable, 1 - cabling, 1.0)
    return kept if np.ndim(kept) else float(kept)


@calculation
def built_length(length: Length, ends: Ratio, kept: Ratio) -> Length:
    """Length of yarn made from a length of single.

    L = ℓ · k / n. The single is divided among the ends.

    Parameters
    ----------
    length : ℓ, length of all singles together
    ends : n, ends side by side
    kept : k, share of the single's length that is left

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A negative length, fewer than one end, or a share that is not above 0 and up to 1.

    Notes
    -----
    Valid for equal ends, before washing.

    References
    ----------
    Definition of the take-up.

    Examples
    --------
    >>> print(built_length(Quantity(600, "m"), ends=3, kept=0.9))
    180.0 meter
    """
    require_within(NOT_NEGATIVE, "A length", length)
    _require_structure(ends, kept)
    return length * kept / ends


@calculation
def built_grist(grist: Grist, ends: Ratio, kept: Ratio) -> Grist:
    """Grist of a yarn made from a single.

    G = g · k / n. The same weight is in less length.

    Parameters
    ----------
    grist : g, grist of the single
    ends : n, ends side by side
    kept : k, share of the single's length that is left

    Returns
    -------
    G, a grist

    Raises
    ------
    ValueError
        A grist that is not above zero, fewer than one end, or a share that is not above 0 and up to 1.

    Notes
    -----
    Valid for equal ends, before washing.

    References
    ----------
    W. Davis, Hosiery Manufacture, for equal ends without take-up (read).

    Examples
    --------
    >>> print(built_grist(Quantity(10, "m/g"), ends=2, kept=0.9))
    4.5 meter / gram
    """
    require_within(ABOVE_ZERO, "The grist", grist)
    _require_structure(ends, kept)
    return grist * kept / ends


@calculation
def single_for_length(wanted: Length, ends: Ratio, kept: Ratio) -> Length:
    """Length of single that a length of yarn takes.

    ℓ = L · n / k. It is what to spin, all ends together.

    Parameters
    ----------
    wanted : L, length of yarn wanted
    ends : n, ends side by side
    kept : k, share of the single's length that is left

    Returns
    -------
    ℓ, a length

    Raises
    ------
    ValueError
        A negative length, fewer than one end, or a share that is not above 0 and up to 1.

    Notes
    -----
    Valid for equal ends, before washing.

    References
    ----------
    Definition of the take-up.

    Examples
    --------
    >>> print(single_for_length(Quantity(180, "m"), ends=3, kept=0.9))
    600.0 meter
    """
    require_within(NOT_NEGATIVE, "A length", wanted)
    _require_structure(ends, kept)
    return wanted * ends / kept


@calculation
def single_for_grist(wanted_grist: Grist, ends: Ratio, kept: Ratio) -> Grist:
    """Grist of the single for a yarn of a wanted grist.

    g = G · n / k. The single is finer by the number of ends, and by what twisting takes up.

    Parameters
    ----------
    wanted_grist : G, grist of the yarn wanted
    ends : n, ends side by side
    kept : k, share of the single's length that is left

    Returns
    -------
    g, a grist

    Raises
    ------
    ValueError
        A grist that is not above zero, fewer than one end, or a share that is not above 0 and up to 1.

    Notes
    -----
    Valid for equal ends, before washing.

    References
    ----------
    Definition of the take-up.

    Examples
    --------
    >>> print(single_for_grist(Quantity(4.5, "m/g"), ends=2, kept=0.9))
    10.0 meter / gram
    """
    require_within(ABOVE_ZERO, "The grist", wanted_grist)
    _require_structure(ends, kept)
    return wanted_grist * ends / kept


@calculation
def wrapper_feed(core_diameter: Length, wrapper_diameter: Length, turns: PerLength, slack: Ratio = 0.0) -> Ratio:
    """Length of the wrapper in one length of a wrapped yarn.

    m = √(1 + (π · (d₁ + d₂) · T)²) · (1 + z). The wrapper's center follows a circle as wide as both yarns together.

    Parameters
    ----------
    core_diameter : d₁, diameter of the core
    wrapper_diameter : d₂, diameter of the wrapper
    turns : T, turns of the wrapper in a length of yarn, before a binder takes any out
    slack : z, additional length for loops, as a share

    Returns
    -------
    m, a number from 1 up

    Raises
    ------
    ValueError
        A diameter that is not above zero, or turns or a slack below zero.

    Notes
    -----
    Valid for a straight core and a wrapper that lies on it; a soft core is pulled in, and m is smaller.

    References
    ----------
    Geometry of a helix. The slack: from a sample.

    Examples
    --------
    >>> # √(1 + 0.75²) · 1.2
    >>> print(round(wrapper_feed(Quantity(1, "mm"), Quantity(2, "mm"), Quantity(250 / np.pi, "1/m"), slack=0.2), 6))
    1.5
    """
    require_within(ABOVE_ZERO, "A diameter", core_diameter, wrapper_diameter)
    require_within(NOT_NEGATIVE, "Turns cannot be below zero.", turns)
    require_within(NOT_NEGATIVE, "The slack cannot be below zero.", slack)
    round_it = (np.pi * (core_diameter + wrapper_diameter) * turns).m_as("")
    return np.sqrt(1 + round_it**2) * (1 + slack)


@calculation
def wrapped_density(core: LinearDensity, wrapper: LinearDensity, feed: Ratio) -> LinearDensity:
    """Linear density of a core with its wrapper.

    R = t₁ + m · t₂. A length of yarn holds the same length of core, and more of the wrapper.

    Parameters
    ----------
    core : t₁, linear density of the core
    wrapper : t₂, linear density of the wrapper
    feed : m, length of wrapper in one length of yarn, from 1 up

    Returns
    -------
    R, a mass per length

    Raises
    ------
    ValueError
        A linear density that is not above zero, or a feed below 1.

    Notes
    -----
    Valid for a core that stays straight.

    References
    ----------
    W. Davis, Hosiery Manufacture, examples 37 and 41, for the principle (read).

    Examples
    --------
    >>> print(wrapped_density(Quantity(200, "tex"), Quantity(150, "tex"), feed=1.5))
    425.0 tex
    """
    require_within(ABOVE_ZERO, "The linear density", core, wrapper)
    require_within(AT_LEAST_ONE, "A length of yarn holds at least the same length of wrapper: give 1 or more.", feed)
    return core + feed * wrapper


def _is_known(structure) -> bool:
    return folded(str(structure)) in {*OF_ITSELF, OF_STRANDS, CABLE}


def _ends(structure, strands, plies) -> float:
    name = folded(structure)
    return OF_ITSELF.get(name, strands * (plies if name == CABLE else 1))


def _require_structure(ends: Ratio, kept: Ratio) -> None:
    require_within(AT_LEAST_ONE, "A yarn has at least one end.", ends)
    require_within(SOME_PART, "The share of the length that is left", kept)
