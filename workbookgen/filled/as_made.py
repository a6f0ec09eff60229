"""A planner as it was made: laid out, and what it says by itself.

Both are pure functions of settings. Carrying asks for them more than once, and many planners of
a guild have the same settings.
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
    """The planner of these settings with everything in its place."""
    return place(described(settings))


@lru_cache(maxsize=4)
def said(settings: Settings) -> dict[str, dict[Position, float | str]]:
    """Sheet -> every text and number that the generator writes beside the fields."""
    return write.said(laid_out(settings))
