"""Which yarn results from which components, by mass in a length.

A length of ply holds a certain length of every strand, so linear densities add: what each
component brings is its own linear density, times its strands, times its feed.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_name
from workbookgen.reference.limits import (
    ABOVE_ZERO,
    AT_LEAST_ONE,
    COUNTED,
    SHRINKAGE,
    Limits,
    require_loss,
    require_within,
)
from workbookgen.reference.records import sum_where
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.units import Grist, LinearDensity, Ratio, Some


@calculation
def feed_ratio(contraction: Ratio) -> Ratio:
    """Length of a component in one length of plied yarn.

    m = 1 / (1 - c). A strand that contracts must be longer to start with.

    Parameters
    ----------
    contraction : c, lost length over the length before plying, from 0 to under 1

    Returns
    -------
    m, a number from 1 up

    Raises
    ------
    ValueError
        A contraction outside 0 to under 1.

    Notes
    -----
    Valid for contraction as a share of the original length; some books state it as a share of the plied length.

    References
    ----------
    Definition of the contraction.

    Examples
    --------
    >>> print(feed_ratio(0.2))
    1.25
    """
    require_loss(contraction, "contraction")
    return 1 / (1 - contraction)


@calculation
def contribution(linear_density: LinearDensity, strands: Ratio = 1, feed: Ratio = 1) -> LinearDensity:
    """What a component adds to the linear density of a plied yarn.

    r = m · s · t. It is the mass of the component in a unit length of plied yarn.

    Parameters
    ----------
    linear_density : t, linear density of one strand
    strands : s, number of such strands
    feed : m, length of strand in one length of plied yarn, from 1 up

    Returns
    -------
    r, a mass per length

    Raises
    ------
    ValueError
        A linear density that is not above zero, strands that are not a whole number from 1 up,
        or a feed below 1.

    Notes
    -----
    Valid for strands that neither stretch nor shed fiber in plying.

    References
    ----------
    W. Davis, Hosiery Manufacture, examples 37 and 41, for the principle (read).

    Examples
    --------
    >>> print(contribution(Quantity(100, "tex"), strands=2, feed=1.05))
    210.0 tex
    """
    require_within(ABOVE_ZERO, "The linear density", linear_density)
    require_strands_and_feed(strands, feed)
    return feed * strands * linear_density


@calculation
def not_known(design: str, contribution: LinearDensity | None = None) -> Ratio:
    """Whether it is unknown what a component adds.

    u = 0 where its contribution is known, else 1. A design has a grist only once all its components have theirs.

    Parameters
    ----------
    design : name of the yarn
    contribution : r, what the component adds

    Returns
    -------
    u, 0 or 1

    Raises
    ------
    ValueError
        A blank name, or a contribution that is not above zero.

    Notes
    -----
    Valid for any component in the list.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(not_known("Gray 2-ply", Quantity(210, "tex")), not_known("Gray 2-ply"))
    0.0 1.0
    """
    require_name(design)
    if contribution is not None:
        require_within(ABOVE_ZERO, "The contribution", contribution)
    is_open = 1.0 if contribution is None else 0.0
    return np.asarray(by_element(lambda _: is_open, design), dtype=float)[()]


@calculation
def resultant(
    design: str, designs: Sequence[str], contributions: LinearDensity, lacking: Some | None = None
) -> LinearDensity:
    """Linear density of a plied yarn.

    R = Σ r, over the components of the design. For counts that are lengths per mass, 1/R = Σ 1/N.

    Parameters
    ----------
    design : name of the yarn
    designs : the names beside the components, a blank one where a row is empty
    contributions : r, what the components add; one that is not a number is blank
    lacking : 1 beside a component whose contribution is not known, else 0 or blank; all are known if left out

    Returns
    -------
    R, a mass per length

    Raises
    ------
    ValueError
        A blank name, no component of that name, one whose contribution is not known, or contributions that are not one
        per name.

    Notes
    -----
    Valid for components that run the whole length of the yarn; case does not matter.

    References
    ----------
    W. Davis, Hosiery Manufacture, and J. T. Taylor, Cotton Weaving and Designing (read).

    Examples
    --------
    >>> print(resultant("Gray 2-ply", ["Gray 2-ply", "Gray 2-ply"], Quantity([210, 30], "tex")))
    240.0 tex
    """
    require(np.ndim(contributions.magnitude) == 1, "Each name needs one contribution beside it.")
    if lacking is not None:
        require(
            sum_where(design, designs, lacking) < 0.5, f'Of "{design}" a component is not known yet: look at its line.'
        )
    density = sum_where(design, designs, contributions)
    require(ABOVE_ZERO.hold(density), f'"{design}" has no component yet: add at least one.')
    return density


@calculation
def weight_share(contribution: LinearDensity, resultant: LinearDensity) -> Ratio:
    """Share of a component in the mass of a plied yarn.

    x = r / R. The shares of a yarn's components add up to 1.

    Parameters
    ----------
    contribution : r, what the component adds
    resultant : R, linear density of the plied yarn

    Returns
    -------
    x, a share

    Raises
    ------
    ValueError
        A linear density that is not above zero, or a component heavier than the yarn.

    Notes
    -----
    Valid for components weighed in the same state of moisture.

    References
    ----------
    W. Davis, Hosiery Manufacture, example 46 (read).

    Examples
    --------
    >>> print(weight_share(Quantity(30, "tex"), Quantity(240, "tex")))
    0.125
    """
    require_within(ABOVE_ZERO, "The component must weigh something.", contribution)
    require(contribution <= resultant * (1 + ROUNDING), "A component cannot weigh more than the whole yarn.")
    return (contribution / resultant).m_as("")


@calculation
def washed_grist(linear_density: LinearDensity, shrinkage: Ratio) -> Grist:
    """Grist of a plied yarn once it is washed.

    g = (1 - s) / R. What washing takes of the length stays in the weight.

    Parameters
    ----------
    linear_density : R, linear density of the yarn as it was plied
    shrinkage : s, share of the length lost in washing; negative where yarn grows

    Returns
    -------
    g, a grist

    Raises
    ------
    ValueError
        A linear density that is not above zero, or a shrinkage of 0.9 or more.

    Notes
    -----
    Valid for yarn that loses no weight in washing, such as oil.

    References
    ----------
    Definition of the shrinkage.

    Examples
    --------
    >>> print(washed_grist(Quantity(250, "tex"), shrinkage=0.05).to("m/g"))
    3.8 meter / gram
    """
    require_within(ABOVE_ZERO, "The linear density", linear_density)
    require_within(SHRINKAGE, "The shrinkage", shrinkage)
    return (1 - shrinkage) / linear_density


def require_strands_and_feed(strands: Ratio, feed: Ratio) -> None:
    """Refuse what is not a number of strands, or not the feed of a strand."""
    require_strands(strands)
    require_within(
        AT_LEAST_ONE, "A length of plied yarn holds at least the same length of a strand: give 1 or more.", feed
    )


def require_strands(strands: Ratio) -> None:
    require_within(COUNTED, "The number of strands", strands)


@calculation
def folded_grist(grist: Grist, ends: Ratio, notation: str) -> Grist:
    """Grist of a folded yarn, from the number on its label.

    G = g / n where the number is that of each end, G = g where it is of the folded yarn. Cotton and worsted 2/40s are
    two ends of 40s, 20s together; spun silk 40/2 is 40 as it is.

    Parameters
    ----------
    grist : g, grist that the number stands for
    ends : n, ends folded together, 1 to 12
    notation : "of each end" or "of the folded yarn"; case does not matter

    Returns
    -------
    G, a grist

    Raises
    ------
    ValueError
        A grist that is not above zero, ends that are not a whole number from 1 to 12, or a notation that is neither of
        these.

    Notes
    -----
    Valid for equal ends, without take-up, as is usual in the trade.

    References
    ----------
    W. Davis, Hosiery Manufacture; J. T. Taylor, Cotton Weaving and Designing (both read).
    R 40 tex/2: ISO 1139 (from memory).

    Examples
    --------
    >>> print(folded_grist(Quantity(40, "number_english"), 2, "of each end"))
    20.0 number_english
    """
    require_within(ABOVE_ZERO, "The grist", grist)
    require_within(Limits(least=1, most=12, whole=True), "The ends are a whole number from 1 to 12.", ends)
    return grist / np.where(np.asarray(by_element(_is_of_the_whole, notation), dtype=bool), 1.0, ends)


def _is_of_the_whole(notation) -> bool:
    words = str(notation).lower()
    require(
        words in ("of each end", "of the folded yarn"),
        f'"{notation}" is not a notation: of each end, or of the folded yarn.',
    )
    return words == "of the folded yarn"
