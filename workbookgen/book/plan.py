"""The plan of a sheet: which rows and columns everything on it has.

Rows and columns count from 1; sizes are in screen pixels. Column A is a margin, in which a log marks its lines. A page
(`page_plan`) and a log with a sheet of its own (`log_plan`) are planned in different ways.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from workbookgen.language.parts import Sheet
from workbookgen.language.views import Matrix, Section

MARGIN, ROW = 26, 22
LINKS_ROW = 26
HIDDEN = 60
SCREEN = 1300  # pixels of a sheet that are visible on a small laptop


@dataclass(frozen=True)
class Spot:
    """The cells of a field: the first one, and how many rows of them."""

    row: int
    column: int
    rows: int = 1
    across: int = 1  # columns merged into each cell
    down: int = 1  # rows merged into each cell


@dataclass(frozen=True)
class Strip:
    """Adjacent columns of a log under one heading: visible, folded or hidden."""

    heading: str
    keys: tuple[str, ...]
    is_typed: bool = False
    is_folded: bool = False
    is_hidden: bool = False


@dataclass(frozen=True)
class PlacedSection:
    """A section of a page, and the row of its heading."""

    section: Section
    row: int


@dataclass(frozen=True)
class Plan:
    """A sheet with everything in its place."""

    sheet: Sheet
    spots: Mapping[str, Spot]  # by full key
    widths: Mapping[int, int]  # by column
    heights: Mapping[int, int]  # by row
    placed: tuple[PlacedSection, ...] = ()
    strips: tuple[tuple[int, Strip], ...] = ()  # of a log, each with its first column
    folds: tuple[tuple[int, Strip], ...] = ()  # of a log: the columns with a fold's name, each with its strip
    last_column: int = 1  # the last visible one
    last_row: int = 1
    bands: tuple[int, ...] = ()  # of a page: their first rows
    printed_to: int = 1  # of a page: the last row that is printed
    papers: tuple[int, ...] = ()  # of a sheet made of paper pages, such as labels: their first rows
    starts: tuple[PlacedSection, ...] = ()  # of a long page: the first section of each chapter, to which it has links
    further: tuple[PlacedSection, ...] = ()  # of a long page: other titled sections, which get a link if there is room

    @cached_property
    def folded(self) -> frozenset[int]:
        """The folded columns of a log."""
        folded = [(first, strip) for first, strip in self.strips if strip.is_folded]
        return frozenset(column for first, strip in folded for column in range(first, first + len(strip.keys)))

    @cached_property
    def last_printed(self) -> int:
        """The last printed column of a page."""
        named = (spot.column + spot.across - 1 for key, spot in self.spots.items() if key in self.sheet.shown)
        return max([1 + len(self.sheet.grid.widths), *named])

    def height_of(self, row: int) -> int:
        return self.heights.get(row, ROW)


def link_lines(sheet: Sheet) -> int:
    """The lines of a page's links: one, or two if the page is wider than a small screen."""
    return 2 if sum(sheet.grid.widths) > SCREEN else 1


def columns_of(section: Section) -> tuple[int, int]:
    """The first and the last column of a section; the grid begins right of the margin."""
    first, last = section.across
    return 1 + first, 1 + last


def first_value(matrix: Matrix) -> int:
    """The first column of a matrix's values, which are at its right end."""
    return columns_of(matrix)[1] - len(matrix.heads) + 1
