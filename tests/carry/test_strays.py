"""What a person put beside the inputs: told, wherever it was and whichever version made the planner."""

import openpyxl
import pytest
from openpyxl.comments import Comment

from workbookgen.carry.leftovers import IN_ITS_CELL, ONLY_HERE

EDITS = {
    "Skeins!C7": "=6.5*16",  # arithmetic in an input
    "Skeins!C8": True,
    "Skeins!A9": False,
    "Skeins!Z40": "ask about the wheel",  # below and beside everything
    "Reels!A40": 12.5,
    "Start!A1": "Our planner",  # a changed heading
    "Lists!A7": "lace-ish",  # a changed fact
    "Shed!B2": "=1+1",  # a sheet of one's own
}


def edited(path, target, edits=EDITS):
    book = openpyxl.load_workbook(path)
    book.create_sheet("Shed")
    for place, value in edits.items():
        sheet, _, cell = place.partition("!")
        book[sheet][cell] = value
    loop = next(iter(book.defined_names["reels_loop"].destinations))[1].split(":")[0].replace("$", "")
    hundred = next(iter(book.defined_names["reels_hundred"].destinations))[1].split(":")[0].replace("$", "")
    book["Reels"][loop] = 71.5  # a result overwritten
    book["Reels"][hundred] = "=1000*2"  # and one made into another formula
    book["Skeins"]["A7"].comment = Comment("the first I liked", "")
    book["Methods"]["A1"].comment = Comment("read this again", "")
    book.save(target)
    return loop, hundred


@pytest.fixture
def outcome(old_file, tmp_path, carried):
    loop, hundred = edited(old_file, tmp_path / "edited.xlsx")
    return carried(tmp_path / "edited.xlsx"), loop, hundred


def test_everything_beside_the_inputs_is_told(outcome):
    told, loop, hundred = outcome
    assert told.leftovers == {
        "Skeins!C7": ("=6.5*16", ONLY_HERE),
        "Skeins!C8": ("TRUE", IN_ITS_CELL),
        "Skeins!A9": ("FALSE", IN_ITS_CELL),
        "Skeins!Z40": ("ask about the wheel", ONLY_HERE),
        "Reels!A40": (12.5, ONLY_HERE),
        "Start!A1": ("Our planner", ONLY_HERE),
        "Lists!A7": ("lace-ish", ONLY_HERE),
        "Shed!B2": ("=1+1", ONLY_HERE),
        f"Reels!{loop}": (71.5, ONLY_HERE),
        f"Reels!{hundred}": ("=1000*2", ONLY_HERE),
        "Methods!A1": ("read this again", ONLY_HERE),
    }
    assert len(told.carried.leftovers) == len(told.leftovers), "nothing is told twice"
    assert told.new.entries["skeins_wraps"][:2] == (104.0, "TRUE"), "arithmetic is worked out where the file has no value"
    assert told.new.book.comments["Skeins"] == {(7, 1): "the first I liked"}, "a note on an input goes along"


def test_on_a_sheet_with_inserted_lines_only_what_is_outside_is_told(old_file, tmp_path, carried):
    book = openpyxl.load_workbook(old_file)
    for defined in book.defined_names.values():
        defined.attr_text = defined.attr_text.replace("$10", "$11") if "Skeins!" in defined.attr_text else defined.attr_text
    book["Skeins"]["A11"] = "Fifth"
    book["Skeins"]["A12"] = "below the log"
    book["Skeins"]["ZZ5"] = "in the margin"
    book["Skeins"].protection.sheet = False  # else no line could be inserted
    book.save(tmp_path / "longer.xlsx")
    outcome = carried(tmp_path / "longer.xlsx")
    assert outcome.new.entries["skeins_name"] == ("First", "Second", "Third", None, "Fifth")
    assert outcome.leftovers == {"Skeins!A12": ("below the log", ONLY_HERE), "Skeins!ZZ5": ("in the margin", ONLY_HERE)}


def test_a_field_that_is_no_more_is_told_with_its_label(old_file, tmp_path, carried):
    book = openpyxl.load_workbook(old_file)
    old = book.defined_names.pop("skeins_gross")
    old.name = "skeins_heft"
    book.defined_names["skeins_heft"] = old
    book.save(tmp_path / "renamed.xlsx")
    outcome = carried(tmp_path / "renamed.xlsx")
    assert [(each.cell, each.label, each.what) for each in outcome.carried.leftovers] == [("F7", "Weight", 4.02), ("F8", "Weight", 3.74), ("F9", "Weight", 3.88)]
    assert outcome.new.entries["skeins_gross"] == (None,) * 4
