"""Backward, from yarn to fleece: how much to have at each step, and how much to buy.

The same figures as forward, by division. Nothing has been weighed yet, so your own figure and the guide are all there
is.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.fiber.stages import (
    SCOURING,
    SKIRTING,
    SPINNING,
    bought_after,
    kept_in_preparing,
    kept_of_loss,
    kept_of_yield,
)
from workbookgen.reference.limits import NOT_NEGATIVE, require_within
from workbookgen.units import Mass, Ratio

BY_HAND = 4  # the last stage of what is still to be spun
LEAST_COUNTED_ON = 0.1


@calculation
def before_spinning(yarn: Mass, stage: Ratio, own: Ratio | None = None, guide: Ratio | None = None) -> Mass:
    """Mass of prepared fiber for a mass of yarn.

    a = b if bought as yarn; else b / (1 - loss). Divide by the share kept: adding the loss gives too little.

    Parameters
    ----------
    yarn : b, mass of the yarn wanted
    stage : stage at which a lot is bought, 1 to 5
    own : your own figure for the loss, a share
    guide : the loss that the guide expects, a share

    Returns
    -------
    a, a mass

    Raises
    ------
    ValueError
        A negative mass, a loss outside 0 to under 1, or nothing known of the step.

    Notes
    -----
    Valid for fiber and yarn in the same state of moisture.

    References
    ----------
    Losses of 1 to 5 percent: common practice, no source.

    Examples
    --------
    >>> print(before_spinning(Quantity(95, "g"), stage=1, own=0.05))
    100.0 gram
    """
    return _checked(yarn) / kept_of_loss(bought_after(SPINNING, stage), own, guide)


@calculation
def before_preparation(
    prepared: Mass, stage: Ratio, own: Ratio | None = None, guide: Ratio | None = None, second: Ratio = 0.0
) -> Mass:
    """Mass of washed fiber for a mass of prepared fiber.

    a = b if bought so or later; else b / ((1 - loss) · (1 - second)). What combs and cards will hold back has to be
    there first.

    Parameters
    ----------
    prepared : b, mass wanted after preparation
    stage : stage at which a lot is bought, 1 to 5
    own : your own figure for the loss, a share
    guide : the loss that the guide expects, a share
    second : the loss of a second preparation, 0 where there is none

    Returns
    -------
    a, a mass

    Raises
    ------
    ValueError
        A negative mass, a loss outside 0 to under 1, or nothing known of the step.

    Notes
    -----
    Valid for fiber in the same state of moisture before and after.

    References
    ----------
    Carding 2 to 10, combing 20 to 40 percent: common practice, no source.

    Examples
    --------
    >>> print(before_preparation(Quantity(60, "g"), stage=1, own=0.25))
    80.0 gram
    """
    return _checked(prepared) / kept_in_preparing(stage, own, guide, second)


@calculation
def before_scouring(scoured: Mass, stage: Ratio, own: Ratio | None = None, guide: Ratio | None = None) -> Mass:
    """Mass of skirted fleece for a mass of washed fiber.

    a = b if bought washed or later; else b / yield. Grease and dirt are bought along with the fleece.

    Parameters
    ----------
    scoured : b, mass wanted after scouring
    stage : stage at which a lot is bought, 1 to 5
    own : your own figure for the yield, a share
    guide : the yield that the guide expects, a share

    Returns
    -------
    a, a mass

    Raises
    ------
    ValueError
        A negative mass, a yield not above 0 and up to 1, or nothing known of the step.

    Notes
    -----
    Valid for air-dry wool; a yield belongs to the regain at which it was stated.

    References
    ----------
    Yields of breeds from extension sheets and breed directories (read), as given in the guide.

    Examples
    --------
    >>> print(before_scouring(Quantity(100, "g"), stage=1, own=0.5))
    200.0 gram
    """
    return _checked(scoured) / kept_of_yield(bought_after(SCOURING, stage), own, guide)


@calculation
def before_skirting(skirted: Mass, stage: Ratio, own: Ratio | None = None, guide: Ratio | None = None) -> Mass:
    """Mass of raw fleece for a mass of skirted fleece.

    a = b if bought skirted or later; else b / (1 - loss). The soiled edges are bought along with the fleece.

    Parameters
    ----------
    skirted : b, mass wanted after skirting
    stage : stage at which a lot is bought, 1 to 5
    own : your own figure for the loss, a share
    guide : the loss that the guide expects, a share

    Returns
    -------
    a, a mass

    Raises
    ------
    ValueError
        A negative mass, a loss outside 0 to under 1, or nothing known of the step.

    Notes
    -----
    Valid for fleece in the same state of moisture before and after.

    References
    ----------
    Losses of 5 to 25 percent: common practice, no source.

    Examples
    --------
    >>> print(before_skirting(Quantity(900, "g"), stage=1, own=0.1))
    1000.0 gram
    """
    return _checked(skirted) / kept_of_loss(bought_after(SKIRTING, stage), own, guide)


def _checked(mass):
    require_within(NOT_NEGATIVE, "The mass wanted", mass)
    return mass


@calculation
def surely_before(bought: Mass, stage: Ratio, u_kept: Ratio, u_grist: Ratio, u_batch: Ratio, coverage: Ratio) -> Mass:
    """Mass to buy, to be as sure as you ask that it gives the yarn.

    w = a / (1 - z · √(r² + g²)). The middle figure gives too little half the time: a fleece may yield less than its
    breed's middle, and be spun thicker than planned.

    Parameters
    ----------
    bought : a, mass to buy by the middle figures
    stage : stage at which it is bought, 1 raw fleece to 5 yarn
    u_kept : r, relative standard uncertainty of what is kept of it
    u_grist : g, that of the grist of yarn to be spun
    u_batch : g, that of a label, where it is bought as yarn
    coverage : z, standard uncertainties to allow

    Returns
    -------
    w, a mass

    Raises
    ------
    ValueError
        A negative mass or uncertainty, or doubt that leaves less than a tenth to count on.

    Notes
    -----
    Valid for independent uncertainties; what the yarn wanted may be off is not among them.

    References
    ----------
    JCGM 100, 5.1.6, the relative form for a product (from memory).

    Examples
    --------
    >>> print(round(surely_before(Quantity(900, "g"), stage=1, u_kept=0.06, u_grist=0.08, u_batch=0.03, coverage=1), 6))
    1000.0 gram
    """
    require_numbers(stage, coverage)
    require_within(NOT_NEGATIVE, "The mass", bought)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_kept, u_grist, u_batch)
    counted_on = 1 - coverage * np.hypot(u_kept, np.where(np.asarray(stage) > BY_HAND, u_batch, u_grist))
    require(counted_on > LEAST_COUNTED_ON, "So much doubt leaves nothing to count on.")
    return bought / counted_on[()]
