"""Yarn for a woven cloth: how close the warp stands, and what warp and weft take.

`sett` goes from the thickness of the yarn and the weave to ends in a length. `cloth` goes
from the size of the cloth to ends, warp, weft and their mass.
"""

from workbookgen.reference.weaving.cloth import (
    all_yarn,
    cloth_mass,
    ends,
    warp_length,
    warp_yarn,
    weft_yarn,
    width_in_reed,
    woven_length,
)
from workbookgen.reference.weaving.sett import (
    closest_sett,
    sett_in_use,
    working_sett,
)

__all__ = [
    "all_yarn",
    "closest_sett",
    "cloth_mass",
    "ends",
    "sett_in_use",
    "warp_length",
    "warp_yarn",
    "weft_yarn",
    "width_in_reed",
    "working_sett",
    "woven_length",
]
