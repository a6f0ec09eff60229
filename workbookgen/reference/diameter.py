"""How thick a yarn is: diameter, threads side by side, wraps, weight class.

Thickness follows the square root of the mass in a length, with a factor for how firmly
the fibers lie. A yarn gives way under the ruler and under the eye, so every figure here
is an indication; grist, which is weighed, is not. The factor is an argument throughout:
a spinner who fits it to her own samples beats every table.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require
from workbookgen.units import Density, Grist, Length, LinearDensity, PerLength, Quantity, Ratio

NO_GRIST = Quantity(0.0, "m/g")
NO_LENGTH = Quantity(0.0, "m")
NO_LINEAR_DENSITY = Quantity(0.0, "tex")
NO_DENSITY = Quantity(0.0, "kg/m^3")
NO_WRAPS = Quantity(0.0, "1/inch")

# Wraps in an inch of each class, as published; no class is printed for 4 to 5, which are given to the thickest.
WEIGHT_CLASSES = (
    ("7 jumbo", 0, 5),
    ("6 super bulky", 5, 6),
    ("5 bulky", 6, 9),
    ("4 medium", 9, 12),
    ("3 light", 11, 15),
    ("2 fine", 12, 18),
    ("1 super fine", 14, 30),
    ("0 lace", 30, np.inf),
)


@calculation
def threads_side_by_side(grist: Grist, k: Ratio) -> PerLength:
    """Threads that lie side by side in an inch.

    D = K · √g, g in yards per pound, D in an inch. Thickness goes with the square root of
    the mass in a length.

    Parameters
    ----------
    grist : g, grist of the yarn
    k : K, about 0.84 for soft to 0.95 for firm threads that touch; less for wraps by hand

    Returns
    -------
    D, a number per length

    Raises
    ------
    ValueError
        A grist or a K that is not above zero.

    Notes
    -----
    Valid for round yarns of one kind; K belongs to the fiber and the way of spinning.

    References
    ----------
    Ashenhurst's rule, quoted in a study of weaving (read); J. T. Taylor, Cotton Weaving and
    Designing: square root less 5 per cent for cotton (read). K of hand wrapping: common
    practice, no source.
    """
    require(grist > NO_GRIST, "The grist must be above zero.")
    require(k > 0, "The factor K must be above zero.")
    return Quantity(k * np.sqrt(grist.m_as("yard/pound")), "1/inch")


@calculation
def fitted_k(wraps: PerLength, grist: Grist) -> Ratio:
    """Factor K of one's own yarn.

    K = w / √g, w in an inch, g in yards per pound. A sample that was wrapped and weighed
    says more than the table.

    Parameters
    ----------
    wraps : w, wraps counted in a length
    grist : g, grist of the same yarn

    Returns
    -------
    K, a number

    Raises
    ------
    ValueError
        Wraps or a grist that are not above zero.

    Notes
    -----
    Valid for yarns spun and wrapped as the sample was.

    References
    ----------
    Ashenhurst's rule, quoted in a study of weaving (read), solved for its factor.
    """
    require(wraps > NO_WRAPS, "The number of wraps must be above zero.")
    require(grist > NO_GRIST, "The grist must be above zero.")
    return wraps.m_as("1/inch") / np.sqrt(grist.m_as("yard/pound"))


@calculation
def wraps_in_use(counted: PerLength | None = None, expected: PerLength | None = None) -> PerLength:
    """Wraps per length to go by.

    w = counted, or else expected. Counting one's own yarn beats a rule.

    Parameters
    ----------
    counted : wraps counted on the yarn itself
    expected : wraps that the grist leads one to expect

    Returns
    -------
    w, a number per length

    Raises
    ------
    ValueError
        Neither is known, or the wraps in use are not above zero.

    Notes
    -----
    Valid for wraps laid the same way each time.

    References
    ----------
    Common practice, no source.
    """
    wraps = expected if counted is None else counted
    require(wraps is not None, "Count the wraps, or give the grist.")
    require(wraps > NO_WRAPS, "The number of wraps must be above zero.")
    return wraps


@calculation
def wrap_width(wraps: PerLength) -> Length:
    """Width that one wrap takes.

    d = 1 / w. Threads side by side share the length among them.

    Parameters
    ----------
    wraps : w, wraps in a length

    Returns
    -------
    d, a length

    Raises
    ------
    ValueError
        Wraps that are not above zero.

    Notes
    -----
    Valid for wraps that touch without overlapping; loosely laid ones look thicker than the yarn.

    References
    ----------
    Definition of wraps in a length.
    """
    require(wraps > NO_WRAPS, "The number of wraps must be above zero.")
    return 1 / wraps


@calculation
def yarn_diameter(linear_density: LinearDensity, fiber_density: Density, packing: Ratio) -> Length:
    """Diameter of a yarn.

    d = √(4 · T / (π · ρ · φ)). A round thread of that mass, partly fiber and partly air.

    Parameters
    ----------
    linear_density : T, linear density of the yarn
    fiber_density : ρ, density of the fiber itself
    packing : φ, share of the cross section that is fiber, above 0 to 1

    Returns
    -------
    d, a length

    Raises
    ------
    ValueError
        A linear density or a density that is not above zero, or a packing outside 0 to 1.

    Notes
    -----
    Valid for a round yarn that nothing presses; φ is about 0.35 lofty to 0.65 hard twisted.

    References
    ----------
    Geometry. With ρ · φ = 909 kg/m³ it is Peirce's cotton rule, d = 1 in / (28 · √Ne) (read).
    Densities of fibers: Morton and Hearle, table 5.1 (read).
    """
    require(linear_density > NO_LINEAR_DENSITY, "The linear density must be above zero.")
    require(fiber_density > NO_DENSITY, "The density of the fiber must be above zero.")
    require((packing > 0) & (packing <= 1), "The packing lies above 0 and up to 1.")
    return np.sqrt(4 * linear_density / (np.pi * fiber_density * packing)).to("millimeter")


@calculation
def diameter_in_use(measured: Length | None = None, expected: Length | None = None) -> Length:
    """Diameter of a yarn to go by.

    d = measured, or else expected. The yarn itself beats a rule.

    Parameters
    ----------
    measured : diameter as measured
    expected : diameter by the grist

    Returns
    -------
    d, a length

    Raises
    ------
    ValueError
        Neither is known, or a diameter that is not above zero.

    Notes
    -----
    Valid for a yarn that is pressed no more when measured than in the ply.

    References
    ----------
    Common practice, no source.
    """
    across = expected if measured is None else measured
    require(across is not None, "Measure the yarn, or give its grist.")
    require(across > NO_LENGTH, "The diameter must be above zero.")
    return across


@calculation
def packing(k: Ratio, fiber_density: Density) -> Ratio:
    """Share of a yarn's section that is fiber, where so many threads lie side by side.

    φ = 4 · T · D² / (π · ρ), D = K · √g. K and packing are one fact told twice: a yarn that is 1 / D across holds this
    much fiber, whatever its grist.

    Parameters
    ----------
    k : K, as in the rule for threads side by side
    fiber_density : ρ, density of the fiber itself

    Returns
    -------
    φ, a share

    Raises
    ------
    ValueError
        A K or a density that is not above zero, or a K at which more than the whole section would be fiber.

    Notes
    -----
    Valid for round yarns. Wool of K 0.9 is fiber by 0.61; wrapped by hand with K 0.35, by 0.09: air within the yarn and
    between the wraps.

    References
    ----------
    Geometry; Ashenhurst's rule, quoted in a study of weaving (read).
    """
    require(k > 0, "The factor K must be above zero.")
    require(fiber_density > NO_DENSITY, "The density of the fiber must be above zero.")
    share = (4 * Quantity(k * k, "1/inch^2 * pound/yard") / (np.pi * fiber_density)).m_as("")
    require(share <= 1, "So many threads would be more than solid fiber: K is too large for this density.")
    return share


@calculation
def fiber_linear_density(fiber_diameter: Length, fiber_density: Density) -> LinearDensity:
    """Linear density of a single fiber.

    t = π / 4 · d² · ρ. The mass of a round and solid rod.

    Parameters
    ----------
    fiber_diameter : d, mean diameter of the fiber
    fiber_density : ρ, its density

    Returns
    -------
    t, a mass per length

    Raises
    ------
    ValueError
        A diameter or a density that is not above zero.

    Notes
    -----
    Valid for round fibers without a hollow; their spread makes the true mean a little higher.

    References
    ----------
    Geometry. Densities of fibers: Morton and Hearle, table 5.1 (read).
    """
    require(fiber_diameter > NO_LENGTH, "The diameter of the fiber must be above zero.")
    require(fiber_density > NO_DENSITY, "The density of the fiber must be above zero.")
    return (np.pi / 4 * fiber_diameter**2 * fiber_density).to("tex")


@calculation
def fibers_in_section(
    linear_density: LinearDensity, fiber_diameter: Length, fiber_density: Density
) -> Ratio:
    """Number of fibers in the cross section of a yarn.

    n = T / t. With too few of them a yarn drifts apart, however well it is twisted.

    Parameters
    ----------
    linear_density : T, linear density of the yarn
    fiber_diameter : d, mean diameter of the fiber, which gives t
    fiber_density : ρ, its density

    Returns
    -------
    n, a mean number

    Raises
    ------
    ValueError
        A linear density, a diameter or a density that is not above zero.

    Notes
    -----
    Valid for round fibers that lie along the yarn.

    References
    ----------
    Definition of the mean number of fibers; geometry.
    """
    require(linear_density > NO_LINEAR_DENSITY, "The linear density must be above zero.")
    return (linear_density / fiber_linear_density(fiber_diameter, fiber_density)).m_as("")


@calculation
def yarn_weight_class(wraps: PerLength) -> str:
    """Weight class of a yarn by the wraps laid on a ruler.

    class = that with from ≤ w ≤ to. The published ranges overlap, so that many a yarn belongs to two classes or three: the
    thickest and the finest are named.

    Parameters
    ----------
    wraps : w, wraps counted in a length

    Returns
    -------
    one class such as "4 medium", or the ends of several such as "4 medium to 3 light"

    Raises
    ------
    ValueError
        A number of wraps that is not above zero.

    Notes
    -----
    Valid for wraps laid by hand, touching and not pressed; a guideline, and other tables differ.

    References
    ----------
    Standard yarn weight system of the yarn trade, with its wraps per inch (read as reproduced).
    """
    require(wraps > NO_WRAPS, "The number of wraps must be above zero.")
    return by_element(_classes_of, wraps.m_as("1/inch"))


def _classes_of(per_inch) -> str:
    # The last digits of a conversion must not decide a border case.
    wraps = round(float(per_inch), 6)
    found = [name for name, least, most in WEIGHT_CLASSES if least <= wraps <= most]
    return found[0] if len(found) == 1 else f"{found[0]} to {found[-1]}"
