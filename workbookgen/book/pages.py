"""The plan of a page: bands one below another on the grid, and hidden columns for what no section shows."""

from workbookgen.book import sections
from workbookgen.book.plan import (
    FIRST_BAND,
    GAP,
    HIDDEN,
    LINKS_ROW,
    MARGIN,
    ROW,
    TITLE_ROW,
    Placed,
    Plan,
    Spot,
    plan_of_log,
)
from workbookgen.language.parts import Card, Log, Sheet, Table
from workbookgen.language.planner import Planner
from workbookgen.language.proofs import ProofTable

CHOSEN = 3, 4, 4  # row, column, and how many columns the chosen name takes
GRID_COLUMN = 96
CHAPTERS = 3  # from which on a page has links to each


def plan_of(sheet: Sheet, planner: Planner) -> Plan:
    """The plan of a sheet: a log's own, or a page."""
    if sheet.log_view:
        [log] = sheet.logs
        return plan_of_log(sheet, log, sheet.log_view, [part for part in sheet.parts if isinstance(part, Card)])
    return plan_of_page(sheet, planner)


def plan_of_page(sheet: Sheet, planner: Planner) -> Plan:
    spots: dict[str, Spot] = {}
    placed, papers, bands, row, printed_to = [], [], [], FIRST_BAND, 1
    if sheet.grid.chosen:
        spots[sheet.grid.chosen] = Spot(CHOSEN[0], CHOSEN[1], across=CHOSEN[2])
    for band in sheet.bands:
        bands.append(row)
        ends = [row]
        for section in band.sections:
            top = ends[-1] + 1 if section.is_below else row
            placed.append(Placed(section, top))
            if sheet.grid.paper:
                papers += sections.of(section).papers(section, planner, top)
            spots |= sections.of(section).spots(section, planner, top, 1 + section.across[0])
            ends.append(top + sections.of(section).rows(section, planner))
        row = 1 + max(ends)
        printed_to = row - 2 if all(section.is_printed for section in band.sections) else printed_to
    widths = {1: MARGIN} | dict(enumerate(sheet.grid.widths, start=2))
    seen = max([1 + len(sheet.grid.widths), *(spot.column + spot.across - 1 for spot in spots.values())])
    widths |= {column: GRID_COLUMN for column in range(2, seen + 1) if column not in widths}
    column = _hidden(sheet, planner, spots, seen + 1)
    widths |= dict.fromkeys(range(seen + 1, column), HIDDEN)
    starts = _starts(sheet, placed)
    heights = {1: LINKS_ROW, 2: GAP, 3: TITLE_ROW, 4: ROW + 2 if starts else GAP - 2}
    # If everything is for the screen, printing it is better than nothing.
    printed_to = printed_to if printed_to > 1 else row - 2
    return Plan(
        sheet,
        spots,
        widths,
        heights,
        tuple(placed),
        last_column=seen,
        last_row=row - 2,
        bands=tuple(bands),
        printed_to=printed_to,
        papers=tuple(papers),
        starts=starts,
        further=_further(sheet, placed, starts),
    )


def _starts(sheet: Sheet, placed: list[Placed]) -> tuple[Placed, ...]:
    """For a page of several chapters, where each begins: at its first title that is not a caution."""
    titled = [
        next(
            (
                section
                for band in chapter.view
                for section in band.sections
                if section.title and not getattr(section, "is_caution", False)
            ),
            None,
        )
        for chapter in sheet.chapters
    ]
    starts = tuple(next(each for each in placed if each.section is section) for section in titled if section)
    return starts if len(starts) >= CHAPTERS else ()


def _further(sheet: Sheet, placed: list[Placed], starts: tuple[Placed, ...]) -> tuple[Placed, ...]:
    """Of a page with links: the other bands that begin with a title."""
    first = [band.sections[0] for chapter in sheet.chapters for band in chapter.view]
    begun = [each.section for each in starts]
    return tuple(
        each
        for each in placed
        if starts
        and any(each.section is section for section in first)
        and not any(each.section is section for section in begun)
        and each.section.title
        and not getattr(each.section, "is_caution", False)
    )


def _hidden(sheet: Sheet, planner: Planner, spots: dict[str, Spot], column: int) -> int:
    """Puts what nothing shows into columns from this one on; returns the first free column."""
    # Their values stand there.
    column += max((table.most_given for table in sheet.parts if isinstance(table, ProofTable)), default=0)
    row = 1
    for card in (part for part in sheet.parts if isinstance(part, Card)):
        for key in (f"{card.key}_{each.key}" for each in (*card.fields, *card.automatic)):
            if key not in spots:
                spots[key] = Spot(row, column)
                row += 1
    column += row > 1
    for part in (part for part in sheet.parts if isinstance(part, Log | Table)):
        fields = {f"{part.key}_{each.key}": each for each in (*part.by_key.values(), *getattr(part, "automatic", ()))}
        first = next((spots[key].row for key in fields if key in spots and spots[key].rows == part.rows), 1)
        for key, each in fields.items():
            if key not in spots:
                spots[key] = Spot(first, column, 1 if getattr(each, "is_one", False) else part.rows)
                column += 1
    return column
