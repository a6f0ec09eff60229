"""Charts, drawn by the spreadsheet program itself from the cells of the sheets.

Columns differ in lightness and marks in shape, so that a chart can be read in grayscale;
columns that marks are laid over are pale. Each has a title, named axes, and a description for those who do not see it.
"""

import xlsxwriter
from xlsxwriter.utility import quote_sheetname, xl_col_to_name

from workbookgen.book.layout import CARD_LABEL, Layout
from workbookgen.book.look import TYPEFACE, recolored
from workbookgen.colors import ACCENT, INK, QUIET, WARNING
from workbookgen.language.parts import Chart, Series
from workbookgen.language.sentences import symbol_of

WIDTH, HEIGHT = 820, 330  # pixels; no wider than a card, or a page would cut it
FONT = {"name": TYPEFACE, "size": 9, "color": INK}
PALE = "#B9C9CC"
COLUMN_FILLS, UNDER_MARKS = (ACCENT, PALE), (PALE,)
EDGE_LINE = {"color": ACCENT, "width": 0.75}
MARK_COLORS = {"square": INK, "triangle": QUIET, "diamond": WARNING}


def draw(book: xlsxwriter.Workbook, layout: Layout, chart: Chart):
    """The chart as XlsxWriter has it, to be put on a worksheet."""
    columns = book.add_chart({"type": "column"})
    marks = book.add_chart({"type": "line"})
    labels = range_of(layout, chart.categories, chart.rows, labels=True)
    marked = [each for each in chart.series if each.marks]
    fills = UNDER_MARKS if marked else COLUMN_FILLS
    for fill, series in zip(fills, (each for each in chart.series if not each.marks), strict=False):
        looks = {part: recolored(each, layout.planner.colors) for part, each in {"fill": {"color": fill}, "border": EDGE_LINE}.items()}
        columns.add_series(_drawn(layout, chart, series, labels) | looks | {"gap": 60})
    for series in marked:
        color = MARK_COLORS[series.marks]
        mark = {"type": series.marks, "size": 8, "fill": {"color": color}, "border": {"color": color}}
        marks.add_series(_drawn(layout, chart, series, labels) | {"line": {"none": True}, "marker": mark})
    if marked:
        columns.combine(marks)
    first = layout.placements[chart.series[0].keys[0]]
    columns.set_title({"name": chart.title, "name_font": FONT | {"size": 11}})
    columns.set_x_axis({"num_font": FONT})
    columns.set_y_axis({
        "name": symbol_of(first.field, layout.planner.system), "name_font": FONT, "num_font": FONT, "min": 0,
        "major_gridlines": {"visible": True, "line": {"color": "#D5DADD"}},
    })
    columns.set_legend({"position": "bottom", "font": FONT, "none": len(chart.series) == 1})
    columns.set_size({"width": WIDTH, "height": HEIGHT})
    return columns


def _drawn(layout: Layout, chart: Chart, series: Series, labels: str) -> dict:
    return {"name": series.label, "categories": f"={labels}", "values": f"={range_of(layout, series.keys, chart.rows)}"}


def range_of(layout: Layout, keys: tuple[str, ...], rows: int | None, labels: bool = False) -> str:
    """The cells of a column (its first records), or of a card from one field to another, or their labels."""
    first, last = layout.placements[keys[0]], layout.placements[keys[-1]]
    is_card = len(keys) > 1
    column = xl_col_to_name((CARD_LABEL if is_card and labels else first.column) - 1)
    end = last.row if is_card else first.row + min(rows or first.rows, first.rows) - 1
    return f"{quote_sheetname(first.sheet)}!${column}${first.row}:${column}${end}"
