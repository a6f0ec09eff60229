"""The cells of a sheet as they are kept: what is put in comes out, however little room it takes."""

import random

import pytest

from workbookgen.filled.cells import Cell, Cells, Contents, TooMany
from workbookgen.ooxml.formulas import Copied

COPIED = Copied("=A{row}*$B$10")


def one(row: int) -> range:
    return range(row, row + 1)


def test_what_is_put_in_comes_out():
    """Formulas with the digits of their row in every part."""
    chance = random.Random(8)
    pieces = ["A{0}", "$B${0}", "{0}.5", '"in {0} of {0}"', "C$1{0}", "{0}{0}", "skeins_{0}", '"{{row}}"', "'{0}'!Z9"]
    put = {
        (row, column): Cell(chance.random(), "=" + "+".join(chance.sample(pieces, 3)).format(row))
        for row in [1, 2, 9, 10, 11, 99, 100, 101, 110, 999, 1000]
        for column in range(1, 9)
    }
    cells = Cells()
    for (row, column), cell in put.items():
        cells.put(one(row), {column: cell})
    assert cells == put and len(cells) == len(put)
    assert all(cells.get(place) == cell for place, cell in put.items())


def test_a_copied_formula_reads_for_each_row_as_it_does_there():
    cells = Cells()
    cells.put(range(9, 12), {3: Cell(1.0, COPIED), 4: Cell("x")})
    assert cells == {
        (9, 3): Cell(1.0, "=A9*$B$10"),
        (10, 3): Cell(1.0, "=A10*$B$10"),
        (11, 3): Cell(1.0, "=A11*$B$10"),
        **{(row, 4): Cell("x") for row in (9, 10, 11)},
    }
    assert (9, 3) in cells and (12, 3) not in cells and (9, 5) not in cells and cells.get((12, 3)) is None
    with pytest.raises(KeyError):
        cells[12, 3]


def test_a_cell_that_is_put_into_one_of_several_rows_is_in_no_other():
    cells = Cells()
    cells.put(range(1, 4), {1: Cell(1.0)})
    cells.put(one(2), {1: Cell(5.0), 2: Cell(6.0)})
    assert cells == {(1, 1): Cell(1.0), (2, 1): Cell(5.0), (2, 2): Cell(6.0), (3, 1): Cell(1.0)}


def test_formulas_written_in_full_are_kept_once_for_a_column():
    """As LibreOffice writes them. In row 10 the other 10 happens to look like the number of the row."""
    cells = Cells()
    for row in range(9, 12):
        cells.put(one(row), {3: Cell(1.0, f"=A{row}*$B$10")})
    assert [cells.has((row, 3), COPIED) for row in (9, 10, 11)] == [True, False, True]
    assert cells[10, 3].formula == "=A10*$B$10"


def test_another_syntax():
    cells = Cells()
    cells.put(one(1), {1: Cell(1.0, "of:=[.B1]"), 2: Cell(2.0)})
    cells.put(range(2, 4), {1: Cell(1.0, "of:=7")})
    changed = cells.rewritten(None, lambda text: text.replace("of:", "").replace("[.", "").replace("]", ""))
    assert changed == {(1, 1): Cell(1.0, "=B1"), (1, 2): Cell(2.0), (2, 1): Cell(1.0, "=7"), (3, 1): Cell(1.0, "=7")}
    assert cells.rewritten({2}, str) == {(1, 2): Cell(2.0)}


def test_more_rows_or_columns_than_a_planner_has_are_refused_before_they_are_put(monkeypatch):
    monkeypatch.setattr("workbookgen.filled.cells.MOST_CELLS", 10)
    contents = Contents(("S",), {}, sheets={"S": Cells()})
    contents.put("S", range(1, 6), {1: Cell(1.0), 2: Cell(2.0)})
    for rows, cells in ((one(9), {1: Cell(1.0)}), (range(1, 10**9), {1: Cell(1.0)})):
        with pytest.raises(TooMany):
            contents.put("S", rows, cells)
    assert len(contents.sheets["S"]) == contents.filled == 10
