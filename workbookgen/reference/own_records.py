"""Your own records beside the published figures, and when to trust them more.

Published losses and yields come from other people's fleeces. Every lot that goes through the log adds a weighed
figure of your own; once there are a few, their mean replaces the published one.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, AT_LEAST_ONE, NOT_NEGATIVE, require_within
from workbookgen.reference.records import sum_where
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


def _own(published, observed, observations, enough):
    """Whether your own records are used, for each figure."""
    require_within(NOT_NEGATIVE, "The number of records", observations)
    require_within(AT_LEAST_ONE, "At least one record must be asked for.", enough)
    shape = np.broadcast_shapes(*(np.shape(each) for each in (published, observed, observations, enough)))
    own = np.broadcast_to((observations >= enough) & (observed is not None), shape)
    require(own | (published is not None), "Nothing is published here: record more lots, or give a published figure.")
    return own
