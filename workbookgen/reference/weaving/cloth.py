"""Warp and weft for a cloth of a wanted size.

The loom takes more yarn than the cloth shows. Yarn bends over and under, the cloth draws
in and shrinks, and an end of the warp stays on the loom. Each of these has its own
argument, and a loss is divided by what it leaves: adding it back gives too little.
"""


from workbookgen.reference.calculation import calculation, require, require_numbers, whole_for
from workbookgen.units import Grist, Length, Mass, PerLength, Quantity, Ratio

NOTHING = Quantity(0.0, "m")
NO_GRIST = Quantity(0.0, "m/g")
NO_SETT = Quantity(0.0, "1/m")


@calculation
def width_in_reed(finished_width: Length, draw_in: Ratio = 0.0, shrinkage: Ratio = 0.0) -> Length:
    """Width of the warp in the reed.

    b = f / ((1 - s) · (1 - d)). The weft pulls the edges in, and washing the whole cloth.

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
    """
    require(finished_width > NOTHING, "The width must be above zero.")
    _require_loss(draw_in, "draw-in")
    _require_loss(shrinkage, "shrinkage")
    return finished_width / ((1 - shrinkage) * (1 - draw_in))


@calculation
def ends(sett: PerLength, width: Length) -> Ratio:
    """Number of ends in the warp.

    E = ⌈S · b⌉, and E = S · b where that is whole. A part of an end is a whole one to wind.

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
    Valid for one sett throughout; doubled ends at the edges come on top. S · b is rounded to
    six decimals first.

    References
    ----------
    C. P. Brooks, Cotton Manufacturing: 38 inches of 60 ends are 2,280 (read).
    """
    require(sett > NO_SETT, "The sett must be above zero.")
    require(width > NOTHING, "The width must be above zero.")
    return whole_for((sett * width).m_as(""))


@calculation
def woven_length(
    finished_length: Length,
    shrinkage: Ratio = 0.0,
    pieces: Ratio = 1,
    hems: Length = NOTHING,
    samples: Length = NOTHING,
) -> Length:
    """Length to weave.

    V = (n · (F + h) + p) / (1 - s). What the cloth measures on the loom at rest.

    Parameters
    ----------
    finished_length : F, length of one piece, washed and dry
    shrinkage : s, share of the woven length lost in washing
    pieces : n, number of pieces
    hems : h, hems or fringe of one piece, as finished
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
    Valid for cloth without tension; a fringe takes warp and no weft, so it is a little much.

    References
    ----------
    Definition of shrinkage.
    """
    require(finished_length > NOTHING, "The finished length must be above zero.")
    require(pieces > 0, "The number of pieces must be above zero.")
    require(hems >= NOTHING, "The hems cannot be negative.")
    require(samples >= NOTHING, "The samples cannot be negative.")
    _require_loss(shrinkage, "shrinkage")
    return (pieces * (finished_length + hems) + samples) / (1 - shrinkage)


@calculation
def warp_length(
    finished_length: Length,
    take_up: Ratio = 0.0,
    shrinkage: Ratio = 0.0,
    pieces: Ratio = 1,
    hems: Length = NOTHING,
    samples: Length = NOTHING,
    loom_waste: Length = NOTHING,
) -> Length:
    """Length of the warp.

    W = (n · (F + h) + p) / ((1 - s) · (1 - t)) + w. Loom waste never becomes cloth, so it
    neither shrinks nor is taken up.

    Parameters
    ----------
    finished_length : F, length of one piece, washed and dry
    take_up : t, share of the warp's length lost in weaving over and under
    shrinkage : s, share of the woven length lost in washing
    pieces : n, number of pieces
    hems : h, hems or fringe of one piece, as finished
    samples : p, length for samples, as finished
    loom_waste : w, warp that stays on the loom

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
    Valid for pieces woven one after the other; take-up is told of the warp's own length.

    References
    ----------
    Definition of take-up and shrinkage. Loom waste of 0.5 to 0.9 m on a floor loom: common
    practice, no source.
    """
    woven = woven_length(finished_length, shrinkage, pieces, hems, samples)
    _require_loss(take_up, "take-up")
    require(loom_waste >= NOTHING, "The loom waste cannot be negative.")
    return woven / (1 - take_up) + loom_waste


@calculation
def warp_yarn(ends: Ratio, warp_length: Length) -> Length:
    """Length of yarn in the warp.

    Y = E · W. Every end is as long as the warp.

    Parameters
    ----------
    ends : E, number of ends
    warp_length : W, length of the warp

    Returns
    -------
    Y, a length

    Raises
    ------
    ValueError
        A number of ends or a length that is not above zero.

    Notes
    -----
    Valid for a warp of one yarn; for stripes, take each yarn's own ends.

    References
    ----------
    C. P. Brooks, Cotton Manufacturing, the weight of a piece (read).
    """
    require(ends > 0, "The number of ends must be above zero.")
    require(warp_length > NOTHING, "The warp must have a length.")
    return ends * warp_length


