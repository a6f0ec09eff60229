"""The columns of a log, on a page or on a sheet of its own: label, unit, and one cell per record.

Where one types, lines in use and the next one are tinted; the others have hairlines.
"""

from collections.abc import Container, Iterable, Mapping

from xlsxwriter.utility import xl_col_to_name

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.lines import LETTER, lines_taken
from workbookgen.book.plan import Strip
from workbookgen.colors import ACCENT, INK, SOFT, WHITE
from workbookgen.language.fields import FILLED, FIRST, MARK, MESSAGE, SPOILED, Input
from workbookgen.language.parts import Log
from workbookgen.language.views import FREE

NOTHING: Mapping = {}
BOLD = 1.1  # how much wider bold letters are


def columns(
    canvas: Canvas, log: Log, strips: Iterable[tuple[int, Strip]], labels: int, units: int, under: Mapping = NOTHING
) -> None:
    """Write these strips; `labels` and `units` are the rows of what stands above them, `under` the line below."""
    for first, strip in strips:
        for column, key in enumerate(strip.keys, start=first):
            if key == FREE:
                _free(canvas, log, column)
                continue
            placement = canvas.placed(f"{log.key}_{key}")
            label, unit = look.head_of(placement.field, placement.unit)
            is_long = (
                lines_taken(
                    placement.field.label, canvas.width(column, column) / LETTER, look.SMALL * BOLD, indented=True
                )
                > 1
            )
            canvas.text(labels, column, placement.field.label, look.broken(label) if is_long else label)
            canvas.text(units, column, placement.unit.symbol if placement.unit else "", unit | under)
            is_input = isinstance(placement.field, Input)
            canvas.cells(
                placement.key, (look.entry_in_a_log if is_input else look.result)(placement.field, placement.unit)
            )


def read(
    canvas: Canvas, log: Log, strips: Iterable[tuple[int, Strip]], heading: int, filled: Container[str] = ()
) -> None:
    """Writes the columns of a log in which nobody types: label and unit are beside its heading. Filled cells have no
    unit, and do not show a zero."""
    rule = {name: value for name, value in look.HEAD.items() if name.startswith("top")}
    for first, strip in strips:
        for column, key in enumerate(strip.keys, start=first):
            if key == FREE:
                _free(canvas, log, column)
                continue
            placement = canvas.placed(f"{log.key}_{key}")
            unit = placement.unit.beside if placement.unit else ""
            if column > first:
                said = f"{placement.field.label}, {unit}" if unit and key not in filled else placement.field.label
                canvas.text(heading, column, said, look.head_of(placement.field, placement.unit)[1] | rule)
            looks = look.result(placement.field, placement.unit)
            canvas.cells(
                placement.key,
                looks | ({"num_format": look.unless_nothing(looks["num_format"])} if key in filled else {}),
            )


def fill(canvas: Canvas, key: str, full: float = 4.0) -> None:
    """Fills the cells of a column that hold more than zero, and darker where they hold a full amount."""
    spot = canvas.plan.spots[key]
    dark = canvas.formats({"bg_color": ACCENT, "font_color": WHITE})
    pale = canvas.formats({"bg_color": SOFT, "font_color": INK})
    area = spot.row - 1, spot.column - 1, spot.row + spot.rows - 2, spot.column - 1
    cell = f"${xl_col_to_name(spot.column - 1)}{spot.row}"
    for least, looks in ((f">={full:g}", dark), (">0", pale)):
        canvas.to.conditional_format(
            *area,
            {
                "type": "formula",
                "criteria": f"=IF(ISNUMBER({cell}),{cell}{least},1=0)",
                "format": looks,
                "stop_if_true": True,
            },
        )


def _free(canvas: Canvas, log: Log, column: int) -> None:
    """Cells into which the column before may extend."""
    first = canvas.plan.spots[f"{log.key}_{log.fields[0].key}"].row
    canvas.to.write_blank_column(first - 1, column - 1, log.rows, canvas.formats(look.PLAIN | look.LINE))


def automatic(canvas: Canvas, log: Log) -> None:
    """What the planner says about the records: the mark of each, the message with it, and the first message."""
    canvas.cells(f"{log.key}_{MARK.key}", look.MARK)
    canvas.cells(f"{log.key}_{MESSAGE.key}", look.LITTLE)
    canvas.cells(f"{log.key}_{FIRST.key}", look.MESSAGE)
    canvas.cells(f"{log.key}_{SPOILED.key}", look.LITTLE)
    for each in log.positions:
        canvas.cells(f"{log.key}_{each.key}", look.LITTLE)
    canvas.cells(f"{log.key}_{FILLED.key}", look.LITTLE | look.LINE | {"align": "center", "num_format": "0"})


def tint(canvas: Canvas, log: Log, strips: Iterable[tuple[int, Strip]]) -> None:
    """Tints what one types in lines that are in use, and in the next one; over a negative share, a warning's color."""
    name = canvas.placed(f"{log.key}_{log.fields[0].key}")
    letter, first = name.letter, name.row
    in_use = f'=OR(${letter}{first}<>"",${letter}{first - 1}<>"",ROW()={first})'
    form = canvas.formats(look.TINTED)
    for start, strip in strips:
        if strip.is_typed:
            canvas.to.conditional_format(
                first - 1,
                start - 1,
                first + log.rows - 2,
                start + len(strip.keys) - 2,
                {"type": "formula", "criteria": in_use, "format": form},
            )
