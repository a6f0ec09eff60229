"""A planner as it was made: its layout, and the texts and numbers beside its fields.

Both are pure functions of the settings, and cached: carrying needs them more than once, and many planners of a guild
have the same settings.
"""

from functools import lru_cache

from workbookgen.book import write
from workbookgen.book.layout import place
from workbookgen.book.placement import Layout
from workbookgen.filled.cells import Position
from workbookgen.filled.planner import described
from workbookgen.settings import Settings


@lru_cache(maxsize=4)
def laid_out(settings: Settings) -> Layout:
    """The layout of the planner that these settings describe."""
    return place(described(settings))


@lru_cache(maxsize=4)
def beside_fields(settings: Settings) -> dict[str, dict[Position, float | str]]:
    """Sheet -> every text and number that the generator writes beside the fields."""
    return write.beside_fields(laid_out(settings))
