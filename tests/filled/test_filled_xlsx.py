"""Reading .xlsx: each kind of cell as the format has it, whoever wrote the file."""

import zipfile

import openpyxl
import pytest
import xlsxwriter
from openpyxl.comments import Comment

from workbookgen.errors import FileError
from workbookgen.filled.book import Cell, ErrorValue, open_book
from workbookgen.ooxml import plain

TYPES = (
    '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">'
    '<Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/></Types>'
)
LINKS = '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="{kind}/{type}" Target="{target}"/></Relationships>'
USUAL = (
    "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
    "http://schemas.openxmlformats.org/officeDocument/2006/relationships",
)
STRICT = "http://purl.oclc.org/ooxml/spreadsheetml/main", "http://purl.oclc.org/ooxml/officeDocument/relationships"


def package(path, rows: str, forms=USUAL, about: str = "", names: str = ""):
    """A workbook of one sheet, its XML written by hand."""
    main, links = forms
    parts = {
        "[Content_Types].xml": TYPES,
        "_rels/.rels": LINKS.format(kind=links, type="officeDocument", target="xl/workbook.xml"),
        "xl/_rels/workbook.xml.rels": LINKS.format(kind=links, type="worksheet", target="/xl/worksheets/sheet1.xml"),
        "xl/workbook.xml": f'<workbook xmlns="{main}" xmlns:r="{links}">{about}<sheets><sheet name="S" sheetId="1" r:id="r1"/></sheets>{names}</workbook>',
        "xl/worksheets/sheet1.xml": f'<worksheet xmlns="{main}"><sheetData>{rows}</sheetData></worksheet>',
    }
    with zipfile.ZipFile(path, "w") as archive:
        for name, text in parts.items():
            archive.writestr(name, text)
    return path


def cells(path) -> dict:
    return open_book(path).sheets["S"]


@pytest.mark.parametrize("forms", [USUAL, STRICT], ids=["usual", "strict"])
def test_every_kind_of_cell(forms, tmp_path):
    rows = (
        '<row r="2"><c r="B2"><v>1.5</v></c><c r="C2" t="b"><v>1</v></c><c r="D2" t="e"><v>#DIV/0!</v></c>'
        '<c r="E2" t="str"><f>A1&amp;"x"</f><v>x</v></c>'
        '<c r="F2" t="inlineStr"><is><r><t>two</t></r><r><t xml:space="preserve"> runs</t></r><rPh sb="0" eb="1"><t>spoken</t></rPh></is></c>'
        '<c r="G2" t="d"><v>2026-12-01T12:00:00</v></c><c r="H2"/><c r="I2"><f>1/0</f></c><c r="J2"><v>1E999</v></c></row>'
    )
    assert cells(package(tmp_path / "kinds.xlsx", rows, forms)) == {
        (2, 2): Cell(1.5),
        (2, 3): Cell(True),
        (2, 4): Cell(ErrorValue("#DIV/0!")),
        (2, 5): Cell("x", '=A1&"x"'),
        (2, 6): Cell("two runs"),
        (2, 7): Cell(46357.5),  # 1 December 2026 is day 46,357
        (2, 9): Cell(None, "=1/0"),
        (2, 10): Cell(ErrorValue("1E999")),
    }


def test_a_cell_or_row_that_does_not_say_where_it_is_follows_the_last(tmp_path):
    rows = '<row r="3"><c r="B3"><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>'
    assert cells(package(tmp_path / "nowhere.xlsx", rows)) == {(3, 2): Cell(1.0), (3, 3): Cell(2.0), (4, 1): Cell(3.0)}


def test_a_shared_formula_moves_along(tmp_path):
    rows = '<row r="1"><c r="C1"><f t="shared" ref="C1:C2" si="0">A1*$B$1</f><v>2</v></c></row><row r="2"><c r="C2"><f t="shared" si="0"/><v>4</v></c></row>'
    assert cells(package(tmp_path / "shared.xlsx", rows)) == {
        (1, 3): Cell(2.0, "=A1*$B$1"),
        (2, 3): Cell(4.0, "=A2*$B$1"),
    }


