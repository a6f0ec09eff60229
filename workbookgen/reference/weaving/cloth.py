"""Ends and lengths on the loom for a cloth of a wanted size.

The loom takes more yarn than the cloth shows. Yarn bends over and under, the cloth draws in and
shrinks, and some of the warp remains on the loom. Each of these has its own argument, and one
divides by what a loss leaves: adding the loss back gives too little.
"""

from workbookgen.reference.calculation import calculation, whole_for
from workbookgen.reference.limits import ABOVE_ZERO, NO_LENGTH, NOT_NEGATIVE, require_loss, require_within
from workbookgen.units import Length, PerLength, Ratio


@calculation
def width_in_reed(finished_width: Length, draw_in: Ratio = 0.0, shrinkage: Ratio = 0.0) -> Length:
    """Width of the warp in the reed.

    b = f / ((1 - s) · (1 - d)). The weft pulls in the edges, and washing shrinks the whole cloth.

    Parameters
    ----------
    finished_width : f, width of the cloth, washed and dry
    draw_in : d, share of the reed width lost on the loom
    shrinkage : s, share of the loom width lost in washing

    Returns
    -------
    b, a length

    Raises
    ------
    ValueError
        A width that is not above zero, or a share outside 0 to under 1.

    Notes
    -----
    Valid for shares found on a sample of the same yarns, sett and weave.

    References
    ----------
    Definition of draw-in and shrinkage.

    Examples
    --------
    >>> print(width_in_reed(Quantity(90, "cm"), draw_in=0.1))
    100.0 centimeter
    """
    require_within(ABOVE_ZERO, "The width", finished_width)
    require_loss(draw_in, "draw-in")
    require_loss(shrinkage, "shrinkage")
    return finished_width / ((1 - shrinkage) * (1 - draw_in))


@calculation
def ends(sett: PerLength, width: Length) -> Ratio:
    """Number of ends in the warp.

    E = ⌈S · b⌉, and E = S · b where that is whole. Part of an end means winding a whole one.

    Parameters
    ----------
    sett : S, ends in a length
    width : b, width in the reed

    Returns
    -------
    E, a whole number

    Raises
    ------
    ValueError
        A sett or a width that is not above zero.

    Notes
    -----
    Valid for one sett throughout; doubled ends at the edges are extra. S · b is rounded to
    six decimals first.

    References
    ----------
    C. P. Brooks, Cotton Manufacturing: 38 inches of 60 ends are 2,280 (read).

    Examples
    --------
    >>> print(ends(Quantity(60, "1/inch"), Quantity(38, "inch")))
    2280.0
    """
    require_within(ABOVE_ZERO, "The sett", sett)
    require_within(ABOVE_ZERO, "The width", width)
    return whole_for((sett * width).m_as(""))


@calculation
def woven_length(
    finished_length: Length,
    shrinkage: Ratio = 0.0,
    pieces: Ratio = 1,
    hems: Length = NO_LENGTH,
    samples: Length = NO_LENGTH,
) -> Length:
    """Length to weave.

    V = (n · (F + h) + p) / (1 - s). It is the length of the cloth on the loom, without tension.

    Parameters
    ----------
    finished_length : F, length of one piece, washed and dry
    shrinkage : s, share of the woven length lost in washing
    pieces : n, number of pieces
    hems : h, hems of one piece, as finished; a fringe is not woven, and belongs to the waste
    samples : p, length for samples, as finished

    Returns
    -------
    V, a length

    Raises
    ------
    ValueError
        A length or a number of pieces that is not above zero, a negative allowance, or a
        shrinkage outside 0 to under 1.

    Notes
    -----
    Valid for cloth without tension; a fringe takes warp but no weft, and counts with the loom waste.

    References
    ----------
    Definition of shrinkage.

    Examples
    --------
    >>> print(woven_length(Quantity(2, "m"), shrinkage=0.2, pieces=2))
    5.0 meter
    """
    require_within(ABOVE_ZERO, "The finished length", finished_length)
    require_within(ABOVE_ZERO, "The number of pieces", pieces)
    require_within(NOT_NEGATIVE, "The hems", hems)
    require_within(NOT_NEGATIVE, "The samples", samples)
    require_loss(shrinkage, "shrinkage")
    return (pieces * (finished_length + hems) + samples) / (1 - shrinkage)


@calculation
def warp_length(
    finished_length: Length,
    take_up: Ratio = 0.0,
    shrinkage: Ratio = 0.0,
    pieces: Ratio = 1,
    hems: Length = NO_LENGTH,
    samples: Length = NO_LENGTH,
    loom_waste: Length = NO_LENGTH,
) -> Length:
    """Length of the warp.

    W = (n · (F + h) + p) / ((1 - s) · (1 - t)) + w. Loom waste never becomes cloth, so it neither shrinks nor takes
    up.

    Parameters
    ----------
    finished_length : F, length of one piece, washed and dry
    take_up : t, share of the warp's length lost in weaving over and under
    shrinkage : s, share of the woven length lost in washing
    pieces : n, number of pieces
    hems : h, hems of one piece, as finished; a fringe is not woven, and belongs to the waste
    samples : p, length for samples, as finished
    loom_waste : w, warp that remains on the loom, and fringes

    Returns
    -------
    W, a length

    Raises
    ------
    ValueError
        A length or a number of pieces that is not above zero, a negative allowance, or a share
        outside 0 to under 1.

    Notes
    -----
    Valid for pieces woven one after another; take-up is a share of the warp's own length.

    References
    ----------
    Definition of take-up and shrinkage. Loom waste of 0.5 to 0.9 m on a floor loom: common
    practice, no source.

    Examples
    --------
    >>> print(warp_length(Quantity(2, "m"), shrinkage=0.2, pieces=2, loom_waste=Quantity(0.5, "m")))
    5.5 meter
    """
    woven = woven_length(finished_length, shrinkage, pieces, hems, samples)
    require_loss(take_up, "take-up")
    require_within(NOT_NEGATIVE, "The loom waste", loom_waste)
    return woven / (1 - take_up) + loom_waste
