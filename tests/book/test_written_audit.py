"""The file as others see it: openpyxl reads it part by part, and a validator of the format finds no fault."""

import re
import zipfile

import pytest
from openpyxl.utils import get_column_letter, range_boundaries
from openpyxl.worksheet.cell_range import CellRange
from openxml_audit import AppPrediction, OpenXmlValidator, predict

from chapters import all_but
from long_run import LONG
from planners import laid_out, opened, rows_of
from workbookgen.book import sections
from workbookgen.book.sections import tickets
from workbookgen.language.domains import Choice, Date, Number
from workbookgen.language.fields import Input
from workbookgen.language.parts import Log
from workbookgen.language.side_by_side import SideBySide
from workbookgen.language.tickets import Tickets
from workbookgen.settings import Settings, load, templates

FEW = rows_of(2, guide=40)


def cells(book, placement):
    return [book[placement.sheet][placement.cell(row)] for row in range(placement.rows)]


def hidden_columns(sheet) -> dict[int, bool]:
    """Each hidden column, and whether it is in a group that opens."""
    return {
        column: bool(each.outlineLevel)
        for each in sheet.column_dimensions.values()
        if each.hidden
        for column in range(each.min, each.max + 1)
    }


def test_only_what_no_view_shows_is_hidden(book, layout):
    assert book.sheetnames == [sheet.name for sheet in layout.planner.sheets]
    assert {sheet.sheet_state for sheet in book} == {"visible"}
    for sheet in book:
        plan = layout.plans[sheet.title]
        last = max([plan.last_column, *(spot.column for spot in plan.spots.values())])
        assert not any(each.hidden for each in sheet.row_dimensions.values())
        hidden = hidden_columns(sheet)
        assert {column for column in hidden if column <= last} == plan.folded | set(
            range(plan.last_column + 1, last + 1)
        ), sheet.title
        assert {column for column, opens in hidden.items() if opens} == plan.folded, sheet.title
    assert not any(defined.hidden for defined in book.defined_names.values())


def test_a_fold_opens_at_the_column_that_carries_its_name(book, layout):
    """Beside each group of hidden columns stands one that says what is in it, and how much."""
    opened = 0
    for name, plan in layout.plans.items():
        for column, strip in plan.folds:
            shown = book[name].column_dimensions
            collapsed = [each for each in shown.values() if each.min <= column <= each.max]
            assert [each.collapsed for each in collapsed] == [True] and not collapsed[0].hidden, (name, column)
            texts = [book[name].cell(row, column).value for row in range(1, 8)]
            assert (
                strip.heading.casefold() in [str(text).casefold() for text in texts]
                and f"{len(strip.keys)} more" in texts
            )
            opened += len(strip.keys)
    assert opened > 50


def test_no_macros_no_links_no_connections(blank, book):
    with zipfile.ZipFile(blank) as package:
        names = package.namelist()
        relations = b"".join(package.read(each) for each in names if each.endswith(".rels"))
    assert not [
        each for each in names if re.search(r"vba|macro|externalLink|connections|embeddings|\.bin$", each, re.I)
    ]
    assert b'TargetMode="External"' not in relations
    assert book.vba_archive is None and not book._external_links


def test_no_sheet_is_protected(book):
    # On a protected one, programs neither open groups of columns nor sort lines.
    assert not any(sheet.protection.sheet for sheet in book)


def test_what_is_worked_out_refuses_to_be_typed_into_and_inputs_never_do(book, layout):
    for placement in layout.placements.values():
        found = validations(book, placement)
        if isinstance(placement.field, Input):
            assert [each.errorStyle for each in found] == ["warning"], placement.key
        elif placement.formulas:
            [each] = found
            assert (each.type, each.formula1, each.errorStyle or "stop") == ("custom", "1=0", "stop"), placement.key
            assert each.error and each.errorTitle and each.showErrorMessage and not each.allowBlank, placement.key
    refused = [
        str(each.sqref).split()
        for sheet in book
        for each in sheet.data_validations.dataValidation
        if each.type == "custom"
    ]
    assert sum(map(len, refused)) > 100
    assert all(len(areas) < 200 for areas in refused), "a list that every program reads"


