"""From placements to an .xlsx file, with XlsxWriter.

Everything that a person sees is written here, and nothing is decided here: what stands
where comes from the layout, how it looks from `look`. The same layout, entries and
cached values give the same bytes.
"""

import io
import warnings
from collections import defaultdict
from collections.abc import Collection, Mapping
from datetime import datetime
from functools import singledispatchmethod

import xlsxwriter
from xlsxwriter.utility import quote_sheetname

from workbookgen import __version__
from workbookgen.book import look, proof_lines
from workbookgen.book.charts import draw
from workbookgen.book.copied import CopiedDown, PlainWorksheet
from workbookgen.book.layout import (
    CARD_LABEL,
    CARD_NOTE,
    CARD_UNIT,
    CARD_VALUE,
    HEADER_ROWS,
    Layout,
    Message,
    Placement,
    ProofColumn,
    first_record,
    height,
)
from workbookgen.book.lines import lines_taken
from workbookgen.book.pages import (
    LINES_ON_A_PAGE,
    LOG_SCALE,
    MARGINS,
    MESSAGE_WIDTH,
    PAPER,
    ROW,
    even_starts,
    is_longer_than_a_page,
    page_starts,
    stacked,
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
    Links,
    Log,
    Part,
    ProofTable,
    Sheet,
    Table,
    Text,
)
from workbookgen.language.sentences import refusal

