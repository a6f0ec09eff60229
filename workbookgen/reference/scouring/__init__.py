"""Washing fleece by hand.

`baths` works out loads, water and time, and what is left when the dirt is gone; `detergents` gives
the dose; `heat` mixes hot and cold water to a temperature and says what that temperature does;
`totals` adds up what a whole fleece takes.
"""

from workbookgen.reference.scouring.baths import (
    bath_time,
    baths_in_all,
    clean_mass,
    full_load,
    liquor,
    loads,
    removed,
    water_in_all,
)
from workbookgen.reference.scouring.detergents import detergent, detergent_by_liquor, liquid_detergent
from workbookgen.reference.scouring.heat import (
    added_words,
    cold_water,
    hot_water,
    mixed_temperature,
    part_of_mix,
    temperature_words,
    to_add,
)
from workbookgen.reference.scouring.totals import detergent_of_fleece, liquid_of_fleece, time_of_fleece, water_of_fleece
