"""What every sheet has: links, a tab color, column widths; `printing` sets up how it is printed.

No sheet is protected, since some programs do not let one open groups of columns or sort lines on a protected sheet.
Instead a calculated cell refuses typing (`look.worked_out`), the desk reports one that was emptied, and the check
reports one that was changed in any way.
"""

from workbookgen.book import awake, look, printing
from workbookgen.book.canvas import Canvas
from workbookgen.book.log_plan import BESIDE_NAME, NAME
from workbookgen.book.plan import SCREEN, link_lines
from workbookgen.colors import ACCENT, HAIR, INK, SOFT
from workbookgen.language.views import COLUMNS, Link, SheetKind

WIDE_ENOUGH = 62  # pixels of a column that takes a link
DRAWN_WIDER = 1.12  # LibreOffice draws a column so much wider (measured)
LINK = look.LINK | {"bottom": 1, "bottom_color": HAIR}
TABS = {
    SheetKind.DESK: INK,
    SheetKind.PAGE: ACCENT,
    SheetKind.LOG: "#C9B98D",
    SheetKind.AID: SOFT,
    SheetKind.PAPER: HAIR,
}


def links_of_a_page(canvas: Canvas) -> None:
    """Write the links of a page: the same sheets in the same order everywhere, with the current one highlighted."""
    spots = _spots_of_links(canvas)
    lines = max(row for row, _ in spots)
    for row in range(1, lines + 1):
        rule = {"bottom": 1, "bottom_color": HAIR} if row == lines else {}
        canvas.blank_cells(row, 1, max(COLUMNS + 1, canvas.plan.last_column), look.LITTLE | rule)
    for (row, column), sheet in zip(spots, places(canvas, len(spots)), strict=False):
        if sheet == canvas.plan.sheet.name:
            canvas.text(row, column, sheet, look.HERE)
        else:
            canvas.link(row, column, Link(sheet, sheet), LINK if row == lines else look.LINK)
    canvas.worksheet.freeze_panes(lines, 0)
    canvas.worksheet.hide_row_col_headers()


def _spots_of_links(canvas: Canvas) -> list[tuple[int, int]]:
    """The rows and columns of a page's links: one line, or two if it is wider than a small screen."""
    columns = range(2, canvas.plan.last_column + 1)
    wide = [column for column in columns if canvas.plan.widths[column] >= WIDE_ENOUGH]
    if link_lines(canvas.plan.sheet) == 1:
        return [(1, column) for column in wide[:COLUMNS]]
    seen = [column for column in wide if canvas.width(2, column - 1) + WIDE_ENOUGH <= SCREEN / DRAWN_WIDER]
    return [(row, column) for row in (1, 2) for column in seen]


def places(canvas: Canvas, room: int) -> list[str]:
    """The sheets that a page links to. If room is short, aids go first, except the page itself and related ones."""
    sheets, here = canvas.layout.planner.sheets, canvas.plan.sheet
    names = [sheet.name for sheet in sheets if not sheet.is_added or sheet is here]
    others = [sheet for sheet in reversed(sheets[:-1]) if sheet.name in names]
    spare = [sheet.name for kind in (SheetKind.AID, SheetKind.PAPER) for sheet in others if sheet.kind is kind]
    spare = [name for name in spare if name not in (here.name, *here.related)]
    gone = spare[: max(0, len(names) - room)]
    return [name for name in names if name not in gone]


def links_of_a_log(canvas: Canvas) -> None:
    """Write the links of a log: to the desk and to related sheets, each above a column that is wide enough."""
    plan, desk = canvas.plan, canvas.layout.planner.sheets[0].name
    canvas.blank_cells(1, 1, plan.last_column, look.LITTLE | {"bottom": 1, "bottom_color": HAIR})
    canvas.link(1, NAME, Link(desk, f"← {desk}"), LINK)
    columns = range(BESIDE_NAME, plan.last_column + 1)
    wide = [column for column in columns if column not in plan.folded and plan.widths[column] >= WIDE_ENOUGH]
    for column, name in zip(wide, plan.sheet.related, strict=False):
        canvas.link(1, column, Link(name, name), LINK)


def finish(canvas: Canvas) -> None:
    """Set column widths, tab color and printing, once everything is written, and keep the sheet awake."""
    plan, to = canvas.plan, canvas.worksheet
    folds = [column for column, _ in plan.folds]
    for column, pixels in plan.widths.items():
        if column in plan.folded:
            options = {"level": 1, "hidden": True}
        elif column in folds:
            options = {"collapsed": True}
        else:
            options = {"hidden": True} if column > plan.last_column else {}
        to.set_column_pixels(column - 1, column - 1, pixels, None, options)
    canvas.finish()
    to.set_tab_color(canvas.formats.color(TABS[plan.sheet.kind]))
    to.hide_gridlines(2)
    printing.set_up(canvas)
    awake.keep(canvas)
