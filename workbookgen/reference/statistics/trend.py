"""Whether the skeins of a piece become finer or coarser, one after another: the straight line through their grists.

A hand changes slowly: with practice, or with the hours. Each skein is then near the one before it, and what is still to
be spun is like none of them. The places of the skeins are the lines of their log, so what is known of them are sums.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, quotient, require, require_numbers
from workbookgen.reference.limits import (
    ABOVE_ZERO,
    COUNTED,
    COUNTED_FROM_FIVE,
    COUNTED_FROM_THREE,
    COUNTED_FROM_TWO,
    NOT_NEGATIVE,
    require_within,
)
from workbookgen.reference.tolerances import HAIR
from workbookgen.units import Grist, Length, Quantity, Ratio

# Standard deviations of a slope; common practice, no source. Three in a hundred steady hands are beyond (normal
# distribution).
HARDLY_CHANCE = 2.2


@calculation
def place_of(place: Ratio, grist: Grist) -> Ratio:
    """Place of a skein in the order of its log, if its grist is known.

    x = l, where g > 0. A skein that is not weighed tells nothing of the hand that spun it.

    Parameters
    ----------
    place : l, line of the log
    grist : g, its length over its weight

    Returns
    -------
    x, a number

    Raises
    ------
    ValueError
        A line that is not a whole number from one on, or a grist that is not above zero.

    Notes
    -----
    Valid for skeins that are logged in the order in which they were spun.

    References
    ----------
    Definition of a place.

    Examples
    --------
    >>> print(place_of(7.0, Quantity(2, "m/g")))
    7.0
    """
    require_within(COUNTED, "The place", place)
    require_within(ABOVE_ZERO, "The grist", grist)
    return place


@calculation
def weighted_by_place(place: Ratio, grist: Grist) -> Grist:
    """Grist of a skein, times its place.

    p = x · g. The slope of a line through points follows from sums of such products.

    Parameters
    ----------
    place : x, its place in the order of the log
    grist : g, its length over its weight

    Returns
    -------
    p, a grist

    Raises
    ------
    ValueError
        A place or a grist that is not above zero.

    Notes
    -----
    Valid for any grist.

    References
    ----------
    Definition of a product.

    Examples
    --------
    >>> print(weighted_by_place(3.0, Quantity(2, "m/g")))
    6.0 meter / gram
    """
    require_within(ABOVE_ZERO, "The place", place)
    require_within(ABOVE_ZERO, "The grist", grist)
    return place * grist


@calculation
def spread_of_places(squares: Ratio, places: Ratio, count: Ratio) -> Ratio:
    """How far apart the places of some skeins are.

    Q = Σx² - (Σx)² / n. It is the sum of the squared distances from the middle of the places.

    Parameters
    ----------
    squares : Σx², sum of the squared places
    places : Σx, sum of the places
    count : n, skeins

    Returns
    -------
    Q, a number

    Raises
    ------
    ValueError
        Fewer than two skeins, or squares too small for such places.

    Notes
    -----
    Valid for up to some thousands of lines; beyond that the digits of the sums do not suffice.

    References
    ----------
    Steiner's theorem: sums of squares about means (from memory).

    Examples
    --------
    >>> print(spread_of_places(14, 6, 3))  # of the places 1, 2, 3: 1 + 0 + 1
    2.0
    """
    require_within(COUNTED_FROM_TWO, "The number of skeins", count)
    require_numbers(squares, places)
    spread = squares - places**2 / count
    require(spread > 0, "Different places have larger squares than these.")
    return spread


@calculation
def change_by_place(products: Grist, places: Ratio, total: Grist, count: Ratio, spread: Ratio, mean: Grist) -> Ratio:
    """Change of the grist from one line of the log to the next, as a share of the mean.

    b = (Σxg - Σx · Σg / n) / (Q · ḡ). It is the slope of the straight line that is nearest to all, by least squares.

    Parameters
    ----------
    products : Σxg, sum of the grists, each times its place
    places, total : Σx and Σg, sums of the places and of the grists
    count : n, skeins
    spread : Q, how far apart the places are
    mean : ḡ, mean of the grists

    Returns
    -------
    b, a share; below zero they become coarser

    Raises
    ------
    ValueError
        Fewer than two skeins, or a spread or a mean that is not above zero.

    Notes
    -----
    Valid for skeins that count equally, whatever the weight of each.

    References
    ----------
    NIST/SEMATECH e-Handbook of Statistical Methods, linear least squares regression (from memory).

    Examples
    --------
    >>> in_all = Quantity(1160, "m/g")  # of 220, 200 and 180 m/g in the first three lines: 220 + 400 + 540
    >>> print(round(change_by_place(in_all, 6, Quantity(600, "m/g"), 3, 2, Quantity(200, "m/g")), 6))
    -0.1
    """
    require_within(COUNTED_FROM_TWO, "The number of skeins", count)
    require_within(ABOVE_ZERO, "The spread of the places", spread)
    require_within(ABOVE_ZERO, "The mean", mean)
    require_numbers(products, places, total)
    return Quantity((products - places * total / count) / (spread * mean)).m_as("")


@calculation
def from_first_to_last(change: Ratio, spread: Ratio, count: Ratio) -> Ratio:
    """Change of the grist from the first skein to the last, by the line through all of them.

    d = b · √(12 · Q / n · (n - 1) / (n + 1)). The root is the distance of the first from the last, if all are equally
    far apart.

    Parameters
    ----------
    change : b, change from one line of the log to the next
    spread : Q, how far apart their places are
    count : n, skeins

    Returns
    -------
    d, a share of their mean; below zero they become coarser

    Raises
    ------
    ValueError
        Fewer than five skeins, or a spread that is not above zero.

    Notes
    -----
    Valid for five skeins or more (common practice, no source: of fewer, chance makes more than a hand does), about
    equally far apart in the log; of others it tells about how much.

    References
    ----------
    Variance of whole numbers in a row, (n² - 1) / 12 (from memory).

    Examples
    --------
    >>> print(round(from_first_to_last(-0.05, spread=10, count=5), 6))  # four steps between five lines
    -0.2
    """
    require_within(COUNTED_FROM_FIVE, "The number of skeins", count)
    require_within(ABOVE_ZERO, "The spread of the places", spread)
    require_numbers(change)
    return change * np.sqrt(12 * spread / count * (count - 1) / (count + 1))


@calculation
def beyond_chance(change: Ratio, spread: Ratio, variation: Ratio, count: Ratio, usual: Ratio) -> Ratio:
    """How much farther skeins change than chance would make them.

    t = b · √Q / max(s, c), s² = (CV² · (n - 1) - b² · Q) / (n - 2). With a steady hand, t is beyond 2.2 or -2.2 in
    three of a hundred pieces.

    Parameters
    ----------
    change : b, change of their grist from one line of the log to the next
    spread : Q, how far apart their places are
    variation : CV, coefficient of variation of their grists; s is what the line leaves of it
    count : n, skeins
    usual : c, what skeins usually vary by

    Returns
    -------
    t, a number; below zero they become coarser

    Raises
    ------
    ValueError
        Fewer than three skeins, a negative variation, or a spread or a usual variation that is not above zero.

    Notes
    -----
    Valid for five skeins or more. The larger of the two variations counts, so that neither an uneven hand makes a
    trend, nor do few skeins that chance put on a line.

    References
    ----------
    Standard deviation of a slope, NIST/SEMATECH e-Handbook of Statistical Methods (from memory).

    Examples
    --------
    >>> print(round(beyond_chance(-0.05, spread=16, variation=0.11, count=6, usual=0.1), 6))  # 0.05 · 4 / 0.1
    -2.0
    """
    require_within(COUNTED_FROM_THREE, "A line goes through any two skeins. The number of skeins", count)
    require_within(NOT_NEGATIVE, "The variation", variation)
    require_within(ABOVE_ZERO, "The spread of the places", spread)
    require_within(ABOVE_ZERO, "The usual variation", usual)
    require_numbers(change)
    left = np.maximum(variation**2 * (count - 1) - change**2 * spread, 0.0) / (count - 2)
    return change * np.sqrt(spread) / np.maximum(np.sqrt(left), usual)


@calculation
def change_ahead(
    count: Ratio,
    to_spin: Length | None = None,
    hold: Length | None = None,
    drift: Ratio | None = None,
    beyond: Ratio | None = None,
    bought_share: Ratio | None = None,
) -> Ratio:
    """Change of the grist from the skeins there are to those still to be spun, if the hand goes on so.

    D = d · (n + m) / 2 / (n - 1) / (1 - b), m = T / ℓ, from -1 to 1. The middle of the skeins still to come is half of
    all skeins away from the middle of those there are. A bought thread does not change, so all of it is spun.

    Parameters
    ----------
    count : n, skeins
    to_spin : T, length still to be spun, if it is known
    hold : ℓ, length in one skein
    drift : d, change from the first skein to the last, if there are enough of them
    beyond : t, how much farther they change than chance would make them
    bought_share : b, share of the planned yarn's weight that is bought thread

    Returns
    -------
    D, a share of their mean, of what is spun; 0 where it may be chance, or nothing is to be spun

    Raises
    ------
    ValueError
        A negative number of skeins, length or share, or a skein that holds nothing.

    Notes
    -----
    Valid for a hand that changes by about the same from skein to skein. A change of all or more is cut; t up to 2.2
    counts as chance (common practice, no source).

    References
    ----------
    Definition of the mean, of places in a row.

    Examples
    --------
    >>> print(change_ahead(5, Quantity(300, "m"), Quantity(100, "m"), drift=-0.2, beyond=-3))  # -0.05 · (5 + 3) / 2
    -0.2
    """
    require_within(NOT_NEGATIVE, "The number of skeins", count)
    if to_spin is not None:
        require_within(NOT_NEGATIVE, "The length to spin", to_spin)
    if hold is not None:
        require_within(ABOVE_ZERO, "The length in a skein", hold)
    require_numbers(drift, beyond)
    bought = 0.0 if bought_share is None else bought_share
    require_within(NOT_NEGATIVE, "The bought share", bought)
    if to_spin is None or hold is None or drift is None or beyond is None:
        return np.zeros(np.shape(count))[()]
    still = (to_spin / hold).m_as("")
    is_spun = 1 - bought > HAIR
    change = quotient(drift * (count + still) / 2 / np.maximum(count - 1, 1), 1 - bought)
    shows = (np.round(np.abs(beyond), 9) > HARDLY_CHANCE) & (still > 0) & is_spun
    return np.where(shows, np.clip(change, -1, 1), 0.0)[()]
