"""The units in which a planner shows its quantities, and their factors for formulas.

A formula's words stand for quantities in coherent units: meters, grams, and units derived from them (meters per gram,
grams per meter). A cell shows the unit that the spinner is used to. A unit's `factor` is the number of coherent units
in one shown unit, as the text that a formula multiplies by. It is written here by hand, independently of the unit
registry, and tests compare the two.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import floor, log10, prod

from workbookgen.errors import DescriptionError
from workbookgen.unit_systems import UNIT_SYSTEMS, UnitSystem
from workbookgen.units import COUNT_UNITS, Quantity

YD, IN, LB, OZ = "0.9144", "0.0254", "453.59237", "28.349523125"


def bracketed(text: str) -> str:
    """Formula text in parentheses, unless one pair, perhaps that of a function, already encloses all of it."""
    name, bracket, _ = text.partition("(")
    begins = bracket and (not name or name.isalnum())
    depth = 0
    for index, sign in enumerate(text):
        depth += (sign == "(") - (sign == ")")
        if sign == ")" and depth == 0:
            return text if begins and index == len(text) - 1 else f"({text})"
    if depth:
        raise ValueError(f"the brackets of {text} do not match")
    return f"({text})"


@dataclass(frozen=True)
class Unit:
    """A unit: its symbol for people, its name in the registry (`pint`), and its factor for formulas."""

    symbol: str
    pint: str
    factor: str = "1"
    digits: int = 2
    zero: str = ""  # the shown value at the coherent unit's zero; only temperatures have one

    def converts_as(self, other: "Unit") -> bool:
        """Whether a number shown in one unit is the same number in the other."""
        return (self.factor, self.zero) == (other.factor, other.zero)

    def coherent(self, shown: str) -> str:
        """Formula text that converts a shown value to coherent units."""
        if self.zero:
            return f"(({shown}-{self.zero})*{self.factor})"
        return shown if self.factor == "1" else f"({shown}*{self.factor})"

    def shown(self, coherent: str) -> str:
        """Formula text that converts a value in coherent units to the shown unit."""
        if self.factor == "1":
            return coherent
        over = f"({self.factor})" if "*" in self.factor or "/" in self.factor else self.factor
        divided = f"{bracketed(coherent)}/{over}"
        return f"{divided}+{self.zero}" if self.zero else divided

    def typed(self, quantity: Quantity) -> float:
        """A quantity as a person would type it in this unit: rounded to two figures if it was given in another."""
        value = float(quantity.to(self.pint).magnitude)
        if value == 0 or quantity.units == Quantity(1, self.pint).units:
            return value
        return round(value, 1 - floor(log10(abs(value))))

    @property
    def beside(self) -> str:
        """The symbol to show beside a number; none where the number format shows it, as for percentages and dates."""
        return "" if self in (PERCENT_UNIT, DAY_UNIT) else self.symbol

    @property
    def readable(self) -> str:
        """The unit's name for any unit registry, with our own count systems spelled out."""
        return COUNT_UNITS.get(self.pint, self.pint)

    @property
    def value(self) -> float:
        """The factor as a number."""
        over, _, under = self.factor.partition("/")
        return prod(map(float, over.split("*"))) / prod(float(part) for part in under.strip("()").split("*") if part)


@dataclass(frozen=True)
class Kind:
    """A kind of quantity, with its customary and its metric unit.

    Which of them is shown depends on the unit system's lengths or masses, as `by` says.
    """

    customary: Unit
    metric: Unit
    by: str = "length"  # or "mass"

    def unit(self, system: str) -> Unit:
        return self.metric if UNIT_SYSTEMS[system].is_metric(self.by) else self.customary

    @property
    def units(self) -> tuple[Unit, Unit]:
        return self.customary, self.metric

    @property
    def has_dimension(self) -> bool:
        return any(unit.pint != "dimensionless" for unit in self.units)


def always(unit: Unit) -> Kind:
    """A kind that every unit system shows in the same unit."""
    return Kind(unit, unit)


def by_length(customary: Unit, metric: Unit) -> Kind:
    """A kind whose unit follows the unit of length: metric where lengths are in meters."""
    return Kind(customary, metric, "length")


