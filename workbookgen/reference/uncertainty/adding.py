"""How certain yarn is that is still to be got, and what it shares with the yarn that is there.

More of the same is spun by the same hands to the same plan, so it comes out finer or thicker together with the rest,
and the two do not partly cancel. What another fleece keeps is its own. Here are the square of its relative
uncertainty, and what it has in common with the rest.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, quotient, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, PART, require_within
from workbookgen.units import Grist, Length, Mass, Quantity, Ratio


@calculation
def strand_added_square(bought: Ratio, u_hand: Ratio, u_batch: Ratio, u_kept: Ratio = 0.0) -> Ratio:
    """Squared relative uncertainty of more of one component.

    q = h² + f² of what is spun, q = h_b² of what is bought. A fleece still to be got may be spun finer, and
    may keep less.

    Parameters
    ----------
    bought : 1 for a bought yarn or thread, 0 for one to be spun
    u_hand : h, relative uncertainty of the grist of all that is spun
    u_batch : h_b, relative uncertainty of a label, for the whole batch
    u_kept : f, relative uncertainty of what is kept of more like its lot; 0 without a lot

    Returns
    -------
    q, a share squared

    Raises
    ------
    ValueError
        A negative uncertainty.

    Notes
    -----
    Valid for an amount of many skeins; what one skein has to itself is added with `strand_added_with`.

    References
    ----------
    JCGM 100, 5.1.6 (from memory).

    Examples
    --------
    >>> print(round(strand_added_square(bought=0, u_hand=0.04, u_batch=0.03, u_kept=0.03), 6))
    0.0025
    """
    _require_strand(bought, u_hand, u_batch, u_kept)
    spun = np.square(u_hand) + np.square(u_kept)
    return np.where(np.asarray(bought) == 1, np.square(u_batch), spun)[()]


@calculation
def strand_added_with(
    pool: Mass,
    share: Ratio,
    planned: Grist,
    hold: Length,
    bought: Ratio,
    u_hand: Ratio,
    variation: Ratio,
    u_batch: Ratio,
    u_ball: Ratio,
    finer: Ratio = 1.0,
) -> Length:
    """What more of a component adds to the uncertainty, beside its own square.

    k = h² · P + c² · ℓ / 2, P = M · g · q / x, of what is spun; k = h_b² · P + c_b² · ℓ / 2, without q, of
    what is bought. The same hands spin all of it too fine, and skein by skein it varies.

    Parameters
    ----------
    pool : M, mass of the component that is to come, for all projects together
    share : x, share of the component in the yarn's weight
    planned : g, planned grist of the yarn
    hold : ℓ, length in one skein or ball
    bought : 1 for a bought yarn or thread, 0 for one to be spun
    u_hand : h, relative uncertainty of the grist of all that is spun
    variation : c, coefficient of variation between skeins
    u_batch : h_b, relative uncertainty of a label, for the whole batch
    u_ball : c_b, relative uncertainty of one ball against the others
    finer : q, how much finer the spun strands come out than planned

    Returns
    -------
    k, a length; times twice what is added, it is added to the squared uncertainty

    Raises
    ------
    ValueError
        A negative mass or uncertainty, or a share, a grist, a skein or a ratio that is not above zero.

    Notes
    -----
    Valid for more of the same: spun by the same hands to the same plan, or of the same dye lot.

    References
    ----------
    JCGM 100, 5.2 and F.1.2, on correlated terms (from memory).

    Examples
    --------
    >>> print(round(strand_added_with(Quantity(400, "g"), 1, Quantity(2, "m/g"), Quantity(200, "m"), bought=0,
    ...     u_hand=0.1, variation=0.1, u_batch=0, u_ball=0), 6))  # 0.01 · 800 + 0.01 · 100
    9.0 meter
    """
    require_numbers(pool, share, planned, hold)
    _require_strand(bought, u_hand, variation, u_batch, u_ball)
    require_within(NOT_NEGATIVE, "A mass", pool)
    require_within(ABOVE_ZERO, "The share", share)
    require_within(ABOVE_ZERO, "The grist", planned)
    require_within(ABOVE_ZERO, "A skein must hold something.", hold)
    require_within(ABOVE_ZERO, "The ratio", finer)
    is_bought = np.asarray(bought) == 1
    reach = pool * planned / share * np.where(is_bought, 1.0, finer)[()]
    together = np.where(is_bought, np.square(u_batch), np.square(u_hand))[()]
    apart = np.where(is_bought, np.square(u_ball), np.square(variation))[()]
    return (reach * together + hold * apart / 2).to("m")


@calculation
def added_square(
    weight: Ratio,
    u_scale: Ratio,
    in_skeins: Length,
    skeins_doubt: Length,
    square_1: Ratio,
    square_2: Ratio | None = None,
    square_3: Ratio | None = None,
    square_4: Ratio | None = None,
) -> Ratio:
    """Squared relative uncertainty of more yarn.

    Q = max q i + (w · u_S / S)² + ((1 - w) · r)². Whatever is wrong about the skeins is wrong about a grist learned
    from them.

    Parameters
    ----------
    weight : w, weight of the skeins against the plan
    u_scale : r, relative uncertainty of the scale
    in_skeins : S, length in skeins; nothing is learned without any
    skeins_doubt : u_S, standard uncertainty of the skeins together
    square_1, square_2, square_3, square_4 : q i, that of each component

    Returns
    -------
    Q, a share squared

    Raises
    ------
    ValueError
        A negative uncertainty or length, or a weight outside 0 to 1.

    Notes
    -----
    Valid for one component, or one that is much less certain than the others; of two alike, either may run out first,
    which lowers the certainty.

    References
    ----------
    JCGM 100, 5.1.2 and F.1.2 (from memory).

    Examples
    --------
    >>> print(round(added_square(0.75, 0.02, Quantity(100, "m"), Quantity(4, "m"), square_1=0.0064), 6))
    0.007325
    """
    squares = [each for each in (square_1, square_2, square_3, square_4) if each is not None]
    require_numbers(*squares)
    require_within(NOT_NEGATIVE, "A squared uncertainty", *squares)
    learned = _learned(weight, u_scale, in_skeins, skeins_doubt)
    largest = squares[0]
    for each in squares[1:]:
        largest = np.maximum(largest, each)
    return largest + np.square(learned * skeins_doubt.m_as("m")) + np.square((1 - weight) * u_scale)


@calculation
def added_with(
    weight: Ratio,
    u_scale: Ratio,
    in_skeins: Length,
    skeins_doubt: Length,
    to_come: Length,
    with_1: Length,
    with_2: Length | None = None,
    with_3: Length | None = None,
    with_4: Length | None = None,
) -> Length:
    """What more yarn adds to the uncertainty, beside its own square.

    K = max k i + u_S² · (1 + w · M / S) · w / S + M · ((1 - w) · r)². What is there and what is added are off together.

    Parameters
    ----------
    weight : w, weight of the skeins against the plan
    u_scale : r, relative uncertainty of the scale
    in_skeins : S, length in skeins; nothing is learned without any
    skeins_doubt : u_S, standard uncertainty of the skeins together
    to_come : M, length that is still to come
    with_1, with_2, with_3, with_4 : k i, that of each component

    Returns
    -------
    K, a length

    Raises
    ------
    ValueError
        A negative uncertainty or length, or a weight outside 0 to 1.

    Notes
    -----
    Valid for one component, or one that is much less certain than the others.

    References
    ----------
    JCGM 100, 5.2 and F.1.2, on correlated terms (from memory).

    Examples
    --------
    >>> print(round(added_with(0.75, 0.02, Quantity(100, "m"), Quantity(4, "m"), Quantity(200, "m"),
    ...     with_1=Quantity(3, "m")), 6))
    3.305 meter
    """
    lengths = [each for each in (with_1, with_2, with_3, with_4) if each is not None]
    require_numbers(to_come, *lengths)
    require_within(NOT_NEGATIVE, "A length", *lengths)
    learned = _learned(weight, u_scale, in_skeins, skeins_doubt)
    largest = lengths[0]
    for each in lengths[1:]:
        largest = np.maximum(largest, each)
    coming = np.maximum(to_come.m_as("m"), 0.0)
    doubt = skeins_doubt.m_as("m")
    of_skeins = np.square(doubt) * (1 + learned * coming) * learned
    return largest + Quantity(of_skeins + coming * np.square((1 - weight) * u_scale), "m")


def _learned(weight, u_scale, in_skeins, skeins_doubt):
    """w / S, 0 without skeins."""
    require_numbers(weight, u_scale, in_skeins, skeins_doubt)
    require_within(PART, "The weight", weight)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_scale, skeins_doubt)
    require_within(NOT_NEGATIVE, "The length in skeins", in_skeins)
    return quotient(weight, in_skeins.m_as("m"))


def _require_strand(bought: Ratio, *doubts) -> None:
    require_numbers(bought, *doubts)
    require_within(NOT_NEGATIVE, "A standard uncertainty", *doubts)
