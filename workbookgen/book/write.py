"""From placements to an .xlsx file, with XlsxWriter.

Everything that a person sees is written here, and nothing is decided here: what stands
where comes from the layout, how it looks from `look`. The same layout, entries and
cached values give the same bytes.
"""

import io
import warnings
from collections.abc import Mapping
from datetime import datetime
from functools import singledispatchmethod

import xlsxwriter
from xlsxwriter.worksheet import Worksheet

from workbookgen import __version__
from workbookgen.book import look
from workbookgen.book.layout import (
    CARD_LABEL,
    CARD_NOTE,
    CARD_UNIT,
    CARD_VALUE,
    HEADER_ROWS,
    Layout,
    Message,
    Placement,
    first_record,
    given_column,
    proof_columns,
)
from workbookgen.errors import DescriptionError
from workbookgen.language.domains import Choice
from workbookgen.language.entries import Entries, Entry
from workbookgen.language.fields import Input
from workbookgen.language.parts import Card, Log, Part, ProofTable, Sheet, Table, Text
from workbookgen.language.quantities import unit_named
from workbookgen.language.sentences import refusal

CREATED = datetime(2026, 1, 1)  # fixed, so that the same settings give the same bytes
WIDTH_OF_A_PAGE = {True: 150, False: 100}  # letters, landscape and upright
PAPER = {"letter": 1, "a4": 9}

Cached = Mapping[str, tuple[Entry, ...]]


def write(layout: Layout, entries: Entries, cached: Cached) -> bytes:
    """The workbook as bytes. `cached` holds the value that each formula cell shows until it is recalculated."""
    stream = io.BytesIO()
    with warnings.catch_warnings():
        warnings.simplefilter("error")  # XlsxWriter warns and goes on where it should refuse
        book = xlsxwriter.Workbook(stream, {"in_memory": True})
        book.set_properties({
            "title": layout.planner.title,
            "comments": f"Made with workbookgen {__version__}.",
            "created": CREATED,
        })
        book.set_calc_mode("auto")
        formats = _Formats(book)
        for sheet in layout.planner.sheets:
            _SheetWriter(book.add_worksheet(sheet.name, PlainFormulas), sheet, layout, entries, cached, formats).write()
        for placement in layout.placements.values():
            if book.define_name(placement.key, f"={placement.range}") == -1:
                raise DescriptionError.at(placement.key, "a workbook cannot hold a name like this.")
        book.close()
    return stream.getvalue()


class PlainFormulas(Worksheet):
    """A worksheet that writes formulas as they are.

    XlsxWriter looks each formula through for functions newer than 2010, with some thirty
    searches; that is nine tenths of the time of writing a planner. The portable profile
    has no such function, so there is nothing to find. A test holds the outcome against
    the stock worksheet's.
    """

    def _prepare_formula(self, formula: str, expand_future_functions: bool = False) -> str:
        return formula.removeprefix("=")


class _Formats:
    """The formats in use, each made once."""

    def __init__(self, book: xlsxwriter.Workbook):
        self.book, self.made = book, {}

    def __call__(self, properties: dict):
        key = tuple(sorted(properties.items()))
        if key not in self.made:
            self.made[key] = self.book.add_format(properties)
        return self.made[key]


