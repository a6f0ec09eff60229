"""The uncertainty of what projects will take of a lot that they share."""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import calculation, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.reference.records import sum_where
from workbookgen.reference.tolerances import HAIR, SQUARED_SPECK
from workbookgen.units import Grist, Length, Mass, MassSquared, Ratio


@calculation
def need_square(
    share: Ratio, doubt_need: Length, planned: Grist, used: Mass | None = None, part: Ratio = 1.0
) -> MassSquared:
    """Squared uncertainty that a project's need adds to a component's lots.

    o = (x · u_N / g)² / f. Projects that share a lot share the uncertainty of what the other will take; a finished
    piece takes no more. Components of a yarn on the same lots take more of it together: with f, their squares add up to
    that of their sum.

    Parameters
    ----------
    share : x, share of the component in the yarn's weight
    doubt_need : u_N, standard uncertainty of what the piece takes
    planned : g, planned grist of the yarn
    used : mass of yarn that the finished piece took, once it is finished
    part : f, part of these lots that the component has

    Returns
    -------
    o, a mass squared

    Raises
    ------
    ValueError
        A negative uncertainty or mass, or a share, a part or a grist that is not above zero.

    Notes
    -----
    Valid for projects whose needs are independent.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).

    Examples
    --------
    >>> print(need_square(0.5, Quantity(40, "m"), Quantity(2, "m/g")))
    100.0 gram ** 2
    """
    require_numbers(share, doubt_need, planned, used, part)
    require_within(ABOVE_ZERO, "The share and the part", share, part)
    require_within(NOT_NEGATIVE, "A standard uncertainty", doubt_need)
    require_within(ABOVE_ZERO, "The grist", planned)
    if used is not None:
        require_within(NOT_NEGATIVE, "A piece cannot have used a negative amount.", used)
    return (share * doubt_need / planned * (1.0 if used is None else 0.0)) ** 2 / part


@calculation
def squares_on_lot(
    name: str,
    squares_1: MassSquared,
    squares_2: MassSquared,
    squares_3: MassSquared,
    squares_4: MassSquared,
    lots_1_a: Sequence[str],
    lots_2_a: Sequence[str],
    lots_3_a: Sequence[str],
    lots_4_a: Sequence[str],
) -> MassSquared:
    """Squared uncertainty that the needs of all projects add to a lot.

    Q = Σ o, over the components of all projects whose first lot it is. Projects that share a lot share the
    uncertainty of what the others will take.

    Parameters
    ----------
    name : the lot
    squares_1, squares_2, squares_3, squares_4 : o, that of each project's components; no number is a blank
    lots_1_a, lots_2_a, lots_3_a, lots_4_a : the first lot of each of these

    Returns
    -------
    Q, a mass squared

    Raises
    ------
    ValueError
        A blank name, or columns of unequal length.

    Notes
    -----
    Valid for independent needs.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).

    Examples
    --------
    >>> none, nowhere = Quantity([0, 0], "g^2"), ["", ""]
    >>> print(squares_on_lot("Aster", Quantity([100, 25], "g^2"), none, none, none, ["Aster", "Aster"], nowhere,
    ...     nowhere, nowhere))
    125.0 gram ** 2
    """
    first, *others = ((lots_1_a, squares_1), (lots_2_a, squares_2), (lots_3_a, squares_3), (lots_4_a, squares_4))
    return sum((sum_where(name, *each) for each in others), start=sum_where(name, *first))


@calculation
def others_square(
    own: MassSquared, names: Sequence[str], squares: MassSquared, lot: str | None = None, part: Ratio = 1.0
) -> MassSquared:
    """Squared uncertainty that the other projects' needs add to a component.

    O = f² · (Q - o / f), that of all projects on its first lot, less that of its own; 0 without a lot. What another
    project will take is uncertain too, and each component on the same lots bears its part.

    Parameters
    ----------
    own : o, that of this component itself
    names : the names in the list of lots, a blank one where a row is empty
    squares : Q, what all projects add to each lot; no number is a blank
    lot : the first lot of this component
    part : f, its part of its lots

    Returns
    -------
    O, a mass squared

    Raises
    ------
    ValueError
        A negative square, a part that is not above zero, or columns of unequal length.

    Notes
    -----
    Valid for independent needs; less than a speck, or no more than rounding of the sum, counts as zero.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).

    Examples
    --------
    >>> print(others_square(Quantity(100, "g^2"), ["Aster"], Quantity([125], "g^2"), "Aster"))
    25.0 gram ** 2
    """
    require_numbers(own, part)
    require_within(NOT_NEGATIVE, "A squared uncertainty", own)
    require_within(ABOVE_ZERO, "The part", part)
    if lot is None:
        return own * 0.0
    of_project = own / part
    rest = sum_where(lot, names, squares) - of_project
    nothing = np.maximum((of_project * HAIR).m_as("g^2"), SQUARED_SPECK.m_as("g^2"))
    return rest * np.where(rest.m_as("g^2") > nothing, 1.0, 0.0)[()] * np.square(part)
