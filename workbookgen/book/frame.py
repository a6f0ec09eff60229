"""What every sheet has: links, the color of its tab, widths and print set-up.

No sheet is protected: where one is, some programs do not let groups of columns be opened or
lines be sorted. A cell that is worked out refuses to be typed into instead (`look.worked_out`),
the desk tells of one that was emptied, and the check of one that was changed in any way.
"""

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import FIRST_RECORD, UNITS
from workbookgen.colors import ACCENT, HAIR, INK, SOFT
from workbookgen.language.views import COLUMNS, Kind, Way

PAPER = {"letter": 1, "a4": 9}
MARGINS = {"left": 0.5, "right": 0.5, "top": 0.5, "bottom": 0.6}
LINES_PRINTED, SPARE_LINES = 24, 8  # of a log: at least, and beyond those in use
LINK = look.LINK | {"bottom": 1, "bottom_color": HAIR}
TABS = {Kind.DESK: INK, Kind.PAGE: ACCENT, Kind.LOG: "#C9B98D", Kind.AID: SOFT, Kind.PAPER: HAIR}


def links_of_a_page(canvas: Canvas) -> None:
    """The same places in the same order on every page; the place one is at stands out."""
    canvas.across(1, 1, max(COLUMNS + 1, canvas.plan.last_column), look.LITTLE | {"bottom": 1, "bottom_color": HAIR})
    for column, sheet in enumerate(places(canvas), start=2):
        if sheet == canvas.plan.sheet.name:
            canvas.text(1, column, sheet, look.HERE)
        else:
            canvas.link(1, column, Way(sheet, sheet), LINK)
    canvas.to.freeze_panes(1, 0)
    canvas.to.hide_row_col_headers()


def places(canvas: Canvas) -> list[str]:
    """The sheets that the line of links of a page has room for: aids give way to where one is."""
    sheets = canvas.layout.planner.sheets
    names = [sheet.name for sheet in sheets]
    spare = [sheet.name for sheet in reversed(sheets) if sheet.kind is Kind.AID and sheet.name != canvas.plan.sheet.name]
    for name in spare[: max(0, len(names) - COLUMNS)]:
        names.remove(name)
    return names


def links_of_a_log(canvas: Canvas) -> None:
    """Back to the desk, and on to the neighbors, each over a column that is wide enough."""
    plan, desk = canvas.plan, canvas.layout.planner.sheets[0].name
    canvas.across(1, 1, plan.last_column, look.LITTLE | {"bottom": 1, "bottom_color": HAIR})
    canvas.link(1, 2, Way(desk, f"← {desk}"), LINK)
    seen = [column for column in range(3, plan.last_column + 1) if column not in plan.folded and plan.widths[column] >= 62]
    for column, name in zip(seen, plan.sheet.near, strict=False):
        canvas.link(1, column, Way(name, name), LINK)


def finish(canvas: Canvas) -> None:
    """Widths, tab and print set-up."""
    plan, to = canvas.plan, canvas.to
    starts = {column for column, _ in plan.folds}
    for column, pixels in plan.widths.items():
        options = {"hidden": True} if column > plan.last_column else {}
        if column in plan.folded:
            options = {"level": 1, "hidden": True}
        elif column in starts:
            options = {"collapsed": True}
        to.set_column_pixels(column - 1, column - 1, pixels, None, options)
    canvas.finish()
    to.set_tab_color(canvas.formats.color(TABS[plan.sheet.kind]))
    to.hide_gridlines(2)
    to.set_paper(PAPER[canvas.layout.planner.paper])
    to.set_margins(**MARGINS)
    to.center_horizontally()
    if not plan.sheet.grid.is_upright:
        to.set_landscape()
    to.set_footer(f"&L{_plain_in_a_margin(canvas.layout.planner.title)}&C&A&R&P / &N")
    if plan.sheet.log_view:
        _print_a_log(canvas)
    else:
        to.fit_to_pages(1, 0 if plan.last_row > 80 else 1)
        to.print_area(1, 0, plan.last_row - 1, len(plan.sheet.grid.widths))


def _print_a_log(canvas: Canvas) -> None:
    """The head on every page; the lines in use and some more."""
    [log] = canvas.plan.sheet.logs
    used = max((row for each in log.inputs for row, entry in enumerate(canvas.entries[f"{log.key}_{each.key}"], start=1) if entry is not None), default=0)
    lines = min(log.rows, max(used + SPARE_LINES, LINES_PRINTED))
    canvas.to.fit_to_pages(1, 0)
    canvas.to.print_area(1, 0, FIRST_RECORD + lines - 2, canvas.plan.last_column - 1)
    if lines > LINES_PRINTED + SPARE_LINES:
        canvas.to.repeat_rows(1, UNITS)


def _plain_in_a_margin(title: str) -> str:
    """A title as a footer shows it: its & is no code, and a first digit no part of the font size."""
    return (" " if title[0].isdigit() else "") + title.replace("&", "&&")

