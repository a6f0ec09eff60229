"""The columns of a log, on a page or on a sheet of its own: label, unit, and one cell per record.

Inputs are tinted in the lines in use and in the next one; all other lines have hairlines.
"""

from collections.abc import Container, Iterator, Mapping, Sequence

from xlsxwriter.utility import xl_col_to_name

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.placement import Placement
from workbookgen.book.plan import Strip
from workbookgen.book.wrapping import LETTER, lines_taken
from workbookgen.colors import ACCENT, INK, SOFT, WHITE
from workbookgen.language.automatic import FAULT, FILLED, FIRST, MARK, MESSAGE, OWN_LINE, QUESTIONS, SPOILED, UNFINISHED
from workbookgen.language.fields import Input
from workbookgen.language.parts import Log
from workbookgen.language.views import FREE

BOLD = 1.1  # width of bold letters, compared with regular ones
FULL = 4  # hours in a week that are many
HIDDEN = (FAULT, OWN_LINE, QUESTIONS, UNFINISHED, SPOILED)
NO_UNIT = " "  # not blank: on LibreOffice's paper the unit of a folded column would extend into a blank cell beside it

Strips = Sequence[tuple[int, Strip]]  # each with its first column


def columns(canvas: Canvas, log: Log, strips: Strips, heads: tuple[int, int], under: Mapping | None = None) -> None:
    """Write these strips. `heads` are the rows of their labels and units; `under` formats the line below these."""
    labels, units = heads
    _free(canvas, log, strips)
    for column, placement in _placements(canvas, log, strips):
        field = placement.field
        if field == MESSAGE:  # written with what else the planner adds
            canvas.text(labels, column, field.label, look.LABEL)
            continue
        label, unit = look.head_of(field, placement.unit)
        room = canvas.width(column, column) / LETTER
        is_long = lines_taken(field.label, room, look.SMALL * BOLD, indented=True) > 1
        canvas.text(labels, column, field.label, look.broken(label) if is_long else label)
        canvas.text(units, column, placement.unit.symbol if placement.unit else NO_UNIT, unit | (under or {}))
        looks = look.entry_in_a_log if isinstance(field, Input) else look.result
        canvas.cells(placement.key, looks(field, placement.unit))


def read_only_columns(canvas: Canvas, log: Log, strips: Strips, heading: int, filled: Container[str] = ()) -> None:
    """Write the columns of a log in which nobody types, with labels and units in the row of its heading.

    `filled` columns have no unit and show no zeros.
    """
    leading = {first for first, _ in strips}
    _free(canvas, log, strips)
    for column, placement in _placements(canvas, log, strips):
        field, unit, is_filled = placement.field, placement.unit, placement.field.key in filled
        if column not in leading:
            said = f"{field.label}, {unit.beside}" if unit and unit.beside and not is_filled else field.label
            canvas.text(heading, column, said, look.head_of(field, unit)[1] | look.RULE)
        looks = look.result(field, unit)
        if is_filled:
            looks |= {"num_format": look.unless_nothing(looks["num_format"])}
        canvas.cells(placement.key, looks)


def _keys(strips: Strips) -> Iterator[tuple[int, str]]:
    """The columns of some strips, each with the key of its field."""
    return ((column, key) for first, strip in strips for column, key in enumerate(strip.keys, start=first))


def _placements(canvas: Canvas, log: Log, strips: Strips) -> Iterator[tuple[int, Placement]]:
    return ((column, canvas.placed(log.full_key(key))) for column, key in _keys(strips) if key != FREE)


def _free(canvas: Canvas, log: Log, strips: Strips) -> None:
    """Write the blank cells into which the text of the column before may extend."""
    first = canvas.plan.spots[log.full_key(log.fields[0].key)].row
    for column in (column for column, key in _keys(strips) if key == FREE):
        canvas.worksheet.write_blank_column(first - 1, column - 1, log.rows, canvas.formats(look.PLAIN | look.LINE))


def fill(canvas: Canvas, key: str) -> None:
    """Shade the cells of a column that are above zero, and darker those that are FULL or more."""
    spot = canvas.plan.spots[key]
    area = spot.row - 1, spot.column - 1, spot.row + spot.rows - 2, spot.column - 1
    cell = f"${xl_col_to_name(spot.column - 1)}{spot.row}"
    dark, pale = {"bg_color": ACCENT, "font_color": WHITE}, {"bg_color": SOFT, "font_color": INK}
    for least, looks in ((f">={FULL}", dark), (">0", pale)):
        canvas.format_where(f"=IF(ISNUMBER({cell}),{cell}{least},1=0)", area, looks, stop_if_true=True)


def automatic(canvas: Canvas, log: Log) -> None:
    """Write the fields that the planner adds to a log: marks, messages, counts and positions."""
    canvas.cells(log.full_key(MARK.key), look.MARK)
    canvas.cells(log.full_key(MESSAGE.key), look.MESSAGE | look.LINE | {"font_size": look.SMALL, "indent": 1})
    canvas.cells(log.full_key(FIRST.key), look.MESSAGE | {"text_wrap": True})
    hidden = [each for each in log.automatic if each in HIDDEN or each in log.positions]
    for each in hidden:
        canvas.cells(log.full_key(each.key), look.LITTLE)
    canvas.cells(log.full_key(FILLED.key), look.LITTLE | look.LINE | {"align": "center", "num_format": "0"})


def _is_begun(canvas: Canvas, log: Log, strips: Strips, row: int) -> str:
    """Condition that a line is in use: by what it must begin with, or by anything typed if nothing must."""
    start, typed = next((start, strip) for start, strip in strips if strip.is_typed)
    letters = [xl_col_to_name(column) for column in range(start - 1, start - 1 + len(typed.keys))]
    if log.fields[0].needed:
        return f'${canvas.placed(log.full_key(log.fields[0].key)).letter}{row}<>""'
    return f"COUNTBLANK(${letters[0]}{row}:${letters[-1]}{row})<{len(letters)}"


def tint(canvas: Canvas, log: Log, strips: Strips) -> None:
    """Tint the inputs of the lines in use, and of the next one."""
    first = canvas.placed(log.full_key(log.fields[0].key)).row
    in_use = f"=OR({_is_begun(canvas, log, strips, first)},{_is_begun(canvas, log, strips, first - 1)},ROW()={first})"
    for start, strip in strips:
        if strip.is_typed:
            area = first - 1, start - 1, first + log.rows - 2, start + len(strip.keys) - 2
            canvas.format_where(in_use, area, look.TINTED)
