"""The plan of a page: a line of links, its title, and its bands, one below another.

What no section shows is calculated in hidden columns to the right.
"""

from collections.abc import Iterator

from workbookgen.book import sections
from workbookgen.book.plan import HIDDEN, LINKS_ROW, MARGIN, ROW, PlacedSection, Plan, Spot, columns_of, link_lines
from workbookgen.language.parts import Card, Log, Sheet, Table
from workbookgen.language.planner import Planner
from workbookgen.language.proofs import ProofTable
from workbookgen.language.views import COLUMN, Section

FIRST_BAND = 5  # links, a gap, the title, a gap
GAP, TITLE_ROW = 14, 42
CHOSEN = 3, 4, 4  # row, first column and number of columns of the chosen name
CHAPTERS = 3  # a page with at least this many has links to them


def plan_of_page(sheet: Sheet, planner: Planner) -> Plan:
    """The plan of a page: the rows of its sections, and the spots of their fields."""
    placed, bands, end = _sections_placed(sheet, planner)
    spots: dict[str, Spot] = {}
    if sheet.grid.chosen:
        row, column, across = CHOSEN
        spots[sheet.grid.chosen] = Spot(row, column, across=across)
    for each in placed:
        column, _ = columns_of(each.section)
        spots |= sections.module_for(each.section).spots(each.section, planner, each.row, column)
    widths = {1: MARGIN} | dict(enumerate(sheet.grid.widths, start=2))
    seen = max([1 + len(sheet.grid.widths), *(spot.column + spot.across - 1 for spot in spots.values())])
    widths |= {column: COLUMN for column in range(2, seen + 1) if column not in widths}
    widths |= dict.fromkeys(range(seen + 1, _hidden(sheet, spots, seen + 1, below=end)), HIDDEN)
    starts = _starts(sheet, placed)
    return Plan(
        sheet,
        spots,
        widths,
        heights={
            1: LINKS_ROW,
            2: LINKS_ROW if link_lines(sheet) == 2 else GAP,
            3: TITLE_ROW,
            4: ROW + 2 if starts else GAP - 2,
        },
        placed=tuple(placed),
        last_column=seen,
        last_row=end - 2,
        bands=tuple(bands),
        printed_to=_printed_to(sheet, bands, end),
        papers=tuple(_papers(sheet, planner, placed)),
        starts=starts,
        further=_further(placed, bands, starts) if starts else (),
    )


def _sections_placed(sheet: Sheet, planner: Planner) -> tuple[list[PlacedSection], list[int], int]:
    """Its sections with their rows, the first rows of its bands, and the row in which the next band would begin."""
    placed, bands, row = [], [], FIRST_BAND
    for band in sheet.bands:
        bands.append(row)
        ends = [row]
        for section in band.sections:
            top = ends[-1] + 1 if section.is_below else row
            placed.append(PlacedSection(section, top))
            ends.append(top + sections.module_for(section).rows(section, planner))
        row = 1 + max(ends)
    return placed, bands, row


def _printed_to(sheet: Sheet, bands: list[int], end: int) -> int:
    """The last printed row; of a page that is all for the screen, its last."""
    ends = zip(sheet.bands, [*bands[1:], end], strict=True)
    printed = [row - 2 for band, row in ends if all(section.is_printed for section in band.sections)]
    return max(printed, default=end - 2)


def _papers(sheet: Sheet, planner: Planner, placed: list[PlacedSection]) -> Iterator[int]:
    """The first rows of the paper pages, on a sheet that is made of such."""
    for each in placed if sheet.grid.paper else ():
        yield from sections.module_for(each.section).papers(each.section, planner, each.row)


def _starts(sheet: Sheet, placed: list[PlacedSection]) -> tuple[PlacedSection, ...]:
    """Of a page with several chapters, the first section of each with a title that is not a caution."""
    starts, rest = [], iter(placed)
    for chapter in sheet.chapters:
        of_chapter = [next(rest) for band in chapter.view for _ in band.sections]
        starts += [each for each in of_chapter if _is_titled(each.section)][:1]
    return tuple(starts) if len(starts) >= CHAPTERS else ()


def _further(
    placed: list[PlacedSection], bands: list[int], starts: tuple[PlacedSection, ...]
) -> tuple[PlacedSection, ...]:
    """Of a page with links to its chapters, the other bands that begin with a title."""
    first = {each.row: each for each in reversed(placed)}  # of sections side by side, the leftmost
    return tuple(first[row] for row in bands if _is_titled(first[row].section) and first[row] not in starts)


def _is_titled(section: Section) -> bool:
    """Whether a link may lead to its title; no link skips a caution."""
    return bool(section.title) and not getattr(section, "is_caution", False)


def _hidden(sheet: Sheet, spots: dict[str, Spot], column: int, below: int) -> int:
    """Add spots for what no section shows, in columns from this one on; returns the first free column.

    What is longer than a cell stands below the page, so that no row inserted in this divides it.
    """
    # The first of these columns hold the given values of published examples.
    column += max((table.most_given for table in sheet.holders if isinstance(table, ProofTable)), default=0)
    row = 1
    for card in (holder for holder in sheet.holders if isinstance(holder, Card)):
        for key in (card.full_key(each.key) for each in (*card.fields, *card.automatic)):
            if key not in spots:
                spots[key] = Spot(row, column)
                row += 1
    column += row > 1
    for table in (holder for holder in sheet.holders if isinstance(holder, Log | Table)):
        fields = {table.full_key(each.key): each for each in (*table.by_key.values(), *getattr(table, "automatic", ()))}
        first = next((spots[key].row for key in fields if key in spots and spots[key].rows == table.rows), below)
        for key, each in fields.items():
            if key not in spots:
                spots[key] = Spot(first, column, 1 if getattr(each, "is_one", False) else table.rows)
                column += 1
    return column
