"""On how many samples of its own what is expected of a lot rests."""

import numpy as np

from workbookgen.reference.calculation import calculation, require_numbers
from workbookgen.reference.fiber.stages import bought_after
from workbookgen.reference.limits import NOT_NEGATIVE, require_within
from workbookgen.units import Mass, Ratio


@calculation
def counted_on(
    count: Ratio,
    stage: Ratio,
    step: Ratio,
    own: Ratio | None = None,
    scoured: Mass | None = None,
    prepared: Mass | None = None,
    spun: Mass | None = None,
) -> Ratio:
    """How many samples of a lot tell what is expected of a step.

    n = k; 0 where the step is over, since it was bought later or weighed, or where you gave a figure of your own.
    Samples count until then.

    Parameters
    ----------
    count : k, number of samples of the lot that tell it
    stage : stage at which the lot was bought, 1 to 5
    step : the step, 2 for scouring and 4 for spinning
    own : your own figure for it, a share
    scoured : mass weighed after scouring, if it was
    prepared : mass weighed after preparing, if it was
    spun : mass of the yarn, if it was weighed

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        A negative number of samples, or a stage that is none.

    Notes
    -----
    Valid for samples that were measured before the whole lot was.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(counted_on(2, stage=1, step=4))
    2.0
    """
    require_numbers(step, own, scoured, prepared, spun)
    require_within(NOT_NEGATIVE, "The number of samples", count)
    is_over = bought_after(step, stage)
    known = any(each is not None for each in (own, scoured, prepared, spun))
    return np.where(np.asarray(is_over) | known, 0.0, count)[()]
