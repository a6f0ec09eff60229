"""Washing fleece by hand.

`baths` works out loads, water, detergent and time, and what is left when the dirt is gone;
`heat` mixes hot and cold water to a temperature and says what that temperature does.
"""

from workbookgen.reference.scouring.baths import (
    bath_time,
    baths_in_all,
    clean_mass,
    detergent,
    detergent_by_liquor,
    full_load,
    liquor,
    loads,
    removed,
    water_in_all,
)
from workbookgen.reference.scouring.heat import (
    cold_water,
    hot_water,
    temperature_words,
)

__all__ = [
    "bath_time",
    "baths_in_all",
    "clean_mass",
    "cold_water",
    "detergent",
    "detergent_by_liquor",
    "full_load",
    "hot_water",
    "liquor",
    "loads",
    "removed",
    "temperature_words",
    "water_in_all",
]