class _SheetWriter:
    """One worksheet. Rows and columns are counted from 1 here, as in the layout."""

    def __init__(self, worksheet, sheet: Sheet, layout: Layout, entries: Entries, cached: Cached, formats: _Formats):
        self.to, self.sheet, self.layout = worksheet, sheet, layout
        self.entries, self.cached, self.formats = entries, cached, formats
        self.widths: dict[int, float] = {}

    def write(self) -> None:
        self._text(1, 1, self.sheet.title, look.TITLE)
        self.to.set_row(0, 28)
        self._text(2, 1, self.sheet.about, look.ABOUT)
        for placed in self.layout.parts[self.sheet.name]:
            self.part(placed.part, placed.row)
        self._finish()

    @singledispatchmethod
    def part(self, part: Part, row: int) -> None:
        raise NotImplementedError(part)

    @part.register
    def _(self, part: Text, row: int) -> None:
        heading, *lines = part.lines if part.style != "words" else ("", *part.lines)
        if heading:
            self._text(row, 1, heading, look.CAUTION if part.style == "caution" else look.HEADING)
        for index, line in enumerate(lines, start=bool(heading)):
            self._text(row + index, 1, line, look.PLAIN)

    @part.register
    def _(self, part: Card, row: int) -> None:
        self._text(row, 1, part.title, look.PART_TITLE)
        if part.about:
            self._text(row + 1, 1, part.about, look.ABOUT)
        for column, width in ((CARD_LABEL, 30), (CARD_VALUE, 18), (CARD_UNIT, 12), (CARD_NOTE, 56)):
            self._wide(column, width)
        for placement in self.layout.of(part):
            self._text(placement.row, CARD_LABEL, placement.field.label, look.PLAIN)
            self._text(placement.row, CARD_UNIT, placement.unit.symbol if placement.unit else "", look.NOTE)
            note = placement.field.help if isinstance(placement.field, Input) else placement.field.note
            self._text(placement.row, CARD_NOTE, note, look.NOTE)
            self._cells(placement)

    @part.register
    def _(self, part: Log, row: int) -> None:
        self._heads(part, row)
        header = row + first_record(part) - HEADER_ROWS
        for placement in self.layout.of(part):
            self._wide(placement.column, placement.field.width)
            self._text(header + 1, placement.column, placement.field.label, look.LABEL)
            self._text(header + 2, placement.column, placement.unit.symbol if placement.unit else "", look.UNIT)
            self._cells(placement)
        self.to.set_row(header, 42)
        for placement in self.layout.of(part):
            self._text(header, placement.column, "", look.GROUP)
        columns = {each.field.key: each.column for each in self.layout.of(part)}
        for group in part.groups:
            self._text(header, columns[group.fields[0].key], group.heading, look.GROUP)
        self.to.freeze_panes(header + 2, 1)
        self.to.repeat_rows(header - 1, header + 1)
        self.to.repeat_columns(0, 0)

    @part.register
    def _(self, part: Table, row: int) -> None:
        self._heads(part, row)
        header = row + first_record(part) - HEADER_ROWS
        for placement, column in zip(self.layout.of(part), part.columns, strict=True):
            self._wide(placement.column, column.width)
            self._text(header + 1, placement.column, column.label, look.LABEL)
            self._text(header + 2, placement.column, column.unit.symbol if column.unit else "", look.UNIT)
            for index, value in enumerate(column.values):
                self._value(placement.row + index, placement.column, value, look.FACT)

    @part.register
    def _(self, part: ProofTable, row: int) -> None:
        self._heads(part, row)
        header = row + first_record(part) - HEADER_ROWS
        computed, printed, unit, within, verdict = proof_columns(part)
        labels = {1: "No.", 2: "Example", 3: "Published in", computed: "Computed here", printed: "Printed answer",
                  unit: "Unit", within: "Within", verdict: "Verdict"}
        for index in range(part.most_given):
            labels |= {given_column(index, 0): "Given", given_column(index, 1): "Value"}
        for column, label in labels.items():
            self._wide(column, {1: 8, 2: 34, 3: 44}.get(column, 12))
            self._text(header + 1, column, label, look.LABEL)
            self._text(header + 2, column, "", look.UNIT)
        for index, proof in enumerate(part.proofs):
            line = header + HEADER_ROWS + index
            known = {"read": "read", "memory": "from memory", "practice": "common practice", "derived": "follows from definitions"}
            facts = {1: proof.number, 2: proof.what, 3: f"{proof.source} ({known[proof.provenance]})",
                     printed: proof.printed, unit: unit_named(proof.unit).symbol if proof.unit else "", within: proof.tolerance}
            for place, (word, (value, name)) in enumerate(proof.given.items()):
                symbol = unit_named(name).symbol if name else ""
                facts |= {given_column(place, 0): f"{word} ({symbol})" if symbol else word, given_column(place, 1): value}
            for column, fact in facts.items():
                self._value(line, column, fact, look.FACT)
        for placement in self.layout.of(part):
            for index, formula in enumerate(placement.formulas):
                value = self._shown(placement.key, index)
                self.to.write_formula(placement.row + index - 1, placement.column - 1, formula, self.formats(look.FACT), value)
        self.to.freeze_panes(header + 2, 2)
        self.to.repeat_rows(header, header + 1)

    def _heads(self, part: Log | Table | ProofTable, row: int) -> None:
        self._text(row, 1, part.title, look.PART_TITLE)
        if part.about:
            self._text(row + 1, 1, part.about, look.ABOUT)

    def _cells(self, placement: Placement) -> None:
        """A field's cells: what was typed, or the formulas with their cached values."""
        if isinstance(placement.field, Message):
            form = self.formats(look.MESSAGE)
        else:
            form = self.formats(look.cell(placement.field, placement.unit))
        row, column = placement.row - 1, placement.column - 1
        for index, formula in enumerate(placement.formulas):
            self.to.write_formula(row + index, column, formula, form, self._shown(placement.key, index))
        if isinstance(placement.field, Input):
            for index, entry in enumerate(self.entries[placement.key]):
                self._entry(row + index, column, entry, form)
            self._offer(placement)

    def _offer(self, placement: Placement) -> None:
        field, last = placement.field, placement.row + placement.rows - 2
        source = self.layout.placements[field.domain.of].range if isinstance(field.domain, Choice) else ""
        words = refusal(field, self.layout.planner.system)
        self.to.data_validation(
            placement.row - 1, placement.column - 1, last, placement.column - 1, look.validation(field, source, words)
        )
        if field.is_text:
            self.to.ignore_errors({"number_stored_as_text": placement.area.replace("$", "")})

    def _entry(self, row: int, column: int, entry: Entry, form) -> None:
        if entry is None:
            self.to.write_blank(row, column, None, form)
        elif isinstance(entry, str):
            self.to.write_string(row, column, entry, form)  # never a formula, whatever it begins with
        else:
            self.to.write_number(row, column, entry, form)

    def _shown(self, key: str, index: int) -> float | str:
        value = self.cached[key][index] if key in self.cached else None
        return "" if value is None else value

    def _value(self, row: int, column: int, value: float | str, properties: dict) -> None:
        if isinstance(value, str):
            self._text(row, column, value, properties)
        else:
            self.to.write_number(row - 1, column - 1, value, self.formats(properties | {"align": "right"}))

    def _text(self, row: int, column: int, text: str, properties: dict) -> None:
        if text:
            self.to.write_string(row - 1, column - 1, text, self.formats(properties))
        else:
            self.to.write_blank(row - 1, column - 1, None, self.formats(properties))

    def _wide(self, column: int, width: float) -> None:
        self.widths[column] = max(width, self.widths.get(column, 0))

    def _finish(self) -> None:
        """Widths, print set-up and protection."""
        for column, width in self.widths.items():
            self.to.set_column(column - 1, column - 1, width)
        if self.sheet.wide:
            self.to.set_landscape()
        pages = -(-sum(self.widths.values()) // WIDTH_OF_A_PAGE[self.sheet.wide])
        self.to.fit_to_pages(max(1, int(pages)), 0)
        self.to.set_paper(PAPER[self.layout.planner.paper])
        self.to.set_margins(left=0.5, right=0.5, top=0.6, bottom=0.7)
        self.to.set_footer(f"&L&9{self.layout.planner.title}&C&9&A&R&9Page &P of &N")
        self.to.hide_gridlines(2)
        self.to.protect("", {
            "format_columns": True, "format_rows": True, "sort": True, "autofilter": True, "select_locked_cells": True,
        })


