"""What weighing before and after a step shows: losses and yields of your own."""

import numpy as np

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.fiber.stages import only_damp
from workbookgen.reference.limits import ABOVE_ZERO, NO_MASS, NOT_NEGATIVE, require_within
from workbookgen.units import Mass, Ratio

TOO_MUCH = "A step cannot add mass: dry it and weigh again."


@calculation
def seen_loss(before: Mass, after: Mass) -> Ratio:
    """Share lost in a step, weighed before and after.

    l = 1 - a / b, and 0 where a is a little more. Two weighings of one lot make a record of your own; a gain of up to
    5% is water from damper air, and nothing lost.

    Parameters
    ----------
    before : b, mass on the scale before the step
    after : a, mass on the scale after it

    Returns
    -------
    l, a share

    Raises
    ------
    ValueError
        A mass before that is not above zero, or a mass after that is negative, or over 5% more.

    Notes
    -----
    Valid for both masses in the same state of moisture.

    References
    ----------
    Definition of the loss. Wool of 18.25 percent regain weighs 4 percent more than of 13.6 (ASTM D1909-13, read).

    Examples
    --------
    >>> print(seen_loss(Quantity(1000, "g"), Quantity(750, "g")))
    0.25
    """
    require_within(ABOVE_ZERO, "The mass before the step", before)
    require((after >= NO_MASS) & only_damp(after, before), TOO_MUCH)
    return np.maximum(0.0, 1 - (after / before).m_as(""))[()]


@calculation
def seen_skirting(before: Mass, after: Mass, stage: Ratio) -> Ratio:
    """Share skirted off a raw fleece, weighed before and after.

    l = 1 - a / b, and 0 where a is a little more, of a lot bought as raw fleece. A lot bought skirted says nothing
    about skirting.

    Parameters
    ----------
    before : b, mass as bought
    after : a, mass after skirting
    stage : stage at which the lot was bought, 1 for raw fleece

    Returns
    -------
    l, a share

    Raises
    ------
    ValueError
        A lot that was not bought raw, or impossible masses.

    Notes
    -----
    Valid for both masses in the same state of moisture.

    References
    ----------
    Definition of the loss.

    Examples
    --------
    >>> print(seen_skirting(Quantity(1000, "g"), Quantity(750, "g"), stage=1))
    0.25
    """
    require(stage == 1, "Only a raw fleece is skirted.")
    return seen_loss(before, after)


@calculation
def seen_yield(before: Mass, after: Mass) -> Ratio:
    """Scoured yield, weighed before and after.

    y = a / b. The trade states scouring by what it leaves.

    Parameters
    ----------
    before : b, mass before scouring
    after : a, mass after scouring, dry

    Returns
    -------
    y, a share

    Raises
    ------
    ValueError
        A mass before that is not above zero, or a mass after that is negative or above it.

    Notes
    -----
    Valid for wool dried in the air of the same room.

    References
    ----------
    Definition of the yield.

    Examples
    --------
    >>> print(seen_yield(Quantity(900, "g"), Quantity(450, "g")))
    0.5
    """
    require_within(ABOVE_ZERO, "The mass before the step", before)
    require((after >= NO_MASS) & (after <= before), TOO_MUCH)
    return (after / before).m_as("")


@calculation
def share_lost(before: Mass, after: Mass) -> Ratio:
    """Share of its mass that a lot loses in a step.

    q = 1 - after / before, and 0 where it gained a little. Your own figure is better than any guide; a gain of up to 5%
    is water from damper air.

    Parameters
    ----------
    before : mass before the step
    after : mass after it

    Returns
    -------
    q, a share

    Raises
    ------
    ValueError
        A mass before that is not above zero, or a mass after that is negative, or over 5% more.

    Notes
    -----
    Valid for both masses in the same state of moisture.

    References
    ----------
    Definition of the loss. Wool of 18.25 percent regain weighs 4 percent more than of 13.6 (ASTM D1909-13, read).

    Examples
    --------
    >>> print(share_lost(Quantity(400, "g"), Quantity(300, "g")))
    0.25
    """
    require_within(ABOVE_ZERO, "The mass before the step", before)
    require_within(NOT_NEGATIVE, "The mass after the step", after)
    require(only_damp(after, before), TOO_MUCH)
    return np.maximum(0.0, 1 - (after / before).m_as(""))[()]


@calculation
def share_kept(start: Mass, yarn: Mass) -> Ratio:
    """Share of a lot that becomes yarn.

    k = y / a, at most 1. It puts all steps into one figure. Yarn that weighs more has taken up water: no more fiber
    than all of it is kept.

    Parameters
    ----------
    start : a, mass as bought
    yarn : y, mass of the yarn

    Returns
    -------
    k, a share

    Raises
    ------
    ValueError
        A mass at the start that is not above zero, or a negative mass of yarn.

    Notes
    -----
    Valid for both masses in the same state of moisture.

    References
    ----------
    Definition of the share kept.

    Examples
    --------
    >>> print(share_kept(Quantity(1000, "g"), Quantity(350, "g")))
    0.35
    """
    require_within(ABOVE_ZERO, "The mass at the start", start)
    require_within(NOT_NEGATIVE, "The mass of the yarn", yarn)
    return np.minimum(1.0, (yarn / start).m_as(""))[()]
