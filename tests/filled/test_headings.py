"""Lines inserted above the first record, and columns whose names were lost: what stands over them shows where they
are."""

import openpyxl
import pytest

from workbookgen import __version__
from workbookgen.errors import FileError
from workbookgen.filled.foreign_cells import foreign_cells
from workbookgen.filled.planner import LABEL_ONLY, NAME_GONE, read_filled

FIRST = 9  # the line of the first skein
ABOVE = {"B": "Newest", "D": 90.0, "E": 3.5}


@pytest.fixture
def edited(planner_file, tmp_path):
    """The planner after a change by hand."""

    def editing(change):
        book = openpyxl.load_workbook(planner_file)
        change(book)
        book.save(tmp_path / "edited.xlsx")
        return read_filled(tmp_path / "edited.xlsx")

    return editing


def lines_inserted(number: int):
    """So many lines above the first skein, as a spreadsheet program inserts them: the names go down with what was
    there."""

    def change(book):
        sheet = book["Skeins"]
        sheet.move_range(f"A{FIRST}:ZZ{FIRST + 20}", rows=number)
        for name, defined in book.defined_names.items():
            if name.startswith("skeins_"):
                defined.attr_text = defined.attr_text.replace("$12", f"${12 + number}").replace(
                    "$9", f"${FIRST + number}"
                )
        return sheet

    return change


@pytest.mark.parametrize(("number", "line"), [(1, 9), (3, 9), (3, 10)])  # the second and third inserted line stay blank
def test_a_line_that_was_inserted_above_the_first_record_is_read(number, line, edited):
    def change(book):
        sheet = lines_inserted(number)(book)
        for column, value in ABOVE.items():
            sheet[f"{column}{line}"] = value

    filled = edited(change)
    between = FIRST + number - line - 1
    assert filled.entries["skeins_name"] == ("Newest", *[None] * between, "First", "Second", None, "Fourth")
    assert filled.entries["skeins_wraps"][0] == 90.0 and filled.entries["skeins_gross"][: 2 + between] == (
        3.5,
        *[None] * between,
        4.02,
    )
    assert filled.place("skeins_wraps", 0) == ("Skeins", f"D{line}")
    assert foreign_cells(filled) == [], "it came over, so it is not left over"


def test_a_blank_line_above_the_first_record_is_none(edited):
    assert edited(lines_inserted(2)).entries["skeins_name"] == ("First", "Second", None, "Fourth")


def test_what_is_typed_into_the_blank_line_below_the_labels_is_a_record(edited):
    filled = edited(lambda book: book["Skeins"].__setitem__("B8", "Newest"))
    assert filled.entries["skeins_name"] == ("Newest", "First", "Second", None, "Fourth")
    assert foreign_cells(filled) == []


def test_what_stands_beside_the_inputs_of_an_inserted_line_is_told(edited):
    def change(book):
        sheet = lines_inserted(1)(book)
        sheet["B9"], sheet["X9"] = "Newest", "like the last one"

    assert [(each.cell, each.what) for each in foreign_cells(edited(change))] == [("X9", "like the last one")]


def test_a_column_whose_name_is_gone_is_found_by_its_label(edited, entered):
    filled = edited(lambda book: book.defined_names.pop("skeins_wraps"))
    assert filled.entries == entered
    assert [str(each) for each in filled.notes] == [f"Skeins, Wraps: {LABEL_ONLY}"]


def test_a_field_without_name_and_label_is_told(edited, entered):
    def change(book):
        del book.defined_names["skeins_wraps"], book.defined_names["pace_start"]
        book["Skeins"]["D6"] = "Turns"

    filled = edited(change)
    assert filled.entries == {
        key: column for key, column in entered.items() if key not in ("skeins_wraps", "pace_start")
    }
    assert {str(each) for each in filled.notes} == {
        f"Skeins, Wraps: {NAME_GONE}",
        f"Time, Your pace, First day: {NAME_GONE}",
    }


def test_a_field_that_another_version_lacks_is_not_missed(edited):
    def change(book):
        del book.defined_names["pace_start"]
        for row in book["Reference"].iter_rows():
            for cell in row:
                if cell.value == f"# workbookgen {__version__}":
                    cell.value = "# workbookgen 0.0.1"

    assert edited(change).notes == ()


def test_a_planner_without_any_names_is_refused(edited):
    with pytest.raises(FileError, match="the names by which entries are found are gone"):
        edited(lambda book: book.defined_names.clear())
