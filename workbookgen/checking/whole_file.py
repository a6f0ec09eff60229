"""The whole file: is everything in it what the generator writes for the same settings?

A planner is written in memory and read in the same way as the file. Their content is compared, not its XML, since every
program writes that in its own way. Formulas and their results are compared elsewhere.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import lru_cache
from itertools import zip_longest
from pathlib import Path

from workbookgen.book.placement import Layout, Placement
from workbookgen.book.write import write
from workbookgen.checking.compare import Finding, agree
from workbookgen.checking.names import names_elsewhere
from workbookgen.checking.runs import runs
from workbookgen.checking.validations import Validations, changed_rules, changed_validations
from workbookgen.errors import FileError
from workbookgen.language.entries import starting_entries
from workbookgen.language.fields import Input
from workbookgen.ooxml.charts import Chart, Series
from workbookgen.ooxml.references import Range, cell_name, range_of, without_sheet_quotes
from workbookgen.ooxml.sheets import FileSheet, stretches
from workbookgen.ooxml.styles import Style, shown_by
from workbookgen.ooxml.workbook import Unreadable, WholeFile, read_whole

GNUMERIC = "gnumeric"  # it allows circular formulas in every file that it writes

Difference = tuple[str, str | None, str | None]  # what is wrong, what was expected, what is there


def as_found(path: Path) -> WholeFile:
    """A planner file as it is. Raises FileError."""
    try:
        return read_whole(path)
    except Unreadable as problem:
        instead = "Open it in your spreadsheet program and save it as .xlsx."
        raise FileError.at(str(path), f"this file cannot be read as an .xlsx workbook ({problem}). {instead}") from None


@lru_cache(maxsize=2)
def as_written(layout: Layout) -> WholeFile:
    """What the generator writes."""
    return read_whole(write(layout, starting_entries(layout.planner), {}))


def changes(layout: Layout, theirs: WholeFile) -> Iterator[Finding]:
    """Where a file differs from what the generator writes."""
    ours = as_written(layout)
    yield from names_elsewhere(ours, theirs, {*layout.planner.blocks})
    yield from _calculating(ours, theirs)
    inputs: dict[tuple[str, int], list[range]] = {}  # sheet and column -> the rows of its inputs
    for each in layout.inputs:
        inputs.setdefault((each.sheet, each.column), []).append(range(each.row, each.row + each.rows))
    fields: dict[str, list[Range]] = {}
    for each in layout.placements.values():
        last = each.row + each.rows - 1
        fields.setdefault(each.sheet, []).append(Range("", each.row, each.column, last, each.column))
    for name, our in ours.sheets.items():
        their = theirs.sheets.get(name)
        if their is None:
            yield Finding("this sheet is gone", name)
            continue
        yield from _twice(their)
        yield from _said(our, their, inputs)
        yield from _linked(our, their)
        yield from _hidden(our, their)
        yield from _merged(our, their, fields.get(name, ()))
        yield from _drawn(our, their)
        yield from changed_rules(our, their)
    our_rules, their_rules = (
        {name: Validations(sheet) for name, sheet in file.sheets.items()} for file in (ours, theirs)
    )
    for placement in layout.placements.values():
        sheet = placement.sheet
        if sheet in theirs.sheets and (placement.formulas or isinstance(placement.field, Input)):
            yield from _looks(placement, ours, theirs)
            yield from changed_validations(placement, our_rules[sheet], their_rules[sheet])


def _calculating(ours: WholeFile, theirs: WholeFile) -> Iterator[Finding]:
    our, their = ours.calculation, theirs.calculation
    if their.is_manual and not our.is_manual:
        yield Finding(
            "the workbook is set to calculate by hand, so results stay as they were when something is typed. "
            "Set calculation to automatic"
        )
    if their.rounds_as_shown and not our.rounds_as_shown:
        yield Finding(
            "the workbook is set to calculate with numbers as they are shown, so every result is rounded on the way. "
            "Take the setting off"
        )
    if their.repeats_circles and not our.repeats_circles and not theirs.program.lower().startswith(GNUMERIC):
        yield Finding(
            "the workbook is set to repeat formulas that go in a circle, so such a mistake would not be reported. "
            "Take the setting off"
        )
    if their.counts_from_1904 != our.counts_from_1904:
        yield Finding(
            "the workbook counts its days from 1904, so every date in it is four years and a day off. "
            "Set it to count from 1900"
        )


def _twice(their: FileSheet) -> Iterator[Finding]:
    for place in dict.fromkeys(their.twice):
        yield Finding(
            "this cell is in the file twice, or in a row that is not its own, and programs differ in which they show",
            f"{their.name}!{cell_name(place)}",
        )


def _said(our: FileSheet, their: FileSheet, inputs: dict[tuple[str, int], list[range]]) -> Iterator[Finding]:
    """Findings about labels, units, texts and fixed figures: all content that is neither typed nor calculated."""
    for (first, column), cell in our.cells.items():
        if cell.has_formula or cell.value is None or any(first in rows for rows in inputs.get((our.name, column), ())):
            continue
        for rows in stretches(range(first, our.end_of(first)), their):
            found = their.cell((rows.start, column))
            value = found.value if found else None
            if found and found.has_formula or agree(cell.value, value) or value == cell.value:
                continue  # a formula where none belongs is reported with the formulas
            reason = f"{'these words are' if isinstance(cell.value, str) else 'this figure is'} not the planner's"
            got = "nothing" if value is None else value
            for row in rows:
                yield Finding(reason, f"{our.name}!{cell_name((row, column))}", expected=cell.value, got=got)


def _linked(our: FileSheet, their: FileSheet) -> Iterator[Finding]:
    for place in sorted(our.links.keys() | their.links.keys()):
        if (cell := our.cell(place)) is None:
            continue
        wanted, found = (without_sheet_quotes(sheet.links.get(place, "")).replace("$", "") for sheet in (our, their))
        if wanted == found or not wanted and cell.value is None:
            continue
        if not wanted:
            reason = "a link was put on this cell"
        else:
            reason = "the link leads elsewhere" if found else "the link is gone"
        where = f"{our.name}!{cell_name(place)}"
        yield Finding(reason, where, expected=wanted or "no link", got=found or "no link")


def _hidden(our: FileSheet, their: FileSheet) -> Iterator[Finding]:
    """Findings about what was hidden, apart from outlines, which people fold as they like."""
    if our.state == "visible" != their.state:
        yield Finding("this sheet is hidden. Show it again", our.name)
    filled, columns = ({place[side] for place in our.cells} for side in (0, 1))
    rows = {row for row in their.hidden_rows - our.hidden_rows - our.folded_rows if our.first_alike(row) in filled}
    columns &= their.hidden_columns - our.hidden_columns - our.folded_columns
    for first, last in runs(sorted(rows)):
        yield Finding("rows are hidden here. Show them again, or take the filter off", f"{our.name}!{first}:{last}")
    for first, last in runs(sorted(columns)):
        letters = (cell_name((1, column))[:-1] for column in (first, last))
        yield Finding("columns are hidden here. Show them again", f"{our.name}!{':'.join(letters)}")


def _merged(our: FileSheet, their: FileSheet, fields: Iterable[Range]) -> Iterator[Finding]:
    """Findings about cells that vanished behind the first of those that they were merged with."""
    for each in their.merged:
        if each not in our.merged and any(_is_behind(field, each) for field in fields):
            reason = "cells are merged here, so that only the first of them can be used. Take them apart"
            yield Finding(reason, f"{our.name}!{each}")


def _is_behind(field: Range, merged: Range) -> bool:
    """Whether a field, of one column, has a cell among merged ones that is not their first."""
    rows = merged.rows_within(field)
    return bool(rows) and (rows[-1], field.left) != (merged.top, merged.left)


def _drawn(our: FileSheet, their: FileSheet) -> Iterator[Finding]:
    """Findings about charts, which are matched by their titles, since a program may store them in another order."""
    left, changed = list(their.charts), []
    for chart in our.charts:
        same = next((each for each in left if each.title == chart.title and not _apart(chart, each)), None)
        if same:
            left.remove(same)
        else:
            changed.append(chart)
    for chart in changed:
        called = f'the chart "{chart.title}"' if chart.title else "a chart"
        same = next((each for each in left if each.title == chart.title), None)
        if same is None:
            yield Finding(f"{called} is gone, or has another title", our.name)
            continue
        left.remove(same)
        for wanted, found in _apart(chart, same):
            yield Finding(f"{called} draws from other cells", our.name, expected=wanted, got=found)


def _apart(our: Chart, their: Chart) -> list[tuple[str, str]]:
    """The series that differ.

    A name that a program lost, or took from the labels, is ignored: it changes no number. So are error bars that all
    were lost, as by Gnumeric, but not those of other cells.
    """
    theirs = [replace(each, name="") if range_of(each.name) else each for each in their.series]
    kept = {each.name for each in theirs}
    ours = [replace(each, name="") if "" in kept and each.name not in kept else each for each in our.series]
    if not any(each.whiskers for each in theirs):
        ours = [replace(each, whiskers=()) for each in ours]
    wanted, found = sorted(map(_series, ours)), sorted(map(_series, theirs))
    gone, new = [each for each in wanted if each not in found], [each for each in found if each not in wanted]
    return list(zip_longest(gone, new, fillvalue="nothing"))


def _series(series: Series) -> str:
    labels, values = (str(range_of(text) or text) for text in (series.labels, series.values))
    whiskers = dict.fromkeys(str(range_of(text) or text) for text in series.whiskers)
    bars = f", with error bars of {' and '.join(whiskers)}" if whiskers else ""
    return f"{f'{series.name}: ' if series.name else ''}{values}, named by {labels}{bars}"


def _looks(placement: Placement, ours: WholeFile, theirs: WholeFile) -> Iterator[Finding]:
    """Findings about locks and number formats of a field's cells; adjacent cells are reported together."""
    our, their = ours.sheets[placement.sheet], theirs.sheets[placement.sheet]
    known: dict[tuple[int, int], tuple[Difference, ...]] = {}
    differences: dict[Difference, list[int]] = {}
    for alike in stretches(range(placement.row, placement.row + placement.rows), our, their):
        pair = our.style((alike.start, placement.column)), their.style((alike.start, placement.column))
        if pair not in known:
            known[pair] = tuple(_restyled(placement, ours.style(pair[0]), theirs.style(pair[1])))
        for each in known[pair]:
            differences.setdefault(each, []).extend(alike)
    for (reason, expected, got), rows in differences.items():
        for first, last in runs(rows):
            where = Range(placement.sheet, first, placement.column, last, placement.column)
            yield Finding(reason, str(where), placement.key, expected=expected, got=got)


def _restyled(placement: Placement, our: Style, their: Style) -> Iterator[Difference]:
    if our.is_locked and not their.is_locked:
        yield "not locked, so that a slip of the hand can overwrite it. Lock it again", None, None
    if their.is_locked and not our.is_locked:
        yield "locked, so that nothing can be typed there once the sheet is protected. Unlock it", None, None
    wanted, found = shown_by(our.number_format), shown_by(their.number_format)
    less = wanted.decimals and (not found.decimals or found.decimals[1] < wanted.decimals[1])
    if (wanted.kind, wanted.thousands_left_out, wanted.words) != (found.kind, found.thousands_left_out, found.words):
        yield "its number format shows something else", str(wanted), str(found)
    elif less and not isinstance(placement.field, Input) and found.decimals:
        yield "its number format shows fewer digits", str(wanted), str(found)
