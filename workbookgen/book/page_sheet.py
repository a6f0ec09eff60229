"""A page: the line of links, its title with the chosen name beside it, and its sections."""

from workbookgen.book import look, sections
from workbookgen.book.canvas import Canvas
from workbookgen.book.frame import links_of_a_page
from workbookgen.language.fields import Input
from workbookgen.language.quantities import NUMBER_UNIT

TITLE = 3  # row
FIRST = 2  # column
SCREEN = 1300  # pixels of a sheet that a small laptop shows


def draw(canvas: Canvas) -> None:
    sheet = canvas.plan.sheet
    links_of_a_page(canvas)
    canvas.text(TITLE, FIRST, sheet.title, look.TITLE_QUIET if sheet.grid.chosen else look.TITLE)
    last = len(sheet.grid.widths) + 1
    if sum(sheet.grid.widths) <= SCREEN:
        canvas.text(TITLE, last, sheet.about, look.ABOUT)
    else:  # its right end is off the screen
        canvas.text(TITLE, FIRST + 1, sheet.about, look.LITTLE)
    if sheet.grid.chosen:
        placement = canvas.placed(sheet.grid.chosen)
        canvas.cells(sheet.grid.chosen, look.entry(placement.field, NUMBER_UNIT) | {"font_size": look.LARGE, "bold": True})
    for placed in canvas.plan.placed:
        sections.of(placed.section).draw(placed.section, canvas, placed.row)
    _hidden(canvas)


def _hidden(canvas: Canvas) -> None:
    """What no section shows, with its label above or before it, for those who look."""
    for key, spot in canvas.plan.spots.items():
        placement = canvas.placed(key)
        if spot.column > canvas.plan.last_column:
            if isinstance(placement.field, Input):
                canvas.cells(key, look.entry(placement.field, placement.unit))
            elif placement.formulas:
                canvas.cells(key, look.result(placement.field, placement.unit))
            else:
                for place, value in enumerate(placement.field.values):
                    canvas.number(spot.row + place, spot.column, value, look.PLAIN)

