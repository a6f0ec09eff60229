"""Calculated results: large answers side by side, then the others, one per line."""

from collections.abc import Iterator

from workbookgen.book import look
from workbookgen.book.canvas import Canvas
from workbookgen.book.messages import sentences
from workbookgen.book.plan import ROW, Spot, columns_of
from workbookgen.book.sections.entries import HELP_LINE, LABEL_COLUMNS, draw_help
from workbookgen.book.wrapping import LETTER, lines_taken
from workbookgen.language.automatic import Automatic
from workbookgen.language.fields import Result
from workbookgen.language.planner import Planner
from workbookgen.language.views import Answers, Headline

BIG_ROWS = 2


def rows(section: Answers, planner: Planner) -> int:
    return _big_row(section) + _big_rows(section) + len(section.lines)


def spots(section: Answers, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    if section.message:
        yield section.message, Spot(row + 1, column, across=section.across[1] - section.across[0] + 1)
    top = row + _big_row(section) + bool(_captions(section))
    for first, wide, each in _beside(section, column):
        yield each.field, Spot(top, first, across=wide, down=BIG_ROWS)
        for line, key in enumerate(each.below, start=top + BIG_ROWS):
            _, below = planner.by_key[key]  # a text extends into empty cells to its right, a number does not
            yield key, Spot(line, first, across=1 if below.is_text else wide)
    for line, key in enumerate(section.lines, start=row + _big_row(section) + _big_rows(section)):
        yield key, Spot(line, column + LABEL_COLUMNS, across=_room(section) if _is_said(planner.by_key[key][1]) else 1)


def draw(section: Answers, canvas: Canvas, row: int) -> None:
    first, last = columns_of(section)
    canvas.heading(row, first, last, section.title, section.aside, look.accented(look.HEAD))
    if section.message:
        _message(canvas, section.message, row + 1, first, last)
    caption_row = row + _big_row(section)
    for start, _, each in _beside(section, first):
        if each.caption:
            canvas.text(caption_row, start, each.caption, look.LITTLE)
        placement = canvas.placed(each.field)
        canvas.cells(each.field, look.answer(placement.field, placement.unit))
        for key in each.below:
            below = canvas.placed(key)
            canvas.cells(key, look.PLAIN | look.on_its_own(below.field, below.unit))
    for key in section.lines:
        _line(canvas, key, first, last)


def _message(canvas: Canvas, key: str, row: int, first: int, last: int) -> None:
    """Write the message, in a row high enough for the longest that may appear there."""
    canvas.cells(key, look.MESSAGE_BROKEN)
    room = canvas.width(first, last) / LETTER
    said = sentences(canvas.placed(key).holder, canvas.layout.planner.system)
    canvas.make_room(row, max(ROW, HELP_LINE * max(lines_taken(each, room, look.SMALL) for each in said) + 4))


def _line(canvas: Canvas, key: str, first: int, last: int) -> None:
    placement, spot = canvas.placed(key), canvas.plan.spots[key]
    canvas.blank_cells(spot.row, first, last, look.PLAIN | look.LINE)
    canvas.text(spot.row, first, placement.field.label, look.PLAIN | look.LINE)
    whole = {"shrink": True} if _is_said(placement.field) else {}  # a sentence with long names in it is not cut off
    canvas.cells(key, look.result(placement.field, placement.unit) | whole)
    beside = spot.column + 1
    if beside <= last and not placement.field.is_text:
        draw_help(canvas, placement, spot.row, beside, last)


def _is_said(field: Result | Automatic) -> bool:
    """Whether a field is a text that takes the whole line behind its label."""
    return field.is_text and not getattr(field, "is_range", False)


def _room(section: Answers) -> int:
    """The number of columns behind the label of a line."""
    return section.across[1] - section.across[0] + 1 - LABEL_COLUMNS


def _captions(section: Answers) -> bool:
    return any(each.caption for each in section.large)


def _big_row(section: Answers) -> int:
    """The number of rows above the large answers: the heading, and the message."""
    return 1 + bool(section.message)


def _big_rows(section: Answers) -> int:
    if not section.large:
        return 0
    return bool(_captions(section)) + BIG_ROWS + max(len(each.below) for each in section.large)


def _beside(section: Answers, column: int) -> Iterator[tuple[int, int, Headline]]:
    """The first column, the number of columns, and the large answer itself, for each."""
    free = section.across[1] - section.across[0] + 1 - sum(each.columns for each in section.large)
    share = free // max(1, sum(not each.columns for each in section.large))
    for each in section.large:
        wide = each.columns or share
        yield column, wide, each
        column += wide
