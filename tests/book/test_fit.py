"""Whether what a planner says fits where it stands, measured with a real typeface in the written file.

Liberation Sans has the widths of Arial. A column of width w has 7w + 5 pixels at 96 to the
inch (the file format's rule for a typeface whose digits are 7 pixels wide; XlsxWriter's
documentation, read). Some of them are the cell's own edge.
"""

import re
from functools import cache

import pytest
from openpyxl.utils import range_boundaries
from openpyxl.utils.cell import coordinate_to_tuple

from planners import laid_out, opened
from workbookgen.book import look
from workbookgen.book.sections.entries import help_of
from workbookgen.checking.expected import expected_of_keys
from workbookgen.checking.scenarios import scenario
from workbookgen.language.automatic import FIRST, MESSAGE
from workbookgen.language.domains import Name, Note
from workbookgen.language.entries import starting_entries
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import Block
from workbookgen.language.sentences import doubled, missing, refusal, unusual
from workbookgen.settings import load, templates
from workbookgen.unit_systems import UNIT_SYSTEMS

ImageFont = pytest.importorskip("PIL.ImageFont")

EDGE, INDENT = 5, 9  # pixels
LINES_OF_A_LABEL = 2
SMALLEST = 6  # points of a name that shrinks to its cell
USUAL_COLUMN, USUAL_ROW = 64, 22  # pixels
LONGEST_NAME = "Moss and heather shawl"  # as names in a guild are: some 22 letters


@cache
def face(bold: bool):
    try:
        return ImageFont.truetype(f"LiberationSans-{'Bold' if bold else 'Regular'}.ttf", 1000)
    except OSError:
        pytest.skip("Liberation Sans is not installed")


def pixels(text: str, style: dict) -> float:
    return face(style.get("bold", False)).getlength(text) / 1000 * style["font_size"] * 96 / 72


def lines(text: str, style: dict, width: float) -> int:
    """Lines that a text takes when it is broken between words."""
    count, line = 1, ""
    for word in text.split():
        longer = f"{line} {word}".strip()
        if pixels(longer, style) > width and line:
            count, line = count + 1, word
        else:
            line = longer
    return count


class Page:
    """A written sheet, in pixels."""

    def __init__(self, sheet, plan):
        self.sheet, self.plan = sheet, plan
        self.merged = {area.coord.split(":")[0]: area for area in sheet.merged_cells.ranges}
        self.covered = {(row, column) for area in sheet.merged_cells.ranges for row, column in area.cells}
        self.widths = {
            column: 0 if each.hidden else round(each.width * 7)
            for each in sheet.column_dimensions.values()
            for column in range(each.min, each.max + 1)
        }

    def across(self, first: int, last: int) -> int:
        return sum(self.widths.get(column, USUAL_COLUMN) for column in range(first, last + 1))

    def height(self, row: int) -> float:
        return (self.sheet.row_dimensions[row].height or USUAL_ROW * 0.75) / 0.75

    def is_free(self, row: int, column: int) -> bool:
        return self.sheet.cell(row, column).value is None and (row, column) not in self.covered

    def room(self, cell) -> tuple[float, float]:
        """Pixels across and down that a cell's text has: its own, those of the cells merged into it, those that are
        free beside it."""
        area = self.merged.get(cell.coordinate)
        last = area.max_col if area else cell.column
        high = sum(self.height(row) for row in range(cell.row, (area.max_row if area else cell.row) + 1))
        if not cell.alignment.wrap_text and not area:
            if cell.alignment.horizontal == "right":
                first = cell.column
                while first > 1 and self.is_free(cell.row, first - 1):
                    first -= 1
                return self.across(first, last) - EDGE, high
            while last < self.plan.last_column and self.is_free(cell.row, last + 1):
                last += 1
        return self.across(cell.column, last) - EDGE - INDENT * int(cell.alignment.indent or 0), high


def style_of(cell) -> dict:
    return {"font_size": cell.font.size, "bold": bool(cell.font.bold)}


@pytest.fixture(scope="module", params=(*UNIT_SYSTEMS, *(f"{system}-small" for system in UNIT_SYSTEMS)))
def written(request, built):
    """The layout of a planner that is handed out, and its sheets as they are written."""
    settings = load(templates() / f"{request.param}.toml")
    layout = laid_out(settings)
    return layout, {sheet.title: Page(sheet, layout.plans[sheet.title]) for sheet in opened(built(settings))}


def test_the_measure_itself():
    # Ten digits of Arial at 11 points: 556 thousandths of the size each (Arial's metrics, from memory).
    assert pixels("0123456789", look.PLAIN) == pytest.approx(10 * 0.556 * 11 * 96 / 72, rel=0.005)


