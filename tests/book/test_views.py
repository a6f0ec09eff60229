"""What a spinner sees: answers beside their questions, a way to every sheet and back, few tabs.

Pixels are those of the file, at 100 %. On a screen of 1366 by 768, LibreOffice shows 1304 by 535 pixels of the screen
beside its scroll bars, side bar, menus and tabs, on one of 1024 342 less; and it draws each column a ninth wider than
the file says, as it measures digits (1.115 times, measured). Programs that draw them as they are show more.
"""

import re

import pytest
from xlsxwriter.utility import quote_sheetname

from planners import laid_out, opened
from workbookgen.book.log_plan import FIRST_RECORD
from workbookgen.build import layout_of
from workbookgen.language.views import SheetKind
from workbookgen.settings import Settings, load, templates
from workbookgen.unit_systems import UNIT_SYSTEMS

SEEN_ACROSS, SEEN_ON_A_SMALL_ONE, SEEN_DOWN = 1169, 862, 535
MOST_TABS = {"whole": 16, "small": 8}
EVERY = [load(templates() / f"{system}{size}.toml") for system in UNIT_SYSTEMS for size in ("", "-small")]


@pytest.fixture(scope="module", params=EVERY, ids=lambda settings: f"{settings.size}, {settings.units}")
def planner(request, built):
    """The layout of a planner that is handed out, and its workbook as openpyxl reads it."""
    return laid_out(request.param), opened(built(request.param))


def right_edge(plan, key: str) -> int:
    """Pixels from the left edge of the sheet to the end of a field's cell, while what is folded is folded."""
    spot = plan.spots[key]
    return sum(plan.widths[column] for column in range(1, spot.column + spot.across) if column not in plan.folded)


def bottom_edge(plan, row: int) -> int:
    return sum(plan.height_of(each) for each in range(1, row + 1))


def own_logs(layout):
    for sheet in layout.planner.sheets:
        if sheet.log_view:
            [log] = sheet.logs
            yield layout.plans[sheet.name], log.key, sheet.log_view


# ------------------------------------------------------------------ answers beside their questions
def test_neither_numbers_of_rows_nor_grid_take_the_eye(planner):
    _, book = planner
    for sheet in book:
        view = sheet.sheet_view
        assert not view.showGridLines and not view.showRowColHeaders and (view.zoomScale or 100) == 100, sheet.title


def test_what_one_came_for_is_told_in_the_units_that_the_planner_is_built_in(planner):
    """Who winds meters reads meters: yards stand in no head of a log, unless meters stand there too; nor the
    reverse."""
    layout, _ = planner
    own, foreign = ("meter", "yard") if UNIT_SYSTEMS[layout.planner.system].is_metric("length") else ("yard", "meter")
    for _, log, view in own_logs(layout):
        shown = [layout.placements[key] for key in view.shown(log)]
        told_in = {
            unit: {each.field.label for each in shown if each.unit and re.match(rf"{unit}( /|$)", each.unit.pint)}
            for unit in (own, foreign)
        }
        assert told_in[foreign] <= told_in[own], (log, told_in)


def test_what_one_types_and_what_one_came_for_are_in_view_together(planner):
    layout, _ = planner
    for plan, log, view in own_logs(layout):
        for key in view.shown(log):
            assert right_edge(plan, key) <= SEEN_ACROSS, (key, right_edge(plan, key))
        assert bottom_edge(plan, FIRST_RECORD + 9) <= SEEN_DOWN, "ten lines below the head"
        for told in ("mark", "first"):
            assert right_edge(plan, f"{log}_{told}") <= SEEN_ON_A_SMALL_ONE, "what is wrong is told in view"


def test_on_a_small_screen_the_name_the_main_inputs_and_the_main_answer_are_in_view(planner):
    layout, _ = planner
    for plan, log, view in own_logs(layout):
        typed = [f"{log}_{key}" for key in view.typed.split()]
        _, answers = next(((heading, words.split()) for heading, words in view.answers), ("", []))
        for key in (*typed, *(f"{log}_{key}" for key in answers[:1])):
            assert right_edge(plan, key) <= SEEN_ON_A_SMALL_ONE, (key, right_edge(plan, key))


