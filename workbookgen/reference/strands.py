"""The strands of a project's yarn: what each still takes, how far it lasts, and what to get of it.

A plain yarn is one strand, a design has up to four components. They cannot replace each other:
the one that lasts for the least length ends the yarn, and what is over of the others stays over.
"""

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
    """
    require_numbers(to_spin, share, planned, finer, bought)
    require(to_spin >= NOTHING, "A length cannot be negative.")
    require((share > 0) & (finer > 0), "The share and the fineness must be above zero.")
    require(planned > NO_GRIST, "The grist must be above zero.")
    return to_spin * share / (planned * np.where(np.asarray(bought) == 1, 1.0, finer)[()])


@calculation
def component_length(left: Mass, share: Ratio, planned: Grist, finer: Ratio, bought: Ratio) -> Length:
    """Length of yarn for which a component lasts.

    L = m · g / x, and · q where it is spun. The component for which it is least ends the yarn.

    Parameters
    ----------
    left : m, mass of the component, below zero where others need more than there is
    share : x, share of the component in the planned yarn's weight
    planned : g, planned grist of the yarn
    finer : q, how much finer the spun strands come out than planned
    bought : 1 for a bought yarn or thread, 0 for one to be spun

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A share, a grist or a fineness that is not above zero.

    Notes
    -----
    Valid for strands that all run through the whole yarn.

    References
    ----------
    Definition of the grist; linear densities of strands add.
    """
    require_numbers(left, share, planned, finer, bought)
    require((share > 0) & (finer > 0), "The share and the fineness must be above zero.")
    require(planned > NO_GRIST, "The grist must be above zero.")
    return left * planned * np.where(np.asarray(bought) == 1, 1.0, finer)[()] / share


@calculation
def component_over(left: Mass, needs: Mass) -> Mass:
    """What is over of a strand.

    o = M - m. Below zero it is what is lacking.

    Parameters
    ----------
    left : M, mass that is left for this project, below zero where others need more than there is
    needs : m, mass that it still takes

    Returns
    -------
    o, a mass

    Raises
    ------
    ValueError
        A negative need.

    Notes
    -----
    Valid for one strand of one project.

    References
    ----------
    Definition of the surplus.
    """
    require_numbers(left, needs)
    require(needs >= NO_MASS, "A project cannot take less than nothing.")
    return left - needs


@calculation
def share_used(needs: Mass, left: Mass) -> Ratio:
    """Share that a project uses of what it has of a strand.

    q = m / M. Above 1 it is not enough.

    Parameters
    ----------
    needs : m, mass that it still takes
    left : M, mass that is left for it

    Returns
    -------
    q, a share

    Raises
    ------
    ValueError
        A negative need, or nothing left.

    Notes
    -----
    Valid for one strand of one project.

    References
    ----------
    Definition of a share.
    """
    require_numbers(needs, left)
    require(needs >= NO_MASS, "A project cannot take less than nothing.")
    require(left > NO_MASS, "There must be something left.")
    return needs / left


@calculation
def least(come_1: Length, come_2: Length | None = None, come_3: Length | None = None, come_4: Length | None = None) -> Length:
    """Length for which the scarcest strand lasts.

    L = min L i, over the strands. When one runs out, the ply ends.

    Parameters
    ----------
    come_1 : length for which the first strand lasts
    come_2 : length for which the second strand lasts
    come_3 : length for which the third strand lasts
    come_4 : length for which the fourth strand lasts

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A length that is not a number.

    Notes
    -----
    Valid for strands that all run through the whole yarn.

    References
    ----------
    Definition of the minimum.
    """
    require_numbers(come_1, come_2, come_3, come_4)
    lengths = [each for each in (come_1, come_2, come_3, come_4) if each is not None]
    for each in lengths:
        require(np.isfinite(each.magnitude), "The length must be a number.")
    shortest = lengths[0]
    for each in lengths[1:]:
        shortest = np.minimum(shortest, each)
    return shortest


@calculation
def left_in_the_end(come: Length, least: Length, share: Ratio, planned: Grist, finer: Ratio, bought: Ratio) -> Mass:
    """What stays over of a strand when the scarcest is used up.

    o = (L i - L) · x / (g · q). It is 0 for the scarcest itself.

    Parameters
    ----------
    come : L i, length for which this strand lasts
    least : L, length for which the scarcest strand lasts
    share : x, share of this strand in the yarn's weight
    planned : g, planned grist of the yarn
    finer : q, how much finer the spun strands come out than planned; 1 for a bought one
    bought : 1 for a bought yarn or thread, 0 for one to be spun

    Returns
    -------
    o, a mass

    Raises
    ------
    ValueError
        A share, a grist or a fineness that is not above zero.

    Notes
    -----
    Valid for strands that all run through the whole yarn.

    References
    ----------
    Definition of the grist.
    """
    require_numbers(come, least, share, planned, finer, bought)
    return _mass(come - least, share, planned, finer, bought)


@calculation
def to_buy(
    least: Length,
    more: Length,
    come: Length,
    share: Ratio,
    planned: Grist,
    finer: Ratio,
    bought: Ratio,
    kept: Ratio | None = None,
) -> Mass:
    """What to get of a strand, in the form in which it is bought.

    f = max(0, L + E - L i) · x / (g · q) / k. Every strand must last as long as the scarcest one is to.

    Parameters
    ----------
    least : L, length for which the scarcest strand lasts
    more : E, length to have besides
    come : L i, length for which this strand lasts
    share : x, share of this strand in the yarn's weight
    planned : g, planned grist of the yarn
    finer : q, how much finer the spun strands come out than planned; 1 for a bought one
    bought : 1 for a bought yarn or thread, 0 for one to be spun
    kept : k, share of its lot's bought weight that becomes yarn; 1 where none is known

    Returns
    -------
    f, a mass

    Raises
    ------
    ValueError
        A share, a grist, a fineness or a share kept that is not above zero, or a negative length to add.

    Notes
    -----
    Valid for more of the same lot, or of one like it.

    References
    ----------
    Definition of the grist and of the share kept.
    """
    require_numbers(least, more, come, share, planned, finer, bought, kept)
    require(more >= NOTHING, "What to have besides cannot be negative.")
    if kept is not None:
        require(kept > 0, "The share kept must be above zero.")
    lacking = np.maximum(least + more - come, NOTHING)
    return _mass(lacking, share, planned, finer, bought) / (1.0 if kept is None else kept)


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
    """
    require_numbers(rest, share)
    require(rest >= NO_MASS, "A mass cannot be negative.")
    require(share is not None or design is None, "The design has no such component.")
    return rest if share is None else rest * share


def _mass(length, share, planned, finer, bought):
    """Mass of a strand in a length of yarn."""
    require((share > 0) & (finer > 0), "The share and the fineness must be above zero.")
    require(planned > NO_GRIST, "The grist must be above zero.")
    return (length * share / (planned * np.where(np.asarray(bought) == 1, 1.0, finer)[()])).to("gram")
