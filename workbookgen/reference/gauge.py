"""The gauge to expect of a yarn, before a swatch has been knitted.

The yarn trade's table of weight classes prints stitches beside wraps. Needles, hands and pattern shift them a good
deal, so only a range can be given; a swatch decides.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require
from workbookgen.reference.diameter.wraps import yarn_weight_class
from workbookgen.units import PerLength, Ratio

# Knit stitches in 4 inches of stocking stitch, from and to, as published; of jumbo only "6 and fewer" is printed.
KNIT_STITCHES = {
    "7 jumbo": (0, 6),
    "6 super bulky": (7, 11),
    "5 bulky": (12, 15),
    "4 medium": (16, 20),
    "3 light": (21, 24),
    "2 fine": (23, 26),
    "1 super fine": (27, 32),
    "0 lace": (33, 40),
}


@calculation
def fewest_stitches(wraps: PerLength) -> Ratio:
    """Fewest stitches to expect in 4 inches of stocking stitch.

    n = the lower end of the thickest class that the wraps belong to. Thick yarn makes wide stitches.

    Parameters
    ----------
    wraps : w, wraps counted in a length

    Returns
    -------
    n, a number of stitches; 0 where the table gives only a maximum

    Raises
    ------
    ValueError
        A number of wraps that is not above zero.

    Notes
    -----
    Valid for a first guess of plain knitting on the usual needles; a swatch decides.

    References
    ----------
    Standard yarn weight system of the yarn trade, knit gauge (read as reproduced).

    Examples
    --------
    >>> print(fewest_stitches(Quantity(10, "1/inch")))
    16.0
    """
    return _stitches_of(wraps, of_class=0, end=0)


@calculation
def most_stitches(wraps: PerLength) -> Ratio:
    """Most stitches to expect in 4 inches of stocking stitch.

    n = the upper end of the finest class that the wraps belong to. Classes overlap, and so do their gauges.

    Parameters
    ----------
    wraps : w, wraps counted in a length

    Returns
    -------
    n, a number of stitches

    Raises
    ------
    ValueError
        A number of wraps that is not above zero.

    Notes
    -----
    Valid for a first guess of plain knitting on the usual needles; a swatch decides.

    References
    ----------
    Standard yarn weight system of the yarn trade, knit gauge (read as reproduced).

    Examples
    --------
    >>> print(most_stitches(Quantity(10, "1/inch")))
    20.0
    """
    return _stitches_of(wraps, of_class=-1, end=1)


@calculation
def gauge_words(fewest: Ratio, most: Ratio) -> str:
    """The gauge to expect, in words.

    words = fewest to most. Before a swatch it is a guess, and is called one.

    Parameters
    ----------
    fewest : fewest stitches in 4 inches, 0 where none is given
    most : most stitches in 4 inches

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        A maximum below the minimum, or a negative number.

    Notes
    -----
    Valid for 10 centimeters too, which the trade takes to be 4 inches.

    References
    ----------
    Standard yarn weight system of the yarn trade, knit gauge (read as reproduced).

    Examples
    --------
    >>> print(gauge_words(16, 20))
    16 to 20 stitches in 4 in (10 cm), plain; a swatch decides
    """
    require((fewest >= 0) & (most >= fewest), "Stitches run from the fewest to the most.")
    return by_element(_in_words, fewest, most)


def _stitches_of(wraps, of_class: int, end: int):
    """One end of the range printed for the thickest or the finest of a yarn's classes."""
    found = by_element(lambda classes: KNIT_STITCHES[classes.split(" to ")[of_class]][end], yarn_weight_class(wraps))
    return np.asarray(found, dtype=float)[()]


def _in_words(fewest, most) -> str:
    stitches = f"{fewest:.0f} to {most:.0f}" if fewest else f"up to {most:.0f}"
    return f"{stitches} stitches in 4 in (10 cm), plain; a swatch decides"
