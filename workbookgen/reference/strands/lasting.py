"""The length for which a strand lasts, which one runs out first, what remains of it, and how much of it to get."""

from functools import reduce

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NO_LENGTH, NOT_NEGATIVE, require_within
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.units import Grist, Length, Mass, Ratio


@calculation
def component_length(left: Mass, share: Ratio, planned: Grist, finer: Ratio, bought: Ratio) -> Length:
    """Length of yarn for which a component lasts.

    L = m · g / x, and · q where it is spun. The component that lasts for the least length ends the yarn.

    Parameters
    ----------
    left : m, mass of the component, below zero where others need more than there is
    share : x, share of the component in the planned yarn's weight
    planned : g, planned grist of the yarn
    finer : q, ratio by which the spun strands come out finer than planned
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
    Valid for strands that all run the whole length of the yarn.

    References
    ----------
    Definition of the grist; linear densities of strands add.

    Examples
    --------
    >>> print(component_length(Quantity(250, "g"), share=0.5, planned=Quantity(2, "m/g"), finer=1, bought=0))
    1000.0 meter
    """
    require_numbers(left, share, planned, finer, bought)
    require_within(ABOVE_ZERO, "The share and the fineness", share, finer)
    require_within(ABOVE_ZERO, "The grist", planned)
    return left * planned * np.where(np.asarray(bought) == 1, 1.0, finer)[()] / share


@calculation
def length_in_doubt(
    doubt: Mass, share: Ratio, planned: Grist, finer: Ratio, bought: Ratio, before: Ratio = 0.0
) -> Length:
    """Standard uncertainty of the length for which a component lasts, where it is one of its own.

    u = u_m · g / x, and · q where it is spun, where k = 0. Components on the same lots last equally long, whatever the
    lots give: their doubt is one, and counts with the first of them.

    Parameters
    ----------
    doubt : u_m, standard uncertainty of its mass
    share : x, share of the component in the planned yarn's weight
    planned : g, planned grist of the yarn
    finer : q, ratio by which the spun strands come out finer than planned
    bought : 1 for a bought yarn or thread, 0 for one to be spun
    before : k, number of components before it on the same lots

    Returns
    -------
    u, a length

    Raises
    ------
    ValueError
        A component whose doubt counts with an earlier one, or a share, a grist or a fineness that is not above zero.

    Notes
    -----
    Valid for strands that all run the whole length of the yarn.

    References
    ----------
    JCGM 100, 5.2, on correlated terms (from memory).

    Examples
    --------
    >>> print(length_in_doubt(Quantity(10, "g"), share=0.5, planned=Quantity(2, "m/g"), finer=1, bought=0))
    40.0 meter
    """
    require_numbers(before)
    require(np.asarray(before) < 0.5, "Its doubt counts with that of an earlier component on the same lots.")
    return component_length(doubt, share, planned, finer, bought)


@calculation
def component_over(left: Mass, needs: Mass) -> Mass:
    """What remains of a strand.

    o = M - m. Below zero, it is what is lacking.

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

    Examples
    --------
    >>> print(component_over(Quantity(300, "g"), Quantity(250, "g")))
    50 gram
    """
    require_numbers(left, needs)
    require_within(NOT_NEGATIVE, "A project cannot take a negative amount.", needs)
    return left - needs


@calculation
def share_used(needs: Mass, left: Mass) -> Ratio:
    """Share of its supply of a strand that a project uses.

    q = m / M. Above 1, it is not enough.

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

    Examples
    --------
    >>> print(share_used(Quantity(250, "g"), Quantity(500, "g")))
    0.5
    """
    require_numbers(needs, left)
    require_within(NOT_NEGATIVE, "A project cannot take a negative amount.", needs)
    require_within(ABOVE_ZERO, "There must be something left.", left)
    return (needs / left).m_as("")


@calculation
def least(
    come_1: Length, come_2: Length | None = None, come_3: Length | None = None, come_4: Length | None = None
) -> Length:
    """Length for which the scarcest strand lasts.

    L = min L i, over the strands. When one strand runs out, the ply ends.

    Parameters
    ----------
    come_1, come_2, come_3, come_4 : L i, length for which each strand lasts

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A length that is not a number.

    Notes
    -----
    Valid for strands that all run the whole length of the yarn.

    References
    ----------
    Definition of the minimum.

    Examples
    --------
    >>> print(least(Quantity(400, "m"), Quantity(300, "m")))
    300 meter
    """
    require_numbers(come_1, come_2, come_3, come_4)
    return reduce(np.minimum, (each for each in (come_1, come_2, come_3, come_4) if each is not None))