def test_every_text_is_read_in_full(written):
    """Titles, labels, units, help, links, notes, facts: in one line as far as it is free to the right, or broken
    into the lines it has."""
    layout, pages = written
    typed = {(each.sheet, each.cell(row)) for each in layout.inputs for row in range(each.rows)}
    cut, seen = [], 0
    for name, page in pages.items():
        running = {
            each.column
            for key, each in layout.placements.items()
            if each.sheet == name and getattr(each.field, "runs_on", False)
        }
        for row in page.sheet.iter_rows():
            for cell in row:
                if cell.data_type != "s" or (name, cell.coordinate) in typed or cell.column in running:
                    continue
                style, (across, down) = style_of(cell), page.room(cell)
                if page.widths.get(cell.column, USUAL_COLUMN) == 0:
                    continue  # folded or hidden: measured when it opens, below
                if cell.alignment.wrap_text:
                    line = style["font_size"] * 96 / 72 * 1.15
                    fits = (
                        lines(cell.value, style, across) * line <= down + 6
                        and max(pixels(word, style) for word in cell.value.split()) <= across + EDGE
                    )
                else:
                    fits = pixels(cell.value, style) <= across + EDGE
                cut += [] if fits else [f"{name}!{cell.coordinate}: {cell.value}"]
                seen += 1
    assert cut == [] and seen > 1000


def test_a_head_on_one_line_has_room_for_what_keeps_it_off_the_edge(written):
    """Else that room goes to a line of its own, and the head stands at the edge, or a line too high."""
    _, pages = written
    heads = [
        (page, cell)
        for page in pages.values()
        for row in page.sheet.iter_rows()
        for cell in row
        if cell.number_format == f"@{look.AIR}" and cell.alignment.wrap_text
    ]
    air = 2 * pixels(")", {"font_size": look.SMALL, "bold": True})
    cut = [
        f"{cell.parent.title}!{cell.coordinate}: {cell.value}"
        for page, cell in heads
        if pixels(cell.value, style_of(cell)) + air > page.plan.widths[cell.column]
    ]
    assert cut == [] and len(heads) > 60


def test_what_is_printed_ends_on_the_paper(written):
    """Beyond a sheet's print area, texts are cut off."""
    layout, pages = written
    cut = []
    for name, page in pages.items():
        left, top, right, bottom = range_boundaries(page.sheet.print_area.split("!")[1])
        for row in page.sheet.iter_rows(top, bottom, left, right):
            for cell in row:
                if (
                    cell.data_type == "s"
                    and not cell.alignment.wrap_text
                    and cell.alignment.horizontal in (None, "left", "general")
                    and cell.coordinate not in page.merged
                ):
                    cut += (
                        []
                        if pixels(cell.value, style_of(cell)) <= page.across(cell.column, right)
                        else [f"{name}!{cell.coordinate}"]
                    )
    assert cut == []


def test_a_label_takes_two_lines_at_most_and_breaks_no_word(written):
    layout, _ = written
    cut = []
    for sheet in layout.planner.sheets:
        plan = layout.plans[sheet.name]
        for first, strip in plan.strips:
            for column, key in enumerate(strip.keys, start=first):
                [log] = sheet.logs
                field = MESSAGE if key == MESSAGE.key else log.by_key[key]
                room = plan.widths[column] - EDGE - INDENT * isinstance(field, Input)
                fits = (
                    lines(field.label, look.LABEL, room) <= LINES_OF_A_LABEL
                    and max((pixels(word, look.LABEL) for word in field.label.split()), default=0) <= room
                )
                cut += [] if strip.is_hidden or fits else [f"{sheet.name}: {key}, {field.label}"]
    assert cut == []


def sentences(block: Block, system: str):
    """Everything that may be said of a record, but for a name that stands there twice."""
    said = [refusal(each, system) for each in block.inputs] + [rule.sentence for rule in block.rules]
    said += [unusual(each, system) for each in block.ranged]
    said += [missing(each) for each in block.inputs if each.needed]
    return said + [doubled(each) for each in block.inputs if block.names_its_records(each)]


