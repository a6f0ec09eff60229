"""One unit registry for the whole project, and the kinds of quantity the trade uses.

Textile units are pint's own where it has them (tex, denier, jute, number_english, number_meter). The count systems that
it lacks are defined here by the length of their hank: an indirect count is a length per mass, so each is a unit of
grist. Hanks: ASTM D2260 (worsted, run, lea) and W. Davis, Hosiery Manufacture (the British woolen systems), both read.

The factors in the workbook's formulas are written a second time, in `workbookgen.language.quantities`, and tests
compare the two.
"""

from dataclasses import dataclass
from functools import cache
from typing import Annotated

import pint

COUNT_UNITS = {
    "worsted_count": "560 * yard / pound",
    "woollen_run": "1600 * yard / pound",
    "woollen_cut": "300 * yard / pound",
    "linen_lea": "300 * yard / pound",
    "yorkshire_skein": "256 * yard / pound",
    "galashiels_cut": "200 * yard / pound",
    "alloa_count": "240 * yard / pound",
    "west_of_england_count": "320 * yard / pound",
    "french_cotton_count": "1000 * meter / (500 * gram)",
}

ureg = pint.UnitRegistry()
for _name, _definition in COUNT_UNITS.items():
    ureg.define(f"{_name} = {_definition}")

Quantity = ureg.Quantity


@cache
def registered(name: str) -> pint.Unit:
    """The unit of this name, cached: a set of inputs makes thousands of quantities, and parsing names is slow."""
    return ureg.Unit(name)


# What reference functions take and return: a quantity of this dimension, scalar or array.
Ratio = Annotated[float | Quantity, "[]"]
Length = Annotated[Quantity, "[length]"]
Area = Annotated[Quantity, "[length]**2"]
Mass = Annotated[Quantity, "[mass]"]
MassSquared = Annotated[Quantity, "[mass]**2"]
Grist = Annotated[Quantity, "[length]/[mass]"]
LinearDensity = Annotated[Quantity, "[mass]/[length]"]
Density = Annotated[Quantity, "[mass]/[length]**3"]
PerLength = Annotated[Quantity, "1/[length]"]
PerMass = Annotated[Quantity, "1/[mass]"]
PerArea = Annotated[Quantity, "1/[length]**2"]
Angle = Annotated[float | Quantity, "[]"]
Volume = Annotated[Quantity, "[length]**3"]
Time = Annotated[Quantity, "[time]"]
Temperature = Annotated[Quantity, "[temperature]"]
VolumePerMass = Annotated[Quantity, "[length]**3/[mass]"]
Pace = Annotated[Quantity, "[length]/[time]"]


@dataclass(frozen=True)
class Alike:
    """A dimension that a function leaves open. All its open arguments and its result have the same one.

    More precisely: that dimension to the power `power`, divided by the dimension `over`.
    """

    power: int = 1
    over: str = "[]"


# Of any dimension, or a text: what is looked up, added up or averaged.
Some = Annotated[object, Alike()]
SomeSquared = Annotated[object, Alike(power=2)]
SomePerTime = Annotated[object, Alike(over="[time]")]
SomePerMass = Annotated[object, Alike(over="[mass]")]
