"""What a project still takes of each strand, and what its finished piece took."""

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.units import Grist, Length, Mass, Quantity, Ratio

NOTHING = Quantity(0.0, "m")
NO_MASS = Quantity(0.0, "g")
NO_GRIST = Quantity(0.0, "m/g")


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
    require((need >= NOTHING) & (in_skeins >= NOTHING), "A length cannot be negative.")
    if used is not None:
        require(used >= NO_MASS, "A piece cannot have used a negative amount.")
        return need * 0.0
    return np.maximum(need - in_skeins, NOTHING)


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
    require(to_spin >= NOTHING, "A length cannot be negative.")
    require((share > 0) & (finer > 0), "The share and the fineness must be above zero.")
    require(planned > NO_GRIST, "The grist must be above zero.")
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
    require((used >= NO_MASS) & (logged >= NO_MASS), "A mass cannot be negative.")
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
    require(rest >= NO_MASS, "A mass cannot be negative.")
    require(share is not None or design is None, "The design has no such component.")
    return rest if share is None else rest * share
