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
from textwrap import wrap

import xlsxwriter

from workbookgen import __version__
from workbookgen.book import look
from workbookgen.book.charts import draw
from workbookgen.book.copied import CopiedDown, PlainWorksheet
from workbookgen.book.layout import (
    CARD_LABEL,
    CARD_NOTE,
    CARD_UNIT,
    CARD_VALUE,
    CHART_ROWS,
    HEADER_ROWS,
    Layout,
    Message,
    Placement,
    ProofColumn,
    first_record,
)
from workbookgen.book.pages import (
    LETTERS_ON_A_PAGE,
    LOG_SCALE,
    MARGINS,
    MESSAGE_WIDTH,
    PAPER,
    ROWS_ON_A_PAGE,
    is_longer_than_a_page,
    page_starts,
    strips,
)
from workbookgen.errors import DescriptionError
from workbookgen.language.domains import Choice
from workbookgen.language.entries import Entries, Entry
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import (
    MESSAGE,
    Card,
    Chart,
    Log,
    Part,
    Proof,
    ProofTable,
    Sheet,
    Table,
    Text,
)
from workbookgen.language.quantities import unit_named
from workbookgen.language.sentences import refusal

CREATED = datetime(2026, 1, 1)  # fixed, so that the same settings give the same bytes
LINE = 13.5  # points, of wrapped text
HEADING, UNDER = 42, 15  # points: the labels of a log, which may take three lines, and the row above or below
CARD_WIDTHS = {CARD_LABEL: 30, CARD_VALUE: 18, CARD_UNIT: 12, CARD_NOTE: 56}
LETTERS_PER_WIDTH, SMALL_LETTERS_PER_WIDTH = 1.25, 1.3  # a column's width counts digits, and most letters are narrower
PROVENANCE = {
    "read": "read",
    "memory": "from memory",
    "practice": "common practice",
    "derived": "follows from definitions",
}
PROOF_HEADS = {
    ProofColumn.NUMBER: ("No.", 8),
    ProofColumn.WHAT: ("Example", 34),
    ProofColumn.SOURCE: ("Published in", 44),
    ProofColumn.GIVEN: ("Given", 44),
    ProofColumn.COMPUTED: ("Computed here", 15),
    ProofColumn.PRINTED: ("Printed answer", 15),
    ProofColumn.UNIT: ("Unit", 12),
    ProofColumn.WITHIN: ("Within, as a share", 10),
    ProofColumn.VERDICT: ("Verdict", 10),
}

NOTE_SIZE = {"font_name": look.TYPEFACE, "font_size": 9, "width": 220, "height": 60}
HIGHEST = 409.0  # points, of a row

Cached = Mapping[str, tuple[Entry, ...]]
Notes = Mapping[tuple[str, int], str]


def write(layout: Layout, entries: Entries, cached: Cached, notes: Notes | None = None) -> bytes:
    """The workbook as bytes. `cached` holds the value that each formula cell shows until it is recalculated.

    `notes` are pinned to inputs, by full key and record.
    """
    stream = io.BytesIO()
    with warnings.catch_warnings():
        warnings.simplefilter("error")  # XlsxWriter warns and goes on where it should refuse
        book = xlsxwriter.Workbook(stream, {"in_memory": True, "default_format_properties": look.FACE})
        book.set_properties({
            "title": layout.planner.title,
            "comments": f"Made with workbookgen {__version__}.",
            "created": CREATED,
        })
        book.set_calc_mode("auto")
        formats = _Formats(book, layout.planner.colors)
        for sheet in layout.planner.sheets:
            _SheetWriter(book.add_worksheet(sheet.name, PlainWorksheet), sheet, layout, entries, cached, formats).write()
        for (key, row), note in (notes or {}).items():
            placement = layout.placements[key]
            book.get_worksheet_by_name(placement.sheet).write_comment(placement.cell(row), note, NOTE_SIZE)
        for placement in layout.placements.values():
            if book.define_name(placement.key, f"={placement.range}") == -1:
                raise DescriptionError.at(placement.key, "a workbook cannot hold a name like this.")
        book.close()
    return stream.getvalue()


