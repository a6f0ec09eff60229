"""Yarn for a piece of work: how much to have, how much there is, and what is still to be made."""

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_applicable, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NO_LENGTH, NOT_NEGATIVE, SHRINKAGE, require_within
from workbookgen.reference.tolerances import NEARLY_ALL
from workbookgen.units import Grist, Length, Mass, Ratio, Some


@calculation
def yarn_length(length_wanted: Length, margin: Ratio = 0.1) -> Length:
    """Length of yarn to have for a piece.

    L = Y · (1 + x). The reserve covers gauge that drifts, knots and swatches.

    Parameters
    ----------
    length_wanted : Y, the length that the pattern asks for
    margin : x, extra to have, as a share

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A negative length or a negative reserve.

    Notes
    -----
    Valid for a pattern worked in a yarn of similar thickness.

    References
    ----------
    A reserve of 10 to 15 percent: common practice, no source.

    Examples
    --------
    >>> print(yarn_length(Quantity(1000, "m"), margin=0.1))
    1100.0 meter
    """
    require_within(NOT_NEGATIVE, "The length wanted", length_wanted)
    require_within(NOT_NEGATIVE, "The margin", margin)
    return length_wanted * (1 + margin)


@calculation
def left_share(length: Length, in_skeins: Length, used: Mass | None = None) -> Ratio:
    """Share of a project's yarn still to be made.

    q = max(0, 1 - S / L), and 0 once the piece is finished. What is in skeins is made.

    Parameters
    ----------
    length : L, length of its yarn
    in_skeins : S, length in the skeins that belong to it
    used : mass of yarn that the finished piece took

    Returns
    -------
    q, from 0 to 1

    Raises
    ------
    ValueError
        A length that is not above zero, or a negative length or mass.

    Notes
    -----
    Valid for a project whose skeins are in the log.

    References
    ----------
    Definition of a remainder.

    Examples
    --------
    >>> print(left_share(Quantity(1000, "m"), Quantity(250, "m")))
    0.75
    """
    require_numbers(length, in_skeins, used)
    require_within(ABOVE_ZERO, "The length", length)
    require_within(NOT_NEGATIVE, "The length in skeins", in_skeins)
    if used is not None:
        require_within(NOT_NEGATIVE, "A piece cannot have used a negative amount.", used)
        return (in_skeins / length).m_as("") * 0.0
    return np.maximum(1 - (in_skeins / length).m_as(""), 0.0)


@calculation
def surplus(have: Some, need: Some) -> Some:
    """What is left over when the need is met.

    s = H - N. Below zero, it is what is lacking.

    Parameters
    ----------
    have : H, what there is, any quantity; below zero where others need more than there is
    need : N, what is needed, of the same kind

    Returns
    -------
    s, of the same kind

    Raises
    ------
    ValueError
        A negative need, or an amount on hand that is not a number.
    DimensionalityError
        Two amounts of different kinds.

    Notes
    -----
    Valid for amounts of the same thing, lengths or masses.

    References
    ----------
    Definition of the surplus.

    Examples
    --------
    >>> print(surplus(Quantity(1000, "m"), Quantity(900, "m")))
    100 meter
    """
    require_numbers(have, need)
    require_within(NOT_NEGATIVE, "What is needed", need)
    return have - need


@calculation
def all_there_is(in_skeins: Length, to_come: Length | None = None, unknown: Ratio | None = None) -> Length:
    """Length that there is and will be.

    H = S + M, where k = 0. Yarn in skeins counts as measured, the rest only as far as the scarcest strand lasts. A lot
    that is not known is not an empty one: taken for nothing, it would have a spinner buy what is there.

    Parameters
    ----------
    in_skeins : S, length in the skeins that belong to the project
    to_come : M, length that its lots still give, if it has a yarn; below zero where others need more than there is
    unknown : k, number of chosen lots that say nothing of what they still give

    Returns
    -------
    H, a length

    Raises
    ------
    ValueError
        A negative length in skeins, or a lot that is not known.

    Notes
    -----
    Valid for a project whose skeins are in the log.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(all_there_is(Quantity(250, "m"), to_come=Quantity(800, "m")))
    1050 meter
    """
    require_numbers(in_skeins, to_come, unknown)
    require_within(NOT_NEGATIVE, "The length in skeins", in_skeins)
    require(unknown is None or np.asarray(unknown) == 0, "What some of the lots give is not known.")
    return in_skeins if to_come is None else in_skeins + to_come


@calculation
def while_open(amount: Some, used: Mass | None = None) -> Some:
    """What is told of a project until it is finished.

    v = amount, as long as no weight of the finished piece is known. Then nothing is left to be enough for, and its lots
    are free for others.

    Parameters
    ----------
    amount : what it has, what is over, or the chance that it is enough
    used : mass of yarn that the finished piece took

    Returns
    -------
    v, of the same kind

    Raises
    ------
    ValueError
        The piece is finished, or the amount is not a number.

    Notes
    -----
    Valid for one project.

    References
    ----------
    Definition of a selection.

    Examples
    --------
    >>> print(while_open(Quantity(250, "m")))
    250 meter
    """
    require_applicable(used is None, "The piece is finished.")
    require_numbers(amount)
    return amount


