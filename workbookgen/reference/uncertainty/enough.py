"""Whether it is enough, when neither what there is nor what is needed is known exactly.

A surplus smaller than its uncertainty is not a surplus yet. So the answer is a chance, and the question may be
reversed: how much to have for an acceptable chance.
"""

import math
from statistics import NormalDist

import numpy as np

from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NO_LENGTH, NOT_NEGATIVE, Limits, require_within
from workbookgen.reference.uncertainty.budget import combined
from workbookgen.units import Length, Quantity, Ratio, Some

USUAL_NEED, LESS_CERTAIN = 0.05, 0.08


@calculation
def surplus_uncertainty(u_have: Some, u_need: Some) -> Some:
    """Standard uncertainty of a surplus.

    u = √(u_H² + u_N²). The uncertainties of both sides combine in the difference.

    Parameters
    ----------
    u_have : u_H, standard uncertainty of what there is, any quantity
    u_need : u_N, that of what is needed, of the same kind

    Returns
    -------
    u, of the same kind

    Raises
    ------
    ValueError
        A negative uncertainty.
    DimensionalityError
        Uncertainties of different kinds.

    Notes
    -----
    Valid for two sides measured independently; a reel that is off in both adds less than this.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).

    Examples
    --------
    >>> print(surplus_uncertainty(Quantity(3, "m"), Quantity(4, "m")))
    5.0 meter
    """
    return combined(u_have, u_need)


@calculation
def chance_enough(surplus: Some, uncertainty: Some) -> Ratio:
    """Chance that it is enough.

    p = Φ(s / u), Φ the normal distribution. A surplus of one standard uncertainty is enough in 84 cases out of 100,
    no surplus in 50.

    Parameters
    ----------
    surplus : s, what is left over, below zero when some is lacking, any quantity
    uncertainty : u, standard uncertainty of the surplus, of the same kind

    Returns
    -------
    p, a share; without any uncertainty it is 1 or 0

    Raises
    ------
    ValueError
        A surplus that is not a number, or a negative uncertainty.
    DimensionalityError
        A surplus and an uncertainty of different kinds.

    Notes
    -----
    Valid for an uncertainty with several causes, which together are normally distributed.

    References
    ----------
    JCGM 100, G.1 and G.2 (from memory).

    Examples
    --------
    >>> print(round(chance_enough(Quantity(10, "m"), Quantity(10, "m")), 2))
    0.84
    """
    left_over, doubt = Quantity(surplus), Quantity(uncertainty)
    doubt = doubt.m_as(left_over.units)
    require(np.isfinite(left_over.magnitude), "The surplus must be a number.")
    require_within(NOT_NEGATIVE, "A standard uncertainty", doubt)
    return np.vectorize(_chance, otypes=[float])(left_over.magnitude, doubt)[()]


def _chance(surplus, uncertainty) -> float:
    if uncertainty == 0:
        return float(surplus >= 0)
    # erfc keeps its digits where the chance is tiny, 1 + erf does not.
    return 0.5 * math.erfc(-surplus / uncertainty / math.sqrt(2))


@calculation
def coverage(certainty: Ratio) -> Ratio:
    """Standard uncertainties needed for a certainty.

    z = Φ⁻¹(p), Φ the normal distribution. For 95 cases out of 100, a surplus of 1.645 of them is needed.

    Parameters
    ----------
    certainty : p, the chance that it is to be enough

    Returns
    -------
    z, a plain number

    Raises
    ------
    ValueError
        A certainty outside 0.5 to under 1.

    Notes
    -----
    Valid for a normally distributed uncertainty; one-sided, as too much does no harm.

    References
    ----------
    Definition of the quantile of the normal distribution.

    Examples
    --------
    >>> print(round(coverage(0.95), 3))
    1.645
    """
    require_within(Limits(least=0.5, below=1), "The certainty must be from 50 to below 100 percent.", certainty)
    return np.vectorize(NormalDist().inv_cdf, otypes=[float])(certainty)[()]


