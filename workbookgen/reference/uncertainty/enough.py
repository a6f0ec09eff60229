"""Whether it is enough, when neither what there is nor what is needed is known exactly.

A surplus smaller than its doubt is no surplus yet. So the answer is a chance, and the
question may be turned round: how much to have for a chance that one can live with.
"""

import math
from statistics import NormalDist

import numpy as np

from workbookgen.reference.law import law, require
from workbookgen.reference.uncertainty.budget import combined
from workbookgen.units import Area, Grist, Length, Mass, MassSquared, Quantity, Ratio, Some

NO_AREA = Quantity(0.0, "m^2")
NO_MASS = Quantity(0.0, "g")
NO_MASS_SQUARED = Quantity(0.0, "g^2")
NO_GRIST = Quantity(0.0, "m/g")


@law
def surplus_uncertainty(u_have: Some, u_need: Some) -> Some:
    """Standard uncertainty of a surplus.

    u = √(u_H² + u_N²). The doubts of both sides meet in the difference.

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
    Valid for two sides measured apart; a reel that is off in both makes less doubt than this.

    References
    ----------
    JCGM 100, 5.1.2 (from memory).
    """
    return combined(u_have, u_need)


@law
def chance_enough(surplus: Some, uncertainty: Some) -> Ratio:
    """Chance that it is enough.

    p = Φ(s / u), Φ the normal distribution. A surplus of one standard uncertainty is enough in
    84 cases of 100, no surplus in 50.

    Parameters
    ----------
    surplus : s, what is left over, below zero when some is lacking, any quantity
    uncertainty : u, standard uncertainty of the surplus, of the same kind

    Returns
    -------
    p, a share; without any doubt it is 1 or 0

    Raises
    ------
    ValueError
        A surplus that is not a number, or a negative uncertainty.
    DimensionalityError
        A surplus and an uncertainty of different kinds.

    Notes
    -----
    Valid for doubts of several causes, which together scatter like a normal distribution.

    References
    ----------
    JCGM 100, G.1 and G.2 (from memory).
    """
    left_over, doubt = Quantity(surplus), Quantity(uncertainty)
    doubt = doubt.m_as(left_over.units)
    require(np.isfinite(left_over.magnitude), "The surplus must be a number.")
    require(doubt >= 0, "A standard uncertainty cannot be negative.")
    return np.vectorize(_chance, otypes=[float])(left_over.magnitude, doubt)[()]


def _chance(surplus, uncertainty) -> float:
    if uncertainty == 0:
        return float(surplus >= 0)
    # erfc keeps its digits where the chance is tiny, 1 + erf does not.
    return 0.5 * math.erfc(-surplus / uncertainty / math.sqrt(2))


@law
def coverage(certainty: Ratio) -> Ratio:
    """Standard uncertainties that a certainty takes.

    z = Φ⁻¹(p), Φ the normal distribution. For 95 cases of 100 one needs 1.645 of them in hand.

    Parameters
    ----------
    certainty : p, the chance that it is to be enough

    Returns
    -------
    z, a plain number

    Raises
    ------
    ValueError
        A certainty outside 0.5 to below 1.

    Notes
    -----
    Valid for doubts that scatter like a normal distribution; one-sided, as too much does no harm.

    References
    ----------
    Definition of the quantile of the normal distribution.
    """
    require((certainty >= 0.5) & (certainty < 1), "The certainty lies from 50 to below 100 per cent.")
    return np.vectorize(NormalDist().inv_cdf, otypes=[float])(certainty)[()]


@law
def amount_for(need: Some, u_need: Some, relative_have: Ratio, certainty: Ratio) -> Some:
    """Amount to have for a chosen certainty.

    A = (N + z · √(N² · r² + u_N² · (1 - z² · r²))) / (1 - z² · r²), so that
    A - N = z · √((A · r)² + u_N²). What one adds is itself uncertain, so a little more is due.

    Parameters
    ----------
    need : N, what is needed, any quantity
    u_need : u_N, its standard uncertainty, of the same kind
    relative_have : r, relative standard uncertainty of what one will have
    certainty : p, the chance that it is to be enough; z is its number of standard uncertainties

    Returns
    -------
    A, of the same kind

    Raises
    ------
    ValueError
        A negative amount or uncertainty, a certainty outside 0.5 to below 1, or z · r from 1 on.
    DimensionalityError
        A need and an uncertainty of different kinds.

    Notes
    -----
    Valid for z · r below 1: with a doubt larger than that no amount is ever sure enough.

    References
    ----------
    JCGM 100, 5.1.2 (from memory), solved for the amount.
    """
    require(need >= 0, "What is needed cannot be negative.")
    require((u_need >= 0) & (relative_have >= 0), "A standard uncertainty cannot be negative.")
    z = coverage(certainty)
    require(z * relative_have < 1, "No amount is that sure: measure better, or ask for less certainty.")
    rest = 1 - (z * relative_have) ** 2
    return (need + z * np.sqrt((need * relative_have) ** 2 + u_need**2 * rest)) / rest


@law
def margin_uncertainty(need: Some, margin: Ratio) -> Some:
    """Standard uncertainty that stands behind a margin.

    u = N · x / 2. A margin that surely covers is two standard uncertainties wide.

    Parameters
    ----------
    need : N, what is needed, any quantity
    margin : x, margin that covers all but rare cases, as a share

    Returns
    -------
    u, of the same kind

    Raises
    ------
    ValueError
        A negative need or margin.

    Notes
    -----
    Valid for a margin that was meant as "surely within": about 95 cases of 100.

    References
    ----------
    Coverage factor 2, JCGM 100, 6.2 and 6.3 (from memory).
    """
    require(need >= 0, "What is needed cannot be negative.")
    require(margin >= 0, "The margin cannot be negative.")
    return need * margin / 2


@law
def have_doubt(
    spun_square: Area, to_come_square: MassSquared, to_come: Mass, grist: Grist, grist_doubt: Ratio
) -> Length:
    """Standard uncertainty of the yarn in hand.

    u = √(q + p · g² + (m · g · r)²). The skeins are doubtful in their length; the fiber is so
    twice, in what it will yield and in how fine it will be spun.

    Parameters
    ----------
    spun_square : q, sum of the squared uncertainties of the skeins' lengths
    to_come_square : p, sum of the squared uncertainties of the masses still to spin
    to_come : m, mass of the yarn still to spin
    grist : g, grist to which it will be spun
    grist_doubt : r, relative standard uncertainty of that grist

    Returns
    -------
    u, a length

    Raises
    ------
    ValueError
        A negative uncertainty or mass, or a grist that is not above zero.

    Notes
    -----
    Valid for skeins measured apart; on one reel that is off, the doubt of all together is more.

    References
    ----------
    JCGM 100, 5.1.2 (from memory), for the skeins plus the mass times the grist.
    """
    require(spun_square >= NO_AREA, "The squared uncertainty of the skeins cannot be negative.")
    require(to_come_square >= NO_MASS_SQUARED, "The squared uncertainty of what is to come cannot be negative.")
    require(to_come >= NO_MASS, "The mass still to spin cannot be negative.")
    require(grist > NO_GRIST, "The grist must be above zero.")
    require(grist_doubt >= 0, "A standard uncertainty cannot be negative.")
    of_mass = (to_come_square * grist**2).to("m^2")
    of_grist = (to_come * grist * grist_doubt).to("m") ** 2
    return np.sqrt(spun_square.to("m^2") + of_mass + of_grist)