@calculation
def used_of_need(used: Mass, planned: Grist, need: Length) -> Ratio:
    """What a piece took, beside what it was expected to take.

    q = m · G / N. After one sock of two it is about a half.

    Parameters
    ----------
    used : m, mass of yarn that the piece took
    planned : G, grist of its yarn
    need : N, length needed

    Returns
    -------
    q, a share

    Raises
    ------
    ValueError
        A negative mass, or a grist or a length that is not above zero.

    Notes
    -----
    Valid for yarn spun as planned.

    References
    ----------
    Definition of the grist.

    Examples
    --------
    >>> print(used_of_need(Quantity(50, "g"), Quantity(4, "m/g"), Quantity(400, "m")))
    0.5
    """
    require_numbers(used, planned, need)
    require_within(NOT_NEGATIVE, "A piece cannot have used a negative amount of yarn.", used)
    require_within(ABOVE_ZERO, "The grist", planned)
    require_within(ABOVE_ZERO, "The length needed", need)
    return (used * planned / need).m_as("")


@calculation
def skein_holds(skeins: Ratio, in_skeins: Length, usual: Length, package: Length | None = None) -> Length:
    """Length that a skein or a ball is assumed to hold.

    ℓ = the ball's, or S / n of the skeins spun, or the usual length. From it follows how many are still to come.

    Parameters
    ----------
    skeins : n, skeins of the project that were weighed
    in_skeins : S, length in its skeins
    usual : what is usual
    package : length of a ball, if the yarn is bought

    Returns
    -------
    ℓ, a length

    Raises
    ------
    ValueError
        A negative number or length, or skeins of no length.

    Notes
    -----
    Valid for skeins of about equal length.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(skein_holds(4, Quantity(800, "m"), usual=Quantity(180, "m")))
    200.0 meter
    """
    require_numbers(skeins, in_skeins, usual, package)
    require_within(NOT_NEGATIVE, "The number of skeins", skeins)
    require_within(NOT_NEGATIVE, "The length in skeins", in_skeins)
    require_within(ABOVE_ZERO, "A skein must hold something.", usual)
    require((in_skeins > NO_LENGTH) | (skeins == 0) | (package is not None), "Skeins must have a length.")
    if package is not None:
        require_within(ABOVE_ZERO, "A ball must hold something.", package)
        return package
    return np.where(skeins > 0, in_skeins / np.maximum(skeins, 1), usual)[()]


@calculation
def unwashed_length(
    length: Length, shrinkage: Ratio, bought_share: Ratio | None = None, design: str | None = None
) -> Length:
    """Length to make before washing.

    U = L / (1 - s), and 0 for a bought yarn that nobody plies. Divide by the share left; adding the loss gives too
    little.

    Parameters
    ----------
    length : L, finished length
    shrinkage : s, share of the length lost in washing; negative where yarn grows
    bought_share : share of the yarn that is bought, if it is known
    design : the design by which it is plied, if it has one

    Returns
    -------
    U, a length

    Raises
    ------
    ValueError
        A negative length, or a shrinkage of 0.9 or more.

    Notes
    -----
    Valid for yarn washed like the sample, which keeps over a tenth of its length: as the shrinkage nears 1, the
    length to spin depends on its last digits.

    References
    ----------
    Definition of the shrinkage.

    Examples
    --------
    >>> print(unwashed_length(Quantity(950, "m"), shrinkage=0.05))
    1000.0 meter
    """
    require_within(NOT_NEGATIVE, "The length", length)
    require_within(SHRINKAGE, "The shrinkage", shrinkage)
    require_numbers(length, shrinkage, bought_share)
    spun = (
        1.0
        if bought_share is None or design is not None
        else np.where(np.asarray(bought_share) > NEARLY_ALL, 0.0, 1.0)[()]
    )
    return length / (1 - shrinkage) * spun


@calculation
def grist_expected(planned: Grist, ratio: Ratio) -> Grist:
    """Grist to expect of a skein that is not weighed yet.

    g' = g · q. The hand that spun the others finer than planned will have spun this one finer, too.

    Parameters
    ----------
    planned : g, planned grist of the yarn
    ratio : q, how much finer the yarn comes out than planned, as far as its skeins tell

    Returns
    -------
    g', a grist

    Raises
    ------
    ValueError
        A grist or a ratio that is not above zero.

    Notes
    -----
    Valid for skeins of one project; of a design, the ratio is that of its spun strands.

    References
    ----------
    Definition of a ratio.

    Examples
    --------
    >>> print(grist_expected(Quantity(2, "m/g"), 1.25))
    2.5 meter / gram
    """
    require_numbers(planned, ratio)
    require_within(ABOVE_ZERO, "The grist", planned)
    require_within(ABOVE_ZERO, "The ratio", ratio)
    return planned * ratio
