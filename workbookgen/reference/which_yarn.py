"""Of which yarn a skein is: of one lot, of a design, or of nothing that anybody says.

Skeins of one yarn are found by such a name, and go together.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_applicable, require_name
from workbookgen.reference.limits import ABOVE_ZERO, Limits, require_within
from workbookgen.units import Grist, Mass, Ratio


@calculation
def of_one_lot(lot: str, design: str | None = None) -> str:
    """The one lot that a skein is made of.

    name = name. A skein of a design draws on the lots of the design's components instead.

    Parameters
    ----------
    lot : the lot
    design : the design, if the skein is of one

    Returns
    -------
    the lot

    Raises
    ------
    ValueError
        A blank name, or a skein of a design.

    Notes
    -----
    Valid for a skein that is all of one lot, or of a design.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(of_one_lot("Aster"))
    Aster
    """
    require_applicable(design is None, "The skein is of a design.")
    require_name(lot)
    return lot


@calculation
def of_no_lot(name: str, lot: str | None = None, design: str | None = None) -> str:
    """The project of a skein of which nobody says what it is made of.

    name = name. Its length is there for the project, and what it took of the fiber still counts as there, too.

    Parameters
    ----------
    name : the project that it was made for
    lot : the lot, if the skein is of one
    design : the design, if the skein is of one

    Returns
    -------
    the project

    Raises
    ------
    ValueError
        A blank name, or a skein of a lot or a design.

    Notes
    -----
    Valid for a skein that belongs to one project.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(of_no_lot("Vest"))
    Vest
    """
    require_applicable(lot is None and design is None, "It is known what the skein is made of.")
    require_name(name)
    return name


@calculation
def weighed(name: str, mass: Mass) -> str:
    """The design of a skein that was weighed.

    name = name, where M > 0. What strands took of a weight is looked for in these skeins alone.

    Parameters
    ----------
    name : its design
    mass : M, its net mass

    Returns
    -------
    the name

    Raises
    ------
    ValueError
        A blank name, or no mass.

    Notes
    -----
    Valid for any mass.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(weighed("Tweed", Quantity(100, "g")))
    Tweed
    """
    require(mass.m_as("g") > 0, "The skein was not weighed.")
    require_name(name)
    return name


@calculation
def measured(name: str, grist: Grist) -> str:
    """The project of a skein whose length and weight are both known.

    name = name, where g > 0. How fine a project's yarn comes out is looked for in these skeins; one that was sold or
    lost tells it as well.

    Parameters
    ----------
    name : its project
    grist : g, its length over its weight

    Returns
    -------
    the name

    Raises
    ------
    ValueError
        A blank name, or a grist that is not above zero.

    Notes
    -----
    Valid for any grist.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(measured("Vest", Quantity(2, "m/g")))
    Vest
    """
    require_within(ABOVE_ZERO, "A grist", grist)
    require_name(name)
    return name


@calculation
def counts_as_one(grist: Grist) -> Ratio:
    """A skein among those whose length and weight are both known.

    one = 1, where g > 0. How many these are is the sum of it, and goes as fast as any sum over the skeins.

    Parameters
    ----------
    grist : g, its length over its weight

    Returns
    -------
    1

    Raises
    ------
    ValueError
        A grist that is not above zero.

    Notes
    -----
    Valid for any grist.

    References
    ----------
    Definition of a count.

    Examples
    --------
    >>> print(counts_as_one(Quantity(2, "m/g")))
    1.0
    """
    require_within(ABOVE_ZERO, "A grist", grist)
    return np.ones_like(grist.magnitude, dtype=float)[()]


@calculation
def pair(first: str, second: str) -> str:
    """Two names in one.

    pair = first / second. Records that share both names are found by a single lookup.

    Parameters
    ----------
    first : a name
    second : another name

    Returns
    -------
    both, a text

    Raises
    ------
    ValueError
        A blank name.

    Notes
    -----
    Valid for names without " / " in them: with it, two pairs could read alike.

    References
    ----------
    Definition of a pair.

    Examples
    --------
    >>> print(pair("Vest", "Reel 1"))
    Vest / Reel 1
    """
    require_name(first)
    require_name(second)
    return by_element(lambda one, other: f"{one} / {other}", first, second)


@calculation
def made_alike(lot: str, project: str = "", singles: Ratio = 0, design: str | None = None) -> str:
    """The name that a skein shares with those made like it.

    key = lot / project / singles. Of one lot, for one project or for none, and plied of as many singles.

    Parameters
    ----------
    lot : the lot that it is spun from
    project : the project that it was made for; of none it is blank
    singles : the number of singles in it; 0 where nobody says
    design : the design, if the skein is of one

    Returns
    -------
    a text such as "Aster / Vest / 2"

    Raises
    ------
    ValueError
        A blank lot, a skein of a design, or a number of singles that is not whole.

    Notes
    -----
    Valid for names without " / " in them: with it, two keys could read alike.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(made_alike("Aster", "Vest", 2))
    Aster / Vest / 2
    """
    require_applicable(design is None, "The skein is of a design.")
    require_name(lot)
    require_within(Limits(least=0, most=24, whole=True), "A number of singles", singles)
    return by_element(lambda one, other, plied: f"{one} / {other} / {int(plied)}", lot, project, singles)
