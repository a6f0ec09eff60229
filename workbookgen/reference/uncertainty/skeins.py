"""The uncertainty of a skein's length by its sources, separated by what skeins share.

A count of wraps is off in every skein independently. A loop that is a little too long makes all
skeins of its reel too long, so its part is summed over these skeins before it is squared: ten
skeins from one reel do not make the reel better. Where the loop of the washed skein was measured,
the reel cancels and the tape takes its place.
"""

from workbookgen.reference.calculation import calculation, require_applicable, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, SHRINKAGE, require_within
from workbookgen.units import Length, Ratio


@calculation
def counted(finished: Length, wraps: Ratio, u_wraps: Ratio) -> Length:
    """Uncertainty of a skein's length from its count of wraps.

    u = F / n · u_n. Each skein is counted independently.

    Parameters
    ----------
    finished : F, finished length of the skein
    wraps : n, wraps counted
    u_wraps : u_n, standard uncertainty of the count

    Returns
    -------
    u, a length

    Raises
    ------
    ValueError
        A negative length or uncertainty, or wraps that are not above zero.

    Notes
    -----
    Valid for a skein wound on one reel; a leftover length is taken to be as uncertain as the wraps.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).

    Examples
    --------
    >>> print(counted(Quantity(150, "m"), 100, 0.5))
    0.75 meter
    """
    require_numbers(finished, wraps, u_wraps)
    require_length(finished)
    require_within(ABOVE_ZERO, "There must be at least part of a wrap.", wraps)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_wraps)
    return finished / wraps * u_wraps


@calculation
def taped(finished: Length, washed_loop: Length, u_tape: Length) -> Length:
    """Uncertainty of a washed skein's length from the reading of its loop.

    u = F · u_t / C_w. Each skein is read independently.

    Parameters
    ----------
    finished : F, finished length of the skein
    washed_loop : C_w, loop of the washed, dry, slack skein
    u_tape : u_t, standard uncertainty of one reading of a loop

    Returns
    -------
    u, a length

    Raises
    ------
    ValueError
        A negative length or uncertainty, or a loop that is not above zero.

    Notes
    -----
    Valid for a skein of which one loop was measured.

    References
    ----------
    JCGM 100, 5.1.6 (from memory).

    Examples
    --------
    >>> print(round(taped(Quantity(150, "m"), Quantity(1.5, "m"), Quantity(5, "mm")), 6))
    0.5 meter
    """
    require_numbers(finished, washed_loop, u_tape)
    require_length(finished)
    require_within(ABOVE_ZERO, "The loop of the washed skein must have a length.", washed_loop)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_tape)
    return finished * (u_tape / washed_loop).m_as("")


@calculation
def by_reel(finished: Length, loop: Length, u_loop: Length, washed_loop: Length | None = None) -> Length:
    """Uncertainty that a skein not measured after washing shares with all skeins from its reel.

    u = F · u_C / C. The loop of the reel is off by the same amount in every wrap of every skein.

    Parameters
    ----------
    finished : F, finished length of the skein
    loop : C, loop of the reel
    u_loop : u_C, standard uncertainty of the loop
    washed_loop : C_w, loop of the washed skein; where it is measured, the reel cancels and nothing is shared

    Returns
    -------
    u, a length

    Raises
    ------
    ValueError
        A negative length or uncertainty, a loop that is not above zero, or a measured washed loop.

    Notes
    -----
    Valid for skeins that count at their reeled length, less shrinkage.

    References
    ----------
    JCGM 100, 5.2 and F.1.2, on correlated terms (from memory).

    Examples
    --------
    >>> print(round(by_reel(Quantity(150, "m"), Quantity(1.5, "m"), Quantity(6, "mm")), 6))
    0.6 meter
    """
    require_numbers(finished, loop, u_loop, washed_loop)
    require_applicable(washed_loop is None, "The loop of the washed skein is measured, so the reel cancels.")
    require_length(finished)
    require_within(ABOVE_ZERO, "The loop", loop)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_loop)
    return finished * (u_loop / loop).m_as("")


