"""How much of each component a plied yarn takes.

Lengths and masses of components, and the packages to buy or bobbins to fill.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require_name, whole_for
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, Limits, require_within
from workbookgen.reference.plying.design import require_strands_and_feed
from workbookgen.reference.records import sum_where
from workbookgen.texts import folded
from workbookgen.units import Length, LinearDensity, Mass, Quantity, Ratio, Some

BOUGHT = "yarn or thread"


@calculation
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
        A negative length, strands that are not a whole number from 1 up, or a feed below 1.

    Notes
    -----
    Valid for bobbins plied until empty; what remains on them belongs to the length wanted, as a reserve.

    References
    ----------
    Definition of the feed ratio.

    Examples
    --------
    >>> print(component_length(Quantity(500, "m"), strands=2, feed=1.04))
    1040.0 meter
    """
    require_within(NOT_NEGATIVE, "The length wanted", wanted)
    require_strands_and_feed(strands, feed)
    return wanted * strands * feed


@calculation
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

    Examples
    --------
    >>> print(component_mass(Quantity(1000, "m"), Quantity(80, "tex")))
    80.0 gram
    """
    require_within(NOT_NEGATIVE, "The length", length)
    require_within(ABOVE_ZERO, "The linear density", linear_density)
    return (length * linear_density).to("gram")


@calculation
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

    Examples
    --------
    >>> print(packages(Quantity(230, "g"), Quantity(50, "g")))
    5.0
    """
    require_within(ABOVE_ZERO, "A package must hold something.", package)
    require_within(NOT_NEGATIVE, "What is needed", length)
    return whole_for(Quantity(length / package).m_as(""))


@calculation
def spools(
    length: Length,
    package: Length,
    lots: Sequence[str] = (),
    amounts: Some | None = None,
    own: str | None = None,
    form: str | None = None,
) -> Ratio:
    """Number of spools that a component takes.

    k = ⌈ℓ / p⌉; of a bought thread ⌈Σ ℓ / p⌉ · ℓ / Σ ℓ, over the components of the design that are of it. Two strands
    of one thread take whole spools together: 2.4 of them are 3, 1.5 for each.

    Parameters
    ----------
    length : ℓ, length of the component
    package : p, what one spool or bobbin holds
    lots : the lots of each component, under its design, blank where one has none
    amounts : ℓ of each; no number is a blank
    own : the lots of this one, if it has any
    form : form in which its lot was bought

    Returns
    -------
    k, a number; a whole one where it has its thread to itself

    Raises
    ------
    ValueError
        A negative length, or a spool that holds nothing.

    Notes
    -----
    Valid for spools of one size. A strand that is spun fills bobbins of its own.

    References
    ----------
    Definition of the quotient.

    Examples
    --------
    >>> of_thread, lots = Quantity([300, 900, 300], "m"), ["Gray", "Tan", "Gray"]
    >>> print(spools(Quantity(300, "m"), Quantity(500, "m"), lots, of_thread, "Gray", "yarn or thread"))
    1.0
    """
    if own is None or form is None:
        return packages(length, package)
    together = sum_where(own, lots, amounts).to("m")
    bought = by_element(lambda each: folded(str(each)) == BOUGHT, form)
    is_shared = np.asarray(bought, dtype=bool) & (together.m_as("m") > length.m_as("m"))
    part = length.m_as("m") / np.where(is_shared, together.m_as("m"), 1.0)
    return np.where(is_shared, packages(together, package) * part, packages(length, package))[()]


@calculation
def component_key(design: str, place: Ratio = 1) -> str:
    """The name under which a component of a design is found.

    key = design / place. The first, second, third or fourth component of its design.

    Parameters
    ----------
    design : name of the design
    place : 1 to 4

    Returns
    -------
    a text such as "Gray 2-ply / 1"

    Raises
    ------
    ValueError
        A blank name, or a place that is not a whole number from 1 to 4.

    Notes
    -----
    Valid for designs of up to four components.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(component_key("Gray 2-ply", 1))
    Gray 2-ply / 1
    """
    require_within(Limits(least=1, most=4, whole=True), "A place is a whole number from 1 to 4.", place)
    require_name(design)
    return by_element(lambda name, number: f"{name} / {int(number)}", design, place)


@calculation
def component_label(design: str, place: Ratio, name: str | None = None) -> str:
    """What a component is called.

    label = name, or else design / place. A name of its own is easier to find.

    Parameters
    ----------
    design : name of the design
    place : 1 to 4
    name : the component's own name, if it has one

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        A blank name, or a place that is not a whole number from 1 to 4.

    Notes
    -----
    Valid for designs of up to four components.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(component_label("Gray 2-ply", 2, "silk"))
    silk
    """
    key = component_key(design, place)
    if name is None:
        return key
    require_name(name)
    return by_element(lambda own, _: str(own), name, place)
