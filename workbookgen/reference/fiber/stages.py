"""At which stage a lot is, and what a step keeps of it.

A lot is bought in one of five states. A step that comes before that state is skipped, and a skipped step keeps
everything: this one rule saves every formula its exceptions. Figures of a step matter only where it is not skipped.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require
from workbookgen.units import Ratio

STATES = ("raw fleece", "skirted fleece", "washed fiber", "prepared fiber", "yarn or thread")
RAW = 1.0  # the stage at which nothing is done
SKIRTING, SCOURING, PREPARATION, SPINNING = 1, 2, 3, 4
# Fiber weighs so many times as much in damper air, at most. Wool of 18.25% regain, the trade's for combed wool, weighs
# 4% more than of 13.6%, that of ASTM D1909-13 (both read); a little more is left for two scales.
IN_DAMP_AIR = 1.05
LAST_DIGITS = 5e-10


@calculation
def stage(state: str) -> Ratio:
    """Stage of a lot on the way from fleece to yarn.

    s = 1 raw fleece, 2 skirted fleece, 3 washed fiber, 4 prepared fiber, 5 yarn or thread.
    The steps before that stage take nothing more off the lot.

    Parameters
    ----------
    state : the state in which the lot was bought, such as raw fleece; case does not matter

    Returns
    -------
    s, 1 to 5

    Raises
    ------
    ValueError
        A state that is not one of the five.

    Notes
    -----
    Valid for fleece fibers; fiber that is never scoured is bought as washed fiber.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(stage("washed fiber"))
    3.0
    """
    stages = by_element(_stage_of, state)
    return stages.astype(float) if np.ndim(stages) else stages


def _stage_of(state) -> float:
    folded = str(state).casefold()
    require(folded in STATES, f'"{state}" is not a known state of fiber: choose one from the list.')
    return STATES.index(folded) + 1.0


def only_damp(after, before):
    """Whether a step took something off, or added no more than damp air does. Last digits do not decide."""
    return after <= before * (IN_DAMP_AIR + LAST_DIGITS)


def bought_after(step: int, stage):
    """Whether a lot was bought after this step."""
    require((stage >= 1) & (stage <= len(STATES)), "The stage of a lot must be between 1 and 5.")
    return stage > step


def kept_of_loss(skipped, own, guide):
    """Share that a step keeps, from what it loses."""
    loss = _figure(skipped, own, guide)
    require(
        skipped | ((loss >= 0) & (loss < 1)),
        "A loss must be from 0 to below 1: it is a share of the mass before the step.",
    )
    return np.where(skipped, 1.0, 1 - loss)


def prepared_before(stage, second, second_way=None):
    """Whether a lot was bought after all of its preparing; a second preparation with an unknown loss still counts."""
    is_again = second_way is not None if second is None else np.asarray(second) > 0
    return np.where(is_again, bought_after(SPINNING, stage), bought_after(PREPARATION, stage))[()]


def kept_in_preparing(stage, own, guide, second, second_way=None):
    """Share that one preparation keeps, or two: fiber bought prepared has only the second ahead of it."""
    once = kept_of_loss(bought_after(PREPARATION, stage), own, guide)
    if second is None and second_way is None:
        return once
    return once * kept_of_loss(bought_after(SPINNING, stage), second, None)


def kept_of_yield(skipped, own, guide):
    """Share that a step keeps, from what it yields."""
    kept = _figure(skipped, own, guide)
    require(
        skipped | ((kept > 0) & (kept <= 1)),
        "A yield must be above 0 and up to 1: it is a share of the mass before the step.",
    )
    return np.where(skipped, 1.0, kept)


def _figure(skipped, own, guide):
    if own is not None:
        return own
    if guide is not None:
        return guide
    require(skipped, "Nothing is known about this step: weigh it, or give your own figure or a guide's.")
    return np.nan
