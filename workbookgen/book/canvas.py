"""A canvas: one worksheet to write on, with texts, links, rules, and the cells of fields.

Rows and columns count from 1 here, as in the plan. Each cell is written once, together with its format.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import xlsxwriter
from xlsxwriter.format import Format
from xlsxwriter.utility import quote_sheetname

from workbookgen.book import look
from workbookgen.book.areas import Area, joined
from workbookgen.book.copied import CopiedDown
from workbookgen.book.placement import Layout, Placement
from workbookgen.book.plan import MARGIN, ROW, Plan
from workbookgen.book.worksheet import PlainWorksheet
from workbookgen.book.wrapping import pixels_taken
from workbookgen.language.domains import Choice
from workbookgen.language.entries import Entries, Entry
from workbookgen.language.fields import Input
from workbookgen.language.sentences import refusal, request
from workbookgen.language.views import Link

Cached = Mapping[str, tuple[Entry, ...]]
PIXELS_A_POINT = 96 / 72
AIR = 12  # pixels between two links, or behind a title
# The green triangles that are to be off, as XlsxWriter calls them.
IGNORED_ERRORS = ("formula_differs", "formula_range", "formula_unlocked", "empty_cell_reference")


class Formats:
    """The formats of a workbook, each made once, in the colors of the settings."""

    def __init__(self, book: xlsxwriter.Workbook, colors: Mapping[str, str]):
        self.book, self.colors = book, colors
        self.made: dict[frozenset, Format] = {}

    def __call__(self, properties: Mapping) -> Format:
        key = frozenset(properties.items())
        if key not in self.made:
            self.made[key] = self.book.add_format(look.recolored(properties, self.colors))
        return self.made[key]

    def color(self, usual: str) -> str:
        """The color that the settings put in place of a default one."""
        return look.recolored({"color": usual}, self.colors)["color"]


@dataclass
class Canvas:
    """A worksheet, its plan, and the content of its cells."""

    worksheet: PlainWorksheet
    plan: Plan
    layout: Layout
    entries: Entries
    cached: Cached
    formats: Formats
    heights: dict[int, int] = field(default_factory=dict)
    texts: list[str] = field(default_factory=list)  # the areas of inputs that take text
    refused: dict[tuple, list[Area]] = field(default_factory=dict)  # validation that refuses typing -> its areas

    def text(self, row: int, column: int, text: str, looks: Mapping) -> None:
        if text:
            self.worksheet.write_string(row - 1, column - 1, text, self.formats(looks))
        else:
            self.worksheet.write_blank(row - 1, column - 1, None, self.formats(looks))

    def text_across_rows(self, first: int, last: int, column: int, text: str, looks: Mapping) -> None:
        """A text in a cell that is merged from several rows."""
        self.worksheet.merge_range(first - 1, column - 1, last - 1, column - 1, text, self.formats(looks))

    def number(self, row: int, column: int, number: float, looks: Mapping) -> None:
        self.worksheet.write_number(row - 1, column - 1, number, self.formats(looks))

    def blank_cells(self, row: int, first: int, last: int, looks: Mapping) -> None:
        """Formatted blank cells, such as for a rule across the page."""
        for column in range(first, last + 1):
            self.worksheet.write_blank(row - 1, column - 1, None, self.formats(looks))

    def link(self, row: int, column: int, link: Link, looks: Mapping) -> None:
        self.worksheet.write_url(row - 1, column - 1, f"internal:{self.target(link)}", self.formats(looks), link.words)

    def link_here(self, row: int, column: int, to: int, words: str, looks: Mapping) -> None:
        """A link to a row of this sheet."""
        target = f"internal:{quote_sheetname(self.plan.sheet.name)}!A{to}"
        self.worksheet.write_url(row - 1, column - 1, target, self.formats(looks), words)

    def target(self, link: Link) -> str:
        """The cell that a link leads to."""
        placed = self.layout.placements.get(link.field)
        return f"{quote_sheetname(placed.sheet)}!{placed.cell(0)}" if placed else f"{quote_sheetname(link.sheet)}!A1"

    def format_where(self, formula: str, area: Area, looks: Mapping, **more) -> None:
        """A conditional format by formula; the area counts from 0."""
        self.worksheet.conditional_format(
            *area, {"type": "formula", "criteria": formula, "format": self.formats(looks)} | more
        )

    def make_room(self, row: int, pixels: int) -> None:
        """Make a row at least this high."""
        if pixels > self.height_of(row):
            self.heights[row] = pixels

    def height_of(self, row: int) -> int:
        return self.heights.get(row, self.plan.height_of(row))

    def width(self, first: int, last: int) -> int:
        """The width of some columns in pixels."""
        return sum(self.plan.widths.get(column, MARGIN) for column in range(first, last + 1))

    def behind(self, column: int, text: str, points: float) -> int:
        """The first column into which a text of this size does not reach from its own."""
        end = column
        while self.width(column, end) < pixels_taken(text, points) + AIR:
            end += 1
        return end + 1

    def placed(self, key: str) -> Placement:
        return self.layout.placements[key]

    def cells(self, key: str, looks: Mapping) -> None:
        """Write a field's cells: the entries, or the formulas with their cached values."""
        placement, spot, form = self.placed(key), self.plan.spots[key], self.formats(looks)
        row, column = placement.row - 1, placement.column - 1
        if spot.across > 1 or spot.down > 1:
            for top in range(row, row + placement.rows):
                self.worksheet.merge_range(top, column, top + spot.down - 1, column + spot.across - 1, "", form)
        self._formulas(placement, form)
        if isinstance(placement.field, Input):
            self._entries(placement, form)
            self._validate(placement)
        else:
            self.refuse(look.worked_out(placement.field), (row, column, row + placement.rows - 1, column))

    def refuse(self, rule: Mapping, area: tuple[int, int, int, int]) -> None:
        """Let nothing be typed into an area, counted from 0; cells with the same rule are written together."""
        self.refused.setdefault(tuple(rule.items()), []).append(area)

    def _formulas(self, placement: Placement, form: Format) -> None:
        row, column, formulas = placement.row - 1, placement.column - 1, placement.formulas
        values = ["" if value is None else value for value in self.cached.get(placement.key, ())]
        if isinstance(formulas, CopiedDown):
            self.worksheet.write_copied_down(row, column, formulas, form, values)
            return
        for index, formula in enumerate(formulas):
            self.worksheet.write_formula(row + index, column, formula, form, values[index] if values else "")

    def _entries(self, placement: Placement, form: Format) -> None:
        row, column = placement.row - 1, placement.column - 1
        self.worksheet.write_blank_column(row, column, placement.rows, form)
        for index, entry in enumerate(self.entries[placement.key][: placement.rows]):
            if isinstance(entry, str):
                # Never a formula, whatever it begins with.
                self.worksheet.write_string(row + index, column, entry, form)
            elif entry is not None:
                self.worksheet.write_number(row + index, column, entry, form)

    def _validate(self, placement: Placement) -> None:
        field, row, column = placement.field, placement.row - 1, placement.column - 1
        source = offered(self.layout.placements[field.domain.of]) if isinstance(field.domain, Choice) else ""
        system = self.layout.planner.system
        rule = look.validation(field, source, request(field, system), refusal(field, system))
        self.worksheet.data_validation(row, column, row + placement.rows - 1, column, rule)
        if field.is_text:
            self.texts.append(placement.area.replace("$", ""))

    def heading(self, row: int, first: int, last: int, title: str, aside: str = "", looks: Mapping = look.HEAD) -> None:
        """Write a section's heading, with its rule above it."""
        rule = {name: value for name, value in looks.items() if name.startswith("top")}
        self.blank_cells(row, first, last, look.PLAIN | rule)
        self.text(row, first, title, looks)
        if aside:
            self.text(row, last, aside, look.HEAD_ASIDE | rule)

    def finish(self) -> None:
        """Write what concerns many cells at once: row heights, and the validation of cells that refuse typing."""
        for row, pixels in (dict(self.plan.heights) | self.heights).items():
            self.worksheet.set_row_pixels(row - 1, pixels)
        self.worksheet.set_default_row(ROW / PIXELS_A_POINT)
        for rule, areas in self.refused.items():
            first, *others = joined(areas)
            self.worksheet.data_validation(*first, dict(rule) | {"other_cells": others})
        # XlsxWriter keeps only the last such call, so all areas are in one.
        ignored = dict.fromkeys(IGNORED_ERRORS, "A1:XFD1048576")
        if self.texts:
            ignored["number_stored_as_text"] = " ".join(self.texts)
        self.worksheet.ignore_errors(ignored)


class WithoutFields(Canvas):
    """A canvas that leaves out the cells of fields, so that only the sheet's own texts are written."""

    def cells(self, key: str, looks: Mapping) -> None:
        """Write nothing."""


def offered(names: Placement) -> str:
    """The range that a drop-down list offers: fixed names, or the names of a log without the blank lines below them.

    Every program keeps OFFSET here; Gnumeric loses a range that ends in INDEX.
    """
    if not names.formulas:
        return names.range
    first = replace(names, rows=1, formulas=()).range
    last_row = f'SUMPRODUCT(MAX(({names.range}<>"")*ROW({names.range})))'
    return f"OFFSET({first},0,0,MAX(1,{last_row}-ROW({first})+1),1)"
