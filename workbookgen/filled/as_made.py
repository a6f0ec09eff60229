"""A planner as it was made: laid out, and written without anything typed into it.

Both are pure functions of settings. Carrying asks for them more than once, and many planners of
a guild have the same settings.
"""

from functools import lru_cache

from workbookgen.book.layout import place
from workbookgen.book.placement import Layout
from workbookgen.book.write import write
from workbookgen.filled import xlsx
from workbookgen.filled.cells import Cell, Position
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries
from workbookgen.ooxml.package import Package
from workbookgen.settings import Settings


@lru_cache(maxsize=4)
def laid_out(settings: Settings) -> Layout:
    """The planner of these settings with everything in its place."""
    return place(described(settings))


@lru_cache(maxsize=4)
def cells_written(settings: Settings) -> dict[str, dict[Position, Cell]]:
    """Sheet -> every cell that the generator writes."""
    layout = laid_out(settings)
    content = write(layout, starting_entries(layout.planner), {})
    with Package(content) as package:
        return xlsx.read(package, lambda sheets, names: dict.fromkeys(sheets)).sheets
