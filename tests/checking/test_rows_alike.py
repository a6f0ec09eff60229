"""Rows that are alike are read once, and what is read is the same as if each had been."""

import pytest

from workbookgen.book.write import write
from workbookgen.language.entries import starting_entries
from workbookgen.ooxml import formulas, rows, sheets
from workbookgen.ooxml.rows import alike
from workbookgen.ooxml.workbook import read_whole


def sheet(data: str) -> bytes:
    return (
        f'<?xml version="1.0" encoding="UTF-8"?><worksheet xmlns="x"><sheetData>{data}</sheetData></worksheet>'.encode()
    )


def line(row: int, style: int = 3, cell_row: int | None = None) -> str:
    return f'<row r="{row}" ht="9"><c r="A{cell_row or row}" s="{style}"/><c r="AB{row}"><f t="shared" si="9"/><v></v></c></row>'


def groups(data: str) -> list[tuple[int, int]] | None:
    found = alike(sheet(data))
    return None if found is None else [(each.first, each.last) for each in found]


def test_lines_that_differ_in_their_number_only_are_one_group():
    assert groups("".join(map(line, range(8, 120))) + line(120, style=4) + line(121, style=4)) == [(8, 119), (120, 121)]


@pytest.mark.parametrize(
    ("data", "found"),
    [
        (line(3, style=3) + line(4, style=4), [(3, 3), (4, 4)]),  # a style that happens to be the row's number
        (line(3) + line(5), [(3, 3), (5, 5)]),
        (line(9) + line(10, cell_row=9), [(9, 9), (10, 10)]),
        (line(3, cell_row=4) + line(4, cell_row=4), [(3, 3), (4, 4)]),
        ('<row r="1"/><row r="2"/>' + line(3), [(1, 2), (3, 3)]),
        ('<row ht="9"><c r="A1"/></row>' + line(2), None),  # a row that does not say which it is
        ("<!-- a remark -->" + line(1), None),
        (line(1) + line(2).removesuffix("</row>"), None),  # a file that ends within a row
        ("", []),
    ],
)
def test_what_is_not_alike_is_not_grouped(data, found):
    assert groups(data) == found


@pytest.fixture(scope="module")
def written(layout, tmp_path_factory):
    path = tmp_path_factory.mktemp("alike") / "planner.xlsx"
    path.write_bytes(write(layout, starting_entries(layout.planner), {}))
    return path


def one_by_one(monkeypatch) -> None:
    for module in (formulas, sheets):
        monkeypatch.setattr(module, "alike", lambda xml: None)


def test_the_formulas_are_the_same(written, monkeypatch):
    short = formulas.formulas(written)
    one_by_one(monkeypatch)
    each = formulas.formulas(written)
    assert dict(short) == dict(each) and len(short) == len(each) > 1_000
    assert len(list(short.runs)) < len(short) / 4
    some = [*each][:: len(each) // 50]
    assert [short[place] for place in some] == [each[place] for place in some]
    assert ("Skeins", "A1") not in short and ("Nowhere", "A8") not in short


def test_cells_styles_and_rows_are_the_same(written, monkeypatch):
    short = read_whole(written)
    one_by_one(monkeypatch)
    whole, repeated = read_whole(written), 0
    for name, each in whole.sheets.items():
        found = short.sheets[name]
        assert [found.cell(place) for place in each.cells] == list(each.cells.values())
        assert [found.style(place) for place in each.cells] == list(map(each.style, each.cells))
        assert (found.hidden_rows, found.folded_rows, found.row_styles, found.twice) == (
            each.hidden_rows,
            each.folded_rows,
            each.row_styles,
            each.twice,
        )
        repeated += len(each.cells) - len(found.cells)
    assert repeated > 1_000


def test_a_cell_that_is_there_twice_has_the_later_formula(tmp_path, written):
    run = formulas.FormulaRun("Skeins", "B", 3, 6, "=1")
    found = formulas.Formulas([run, formulas.FormulaRun("Skeins", "B", 5, 5, "=2")])
    assert dict(found) == {("Skeins", f"B{row}"): "=2" if row == 5 else "=1" for row in range(3, 7)}


def test_stretches_end_where_either_sheet_has_another_row():
    ours, theirs = sheets.FileSheet("a", alike=[(8, 100)]), sheets.FileSheet("a", alike=[(8, 20), (22, 200)])
    assert list(sheets.stretches(range(7, 103), ours, theirs)) == [
        range(7, 8),
        range(8, 21),
        range(21, 22),
        range(22, 101),
        range(101, 102),
        range(102, 103),
    ]
    assert rows.alike(b"<nothing/>") is None