class _Formats:
    """The formats in use, each made once, in the colors of the settings."""

    def __init__(self, book: xlsxwriter.Workbook, colors: Mapping[str, str]):
        self.book, self.colors, self.made = book, colors, {}

    def __call__(self, properties: dict):
        key = tuple(sorted(properties.items()))
        if key not in self.made:
            self.made[key] = self.book.add_format(look.recolored(properties, self.colors))
        return self.made[key]


class _SheetWriter:
    """One worksheet. Rows and columns are counted from 1 here, as in the layout."""

    def __init__(self, worksheet, sheet: Sheet, layout: Layout, entries: Entries, cached: Cached, formats: _Formats):
        self.to, self.sheet, self.layout = worksheet, sheet, layout
        self.entries, self.cached, self.formats = entries, cached, formats
        self.widths: dict[int, float] = {}
        self.breaks: list[int] = []
        self.lines: dict[int, int] = {}  # of rows that hold a wrapped text

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
        self._text(row, 1, part.heading, look.CAUTION if part.is_caution else look.HEADING)
        for index, line in enumerate(part.lines, start=1):
            self._text(row + index, 1, line, look.READING)

    @part.register
    def _(self, part: Card, row: int) -> None:
        self._heads(part, row)
        for column, width in CARD_WIDTHS.items():
            self._wide(column, width)
        for placement in self.layout.of(part):
            self._text(placement.row, CARD_LABEL, placement.field.label, look.PLAIN)
            self._text(placement.row, CARD_UNIT, placement.unit.symbol if placement.unit else "", look.NOTE)
            note = placement.field.help if isinstance(placement.field, Input) else placement.field.note
            self._text(placement.row, CARD_NOTE, note, look.CARD_NOTE)
            self._high(placement.row, note, CARD_WIDTHS[CARD_NOTE], SMALL_LETTERS_PER_WIDTH)
            self._cells(placement)

    @part.register
    def _(self, part: Log, row: int) -> None:
        self._heads(part, row)
        header = row + first_record(part) - HEADER_ROWS
        for placement in self.layout.of(part):
            is_message = isinstance(placement.field, Message)
            self._wide(placement.column, MESSAGE_WIDTH if is_message else placement.field.width)
            label, unit = look.heads(placement.field, placement.unit)
            self._text(header + 1, placement.column, placement.field.label, label)
            self._text(header + 2, placement.column, placement.unit.symbol if placement.unit else "", unit)
            self._cells(placement)
        self.to.set_row(header, HEADING)
        for placement in self.layout.of(part):
            self._text(header, placement.column, "", look.GROUP)
        columns = {each.field.key: each.column for each in self.layout.of(part)}
        for group in part.groups:
            self._text(header, columns[group.fields[0].key], group.heading, look.GROUP)
        self.to.freeze_panes(header + 2, 1)
        self._print_as_table(part, header)

    def _print_as_table(self, part: Log, header: int) -> None:
        """A log prints from the headings down; further pages repeat them, and the first column."""
        groups = self._printed_groups(part)
        last = groups[-1][-1]
        if part.rows_a_page or is_longer_than_a_page(self.layout.planner.paper, part.rows):
            self.to.repeat_rows(header - 1, header + 1)
        self.to.print_area(header - 1, 0, header + HEADER_ROWS + part.rows - 2, last - 1)
        self.to.set_header(f'&L&"{look.TYPEFACE},Bold"&14{_plain_in_a_margin(self.sheet.title)}')
        if part.rows_a_page:
            cut = strips(self.layout.planner.paper, (self.widths[column] for column in range(1, last + 1)), HEADING + 2 * UNDER, part.rows_a_page)
            self.to.set_print_scale(cut.scale)
            for index in range(part.rows):
                self.to.set_row(header + 2 + index, cut.height)
            self.to.set_h_pagebreaks([header + 2 + end for end in range(part.rows_a_page, part.rows, part.rows_a_page)])
        else:
            self.to.set_print_scale(LOG_SCALE)
            starts = page_starts(groups, self.widths)
            if starts:
                self.to.repeat_columns(0, 0)
                self.to.set_v_pagebreaks([column - 1 for column in starts])

    def _printed_groups(self, part: Log) -> list[list[int]]:
        """The columns that should stay on one page together: a group's, and the message's, which is on no label."""
        columns = {each.field.key: each.column for each in self.layout.of(part)}
        groups = [[columns[field.key] for field in group.fields] for group in part.groups if group.printed]
        return groups if part.rows_a_page else sorted([*groups, [columns[MESSAGE]]])

    @part.register
    def _(self, part: Table, row: int) -> None:
        self._heads(part, row)
        header = row + first_record(part) - HEADER_ROWS
        for number, column in enumerate(part.columns, start=1):
            self._wide(number, column.width)
            self._text(header + 1, number, column.label, look.LABEL)
            self._text(header + 2, number, column.unit.symbol if column.unit else "", look.UNIT)
        for index in range(part.rows):
            self._facts(header + HEADER_ROWS + index, {
                number: column.values[index] for number, column in enumerate(part.columns, start=1)
            })
        self.to.repeat_rows(header, header + 1)

    @part.register
    def _(self, part: Chart, row: int) -> None:
        chart = draw(self.formats.book, self.layout, part)
        if row // ROWS_ON_A_PAGE != (row + CHART_ROWS) // ROWS_ON_A_PAGE:
            self.breaks.append(row - 1)  # a chart is not cut in two
        self.to.insert_chart(row - 1, 0, chart, {"description": part.about, "object_position": 2, "y_offset": 3})

    @part.register
    def _(self, part: ProofTable, row: int) -> None:
        self._heads(part, row)
        header = row + first_record(part) - HEADER_ROWS
        for column, (label, width) in PROOF_HEADS.items():
            self._wide(column, width)
            self._text(header + 1, column, label, look.LABEL)
        for index in range(part.most_given):
            self._wide(ProofColumn.VALUES + index, 11)
            self._text(header + 1, ProofColumn.VALUES + index, f"Value {index + 1}", look.LABEL)
        for column in range(1, ProofColumn.VALUES + part.most_given):
            self._text(header + 2, column, "", look.UNIT)
        for index, proof in enumerate(part.proofs):
            values = {ProofColumn.VALUES + place: value for place, (value, _) in enumerate(proof.given.values())}
            self._facts(header + HEADER_ROWS + index, self._proof_facts(proof) | values)
        for placement in self.layout.of(part):
            self._formulas(placement, self.formats(look.FACT))
        self.to.freeze_panes(header + 2, 2)
        self.to.repeat_rows(header, header + 1)

    def _proof_facts(self, proof: Proof) -> dict[int, float | str]:
        block, _ = self.layout.planner.by_key[proof.result]
        given = [
            f"{self.layout.planner.meaning(block, word).field.label} {_printed(value)} {_symbol(unit)}".strip()
            for word, (value, unit) in proof.given.items()
        ]
        return {
            ProofColumn.NUMBER: proof.number,
            ProofColumn.WHAT: proof.what,
            ProofColumn.SOURCE: f"{proof.source} ({PROVENANCE[proof.provenance]})",
            ProofColumn.GIVEN: "; ".join(given),
            ProofColumn.PRINTED: proof.printed,
            ProofColumn.UNIT: _symbol(proof.unit),
            ProofColumn.WITHIN: proof.tolerance,
        }

    def _facts(self, row: int, facts: Mapping[int, float | str]) -> None:
        """A row to be read, as high as its longest text needs."""
        lines = 1
        for column, fact in facts.items():
            self._value(row, column, fact, look.FACT)
            if isinstance(fact, str):
                lines = max(lines, len(wrap(fact, int(self.widths[column] * LETTERS_PER_WIDTH))))
        self.to.set_row(row - 1, _height(lines))

    def _heads(self, part: Card | Log | Table | ProofTable, row: int) -> None:
        lines = [(part.title, look.PART_TITLE), (part.about, look.ABOUT)]
        for index, (text, properties) in enumerate(line for line in lines if line[0]):
            self._text(row + index, 1, text, properties)

    def _cells(self, placement: Placement) -> None:
        """A field's cells: what was typed, or the formulas with their cached values."""
        if isinstance(placement.field, Message):
            form = self.formats(look.MESSAGE)
        else:
            form = self.formats(look.cell(placement.field, placement.unit, in_a_row=isinstance(placement.holder, Log)))
        row, column = placement.row - 1, placement.column - 1
        self._formulas(placement, form)
        if isinstance(placement.field, Input):
            for index, entry in enumerate(self.entries[placement.key]):
                self._entry(row + index, column, entry, form)
                if isinstance(placement.holder, Log) and isinstance(entry, str):
                    self._high(placement.row + index, entry, placement.field.width)
            self._offer(placement)
        elif isinstance(placement.field, Result) and placement.field.note:
            self.to.data_validation(row, column, row + placement.rows - 1, column, look.explanation(placement.field))

    def _formulas(self, placement: Placement, form) -> None:
        row, column, formulas = placement.row - 1, placement.column - 1, placement.formulas
        values = [self._shown(placement.key, index) for index in range(len(formulas))]
        if isinstance(formulas, CopiedDown) and len(formulas) > 1:
            self.to.write_copied_down(row, column, formulas, form, values)
            return
        for index, (formula, value) in enumerate(zip(formulas, values, strict=True)):
            self.to.write_formula(row + index, column, formula, form, value)

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

    def _high(self, row: int, text: str, width: float, letters: float = LETTERS_PER_WIDTH) -> None:
        """A row as high as its longest wrapped text needs; one line needs nothing."""
        lines = len(wrap(text, int(width * letters)))
        if lines > max(1, self.lines.get(row, 1)):
            self.lines[row] = lines
            self.to.set_row(row - 1, _height(lines))

    def _wide(self, column: int, width: float) -> None:
        self.widths[column] = max(width, self.widths.get(column, 0))

    def _finish(self) -> None:
        """Widths, print set-up and protection."""
        for column, width in self.widths.items():
            self.to.set_column(column - 1, column - 1, width)
        if self.sheet.wide:
            self.to.set_landscape()
        if not any(isinstance(each, Log) for each in self.sheet.parts):  # a log has settled its pages
            across = -(-sum(self.widths.values()) // LETTERS_ON_A_PAGE) if self.sheet.wide else 1
            self.to.fit_to_pages(int(across), 0)
        if self.breaks:
            self.to.set_h_pagebreaks(self.breaks)
        self.to.set_paper(PAPER[self.layout.planner.paper])
        self.to.set_margins(**MARGINS)
        face = f'&"{look.TYPEFACE},Regular"&9'
        self.to.set_footer(f"&L{face}{_plain_in_a_margin(self.layout.planner.title)}&C{face}&A&R{face}Page &P of &N")
        self.to.hide_gridlines(2)
        self.to.protect("", {
            "format_columns": True, "format_rows": True, "sort": True, "autofilter": True, "select_locked_cells": True,
        })


def _height(lines: int) -> float:
    """The height of a row with so many lines; a taller one would break the file."""
    return min(LINE * lines + 2, HIGHEST)


def _plain_in_a_margin(title: str) -> str:
    """A title as a header or footer shows it: its & is no code, and a first digit no part of the font size."""
    return (" " if title[0].isdigit() else "") + title.replace("&", "&&")


def _symbol(unit: str) -> str:
    return unit_named(unit).symbol if unit else ""


def _printed(value: float | str) -> str:
    return value if isinstance(value, str) else f"{value:.10g}"
