"""Matching an existing yarn: what to spin so that, plied and washed, it becomes that yarn."""

from workbookgen.reference.calculation import calculation, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, COUNTED, NOT_NEGATIVE, SHRINKAGE, require_within
from workbookgen.reference.plying.design import require_loss
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
def ply_to_insert(ply: PerLength, shrinkage: Ratio = 0.0) -> PerLength:
    """Ply twist to insert, for the wanted twist after washing.

    P' = P · (1 - s). The turns stay, but the washed yarn is shorter.

    Parameters
    ----------
    ply : P, twist counted in the finished yarn
    shrinkage : s, share of the yarn's length lost in washing; negative where yarn grows

    Returns
    -------
    P', a twist

    Raises
    ------
    ValueError
        A twist below zero, or a shrinkage of 0.9 or more.

    Notes
    -----
    Valid for yarn that does not untwist in washing.

    References
    ----------
    Definition of the twist.

    Examples
    --------
    >>> print(ply_to_insert(Quantity(200, "1/m"), shrinkage=0.05))
    190.0 / meter
    """
    require_within(NOT_NEGATIVE, "The twist cannot be below zero.", ply)
    _require_losses(0.0, shrinkage)
    return ply * (1 - shrinkage)


@calculation
def singles_to_insert(left: PerLength, ply: PerLength, take_up: Ratio = 0.0, shrinkage: Ratio = 0.0) -> PerLength:
    """Twist to insert in singles, for the wanted twist after plying and washing.

    T' = (T + P · (1 - c)) · (1 - s). Each turn of the ply takes one out of every strand, and strands are longer than the ply.

    Parameters
    ----------
    left : T, twist left in a strand of the finished yarn, once the ply is undone
    ply : P, twist of the ply, counted in the finished yarn
    take_up : c, share of the strands' length lost in plying
    shrinkage : s, share of the yarn's length lost in washing; negative where yarn grows

    Returns
    -------
    T', a twist

    Raises
    ------
    ValueError
        A twist below zero, a take-up outside 0 to under 1, or a shrinkage of 0.9 or more.

    Notes
    -----
    Valid for strands plied against their twist.

    References
    ----------
    Geometry: a change of length neither adds nor removes turns.

    Examples
    --------
    >>> print(singles_to_insert(Quantity(100, "1/m"), Quantity(200, "1/m"), take_up=0.05))
    290.0 / meter
    """
    require_within(NOT_NEGATIVE, "The twist cannot be below zero.", left, ply)
    _require_losses(take_up, shrinkage)
    return (left + ply * (1 - take_up)) * (1 - shrinkage)


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


def _require_losses(take_up, shrinkage) -> None:
    require_numbers(shrinkage)
    require_loss(take_up, "take-up")
    require_within(SHRINKAGE, "The shrinkage", shrinkage)
