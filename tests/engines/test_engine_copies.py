"""Editing a package changes the cells it was asked to change, and not one byte more."""

from xml.etree import ElementTree
from zipfile import ZipFile

import openpyxl
import pytest

from workbookgen.engines import Area
from workbookgen.engines.copies import POISON, with_poison, with_values
from workbookgen.errors import FileError
from workbookgen.ooxml import editing

MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
ENTRIES, WORKED_OUT = "xl/worksheets/sheet1.xml", "xl/worksheets/sheet2.xml"


def parts(path):
    with ZipFile(path) as package:
        return {name: package.read(name) for name in package.namelist()}


def around_the_data(xml):
    """A sheet's text before and after its cells."""
    return xml[: xml.index(b"<sheetData")], xml[xml.index(b"</sheetData>") :]


def contents(path, **options):
    book = openpyxl.load_workbook(path, **options)
    return {
        (sheet.title, cell.coordinate): cell.value
        for sheet in book
        for row in sheet
        for cell in row
        if cell.value is not None
    }


def test_poison_reaches_every_formula_and_nothing_else(workbook, tmp_path):
    target = tmp_path / "poisoned.xlsx"
    with_poison(workbook, target)
    before, after = parts(workbook), parts(target)
    assert list(before) == list(after)
    assert {name for name in before if before[name] != after[name]} == {WORKED_OUT}
    assert around_the_data(before[WORKED_OUT]) == around_the_data(after[WORKED_OUT])
    assert contents(workbook) == contents(target)  # formulas and entries

    old, new = (list(ElementTree.fromstring(content[WORKED_OUT]).iter(f"{MAIN}c")) for content in (before, after))
    assert len(old) == len(new) > 200
    for was, now in zip(old, new, strict=True):
        assert now.find(f"{MAIN}f").text == was.find(f"{MAIN}f").text
        assert float(now.find(f"{MAIN}v").text) == POISON
        assert "t" not in now.attrib
        assert (now.get("r"), now.get("s")) == (was.get("r"), was.get("s"))


def test_values_are_set_where_asked(workbook, tmp_path):
    target = tmp_path / "filled.xlsx"
    given = {
        Area("Entries", 1, 1, 3): [[None], ['a "b" & <c> '], [0.1]],
        Area("Entries", 2, 28): [["beyond the row"]],
        Area("Entries", 400, 2, 1, 2): [[None, 1e300]],
        Area("Entries", 1, 3): [[46010]],
        Area("Entries", 3, 1): [[0.2]],
    }
    with_values(workbook, target, given)
    before, after = parts(workbook), parts(target)
    assert {name for name in before if before[name] != after[name]} == {ENTRIES}
    assert around_the_data(before[ENTRIES]) == around_the_data(after[ENTRIES])

    expected = contents(workbook)
    del expected["Entries", "A1"]
    expected |= {
        ("Entries", "A2"): 'a "b" & <c> ',
        ("Entries", "A3"): 0.2,
        ("Entries", "AB2"): "beyond the row",
        ("Entries", "C400"): 1e300,
        ("Entries", "C1"): openpyxl.utils.datetime.from_excel(46010),  # still a date: its style
    }
    assert contents(target) == expected


def test_cells_and_rows_stand_in_order(workbook, tmp_path):
    target = tmp_path / "filled.xlsx"
    with_values(workbook, target, {Area("Entries", row, 2): [[row]] for row in (300, 2, 14, 13)})
    sheet = ElementTree.fromstring(parts(target)[ENTRIES])
    numbers = [int(row.get("r")) for row in sheet.iter(f"{MAIN}row")]
    assert numbers == [*range(1, 15), 300]
    assert "spans" not in list(sheet.iter(f"{MAIN}row"))[1].attrib  # it would be out of date
    assert [cell.get("r") for cell in sheet.iter(f"{MAIN}c")][1:5] == ["C1", "A2", "B2", "A3"]


# Another writer's habits, all allowed by the format: a prefix, names left out, an empty row,
# a quoted ">" and a comment.
FOREIGN = b"""<?xml version="1.0"?>
<x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"
 xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" mc:Ignorable="own"
 xmlns:own="urn:own"><!-- <sheetData> --><x:sheetData own:note="a > b">
<x:row><x:c><x:v>1</x:v></x:c><x:c t="str"><x:f>A1&amp;"&gt;"</x:f><x:v/></x:c></x:row>
<x:row r="4" own:note="empty"/><x:row><x:c r="C5" t="e"><x:f>1/0</x:f><x:v>#DIV/0!</x:v></x:c>
</x:row></x:sheetData><x:pageMargins own:kept="yes"/></x:worksheet>"""


@pytest.fixture
def foreign(workbook, tmp_path):
    path = tmp_path / "foreign.xlsx"
    with ZipFile(path, "w") as package:
        for name, content in parts(workbook).items():
            package.writestr(name, FOREIGN if name == ENTRIES else content)
    return path


