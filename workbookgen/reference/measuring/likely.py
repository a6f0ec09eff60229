"""The range of lengths that a skein very likely has."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require
from workbookgen.reference.limits import NO_LENGTH, NOT_NEGATIVE, require_within
from workbookgen.reference.words import said
from workbookgen.units import Length, Quantity, Ratio


@calculation
def least_likely(length: Length, uncertainty: Length) -> Length:
    """The lower end of the range in which a length very likely lies.

    L₁ = L - 2 · u, but not below zero. Two standard uncertainties to either side cover about 95 percent.

    Parameters
    ----------
    length : L, the length
    uncertainty : u, its standard uncertainty

    Returns
    -------
    L₁, a length

    Raises
    ------
    ValueError
        A negative length or uncertainty.

    Notes
    -----
    Valid for an uncertainty with several causes, none of them dominant.

    References
    ----------
    JCGM 100, 6.2.1 and G.6.6 (from memory).

    Examples
    --------
    >>> print(least_likely(Quantity(200, "m"), Quantity(5, "m")))
    190.0 meter
    """
    _require_range(length, uncertainty)
    return np.maximum(length - 2 * uncertainty, NO_LENGTH)


@calculation
def most_likely(length: Length, uncertainty: Length) -> Length:
    """The upper end of the range in which a length very likely lies.

    L₂ = L + 2 · u. Two standard uncertainties to either side cover about 95 percent.

    Parameters
    ----------
    length : L, the length
    uncertainty : u, its standard uncertainty

    Returns
    -------
    L₂, a length

    Raises
    ------
    ValueError
        A negative length or uncertainty.

    Notes
    -----
    Valid for an uncertainty with several causes, none of them dominant.

    References
    ----------
    JCGM 100, 6.2.1 and G.6.6 (from memory).

    Examples
    --------
    >>> print(most_likely(Quantity(200, "m"), Quantity(5, "m")))
    210 meter
    """
    _require_range(length, uncertainty)
    return length + 2 * uncertainty


def _require_range(length: Length, uncertainty: Length) -> None:
    require_within(NOT_NEGATIVE, "The length", length)
    require_within(NOT_NEGATIVE, "A standard uncertainty", uncertainty)


@calculation
def likely_words(
    least: Length | None = None, most: Length | None = None, loop: Length | None = None, wraps: Ratio | None = None
) -> str:
    """How long a skein very likely is, in words, or what is still to be typed.

    words = L₁ to L₂. Until they are known, the words ask for what is missing.

    Parameters
    ----------
    least : L₁, the lower end
    most : L₂, the upper end
    loop : length of one wrap
    wraps : number of wraps

    Returns
    -------
    a text such as "very likely 230 yd to 236 yd"

    Raises
    ------
    ValueError
        Lengths too large to state, or missing although nothing else is.

    Notes
    -----
    Valid for lengths below a million of their unit.

    References
    ----------
    Definition of rounding; the two ends: JCGM 100, 6.2.1 (from memory).

    Examples
    --------
    >>> print(likely_words(Quantity(230, "yd"), Quantity(236, "yd")))
    very likely 230 yd to 236 yd
    """
    require(True if loop is None else loop >= NO_LENGTH, "The loop cannot be negative.")
    require(True if wraps is None else wraps >= 0, "The wraps cannot be negative.")
    if least is not None and most is not None:
        return by_element(lambda low, high: f"very likely {low} to {high}", said(least), said(most))
    if loop is None:
        return _alike(
            "Choose a reel, or type its loop." if wraps is not None else "Choose a skein, or type reel and wraps.",
            wraps,
        )
    require(wraps is None, "The length must be known once loop and wraps are.")
    return _alike("Type the wraps you counted.", loop)


def _alike(words: str, beside):
    """The words once, or for each of several values."""
    size = np.shape(beside.magnitude if isinstance(beside, Quantity) else beside) if beside is not None else ()
    return np.full(size, words, dtype=object) if size else words
