"""The gate: what passes, what does not, and why; each refusal is a sentence that helps."""

import io
import re
import zipfile

import pytest

from workbookgen.errors import FileError
from workbookgen.filled.cells import MOST_CELLS
from workbookgen.filled.gate import MOST_BYTES, MOST_TAGS, MOST_UNPACKED, inspected
from workbookgen.planner_file import read_planner

from .hostile import FORMULAS, NO_PLANNERS, REACHING_OUT, filled_rows, no_ordinary_files, part, repacked


@pytest.fixture(scope="module")
def content(little_file):
    return little_file.read_bytes()


@pytest.fixture
def made(tmp_path):
    def making(content: bytes, name: str = "mine.xlsx"):
        path = tmp_path / name
        path.write_bytes(content)
        return path

    return making


def test_a_planner_passes(little_file):
    assert inspected(little_file).kind == "xlsx"
    package = inspected(little_file)
    assert package.links == () and 0 < package.cells < 50_000


@pytest.mark.parametrize("name", NO_PLANNERS)
def test_what_does_not_pass(made, content, name):
    make, sentence = NO_PLANNERS[name]
    path = made(make(content))
    with pytest.raises(FileError) as told:
        inspected(path)
    text = str(told.value)
    assert text.startswith(f"{path}: ") and re.match(sentence, text.removeprefix(f"{path}: ")) and text.endswith(".")


def test_what_is_no_file(tmp_path):
    for path, sentence in no_ordinary_files(tmp_path).items():
        with pytest.raises(FileError) as told:
            inspected(path)
        assert str(told.value) == f"{path}: {sentence}"


def test_a_file_too_large_is_not_even_opened(tmp_path):
    path = tmp_path / "large.xlsx"
    with path.open("wb") as file:
        file.write(b"PK\x03\x04")
        file.truncate(3 * 2**30)  # a hole: it takes no room
    with pytest.raises(FileError, match="this file has 3,072 MB, far more than a planner"):
        inspected(path)


@pytest.mark.parametrize("name", REACHING_OUT)
def test_what_may_be_read_but_not_worked_out(made, content, name):
    make, sentence = REACHING_OUT[name]
    path = made(make(content))
    assert inspected(path).kind == "xlsx"
    with pytest.raises(FileError) as told:
        read_planner(path)
    assert re.match(sentence, str(told.value).removeprefix(f"{path}: "))


@pytest.mark.parametrize("formula", FORMULAS)
def test_formulas_that_reach_out(made, content, little_layout, formula):
    weight = little_layout.placements["fiber_weight"]
    number = [sheet.name for sheet in little_layout.planner.sheets].index(weight.sheet) + 1
    text = formula.replace("&", "&amp;").replace('"', "&quot;")
    cell = re.compile(rb'<c r="%s"( s="\d+")?\s*/>' % weight.cell(0).encode())

    def typed(sheet: bytes) -> bytes:
        changed, times = cell.subn(f'<c r="{weight.cell(0)}"><f>{text}</f><v>1</v></c>'.encode(), sheet)
        assert times == 1
        return changed

    path = made(part(f"xl/worksheets/sheet{number}.xml", typed)(content))
    if FORMULAS[formula]:
        assert read_planner(path).formulas[weight.sheet, weight.cell(0)] == f"={formula}"
    else:
        with pytest.raises(
            FileError, match=r"this formula reaches out of the planner \(=.*Type its value instead"
        ) as told:
            read_planner(path)
        assert str(told.value).startswith(f"{path}, {weight.sheet}!{weight.cell(0)}: ")


def test_the_fiber_table_of_a_stranger_is_not_looked_up(made, content):
    """Else a file that came by mail would choose what is read from this computer."""
    path = made(
        part("xl/sharedStrings.xml", lambda strings: re.sub(rb'fibers = "[^"]*"', b'fibers = "/etc/passwd"', strings))(
            content
        )
    )
    assert b"/etc/passwd" in zipfile.ZipFile(path).read("xl/sharedStrings.xml")
    assert read_planner(path).settings.fibers == ""