@calculation
def more_for(
    spare: Some, uncertainty: Some, coverage: Ratio, with_more: Some | None = None, square_more: Ratio | None = None
) -> Some:
    """Additional amount to have, to be as certain as wanted.

    E = (√(b² - a · (s² - z² · u²)) - b) / a, a = 1 - z² · Q, b = s - z² · K, so that s + E = z · √(u² + 2 · K · E + Q ·
    E²); E = 0 if s ≥ z · u. The addition is itself uncertain, and is off together with what is there: so more is
    needed.

    Parameters
    ----------
    spare : s, what is left over when the need is met, below zero when some is lacking, any quantity
    uncertainty : u, its standard uncertainty, of the same kind
    coverage : z, standard uncertainties needed for the certainty
    with_more : K, what the addition has in common with what is there, of the same kind
    square_more : Q, squared relative uncertainty of what is added; it and K are zero where nothing says what is added

    Returns
    -------
    E, of the same kind

    Raises
    ------
    ValueError
        A negative uncertainty or coverage, z² · Q of 1 or more, or one of K and Q without the other.
    DimensionalityError
        A surplus and an uncertainty of different kinds.

    Notes
    -----
    Valid for z² · Q below 1: with a larger uncertainty, no amount is ever certain enough.

    References
    ----------
    JCGM 100, 5.1.2, 5.2 and F.1.2, on correlated terms (from memory), solved for the amount.

    Examples
    --------
    >>> print(more_for(Quantity(0, "m"), Quantity(10, "m"), coverage=1.645))
    16.45 meter
    """
    require_numbers(spare, uncertainty, with_more, square_more, coverage)
    require(
        (with_more is None) == (square_more is None),
        "What an addition has in common with what is there goes with its uncertainty.",
    )
    rest, doubt = Quantity(spare), Quantity(uncertainty)
    unit = rest.units
    common = Quantity(0, unit) if with_more is None else Quantity(with_more)
    square_more = 0 if square_more is None else square_more
    rest, doubt, common = rest.magnitude, doubt.m_as(unit), common.m_as(unit)
    require(np.isfinite(rest), "What is left over must be a number.")
    require_within(NOT_NEGATIVE, "A standard uncertainty", doubt, common, square_more)
    require_within(NOT_NEGATIVE, "The coverage", coverage)
    squared = np.square(coverage)
    a, b = 1 - squared * square_more, rest - squared * common
    require(a > 0, "No amount is that certain: measure better, or ask for less certainty.")
    root = np.sqrt(np.maximum(0.0, np.square(b) - a * (np.square(rest) - squared * np.square(doubt))))
    return Quantity(np.where(rest >= coverage * doubt, 0.0, (root - b) / a)[()], unit)


@calculation
def need_uncertainty(need: Some, relative: Ratio = 0.05) -> Some:
    """Standard uncertainty of what a piece takes.

    u = N · r. A pattern's yardage comes from one knitter, and a gauge from one swatch.

    Parameters
    ----------
    need : N, what is needed, any quantity
    relative : r, its relative standard uncertainty

    Returns
    -------
    u, of the same kind

    Raises
    ------
    ValueError
        A negative need or uncertainty.

    Notes
    -----
    Valid for a need without a reserve: that is wanted for its own sake and says nothing about uncertainty.

    References
    ----------
    That yardages vary by 5 to 10 percent: common practice, no source.

    Examples
    --------
    >>> print(need_uncertainty(Quantity(1000, "m")))
    50.0 meter
    """
    require_numbers(need, relative)
    require_within(NOT_NEGATIVE, "What is needed", need)
    require_within(NOT_NEGATIVE, "A standard uncertainty", relative)
    return need * relative


@calculation
def need_relative(
    need: Length,
    own: Ratio | None = None,
    stated: Length | None = None,
    by_rule: Ratio | None = None,
    weft: Length | None = None,
) -> Ratio:
    """Relative uncertainty of what a piece takes.

    r = own, or else 0.08 where the yarn is estimated by a stitch that is known by rule alone or as a weft of its own,
    and 0.05 elsewhere. A pattern's yardage comes from one knitter, and the rule is within 10 to 15 percent. A warp is
    counted out; a weft goes as it is beaten in, and where it is of another yarn, no warp beside it makes that less.

    Parameters
    ----------
    need : length that it takes
    own : your own figure
    stated : length that the pattern or your own record states, if it does; an estimate then counts for nothing
    by_rule : number of its estimates that know a stitch by Munden's relation alone
    weft : length of it that is the weft of a warp of another yarn

    Returns
    -------
    r, a share

    Raises
    ------
    ValueError
        A need that is not above zero, or a negative figure or number.

    Notes
    -----
    Valid for patterns, swatches, gauges and cloths; of a small swatch on a coarse scale it is more.

    References
    ----------
    That yardages vary by 5 to 10 percent: common practice, no source. Munden's relation, within 10 to 15 percent: the
    middle of a range of 12.5, over √3, with what a gauge may be off. That picks are beaten in 7 percent closer or more
    openly than meant, with what a weft takes up: common practice, no source.

    Examples
    --------
    >>> print(need_relative(Quantity(900, "m"), by_rule=1))
    0.08
    """
    require_numbers(need, own, stated, by_rule, weft)
    require_within(ABOVE_ZERO, "What is needed", need)
    if own is not None:
        require_within(NOT_NEGATIVE, "A standard uncertainty", own)
        return own
    rules = 0.0 if by_rule is None or stated is not None else by_rule
    beaten = NO_LENGTH if weft is None or stated is not None else weft
    require_within(NOT_NEGATIVE, "The number of estimates", rules)
    require_within(NOT_NEGATIVE, "A length", beaten)
    is_rough = (np.asarray(rules) > 0) | (beaten.m_as("m") > 0)
    return np.where(is_rough & (need.m_as("m") > 0), LESS_CERTAIN, USUAL_NEED)[()]
