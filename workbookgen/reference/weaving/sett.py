"""How close the threads of a warp can stand, how close they should, and what a reed allows.

Threads that lie side by side leave no room for the weft. The weave says how often warp and weft change sides, and
each change takes the room of a thread. That is the closest that can be beaten; handwoven cloth is looser.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, SOME_PART, require_within
from workbookgen.units import PerLength, Ratio


@calculation
def closest_sett(
    threads_side_by_side: PerLength, ends: Ratio, intersections: Ratio, crossing: PerLength | None = None
) -> PerLength:
    """Closest sett that a weave allows.

    S = e / (e / D + i / C), which is D · e / (e + i) where warp and weft are alike. Where threads cross, the weft
    takes the room of one of its threads. For picks, exchange the two.

    Parameters
    ----------
    threads_side_by_side : D, threads that lie touching in a length
    ends : e, ends in one repeat of the weave
    intersections : i, intersections in one repeat
    crossing : C, threads of the other yarn that lie touching in a length, if it is a different one; else D

    Returns
    -------
    S, a number per length

    Raises
    ------
    ValueError
        Threads, ends or intersections that are not above zero.

    Notes
    -----
    Valid for threads set as close as can be beaten, equally thick throughout.

    References
    ----------
    Ashenhurst's rule, quoted in a study of weaving (read); J. T. Taylor, Cotton Weaving and
    Designing (read). For two yarns: the same geometry, each with its own diameter.

    Examples
    --------
    >>> print(closest_sett(Quantity(30, "1/inch"), ends=2, intersections=2))
    15.0 / inch
    """
    require_within(ABOVE_ZERO, "The threads side by side", threads_side_by_side)
    require_within(ABOVE_ZERO, "The ends of a repeat", ends)
    require_within(ABOVE_ZERO, "The intersections of a repeat", intersections)
    other = threads_side_by_side if crossing is None else crossing
    require_within(ABOVE_ZERO, "The crossing threads", other)
    return ends / (ends / threads_side_by_side + intersections / other)


@calculation
def working_sett(closest: PerLength, share: Ratio = 0.75) -> PerLength:
    """Sett to work with.

    W = x · S. Handwoven cloth is set looser than the closest.

    Parameters
    ----------
    closest : S, closest sett of the weave
    share : x, about 0.75 for cloth, 0.6 to 0.7 for a shawl, 0.5 to 0.6 for fulling

    Returns
    -------
    W, a number per length

    Raises
    ------
    ValueError
        A sett that is not above zero, or a share that is not above 0 and up to 1.

    Notes
    -----
    Valid for a first sample; the cloth, off the loom and washed, decides.

    References
    ----------
    Common practice, no source; three quarters in a study of weaving (read).

    Examples
    --------
    >>> print(working_sett(Quantity(16, "1/inch")))
    12.0 / inch
    """
    require_within(ABOVE_ZERO, "The closest sett", closest)
    require_within(SOME_PART, "The share", share)
    return share * closest


@calculation
def sett_in_use(own: PerLength | None = None, working: PerLength | None = None) -> PerLength:
    """Threads in a length to weave with.

    W = own, or else the working sett. A sett proved on a sample beats a rule. The same goes for picks, which are as
    close as the ends unless your own figure says otherwise.

    Parameters
    ----------
    own : your own number of threads in a length
    working : the number to expect from the rule, or from the warp

    Returns
    -------
    W, a number per length

    Raises
    ------
    ValueError
        Neither is known, or the number in use is not above zero.

    Notes
    -----
    Valid for two figures of the same yarn and weave.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(sett_in_use(own=Quantity(12, "1/inch"), working=Quantity(11, "1/inch")))
    12 / inch
    """
    sett = working if own is None else own
    require(sett is not None, "Give your own sett, or the grist and the weave.")
    require_within(ABOVE_ZERO, "The sett", sett)
    return sett


@calculation
def ends_in_a_dent(sett: PerLength, dents: PerLength) -> Ratio:
    """Ends per dent of the reed, to come nearest to a sett.

    n = S / R, to the nearest half, and at least a half. One and a half means one and two ends alternately; a half means
    every other dent empty.

    Parameters
    ----------
    sett : S, sett wanted
    dents : R, dents of the reed in a length

    Returns
    -------
    n, a number

    Raises
    ------
    ValueError
        A sett or dents that are not above zero.

    Notes
    -----
    Valid for evenly spread ends; S / R is rounded to nine decimals first, and a quarter is rounded up.

    References
    ----------
    Definition of a reed's number; sleying by halves: common practice, no source.

    Examples
    --------
    >>> print(ends_in_a_dent(Quantity(15, "1/inch"), Quantity(10, "1/inch")))
    1.5
    """
    require_within(ABOVE_ZERO, "The sett", sett)
    require_within(ABOVE_ZERO, "The dents", dents)
    return np.maximum(1, np.floor(np.round(2 * (sett / dents).m_as(""), 9) + 0.5)) / 2


@calculation
def sett_of_reed(per_dent: Ratio, dents: PerLength) -> PerLength:
    """Sett that a reed gives.

    S = n · R. The reed holds the ends in place.

    Parameters
    ----------
    per_dent : n, ends per dent
    dents : R, dents in a length

    Returns
    -------
    S, a number per length

    Raises
    ------
    ValueError
        Ends or dents that are not above zero.

    Notes
    -----
    Valid for the warp on the loom; draw-in brings the ends closer.

    References
    ----------
    Definition of a reed's number.

    Examples
    --------
    >>> print(sett_of_reed(1.5, Quantity(10, "1/inch")))
    15.0 / inch
    """
    require_within(ABOVE_ZERO, "The ends per dent", per_dent)
    require_within(ABOVE_ZERO, "The dents", dents)
    return per_dent * dents


@calculation
def sett_on_the_loom(sett: PerLength, of_reed: PerLength | None = None) -> PerLength:
    """Sett on the loom.

    S = that of the reed, or else the sett in use. Without a known reed, the wanted sett is assumed.

    Parameters
    ----------
    sett : sett in use
    of_reed : sett that the reed gives

    Returns
    -------
    S, a number per length

    Raises
    ------
    ValueError
        A sett that is not above zero.

    Notes
    -----
    Valid for one reed over the whole width.

    References
    ----------
    Definition.

    Examples
    --------
    >>> print(sett_on_the_loom(Quantity(12, "1/inch"), of_reed=Quantity(12.5, "1/inch")))
    12.5 / inch
    """
    require_numbers(sett, of_reed)
    set_at = sett if of_reed is None else of_reed
    require_within(ABOVE_ZERO, "The sett", set_at)
    return set_at


@calculation
def picks_in_use(
    own: PerLength | None = None, closest: PerLength | None = None, share: Ratio = 0.75, sett: PerLength | None = None
) -> PerLength:
    """Picks in a length to weave with.

    P = own, or else x · C for a weft of another yarn, or else the sett. Cloth of one yarn is woven equally close both
    ways.

    Parameters
    ----------
    own : your own number of picks in a length
    closest : C, closest picks for a weft that is a different yarn
    share : x, share of the closest, as for the sett
    sett : ends in a length on the loom

    Returns
    -------
    P, a number per length

    Raises
    ------
    ValueError
        None of them is known, or the number in use is not above zero.

    Notes
    -----
    Valid for cloth in which neither warp nor weft covers the other.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(picks_in_use(closest=Quantity(16, "1/inch"), share=0.75))
    12.0 / inch
    """
    require_numbers(own, closest, share, sett)
    beaten = own if own is not None else closest * share if closest is not None else sett
    require(beaten is not None, "Give your own picks, or what the sett is worked out from.")
    require_within(ABOVE_ZERO, "The picks", beaten)
    return beaten
