"""How surely it is known what a lot will still give.

A lot that waits to be scoured is the least known of all: a breed's yields lie far apart.
Once it is scoured, or once one's own yield is there, what combs, cards and the wheel will
take is all that is left to doubt.
"""

import numpy as np

from workbookgen.reference.fiber.stages import NO_MASS, SCOURING, bought_after
from workbookgen.reference.law import law, require
from workbookgen.units import Mass, Ratio


@law
def to_come_doubt(
    to_come: Mass,
    stage: Ratio,
    rest_doubt: Ratio,
    spread: Ratio | None = None,
    expected: Ratio | None = None,
    own: Ratio | None = None,
    weighed: Mass | None = None,
) -> Mass:
    """Standard uncertainty of the yarn still to come from a lot.

    u = m · √((s / y)² + r²) while the yield is the guide's, else u = m · r. A fleece bought
    in the grease may give much more or much less than its breed usually does.

    Parameters
    ----------
    to_come : m, mass of yarn that the lot is still to give
    stage : the place at which the lot was bought, 1 to 5
    rest_doubt : r, relative standard uncertainty of all other losses
    spread : s, standard uncertainty of the yield that the guide expects, a share
    expected : y, the yield that the guide expects, a share
    own : one's own figure of the yield, a share
    weighed : mass on the scale after scouring, if it was weighed

    Returns
    -------
    u, a mass

    Raises
    ------
    ValueError
        A negative mass or uncertainty, or a yield outside above 0 to 1.

    Notes
    -----
    Valid for a yield and other losses that do not hang on each other. The yield counts only
    for a lot bought raw or skirted, not weighed after scouring, without a figure of one's own.

    References
    ----------
    JCGM 100, 5.1.6 (from memory).
    """
    require(to_come >= NO_MASS, "The mass still to come cannot be negative.")
    require(rest_doubt >= 0, "A standard uncertainty cannot be negative.")
    scoured = bought_after(SCOURING, stage)
    if weighed is not None:
        require(scoured | (weighed >= NO_MASS), "The mass weighed cannot be negative.")
    elif own is not None:
        _require_yield(scoured, own)
    elif spread is not None and expected is not None:
        _require_yield(scoured, expected)
        require(scoured | (spread >= 0), "A standard uncertainty cannot be negative.")
        return to_come * np.where(scoured, rest_doubt, np.hypot(spread / expected, rest_doubt))[()]
    return to_come * rest_doubt


def _require_yield(scoured, share) -> None:
    require(
        scoured | ((share > 0) & (share <= 1)),
        "A yield lies above 0 and up to 1: it is a share of the mass before scouring.",
    )