def test_inputs_alone_stay_open_where_someone_protects_a_sheet(book, layout):
    for placement in layout.placements.values():
        locked = {cell.protection.locked for cell in cells(book, placement)}
        assert locked == {not isinstance(placement.field, Input)}, placement.key
    unlocked = {
        (sheet.title, cell.coordinate)
        for sheet in book
        for row in sheet.iter_rows()
        for cell in row
        if not cell.protection.locked
    }
    assert unlocked == {(each.sheet, coordinate) for each in layout.inputs for coordinate in covered(layout, each)}


def covered(layout, placement) -> set[str]:
    """The cells of a field, those merged into them included."""
    spot = layout.plans[placement.sheet].spots[placement.key]
    rows, columns = range(placement.rows + spot.down - 1), range(spot.across)
    return {
        f"{get_column_letter(placement.column + column)}{placement.row + row}" for row in rows for column in columns
    }


def test_cells_are_merged_for_what_stands_in_them_and_cover_nothing_else(book, layout):
    """A merged area is one field's own, or holds one text; no field's cell lies hidden in another's."""
    merged = 0
    for sheet in book:
        fields = {
            coordinate: each.key
            for each in layout.placements.values()
            if each.sheet == sheet.title
            for coordinate in covered(layout, each)
        }
        for area in sheet.merged_cells.ranges:
            inside = {fields.get(cell.coordinate) for row in sheet[area.coord] for cell in row}
            assert len(inside) == 1, (sheet.title, area.coord, inside)
            merged += 1
        inside = [cell.coordinate for area in sheet.merged_cells.ranges for row in sheet[area.coord] for cell in row]
        assert len(inside) == len(set(inside)), "no area lies in another"
    assert merged > 50


def test_every_formula_is_in_its_cell(book, layout):
    expected = {
        (each.sheet, each.cell(row)): text for each in layout.formulas for row, text in enumerate(each.formulas)
    }
    found = {
        (sheet.title, cell.coordinate): cell.value
        for sheet in book
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "f"
    }
    assert found == expected


def test_every_formula_cell_has_a_format_of_its_own(book, layout):
    for placement in (each for each in layout.formulas if each.column <= layout.plans[each.sheet].last_column):
        cell = cells(book, placement)[0]
        # What is above nothing, without what stands beside it; a sign stands from the least that is shown.
        number, *_ = re.sub(r'"[^"]*"', "", cell.number_format).split(";")
        if not getattr(placement.field, "is_text", True):
            assert re.fullmatch(
                r"(\[>=0\.0*5\])?(#,##0|0)(\.0+)?%?(_\))*|yyyy-mm-dd(_\))*|(\[=1\]0)? ?", number.strip()
            ), (placement.key, cell.number_format)
        assert (placement.unit is not None and placement.unit.symbol == "%") == ("%" in number), placement.key


def validations(book, placement):
    """Those that hold for all cells of a field. None may hold for some of them only."""
    cells = CellRange(placement.area.replace("$", ""))
    found = [
        (each, area)
        for each in book[placement.sheet].data_validations.dataValidation
        for area in each.sqref.ranges
        if not area.isdisjoint(cells)
    ]
    assert all(cells.issubset(area) for _, area in found), placement.key
    return [each for each, _ in found]


def names_offered(names) -> str:
    """The whole list of a table; of a log, its first line to the last with a name, and never fewer than one."""
    if not isinstance(names.holder, Log):
        return names.range
    first = names.range.partition(":")[0]
    last = f'SUMPRODUCT(MAX(({names.range}<>"")*ROW({names.range})))'
    return f"OFFSET({first},0,0,MAX(1,{last}-ROW({first})+1),1)"


def test_every_input_is_validated_and_explained(book, layout):
    for placement in layout.inputs:
        [validation] = validations(book, placement)
        assert validation.prompt and validation.promptTitle and validation.error, placement.key
        assert validation.errorStyle == "warning" and validation.allowBlank, (
            "a person may insist; the message says what is wrong"
        )
        domain = placement.field.domain
        if isinstance(domain, Choice):
            assert validation.type == "list"
            assert validation.formula1 == names_offered(layout.placements[domain.of]), placement.key
        elif isinstance(domain, Number | Date):
            low, high = domain.least, domain.most
            if isinstance(domain, Number):
                low = domain.above if low is None else low
                high = domain.below if high is None else high
            assert (validation.type, validation.operator or "between") == ("decimal", "between")
            assert (float(validation.formula1), float(validation.formula2)) == (low, high)
        else:
            assert (validation.type, validation.formula1) == ("textLength", str(domain.longest))


