"""What a person put beside the inputs: told, wherever it was and whichever version made the planner."""

import re

import openpyxl
import pytest
from openpyxl.comments import Comment
from openpyxl.utils import column_index_from_string, get_column_letter

from planners import laid_out
from workbookgen import __version__
from workbookgen.carry.leftovers import IN_ITS_CELL, ONLY_HERE
from workbookgen.filled.planner import described

from .conftest import cell, small

DESK = described(small()).sheets[0].name
FACT = cell(
    next(
        f"{key}_{column.key}"
        for key, table in described(small()).tables.items()
        for column in table.columns
        if isinstance(column.values[0], str)
    )
)
EDITS = {
    cell("skeins_wraps", 0): "=6.5*16",  # arithmetic in an input
    cell("skeins_wraps", 1): True,
    cell("skeins_name", 2): False,
    "Skeins!CZ40": "ask about the wheel",  # below and beside everything
    "Reels!B90": 12.5,
    f"{DESK}!B2": "Our planner",  # a changed heading
    FACT: "lace-ish",  # a changed fact
    "Shed!B2": "=1+1",  # a sheet of one's own
}


def edited(path, target, edits=EDITS):
    book = openpyxl.load_workbook(path)
    book.create_sheet("Shed")
    for place, value in edits.items():
        sheet, _, address = place.partition("!")
        book[sheet][address] = value
    loop = next(iter(book.defined_names["reels_loop"].destinations))[1].split(":")[0].replace("$", "")
    hundred = next(iter(book.defined_names["reels_hundred"].destinations))[1].split(":")[0].replace("$", "")
    book["Reels"][loop] = 71.5  # a result overwritten
    book["Reels"][hundred] = "=1000*2"  # and one made into another formula
    book["Skeins"][cell("skeins_name").partition("!")[2]].comment = Comment("the first I liked", "")
    book[DESK]["A1"].comment = Comment("read this again", "")
    book.save(target)
    return loop, hundred


@pytest.fixture
def outcome(old_file, tmp_path, carried):
    loop, hundred = edited(old_file, tmp_path / "edited.xlsx")
    return carried(tmp_path / "edited.xlsx"), loop, hundred


def test_everything_beside_the_inputs_is_told(outcome):
    told, loop, hundred = outcome
    assert told.leftovers == {
        cell("skeins_wraps", 0): ("=6.5*16", ONLY_HERE),
        cell("skeins_wraps", 1): ("TRUE", IN_ITS_CELL),
        cell("skeins_name", 2): ("FALSE", IN_ITS_CELL),
        "Skeins!CZ40": ("ask about the wheel", ONLY_HERE),
        "Reels!B90": (12.5, ONLY_HERE),
        f"{DESK}!B2": ("Our planner", ONLY_HERE),
        FACT: ("lace-ish", ONLY_HERE),
        "Shed!B2": ("=1+1", ONLY_HERE),
        f"Reels!{loop}": (71.5, ONLY_HERE),
        f"Reels!{hundred}": ("=1000*2", ONLY_HERE),
        f"{DESK}!A1": ("read this again", ONLY_HERE),
    }
    assert len(told.carried.leftovers) == len(told.leftovers), "nothing is told twice"
    assert told.new.entries["skeins_wraps"][:2] == (104.0, "TRUE"), (
        "arithmetic is worked out where the file has no value"
    )
    assert list(told.new.book.comments["Skeins"].values()) == ["the first I liked"], "a note on an input goes along"


def test_on_a_sheet_with_inserted_lines_only_what_is_outside_is_told(old_file, tmp_path, carried):
    book = openpyxl.load_workbook(old_file)
    placement = laid_out(small()).placements["skeins_name"]
    last = placement.row + placement.rows - 1
    for defined in book.defined_names.values():
        defined.attr_text = (
            defined.attr_text.replace(f"${last}", f"${last + 1}")
            if "Skeins!" in defined.attr_text
            else defined.attr_text
        )
    book["Skeins"].cell(last + 1, placement.column).value = "Fifth"
    book["Skeins"].cell(last + 2, placement.column).value = "below the log"
    book["Skeins"]["ZZ5"] = "in the margin"
    book["Skeins"].protection.sheet = False  # else no line could be inserted
    book.save(tmp_path / "longer.xlsx")
    outcome = carried(tmp_path / "longer.xlsx")
    assert outcome.new.entries["skeins_name"] == ("First", "Second", "Third", None, "Fifth")
    assert outcome.leftovers == {
        f"Skeins!{placement.cell(placement.rows + 1)}": ("below the log", ONLY_HERE),
        "Skeins!ZZ5": ("in the margin", ONLY_HERE),
    }


def with_column_inserted(book, sheet: str, at: int) -> None:
    """A blank column before column `at`, as a program inserts it: cells move, and names with them."""

    def moved(found: re.Match) -> str:
        number = column_index_from_string(found[1])
        return f"${get_column_letter(number + (number >= at))}$"

    for defined in book.defined_names.values():
        if defined.attr_text.startswith(f"{sheet}!"):
            defined.attr_text = re.sub(r"\$([A-Z]+)\$", moved, defined.attr_text)
    page = book[sheet]
    page.move_range(f"{get_column_letter(at)}1:{get_column_letter(page.max_column)}{page.max_row}", cols=1)


