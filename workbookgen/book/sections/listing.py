"""A log on a page: heading, message, labels, units, and one row per record."""

from collections.abc import Iterator

from workbookgen.book import look, records
from workbookgen.book.canvas import Canvas
from workbookgen.book.log_plan import strips_of
from workbookgen.book.plan import Spot, Strip, columns_of
from workbookgen.book.sections import chart
from workbookgen.language.automatic import FIRST, MARK
from workbookgen.language.parts import Log
from workbookgen.language.planner import Planner
from workbookgen.language.views import FREE, Listing

LABELS_HIGH, UNITS_HIGH = 30, 18


def heads(log: Log) -> int:
    """The number of rows above the first record: heading, message, labels and units.

    A log in which nobody types has its labels beside its heading.
    """
    return 4 if log.inputs else 1


def rows(section: Listing, planner: Planner) -> int:
    log = planner.blocks[section.block]
    return heads(log) + log.rows


def strips(section: Listing, planner: Planner) -> list[tuple[int, Strip]]:
    """The visible strips, each with its first column."""
    log, placed, (column, _) = planner.blocks[section.block], [], columns_of(section)
    for strip in strips_of(log, section.view, folds=False):
        if not strip.is_hidden:
            placed.append((column, strip))
            column += len(strip.keys)
    return placed


def spots(section: Listing, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    log = planner.blocks[section.block]
    for first, strip in strips(section, planner):
        for place, key in enumerate(strip.keys, start=first):
            if key != FREE:
                yield log.full_key(key), Spot(row + heads(log), place, log.rows)
    if log.inputs:
        yield log.full_key(MARK.key), Spot(row + heads(log), 1, log.rows)
        yield log.full_key(FIRST.key), Spot(row + 1, column)


def draw(section: Listing, canvas: Canvas, row: int) -> None:
    log, placed = canvas.layout.planner.blocks[section.block], strips(section, canvas.layout.planner)
    first, end = columns_of(section)
    last_strip, strip = placed[-1]
    last = last_strip + len(strip.keys) - 1
    canvas.heading(row, first, max(last, end), section.title)
    if log.inputs:
        if section.aside:  # at the left, since the right end of a page is off a narrow screen
            aside = canvas.behind(first, section.title, look.SIZE * records.BOLD)
            canvas.text(row, aside, section.aside, look.LITTLE | look.RULE)
        units = row + heads(log) - 1
        canvas.blank_cells(units, first, last, look.LITTLE | look.INK_LINE)
        canvas.heights |= {units - 1: LABELS_HIGH, units: UNITS_HIGH}
        records.columns(canvas, log, placed, (units - 1, units), look.INK_LINE)
    else:
        canvas.text(row, end, section.aside, look.HEAD_ASIDE)
        records.read_only_columns(canvas, log, placed, row, section.filled.split())
    for key in section.filled.split():
        records.fill(canvas, log.full_key(key))
    if section.chart:
        chart.draw(section.chart, canvas, row + heads(log))
    if log.inputs:
        records.tint(canvas, log, placed)
        canvas.cells(log.full_key(MARK.key), look.MARK)
        canvas.cells(log.full_key(FIRST.key), look.MESSAGE)
