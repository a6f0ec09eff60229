"""How much moisture a blend takes up: its shares are of the dry mass."""

from workbookgen.reference.blends.shares import require_all_known
from workbookgen.reference.calculation import calculation, require, require_numbers
from workbookgen.reference.limits import NO_MASS, NOT_NEGATIVE, require_within
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.units import Mass, Ratio


@calculation
def dry_at_regain(mass: Mass, regain: Ratio) -> Mass:
    """Dry mass of a fiber that was weighed at its regain.

    D = m / (1 + R). The rest is water.

    Parameters
    ----------
    mass : m, mass as weighed
    regain : R, water over dry mass

    Returns
    -------
    D, a mass

    Raises
    ------
    ValueError
        A negative mass or regain.

    Notes
    -----
    Valid for fiber conditioned in the air to which its regain belongs.

    References
    ----------
    Definition of the regain.

    Examples
    --------
    >>> print(dry_at_regain(Quantity(116, "g"), 0.16))
    100.0 gram
    """
    require_within(NOT_NEGATIVE, "A mass", mass)
    require_within(NOT_NEGATIVE, "The regain", regain)
    return mass / (1 + regain)


@calculation
def blend_regain(total: Mass, dry: Mass, known: Ratio = 1, of: Ratio = 1) -> Ratio:
    """Regain of a blend.

    R = M / Σ D - 1, which is Σ x · R by shares of the dry mass. All of its water over all of its dry fiber.

    Parameters
    ----------
    total : M, mass of all fibers as weighed
    dry : Σ D, their dry mass
    known : number of fibers for which this is known
    of : number of fibers in the blend

    Returns
    -------
    R, a share of the dry mass

    Raises
    ------
    ValueError
        A dry mass that is not above zero, or more than the whole, or a fiber for which it is not known.

    Notes
    -----
    Valid for a blend in which the regain of every fiber is known.

    References
    ----------
    A public examination item on blends, reproduced in the tests (read).

    Examples
    --------
    >>> print(blend_regain(Quantity(212.5, "g"), Quantity(200, "g"), known=2, of=2))
    0.0625
    """
    require_all_known(known, of)
    require_numbers(total, dry)
    require(
        (dry > NO_MASS) & (dry <= total * (1 + ROUNDING)), "The dry fiber weighs something, and no more than the whole."
    )
    return (total / dry).m_as("") - 1
