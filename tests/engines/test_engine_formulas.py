"""Formulas as a file holds them, and one formula that many cells share, in every engine."""

from zipfile import ZipFile

import openpyxl
import pytest
import xlsxwriter
from openpyxl.formula.translate import Translator

import workbookgen.ooxml.formulas
from workbookgen.engines import Area
from workbookgen.engines.copies import POISON, with_poison
from workbookgen.ooxml.formulas import SharedFormula, _down, formulas

# A shared formula stands in its first cell; the others move it. The one in D3 looks at another row, and is shared
# sideways too.
SHARED = b"""<?xml version="1.0"?>
<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>
<row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>10</v></c></row>
<row r="2"><c r="A2"><v>2</v></c><c r="C2"><f t="shared" ref="C2:C4" si="0">$A2*$B$1&amp;" $A2"</f><v>0</v></c></row>
<row r="3"><c r="A3"><v>3</v></c><c r="C3"><f t="shared" si="0"/><v>0</v></c>
<c r="D3"><f t="shared" ref="D3:E4" si="1">A2+1</f><v>0</v></c><c r="E3"><f t="shared" si="1"/><v>0</v></c></row>
<row r="4"><c r="A4"><v>4</v></c><c r="C4"><f t="shared" si="0"/><v>0</v></c><c r="D4"><f t="shared" si="1"/><v>0</v></c><c r="E4"><f>SUM(A1:A4)</f><v>0</v></c></row>
</sheetData></worksheet>"""

WRITTEN = {
    "C2": '=$A2*$B$1&" $A2"',
    "C3": '=$A3*$B$1&" $A2"',
    "C4": '=$A4*$B$1&" $A2"',
    "D3": "=A2+1",
    "E3": "=B2+1",
    "D4": "=A3+1",
    "E4": "=SUM(A1:A4)",
}
SHOWN = [["20 $A2", None, None], ["30 $A2", 3, 1], ["40 $A2", 4, 10]]


@pytest.fixture(scope="module")
def sharing(tmp_path_factory):
    plain = tmp_path_factory.mktemp("shared") / "plain.xlsx"
    with xlsxwriter.Workbook(plain) as book:
        book.add_worksheet("Shares")
    path = plain.with_name("shared.xlsx")
    with ZipFile(plain) as before, ZipFile(path, "w") as after:
        for entry in before.infolist():
            after.writestr(entry, SHARED if entry.filename == "xl/worksheets/sheet1.xml" else before.read(entry))
    return path


def test_each_cell_has_its_own_text(sharing):
    assert formulas(sharing) == {("Shares", cell): text for cell, text in WRITTEN.items()}


def test_a_planners_formulas_are_those_that_openpyxl_reads(small_file):
    book = openpyxl.load_workbook(small_file)
    assert formulas(small_file) == {
        (sheet.title, cell.coordinate): cell.value
        for sheet in book
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "f"
    }


def test_poison_leaves_sharing_alone(sharing, tmp_path):
    poisoned = tmp_path / "poisoned.xlsx"
    with_poison(sharing, poisoned)
    assert formulas(poisoned) == formulas(sharing)
    sheet = openpyxl.load_workbook(poisoned, data_only=True)["Shares"]
    assert {sheet[cell].value for cell in WRITTEN} == {POISON}


def test_every_engine_moves_a_shared_formula(each_engine, sharing):
    with each_engine.open(sharing) as session:
        assert session.read(Area("Shares", 2, 3, 3, 3)) == SHOWN
        session.set(Area("Shares", 2, 1), [[5]])
        session.evaluate()
        assert session.read(Area("Shares", 2, 3, 2, 2)) == [["50 $A2", None], ["30 $A2", 6]]


# Formulas in row 7 that move down otherwise than by their row's number, or that have what only looks like a cell.
HARD = (
    "=A6",
    "=A7+A8",
    "=$A7:$A9",
    "=7:7",
    "=A:A",
    "=Other!A7",
    "='My sheet'!A7",
    '="{row}"&A7',
    '="A7"',
    '="say ""A7"""&A7',
    "=a7",
    "=A07",
    "=ABCD7",
    "=A7:INDEX(B$1:B$9,7)",
    "=LOG10(A7)",
    "=1E7+A7",
    "=1.5E-7*A7",
    "=skeins_a7",
    "=tax7",
    "=A7_b",
    "=Table[A7]",
    "=[1]Sheet1!A7",
    "=#REF!+A7",
    "=R7C7",
    "={A7,7}",
    "=A7%",
    "='it''s A7'!$A$7",
    "=A$7+$A7",
    "=É7",
)


@pytest.mark.parametrize("text", HARD)
def test_a_formula_moves_down_as_openpyxl_moves_it(text):
    moved = SharedFormula(text, "C7")
    for place in ("C8", "C70", "C777", "D8"):
        assert moved.moved_to(place) == Translator(text, "C7").translate_formula(place)


def test_a_planners_formulas_need_no_translator(small_file, monkeypatch):
    monkeypatch.setattr(workbookgen.ooxml.formulas, "Translator", None)
    _down.cache_clear()
    assert len(formulas(small_file)) > 1_000
