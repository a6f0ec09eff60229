"""The uncertainty of a skein's grist, from its length and the scale."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.reference.tolerances import HAIR
from workbookgen.reference.words import rounded
from workbookgen.units import Grist, Length, Mass, Quantity, Ratio

ENOUGH_WEIGHTS = 4  # that show how coarse a scale is; common practice, no source
ROUGH = 0.5  # beyond it no share is stated; common practice, no source


@calculation
def is_coarse(gross: Mass, in_ounces: Ratio) -> Ratio:
    """Whether a weight is one that a coarse kitchen scale shows.

    c = 1 for a multiple of 5 g, in ounces of 0.25 oz; else c = 0. Of a finer scale it is one weight in five.

    Parameters
    ----------
    gross : weight as shown on the scale
    in_ounces : 1 for a weight typed in ounces, 0 for grams

    Returns
    -------
    c, 1 or 0

    Raises
    ------
    ValueError
        A negative weight.

    Notes
    -----
    Valid for a weight as it was shown.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(is_coarse(Quantity(45, "g"), in_ounces=0))
    1.0
    """
    require_numbers(in_ounces)
    require_within(NOT_NEGATIVE, "A weight", gross)
    fives, quarters = _is_multiple(gross.m_as("g"), 1 / 5), _is_multiple(gross.m_as("oz"), 4)
    return np.where(np.asarray(in_ounces) == 1, quarters, fives)[()] * 1.0


@calculation
def scale_step(gross: Mass, in_ounces: Ratio, weighed: Ratio | None = None, coarse: Ratio | None = None) -> Mass:
    """The step of the scale on which a skein was weighed.

    d = 1 g, if the weight is whole grams, else 0.1 g; in ounces, d = 0.1 oz, else 0.05 oz, else 0.01 oz, the coarsest
    of which the weight is a multiple. What was typed tells how finely the scale shows it. If it is a multiple of 5 g,
    or of 0.25 oz, and so are all weights in the log, four or more, the scale shows no others.

    Parameters
    ----------
    gross : weight as shown on the scale
    in_ounces : 1 for a weight typed in ounces, 0 for grams
    weighed : how many skeins of the log are weighed
    coarse : how many of these weights are such multiples

    Returns
    -------
    d, a mass

    Raises
    ------
    ValueError
        A negative weight.

    Notes
    -----
    Valid for a weight as it was shown; one that happens to be round is taken for a rounded one. On a finer scale, four
    weights are such multiples by chance in one log of 600.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(scale_step(Quantity(57, "g"), in_ounces=0))
    1.0 gram
    """
    require_numbers(in_ounces, weighed, coarse)
    require_within(NOT_NEGATIVE, "A weight", gross)
    ounces, grams = gross.m_as("oz"), gross.m_as("g")
    all_coarse = np.asarray(False)
    if weighed is not None and coarse is not None:
        all_coarse = (np.asarray(weighed) >= ENOUGH_WEIGHTS) & (np.abs(np.asarray(coarse) - weighed) < HAIR)
    of_ounces = np.where(_is_multiple(ounces, 10), 0.1, np.where(_is_multiple(ounces, 20), 0.05, 0.01))
    of_ounces = np.where(all_coarse & _is_multiple(ounces, 4), 0.25, of_ounces)
    of_grams = np.where(_is_multiple(grams, 1), 1.0, 0.1)
    of_grams = np.where(all_coarse & _is_multiple(grams, 1 / 5), 5.0, of_grams)
    return Quantity(np.where(np.asarray(in_ounces) == 1, Quantity(of_ounces, "oz").m_as("g"), of_grams)[()], "g")


def _is_multiple(amount, parts: float):
    return np.abs(amount * parts - np.round(amount * parts)) < HAIR


@calculation
def grist_within(
    length: Length, uncertainty: Length, u_scale: Ratio, net: Mass, step: Mass, tare: Mass | None = None
) -> Ratio:
    """Expanded uncertainty of a grist, as a share.

    w = 2 · √((u / L)² + s² + k · (d / m)² / 12). For a quotient, relative uncertainties add in quadrature; two standard
    uncertainties cover about 95 percent. The weight lies within half a step of what the scale shows, and so does that
    of the bag.

    Parameters
    ----------
    length : L, finished length of the skein
    uncertainty : u, its standard uncertainty
    u_scale : s, relative standard uncertainty of the scale
    net : m, weight of the yarn alone
    step : d, the step of the scale
    tare : weight of bag or tag; with one, k = 2 readings of the scale, else 1

    Returns
    -------
    w, a share of the grist

    Raises
    ------
    ValueError
        A length or a weight that is not above zero, or a negative uncertainty, step or tare.

    Notes
    -----
    Valid for a scale that shows the nearest step.

    References
    ----------
    JCGM 100, 5.1.6, 6.2.1 and F.2.2.1, the step of an indication (from memory).

    Examples
    --------
    >>> print(round(grist_within(Quantity(200, "m"), Quantity(6, "m"), u_scale=0.04, net=Quantity(100, "g"),
    ...     step=Quantity(0.1, "g")), 6))
    0.100002
    """
    require_within(ABOVE_ZERO, "The length", length)
    require_within(ABOVE_ZERO, "The weight", net)
    require_within(NOT_NEGATIVE, "A standard uncertainty", uncertainty)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_scale)
    require_within(NOT_NEGATIVE, "The step", step)
    readings = 1.0
    if tare is not None:
        require_within(NOT_NEGATIVE, "The tare", tare)
        readings = np.where(tare.magnitude > 0, 2.0, 1.0)[()]
    squares = (
        np.square((uncertainty / length).m_as(""))
        + np.square(u_scale)
        + readings * np.square((step / net).m_as("")) / 12
    )
    return 2 * np.sqrt(squares)


@calculation
def grist_words(within: Ratio, grist: Grist) -> str:
    """How close a grist very likely is, in words.

    words = within, in percent. One decimal, since skeins differ by more. Beyond 50% no number says anything: so little
    was wound, or measured so roughly.

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
    return by_element(
        lambda each: (
            "known roughly: wind more" if round(each, 9) > ROUGH else f"very likely within {rounded(each * 100, 1)}%"
        ),
        within,
    )
