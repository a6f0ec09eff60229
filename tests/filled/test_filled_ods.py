"""Reading .ods: content written by hand, each kind of cell as the format has it."""

import zipfile

import pytest

from workbookgen.filled.book import Cell, ErrorValue, open_book

HEAD = (
    '<office:document-content xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0"'
    ' xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:dc="http://purl.org/dc/elements/1.1/"'
    ' xmlns:calcext="urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0"><office:body><office:spreadsheet>'
)
TAIL = "</office:spreadsheet></office:body></office:document-content>"
NAMES = '<table:named-expressions><table:named-range table:name="skeins_name" table:cell-range-address="$S.$A$1:.$A$3"/></table:named-expressions>'


def package(path, rows: str, attributes: str = "", names: str = NAMES):
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
        archive.writestr("META-INF/manifest.xml", "<manifest/>")
        archive.writestr(
            "content.xml", f'{HEAD}<table:table table:name="S" {attributes}>{rows}</table:table>{names}{TAIL}'
        )
    return path


def row(*cells: str, more: str = "") -> str:
    return f"<table:table-row {more}>{''.join(cells)}</table:table-row>"


def cell(kind: str, value: str = "", shown: str = "", more: str = "") -> str:
    return f'<table:table-cell office:value-type="{kind}" {value} {more}><text:p>{shown}</text:p></table:table-cell>'


def test_every_kind_of_cell(tmp_path):
    rows = row(
        cell("float", 'office:value="1.5"', "1.50"),
        cell("percentage", 'office:value="0.15"', "15%"),
        cell("date", 'office:date-value="2026-12-01"', "12/01/26"),
        cell("time", 'office:time-value="PT12H30M00S"', "12:30"),
        cell("boolean", 'office:boolean-value="true"', "TRUE"),
        cell("string", "", 'a <text:s text:c="2"/>b<text:tab/>c'),
        cell("string", "", "#DIV/0!", 'table:formula="of:=1/0" calcext:value-type="error"'),
        cell("float", 'office:value="0"', "#VALUE!", 'table:formula="of:=[.A1]*2"'),
        '<table:table-cell table:style-name="boxed"/>',
    )
    assert list(open_book(package(tmp_path / "kinds.ods", rows)).sheets["S"].values()) == [
        Cell(1.5),
        Cell(0.15),
        Cell(46357.0),
        Cell(12.5 / 24),
        Cell(True),
        Cell("a   b\tc"),
        Cell(ErrorValue("#DIV/0!"), "=1/0"),
        Cell(ErrorValue("#VALUE!"), "=A1*2"),
    ]


def test_a_result_of_nothing_is_nothing_though_its_format_shows_spaces(tmp_path):
    """LibreOffice writes so where a formula gives an empty text in a cell of the format `@_)_)`."""
    shown = '<text:p><text:s text:c="2"/></text:p>'
    rows = row(
        f'<table:table-cell table:formula="of:=&quot;&quot;">{shown}</table:table-cell>', cell("string", "", "a")
    )
    assert list(open_book(package(tmp_path / "nothing.ods", rows)).sheets["S"].values()) == [
        Cell(None, '=""'),
        Cell("a"),
    ]


def test_a_day_beyond_any_calendar_costs_only_its_cell(tmp_path):
    """LibreOffice writes 10,000,000 in a cell for dates as a day of the year 29279."""
    rows = row(cell("date", 'office:date-value="29279-01-24"', "01/24/79"), cell("float", 'office:value="1.5"', "1.50"))
    cells = open_book(package(tmp_path / "far.ods", rows)).sheets["S"].values()
    assert list(cells) == [Cell("29279-01-24"), Cell(1.5)]


