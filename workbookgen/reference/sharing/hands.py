"""What is not known of the hand that spins for the other projects on a lot.

All that one hand spins is finer or thicker than planned together. While nothing of a yarn is spun, that leaves the
length of a whole lot as uncertain as the plan, whoever takes of it. But once a project has skeins of its own, it knows
its hand, and what the others take is still reckoned by the plan.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import calculation, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, PART, require_within
from workbookgen.reference.records import sum_where
from workbookgen.reference.tolerances import HAIR
from workbookgen.units import Mass, MassSquared, Ratio


@calculation
def hand_of_needs(needs: Mass, bought: Ratio, u_plan: Ratio, weight: Ratio) -> Mass:
    """What the plan of a yarn's grist leaves open of a strand's needs.

    a = n · h · √(1 - w), and 0 of bought yarn. A finer hand takes less fiber for the same length.

    Parameters
    ----------
    needs : n, mass that the project still needs of it
    bought : 1 if the strand is bought, 0 if it is spun
    u_plan : h, relative uncertainty of the planned grist
    weight : w, how far the project's skeins overrule the plan

    Returns
    -------
    a, a mass

    Raises
    ------
    ValueError
        A negative mass or uncertainty, or a weight outside 0 to 1.

    Notes
    -----
    Valid for one hand, which spins all of a yarn.

    References
    ----------
    Definition of a relative uncertainty; what skeins leave of it: Bayes's rule for a normal mean (from memory).

    Examples
    --------
    >>> print(hand_of_needs(Quantity(100, "g"), 0, 0.08, 0.75))
    4.0 gram
    """
    require_numbers(needs, bought, u_plan, weight)
    require_within(NOT_NEGATIVE, "A mass", needs)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_plan)
    require_within(PART, "A weight", weight)
    return needs * u_plan * np.sqrt(1 - weight) * np.where(np.asarray(bought) == 1, 0.0, 1.0)[()]


@calculation
def hands_on_lot(
    name: str,
    hands_1: Mass,
    hands_2: Mass,
    hands_3: Mass,
    hands_4: Mass,
    lots_1_a: Sequence[str],
    lots_2_a: Sequence[str],
    lots_3_a: Sequence[str],
    lots_4_a: Sequence[str],
) -> Mass:
    """What the plans leave open of all needs of a lot.

    A = Σ a, over the components of all projects whose first lot it is. One hand errs in all of them alike, so that they
    add up before they are squared.

    Parameters
    ----------
    name : the lot
    hands_1, hands_2, hands_3, hands_4 : a, of each project's components; no number is a blank
    lots_1_a, lots_2_a, lots_3_a, lots_4_a : the first lot of each of these

    Returns
    -------
    A, a mass

    Raises
    ------
    ValueError
        A blank name, or columns of unequal length.

    Notes
    -----
    Valid for one hand.

    References
    ----------
    JCGM 100, 5.2.2, note 1: correlated uncertainties (from memory).

    Examples
    --------
    >>> none, nowhere = Quantity([0, 0], "g"), ["", ""]
    >>> print(hands_on_lot("Aster", Quantity([10, 5], "g"), none, none, none, ["Aster", "Aster"], nowhere, nowhere,
    ...     nowhere))
    15.0 gram
    """
    columns = ((lots_1_a, hands_1), (lots_2_a, hands_2), (lots_3_a, hands_3), (lots_4_a, hands_4))
    first, *others = (sum_where(name, *column) for column in columns)
    return sum(others, start=first)


@calculation
def others_hand(
    own: Mass, names: Sequence[str], hands: Mass, weight: Ratio, lot: str | None = None, part: Ratio = 1.0
) -> MassSquared:
    """Squared uncertainty of what the others take, for a project that knows its hand.

    B = w · (f · A - a)², 0 without a lot. While it does not know its hand, the lot's length is uncertain as a whole,
    and the others' part of it is in that.

    Parameters
    ----------
    own : a, what the plan leaves open of this component's needs
    names : the names in the list of lots, a blank one where a row is empty
    hands : A, of all needs of each lot; no number is a blank
    weight : w, how far the project's own skeins overrule the plan
    lot : the first lot of this component
    part : f, its part of its lots

    Returns
    -------
    B, a mass squared

    Raises
    ------
    ValueError
        A negative mass, a weight outside 0 to 1, a part that is not above zero, or columns of unequal length.

    Notes
    -----
    Valid for one hand, or for another that is off its plan by itself; no more than rounding of the sum counts as zero.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).

    Examples
    --------
    >>> print(others_hand(Quantity(2, "g"), ["Aster"], Quantity([12], "g"), 0.25, "Aster"))
    25.0 gram ** 2
    """
    require_numbers(own, weight, part)
    require_within(NOT_NEGATIVE, "A mass", own)
    require_within(PART, "A weight", weight)
    require_within(ABOVE_ZERO, "The part", part)
    if lot is None:
        return own * own * 0.0
    rest = sum_where(lot, names, hands) * part - own
    return weight * np.square(rest) * np.where((rest - own * HAIR).m_as("g") > 0, 1.0, 0.0)[()]
