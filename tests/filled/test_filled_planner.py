"""Reading a filled planner: inputs by name, wherever they are, and settings of other versions."""

import re

import openpyxl
import pytest

from planners import rows_of
from workbookgen.book.write import write
from workbookgen.build import layout_of
from workbookgen.engines import Area
from workbookgen.errors import FileError
from workbookgen.filled.arithmetic import with_arithmetic_done
from workbookgen.filled.book import area_of
from workbookgen.filled.made_with import ORIGIN
from workbookgen.filled.planner import ROWS_OF, described, read_filled
from workbookgen.language.entries import starting_entries
from workbookgen.language.parts import Log
from workbookgen.settings import Rows, Settings

from .conftest import WORKBOOK, sheet_part


def test_entries_are_what_was_written(planner_file, entered, few):
    filled = read_filled(planner_file)
    assert filled.entries == entered
    assert filled.settings == few
    assert filled.notes == ()
    assert filled.place("skeins_wraps", 1) == ("Skeins", "D10")


def test_only_some_blocks_can_be_read(planner_file, entered):
    filled = read_filled(planner_file, ["skeins", "pace"])
    assert filled.entries == {key: column for key, column in entered.items() if key.startswith(("skeins_", "pace_"))}


@pytest.mark.parametrize(
    "text",
    ["'Made with'!$A$7:$C$20", "=$'Made with'!$A$7:$C$20", "'Made with'!A7:C20", "'Made with'!$A$7:'Made with'!$C$20"],
)
def test_a_name_points_to_the_same_cells_however_it_is_spelled(text):
    assert area_of(text) == Area("Made with", 7, 1, 14, 3)


def test_names_of_one_cell_and_of_none():
    assert area_of("$Skeins!$B$7") == area_of("Skeins!B7") == Area("Skeins", 7, 2)
    assert area_of("'Nan''s lots'!$A$1") == Area("Nan's lots", 1, 1)
    assert area_of("Skeins!$C$9:$B$7") == Area("Skeins", 7, 2, 3, 2)
    assert area_of("Skeins!$A$0") is None
    assert area_of("Skeins!$A:$C") is None
    assert area_of("$A$1") is None
    assert area_of("Skeins!#REF!") is None
    assert area_of("OFFSET(Skeins!$A$1,1,1)") is None


def test_a_renamed_sheet_and_moved_lines_are_followed(planner_file, entered, tmp_path):
    book = openpyxl.load_workbook(planner_file)
    sheet = book["Skeins"]
    sheet.title = "My skeins"
    lines = [[cell.value for cell in row] for row in sheet["A9:Z12"]]
    for place, line in zip((9, 11, 12, 14, 15), [*lines, [None, "Fifth"] + [None] * 24], strict=True):
        for column, value in enumerate(line, start=1):
            sheet.cell(place, column).value = value
            sheet.cell(10, column).value = sheet.cell(13, column).value = None
    for name, defined in book.defined_names.items():
        if name.startswith("skeins_"):
            defined.attr_text = defined.attr_text.replace("Skeins!", "'My skeins'!").replace("$12", "$15")
    book.save(tmp_path / "moved.xlsx")
    filled = read_filled(tmp_path / "moved.xlsx")
    assert filled.entries["skeins_name"] == ("First", None, "Second", None, None, "Fourth", "Fifth")
    assert filled.entries["skeins_wraps"] == (104.0, None, "many", None, None, None, None)
    assert filled.settings.rows.skeins == 7
    assert described(filled.settings).blocks["skeins"].rows == 7
    assert filled.place("skeins_name", 2) == ("My skeins", "B11")


def test_settings_of_another_version_are_left_out_and_told(rewritten, entered):
    strings = "xl/sharedStrings.xml"
    path = rewritten(strings, 'paper = "letter"', 'shed = "cedar"')
    path = rewritten(strings, "skeins = 4", "skeins = 99999", path)
    filled = read_filled(path)
    assert filled.entries["skeins_name"][:4] == entered["skeins_name"]
    assert filled.settings.rows.skeins == Rows().skeins
    assert {each.sentence for each in filled.notes} == {
        "the setting shed is not known to this version; it was left out.",
        "the setting rows.skeins has a value that is not accepted by this version; it was left out.",
    }


def test_a_unit_system_that_nobody_knows_is_refused(rewritten):
    with pytest.raises(FileError, match="Reference"):
        read_filled(rewritten("xl/sharedStrings.xml", 'units = "us"', 'units = "ells"'))


def test_overwritten_settings_are_told(rewritten):
    with pytest.raises(FileError, match="the settings on the sheet Reference were overwritten"):
        read_filled(rewritten("xl/sharedStrings.xml", "# workbookgen", "# nothing"))


