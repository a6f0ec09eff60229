"""What makes LibreOffice work out every cell of a planner that was just opened.

It opens a file with the results stored in it. A cell that shares its formula with others and has a blank result counts
as waiting to be worked out, though, and until LibreOffice has done that, which it does when it shows the cell, nothing
typed passes through it: the first entries after opening would leave cells behind it, on this sheet and on others, with
the results of before, and the desk would not count what is wrong. So a defined name counts the cells of all sheets, and
a conditional format that never holds asks for that name in the first row of a sheet, which is always in sight: to paint
it, LibreOffice works out all cells. The name belongs to the sheet, since those of the workbook all stand for fields.
Other programs may ask anew in each cell that has the format, so only the ends of the row have it, of which a sheet that
is scrolled aside shows one. `tests/use/test_first_entry.py` opens planners as people do.

LibreOffice itself saves every formula written out, and then nothing waits. Other programs keep shared formulas, and
whatever sheet was open last; so every sheet asks, and not only the desk, with which a new planner opens.
"""

from xlsxwriter.utility import quote_sheetname, xl_range_abs, xl_rowcol_to_cell

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.placement import Layout
from workbookgen.language.parts import Sheet

NAME = "all_worked_out"
# A sheet that asks works out all cells after each entry: in 0.1 s with 40,000 of them, in 0.7 s with 260,000 (measured
# with all lines filled in). In a larger planner than this only the desk asks.
MOST_CELLS = 100_000


def names(layout: Layout) -> dict[str, str]:
    """The names of the sheets that ask, and their formula: false, once every cell with a formula was worked out."""
    layout = layout.whole or layout
    formula = f"=COUNT({','.join(_areas(layout))})<0"
    return {f"{quote_sheetname(sheet.name)}!{NAME}": formula for sheet in _asking(layout)}


def keep(canvas: Canvas) -> None:
    """Let a sheet ask for all cells as soon as it is in sight."""
    if canvas.plan.sheet in _asking(canvas.layout.whole or canvas.layout):
        ends = f"A1 {xl_rowcol_to_cell(0, canvas.plan.last_column - 1)}"
        # With a look, though none is ever shown: Gnumeric does not save a format that has none.
        canvas.format_where(f"={NAME}", (0, 0, 0, 0), look.TINTED, multi_range=ends)


def _asking(layout: Layout) -> tuple[Sheet, ...]:
    sheets = layout.planner.sheets
    return sheets if layout.formula_cells <= MOST_CELLS else sheets[:1]


def _areas(layout: Layout) -> list[str]:
    """For each sheet with formulas, the area from the first to the last of them."""
    areas = []
    for sheet in layout.planner.sheets:
        if cells := [each for each in layout.formulas if each.sheet == sheet.name]:
            top, bottom = min(each.row for each in cells), max(each.row + each.rows for each in cells) - 1
            left, right = min(each.column for each in cells), max(each.column for each in cells)
            area = xl_range_abs(top - 1, left - 1, bottom - 1, right - 1)
            areas.append(f"{quote_sheetname(sheet.name)}!{area}")
    return areas