def test_the_answers_of_a_page_are_in_view(planner):
    """All that a view names across; of a page for one thing, its question and first answers without scrolling."""
    layout, _ = planner
    for sheet in layout.planner.sheets:
        plan = layout.plans[sheet.name]
        if sheet.kind in (SheetKind.DESK, SheetKind.PAGE):
            for key in sheet.shown:
                assert right_edge(plan, key) <= SEEN_ACROSS, (key, right_edge(plan, key))
            first = [key for section in sheet.bands[0].sections for key in section.shown] if sheet.bands else []
            for key in (*filter(None, [sheet.grid.chosen]), *first[:3]):
                assert bottom_edge(plan, plan.spots[key].row) <= SEEN_DOWN, key


def test_a_page_ends_on_the_screen(planner):
    """What it is for, and what its sections say of themselves, stands at the right end of its columns."""
    layout, _ = planner
    for sheet in layout.planner.sheets:
        if sheet.kind in (SheetKind.DESK, SheetKind.PAGE, SheetKind.AID) and not sheet.log_view:
            widths = layout.plans[sheet.name].widths
            assert sum(widths[column] for column in range(1, 2 + sheet.grid.last)) <= SEEN_ACROSS, sheet.name


# ------------------------------------------------------------------ ways
def links(book) -> dict[str, set[str]]:
    """Sheet -> the sheets to which its links lead."""
    return {
        sheet.title: {target(cell.hyperlink.location)[0] for row in sheet.iter_rows() for cell in row if cell.hyperlink}
        for sheet in book
    }


def target(location: str) -> tuple[str, str]:
    sheet, _, cell = location.rpartition("!")
    return sheet.strip("'").replace("''", "'"), cell


def test_every_link_leads_to_a_cell_that_is_seen(planner):
    layout, book = planner
    count = 0
    for sheet in book:
        for cell in (cell for row in sheet.iter_rows() for cell in row if cell.hyperlink):
            assert cell.hyperlink.target is None, "nothing leads out of the file"
            name, there = target(cell.hyperlink.location)
            assert name in book.sheetnames and cell.hyperlink.location.startswith(quote_sheetname(name)), (
                cell.hyperlink.location
            )
            assert book[name][there].column <= layout.plans[name].last_column, (sheet.title, cell.hyperlink.location)
            assert cell.value, "and says where it leads"
            count += 1
    assert count > 8 * len(book.sheetnames) / 2


def test_every_sheet_leads_to_the_desk_and_to_its_neighbors(planner):
    layout, book = planner
    desk, *others = book.sheetnames
    ways = links(book)
    for name in others:
        assert desk in ways[name], name
        assert set(next(sheet.related for sheet in layout.planner.sheets if sheet.name == name)) <= ways[name], name


def test_the_desk_leads_to_every_sheet(planner):
    _, book = planner
    desk, *others = book.sheetnames
    assert set(others) - links(book)[desk] == set()


def test_links_stand_in_the_first_row_and_do_not_name_their_own_sheet(planner):
    _, book = planner
    for sheet in book:
        row = [cell for cell in sheet[1] if cell.hyperlink]
        assert row, sheet.title
        assert all(target(cell.hyperlink.location)[0] != sheet.title for cell in row), sheet.title


# ------------------------------------------------------------------ tabs
def test_there_are_few_tabs(planner):
    layout, book = planner
    size = "small" if len(book.sheetnames) <= MOST_TABS["small"] else "whole"
    assert len(book.sheetnames) <= MOST_TABS[size]
    assert all(len(name) <= 12 for name in book.sheetnames), "so that all tabs are in view"


@pytest.mark.parametrize("size", MOST_TABS)
def test_a_planner_of_each_size_has_so_many_tabs(size):
    sheets = layout_of(Settings(size=size)).planner.sheets
    more = "a chapter that is not among the Leavable of settings/model.py is in the small planner, too"
    assert MOST_TABS[size] / 2 < len(sheets) <= MOST_TABS[size], more


# ------------------------------------------------------------------ texts that a view writes
def test_large_answers_carry_their_unit(planner):
    """A number that stands alone says of what it is."""
    layout, book = planner
    sections = (section for sheet in layout.planner.sheets for section in sheet.sections)
    large = [layout.placements[each.field] for section in sections for each in getattr(section, "large", ())]
    with_unit = [each for each in large if each.unit and each.unit.symbol]
    assert len(with_unit) > len(large) / 4
    for placement in with_unit:
        form = book[placement.sheet][placement.cell(0)].number_format
        assert placement.unit.symbol in form, (placement.key, form)
