"""The plan of a log with a sheet of its own: a head of eight rows, then one row per record.

Its columns come in strips: the inputs one always types, the other inputs folded, the answers, and the rest folded or
hidden.
"""

from collections.abc import Iterable, Iterator, Mapping

from workbookgen.book.plan import HIDDEN, LINKS_ROW, MARGIN, ROW, Plan, Spot, Strip
from workbookgen.book.wrapping import LETTER
from workbookgen.language.automatic import (
    FAULT,
    FILLED,
    FIRST,
    MARK,
    MESSAGE,
    OPEN,
    OWN_LINE,
    QUESTIONS,
    SPOILED,
    UNFINISHED,
)
from workbookgen.language.fields import Input
from workbookgen.language.parts import Card, Log, Sheet
from workbookgen.language.views import LogView

TINY = 4
# Links; the title, with what the log is beside it, and its totals below that; message; groups; labels; units; a rule.
HEAD_OF_LOG = (LINKS_ROW, 20, ROW, 36, ROW, 30, 18, TINY)
NAME = 2  # the column of a record's name, and of a log's title
# The first column that is not frozen. A text that begins to the left of it would be cut off at its edge.
BESIDE_NAME = 3
TITLE, TOTALS, FIRST_MESSAGE, GROUPS, LABELS, UNITS, INK_LINE = 2, 3, 4, 5, 6, 7, 8
FIRST_RECORD = len(HEAD_OF_LOG) + 1
FOLD = 62  # pixels of the column with a fold's button and name
OF_A_MESSAGE = 960  # pixels of the longest message, in small letters
# Pixels of a log's columns that are in sight in a window of 1024 pixels: LibreOffice shows 962 (measured), and draws
# columns 1.12 times as wide.
SEEN_IN_A_SMALL_WINDOW = 858
WIDTH_OF_COUNT = 165  # pixels of "200 lines need a look"


def strips_of(log: Log, view: LogView, *, folds: bool) -> Iterator[Strip]:
    """The columns of a log, from left to right.

    Without `folds`, as on a page, everything else follows the answers; in a log in which nobody types it is hidden.
    """
    typed = tuple(view.typed.split())
    answers = [Strip(heading, tuple(words.split())) for heading, words in view.answers]
    seen = {*typed, *(key for strip in answers for key in strip.keys)}
    more = tuple(each.key for each in log.inputs if each.key not in seen)
    yield Strip("You type", typed, is_typed=True)
    others = [Strip("to type", more, is_typed=True, is_folded=folds)] if more else []
    told = Strip("what to look at", (MESSAGE.key,), is_folded=True)  # the head has room for one line's
    yield from [*others, *answers, told] if folds else [*answers, *others]
    hidden: list[str] = []
    for group in log.groups:
        left = tuple(each.key for each in group.fields if each.key not in seen and not isinstance(each, Input))
        if not (group.printed and (folds or log.inputs)):
            hidden += left
        elif left:
            yield Strip(group.heading, left, is_folded=folds)
    yield Strip("", tuple(hidden), is_hidden=True)


def width_of(log: Log, key: str) -> int:
    """The width of a field's column in pixels."""
    return OF_A_MESSAGE if key == MESSAGE.key else int(log.by_key[key].width * LETTER) + 5


def _spot_of_count(widths: dict[int, int], last: int) -> Spot:
    """The spot of "3 lines need a look", above the last columns that one types into.

    It spans as many columns as any count needs, since a number wider than its cell is shown as ###.
    """
    first = last
    while first > BESIDE_NAME and sum(widths[column] for column in range(first, last + 1)) < WIDTH_OF_COUNT:
        first -= 1
    return Spot(GROUPS, first, across=last - first + 1)


def _in_sight(widths: Mapping[int, int], strips: Iterable[tuple[int, Strip]]) -> int:
    """How many columns beside the name a text of the head may cover: those in sight while nothing is unfolded."""
    folded = {first + place for first, strip in strips if strip.is_folded for place in range(len(strip.keys))}
    last = wide = 0
    for column in sorted(widths):
        wide += 0 if column in folded else widths[column]
        if wide > SEEN_IN_A_SMALL_WINDOW:
            break
        last = column
    return last - BESIDE_NAME + 1


def plan_of_log(sheet: Sheet, log: Log, view: LogView, others: Iterable[Card]) -> Plan:
    """The plan of a log with a sheet of its own. `others` are cards whose results are in its head or hidden."""
    strips, folds, column = _strips_placed(log, view)
    seen = strips[-1][0] - 1  # the last strip is the hidden one
    columns = {key: first + place for first, strip in strips for place, key in enumerate(strip.keys)}
    widths = {1: MARGIN} | {columns[key]: width_of(log, key) for key in columns} | {fold: FOLD for fold, _ in folds}
    columns[MARK.key] = 1
    for fold, strip in folds:
        if strip.is_typed:
            columns[FILLED.key] = fold
    for key in (MESSAGE.key, FAULT.key, FILLED.key, OWN_LINE.key, *(each.key for each in log.positions)):
        if key not in columns and key in log.automatic_by_key:
            columns[key] = column
            column += 1
    spots = {log.full_key(key): Spot(FIRST_RECORD, place, log.rows) for key, place in columns.items()}
    in_sight = _in_sight(widths, strips[:-1])
    spots[log.full_key(FIRST.key)] = Spot(FIRST_MESSAGE, BESIDE_NAME, across=in_sight)
    for row, each in ((TITLE, QUESTIONS), (TOTALS, UNFINISHED), (FIRST_MESSAGE, SPOILED)):
        spots[log.full_key(each.key)] = Spot(row, column)
    first_typed, typed = strips[0]
    spots[log.full_key(OPEN.key)] = _spot_of_count(widths, last=first_typed + len(typed.keys) - 1)
    spots |= {view.in_head: Spot(TOTALS, BESIDE_NAME, across=in_sight)} if view.in_head else {}
    spots |= _beside_the_head((card.full_key(each.key) for card in others for each in card.fields), spots, column + 1)
    last = max(spot.column for spot in spots.values())
    return Plan(
        sheet,
        spots,
        widths | dict.fromkeys(range(seen + 1, last + 1), HIDDEN),
        heights=dict(enumerate(HEAD_OF_LOG, start=1)),
        strips=tuple(strips),
        folds=tuple(folds),
        last_column=seen,
        last_row=FIRST_RECORD + log.rows - 1,
    )


def _strips_placed(log: Log, view: LogView) -> tuple[list[tuple[int, Strip]], list[tuple[int, Strip]], int]:
    """The strips of a log with their first columns, the folds with theirs, and the first free column."""
    strips, folds, column = [], [], NAME
    for strip in strips_of(log, view, folds=True):
        strips.append((column, strip))
        column += len(strip.keys)
        if strip.is_folded:
            folds.append((column, strip))
            column += 1
    return strips, folds, column


def _beside_the_head(keys: Iterable[str], spots: Mapping[str, Spot], column: int) -> dict[str, Spot]:
    """Spots for hidden fields: beside the head, since lines below it are sorted, inserted and deleted."""
    high, left = len(HEAD_OF_LOG), [key for key in keys if key not in spots]
    return {key: Spot(1 + place % high, column + place // high) for place, key in enumerate(left)}
