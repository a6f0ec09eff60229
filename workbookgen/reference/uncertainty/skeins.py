"""What is doubtful about the length of skeins, told apart by what the skeins share.

A count of wraps is wrong by itself in every skein. A loop that is a little too long makes all
skeins of its reel too long, so its share is added over these skeins first and squared then: ten
skeins of one reel do not make the reel better. Where the loop of the washed skein was measured,
the reel cancels and the tape takes its place.
"""

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.units import Area, Length, Quantity, Ratio

NOTHING = Quantity(0.0, "m")
NO_AREA = Quantity(0.0, "m^2")


@calculation
def counted(finished: Length, wraps: Ratio, u_wraps: Ratio) -> Length:
    """Doubt of a skein's length by its count of wraps.

    u = F / n · u_n. Each skein is counted by itself.

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
    Valid for a skein wound on one reel; a leftover length is taken to be as doubtful as a wrap's share.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).
    """
    require_numbers(finished, wraps, u_wraps)
    _require_length(finished)
    require(wraps > 0, "There must be at least part of a wrap.")
    require(u_wraps >= 0, "A standard uncertainty cannot be negative.")
    return finished / wraps * u_wraps


@calculation
def taped(finished: Length, washed_loop: Length, u_tape: Length) -> Length:
    """Doubt of a washed skein's length by the reading of its loop.

    u = F · u_t / C_w. Each skein is read by itself.

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
    """
    require_numbers(finished, washed_loop, u_tape)
    _require_length(finished)
    require(washed_loop > NOTHING, "The loop of the washed skein must have a length.")
    require(u_tape >= NOTHING, "A standard uncertainty cannot be negative.")
    return finished * (u_tape / washed_loop).m_as("")


@calculation
def own_square(count_part: Length, tape_part: Length | None = None) -> Area:
    """Squared doubt that a skein has to itself.

    q = u_n² + u_t². What no other skein shares is squared before it is added.

    Parameters
    ----------
    count_part : u_n, doubt by the count of wraps
    tape_part : u_t, doubt by the reading of the washed loop, if it was measured

    Returns
    -------
    q, a length squared

    Raises
    ------
    ValueError
        A negative doubt.

    Notes
    -----
    Valid for readings taken one by one.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).
    """
    require_numbers(count_part, tape_part)
    _require_length(count_part)
    if tape_part is None:
        return count_part**2
    _require_length(tape_part)
    return count_part**2 + tape_part**2


@calculation
def by_reel(finished: Length, loop: Length, u_loop: Length, washed_loop: Length | None = None) -> Length:
    """What a skein that was not measured after washing shares with all skeins of its reel.

    u = F · u_C / C. The loop of the reel is off by the same in every wrap of every skein.

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
    Valid for skeins that count as they were reeled, less what washing takes.

    References
    ----------
    JCGM 100, 5.2 and F.1.2, on what several terms share (from memory).
    """
    require_numbers(finished, loop, u_loop, washed_loop)
    require(washed_loop is None, "The loop of the washed skein is measured, so the reel cancels.")
    _require_length(finished)
    require(loop > NOTHING, "The loop must be above zero.")
    require(u_loop >= NOTHING, "A standard uncertainty cannot be negative.")
    return finished * (u_loop / loop).m_as("")


