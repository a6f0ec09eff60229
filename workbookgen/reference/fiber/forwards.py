"""Forward, from fleece to yarn: what each step leaves of a lot.

At each step the scale beats your own figure, and your own figure beats the guide. What a step
leaves is what goes into the next, so the four functions form a chain. A later weighing corrects what is only expected,
since there was at least that much; and a weighed step does not depend on those before it. Up to 5% more than before is
water from damper air, and stands as it was weighed.
"""

from functools import reduce

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.fiber.stages import (
    RAW,
    SCOURING,
    SKIRTING,
    SPINNING,
    bought_after,
    kept_in_preparing,
    kept_of_loss,
    kept_of_yield,
    only_damp,
    prepared_before,
)
from workbookgen.reference.limits import NOT_NEGATIVE, require_within
from workbookgen.units import Mass, Quantity, Ratio


@calculation
def after_skirting(
    weight: Mass,
    stage: Ratio,
    weighed: Mass | None = None,
    own: Ratio | None = None,
    guide: Ratio | None = None,
    scoured: Mass | None = None,
    prepared: Mass | None = None,
    spun: Mass | None = None,
) -> Mass:
    """Mass of a fleece after skirting.

    b = a if bought skirted or later; else as weighed; else a · (1 - loss), or what was weighed later if that is more.
    Skirting removes the soiled and matted edges.

    Parameters
    ----------
    weight : a, mass as bought
    stage : stage at which the lot was bought, 1 to 5
    weighed : mass on the scale after the step, if it was weighed
    own : your own figure for the loss, a share
    guide : the loss that the guide expects, a share
    scoured : mass weighed after scouring, if it was
    prepared : mass weighed after preparing, if it was
    spun : mass of the yarn, if it was weighed

    Returns
    -------
    b, a mass

    Raises
    ------
    ValueError
        A gain of over 5% in mass, a loss outside 0 to under 1, or nothing known of the step.

    Notes
    -----
    Valid for a raw fleece weighed in the same state of moisture before and after.

    References
    ----------
    Losses of 5 to 25 percent: common practice, no source.

    Examples
    --------
    >>> print(after_skirting(Quantity(1000, "g"), stage=1, own=0.1))
    900.0 gram
    """
    skipped = bought_after(SKIRTING, stage)
    if weighed is not None:
        return _on_the_scale(weight, weighed, skipped)
    return _expected(weight, kept_of_loss(skipped, own, guide), scoured, prepared, spun)


@calculation
def after_scouring(
    skirted: Mass | None = None,
    stage: Ratio = RAW,
    weighed: Mass | None = None,
    own: Ratio | None = None,
    guide: Ratio | None = None,
    prepared: Mass | None = None,
    spun: Mass | None = None,
    bought: Mass | None = None,
) -> Mass:
    """Mass of the fiber after scouring.

    b = a if bought washed or later; else as weighed; else a · yield, or what was weighed later if that is more.
    Scouring removes grease, suint and dust, often half the fleece.

    Parameters
    ----------
    skirted : a, mass after skirting; what was weighed after the step needs none
    stage : stage at which the lot was bought, 1 to 5; raw fleece if it is not said
    weighed : mass on the scale after the step, if it was weighed
    own : your own figure for the yield, a share
    guide : the yield that the guide expects, a share
    prepared : mass weighed after preparing, if it was
    spun : mass of the yarn, if it was weighed
    bought : mass as bought, the most that was weighed where a is not known

    Returns
    -------
    b, a mass

    Raises
    ------
    ValueError
        A gain of over 5% in mass, a yield not above 0 and up to 1, or nothing known of the step.

    Notes
    -----
    Valid for air-dry wool; a yield belongs to the regain at which it was stated.

    References
    ----------
    Yields of breeds from extension sheets and breed directories (read), as given in the guide.

    Examples
    --------
    >>> print(after_scouring(Quantity(900, "g"), stage=1, guide=0.5))
    450.0 gram
    """
    skipped = bought_after(SCOURING, stage)
    if weighed is not None:
        return _on_the_scale(skirted, weighed, skipped, bought)
    return _expected(skirted, kept_of_yield(skipped, own, guide), prepared, spun)


