"""The twist factor of one yarn in each common system, side by side."""

from workbookgen.reference.calculation import calculation
from workbookgen.reference.twist.amount import factor
from workbookgen.units import LinearDensity, PerLength, Ratio


@calculation
def cotton_factor(twist: PerLength, linear_density: LinearDensity) -> Ratio:
    """Twist factor in the cotton system.

    M = T / √N. Turns per inch over the root of the cotton count.

    Parameters
    ----------
    twist : T, turns in a length
    linear_density : linear density of the yarn, which gives its count N

    Returns
    -------
    M, a number

    Raises
    ------
    ValueError
        A twist below zero, or a linear density that is not above zero.

    Notes
    -----
    Valid for yarns of similar material and packing, which it compares whatever their count.

    References
    ----------
    Twist equation T = M √N: spinning handbooks (read).

    Examples
    --------
    >>> print(round(cotton_factor(Quantity(20, "1/inch"), 1 / Quantity(25, "number_english")), 6))
    4.0
    """
    return factor(twist, linear_density, "cotton")


@calculation
def worsted_factor(twist: PerLength, linear_density: LinearDensity) -> Ratio:
    """Twist factor in the worsted system.

    M = T / √N. Turns per inch over the root of the worsted count.

    Parameters
    ----------
    twist : T, turns in a length
    linear_density : linear density of the yarn, which gives its count N

    Returns
    -------
    M, a number

    Raises
    ------
    ValueError
        A twist below zero, or a linear density that is not above zero.

    Notes
    -----
    Valid for yarns of similar material and packing, which it compares whatever their count.

    References
    ----------
    Twist equation T = M √N: spinning handbooks (read).

    Examples
    --------
    >>> print(round(worsted_factor(Quantity(12, "1/inch"), 1 / Quantity(16, "worsted_count")), 6))
    3.0
    """
    return factor(twist, linear_density, "worsted")


@calculation
def run_factor(twist: PerLength, linear_density: LinearDensity) -> Ratio:
    """Twist factor in the woolen run system.

    M = T / √N. Turns per inch over the root of the woolen run.

    Parameters
    ----------
    twist : T, turns in a length
    linear_density : linear density of the yarn, which gives its count N

    Returns
    -------
    M, a number

    Raises
    ------
    ValueError
        A twist below zero, or a linear density that is not above zero.

    Notes
    -----
    Valid for yarns of similar material and packing, which it compares whatever their count.

    References
    ----------
    Twist equation T = M √N: spinning handbooks (read).

    Examples
    --------
    >>> print(round(run_factor(Quantity(12, "1/inch"), 1 / Quantity(9, "woollen_run")), 6))
    4.0
    """
    return factor(twist, linear_density, "woolen run")


@calculation
def tex_factor(twist: PerLength, linear_density: LinearDensity) -> Ratio:
    """Twist factor in the tex system.

    α = T · √Tt. Turns per centimeter times the root of tex.

    Parameters
    ----------
    twist : T, turns in a length
    linear_density : Tt, linear density of the yarn

    Returns
    -------
    α, a number

    Raises
    ------
    ValueError
        A twist below zero, or a linear density that is not above zero.

    Notes
    -----
    Valid for yarns of similar material and packing, which it compares whatever their count.

    References
    ----------
    Twist equation in the tex system: public examination papers in textiles (read).

    Examples
    --------
    >>> print(round(tex_factor(Quantity(6, "1/cm"), Quantity(25, "tex")), 6))
    30.0
    """
    return factor(twist, linear_density, "tex")
