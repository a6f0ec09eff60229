"""How much of each component a plied yarn takes.

Lengths and masses of components, and the packages to buy or bobbins to fill.
"""


from workbookgen.reference.law import law, require, whole_for
from workbookgen.reference.plying.design import require_strands_and_feed
from workbookgen.units import Length, LinearDensity, Mass, Quantity, Ratio, Some

NO_LENGTH = Quantity(0.0, "m")
NO_LINEAR_DENSITY = Quantity(0.0, "tex")


@law
def component_length(wanted: Length, strands: Ratio = 1, feed: Ratio = 1) -> Length:
    """Length of a component that a plied yarn needs.

    ℓ = L · s · m. All the strands of that component together.

    Parameters
    ----------
    wanted : L, length of plied yarn wanted
    strands : s, number of strands of the component
    feed : m, length of strand in one length of plied yarn, from 1 up

    Returns
    -------
    ℓ, a length

    Raises
    ------
    ValueError
        A negative length, strands that are no whole number from 1 up, or a feed below 1.

    Notes
    -----
    Valid for bobbins spun empty; what stays on them belongs to the length wanted, as a margin.

    References
    ----------
    Definition of the feed ratio.
    """
    require(wanted >= NO_LENGTH, "The length wanted cannot be negative.")
    require_strands_and_feed(strands, feed)
    return wanted * strands * feed


@law
def component_mass(length: Length, linear_density: LinearDensity) -> Mass:
    """Mass of a component.

    m = ℓ · t. What to spin or to buy of it.

    Parameters
    ----------
    length : ℓ, length of the component
    linear_density : t, linear density of one strand

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        A negative length, or a linear density that is not above zero.

    Notes
    -----
    Valid for a strand that is even from end to end.

    References
    ----------
    Definition of the linear density.
    """
    require(length >= NO_LENGTH, "The length cannot be negative.")
    require(linear_density > NO_LINEAR_DENSITY, "The linear density must be above zero.")
    return (length * linear_density).to("gram")


@law
def packages(length: Some, package: Some) -> Ratio:
    """Number of packages to buy, or of bobbins to fill.

    k = ⌈L / p⌉, and k = L / p where that is whole. A part of a package is a whole one to buy.

    Parameters
    ----------
    length : L, what is needed, a length, a mass or a number
    package : p, what one package holds, of the same kind

    Returns
    -------
    k, a whole number

    Raises
    ------
    ValueError
        A negative need, or a package that holds nothing.
    DimensionalityError
        A need and a package of different kinds.

    Notes
    -----
    Valid for packages of one size; L / p is rounded to six decimals first.

    References
    ----------
    Definition of the quotient.
    """
    require(package > 0, "A package must hold something.")
    require(length >= 0, "What is needed cannot be negative.")
    return whole_for(Quantity(length / package).m_as(""))
