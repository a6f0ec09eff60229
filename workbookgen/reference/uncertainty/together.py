"""The uncertainty of one skein, and of all skeins of a project together: what each has to itself is squared first,
what they share is added first."""

import numpy as np

from workbookgen.reference.calculation import calculation, require_name, require_numbers
from workbookgen.reference.limits import NOT_NEGATIVE, require_within
from workbookgen.reference.uncertainty.skeins import require_length
from workbookgen.units import Area, Grist, Length, Ratio


@calculation
def own_square(count_part: Length, tape_part: Length | None = None) -> Area:
    """Squared uncertainty that a skein has to itself.

    q = u_n² + u_t². What no other skein shares is squared before it is added.

    Parameters
    ----------
    count_part : u_n, uncertainty from the count of wraps
    tape_part : u_t, uncertainty from the reading of the washed loop, if it was measured

    Returns
    -------
    q, a length squared

    Raises
    ------
    ValueError
        A negative uncertainty.

    Notes
    -----
    Valid for independent readings.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).

    Examples
    --------
    >>> print(own_square(Quantity(3, "m"), Quantity(4, "m")))
    25 meter ** 2
    """
    require_numbers(count_part, tape_part)
    require_length(count_part)
    if tape_part is None:
        return count_part**2
    require_length(tape_part)
    return count_part**2 + tape_part**2


@calculation
def with_its_reel(part: Length, sum_of_reel: Length) -> Area:
    """A skein's part of the squared uncertainty from its reel.

    q = u · Σu. Summed over the skeins of a reel it is (Σu)², over several reels the sum of these.

    Parameters
    ----------
    part : u, what the skein shares with the others of its reel
    sum_of_reel : Σu, the same for all skeins of one project from that reel, this one included

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
    JCGM 100, 5.2 and F.1.2, on correlated terms (from memory).

    Examples
    --------
    >>> print(with_its_reel(Quantity(2, "m"), Quantity(5, "m")))
    10 meter ** 2
    """
    require_numbers(part, sum_of_reel)
    require_length(part)
    require_length(sum_of_reel)
    return part * sum_of_reel


@calculation
def skein_uncertainty(
    own: Area, reel_part: Length | None = None, slack_part: Length | None = None, shrink_part: Length | None = None
) -> Length:
    """Standard uncertainty of one skein's finished length.

    u = √(q + u_C² + u_r² + u_s²). What it shares with others counts as well.

    Parameters
    ----------
    own : q, squared uncertainty that it has to itself
    reel_part : u_C, what it shares with its reel
    slack_part : u_r, what it shares with all measured after washing
    shrink_part : u_s, what it shares with all not measured after washing

    Returns
    -------
    u, a length

    Raises
    ------
    ValueError
        A negative uncertainty.

    Notes
    -----
    Valid for one skein; the uncertainties of several must not be added in quadrature.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).

    Examples
    --------
    >>> print(skein_uncertainty(Quantity(9, "m^2"), reel_part=Quantity(4, "m")))
    5.0 meter
    """
    require_numbers(own, reel_part, slack_part, shrink_part)
    require_within(NOT_NEGATIVE, "A squared uncertainty", own)
    shared = [part for part in (reel_part, slack_part, shrink_part) if part is not None]
    for part in shared:
        require_length(part)
    return sum((part**2 for part in shared), start=own) ** 0.5


@calculation
def skeins_uncertainty(own: Area, by_reels: Area, slack: Length, shrink: Length) -> Length:
    """Standard uncertainty of the skeins of a project together.

    u = √(Σq + Σ(u · Σu) + (Σu_r)² + (Σu_s)²). What is shared is added before it is squared.

    Parameters
    ----------
    own : Σq, sum of the squared uncertainties that each skein has to itself
    by_reels : sum of the skeins' parts of the squared uncertainty from their reels
    slack : Σu_r, sum of what those measured after washing share
    shrink : Σu_s, sum of what the others share

    Returns
    -------
    u, a length

    Raises
    ------
    ValueError
        A negative uncertainty.

    Notes
    -----
    Valid for independent errors of reels, tape and shrinkage.

    References
    ----------
    JCGM 100, 5.2 and F.1.2, on correlated terms (from memory).

    Examples
    --------
    >>> print(skeins_uncertainty(Quantity(9, "m^2"), Quantity(16, "m^2"), Quantity(0, "m"), Quantity(0, "m")))
    5.0 meter
    """
    require_numbers(own, by_reels, slack, shrink)
    require_within(NOT_NEGATIVE, "A squared uncertainty", own, by_reels)
    require_length(slack)
    require_length(shrink)
    return (own + by_reels + slack**2 + shrink**2) ** 0.5


@calculation
def common_to_all(
    project: str, u_scale: Ratio, u_washing: Ratio | None = None, own: Grist | None = None, sample: Grist | None = None
) -> Ratio:
    """Relative uncertainty that all yarn to come has in common.

    r = √(r_b² + r_w²) where a design says the grist, else r_b. A design knows its strands before
    washing; a grist of one's own, or a sample's, is that of washed yarn.

    Parameters
    ----------
    project : the project whose yarn it is
    u_scale : r_b, relative uncertainty of the scale
    u_washing : r_w, relative uncertainty of what washing leaves of the design's length, if there is a design
    own : your own grist, if you gave one
    sample : the grist of a sample, if there is one

    Returns
    -------
    r, a share

    Raises
    ------
    ValueError
        A project without a name, or a negative uncertainty.

    Notes
    -----
    Valid for yarn that is washed all in one way.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).

    Examples
    --------
    >>> print(common_to_all("Vest", 0.003, u_washing=0.004))
    0.005
    """
    require_name(project)
    require_numbers(u_scale, u_washing, own, sample)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_scale)
    if u_washing is None or own is not None or sample is not None:
        return u_scale
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_washing)
    return np.hypot(u_scale, u_washing)


@calculation
def bought_together(
    project: str, u_batch: Ratio, u_washing: Ratio | None = None, own: Grist | None = None, sample: Grist | None = None
) -> Ratio:
    """Relative uncertainty that all bought yarn has in common.

    r = √(h_b² + r_w²) where a design has bought thread and its grist is not in use, else h_b. Your own grist is that of
    washed yarn, and one spins to it; but of a thread, washing leaves what it likes.

    Parameters
    ----------
    project : the project whose yarn it is
    u_batch : h_b, relative uncertainty of a label
    u_washing : r_w, relative uncertainty of what washing leaves of the design's length, if there is a design
    own : your own grist, if you gave one
    sample : the grist of a sample, if there is one

    Returns
    -------
    r, a share

    Raises
    ------
    ValueError
        A project without a name, or a negative uncertainty.

    Notes
    -----
    Valid for threads that are washed with the yarn. Where the design's grist is in use, all yarn has the same
    uncertainty of washing, which is counted there; bought yarn without a design is not washed.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).

    Examples
    --------
    >>> print(bought_together("Vest", 0.03, u_washing=0.04, own=Quantity(2, "m/g")))
    0.05
    """
    require_name(project)
    require_numbers(u_batch, u_washing, own, sample)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_batch)
    if u_washing is None or (own is None and sample is None):
        return u_batch
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_washing)
    return np.hypot(u_batch, u_washing)
