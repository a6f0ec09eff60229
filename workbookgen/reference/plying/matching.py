"""Matching an existing yarn: what to spin so that, plied and washed, it becomes that yarn."""

from workbookgen.reference.calculation import calculation, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, COUNTED, NOT_NEGATIVE, SHRINKAGE, require_loss, require_within
from workbookgen.units import Length, LinearDensity, Mass, PerLength, Ratio


@calculation
def strand_to_spin(wanted: Length, take_up: Ratio = 0.0, shrinkage: Ratio = 0.0) -> Length:
    """Length of each strand for a length of finished yarn.

    ℓ = L / ((1 - s) · (1 - c)). Washing and plying both take up length, and that must be spun too.

    Parameters
    ----------
    wanted : L, length of finished yarn
    take_up : c, share of the strands' length lost in plying
    shrinkage : s, share of the yarn's length lost in washing; negative where yarn grows

    Returns
    -------
    ℓ, a length

    Raises
    ------
    ValueError
        A negative length, a take-up outside 0 to under 1, or a shrinkage of 0.9 or more.

    Notes
    -----
    Valid for equal strands.

    References
    ----------
    Definition of the take-up and of the shrinkage.

    Examples
    --------
    >>> print(strand_to_spin(Quantity(900, "m"), take_up=0.1))
    1000.0 meter
    """
    require_within(NOT_NEGATIVE, "A length", wanted)
    _require_losses(take_up, shrinkage)
    return wanted / ((1 - shrinkage) * (1 - take_up))


@calculation
def twist_to_insert(counted: PerLength, shrinkage: Ratio = 0.0) -> PerLength:
    """Twist to insert in a ply or in its singles, for the twist counted in a finished yarn.

    T' = T · (1 - s). The turns stay, but what was washed is shorter.

    Parameters
    ----------
    counted : T, twist counted in the finished yarn; of singles in one strand, once the ply is undone
    shrinkage : s, share of the length lost in washing; negative where yarn grows

    Returns
    -------
    T', a twist

    Raises
    ------
    ValueError
        A twist below zero, or a shrinkage of 0.9 or more.

    Notes
    -----
    Valid for yarn that does not untwist in washing. Each turn of the ply took one out of every strand, and undoing it
    gives that turn back: a strand taken out of the yarn has the turns with which it was spun.

    References
    ----------
    Geometry: a change of length neither adds nor removes turns. That a strand so counted tells the original twist of
    the single before plying: ISO 2061:2010, scope (read as reproduced).

    Examples
    --------
    >>> print(twist_to_insert(Quantity(200, "1/m"), shrinkage=0.05))
    190.0 / meter
    """
    require_within(NOT_NEGATIVE, "The twist cannot be below zero.", counted)
    _require_losses(0.0, shrinkage)
    return counted * (1 - shrinkage)


@calculation
def strands_mass(length: Length, strands: Ratio, linear_density: LinearDensity) -> Mass:
    """Mass of all strands of a yarn.

    m = ℓ · n · t. Neither plying nor washing changes what the fiber weighs.

    Parameters
    ----------
    length : ℓ, length of each strand
    strands : n, number of strands
    linear_density : t, linear density of each

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A negative length, strands that are not a whole number from 1 up, or a linear density that is not above zero.

    Notes
    -----
    Valid for equal strands that lose no fiber or grease on the way.

    References
    ----------
    Definition of the linear density.

    Examples
    --------
    >>> print(strands_mass(Quantity(1000, "m"), 2, Quantity(80, "tex")))
    160.0 gram
    """
    require_within(NOT_NEGATIVE, "A length", length)
    require_within(COUNTED, "The number of strands", strands)
    require_within(ABOVE_ZERO, "The linear density", linear_density)
    return (length * strands * linear_density).to("g")


def _require_losses(take_up: Ratio, shrinkage: Ratio) -> None:
    require_numbers(shrinkage)
    require_loss(take_up, "take-up")
    require_within(SHRINKAGE, "The shrinkage", shrinkage)