class TestWhatPeopleReallyDo:
    """Odd, large or colorful files that are planners all the same."""

    def test_columns_formatted_to_the_last_line(self, made, content):
        path = made(filled_rows(1_048_000, "A", '<c r="{column}{row}" s="3"/>')(content))
        assert inspected(path).cells == inspected(made(content, "plain.xlsx")).cells

    def test_one_cell_in_the_last_corner(self, made, content):
        """Whoever went through all cells up to it would never end."""
        corner = b'<row r="1048576"><c r="XFD1048576"><v>1</v></c></row></sheetData><mergeCells count="1"><mergeCell ref="A900:XFD1048576"/></mergeCells>'
        path = made(part("xl/worksheets/sheet2.xml", lambda sheet: sheet.replace(b"</sheetData>", corner))(content))
        assert read_planner(path).formulas == read_planner(made(content, "plain.xlsx")).formulas

    def test_clickable_links_and_pictures(self, made, content):
        link = (
            b'<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" TargetMode="External" '
            b'Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/hyperlink" Target="http://example.com"/></Relationships>'
        )
        added = {
            "xl/worksheets/_rels/sheet99.xml.rels": link,
            "xl/media/image99.png": b"\x89PNG\r\n\x1a\n" + bytes(3000),
        }
        assert inspected(made(repacked(content, added=added))).links == ()

    def test_letters_of_all_the_world(self, made, content):
        strings = part("xl/sharedStrings.xml", lambda each: each.replace(b"Handspinning", "Größe 手紡ぎ שלום".encode()))
        assert inspected(made(strings(content))).kind == "xlsx"

    def test_another_name(self, made, content):
        assert inspected(made(content, "planner of 2026.XLSX.backup")).kind == "xlsx"


def test_the_largest_planner_is_well_inside_the_bounds():
    """What the settings allow at most may be read."""
    from workbookgen.build import layout_of
    from workbookgen.settings import Rows, Settings

    most = {
        name: next(each.le for each in field.metadata if hasattr(each, "le"))
        for name, field in Rows.model_fields.items()
    }
    layout = layout_of(Settings(rows=Rows(**most)))
    cells = sum(placement.rows for placement in layout.placements.values())
    assert cells * 1.1 < MOST_CELLS
    # LibreOffice writes the formula of each cell in full. Of a blank planner with 2.45 million it made 849 MB, 95 bytes
    # for each cell besides the text of its formula, with 5 tags a cell, packed to 13%; as .ods 206 bytes, and 10%.
    texts = sum(each.rows * len(each.formulas[-1]) for each in layout.formulas)
    assert cells * 6 < MOST_TAGS and texts + cells * 300 < MOST_UNPACKED
    assert (texts + cells * 100) * 0.2 < MOST_BYTES and (texts + cells * 300) * 0.15 < MOST_BYTES


def test_the_pieces_of_a_part_are_looked_at_across_their_seams(made, content):
    """A declaration that begins in one piece and ends in the next."""
    from workbookgen.filled.gate import PIECE

    for offset in range(1, 9):
        filling = b"<x>" + b" " * (PIECE - 3 - offset) + b"<!DOCTYPE x>"
        with pytest.raises(FileError, match="declares entities"):
            inspected(made(repacked(content, added={"xl/seam.xml": filling})))


def test_an_open_document(made):
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w") as package:
        package.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
        package.writestr("content.xml", '<?xml version="1.0" encoding="UTF-8"?><office:document-content/>')
    assert inspected(made(stream.getvalue(), "mine.ods")).kind == "ods"
    with pytest.raises(FileError, match=r"this is an \.ods workbook, and this command reads \.xlsx ones only"):
        read_planner(made(stream.getvalue(), "mine.ods"))
