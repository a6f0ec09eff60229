"""The sections of a page, one module per kind. Each says three things of its kind.

- `rows(section, planner)`: how many rows it takes, its heading included.
- `spots(section, planner, row, column)`: where its fields stand, full key and Spot.
- `draw(section, canvas, row)`: writes it, from its heading's row on.
"""

from types import ModuleType

from workbookgen.book.sections import (
    abreast,
    answers,
    chart,
    door,
    entries,
    examples,
    facts,
    form,
    listing,
    looks,
    matrix,
    picture,
    reading,
    sentences,
    tickets,
    ways,
)
from workbookgen.language import views
from workbookgen.language.abreast import Abreast
from workbookgen.language.tickets import Tickets

KINDS: dict[type, ModuleType] = {
    Abreast: abreast,
    views.Answers: answers,
    views.Chart: chart,
    views.Door: door,
    views.Entries: entries,
    views.Examples: examples,
    views.Facts: facts,
    views.Form: form,
    views.Listing: listing,
    views.Looks: looks,
    views.Matrix: matrix,
    views.Picture: picture,
    views.Reading: reading,
    views.Sentences: sentences,
    Tickets: tickets,
    views.Ways: ways,
}


def of(section: views.Section) -> ModuleType:
    """The module that knows this kind of section."""
    return KINDS[type(section)]
