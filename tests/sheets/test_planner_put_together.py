"""How a planner is put together from its sheets: each is named once, and a slip is told in one sentence, with the file
to mend."""

import subprocess
import sys
from typing import Literal

import pytest

from workbookgen.errors import DescriptionError
from workbookgen.settings import Settings
from workbookgen.sheets import pieces, planner, proofs, tabs
from workbookgen.sheets.card_view import asked_and_answered
from workbookgen.sheets.fabric import fabric
from workbookgen.sheets.naming import said_with


def test_a_chapter_stands_on_the_sheet_that_its_module_names(monkeypatch):
    monkeypatch.setattr(pieces, "SHEET", tabs.TIME)
    with pytest.raises(DescriptionError, match="workbookgen.sheets.pieces: its SHEET is Time, and sheets/planner.py has it on Need"):
        planner.planner(Settings())


@pytest.mark.parametrize("name", ["SHEET", "chapter"])
def test_a_chapter_has_its_sheet_and_its_function(monkeypatch, name):
    monkeypatch.delattr(pieces, name)
    with pytest.raises(DescriptionError, match=f"workbookgen.sheets.pieces: it has no {name}: the module of a chapter says"):
        planner.planner(Settings())


def test_a_chapter_is_made_from_the_settings(monkeypatch):
    monkeypatch.setattr(pieces, "chapter", lambda: None)
    with pytest.raises(DescriptionError, match="workbookgen.sheets.pieces: its chapter takes one argument, the settings"):
        planner.planner(Settings())


@pytest.mark.parametrize("name, value", [("Leavable", Literal["Pieces", "Knots"]), ("IN_SMALL", ("Knots",)), ("NEEDS", {"Pieces": ("Knots",)})])
def test_what_can_be_left_out_is_a_chapter(monkeypatch, name, value):
    monkeypatch.setattr(planner, name, value)
    with pytest.raises(DescriptionError, match=r"settings/model.py: Knots is to be left out or kept, and no sheet in sheets/planner.py has a chapter"):
        planner.planner(Settings())


def test_the_first_line_of_the_examples_names_their_values(monkeypatch):
    monkeypatch.setattr(proofs, "HEADS", ("nr", *proofs.HEADS[1:]))
    with pytest.raises(DescriptionError, match="proofs.csv: its first line must be nr,what,result"):
        proofs.read_proofs()


def test_an_example_gives_each_value_once():
    line = dict.fromkeys(proofs.HEADS, "1") | {"number": "1-001", "given": "wraps=1; loop=1 inch; wraps=2"}
    with pytest.raises(DescriptionError, match="proof 1-001: wraps is given twice."):
        proofs._proof(line)


@pytest.mark.parametrize("big, hidden", [("fare", ""), ("far", "densty")])
def test_a_card_shows_what_it_has(big, hidden):
    with pytest.raises(DescriptionError, match=f"the view of fabric: {hidden or big} is no field of it"):
        asked_and_answered(fabric(Settings()), big, hidden=hidden)


def test_a_sheet_may_have_a_name_of_several_words():
    named = {"Knitting": "What it needs", "Weaving": "What it needs", "Guide": "Fleece"}
    assert said_with("Leave it empty to use the sheets Knitting and Weaving.", named, here="Desk") == "Leave it empty to use the sheet What it needs."
    assert said_with("See the sheet Guide.", named, here="Fleece") == "See this sheet."
    with pytest.raises(DescriptionError, match="names the sheet Looms, which is not there"):
        said_with("See the sheet Looms.", named, here="Desk")


RENAMED = """
from workbookgen.sheets import tabs
for each in [name for name in vars(tabs) if name.isupper()]:
    setattr(tabs, each, f"Our {getattr(tabs, each).lower()}")
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner
for size in ("whole", "small"):
    print(*(sheet.name for sheet in planner(Settings(size=size)).sheets), sep=", ")
"""


def test_every_sheet_can_be_renamed_in_one_place():
    """In sheets/tabs.py: whatever names it follows, whether log, page, or calculators."""
    ended = subprocess.run([sys.executable, "-c", RENAMED], capture_output=True, text=True)
    assert ended.stderr == ""
    whole, small = ended.stdout.splitlines()
    assert whole.startswith("Our desk, Our measure, Our lot, ") and whole.count("Our ") == 16
    assert small.count("Our ") == len(small.split(", ")) == 8