def test_names_of_one_sheet_are_none_of_ours(tmp_path):
    names = '<definedNames><definedName name="skeins_name">S!$A$1</definedName><definedName name="other" localSheetId="0">S!$A$2</definedName></definedNames>'
    assert open_book(package(tmp_path / "names.xlsx", "", names=names)).names == {"skeins_name": "S!$A$1"}


@pytest.mark.parametrize("said", ["1", "true"])
def test_days_counted_from_1904_are_told(said, tmp_path):
    assert open_book(package(tmp_path / "days.xlsx", "", about=f'<workbookPr date1904="{said}"/>')).counts_from_1904
    assert not open_book(package(tmp_path / "usual.xlsx", "", about="<workbookPr/>")).counts_from_1904


def test_texts_notes_and_protection_as_other_programs_write_them(tmp_path):
    by_writer, by_openpyxl = tmp_path / "a.xlsx", tmp_path / "b.xlsx"
    with xlsxwriter.Workbook(by_writer) as book:
        sheet = book.add_worksheet("S")
        sheet.write_string("A1", "=6.5*16")
        sheet.write_string("A2", "a\nb _x0041_ \x07")
        sheet.write_comment("B3", "kept in the shed")
        sheet.protect()
    book = openpyxl.Workbook()
    book.active.title = "S"
    book.active["A1"].value, book.active["A1"].data_type = "=6.5*16", "s"
    book.active["A2"] = "a\nb _x0041_"
    book.active["B3"].comment = Comment("kept in the shed", "")
    book.save(by_openpyxl)
    first, second = open_book(by_writer), open_book(by_openpyxl)
    assert first.sheets["S"] == {(1, 1): Cell("=6.5*16"), (2, 1): Cell("a\nb _x0041_ \x07")}
    assert second.sheets["S"][1, 1] == Cell("=6.5*16")
    assert first.comments == second.comments == {"S": {(3, 2): "kept in the shed"}}
    assert (first.protected, second.protected) == ({"S"}, frozenset())


def test_only_the_wanted_sheets_and_columns_are_read(tmp_path):
    with xlsxwriter.Workbook(tmp_path / "many.xlsx") as book:
        for name in ("S", "T"):
            book.add_worksheet(name).write_row("A1", (1, 2, 3))
    path = tmp_path / "many.xlsx"
    assert set(open_book(path, {"T"}).sheets) == {"T"}
    assert open_book(path, {"T"}).sheet_names == ("S", "T")
    assert open_book(path, lambda names: {"S": {2}}).sheets == {"S": {(1, 2): Cell(2.0)}}


def test_a_broken_part_is_told_in_a_sentence(tmp_path):
    with pytest.raises(FileError, match="broken.xlsx: .*(damaged|cannot be read)"):
        open_book(package(tmp_path / "broken.xlsx", "<row><c><v>1</v></row>"))


