"""What a project still takes of each strand, and what its finished piece took."""

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.units import Grist, Length, Mass, Quantity, Ratio

NOTHING = Quantity(0.0, "m")
NO_MASS = Quantity(0.0, "g")
NO_GRIST = Quantity(0.0, "m/g")


@calculation
def to_spin(need: Length, in_skeins: Length, used: Mass | None = None) -> Length:
    """Length that a project still has to get from its lots.

    T = N - S, but not below zero, and nothing once the piece is finished. Its own skeins serve it
    first.

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
    Valid for a finished piece whose skeins are in the log, or are gone from the lots' weights.

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
        require(used >= NO_MASS, "A piece cannot have used less than nothing.")
        return need * 0.0
    return np.maximum(need - in_skeins, NOTHING)


@calculation
def component_needs(to_spin: Length, share: Ratio, planned: Grist, finer: Ratio, bought: Ratio) -> Mass:
    """Mass of one component that a project still takes.

    m = T · x / g, and m / q where it is spun. A yarn that comes out finer takes less of it.

    Parameters
    ----------
    to_spin : T, length of yarn still to be made
    share : x, share of the component in the planned yarn's weight
    planned : g, planned grist of the yarn
    finer : q, how much finer the spun strands come out than planned
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
    Valid for strands that all run through the whole yarn.

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
    """What a finished piece took that no skein was logged for.

    r = U - S, but not below zero. Some weigh only the finished piece.

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
    Valid for a piece made of the lots that its project names.

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

    t = r · x, and all of it of a plain yarn. The strands of a design run through the whole yarn.

    Parameters
    ----------
    rest : r, what the piece took that no skein was logged for
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
    Valid for a component spun of one lot, or of the first one first.

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
