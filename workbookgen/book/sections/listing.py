"""A log on a page: heading, what needs a look, labels, units, and a row a record."""

from collections.abc import Iterator

from workbookgen.book import look, records
from workbookgen.book.canvas import Canvas
from workbookgen.book.plan import TINY, Spot, Strip, strips_of
from workbookgen.language.fields import FIRST, MARK
from workbookgen.language.parts import Planner
from workbookgen.language.views import Listing

FIRST_MESSAGE, LABELS, UNITS, INK_LINE, RECORDS = 1, 2, 3, 4, 5  # rows below the heading's
LABELS_HIGH, UNITS_HIGH = 30, 18


def rows(section: Listing, planner: Planner) -> int:
    return RECORDS + planner.blocks[section.block].rows


def strips(section: Listing, planner: Planner) -> list[tuple[int, Strip]]:
    """The strips that are seen, each with its first column."""
    log, placed, column = planner.blocks[section.block], [], 1 + section.across[0]
    for strip in strips_of(log, section.view, folds=False):
        if not strip.is_hidden:
            placed.append((column, strip))
            column += len(strip.keys)
    return placed


def spots(section: Listing, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    log = planner.blocks[section.block]
    for first, strip in strips(section, planner):
        for place, key in enumerate(strip.keys):
            yield f"{log.key}_{key}", Spot(row + RECORDS, first + place, log.rows)
    if log.inputs:
        yield f"{log.key}_{MARK.key}", Spot(row + RECORDS, 1, log.rows)
        yield f"{log.key}_{FIRST.key}", Spot(row + FIRST_MESSAGE, column)


def draw(section: Listing, canvas: Canvas, row: int) -> None:
    log, placed = canvas.layout.planner.blocks[section.block], strips(section, canvas.layout.planner)
    first, last = 1 + section.across[0], placed[-1][0] + len(placed[-1][1].keys) - 1
    canvas.heading(row, first, max(last, 1 + section.across[1]), section.title)
    canvas.text(row, 1 + section.across[1], section.aside, look.HEAD_ASIDE)
    canvas.across(row + INK_LINE, first, last, look.INK_LINE)
    for place, pixels in ((LABELS, LABELS_HIGH), (UNITS, UNITS_HIGH), (INK_LINE, TINY)):
        canvas.high(row + place, pixels)
        canvas.heights[row + place] = pixels
    records.columns(canvas, log, placed, row + LABELS, row + UNITS)
    if log.inputs:
        records.tint(canvas, log, placed)
        canvas.cells(f"{log.key}_{MARK.key}", look.MARK)
        canvas.cells(f"{log.key}_{FIRST.key}", look.MESSAGE)
