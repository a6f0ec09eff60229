"""A log of choices, and beside it the tickets that it fills, to print and cut out, eight per page.

A ticket is 61 mm high and some 86 mm wide, so that two by four fit on A4 and on Letter. It has eleven rows, and four
columns with padding on either side; marks in its corners show where to cut. All rows have the same height, since the
log is in the same rows.
"""

from collections.abc import Iterator

from xlsxwriter.utility import xl_col_to_name

from workbookgen.book import look, records
from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import Spot, Strip, columns_of
from workbookgen.colors import QUIET
from workbookgen.language.automatic import FIRST, MARK
from workbookgen.language.planner import Planner
from workbookgen.language.tickets import TICKET, Tickets

ACROSS, DOWN = 2, 4  # tickets on a page
ROWS, HIGH = 11, 21  # rows of a ticket, and their height in pixels
NAME, LINES, FOOT = 0, 2, 7  # the first rows of its name, its lines and its foot, counted from 0
NAME_ROWS, FOOT_ROWS = 2, 3
MESSAGE, HEADS, RECORDS = 1, 2, 3  # rows of the log, below its title
NUMBER, CHOICE = 2, 3  # columns of the log: the ticket's number, and the first input
CUT = look.FACE | {"top_color": QUIET, "bottom_color": QUIET, "left_color": QUIET, "right_color": QUIET}
PLACE = look.LITTLE | {"align": "center"}


def pages(section: Tickets, planner: Planner) -> int:
    """The number of paper pages with a ticket for each record."""
    return -(-planner.blocks[section.block].rows // (ACROSS * DOWN))


def rows(section: Tickets, planner: Planner) -> int:
    return pages(section, planner) * DOWN * ROWS


def papers(section: Tickets, planner: Planner, row: int) -> list[int]:
    """The first rows of the paper pages."""
    return [row + page * DOWN * ROWS for page in range(pages(section, planner))]


def corner(section: Tickets, record: int, row: int) -> tuple[int, int]:
    """Row and column of the first cell of a record's ticket; tickets follow each other in reading order."""
    first, _ = columns_of(section)
    return row + record // ACROSS * ROWS, first + record % ACROSS * len(TICKET)


def spots(section: Tickets, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    log = planner.blocks[section.block]
    yield log.full_key(FIRST.key), Spot(row + MESSAGE, CHOICE)
    yield log.full_key(MARK.key), Spot(row + RECORDS, 1, log.rows)
    for place, key in enumerate((*(each.key for each in log.inputs), *section.results), start=CHOICE):
        yield log.full_key(key), Spot(row + RECORDS, place, log.rows)
    for repeat in log.repeats:
        top, left = corner(section, repeat.record, row)
        yield log.full_key(repeat.key), _spot(section, repeat.of, top, left + 1)


def _spot(section: Tickets, key: str, row: int, column: int) -> Spot:
    """The spot of a field on a ticket whose first cell inside the padding is in this row and column."""
    if key == section.name:
        return Spot(row + NAME, column, across=4, down=NAME_ROWS)
    if key == section.foot:
        return Spot(row + FOOT, column, across=4, down=FOOT_ROWS)
    place, line = next((place, line) for place, line in enumerate(section.lines) if key in line.keys)
    across = 4 // len(line.keys)
    return Spot(row + LINES + place, column + across * line.keys.index(key), across=across)


def draw(section: Tickets, canvas: Canvas, row: int) -> None:
    planner = canvas.layout.planner
    log = planner.blocks[section.block]
    for place in range(row, row + rows(section, planner)):
        canvas.heights[place] = HIGH
    for record in range(pages(section, planner) * ACROSS * DOWN):
        _cutting_marks(canvas, *corner(section, record, row))
    looks = _looks(section)
    for repeat in log.repeats:
        canvas.cells(log.full_key(repeat.key), looks[repeat.of])
        if repeat.of == section.name:
            _rule(canvas, canvas.plan.spots[log.full_key(repeat.key)])
    _choices(section, canvas, row)


def _looks(section: Tickets) -> dict[str, dict]:
    """The formats of the fields on a ticket; long texts shrink rather than being cut off."""
    looks = {
        section.name: look.TITLE | {"bold": True, "shrink": True, "valign": "bottom"},
        section.foot: look.PLAIN | {"font_size": look.SMALL, "text_wrap": True, "valign": "bottom"},
    }
    for line in section.lines:
        letters = look.LITTLE if line.is_small else look.PLAIN
        looks |= dict.fromkeys(line.keys, letters | {"bold": line.is_bold, "shrink": True})
    return {key: {"align": "left"} | each for key, each in looks.items()}


def _rule(canvas: Canvas, name: Spot) -> None:
    """Draw the rule under a name; a ticket without a name stays empty."""
    bottom = name.row + name.down - 2
    there = f"=LEN(${xl_col_to_name(name.column - 1)}${name.row})>0"
    canvas.format_where(there, (bottom, name.column - 1, bottom, name.column + name.across - 2), look.INK_LINE)


def _cutting_marks(canvas: Canvas, top: int, left: int) -> None:
    for row, edge in ((top, "top"), (top + ROWS - 1, "bottom")):
        for column, side in ((left, "left"), (left + len(TICKET) - 1, "right")):
            canvas.text(row, column, "", CUT | {edge: 1, side: 1})


def _choices(section: Tickets, canvas: Canvas, row: int) -> None:
    log = canvas.layout.planner.blocks[section.block]
    last = CHOICE + len(log.inputs) + len(section.results) - 1
    canvas.heading(row, CHOICE, last, section.title, section.aside)
    canvas.cells(log.full_key(FIRST.key), look.MESSAGE)
    canvas.cells(log.full_key(MARK.key), look.MARK)
    for column, each in enumerate(log.inputs, start=CHOICE):
        canvas.text(row + HEADS, column, each.label, look.head_of(each)[0])
        canvas.cells(log.full_key(each.key), look.entry_in_a_log(each, None))
    for column, key in enumerate(section.results, start=CHOICE + len(log.inputs)):
        result = log.by_key[key]
        canvas.text(row + HEADS, column, result.label, look.head_of(result)[0] | {"indent": 1})
        canvas.cells(log.full_key(key), look.LITTLE | {"indent": 1})
    for record in range(log.rows):
        canvas.number(row + RECORDS + record, NUMBER, record + 1, PLACE)
    records.tint(canvas, log, [(CHOICE, Strip("", tuple(each.key for each in log.inputs), is_typed=True))])
    for place, note in enumerate(section.notes, start=row + RECORDS + log.rows + 1):
        canvas.text(place, CHOICE, note, look.LITTLE)
