"""A skein on the reel, on the scale and after washing: its length and its mass.

Every full turn of the reel is one loop, so wraps become a length. Washing shows in the loop as well: that of the
washed skein, laid slack, is shorter than that of the reel.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NO_LENGTH, NO_MASS, NOT_NEGATIVE, PART, SHRINKAGE, require_within
from workbookgen.units import Length, Mass, Ratio

BOUGHT = 5  # the stage of a lot that was bought as yarn


@calculation
def length(wraps: Ratio, loop: Length, part_wrap: Ratio = 0.0, rest: Length = NO_LENGTH) -> Length:
    """Length of the yarn on a reel.

    L = (n + p) · C + r. Every full turn of the reel is one loop.

    Parameters
    ----------
    wraps : n, full wraps counted
    loop : C, length of one full turn of the reel
    part_wrap : p, the share of a last wrap that is not full, 0 to 1
    rest : r, a length measured apart, after the last wrap

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A negative number, a part wrap over 1, or a loop of no length.

    Notes
    -----
    Valid for a reel on which the layers do not yet lengthen the loop.

    References
    ----------
    Skein method of ISO 2060 and ASTM D1907 (from memory): length is perimeter times turns.

    Examples
    --------
    >>> print(length(100, Quantity(1.5, "m"), part_wrap=0.5, rest=Quantity(0.25, "m")))
    151.0 meter
    """
    require_within(NOT_NEGATIVE, "The number of wraps", wraps)
    require_within(PART, "A part wrap", part_wrap)
    require_within(ABOVE_ZERO, "The loop must have a length.", loop)
    require_within(NOT_NEGATIVE, "The rest cannot be a negative length.", rest)
    return (wraps + part_wrap) * loop + rest


@calculation
def hundred_wraps(loop: Length) -> Length:
    """Length of a hundred wraps.

    L = 100 · C. It shows at a glance what a reel holds.

    Parameters
    ----------
    loop : C, the loop

    Returns
    -------
    L, a length

    Raises
    ------
    ValueError
        A loop of no length.

    Notes
    -----
    Valid for a reel on which the layers do not yet lengthen the loop.

    References
    ----------
    Skein method of ISO 2060 and ASTM D1907 (from memory): length is perimeter times turns.

    Examples
    --------
    >>> print(hundred_wraps(Quantity(1.5, "m")))
    150.0 meter
    """
    require_within(ABOVE_ZERO, "The loop must have a length.", loop)
    return 100 * loop


@calculation
def finished_length(
    length: Length, loop: Length, washed_loop: Length | None = None, shrinkage: Ratio | None = None
) -> Length:
    """Length of the yarn after washing.

    F = L · C_w / C, or L · (1 - s) while no washed loop is known. Every part of a skein shrinks
    alike, so one loop stands for all; a skein not washed yet is expected to shrink as its sample did.

    Parameters
    ----------
    length : L, length on the reel
    loop : C, the loop of the reel
    washed_loop : C_w, the loop of the washed, dry, slack skein
    shrinkage : s, share of the length that washing is expected to take

    Returns
    -------
    F, a length

    Raises
    ------
    ValueError
        A negative length, a loop that is not above zero, or a shrinkage of 0.9 or more.

    Notes
    -----
    Valid for a skein that is washed whole and measured without tension.

    References
    ----------
    Proportion; common practice, no source.

    Examples
    --------
    >>> print(finished_length(Quantity(150, "m"), Quantity(1.5, "m"), washed_loop=Quantity(1.44, "m")))
    144.0 meter
    """
    require_within(NOT_NEGATIVE, "The length", length)
    require_within(ABOVE_ZERO, "The loop must have a length.", loop)
    if washed_loop is not None:
        require_within(ABOVE_ZERO, "The loop of the washed skein must have a length.", washed_loop)
        return length * (washed_loop / loop).m_as("")
    if shrinkage is None:
        return length
    require_within(SHRINKAGE, "The shrinkage", shrinkage)
    return length * (1 - shrinkage)


@calculation
def expected_shrinkage(usual: Ratio, sample: Ratio | None = None) -> Ratio:
    """Expected shrinkage of a skein.

    s = the sample's, or else what is usual. A washed sample beats any rule.

    Parameters
    ----------
    usual : what is usual, as a share of the length on the reel
    sample : shrinkage of a sample of the yarn

    Returns
    -------
    s, a share of the length on the reel

    Raises
    ------
    ValueError
        A shrinkage of 0.9 or more.

    Notes
    -----
    Valid for a skein that will be washed as the sample was.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(expected_shrinkage(0.05, sample=0.08))
    0.08
    """
    require_numbers(usual, sample)
    share = usual if sample is None else sample
    require_within(SHRINKAGE, "The shrinkage", share)
    return share


@calculation
def as_bought(stage: Ratio, sample: Ratio | None = None, design: Ratio | None = None) -> Ratio:
    """Whether a skein is of a bought yarn, of which no sample tells what washing takes.

    b = 1 where its lot was bought as yarn and neither shrinkage is known, else 0. A bought yarn is finished: its length
    is the one to plan with.

    Parameters
    ----------
    stage : stage at which its lot was bought, 5 for a yarn or thread
    sample : shrinkage of the sample that its project plans with
    design : shrinkage of the design that it is plied by

    Returns
    -------
    b, 1 or 0

    Raises
    ------
    ValueError
        A stage or a shrinkage that is not a number.

    Notes
    -----
    Valid for knitting yarn as it is sold; a weaving yarn in oil shrinks, and is measured once it is washed.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(as_bought(stage=5))
    1.0
    """
    require_numbers(stage, sample, design)
    known = sample is not None or design is not None
    return np.where((np.asarray(stage) >= BOUGHT) & (not known), 1.0, 0.0)[()]


@calculation
def known_shrinkage(sample: Ratio | None = None, design: Ratio | None = None, bought: Ratio = 0.0) -> Ratio:
    """Shrinkage that is known of a yarn.

    s = the sample's, or else the design's, or else 0 of a bought yarn. The first two come from a washed sample; the one
    that was chosen for the yarn goes first.

    Parameters
    ----------
    sample : shrinkage of the sample that the project plans with
    design : shrinkage as typed with the design of the yarn
    bought : 1 for a bought yarn, else 0

    Returns
    -------
    s, a share of the length before washing

    Raises
    ------
    ValueError
        None of the two is known, of a yarn that is not bought.

    Notes
    -----
    Valid for a yarn plied as its design says, and washed as the sample was.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(known_shrinkage(design=0.12))
    0.12
    """
    require_numbers(sample, design, bought)
    share = design if sample is None else sample
    require((share is not None) | (np.asarray(bought) > 0), "Give the shrinkage of a sample, or of the design.")
    return 0.0 * bought if share is None else share


@calculation
def length_basis(
    length: Length, washed_loop: Length | None = None, sample: Ratio | None = None, bought: Ratio = 0.0
) -> str:
    """How the finished length of a skein is known.

    basis = washed and measured, or as bought, or the sample's shrinkage, or the usual one. Only the first was measured
    on this skein.

    Parameters
    ----------
    length : L, length on the reel
    washed_loop : C_w, the loop of the washed skein, if it was measured
    sample : shrinkage of a sample of the yarn, if there is one
    bought : 1 for a bought yarn, else 0

    Returns
    -------
    a text: "measured", "as bought", "shrinks as its sample" or "usual shrinkage"

    Raises
    ------
    ValueError
        A negative length.

    Notes
    -----
    Valid for any skein.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(length_basis(Quantity(150, "m"), sample=0.08))
    shrinks as its sample
    """
    require_numbers(length, washed_loop, sample, bought)
    require_within(NOT_NEGATIVE, "The length", length)
    if washed_loop is not None:
        return by_element(lambda _: "measured", length.magnitude)
    words = "usual shrinkage" if sample is None else "shrinks as its sample"
    return by_element(lambda _, of_shop: "as bought" if of_shop > 0 else words, length.magnitude, bought)


@calculation
def shrinkage(length: Length, finished: Length) -> Ratio:
    """Share of its length that a yarn loses in washing.

    s = 1 - F / L. It is negative for a yarn that grew.

    Parameters
    ----------
    length : L, length on the reel
    finished : F, length after washing

    Returns
    -------
    s, a share of the length on the reel

    Raises
    ------
    ValueError
        A length on the reel that is not above zero, or a negative finished length.

    Notes
    -----
    Valid for two lengths of the same yarn; the loss counts on the length before washing.

    References
    ----------
    Definition of shrinkage.

    Examples
    --------
    >>> print(shrinkage(Quantity(160, "m"), Quantity(120, "m")))
    0.25
    """
    require_within(ABOVE_ZERO, "The length on the reel", length)
    require_within(NOT_NEGATIVE, "The finished length", finished)
    return 1 - (finished / length).m_as("")


@calculation
def net_mass(gross: Mass, tare: Mass = NO_MASS) -> Mass:
    """Mass of a skein without what was weighed with it.

    m = g - t. Ties, tag and bowl are on the scale as well.

    Parameters
    ----------
    gross : g, mass on the scale
    tare : t, mass of all that is not yarn

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A negative tare, or a tare that leaves nothing.

    Notes
    -----
    Valid for skein and tare weighed on the same scale.

    References
    ----------
    Definition of the net mass.

    Examples
    --------
    >>> print(net_mass(Quantity(112, "g"), Quantity(12, "g")))
    100 gram
    """
    require_within(NOT_NEGATIVE, "The tare", tare)
    require(gross > tare, "The tare must be lighter than the skein with it.")
    return gross - tare