@calculation
def after_preparation(
    scoured: Mass | None = None,
    stage: Ratio = RAW,
    weighed: Mass | None = None,
    own: Ratio | None = None,
    guide: Ratio | None = None,
    second: Ratio | None = None,
    second_way: str | None = None,
    own_second: Ratio | None = None,
    spun: Mass | None = None,
    bought: Mass | None = None,
) -> Mass:
    """Mass of the fiber after combing or carding.

    b = a if bought so or later; else as weighed; else a · (1 - loss) · (1 - second), or the yarn's mass if that is
    more. Combs and cards hold back short and tangled fibers each time: what was bought prepared loses only in the
    second preparation.

    Parameters
    ----------
    scoured : a, mass after scouring; what was weighed after the step needs none
    stage : stage at which the lot was bought, 1 to 5; raw fleece if it is not said
    weighed : mass on the scale after the step, if it was weighed
    own : your own figure for the loss, a share
    guide : the loss that the guide expects, a share
    second : the loss of a second preparation, a share
    second_way : the way of a second preparation, if there is one
    own_second : your own figure for its loss, if you gave one; then second is known
    spun : mass of the yarn, if it was weighed
    bought : mass as bought, the most that was weighed where a is not known

    Returns
    -------
    b, a mass

    Raises
    ------
    ValueError
        A gain of over 5% in mass, a loss outside 0 to under 1, or nothing known of the step, or of a second one that
        has a figure.

    Notes
    -----
    Valid for fiber weighed in the same state of moisture before and after.

    References
    ----------
    Carding 2 to 10, combing 20 to 40 percent: common practice, no source.

    Examples
    --------
    >>> print(after_preparation(Quantity(450, "g"), stage=1, own=0.2))
    360.0 gram
    """
    require_numbers(second, own_second)
    require(own_second is None or second is not None, "Nothing is known of the second preparation.")
    if weighed is not None:
        return _on_the_scale(scoured, weighed, prepared_before(stage, second, second_way), bought)
    return _expected(scoured, kept_in_preparing(stage, own, guide, second, second_way), spun)


@calculation
def after_spinning(
    prepared: Mass | None = None,
    stage: Ratio = RAW,
    weighed: Mass | None = None,
    own: Ratio | None = None,
    guide: Ratio | None = None,
    bought: Mass | None = None,
) -> Mass:
    """Mass of the yarn that the fiber gives.

    b = a if bought as yarn; else as weighed; else a · (1 - loss). A little fiber drops at the wheel, and ends of
    singles remain on the bobbins.

    Parameters
    ----------
    prepared : a, mass after preparation; what was weighed after the step needs none
    stage : stage at which the lot was bought, 1 to 5; raw fleece if it is not said
    weighed : mass on the scale after the step, if it was weighed
    own : your own figure for the loss, a share
    guide : the loss that the guide expects, a share
    bought : mass as bought, the most that was weighed where a is not known

    Returns
    -------
    b, a mass

    Raises
    ------
    ValueError
        A gain of over 5% in mass, a loss outside 0 to under 1, or nothing known of the step.

    Notes
    -----
    Valid for fiber and yarn weighed in the same state of moisture.

    References
    ----------
    Losses of 1 to 5 percent: common practice, no source.

    Examples
    --------
    >>> print(after_spinning(Quantity(360, "g"), stage=1, weighed=Quantity(342, "g"), guide=0.03))
    342 gram
    """
    skipped = bought_after(SPINNING, stage)
    if weighed is not None:
        return _on_the_scale(prepared, weighed, skipped, bought)
    return _expected(prepared, kept_of_loss(skipped, own, guide))


def _checked(mass):
    require(mass is not None, "The mass before the step is not known.")
    require_within(NOT_NEGATIVE, "The mass before the step", mass)
    return mass


def _expected(before, kept, *later):
    """What a step is expected to leave: at least what was weighed later, and at most what there was before."""
    grams = _checked(before).m_as("gram")
    weighed = []
    for each in later:
        if each is not None:
            require_within(NOT_NEGATIVE, "A mass weighed later", each)
            weighed.append(each.m_as("gram"))
    return Quantity(np.minimum(grams, reduce(np.maximum, [grams * kept, *weighed]))[()], "gram")


def _on_the_scale(before, weighed, skipped, bought=None):
    """Mass as weighed; where the lot was bought after this step, the mass before it."""
    if before is None and bought is not None and not np.any(skipped):
        before = bought
    grams_before, grams_after = _checked(before).m_as("gram"), weighed.m_as("gram")
    require(skipped | (grams_after >= 0), "The mass weighed cannot be negative.")
    gained = "Fiber cannot gain mass in a step, but for a little water: check both weighings, or let it dry."
    require(skipped | only_damp(weighed, before), gained)
    return Quantity(np.where(skipped, grams_before, grams_after)[()], "gram")
