"""The sections of a page, one module per kind. Each says three things of its kind.

- `rows(section, planner)`: how many rows it takes, its heading included.
- `spots(section, planner, row, column)`: where its fields stand, full key and Spot.
- `draw(section, canvas, row)`: writes it, from its heading's row on.
"""

from types import ModuleType

from workbookgen.book.sections import (
    alerts,
    answers,
    chart,
    entrance,
    entries,
    examples,
    facts,
    form,
    links,
    listing,
    matrix,
    picture,
    prose,
    sentences,
    side_by_side,
    tickets,
)
from workbookgen.language import views
from workbookgen.language.side_by_side import SideBySide
from workbookgen.language.tickets import Tickets

KINDS: dict[type, ModuleType] = {
    SideBySide: side_by_side,
    views.Answers: answers,
    views.Chart: chart,
    views.Entrance: entrance,
    views.Entries: entries,
    views.Examples: examples,
    views.Facts: facts,
    views.Form: form,
    views.Listing: listing,
    views.Alerts: alerts,
    views.Matrix: matrix,
    views.Picture: picture,
    views.Prose: prose,
    views.Sentences: sentences,
    Tickets: tickets,
    views.Links: links,
}


def of(section: views.Section) -> ModuleType:
    """The module that knows this kind of section."""
    return KINDS[type(section)]