@calculation
def scarcest(
    least: Length,
    come_1: Length,
    name_1: str,
    come_2: Length | None = None,
    name_2: str | None = None,
    come_3: Length | None = None,
    name_3: str | None = None,
    come_4: Length | None = None,
    name_4: str | None = None,
) -> str:
    """The strand that runs out first.

    name i, where L i = L. It limits the yarn, so it is the one to get more of.

    Parameters
    ----------
    least : L, length for which the scarcest strand lasts
    come_1, come_2, come_3, come_4 : L i, length for which each strand lasts
    name_1, name_2, name_3, name_4 : what each strand is called

    Returns
    -------
    a name

    Raises
    ------
    ValueError
        A strand without a name.

    Notes
    -----
    Valid for a length that belongs to one of the strands; of two equal ones the first is named.

    References
    ----------
    Definition of the minimum.

    Examples
    --------
    >>> print(scarcest(Quantity(300, "m"), Quantity(400, "m"), "gray wool", Quantity(300, "m"), "silk thread"))
    silk thread
    """
    require_numbers(least, come_1, come_2, come_3, come_4)
    strands = [(come_1, name_1), (come_2, name_2), (come_3, name_3), (come_4, name_4)]
    there = [(come, name) for come, name in strands if come is not None]
    for _, name in there:
        require(name is not None, "Every strand needs a name.")
    shortest, (_, found) = least.m_as("m"), there[-1]
    for come, name in reversed(there[:-1]):
        is_it = come.m_as("m") - shortest <= abs(shortest) * ROUNDING
        found = by_element(lambda is_it, name, found: name if is_it else found, is_it, name, found)
    return found


@calculation
def left_in_the_end(come: Length, least: Length, share: Ratio, planned: Grist, finer: Ratio, bought: Ratio) -> Mass:
    """What remains of a strand when the scarcest is used up.

    o = (L i - L) · x / (g · q). It is 0 for the scarcest itself.

    Parameters
    ----------
    come : L i, length for which this strand lasts
    least : L, length for which the scarcest strand lasts
    share : x, share of this strand in the yarn's weight
    planned : g, planned grist of the yarn
    finer : q, ratio by which the spun strands come out finer than planned; 1 for a bought one
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
    Valid for strands that all run the whole length of the yarn.

    References
    ----------
    Definition of the grist.

    Examples
    --------
    >>> print(left_in_the_end(Quantity(400, "m"), Quantity(300, "m"), share=0.5, planned=Quantity(2, "m/g"), finer=1,
    ...     bought=0))
    25.0 gram
    """
    require_numbers(come, least, share, planned, finer, bought)
    return _mass(come - least, share, planned, finer, bought)


@calculation
def to_buy(
    level: Length, come: Length, share: Ratio, planned: Grist, finer: Ratio, bought: Ratio, kept: Ratio | None = None
) -> Mass:
    """How much of a strand to get, in the form in which it is bought.

    f = max(0, T - L i) · x / (g · q) / k. Every strand must last as long as the scarcest one is meant to.

    Parameters
    ----------
    level : T, length for which each strand should last
    come : L i, length for which this strand lasts
    share : x, share of this strand in the yarn's weight
    planned : g, planned grist of the yarn
    finer : q, ratio by which the spun strands come out finer than planned; 1 for a bought one
    bought : 1 for a bought yarn or thread, 0 for one to be spun
    kept : k, share of its lot's bought weight that becomes yarn; 1 where none is known

    Returns
    -------
    f, a mass

    Raises
    ------
    ValueError
        A share, a grist, a fineness or a share kept that is not above zero.

    Notes
    -----
    Valid for more of the same lot, or of one like it.

    References
    ----------
    Definition of the grist and of the share kept.

    Examples
    --------
    >>> print(to_buy(Quantity(1000, "m"), come=Quantity(900, "m"), share=0.5, planned=Quantity(2, "m/g"), finer=1,
    ...     bought=0, kept=0.5))
    50.0 gram
    """
    require_numbers(level, come, share, planned, finer, bought, kept)
    if kept is not None:
        require_within(ABOVE_ZERO, "The share kept", kept)
    lacking = np.maximum(level - come, NO_LENGTH)
    return _mass(lacking, share, planned, finer, bought) / (1.0 if kept is None else kept)


def _mass(length, share, planned, finer, bought):
    """Mass of a strand in a length of yarn."""
    require_within(ABOVE_ZERO, "The share and the fineness", share, finer)
    require_within(ABOVE_ZERO, "The grist", planned)
    return (length * share / (planned * np.where(np.asarray(bought) == 1, 1.0, finer)[()])).to("gram")
