"""A log with a sheet of its own: a frozen head of eight rows, and one row per record."""

from workbookgen.book import look, records
from workbookgen.book.canvas import Canvas
from workbookgen.book.frame import links_of_a_log
from workbookgen.book.log_plan import BESIDE_NAME, FIRST_RECORD, GROUPS, INK_LINE, LABELS, NAME, TITLE, TOTALS, UNITS
from workbookgen.book.plan import Strip
from workbookgen.colors import ACCENT, INK
from workbookgen.language.automatic import OPEN
from workbookgen.language.parts import Log

NEEDS_A_LOOK = '[=1]0" line needs a look";[>1]0" lines need a look";""'
COUNT = look.MESSAGE | {"top": 2, "top_color": ACCENT, "num_format": NEEDS_A_LOOK, "align": "right"}
FOLDED = look.LITTLE | {"font_color": ACCENT, "align": "center", "text_wrap": True, "valign": "bottom"}


def draw(canvas: Canvas) -> None:
    """Write the whole sheet: its links, its head, and the log below."""
    plan = canvas.plan
    [log] = plan.sheet.logs
    links_of_a_log(canvas)
    canvas.text_across_rows(TITLE, TOTALS, NAME, plan.sheet.title, look.TITLE)
    canvas.text(TITLE, BESIDE_NAME, plan.sheet.about, look.LITTLE)
    if total := plan.sheet.log_view.in_head:
        canvas.cells(total, look.PLAIN | {"align": "left", "shrink": True})
    for first, strip in plan.strips:
        _group(canvas, first, strip)
    canvas.cells(log.full_key(OPEN.key), COUNT)
    for column, strip in plan.folds:
        canvas.text(LABELS, column, strip.heading if strip.is_typed else strip.heading.lower(), FOLDED)
        canvas.text(UNITS, column, f"{len(strip.keys)} more", look.LITTLE | {"align": "center"})
    records.columns(canvas, log, plan.strips, (LABELS, UNITS))
    records.tint(canvas, log, plan.strips)
    records.automatic(canvas, log)
    _hidden(canvas, log)
    canvas.blank_cells(INK_LINE, 1, plan.last_column, look.LITTLE | look.INK_LINE)
    canvas.refuse(look.ABOVE_THE_LINES, (INK_LINE - 1, 0, INK_LINE - 1, plan.last_column - 1))
    canvas.worksheet.freeze_panes(FIRST_RECORD - 1, NAME)
    canvas.worksheet.outline_settings(True, False, True, False)


def _group(canvas: Canvas, first: int, strip: Strip) -> None:
    """Write the heading of visible columns, under a rule."""
    if strip.is_folded or strip.is_hidden:
        return
    color = ACCENT if strip.is_typed else INK
    rule = {"top": 2, "top_color": color}
    canvas.blank_cells(GROUPS, first, first + len(strip.keys) - 1, look.LITTLE | rule)
    canvas.text(GROUPS, first, strip.heading, look.LITTLE | rule | {"bold": True, "font_color": color})


def _hidden(canvas: Canvas, log: Log) -> None:
    """Write the fields of cards that the head does not show."""
    in_head = canvas.plan.sheet.log_view.in_head
    for card in (holder for holder in canvas.plan.sheet.holders if holder is not log):
        for each in card.fields:
            key = card.full_key(each.key)
            if key != in_head:
                placement = canvas.placed(key)
                canvas.cells(key, look.result(placement.field, placement.unit))