@calculation
def by_slack(finished: Length, u_slack: Ratio, washed_loop: Length) -> Length:
    """Uncertainty shared by all skeins measured after washing.

    u = F · r. One person lays them all equally slack, perhaps a little too slack or too tight.

    Parameters
    ----------
    finished : F, finished length of the skein
    u_slack : r, relative standard uncertainty of a loop from how slack it lies
    washed_loop : C_w, the loop that was measured

    Returns
    -------
    u, a length

    Raises
    ------
    ValueError
        A negative length or uncertainty.

    Notes
    -----
    Valid for skeins measured by one person in one way.

    References
    ----------
    JCGM 100, 5.2 and F.1.2, on correlated terms (from memory).

    Examples
    --------
    >>> print(by_slack(Quantity(150, "m"), 0.01, Quantity(1.44, "m")))
    1.5 meter
    """
    require_numbers(finished, u_slack, washed_loop)
    require_length(finished)
    require_within(ABOVE_ZERO, "The loop of the washed skein must have a length.", washed_loop)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_slack)
    return finished * u_slack


@calculation
def by_shrinkage(
    finished: Length,
    shrinkage: Ratio,
    u_usual: Ratio,
    u_sampled: Ratio,
    sampled: Ratio | None = None,
    washed_loop: Length | None = None,
) -> Length:
    """Uncertainty shared by all skeins not measured after washing.

    u = F · u_s / (1 - s). They will all lose what the sample lost, or the usual share.

    Parameters
    ----------
    finished : F, expected length of the skein after washing
    shrinkage : s, the expected shrinkage
    u_usual : u_s, standard uncertainty of the usual shrinkage, a share
    u_sampled : u_s, that of a shrinkage found on a sample, which is taken where there is one
    sampled : the sample's shrinkage, if there is one
    washed_loop : C_w, loop of the washed skein; where it is measured, no shrinkage is assumed

    Returns
    -------
    u, a length

    Raises
    ------
    ValueError
        A negative length or uncertainty, a shrinkage of 0.9 or more, or a measured washed loop.

    Notes
    -----
    Valid for skeins that will be washed as the sample was.

    References
    ----------
    JCGM 100, 5.2 and F.1.2, on correlated terms (from memory).

    Examples
    --------
    >>> print(by_shrinkage(Quantity(150, "m"), 0.25, u_usual=0.02, u_sampled=0.01, sampled=0.25))
    2.0 meter
    """
    require_numbers(finished, shrinkage, u_usual, u_sampled, sampled, washed_loop)
    require_applicable(washed_loop is None, "The loop of the washed skein is measured, so no shrinkage is assumed.")
    require_length(finished)
    require_within(SHRINKAGE, "The shrinkage", shrinkage)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_usual, u_sampled)
    return finished * (u_usual if sampled is None else u_sampled) / (1 - shrinkage)


def require_length(length: Length) -> None:
    """Refuse a length, or an uncertainty of one, below zero."""
    require_within(NOT_NEGATIVE, "A length or its uncertainty", length)


@calculation
def by_washing(shrinkage: Ratio, u_usual: Ratio, u_sampled: Ratio, sampled: Ratio | None = None) -> Ratio:
    """Relative uncertainty of the length that washing leaves.

    r = u_s / (1 - s). All of a yarn shrinks together, so this does not get less with more of it.

    Parameters
    ----------
    shrinkage : s, shrinkage expected
    u_usual : u_s, uncertainty of a usual shrinkage
    u_sampled : u_s, uncertainty of a sample's shrinkage
    sampled : a sample's shrinkage, if there is one

    Returns
    -------
    r, a share

    Raises
    ------
    ValueError
        A negative uncertainty, or a shrinkage of 0.9 or more.

    Notes
    -----
    Valid for a yarn that is washed as the sample, or as usual.

    References
    ----------
    JCGM 100, 5.1.6 (from memory).

    Examples
    --------
    >>> print(round(by_washing(0.05, u_usual=0.03, u_sampled=0.01), 4))
    0.0316
    """
    require_numbers(shrinkage, u_usual, u_sampled, sampled)
    require_within(SHRINKAGE, "The shrinkage", shrinkage)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_usual, u_sampled)
    return (u_usual if sampled is None else u_sampled) / (1 - shrinkage)