def test_days_of_a_file_that_counts_from_1904_are_ours(rewritten, entered):
    filled = read_filled(rewritten(WORKBOOK, "<workbookPr ", '<workbookPr date1904="1" '))
    assert filled.entries["pace_start"] == (46357.0 + 1462,)  # the two counts differ by four years and a day
    assert filled.entries["skeins_wraps"] == entered["skeins_wraps"]


def test_a_deleted_sheet_is_told_once(rewritten):
    """Not a line for each of its fields: a person deleted one sheet."""
    filled = read_filled(rewritten(WORKBOOK, r'(<definedName name="fiber_[^>]*>)[^<]*<', r"\1#REF!<"))
    assert [str(each) for each in filled.notes] == [
        "Fiber: all of it was deleted from the file, so nothing was read there. If you need it, use an earlier copy of the file."
    ]


def test_deleted_cells_and_errors_are_told(rewritten, planner_file, tmp_path):
    path = rewritten(
        WORKBOOK, r'<definedName name="skeins_wraps">[^<]*<', '<definedName name="skeins_wraps">Skeins!#REF!<'
    )
    filled = read_filled(path)
    assert "skeins_wraps" not in filled.entries
    assert [str(each) for each in filled.notes] == [
        "Skeins, Wraps: it was deleted from the file, so nothing was read there. If you need it, use an earlier copy of the file."
    ]
    path = rewritten(
        sheet_part(planner_file, "Skeins"),
        r'<c r="D9"([^>]*)><v>104</v></c>',
        r'<c r="D9"\1 t="e"><f>1/0</f><v>#DIV/0!</v></c>',
    )
    filled = read_filled(path)
    assert filled.entries["skeins_wraps"][0] is None
    assert [str(each) for each in filled.notes] == ["Skeins!D9: it shows the error #DIV/0!, so it was read as empty."]


def test_arithmetic_without_a_stored_value_is_worked_out(rewritten, planner_file):
    path = rewritten(
        sheet_part(planner_file, "Skeins"), r'<c r="D9"([^>]*)><v>104</v></c>', r'<c r="D9"\1><f>6.5*16</f></c>'
    )
    filled = read_filled(path)
    assert filled.entries["skeins_wraps"][0] is None
    assert with_arithmetic_done(filled).entries["skeins_wraps"][0] == 104.0
    assert with_arithmetic_done(filled).cell("skeins_wraps", 0).formula == "=6.5*16"


def test_arithmetic_is_left_where_names_run_over_whole_columns(rewritten, planner_file):
    """A file that was made to harm: an engine would go through a million lines for every sum. An honest one has tens
    of thousands at most."""
    path = rewritten(
        sheet_part(planner_file, "Skeins"), r'<c r="D9"([^>]*)><v>104</v></c>', r'<c r="D9"\1><f>6.5*16</f></c>'
    )
    filled = read_filled(
        rewritten(WORKBOOK, r"(<definedName name=\"skeins_tare\">Skeins!\$K\$9:\$K\$)\d+", r"\g<1>1048576", path)
    )
    assert with_arithmetic_done(filled) is filled


def test_every_log_is_as_long_as_its_setting_says():
    numbers = {name: 10 + index for index, name in enumerate(Rows.model_fields)}
    planner = described(Settings(fibers="", rows=Rows(**numbers)))
    logs = [block for block in planner.blocks.values() if isinstance(block, Log) and block.inputs]
    assert {log.key: log.rows for log in logs} == {log.key: numbers[ROWS_OF.get(log.key, log.key)] for log in logs}
    assert len(logs) > 10


def test_a_workbook_that_is_no_planner_is_refused(tmp_path):
    openpyxl.Workbook().save(tmp_path / "other.xlsx")
    with pytest.raises(FileError, match="not one of our planners"):
        read_filled(tmp_path / "other.xlsx")


def test_a_planner_of_one_line_a_log_is_read_as_one_of_two(tmp_path):
    """Older versions had such; to some programs a column of one cell is none."""
    settings = Settings(fibers="", rows=rows_of(2))
    layout = layout_of(settings)
    (tmp_path / "two.xlsx").write_bytes(
        write(layout, starting_entries(layout.planner) | {"skeins_name": ("First", None)}, {})
    )
    book = openpyxl.load_workbook(tmp_path / "two.xlsx")
    for name, defined in book.defined_names.items():
        if name in layout.placements and layout.placements[name].rows == 2:
            defined.attr_text = defined.attr_text.partition(":")[0]
    told = area_of(book.defined_names[ORIGIN].attr_text)
    for row in range(told.row, told.last_row + 1):
        cell = book[told.sheet].cell(row, told.column)
        if isinstance(cell.value, str) and re.fullmatch(r"\w+ = 2", cell.value):
            cell.value = cell.value.replace("2", "1")
    book.save(tmp_path / "one.xlsx")
    filled = read_filled(tmp_path / "one.xlsx")
    assert filled.entries["skeins_name"] == ("First", None)
    assert filled.settings.rows.skeins == 2 and filled.notes == ()
