"""Whether what a planner says fits where it stands, measured with a real typeface.

Liberation Sans has the widths of Arial. A column of width w has 7w + 5 pixels at 96 to the
inch (the file format's rule for a typeface whose digits are 7 pixels wide; XlsxWriter's
documentation, read). Some of them are the cell's own edge.
"""

import io
from functools import cache

import openpyxl
import pytest
from openpyxl.utils import range_boundaries

from workbookgen.book import look, pages, proof_lines, write
from workbookgen.book.layout import CARD_LABEL, CARD_NOTE, CARD_UNIT, CARD_VALUE, place
from workbookgen.book.lines import lines_taken
from workbookgen.build import layout_of
from workbookgen.language.entries import starting_entries
from workbookgen.language.fields import Input
from workbookgen.language.parts import Card, Links, Log, Table, Text
from workbookgen.language.sentences import doubled, missing, refusal, symbol_of
from workbookgen.settings import Settings
from workbookgen.units import UNIT_SYSTEMS

ImageFont = pytest.importorskip("PIL.ImageFont")

EDGE, INDENT = 5, 9  # pixels
SCREEN = 1250  # pixels of a sheet that a usual laptop shows
LINES_OF_A_LABEL = 3
READING_WIDTH = 920  # pixels of an upright page at the size at which cards are printed


@cache
def face(bold: bool):
    try:
        return ImageFont.truetype(f"LiberationSans-{'Bold' if bold else 'Regular'}.ttf", 1000)
    except OSError:
        pytest.skip("Liberation Sans is not installed")


def pixels(text: str, style: dict) -> float:
    return face(style.get("bold", False)).getlength(text) / 1000 * style["font_size"] * 96 / 72


def column(width: float) -> int:
    return int(width * 7) + 5


@pytest.fixture(scope="module", params=UNIT_SYSTEMS)
def planner(request):
    return layout_of(Settings(units=request.param)).planner


def parts(planner, kind):
    return [(sheet, part) for sheet in planner.sheets for part in sheet.parts if isinstance(part, kind)]


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


def sentences(part, system):
    """Everything that What to fix may say, but for a name that stands there twice."""
    said = [refusal(each, system) for each in part.inputs] + [rule.sentence for rule in part.rules]
    said += [missing(each) for each in part.inputs if each.needed]
    return said + [doubled(each) for each in part.inputs if part.names_its_records(each)]


def test_the_measure_itself():
    # Ten digits of Arial at 10 points: 556 thousandths of the size each (Arial's metrics, from memory).
    assert pixels("0123456789", look.PLAIN) == pytest.approx(10 * 0.556 * 10 * 96 / 72, rel=0.005)


def test_a_heading_is_no_wider_than_its_group(planner):
    for _, log in parts(planner, Log):
        for group in log.groups:
            assert pixels(group.heading, look.GROUP) + EDGE <= sum(column(each.width) for each in group.fields), (log.key, group.heading)


def test_a_label_takes_three_lines_at_most_and_breaks_no_word(planner):
    for _, log in parts(planner, Log):
        for each in log.fields:
            room = column(each.width) - EDGE - INDENT * each.is_text
            assert max(pixels(word, look.LABEL) for word in each.label.split()) <= room, (log.key, each.label)
            assert lines(each.label, look.LABEL, room) <= LINES_OF_A_LABEL, (log.key, each.label)
            assert pixels(symbol_of(each, planner.system), look.UNIT) <= room, (log.key, each.label)


def test_what_to_fix_can_be_read_in_full(planner):
    room = column(pages.MESSAGE_WIDTH) - EDGE - INDENT
    for _, log in parts(planner, Log):
        for sentence in sentences(log, planner.system):
            assert pixels(sentence, look.MESSAGE) <= room, sentence
    across = sum(column(write.CARD_WIDTHS[each]) for each in (CARD_VALUE, CARD_UNIT, CARD_NOTE))
    for _, card in parts(planner, Card):
        for sentence in sentences(card, planner.system) if card.inputs else []:
            assert pixels(sentence, look.MESSAGE) <= across - EDGE - INDENT, sentence


