"""Your own records beside the published figures, and when to trust them more.

Published losses and yields come from other people's fleeces. Every lot that goes through the log adds a weighed
figure of your own; once there are a few, their mean replaces the published one.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, AT_LEAST_ONE, NOT_NEGATIVE, require_within
from workbookgen.reference.records import sum_where
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.units import Quantity, Ratio


@calculation
def observed(name: str, names: Sequence[str], shares: Sequence[float]) -> Ratio:
    """Mean of your own records.

    ō = Σ share i / k, over all i where name i is the name. Every record counts equally.

    Parameters
    ----------
    name : the name looked for, such as a breed
    names : the names in the log, a blank one where a row is empty
    shares : the shares recorded beside them; one that is not a number is blank

    Returns
    -------
    ō, a share

    Raises
    ------
    ValueError
        A blank name, a name without a record, or shares that are not one per name.
    DimensionalityError
        Records that are no shares.

    Notes
    -----
    Valid for lots handled alike; large and small lots count the same.

    References
    ----------
    Definition of the mean.

    Examples
    --------
    >>> print(observed("Romney", ["Romney", "Jacob", "romney"], [0.5, 0.6, 0.75]))
    0.625
    """
    records = how_many(name, names, shares)
    require(ABOVE_ZERO.hold(records), "There is no record of this name yet.")
    return sum_where(name, names, _plain(shares)) / records


@calculation
def how_many(name: str, names: Sequence[str], shares) -> Ratio:
    """Number of your own records.

    k = count of the shares i where name i is the name. Blank ones do not count.

    Parameters
    ----------
    name : the name looked for, such as a breed
    names : the names in the log, a blank one where a row is empty
    shares : the shares recorded beside them; one that is not a number is blank

    Returns
    -------
    k, a whole number

    Raises
    ------
    ValueError
        A blank name, or shares that are not one per name.
    DimensionalityError
        Records that are no shares.

    Notes
    -----
    Valid for names spelled alike; case does not matter.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(how_many("Romney", ["Romney", "Jacob", "romney"], [0.5, 0.6, 0.75]))
    2.0
    """
    return sum_where(name, names, np.isfinite(_plain(shares)).astype(float))


def _plain(shares) -> np.ndarray:
    return np.asarray(shares.m_as("") if isinstance(shares, Quantity) else shares, dtype=float)


@calculation
def observed_or_published(
    published: Ratio | None = None, observed: Ratio | None = None, observations: Ratio = 0, enough: Ratio = 3
) -> Ratio:
    """Figure that the planner uses.

    share = observed if k ≥ n, else published. Your own records win once there are enough.

    Parameters
    ----------
    published : the published share
    observed : the mean of your own records
    observations : k, how many records that mean rests on
    enough : n, how many are enough

    Returns
    -------
    the share in use

    Raises
    ------
    ValueError
        Neither figure can be used: no published one, and too few records; or a figure in use
        that is not a number, or a negative number of records.

    Notes
    -----
    Valid for records of the same kind of fiber, handled alike. Three are enough by default:
    the t of a 95 percent interval falls from 12.7 with two records to 4.3 with three, and
    to 3.2 with the fourth, so the third record makes a mean worth having.

    References
    ----------
    Table of Student's t of NIST/SEMATECH (read); three as the limit: common practice, no source.

    Examples
    --------
    >>> print(observed_or_published(published=0.6, observed=0.7, observations=2))
    0.6
    """
    own = _own(published, observed, observations, enough)
    figure = np.where(own, np.nan if observed is None else observed, np.nan if published is None else published)
    require(np.isfinite(figure), "The figure in use must be a number.")
    return figure[()]


@calculation
def spread_in_use(
    published: Ratio | None = None,
    observed: Ratio | None = None,
    squares: Ratio | None = None,
    observations: Ratio = 0,
    enough: Ratio = 3,
    usual: Ratio = 0.04,
) -> Ratio:
    """How far the next lot may be off the figure in use.

    s = p of a published figure; of your own √((Σ y² - k · ō² + (n - 1) · p²) / (k + n - 2) · (1 + 1/k)). The published
    spread counts as much as n records, since a few may be alike by chance, and the mean of k is itself uncertain.

    Parameters
    ----------
    published : p, standard uncertainty of the published range
    observed : ō, the mean of your own records
    squares : Σ y², their squares, summed
    observations : k, how many records that mean rests on
    enough : n, how many are enough
    usual : p where no range is published

    Returns
    -------
    s, a share, as a standard uncertainty

    Raises
    ------
    ValueError
        Too few records where nothing is published, a negative spread or number of records, or squares that are less
        than those of the mean.

    Notes
    -----
    Valid for lots that differ by chance, each from every other. Lots that have something in common, such as a flock,
    are nearer to their mean than this says.

    References
    ----------
    Pooled variance, and the variance of a new observation about a mean of k, s² · (1 + 1/k) (from memory); that the
    published range counts as much as the records that are enough, and 0.04, the mean of the ranges in the fiber table:
    common practice, no source.

    Examples
    --------
    >>> print(spread_in_use(published=0.05, observed=0.6, squares=1.105, observations=3))
    0.1
    """
    own = _own(published, observed, observations, enough)
    known = usual if published is None else published
    require_within(NOT_NEGATIVE, "A spread", known, usual)
    if observed is None or squares is None:
        return np.broadcast_to(known, own.shape)[()]
    records = np.where(own, observations, enough)
    between = np.round(squares - records * np.square(observed), 12)
    require(~own | (between >= -ROUNDING), "The squares must not be less than those of the mean.")
    pooled = (np.where(own, np.maximum(0, between), 0) + (enough - 1) * np.square(known)) / (records + enough - 2)
    return np.where(own, np.sqrt(pooled * (1 + 1 / records)), known)[()]


def _own(published, observed, observations, enough):
    """Whether your own records are used, for each figure."""
    require_within(NOT_NEGATIVE, "The number of records", observations)
    require_within(AT_LEAST_ONE, "At least one record must be asked for.", enough)
    shape = np.broadcast_shapes(*(np.shape(each) for each in (published, observed, observations, enough)))
    own = np.broadcast_to((observations >= enough) & (observed is not None), shape)
    require(own | (published is not None), "Nothing is published here: record more lots, or give a published figure.")
    return own