def by_mass(ounces: Unit, grams: Unit) -> Kind:
    """A kind whose unit follows the unit of mass."""
    return Kind(ounces, grams, "mass")


NUMBER_UNIT = Unit("", "dimensionless", digits=2)
PERCENT_UNIT = Unit("%", "dimensionless", digits=1)
INCH, CENTIMETER = Unit("in", "inch", IN), Unit("cm", "centimeter", "0.01")
YARD, METER = Unit("yd", "yard", YD, 0), Unit("m", "meter", "1", 0)
OUNCE, GRAM = Unit("oz", "ounce", OZ, 1), Unit("g", "gram", "1", 0)
DAY_UNIT = Unit("date", "dimensionless", digits=0)
POUND, KILOGRAM = Unit("lb", "pound", LB), Unit("kg", "kilogram", "1000")
YARDS_PER_POUND = Unit("yd/lb", "yard / pound", f"{YD}/{LB}", 0)
METERS_PER_100_G = Unit("m/100 g", "meter / hectogram", "0.01", 1)
PER_INCH = Unit("per in", "1 / inch", f"1/{IN}", 1)

MINUTE, HOUR = Unit("min", "minute", "1/60", 0), Unit("h", "hour", digits=1)
GALLON, LITER = Unit("gal", "gallon", "3.785411784", 1), Unit("L", "liter", digits=1)
TEASPOON, MILLILITER = Unit("tsp", "teaspoon", "0.00492892159375", 1), Unit("mL", "milliliter", "0.001", 0)
TEASPOONS_PER_GALLON = Unit("tsp/gal", "teaspoon / gallon", "1/768", 1)
MILLILITERS_PER_LITER = Unit("mL/L", "milliliter / liter", "0.001", 1)

NUMBER = always(NUMBER_UNIT)
SHARE = always(PERCENT_UNIT)
DAY = always(DAY_UNIT)
LENGTH = by_length(YARD, METER)
LOOP = by_length(INCH, CENTIMETER)
MASS = by_mass(OUNCE, GRAM)
FINE_MASS = by_mass(replace(OUNCE, digits=2), replace(GRAM, digits=1))  # what is weighed out in small parts
FLEECE = by_length(POUND, KILOGRAM)
GRIST = by_length(YARDS_PER_POUND, METERS_PER_100_G)
STAPLE = by_length(INCH, CENTIMETER)

IN_YARDS, IN_METERS = always(YARD), always(METER)
GRIST_US, GRIST_METRIC = always(YARDS_PER_POUND), always(METERS_PER_100_G)
THREADS = always(PER_INCH)
FIBER_DIAMETER = always(Unit("µm", "micrometer", "0.000001", 1))
YARN_DIAMETER = always(Unit("mm", "millimeter", "0.001"))
DENSITY = always(Unit("g/cm³", "gram / centimeter ** 3", "1000000"))

AREA = by_length(Unit("in²", "inch ** 2", f"{IN}*{IN}", 1), Unit("cm²", "centimeter ** 2", "0.0001", 1))
SQUARE_LENGTH = by_length(Unit("yd²", "yard ** 2", f"{YD}*{YD}", 1), Unit("m²", "meter ** 2", digits=1))
SQUARE_MASS = by_mass(Unit("oz²", "ounce ** 2", f"{OZ}*{OZ}"), Unit("g²", "gram ** 2", digits=1))
SQUARE_GRIST = always(Unit("(yd/lb)²", "(yard / pound) ** 2", f"{YD}*{YD}/({LB}*{LB})", 0))
PER_AREA = by_length(
    Unit("per in²", "1 / inch ** 2", f"1/({IN}*{IN})", 1), Unit("per cm²", "1 / centimeter ** 2", "10000", 2)
)
GAUGE = by_length(PER_INCH, Unit("per 10 cm", "1 / decimeter", "10", 1))
SETT = by_length(PER_INCH, Unit("per cm", "1 / centimeter", "100", 2))
TWIST, TWIST_PER_METER = always(PER_INCH), always(Unit("per m", "1 / meter", digits=0))
ANGLE = always(Unit("°", "degree", "0.017453292519943295", 1))
HOURS, MINUTES, SECONDS = always(HOUR), always(MINUTE), always(Unit("s", "second", "1/3600", 0))
PACE = by_length(Unit("yd/h", "yard / hour", YD, 0), Unit("m/h", "meter / hour", digits=0))
MASS_PACE = by_mass(Unit("oz/h", "ounce / hour", OZ), Unit("g/h", "gram / hour", digits=1))
VOLUME = by_length(GALLON, LITER)
# As labels of detergents say.
LIQUID = by_length(TEASPOON, MILLILITER)
DOSE = by_length(TEASPOONS_PER_GALLON, MILLILITERS_PER_LITER)
DYE = always(Unit("g", "gram"))  # powder is weighed precisely, and in grams everywhere
STOCK, DYE_BATH = always(MILLILITER), always(Unit("L", "liter"))
LIQUOR = always(Unit("L/kg", "liter / kilogram", "0.001", 0))
TEMPERATURE = by_length(Unit("°F", "degree_Fahrenheit", "5/9", 0, zero="32"), Unit("°C", "degree_Celsius", digits=0))