def made_with(book, version: str) -> None:
    """Whatever this file has of this version, another one made it."""
    [line] = [cell for row in book["Reference"] for cell in row if cell.value == f"# workbookgen {__version__}"]
    line.value = f"# workbookgen {version}"


@pytest.mark.parametrize("version", [__version__, "0.4.3"])
def test_what_is_typed_in_a_column_that_was_inserted_is_told(old_file, tmp_path, carried, version):
    """Beside the records, from the first to the last, and above them; what is the planner's own is not told. Of another
    version nobody knows which numbers were its own above them."""
    book = openpyxl.load_workbook(old_file)
    made_with(book, version)
    at = laid_out(small()).placements["skeins_wraps"]
    with_column_inserted(book, "Skeins", at.column)
    mine = {f"Skeins!{at.cell(0)}": "ask Fern", f"Skeins!{at.cell(1)}": "=1+1", f"Skeins!{at.cell(at.rows - 1)}": 7.0}
    if version == __version__:
        mine[f"Skeins!{get_column_letter(at.column)}4"] = 7.0
    for place, value in mine.items():
        book["Skeins"][place.partition("!")[2]] = value
    book.save(tmp_path / "wider.xlsx")
    outcome = carried(tmp_path / "wider.xlsx")
    assert outcome.leftovers == {place: (value, ONLY_HERE) for place, value in mine.items()}
    assert outcome.new.entries["skeins_wraps"][:3] == (104.0, 142.0, 98.0)


def test_what_is_typed_in_a_row_of_a_page_that_was_inserted_is_told(old_file, tmp_path, carried):
    """A number, a text and a formula between the planner's own lines, whose formulas all have names."""
    book = openpyxl.load_workbook(old_file)
    at = laid_out(small()).placements["measure_wraps"].row
    for merged in list(book["Measure"].merged_cells.ranges):
        book["Measure"].unmerge_cells(str(merged))
    for defined in book.defined_names.values():
        if defined.attr_text.startswith("Measure!"):
            defined.attr_text = re.sub(
                r"\$(\d+)", lambda row: f"${int(row[1]) + (int(row[1]) >= at)}", defined.attr_text
            )
    page = book["Measure"]
    page.move_range(f"A{at}:{get_column_letter(page.max_column)}{page.max_row}", rows=1)
    mine = {f"Measure!B{at}": "ask Fern", f"Measure!C{at}": 7.5, f"Measure!D{at}": "=1+2"}
    for place, value in mine.items():
        page[place.partition("!")[2]] = value
    book.save(tmp_path / "longer.xlsx")
    assert carried(tmp_path / "longer.xlsx").leftovers == {place: (value, ONLY_HERE) for place, value in mine.items()}


def test_of_a_copied_sheet_only_what_differs_is_told(old_file, tmp_path, carried):
    """Its other cells are thousands, among which nobody would find the one that was typed."""
    book = openpyxl.load_workbook(old_file)
    twin = book.copy_worksheet(book["Skeins"])
    twin.title = "Skeins_2"
    place = cell("skeins_wraps", 1).partition("!")[2]
    twin[place] = 143
    book.save(tmp_path / "twice.xlsx")
    outcome = carried(tmp_path / "twice.xlsx")
    assert [(each.sheet, each.cell, each.what) for each in outcome.carried.leftovers] == [
        ("Skeins_2", "", "a copy of the sheet Skeins"),
        ("Skeins_2", place, 143.0),
    ]
    assert outcome.new.entries["skeins_wraps"][1] == 142.0
    again = carried(tmp_path / "new.xlsx", None, "again.xlsx").carried.leftovers
    assert [each.what for each in again] == ["a copy of the sheet Skeins", 143.0]


def test_a_field_that_is_no_more_is_told_with_its_label(old_file, tmp_path, carried):
    book = openpyxl.load_workbook(old_file)
    old = book.defined_names.pop("skeins_gross")
    old.name = "skeins_heft"
    book.defined_names["skeins_heft"] = old
    book.save(tmp_path / "renamed.xlsx")
    outcome = carried(tmp_path / "renamed.xlsx")
    assert [(each.cell, each.label, each.what) for each in outcome.carried.leftovers] == [
        (cell("skeins_gross", row).partition("!")[2], "Weight", weight) for row, weight in enumerate((4.02, 3.74, 3.88))
    ]
    assert outcome.new.entries["skeins_gross"] == (None,) * 4


def test_a_result_that_is_no_more_is_nobodys_entry(old_file, tmp_path, carried):
    """Also in a list in which nobody types, such as that of the projects on the sheet Time."""
    book = openpyxl.load_workbook(old_file)
    made_with(book, "0.4.3")
    for name, earlier in (("times_ahead", "times_to_come"), ("skeins_length_yd", "skeins_extent")):
        old = book.defined_names.pop(name)
        old.name = earlier
        book.defined_names[earlier] = old
    book.save(tmp_path / "renamed.xlsx")
    assert carried(tmp_path / "renamed.xlsx").carried.leftovers == ()
