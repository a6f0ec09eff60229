"""What skeins took of their lots, and those of a design of each of its components.

A bought thread is as thick as it is: of it, the skeins took as much as goes with their length. The singles are what
the hand makes of them, so they took the rest of the weight.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_applicable, require_numbers
from workbookgen.reference.fiber.stages import STATES
from workbookgen.reference.limits import ABOVE_ZERO, COUNTED, NOT_NEGATIVE, require_within
from workbookgen.reference.plying.design import require_strands_and_feed
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.texts import folded
from workbookgen.units import Grist, Length, LinearDensity, Mass, Quantity, Ratio

THREAD = STATES[-1]


@calculation
def bought_part(contribution: LinearDensity, form: str | None = None) -> LinearDensity:
    """What a component adds to its yarn as a bought thread.

    b = r if its lot was bought as yarn or thread, else 0. The number of a thread that was bought is what it is.

    Parameters
    ----------
    contribution : r, what the component adds
    form : the state in which its lot was bought, if it has one

    Returns
    -------
    b, a linear density

    Raises
    ------
    ValueError
        A contribution that is not above zero.

    Notes
    -----
    Valid for a component of one kind: of two lots, the first says it.

    References
    ----------
    Definition of a part.

    Examples
    --------
    >>> print(bought_part(Quantity(60, "tex"), "yarn or thread"))
    60.0 tex
    """
    require_within(ABOVE_ZERO, "The component must weigh something.", contribution)
    return contribution * _bought(form)


@calculation
def strands_to_spin(strands: Ratio, form: str | None = None) -> Ratio:
    """Strands of a component that are singles to spin.

    n = its strands, or 0 if its lot was bought as yarn or thread. What is bought takes no hours of spinning.

    Parameters
    ----------
    strands : how many of it are in the yarn
    form : the state in which its lot was bought, if it has one

    Returns
    -------
    n, a number

    Raises
    ------
    ValueError
        Strands that are not a whole number from 1 up.

    Notes
    -----
    Valid for a component of one kind: of two lots, the first says it.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(strands_to_spin(2, "prepared fiber"))
    2.0
    """
    require_within(COUNTED, "The number of strands", strands)
    return strands * (1.0 - _bought(form))


def _bought(form):
    """1 for what was bought as yarn or thread, else 0."""
    return np.where(by_element(lambda each: folded(str(each)) == THREAD, form), 1.0, 0.0)[()]


@calculation
def fed_to_spin(strands: Ratio, feed: Ratio = 1, form: str | None = None) -> Ratio:
    """Length of a component's singles in one length of yarn.

    f = s · m, or 0 if its lot was bought as yarn or thread. Only what is spun takes hours of spinning.

    Parameters
    ----------
    strands : s, how many of it are in the yarn
    feed : m, length of one of them in one length of yarn, from 1 up
    form : the state in which its lot was bought, if it has one

    Returns
    -------
    f, a length for each length of yarn

    Raises
    ------
    ValueError
        Strands that are not a whole number from 1 up, or a feed below 1.

    Notes
    -----
    Valid for a component of one kind: of two lots, the first says it.

    References
    ----------
    Definition of the feed ratio.

    Examples
    --------
    >>> print(fed_to_spin(2, 1.25, "prepared fiber"))
    2.5
    """
    require_strands_and_feed(strands, feed)
    return strands_to_spin(strands, form) * feed


@calculation
def take_up_of_feeds(strands: Ratio, fed: Ratio) -> Ratio:
    """Take-up of singles, from how much of them is fed into a yarn.

    c = 1 - n / f. It is the inverse of the feed ratio, for all singles of a yarn together.

    Parameters
    ----------
    strands : n, singles in the yarn
    fed : f, length of all of them in one length of yarn

    Returns
    -------
    c, lost length over the length before plying

    Raises
    ------
    ValueError
        Negative strands, or no more fed than there are strands: then no feed is known.

    Notes
    -----
    Valid for the hours and bobbins of a yarn whose feeds are stated.

    References
    ----------
    Definition of the feed ratio.

    Examples
    --------
    >>> print(take_up_of_feeds(2, 4))
    0.5
    """
    require_numbers(strands, fed)
    require_within(NOT_NEGATIVE, "The number of strands", strands)
    require(fed > strands * (1 + ROUNDING), "None of the singles has a feed above 1.")
    return 1 - strands / fed


@calculation
def strand_taken(
    contribution: LinearDensity,
    resultant: LinearDensity,
    own_bought: LinearDensity,
    all_bought: LinearDensity,
    mass: Mass,
    length: Length,
    weighed: Length,
) -> Mass:
    """Mass that the skeins of a design took of one of its components.

    m = ℓ · r of a bought thread; else max(0, M - w · b) · r / (R - b) + (ℓ - w) · r. A single that was spun too thick
    makes the yarn heavier, and takes no more of the thread. Until a skein is weighed, it took what its design says.

    Parameters
    ----------
    contribution : r, what the component adds
    resultant : R, linear density of the plied yarn
    own_bought : what it adds as a bought thread; 0 for a single
    all_bought : b, what all bought threads of the design add
    mass : M, mass of the skeins that were weighed
    length, weighed : ℓ, w, length of all skeins and of those that were weighed, before washing

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A negative mass or length, or a contribution that is not above zero.

    Notes
    -----
    Valid for a thread whose grist is known, and skeins that will weigh about what their design says.

    References
    ----------
    Definition of a linear density; those of the components of a plied yarn add.

    Examples
    --------
    >>> thread, yarn = Quantity(50, "tex"), Quantity(250, "tex")
    >>> print(strand_taken(thread, yarn, thread, thread, Quantity(120, "g"), Quantity(400, "m"),
    ...     Quantity(300, "m")).to("g"))
    20.0 gram
    """
    require_numbers(mass, length, weighed)
    require_within(ABOVE_ZERO, "The component must weigh something.", contribution, resultant)
    require_within(NOT_NEGATIVE, "What is bought", own_bought, all_bought)
    require_within(NOT_NEGATIVE, "A mass", mass)
    require_within(NOT_NEGATIVE, "A length", length, weighed)
    own, bought, whole, adds = (each.m_as("g/m") for each in (own_bought, all_bought, resultant, contribution))
    rest = np.maximum(0, mass.m_as("g") - weighed.m_as("m") * bought)
    is_bought = np.asarray(own) > 0
    spun = np.where(is_bought, 1.0, whole - bought)
    unweighed = np.maximum(0, length.m_as("m") - weighed.m_as("m"))
    return Quantity(np.where(is_bought, length.m_as("m") * adds, rest * adds / spun + unweighed * adds)[()], "g")


@calculation
def expected_weight(
    finished: Length, net: Mass | None = None, planned: Grist | None = None, mean: Grist | None = None
) -> Mass:
    """Mass that a skein will have, as long as it was not weighed.

    m = F / g. Off the reel a skein is there, and its fiber is not: without a weight the same wool would count twice.

    Parameters
    ----------
    finished : F, finished length of the skein
    net : its net mass, which is not there yet
    planned : g, planned grist of its project, if it has one
    mean : g where it serves no project, mean grist of the skeins of its lot

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A skein that was weighed, a negative length, no grist, or one that is not above zero.

    Notes
    -----
    Valid for a skein that will weigh about what its length suggests; a weight replaces that.

    References
    ----------
    Definition of grist.

    Examples
    --------
    >>> print(expected_weight(Quantity(180, "m"), planned=Quantity(2, "m/g")))
    90.0 gram
    """
    require_numbers(finished, net, planned, mean)
    require_applicable(net is None, "It was weighed.")
    grist = mean if planned is None else planned
    require_applicable(grist is not None, "It is not weighed, and nothing says what it will weigh.")
    require_within(NOT_NEGATIVE, "A length", finished)
    require_within(ABOVE_ZERO, "The grist", grist)
    return (finished / grist).to("g")


@calculation
def drawn_from_lot(taken: Mass, weight: Mass, other_weight: Mass | None = None) -> Mass:
    """Mass that a component's skeins took from one of its lots.

    m = M · W / (W + V). Two lots of one component are assumed to be used in proportion.

    Parameters
    ----------
    taken : M, mass that the skeins took of the component
    weight : W, weight of the lot as it was bought
    other_weight : V, that of the other lot of the component, if it has one

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A negative mass, or a lot of no weight.

    Notes
    -----
    Valid for two lots of one kind; their sum is right whichever was spun first.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(drawn_from_lot(Quantity(200, "g"), Quantity(300, "g"), Quantity(100, "g")))
    150.0 gram
    """
    require_numbers(taken, weight, other_weight)
    require_within(NOT_NEGATIVE, "A mass", taken)
    require_within(ABOVE_ZERO, "A lot must weigh something.", weight)
    if other_weight is None:
        return taken
    require_within(ABOVE_ZERO, "A lot must weigh something.", other_weight)
    return taken * (weight / (weight + other_weight)).m_as("")
