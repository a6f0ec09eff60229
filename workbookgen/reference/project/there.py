"""What there is for a project: its own skeins, which nobody takes away, and what its lots still give; or no yarn.

And whether it is still to get more.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require_numbers
from workbookgen.reference.limits import NO_LENGTH, NOT_NEGATIVE, require_within
from workbookgen.units import Length, Mass, Ratio

WORTH_GETTING = 0.5  # meters; less is told as nothing


@calculation
def there_is(skeins: Length, have: Length) -> Length:
    """What there is for a project.

    h = max(S, H). What others lack of its lots takes nothing away from its own skeins.

    Parameters
    ----------
    skeins : S, length of its own skeins
    have : H, that and what its lots still give, less what others need of them

    Returns
    -------
    h, a length

    Raises
    ------
    ValueError
        A length that is not a number, or a negative length of skeins.

    Notes
    -----
    Valid for any length.

    References
    ----------
    Definition of the maximum.

    Examples
    --------
    >>> print(there_is(Quantity(290, "m"), Quantity(-20, "m")))
    290 meter
    """
    require_numbers(have)
    require_within(NOT_NEGATIVE, "The length of its skeins", skeins)
    return np.maximum(skeins, have)


@calculation
def least_there(skeins: Length, u_skeins: Length, have: Length, uncertainty: Length) -> Length:
    """The least that there very likely is.

    L₁ = max(0, S - 2 · s, H - 2 · u). Lots may give nothing at all, but take nothing away from the skeins.

    Parameters
    ----------
    skeins : S, length of its own skeins
    u_skeins : s, its standard uncertainty
    have : H, that and what its lots still give, less what others need of them
    uncertainty : u, its standard uncertainty

    Returns
    -------
    L₁, a length

    Raises
    ------
    ValueError
        A length that is not a number, or a negative length of skeins or uncertainty.

    Notes
    -----
    Valid for an uncertainty with several causes, none of them dominant.

    References
    ----------
    JCGM 100, 6.2.1 and G.6.6 (from memory).

    Examples
    --------
    >>> print(least_there(Quantity(290, "m"), Quantity(5, "m"), Quantity(300, "m"), Quantity(40, "m")))
    280.0 meter
    """
    _require_there(skeins, u_skeins, have, uncertainty)
    return np.maximum(np.maximum(skeins - 2 * u_skeins, have - 2 * uncertainty), NO_LENGTH)


@calculation
def most_there(skeins: Length, u_skeins: Length, have: Length, uncertainty: Length) -> Length:
    """The most that there very likely is.

    L₂ = max(S + 2 · s, H + 2 · u). Where others need more than there is, the second is lower than the first, and its
    own skeins are all that is there.

    Parameters
    ----------
    skeins : S, length of its own skeins
    u_skeins : s, its standard uncertainty
    have : H, that and what its lots still give, less what others need of them
    uncertainty : u, its standard uncertainty

    Returns
    -------
    L₂, a length

    Raises
    ------
    ValueError
        A length that is not a number, or a negative length of skeins or uncertainty.

    Notes
    -----
    Valid for an uncertainty with several causes, none of them dominant.

    References
    ----------
    JCGM 100, 6.2.1 and G.6.6 (from memory).

    Examples
    --------
    >>> print(most_there(Quantity(0, "m"), Quantity(0, "m"), Quantity(-20, "m"), Quantity(15, "m")))
    10 meter
    """
    _require_there(skeins, u_skeins, have, uncertainty)
    return np.maximum(skeins + 2 * u_skeins, have + 2 * uncertainty)


@calculation
def without_yarn(
    skeins: Length,
    design: str | None = None,
    lot_1: str | None = None,
    lot_2: str | None = None,
    lot_3: str | None = None,
) -> Ratio:
    """Whether a project has no yarn yet.

    w = 1 where S = 0 and neither a design nor a lot is chosen; else 0. Then all of it is still to be found, and "short"
    would say that there is some.

    Parameters
    ----------
    skeins : S, length of its own skeins
    design : its design, if it has one
    lot_1, lot_2, lot_3 : the lots that it is spun from

    Returns
    -------
    w, 1 or 0

    Raises
    ------
    ValueError
        A negative length of skeins.

    Notes
    -----
    Valid for any project.

    References
    ----------
    Definition.

    Examples
    --------
    >>> print(without_yarn(Quantity(0, "m")))
    1.0
    """
    require_within(NOT_NEGATIVE, "The length of its skeins", skeins)
    chosen = any(each is not None for each in (design, lot_1, lot_2, lot_3))
    return np.where(skeins > NO_LENGTH, 0.0, 0.0 if chosen else 1.0)[()]


def _require_there(skeins: Length, u_skeins: Length, have: Length, uncertainty: Length) -> None:
    require_numbers(have)
    require_within(NOT_NEGATIVE, "The length of its skeins", skeins)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_skeins, uncertainty)


@calculation
def is_wanting(more: Length, used: Mass | None = None) -> Ratio:
    """Whether a project is still to get more yarn, to be as sure as one asks.

    n = 1 from half a meter on, or else 0. A finished piece wants nothing any more.

    Parameters
    ----------
    more : what to have besides
    used : mass of yarn that the finished piece took

    Returns
    -------
    n, 1 or 0

    Raises
    ------
    ValueError
        A negative length.

    Notes
    -----
    Valid for one project.

    References
    ----------
    Definition of a selection.

    Examples
    --------
    >>> print(is_wanting(Quantity(12, "m")))
    1.0
    """
    require_numbers(more, used)
    require_within(NOT_NEGATIVE, "What to have besides", more)
    return np.where(more.m_as("m") >= WORTH_GETTING, 1.0, 0.0)[()] * (1.0 if used is None else 0.0)