def test_another_writers_habits(foreign, tmp_path):
    poisoned, filled = tmp_path / "poisoned.xlsx", tmp_path / "filled.xlsx"
    with_poison(foreign, poisoned)
    text = parts(poisoned)[ENTRIES]
    assert b'<x:c r="B1"><x:f>A1&amp;"&gt;"</x:f><x:v>-987654321.0</x:v></x:c>' in text
    assert b'<x:c r="C5"><x:f>1/0</x:f><x:v>-987654321.0</x:v></x:c>' in text
    assert b'<x:row r="4" own:note="empty"/>' in text
    assert text.startswith(FOREIGN[: FOREIGN.index(b"<x:sheetData")])
    assert text.endswith(FOREIGN[FOREIGN.index(b"</x:sheetData>") :])

    with_values(poisoned, filled, {Area("Entries", 4, 2, 2): [["ä"], [2.5]]})
    text = parts(filled)[ENTRIES].decode()
    assert '<x:row r="4" own:note="empty"><x:c r="B4" t="inlineStr"><x:is>' in text
    found = contents(filled)
    assert (found["Entries", "B4"], found["Entries", "B5"]) == ("ä", 2.5)
    assert (found["Entries", "A1"], found["Entries", "C5"]) == (1, "=1/0")


def test_an_empty_sheet_can_be_filled(workbook, tmp_path):
    source, target = tmp_path / "empty.xlsx", tmp_path / "filled.xlsx"
    with ZipFile(source, "w") as package:
        for name, content in parts(workbook).items():
            head, tail = around_the_data(content) if name == ENTRIES else (content, b"")
            emptied = head + b"<sheetData/>" + tail.removeprefix(b"</sheetData>")
            package.writestr(name, emptied if name == ENTRIES else content)
    with_values(source, target, {Area("Entries", 2, 2): [["x"]]})
    assert contents(target)["Entries", "B2"] == "x"


def test_what_cannot_be_written_is_refused(workbook, tmp_path):
    target = tmp_path / "filled.xlsx"
    with pytest.raises(ValueError, match="read in different ways"):
        with_values(workbook, target, {Area("Entries", 1, 1): [["_x0041_"]]})
    with pytest.raises(FileError, match="no such sheet"):
        with_values(workbook, target, {Area("Elsewhere", 1, 1): [[1]]})
    target.write_bytes(b"no package")
    with pytest.raises(FileError, match="cannot read"):
        with_poison(target, tmp_path / "poisoned.xlsx")


# Cells with and without formulas, as programs write them and as only the format allows.
CELLS = {
    "as programs write": '<c r="A1" s="3" t="str"><f>"a"&amp;B1</f><v>a</v></c><c r="B1"><v>2</v></c><c r="C1" s="1"/><c r="D1"><f>B1</f></c><c r="E1"><f>B1</f><v/></c>',
    "a space kept": '<c r="A1" t="str"><f>"a "</f><v xml:space="preserve">a </v></c><c r="B1"><f>2</f><v>2</v></c>',
    "shared": '<c r="A1"><f t="shared" ref="A1:A2" si="0">B1*2</f><v>4</v></c></row><row r="2"><c r="A2" s="9"><f t="shared" si="0"/><v></v></c>',
    "attributes": '<c r="A1" cm="1" t="b"><f>1=1</f><v>1</v></c><c s="2" r="B1"><f>2</f><v>2</v></c><c r=\'C1\'><f>3</f><v>3</v></c><c r="D1"><f ca=\'1\'>4</f><v>4</v></c>',
    "what looks like one": '<c r="A1" t="str"><f>"&lt;f&gt;"</f><v>&lt;v&gt;9&lt;/v&gt;</v></c><c r="B1" t="inlineStr"><is><t>&lt;f&gt;1&lt;/f&gt;</t></is></c>',
    "by number": '<c r="A1"><f>&#65;2</f><v>1</v></c>',
    "remarks": '<c r="A1"><!-- <f>1</f> --><v>1</v></c><c r="B1"><f>2</f><!-- --><v>2</v></c>',
}


@pytest.mark.parametrize("cells", CELLS.values(), ids=CELLS)
def test_poison_by_the_bytes_is_that_of_the_parser(cells):
    xml = f'<worksheet xmlns="{MAIN[1:-1]}"><sheetData><row r="1">{cells}</row></sheetData><dataValidations><formula1>1</formula1></dataValidations></worksheet>'.encode()
    assert b"".join(editing.recached(xml, POISON)) == editing._recached(xml, POISON)


def test_some_rows_are_poisoned_at_a_time(monkeypatch):
    rows = "".join(f'<row r="{row}"><c r="A{row}"><f>{row}*2</f><v>{row}</v></c></row>' for row in range(1, 60))
    xml = f'<worksheet xmlns="{MAIN[1:-1]}"><sheetData>{rows}</sheetData></worksheet>'.encode()
    monkeypatch.setattr(editing, "PIECE", 100)
    pieces = editing.recached(xml, POISON)
    assert len(pieces) > 20 and b"".join(pieces) == editing._recached(xml, POISON)


def test_a_planner_is_poisoned_by_its_bytes_alone(small_file, tmp_path, monkeypatch):
    with monkeypatch.context() as parsed:
        parsed.setattr(editing, "_recached_plainly", lambda xml, value: None)
        with_poison(small_file, tmp_path / "parsed.xlsx")
    monkeypatch.setattr(editing, "_recached", None)
    with_poison(small_file, tmp_path / "found.xlsx")
    assert parts(tmp_path / "found.xlsx") == parts(tmp_path / "parsed.xlsx") != parts(small_file)