# How the same cells may be written: as programs do, and in every way that is no program's but the format's.
WRITTEN = {
    "as programs do": '<row r="2"><c r="A2" s="3"><v>1</v></c><c r="B2" s="1"/><c r="C2" t="str"><f>"a&gt;b"</f><v>a</v></c></row><row r="3"><c r="C3"><v>4</v></c></row>',
    "places are left out": '<row r="2"><c><v>1</v></c><c s="1"/><c t="str"><f>"a&gt;b"</f><v>a</v></c></row><row><c r="C3"><v>4</v></c></row>',
    "another attribute first": '<row r="2"><c s="3" r="A2"><v>1</v></c><c s="1" r="B2"/><c t="str" r="C2"><f>"a&gt;b"</f><v>a</v></c></row>'
    '<row r="3"><c s="1" r="C3"><v>4</v></c></row>',
    "single quotes": "<row r='2'><c r='A2'><v>1</v></c><c r='C2' t='str'><f>\"a&gt;b\"</f><v>a</v></c></row><row r='3'><c r='C3'><v>4</v></c></row>",
    "with remarks": '<row r="2"><c r="A2"><v>1</v></c><c r="C2" t="str"><f>"a&gt;b"</f><v>a</v></c><!--<c r="C2"><v>9</v></c>--></row><row r="3"><c r="C3"><v>4</v></c></row>',
    "as raw text": '<row r="2"><c r="A2"><v>1</v></c><c r="C2" t="str"><f><![CDATA["a>b"]]></f><v>a</v></c></row><row r="3"><c r="C3"><v>4</v></c></row>',
    "over lines": '<row r="2">\n<c r="A2"\n s="3"><v>1</v></c><c r="C2" t="str"\n><f>"a&gt;b"</f>\n<v>a</v></c></row><row r="3"><c r="C3" ><v>4</v></c></row>',
}


@pytest.mark.parametrize("written", WRITTEN.values(), ids=WRITTEN)
@pytest.mark.parametrize("columns", [None, {1, 3}, {3}, {2}, {26 * 27}], ids=str)
def test_some_columns_are_read_as_the_whole_is(written, columns, tmp_path):
    whole = {(2, 1): Cell(1.0), (2, 3): Cell("a", '="a>b"'), (3, 3): Cell(4.0)}
    path = package(tmp_path / "some.xlsx", written)
    assert open_book(path, lambda names: {"S": columns}).sheets["S"] == {
        place: cell for place, cell in whole.items() if columns is None or place[1] in columns
    }


def test_some_columns_of_a_sheet_whose_words_have_a_prefix(tmp_path):
    """No program of today writes so, but the format allows it."""
    path = package(tmp_path / "prefix.xlsx", "")
    main = USUAL[0]
    sheet = f'<x:worksheet xmlns:x="{main}"><x:sheetData><x:row r="2"><x:c r="A2"><x:v>1</x:v></x:c></x:row></x:sheetData></x:worksheet>'
    rewritten = tmp_path / "rewritten.xlsx"
    with zipfile.ZipFile(path) as old, zipfile.ZipFile(rewritten, "w") as new:
        for name in old.namelist():
            new.writestr(name, sheet if "sheet1" in name else old.read(name))
    assert open_book(rewritten, lambda names: {"S": {1}}).sheets["S"] == {(2, 1): Cell(1.0)}


@pytest.mark.parametrize(
    "protection, is_so", [('<sheetProtection sheet="1"/>', True), ('<sheetProtection sheet="0"/>', False), ("", False)]
)
def test_that_a_sheet_is_protected_is_seen_where_some_columns_are_read(protection, is_so, tmp_path):
    path = package(
        tmp_path / "protected.xlsx", f'<row r="2"><c r="A2"><v>1</v></c></row></sheetData>{protection}<sheetData>'
    )
    for columns in (None, {1}, {2}):
        assert ("S" in open_book(path, lambda names, columns=columns: {"S": columns}).protected) == is_so


ODD = {  # what is not written as nearly all programs write it, and what it says
    "an escape by number": (
        '<row r="1"><c r="A1" t="str"><v>a&#98;c &lt;&#x64;</v></c></row>',
        {(1, 1): Cell("abc <d")},
    ),
    "apostrophes around attributes": (
        "<row r='1'><c r='A1' t='str'><v>two</v></c><c r=\"B1\" t='str'><v>three</v></c></row>",
        {(1, 1): Cell("two"), (1, 2): Cell("three")},
    ),
    "a comment": ('<row r="1"><!-- <c r="A1"><v>1</v></c> --><c r="B1"><v>2</v></c></row>', {(1, 2): Cell(2.0)}),
    "a section": ('<row r="1"><c r="A1" t="str"><v><![CDATA[a < b]]></v></c></row>', {(1, 1): Cell("a < b")}),
    "ends of lines": ('<row r="1"><c r="A1" t="str"><v>a\r\nb</v></c></row>', {(1, 1): Cell("a\nb")}),
    "its own space": (
        '<row r="1"><c r="A1" t="str"><f xml:space="preserve"> 1+1 </f><v xml:space="preserve"> a </v></c></row>',
        {(1, 1): Cell(" a ", "= 1+1 ")},
    ),
    "a formula by its own name": (
        '<row r="1"><c r="A1"><f t="shared" ref="A1:A2" si="7">B1</f><v>1</v></c></row><row r="2"><c r="A2"><f si="7" t="shared"/></c></row>',
        {(1, 1): Cell(1.0, "=B1"), (2, 1): Cell(None, "=B2")},
    ),
}


