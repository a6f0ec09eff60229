"""The uncertainty of a skein's grist, from its length and the scale."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.reference.words import rounded
from workbookgen.units import Grist, Length, Ratio

ROUGH = 0.5  # beyond it no share is told; common practice, no source


@calculation
def grist_within(length: Length, uncertainty: Length, u_scale: Ratio) -> Ratio:
    """Expanded uncertainty of a grist, as a share.

    w = 2 · √((u / L)² + s²). For a quotient, relative uncertainties add in quadrature; two standard uncertainties cover about 95 percent.

    Parameters
    ----------
    length : L, finished length of the skein
    uncertainty : u, its standard uncertainty
    u_scale : s, relative standard uncertainty of the scale

    Returns
    -------
    w, a share of the grist

    Raises
    ------
    ValueError
        A length that is not above zero, or a negative uncertainty.

    Notes
    -----
    Valid for a weight of many scale steps: for a skein that weighs only a few steps, the step itself counts more.

    References
    ----------
    JCGM 100, 5.1.6 and 6.2.1 (from memory).

    Examples
    --------
    >>> print(grist_within(Quantity(200, "m"), Quantity(6, "m"), u_scale=0.04))
    0.1
    """
    require_within(ABOVE_ZERO, "The length", length)
    require_within(NOT_NEGATIVE, "A standard uncertainty", uncertainty)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_scale)
    return 2 * np.hypot((uncertainty / length).m_as(""), u_scale)


@calculation
def grist_words(within: Ratio, grist: Grist) -> str:
    """How close a grist very likely is, in words.

    words = within, in percent. One decimal, since skeins differ by more. Beyond 50% no number says anything: so little was wound, or measured so roughly.

    Parameters
    ----------
    within : share by which the grist may be off
    grist : the grist; nothing is said about an unknown one

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        A negative share, or a grist that is not above zero.

    Notes
    -----
    Valid for an uncertainty with several causes, none of them dominant.

    References
    ----------
    JCGM 100, 6.2.1 and G.6.6 (from memory).

    Examples
    --------
    >>> print(grist_words(0.054, Quantity(900, "yd/lb")))
    very likely within 5.4%
    """
    require_within(NOT_NEGATIVE, "The share", within)
    require_within(ABOVE_ZERO, "The grist", grist)
    return by_element(lambda each: "known only roughly: wind more" if round(each, 9) > ROUGH else f"very likely within {rounded(each * 100, 1)}%", within)
