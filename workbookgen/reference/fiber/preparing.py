"""Carding and combing: what each leaves, and a yield found on your own samples.

Carding keeps long and short fibers, and loses little; combing keeps the long ones, and what stays in the comb is lost
to the yarn. So a lot states which of the two it goes through, and is kept separate from lots of the other. A lot that
states neither is carded.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.fiber.seen import seen_loss
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.units import Mass, Ratio

WAYS = ("carding", "combing")
CARDING, COMBING = WAYS


def _is_combed(way):
    """Whether fiber is combed; it is carded where neither is stated."""
    return by_element(_combing, CARDING if way is None else way)


def _combing(way) -> bool:
    folded = str(way).casefold()
    require(folded in WAYS, f'"{way}" is not a known way of preparing fiber: carding or combing.')
    return folded == COMBING


@calculation
def preparation_loss(carding: Ratio | None = None, combing: Ratio | None = None, way: str | None = None) -> Ratio:
    """Loss to expect from the way in which fiber is prepared.

    loss = that of combing for combed fiber, else that of carding. A comb holds the short fibers back, so its loss is
    several times that of cards.

    Parameters
    ----------
    carding : the loss usual in carding, a share
    combing : the share usually left in the comb
    way : carding or combing; carding where neither is stated

    Returns
    -------
    the loss, a share

    Raises
    ------
    ValueError
        A way that is neither of them, or no figure for it.

    Notes
    -----
    Valid for fiber that is prepared once, in one of the two ways.

    References
    ----------
    Carding 2 to 10 percent, combing 20 to 40 percent: common practice, no source.

    Examples
    --------
    >>> print(preparation_loss(carding=0.05, combing=0.3, way="combing"))
    0.3
    """
    require_numbers(carding, combing)
    combed = np.asarray(_is_combed(way), dtype=bool)
    loss = np.where(combed, np.nan if combing is None else combing, np.nan if carding is None else carding)
    require(np.isfinite(loss), "No loss is known for this way of preparing.")
    return loss[()]


@calculation
def preparation_uncertainty(u_carding: Ratio, u_combing: Ratio, way: str | None = None) -> Ratio:
    """Uncertainty of the loss in preparing.

    r = that of combing for combed fiber, else that of carding. It depends on the way in which the lot is prepared.

    Parameters
    ----------
    u_carding : r of carding, as a share of what is kept
    u_combing : r of combing
    way : carding or combing; carding where neither is stated

    Returns
    -------
    r, a share

    Raises
    ------
    ValueError
        A way that is neither of them, or a negative uncertainty.

    Notes
    -----
    Valid for fiber that is prepared once, in one of the two ways.

    References
    ----------
    JCGM 100, 4.3.7, of the ranges 2 to 10 and 20 to 40 percent (from memory); the ranges: common practice, no source.

    Examples
    --------
    >>> print(preparation_uncertainty(u_carding=0.02, u_combing=0.08))
    0.02
    """
    for doubt in (u_carding, u_combing):
        require_within(NOT_NEGATIVE, "A standard uncertainty", doubt)
    combed = np.asarray(_is_combed(way), dtype=bool)
    return np.where(combed, u_combing, u_carding)[()]


@calculation
def second_loss(
    way: str | None = None, own: Ratio | None = None, carding: Ratio | None = None, combing: Ratio | None = None
) -> Ratio:
    """Loss of a second preparation.

    loss = your own figure, else that of its way, else 0. Fiber that is carded and then combed, or top that is carded
    once more, loses again.

    Parameters
    ----------
    way : carding or combing, if there is a second preparation
    own : your own figure for its loss, a share
    carding : the loss usual in carding, a share
    combing : the share usually left in the comb

    Returns
    -------
    the loss, a share of what the first preparation left; 0 where there is no second

    Raises
    ------
    ValueError
        A way that is neither of them, or no figure for it.

    Notes
    -----
    Valid for a second preparation that takes as much as it would as the first: combed fiber loses less.

    References
    ----------
    Carding 2 to 10 percent, combing 20 to 40 percent: common practice, no source.

    Examples
    --------
    >>> print(second_loss("combing", carding=0.05, combing=0.3))
    0.3
    """
    require_numbers(own)
    if own is not None:
        return own
    return 0.0 if way is None else preparation_loss(carding, combing, way)


@calculation
def second_uncertainty(
    u_own: Ratio, u_carding: Ratio, u_combing: Ratio, own: Ratio | None = None, way: str | None = None
) -> Ratio:
    """Uncertainty of the loss of a second preparation.

    r = that of your own figure, else that of its way, else 0. A step that is not done adds no uncertainty.

    Parameters
    ----------
    u_own : r of your own figure, as a share of what is kept
    u_carding : r of carding
    u_combing : r of combing
    own : your own figure for the loss, if there is one
    way : carding or combing, if there is a second preparation

    Returns
    -------
    r, a share

    Raises
    ------
    ValueError
        A way that is neither of them, or a negative uncertainty.

    Notes
    -----
    Valid for a second preparation whose loss is independent of the first.

    References
    ----------
    JCGM 100, 4.3.7, of the ranges 2 to 10 and 20 to 40 percent (from memory); the ranges: common practice, no source.

    Examples
    --------
    >>> print(second_uncertainty(0.02, u_carding=0.03, u_combing=0.08, way="combing"))
    0.08
    """
    for doubt in (u_own, u_carding, u_combing):
        require_within(NOT_NEGATIVE, "A standard uncertainty", doubt)
    require_numbers(own)
    if own is not None:
        return np.where(own > 0, u_own, 0.0)[()]
    return 0.0 if way is None else preparation_uncertainty(u_carding, u_combing, way)


@calculation
def seen_in_preparing(
    before: Mass, after: Mass, by: str, way: str | None = None, second_way: str | None = None, own_second: Ratio = 0.0
) -> Ratio:
    """Share that a lot lost in one way of preparing.

    loss = 1 − after / before, and 0 where it gained a little. Only lots prepared in that one way count.

    Parameters
    ----------
    before : mass weighed after scouring
    after : mass weighed after carding or combing
    by : the way in question, carding or combing
    way : the way in which the lot was prepared; carding where nothing is said
    second_way : the way of a second preparation, if there was one
    own_second : your own figure for what that took, 0 if none

    Returns
    -------
    the loss, a share

    Raises
    ------
    ValueError
        A lot prepared in the other way, or twice, or a gain of over 5%.

    Notes
    -----
    Valid for masses weighed at the same moisture.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(seen_in_preparing(Quantity(100, "g"), Quantity(75, "g"), by="combing", way="combing"))
    0.25
    """
    combed = np.asarray(_is_combed(way), dtype=bool)
    require(combed == np.asarray(_is_combed(by), dtype=bool), "The lot was prepared in the other way.")
    require((second_way is None) & (own_second <= 0), "The lot was prepared twice: the loss of each is not known.")
    return seen_loss(before, after)


@calculation
def yield_in_use(sampled: Ratio | None = None, published: Ratio | None = None) -> Ratio:
    """Expected scoured yield of a lot.

    y = that of its own samples, else the guide's. A washed handful of your own fleece says more than the published
    figure of its breed.

    Parameters
    ----------
    sampled : mean yield of handfuls of this lot that were washed
    published : the yield that the guide expects

    Returns
    -------
    y, a share

    Raises
    ------
    ValueError
        Neither is known, or one that is not a number.

    Notes
    -----
    Valid for handfuls taken from several parts of the fleece, and washed as the lot will be.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(yield_in_use(sampled=0.55, published=0.5))
    0.55
    """
    require_numbers(sampled, published)
    known = published if sampled is None else sampled
    require(known is not None, "No yield is known: wash a handful, or choose a breed.")
    return known


@calculation
def spinning_loss_in_use(sampled: Ratio | None = None, published: Ratio | None = None) -> Ratio:
    """Expected loss of a lot in spinning.

    l = that of its own samples, else the guide's. What these hands lost of this very fiber says more than a usual
    figure.

    Parameters
    ----------
    sampled : mean loss of the samples that were spun of this lot
    published : the loss that the guide expects

    Returns
    -------
    l, a share

    Raises
    ------
    ValueError
        Neither is known, or one that is not a number.

    Notes
    -----
    Valid for samples spun and plied as the lot will be.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(spinning_loss_in_use(sampled=0.08, published=0.03))
    0.08
    """
    require_numbers(sampled, published)
    known = published if sampled is None else sampled
    require(known is not None, "No loss is known: spin a sample, or choose a breed.")
    return known


@calculation
def yield_uncertainty(
    u_own: Ratio,
    u_handful: Ratio,
    samples: Ratio | None = None,
    spread: Ratio | None = None,
    published: Ratio | None = None,
) -> Ratio:
    """Uncertainty of the expected yield of a lot.

    r = h / √k with k samples, else s / y by the guide, else u. Handfuls vary across a fleece; their mean is more
    certain.

    Parameters
    ----------
    u_own : u, that of your own figure, as a share of what is kept
    u_handful : h, standard uncertainty of one handful, as a share of what is kept
    samples : k, how many handfuls of the lot were washed
    spread : s, standard uncertainty of the guide's yield
    published : y, the guide's yield

    Returns
    -------
    r, a share

    Raises
    ------
    ValueError
        A negative uncertainty, a negative number of samples, or a published yield that is not above zero.

    Notes
    -----
    Valid for handfuls taken from different parts of the fleece.

    References
    ----------
    JCGM 100, 4.2.3, the uncertainty of a mean (from memory).

    Examples
    --------
    >>> print(yield_uncertainty(u_own=0.03, u_handful=0.06, samples=9))
    0.02
    """
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_own)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_handful)
    by_guide = u_own
    if spread is not None and published is not None:
        require_within(NOT_NEGATIVE, "A standard uncertainty", spread)
        require_within(ABOVE_ZERO, "The expected yield", published)
        by_guide = spread / published
    if samples is None:
        return by_guide
    require_within(NOT_NEGATIVE, "The number of samples", samples)
    return np.where(samples > 0, u_handful / np.sqrt(np.maximum(samples, 1)), by_guide)[()]
