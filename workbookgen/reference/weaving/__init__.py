"""Yarn for a woven cloth: how close the warp stands, and what warp and weft take.

`sett` goes from the thickness of the yarn and the weave to ends in a length. `cloth` goes from the
size of the cloth to ends and lengths on the loom, `yarn` from these to warp, weft and their mass.
"""

from workbookgen.reference.weaving.cloth import ends, warp_length, width_in_reed, woven_length
from workbookgen.reference.weaving.sett import (
    closest_sett,
    ends_in_a_dent,
    picks_in_use,
    sett_in_use,
    sett_of_reed,
    sett_on_the_loom,
    working_sett,
)
from workbookgen.reference.weaving.yarn import warp_yarn, weft_apart, weft_yarn, weight_of_cloth, yarn_of_the_warp
