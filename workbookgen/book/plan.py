"""Where things are on a sheet: from its view to columns, rows and spots.

Rows and columns are counted from 1, sizes are in screen pixels. Column A is a margin, in which a log marks its lines.
A page has a line of links, its title, and bands one below another on the grid; what no section shows is calculated in
a hidden column to the right. A log with a sheet of its own has a head of seven rows, then one row per record, and
columns in groups: what one always types, the other inputs folded behind it, what one came for, and the rest folded.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from workbookgen.language.fields import FILLED, FIRST, MARK, MESSAGE, OPEN, SPOILED, Input
from workbookgen.language.parts import Card, Log, Sheet
from workbookgen.language.views import LogView, Matrix, Section

MARGIN, ROW = 26, 22
TINY, GAP, TITLE_ROW = 4, 14, 42
LINKS_ROW = 26
FIRST_BAND = 5  # a page: links, a gap, the title, a gap
HEAD_OF_LOG = (LINKS_ROW, 40, 24, ROW, 30, 18, TINY)  # links; title and sums; message; groups; labels; units; a line
# The first column that is not frozen: a text that began left of it would be cut there until all is drawn anew.
BESIDE_NAME = 3
TITLE, SUMS, FIRST_MESSAGE, GROUPS, LABELS, UNITS, INK_LINE = 2, 2, 3, 4, 5, 6, 7
FIRST_RECORD = len(HEAD_OF_LOG) + 1
FOLD = 62  # pixels of the column with a fold's button and name
HIDDEN = 60
WIDTH_OF_COUNT = 165  # pixels of "200 lines need a look"


@dataclass(frozen=True)
class Spot:
    """Cells of a field: the first one, how many below it, and how many are merged into each."""

    row: int
    column: int
    rows: int = 1
    across: int = 1
    down: int = 1


@dataclass(frozen=True)
class Strip:
    """Columns of a log that belong together: always seen, folded, or hidden."""

    heading: str
    keys: tuple[str, ...]
    is_typed: bool = False
    is_folded: bool = False
    is_hidden: bool = False


@dataclass(frozen=True)
class Placed:
    """A section of a page, and the row of its heading."""

    section: Section
    row: int


@dataclass(frozen=True)
class Plan:
    """A sheet with everything in its place. `folds` are the columns with a fold's name, and its strip."""

    sheet: Sheet
    spots: Mapping[str, Spot]  # by full key
    widths: Mapping[int, int]
    heights: Mapping[int, int]
    placed: tuple[Placed, ...] = ()
    strips: tuple[tuple[int, Strip], ...] = ()  # of a log, each with its first column
    folds: tuple[tuple[int, Strip], ...] = ()
    last_column: int = 1  # of what is seen
    last_row: int = 1
    bands: tuple[int, ...] = ()  # of a page: the rows with which they begin
    printed_to: int = 1  # of a page: the last row that is printed
    papers: tuple[int, ...] = ()  # the rows with which pages of paper begin, where it is made of such
    starts: tuple[
        Placed, ...
    ] = ()  # of a long page: the sections to which it has links of its own, where its chapters begin
    further: tuple[Placed, ...] = ()  # and others with a title, which have a link where there is room

    @cached_property
    def folded(self) -> frozenset[int]:
        return frozenset(
            first + place for first, strip in self.strips if strip.is_folded for place in range(len(strip.keys))
        )

    @cached_property
    def last_printed(self) -> int:
        """Of a page: the last column that is on paper."""
        named = (spot.column + spot.across - 1 for key, spot in self.spots.items() if key in self.sheet.shown)
        return max([1 + len(self.sheet.grid.widths), *named])

    def top_of(self, row: int) -> int:
        return self.heights.get(row, ROW)


def first_value(matrix: Matrix) -> int:
    """The column of a matrix's first values, which are at its right end."""
    return 1 + matrix.across[1] - len(matrix.heads) + 1


