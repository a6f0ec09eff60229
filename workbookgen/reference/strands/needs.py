"""What a project still takes of each strand, and what its finished piece took."""

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NO_LENGTH, NO_MASS, NOT_NEGATIVE, require_within
from workbookgen.units import Grist, Length, Mass, Ratio


@calculation
def to_spin(need: Length, in_skeins: Length, used: Mass | None = None) -> Length:
    """Length that a project still has to draw from its lots.

    T = N - S, but not below zero, and 0 once the piece is finished. Its own skeins come first.

    Parameters
    ----------
    need : N, length that the piece takes
    in_skeins : S, length in the skeins that belong to it
    used : mass of yarn that the finished piece took, once it is finished

    Returns
    -------
    T, a length

    Raises
    ------
    ValueError
        A negative length or mass.

    Notes
    -----
    Valid for a finished piece whose skeins are in the log, or have left the lots' weights.

    References
    ----------
    Definition of a remainder.

    Examples
    --------
    >>> print(to_spin(Quantity(1000, "m"), Quantity(250, "m")))
    750.0 meter
    """
    require_numbers(need, in_skeins, used)
    require_within(NOT_NEGATIVE, "A length", need, in_skeins)
    if used is not None:
        require_within(NOT_NEGATIVE, "A piece cannot have used a negative amount.", used)
        return need * 0.0
    return np.maximum(need - in_skeins, NO_LENGTH)


@calculation
def component_needs(to_spin: Length, share: Ratio, planned: Grist, finer: Ratio, bought: Ratio) -> Mass:
    """Mass of one component that a project still takes.

    m = T · x / g, and m / q where it is spun. A yarn that comes out finer takes less.

    Parameters
    ----------
    to_spin : T, length of yarn still to be made
    share : x, share of the component in the planned yarn's weight
    planned : g, planned grist of the yarn
    finer : q, ratio by which the spun strands come out finer than planned
    bought : 1 for a bought yarn or thread, 0 for one to be spun

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A negative length, or a share, a grist or a fineness that is not above zero.

    Notes
    -----
    Valid for strands that all run the whole length of the yarn.

    References
    ----------
    Definition of the grist; linear densities of strands add.

    Examples
    --------
    >>> print(component_needs(Quantity(1000, "m"), share=0.5, planned=Quantity(2, "m/g"), finer=1, bought=0))
    250.0 gram
    """
    require_numbers(to_spin, share, planned, finer, bought)
    require_within(NOT_NEGATIVE, "A length", to_spin)
    require_within(ABOVE_ZERO, "The share and the fineness", share, finer)
    require_within(ABOVE_ZERO, "The grist", planned)
    return to_spin * share / (planned * np.where(np.asarray(bought) == 1, 1.0, finer)[()])


@calculation
def used_besides(used: Mass, logged: Mass) -> Mass:
    """Yarn in a finished piece for which no skein was logged.

    r = U - S, but not below zero. Some spinners weigh only the finished piece.

    Parameters
    ----------
    used : U, mass of yarn that the finished piece took
    logged : S, mass of all skeins that were logged for it

    Returns
    -------
    r, a mass

    Raises
    ------
    ValueError
        A negative mass.

    Notes
    -----
    Valid for a piece made from the lots that its project names.

    References
    ----------
    Definition of a remainder.

    Examples
    --------
    >>> print(used_besides(Quantity(400, "g"), Quantity(350, "g")))
    50.0 gram
    """
    require_numbers(used, logged)
    require_within(NOT_NEGATIVE, "A mass", used, logged)
    return np.maximum(used - logged, NO_MASS)


@calculation
def taken_by_piece(rest: Mass, share: Ratio | None = None, design: str | None = None) -> Mass:
    """What a finished piece took of the lot of one component.

    t = r · x, and t = r for a plain yarn. The strands of a design run the whole length of the yarn.

    Parameters
    ----------
    rest : r, yarn in the piece for which no skein was logged
    share : x, share of the component in the design
    design : the design, if the yarn has one

    Returns
    -------
    t, a mass

    Raises
    ------
    ValueError
        A design without such a component, or a negative mass.

    Notes
    -----
    Valid for a component spun from one lot, or from its first lot first.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(taken_by_piece(Quantity(50, "g"), share=0.5))
    25.0 gram
    """
    require_numbers(rest, share)
    require_within(NOT_NEGATIVE, "A mass", rest)
    require(share is not None or design is None, "The design has no such component.")
    return rest if share is None else rest * share
