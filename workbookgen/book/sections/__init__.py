"""The sections of a page, one module per kind. Each module has three functions:

- `rows(section, planner)`: the number of rows that the section takes, with its heading;
- `spots(section, planner, row, column)`: pairs of the full key and the Spot of each of its fields;
- `draw(section, canvas, row)`: writes the section, with its heading in this row.

Where a section is made of paper pages, `papers(section, planner, row)` gives their first rows.
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
    links,
    listing,
    matrix,
    paper_form,
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
    views.PaperForm: paper_form,
    views.Listing: listing,
    views.Alerts: alerts,
    views.Matrix: matrix,
    views.Picture: picture,
    views.Prose: prose,
    views.Sentences: sentences,
    Tickets: tickets,
    views.Links: links,
}


def module_for(section: views.Section) -> ModuleType:
    """The module for this kind of section."""
    return KINDS[type(section)]
