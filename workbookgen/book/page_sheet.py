"""A page: the line of links, its title with the chosen name beside it, and its sections."""

from workbookgen.book import look, sections
from workbookgen.book.canvas import AIR, Canvas
from workbookgen.book.frame import links_of_a_page
from workbookgen.book.page_plan import CHOSEN
from workbookgen.book.plan import SCREEN, PlacedSection
from workbookgen.book.wrapping import pixels_taken
from workbookgen.language.fields import Input
from workbookgen.language.quantities import NUMBER_UNIT
from workbookgen.language.views import SheetKind

TITLE, ON_THIS_PAGE = 3, 4  # rows
FIRST = 2  # column


def draw(canvas: Canvas) -> None:
    """Write the whole page: its links, its title, and its sections."""
    sheet = canvas.plan.sheet
    links_of_a_page(canvas)
    canvas.text(TITLE, FIRST, sheet.title, look.TITLE_QUIET if sheet.grid.chosen else look.TITLE)
    if sheet.kind is SheetKind.DESK:  # its title may be long
        canvas.text(TITLE, len(sheet.grid.widths) + 1, sheet.about, look.ABOUT)
    elif not sheet.grid.chosen:  # at the left, since the right end of a page is off a narrow screen
        canvas.text(TITLE, canvas.behind(FIRST, sheet.title, look.LARGE), sheet.about, look.LITTLE)
    else:
        _, first, across = CHOSEN
        canvas.text(TITLE, first + across, sheet.about, look.LITTLE | {"indent": 1})
        looks = look.entry(canvas.placed(sheet.grid.chosen).field, NUMBER_UNIT)
        canvas.cells(sheet.grid.chosen, looks | {"font_size": look.LARGE, "bold": True})
    _links_on_this_page(canvas)
    for placed in canvas.plan.placed:
        sections.module_for(placed.section).draw(placed.section, canvas, placed.row)
    _hidden(canvas)


def _links_on_this_page(canvas: Canvas) -> None:
    """Write links to the chapters of a long page, and to other titles as far as there is room."""
    shown: list[PlacedSection] = []
    for place in (*canvas.plan.starts, *canvas.plan.further):
        tried = sorted([*shown, place], key=lambda each: each.row)
        shown = tried if len(_columns_of_links(canvas, tried)) == len(tried) else shown
    for column, place in zip(_columns_of_links(canvas, shown), shown, strict=True):
        canvas.link_here(ON_THIS_PAGE, column, place.row, place.section.title, look.LINK | {"valign": "vcenter"})


def _columns_of_links(canvas: Canvas, places: list[PlacedSection]) -> list[int]:
    """The first column of each link, one after another, as far as there is room."""
    columns, column, last = [], FIRST, canvas.plan.last_printed
    for place in places:
        width, end = pixels_taken(place.section.title, look.SMALL) + AIR, column
        while end < last and canvas.width(column, end) < width:
            end += 1
        if end > last or canvas.width(column, end) < width or canvas.width(FIRST, end) > SCREEN:
            break
        columns.append(column)
        column = end + 1
    return columns


def _hidden(canvas: Canvas) -> None:
    """Write what no section shows, in hidden columns."""
    for key, spot in canvas.plan.spots.items():
        if spot.column <= canvas.plan.last_column:
            continue
        placement = canvas.placed(key)
        if isinstance(placement.field, Input):
            canvas.cells(key, look.entry(placement.field, placement.unit))
        elif placement.formulas:
            canvas.cells(key, look.result(placement.field, placement.unit))
        else:
            for row, value in enumerate(placement.field.values, start=spot.row):
                canvas.number(row, spot.column, value, look.PLAIN)
