"""Yarn for warp and weft: its length, and its weight."""

from workbookgen.reference.calculation import calculation, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_loss, require_within
from workbookgen.units import Grist, Length, Mass, PerLength, Ratio


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
    Valid for a warp of one yarn; for stripes, use the ends of each yarn.

    References
    ----------
    C. P. Brooks, Cotton Manufacturing, the weight of a piece (read).

    Examples
    --------
    >>> print(warp_yarn(300, Quantity(5, "m")))
    1500 meter
    """
    require_within(ABOVE_ZERO, "The number of ends", ends)
    require_within(ABOVE_ZERO, "The warp must have a length.", warp_length)
    return ends * warp_length


@calculation
def weft_yarn(picks: PerLength, woven_length: Length, width: Length, take_up: Ratio = 0.0) -> Length:
    """Length of yarn in the weft.

    Y = P · V · b / (1 - t). Picks in an inch times inches of width are yards of weft in a yard of cloth, and a pick
    that is laid in with some slack, to bend over and under, is longer than the reed is wide.

    Parameters
    ----------
    picks : P, picks in a length
    woven_length : V, length to weave
    width : b, width in the reed
    take_up : t, share of a straightened pick beyond the width in the reed, from 0 to under 1

    Returns
    -------
    Y, a length

    Raises
    ------
    ValueError
        Picks, a length or a width that are not above zero, or a take-up outside 0 to under 1.

    Notes
    -----
    Valid for a take-up reckoned from the width in the reed. Reckoned from the cloth on the loom, as t₁ of the warp is,
    it holds the draw-in d as well: t = 1 - (1 - t₁) / (1 - d). Crimp, a share of the cloth, is a third number:
    t₁ = c / (1 + c).

    References
    ----------
    C. P. Brooks, Cotton Manufacturing, the weight of a piece: picks as long as the reed is wide (read); take-up as a
    share of the straightened yarn, ASTM D3883 (from memory).

    Examples
    --------
    >>> print(weft_yarn(Quantity(400, "1/m"), Quantity(5, "m"), Quantity(0.9, "m"), take_up=0.1))
    2000.0 meter
    """
    require_within(ABOVE_ZERO, "The picks", picks)
    require_within(ABOVE_ZERO, "The length to weave", woven_length)
    require_within(ABOVE_ZERO, "The width", width)
    require_loss(take_up, "take-up of the weft")
    return (picks * woven_length).m_as("") * width / (1 - take_up)


@calculation
def yarn_of_the_warp(
    warp_yarn: Length, weft_yarn: Length, weft_grist: Grist | None = None, weft_project: str | None = None
) -> Length:
    """Length of the yarn used for the warp.

    Y = Y₁ + Y₂, and Y₁ where the weft is another yarn. Lengths of two different yarns do not add up.

    Parameters
    ----------
    warp_yarn : Y₁, length of yarn in the warp
    weft_yarn : Y₂, length of yarn in the weft
    weft_grist : grist of the weft, where it is another yarn
    weft_project : the project that makes it, where it is another yarn

    Returns
    -------
    Y, a length

    Raises
    ------
    ValueError
        A negative length.

    Notes
    -----
    Valid for one yarn in the whole warp; add a reserve.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(yarn_of_the_warp(Quantity(1500, "m"), Quantity(1200, "m")))
    2700 meter
    """
    _require_lengths(warp_yarn, weft_yarn)
    require_numbers(weft_grist)
    is_one = weft_grist is None and weft_project is None
    return warp_yarn + weft_yarn if is_one else warp_yarn


@calculation
def weft_apart(weft_yarn: Length, weft_grist: Grist) -> Length:
    """Length of a weft that is a different yarn from the warp.

    Y = Y₂. It is spun, or bought, separately.

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
    Valid for one yarn in the whole weft; add a reserve.

    References
    ----------
    Definition.

    Examples
    --------
    >>> print(weft_apart(Quantity(1200, "m"), Quantity(4, "m/g")))
    1200 meter
    """
    require_within(NOT_NEGATIVE, "The length of the weft yarn", weft_yarn)
    require_within(ABOVE_ZERO, "The grist of the weft", weft_grist)
    return weft_yarn * 1


@calculation
def weight_of_cloth(warp_yarn: Length, weft_yarn: Length, grist: Grist, weft_grist: Grist | None = None) -> Mass:
    """Weight of the yarn for a cloth.

    m = Y₁ / g₁ + Y₂ / g₂. Warp and weft, each length over its own grist.

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

    Examples
    --------
    >>> print(weight_of_cloth(Quantity(1500, "m"), Quantity(1200, "m"), Quantity(5, "m/g"), Quantity(4, "m/g")))
    600.0 gram
    """
    _require_lengths(warp_yarn, weft_yarn)
    require_within(ABOVE_ZERO, "The grist of the warp", grist)
    other = grist if weft_grist is None else weft_grist
    require_within(ABOVE_ZERO, "The grist of the weft", other)
    return (warp_yarn / grist + weft_yarn / other).to("gram")


def _require_lengths(warp_yarn: Length, weft_yarn: Length) -> None:
    require_within(NOT_NEGATIVE, "The length of the warp yarn", warp_yarn)
    require_within(NOT_NEGATIVE, "The length of the weft yarn", weft_yarn)
