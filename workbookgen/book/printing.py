"""Printing: paper, margins, print area, and page breaks.

A page of the planner is printed on one landscape page if it stays legible; otherwise it is broken between its bands. A
log is fitted to the width of one page, without its folded columns, and is as long as its lines in use and some more.
Sheets made of paper pages, such as labels, are printed in portrait at true size. A sheet with page breaks has a scale
instead of a fit, since programs that fit a sheet ignore its breaks.
"""

from math import ceil

from workbookgen.book.canvas import Canvas
from workbookgen.book.log_plan import FIRST_RECORD, UNITS
from workbookgen.book.plan import link_lines

PAPER = {"letter": 1, "a4": 9}
SIZE = {"letter": (8.5, 11.0), "a4": (210 / 25.4, 297 / 25.4)}  # inches, in portrait
MARGINS = {"left": 0.5, "right": 0.5, "top": 0.5, "bottom": 0.6}
OF_PAPERS = {"left": 0.4, "right": 0.4, "top": 0.4, "bottom": 0.4}
PIXELS_AN_INCH = 96
WIDER = 1.06  # programs print columns up to this much wider than they are on the screen
READABLE = 0.55  # the smallest legible scale: 11 points become 6
SMALLER = (0.97, 0.94, 0.91, 0.88)  # scales to try, as shares of the one that fills the page's width
AT_LEAST = 1 / 3  # the share of a page that must be free for a band longer than a page to begin there
LINES_PRINTED, SPARE_LINES = 24, 8  # lines of a log that are printed: at least, and beyond those in use


def set_up(canvas: Canvas) -> None:
    """Set up how a sheet is printed, once everything is written on it."""
    plan, to = canvas.plan, canvas.worksheet
    to.set_paper(PAPER[canvas.layout.planner.paper])
    to.center_horizontally()
    if plan.papers:
        _papers(canvas)
        return
    to.set_margins(**MARGINS)
    to.set_footer(f"&L{_plain_in_a_margin(canvas.layout.planner.title)}&C&A&R&P / &N")
    (_log if plan.sheet.log_view else _page)(canvas)


def _page(canvas: Canvas) -> None:
    plan, to = canvas.plan, canvas.worksheet
    first = _first_printed(canvas)
    to.print_area(first - 1, 0, plan.printed_to - 1, plan.last_printed - 1)
    wide = canvas.width(1, plan.last_printed) * WIDER
    across, down = _room(canvas, is_wide=True)
    if min(across / wide, down / _high(canvas, first, plan.printed_to)) >= READABLE:
        to.set_landscape()
        to.fit_to_pages(1, 1)
        return
    upright = _room(canvas, is_wide=False)
    if upright[0] / wide >= READABLE:
        across, down = upright
    else:
        to.set_landscape()
    scale = _scale(canvas, min(1.0, across / wide), down)
    to.set_print_scale(int(100 * scale))
    to.set_h_pagebreaks([row - 1 for row in _broken(canvas, down / scale)[0]])


def _first_printed(canvas: Canvas) -> int:
    """The first row of a page on paper, below its links, which lead nowhere there."""
    return 1 + link_lines(canvas.plan.sheet)


def _scale(canvas: Canvas, largest: float, down: float) -> float:
    """The scale on paper: a little smaller if that saves a page with only a few lines on it."""
    tried = [scale for scale in (largest, *(largest * part for part in SMALLER)) if scale >= READABLE] or [largest]
    return min(tried, key=lambda scale: (_broken(canvas, down / scale)[1], -scale))


def _room(canvas: Canvas, *, is_wide: bool) -> tuple[float, float]:
    """The room on a page within its margins, across and down, in pixels."""
    across, down = sorted(SIZE[canvas.layout.planner.paper], reverse=is_wide)
    across -= MARGINS["left"] + MARGINS["right"]
    down -= MARGINS["top"] + MARGINS["bottom"]
    return across * PIXELS_AN_INCH, down * PIXELS_AN_INCH


def _high(canvas: Canvas, first: int, last: int) -> int:
    return sum(map(canvas.height_of, range(first, last + 1)))


def _broken(canvas: Canvas, down: float) -> tuple[list[int], int]:
    """The first rows of further pages, and the number of pages. Only a band longer than a page is cut."""
    starts, used, pages, printed_to = [], 0.0, 1, canvas.plan.printed_to
    ends = [*(row - 1 for row in canvas.plan.bands[1:]), printed_to]
    for first, last in zip((_first_printed(canvas), *canvas.plan.bands[1:]), ends, strict=True):
        high = _high(canvas, first, min(last, printed_to))
        if used and used + high > down and (high <= down or down - used < down * AT_LEAST):
            starts.append(first)
            used, pages = 0.0, pages + 1
        more = ceil((used + high) / down) - 1
        used, pages = used + high - more * down, pages + more
    unprinted = [row for row in starts if row > printed_to]
    return starts[: len(starts) - len(unprinted)], pages - len(unprinted)


def _papers(canvas: Canvas) -> None:
    plan, to = canvas.plan, canvas.worksheet
    first, last = plan.sheet.grid.paper
    to.set_margins(**OF_PAPERS)
    to.set_portrait()
    to.set_print_scale(100)
    to.print_area(plan.papers[0] - 1, first, plan.last_row - 1, last)
    to.set_h_pagebreaks([row - 1 for row in plan.papers[1:]])


def _log(canvas: Canvas) -> None:
    """Print the lines in use and some more, with the head on every page."""
    [log] = canvas.plan.sheet.logs
    columns = [canvas.entries[log.full_key(each.key)] for each in log.inputs]
    in_use = [row for column in columns for row, entry in enumerate(column, start=1) if entry is not None]
    lines = min(log.rows, max(max(in_use, default=0) + SPARE_LINES, LINES_PRINTED))
    shown = [(first, strip) for first, strip in canvas.plan.strips if not (strip.is_folded or strip.is_hidden)]
    seen = max(first + len(strip.keys) - 1 for first, strip in shown)
    canvas.worksheet.set_landscape()
    canvas.worksheet.fit_to_pages(1, 0)
    canvas.worksheet.print_area(1, 0, FIRST_RECORD + lines - 2, seen - 1)
    if lines > LINES_PRINTED + SPARE_LINES:
        canvas.worksheet.repeat_rows(1, UNITS)


def _plain_in_a_margin(title: str) -> str:
    """A title escaped for a footer, where & begins a code and a digit may be taken for a font size."""
    return (" " if title[0].isdigit() else "") + title.replace("&", "&&")