@calculation
def by_slack(finished: Length, u_slack: Ratio, washed_loop: Length) -> Length:
    """What all skeins measured after washing share.

    u = F · r. One person lays them equally slack, and may do so a little too slack or too tight.

    Parameters
    ----------
    finished : F, finished length of the skein
    u_slack : r, standard uncertainty of a loop by how slack it lies, as a share
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
    JCGM 100, 5.2 and F.1.2, on what several terms share (from memory).
    """
    require_numbers(finished, u_slack, washed_loop)
    _require_length(finished)
    require(washed_loop > NOTHING, "The loop of the washed skein must have a length.")
    require(u_slack >= 0, "A standard uncertainty cannot be negative.")
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
    """What all skeins share that are not measured after washing.

    u = F · u_s / (1 - s). They all will lose what the sample lost, or what is usual.

    Parameters
    ----------
    finished : F, length that the skein is expected to have when it is washed
    shrinkage : s, the shrinkage that is expected
    u_usual : u_s, standard uncertainty of the usual shrinkage, a share
    u_sampled : u_s, that of a shrinkage found on a sample, which is taken where there is one
    sampled : the sample's shrinkage, if there is one
    washed_loop : C_w, loop of the washed skein; where it is measured, nothing is expected any more

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
    JCGM 100, 5.2 and F.1.2, on what several terms share (from memory).
    """
    require_numbers(finished, shrinkage, u_usual, u_sampled, sampled, washed_loop)
    require(washed_loop is None, "The loop of the washed skein is measured, so nothing is expected any more.")
    _require_length(finished)
    require(shrinkage < 0.9, "The shrinkage lies under 0.9.")
    require((u_usual >= 0) & (u_sampled >= 0), "A standard uncertainty cannot be negative.")
    return finished * (u_usual if sampled is None else u_sampled) / (1 - shrinkage)


@calculation
def with_its_reel(part: Length, sum_of_reel: Length) -> Area:
    """A skein's share in the squared doubt by its reel.

    q = u · Σu. Added over the skeins of a reel it is (Σu)², over several reels the sum of these.

    Parameters
    ----------
    part : u, what the skein shares with the others of its reel
    sum_of_reel : Σu, the same of all skeins of one project on that reel, itself among them

    Returns
    -------
    q, a length squared

    Raises
    ------
    ValueError
        A negative length.

    Notes
    -----
    Valid for skeins of one project.

    References
    ----------
    JCGM 100, 5.2 and F.1.2, on what several terms share (from memory).
    """
    require_numbers(part, sum_of_reel)
    _require_length(part)
    _require_length(sum_of_reel)
    return part * sum_of_reel


@calculation
def skein_doubt(
    own: Area, reel_part: Length | None = None, slack_part: Length | None = None, shrink_part: Length | None = None
) -> Length:
    """Standard uncertainty of one skein's finished length.

    u = √(q + u_C² + u_r² + u_s²). What it shares with others is doubt all the same.

    Parameters
    ----------
    own : q, squared doubt that it has to itself
    reel_part : u_C, what it shares with its reel
    slack_part : u_r, what it shares with all measured after washing
    shrink_part : u_s, what it shares with all not measured after washing

    Returns
    -------
    u, a length

    Raises
    ------
    ValueError
        A negative doubt.

    Notes
    -----
    Valid for one skein; the doubts of several are not to be added by their squares.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).
    """
    require_numbers(own, reel_part, slack_part, shrink_part)
    require(own >= NO_AREA, "A squared uncertainty cannot be negative.")
    shared = [part for part in (reel_part, slack_part, shrink_part) if part is not None]
    for part in shared:
        _require_length(part)
    return sum((part**2 for part in shared), start=own) ** 0.5


@calculation
def skeins_doubt(own: Area, by_reels: Area, slack: Length, shrink: Length) -> Length:
    """Standard uncertainty of the skeins of a project together.

    u = √(Σq + Σ(u · Σu) + (Σu_r)² + (Σu_s)²). What is shared is added before it is squared.

    Parameters
    ----------
    own : Σq, sum of the squared doubts that each skein has to itself
    by_reels : sum of the skeins' shares in the squared doubt of their reels
    slack : Σu_r, sum of what those measured after washing share
    shrink : Σu_s, sum of what the others share

    Returns
    -------
    u, a length

    Raises
    ------
    ValueError
        A negative doubt.

    Notes
    -----
    Valid for reels, tape and shrinkage that are not off together.

    References
    ----------
    JCGM 100, 5.2 and F.1.2, on what several terms share (from memory).
    """
    require_numbers(own, by_reels, slack, shrink)
    require((own >= NO_AREA) & (by_reels >= NO_AREA), "A squared uncertainty cannot be negative.")
    _require_length(slack)
    _require_length(shrink)
    return (own + by_reels + slack**2 + shrink**2) ** 0.5


def _require_length(length) -> None:
    require(length >= NOTHING, "A length or a doubt of one cannot be negative.")
