"""What a skein or a lot can become: the yarn that pieces usually take, at any thickness.

Knitting with twice as many stitches to the inch takes twice the yarn for its area, and stitches go with wraps per
inch. So length over wraps stays the same from yarn to yarn, and pieces are compared by it.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_name, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, COUNTED_FROM_ZERO, NOT_NEGATIVE, require_within
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.units import Length, PerLength, Ratio

PATTERNS_DIFFER = 0.15  # of what pieces of one kind take


@calculation
def called(name: str, size: str | None = None) -> str:
    """What a piece is called in a sentence.

    text = name (size). Without a size, the name alone.

    Parameters
    ----------
    name : what it is, such as a hat
    size : for whom, or how large, if stated

    Returns
    -------
    a text such as "hat (grown)"

    Raises
    ------
    ValueError
        A blank name.

    Notes
    -----
    Valid for names of a few words.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(called("hat", "grown"))
    hat (grown)
    """
    require_name(name)
    return (
        by_element(lambda each: str(each), name)
        if size is None
        else by_element(lambda each, of: f"{each} ({of})", name, size)
    )


@calculation
def covers(length: Length, wraps: PerLength) -> Ratio:
    """Area that a yarn covers, wrapped side by side.

    a = L / w, in square meters. The same piece in two yarns has the same a, as long as stitches go with wraps per
    inch.

    Parameters
    ----------
    length : L, length of yarn
    wraps : w, its wraps, per length

    Returns
    -------
    a, square meters as a plain number

    Raises
    ------
    ValueError
        A negative length, or wraps that are not above zero.

    Notes
    -----
    Valid for fabrics of one kind, made as firmly: lace takes less, cables and crochet more.

    References
    ----------
    Stitches in proportion to wraps: common practice, no source.

    Examples
    --------
    >>> print(covers(Quantity(200, "m"), Quantity(500, "1/m")))
    0.4
    """
    require_numbers(length, wraps)
    require_within(NOT_NEGATIVE, "A length", length)
    require_within(ABOVE_ZERO, "The wraps", wraps)
    return (length / wraps).m_as("m^2")


@calculation
def covers_piece(length: Length, wraps: PerLength, name: str) -> Ratio:
    """Area that the yarn of a piece covers, wrapped side by side.

    a = L / w, in square meters. A piece without a name is left out.

    Parameters
    ----------
    length : L, length that the piece takes
    wraps : w, wraps per length of the yarn in which it takes that length
    name : what it is

    Returns
    -------
    a, square meters as a plain number

    Raises
    ------
    ValueError
        A blank name, a negative length, or wraps that are not above zero.

    Notes
    -----
    Valid for fabrics of one kind, made as firmly.

    References
    ----------
    Stitches in proportion to wraps: common practice, no source.

    Examples
    --------
    >>> print(covers_piece(Quantity(200, "m"), Quantity(500, "1/m"), "hat"))
    0.4
    """
    require_name(name)
    return covers(length, wraps)


@calculation
def in_this_yarn(length: Length, wraps: PerLength, wpi: PerLength) -> Length:
    """Length that a piece takes in another yarn.

    L = ℓ · w / v. Finer yarn makes more stitches to the inch, so more of it goes into the same area.

    Parameters
    ----------
    length : ℓ, length that it takes in the yarn of the table
    wraps : v, wraps per length of that yarn
    wpi : w, wraps per length of this one

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A negative length, or wraps that are not above zero.

    Notes
    -----
    Valid for fabrics of one kind, made as firmly.

    References
    ----------
    Stitches in proportion to wraps: common practice, no source.

    Examples
    --------
    >>> print(in_this_yarn(Quantity(200, "m"), Quantity(400, "1/m"), Quantity(500, "1/m")))
    250.0 meter
    """
    require_numbers(length, wraps, wpi)
    require_within(NOT_NEGATIVE, "A length", length)
    require_within(ABOVE_ZERO, "The wraps", wraps)
    require_within(ABOVE_ZERO, "The wraps", wpi)
    return length * (wpi / wraps).m_as("")


@calculation
def how_many_fit(area: Ratio, values: Sequence[float], pieces: Ratio) -> Ratio:
    """How many of the usual pieces the yarn is enough for.

    k = number of pieces whose 1.15 · a ≤ that of the yarn. Each is counted on its own, not all together. Patterns
    differ, so that just the usual length would fall short half the time.

    Parameters
    ----------
    area : a of the yarn, in square meters
    values : a of the pieces; one that is not a number is blank
    pieces : n, how many pieces have one

    Returns
    -------
    k, a whole number

    Raises
    ------
    ValueError
        An area that is not a number or negative.

    Notes
    -----
    Valid for pieces that are made one at a time.

    References
    ----------
    That pieces of a kind differ by 15 percent: common practice, no source.

    Examples
    --------
    >>> print(how_many_fit(0.4, [0.2, 0.3, 0.9], pieces=3))
    2.0
    """
    require_within(NOT_NEGATIVE, "An area", area)
    require_within(NOT_NEGATIVE, "The number of pieces", pieces)
    return _how_many_below(area / (1 + PATTERNS_DIFFER), values)


@calculation
def how_many_may_fit(area: Ratio, values: Sequence[float], pieces: Ratio) -> Ratio:
    """How many of the usual pieces the yarn is, or may be, enough for.

    j = number of pieces whose a ≤ 1.15 times that of the yarn. For any other it is hardly enough.

    Parameters
    ----------
    area : a of the yarn, in square meters
    values : a of the pieces; one that is not a number is blank
    pieces : n, how many pieces have one

    Returns
    -------
    j, a whole number

    Raises
    ------
    ValueError
        An area that is not a number or negative.

    Notes
    -----
    Valid for pieces that are made one at a time.

    References
    ----------
    That pieces of a kind differ by 15 percent: common practice, no source.

    Examples
    --------
    >>> print(how_many_may_fit(0.8, [0.2, 0.3, 0.9], pieces=3))
    3.0
    """
    require_within(NOT_NEGATIVE, "An area", area)
    require_within(NOT_NEGATIVE, "The number of pieces", pieces)
    return _how_many_below(area * (1 + PATTERNS_DIFFER), values)


def _how_many_below(areas, values) -> np.ndarray:
    """How many of the values are no more than each area, rounding aside."""
    limits = np.multiply.outer(areas, np.ones(1)) * (1 + ROUNDING)
    return (_known(values) <= limits).sum(axis=-1).astype(float)[()]


@calculation
def enough_words(fits: Ratio, may_fit: Ratio, names: Sequence[str], values: Sequence[float], pieces: Ratio) -> str:
    """What the yarn is enough for, what it may be, and what it is not, in words.

    text = the pieces with the k-th and the j-th least a, and the next one; n = the number of pieces. Pieces that take
    less than the one named are possible too.

    Parameters
    ----------
    fits : k, how many pieces it is enough for
    may_fit : j, how many it is, or may be, enough for
    names : what the pieces are called
    values : a of the pieces; one that is not a number is blank
    pieces : n, how many pieces have one

    Returns
    -------
    a text such as "usually enough for hat (grown), perhaps for cowl, not for scarf"

    Raises
    ------
    ValueError
        No piece to compare with, or a count that is not a whole number from 0, or falls below the other.

    Notes
    -----
    Valid for usual lengths; patterns differ.

    References
    ----------
    Lengths of the table: common practice, no source.

    Examples
    --------
    >>> print(enough_words(1, 2, ["mitts", "hat (grown)", "scarf"], [0.2, 0.3, 0.9], pieces=3))
    usually enough for mitts, perhaps for hat (grown), not for scarf
    """
    require_within(ABOVE_ZERO, "There must be a piece to compare with.", pieces)
    require_within(COUNTED_FROM_ZERO, "The pieces that fit are counted in whole numbers, from 0.", fits, may_fit)
    cells = np.atleast_1d(np.asarray(values, dtype=float))
    in_order = sorted(_known(values))
    require(may_fit <= len(in_order), "It cannot be enough for more pieces than there are.")
    require(fits <= may_fit, "What it is enough for, it may be enough for.")

    def name(place: float) -> str:
        return str(names[list(cells).index(in_order[int(place) - 1])])

    def words(surely: float, perhaps: float) -> str:
        if perhaps == 0:
            return f"not enough for {name(1)}"
        told = [f"for {name(surely)}"] if surely else []
        if perhaps > surely:
            told.append(f"perhaps for {name(perhaps)}" if told else f"for {name(perhaps)}")
        if perhaps < len(in_order):
            told.append(f"not for {name(perhaps + 1)}")
        return f"{'usually' if surely else 'perhaps'} enough {', '.join(told)}"

    return by_element(words, fits, may_fit)


def _known(values) -> np.ndarray:
    cells = np.atleast_1d(np.asarray(values, dtype=float))
    return cells[np.isfinite(cells)]
