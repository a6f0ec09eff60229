"""Driving an engine: setting a planner's inputs and reading its formulas, in areas as large as possible.

The inputs of a block are mostly adjacent, and so are its results, so a few areas cover them.
"""

from collections.abc import Iterable, Iterator
from itertools import groupby

from workbookgen.book.placement import Layout, Placement
from workbookgen.engines import Area, Session
from workbookgen.language.entries import Entries, Entry


def set_inputs(session: Session, layout: Layout, entries: Entries) -> None:
    """Fill every input of the layout, as far down as the layout goes."""
    for area, placements in _areas(layout.inputs):
        if placements[0].rows == 1 and area.columns == 1:
            session.set(area, [[entries[each.key][0]] for each in placements])
        else:
            columns = [entries[each.key][: each.rows] for each in placements]
            session.set(area, [list(row) for row in zip(*columns, strict=True)])


def read(session: Session, placements: Iterable[Placement]) -> dict[str, tuple]:
    """Full key -> the values of its cells, as the engine shows them."""
    values: dict[str, tuple] = {}
    for area, group in _areas(placements):
        rows = session.read(area)
        if group[0].rows == 1 and area.columns == 1:
            values |= {each.key: (rows[index][0],) for index, each in enumerate(group)}
        else:
            values |= {each.key: tuple(row[index] for row in rows) for index, each in enumerate(group)}
    return values


def read_inputs(session: Session, layout: Layout) -> dict[str, tuple[Entry, ...]]:
    """The entries in a planner."""
    return read(session, layout.inputs)


def _areas(placements: Iterable[Placement]) -> Iterator[tuple[Area, list[Placement]]]:
    """Adjacent placements as one area: columns of a log, or lines of a card."""
    ordered = sorted(placements, key=lambda each: (each.sheet, id(each.holder), each.column, each.row))
    for _, group in groupby(ordered, key=lambda each: (each.sheet, id(each.holder))):
        run: list[Placement] = []
        for each in group:
            if run and not _touch(run, each):
                yield _area(run), run
                run = []
            run.append(each)
        yield _area(run), run


def _touch(run: list[Placement], each: Placement) -> bool:
    last = run[-1]
    beside = (each.row, each.rows, each.column) == (last.row, last.rows, last.column + 1)
    below = last.rows == each.rows == 1 and (each.column, each.row) == (last.column, last.row + 1)
    if len(run) == 1:
        return beside or below
    return beside if run[0].column != last.column else below


def _area(run: list[Placement]) -> Area:
    first, last = run[0], run[-1]
    return Area(first.sheet, first.row, first.column, last.row + last.rows - first.row, last.column - first.column + 1)