def strips_of(log: Log, view: LogView, folds: bool) -> Iterator[Strip]:
    """The columns of a log in their order.

    Where nothing can be folded, the rest is to the right of what one came for; in a log in which nobody types, it is
    hidden.
    """
    typed = tuple(view.typed.split())
    answers = [Strip(heading, tuple(words.split())) for heading, words in view.answers]
    seen = {*typed, *(key for strip in answers for key in strip.keys)}
    more = tuple(each.key for each in log.inputs if each.key not in seen)
    yield Strip("You type", typed, is_typed=True)
    others = [Strip("to type", more, is_typed=True, is_folded=folds)] if more else []
    yield from others if folds else ()
    yield from answers
    yield from () if folds else others
    rest = [
        (group, tuple(each.key for each in group.fields if each.key not in seen and not isinstance(each, Input)))
        for group in log.groups
    ]
    is_seen = {group.heading: group.printed and (folds or bool(log.inputs)) for group, _ in rest}
    for group, left in rest:
        if left and is_seen[group.heading]:
            yield Strip(group.heading, left, is_folded=folds)
    yield Strip("", tuple(key for group, left in rest if not is_seen[group.heading] for key in left), is_hidden=True)


def width_of(log: Log, key: str) -> int:
    """Pixels of a column that shows a field."""
    return int(log.by_key[key].width * 7) + 5


def _spot_of_count(widths: dict[int, int], last: int) -> Spot:
    """Where it is told how many lines need a look: over the end of what one types, and wide enough, since a number
    that is wider than its cell is shown as ###."""
    first = last
    while first > BESIDE_NAME and sum(widths[column] for column in range(first, last + 1)) < WIDTH_OF_COUNT:
        first -= 1
    return Spot(GROUPS, first, across=last - first + 1)


def plan_of_log(sheet: Sheet, log: Log, view: LogView, others: Iterable[Card]) -> Plan:
    """The plan of a log with a sheet of its own. `others` are cards whose results are in its head, or hidden."""
    spots: dict[str, Spot] = {f"{log.key}_{MARK.key}": Spot(FIRST_RECORD, 1, log.rows)}
    widths, strips, folds, column = {1: MARGIN}, [], [], 2
    for strip in strips_of(log, view, folds=True):
        if strip.is_hidden:
            seen = column - 1
        strips.append((column, strip))
        for key in strip.keys:
            spots[f"{log.key}_{key}"] = Spot(FIRST_RECORD, column, log.rows)
            widths[column] = HIDDEN if strip.is_hidden else width_of(log, key)
            column += 1
        if strip.is_folded:
            folds.append((column, strip))
            widths[column] = FOLD
            if strip.is_typed:
                spots[f"{log.key}_{FILLED.key}"] = Spot(FIRST_RECORD, column, log.rows)
            column += 1
    spots[f"{log.key}_{MESSAGE.key}"] = Spot(FIRST_RECORD, column, log.rows)
    if f"{log.key}_{FILLED.key}" not in spots:
        column += 1
        spots[f"{log.key}_{FILLED.key}"] = Spot(FIRST_RECORD, column, log.rows)
    spots[f"{log.key}_{FIRST.key}"] = Spot(FIRST_MESSAGE, BESIDE_NAME)
    answers = [
        first + place
        for first, strip in strips
        if not (strip.is_folded or strip.is_hidden)
        for place in range(len(strip.keys))
    ]
    first_answer = next((first for first, strip in strips if not (strip.is_typed or strip.is_folded)), answers[-1])
    for place, key in enumerate(view.sums):
        spots[key] = Spot(SUMS, first_answer + place)
    spots[f"{log.key}_{OPEN.key}"] = _spot_of_count(
        widths, last=next(first + len(strip.keys) - 1 for first, strip in strips if strip.is_typed)
    )
    for each in log.positions:
        column += 1
        spots[f"{log.key}_{each.key}"] = Spot(FIRST_RECORD, column, log.rows)
    column += 1
    spots[f"{log.key}_{SPOILED.key}"] = Spot(FIRST_MESSAGE, column)
    left = [
        f"{card.key}_{each.key}" for card in others for each in card.fields if f"{card.key}_{each.key}" not in spots
    ]
    column += bool(left)
    for place, key in enumerate(left):  # beside the head: lines are sorted, and some are inserted
        spots[key] = Spot(1 + place % len(HEAD_OF_LOG), column + place // len(HEAD_OF_LOG))
    column += max(0, len(left) - 1) // len(HEAD_OF_LOG)
    hidden = range(seen + 1, column + 1)
    heights = dict(enumerate(HEAD_OF_LOG, start=1))
    return Plan(
        sheet,
        spots,
        widths | dict.fromkeys(hidden, HIDDEN),
        heights,
        strips=tuple(strips),
        folds=tuple(folds),
        last_column=seen,
        last_row=FIRST_RECORD + log.rows - 1,
    )
