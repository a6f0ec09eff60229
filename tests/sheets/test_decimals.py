"""What is weighed or measured out in small parts is told as finely as it is worked with.

By hand: of a blend, 5% of one ounce are 0.05 oz; of 100 g dyed to 0.5%, a color of a tenth takes 0.05 g, 5 mL of a
stock of 1%, and one of 3% of the shade 1.5 mL; a thread of 60 denier weighs 0.67 g in 100 m, 0.02 oz.
"""

import pytest

from entries import entries_with
from planners import rows_of
from workbookgen.book.look import number_format
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

PLANNERS = {units: described(Settings(units=units, fibers="", rows=rows_of(4))) for units in ("us", "metric")}


def shown(units, key, records, **cards):
    """A result as its cell shows it: to the digits of its number format."""
    planner = PLANNERS[units]
    entries = entries_with(planner, records) | {card: (value,) for card, value in cards.items()}
    [values] = expected_of_keys(planner, [entries], [key])
    field = planner.by_key[key][1]
    decimals = number_format(field, field.unit.unit(units)).partition(".")[2]
    return f"{values[key][0]:.{len(decimals) - len(decimals.lstrip('0'))}f}"


BLEND = {"blend": [{"name": "sparkle", "mass": 5.0}, {"name": "wool", "mass": 95.0}]}
THREAD = {"designs": [{"name": "Sock", "wanted": 95.0}], "components": [{"design": "Sock", "number": 60.0, "system": "denier"}]}
COLORS = {"recipe": [{"name": "navy", "of_shade": 0.03}]}


@pytest.mark.parametrize(("units", "key", "records", "cards", "told"), [
    ("us", "blend_lay_out", BLEND, {"mix_wanted": 1.0}, "0.05"), ("metric", "blend_lay_out", BLEND, {"mix_wanted": 30.0}, "1.5"),
    ("us", "recipe_volume", COLORS, {"dyeing_mass": 100 / 28.349523125, "dyeing_depth": 0.005}, "1.5"),
    ("metric", "recipe_volume", COLORS, {"dyeing_mass": 100.0, "dyeing_depth": 0.005}, "1.5"),
    ("us", "components_mass", THREAD, {}, "0.02"), ("metric", "components_mass", THREAD, {}, "0.7"),
    ("us", "scouring_dose", {}, {"scouring_mass": 2.0, "scouring_load": 16.0}, "0.04"),
    ("us", "color_strip", {}, {"color_mass": 4.0, "color_repeats": 2.0, "color_strips": 6.0}, "0.67"),
])
def test_small_parts_are_told_finely(units, key, records, cards, told):
    assert shown(units, key, records, **cards) == told