@pytest.mark.parametrize("odd", ODD)
@pytest.mark.parametrize("most", [plain.MOST_BYTES, 0], ids=["bytes", "parser"])
def test_what_is_written_in_an_odd_way_says_the_same(odd, most, tmp_path, monkeypatch):
    rows, said = ODD[odd]
    monkeypatch.setattr(plain, "MOST_BYTES", most)
    assert cells(package(tmp_path / "odd.xlsx", rows)) == said


ALIKE = {  # rows that are the same byte for byte but for their numbers, and what is in each
    "typed values": ("<v>7</v>", lambda row: Cell(7.0)),
    "a formula of its own for every cell": ("<f>A9*2</f><v>1</v>", lambda row: Cell(1.0, "=A9*2")),
    "a formula that refers to its row": ('<f t="shared" si="0"/><v>1</v>', lambda row: Cell(1.0, f"=A{row}*$A$11")),
    "a formula that refers to the row above": (
        '<f t="shared" si="1"/><v>1</v>',
        lambda row: Cell(1.0, f"=A{row - 1}+1"),
    ),
    "not as usual": ("<f>1+1</f><v>a&#98;</v>", lambda row: Cell("ab", "=1+1")),
}


@pytest.mark.parametrize("kind", ALIKE)
@pytest.mark.parametrize("most", [plain.MOST_BYTES, 0], ids=["bytes", "parser"])
def test_rows_that_are_alike(kind, most, tmp_path, monkeypatch):
    written, said = ALIKE[kind]
    first = (
        '<row r="9"><c r="B9"><f t="shared" ref="B9:B200" si="0">A9*$A$11</f><v>1</v></c>'
        '<c r="C9"><f t="shared" ref="C9:C200" si="1">A8+1</f><v>1</v></c></row>'
    )
    column = "C" if "above" in kind else "B"
    text = ' t="str"' if "usual" in kind else ""
    rows = "".join(f'<row r="{row}"><c r="{column}{row}"{text}>{written}</c></row>' for row in range(10, 150))
    monkeypatch.setattr(plain, "MOST_BYTES", most)
    found = cells(package(tmp_path / "alike.xlsx", first + rows))
    place = 3 if column == "C" else 2
    assert found == {(9, 2): Cell(1.0, "=A9*$A$11"), (9, 3): Cell(1.0, "=A8+1")} | {
        (row, place): said(row) for row in range(10, 150)
    }


def test_a_planner_is_the_same_by_its_bytes_and_by_the_parser(planner_file, monkeypatch):
    by_bytes = open_book(planner_file)
    assert sum(map(len, by_bytes.sheets.values())) > 1_000
    monkeypatch.setattr(plain, "MOST_BYTES", 0)
    assert open_book(planner_file) == by_bytes


@pytest.mark.parametrize(
    "rows",
    [
        '<row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>2</v></row>',
        '<row r="1"><c r="A1"><v>1</v></c></row></sheet><sheet>',
    ],
)
def test_a_broken_sheet_is_not_read_in_part(rows, tmp_path):
    with pytest.raises(FileError, match="cannot be read"):
        cells(package(tmp_path / "broken.xlsx", rows))
