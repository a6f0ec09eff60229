"""The file as others see it: openpyxl reads it part by part, and a validator of the format finds no fault."""

import re
import zipfile

import openpyxl
import pytest
from openpyxl.utils import range_boundaries
from openxml_audit import AppPrediction, OpenXmlValidator, predict
from xlsxwriter.utility import quote_sheetname

from workbookgen.book.layout import Message
from workbookgen.book.pages import LETTERS_ON_A_PAGE, LOG_SCALE
from workbookgen.build import layout_of, workbook
from workbookgen.language.domains import Choice, Date, Number
from workbookgen.language.fields import Input
from workbookgen.language.parts import Log
from workbookgen.settings import Rows, Settings
from workbookgen.sheets import labels

FEW = Rows(**{log: 2 for log in Rows.model_fields} | {"guide": 40})


@pytest.fixture(scope="module")
def book(blank):
    return openpyxl.load_workbook(blank)


def cells(book, placement):
    return [book[placement.sheet][placement.cell(row)] for row in range(placement.rows)]


def spans(placement, area: str) -> bool:
    return placement.area.replace("$", "") in area.split()


def test_nothing_is_hidden(book, layout):
    assert book.sheetnames == [sheet.name for sheet in layout.planner.sheets]
    assert {sheet.sheet_state for sheet in book} == {"visible"}
    for sheet in book:
        assert not any(each.hidden for each in [*sheet.column_dimensions.values(), *sheet.row_dimensions.values()])
    assert not any(defined.hidden for defined in book.defined_names.values())


def test_no_macros_no_links_no_connections(blank, book):
    with zipfile.ZipFile(blank) as package:
        names = package.namelist()
        relations = b"".join(package.read(each) for each in names if each.endswith(".rels"))
    assert not [each for each in names if re.search(r"vba|macro|externalLink|connections|embeddings|\.bin$", each, re.I)]
    assert b'TargetMode="External"' not in relations
    assert book.vba_archive is None and not book._external_links


def test_every_sheet_is_protected_without_a_password(book):
    for sheet in book:
        assert sheet.protection.sheet, sheet.title
        assert not sheet.protection.password and not sheet.protection.hashValue


def test_inputs_can_be_typed_into_and_nothing_else(book, layout):
    for placement in layout.placements.values():
        locked = {cell.protection.locked for cell in cells(book, placement)}
        assert locked == {not isinstance(placement.field, Input)}, placement.key
    unlocked = sum(not cell.protection.locked for sheet in book for row in sheet.iter_rows() for cell in row)
    assert unlocked == sum(each.rows for each in layout.inputs)


def test_every_formula_is_in_its_cell(book, layout):
    expected = {
        (each.sheet, each.cell(row)): text for each in layout.formulas for row, text in enumerate(each.formulas)
    }
    found = {
        (sheet.title, cell.coordinate): cell.value
        for sheet in book for row in sheet.iter_rows() for cell in row if cell.data_type == "f"
    }
    assert found == expected


def test_every_formula_cell_has_a_format_of_its_own(book, layout):
    for placement in layout.formulas:
        numbers = not isinstance(placement.field, Message) and not getattr(placement.field, "is_text", True)
        for cell in cells(book, placement)[:1]:
            if numbers:
                assert re.fullmatch(r"(#,##0|0)(\.0+)?%?|yyyy-mm-dd", cell.number_format), placement.key
            assert (placement.unit is not None and placement.unit.symbol == "%") == cell.number_format.endswith("%"), placement.key


def validations(book, placement):
    return [
        each for each in book[placement.sheet].data_validations.dataValidation if spans(placement, str(each.sqref))
    ]


def test_every_input_is_validated_and_explained(book, layout):
    for placement in layout.inputs:
        [validation] = validations(book, placement)
        assert validation.prompt and validation.promptTitle and validation.error, placement.key
        assert validation.errorStyle == "warning", "a person may insist; the message says what is wrong"
        domain = placement.field.domain
        if isinstance(domain, Choice):
            assert validation.type == "list"
            assert validation.formula1 == layout.placements[domain.of].range
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
    assert {key: written[key] for key in layout.placements} == {key: placement.range for key, placement in layout.placements.items()}


def test_labels_and_units_stand_by_their_fields(book, layout):
    for placement in layout.inputs:
        sheet = book[placement.sheet]
        symbol = placement.unit.symbol if placement.unit else ""
        if len(placement.holder.groups) and placement.holder.rows > 1:
            label, unit = sheet.cell(placement.row - 2, placement.column), sheet.cell(placement.row - 1, placement.column)
        else:
            label, unit = sheet.cell(placement.row, placement.column - 1), sheet.cell(placement.row, placement.column + 1)
        assert label.value == placement.field.label and (unit.value or "") == symbol, placement.key


def widths_of_pages(sheet):
    """Letters across each page of a log, the first column that every page repeats included."""
    last = range_boundaries(sheet.print_area.rpartition("!")[2])[2]
    ends = [each.id for each in sheet.col_breaks.brk] + [last]
    width = {column: each.width for each in sheet.column_dimensions.values() for column in range(each.min, each.max + 1)}
    for start, end in zip([0, *ends], ends, strict=False):
        yield sum(round(width[column] - 0.71) for column in range(start + 1, end + 1)) + (round(width[1] - 0.71) if start else 0)


