"""Charts, drawn by the spreadsheet program from the cells of the sheets.

They have no title and no frame: a chart is under its section's heading, in a table or beside one. Columns differ in
lightness and markers in shape, so that a chart can be read in grayscale. Each has a description for those who cannot
see it.
"""

import xlsxwriter
from xlsxwriter.chart import Chart as XlsxChart
from xlsxwriter.utility import quote_sheetname, xl_col_to_name

from workbookgen.book.look import SMALL, TYPEFACE, recolored, signed
from workbookgen.book.placement import Layout
from workbookgen.book.plan import first_value
from workbookgen.colors import ACCENT, HAIR, QUIET, SOFT, STRAW
from workbookgen.language.views import Chart, Matrix, Series

TEXT = {"name": TYPEFACE, "size": SMALL, "color": QUIET}
OFF_FORMAT = signed("0%", 0)
OFF_MOST = 0.3  # the largest deviation from the mean, as a share, that a control chart shows
FILLS = {"accent": ACCENT, "soft": SOFT, "straw": STRAW, "hair": HAIR}


def draw(book: xlsxwriter.Workbook, layout: Layout, chart: Chart, width: int, height: int) -> XlsxChart:
    """An XlsxWriter chart, to insert into a worksheet."""
    drawn = KINDS[chart.kind](book, layout, chart)
    drawn.set_title({"none": True})
    drawn.set_chartarea({"border": {"none": True}, "fill": {"none": True}})
    drawn.set_size({"width": width, "height": height})
    drawn.show_hidden_data()
    return drawn


def _bars(book: xlsxwriter.Workbook, layout: Layout, chart: Chart) -> XlsxChart:
    """Horizontal bars on the rows of a table: the plot is as high as the rows, and has no labels."""
    drawn = book.add_chart({"type": "bar"})
    for series in chart.series:
        drawn.add_series(_series(layout, chart, series) | {"gap": 60, "overlap": 0})
    drawn.set_plotarea({"layout": {"x": 0.01, "y": 0.0, "width": 0.97, "height": 1.0}, "fill": {"none": True}})
    drawn.set_y_axis(_axis(reverse=True, label_position="none"))
    drawn.set_x_axis(_axis(visible=False, min=0))
    drawn.set_legend({"none": True})
    return drawn


def _stages(book: xlsxwriter.Workbook, layout: Layout, chart: Chart) -> XlsxChart:
    """Stacked columns, one per stage."""
    drawn = book.add_chart({"type": "column", "subtype": "stacked"})
    for series in chart.series:
        drawn.add_series(_series(layout, chart, series) | {"gap": 35})
    drawn.set_x_axis(_axis())
    drawn.set_y_axis(_axis(grid=True, min=0))
    drawn.set_legend({"position": "bottom", "font": TEXT})
    return drawn


def _control(book: xlsxwriter.Workbook, layout: Layout, chart: Chart) -> XlsxChart:
    """A control chart: joined points by their deviation from the mean, with dashed limits; the chosen point is larger.

    The scale is fixed, and a point that is not to be shown lies outside it.
    """
    drawn = book.add_chart({"type": "scatter", "subtype": "straight_with_markers"})
    for series in chart.series:
        drawn.add_series(_ranges(layout, chart, series) | recolored(LINES[series.look], layout.planner.colors))
    no_line, line = {"none": True}, {"color": QUIET, "width": 1}
    drawn.set_y_axis(_axis(grid=True, min=-OFF_MOST, max=OFF_MOST, major_unit=0.1, num_format=OFF_FORMAT, line=no_line))
    drawn.set_x_axis(_axis(min=0, major_unit=1, label_position="low", num_format="0;;", line=line))
    drawn.set_legend({"none": True})
    return drawn


def _shares(book: xlsxwriter.Workbook, layout: Layout, chart: Chart) -> XlsxChart:
    """Bars on the rows of a table, as shares of what is needed: with a line at 100%, cut off at 200%."""
    drawn = _bars(book, layout, chart)
    drawn.set_x_axis(_axis(grid=True, min=0, max=2, major_unit=1, label_position="none"))
    return drawn


KINDS = {"bars": _bars, "shares": _shares, "stages": _stages, "control": _control}
_POINT = {"type": "circle", "size": 6, "fill": {"color": ACCENT}, "border": {"color": ACCENT}}
_LABELS = {"value": True, "position": "above", "num_format": OFF_FORMAT, "font": TEXT | {"color": ACCENT, "bold": True}}
LINES = {
    "points": {"line": {"color": ACCENT, "width": 1}, "marker": _POINT},
    "chosen": {"line": {"none": True}, "marker": _POINT | {"size": 11}, "data_labels": _LABELS},
    "limit": {"marker": {"type": "none"}, "line": {"color": QUIET, "width": 0.75, "dash_type": "dash"}},
}


def _axis(*, grid: bool = False, **more) -> dict:
    return {
        "num_font": TEXT,
        "line": {"color": STRAW},
        "major_tick_mark": "none",
        "minor_tick_mark": "none",
        "major_gridlines": {"visible": grid, "line": {"color": HAIR, "width": 0.75}},
    } | more


def _series(layout: Layout, chart: Chart, series: Series) -> dict:
    """A series of columns or bars, with error bars."""
    fill = FILLS.get(series.look, ACCENT)
    color = recolored({"color": fill}, layout.planner.colors)
    edge = color if fill == ACCENT else {"color": QUIET, "width": 0.75}  # makes a pale column visible
    drawn = _ranges(layout, chart, series) | {"fill": color, "border": edge}
    if series.whisker:
        cells, line = f"={range_of(layout, series.whisker, chart.records)}", {"color": QUIET, "width": 1.25}
        drawn["y_error_bars"] = {"type": "custom", "plus_values": cells, "minus_values": cells, "line": line}
    return drawn


def _ranges(layout: Layout, chart: Chart, series: Series) -> dict:
    return {
        "name": series.label,
        "categories": f"={range_of(layout, series.at, chart.records)}" if series.at else _names(layout, chart),
        "values": f"={range_of(layout, series.keys, chart.records)}",
    }


def _names(layout: Layout, chart: Chart) -> str:
    """The cells with the names below the columns: of a log, or the heads of a matrix."""
    if chart.categories:
        return f"={range_of(layout, chart.categories, chart.records)}"
    plan = next(plan for plan in layout.plans.values() if chart in plan.sheet.sections)
    matrices = (placed for placed in plan.placed if isinstance(placed.section, Matrix))
    matrix = next(placed for placed in matrices if placed.section.heads == chart.heads)
    first = first_value(matrix.section) - 1
    left, right = xl_col_to_name(first), xl_col_to_name(first + len(chart.heads) - 1)
    return f"={quote_sheetname(plan.sheet.name)}!${left}${matrix.row}:${right}${matrix.row}"


def range_of(layout: Layout, keys: tuple[str, ...], records: int | None) -> str:
    """The range of a column, or of its first records; or the range from a first field to a last one."""
    first, last = layout.placements[keys[0]], layout.placements[keys[-1]]
    end = last.row + (min(records or last.rows, last.rows) - 1)
    return f"{quote_sheetname(first.sheet)}!${first.letter}${first.row}:${last.letter}${end}"
