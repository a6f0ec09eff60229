"""The formulas of a file, compared with those that the generator writes for the same settings."""

from collections.abc import Iterator, Mapping
from functools import lru_cache

from workbookgen.book.copied import CopiedDown
from workbookgen.book.placement import Layout, Placement
from workbookgen.checking.compare import Finding
from workbookgen.checking.formula_spelling import spelled
from workbookgen.language.fields import Input
from workbookgen.ooxml.formulas import FormulaRun, Formulas
from workbookgen.ooxml.references import column_letters

Texts = Mapping[tuple[str, str], str]  # sheet and cell -> formula


def foreign_formulas(layout: Layout, in_file: Texts) -> list[Finding]:
    """Formulas in the file that the generator does not write there, and those that are missing.

    A formula typed into an input is fine.
    """
    texts, changed, gone = as_formulas(in_file), [], []
    for placement in layout.formulas:
        found = list(_within(texts, placement))
        gone += _gone(placement, found)
        for row, text in differing(placement, found):
            index = row - placement.row
            wanted = placement.formulas[index]
            if spelled(text) != spelled(wanted):
                where = placement.address(index)
                changed.append(Finding("the formula was changed", where, placement.key, expected=wanted, got=text))
    foreign = [
        Finding("this cell holds a formula that no reference checks", f"{sheet}!{cell}", got=text)
        for (sheet, cell), text in stray_formulas(layout, texts)
    ]
    return foreign + changed + gone


def _gone(placement: Placement, found: list[FormulaRun]) -> Iterator[Finding]:
    """Findings for the cells of a field that have no formula."""
    if sum(len(each.rows) for each in found) >= placement.rows:
        return
    there = {row for each in found for row in each.rows}
    for index in range(placement.rows):
        if placement.row + index not in there:
            where, wanted = placement.address(index), placement.formulas[index]
            yield Finding("the formula is gone", where, placement.key, expected=wanted)


def changed_formulas(layout: Layout, in_file: Texts) -> Iterator[tuple[str, str, str]]:
    """Sheet, cell and text of every formula that is not word for word what the generator writes there."""
    texts = as_formulas(in_file)
    for placement in layout.formulas:
        for row, text in differing(placement, _within(texts, placement)):
            yield placement.sheet, placement.cell(row - placement.row), text
    for placement in layout.inputs:
        for row, text in typed_formulas(texts, placement):
            yield placement.sheet, placement.cell(row - placement.row), text
    for (sheet, cell), text in stray_formulas(layout, texts):
        yield sheet, cell, text


def typed_formulas(texts: Texts, placement: Placement) -> Iterator[tuple[int, str]]:
    """Row and text of the formulas in an input, such as =6.5*16."""
    for each in _within(as_formulas(texts), placement):
        for row in each.rows:
            yield row, each.in_row(row)


def differing(placement: Placement, found: Iterator[FormulaRun] | list[FormulaRun]) -> Iterator[tuple[int, str]]:
    """Row and text of a field's formulas that differ from the generator's."""
    for each in found:
        if isinstance(placement.formulas, CopiedDown) and each.copied == placement.formulas.text:
            continue
        for row in each.rows:
            text = each.in_row(row)
            if text != placement.formulas[row - placement.row]:
                yield row, text


def stray_formulas(layout: Layout, texts: Formulas) -> Iterator[tuple[tuple[str, str], str]]:
    """Formulas where the planner has neither a formula nor an input."""
    ours = _rows_in_columns(layout)
    for each in texts.runs:
        places = ours.get((each.sheet, each.letters), ())
        if any(first <= each.first and each.last <= last for first, last in places):
            continue
        for row in each.rows:
            if not any(first <= row <= last for first, last in places):
                yield (each.sheet, f"{each.letters}{row}"), each.in_row(row)


@lru_cache(maxsize=2)
def _rows_in_columns(layout: Layout) -> Mapping[tuple[str, str], list[tuple[int, int]]]:
    """Sheet and column letters -> the first and last rows of the fields in that column."""
    rows: dict[tuple[str, str], list[tuple[int, int]]] = {}
    for each in layout.placements.values():
        if each.formulas or isinstance(each.field, Input):
            rows.setdefault((each.sheet, each.letter), []).append((each.row, each.row + each.rows - 1))
    return rows


def _within(texts: Formulas, placement: Placement) -> Iterator[FormulaRun]:
    last = placement.row + placement.rows - 1
    return texts.within(placement.sheet, placement.letter, placement.row, last)


def as_formulas(texts: Texts) -> Formulas:
    """The formulas of a file, indexed by column."""
    if isinstance(texts, Formulas):
        return texts

    def alone(sheet: str, cell: str, text: str) -> FormulaRun:
        letters = column_letters(cell)
        row = int(cell.removeprefix(letters))
        return FormulaRun(sheet, letters, row, row, text)

    return Formulas([alone(sheet, cell, text) for (sheet, cell), text in texts.items()])