def test_every_sheet_can_be_printed(book, layout):
    logs = {layout.placements[f"{block.key}_message"].sheet for block in layout.planner.blocks.values() if isinstance(block, Log)}
    for sheet in book:
        # Programs leave page breaks aside where a sheet is fitted to pages.
        assert not (sheet.sheet_properties.pageSetUpPr and sheet.sheet_properties.pageSetUpPr.fitToPage), sheet.title
        if sheet.title in logs - {labels.SHEET}:
            assert sheet.page_setup.scale == LOG_SCALE, sheet.title
            assert max(widths_of_pages(sheet)) <= LETTERS_ON_A_PAGE, sheet.title
        assert sheet.page_setup.paperSize in (1, "1"), "letter, as the default settings say"
        assert "&P" in sheet.oddFooter.right.text


def test_what_is_no_log_is_as_wide_as_its_page_at_most(book, layout):
    logs = {layout.placements[f"{block.key}_message"].sheet for block in layout.planner.blocks.values() if isinstance(block, Log)}
    for sheet in (each for each in book if each.title not in logs):
        last = range_boundaries(sheet.print_area.rpartition("!")[2])[2] if sheet.print_area else sheet.max_column
        width = {column: each.width for each in sheet.column_dimensions.values() for column in range(each.min, each.max + 1)}
        # At most 7.42 pixels of 0.75 points a letter in LibreOffice; letter paper, upright or landscape, less half an inch on either side.
        across = sum(width.get(column, 8.43) for column in range(1, last + 1)) * 7.42 * 0.75 * (sheet.page_setup.scale or 100) / 100
        assert across <= ({"landscape": 11.0}.get(sheet.page_setup.orientation, 8.5) - 1) * 72, sheet.title
        assert (sheet.page_setup.scale or 100) >= 60, "it can still be read"


def test_a_card_that_would_be_cut_begins_a_page(book, layout):
    [places] = [layout.parts[sheet.name] for sheet in layout.planner.sheets if sheet.name == "Twist"]
    rows = {placed.part.title: placed.row for placed in places}
    assert [each.id + 1 for each in book["Twist"].row_breaks.brk] == [rows["The ply"]]
    assert [each.id for each in book["Start"].row_breaks.brk] == [], "the first page is one page"


def test_a_log_has_no_page_of_a_few_lines(book, layout):
    for block in layout.planner.blocks.values():
        if isinstance(block, Log):
            message = layout.placements[f"{block.key}_message"]
            ends = [each.id for each in book[message.sheet].row_breaks.brk]
            lines = [end - start for start, end in zip([message.row - 1, *ends], [*ends, message.row + block.rows - 1], strict=True)]
            assert min(lines) >= min(8, block.rows) and max(lines) - min(lines) <= 1, (block.key, lines)


def test_links_lead_to_the_sheets_in_their_order(book, layout):
    cells = [cell for sheet in book for row in sheet.iter_rows() for cell in row if cell.hyperlink]
    assert [(cell.value, cell.hyperlink.location, cell.hyperlink.target) for cell in cells] == [
        (name, f"{quote_sheetname(name)}!A1", None) for name in book.sheetnames[1:]
    ]
    assert all(cell.parent.title == "Start" and cell.offset(column=1).value for cell in cells), "and it says what is done there"


def test_what_is_for_other_sheets_is_not_printed(book, layout):
    unprinted = 0
    for block in layout.planner.blocks.values():
        for group in (each for each in block.groups if not each.printed):
            last = range_boundaries(book[layout.placements[f"{block.key}_message"].sheet].print_area.rpartition("!")[2])[2]
            columns = [layout.placements[f"{block.key}_{each.key}"].column for each in group.fields]
            assert min(columns) > last, block.key
            unprinted += len(columns)
    assert unprinted > 10


@pytest.mark.parametrize("settings", [Settings(rows=FEW), Settings(rows=FEW, units="metric", paper="a4")], ids=["us", "metric"])
def test_a_validator_of_the_format_finds_nothing(settings, tmp_path):
    path = tmp_path / "planner.xlsx"
    path.write_bytes(workbook(layout_of(settings)))
    result = OpenXmlValidator().validate(str(path))
    assert result.is_valid and result.errors == []
    assert predict(result).prediction is AppPrediction.OPENS_CLEAN


def test_the_validator_would_find_something(small_file, tmp_path):
    path = tmp_path / "broken.xlsx"
    with zipfile.ZipFile(small_file) as before, zipfile.ZipFile(path, "w") as after:
        for entry in before.infolist():
            content = before.read(entry)
            if entry.filename == "xl/workbook.xml":
                content = content.replace(b"<sheets>", b"<sheet><sheets>").replace(b"</sheets>", b"</sheets></sheet>")
            after.writestr(entry, content)
    assert not OpenXmlValidator().validate(str(path)).is_valid
