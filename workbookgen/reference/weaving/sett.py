"""How close the threads of a warp can stand, and how close they should.

Threads that lie side by side leave no room for the weft. The weave says how often warp
and weft change sides, and each change takes the room of a thread. That is the closest
that can be beaten; cloth by hand stands looser.
"""

from workbookgen.reference.law import law, require
from workbookgen.units import PerLength, Quantity, Ratio

NO_SETT = Quantity(0.0, "1/m")


@law
def closest_sett(threads_side_by_side: PerLength, ends: Ratio, intersections: Ratio) -> PerLength:
    """Closest sett that a weave allows.

    S = D · e / (e + i). Where threads cross, the weft takes the room of a thread.

    Parameters
    ----------
    threads_side_by_side : D, threads that lie touching in a length
    ends : e, ends in one repeat of the weave
    intersections : i, intersections in one repeat

    Returns
    -------
    S, a number per length

    Raises
    ------
    ValueError
        Threads, ends or intersections that are not above zero.

    Notes
    -----
    Valid for warp and weft of like thickness, set as close as can be beaten.

    References
    ----------
    Ashenhurst's rule, quoted in a study of weaving (read); J. T. Taylor, Cotton Weaving and
    Designing (read).
    """
    require(threads_side_by_side > NO_SETT, "The threads side by side must be above zero.")
    require(ends > 0, "The ends of a repeat must be above zero.")
    require(intersections > 0, "The intersections of a repeat must be above zero.")
    return threads_side_by_side * ends / (ends + intersections)


@law
def working_sett(closest: PerLength, share: Ratio = 0.75) -> PerLength:
    """Sett to work with.

    W = x · S. Cloth by hand is set looser than can be beaten.

    Parameters
    ----------
    closest : S, closest sett of the weave
    share : x, about 0.75 for cloth, 0.6 to 0.7 for a shawl, 0.5 to 0.6 to be fulled

    Returns
    -------
    W, a number per length

    Raises
    ------
    ValueError
        A sett that is not above zero, or a share outside 0 to 1.

    Notes
    -----
    Valid for a first sample; the cloth off the loom and washed decides.

    References
    ----------
    Common practice, no source; three quarters in a study of weaving (read).
    """
    require(closest > NO_SETT, "The closest sett must be above zero.")
    require((share > 0) & (share <= 1), "The share lies above 0 and up to 1.")
    return share * closest


@law
def sett_in_use(own: PerLength | None = None, working: PerLength | None = None) -> PerLength:
    """Threads in a length to weave with.

    W = own, or else the working sett. A sett that proved itself on a sample beats a rule. The
    same goes for picks, which are as close as the ends unless one's own figure says otherwise.

    Parameters
    ----------
    own : one's own number of threads in a length
    working : the number that the rule, or the warp, leads one to expect

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
    """
    sett = working if own is None else own
    require(sett is not None, "Give your own sett, or the grist and the weave.")
    require(sett > NO_SETT, "The sett must be above zero.")
    return sett