def test_the_lines_of_a_card(planner):
    for _, card in parts(planner, Card):
        for each in card.fields:
            assert pixels(each.label, look.PLAIN) <= column(write.CARD_WIDTHS[CARD_LABEL]) - EDGE, (card.key, each.label)
            assert pixels(symbol_of(each, planner.system), look.NOTE) <= column(write.CARD_WIDTHS[CARD_UNIT]) - EDGE - INDENT, (card.key, each.label)
            note, width = each.help if isinstance(each, Input) else each.note, write.CARD_WIDTHS[CARD_NOTE]
            given = lines_taken(note, width, look.SMALL, indented=True)
            assert lines(note, look.CARD_NOTE, column(width) - EDGE - INDENT) <= given, (card.key, each.label)
        assert pixels(card.about, look.ABOUT) <= sum(map(column, write.CARD_WIDTHS.values())), card.key


def facts(planner):
    """(column, width, text) of everything that is told in lines of fixed facts."""
    for _, table in parts(planner, Table):
        for number, each in enumerate(table.columns, start=1):
            yield from ((number, each.width, value) for value in each.values if isinstance(value, str) and not each.runs_on)
    layout = layout_of(Settings(units=planner.system))
    for proof in layout.planner.proofs:
        told = proof_lines.facts(layout, proof)
        yield from ((number, width, told[number]) for number, (_, width) in proof_lines.HEADS.items() if isinstance(told.get(number), str))


def test_a_line_of_facts_is_as_high_as_its_texts(planner):
    for number, width, text in facts(planner):
        room = column(width) - EDGE - INDENT * (number > 1)
        assert lines(text, look.FACT, room) <= lines_taken(text, width, indented=number > 1), text


def test_what_runs_on_has_the_room(planner):
    for sheet, table in parts(planner, Table):
        beside = {}
        for part in sheet.parts:
            for number, each in enumerate(part.columns, start=1) if isinstance(part, Table) else ():
                beside[number] = max(each.width, beside.get(number, 0))
        for number, each in enumerate(table.columns, start=1):
            if each.runs_on:
                assert number == len(table.columns)
                room = sum(column(width) for place, width in beside.items() if place >= number)
                assert max(pixels(value, look.FACT) for value in each.values) <= room - EDGE - INDENT


def test_what_is_done_on_a_sheet_ends_on_the_page(planner):
    [(_, links)] = parts(planner, Links)
    for name, what in links.places:
        assert pixels(name, look.LINK) <= column(write.CARD_WIDTHS[CARD_LABEL]) - EDGE
        assert pixels(what, look.READING) <= sum(column(write.CARD_WIDTHS[each]) for each in (CARD_VALUE, CARD_UNIT, CARD_NOTE)), what


def test_what_is_read_ends_on_the_screen_and_on_the_page(planner):
    for sheet in planner.sheets:
        assert pixels(sheet.about, look.ABOUT) <= SCREEN, sheet.name
    for _, text in parts(planner, Text):
        for line in text.lines:
            assert pixels(line, look.READING) <= READING_WIDTH, line


def test_what_runs_over_ends_before_the_edge_of_what_is_printed(planner):
    """Beyond a sheet's print area, texts are cut off on paper."""
    layout = place(planner)
    book = openpyxl.load_workbook(io.BytesIO(write.write(layout, starting_entries(planner), {})))
    seen = 0
    for sheet in book:
        left, top, right, bottom = range_boundaries(sheet.print_area.split("!")[1])
        widths = {each: dimension.width for name, dimension in sheet.column_dimensions.items() for each in range(dimension.min, dimension.max + 1)}
        for row in sheet.iter_rows(top, bottom, left, right):
            for cell in row:
                if cell.data_type == "s" and not cell.alignment.wrap_text and cell.alignment.horizontal in (None, "left", "general"):
                    style = {"font_size": cell.font.size, "bold": bool(cell.font.bold)}
                    room = sum(column(widths.get(each, look.USUAL_WIDTH)) for each in range(cell.column, right + 1))
                    assert pixels(cell.value, style) <= room, f"{sheet.title}!{cell.coordinate}"
                    seen += 1
    assert seen > 500


def test_the_names_that_are_offered_fit_their_cells(planner):
    for _, log in parts(planner, Log):
        for each in log.inputs:
            _, offered = planner.by_key.get(getattr(each.domain, "of", None), (None, None))
            for value in getattr(offered, "values", ()):
                assert pixels(value, look.PLAIN) <= column(each.width) - EDGE - INDENT, (log.key, each.label, value)