@calculation
def weft_yarn(
    picks: PerLength, woven_length: Length, width: Length, take_up: Ratio = 0.0
) -> Length:
    """Length of yarn in the weft.

    Y = P · V · b / (1 - t). Picks in an inch times inches of width are yards of weft in a yard of cloth, and the yarn is longer
    by what it loses going over and under.

    Parameters
    ----------
    picks : P, picks in a length
    woven_length : V, length to weave
    width : b, width in the reed
    take_up : t, share of the straightened yarn, as for the warp, from 0 to under 1

    Returns
    -------
    Y, a length

    Raises
    ------
    ValueError
        Picks, a length or a width that are not above zero, or a take-up outside 0 to under 1.

    Notes
    -----
    Valid for warp and weft alike; crimp, a share of the cloth, is another number: t = c / (1 + c).

    References
    ----------
    C. P. Brooks, Cotton Manufacturing, the weight of a piece (read); take-up as a share of the straightened yarn, ASTM D3883
    (from memory).
    """
    require(picks > NO_SETT, "The picks must be above zero.")
    require(woven_length > NOTHING, "The length to weave must be above zero.")
    require(width > NOTHING, "The width must be above zero.")
    _require_loss(take_up, "take-up of the weft")
    return (picks * woven_length).m_as("") * width / (1 - take_up)


@calculation
def yarn_of_the_warp(warp_yarn: Length, weft_yarn: Length, weft_grist: Grist | None = None) -> Length:
    """Length of the yarn that the warp is of.

    Y = Y₁ + Y₂, and Y₁ where the weft is another yarn. Lengths of two yarns are no length of either.

    Parameters
    ----------
    warp_yarn : Y₁, length of yarn in the warp
    weft_yarn : Y₂, length of yarn in the weft
    weft_grist : grist of the weft, where it is another yarn

    Returns
    -------
    Y, a length

    Raises
    ------
    ValueError
        A negative length.

    Notes
    -----
    Valid for one yarn in the whole warp; add a margin.

    References
    ----------
    Definition of a sum.
    """
    _require_lengths(warp_yarn, weft_yarn)
    require_numbers(weft_grist)
    return warp_yarn + weft_yarn if weft_grist is None else warp_yarn * 1


@calculation
def weft_apart(weft_yarn: Length, weft_grist: Grist) -> Length:
    """Length of a weft that is another yarn than the warp.

    Y = Y₂. It is spun, and bought, by itself.

    Parameters
    ----------
    weft_yarn : Y₂, length of yarn in the weft
    weft_grist : its grist

    Returns
    -------
    Y, a length

    Raises
    ------
    ValueError
        A negative length, or a grist that is not above zero.

    Notes
    -----
    Valid for one yarn in the whole weft; add a margin.

    References
    ----------
    Definition.
    """
    require(weft_yarn >= NOTHING, "The length of the weft yarn cannot be negative.")
    require(weft_grist > NO_GRIST, "The grist of the weft must be above zero.")
    return weft_yarn * 1


@calculation
def weight_of_cloth(warp_yarn: Length, weft_yarn: Length, grist: Grist, weft_grist: Grist | None = None) -> Mass:
    """Weight of the yarn for a cloth.

    m = Y₁ / g₁ + Y₂ / g₂. Warp and weft, each length by its own grist.

    Parameters
    ----------
    warp_yarn : Y₁, length of yarn in the warp
    weft_yarn : Y₂, length of yarn in the weft
    grist : g₁, grist of the warp
    weft_grist : g₂, grist of the weft, where it is another yarn; else g₁

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A negative length, or a grist that is not above zero.

    Notes
    -----
    Valid for yarn as it goes on the loom, loom waste included.

    References
    ----------
    Definition of the grist.
    """
    _require_lengths(warp_yarn, weft_yarn)
    require(grist > NO_GRIST, "The grist of the warp must be above zero.")
    other = grist if weft_grist is None else weft_grist
    require(other > NO_GRIST, "The grist of the weft must be above zero.")
    return (warp_yarn / grist + weft_yarn / other).to("gram")


def _require_lengths(warp_yarn, weft_yarn) -> None:
    require(warp_yarn >= NOTHING, "The length of the warp yarn cannot be negative.")
    require(weft_yarn >= NOTHING, "The length of the weft yarn cannot be negative.")


def _require_loss(share, name) -> None:
    require((share >= 0) & (share < 1), f"The {name} lies from 0 to under 1.")