def test_every_placement_has_its_defined_name(book, layout):
    written = {name: defined.attr_text for name, defined in book.defined_names.items()}
    assert written == layout.names
    assert {key: written[key] for key in layout.placements} == {
        key: placement.range for key, placement in layout.placements.items()
    }


def test_labels_and_units_stand_by_their_fields(book, layout):
    """Each input has its label right before or above it; its unit behind it, under the label or at the lines' head.

    Where what is alike stands abreast, one label and unit at the head of a row say what all of it is.
    """
    abreast = {
        key: (section, label)
        for sheet in layout.planner.sheets
        for section in sheet.sections
        if isinstance(section, SideBySide)
        for label, keys in section.rows
        for key in keys
    }
    chosen = {sheet.grid.chosen for sheet in layout.planner.sheets}
    for placement in (each for each in layout.inputs if each.key not in chosen):
        sheet, symbol = book[placement.sheet], placement.unit.symbol if placement.unit else ""
        spot = layout.plans[placement.sheet].spots[placement.key]
        if placement.key in abreast:
            section, label = abreast[placement.key]
            said = sheet.cell(placement.row, 1 + section.across[0]).value
            assert said == ", ".join(filter(None, (label or placement.field.label, symbol))), placement.key
            continue
        above = [sheet.cell(placement.row - up, placement.column).value for up in range(1, min(5, placement.row))]
        before = [
            sheet.cell(placement.row, placement.column - back).value for back in range(1, min(4, placement.column))
        ]
        behind = sheet.cell(placement.row, placement.column + spot.across).value or ""
        assert placement.field.label in [*above, *before], placement.key
        assert (
            symbol in [*above, *before, ""]
            or str(behind).split(";")[0] == symbol
            or f", {symbol}" in f"{before}{above}"
        ), (placement.key, symbol)


ACROSS, DOWN = {"portrait": 8.5, "landscape": 11.0}, {"portrait": 11.0, "landscape": 8.5}  # inches of a letter
A4 = {"portrait": (8.27, 11.69), "landscape": (11.69, 8.27)}


def points_across(sheet, first: int, last: int) -> float:
    """Points of the columns that are printed, by the pixels that programs give them."""
    width = {
        column: each.width
        for each in sheet.column_dimensions.values()
        if not each.hidden
        for column in range(each.min, each.max + 1)
    }
    hidden = hidden_columns(sheet)
    return sum(
        round(width.get(column, 9.14) * 7 + 5 - 5) * 0.75 for column in range(first, last + 1) if column not in hidden
    )


def test_every_sheet_can_be_printed(book, layout):
    for sheet in book:
        setup, plan = sheet.page_setup, layout.plans[sheet.title]
        assert setup.paperSize in (1, "1"), "letter, as the default settings say"
        left, _, right, bottom = range_boundaries(sheet.print_area.rpartition("!")[2])
        assert right <= plan.last_column, "what no view shows is not printed"
        if plan.papers:
            assert setup.scale in (None, 100), "in its true size"
            continue
        assert "&P" in sheet.oddFooter.right.text
        fitted = sheet.sheet_properties.pageSetUpPr and sheet.sheet_properties.pageSetUpPr.fitToPage
        assert (setup.fitToWidth or 1) == 1 and bool(fitted) == (setup.scale is None), (
            sheet.title,
            "fitted, or of one scale with breaks of its own",
        )
        assert not (fitted and sheet.row_breaks.brk), (sheet.title, "a program that fits leaves breaks aside")
        margins = sheet.page_margins
        room = (ACROSS[setup.orientation] - margins.left - margins.right) * 72
        fits = room / points_across(sheet, left, right)
        assert fits >= 0.55 and 0.54 <= (setup.scale or 100) / 100, (sheet.title, "it can still be read")
        assert fitted or setup.scale / 100 <= fits, (sheet.title, "and nothing is cut off at the side")


def test_links_to_other_sheets_are_not_printed(book):
    """On paper they lead nowhere; a page that is wider than a small screen has two lines of them."""
    lines = {}
    for sheet in book:
        _, top, _, _ = range_boundaries(sheet.print_area.rpartition("!")[2])
        linked = {cell.row for row in sheet["A1:Z2"] for cell in row if cell.hyperlink}
        assert 1 in linked and top > max(linked), sheet.title
        lines[sheet.title] = max(linked)
    assert lines["Reference"] == 2 and lines["Desk"] == 1


