"""How a sheet is printed: paper, margins, what of it, and on how many pages.

A page is one page, landscape. A log is as wide as one page, without what is folded away, and
as long as its lines in use and some more. Papers such as labels are printed upright and in their
true size, each page from where it begins: a program that fits a sheet to its pages leaves the
breaks aside.
"""

from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import FIRST_RECORD, UNITS

PAPER = {"letter": 1, "a4": 9}
MARGINS = {"left": 0.5, "right": 0.5, "top": 0.5, "bottom": 0.6}  # inches
OF_PAPERS = {"left": 0.4, "right": 0.4, "top": 0.4, "bottom": 0.4}
LINES_PRINTED, SPARE_LINES = 24, 8  # of a log: at least, and beyond those in use


def set_up(canvas: Canvas) -> None:
    plan, to = canvas.plan, canvas.to
    to.set_paper(PAPER[canvas.layout.planner.paper])
    to.center_horizontally()
    if plan.papers:
        _papers(canvas)
        return
    to.set_margins(**MARGINS)
    to.set_landscape()
    to.set_footer(f"&L{_plain_in_a_margin(canvas.layout.planner.title)}&C&A&R&P / &N")
    if plan.sheet.log_view:
        _log(canvas)
    else:
        to.fit_to_pages(1, 0 if plan.last_row > 80 else 1)
        named = max((spot.column + spot.across - 2 for key, spot in plan.spots.items() if key in plan.sheet.shown), default=0)
        to.print_area(1, 0, plan.last_row - 1, max(len(plan.sheet.grid.widths), named))


def _papers(canvas: Canvas) -> None:
    plan, to = canvas.plan, canvas.to
    to.set_margins(**OF_PAPERS)
    to.set_portrait()
    to.set_print_scale(100)
    to.print_area(plan.papers[0] - 1, 1, plan.last_row - 1, plan.sheet.grid.papers)
    to.set_h_pagebreaks([row - 1 for row in plan.papers[1:]])


def _log(canvas: Canvas) -> None:
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
