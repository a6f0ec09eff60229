"""How much is unknown of the lots that a project draws on, and whether other projects draw on them too.

Both change what a spinner goes and buys: an unknown lot is not an empty one, and what several projects lack of one lot
is bought once.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.limits import NO_MASS, NOT_NEGATIVE, require_within
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.units import Length, Mass, Quantity, Ratio, Some


@calculation
def unknown_lots(
    to_spin: Length,
    lot_1: str | None = None,
    gives_1: Mass | None = None,
    lot_2: str | None = None,
    gives_2: Mass | None = None,
    lot_3: str | None = None,
    gives_3: Mass | None = None,
) -> Ratio:
    """How many of the lots of a component are not known.

    k = the number of lots that say nothing of what they give, where T > 0, else 0. A lot without a breed, or with
    something wrong in its line, is not an empty one.

    Parameters
    ----------
    to_spin : T, length that is still to be made
    lot_1, lot_2, lot_3 : names of the lots
    gives_1, gives_2, gives_3 : mass that each still gives, if it is known

    Returns
    -------
    k, a whole number

    Raises
    ------
    ValueError
        A negative length.

    Notes
    -----
    Valid for one component of one project.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(unknown_lots(Quantity(200, "m"), "Aster", Quantity(300, "g"), "Birch"))
    1.0
    """
    require_numbers(to_spin, gives_1, gives_2, gives_3)
    require_within(NOT_NEGATIVE, "The length to be made", to_spin)
    silent = sum(
        lot is not None and gives is None for lot, gives in ((lot_1, gives_1), (lot_2, gives_2), (lot_3, gives_3))
    )
    return np.where(to_spin > Quantity(0.0, "m"), float(silent), 0.0)[()]


@calculation
def unknown_in_all(
    to_spin: Length,
    unknown_1: Ratio,
    unknown_2: Ratio,
    unknown_3: Ratio,
    unknown_4: Ratio,
    lasts: Length | None = None,
    design: str | None = None,
    lot_1: str | None = None,
    lot_2: str | None = None,
    lot_3: str | None = None,
) -> Ratio:
    """How much of what a project draws on is not known.

    k = Σ k i, and 1 more where T > 0, it has a design or a lot, and L is not known. Without a grist, nobody
    knows how long a lot lasts.

    Parameters
    ----------
    to_spin : T, length that is still to be made
    unknown_1, unknown_2, unknown_3, unknown_4 : k i, number of lots of each component that are not known
    lasts : L, length for which its strands last, if it is known
    design : the design, if the yarn has one
    lot_1, lot_2, lot_3 : names of the lots of a plain yarn

    Returns
    -------
    k, a whole number

    Raises
    ------
    ValueError
        A negative length or number.

    Notes
    -----
    Valid for one project.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(unknown_in_all(Quantity(200, "m"), 0, 0, 0, 0, lot_1="Aster"))
    1.0
    """
    require_numbers(to_spin, lasts)
    require_within(NOT_NEGATIVE, "A number of lots", unknown_1, unknown_2, unknown_3, unknown_4)
    require_within(NOT_NEGATIVE, "The length to be made", to_spin)
    drawn = any(each is not None for each in (design, lot_1, lot_2, lot_3)) and lasts is None
    return unknown_1 + unknown_2 + unknown_3 + unknown_4 + np.where(to_spin > Quantity(0.0, "m"), float(drawn), 0.0)[()]


@calculation
def shared_components(
    pool_1: Mass,
    left_1: Mass,
    pool_2: Mass | None = None,
    left_2: Mass | None = None,
    pool_3: Mass | None = None,
    left_3: Mass | None = None,
    pool_4: Mass | None = None,
    left_4: Mass | None = None,
    more_1: Mass = NO_MASS,
    more_2: Mass | None = None,
    more_3: Mass | None = None,
    more_4: Mass | None = None,
) -> Ratio:
    """How many components have lots that other projects draw on too.

    k = the number of components where M i < P i + e i. What such a project lacks, it lacks together with the others.

    Parameters
    ----------
    pool_1, pool_2, pool_3, pool_4 : P i, mass that the lots of each component give together
    left_1, left_2, left_3, left_4 : M i, mass of it that the other projects leave
    more_1, more_2, more_3, more_4 : e i, by how much these lots give more on average than is reckoned

    Returns
    -------
    k, a whole number

    Raises
    ------
    ValueError
        A mass that is not a number.

    Notes
    -----
    Valid for projects that are all to be made.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(shared_components(Quantity(500, "g"), Quantity(350, "g")))
    1
    """
    of_each = ((pool_1, more_1, left_1), (pool_2, more_2, left_2), (pool_3, more_3, left_3), (pool_4, more_4, left_4))
    require_numbers(*(each for component in of_each for each in component))
    known = (component for component in of_each if all(each is not None for each in component))
    return sum(np.where(left < (pool + more) * (1 - ROUNDING), 1, 0)[()] for pool, more, left in known)


@calculation
def if_known(amount: Some, unknown: Ratio) -> Some:
    """What a component has, if all its lots say what they give.

    a = a where k = 0. Of lots of which one is not known, what the others give is no answer.

    Parameters
    ----------
    amount : a, mass or share, by the lots that are known
    unknown : k, number of lots that are not known

    Returns
    -------
    a, unchanged

    Raises
    ------
    ValueError
        A lot that is not known.

    Notes
    -----
    Valid for any amount of one component.

    References
    ----------
    Definition of an unknown.

    Examples
    --------
    >>> print(if_known(Quantity(200, "g"), 0))
    200 gram
    """
    require_numbers(amount, unknown)
    require(np.asarray(unknown) < 0.5, "What one of the lots gives is not known.")
    return amount