def test_what_a_view_names_is_printed(book, layout):
    for sheet in layout.planner.sheets:
        plan, page = layout.plans[sheet.name], book[sheet.name]
        left, top, right, bottom = range_boundaries(page.print_area.rpartition("!")[2])
        beside = {
            each.key
            for section in sheet.sections
            if isinstance(section, Tickets)
            for each in layout.placements.values()
            if each.holder.key == section.block
        }
        on_screen = {key for section in sheet.sections if not section.is_printed for key in section.shown}
        for key in (key for key in sheet.shown if key not in beside | on_screen):
            spot = plan.spots[key]
            assert left <= spot.column and spot.column + spot.across - 1 <= right and top <= spot.row, (sheet.name, key)
            assert spot.row <= bottom, (sheet.name, key)


def test_a_long_log_repeats_its_heads_and_prints_no_endless_rows(book, layout):
    for block in (each for each in layout.planner.blocks.values() if isinstance(each, Log)):
        message = layout.placements[f"{block.key}_message"] if block.inputs else None
        if not message or not layout.planner.folded.get(block.key):
            continue
        _, _, _, bottom = range_boundaries(book[message.sheet].print_area.rpartition("!")[2])
        assert bottom <= message.row + min(block.rows, 32) - 1, "a blank one is a page or two"


@pytest.mark.parametrize(("paper", "template"), [("letter", "us"), ("a4", "metric")])
def test_eight_tickets_to_a_page_in_their_true_size(paper, template, built):
    settings = load(templates() / f"{template}.toml")
    layout, book, seen = laid_out(settings), opened(built(settings)), 0
    assert settings.paper == paper
    for name, plan in layout.plans.items():
        for placed in (each for each in plan.placed if isinstance(each.section, Tickets)):
            sheet, section = book[name], placed.section
            rows = sections.module_for(section).rows(section, layout.planner)
            starts = [start for start in plan.papers if placed.row <= start < placed.row + rows]
            assert len(starts) == -(-layout.planner.blocks[section.block].rows // 8), "eight to a page"
            assert starts[0] == placed.row and set(starts[1:]) <= {each.id + 1 for each in sheet.row_breaks.brk}
            left, _, right, _ = range_boundaries(sheet.print_area.rpartition("!")[2])
            wide, high = {"letter": (8.5, 11.0), "a4": A4["portrait"]}[paper]
            margins = sheet.page_margins
            across = points_across(sheet, left, right) / ((wide - margins.left - margins.right) * 72)
            height = {row: sheet.row_dimensions[row].height or 16.5 for row in range(placed.row, placed.row + rows)}
            for start in starts:
                down = sum(height[row] for row in range(start, start + tickets.DOWN * tickets.ROWS))
                assert 0.85 < down / ((high - margins.top - margins.bottom) * 72) <= 1, down
            assert 0.85 < across <= 1, across
            seen += 1
    assert seen == 1


# With few lines and few chapters; whole ones are validated in test_files_are_valid.py.
@pytest.mark.parametrize(
    "leave_out", [all_but("Guide"), *([()] if LONG else [])], ids=["few chapters", "all chapters"][: 1 + LONG]
)
@pytest.mark.parametrize("units", ["metric", *(["us"] if LONG else [])])
def test_a_validator_of_the_format_finds_nothing(units, leave_out, built):
    settings = Settings(rows=FEW, units=units, paper="a4" if units == "metric" else "letter", leave_out=leave_out)
    result = OpenXmlValidator().validate(str(built(settings)))
    assert result.is_valid and result.errors == []
    assert predict(result).prediction is AppPrediction.OPENS_CLEAN


def test_the_validator_would_find_something(little_file, tmp_path):
    path = tmp_path / "broken.xlsx"
    with zipfile.ZipFile(little_file) as before, zipfile.ZipFile(path, "w") as after:
        for entry in before.infolist():
            content = before.read(entry)
            if entry.filename == "xl/workbook.xml":
                content = content.replace(b"<sheets>", b"<sheet><sheets>").replace(b"</sheets>", b"</sheets></sheet>")
            after.writestr(entry, content)
    assert not OpenXmlValidator().validate(str(path)).is_valid
