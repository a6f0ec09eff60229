"""What weighing before and after a step shows: losses and yields of your own."""

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, NO_MASS, NOT_NEGATIVE, require_within
from workbookgen.units import Mass, Ratio


@calculation
def seen_loss(before: Mass, after: Mass) -> Ratio:
    """Share lost in a step, weighed before and after.

    l = 1 - a / b. Two weighings of one lot make a record of your own.

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
        A mass before that is not above zero, or a mass after that is negative or above it.

    Notes
    -----
    Valid for both masses in the same state of moisture.

    References
    ----------
    Definition of the loss.

    Examples
    --------
    >>> print(seen_loss(Quantity(1000, "g"), Quantity(750, "g")))
    0.25
    """
    require_within(ABOVE_ZERO, "The mass before the step", before)
    require((after >= NO_MASS) & (after <= before), "A step cannot add mass: dry it and weigh again.")
    return 1 - (after / before).m_as("")


@calculation
def seen_skirting(before: Mass, after: Mass, stage: Ratio) -> Ratio:
    """Share skirted off a raw fleece, weighed before and after.

    l = 1 - a / b, of a lot bought as raw fleece. A lot bought skirted says nothing about skirting.

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
    return 1 - seen_loss(before, after)


@calculation
def share_lost(before: Mass, after: Mass) -> Ratio:
    """Share of its mass that a lot loses in a step.

    q = 1 - after / before. Your own figure is better than any guide.

    Parameters
    ----------
    before : mass before the step
    after : mass after it

    Returns
    -------
    q, a share; below zero if the lot has taken up moisture

    Raises
    ------
    ValueError
        A mass before that is not above zero, or a negative mass after.

    Notes
    -----
    Valid for both masses in the same state of moisture.

    References
    ----------
    Definition of the loss.

    Examples
    --------
    >>> print(share_lost(Quantity(400, "g"), Quantity(300, "g")))
    0.25
    """
    require_within(ABOVE_ZERO, "The mass before the step", before)
    require_within(NOT_NEGATIVE, "The mass after the step", after)
    return 1 - (after / before).m_as("")


@calculation
def share_kept(start: Mass, yarn: Mass) -> Ratio:
    """Share of a lot that becomes yarn.

    k = y / a. It puts all steps into one figure.

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
    return (yarn / start).m_as("")