def test_what_repeats_is_stored_once(tmp_path):
    rows = (
        row('<table:table-cell table:number-columns-repeated="16384"/>', more='table:number-rows-repeated="1000000"')
        + row(
            '<table:table-cell table:number-columns-repeated="2"/>',
            cell("float", 'office:value="7"', "7", 'table:number-columns-repeated="2"'),
            more='table:number-rows-repeated="2"',
        )
        + "<table:table-row-group>"
        + row(cell("string", "", "end"))
        + "</table:table-row-group>"
    )
    assert open_book(package(tmp_path / "repeated.ods", rows)).sheets["S"] == {
        (1000001, 3): Cell(7.0),
        (1000001, 4): Cell(7.0),
        (1000002, 3): Cell(7.0),
        (1000002, 4): Cell(7.0),
        (1000003, 1): Cell("end"),
    }


def test_formulas_are_told_in_the_words_of_xlsx(tmp_path):
    formula = "of:=IF([.$B7]&gt;0;SUMIF([$'Made with'.$A$1:.$A$9];&quot;a;[b]&quot;;[Skeins.C1:.C9]);&quot;&quot;)"
    rows = row(cell("float", 'office:value="1"', "1", f'table:formula="{formula}"'))
    written = open_book(package(tmp_path / "formula.ods", rows)).sheets["S"][1, 1].formula
    assert written == '=IF($B7>0,SUMIF(\'Made with\'!$A$1:$A$9,"a;[b]",Skeins!C1:C9),"")'


def test_a_note_is_no_part_of_its_cell(tmp_path):
    note = "<office:annotation><dc:date>2026-01-01T00:00:00</dc:date><text:p>kept in</text:p><text:p>the shed</text:p></office:annotation>"
    rows = row(
        f'<table:table-cell office:value-type="string">{note}<text:p>Clover</text:p></table:table-cell>',
        f"<table:table-cell>{note}</table:table-cell>",
    )
    book = open_book(package(tmp_path / "note.ods", rows, 'table:protected="true"'))
    assert book.sheets["S"] == {(1, 1): Cell("Clover")}
    assert book.comments["S"] == {(1, 1): "kept in\nthe shed", (1, 2): "kept in\nthe shed"}
    assert book.protected == {"S"}


def test_names_are_found_behind_the_sheets_and_those_of_one_sheet_left_out(tmp_path):
    local = '<table:named-expressions><table:named-range table:name="mine" table:cell-range-address="$S.$B$1"/></table:named-expressions>'
    book = open_book(package(tmp_path / "names.ods", row(cell("string", "", "x")) + local))
    assert book.names == {"skeins_name": "S!$A$1:$A$3"}  # as an .xlsx file spells it


@pytest.mark.parametrize(
    "spelled, name",
    [
        ("$'Made with'.$A$7:.$C$20", "'Made with'!$A$7:$C$20"),
        ("$'Made with'.$A$7:$'Made with'.$C$20", "'Made with'!$A$7:$C$20"),
        ("$'Nan''s lots, no. 2'.$B$7", "'Nan''s lots, no. 2'!$B$7"),
        ("", ""),
    ],
)
def test_names_are_spelled_as_in_the_other_format(tmp_path, spelled, name):
    path = package(tmp_path / "names.ods", row(cell("string", "", "x")))
    with zipfile.ZipFile(path) as before:
        content = before.read("content.xml").decode().replace("$S.$A$1:.$A$3", spelled.replace("'", "&apos;"))
    with zipfile.ZipFile(path) as before, zipfile.ZipFile(tmp_path / "spelled.ods", "w") as after:
        for entry in before.infolist():
            after.writestr(entry, content if entry.filename == "content.xml" else before.read(entry))
    assert open_book(tmp_path / "spelled.ods").names == {"skeins_name": name}


def test_only_the_wanted_columns_are_kept(tmp_path):
    path = package(
        tmp_path / "some.ods", row(cell("float", 'office:value="1"', "1"), cell("float", 'office:value="2"', "2"))
    )
    assert open_book(path, lambda names: {"S": {2}}).sheets == {"S": {(1, 2): Cell(2.0)}}
    assert open_book(path, ()).sheets == {}
