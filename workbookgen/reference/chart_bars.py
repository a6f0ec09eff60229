"""What charts draw of weights: known, expected and lost, and what there is against what is needed."""

import numpy as np

from workbookgen.reference.calculation import calculation, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.units import Mass, Ratio, Some


@calculation
def has_of_needs(has: Mass, needs: Mass) -> Ratio:
    """What there is of a strand, as a share of what is needed, for a bar.

    q = h / n, at most 2. A bar that is cut off shows that there is plenty.

    Parameters
    ----------
    has : h, what there is
    needs : n, what is needed

    Returns
    -------
    q, a share

    Raises
    ------
    ValueError
        Nothing needed.

    Notes
    -----
    Valid for masses of the same yarn.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(has_of_needs(Quantity(150, "g"), Quantity(100, "g")))
    1.5
    """
    require_numbers(has, needs)
    require_within(ABOVE_ZERO, "Something must be needed.", needs)
    return np.minimum(2.0, (has / needs).m_as(""))


@calculation
def whisker(has: Mass, needs: Mass, doubt: Mass) -> Ratio:
    """How far a bar may be off: two standard uncertainties, as a share of what is needed.

    w = 2u / n where h < 2n, else 0. The end of a bar that is cut off says nothing about its uncertainty. Its last
    digits do not decide.

    Parameters
    ----------
    has : h, what there is
    needs : n, what is needed
    doubt : u, its standard uncertainty

    Returns
    -------
    w, a share

    Raises
    ------
    ValueError
        Nothing needed.

    Notes
    -----
    Valid for masses of the same yarn.

    References
    ----------
    Expanded uncertainty with k = 2: JCGM 100:2008, 6.2 (from memory).

    Examples
    --------
    >>> print(whisker(Quantity(150, "g"), Quantity(100, "g"), Quantity(5, "g")))
    0.1
    """
    require_numbers(has, needs, doubt)
    require_within(ABOVE_ZERO, "Something must be needed.", needs)
    return 2 * (doubt / needs).m_as("") * (np.round((has / needs).m_as(""), 9) < 2)


@calculation
def give_or_take(doubt: Some) -> Some:
    """How far what there is may very likely be off.

    U = 2 · u. One standard uncertainty is exceeded once in three times, which nobody who reads "give or take" expects.

    Parameters
    ----------
    doubt : u, its standard uncertainty, any quantity

    Returns
    -------
    U, of the same kind

    Raises
    ------
    ValueError
        A negative uncertainty.

    Notes
    -----
    Valid for what errs either way, as a normal distribution does: 19 times in 20.

    References
    ----------
    Expanded uncertainty with k = 2: JCGM 100:2008, 6.2 (from memory).

    Examples
    --------
    >>> print(give_or_take(Quantity(5, "g")))
    10 gram
    """
    require_numbers(doubt)
    require_within(NOT_NEGATIVE, "A standard uncertainty", doubt)
    return 2 * doubt


@calculation
def known_part(after: Mass, before: Mass, weighed: Mass | None = None) -> Mass:
    """What a lot weighs at a stage, where that is known.

    k = b if b was weighed, or if b ≥ a but for rounding; else 0. A stage that was over when the lot was bought
    takes nothing off: the weight is known without weighing.

    Parameters
    ----------
    after : b, mass after the stage
    before : a, mass before it
    weighed : mass on the scale after the stage, if it was weighed

    Returns
    -------
    k, a mass

    Raises
    ------
    ValueError
        A negative mass.

    Notes
    -----
    Valid for both masses in the same state of moisture.

    References
    ----------
    Definition.

    Examples
    --------
    >>> print(known_part(Quantity(80, "g"), Quantity(100, "g"), weighed=Quantity(80, "g")))
    80 gram
    """
    require_numbers(after, before, weighed)
    _require_masses(after, before)
    return after if weighed is not None else after * np.where(_takes_nothing(after, before), 1.0, 0.0)[()]


@calculation
def expected_part(after: Mass, before: Mass, weighed: Mass | None = None) -> Mass:
    """What a lot is expected to weigh at a stage that was not weighed.

    e = 0 if b was weighed, or if b ≥ a but for rounding; else b. It is drawn paler than a known weight.

    Parameters
    ----------
    after : b, mass after the stage
    before : a, mass before it
    weighed : mass on the scale after the stage, if it was weighed

    Returns
    -------
    e, a mass

    Raises
    ------
    ValueError
        A negative mass.

    Notes
    -----
    Valid for both masses in the same state of moisture.

    References
    ----------
    Definition.

    Examples
    --------
    >>> print(expected_part(Quantity(80, "g"), Quantity(100, "g")))
    80.0 gram
    """
    require_numbers(after, before, weighed)
    _require_masses(after, before)
    return after * 0.0 if weighed is not None else after * np.where(_takes_nothing(after, before), 0.0, 1.0)[()]


@calculation
def lost_part(after: Mass, before: Mass) -> Mass:
    """What a lot loses at a stage, as a mass.

    l = a - b if a > b, else 0. It is stacked on what is kept.

    Parameters
    ----------
    after : b, mass after the stage
    before : a, mass before it

    Returns
    -------
    l, a mass

    Raises
    ------
    ValueError
        A negative mass.

    Notes
    -----
    Valid for both masses in the same state of moisture.

    References
    ----------
    Definition of a difference.

    Examples
    --------
    >>> print(lost_part(Quantity(80, "g"), Quantity(100, "g")))
    20.0 gram
    """
    _require_masses(after, before)
    return (before - after) * np.where(before > after, 1.0, 0.0)[()]


def _takes_nothing(after: Mass, before: Mass):
    """Whether a stage takes nothing off, but for the rounding of what was calculated in two ways."""
    return after >= before * (1 - ROUNDING)


def _require_masses(*masses) -> None:
    for mass in masses:
        require_within(NOT_NEGATIVE, "A mass", mass)
