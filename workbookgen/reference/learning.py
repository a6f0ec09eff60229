"""One's own records beside the published figures, and when to trust them more.

Published losses and yields are another person's fleeces. Every lot that goes through the
log is a weighed figure of one's own; from a few of them on, their mean takes the place of
the published one.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.stock import sum_where
from workbookgen.units import Quantity, Ratio


@calculation
def observed(name: str, names: Sequence[str], shares: Sequence[float]) -> Ratio:
    """Mean of one's own records.

    ō = Σ share i / k, over all i where name i is the name. Every record counts alike.

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
        A blank name, a name without a record, or shares that do not stand beside the names.
    DimensionalityError
        Records that are no shares.

    Notes
    -----
    Valid for lots handled alike; large and small lots weigh the same.

    References
    ----------
    Definition of the mean.

    Examples
    --------
    >>> print(observed("Romney", ["Romney", "Jacob", "romney"], [0.5, 0.6, 0.75]))
    0.625
    """
    records = how_many(name, names, shares)
    require(records > 0, "There is no record of this name yet.")
    return sum_where(name, names, _plain(shares)) / records


@calculation
def how_many(name: str, names: Sequence[str], shares) -> Ratio:
    """Number of one's own records.

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
        A blank name, or shares that do not stand beside the names.
    DimensionalityError
        Records that are no shares.

    Notes
    -----
    Valid for names that are written alike; upper and lower case do not matter.

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
def in_use(
    published: Ratio | None = None,
    observed: Ratio | None = None,
    observations: Ratio = 0,
    enough: Ratio = 3,
) -> Ratio:
    """Figure that the planner reckons with.

    share = observed while k ≥ n, else published. One's own records win once there are enough.

    Parameters
    ----------
    published : the published share
    observed : the mean of one's own records
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
    the t of a 95 per cent interval falls from 12.7 with two records to 4.3 with three, and
    to 3.2 with the fourth, so the third is the one that makes a mean worth having.

    References
    ----------
    Table of Student's t of NIST/SEMATECH (read); three as the limit: common practice, no source.

    Examples
    --------
    >>> print(in_use(published=0.6, observed=0.7, observations=2))
    0.6
    """
    own = _own(published, observed, observations, enough)
    figure = np.where(own, np.nan if observed is None else observed, np.nan if published is None else published)
    require(np.isfinite(figure), "The figure in use must be a number.")
    return figure[()]


def _own(published, observed, observations, enough):
    """Whether one's own records are used, for each figure."""
    require(observations >= 0, "The number of records cannot be negative.")
    require(enough >= 1, "At least one record must be asked for.")
    shape = np.broadcast_shapes(*(np.shape(each) for each in (published, observed, observations, enough)))
    own = np.broadcast_to((observations >= enough) & (observed is not None), shape)
    require(own | (published is not None), "Nothing is published here: record more lots, or give a published figure.")
    return own