def test_what_is_wrong_can_be_read_in_full_where_it_is_said(written):
    """A message of a log stands in its head, after the record's name; a card's, in the place of the answers."""
    layout, pages = written
    said, cut = 0, []
    for placement in layout.placements.values():
        page = pages[placement.sheet]
        if (
            placement.field not in (FIRST, MESSAGE)
            or placement.column > page.plan.last_column
            or (placement.field == MESSAGE and placement.rows > 1)
        ):
            continue
        cell = page.sheet[placement.cell(0)]
        across, down = page.room(cell)
        whose = LONGEST_NAME if "listed" in placement.holder.by_key else "Line 200"
        name, style = f"{whose}: " if placement.field == FIRST else "", style_of(cell)
        for sentence in sentences(placement.holder, layout.planner.system):
            broken = (
                cell.alignment.wrap_text
                and lines(sentence, style, across) * style["font_size"] * 96 / 72 * 1.15 <= down + 6
            )
            cut += [] if broken or pixels(name + sentence, style) <= across + EDGE else [(placement.range, sentence)]
            said += 1
    assert cut == [] and said > 140


def test_what_a_log_says_of_itself_shows_while_one_types(written):
    """A count wider than its cells would show as ###.

    A sentence that begins in the frozen column is cut at its edge by LibreOffice until all is drawn anew (seen).
    """
    layout, pages = written
    for sheet in layout.planner.sheets:
        if not sheet.log_view:
            continue
        [log] = sheet.logs
        plan = layout.plans[sheet.name]
        spot, count = plan.spots[f"{log.key}_open"], f"{log.rows:,} lines need a look"
        assert (
            sum(plan.widths[column] for column in range(spot.column, spot.column + spot.across))
            >= pixels(count, look.MESSAGE) + EDGE
        ), sheet.name
        frozen = pages[sheet.name].sheet.freeze_panes
        assert plan.spots[f"{log.key}_first"].column == coordinate_to_tuple(frozen)[1], sheet.name


SMALL_WINDOW = 962  # pixels of a sheet that LibreOffice shows in a window 1024 pixels wide (measured in a picture)
DRAWN_WIDER = 1.12  # so much wider it draws a column, but not its text (measured)
LONGEST_TOTALS = {
    "Skeins": "200 skeins, 48,215 yd, 812.5 oz; 12 of them not weighed; 11 of them set aside; worth 1,250.00; 38 more gone",
    "Fiber": "40 lots, 1,284.5 oz of yarn still in them, 112.5 oz of it set aside, worth 1,250.00; 12 more not known",
}


def test_what_the_head_of_a_log_says_is_in_sight_in_a_small_window(written):
    """1024 pixels, as on an old laptop: the end of "Measure one full loop, ..." was beyond its right edge."""
    layout, pages = written
    cut, said = [], 0
    for sheet in layout.planner.sheets:
        if not sheet.log_view:
            continue
        [log] = sheet.logs
        page = pages[sheet.name]
        name = LONGEST_NAME if "listed" in log.by_key else "Line 200"
        texts = {f"{log.key}_first": [f"{name}: {each}" for each in sentences(log, layout.planner.system)]}
        if total := sheet.log_view.in_head:
            texts[total] = [LONGEST_TOTALS[sheet.name]]
        for key, all_of_them in texts.items():
            cell = page.sheet[layout.placements[key].cell(0)]
            across, down = page.room(cell)
            # In a program that draws columns as wide as they are, more of them are in sight.
            end = DRAWN_WIDER * (page.across(1, cell.column - 1) + across + EDGE)
            for text in all_of_them:
                style = style_of(cell)
                high = lines(text, style, across) if cell.alignment.wrap_text else 1
                small = style | {"font_size": look.SMALL} if cell.alignment.shrink_to_fit else style
                is_whole = cell.alignment.wrap_text or pixels(text, small) <= across
                fits = high * style["font_size"] * 96 / 72 * 1.15 <= down
                cut += [] if is_whole and fits and end <= SMALL_WINDOW else [text]
                said += 1
    assert cut == [] and said > 90


def test_what_the_log_says_of_a_project_is_in_sight_on_its_own_page(written):
    """In two lines: the ends of the longest sentences were beyond the right edge of a small window."""
    layout, pages = written
    placement = layout.placements["project_log_says"]
    cell = pages[placement.sheet].sheet[placement.cell(0)]
    across, down = pages[placement.sheet].room(cell)
    longest = max(
        lines(each, style_of(cell), across)
        for each in sentences(layout.planner.blocks["projects"], layout.planner.system)
    )
    assert cell.alignment.wrap_text and longest == 2 and 2 * cell.font.size * 96 / 72 * 1.15 <= down
    assert pages[placement.sheet].across(1, cell.column - 1) + across <= SMALL_WINDOW


def test_the_first_steps_are_in_sight_in_a_small_window(written):
    """The third step ended beyond its right edge."""
    layout, pages = written
    page = next(iter(pages.values()))
    [cell] = [
        each
        for row in page.sheet.iter_rows()
        for each in row
        if each.data_type == "s" and str(each.value).startswith("1. ")
    ]
    assert page.across(1, cell.column - 1) + DRAWN_WIDER * pixels(cell.value, style_of(cell)) <= SMALL_WINDOW


