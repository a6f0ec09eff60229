"""Threads side by side: wraps in a length, and the weight class of a yarn."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, require_within
from workbookgen.units import Grist, Length, PerLength, Quantity, Ratio

# Wraps in an inch of each class, as published; no class is printed for 4 to 5, which are given to the thickest.
WEIGHT_CLASSES = (
    ("7 jumbo", 0, 5),
    ("6 super bulky", 5, 6),
    ("5 bulky", 6, 9),
    ("4 medium", 9, 12),
    ("3 light", 11, 15),
    ("2 fine", 12, 18),
    ("1 super fine", 14, 30),
    ("0 lace", 30, np.inf),
)


@calculation
def threads_side_by_side(grist: Grist, k: Ratio) -> PerLength:
    """Threads that lie side by side in an inch.

    D = K · √g, g in yards per pound, D in an inch. Thickness goes with the square root of
    the mass in a length.

    Parameters
    ----------
    grist : g, grist of the yarn
    k : K, about 0.84 for soft to 0.95 for firm threads that touch; less for wraps by hand

    Returns
    -------
    D, a number per length

    Raises
    ------
    ValueError
        A grist or a K that is not above zero.

    Notes
    -----
    Valid for round yarns of one kind; K belongs to the fiber and the way of spinning.

    References
    ----------
    Ashenhurst's rule, quoted in a study of weaving (read); J. T. Taylor, Cotton Weaving and
    Designing: square root less 5 percent for cotton (read). K of hand wrapping: common
    practice, no source.

    Examples
    --------
    >>> print(threads_side_by_side(Quantity(900, "yd/lb"), 0.9))
    27.0 / inch
    """
    require_within(ABOVE_ZERO, "The grist", grist)
    require_within(ABOVE_ZERO, "The factor K", k)
    return Quantity(k * np.sqrt(grist.m_as("yard/pound")), "1/inch")


@calculation
def wraps_expected(grist: Grist, k: Ratio = 0.35) -> PerLength:
    """Wraps in an inch to expect of a yarn that is laid on a ruler by hand.

    w = K · √g, g in yards per pound, w in an inch. Until you have fitted a K of your own, the usual one stands for it.

    Parameters
    ----------
    grist : g, grist of the yarn
    k : K, for wraps laid by hand; 0.35 where none is given

    Returns
    -------
    w, a number per length

    Raises
    ------
    ValueError
        A grist or a K that is not above zero.

    Notes
    -----
    Valid for round yarns, laid side by side, not pushed together and not pulled.

    References
    ----------
    Ashenhurst's rule, quoted in a study of weaving (read). K of 0.35: common practice, no source.

    Examples
    --------
    >>> print(wraps_expected(Quantity(900, "yd/lb")))
    10.5 / inch
    """
    return threads_side_by_side(grist, k)


@calculation
def touching_width(grist: Grist, k: Ratio = 0.9) -> Length:
    """Width of a yarn whose threads touch.

    d = 1 / (K · √g), g in yards per pound, d in inches. Without the air that lies between wraps laid by hand.

    Parameters
    ----------
    grist : g, grist of the yarn
    k : K, for threads that touch; 0.9 where none is given

    Returns
    -------
    d, a length

    Raises
    ------
    ValueError
        A grist or a K that is not above zero.

    Notes
    -----
    Valid for round yarns, pressed together as in cloth.

    References
    ----------
    Ashenhurst's rule, quoted in a study of weaving (read). K of 0.9 for worsted.

    Examples
    --------
    >>> print(touching_width(Quantity(400, "yd/lb"), k=0.5).to("inch"))
    0.1 inch
    """
    return 1 / threads_side_by_side(grist, k)


@calculation
def fitted_k(wraps: PerLength, grist: Grist) -> Ratio:
    """Factor K of your own yarn.

    K = w / √g, w in an inch, g in yards per pound. A sample that was wrapped and weighed says more than a table.

    Parameters
    ----------
    wraps : w, wraps counted in a length
    grist : g, grist of the same yarn

    Returns
    -------
    K, a number

    Raises
    ------
    ValueError
        Wraps or a grist that are not above zero.

    Notes
    -----
    Valid for yarns spun and wrapped as the sample was.

    References
    ----------
    Ashenhurst's rule, quoted in a study of weaving (read), solved for its factor.

    Examples
    --------
    >>> print(fitted_k(Quantity(12, "1/inch"), Quantity(900, "yd/lb")))
    0.4
    """
    require_within(ABOVE_ZERO, "The number of wraps", wraps)
    require_within(ABOVE_ZERO, "The grist", grist)
    return wraps.m_as("1/inch") / np.sqrt(grist.m_as("yard/pound"))


@calculation
def wraps_in_use(counted: PerLength | None = None, expected: PerLength | None = None) -> PerLength:
    """Wraps per length to use.

    w = counted, or else expected. Counting your own yarn beats a rule.

    Parameters
    ----------
    counted : wraps counted on the yarn itself
    expected : wraps to expect from the grist

    Returns
    -------
    w, a number per length

    Raises
    ------
    ValueError
        Neither is known, or the wraps in use are not above zero.

    Notes
    -----
    Valid for wraps laid the same way each time.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(wraps_in_use(counted=Quantity(12, "1/inch"), expected=Quantity(11, "1/inch")))
    12 / inch
    """
    wraps = expected if counted is None else counted
    require(wraps is not None, "Count the wraps, or give the grist.")
    require_within(ABOVE_ZERO, "The number of wraps", wraps)
    return wraps


@calculation
def wrap_width(wraps: PerLength) -> Length:
    """Width that one wrap takes.

    d = 1 / w. Threads that lie side by side divide the length among them.

    Parameters
    ----------
    wraps : w, wraps in a length

    Returns
    -------
    d, a length

    Raises
    ------
    ValueError
        Wraps that are not above zero.

    Notes
    -----
    Valid for wraps that touch without overlapping; loosely laid ones look thicker than the yarn.

    References
    ----------
    Definition of wraps in a length.

    Examples
    --------
    >>> print(wrap_width(Quantity(10, "1/inch")))
    0.1 inch
    """
    require_within(ABOVE_ZERO, "The number of wraps", wraps)
    return 1 / wraps


@calculation
def yarn_weight_class(wraps: PerLength) -> str:
    """Weight class of a yarn by the wraps laid on a ruler.

    class = that with from ≤ w ≤ to. The published ranges overlap, so many yarns belong to two or three classes: the
    thickest and the finest are named.

    Parameters
    ----------
    wraps : w, wraps counted in a length

    Returns
    -------
    one class such as "4 medium", or the ends of several such as "4 medium to 3 light"

    Raises
    ------
    ValueError
        A number of wraps that is not above zero.

    Notes
    -----
    Valid for wraps laid by hand, touching and not pressed; a guideline, and other tables differ.

    References
    ----------
    Standard yarn weight system of the yarn trade, with its wraps per inch (read as reproduced).

    Examples
    --------
    >>> print(yarn_weight_class(Quantity(10, "1/inch")))
    4 medium
    """
    require_within(ABOVE_ZERO, "The number of wraps", wraps)
    return by_element(_classes_of, wraps.m_as("1/inch"))


def _classes_of(per_inch) -> str:
    # The last digits of a conversion must not decide a borderline case.
    wraps = round(float(per_inch), 6)
    found = [name for name, least, most in WEIGHT_CLASSES if least <= wraps <= most]
    return found[0] if len(found) == 1 else f"{found[0]} to {found[-1]}"
