"""What is odd about the weighings of a lot: of a part of it, of wet wool, of a step that was over, or more
spun than there was.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require_numbers
from workbookgen.reference.fiber.forwards import after_preparation, after_scouring, after_skirting, after_spinning
from workbookgen.reference.fiber.stages import SCOURING, SKIRTING, SPINNING, bought_after, prepared_before
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.units import Mass, Ratio

BILLIONTH = 1e-9
LEAST_WASHED_OUT = 0.5  # of the loss that yield lets one expect; common practice, no source


@calculation
def beside_expected(
    yarn: Mass,
    weight: Mass,
    stage: Ratio,
    second: Ratio,
    own_skirting: Ratio | None = None,
    guide_skirting: Ratio | None = None,
    own_yield: Ratio | None = None,
    guide_yield: Ratio | None = None,
    own_preparation: Ratio | None = None,
    guide_preparation: Ratio | None = None,
    own_spinning: Ratio | None = None,
    guide_spinning: Ratio | None = None,
) -> Ratio:
    """Yarn of a lot, beside what its bought weight alone would give.

    q = y / (a · what each step keeps), of the steps still ahead of it; your own figure beats the guide's. A weighing
    that leaves far less may be of a part of the lot only.

    Parameters
    ----------
    yarn : y, mass of the yarn, by what was weighed
    weight : a, mass as bought
    stage : stage at which the lot was bought, 1 to 5
    second : loss in a second preparation, a share; 0 where there is none
    own_skirting : your own figure for the loss in skirting, a share
    guide_skirting : the loss in skirting that the guide expects
    own_yield : your own figure for the scoured yield, a share
    guide_yield : the yield that the lot's samples or the guide suggest
    own_preparation : your own figure for the loss in preparation, a share
    guide_preparation : the loss in preparation that the guide expects
    own_spinning : your own figure for the loss in spinning, a share
    guide_spinning : the loss in spinning that the lot's samples or the guide suggest

    Returns
    -------
    q, a ratio

    Raises
    ------
    ValueError
        A step still ahead of which nothing is known, or an impossible mass or figure.

    Notes
    -----
    Valid for steps whose losses do not depend on each other.

    References
    ----------
    Definition of the losses and the yield.

    Examples
    --------
    >>> print(beside_expected(Quantity(342, "g"), Quantity(1000, "g"), 3, 0, own_preparation=0.1, own_spinning=0.05))
    0.4
    """
    skirted = after_skirting(weight, stage, own=own_skirting, guide=guide_skirting)
    scoured = after_scouring(skirted, stage, own=own_yield, guide=guide_yield)
    prepared = after_preparation(scoured, stage, own=own_preparation, guide=guide_preparation, second=second)
    expected = after_spinning(prepared, stage, own=own_spinning, guide=guide_spinning)
    require_within(NOT_NEGATIVE, "The mass of the yarn", yarn)
    require_within(ABOVE_ZERO, "The yarn expected", expected)
    return (yarn / expected).m_as("")


@calculation
def not_counted(
    weight: Mass,
    stage: Ratio,
    skirted: Mass | None = None,
    scoured: Mass | None = None,
    prepared: Mass | None = None,
    spun: Mass | None = None,
    second: Ratio | None = None,
    second_way: str | None = None,
) -> Ratio:
    """How many weighings of a lot are of steps that were over when it was bought, and say that there is less.

    n = number of them. They count for nothing: of a cone that was used in part, what is left is its weight.

    Parameters
    ----------
    weight : mass as bought
    stage : stage at which the lot was bought, 1 to 5
    skirted : mass weighed after skirting, if it was
    scoured : mass weighed after scouring, if it was
    prepared : mass weighed after preparing, if it was
    spun : mass of the yarn, if it was weighed
    second : loss in a second preparation, which fiber bought prepared may still have ahead of it
    second_way : how it is prepared again

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        A stage that is none.

    Notes
    -----
    Valid for a lot that was bought in one state.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(not_counted(Quantity(500, "g"), 5, spun=Quantity(200, "g")))
    1.0
    """
    require_numbers(weight, skirted, scoured, prepared, spun, second)
    over = (
        (skirted, bought_after(SKIRTING, stage)),
        (scoured, bought_after(SCOURING, stage)),
        (prepared, prepared_before(stage, second, second_way)),
        (spun, bought_after(SPINNING, stage)),
    )
    counts = [
        np.where(is_over & (weighed < weight * (1 - BILLIONTH)), 1.0, 0.0)[()]
        for weighed, is_over in over
        if weighed is not None
    ]
    return sum(counts, start=np.zeros(np.shape(stage))[()])


@calculation
def hardly_washed(
    weight: Mass,
    stage: Ratio,
    skirted: Mass | None = None,
    scoured: Mass | None = None,
    prepared: Mass | None = None,
    spun: Mass | None = None,
    own: Ratio | None = None,
    guide: Ratio | None = None,
) -> Ratio:
    """Whether a fleece is hardly lighter than it was before the wash.

    h = 1 if 1 - b / a is less than half of 1 - yield, else 0; a is the mass before the wash, b the first that was
    weighed after it. It may be wet still, or weighed in another unit.

    Parameters
    ----------
    weight : mass as bought, which is a unless it was skirted
    stage : stage at which the lot was bought, 1 to 5
    skirted : mass weighed after skirting, if it was
    scoured : mass weighed after scouring, if it was
    prepared : mass weighed after preparing, if it was
    spun : mass of the yarn, if it was weighed
    own : your own figure for the yield, a share
    guide : the yield that the lot's samples or the guide suggest

    Returns
    -------
    1 or 0

    Raises
    ------
    ValueError
        A stage that is none, a mass that is not above zero, or one that is no number.

    Notes
    -----
    Valid for a fleece bought before its wash.

    References
    ----------
    Half of the loss is common practice, no source.

    Examples
    --------
    >>> print(hardly_washed(Quantity(1000, "g"), 1, scoured=Quantity(900, "g"), own=0.6))
    1.0
    """
    require_numbers(skirted, scoured, prepared, spun, own, guide)
    require_within(ABOVE_ZERO, "The mass as bought", weight)
    after = next((each for each in (scoured, prepared, spun) if each is not None), None)
    kept = next((each for each in (own, guide) if each is not None), 1.0)
    is_ahead = np.logical_not(bought_after(SCOURING, stage))
    if after is None:
        return np.where(is_ahead, 0.0, 0.0)[()]
    before = weight if skirted is None else skirted
    require_within(ABOVE_ZERO, "The mass before the wash", before)
    lost = np.round(1 - (after / before).m_as(""), 9)
    return np.where(is_ahead & (lost < LEAST_WASHED_OUT * (1 - kept)), 1.0, 0.0)[()]


@calculation
def spun_of_lot(spun: Mass, weight: Mass) -> Ratio:
    """What was spun of a lot, beside what it weighed.

    q = s / a. Above 1 by more than damp air, a skein is of another lot.

    Parameters
    ----------
    spun : s, mass of its skeins and of what pieces took of it
    weight : a, mass as bought

    Returns
    -------
    q, a ratio

    Raises
    ------
    ValueError
        A negative mass, or a lot that weighed nothing.

    Notes
    -----
    Valid for masses in the same state of moisture.

    References
    ----------
    Definition of a ratio.

    Examples
    --------
    >>> print(spun_of_lot(Quantity(114, "g"), Quantity(60, "g")))
    1.9
    """
    require_within(NOT_NEGATIVE, "The mass spun", spun)
    require_within(ABOVE_ZERO, "The mass as bought", weight)
    return (spun / weight).m_as("")