def test_the_names_that_are_offered_fit_their_cells(written):
    layout, pages = written
    cut = set()
    for placement in layout.inputs:
        _, offered = layout.planner.by_key.get(getattr(placement.field.domain, "of", None), (None, None))
        spot = layout.plans[placement.sheet].spots[placement.key]
        room = (
            sum(
                layout.plans[placement.sheet].widths[column] for column in range(spot.column, spot.column + spot.across)
            )
            - EDGE
            - INDENT
        )
        cell = pages[placement.sheet].sheet[placement.cell(0)]
        room *= look.SIZE / SMALLEST if cell.alignment.shrink_to_fit else 1
        for value in getattr(offered, "values", ()):
            cut |= set() if pixels(value, look.PLAIN) <= room else {(placement.key, value)}
    assert cut == set()


def test_the_names_in_a_new_planner_fit_their_cells(written):
    """Those of the guide ended in the middle of a word, since the cell beside them is filled in."""
    layout, pages = written
    cut, seen = [], 0
    for key, entries in starting_entries(layout.planner).items():
        if not isinstance(layout.placements[key].field.domain, Name):
            continue
        for row, name in enumerate(entries):
            if name is not None:
                cell = pages[layout.placements[key].sheet].sheet[layout.placements[key].cell(row)]
                width = pages[layout.placements[key].sheet].widths.get(cell.column, USUAL_COLUMN) - EDGE - INDENT
                room = width * (look.SIZE / SMALLEST if cell.alignment.shrink_to_fit else 1)
                cut += [] if not width > 0 or pixels(name, style_of(cell)) <= room else [name]
                seen += 1
    assert cut == [] and seen > 0


def test_a_column_that_runs_on_has_the_sheet_to_its_right(written):
    layout, pages = written
    running = [each for each in layout.placements.values() if getattr(each.field, "runs_on", False)]
    assert running
    for placement in running:
        page = pages[placement.sheet]
        for value in placement.field.values:
            assert pixels(value, look.FACT) <= page.across(placement.column, page.plan.last_column), re.sub(
                r"\s+", " ", value
            )


@pytest.mark.parametrize(
    "said, shown",
    [
        ("Carded. Empty: combed, as the guide says of every other kind of wool that it names.", "Carded"),
        ("Carded: brushed open between two cards, so that the fibers lie every way, and then rolled.", "Carded"),
        (
            "Carded. Brushed open; rolled, so that the fibers lie every way, and then spun from the end.",
            "Carded. Brushed open",
        ),
        ("Carded. Empty: combed.", "Carded. Empty: combed"),
    ],
)
def test_a_help_that_is_cut_says_nothing_by_halves(said, shown):
    """Where two short lines do not hold all of it: "Empty" alone would be read as a word of its own."""
    assert help_of(Input("way", "Prepared by", Note(), help=said), None, 25) == shown


def test_what_is_answered_in_words_ends_where_its_page_ends(written):
    """All that cards say of numbers in drawn sets: "enough to hold, in practiced hands" ended beyond the paper, and
    "open projects have enough yarn, 2 not known" beneath its neighbor."""
    layout, pages = written
    planner = layout.planner
    drawn = [scenario(planner, seed, 4, is_whole=True) for seed in range(12)]
    of_numbers = [
        key
        for key, each in layout.placements.items()
        if isinstance(each.field, Result)
        and each.field.is_text
        and each.rows == 1
        and not key.startswith("look_")  # what a log says, of which the desk shows the beginning
        and each.column <= pages[each.sheet].plan.last_column
        and not any(
            getattr(planner.by_key[word][1], "is_text", False)
            for word in _words(planner, each)
            if word in planner.by_key
        )
    ]
    seen, cut = set(), set()
    for values in expected_of_keys(planner, drawn, of_numbers):
        for key in of_numbers:
            cell = pages[layout.placements[key].sheet].sheet[layout.placements[key].cell(0)]
            across, _ = pages[layout.placements[key].sheet].room(cell)
            if (text := values[key][0]) and not cell.alignment.wrap_text:
                seen.add(key)
                cut |= {(key, text)} if pixels(text, style_of(cell)) > across + EDGE else set()
    assert not cut and len(seen) > 5


def _words(planner, placement):
    """The full keys of the words of a placed result."""
    own = f"{placement.holder.key}_"
    return [own + word if own + word in planner.by_key else word for word in placement.field.text.words]
