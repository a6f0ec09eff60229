"""One worksheet to be written on: texts, links, rules, and the cells of fields.

Rows and columns are counted from 1 here, as in the plan. Everything is written to its cell once; what a cell looks
like is stated where it is written.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from xlsxwriter.utility import quote_sheetname

from workbookgen.book import look
from workbookgen.book.areas import Area, joined
from workbookgen.book.copied import CopiedDown
from workbookgen.book.placement import Layout, Placement
from workbookgen.book.plan import MARGIN, ROW, Plan
from workbookgen.book.worksheet import PlainWorksheet
from workbookgen.language.domains import Choice
from workbookgen.language.entries import Entries, Entry
from workbookgen.language.fields import Input
from workbookgen.language.sentences import refusal
from workbookgen.language.views import Link

Cached = Mapping[str, tuple[Entry, ...]]
PIXELS_A_POINT = 96 / 72
UNMARKED = ("formula_differs", "formula_range", "formula_unlocked", "empty_cell_reference")  # as XlsxWriter calls them


class Formats:
    """The formats in use, each made once, in the colors of the settings."""

    def __init__(self, book, colors: Mapping[str, str]):
        self.book, self.colors, self.made = book, colors, {}

    def __call__(self, properties: Mapping):
        key = frozenset(properties.items())
        if key not in self.made:
            self.made[key] = self.book.add_format(look.recolored(properties, self.colors))
        return self.made[key]

    def color(self, usual: str) -> str:
        """A color as the settings have it."""
        return look.recolored({"color": usual}, self.colors)["color"]


@dataclass
class Canvas:
    """A worksheet, its plan, and the content of its cells."""

    to: PlainWorksheet
    plan: Plan
    layout: Layout
    entries: Entries
    cached: Cached
    formats: Formats
    heights: dict[int, int] = field(default_factory=dict)
    texts: list[str] = field(default_factory=list)  # the areas of inputs that take words
    refused: dict[tuple, list[Area]] = field(default_factory=dict)  # what is said of worked-out cells -> where, from 0

    def text(self, row: int, column: int, text: str, looks: Mapping) -> None:
        if text:
            self.to.write_string(row - 1, column - 1, text, self.formats(looks))
        else:
            self.to.write_blank(row - 1, column - 1, None, self.formats(looks))

    def number(self, row: int, column: int, number: float, looks: Mapping) -> None:
        self.to.write_number(row - 1, column - 1, number, self.formats(looks))

    def across(self, row: int, first: int, last: int, looks: Mapping) -> None:
        """Formatted blank cells: a rule, a line."""
        for column in range(first, last + 1):
            self.to.write_blank(row - 1, column - 1, None, self.formats(looks))

    def link(self, row: int, column: int, link: Link, looks: Mapping) -> None:
        self.to.write_url(row - 1, column - 1, f"internal:{self.target(link)}", self.formats(looks), link.words)

    def link_here(self, row: int, column: int, to: int, words: str, looks: Mapping) -> None:
        """A link to a row of this sheet."""
        target = f"internal:{quote_sheetname(self.plan.sheet.name)}!A{to}"
        self.to.write_url(row - 1, column - 1, target, self.formats(looks), words)

    def target(self, link: Link) -> str:
        """The cell that a way leads to."""
        placed = self.layout.placements.get(link.field)
        return f"{quote_sheetname(placed.sheet)}!{placed.cell(0)}" if placed else f"{quote_sheetname(link.sheet)}!A1"

    def where(self, formula: str, area: Area, looks: Mapping, **more) -> None:
        """How cells look where a formula holds; the area is counted from 0."""
        self.to.conditional_format(
            *area, {"type": "formula", "criteria": formula, "format": self.formats(looks)} | more
        )

    def high(self, row: int, pixels: int) -> None:
        """A row of at least this height."""
        if pixels > self.height_of(row):
            self.heights[row] = pixels

    def height_of(self, row: int) -> int:
        return self.heights.get(row, self.plan.height_of(row))

    def width(self, first: int, last: int) -> int:
        """Pixels from one column to another."""
        return sum(self.plan.widths.get(column, MARGIN) for column in range(first, last + 1))

    def placed(self, key: str) -> Placement:
        return self.layout.placements[key]

    def cells(self, key: str, looks: Mapping) -> None:
        """A field's cells: what was typed, or the formulas with their cached values."""
        placement, spot, form = self.placed(key), self.plan.spots[key], self.formats(looks)
        row, column = placement.row - 1, placement.column - 1
        if spot.across > 1 or spot.down > 1:
            for top in range(row, row + placement.rows):
                self.to.merge_range(top, column, top + spot.down - 1, column + spot.across - 1, "", form)
        self._formulas(placement, form)
        if isinstance(placement.field, Input):
            self._entries(placement, form)
            self._offer(placement)
        else:
            rule = tuple(look.worked_out(placement.field).items())
            self.refused.setdefault(rule, []).append((row, column, row + placement.rows - 1, column))

    def _formulas(self, placement: Placement, form) -> None:
        row, column, formulas = placement.row - 1, placement.column - 1, placement.formulas
        values = ["" if value is None else value for value in self.cached.get(placement.key, ())]
        if isinstance(formulas, CopiedDown):
            self.to.write_copied_down(row, column, formulas, form, values)
            return
        for index, formula in enumerate(formulas):
            self.to.write_formula(row + index, column, formula, form, values[index] if values else "")

    def _entries(self, placement: Placement, form) -> None:
        row, column = placement.row - 1, placement.column - 1
        self.to.write_blank_column(row, column, placement.rows, form)
        for index, entry in enumerate(self.entries[placement.key][: placement.rows]):
            if isinstance(entry, str):
                self.to.write_string(row + index, column, entry, form)  # never a formula, whatever it begins with
            elif entry is not None:
                self.to.write_number(row + index, column, entry, form)

    def _offer(self, placement: Placement) -> None:
        field, row, column = placement.field, placement.row - 1, placement.column - 1
        source = offered(self.layout.placements[field.domain.of]) if isinstance(field.domain, Choice) else ""
        rule = look.validation(field, source, refusal(field, self.layout.planner.system))
        self.to.data_validation(row, column, row + placement.rows - 1, column, rule)
        if field.is_text:
            self.texts.append(placement.area.replace("$", ""))

    def heading(self, row: int, first: int, last: int, title: str, aside: str = "", looks: Mapping = look.HEAD) -> None:
        """A section's heading under its rule."""
        rule = {name: value for name, value in looks.items() if name.startswith("top")}  # its line above
        self.across(row, first, last, look.PLAIN | rule)
        self.text(row, first, title, looks)
        if aside:
            self.text(row, last, aside, look.HEAD_ASIDE | rule)

    def finish(self) -> None:
        """What is said of many cells at once: heights of rows, and which cells refuse to be typed into."""
        for row, pixels in (dict(self.plan.heights) | self.heights).items():
            self.to.set_row_pixels(row - 1, pixels)
        self.to.set_default_row(ROW / PIXELS_A_POINT)
        for rule, areas in self.refused.items():
            first, *others = joined(areas)
            self.to.data_validation(*first, dict(rule) | {"other_cells": others})
        # No green triangles where all is as it should be. XlsxWriter keeps only the last such call, so all are in one.
        ignored = dict.fromkeys(UNMARKED, "A1:XFD1048576")
        if self.texts:
            ignored["number_stored_as_text"] = " ".join(self.texts)
        self.to.ignore_errors(ignored)


class WithoutFields(Canvas):
    """A worksheet on which only what the planner says by itself is written."""

    def cells(self, key: str, looks: Mapping) -> None:
        """Nothing."""


def offered(names: Placement) -> str:
    """What a drop-down list offers: fixed names, or those of a log down to the last one, so no blank lines follow.

    Gnumeric loses a range that ends in INDEX; OFFSET every program keeps.
    """
    if not names.formulas:
        return names.range
    first = replace(names, rows=1, formulas=()).range
    last_row = f'SUMPRODUCT(MAX(({names.range}<>"")*ROW({names.range})))'
    return f"OFFSET({first},0,0,MAX(1,{last_row}-ROW({first})+1),1)"