TEX = always(Unit("tex", "tex", "0.001", 1))
DTEX = always(Unit("dtex", "decitex", "0.0001", 0))
DENIER = always(Unit("den", "denier", "0.001/9", 0))
JUTE = always(Unit("lb/spyndle", "jute", f"{LB}/(14400*{YD})", 2))


def hanks(symbol: str, name: str, yards: int) -> Kind:
    """A yarn count: the number of hanks of this many yards in one pound."""
    return always(Unit(symbol, name, f"{yards}*{YD}/{LB}"))


METRIC_COUNT = always(Unit("km/kg", "number_meter"))
COTTON_COUNT = hanks("840 yd/lb", "number_english", 840)
WORSTED_COUNT = hanks("560 yd/lb", "worsted_count", 560)
WOOLLEN_RUN = hanks("1,600 yd/lb", "woollen_run", 1600)
WOOLLEN_CUT = hanks("300 yd/lb", "woollen_cut", 300)
LINEN_LEA = hanks("300 yd/lb", "linen_lea", 300)
YORKSHIRE_SKEIN = hanks("256 yd/lb", "yorkshire_skein", 256)
GALASHIELS_CUT = hanks("200 yd/lb", "galashiels_cut", 200)
ALLOA = hanks("240 yd/lb", "alloa_count", 240)
WEST_OF_ENGLAND = hanks("320 yd/lb", "west_of_england_count", 320)
FRENCH_COTTON = always(Unit("km/500 g", "french_cotton_count", "2"))

# Units in which published examples are printed and no cell of the planner is shown.
PRINTED_ONLY = (
    NUMBER_UNIT,  # a plain number, even where the cell of that word shows a percentage
    Unit("gr", "grain", "0.06479891"),
    Unit("dr", "dram", "28.349523125/16"),
    Unit("mg", "milligram", "0.001"),
    Unit("km/kg", "kilometer / kilogram"),
    Unit("m/kg", "meter / kilogram", "0.001"),
    Unit("cm⁻¹", "1 / centimeter", "100"),
)


def require_known(systems: Mapping[str, UnitSystem]) -> None:
    """Refuse a unit system in lengths or masses for which no kind of quantity has a unit."""
    for name, system in systems.items():
        if system.lengths not in ("yards", "meters") or system.masses not in ("ounces", "grams"):
            wanted = "its lengths are yards or meters and its masses ounces or grams"
            raise DescriptionError.at(f"unit system {name}", f"{wanted}, and not {system.in_words}.")


require_known(UNIT_SYSTEMS)


def unit_named(name: str) -> Unit:
    """The unit with this name in the registry, which is how published examples name their units."""
    return _BY_NAME[name]


def is_convertible(name: str) -> bool:
    """Whether formulas have a factor for the unit of this name."""
    return name in _BY_NAME


_SHOWN = [unit for kind in list(globals().values()) if isinstance(kind, Kind) for unit in kind.units]
_BY_NAME = {unit.pint: unit for unit in (*_SHOWN, *PRINTED_ONLY)}