CREATED = datetime(2026, 1, 1)  # fixed, so that the same settings give the same bytes
LINE, SMALL_LINE = 12.75, 12.0  # points, of wrapped text
TITLE = 28  # points, of a sheet's title
HEADING = 42  # points: the labels of a log, which may take three lines
CARD_WIDTHS = {CARD_LABEL: 30, CARD_VALUE: 22, CARD_UNIT: 12, CARD_NOTE: 52}
NOTE_SIZE = {"font_name": look.TYPEFACE, "font_size": 9, "width": 220, "height": 60}
HIGHEST = 409.0  # points, of a row
BESIDE = 8  # columns to the right of a table, over which its heading runs on

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
        for name, area in layout.names.items():
            if book.define_name(name, f"={area}") == -1:
                raise DescriptionError.at(name, "a workbook cannot hold a name like this.")
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
        self.last_printed = 0  # column, if not all are
        self.heights: defaultdict[int, float] = defaultdict(lambda: ROW)  # points, of the rows that are not as high as all

    def write(self) -> None:
        self._text(1, 1, self.sheet.title, look.TITLE)
        self._set_height(1, TITLE)
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
    def _(self, part: Links, row: int) -> None:
        self._heads(part, row)
        link = self.formats(look.LINK)
        for index, (sheet, what) in enumerate(part.places, start=2):
            self.to.write_url(row + index - 1, 0, f"internal:{quote_sheetname(sheet)}!A1", link, sheet)
            self._text(row + index, 2, what, look.READING)

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
            self._high(placement.row, note, CARD_WIDTHS[CARD_NOTE], look.SMALL)
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
        self._set_height(header + 1, HEADING)
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
        paper, heading = self.layout.planner.paper, HEADING + 2 * ROW
        if part.rows_a_page:
            cut = strips(paper, (self.widths[column] for column in range(1, last + 1)), heading, part.rows_a_page)
            self.to.set_print_scale(cut.scale)
            for index in range(part.rows):
                self._set_height(header + HEADER_ROWS + index, cut.height)
            self.to.set_h_pagebreaks([header + 2 + end for end in range(part.rows_a_page, part.rows, part.rows_a_page)])
        else:
            self.to.set_print_scale(LOG_SCALE)
            starts = page_starts(groups, self.widths)
            if starts:
                self.to.repeat_columns(0, 0)
                self.to.set_v_pagebreaks([column - 1 for column in starts])
            heights = [self.heights[header + HEADER_ROWS + index] for index in range(part.rows)]
            self.to.set_h_pagebreaks([header + 2 + start for start in even_starts(paper, heights, heading)])

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
            label, unit = look.heads_of_facts(isinstance(column.values[0], str), number)
            self._text(header + 1, number, column.label, label)
            self._text(header + 2, number, column.unit.symbol if column.unit else "", unit)
        for index in range(part.rows):
            self._facts(header + HEADER_ROWS + index, {
                number: column.values[index] for number, column in enumerate(part.columns, start=1)
            }, {number for number, column in enumerate(part.columns, start=1) if column.runs_on})
        if part.printed and part.rows > LINES_ON_A_PAGE:
            self.to.repeat_rows(header, header + 1)
        if not part.printed:
            self.last_printed = max(self.widths) + BESIDE

    @part.register
    def _(self, part: Chart, row: int) -> None:
        chart = draw(self.formats.book, self.layout, part)
        self.to.insert_chart(row - 1, 0, chart, {"description": part.about, "object_position": 2, "y_offset": 3})

    @part.register
    def _(self, part: ProofTable, row: int) -> None:
        self._heads(part, row)
        header = row + first_record(part) - HEADER_ROWS
        values = {ProofColumn.VALUES + index: (f"Value {index + 1}", proof_lines.VALUE_WIDTH) for index in range(part.most_given)}
        for column, (title, width) in (proof_lines.HEADS | values).items():
            self._wide(column, width)
            label, unit = look.heads_of_facts(column not in proof_lines.OF_NUMBERS | set(values), column)
            self._text(header + 1, column, title, label)
            self._text(header + 2, column, "", unit)
        for index, proof in enumerate(part.proofs):
            self._facts(header + HEADER_ROWS + index, proof_lines.facts(self.layout, proof))
        for placement in self.layout.of(part):
            self._formulas(placement, self.formats(look.fact(placement.column not in proof_lines.OF_NUMBERS, placement.column)))
        self.to.freeze_panes(header + 2, 2)
        self.to.repeat_rows(header, header + 1)
        self.last_printed = max(proof_lines.HEADS)

    def _facts(self, row: int, facts: Mapping[int, float | str], run_on: Collection[int] = ()) -> None:
        """A row to be read, as high as its longest text needs."""
        lines = 1
        for column, fact in facts.items():
            looks = look.fact(isinstance(fact, str), column) | {"text_wrap": column not in run_on}
            self._value(row, column, fact, looks)
            if isinstance(fact, str) and column not in run_on:
                lines = max(lines, lines_taken(fact, self.widths[column], indented=column > 1))
        self._set_height(row, _height(lines))

    def _heads(self, part: Card | Log | Links | Table | ProofTable, row: int) -> None:
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
                    self._high(placement.row + index, entry, placement.field.width, look.SIZE)
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
            self.to.write_number(row - 1, column - 1, value, self.formats(properties))

    def _text(self, row: int, column: int, text: str, properties: dict) -> None:
        if text:
            self.to.write_string(row - 1, column - 1, text, self.formats(properties))
        else:
            self.to.write_blank(row - 1, column - 1, None, self.formats(properties))

    def _high(self, row: int, text: str, width: float, size: float) -> None:
        """A row as high as its longest wrapped text needs; one line needs nothing."""
        lines = lines_taken(text, width, size, indented=True)
        if lines > 1 and (points := _height(lines, SMALL_LINE if size < look.SIZE else LINE)) > self.heights[row]:
            self._set_height(row, points)

    def _set_height(self, row: int, points: float) -> None:
        self.heights[row] = points
        self.to.set_row(row - 1, points)

    def _wide(self, column: int, width: float) -> None:
        self.widths[column] = max(width, self.widths.get(column, 0))

    def _print_as_stack(self) -> None:
        """Parts below each other; the sheet's title stays with the first, and what is not printed takes no room.

        What is printed is always said: a sheet that leaves it open has a million rows for
        LibreOffice, which breaks them all into pages for every sheet with repeated headings.
        """
        placed = [each for each in self.layout.parts[self.sheet.name] if getattr(each.part, "printed", True)]
        starts = [1, *(each.row for each in placed[1:])]
        ends = [*starts[1:], placed[-1].row + height(placed[-1].part) + 1]
        parts = [[self.heights[row] for row in range(start, end)] for start, end in zip(starts, ends, strict=True)]
        last = self.last_printed or max(self.widths)
        widths = [self.widths.get(column, look.USUAL_WIDTH) for column in range(1, last + 1)]
        stack = stacked(self.layout.planner.paper, self.sheet.wide, widths, parts)
        self.to.set_print_scale(stack.scale)
        self.to.set_h_pagebreaks(list(stack.starts))
        self.to.print_area(0, 0, ends[-1] - 3, last - 1)  # its last row is free

    def _finish(self) -> None:
        """Widths, print set-up and protection."""
        for column, width in self.widths.items():
            self.to.set_column(column - 1, column - 1, width)
        if self.sheet.wide:
            self.to.set_landscape()
        if not any(isinstance(each, Log) for each in self.sheet.parts):  # a log has settled its pages
            self._print_as_stack()
        self.to.set_paper(PAPER[self.layout.planner.paper])
        self.to.set_margins(**MARGINS)
        face = f'&"{look.TYPEFACE},Regular"&9'
        self.to.set_footer(f"&L{face}{_plain_in_a_margin(self.layout.planner.title)}&C{face}&A&R{face}Page &P of &N")
        self.to.hide_gridlines(2)
        self.to.protect("", {
            "format_columns": True, "format_rows": True, "sort": True, "autofilter": True, "select_locked_cells": True,
        })


def _height(lines: int, line: float = LINE) -> float:
    """The height of a row with so many lines; a taller one would break the file."""
    return min(line * lines + 2, HIGHEST)


def _plain_in_a_margin(title: str) -> str:
    """A title as a header or footer shows it: its & is no code, and a first digit no part of the font size."""
    return (" " if title[0].isdigit() else "") + title.replace("&", "&&")
